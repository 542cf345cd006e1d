//! What a field's notes file is called.

use crate::record::RecordId;

/// Longest name, in letters; what file systems allow is 255 bytes, with what is put behind the name.
const LONGEST: usize = 60;
const LONGEST_BYTES: usize = 200;

/// How many digits of an id tell fields of one name apart.
const DIGITS: usize = 8;

/// A field's name as the name of a file, without its ending: letters and digits of any script, the rest as one line between them. Where
/// one of the `others`, the names of the fields beside it, would be called the same, the end of the id goes with it.
pub fn file_name<'a>(name: &str, id: RecordId, mut others: impl Iterator<Item = &'a str>) -> String {
    let bare = bare(name);
    // Some file systems do not tell upper case from lower.
    let same = |other: &str| self::bare(other).to_lowercase() == bare.to_lowercase();
    if others.any(same) { format!("{bare}-{}", end_of(id)) } else { bare }
}

/// The last of the random digits of an id: the first ones tell the time, which two fields may share.
fn end_of(id: RecordId) -> String {
    let text = id.to_string();
    text[text.len().saturating_sub(DIGITS)..].to_owned()
}

fn bare(name: &str) -> String {
    let parts: Vec<&str> =
        name.split(|letter: char| !letter.is_alphanumeric()).filter(|part| !part.is_empty()).collect();
    let mut name: String = parts.join("_").chars().take(LONGEST).collect();
    while name.len() > LONGEST_BYTES {
        name.pop();
    }
    if name.is_empty() { "field".to_owned() } else { name }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_of_one_name_have_files_of_their_own() {
        let id = RecordId::new(1, [0x1b; 10]);
        assert_eq!(file_name("Mere Piece / east", id, ["Fox Heath"].into_iter()), "Mere_Piece_east");
        assert_eq!(file_name("Mere Piece", id, ["mere-piece"].into_iter()), "Mere_Piece-1b1b1b1b");
        assert_eq!(file_name("../..", id, [].into_iter()), "field");
        assert_eq!(file_name(&"Ä".repeat(300), id, [].into_iter()).chars().count(), 60);
    }
}

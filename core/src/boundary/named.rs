//! What a record of another program is called: the column that most likely holds a name.

/// Columns that hold names, the likeliest first, in small letters. Our judgement, after English and German exports.
const COLUMNS: [&str; 16] = [
    "name",
    "field_name",
    "fieldname",
    "field",
    "label",
    "title",
    "schlagname",
    "schlag_name",
    "schlagbez",
    "schlag",
    "feldname",
    "feld",
    "bezeichnung",
    "bez",
    "id",
    "fid",
];

/// The likeliest name among columns and their texts.
pub(crate) fn of<'a>(columns: impl Iterator<Item = (&'a str, String)>) -> Option<String> {
    let rank = |column: &str| COLUMNS.iter().position(|known| *known == column.trim().to_lowercase());
    columns
        .filter(|(_, text)| !text.trim().is_empty())
        .filter_map(|(column, text)| Some((rank(column)?, text)))
        .min_by_key(|(rank, _)| *rank)
        .map(|(_, text)| text)
}

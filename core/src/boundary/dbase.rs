//! The table beside a shapefile (dBASE III): only for the names of its records.

use super::named;

/// Where the head says how many rows there are, where they begin and how long each is; the length of a column's description, and
/// where a column says its length.
const ROWS: usize = 4;
const HEAD: usize = 8;
const ROW: usize = 10;
const COLUMN: usize = 32;
const COLUMN_NAME: usize = 11;
const COLUMN_LENGTH: usize = 16;
const COLUMNS_END: u8 = 0x0d;
const DELETED: u8 = b'*';

/// A row.
pub(super) enum Row {
    /// It was deleted.
    Deleted,
    /// What it is called, if anything.
    Named(Option<String>),
}

/// The rows of a table, in order; `None` where it cannot be read. `letters` is the companion that names the encoding.
pub(super) fn names(table: &[u8], letters: Option<&[u8]>) -> Option<Vec<Row>> {
    let short = |at: usize| Some(usize::from(u16::from_le_bytes(table.get(at..at + 2)?.try_into().ok()?)));
    let rows = u32::from_le_bytes(table.get(ROWS..ROWS + 4)?.try_into().ok()?) as usize;
    let (head, row) = (short(HEAD)?, short(ROW)?);
    let descriptions = table.get(COLUMN..head)?.chunks_exact(COLUMN);
    // The first byte of a row says whether it was deleted.
    let mut from = 1;
    let mut columns = Vec::new();
    for column in descriptions.take_while(|column| column[0] != COLUMNS_END) {
        let name = column[..COLUMN_NAME].split(|letter| *letter == 0).next().unwrap_or_default();
        let to = from + usize::from(column[COLUMN_LENGTH]);
        columns.push((String::from_utf8_lossy(name).into_owned(), from..to));
        from = to;
    }
    let is_utf_8 = letters.is_some_and(|name| String::from_utf8_lossy(name).to_uppercase().contains("UTF"));
    let body = table.get(head..)?.chunks_exact(row.max(1)).take(rows);
    let named = |row: &[u8]| {
        if row.first() == Some(&DELETED) {
            return Row::Deleted;
        }
        let text = |(name, within): &(String, std::ops::Range<usize>)| {
            let text = said(row.get(within.clone())?, is_utf_8);
            Some((name.clone(), text.trim_matches(['\0', ' ']).to_owned()))
        };
        let cells: Vec<(String, String)> = columns.iter().filter_map(text).collect();
        Row::Named(named::of(cells.iter().map(|(name, text)| (name.as_str(), text.clone()))))
    };
    Some(body.map(named).collect())
}

/// A text as UTF-8 where it can be that, else in the Western letters of ISO 8859-1, which most tables without a companion have.
fn said(bytes: &[u8], is_utf_8: bool) -> String {
    match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        Err(_) if is_utf_8 => String::from_utf8_lossy(bytes).into_owned(),
        Err(_) => bytes.iter().copied().map(char::from).collect(),
    }
}

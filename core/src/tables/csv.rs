//! Tables as CSV (RFC 4180): UTF-8 without a mark, a header row, `.` in numbers.

use super::{Cell, Row, Shape, Shapes, Table, rounded};
use csv::{Terminator, WriterBuilder};

/// What makes a spreadsheet take a text for a formula where it begins with it; full-width forms are taken alike.
const FORMULA: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
/// What is put before such a text. Spreadsheets take it as "this is text".
const GUARD: char = '\'';

/// A table as a CSV file. Places stand in the last two columns, longitude and latitude with seven decimals; shapes of other
/// kinds are left to the formats that have them. Texts are [`guarded`].
pub fn csv(table: &Table) -> Vec<u8> {
    let mut text = Vec::new();
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(&mut text);
    let has_places = table.shapes == Some(Shapes::Points);
    let places = has_places.then_some(["longitude_deg", "latitude_deg"]).into_iter().flatten();
    let header = table.columns.iter().map(|column| column.name.to_string()).chain(places.map(str::to_owned));
    let rows = table.rows.iter().map(|row| {
        let place = has_places.then(|| place(row)).into_iter().flatten();
        row.cells.iter().map(cell).chain(place).collect()
    });
    for record in std::iter::once(header.collect::<Vec<String>>()).chain(rows) {
        // Into memory, and every row as long as the header: nothing can go wrong.
        let _ = writer.write_record(record);
    }
    let _ = writer.flush();
    drop(writer);
    text
}

fn place(row: &Row) -> [String; 2] {
    match row.shape {
        Some(Shape::Point(place)) => place.map(|degrees| rounded(degrees).to_string()),
        _ => Default::default(),
    }
}

fn cell(cell: &Cell) -> String {
    match cell {
        Cell::Empty => String::new(),
        Cell::Text(text) => guarded(text),
        Cell::Whole(whole) => whole.to_string(),
        Cell::Number(number) => number.to_string(),
        Cell::Flag(flag) => flag.to_string(),
        Cell::Lengths(lengths) => Cell::lengths_text(lengths),
    }
}

/// The text as it stands in a cell: one that a spreadsheet could take for a formula has an apostrophe put before it, and so has
/// one that begins with an apostrophe. Who takes one apostrophe off the beginning of every text that has one has it back.
pub fn guarded(text: &str) -> String {
    let guard = text.starts_with(FORMULA) || text.starts_with(GUARD);
    if guard { format!("{GUARD}{text}") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_formula_becomes_a_text() {
        assert_eq!(guarded("=1+1"), "'=1+1");
        assert_eq!(guarded("'tis"), "''tis");
        assert_eq!(guarded("winter wheat"), "winter wheat");
        assert_eq!(guarded(""), "");
    }

    proptest! {
        #[test]
        fn taking_the_apostrophe_off_gives_the_text(text in "['=+@\t\r\n＝a-]{0,4}") {
            let cell = guarded(&text);
            prop_assert!(!cell.starts_with(FORMULA));
            prop_assert_eq!(cell.strip_prefix(GUARD).unwrap_or(&cell), text);
        }
    }
}

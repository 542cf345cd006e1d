//! Reads a notes file: everything in it, or every fault in it.

mod field;
mod machine;
mod pass;
mod pit;

use super::cursor::Book;
use super::value::Node;
use super::{VERSION, depths, json};
use crate::error::Fault;
use crate::record::{FieldNotes, RecordId};
use crate::soil::texture::TextureScheme;
use pass::Known;
use serde_json::Value;

/// What a notes file gives.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// The field and its pits.
    pub notes: FieldNotes,
    /// Places of keys nobody knows, e.g. `pits[1].colour`: kept, never fatal.
    pub unknown_keys: Vec<String>,
}

/// Reads a notes file. `new_id` makes an id for each record that has none in the file.
///
/// # Errors
/// Every fault found, each with its place such as `pits[2].walk[3].to_mm`, or line and column where the text is
/// not JSON; nothing is half-read.
pub fn read(text: &str, new_id: &mut dyn FnMut() -> RecordId) -> Result<Read, Vec<Fault>> {
    let value = json::parse(text)?;
    let book = Book::new(new_id);
    let notes = file(value, &book);
    let (faults, unknown_keys) = book.close();
    match notes {
        Some(notes) if faults.is_empty() => Ok(Read { notes, unknown_keys }),
        _ => Err(faults),
    }
}

fn file<'a>(value: Value, book: &'a Book<'a>) -> Option<FieldNotes> {
    if value.is_array() {
        let todo = "write one object {\"pitface\": 1, …}, and each field in a file of its own";
        book.fault("", "a list stands where the file's one object belongs", todo);
        return None;
    }
    let mut file = Node::new(String::new(), value, book).object()?;
    if !file.has("pitface") && !file.has("field") {
        let todo = "give a file that begins {\"pitface\": 1, \"field\": {…}, \"pits\": […]}";
        book.fault(
            "",
            "this is JSON, but not a notes file: neither \"pitface\" nor \"field\" is there",
            todo,
        );
        return None;
    }
    if let Some(version) = file.need("pitface", "the version of the notes file") {
        match version.value.as_u64() {
            Some(VERSION) => {}
            Some(newer) if newer > VERSION => {
                let wrong = format!("version {newer} is newer than this program, which reads {VERSION}");
                version.fault(wrong, "bring the program up to date; nothing was read");
                return None;
            }
            _ => version.fault(
                format!("`{}` is not a version of the notes file", version.value),
                format!("write \"pitface\": {VERSION}"),
            ),
        }
    }
    let read =
        file.need("field", "the field").and_then(Node::object).map(|object| field::field(object, book));
    let (field, scheme) = read.unzip();
    let scheme = scheme.unwrap_or(TextureScheme::Usda);
    let (pits_told, machines_told) = (file.count("pits"), file.count("machines"));
    let pits: Vec<_> =
        file.objects("pits").into_iter().map(|object| pit::pit(object, scheme, book)).collect();
    let (machines, named) = machine::machines(&mut file, book);
    let known = Known::new(named, machines_told, &pits, pits_told);
    let passes = pass::passes(&mut file, &known, book);
    let unknown = file.rest();
    let notes =
        FieldNotes { field: field?, pits: pits.into_iter().flatten().collect(), machines, passes, unknown };
    depths::far_away(&notes, book);
    Some(notes)
}

//! Edits close together in memory: a hundred thousand of them wait there while a file is taken in.

use super::lines::to_log;
use super::log::EditName;
use crate::merge::Edit;

/// Edits of a line that follow one another.
pub(super) struct Packed {
    edits: Vec<Short>,
    /// The predecessors of all. As they come, a name's first number is the line in the bundle ([`Predecessor::line`](crate::merge::Predecessor::line)).
    names: Vec<EditName>,
    /// The values of all, as the log has them.
    values: Vec<u8>,
}

/// An edit, and where its predecessors and its value end.
struct Short {
    clock: i64,
    record: [u8; 16],
    field: u16,
    names_end: u32,
    value_end: u32,
}

/// One of them.
pub(super) struct PackedEdit<'a> {
    pub(super) clock: i64,
    pub(super) record: &'a [u8; 16],
    pub(super) field: u16,
    pub(super) names: &'a [EditName],
    pub(super) value: &'a [u8],
}

impl Packed {
    pub(super) fn new(edits: Vec<Edit>) -> Self {
        let mut packed =
            Self { edits: Vec::with_capacity(edits.len()), names: Vec::new(), values: Vec::new() };
        for Edit { clock, record, field, predecessors, content } in edits {
            let names =
                predecessors.iter().map(|named| (named.line.into(), named.name.sequence.cast_signed()));
            packed.names.extend(names);
            packed.values.extend(to_log(content));
            // Both are far below 2^32: see the limits of a bundle.
            let (names_end, value_end) = (packed.names.len() as u32, packed.values.len() as u32);
            packed.edits.push(Short { clock: clock.cast_signed(), record, field, names_end, value_end });
        }
        packed
    }

    pub(super) fn count(&self) -> usize {
        self.edits.len()
    }

    /// How much memory they take.
    pub(super) fn bytes(&self) -> usize {
        size_of_val(self.edits.as_slice()) + size_of_val(self.names.as_slice()) + self.values.len()
    }

    /// The latest clock of all but the first few.
    pub(super) fn newest_clock(&self, after: usize) -> i64 {
        self.edits.iter().skip(after).map(|edit| edit.clock).max().unwrap_or(0)
    }

    /// Names all predecessors anew.
    pub(super) fn rename(&mut self, name: impl Fn(EditName) -> EditName) {
        self.names.iter_mut().for_each(|named| *named = name(*named));
    }

    pub(super) fn edit(&self, at: usize) -> PackedEdit<'_> {
        let Short { clock, record, field, names_end, value_end } = &self.edits[at];
        let before =
            at.checked_sub(1).map_or((0, 0), |at| (self.edits[at].names_end, self.edits[at].value_end));
        PackedEdit {
            clock: *clock,
            record,
            field: *field,
            names: &self.names[before.0 as usize..*names_end as usize],
            value: &self.values[before.1 as usize..*value_end as usize],
        }
    }
}

//! What a newer version wrote and this one cannot show: left out of what is loaded, listed here, kept and handed on as it is.

use super::cells::{Cell, Kind};
use super::lines::content;
use super::load::Loading;
use super::log::{Heads, record_id};
use super::value::{Hangs, read};
use super::{Store, StoreError, same_field};
use crate::merge::Content;
use crate::record::RecordId;
use std::collections::BTreeMap;

/// A record that is here and that this version leaves out of what it loads, with all that hangs on it. Nothing of it is touched
/// when what lies around it is saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotShown {
    /// The record.
    pub record: RecordId,
    /// What it is; `None` for a kind that this version does not know.
    pub kind: Option<Kind>,
    /// Why it is left out.
    pub why: WhyNotShown,
}

/// Why a record is left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhyNotShown {
    /// It is of a kind that this version does not know.
    NewKind,
    /// It hangs where this version looks for none of its kind.
    NewPlace,
    /// This version cannot read what stands in a cell that it needs, say a new code.
    NewValue(Cell),
    /// A cell that it needs was redacted; no version shows it.
    Redacted(Cell),
}

impl NotShown {
    /// How many there are of each kind.
    pub fn by_kind(all: &[Self]) -> BTreeMap<Option<Kind>, usize> {
        let mut count = BTreeMap::new();
        for one in all {
            *count.entry(one.kind).or_default() += 1;
        }
        count
    }

    /// A record that is left out because one of its cells cannot be read.
    pub(super) fn for_cell(heads: &Heads, cell: Cell) -> Self {
        let value = heads.value(cell).map(|value| content(value.to_vec()));
        let redacted = matches!(value, Some(Content::Redacted(_)));
        let why = match cell {
            _ if redacted => WhyNotShown::Redacted(cell),
            Cell::KIND => WhyNotShown::NewKind,
            Cell::PARENT => WhyNotShown::NewPlace,
            _ => WhyNotShown::NewValue(cell),
        };
        Self { record: heads.record, kind: heads.kind(), why }
    }

    /// A record that is found where no record of its kind is looked for.
    pub(super) fn out_of_place(heads: &Heads) -> Self {
        match heads.kind() {
            None => Self::for_cell(heads, Cell::KIND),
            kind => Self { record: heads.record, kind, why: WhyNotShown::NewPlace },
        }
    }
}

impl Store {
    /// The records of a field that are left out of what [`Store::load_notes`] gives, in the order of their lists; of what
    /// hangs on such a record nothing is told. As much work as loading the field.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if there is no such field; whatever the disk reports.
    pub fn not_shown(&self, field: RecordId) -> Result<Vec<NotShown>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let mut loading = Loading::new(connection);
        loading.notes(field)?;
        Ok(loading.left_out)
    }

    /// As [`Store::not_shown`] for all that is in the store: of all fields, beside them, and what hangs nowhere that this version knows.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn not_shown_anywhere(&self) -> Result<Vec<NotShown>, StoreError> {
        const PLACES: &str = "SELECT record, value FROM cells INDEXED BY children
            WHERE field = 2 AND shown = 1 ORDER BY value, record";
        let connection = &*self.connection.unchecked_transaction()?;
        let mut loading = Loading::new(connection);
        for heads in Heads::load_children(connection, None)? {
            match heads.kind() {
                Some(Kind::Field) if same_field::oldest(connection, heads.record)? == heads.record => {
                    drop(loading.notes(heads.record)?);
                }
                // It was gone over with the record that it is one field with.
                Some(Kind::Field) => {}
                Some(Kind::Person) => drop(loading.person(&heads)?),
                _ => loading.left_out.push(NotShown::out_of_place(&heads)),
            }
        }
        let mut statement = connection.prepare(PLACES)?;
        let mut rows = statement.query([])?;
        while let Some(row) = rows.next()? {
            if read::<Hangs>(row.get_ref(1)?.as_blob().ok()).is_some() {
                continue;
            }
            let heads = Heads::load(connection, record_id(row.get(0)?)?)?;
            if !heads.deleted() {
                loading.left_out.push(NotShown::for_cell(&heads, Cell::PARENT));
            }
        }
        Ok(loading.left_out)
    }
}

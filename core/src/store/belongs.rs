//! Where a record belongs, as people are told.

use super::cells::Kind;
use super::log::Heads;
use super::regretted::{field_name, path_of};
use super::{Store, StoreError, same_field};
use crate::record::RecordId;
use rusqlite::Connection;

/// A record with the field and the pit it is of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Belongs {
    /// The record.
    pub record: RecordId,
    /// Its field (itself, if it is one); `None` of what is of no field.
    pub field: Option<RecordId>,
    /// That field's name, as it was if it is deleted; else empty.
    pub field_name: String,
    /// Its pit (itself, if it is one).
    pub pit: Option<RecordId>,
    /// The pit's number as pits are numbered everywhere, from 1; `None` of a deleted one.
    pub pit_number: Option<usize>,
    /// What it is: from the field (or whatever is topmost) down to itself.
    pub kinds: Vec<Kind>,
}

impl Store {
    /// Where a record belongs; deleted ones too.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn belongs(&self, record: RecordId) -> Result<Belongs, StoreError> {
        belongs(&self.connection, record)
    }
}

pub(super) fn belongs(connection: &Connection, record: RecordId) -> Result<Belongs, StoreError> {
    let path = path_of(connection, record)?;
    let of_kind = |kind| path.iter().find(|(_, other)| *other == kind).map(|(record, _)| *record);
    let pit = of_kind(Kind::Pit);
    let members = match of_kind(Kind::Field) {
        Some(field) => same_field::members(connection, field)?,
        None => Vec::new(),
    };
    let field = members.first().copied();
    let field_name =
        field.map(|field| field_name(connection, field)).transpose()?.flatten().unwrap_or_default();
    let mut pit_number = None;
    if let (Some(field), Some(pit)) = (field, pit)
        && !Heads::load_marks(connection, field)?.deleted()
    {
        let mut before = 0;
        for member in members {
            let children = Heads::load_children(connection, Some(member))?;
            let pits = children.iter().filter(|child| child.kind() == Some(Kind::Pit));
            for child in pits {
                before += 1;
                if child.record == pit {
                    pit_number = Some(before);
                }
            }
        }
    }
    let kinds = path.into_iter().map(|(_, kind)| kind).collect();
    Ok(Belongs { record, field, field_name, pit, pit_number, kinds })
}

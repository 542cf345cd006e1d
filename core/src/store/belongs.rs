//! Where a record belongs, as people are told.

use super::cells::Kind;
use super::log::Heads;
use super::{Store, StoreError};
use crate::record::RecordId;

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
        let path = self.path_of(record)?;
        let of_kind = |kind| path.iter().find(|(_, other)| *other == kind).map(|(record, _)| *record);
        let (field, pit) = (of_kind(Kind::Field), of_kind(Kind::Pit));
        let field_name = field.map(|field| self.field_name(field)).transpose()?.flatten().unwrap_or_default();
        let mut pit_number = None;
        if let (Some(field), Some(pit)) = (field, pit)
            && !Heads::load_marks(&self.connection, field)?.deleted()
        {
            let children = Heads::load_children(&self.connection, Some(field))?;
            let mut pits = children.iter().filter(|child| child.kind() == Some(Kind::Pit));
            pit_number = pits.position(|child| child.record == pit).map(|index| index + 1);
        }
        let kinds = path.into_iter().map(|(_, kind)| kind).collect();
        Ok(Belongs { record, field, field_name, pit, pit_number, kinds })
    }
}

//! Where a record belongs.

use pitface_core::record::RecordId;
use pitface_core::store::{Kind, Store, StoreError};
use pitface_core::words::Words;
use serde_json::{Value, json};

/// The field and the pit of a record, and what it is.
pub struct Belongs {
    record: RecordId,
    field: String,
    /// Number of the pit, as pits are numbered everywhere; none of a deleted one.
    pit: Option<usize>,
    /// From the top down to itself.
    kinds: Vec<Kind>,
}

impl Belongs {
    /// Looks it up.
    pub fn of(store: &Store, record: RecordId) -> Result<Self, StoreError> {
        let path = store.path_of(record)?;
        let of_kind = |kind| path.iter().find(|(_, other)| *other == kind).map(|(record, _)| *record);
        let field = of_kind(Kind::Field);
        let name = field.map(|field| store.field_name(field)).transpose()?.flatten();
        let number = |field, pit| {
            // A deleted field's pits have no numbers.
            let notes = store.load_notes(field).ok()?;
            notes.pits.iter().position(|other| other.id == pit).map(|index| index + 1)
        };
        Ok(Self {
            record,
            field: name.unwrap_or_default(),
            pit: field.zip(of_kind(Kind::Pit)).and_then(|(field, pit)| number(field, pit)),
            kinds: path.iter().map(|(_, kind)| *kind).collect(),
        })
    }

    /// `Long Sedge, pit 3, layer`.
    pub fn told(&self, words: &Words) -> String {
        let gone = self.kinds.contains(&Kind::Pit) && self.pit.is_none();
        words.belongs(&self.field, self.pit, &self.kinds, gone)
    }

    /// As JSON.
    pub fn json(&self) -> Value {
        let kind = self.kinds.last().map(|kind| kind.name());
        json!({ "record": self.record.to_string(), "kind": kind, "field": self.field, "pit": self.pit })
    }
}

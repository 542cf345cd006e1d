//! Loading: from cells back to records, children in the order of their ranks.

use super::cells::Kind;
use super::kept::Kept;
use super::log::{Heads, count};
use super::{Cell, Store, StoreError};
use crate::record::{Field, FieldNotes, Pass, Person, Pit, RecordId};
use rusqlite::Connection;

/// A line in the list of fields.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FieldSummary {
    /// Identity.
    pub id: RecordId,
    /// Its name.
    pub name: String,
    /// How many pits it has.
    pub pits: u32,
}

impl Store {
    /// A field with everything in it, as it was saved.
    ///
    /// A code that only a newer version knows reads as "not looked" where a value may be absent, and saving
    /// these notes again leaves it alone.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if there is no such field; [`StoreError::Unreadable`] if a value that may not be
    /// absent means nothing to this version.
    pub fn load_notes(&self, field: RecordId) -> Result<FieldNotes, StoreError> {
        // One view of the file, and one lock, for the hundreds of small reads.
        let connection = &*self.connection.unchecked_transaction()?;
        let heads = Heads::load(connection, field)?;
        heads.require(Kind::Field)?;
        let mut notes = FieldNotes::new(Field::from_cells(field, &heads)?, Vec::new());
        notes.unknown = heads.read(Cell::NOTES_UNKNOWN_KEYS)?;
        for child in Heads::load_children(connection, Some(field))? {
            match child.kind() {
                Some(Kind::Pit) => notes.pits.push(pit(connection, &child)?),
                Some(Kind::Machine) => notes.machines.push(Kept::from_cells(child.record, &child)?),
                Some(Kind::Pass) => notes.passes.push(pass(connection, &child)?),
                Some(Kind::Part) => notes.field.parts.push(Kept::from_cells(child.record, &child)?),
                Some(Kind::BuriedLine) => notes.field.lines.push(Kept::from_cells(child.record, &child)?),
                _ => {}
            }
        }
        Ok(notes)
    }

    /// A pit with everything in it, as in [`Store::load_notes`].
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if there is no such pit; else as [`Store::load_notes`].
    pub fn load_pit(&self, pit: RecordId) -> Result<Pit, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let heads = Heads::load(connection, pit)?;
        heads.require(Kind::Pit)?;
        self::pit(connection, &heads)
    }

    /// All fields, in the order they were first saved.
    ///
    /// # Errors
    /// As [`Store::load_notes`].
    pub fn fields(&self) -> Result<Vec<FieldSummary>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let mut fields = Vec::new();
        for heads in Heads::load_children(connection, None)? {
            if heads.kind() == Some(Kind::Field) {
                let id = heads.record;
                let name = heads.read(Cell::FIELD_NAME)?;
                fields.push(FieldSummary { id, name, pits: count(connection, id, Kind::Pit)? });
            }
        }
        Ok(fields)
    }

    /// What a record is, also a deleted one; `None` if there is none, or it is of a newer version.
    ///
    /// # Errors
    /// As [`Store::load_notes`].
    pub fn kind_of(&self, record: RecordId) -> Result<Option<Kind>, StoreError> {
        Ok(Heads::load_marks(&self.connection, record)?.kind())
    }

    /// All people, in the order they were first saved.
    ///
    /// # Errors
    /// As [`Store::load_notes`].
    pub fn persons(&self) -> Result<Vec<Person>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let mut persons = Vec::new();
        for heads in Heads::load_children(connection, None)? {
            if heads.kind() == Some(Kind::Person) {
                persons.push(Person::from_cells(heads.record, &heads)?);
            }
        }
        Ok(persons)
    }
}

fn pit(connection: &Connection, heads: &Heads) -> Result<Pit, StoreError> {
    let mut pit = Pit::from_cells(heads.record, heads)?;
    for child in Heads::load_children(connection, Some(pit.id))? {
        match child.kind() {
            Some(Kind::Step) => pit.walk.push(Kept::from_cells(child.record, &child)?),
            Some(Kind::Layer) => pit.layers.push(Kept::from_cells(child.record, &child)?),
            Some(Kind::Roll) => pit.rolls.push(Kept::from_cells(child.record, &child)?),
            Some(Kind::Photo) => pit.photos.push(Kept::from_cells(child.record, &child)?),
            _ => {}
        }
    }
    Ok(pit)
}

fn pass(connection: &Connection, heads: &Heads) -> Result<Pass, StoreError> {
    let mut pass = Pass::from_cells(heads.record, heads)?;
    for child in Heads::load_children(connection, Some(pass.id))? {
        match child.kind() {
            Some(Kind::Roll) => pass.rolls.push(Kept::from_cells(child.record, &child)?),
            Some(Kind::AfterDig) => pass.after_digs.push(Kept::from_cells(child.record, &child)?),
            _ => {}
        }
    }
    Ok(pass)
}

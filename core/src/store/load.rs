//! Loading: from cells back to records, children in the order of their ranks. A record that this version cannot read is left out.

use super::cells::Kind;
use super::kept::Kept;
use super::log::{Heads, count};
use super::{Cell, NotShown, Store, StoreError, same_field};
use crate::record::{Field, FieldNotes, Pass, Person, Pit, RecordId};
use rusqlite::Connection;

/// A line in the list of fields.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FieldSummary {
    /// Identity.
    pub id: RecordId,
    /// Its name; [`NAME_NOT_READABLE`](super::NAME_NOT_READABLE) where this version cannot read it.
    pub name: String,
    /// How many pits it has, with those that are not shown.
    pub pits: u32,
}

impl Store {
    /// A field with everything in it that this version knows, as it was saved. Of several records that are one field
    /// ([`Store::join`]) each gives all, under the oldest.
    ///
    /// A code that only a newer version knows reads as "not looked" where a value may be absent. Where it may not, the record
    /// is left out; [`Store::not_shown`] tells which. Saving these notes again leaves both alone.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if there is no such field; whatever the disk reports.
    pub fn load_notes(&self, field: RecordId) -> Result<FieldNotes, StoreError> {
        // One view of the file, and one lock, for the hundreds of small reads.
        let connection = &*self.connection.unchecked_transaction()?;
        Loading::new(connection).notes(field)
    }

    /// A pit with everything in it, as in [`Store::load_notes`].
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if there is no such pit; [`StoreError::Unreadable`] if this version cannot show it.
    pub fn load_pit(&self, pit: RecordId) -> Result<Pit, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let heads = Heads::load(connection, pit)?;
        heads.require(Kind::Pit)?;
        Loading::new(connection).pit(&heads)
    }

    /// All fields, in the order they were first saved.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn fields(&self) -> Result<Vec<FieldSummary>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let mut fields = Vec::new();
        for heads in Heads::load_children(connection, None)? {
            let id = heads.record;
            if heads.kind() != Some(Kind::Field) {
                continue;
            }
            let members = same_field::members(connection, id)?;
            if members.first() == Some(&id) {
                let pits = members.iter().map(|member| count(connection, *member, Kind::Pit));
                let pits = pits.sum::<Result<_, _>>()?;
                fields.push(FieldSummary { id, name: heads.read(Cell::FIELD_NAME)?, pits });
            }
        }
        Ok(fields)
    }

    /// Returns what a record is, also a deleted one; `None` if there is none, or it is of a newer version.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn kind_of(&self, record: RecordId) -> Result<Option<Kind>, StoreError> {
        Ok(Heads::load_marks(&self.connection, record)?.kind())
    }

    /// All people that this version can show, in the order they were first saved.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn persons(&self) -> Result<Vec<Person>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let (mut loading, mut persons) = (Loading::new(connection), Vec::new());
        for heads in Heads::load_children(connection, None)? {
            if heads.kind() == Some(Kind::Person) {
                persons.extend(loading.person(&heads)?);
            }
        }
        Ok(persons)
    }
}

/// A walk over the records of a field.
pub(super) struct Loading<'a> {
    connection: &'a Connection,
    /// What could not be read on the way.
    pub(super) left_out: Vec<NotShown>,
}

impl<'a> Loading<'a> {
    pub(super) fn new(connection: &'a Connection) -> Self {
        Self { connection, left_out: Vec::new() }
    }

    pub(super) fn notes(&mut self, field: RecordId) -> Result<FieldNotes, StoreError> {
        let members = same_field::members(self.connection, field)?;
        let missing = || StoreError::RecordNotFound { record: field, kind: Kind::Field.name() };
        let heads = same_field::heads(self.connection, &members)?.ok_or_else(missing)?;
        heads.require(Kind::Field)?;
        let mut notes = FieldNotes::new(Field::from_cells(heads.record, &heads)?, Vec::new());
        notes.unknown = heads.read(Cell::NOTES_UNKNOWN_KEYS)?;
        for member in members {
            self.children(&mut notes, member)?;
        }
        Ok(notes)
    }

    /// Returns what hangs on a field, or on one of the records that are it.
    fn children(&mut self, notes: &mut FieldNotes, field: RecordId) -> Result<(), StoreError> {
        for child in Heads::load_children(self.connection, Some(field))? {
            match child.kind() {
                Some(Kind::Pit) => {
                    let pit = self.pit(&child);
                    notes.pits.extend(self.unless_unreadable(&child, pit)?);
                }
                Some(Kind::Machine) => self.put(&mut notes.machines, &child)?,
                Some(Kind::Pass) => {
                    let pass = self.pass(&child);
                    notes.passes.extend(self.unless_unreadable(&child, pass)?);
                }
                Some(Kind::Part) => self.put(&mut notes.field.parts, &child)?,
                Some(Kind::BuriedLine) => self.put(&mut notes.field.lines, &child)?,
                _ => self.left_out.push(NotShown::out_of_place(&child)),
            }
        }
        Ok(())
    }

    pub(super) fn person(&mut self, heads: &Heads) -> Result<Option<Person>, StoreError> {
        self.unless_unreadable(heads, Kept::from_cells(heads.record, heads))
    }

    fn pit(&mut self, heads: &Heads) -> Result<Pit, StoreError> {
        let mut pit = Pit::from_cells(heads.record, heads)?;
        for child in Heads::load_children(self.connection, Some(pit.id))? {
            match child.kind() {
                Some(Kind::Step) => self.put(&mut pit.walk, &child)?,
                Some(Kind::Layer) => self.put(&mut pit.layers, &child)?,
                Some(Kind::Roll) => self.put(&mut pit.rolls, &child)?,
                Some(Kind::Photo) => self.put(&mut pit.photos, &child)?,
                _ => self.left_out.push(NotShown::out_of_place(&child)),
            }
        }
        Ok(pit)
    }

    fn pass(&mut self, heads: &Heads) -> Result<Pass, StoreError> {
        let mut pass = Pass::from_cells(heads.record, heads)?;
        for child in Heads::load_children(self.connection, Some(pass.id))? {
            match child.kind() {
                Some(Kind::Roll) => self.put(&mut pass.rolls, &child)?,
                Some(Kind::AfterDig) => self.put(&mut pass.after_digs, &child)?,
                _ => self.left_out.push(NotShown::out_of_place(&child)),
            }
        }
        Ok(pass)
    }

    /// Puts a record into its list, or aside.
    fn put<R: Kept>(&mut self, list: &mut Vec<R>, heads: &Heads) -> Result<(), StoreError> {
        let record = R::from_cells(heads.record, heads);
        list.extend(self.unless_unreadable(heads, record)?);
        Ok(())
    }

    /// A record that cannot be read is put aside.
    fn unless_unreadable<R>(
        &mut self,
        heads: &Heads,
        record: Result<R, StoreError>,
    ) -> Result<Option<R>, StoreError> {
        match record {
            Err(StoreError::Unreadable { cell, .. }) => {
                self.left_out.push(NotShown::for_cell(heads, cell));
                Ok(None)
            }
            record => record.map(Some),
        }
    }
}

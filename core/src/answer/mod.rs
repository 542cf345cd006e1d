//! One answer for a field: its notes with everything that follows from them, made in one place.
//!
//! Whatever is told of a field, on a screen, a page, in a table or as JSON, comes out of one [`FieldAnswer`]; so no two of
//! them can differ. What costs more than it is often asked for (changes, next looks, the next pit) is worked out when it is
//! first asked for and kept. [`Answers`] keeps answers until the notes they follow from are others.

mod kept;
mod seasons;

pub use kept::Answers;
pub use seasons::{HeldOn, Loosened, ZoneYear, ZoneYears};

use crate::advice::after_dig::PassAdvice;
use crate::advice::readers::{SeveralReaders, several_readers};
use crate::advice::sampling::{Ground, Plan};
use crate::advice::{
    Change, FieldAdvice, NextDig, WorthAsking, ZoneCall, advise_on, changes_on, last_day, next_dig,
    next_look_in, stands_for, worth_asking,
};
use crate::place::FieldMap;
use crate::reading::{FieldReading, NextLook, PitReading, Table, read_field, read_pit, reference_faces};
use crate::record::{FieldNotes, PlaceKind, Zone};
use chrono::NaiveDate;
use std::sync::OnceLock;

/// A field with everything that follows from its notes.
#[derive(Debug, Clone)]
pub struct FieldAnswer {
    /// What was noted.
    pub notes: FieldNotes,
    /// The day it is asked; `None` takes the notes as they stand, on the last day noted in them.
    pub today: Option<NaiveDate>,
    /// The field laid out.
    pub map: FieldMap,
    /// Its pits, read; in the order of the notes.
    pub reading: FieldReading,
    /// The calls.
    pub advice: FieldAdvice,
    /// What the holes behind the machine say of each pass, in the order of the notes.
    pub passes: Vec<PassAdvice>,
    readers: OnceLock<Option<SeveralReaders>>,
    next_looks: OnceLock<Vec<Option<NextLook>>>,
    next: OnceLock<Option<NextDig>>,
    worth_asking: OnceLock<Vec<WorthAsking>>,
    changes: [OnceLock<Vec<Change>>; Zone::ALL.len()],
}

impl FieldAnswer {
    /// Reads a field and makes the calls.
    pub fn of(notes: FieldNotes, today: Option<NaiveDate>) -> Self {
        let reading = read_field(&notes);
        Self::read(notes, today, reading)
    }

    /// The same where an earlier answer is at hand: pits that nothing bears on anew are not read again.
    #[must_use]
    pub fn after(earlier: &Self, notes: FieldNotes, today: Option<NaiveDate>) -> Self {
        let references = |notes: &FieldNotes| reference_faces(notes);
        let faces = references(&notes);
        if earlier.notes.field != notes.field || references(&earlier.notes) != faces {
            return Self::of(notes, today);
        }
        let known = |index: usize| -> Option<PitReading> {
            let pit = notes.pits.get(index)?;
            let at = earlier.notes.pits.get(index).filter(|before| before.id == pit.id).map(|_| index);
            let at = at.or_else(|| earlier.notes.pits.iter().position(|before| before.id == pit.id))?;
            (earlier.notes.pits[at] == *pit).then(|| earlier.reading.pits[at].clone())
        };
        let read = |(index, pit)| {
            known(index).unwrap_or_else(|| read_pit(pit, &notes.field, &faces, Table::standard()))
        };
        let pits = notes.pits.iter().enumerate().map(read).collect();
        Self::read(notes, today, FieldReading { pits })
    }

    fn read(notes: FieldNotes, today: Option<NaiveDate>, reading: FieldReading) -> Self {
        let map = FieldMap::of(&notes.field);
        let (advice, passes) = advise_on(&notes, &reading, &map, today);
        Self {
            notes,
            today,
            map,
            reading,
            advice,
            passes,
            readers: OnceLock::new(),
            next_looks: OnceLock::new(),
            next: OnceLock::new(),
            worth_asking: OnceLock::new(),
            changes: Default::default(),
        }
    }

    /// Holes that several people read; `None` where there is none.
    pub fn readers(&self) -> Option<&SeveralReaders> {
        self.readers.get_or_init(|| several_readers(&self.notes, &self.reading)).as_ref()
    }

    /// The next look of each pit, in the order of the notes; `None` where nothing is worth a tap.
    pub fn next_looks(&self) -> &[Option<NextLook>] {
        let look = |pit| next_look_in(pit, &self.notes.field, |_, _| false);
        self.next_looks.get_or_init(|| self.reading.pits.iter().map(look).collect())
    }

    /// The smallest sets of other answers that would give a zone another call.
    pub fn changes(&self, zone: Zone) -> &[Change] {
        self.changes[zone as usize].get_or_init(|| changes_on(&self.notes, zone, self.today))
    }

    /// Returns what is worth asking of the field as a whole now, the weightiest first.
    pub fn worth_asking(&self) -> &[WorthAsking] {
        let day = self.today.or_else(|| last_day(&self.notes));
        self.worth_asking.get_or_init(|| worth_asking(&self.notes, &self.reading, &self.map, day))
    }

    /// Returns what to dig next; `None` where the usual plan cannot be worked with.
    pub fn next(&self) -> Option<NextDig> {
        *self.next.get_or_init(|| next_dig(&self.ground(), &self.advice, &Plan::default()).ok())
    }

    /// The field as far as it matters for the next pit.
    pub fn ground(&self) -> Ground {
        Ground::on(&self.notes, &self.reading, &self.map)
    }

    /// The call of a zone, where it has a pit.
    pub fn call_of(&self, zone: Zone) -> Option<&ZoneCall> {
        self.advice.zones.iter().find(|call| call.zone == zone)
    }

    /// The call that holds where a pit was dug; `None` for a reference pit, which stands for no zone.
    pub fn call_at(&self, pit: usize) -> Option<&ZoneCall> {
        self.call_of(stands_for(&self.map, self.notes.pits.get(pit)?)?)
    }

    /// Calls that name a tip depth: to loosen, or once it is dry enough.
    pub fn to_loosen(&self) -> impl Iterator<Item = &ZoneCall> {
        self.advice.zones.iter().filter(|call| call.tip.is_some())
    }

    /// The first reference pit with layers: what the others are drawn beside.
    pub fn reference(&self) -> Option<usize> {
        let mut pits = self.notes.pits.iter().zip(&self.reading.pits);
        pits.position(|(noted, read)| noted.place == PlaceKind::Reference && !read.layers.is_empty())
    }

    /// The last pit dug that has a position: its number and where it is, `[longitude, latitude]`.
    pub fn last_pit(&self) -> Option<(String, [f64; 2])> {
        last_pit(&self.notes)
    }
}

/// The last pit dug that has a position: its number and where it is, `[longitude, latitude]`.
pub fn last_pit(notes: &FieldNotes) -> Option<(String, [f64; 2])> {
    let pits = notes.pits.iter().enumerate();
    let placed = pits.filter_map(|(index, pit)| Some((pit.dug, index, pit.at?)));
    let (_, index, at) = placed.max_by_key(|(dug, index, _)| (*dug, *index))?;
    Some(((index + 1).to_string(), [at.longitude_deg, at.latitude_deg]))
}

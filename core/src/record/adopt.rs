//! Who is who, where a notes file does not say: a record without an id takes the one that is kept for the same field
//! name and the same place in its list (a machine that of the same name, first), so that reading a file again edits
//! records and makes no new ones.

use super::{AfterDig, BuriedLine, Field, FieldNotes, Layer, Machine, Part, Pass, Photo, Pit};
use super::{RecordId, Roll, Step};
use std::collections::{BTreeMap, BTreeSet};

/// Whether a field of a file is one that is kept, by its id, or without one by its name. `made` are the ids that the file
/// does not say.
pub fn is_kept_as(field: &Field, made: &BTreeSet<RecordId>, kept: RecordId, kept_name: &str) -> bool {
    if made.contains(&field.id) { kept_name == field.name } else { kept == field.id }
}

/// Gives the records whose ids are in `made` those of `kept`, place by place, and lets passes and after-digs refer to
/// these. An id is never given twice.
pub fn adopt(notes: &mut FieldNotes, kept: &FieldNotes, made: &BTreeSet<RecordId>) {
    let taken = ids(notes).filter(|id| !made.contains(id)).collect();
    let mut adopter = Adopter { made, taken, given: BTreeMap::new() };
    adopter.take(&mut notes.field.id, Some(kept.field.id));
    adopter.list(&mut notes.field.parts, &kept.field.parts);
    adopter.list(&mut notes.field.lines, &kept.field.lines);
    for (pit, kept) in adopter.parents(&mut notes.pits, &kept.pits) {
        adopter.list(&mut pit.walk, &kept.walk);
        adopter.list(&mut pit.layers, &kept.layers);
        adopter.list(&mut pit.rolls, &kept.rolls);
        adopter.list(&mut pit.photos, &kept.photos);
    }
    adopter.machines(&mut notes.machines, &kept.machines);
    for (pass, kept) in adopter.parents(&mut notes.passes, &kept.passes) {
        adopter.list(&mut pass.rolls, &kept.rolls);
        adopter.list(&mut pass.after_digs, &kept.after_digs);
    }
    let now = |id: RecordId| adopter.given.get(&id).copied().unwrap_or(id);
    for pass in &mut notes.passes {
        pass.machine = pass.machine.map(now);
        pass.after_digs.iter_mut().for_each(|dig| dig.before = dig.before.map(now));
    }
}

/// Every id of a field, the parts of a record before the record.
pub fn ids(notes: &FieldNotes) -> impl Iterator<Item = RecordId> {
    let pits = notes.pits.iter().flat_map(|pit| {
        let parts = of(&pit.walk).chain(of(&pit.layers)).chain(of(&pit.rolls)).chain(of(&pit.photos));
        parts.chain([pit.id])
    });
    let passes = notes.passes.iter().flat_map(|pass| {
        let parts = of(&pass.rolls).chain(of(&pass.after_digs));
        parts.chain([pass.id])
    });
    let marked = of(&notes.field.parts).chain(of(&notes.field.lines));
    pits.chain(passes).chain(of(&notes.machines)).chain(marked).chain([notes.field.id])
}

fn of<R: Named>(list: &[R]) -> impl Iterator<Item = RecordId> {
    list.iter().map(Named::id)
}

/// A record of a list.
trait Named {
    fn id(&self) -> RecordId;
    fn id_mut(&mut self) -> &mut RecordId;
}

macro_rules! named {
    ($($record:ident)+) => {
        $(impl Named for $record {
            fn id(&self) -> RecordId {
                self.id
            }
            fn id_mut(&mut self) -> &mut RecordId {
                &mut self.id
            }
        })+
    };
}
named! { Pit Step Layer Roll Photo Part BuriedLine Machine Pass AfterDig }

struct Adopter<'a> {
    made: &'a BTreeSet<RecordId>,
    taken: BTreeSet<RecordId>,
    /// The kept ids given, by those made for this reading.
    given: BTreeMap<RecordId, RecordId>,
}

impl Adopter<'_> {
    fn take(&mut self, id: &mut RecordId, kept: Option<RecordId>) {
        if let Some(kept) = kept
            && self.made.contains(id)
            && self.taken.insert(kept)
        {
            self.given.insert(*id, kept);
            *id = kept;
        }
    }

    fn list<R: Named>(&mut self, list: &mut [R], kept: &[R]) {
        for (place, record) in list.iter_mut().enumerate() {
            self.take(record.id_mut(), kept.get(place).map(Named::id));
        }
    }

    /// Adopts the records of a list that have parts, and pairs each with the kept one that it now is.
    fn parents<'n, 'k, R: Named>(&mut self, list: &'n mut [R], kept: &'k [R]) -> Vec<(&'n mut R, &'k R)> {
        self.list(list, kept);
        let pair = |record: &'n mut R| {
            let same = kept.iter().find(|kept| kept.id() == record.id())?;
            Some((record, same))
        };
        list.iter_mut().filter_map(pair).collect()
    }

    /// A machine is known by its name; only what bears a new name is taken by its place.
    fn machines(&mut self, machines: &mut [Machine], kept: &[Machine]) {
        for machine in &mut *machines {
            let same = kept.iter().find(|kept| kept.name.trim() == machine.name.trim());
            self.take(&mut machine.id, same.map(Named::id));
        }
        self.list(machines, kept);
    }
}

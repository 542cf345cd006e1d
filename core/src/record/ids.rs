//! The ids of a field's notes: all of them, and others in their place.

use super::{AfterDig, BuriedLine, FieldNotes, Layer, Machine, Part, Pass, Photo, Pit, RecordId, Roll, Step};
use std::collections::BTreeMap;

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

/// Gives records the ids that stand for theirs, also where another record names them.
pub fn rename(notes: &mut FieldNotes, given: &BTreeMap<RecordId, RecordId>) {
    let now = |id: &mut RecordId| *id = given.get(id).copied().unwrap_or(*id);
    now(&mut notes.field.id);
    each(&mut notes.field.parts, now);
    each(&mut notes.field.lines, now);
    for pit in &mut notes.pits {
        now(&mut pit.id);
        each(&mut pit.walk, now);
        each(&mut pit.layers, now);
        each(&mut pit.rolls, now);
        each(&mut pit.photos, now);
    }
    each(&mut notes.machines, now);
    for pass in &mut notes.passes {
        now(&mut pass.id);
        if let Some(machine) = &mut pass.machine {
            now(machine);
        }
        each(&mut pass.rolls, now);
        each(&mut pass.after_digs, now);
        for before in pass.after_digs.iter_mut().filter_map(|dig| dig.before.as_mut()) {
            now(before);
        }
    }
}

fn of<R: Named>(list: &[R]) -> impl Iterator<Item = RecordId> {
    list.iter().map(Named::id)
}

fn each<R: Named>(list: &mut [R], now: impl Fn(&mut RecordId)) {
    for record in list {
        now(record.id_mut());
    }
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

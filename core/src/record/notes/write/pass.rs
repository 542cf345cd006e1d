//! Writes a pass and the holes dug behind it.

use super::{Keys, roll};
use crate::record::{
    AfterDig, Clods, Extent, FeetSeen, FieldNotes, Lift, Pass, PlatesLeft, Profile, RecordId, RootsSeen,
    Smear, Zone,
};
use serde_json::Value;

pub fn pass(pass: &Pass, notes: &FieldNotes) -> Value {
    Keys::of(pass.id)
        .may("machine", pass.machine.map(|id| machine(id, notes)))
        .may("zone", pass.zone.map(Zone::code))
        .may("extent", pass.extent.map(Extent::code))
        .day("done", pass.done)
        .may("tip_mm", pass.tip_mm)
        .may("speed_kmh", pass.speed_kmh)
        .day("driven_on", pass.driven_on)
        .remark(pass.remark.as_deref())
        .list("rolls", pass.rolls.iter().map(roll).collect())
        .list("after_digs", pass.after_digs.iter().map(|dig| after_dig(dig, notes)).collect())
        .close(&pass.unknown)
}

/// Returns what a machine is called: by its name where that is its alone, else by its id.
fn machine(id: RecordId, notes: &FieldNotes) -> String {
    let name = notes.machines.iter().find(|machine| machine.id == id).map(|machine| machine.name.trim());
    let alone = |name: &&str| {
        RecordId::parse(name).is_none()
            && notes.machines.iter().filter(|machine| machine.name.trim() == *name).count() == 1
    };
    name.filter(alone).map_or_else(|| id.to_string(), str::to_owned)
}

/// A pit by its number as told, from 1; by its id where the notes have no such pit.
fn pit(id: RecordId, notes: &FieldNotes) -> Value {
    let place = notes.pits.iter().position(|pit| pit.id == id);
    place.map_or_else(|| id.to_string().into(), |place| (place + 1).into())
}

fn after_dig(dig: &AfterDig, notes: &FieldNotes) -> Value {
    let lengths = |lengths: &[u32]| lengths.iter().map(|mm| Value::from(*mm)).collect();
    Keys::of(dig.id)
        .position(dig.at)
        .time("dug", dig.dug)
        .text("by", dig.by.as_deref())
        .may("before", dig.before.map(|id| pit(id, notes)))
        .list("firm_mm", lengths(&dig.firm_mm))
        .list("slots_mm", lengths(&dig.slots_mm))
        .may("profile", dig.profile.map(Profile::code))
        .may("smear", dig.smear.map(Smear::code))
        .may("lift", dig.lift.map(Lift::code))
        .may("clods", dig.clods.map(Clods::code))
        .may("subsoil_up", dig.subsoil_up)
        .may("plates", dig.plates.map(PlatesLeft::code))
        .may("feet", dig.feet.map(FeetSeen::code))
        .may("old_slots", dig.old_slots)
        .may("roots", dig.roots.map(RootsSeen::code))
        .close(&dig.unknown)
}

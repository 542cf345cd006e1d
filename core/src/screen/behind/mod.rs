//! Passes, and the holes behind the machine.

mod dig;
mod drawn;
mod list;
mod looks;
mod pass;
mod readings;
mod told;

pub use crate::advice::after_dig::READINGS;
pub(super) use dig::show as show_dig;
pub use drawn::{Hole, machine_of};
pub(super) use pass::last_drawn;

use super::bar::gone;
use super::{Act, Done, Draft, Edit, Place, World};
use crate::error::Fault;
use crate::record::{AfterDig, Extent, Pass, RecordId, Roll, RollOutcome, Unknown, Zone};
use chrono::NaiveDate;
pub use looks::SeenBehind;
use looks::toggle;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "fields are ids and what is known already")]
pub enum BehindAct {
    /// A new pass, with what is known of it already.
    NewPass { machine: Option<RecordId>, zone: Option<Zone> },
    /// Something of a pass.
    Pass(PassSaid),
    /// The roll test at the depth of the tips; a second tap takes it back.
    Roll(RollOutcome),
    /// A hole behind the pass.
    NewDig,
    /// The next depth to firm ground.
    Read(u32),
    /// The last one put right.
    LastReading(u32),
    /// The next slot's bottom.
    Slot(u32),
    /// Something seen in the hole or at the machine; a second tap takes it back.
    Seen(SeenBehind),
}

/// What is said of a pass; machine, zone and extent are taken back by a second tap.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "as in the record of a pass")]
pub enum PassSaid {
    Machine(RecordId),
    Zone(Zone),
    Extent(Extent),
    Done(NaiveDate),
    TipMm(Option<u32>),
    SpeedKmh(Option<f64>),
    DrivenOn(Option<NaiveDate>),
}

impl From<BehindAct> for Act {
    fn from(act: BehindAct) -> Self {
        Self::Behind(act)
    }
}

impl From<PassSaid> for Act {
    fn from(said: PassSaid) -> Self {
        Self::Behind(BehindAct::Pass(said))
    }
}

/// The passes of a field, or one of them.
pub(super) fn show(field: RecordId, pass: Option<RecordId>, world: &World) -> Option<Draft> {
    match pass {
        Some(pass) => pass::show(field, pass, world),
        None => list::show(field, world),
    }
}

pub(super) fn tap(
    place: Place,
    act: &BehindAct,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let field = place.field().ok_or_else(gone)?;
    let notes = world.notes(field).ok_or_else(gone)?;
    if let BehindAct::NewPass { machine, zone } = act {
        let pass = Pass { machine: *machine, zone: *zone, ..Pass::new(new_id()) };
        let place = Place::Pass { field, pass: Some(pass.id) };
        let told = world.words.pass_begun();
        return Ok(Done { told, ..Done::save(Edit::Pass { field, pass }, place) });
    }
    let (Place::Pass { pass: Some(pass), .. } | Place::AfterDig { pass, .. }) = place else {
        return Err(gone());
    };
    let pass = notes.passes.iter().find(|its| its.id == pass).ok_or_else(gone)?;
    match act {
        BehindAct::NewPass { .. } => Err(gone()),
        BehindAct::Pass(said) => {
            let pass = said.of(pass);
            let told = told::of_pass(*said, &pass, notes, world.words);
            Ok(Done { told, ..Done::save(Edit::Pass { field, pass }, place) })
        }
        BehindAct::Roll(outcome) => {
            let depth_mm = pass.tip_mm.ok_or_else(gone)?;
            let edit = rolled(pass, depth_mm, *outcome, new_id);
            let told = told::of_roll(&edit, depth_mm, world.words);
            Ok(Done { told, ..Done::save(edit, place) })
        }
        BehindAct::NewDig => {
            let dig = begun(new_id(), world);
            let place = Place::AfterDig { field, pass: pass.id, dig: dig.id };
            let told = world.words.hole_begun();
            Ok(Done { told, ..Done::save(Edit::AfterDig { pass: pass.id, dig }, place) })
        }
        BehindAct::Read(_) | BehindAct::LastReading(_) | BehindAct::Slot(_) | BehindAct::Seen(_) => {
            let Place::AfterDig { dig, .. } = place else { return Err(gone()) };
            let dig = pass.after_digs.iter().find(|its| its.id == dig).ok_or_else(gone)?;
            let dig = seen(dig.clone(), act, world);
            let told = told::of_dig(act, &dig, world.words);
            Ok(Done { told, ..Done::save(Edit::AfterDig { pass: pass.id, dig }, place) })
        }
    }
}

impl PassSaid {
    fn of(self, pass: &Pass) -> Pass {
        let mut pass = pass.clone();
        match self {
            Self::Machine(machine) => toggle(&mut pass.machine, machine),
            Self::Zone(zone) => toggle(&mut pass.zone, zone),
            Self::Extent(extent) => toggle(&mut pass.extent, extent),
            Self::Done(day) => {
                pass.done = Some(day);
                // Wheels that ran before the pass did not run over what it loosened.
                pass.driven_on = pass.driven_on.filter(|driven_on| *driven_on >= day);
            }
            Self::TipMm(tip_mm) => pass.tip_mm = tip_mm,
            Self::SpeedKmh(speed_kmh) => pass.speed_kmh = speed_kmh,
            Self::DrivenOn(day) => {
                pass.driven_on = day.filter(|day| pass.done.is_none_or(|done| done <= *day));
            }
        }
        pass
    }
}

/// A roll test at a depth: noted, changed, or taken back.
fn rolled(pass: &Pass, depth_mm: u32, outcome: RollOutcome, new_id: &mut dyn FnMut() -> RecordId) -> Edit {
    match pass.rolls.iter().find(|roll| roll.depth_mm == depth_mm) {
        Some(roll) if roll.roll == outcome => Edit::Delete { record: roll.id },
        Some(roll) => Edit::Roll { parent: pass.id, roll: Roll { roll: outcome, ..roll.clone() } },
        None => {
            let roll = Roll { id: new_id(), depth_mm, roll: outcome, unknown: Unknown::new() };
            Edit::Roll { parent: pass.id, roll }
        }
    }
}

/// A hole begun now and here.
fn begun(id: RecordId, world: &World) -> AfterDig {
    let by = Some(world.own.name.clone()).filter(|name| !name.is_empty());
    let at = world.fix.map(|fix| fix.position);
    AfterDig { dug: Some(world.now), by, at, ..AfterDig::new(id) }
}

fn seen(mut dig: AfterDig, act: &BehindAct, world: &World) -> AfterDig {
    match act {
        BehindAct::Read(mm) => {
            dig.firm_mm.push(*mm);
            // Whoever reads stands at the hole.
            let today = dig.dug.is_some_and(|dug| dug.date_naive() == world.now.date_naive());
            dig.at = dig.at.or(world.fix.filter(|_| today).map(|fix| fix.position));
        }
        BehindAct::LastReading(mm) => {
            if let Some(last_mm) = dig.firm_mm.last_mut() {
                *last_mm = *mm;
            }
        }
        BehindAct::Slot(mm) => dig.slots_mm.push(*mm),
        BehindAct::Seen(seen) => seen.note(&mut dig),
        BehindAct::NewPass { .. } | BehindAct::Pass(_) | BehindAct::Roll(_) | BehindAct::NewDig => {}
    }
    dig
}

//! Passes, and the holes behind the machine.

mod detail;
mod dig;
mod drawn;
mod hole;
mod list;
mod looks;
mod next;
mod pass;
mod places;
mod readings;
mod told;

pub use crate::advice::after_dig::READINGS;
pub(super) use detail::show as show_detail;
pub(super) use dig::{show as show_dig, show_step};
pub(super) use drawn::key_below;
pub use drawn::{Hole, machine_of};
pub(super) use pass::{last_drawn, show_new};

use super::bar::gone;
use super::{Act, Done, Edit, Place, Screen, World};
use crate::error::Fault;
use crate::record::{AfterDig, Extent, Pass, RecordId, Roll, RollOutcome, Unknown, Zone};
use chrono::NaiveDate;
pub use looks::SeenBehind;
use looks::toggle;
pub use places::{HoleLook, HoleStep, OfPass, PassDetail};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BehindAct {
    /// Something of a pass; of one not saved yet, it saves it.
    Pass(PassSaid),
    /// The roll test at the depth of the tips; a second tap takes it back.
    Roll(RollOutcome),
    /// A depth to firm ground, mm: the next, or in place of the one asked for.
    Read(u32),
    /// The bottom of a slot, mm, likewise.
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
pub(super) fn show(field: RecordId, pass: Option<RecordId>, world: &World) -> Option<Screen> {
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
    let saved = |pass: RecordId| notes.passes.iter().find(|its| its.id == pass).ok_or_else(gone);
    let pass = match place {
        Place::NewPass { machine, zone, .. }
        | Place::PassDetail { pass: OfPass::New { machine, zone }, .. } => {
            &Pass { machine, zone, ..Pass::new(new_id()) }
        }
        Place::Pass { pass: Some(pass), .. }
        | Place::PassDetail { pass: OfPass::Noted(pass), .. }
        | Place::AfterDig { pass, .. }
        | Place::InHole { pass, .. } => saved(pass)?,
        _ => return Err(gone()),
    };
    match act {
        BehindAct::Pass(said) => {
            let pass = said.of(pass);
            let told = told::of_pass(*said, &pass, notes, world.words);
            let place = said.then(field, &pass);
            Ok(Done { told, ..Done::save(Edit::Pass { field, pass }, place) })
        }
        BehindAct::Roll(outcome) => {
            let depth_mm = pass.tip_mm.ok_or_else(gone)?;
            let edit = rolled(pass, depth_mm, *outcome, new_id);
            let told = told::of_roll(&edit, depth_mm, world.words);
            let place = Place::Pass { field, pass: Some(pass.id) };
            Ok(Done { told, ..Done::save(edit, place) })
        }
        BehindAct::Read(_) | BehindAct::Slot(_) | BehindAct::Seen(_) => {
            let (dig, step) = match place {
                Place::AfterDig { dig, .. } => (Some(dig), HoleStep::Reading(u16::MAX)),
                Place::InHole { dig, step, .. } => (dig, step),
                _ => return Err(gone()),
            };
            let dig = match dig {
                Some(dig) => pass.after_digs.iter().find(|its| its.id == dig).ok_or_else(gone)?.clone(),
                None => begun(new_id(), world),
            };
            let (dig, number) = seen(dig, act, step, world);
            let told = told::of_dig(act, &dig, number, world.words);
            let place = looks::then(place, pass, &dig, act, world);
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

    /// Where it leads: back to the pass, from its zone on to how much of it.
    fn then(self, field: RecordId, pass: &Pass) -> Place {
        match self {
            Self::Zone(_) if pass.zone.is_some() => {
                let (pass, detail) = (OfPass::Noted(pass.id), PassDetail::Extent);
                Place::PassDetail { field, pass, detail, from_mm: None }
            }
            _ => Place::Pass { field, pass: Some(pass.id) },
        }
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

/// The hole with what was tapped, and for a depth which it is, from 1.
fn seen(mut dig: AfterDig, act: &BehindAct, step: HoleStep, world: &World) -> (AfterDig, usize) {
    let put = |depths: &mut Vec<u32>, number: u16, mm: u32| {
        let index = usize::from(number).min(depths.len());
        match depths.get_mut(index) {
            Some(depth_mm) => *depth_mm = mm,
            None => depths.push(mm),
        }
        index + 1
    };
    let number = match (act, step) {
        (BehindAct::Read(mm), HoleStep::Reading(number)) => {
            // Whoever reads stands at the hole.
            let today = dig.dug.is_some_and(|dug| dug.date_naive() == world.now.date_naive());
            dig.at = dig.at.or(world.fix.filter(|_| today).map(|fix| fix.position));
            put(&mut dig.firm_mm, number, *mm)
        }
        (BehindAct::Slot(mm), HoleStep::Slot(number)) => put(&mut dig.slots_mm, number, *mm),
        (BehindAct::Seen(seen), _) => {
            seen.note(&mut dig);
            0
        }
        _ => 0,
    };
    (dig, number)
}

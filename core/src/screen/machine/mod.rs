//! The machines of a field, one of them set for what is to be loosened, and its measures.

mod list;
mod measure;
mod new;
mod rows;
mod set;
mod told;

pub use measure::Measure;
pub(super) use measure::show as show_measure;
pub(super) use new::show as show_new;
pub(super) use set::show as show_set;

use super::bar::{gone, typed_name};
use super::{Act, Done, Edit, Place, Screen, World};
use crate::error::Fault;
use crate::record::{
    Drive, FieldNotes, LeadingTines, Machine, RecordId, SpeedRange, Tractor, Unknown, Wings,
};
use crate::words::{Caption, Words};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "fields are the measures of a machine and ids")]
pub enum MachineAct {
    /// A machine with the three measures that every one has.
    Keep { legs: u32, spacing_mm: u32, foot_width_mm: u32 },
    /// A machine described for another field.
    Copy { from: RecordId, machine: RecordId },
    /// The name typed.
    Name,
    /// A measure as it now is.
    Measured(Measured),
}

/// A measure of a machine.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "as in the record of a machine")]
pub enum Measured {
    Legs(u32),
    SpacingMm(u32),
    FootWidthMm(u32),
    WingsMm(Option<u32>),
    LiftMm(Option<u32>),
    Leading {
        fitted: bool,
        depth_mm: Option<u32>,
    },
    /// Slowest and fastest, km/h.
    SpeedKmh(Option<[f64; 2]>),
    ReachMm(Option<u32>),
    Tractor {
        power_kw: f64,
        drive: Drive,
    },
    NoTractor,
    MassKg(Option<u32>),
}

impl From<MachineAct> for Act {
    fn from(act: MachineAct) -> Self {
        Self::Machine(act)
    }
}

impl From<Measured> for Act {
    fn from(measured: Measured) -> Self {
        Self::Machine(MachineAct::Measured(measured))
    }
}

impl Measured {
    /// Where it leads: wings on to their lift, shallow tines to their depth, else to the machine.
    fn then(self, field: RecordId, before: &Machine, machine: &Machine) -> Place {
        let next = match self {
            Self::WingsMm(Some(_)) if before.wings.is_none() => Some(Measure::WingLift),
            Self::Leading { fitted: true, depth_mm: None } => Some(Measure::LeadingDepth),
            _ => None,
        };
        let id = machine.id;
        next.map_or(Place::Machine { field, machine: Some(id) }, |measure| Place::Measure {
            field,
            machine: id,
            measure,
            with: None,
            from_mm: None,
        })
    }

    /// The machine with this measure.
    fn of(self, machine: &Machine) -> Machine {
        let mut machine = machine.clone();
        match self {
            Self::Legs(legs) => machine.legs = legs,
            Self::SpacingMm(mm) => machine.spacing_mm = mm,
            Self::FootWidthMm(mm) => machine.foot_width_mm = mm,
            Self::WingsMm(mm) => {
                let lift_mm = machine.wings.and_then(|wings| wings.lift_mm);
                machine.wings = mm.map(|width_mm| Wings { width_mm, lift_mm });
            }
            Self::LiftMm(lift_mm) => {
                machine.wings = machine.wings.map(|wings| Wings { lift_mm, ..wings });
            }
            Self::Leading { fitted, depth_mm } => {
                machine.leading = fitted.then_some(LeadingTines { depth_mm });
            }
            Self::SpeedKmh(speed) => {
                machine.speed = speed.map(|[lo_kmh, hi_kmh]| SpeedRange { lo_kmh, hi_kmh });
            }
            Self::ReachMm(mm) => machine.reach_mm = mm,
            Self::Tractor { power_kw, drive } => machine.tractor = Some(Tractor { power_kw, drive }),
            Self::NoTractor => (machine.tractor, machine.tractor_mass_kg) = (None, None),
            Self::MassKg(kg) => machine.tractor_mass_kg = kg,
        }
        machine
    }
}

/// The machines of a field, or one of them set.
pub(super) fn show(field: RecordId, machine: Option<RecordId>, world: &World) -> Option<Screen> {
    match machine {
        Some(machine) => set::show(field, machine, None, world),
        None => list::show(field, world),
    }
}

/// Machines of other fields that are not described here.
fn elsewhere<'a>(
    notes: &'a FieldNotes,
    world: &'a World,
) -> impl Iterator<Item = (&'a FieldNotes, &'a Machine)> {
    let alike = |one: &Machine, other: &Machine| one == &Machine { id: one.id, ..other.clone() };
    let others = world.fields.iter().filter(|other| other.field.id != notes.field.id);
    others
        .flat_map(|other| other.machines.iter().map(move |machine| (other, machine)))
        .filter(move |(_, machine)| !notes.machines.iter().any(|here| alike(here, machine)))
}

pub(super) fn tap(
    place: Place,
    act: &MachineAct,
    text: Option<&str>,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let field = place.field().ok_or_else(gone)?;
    let notes = world.notes(field).ok_or_else(gone)?;
    let here = || match place {
        Place::Measure { machine, .. } | Place::Machine { machine: Some(machine), .. } => {
            notes.machines.iter().find(|its| its.id == machine).ok_or_else(gone)
        }
        _ => Err(gone()),
    };
    let machine = match act {
        MachineAct::Keep { legs, spacing_mm, foot_width_mm } => {
            let name = by_measures(*legs, *spacing_mm, world.words);
            told_apart(notes, described(new_id(), name, [*legs, *spacing_mm, *foot_width_mm]))
        }
        MachineAct::Copy { from, machine } => {
            let other = world.notes(*from).ok_or_else(gone)?;
            let machine = other.machines.iter().find(|its| its.id == *machine).ok_or_else(gone)?;
            told_apart(notes, Machine { id: new_id(), ..machine.clone() })
        }
        MachineAct::Name => Machine { name: typed_name(text, world.words)?, ..here()?.clone() },
        MachineAct::Measured(measured) => {
            let before = here()?;
            let mut machine = measured.of(before);
            // A name that nobody typed goes with the measures.
            if nobody_typed(before, world.words) {
                machine.name = by_measures(machine.legs, machine.spacing_mm, world.words);
                machine = told_apart(notes, machine);
            }
            return set_anew((notes, before), machine, *measured, world, new_id);
        }
    };
    let place = Place::Machine { field, machine: Some(machine.id) };
    let told = world.words.kept(&machine.name);
    Ok(Done { told, ..save(field, machine, place)? })
}

/// A machine with another measure. One that has worked in a pass stays as it was: set anew it is another one.
fn set_anew(
    (notes, before): (&FieldNotes, &Machine),
    machine: Machine,
    measured: Measured,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let field = notes.field.id;
    let worked = worked(notes, machine.id) && !notes.machines.contains(&machine);
    let machine = if worked { told_apart(notes, Machine { id: new_id(), ..machine }) } else { machine };
    let place = measured.then(field, before, &machine);
    let told = if worked { world.words.label(Caption::SetAnew) } else { told::told(measured, world.words) };
    Ok(Done { told, ..save(field, machine, place)? })
}

fn save(field: RecordId, machine: Machine, place: Place) -> Result<Done, Fault> {
    match machine.faults().into_iter().next() {
        Some(fault) => Err(fault),
        None => Ok(Done::save(Edit::Machine { field, machine }, place)),
    }
}

/// A name nobody typed, without the spaces that only hold numbers to their units on a screen.
fn by_measures(legs: u32, spacing_mm: u32, words: &Words) -> String {
    words.machine_by_measures(legs, spacing_mm).replace('\u{a0}', " ")
}

/// Returns whether a machine goes by a name that nobody typed, with the number it may have beside others.
fn nobody_typed(machine: &Machine, words: &Words) -> bool {
    let rest = machine.name.strip_prefix(&by_measures(machine.legs, machine.spacing_mm, words));
    rest.is_some_and(|rest| rest.is_empty() || rest.trim_start().parse::<u32>().is_ok())
}

/// The machine with a number to its name where another of the field goes by the same.
fn told_apart(notes: &FieldNotes, machine: Machine) -> Machine {
    let taken = |name: &str| notes.machines.iter().any(|its| its.id != machine.id && its.name == name);
    let numbered = (2..).map(|number: u32| format!("{} {number}", machine.name));
    let name = [machine.name.clone()].into_iter().chain(numbered).find(|name| !taken(name));
    Machine { name: name.unwrap_or_else(|| machine.name.clone()), ..machine }
}

/// Returns whether a machine is named in a pass.
fn worked(notes: &FieldNotes, machine: RecordId) -> bool {
    notes.passes.iter().any(|pass| pass.machine == Some(machine))
}

fn described(id: RecordId, name: String, [legs, spacing_mm, foot_width_mm]: [u32; 3]) -> Machine {
    Machine {
        id,
        name,
        legs,
        spacing_mm,
        foot_width_mm,
        wings: None,
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: None,
        tractor_mass_kg: None,
        unknown: Unknown::new(),
    }
}

//! The machines of a field, one of them set for what is to be loosened, and its measures.

mod measures;
mod new;
mod set;
mod told;

pub(super) use measures::show as measures;
pub(super) use new::show as show_new;

use super::bar::{empty, gone, main_button, typed_name};
use super::{Act, Does, Done, Draft, Edit, Known, Place, Row, ScreenKind, World};
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
pub(super) fn show(field: RecordId, machine: Option<RecordId>, world: &World) -> Option<Draft> {
    match machine {
        Some(machine) => set::show(field, machine, world),
        None => list(field, world),
    }
}

fn list(field: RecordId, world: &World) -> Option<Draft> {
    let (notes, words) = (world.notes(field)?, world.words);
    let place = Place::Machine { field, machine: None };
    let mut screen = empty(place, ScreenKind::Machine, words.label(Caption::Machines), world);
    let row = |machine: &Machine| Row {
        icon: None,
        title: words.name(&machine.name),
        lines: vec![words.machine_measures(machine)],
        does: Does::Act(Act::Go(Place::Machine { field, machine: Some(machine.id) })),
    };
    if notes.machines.is_empty() {
        screen.known.push(Known::Sentence(words.label(Caption::NoMachine)));
    } else {
        screen.known.push(Known::Rows(notes.machines.iter().map(row).collect()));
    }
    let elsewhere: Vec<Row> = elsewhere(notes, world)
        .map(|(other, machine)| Row {
            icon: None,
            title: words.name(&machine.name),
            lines: vec![words.machine_elsewhere(&other.field.name, machine)],
            does: Does::Act(MachineAct::Copy { from: other.field.id, machine: machine.id }.into()),
        })
        .collect();
    if !elsewhere.is_empty() {
        screen.known.push(Known::Line(words.label(Caption::CopyMachine)));
        screen.known.push(Known::Rows(elsewhere));
    }
    let new = Place::NewMachine { field, legs: None, spacing_mm: None, foot_width_mm: None };
    screen.bar.main = Some(main_button(words.label(Caption::DescribeMachine), Act::Go(new)));
    Some(screen)
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
        Place::Measures { machine, .. } | Place::Machine { machine: Some(machine), .. } => {
            notes.machines.iter().find(|its| its.id == machine).ok_or_else(gone)
        }
        _ => Err(gone()),
    };
    let (machine, to_measures) = match act {
        MachineAct::Keep { legs, spacing_mm, foot_width_mm } => {
            let name = by_measures(*legs, *spacing_mm, world.words);
            (told_apart(notes, described(new_id(), name, [*legs, *spacing_mm, *foot_width_mm])), true)
        }
        MachineAct::Copy { from, machine } => {
            let other = world.notes(*from).ok_or_else(gone)?;
            let machine = other.machines.iter().find(|its| its.id == *machine).ok_or_else(gone)?;
            (told_apart(notes, Machine { id: new_id(), ..machine.clone() }), false)
        }
        MachineAct::Name => (Machine { name: typed_name(text, world.words)?, ..here()?.clone() }, true),
        MachineAct::Measured(measured) => {
            let before = here()?;
            let mut machine = measured.of(before);
            // A name that nobody typed goes with the measures.
            if nobody_typed(before, world.words) {
                machine.name = by_measures(machine.legs, machine.spacing_mm, world.words);
                machine = told_apart(notes, machine);
            }
            return set_anew(notes, machine, *measured, world, new_id);
        }
    };
    let place = if to_measures {
        Place::Measures { field, machine: machine.id, power_kw: None }
    } else {
        Place::Machine { field, machine: Some(machine.id) }
    };
    let told = world.words.kept(&machine.name);
    Ok(Done { told, ..save(field, machine, place)? })
}

/// A machine with another measure. One that has worked in a pass stays as it was: set anew it is another one.
fn set_anew(
    notes: &FieldNotes,
    machine: Machine,
    measured: Measured,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let field = notes.field.id;
    let worked = worked(notes, machine.id) && !notes.machines.contains(&machine);
    let machine = if worked { told_apart(notes, Machine { id: new_id(), ..machine }) } else { machine };
    let place = Place::Measures { field, machine: machine.id, power_kw: None };
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

/// Whether a machine goes by a name that nobody typed, with the number it may have beside others.
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

/// Whether a machine is named in a pass.
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

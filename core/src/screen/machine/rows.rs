//! The measures of a machine as rows: what stands there, and what it comes to here.

use super::Measure;
use crate::advice::machine::{Model, Setting};
use crate::record::{Machine, RecordId};
use crate::screen::{Act, Block, Does, Place, Row};
use crate::words::{Caption, Words, WorkText};

/// Those that decide whether it fits first, the rest under a heading of its own.
pub(super) fn rows(
    field: RecordId,
    machine: &Machine,
    setting: Option<&Setting>,
    words: &Words,
) -> [Block; 2] {
    let row = |text: WorkText, lines: Vec<String>, measure: Measure| Row {
        icon: None,
        title: words.label(text),
        lines,
        does: Does::Act(Act::Go(Place::Measure {
            field,
            machine: machine.id,
            measure,
            with: None,
            from_mm: None,
        })),
    };
    let or_not = |value: Option<String>| vec![value.unwrap_or_else(|| words.label(Caption::NotNoted))];
    let and = |value: String, comes_to: Option<String>| {
        vec![comes_to.map_or(value.clone(), |comes_to| words.measure_and(&value, &comes_to))]
    };
    let fit = setting.and_then(|setting| match &setting.spacing {
        Model::Applies(spacing) | Model::AppliesIfAboveCritical(spacing) => Some(words.of(spacing.fit)),
        Model::DoesNotApply(_) => None,
    });
    let speed = machine.speed.map(|speed| words.speeds(speed.lo_kmh, speed.hi_kmh));
    let wings = machine.wings.map(|wings| {
        let lift = wings.lift_mm.map(|mm| words.lift_of(mm));
        words.comma(&[words.depth(wings.width_mm)].into_iter().chain(lift).collect::<Vec<_>>())
    });
    let wings = wings.unwrap_or_else(|| words.label(Caption::NoneFitted));
    let traction = setting.and_then(|setting| setting.traction.as_ref());
    let tractor = machine.tractor.map(|tractor| {
        let value = words.comma(&[words.power_of(tractor.power_kw), words.of(tractor.drive)]);
        and(value, traction.map(|traction| words.of(traction.fit)))
    });
    let deciding = vec![
        row(WorkText::Spacing, and(words.depth(machine.spacing_mm), fit), Measure::Spacing),
        row(WorkText::Reach, or_not(machine.reach_mm.map(|mm| words.depth(mm))), Measure::Reach),
        row(WorkText::Speed, or_not(speed), Measure::Slowest),
        row(
            WorkText::Foot,
            and(words.depth(machine.foot_width_mm), setting.map(|setting| words.tips_run(setting))),
            Measure::Foot,
        ),
        row(WorkText::Wings, vec![wings], Measure::Wings),
        row(WorkText::Tractor, tractor.unwrap_or_else(|| or_not(None)), Measure::Power),
    ];
    let leading = match machine.leading.map(|leading| leading.depth_mm) {
        None => words.label(Caption::NoneFitted),
        Some(None) => words.label(Caption::Fitted),
        Some(Some(mm)) => words.depth(mm),
    };
    let mut further = vec![
        row(WorkText::Leading, vec![leading], Measure::Leading),
        row(WorkText::Mass, or_not(machine.tractor_mass_kg.map(|kg| words.mass_of(kg))), Measure::Mass),
        row(WorkText::Legs, vec![machine.legs.to_string()], Measure::Legs),
        row(WorkText::Name, vec![words.name(&machine.name)], Measure::Name),
    ];
    if machine.wings.is_some() {
        let lift = machine.wings.and_then(|wings| wings.lift_mm);
        further.insert(0, row(WorkText::WingLift, or_not(lift.map(|mm| words.depth(mm))), Measure::WingLift));
    }
    [
        Block::Ways { heading: String::new(), rows: deciding },
        Block::Ways { heading: words.label(WorkText::MoreMeasures), rows: further },
    ]
}

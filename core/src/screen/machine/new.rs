//! A machine described: the three measures every one has, each by a tap, nothing filled in.

use super::super::bar::{asked, choice, empty, main_button};
use super::super::step::FINE;
use super::super::{Act, Button, Draft, Known, Place, ScreenKind, World};
use super::MachineAct;
use crate::record::RecordId;
use crate::words::Caption;

/// Legs offered.
const LEGS: std::ops::RangeInclusive<u32> = 1..=11;
/// Spacings offered, the usual ones; steps lead to every other. Our judgement.
const SPACINGS_MM: [u32; 12] = [300, 350, 400, 450, 500, 550, 600, 650, 700, 750, 800, 900];
/// Foot widths offered, likewise.
const FEET_MM: [u32; 12] = [30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 150, 200];

pub(in crate::screen) fn show(field: RecordId, given: [Option<u32>; 3], world: &World) -> Option<Draft> {
    let words = world.words;
    world.notes(field)?;
    let place = |[legs, spacing_mm, foot_width_mm]: [Option<u32>; 3]| Place::NewMachine {
        field,
        legs,
        spacing_mm,
        foot_width_mm,
    };
    let title = words.label(Caption::DescribeMachine);
    let mut screen = empty(place(given), ScreenKind::Machine, title, world);
    screen.known.push(Known::Line(words.label(Caption::MeasuredFirst)));
    let button = |which: usize, value: u32, label: String| {
        let mut then = given;
        then[which] = Some(value);
        choice(label, Act::Go(place(then)), given[which] == Some(value))
    };
    let lengths = |which: usize, offered: &[u32]| -> Vec<Button> {
        let near = FINE.offered(offered, words.unit()).into_iter();
        near.map(|mm| button(which, mm, words.depth(mm))).collect()
    };
    let legs = LEGS.map(|legs| button(0, legs, legs.to_string())).collect();
    screen.doing.extend(asked(words.label(Caption::FootWidth), 4, lengths(2, &FEET_MM)));
    screen.doing.extend(asked(words.label(Caption::Spacing), 4, lengths(1, &SPACINGS_MM)));
    screen.doing.extend(asked(words.label(Caption::Legs), 6, legs));
    if let [Some(legs), Some(spacing_mm), Some(foot_width_mm)] = given {
        screen.known.push(Known::Sentence(words.machine_by_measures(legs, spacing_mm)));
        let keep = MachineAct::Keep { legs, spacing_mm, foot_width_mm };
        screen.bar.main = Some(main_button(words.label(Caption::KeepMachine), keep));
    }
    Some(screen)
}

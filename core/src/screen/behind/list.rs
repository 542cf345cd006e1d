//! The passes of a field.

use super::super::answers::Answers;
use super::super::bar::{empty, main_button};
use super::super::{Act, Does, Known, Place, Row, Screen, ScreenKind, World};
use super::{BehindAct, machine_of, passes_told};
use crate::record::RecordId;
use crate::words::Caption;

pub(super) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (answers, words) = (Answers::of(field, world)?, world.words);
    let place = Place::Pass { field, pass: None };
    let mut screen = empty(place, ScreenKind::Pass, words.label(Caption::Passes), world);
    let told = passes_told(&answers, world.now.date_naive());
    let rows = answers.notes.passes.iter().zip(&told).map(|(pass, said)| {
        let machine = machine_of(answers.notes, pass).map(|machine| machine.name.as_str());
        Row {
            title: words.pass_title(pass, machine),
            lines: vec![words.pass_verdict(said), words.holes_behind(pass.after_digs.len())],
            does: Does::Act(Act::Go(Place::Pass { field, pass: Some(pass.id) })),
        }
    });
    let rows: Vec<Row> = rows.collect();
    screen.known.push(if rows.is_empty() {
        Known::Sentence(words.label(Caption::NoPass))
    } else {
        Known::Rows(rows)
    });
    // With one machine and one zone to be loosened there is nothing to choose.
    let notes = answers.notes;
    let machine = if let [machine] = &notes.machines[..] { Some(machine.id) } else { None };
    let zones: Vec<_> = answers.to_loosen().map(|call| call.zone).collect();
    let zone = if let [zone] = zones[..] { Some(zone) } else { None };
    let new = BehindAct::NewPass { machine, zone };
    screen.bar.main = Some(main_button(words.label(Caption::NewPass), new));
    Some(screen)
}

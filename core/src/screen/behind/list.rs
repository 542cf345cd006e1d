//! The passes of a field.

use super::super::bar::{empty, main_button};
use super::super::{Act, Does, Draft, Known, Place, Row, ScreenKind, World};
use super::{BehindAct, machine_of};
use crate::record::RecordId;
use crate::words::Caption;

pub(super) fn show(field: RecordId, world: &World) -> Option<Draft> {
    let (answer, words) = (world.answer(field)?, world.words);
    let place = Place::Pass { field, pass: None };
    let mut screen = empty(place, ScreenKind::Pass, words.label(Caption::Passes), world);
    let rows = answer.notes.passes.iter().zip(&answer.passes).map(|(pass, said)| {
        let machine = machine_of(&answer.notes, pass).map(|machine| machine.name.as_str());
        Row {
            icon: None,
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
    let notes = &answer.notes;
    let machine = if let [machine] = &notes.machines[..] { Some(machine.id) } else { None };
    let zones: Vec<_> = answer.to_loosen().map(|call| call.zone).collect();
    let zone = if let [zone] = zones[..] { Some(zone) } else { None };
    let new = BehindAct::NewPass { machine, zone };
    screen.bar.main = Some(main_button(words.label(Caption::NewPass), new));
    Some(screen)
}

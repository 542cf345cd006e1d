//! The passes of a field.

use super::machine_of;
use crate::picture::{Icon, icon};
use crate::record::RecordId;
use crate::screen::bar::{blank, main_button, tool};
use crate::screen::{Act, Block, Does, Headline, Place, Row, Screen, ScreenKind, World};
use crate::words::{Caption, WorkText};

pub(super) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let place = Place::Pass { field, pass: None };
    let mut screen = blank(place, ScreenKind::Pass, words.label(Caption::Passes), world);
    let rows = answer.notes.passes.iter().zip(&answer.passes).map(|(pass, said)| {
        let machine = machine_of(&answer.notes, pass).map(|machine| machine.name.as_str());
        Row {
            icon: Some(icon(Icon::Machine)),
            title: words.pass_title(pass, machine),
            lines: vec![words.pass_verdict(said), words.holes_behind(pass.after_digs.len())],
            does: Does::Act(Act::Go(Place::Pass { field, pass: Some(pass.id) })),
        }
    });
    let rows: Vec<Row> = rows.collect();
    // With one machine and one zone to be loosened there is nothing to choose.
    let notes = &answer.notes;
    let machine = if let [machine] = &notes.machines[..] { Some(machine.id) } else { None };
    let zones: Vec<_> = answer.to_loosen().map(|call| call.zone).collect();
    let zone = if let [zone] = zones[..] { Some(zone) } else { None };
    let new = Act::Go(Place::NewPass { field, machine, zone });
    if rows.is_empty() {
        screen.answer = Some(Headline::new(words.label(Caption::NoPass)));
        screen.next = Some(main_button(words.label(Caption::NewPass), new));
    } else {
        screen.answer = Some(Headline::new(words.label(WorkText::PassesAnswer)));
        screen.blocks.push(Block::Ways { heading: String::new(), rows });
        screen.tools.push(tool(Icon::Machine, words.label(Caption::NewPass), new));
    }
    Some(screen)
}

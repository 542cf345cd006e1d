//! The machines of a field, and those of others that can be taken over.

use super::{MachineAct, elsewhere};
use crate::advice::machine::{Terms, set, work_in_zone};
use crate::answer::FieldAnswer;
use crate::picture::{Icon, icon};
use crate::record::{Machine, RecordId};
use crate::screen::bar::{blank, main_button, tool};
use crate::screen::{Act, Block, Does, Headline, Place, Row, Screen, ScreenKind, World};
use crate::words::{Caption, Words, WorkText};

pub(super) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let notes = &answer.notes;
    let place = Place::Machine { field, machine: None };
    let mut screen = blank(place, ScreenKind::Machine, words.label(Caption::Machines), world);
    let new = Place::NewMachine { field, legs: None, spacing_mm: None, foot_width_mm: None };
    let row = |machine: &Machine| Row {
        icon: Some(icon(Icon::Machine)),
        title: words.name(&machine.name),
        lines: lines(&answer, machine, words),
        does: Does::Act(Act::Go(Place::Machine { field, machine: Some(machine.id) })),
    };
    if notes.machines.is_empty() {
        screen.answer = Some(Headline::new(words.label(WorkText::NoMachineAnswer)));
        screen.next = Some(main_button(words.label(Caption::DescribeMachine), Act::Go(new)));
    } else {
        screen.answer = Some(Headline::new(words.label(WorkText::MachinesAnswer)));
        let rows = notes.machines.iter().map(row).collect();
        screen.blocks.push(Block::Ways { heading: String::new(), rows });
        screen.tools.push(tool(Icon::Machine, words.label(Caption::DescribeMachine), Act::Go(new)));
    }
    let elsewhere: Vec<Row> = elsewhere(notes, world)
        .map(|(other, machine)| Row {
            icon: Some(icon(Icon::OpenFile)),
            title: words.name(&machine.name),
            lines: vec![words.machine_elsewhere(&other.field.name, machine)],
            does: Does::Act(MachineAct::Copy { from: other.field.id, machine: machine.id }.into()),
        })
        .collect();
    if !elsewhere.is_empty() {
        screen.blocks.push(Block::Ways { heading: words.label(Caption::CopyMachine), rows: elsewhere });
    }
    Some(screen)
}

/// How a machine fits what is to be loosened, then its legs and reach.
fn lines(answer: &FieldAnswer, machine: &Machine, words: &Words) -> Vec<String> {
    let measures: Vec<String> =
        [words.machine_measures(machine)].into_iter().chain(words.reaches(machine)).collect();
    let fit = answer.to_loosen().next().and_then(|call| {
        let work = work_in_zone(&answer.notes.field, call, machine, &Terms::default()).ok()?;
        let setting = set(machine, &work).ok()?;
        Some(super::set::Fit::of(&setting).headline(&setting, &work, words))
    });
    fit.into_iter().chain([words.comma(&measures)]).collect()
}

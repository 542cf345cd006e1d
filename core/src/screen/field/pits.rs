//! The pits of a field, each leading to where it was left.

use super::super::bar::blank;
use super::super::part::{way, ways_under};
use super::super::partners::versions_line;
use super::super::photos::missing;
use super::super::pit::where_left;
use super::super::{Act, Block, Does, Headline, Place, Row, Screen, ScreenKind, World};
use crate::answer::FieldAnswer;
use crate::picture::{Icon, icon};
use crate::record::{Condition, PlaceKind, RecordId};
use crate::words::FieldText;

/// All pits of a field.
pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let title = words.name(&answer.notes.field.name);
    let mut shown = blank(Place::Pits { field }, ScreenKind::Field, title, world);
    shown.answer = Some(Headline::new(counted(&answer, world)));
    shown.blocks = ways_under(String::new(), rows(&answer, world));
    Some(shown)
}

/// The pits as rows where they are few, else one row that leads to them.
pub(super) fn block(answer: &FieldAnswer, few: usize, world: &World) -> Vec<Block> {
    let heading = || world.words.label(FieldText::Pits);
    match answer.notes.pits.len() {
        count if count <= few => ways_under(heading(), rows(answer, world)),
        _ => {
            let (field, pits) = (answer.notes.field.id, &answer.notes.pits);
            let mut row = way(Some(Icon::Layers), heading(), counted(answer, world), Place::Pits { field });
            // What asks something of a person in one of them is told here too.
            row.lines.extend(missing(pits, world));
            row.lines.extend(pits.iter().find_map(|pit| versions_line(field, pit.id, world)));
            ways_under(String::new(), [row])
        }
    }
}

/// `6 pits, last 2026-09-12`
fn counted(answer: &FieldAnswer, world: &World) -> String {
    let pits = &answer.notes.pits;
    let last = pits.iter().filter_map(|pit| pit.dug).max().map(|dug| dug.date_naive());
    world.words.last_dug(pits.len(), last)
}

fn rows(answer: &FieldAnswer, world: &World) -> Vec<Row> {
    (0..answer.notes.pits.len()).map(|index| row(answer, index, world)).collect()
}

fn row(answer: &FieldAnswer, index: usize, world: &World) -> Row {
    let words = world.words;
    let (pit, read) = (&answer.notes.pits[index], &answer.reading.pits[index]);
    let worst = read.layers.iter().max_by_key(|layer| layer.condition);
    let worst = worst.map(|layer| match layer.condition {
        Condition::Open => words.label(layer.condition),
        _ => words.describe_layer_short(layer),
    });
    let dug = pit.dug.map(|dug| words.date(dug.date_naive()));
    let sign = if pit.place == PlaceKind::Reference { Icon::Reference } else { Icon::Pit };
    Row {
        icon: Some(icon(sign)),
        title: words.pit_numbered(index + 1, pit.place),
        lines: dug
            .into_iter()
            .chain(worst)
            .chain(missing(std::slice::from_ref(pit), world))
            .chain(versions_line(answer.notes.field.id, pit.id, world))
            .collect(),
        does: Does::Act(Act::Go(where_left(answer, index, world))),
    }
}

//! A field handed over or taken in.

use super::bar::empty;
use super::{Act, Ask, Button, Does, Doing, Known, Place, Row, Screen, ScreenKind, Size, World};
use crate::record::{FieldNotes, RecordId};
use crate::words::{Caption, Words};

pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let place = Place::HandOver { field };
    let mut screen = empty(place, ScreenKind::HandOver, words.label(Caption::HandOver), world);
    let counts = words.hand_over_counts(&notes.field.name, notes.pits.len(), notes.passes.len());
    screen.known = vec![
        Known::Sentence(counts),
        Known::Line(words.label(Caption::WhatLeaves)),
        Known::Line(words.label(Caption::PositionsLeave)),
        Known::Line(words.label(Caption::PhotosStay)),
        Known::Line(words.label(Caption::Whom)),
    ];
    // A notes file with too few readings in a hole is refused where it is taken in.
    let half_read: Vec<Row> = half_read(field, notes, words);
    let whole = half_read.is_empty();
    if !whole {
        screen.known.push(Known::Sentence(words.label(Caption::HalfRead)));
        screen.known.push(Known::Rows(half_read));
    }
    let open = Button::new(words.label(Caption::OpenFile), Does::Ask(Ask::OpenFile));
    screen.doing = vec![Doing::Choices { columns: 1, buttons: vec![open] }];
    let share = Button::new(words.label(Caption::ShareField), Does::Ask(Ask::ShareField { field }));
    screen.bar.main = Some(Button { size: Size::Large, enabled: whole, ..share });
    Some(screen)
}

/// Holes behind the machine that a file may not hold as they are; each row leads there.
fn half_read(field: RecordId, notes: &FieldNotes, words: &Words) -> Vec<Row> {
    let holes = notes
        .passes
        .iter()
        .flat_map(|pass| pass.after_digs.iter().enumerate().map(move |(index, dig)| (pass, index, dig)));
    holes
        .filter(|(_, _, dig)| !dig.faults().is_empty())
        .map(|(pass, index, dig)| Row {
            title: words.hole_behind(index + 1, dig.dug.map(|dug| dug.date_naive())),
            lines: vec![words.pass_title(pass, None)],
            does: Does::Act(Act::Go(Place::AfterDig { field, pass: pass.id, dig: dig.id })),
        })
        .collect()
}

//! A field handed over or taken in.

use super::bar::empty;
use super::{Ask, Button, Does, Doing, Known, Place, Screen, ScreenKind, Size, World};
use crate::record::RecordId;
use crate::words::Caption;

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
    let open = Button::new(words.label(Caption::OpenFile), Does::Ask(Ask::OpenFile));
    screen.doing = vec![Doing::Choices { columns: 1, buttons: vec![open] }];
    let share = Button::new(words.label(Caption::ShareField), Does::Ask(Ask::ShareField { field }));
    screen.bar.main = Some(Button { size: Size::Large, ..share });
    Some(screen)
}

//! A field handed over or taken in.

use super::bar::empty;
use super::field::buried::is_short;
use super::part::{choices, go};
use super::{Act, Ask, Button, Does, Doing, Draft, Known, Place, Row, ScreenKind, World};
use crate::place::Outline;
use crate::record::{BuriedLine, Field, FieldNotes, RecordId};
use crate::words::{Caption, DetailText, PartnerText, PitText, Words};

pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Draft> {
    let (notes, words) = (world.notes(field)?, world.words);
    let place = Place::HandOver { field };
    let mut screen = empty(place, ScreenKind::HandOver, words.label(Caption::HandOver), world);
    let counts = words.hand_over_counts(&notes.field.name, notes.pits.len(), notes.passes.len());
    screen.known = vec![
        Known::Sentence(counts),
        Known::Line(words.label(Caption::AsFile)),
        Known::Line(words.label(Caption::PhotosStay)),
    ];
    screen.known.extend(privacy(words).map(Known::Line));
    // A notes file with something only begun is refused where it is taken in.
    let unfinished = [
        (words.label(Caption::HalfRead), half_read(field, notes, words)),
        (words.label(DetailText::LineShort), lines_begun(&notes.field, words)),
        (words.label(DetailText::OutlineShort), outline_begun(&notes.field, words).into_iter().collect()),
    ];
    let unfinished: Vec<_> = unfinished.into_iter().filter(|(_, rows)| !rows.is_empty()).collect();
    let whole = unfinished.is_empty();
    for (what, rows) in unfinished {
        screen.known.extend([Known::Sentence(what), Known::Rows(rows)]);
    }
    let everything = go(words.label(PartnerText::Title), Place::Partners);
    screen.doing = vec![Doing::Question(words.label(Caption::OrEverything)), choices(1, vec![everything])];
    let share = Button::new(words.label(Caption::ShareField), Does::Ask(Ask::ShareField { field }));
    screen.bar.main = Some(Button { strong: true, enabled: whole, ..share });
    Some(screen)
}

/// What is to be known before anything leaves the phone.
pub(super) fn privacy(words: &Words) -> [String; 3] {
    [Caption::WhatLeaves, Caption::PositionsLeave, Caption::Whom].map(|caption| words.label(caption))
}

/// Lines of what lies buried with fewer than two places; each row leads there.
fn lines_begun(field: &Field, words: &Words) -> Vec<Row> {
    let row = |line: &BuriedLine| Row {
        icon: None,
        title: words.buried_line(line),
        lines: Vec::new(),
        does: Does::Act(Act::Go(Place::Lines { field: field.id, line: Some(line.id) })),
    };
    field.lines.iter().filter(|line| is_short(line)).map(row).collect()
}

/// An edge that encloses nothing yet; the row leads there.
fn outline_begun(field: &Field, words: &Words) -> Option<Row> {
    let begun = !field.outline.is_empty() && Outline::new(&field.outline).is_err();
    begun.then(|| Row {
        icon: None,
        title: words.label(PitText::WalkEdge),
        lines: vec![words.corners(field.outline.len())],
        does: Does::Act(Act::Go(Place::Outline { field: field.id })),
    })
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
            icon: None,
            title: words.hole_behind(index + 1, dig.dug.map(|dug| dug.date_naive())),
            lines: vec![words.pass_title(pass, None)],
            does: Does::Act(Act::Go(Place::AfterDig { field, pass: pass.id, dig: dig.id })),
        })
        .collect()
}

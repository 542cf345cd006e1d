//! A field handed over or taken in.

use super::bar::blank;
use super::field::buried::is_short;
use super::part::{more, way, ways, ways_under};
use super::{Act, Ask, Block, Button, Does, Headline, Place, Row, Screen, ScreenKind, Section, World};
use crate::picture::Icon;
use crate::place::Outline;
use crate::record::{BuriedLine, Field, FieldNotes, RecordId};
use crate::words::{Caption, DetailText, FieldText, PageText, PartnerText, PitText, Words};

pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let place = Place::HandOver { field };
    let mut screen = blank(place, ScreenKind::HandOver, words.label(Caption::HandOver), world);
    let counts = words.hand_over_counts(&notes.field.name, notes.pits.len(), notes.passes.len());
    // A notes file with something only begun is refused where it is taken in.
    let unfinished = [
        (words.label(Caption::HalfRead), half_read(field, notes, words)),
        (words.label(DetailText::LineShort), lines_begun(&notes.field, words)),
        (words.label(DetailText::OutlineShort), outline_begun(&notes.field, words).into_iter().collect()),
    ];
    let whole = unfinished.iter().all(|(_, rows)| rows.is_empty());
    screen.answer = Some(if whole {
        Headline { line: words.label(Caption::AsFile), ..Headline::new(counts) }
    } else {
        Headline { line: counts, ..Headline::new(words.label(FieldText::FinishFirst)) }
    });
    screen.blocks = unfinished.into_iter().flat_map(|(what, rows)| ways_under(what, rows)).collect();
    let everything = way(
        Some(Icon::Partners),
        words.label(PartnerText::Title),
        words.label(Caption::OrEverything),
        Place::Partners,
    );
    screen.blocks.extend(pages(field, notes, world));
    screen.blocks.extend(ways([everything]));
    screen.caution = words.label(Caption::Whom);
    screen.more = leaves(world).into_iter().collect();
    let share = Button::new(words.label(Caption::ShareField), Does::Ask(Ask::ShareField { field }));
    screen.next = Some(share.enabled_if(whole));
    Some(screen)
}

/// The pages of a field that has a pit, to be read and printed: its sheet, and the driver's card where ground is to be
/// loosened.
fn pages(field: RecordId, notes: &FieldNotes, world: &World) -> Vec<Block> {
    let words = world.words;
    let to_loosen = world.answer(field).is_some_and(|answer| answer.to_loosen().next().is_some());
    let row = |title: PageText, line: PageText, card: bool| Row {
        icon: None,
        title: words.label(title),
        lines: vec![words.label(line)],
        does: Does::Ask(Ask::SharePage { field, card }),
    };
    let sheet = (!notes.pits.is_empty()).then(|| row(PageText::Sheet, PageText::SheetLine, false));
    let card = to_loosen.then(|| row(PageText::Card, PageText::CardLine, true));
    ways_under(words.label(PageText::Pages), sheet.into_iter().chain(card))
}

/// Returns what goes along with a file and what does not, folded.
pub(super) fn leaves(world: &World) -> Option<Section> {
    let lines = [Caption::PhotosStay, Caption::WhatLeaves, Caption::PositionsLeave];
    more(world, FieldText::WhatGoes, lines.map(|caption| world.words.label(caption)).into())
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

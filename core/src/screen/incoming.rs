//! A notes file that was opened from outside, shown before anything of it is taken in; and two fields of one name, which may be one.

use super::bar::{act_button, blank, gone};
use super::{Act, Block, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World};
use crate::error::Fault;
use crate::record::{FieldNotes, RecordId};
use crate::words::PartnerText;

/// A notes file that waits to be taken in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Incoming {
    /// What it would add and change, in the words of the chosen language.
    pub told: Vec<String>,
}

/// Returns what the file would add and change, and the tap that takes it in; gone once it is taken in or the app was ended.
pub(super) fn show(world: &World) -> Option<Screen> {
    let (incoming, words) = (world.incoming?, world.words);
    let title = words.label(PartnerText::NotesFile);
    let mut screen = blank(Place::Incoming, ScreenKind::HandOver, title, world);
    let mut told = incoming.told.iter().cloned();
    let first = told.next().unwrap_or_else(|| words.label(PartnerText::NotesFile));
    screen.answer = Some(Headline { line: words.label(PartnerText::NothingGoes), ..Headline::new(first) });
    screen.blocks = told.map(Block::Text).collect();
    screen.next = Some(act_button(words.label(PartnerText::TakeIn), Act::TakeIn));
    Some(screen)
}

/// The file is taken in; what comes of it is told once it is done.
pub(super) fn take_in() -> Done {
    Done { take_in: true, ..Done::go(Place::Incoming) }
}

/// The ways to say that fields of one name are one, for the list of fields.
pub(super) fn same_names(world: &World) -> Vec<Row> {
    let words = world.words;
    let name = |notes: &FieldNotes| notes.field.name.trim().to_lowercase();
    let mut rows = Vec::new();
    for (at, notes) in world.fields.iter().enumerate() {
        // Each with the next of its name: one after the other they become one.
        if let Some(other) = world.fields[at + 1..].iter().find(|other| name(other) == name(notes)) {
            let place = Place::OneField { field: notes.field.id, other: other.field.id };
            rows.push(Row {
                icon: None,
                title: words.same_name(&notes.field.name),
                lines: vec![words.label(PartnerText::AreTheyOne)],
                does: Does::Act(Act::Go(place)),
            });
        }
    }
    rows
}

/// Two fields, and the tap that says that they are one.
pub(super) fn show_two(field: RecordId, other: RecordId, world: &World) -> Option<Screen> {
    let (one, two, words) = (world.notes(field)?, world.notes(other)?, world.words);
    let title = words.name(&one.field.name);
    let mut screen = blank(Place::OneField { field, other }, ScreenKind::HandOver, title, world);
    screen.answer = Some(Headline::new(words.label(PartnerText::AreTheyOne)));
    let counts = [one, two].map(|notes| {
        Block::Text(words.hand_over_counts(&notes.field.name, notes.pits.len(), notes.passes.len()))
    });
    screen.blocks.extend(counts);
    screen.blocks.push(Block::Text(words.label(PartnerText::OneFieldMeans)));
    screen.next = Some(act_button(words.label(PartnerText::OneField), Act::Join { field, other }));
    Some(screen)
}

/// They are one field from now on.
pub(super) fn join(field: RecordId, other: RecordId, world: &World) -> Result<Done, Fault> {
    let (Some(one), Some(two)) = (world.notes(field), world.notes(other)) else {
        return Err(gone(world.words));
    };
    let told = world.words.joined(&one.field.name, one.pits.len() + two.pits.len());
    Ok(Done { told, ..Done::save(Edit::Join { one: field, other }, Place::Fields) })
}

//! The example: an invented field to look at before there is one's own. It stands in no store, so nothing of it is saved, handed over
//! or left behind, and what would save says that it is an example.

use super::{Act, Block, Button, Does, Done, Place, Screen, World};
use crate::record::{FieldNotes, RecordId, notes};
use crate::words::FieldText;
use std::sync::OnceLock;

/// The id of the field: no device makes one of the year 1970.
pub const FIELD: RecordId = RecordId::new(0, [0xEF; 10]);

/// The field of the demo with everything that can be noted.
const NOTES: &str = include_str!("../../../bindings/cli/demo/lapwing_ground.notes.json");

/// The example as all the fields there are.
pub fn fields() -> &'static [FieldNotes] {
    static FIELDS: OnceLock<Vec<FieldNotes>> = OnceLock::new();
    FIELDS.get_or_init(|| {
        let mut made = 0;
        let mut new_id = || {
            made += 1;
            RecordId::new(made, [0xEF; 10])
        };
        let read = notes::read(NOTES, &mut new_id).ok();
        read.map(|read| read.notes)
            .map(|mut notes| {
                notes.field.id = FIELD;
                notes
            })
            .into_iter()
            .collect()
    })
}

/// Returns whether a place lies in the example.
pub fn is_in(place: Place) -> bool {
    place.field() == Some(FIELD)
}

/// A screen of the example: it says what it is, and keeps of its ways those that only lead on.
pub(super) fn marked(mut screen: Screen, world: &World) -> Screen {
    if !is_in(screen.place) {
        return screen;
    }
    let words = world.words;
    screen.title = words.named(&words.label(FieldText::Example), &screen.title);
    screen.menu.clear();
    screen.tools.retain(|tool| leads_on(&tool.does));
    screen.next = screen.next.filter(|next: &Button| !matches!(next.does, Does::Ask(_)));
    for block in &mut screen.blocks {
        if let Block::Ways { rows, .. } = block {
            rows.retain(|row| leads_on(&row.does));
        }
    }
    screen.blocks.retain(|block| !matches!(block, Block::Ways { rows, .. } if rows.is_empty()));
    screen
}

const fn leads_on(does: &Does) -> bool {
    matches!(does, Does::Act(Act::Go(_)))
}

/// Returns what comes of a tap in the example: one goes where it leads, and what it would save is left.
pub(super) fn nothing_saved(from: Place, done: Done, world: &World) -> Done {
    if !is_in(from) || done == Done::go(done.place) {
        return done;
    }
    Done { told: world.words.of(FieldText::ExampleStays), ..Done::go(from) }
}

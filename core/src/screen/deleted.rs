//! What was deleted on this device, each row to bring it back with what went along.

use super::bar::blank;
use super::part::ways;
use super::partners::local;
use super::{Act, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World};
use crate::picture::{Icon, icon};
use crate::record::RecordId;
use crate::words::FieldText;

pub(super) fn show(world: &World) -> Screen {
    let words = world.words;
    let mut shown = blank(Place::WentAway, ScreenKind::Deleting, words.label(FieldText::DeletedHere), world);
    let none = world.went_away.is_empty();
    let asked = if none { FieldText::NothingDeleted } else { FieldText::BackAsked };
    shown.answer = Some(Headline::new(words.of(asked)));
    shown.blocks = ways(world.went_away.iter().map(|gone| Row {
        icon: Some(icon(Icon::Undo)),
        title: words.went_away(gone, local(gone.deleted_ms, world)),
        lines: Vec::new(),
        does: Does::Act(Act::BringBack { record: gone.of.record }),
    }));
    shown
}

/// Returns what a tap on a row does.
pub(super) fn bring_back(place: Place, record: RecordId, world: &World) -> Done {
    let found = world.went_away.iter().find(|gone| gone.of.record == record);
    let told = found.map(|gone| world.words.brought_back(gone)).unwrap_or_default();
    Done { told, ..Done::save(Edit::BringBack { record }, place) }
}

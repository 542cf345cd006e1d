//! The bar at the bottom, and buttons as they are made most.

use super::{Act, Button, Does, Place, Screen, ScreenKind, World};
use crate::error::Fault;
use crate::harmless;
use crate::picture::{Icon, icon};
use crate::words::{Caption, Words};

/// A screen by rank with nothing on it yet: its title, the way back, and undo among its tools.
pub(super) fn blank(place: Place, kind: ScreenKind, title: String, world: &World) -> Screen {
    let back =
        back_from(place, world).map(|back| act_button(world.words.label(Caption::Back), Act::Go(back)));
    Screen {
        place,
        kind,
        title,
        back,
        menu: Vec::new(),
        answer: None,
        picture: None,
        blocks: Vec::new(),
        caution: String::new(),
        next: None,
        tools: undo_and_redo(world),
        more: Vec::new(),
        told: String::new(),
        awake: false,
        wants_position: false,
        keys: None,
    }
}

/// Undo, which says what it takes back, and redo for as long as there is something to bring again.
pub(super) fn undo_and_redo(world: &World) -> Vec<Button> {
    let words = world.words;
    let undo = tool(Icon::Undo, words.label(Caption::Undo), Act::Undo);
    let undo = match world.undo {
        Some(save) => Button { note: words.save_named(save), ..undo },
        None => undo.enabled_if(false),
    };
    let redo = world.redo.map(|save| Button {
        note: words.save_named(save),
        ..tool(Icon::Redo, words.label(Caption::Redo), Act::Redo)
    });
    [undo].into_iter().chain(redo).collect()
}

/// Where *back* leads from a place.
fn back_from(place: Place, world: &World) -> Option<Place> {
    place.above().map(|above| world.back.filter(|back| !back.is_like(place)).unwrap_or(above))
}

/// A tool of the line at the very bottom: an icon and its word.
pub(super) fn tool(of: Icon, label: impl Into<String>, act: impl Into<Act>) -> Button {
    Button { drawing: Some(icon(of)), ..act_button(label, act) }
}

/// A button whose tap goes to the core.
pub(super) fn act_button(label: impl Into<String>, act: impl Into<Act>) -> Button {
    Button::new(label, Does::Act(act.into()))
}

/// The same, marked where it is the answer given.
pub(super) fn choice(label: impl Into<String>, act: impl Into<Act>, chosen: bool) -> Button {
    Button { chosen, ..act_button(label, act) }
}

/// The main action of the bar.
pub(super) fn main_button(label: impl Into<String>, act: impl Into<Act>) -> Button {
    Button { strong: true, ..act_button(label, act) }
}

/// Returns what is said where the record that was tapped on is no longer there.
pub(super) fn gone(words: &Words) -> Fault {
    let [wrong, todo] = words.gone();
    Fault::new("", wrong, todo)
}

/// Returns what was typed as a name, clean and not too long.
pub(super) fn typed_name(text: Option<&str>, words: &Words) -> Result<String, Fault> {
    let name = harmless::typed_name(text.unwrap_or_default());
    let [wrong, todo] = words.name_empty();
    if name.is_empty() { Err(Fault::new("", wrong, todo)) } else { Ok(name) }
}

//! The bar at the bottom, and buttons as they are made most.

use super::{Act, Bar, Button, Does, Doing, Place, Screen, ScreenKind, Size, World};
use crate::error::Fault;
use crate::harmless;
use crate::words::{Caption, Words};

/// A screen with nothing on it yet: its title, and a bar with undo and back.
pub(super) fn empty(place: Place, kind: ScreenKind, title: String, world: &World) -> Screen {
    let words = world.words;
    let small =
        |label: Caption, act: Act| Button { size: Size::Small, ..act_button(words.label(label), act) };
    let undo = Button { enabled: world.undo.is_some(), ..small(Caption::Undo, Act::Undo) };
    let back = place.above().map(|above| small(Caption::Back, Act::Go(above)));
    Screen {
        place,
        kind,
        title,
        known: Vec::new(),
        doing: Vec::new(),
        known_first: false,
        bar: Bar { undo: Some(undo), main: None, back },
        told: String::new(),
        awake: false,
        wants_position: false,
        keys: None,
    }
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
    Button { size: Size::Large, ..act_button(label, act) }
}

/// A question with its answers; without answers there is nothing to ask.
pub(super) fn asked(question: String, columns: u8, buttons: Vec<Button>) -> Vec<Doing> {
    if buttons.is_empty() {
        return Vec::new();
    }
    vec![Doing::Question(question), Doing::Choices { columns, buttons }]
}

/// What is said where the record that was tapped on is no longer there.
pub(super) fn gone(words: &Words) -> Fault {
    let [wrong, todo] = words.gone();
    Fault::new("", wrong, todo)
}

/// What was typed as a name, clean and not too long.
pub(super) fn typed_name(text: Option<&str>, words: &Words) -> Result<String, Fault> {
    let name = harmless::typed_name(text.unwrap_or_default());
    let [wrong, todo] = words.name_empty();
    if name.is_empty() { Err(Fault::new("", wrong, todo)) } else { Ok(name) }
}

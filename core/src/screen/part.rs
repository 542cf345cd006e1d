//! Pieces that screens are put together from.

use super::{Act, Bar, Button, Does, Doing, Known, Place, Screen, ScreenKind, Size, World};
use crate::words::{Listed, PitText};

/// A button that goes somewhere.
pub(super) fn go(label: impl Into<String>, place: Place) -> Button {
    Button::new(label, Does::Act(Act::Go(place)))
}

/// A button with an act.
pub(super) fn act(label: impl Into<String>, act: impl Into<Act>) -> Button {
    Button::new(label, Does::Act(act.into()))
}

impl Button {
    /// The same in another size.
    #[must_use]
    pub(super) fn sized(self, size: Size) -> Self {
        Self { size, ..self }
    }

    /// The same, marked as the answer given.
    #[must_use]
    pub(super) fn chosen_if(self, chosen: bool) -> Self {
        Self { chosen, ..self }
    }

    /// The same, to be tapped only where it can be.
    #[must_use]
    pub(super) fn enabled_if(self, enabled: bool) -> Self {
        Self { enabled, ..self }
    }

    /// The same with what is seen.
    #[must_use]
    pub(super) fn drawn(self, drawing: Option<crate::picture::Drawing>) -> Self {
        Self { drawing, ..self }
    }
}

/// Buttons side by side.
pub(super) fn choices(columns: u8, buttons: Vec<Button>) -> Doing {
    Doing::Choices { columns, buttons }
}

/// Answers to a question, so many in a row that each stays large.
pub(super) fn answers(buttons: Vec<Button>) -> Doing {
    let columns = match buttons.len() {
        0 | 1 => 1,
        2 | 4 => 2,
        _ => 3,
    };
    choices(columns, buttons)
}

/// A screen with nothing in it but its title and its bar.
pub(super) fn screen(place: Place, kind: ScreenKind, title: impl Into<String>, world: &World) -> Screen {
    let text = |text: PitText| world.words.label(text);
    Screen {
        place,
        kind,
        title: title.into(),
        known: Vec::new(),
        doing: Vec::new(),
        bar: Bar {
            undo: world
                .can_undo
                .then(|| Button::new(text(PitText::Undo), Does::Act(Act::Undo)).sized(Size::Small)),
            main: None,
            back: place.above().map(|above| go(text(PitText::Back), above).sized(Size::Small)),
        },
        told: String::new(),
        awake: false,
        wants_position: false,
    }
}

/// Lines under the heading of a list; nothing where there are none.
pub(super) fn section(
    world: &World,
    heading: impl Listed,
    lines: impl IntoIterator<Item = String>,
) -> Option<Known> {
    let lines: Vec<String> = lines.into_iter().collect();
    (!lines.is_empty()).then(|| Known::Section { heading: world.words.label(heading), lines })
}

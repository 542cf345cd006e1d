//! Pieces that screens are put together from.

use super::{Act, Button, Does, Doing, Known, Place, World};
use crate::words::Listed;

/// A button that goes somewhere.
pub(super) fn go(label: impl Into<String>, place: Place) -> Button {
    Button::new(label, Does::Act(Act::Go(place)))
}

impl Button {
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

    /// The same with what it answers, for whoever does not see the question.
    #[must_use]
    pub(super) fn about(self, about: String) -> Self {
        Self { about, ..self }
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

/// Lines under the heading of a list; nothing where there are none.
pub(super) fn section(
    world: &World,
    heading: impl Listed,
    lines: impl IntoIterator<Item = String>,
) -> Option<Known> {
    let lines: Vec<String> = lines.into_iter().collect();
    (!lines.is_empty()).then(|| Known::Section { heading: world.words.label(heading), lines })
}

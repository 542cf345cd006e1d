//! Buttons that would be called alike are told apart, for whoever hears a button without the question above it.

use super::{Button, Doing, Screen};
use std::collections::HashMap;

/// Gives every button that would be called like another of its screen what it answers, so that each has a name of its
/// own.
pub(super) fn told_apart(mut screen: Screen) -> Screen {
    let mut called: HashMap<String, usize> = HashMap::new();
    for button in screen.buttons() {
        *called.entry(button.spoken()).or_default() += 1;
    }
    let mut asked = String::new();
    for doing in &mut screen.doing {
        match doing {
            Doing::Question(question) => asked.clone_from(question),
            Doing::Choices { buttons, .. } => {
                let alike =
                    |button: &&mut Button| called.get(&button.spoken()).is_some_and(|count| *count > 1);
                buttons.iter_mut().filter(alike).for_each(|button| button.about.clone_from(&asked));
            }
            Doing::Typing { .. } => asked.clear(),
        }
    }
    screen
}

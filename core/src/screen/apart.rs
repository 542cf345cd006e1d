//! Buttons that would be called alike are told apart, for whoever hears a button without the question above it.

use super::{Block, Button, Screen};
use std::collections::HashMap;

/// Gives every button that would be called like another of its screen what it answers, so that each has a name of its
/// own.
pub(super) fn told_apart(mut screen: Screen) -> Screen {
    let mut called: HashMap<String, usize> = HashMap::new();
    for button in screen.buttons() {
        *called.entry(button.spoken()).or_default() += 1;
    }
    for block in &mut screen.blocks {
        let Block::Question { text, answers, .. } = block else { continue };
        let alike = |button: &&mut Button| called.get(&button.spoken()).is_some_and(|count| *count > 1);
        answers.iter_mut().filter(alike).for_each(|button| button.about.clone_from(text));
    }
    screen
}

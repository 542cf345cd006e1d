//! Every button has a name of its own: what a screen reader says of it is said of no other one on its screen.

use pitface_core::screen::{Button, Screen};
use std::collections::BTreeMap;

/// Everything on a screen that can be tapped, as it is read out.
pub fn names(screen: &Screen) -> Vec<String> {
    let rows = screen.rows().map(|row| [vec![row.title.clone()], row.lines.clone()].concat().join(". "));
    let buttons = screen.buttons().filter(|button| button.enabled).map(Button::spoken);
    rows.chain(buttons).collect()
}

/// Nothing to be tapped is called like something else on its screen.
#[track_caller]
pub fn assert_told_apart(screen: &Screen) {
    let mut called: BTreeMap<String, usize> = BTreeMap::new();
    for name in names(screen) {
        *called.entry(name).or_default() += 1;
    }
    called.retain(|_, count| *count > 1);
    assert!(called.is_empty(), "called alike on {:?} ({:?}): {called:?}", screen.kind, screen.title);
}

//! Fixes come in at any time; a screen answers only where a position is wanted.

use crate::support;

use pitface_bindings::ScreenKind;
use support::with_field;

const NOW_MS: i64 = 1_790_000_000_000;

#[test]
fn a_fix_gives_a_screen_only_where_one_is_wanted() {
    let (_folder, session) = with_field("mere_piece");
    let mut answered = 0;
    let mut screen = session.screen().unwrap();
    let acts = support::acts(&screen);
    for ((_, act), second) in acts.into_iter().zip((0..).step_by(1000)) {
        let shown = session.fix(2.503, 54.502, 4.0, NOW_MS + second).unwrap();
        assert_eq!(shown.is_some(), screen.wants_position, "{:?}", screen.kind);
        answered += usize::from(shown.is_some());
        screen = session.tap(act).unwrap();
    }
    assert!(answered > 0);
}

#[test]
fn what_is_no_fix_changes_nothing() {
    let (_folder, session) = with_field("mere_piece");
    let list = session.back().unwrap().unwrap();
    assert!(list.kind == ScreenKind::Fields && list.wants_position);
    let shown = session.fix(2.503, 54.502, 4.0, NOW_MS).unwrap().unwrap();
    for (longitude, latitude, accuracy) in [(f64::NAN, 54.5, 3.0), (2.5, 154.5, 3.0), (2.5, 54.5, 0.0)] {
        assert_eq!(session.fix(longitude, latitude, accuracy, NOW_MS + 1000).unwrap(), Some(shown.clone()));
    }
}

#[test]
fn a_refusal_holds_until_the_next_fix() {
    let (_folder, session) = with_field("mere_piece");
    session.back().unwrap();
    let before = session.fix(2.503, 54.502, 4.0, NOW_MS).unwrap().unwrap();
    session.position_refused().unwrap();
    assert_eq!(session.fix(2.503, 54.502, 4.0, NOW_MS + 1000).unwrap().unwrap(), before);
}

#[test]
fn what_was_told_of_a_tap_stands_while_positions_come_in() {
    let (_folder, session) = with_field("mere_piece");
    session.back().unwrap();
    let told = session.import_file("/nowhere".to_owned()).unwrap().told;
    assert_ne!(told, "");
    assert_eq!(session.fix(2.503, 54.502, 4.0, NOW_MS).unwrap().unwrap().told, told);
    assert_eq!(session.letters(1.3).unwrap().told, told);
    assert_eq!(session.position_refused().unwrap().told, told);
    assert_eq!(session.screen().unwrap().told, "");
}

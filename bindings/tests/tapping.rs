//! What a tap saves is saved whole, told, heard of, and taken back whole.

use crate::support;

use pitface_bindings::{ChangeListener, PitfaceError, ScreenKind, Session};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Weak};
use support::{acts, field_id, noted, open, rows, tap, type_in, with_field};

#[test]
fn a_field_is_started_and_taken_back() {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    let screen = tap(&session, &session.screen().unwrap(), "English");
    assert!(screen.saved, "the language is on the disk");
    let screen = tap(&session, &screen, &screen.next.as_ref().unwrap().label);
    let screen = type_in(&session, &screen, "Long Sedge");
    assert!(screen.saved);
    assert_eq!((screen.kind, screen.title.as_str()), (ScreenKind::Field, "Long Sedge"));
    assert!(!session.screen().unwrap().saved, "nothing was saved by looking again");

    let screen = tap(&session, &screen, &screen.tools.first().unwrap().label);
    assert!(screen.saved);
    assert_eq!((screen.kind, screen.told.as_str()), (ScreenKind::Fields, "Taken back: Long Sedge: new."));
    assert!(screen.tools.first().is_none_or(|undo| !undo.enabled), "nothing is left to be taken back");
}

#[test]
fn what_cannot_be_is_told_and_nothing_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    let screen = tap(&session, &session.screen().unwrap(), "English");
    let asking = tap(&session, &screen, &screen.next.as_ref().unwrap().label);
    let screen = type_in(&session, &asking, "   ");
    assert!(!screen.told.is_empty() && !screen.saved);
    assert_eq!(screen.kind, asking.kind);
    let nothing = session.tap(r#""undo""#.to_owned()).unwrap();
    assert_eq!((nothing.told.as_str(), nothing.saved), ("There is nothing to take back.", false));
}

#[test]
fn the_last_field_is_found_deleted_and_brought_back() {
    let (_folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let before = noted(&session, &field);
    let screen = session.screen().unwrap();
    let entry = screen.menu.last().unwrap().label.clone();
    assert_eq!(entry, "Delete Mere Piece …");
    let asking = tap(&session, &screen, &entry);
    assert_eq!(asking.kind, ScreenKind::Deleting);
    let gone = tap(&session, &asking, &asking.next.as_ref().unwrap().label);
    assert!(gone.saved && gone.told.starts_with("Mere Piece is deleted, with "), "{}", gone.told);
    assert_eq!(gone.kind, ScreenKind::Fields);
    // Undo brings it back from the first screen.
    let back = tap(&session, &gone, &gone.tools.first().unwrap().label);
    assert_eq!((rows(&back)[0].title.as_str(), noted(&session, &field)), ("Mere Piece", before.clone()));

    // So does the list of what was deleted here, and undo of that takes it away again.
    let screen = session.tap(format!(r#"{{"go":{{"field":{{"field":"{field}"}}}}}}"#)).unwrap();
    let asking = tap(&session, &screen, &entry);
    let gone = tap(&session, &asking, &asking.next.as_ref().unwrap().label);
    let listed = tap(&session, &gone, "Deleted here");
    let title = rows(&listed)[0].title.clone();
    assert!(title.starts_with("Mere Piece, deleted on "), "{title}");
    let back = tap(&session, &listed, &title);
    assert_eq!((rows(&back).len(), back.told.as_str()), (0, "Mere Piece: back again."));
    assert_eq!(noted(&session, &field), before);
    let undone = tap(&session, &back, "Undo");
    assert_eq!(rows(&undone)[0].title, title);
}

#[test]
fn a_field_is_sought_among_all_there_are() {
    let (_folder, session) = with_field("mere_piece");
    let found = session.tap(r#"{"go":{"found_fields":{"sought":"piece mere"}}}"#.to_owned()).unwrap();
    assert_eq!(rows(&found)[0].title, "Mere Piece");
}

#[test]
fn a_text_that_is_no_act_is_a_fault_of_the_shell() {
    let (_folder, session) = with_field("mere_piece");
    for act in ["", "undo", "{}", r#"{"go":"nowhere"}"#, r#"{"go":{"field":{"field":"7"}}}"#] {
        let error = session.tap(act.to_owned()).unwrap_err();
        assert!(matches!(error, PitfaceError::Invalid { .. }), "{act}: {error:?}");
    }
    assert_eq!(session.screen().unwrap().kind, ScreenKind::Field);
}

/// Counts, and looks at the session while it is told.
struct Counting(AtomicUsize, Weak<Session>);

impl ChangeListener for Counting {
    fn changed(&self) {
        self.0.fetch_add(1, Ordering::SeqCst);
        if let Some(session) = self.1.upgrade() {
            session.screen().unwrap();
        }
    }
}

#[test]
fn whoever_listens_is_told_of_each_save_once_and_may_call_back() {
    let (_folder, session) = with_field("mere_piece");
    let counting = Arc::new(Counting(AtomicUsize::new(0), Arc::downgrade(&session)));
    let subscription = session.subscribe(counting.clone()).unwrap();
    let count = || counting.0.load(Ordering::SeqCst);
    session.tap(r#""undo""#.to_owned()).unwrap();
    assert_eq!(count(), 1, "the field is taken back");
    session.screen().unwrap();
    session.back().unwrap();
    session.tap(r#""undo""#.to_owned()).unwrap();
    assert_eq!(count(), 1, "nothing was left to take back");
    subscription.stop().unwrap();
    subscription.stop().unwrap();
    support::take_in(&session, &support::demo("mere_piece"));
    assert_eq!(count(), 1);
}

#[test]
fn back_leads_up_to_the_list_and_then_out() {
    let (_folder, session) = with_field("mere_piece");
    let list = session.back().unwrap().unwrap();
    assert_eq!(list.kind, ScreenKind::Fields);
    assert_eq!(session.back().unwrap(), None);
    assert_eq!(session.screen().unwrap().kind, ScreenKind::Fields);
}

#[test]
fn back_goes_where_one_came_from_also_after_a_restart() {
    let (folder, session) = with_field("mere_piece");
    let field = session.screen().unwrap();
    let (_, pit) = acts(&field).into_iter().find(|(_, act)| act.contains("\"call\"")).unwrap();
    let call = session.tap(pit).unwrap();
    assert_eq!(call.kind, ScreenKind::Call);
    let walk = tap(&session, &call, "Knife walk");
    assert_eq!(walk.kind, ScreenKind::KnifeWalk);
    drop(session);
    let session = open(folder.path()).unwrap();
    assert_eq!(session.screen().unwrap().kind, ScreenKind::KnifeWalk);
    let kinds = [(); 2].map(|()| session.back().unwrap().unwrap().kind);
    assert_eq!(kinds, [ScreenKind::Call, ScreenKind::Field]);
}

/// Tapped at random through all screens of a field: no call fails, and whatever a tap saved one undo takes back.
#[test]
fn one_undo_takes_back_what_one_tap_saved_wherever_it_is_tapped() {
    let mut random = TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]);
    let mut seen = std::collections::BTreeMap::new();
    let mut taken_back = 0;
    for name in ["mere_piece", "heron_close"] {
        let (_folder, session) = with_field(name);
        let field = support::field_id(&session);
        session.fix(2.503, 54.502, 4.0, 1_790_000_000_000).unwrap();
        let mut screen = session.screen().unwrap();
        for _ in 0..150 {
            *seen.entry(format!("{:?}", screen.kind)).or_insert(0) += 1;
            let acts: Vec<_> = acts(&screen)
                .into_iter()
                .filter(|(_, act)| act != r#""undo""# && !act.contains("\"own\""))
                .collect();
            let Some((label, act)) = acts.get(random.next_u32() as usize % acts.len().max(1)) else {
                screen = session.back().unwrap().unwrap();
                continue;
            };
            // Details lead from one to the next; now and then one goes back out of them.
            if screen.kind == ScreenKind::Field && random.next_u32().is_multiple_of(3) {
                screen = session.tap(format!(r#"{{"go":{{"field":{{"field":"{field}"}}}}}}"#)).unwrap();
                continue;
            }
            let before = noted(&session, &field);
            screen = session.tap(act.clone()).unwrap_or_else(|error| panic!("{label}: {error}"));
            let after = noted(&session, &field);
            assert!(screen.saved || before == after, "{label} changed notes without a word: {act}");
            if before != after && random.next_u32().is_multiple_of(3) {
                let place = screen.kind;
                screen = session.tap(r#""undo""#.to_owned()).unwrap();
                assert_eq!(noted(&session, &field), before, "{label} on {place:?}: {act}");
                assert!(screen.saved && !screen.told.is_empty());
                taken_back += 1;
            }
        }
    }
    println!("{seen:?}, {taken_back} taken back");
    assert!(taken_back > 10 && seen.len() > 8, "{seen:?}, {taken_back} taken back");
}

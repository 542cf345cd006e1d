//! What a tap costs across the border: through the session, in the core alone, and how large its screen is.
//! `cargo run --release -p pitface-bindings --example tap_times`
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "an example that shows its figures")]

use pitface_bindings::{ScreenKind, Session, ShownDoes, ShownDoing, ShownScreen, UniFfiTag};
use pitface_core::record::{FieldNotes, RecordId, notes};
use pitface_core::screen::{Act, Own, Place, World, show, tap};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use std::time::{Duration, Instant};

const PITS: usize = 50;
const TAPS: usize = 200;

fn main() {
    let folder = tempfile::tempdir().unwrap();
    let notes = many_pits();
    let file = folder.path().join("many.notes.json");
    std::fs::write(&file, notes::write(&notes)).unwrap();

    let started = Instant::now();
    let session = Session::open(folder.path().display().to_string(), None, 60).unwrap();
    println!("open                          {:>9.1?}", started.elapsed());
    session.tap(r#"{"own":{"language":"en"}}"#.into()).unwrap();
    let started = Instant::now();
    let field = session.import_file(file.display().to_string()).unwrap();
    println!("take in {PITS} pits               {:>9.1?}", started.elapsed());

    let open = format!(r#"{{"go":{{"field":{{"field":"{}"}}}}}}"#, notes.field.id);
    show_times("the field, tapped", || drop(session.tap(open.clone()).unwrap()));
    println!("its screen                    {:>9} bytes", bytes(&field));
    let list = r#"{"go":"fields"}"#;
    show_times("the list of fields, tapped", || drop(session.tap(list.into()).unwrap()));

    let (words, own) = (Words::new(Language::English, LengthUnit::Centimetres), own());
    let world = World {
        own: &own,
        words: &words,
        fields: std::slice::from_ref(&notes),
        fix: None,
        position_refused: false,
        photos_missing: &std::collections::BTreeSet::new(),
        now: chrono::DateTime::UNIX_EPOCH.fixed_offset(),
        can_undo: true,
    };
    show_times("the field, core alone", || drop(show(Place::Field { field: notes.field.id }, &world)));

    let walk = Place::KnifeWalk { field: notes.field.id, pit: notes.pits[PITS - 1].id };
    let go = serde_json::to_string(&Act::Go(walk)).unwrap();
    let screen = session.tap(go.clone()).unwrap();
    assert_eq!(screen.kind, ScreenKind::KnifeWalk);
    println!("a knife walk's screen         {:>9} bytes", bytes(&screen));
    show_times("a knife walk, shown again", || drop(session.screen().unwrap()));
    show_times("a knife walk, core alone", || drop(show(walk, &world)));
    let act = saving_act(&screen);
    let undo = r#""undo""#;
    let mut saved = Vec::new();
    for _ in 0..TAPS / 4 {
        let started = Instant::now();
        assert!(session.tap(act.clone()).unwrap().saved);
        saved.push(started.elapsed());
        session.tap(undo.into()).unwrap();
        session.tap(go.clone()).unwrap();
    }
    println!("a tap that saves              {:>9.1?}", middle(saved));
    let act: Act = serde_json::from_str(&act).unwrap();
    let new_id = || notes.field.id;
    show_times("the same, core alone", || {
        let done = tap(walk, &act, None, &world, &mut { new_id }).unwrap();
        drop(show(done.place, &world));
    });
}

/// A field of the demo with its last pit many times over.
fn many_pits() -> FieldNotes {
    let mut made = 0_u64;
    let mut new_id = || {
        made += 1;
        RecordId::new(1_790_000_000_000 + made, [5; 10])
    };
    let text = include_str!("../cli/demo/mere_piece.notes.json");
    let mut all = notes::read(text, &mut new_id).unwrap().notes;
    while all.pits.len() < PITS {
        let again = notes::read(text, &mut new_id).unwrap().notes;
        all.pits.extend(again.pits.into_iter().take(PITS - all.pits.len()));
    }
    all
}

fn own() -> Own {
    Own {
        name: String::new(),
        left_handed: false,
        volume_keys: false,
        language: Some(Language::English),
        unit: LengthUnit::Centimetres,
    }
}

/// The first button of the thumb's part that is an answer.
fn saving_act(screen: &ShownScreen) -> String {
    let buttons = screen.doing.iter().flat_map(|doing| match doing {
        ShownDoing::Choices { buttons, .. } => buttons.as_slice(),
        _ => &[],
    });
    let acts =
        buttons.filter(|button| button.enabled && !button.chosen).filter_map(|button| match &button.does {
            ShownDoes::Act { act } if act.starts_with(r#"{"pit""#) => Some(act.clone()),
            _ => None,
        });
    acts.into_iter().next().unwrap()
}

fn bytes(screen: &ShownScreen) -> usize {
    uniffi::Lower::<UniFfiTag>::lower_into_rust_buffer(screen.clone()).destroy_into_vec().len()
}

fn show_times(what: &str, mut call: impl FnMut()) {
    let times = (0..TAPS).map(|_| {
        let started = Instant::now();
        call();
        started.elapsed()
    });
    println!("{what:<29} {:>9.1?}", middle(times.collect()));
}

fn middle(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

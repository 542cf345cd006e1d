//! The power is cut at any moment while a store is used: it opens, it is sound, everything told as saved is there, and of what was
//! under way all or nothing is.
//!
//! `PITFACE_CRASH_ROUNDS=n` looks at about n times as many states as the normal run.

use pitface_crash::scenario::{Act, Scenario, others_files};
use pitface_crash::{Found, Wanted, go_through};
use rusqlite::Connection;
use std::time::Instant;

fn rounds() -> u32 {
    std::env::var("PITFACE_CRASH_ROUNDS").ok().and_then(|rounds| rounds.parse().ok()).unwrap_or(1)
}

fn wanted(random: u32, every: usize) -> Wanted {
    Wanted { random: random * rounds(), every, seed: 1 }
}

/// Cuts the power in every way and says what came of it.
fn cut(name: &str, scenario: &Scenario, full_for_normal: bool, wanted: Wanted) -> Found {
    let began = Instant::now();
    let recording = scenario.record(full_for_normal);
    let found = go_through(&recording, &wanted);
    println!(
        "{name}: {} acts, {} changes of files, {} power cuts, {} different states, {} lost, {} partial, {} broken, {:.1} s",
        scenario.acts.len(),
        recording.tape.length(),
        found.cuts,
        found.states,
        found.lost.len(),
        found.partial.len(),
        found.broken.len(),
        began.elapsed().as_secs_f64()
    );
    found
}

fn assert_sound(found: &Found, at_least: usize) {
    assert!(found.broken.is_empty(), "{} broken: {:#?}", found.broken.len(), first(&found.broken));
    assert!(found.partial.is_empty(), "{} partial: {:#?}", found.partial.len(), first(&found.partial));
    assert!(found.lost.is_empty(), "{} lost: {:#?}", found.lost.len(), first(&found.lost));
    assert!(found.states >= at_least, "only {} states were looked at", found.states);
}

fn first(found: &[String]) -> &[String] {
    &found[..found.len().min(5)]
}

/// A new store, taps, undo, and once closed and opened in between.
fn taps() -> Scenario {
    let mut acts = vec![Act::Open, Act::Begin];
    acts.extend((0..12).map(|step| Act::Tap(step, step * 20 + 20)));
    acts.extend([Act::Undo, Act::Tap(3, 85), Act::Undo, Act::Undo, Act::Close, Act::Open]);
    acts.extend((12..20).map(|step| Act::Tap(step % 5, step * 20 + 21)));
    acts.extend([Act::Taps(30..40), Act::Undo, Act::Rebuild, Act::Close]);
    Scenario { acts, ..Scenario::default() }
}

/// Taps between several files that come in, and sealing: each seal and each larger file drops smaller cuts.
fn merging() -> Scenario {
    let files = others_files(&[5, 20, 60]);
    let mut acts = vec![Act::Open, Act::Tap(1, 40), Act::Seal];
    acts.push(Act::TakeIn(files[0].clone()));
    acts.extend([Act::Tap(2, 80), Act::TakeIn(files[2].clone()), Act::TakeIn(files[1].clone()), Act::Seal]);
    acts.extend([
        Act::Tap(3, 90),
        Act::Undo,
        Act::Seal,
        Act::Close,
        Act::Open,
        Act::TakeIn(files[2].clone()),
    ]);
    Scenario { first: vec![Act::Open, Act::Begin, Act::Trust, Act::Close], acts, ..Scenario::default() }
}

/// A store of version 1 is brought up to date, used and sealed.
fn migration() -> Scenario {
    let folder = pitface_crash::scenario::folder();
    let connection = Connection::open(folder.path().join("notes.pitface")).unwrap();
    connection.execute_batch(include_str!("../../vectors/store/version_1.sql")).unwrap();
    drop(connection);
    let before = pitface_crash::shim::files(folder.path());
    let acts =
        vec![Act::Open, Act::Begin, Act::Tap(1, 40), Act::Seal, Act::Close, Act::Open, Act::Tap(1, 60)];
    Scenario { before, acts, ..Scenario::default() }
}

/// So much that the write-ahead log is moved into the file while the store is open, and begun anew.
fn much() -> Scenario {
    let large = || Act::Large(1_200_000);
    let mut acts = vec![Act::Open, large(), Act::Tap(1, 41), Act::Large(900_000), Act::Tap(1, 42), Act::Undo];
    acts.extend([Act::Tap(2, 43), Act::Seal, Act::Tap(2, 44), large(), Act::Tap(1, 44), Act::Close]);
    Scenario { first: vec![Act::Open, Act::Begin, Act::Close], acts, ..Scenario::default() }
}

#[test]
fn while_taps_are_saved_and_taken_back() {
    assert_sound(&cut("taps", &taps(), false, wanted(22, 1)), 5_000);
}

#[test]
fn while_files_are_taken_in_and_sealed() {
    assert_sound(&cut("taking in and sealing", &merging(), false, wanted(17, 1)), 3_300);
}

#[test]
fn while_a_store_of_version_1_is_brought_up_to_date() {
    assert_sound(&cut("migration", &migration(), false, wanted(17, 1)), 1_600);
}

#[test]
fn while_a_long_log_is_moved_into_the_file() {
    assert_sound(&cut("a long log", &much(), false, wanted(1, 97)), 100);
}

/// The test can see a loss: with `synchronous = NORMAL`, which does not sync the log at each save, it must find some; and
/// nothing else, for what is there is still whole.
#[test]
fn with_normal_saves_are_lost_and_it_is_seen() {
    let found = cut("taps with NORMAL", &taps(), true, wanted(1, 1));
    assert!(found.lost.len() > 10, "{} lost of {} states", found.lost.len(), found.states);
    assert!(found.partial.is_empty() && found.broken.is_empty(), "{found:#?}");
}

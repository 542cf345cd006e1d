//! The disk is full, or fails, at every single call in turn: the act says so, nothing saved is lost, and done again it succeeds.

use pitface_crash::Fault;
use pitface_crash::scenario::{Act, Scenario, others_files};
use rusqlite::Connection;

/// Fails the first call, the second and so on until there are no more, and tells how many there are.
fn fail_each(name: &str, scenario: &Scenario, disk_full: bool, stays: bool) -> u64 {
    let contents = scenario.record(false).contents;
    let begin = scenario.begin();
    let mut wrong = Vec::new();
    let mut call = 1;
    loop {
        match scenario.with_fault(&begin, Fault { call, disk_full, stays }, &contents) {
            Ok(false) => break,
            Ok(true) => {}
            Err(error) => wrong.push(error),
        }
        call += 1;
    }
    let kind = if disk_full { "disk full" } else { "failing" };
    let long = if stays { "from then on" } else { "once" };
    println!("{name}: {kind} {long} at each of {} calls, {} went wrong", call - 1, wrong.len());
    assert!(wrong.is_empty(), "{} of {}: {:#?}", wrong.len(), call - 1, &wrong[..wrong.len().min(8)]);
    call - 1
}

fn every_way(name: &str, scenario: &Scenario) {
    for (disk_full, stays) in [(true, true), (true, false), (false, true), (false, false)] {
        assert!(fail_each(name, scenario, disk_full, stays) > 20);
    }
}

#[test]
fn while_taps_are_saved_and_taken_back() {
    let acts =
        vec![Act::Open, Act::Begin, Act::Tap(1, 40), Act::Tap(1, 60), Act::Undo, Act::Close, Act::Open];
    let acts =
        [acts, vec![Act::Tap(2, 80), Act::Taps(5..9), Act::Rebuild, Act::Tap(2, 90), Act::Close]].concat();
    every_way("taps", &Scenario { acts, ..Scenario::default() });
}

#[test]
fn while_files_are_taken_in_and_sealed() {
    let files = others_files(&[5, 20]);
    let acts = vec![Act::Open, Act::Tap(1, 40), Act::Seal, Act::TakeIn(files[0].clone()), Act::Tap(2, 80)];
    let acts = [acts, vec![Act::TakeIn(files[1].clone()), Act::Seal, Act::Close]].concat();
    let first = vec![Act::Open, Act::Begin, Act::Trust, Act::Close];
    every_way("taking in and sealing", &Scenario { first, acts, ..Scenario::default() });
}

#[test]
fn while_a_store_of_version_1_is_brought_up_to_date() {
    let folder = pitface_crash::scenario::folder();
    let connection = Connection::open(folder.path().join("notes.pitface")).unwrap();
    connection.execute_batch(include_str!("../../vectors/store/version_1.sql")).unwrap();
    drop(connection);
    let before = pitface_crash::shim::files(folder.path());
    let acts = vec![Act::Open, Act::Begin, Act::Tap(1, 40), Act::Close];
    every_way("migration", &Scenario { before, acts, ..Scenario::default() });
}

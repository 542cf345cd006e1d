//! Killed while saving, at moments left to chance: every save that was told as done is there afterwards.

use crate::store_support;

use pitface_core::record::ComesAway;
use pitface_core::store::Store;
use std::collections::BTreeSet;
use std::hash::{BuildHasher, RandomState};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;
use store_support::{DEVICE, NOW_MS, ellmoor, place, step};

const PATH: &str = "PITFACE_TEST_STORE";
const FROM: &str = "PITFACE_TEST_FROM";

/// The one that is killed: opens the store and saves steps as fast as it can, telling each when it is done.
#[test]
#[ignore = "run and killed by the test below"]
fn saves_until_killed() {
    let mut store = Store::create_or_open(Path::new(&std::env::var(PATH).unwrap()), DEVICE).unwrap();
    let mut notes = ellmoor();
    notes.pits[0].walk.clear();
    store.save_notes(&notes, NOW_MS).unwrap();
    let from: u32 = std::env::var(FROM).unwrap().parse().unwrap();
    for number in from.. {
        let step = step(1000 + u64::from(number), number, ComesAway::Crumbs);
        store.save_step(notes.pits[0].id, &step, NOW_MS).unwrap();
        eprintln!("saved {number}");
    }
}

/// Runs it for a while; returns what it told as saved.
fn run_and_kill(path: &Path, from: u32, after: Duration) -> BTreeSet<u32> {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--ignored", "--exact", "store_killed::saves_until_killed", "--nocapture"])
        .env(PATH, path)
        .env(FROM, from.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let lines = BufReader::new(child.stderr.take().unwrap()).lines();
    let reader = std::thread::spawn(move || {
        let lines: Vec<String> = lines.map_while(Result::ok).collect();
        let panicked = lines.iter().find(|line| line.contains("panicked"));
        assert!(panicked.is_none(), "{lines:#?}");
        lines.iter().filter_map(|line| line.strip_prefix("saved ")?.parse().ok()).collect()
    });
    std::thread::sleep(after);
    // SIGKILL on Unix: no handler, no unwinding, no closing of files by the program.
    child.kill().unwrap();
    child.wait().unwrap();
    reader.join().unwrap()
}

#[test]
fn every_save_told_as_done_is_there() {
    let chance = RandomState::new();
    let (_folder, path) = place();
    let mut told = BTreeSet::new();
    // Longer where the machine is busy with other things, until enough was saved before a kill.
    let (mut round, mut span_us) = (0_u64, 60_000);
    while round < 30 || (told.len() <= 30 && round < 300) {
        (round, span_us) =
            (round + 1, if told.len() <= round as usize { 2 * span_us.min(500_000) } else { span_us });
        let after = Duration::from_micros(chance.hash_one(round) % span_us);
        let from = told.last().map_or(0, |last| last + 10);
        told.extend(run_and_kill(&path, from, after));
        if told.is_empty() && !path.exists() {
            continue;
        }
        let store = Store::create_or_open(&path, DEVICE).unwrap();
        store.check().unwrap();
        let Ok(notes) = store.load_notes(ellmoor().field.id) else {
            assert!(told.is_empty(), "killed after {after:?}");
            continue;
        };
        let there: BTreeSet<u32> = notes.pits[0].walk.iter().map(|step| step.to_mm).collect();
        let lost: Vec<_> = told.difference(&there).collect();
        assert!(lost.is_empty(), "killed after {after:?}, lost {lost:?}");
        // At most the one that was on its way when the kill came, in each round.
        assert!(there.len() <= told.len() + round as usize, "{} there, {} told", there.len(), told.len());
    }
    assert!(told.len() > 30, "the rounds were too short to show anything: {} saves", told.len());
}

#[test]
fn killed_while_being_created_it_can_be_created_again() {
    let chance = RandomState::new();
    for round in 0..10_u64 {
        let (_folder, path) = place();
        let after = Duration::from_micros(chance.hash_one(round) % 12_000);
        run_and_kill(&path, 0, after);
        let store = Store::create_or_open(&path, DEVICE).unwrap();
        store.check().unwrap();
    }
}

//! Killed while noting, sealing and taking in, at moments left to chance: what was told as done is there, and a file is taken in as a
//! whole or not at all.
//!
//! `PITFACE_KILLS=1000` kills as often as that instead of as in the normal run.

use crate::merge_support;

use merge_support::{Phone, key, pit};
use pitface_core::merge::{FileWriter, Signer, read_file};
use pitface_core::record::{ComesAway, Field, Pit, PlaceKind, RecordId, Step, Unknown};
use pitface_core::store::{Sealer, Store};
use std::collections::BTreeSet;
use std::hash::{BuildHasher, RandomState};
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

const FOLDER: &str = "PITFACE_TEST_FOLDER";
const FROM: &str = "PITFACE_TEST_FROM";
/// The phone that is killed, and the one whose files it takes in.
const KILLED: u8 = 1;
const OTHER: u8 = 2;
const NOW_MS: u64 = 1_760_000_000_000;
/// Files of the other phone that wait in the folder, and kills of one store.
const FILES: usize = 60;
const KILLS_EACH: u32 = 25;
/// Times as many kills as were asked for, where they show too little.
const MOST_KILLS: u32 = 5;

fn id(number: u64) -> RecordId {
    let mut random = [KILLED; 10];
    random[2..].copy_from_slice(&number.to_be_bytes());
    RecordId::new(NOW_MS, random)
}

fn step(number: u32) -> Step {
    let comes_away = Some(ComesAway::Crumbs);
    Step {
        id: id(1000 + u64::from(number)),
        to_mm: number,
        comes_away,
        resistance: None,
        unknown: Unknown::new(),
    }
}

fn others_edits(store: &Store) -> u64 {
    let other = key(OTHER).device();
    store.partners().unwrap().iter().find(|partner| partner.device == other).map_or(0, |other| other.edits)
}

fn seal(store: &mut Store) {
    let signer = key(KILLED);
    let sealer = Sealer { signer: &signer, holder: "", written_by: "tests", now_ms: NOW_MS, ahead_ms: None };
    store.seal(&sealer).unwrap();
}

/// The one that is killed: notes, seals and takes in as fast as it can, telling each when it is done.
#[test]
#[ignore = "run and killed by the test below"]
fn works_until_killed() {
    let folder = std::env::var(FOLDER).unwrap();
    let folder = Path::new(&folder);
    let tell = |what: &str, number: u64| writeln!(std::io::stderr(), "{what} {number}").unwrap();
    let mut store = Store::create_or_open(&folder.join("notes.pitface"), key(KILLED).device()).unwrap();
    store.accept_key(&key(OTHER).public_key(), "", NOW_MS).unwrap();
    let (field, place) = (Field::new(id(1), "Long Sedge"), Pit::new(id(2), PlaceKind::Open));
    // It may have been killed between the two.
    if store.load_notes(field.id).map_or(true, |notes| notes.pits.is_empty()) {
        store.save_field(&field, NOW_MS).unwrap();
        store.save_pit(field.id, &place, NOW_MS).unwrap();
    }
    let from: u32 = std::env::var(FROM).unwrap().parse().unwrap();
    for number in from.. {
        store.save_step(place.id, &step(number), NOW_MS).unwrap();
        tell("saved", u64::from(number));
        match number % 4 {
            1 => {
                seal(&mut store);
                tell("sealed", u64::from(number));
            }
            3 => {
                let here = others_edits(&store);
                let name = std::fs::read_to_string(folder.join(format!("after-{here}")));
                if let Ok(next) = name {
                    let file = std::fs::read(folder.join(next.trim())).unwrap();
                    store.take_in(&file, NOW_MS).unwrap();
                    tell("took", others_edits(&store));
                }
            }
            _ => {}
        }
    }
}

/// Puts the other phone's files in a folder, each with what is new since the one before; `after-n` names the one that comes
/// next to somebody with n edits. Gives the numbers of edits that whole files lead to.
fn others_files(folder: &Path) -> BTreeSet<u64> {
    let mut other = Phone::in_memory(OTHER);
    let field = other.new_field("Short Sedge");
    let (mut whole, mut known) = (BTreeSet::from([0]), BTreeSet::new());
    for number in 0..FILES {
        for depth in 0..6 {
            pit(&mut other, field, 100 + depth);
        }
        let all = other.hand_over();
        let mut file = FileWriter::new(Vec::new());
        for part in read_file(&all).unwrap() {
            if known.insert(part.hash) {
                file.add(part.bytes).unwrap();
            }
        }
        let name = format!("{number}.pitb");
        std::fs::write(folder.join(&name), file.end().unwrap()).unwrap();
        std::fs::write(folder.join(format!("after-{}", whole.last().unwrap())), name).unwrap();
        whole.insert(other.store.check().unwrap().edits as u64);
    }
    whole
}

/// What the child told.
#[derive(Debug, Default)]
struct Told {
    saved: BTreeSet<u32>,
    sealed: Option<u32>,
    took: u64,
    seals: usize,
    takings: usize,
}

impl Told {
    fn add(&mut self, line: &str) {
        let Some((what, number)) = line.split_once(' ') else { return };
        let Ok(number) = number.parse() else { return };
        match what {
            "saved" => drop(self.saved.insert(number)),
            "sealed" => {
                self.sealed = Some(number);
                self.seals += 1;
            }
            "took" => {
                self.took = self.took.max(u64::from(number));
                self.takings += 1;
            }
            _ => {}
        }
    }
}

/// Runs it until it has told that it began or its time is over, and a moment longer.
fn run_and_kill(folder: &Path, from: u32, after: Duration, told: &mut Told) {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--ignored", "--exact", "merge_killed::works_until_killed", "--nocapture"])
        .env(FOLDER, folder)
        .env(FROM, from.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let lines = BufReader::new(child.stderr.take().unwrap()).lines();
    let reader = std::thread::spawn(move || lines.map_while(Result::ok).collect::<Vec<String>>());
    std::thread::sleep(after);
    // SIGKILL on Unix: no handler, no unwinding, no closing of files by the program.
    child.kill().unwrap();
    child.wait().unwrap();
    let lines = reader.join().unwrap();
    assert!(lines.iter().all(|line| !line.contains("panicked")), "{lines:#?}");
    for line in &lines {
        told.add(line);
    }
}

fn assert_all_is_there(folder: &Path, told: &Told, whole: &BTreeSet<u64>) {
    let path = folder.join("notes.pitface");
    if told.saved.is_empty() && !path.exists() {
        return;
    }
    let mut store = Store::create_or_open(&path, key(KILLED).device()).unwrap();
    store.check().unwrap();
    let there: BTreeSet<u32> = match store.load_notes(id(1)) {
        Ok(notes) => notes.pits.iter().flat_map(|pit| &pit.walk).map(|step| step.to_mm).collect(),
        Err(_) => BTreeSet::new(),
    };
    let lost: Vec<_> = told.saved.difference(&there).collect();
    assert!(lost.is_empty(), "lost {lost:?}");
    let others = others_edits(&store);
    assert!(whole.contains(&others), "part of a file: {others} edits");
    assert!(others >= told.took, "a file that was taken in is gone: {others} edits, told {}", told.took);
    if told.sealed.is_some() {
        // What was sealed is handed over without sealing anew.
        let mut file = FileWriter::new(Vec::new());
        assert!(store.hand_over(None, &mut file).unwrap() > 0);
        read_file(&file.end().unwrap()).unwrap();
    }
    // It goes on.
    seal(&mut store);
}

#[test]
fn what_was_told_as_done_is_there_and_files_come_whole() {
    let kills = std::env::var("PITFACE_KILLS").ok().and_then(|kills| kills.parse().ok()).unwrap_or(200_u32);
    let (chance, began) = (RandomState::new(), Instant::now());
    let files = merge_support::folder();
    let whole = others_files(files.path());
    let (mut saves, mut seals, mut takings, mut before_anything) = (0, 0, 0, 0);
    let mut span_us = 40_000;
    let (mut store, mut killed) = (0, 0);
    // On a machine that is busy with other things nothing may have been saved when the kills came: then it goes on for longer.
    while killed < kills
        || (killed < MOST_KILLS * kills && (saves <= killed as usize || takings == 0 || seals == 0))
    {
        let folder = merge_support::folder();
        for file in std::fs::read_dir(files.path()).unwrap() {
            let file = file.unwrap();
            std::fs::copy(file.path(), folder.path().join(file.file_name())).unwrap();
        }
        let (mut told, mut early) = (Told::default(), 0);
        for kill in 0..KILLS_EACH {
            // Starting the program takes most of it; a third is killed while it starts or opens.
            let after = Duration::from_micros(chance.hash_one((store, kill)) % span_us);
            let from = told.saved.last().map_or(0, |last| last + 10);
            let had = told.saved.len();
            run_and_kill(folder.path(), from, after, &mut told);
            early += u32::from(told.saved.len() == had);
            assert_all_is_there(folder.path(), &told, &whole);
        }
        saves += told.saved.len();
        seals += told.seals;
        takings += told.takings;
        before_anything += early;
        span_us = if early > KILLS_EACH / 2 { 2 * span_us } else { span_us };
        (store, killed) = (store + 1, killed + KILLS_EACH);
    }
    println!(
        "{killed} kills, {before_anything} of them before anything was saved; told as done: {saves} saves, {seals} seals, \
         {takings} files taken in; {:.1} s",
        began.elapsed().as_secs_f64()
    );
    assert!(
        saves > killed as usize && takings > 0 && seals > 0,
        "the rounds were too short to show anything"
    );
}

//! Goes through the states that a power cut could leave, and looks what is in each.

use crate::scenario::{Recording, folder, put};
use crate::{Change, Content, DEVICE, Disk, Fate, Files, Phone};
use std::collections::HashSet;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::Path;

/// How many states are wanted.
#[derive(Debug, Clone, Copy)]
pub struct Wanted {
    /// Of each place on the tape: random subsets of what was not synced, and as many with torn sectors.
    pub random: u32,
    /// Only every so many places, where nothing but writing goes on.
    pub every: usize,
    /// Where chance begins.
    pub seed: u64,
}

/// What was found.
#[derive(Debug, Clone, Default)]
pub struct Found {
    /// Different states that were opened.
    pub states: usize,
    /// Power cuts that led to them.
    pub cuts: usize,
    /// States without a save that had been told as done.
    pub lost: Vec<String>,
    /// States with part of an act, or what never was.
    pub partial: Vec<String>,
    /// States that do not open, or do not pass the check.
    pub broken: Vec<String>,
}

impl Found {
    /// Adds what was found elsewhere.
    pub fn add(&mut self, other: Self) {
        self.states += other.states;
        self.cuts += other.cuts;
        self.lost.extend(other.lost);
        self.partial.extend(other.partial);
        self.broken.extend(other.broken);
    }
}

/// Numbers by chance, the same from the same seed (Steele, Lea and Flood 2014, `SplitMix`).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ self.0 >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ mixed >> 31
    }
}

/// Cuts the power after every change (or every so many), in every way, and looks at what is left.
pub fn go_through(recording: &Recording, wanted: &Wanted) -> Found {
    let changes = recording.tape.changes();
    let mut disk = Disk::before(&recording.tape);
    let (mut found, mut known, mut chance) = (Found::default(), HashSet::new(), Chance(wanted.seed));
    let place = folder();
    for at in 0..=changes.len() {
        if at > 0 {
            disk.play(&changes[at - 1]);
        }
        if at % wanted.every != 0 && !is_near(&changes, at) {
            continue;
        }
        // Acts that had returned.
        let done = recording.ends.iter().take_while(|end| **end <= at).count();
        for (how, files) in cuts(&disk, wanted.random, &mut chance) {
            found.cuts += 1;
            let mut hasher = DefaultHasher::new();
            (done, &files).hash(&mut hasher);
            if known.insert(hasher.finish()) {
                found.states += 1;
                let goes_on = found.states.is_multiple_of(8);
                let told = |what: String| format!("after change {at} of {}, {how}: {what}", changes.len());
                match look(place.path(), &files, goes_on) {
                    Err(error) => found.broken.push(told(error)),
                    Ok(content) => judge(recording, done, content, &mut found, told),
                }
            }
        }
    }
    found
}

/// Returns whether something else than writing goes on close to a place.
fn is_near(changes: &[Change], at: usize) -> bool {
    let around = at.saturating_sub(1)..changes.len().min(at + 1);
    changes[around].iter().any(|change| !matches!(change, Change::Write { .. }))
}

fn judge(
    recording: &Recording,
    done: usize,
    content: Content,
    found: &mut Found,
    told: impl Fn(String) -> String,
) {
    let contents = &recording.contents;
    let at_least = done.saturating_sub(1);
    if contents[at_least..contents.len().min(done + 1)].contains(&content) {
        return;
    }
    match contents[..at_least].iter().rposition(|earlier| *earlier == content) {
        Some(earlier) => found.lost.push(told(format!("has act {earlier}, act {at_least} was done"))),
        None => found.partial.push(told("what it has never was".into())),
    }
}

/// The ways in which the power can be cut now.
fn cuts(disk: &Disk, random: u32, chance: &mut Chance) -> Vec<(&'static str, Files)> {
    let kept_if = |kept| if kept { Fate::Kept } else { Fate::Dropped };
    let mut cuts = vec![
        ("nothing unsynced kept", disk.cut(|_| Fate::Dropped)),
        ("all kept", disk.cut(|_| Fate::Kept)),
        ("no entry kept", disk.cut(|is_entry| kept_if(!is_entry))),
        ("only entries kept", disk.cut(kept_if)),
    ];
    if disk.pending() == 0 {
        cuts.truncate(1);
        return cuts;
    }
    for _ in 0..random {
        cuts.push(("some kept", disk.cut(|_| kept_if(chance.next() & 1 == 0))));
        let torn = |is_entry| match chance.next() % 4 {
            0 => Fate::Kept,
            1 => Fate::Dropped,
            _ if is_entry => Fate::Kept,
            _ => Fate::Torn(chance.next()),
        };
        cuts.push(("some kept, some torn", disk.cut(torn)));
    }
    cuts
}

/// Opens what is left, and tells what is in it; an error if it is not sound, or if nothing more can be saved in it.
fn look(folder: &Path, files: &Files, goes_on: bool) -> Result<Content, String> {
    put(folder, files);
    let mut phone = Phone::new(folder, DEVICE);
    let content = phone.open().and_then(|()| phone.check()).map_err(|error| error.to_string())?;
    if goes_on {
        let saved = phone.begin("Sedge").and_then(|()| phone.tap(9999, 1)).and_then(|()| phone.check());
        saved.map_err(|error| format!("going on: {error}"))?;
    }
    Ok(content)
}

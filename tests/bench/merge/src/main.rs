//! Ours against automerge, loro, yrs and plain SQLite: merging the same work (see [`work`]), each step of each in a process of its own.
//!
//! ```sh
//! cargo run --release --manifest-path tests/bench/merge/Cargo.toml            # all
//! cargo run --release --manifest-path tests/bench/merge/Cargo.toml -- --short # work A and one round
//! ```
//!
//! Nothing here fails by the clock: the table says what is met. Peers keep their whole document in memory and are timed without writing it
//! to disk; ours is on the disk when it returns, and is timed with that. Hand-overs are all that all devices wrote, with the time of
//! every save (yrs has none). Memory is the most that the merging process had. Damage: single bits of a hand-over of work A
//! are flipped, and what a new device takes in without complaint is counted. Older shown: of the cells where devices differ,
//! those that show another value than the one noted last. Plain SQLite is the floor: what a log and the values that hold cost on the
//! disk alone, with nothing checked and no versions kept.

#[cfg(feature = "ours")]
mod many;
mod measure;
#[cfg(feature = "ours")]
mod ours;
mod peer;
mod table;
#[cfg(feature = "peers")]
mod with_automerge;
#[cfg(feature = "peers")]
mod with_loro;
#[cfg(feature = "peers")]
mod with_sqlite;
#[cfg(feature = "peers")]
mod with_yrs;
mod work;

use measure::{NAMES, is_built};
use peer::Result;
use std::collections::HashMap;
use std::path::Path;
use std::process::Command;
use table::Row;

type Numbers = HashMap<String, f64>;

fn main() -> Result<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match arguments.split_first() {
        Some((first, rest)) if first == "child" => measure::child(rest),
        Some((first, _)) if first == "--short" => run(&["A"], 1),
        None => run(&["A", "B", "strewn", "M", "V"], 5),
        _ => Err("only --short is known".into()),
    }
}

fn run(works: &[&str], rounds: usize) -> Result<()> {
    let folder = tempfile::tempdir()?;
    let mut rows = Vec::new();
    for work in works {
        let folder = folder.path().join(work);
        match *work {
            "M" | "V" if !is_built("ours") => {}
            "V" => rows.extend(many(&folder)?),
            "M" => rows.extend(million(&folder, rounds)?),
            "strewn" => rows.extend(weighed(&folder, work)?),
            _ => rows.extend(against_peers(&folder, work, rounds)?),
        }
    }
    table::print(&rows);
    Ok(())
}

/// Returns what ours and all peers hand over.
fn prepared(folder: &Path, work: &str) -> Result<Vec<Numbers>> {
    let mut all = Vec::new();
    for name in NAMES {
        let folder = folder.join(name);
        std::fs::create_dir_all(&folder)?;
        eprintln!("work {work}, {name}");
        all.push(step("prepare", name, work, &folder)?);
    }
    Ok(all)
}

/// A work that is only weighed.
fn weighed(folder: &Path, work: &str) -> Result<Vec<Row>> {
    let all = prepared(folder, work)?;
    Ok(vec![bytes_row(work, &all)])
}

/// All steps of ours and the peers in one work.
fn against_peers(folder: &Path, work: &str, rounds: usize) -> Result<Vec<Row>> {
    let mut all = prepared(folder, work)?;
    // In turn, so that whatever slows the machine slows all.
    let mut merges = vec![Vec::new(); NAMES.len()];
    for _ in 0..rounds {
        for (at, name) in NAMES.iter().enumerate() {
            for ending in ["merged", "merged-wal", "merged-shm"] {
                let _ = std::fs::remove_file(folder.join(name).join(ending));
            }
            merges[at].push(step("merge", name, work, &folder.join(name))?);
        }
    }
    for (at, name) in NAMES.iter().enumerate() {
        let folder = folder.join(name);
        let steps = if work == "A" { vec!["check", "damage"] } else { vec!["check"] };
        for one in steps {
            all[at].extend(step(one, name, work, &folder)?);
        }
        let opened = (0..rounds).map(|_| step("open", name, work, &folder)).collect::<Result<Vec<_>>>()?;
        all[at].extend(medians(&opened));
        all[at].extend(medians(&merges[at]));
    }
    Ok(rows(work, &all))
}

/// A number of ours and the peers, in parts of `scale`.
fn of(all: &[Numbers], name: &str, scale: f64) -> [Option<f64>; 5] {
    std::array::from_fn(|at| all[at].get(name).map(|number| number / scale))
}

fn bytes_row(work: &str, all: &[Numbers]) -> Row {
    let bytes = of(all, "bytes", 1.0);
    let smaller = bytes[1].unwrap_or(0.0).min(bytes[2].unwrap_or(0.0));
    let bar = Some(("1.2 x smaller of automerge, loro", smaller * 1.2));
    Row { what: format!("{work}: hand-overs, bytes"), measured: bytes, bar }
}

fn rows(work: &str, all: &[Numbers]) -> Vec<Row> {
    let yrs = |numbers: [Option<f64>; 5], times: f64| numbers[3].unwrap_or(0.0) * times;
    let (merge, save) = (of(all, "merge_ms", 1.0), of(all, "save_ms", 1.0));
    let processor = of(all, "merge_processor_ms", 1.0);
    let (open, memory) = (of(all, "open_ms", 1.0), of(all, "memory", f64::from(1 << 20)));
    let share = |part: &str, whole: &str| -> [Option<f64>; 5] {
        std::array::from_fn(|at| Some(100.0 * all[at].get(part)? / all[at].get(whole)?))
    };
    // The bars are of work B; what is never to be is so in both.
    let bar = |words, limit| (work == "B" || limit == 0.0).then_some((words, limit));
    let row = |what: &str, measured, bar| Row { what: format!("{work}: {what}"), measured, bar };
    let mut rows = vec![
        row("merge, ms", merge, bar("1.0 x yrs", yrs(merge, 1.0))),
        row("... of it on a processor, ms", processor, bar("1.0 x yrs", yrs(processor, 1.0))),
        row("... closing or saving after it, ms", save, None),
        bytes_row(work, all),
        row("cold start, ms", open, bar("0.1 x yrs", yrs(open, 0.1))),
        row("memory, MiB", memory, bar("0.5 x yrs", yrs(memory, 0.5))),
        row("older edit shown, % of conflicts", share("older_shown", "conflicts"), bar("none", 0.0)),
    ];
    if work == "A" {
        rows.push(row("damaged files taken in, %", share("accepted", "flips"), bar("none", 0.0)));
    }
    rows
}

/// A log of a million edits: only ours.
fn million(folder: &Path, rounds: usize) -> Result<Vec<Row>> {
    std::fs::create_dir_all(folder)?;
    eprintln!("a million edits");
    step("prepare", "ours", "M", folder)?;
    let taken = step("merge", "ours", "M", folder)?;
    let opened = (0..rounds).map(|_| step("open", "ours", "M", folder)).collect::<Result<Vec<_>>>()?;
    let opened = medians(&opened);
    let row = |what: &str, number: Option<f64>, bar| Row {
        what: format!("a million edits: {what}"),
        measured: [number, None, None, None, None],
        bar,
    };
    Ok(vec![
        row("taking in, ms", taken.get("merge_ms").copied(), None),
        row("memory, MB", taken.get("memory").map(|bytes| bytes / 1e6), Some(("at most", 200.0))),
        row("open, ms", opened.get("open_ms").copied(), Some(("at most", 500.0))),
    ])
}

/// A version vector of thousands of devices: only ours.
fn many(folder: &Path) -> Result<Vec<Row>> {
    std::fs::create_dir_all(folder)?;
    eprintln!("5,000 devices");
    step("prepare", "ours", "V", folder)?;
    let came = step("merge", "ours", "V", folder)?;
    let row = |what: &str, name: &str, scale: f64| Row {
        what: format!("5,000 devices: {what}"),
        measured: [came.get(name).map(|number| number / scale), None, None, None, None],
        bar: None,
    };
    Ok(vec![
        row("taking in, ms", "take_ms", 1.0),
        row("sealing the vector, ms", "seal_ms", 1.0),
        row("... bytes", "vector_bytes", 1.0),
        row("taking in all with it, ms", "learn_ms", 1.0),
        row("memory, MB", "memory", 1e6),
    ])
}

/// Runs one step in a process of its own.
fn step(step: &str, peer: &str, work: &str, folder: &Path) -> Result<Numbers> {
    if !is_built(peer) {
        return Ok(Numbers::new());
    }
    let mut command = Command::new(std::env::current_exe()?);
    let output = command.args(["child", step, peer, work]).arg(folder).output()?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr);
        return Err(format!("{step} of {peer} in work {work}: {said}").into());
    }
    let said = String::from_utf8(output.stdout)?;
    let numbers = said.lines().filter_map(|line| line.split_once('='));
    numbers.map(|(name, number)| Ok((name.to_owned(), number.parse()?))).collect()
}

fn medians(runs: &[Numbers]) -> Numbers {
    let names = runs.first().into_iter().flat_map(HashMap::keys);
    names
        .map(|name| {
            let mut numbers: Vec<f64> = runs.iter().filter_map(|run| run.get(name).copied()).collect();
            numbers.sort_unstable_by(f64::total_cmp);
            (name.clone(), numbers[numbers.len() / 2])
        })
        .collect()
}

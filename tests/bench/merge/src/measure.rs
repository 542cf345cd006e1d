//! One measurement in one process, so that memory is its own; what it came to is printed as `name=number`.

use crate::peer::{Merged, Peer, Result, hand_overs, timed};
use crate::work::{Chance, STREWN, Size, WORK_A, WORK_B, Work};
#[cfg(feature = "ours")]
use crate::{
    many,
    ours::{self, Ours},
};
#[cfg(feature = "peers")]
use crate::{with_automerge::WithAutomerge, with_loro::WithLoro, with_sqlite::WithSqlite, with_yrs::WithYrs};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

/// Single bits that are flipped.
const FLIPS: u32 = 500;

/// Ours and the peers, in the order of the table.
pub const NAMES: [&str; 5] = ["ours", "automerge", "loro", "yrs", "sqlite"];

/// One of [`NAMES`], if it was built.
fn peer(name: &str) -> Option<&'static dyn Peer> {
    match name {
        #[cfg(feature = "ours")]
        "ours" => Some(&Ours),
        #[cfg(feature = "peers")]
        "automerge" => Some(&WithAutomerge),
        #[cfg(feature = "peers")]
        "loro" => Some(&WithLoro),
        #[cfg(feature = "peers")]
        "yrs" => Some(&WithYrs),
        #[cfg(feature = "peers")]
        "sqlite" => Some(&WithSqlite),
        _ => None,
    }
}

/// Returns whether one of [`NAMES`] was built.
pub fn is_built(name: &str) -> bool {
    peer(name).is_some()
}

/// Does what the arguments name: `<step> <peer> <work> <folder>`.
///
/// # Errors
/// Whatever goes wrong.
pub fn child(arguments: &[String]) -> Result<()> {
    let [step, name, work, folder] = arguments else { return Err("step, peer, work, folder".into()) };
    let folder = Path::new(folder);
    match work.as_str() {
        "M" => return million(step, folder),
        "V" => return vector(step, folder),
        _ => {}
    }
    let peer = peer(name).ok_or("no such peer")?;
    let size = match work.as_str() {
        "A" => WORK_A,
        "B" => WORK_B,
        _ => STREWN,
    };
    match step.as_str() {
        "prepare" => {
            peer.prepare(&Work::new(size), folder)?;
            say("bytes", hand_overs(folder, 0)?.iter().map(Vec::len).sum::<usize>() as f64);
        }
        "merge" => say_merged(&peer.merge(folder, &hand_overs(folder, 1)?)?),
        "open" => {
            let id = std::fs::read(folder.join("last-id"))?.as_slice().try_into()?;
            let (took, ()) = timed(|| peer.open(folder, id))?;
            say("open_ms", took.ms());
        }
        "check" => check(peer, size, folder)?,
        "damage" => damage(peer, folder)?,
        _ => return Err("no such step".into()),
    }
    Ok(())
}

fn say(name: &str, number: f64) {
    println!("{name}={number}");
}

fn say_merged(merged: &Merged) {
    say("merge_ms", merged.took.ms());
    say("merge_processor_ms", merged.took.processor.as_secs_f64() * 1e3);
    say("save_ms", merged.saved.ms());
    say("memory", merged.memory as f64);
}

/// Returns whether what is shown for cells with several values is what was noted last.
fn check(peer: &dyn Peer, size: Size, folder: &Path) -> Result<()> {
    let work = Work::new(size);
    let conflicts = work.conflicts();
    let cells: Vec<(usize, usize)> = conflicts.keys().copied().collect();
    let shown = peer.shown(folder, &work, &cells)?;
    let wrong =
        shown.iter().zip(conflicts.values()).filter(|(shown, latest)| shown.as_ref() != Some(*latest));
    say("conflicts", cells.len() as f64);
    say("older_shown", wrong.count() as f64);
    std::fs::write(folder.join("last-id"), work.ids[size.pits - 1])?;
    Ok(())
}

/// How many files with one flipped bit are taken in. A panic takes nothing in.
fn damage(peer: &dyn Peer, folder: &Path) -> Result<()> {
    let file = hand_overs(folder, 1)?.into_iter().next().ok_or("no hand-over")?;
    if !peer.accepts(&file) {
        return Err("not even the whole file is taken in".into());
    }
    std::panic::set_hook(Box::new(|_| {}));
    let mut chance = Chance(7);
    let mut accepted = 0;
    for _ in 0..FLIPS {
        let mut damaged = file.clone();
        let bit = chance.below(damaged.len() * 8);
        damaged[bit / 8] ^= 1 << (bit % 8);
        accepted += u32::from(catch_unwind(AssertUnwindSafe(|| peer.accepts(&damaged))).unwrap_or(false));
    }
    say("flips", f64::from(FLIPS));
    say("accepted", f64::from(accepted));
    Ok(())
}

#[cfg(feature = "ours")]
fn million(step: &str, folder: &Path) -> Result<()> {
    match step {
        "prepare" => ours::prepare_million(folder)?,
        "merge" => say_merged(&ours::take_in_million(folder)?),
        "open" => say("open_ms", ours::open_million(folder)?.ms()),
        _ => return Err("no such step".into()),
    }
    Ok(())
}

#[cfg(feature = "ours")]
fn vector(step: &str, folder: &Path) -> Result<()> {
    match step {
        "prepare" => many::prepare(folder),
        _ => many::take_in(folder, say),
    }
}

#[cfg(not(feature = "ours"))]
fn vector(_: &str, _: &Path) -> Result<()> {
    Err("ours was not built".into())
}

#[cfg(not(feature = "ours"))]
fn million(_: &str, _: &Path) -> Result<()> {
    Err("ours was not built".into())
}

//! What is asked of ours and of every peer.

use crate::work::{Scalar, Work};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// Whatever goes wrong, goes wrong loudly.
pub type Result<T> = std::result::Result<T, Box<dyn std::error::Error>>;

/// What a merge came to.
pub struct Merged {
    /// Taking in, alone. Ours is on the disk then; peers have it in memory.
    pub took: Took,
    /// Making it last, where that is not part of taking in.
    pub saved: Took,
    /// The most memory until then, bytes.
    pub memory: u64,
}

/// Something that merges.
pub trait Peer {
    /// Writes what all devices do: each hand-over as a file ([`hand_over_path`]), and the first device's own part under `folder`.
    ///
    /// # Errors
    /// Whatever goes wrong.
    fn prepare(&self, work: &Work, folder: &Path) -> Result<()>;

    /// The first device opens what it has and takes in the hand-overs of all others, spring before summer.
    ///
    /// # Errors
    /// Whatever goes wrong.
    fn merge(&self, folder: &Path, hand_overs: &[Vec<u8>]) -> Result<Merged>;

    /// Opens what was merged and reads the zone of one pit.
    ///
    /// # Errors
    /// Whatever goes wrong.
    fn open(&self, folder: &Path, id: [u8; 16]) -> Result<()>;

    /// Returns what is shown for these cells after merging.
    ///
    /// # Errors
    /// Whatever goes wrong.
    fn shown(&self, folder: &Path, work: &Work, cells: &[(usize, usize)]) -> Result<Vec<Option<Scalar>>>;

    /// Returns whether a new device takes in a file without complaint.
    fn accepts(&self, hand_over: &[u8]) -> bool;
}

/// A device's hand-over of a season (0 = spring, 1 = summer).
pub fn hand_over_path(folder: &Path, season: usize, device: usize) -> PathBuf {
    folder.join(format!("hand-over-{season}-{device}"))
}

/// Hand-overs of the devices that are there, season by season.
///
/// # Errors
/// Whatever the disk reports.
pub fn hand_overs(folder: &Path, from_device: usize) -> Result<Vec<Vec<u8>>> {
    let mut files = BTreeMap::new();
    for season in 0..2 {
        for device in from_device.. {
            let path = hand_over_path(folder, season, device);
            if !path.exists() {
                break;
            }
            files.insert((season, device), fs::read(path)?);
        }
    }
    Ok(files.into_values().collect())
}

/// How long something took.
#[derive(Clone, Copy)]
pub struct Took {
    /// By the clock on the wall.
    pub wall: Duration,
    /// Of that, on a processor: what a busy machine changes least.
    pub processor: Duration,
}

impl Took {
    /// Milliseconds by the clock on the wall.
    pub fn ms(self) -> f64 {
        self.wall.as_secs_f64() * 1e3
    }
}

/// How long it took and what came out.
///
/// # Errors
/// Whatever `run` reports.
pub fn timed<T>(run: impl FnOnce() -> Result<T>) -> Result<(Took, T)> {
    let (before, start) = (on_processor()?, Instant::now());
    let came = run()?;
    let wall = start.elapsed();
    Ok((Took { wall, processor: on_processor()?.saturating_sub(before) }, came))
}

/// How long this thread was on a processor so far (Linux: `schedstat`, which is brought up to date when it makes way for others).
fn on_processor() -> Result<Duration> {
    std::thread::yield_now();
    let status = fs::read_to_string("/proc/thread-self/schedstat")?;
    Ok(Duration::from_nanos(status.split(' ').next().ok_or("no schedstat")?.parse()?))
}

/// The most memory this process ever had, bytes (Linux: `VmHWM`).
///
/// # Errors
/// Where the system does not tell.
pub fn most_memory() -> Result<u64> {
    let status = fs::read_to_string("/proc/self/status")?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).ok_or("no VmHWM")?;
    Ok(line.trim().trim_end_matches(" kB").trim().parse::<u64>()? * 1024)
}

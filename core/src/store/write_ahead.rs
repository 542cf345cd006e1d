//! The write-ahead log that a program left when it was cut off (sqlite.org/fileformat2.html, 4).
//!
//! SQLite reads it up to the first frame that does not fit and drops the rest without a word. After a power cut
//! that is right: the rest is of one save that was still being written. A whole save after the first bad frame says
//! something else: that frame was on the disk, and rotted.

use std::fs::File;
use std::io::{Read, Seek, Write};
use std::path::{Path, PathBuf};

const HEADER_BYTES: usize = 32;
const FRAME_HEADER_BYTES: usize = 24;
/// The header's magic number; the last bit says that its numbers are taken with the first byte first.
const MAGIC: u32 = 0x377f_0682;

/// A running checksum.
type Sum = [u32; 2];

/// Writes the log of a locked store again as it is, and syncs it. If a sync had failed before the program was cut off, parts of the log can be
/// read and yet never come to the disk: the system takes them for written (Rebello and others 2020, "Can applications recover from
/// fsync failures?"). Saves behind them would be lost with them. Where it fails, the log is as before.
pub(super) fn bring_to_disk(store: &Path) {
    let again = |mut log: File| {
        let mut bytes = Vec::new();
        log.read_to_end(&mut bytes)?;
        log.rewind()?;
        log.write_all(&bytes)?;
        log.sync_all()
    };
    let _ = File::options().read(true).write(true).open(log_of(store)).and_then(again);
}

fn log_of(store: &Path) -> PathBuf {
    let mut name = store.as_os_str().to_owned();
    name.push("-wal");
    name.into()
}

/// Returns whether saves are lost that had been written in full. To be asked while nobody of this program has the store open.
pub(super) fn is_damaged(store: &Path) -> bool {
    let Ok(log) = std::fs::read(log_of(store)) else { return false };
    page_bytes(store).is_some_and(|page_bytes| loses_a_save(&log, page_bytes))
}

/// The size of a page, from the header of the file: a power of two from 512, or 1 for 65,536.
fn page_bytes(store: &Path) -> Option<usize> {
    let mut header = [0; 18];
    File::open(store).ok()?.read_exact(&mut header).ok()?;
    match usize::from(u16::from_be_bytes([header[16], header[17]])) {
        1 => Some(65_536),
        bytes => Some(bytes).filter(|bytes| bytes.is_power_of_two() && *bytes >= 512),
    }
}

fn loses_a_save(log: &[u8], page_bytes: usize) -> bool {
    let Some((header, frames)) = log.split_at_checked(HEADER_BYTES) else { return false };
    let magic = number(header, 0);
    let first_byte_first = if magic & !1 == MAGIC { magic & 1 == 1 } else { cfg!(target_endian = "big") };
    let sum = |sum: Sum, bytes: &[u8]| add(sum, bytes, first_byte_first);
    let frames: Vec<&[u8]> = frames.chunks_exact(FRAME_HEADER_BYTES + page_bytes).collect();
    let stored = |frame: &[u8]| [number(frame, 16), number(frame, 20)];
    let begins = |frame: &[u8], before: Sum| {
        stored(frame) == sum(sum(before, &frame[..8]), &frame[FRAME_HEADER_BYTES..])
    };
    let ends_a_save = |frame: &[u8]| number(frame, 4) != 0;
    let header_sum = [number(header, 24), number(header, 28)];
    let header_fits = magic & !1 == MAGIC && sum([0; 2], &header[..24]) == header_sum;
    let fits =
        |at: usize| begins(frames[at], at.checked_sub(1).map_or(header_sum, |before| stored(frames[before])));
    let of_header = |frame: &[u8]| frame[8..16] == header[16..24];
    let sound = if header_fits {
        (0..frames.len()).take_while(|at| of_header(frames[*at]) && fits(*at)).count()
    } else {
        0
    };
    // The bad frame; if its own checksum is what rotted, the next does not fit either.
    let Some(goes_on) =
        (sound..frames.len().min(sound + 3)).find(|at| (*at > sound || !header_fits) && fits(*at))
    else {
        return false;
    };
    let salts = &frames[goes_on][8..16];
    let run = (goes_on..frames.len()).take_while(|at| frames[*at][8..16] == *salts && fits(*at)).count();
    let saves = frames[sound..goes_on + run].iter().filter(|frame| ends_a_save(frame)).count();
    if header_fits { of_header(frames[goes_on]) && saves > 1 } else { saves > 0 }
}

fn number(bytes: &[u8], at: usize) -> u32 {
    bytes[at..at + 4].iter().fold(0, |number, byte| number << 8 | u32::from(*byte))
}

/// Checksums go on from frame to frame.
fn add(sum: Sum, bytes: &[u8], first_byte_first: bool) -> Sum {
    let word = |word: &[u8]| {
        let number = number(word, 0);
        if first_byte_first { number } else { number.swap_bytes() }
    };
    bytes.chunks_exact(8).fold(sum, |[first, second], pair| {
        let first = first.wrapping_add(word(&pair[..4])).wrapping_add(second);
        [first, second.wrapping_add(word(&pair[4..])).wrapping_add(first)]
    })
}

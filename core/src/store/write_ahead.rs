//! The write-ahead log that a program left when it was cut off (sqlite.org/fileformat2.html, 4).
//!
//! SQLite reads it up to the first frame that does not fit and drops the rest without a word. After a power cut
//! that is right: the rest is of one save that was still being written. A whole save after the first bad frame says
//! something else: that frame was on the disk, and rotted.

use std::path::Path;

const HEADER_BYTES: usize = 32;
const FRAME_HEADER_BYTES: usize = 24;
/// The header's magic number; the last bit says that its numbers are taken with the first byte first.
const MAGIC: u32 = 0x377f_0682;

/// A running checksum.
type Sum = [u32; 2];

/// Whether saves are lost that had been written in full.
pub(super) fn is_damaged(store: &Path, page_bytes: usize) -> bool {
    let mut name = store.as_os_str().to_owned();
    name.push("-wal");
    std::fs::read(name).is_ok_and(|log| loses_a_save(&log, page_bytes))
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

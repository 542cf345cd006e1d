//! A disk as a power cut finds it: what was synced is there; of what was not, any part may be.

use crate::{Change, Tape};
use std::collections::BTreeMap;

/// Files of a folder by name.
pub type Files = BTreeMap<String, Vec<u8>>;

/// The smallest piece that a disk writes as a whole, bytes (common practice; larger ones tear less).
const SECTOR_BYTES: usize = 512;

/// What a power cut makes of one change that was not synced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fate {
    /// It had come to the disk.
    Kept,
    /// It had not.
    Dropped,
    /// Of its sectors those had come whose bit is set, counted from the first, again and again.
    Torn(u64),
}

/// A change that is not known to be on the disk. Files go by number: a name can be given again.
enum Pending {
    Write { file: usize, at: usize, bytes: Vec<u8> },
    Truncate { file: usize, length: usize },
    Link { name: String, file: usize },
    Unlink { name: String },
}

impl Pending {
    fn is_entry(&self) -> bool {
        matches!(self, Self::Link { .. } | Self::Unlink { .. })
    }

    fn is_of(&self, wanted: usize) -> bool {
        matches!(self, Self::Write { file, .. } | Self::Truncate { file, .. } if *file == wanted)
    }
}

/// Plays a tape back.
#[derive(Default)]
pub struct Disk {
    /// Contents on the disk, by number.
    contents: Vec<Vec<u8>>,
    /// Names on the disk.
    names: BTreeMap<String, usize>,
    /// Names as the running program sees them.
    seen: BTreeMap<String, usize>,
    pending: Vec<Pending>,
}

impl Disk {
    /// A disk with what was there before a tape began.
    pub fn before(tape: &Tape) -> Self {
        let mut disk = Self::default();
        for (name, bytes) in tape.before() {
            disk.names.insert(name.clone(), disk.contents.len());
            disk.contents.push(bytes.clone());
        }
        disk.seen.clone_from(&disk.names);
        disk
    }

    /// Takes the next change.
    pub fn play(&mut self, change: &Change) {
        match change {
            Change::Create(name) => {
                let file = self.contents.len();
                self.contents.push(Vec::new());
                self.seen.insert(name.clone(), file);
                self.pending.push(Pending::Link { name: name.clone(), file });
            }
            Change::Write { name, at, bytes } => {
                let file = self.seen[name];
                self.pending.push(Pending::Write { file, at: *at, bytes: bytes.clone() });
            }
            Change::Truncate { name, length } => {
                self.pending.push(Pending::Truncate { file: self.seen[name], length: *length });
            }
            Change::Delete(name) => {
                self.seen.remove(name);
                self.pending.push(Pending::Unlink { name: name.clone() });
            }
            Change::Sync(name) => {
                let file = self.seen[name];
                self.settle(|pending| pending.is_of(file));
            }
            Change::SyncFailed(name) => {
                let failed = self.seen[name];
                self.pending
                    .retain(|pending| !matches!(pending, Pending::Write { file, .. } if *file == failed));
            }
            Change::SyncFolder => self.settle(Pending::is_entry),
        }
    }

    /// Brings some of what is pending to the disk.
    fn settle(&mut self, which: impl Fn(&Pending) -> bool) {
        let (settled, pending) = std::mem::take(&mut self.pending).into_iter().partition(which);
        self.pending = pending;
        let settled: Vec<Pending> = settled;
        for change in &settled {
            apply(&mut self.contents, &mut self.names, change, Fate::Kept);
        }
    }

    /// How many changes are not synced.
    pub fn pending(&self) -> usize {
        self.pending.len()
    }

    /// The files after a power cut now, `fate` asked for each change that is not synced (and told whether it is one of
    /// the folder).
    pub fn cut(&self, mut fate: impl FnMut(bool) -> Fate) -> Files {
        let (mut contents, mut names) = (self.contents.clone(), self.names.clone());
        for change in &self.pending {
            let fate = fate(change.is_entry());
            apply(&mut contents, &mut names, change, fate);
        }
        names.into_iter().map(|(name, file)| (name, std::mem::take(&mut contents[file]))).collect()
    }
}

fn apply(contents: &mut [Vec<u8>], names: &mut BTreeMap<String, usize>, change: &Pending, fate: Fate) {
    let sectors = match fate {
        Fate::Dropped => return,
        Fate::Kept => u64::MAX,
        Fate::Torn(sectors) => sectors,
    };
    match change {
        Pending::Write { file, at, bytes } => write(&mut contents[*file], *at, bytes, sectors),
        Pending::Truncate { file, length } => contents[*file].resize(*length, 0),
        Pending::Link { name, file } => drop(names.insert(name.clone(), *file)),
        Pending::Unlink { name } => drop(names.remove(name)),
    }
}

/// Writes the chosen sectors of some bytes; what lies before and was never written reads as zeros.
fn write(content: &mut Vec<u8>, at: usize, bytes: &[u8], sectors: u64) {
    let first = at / SECTOR_BYTES;
    for sector in first..=(at + bytes.len()).saturating_sub(1) / SECTOR_BYTES {
        if sectors >> ((sector - first) % 64) & 1 == 0 {
            continue;
        }
        let from = at.max(sector * SECTOR_BYTES);
        let to = (at + bytes.len()).min((sector + 1) * SECTOR_BYTES);
        if content.len() < to {
            content.resize(to, 0);
        }
        content[from..to].copy_from_slice(&bytes[from - at..to - at]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn change(at: usize, byte: u8) -> Change {
        Change::Write { name: "a".into(), at, bytes: vec![byte; 1024] }
    }

    #[test]
    fn what_was_synced_stays_and_the_rest_is_as_fate_has_it() {
        let mut disk = Disk::before(&Tape::default());
        for change in [
            Change::Create("a".into()),
            change(0, 1),
            Change::Sync("a".into()),
            Change::SyncFolder,
            change(1024, 2),
            Change::Delete("a".into()),
        ] {
            disk.play(&change);
        }
        let length = |files: Files| files.get("a").map(Vec::len);
        assert_eq!(length(disk.cut(|_| Fate::Dropped)), Some(1024));
        assert_eq!(length(disk.cut(|_| Fate::Kept)), None);
        let entry_lost = |is_entry| if is_entry { Fate::Dropped } else { Fate::Kept };
        assert_eq!(length(disk.cut(entry_lost)), Some(2048));
        let torn = disk.cut(|is_entry| if is_entry { Fate::Dropped } else { Fate::Torn(0b10) });
        assert!(torn["a"][1024..1536].iter().all(|byte| *byte == 0), "the first sector had not come");
        assert!(torn["a"][1536..].iter().all(|byte| *byte == 2));
    }

    #[test]
    fn a_synced_file_without_its_entry_is_not_there() {
        let mut disk = Disk::before(&Tape::default());
        for change in [Change::Create("a".into()), change(0, 1), Change::Sync("a".into())] {
            disk.play(&change);
        }
        assert_eq!(disk.cut(|_| Fate::Dropped).len(), 0);
        assert_eq!(disk.pending(), 1);
    }
}

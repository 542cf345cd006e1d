//! Edits and photos together, as they are handed over and taken in.

use super::{DeviceId, PhotoHash, Photos, PieceTaken, Store, StoreError, TakenIn, photo_name};
use crate::merge::{Damage, FileWriter, Part, PartKind, PhotoPiece, each_part};
use std::collections::{BTreeMap, BTreeSet, HashSet};
use std::io::{self, BufReader, Read, Seek, SeekFrom, Write};

/// What taking in came to; all of it is on the disk.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Came {
    /// What became of the edits.
    pub taken: TakenIn,
    /// Photos that are whole now.
    pub photos: BTreeSet<PhotoHash>,
    /// Photos that no record here names; nothing of them was kept.
    pub photos_unnamed: BTreeSet<PhotoHash>,
    /// Photos whose pieces did not fit together once all of a file was there, and the names of such files as far as the caller noted them.
    pub photos_wrong: BTreeMap<PhotoHash, BTreeSet<String>>,
}

/// What was handed over.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Handed {
    /// Bundles.
    pub bundles: u64,
    /// Photos, whole or in part.
    pub photos: usize,
    /// Photos that are damaged here, and stayed out.
    pub damaged: Vec<PhotoHash>,
}

/// Why pieces of photos were not kept; the edits that came with them are there.
#[derive(Debug, thiserror::Error)]
pub enum CameFault {
    /// See [`Store::take_in`]; nothing was changed.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A piece could not be written.
    #[error("a photo cannot be kept ({1})")]
    Photo(PhotoHash, #[source] io::Error),
}

impl Store {
    /// Takes in a file: its edits as [`Store::take_in`] does, then its pieces of photos that records name. Photos among
    /// `damaged` get their bytes back from it. All of the file is checked before anything is used; no more of it is held than its
    /// edits and one piece.
    ///
    /// # Errors
    /// See [`CameFault`].
    pub fn take_in_with_photos(
        &mut self,
        file: &mut (impl Read + Seek),
        photos: &Photos,
        damaged: &BTreeSet<PhotoHash>,
        now_ms: u64,
    ) -> Result<Came, CameFault> {
        let looked = match Looked::at(file) {
            Err(StoreError::Bundle(Damage::Newer(_))) => return Ok(self.hold(file, now_ms)?),
            looked => looked?,
        };
        let mut came = Came::default();
        if looked.edits.count() > 0 {
            came.taken = self.take_in(&looked.edits.end().map_err(StoreError::from)?, now_ms)?;
        }
        let named = self.photos()?;
        let (mut bytes, mut begun) = (Vec::new(), BTreeSet::new());
        for (at, length) in looked.pieces {
            bytes.clear();
            file.seek(SeekFrom::Start(at)).map_err(StoreError::from)?;
            file.take(length as u64).read_to_end(&mut bytes).map_err(StoreError::from)?;
            let (part, _) = Part::first_of(&bytes).map_err(StoreError::from)?;
            let piece = PhotoPiece::read(part.content).map_err(StoreError::from)?;
            let failed = |error| CameFault::Photo(piece.sha256, error);
            if came.piece(&piece, photos, &named, damaged).map_err(failed)? {
                begun.insert((piece.sha256, piece.size_bytes));
            }
        }
        begun.retain(|(photo, _)| !came.photos.contains(photo));
        for (photo, size_bytes) in begun {
            match photos.finish(&photo, size_bytes).map_err(|error| CameFault::Photo(photo, error))? {
                PieceTaken::Complete => drop(came.photos.insert(photo)),
                PieceTaken::Wrong => drop(came.photos_wrong.entry(photo).or_default()),
                PieceTaken::Known | PieceTaken::Kept => {}
            }
        }
        Ok(came)
    }

    /// Keeps a file of a newer version as it is.
    fn hold(&mut self, file: &mut (impl Read + Seek), now_ms: u64) -> Result<Came, StoreError> {
        let mut bytes = Vec::new();
        file.rewind()?;
        file.read_to_end(&mut bytes)?;
        Ok(self.take_in(&bytes, now_ms)?.into())
    }

    /// Writes what is here for others: bundles ([`Store::hand_over`]), then pieces of photos. Parts whose hash is among
    /// `there` are left out, and so are photos that are damaged.
    ///
    /// # Errors
    /// Whatever the disk or the writer reports.
    pub fn hand_over_with_photos<W: Write>(
        &self,
        to: Option<DeviceId>,
        there: &HashSet<[u8; 32]>,
        (photos, chosen): (&Photos, &[PhotoHash]),
        file: &mut FileWriter<W>,
    ) -> Result<Handed, StoreError> {
        let new = |part: &[u8]| part.last_chunk::<32>().is_some_and(|hash| !there.contains(hash));
        let mut handed = Handed::default();
        self.each_part_for(to, there, |part| {
            file.add(part)?;
            handed.bundles += 1;
            Ok(())
        })?;
        for photo in chosen {
            if !photos.is_sound(photo) {
                handed.damaged.push(*photo);
                continue;
            }
            let before = file.count();
            photos.each_piece(photo, |piece| {
                let part = piece.write();
                if new(&part) { file.add(&part) } else { Ok(()) }
            })?;
            handed.photos += usize::from(file.count() > before);
        }
        Ok(handed)
    }
}

/// What a file holds, all of it checked but for its edits.
struct Looked {
    /// All but the photos, as a file of its own.
    edits: FileWriter<Vec<u8>>,
    /// Where pieces of photos are, and how long.
    pieces: Vec<(u64, usize)>,
}

impl Looked {
    fn at(file: &mut impl Read) -> Result<Self, StoreError> {
        let (mut edits, mut pieces) = (FileWriter::new(Vec::new()), Vec::new());
        each_part(BufReader::new(file), |at, part| {
            if part.kind == PartKind::PhotoPiece {
                PhotoPiece::read(part.content)?;
                pieces.push((at, part.bytes.len()));
                return Ok(());
            }
            Ok::<(), StoreError>(edits.add(part.bytes)?)
        })?;
        Ok(Self { edits, pieces })
    }
}

impl From<TakenIn> for Came {
    fn from(taken: TakenIn) -> Self {
        Self { taken, ..Self::default() }
    }
}

impl Came {
    /// What came of two files, one after the other.
    pub fn add(&mut self, later: Self) {
        let (taken, came) = (&mut self.taken, later.taken);
        taken.edits += came.edits;
        taken.known += came.known;
        taken.held |= came.held;
        taken.missing = came.missing;
        taken.strangers.extend(came.strangers);
        taken.refused.extend(came.refused);
        taken.no_room.extend(came.no_room);
        taken.vouchings = came.vouchings;
        taken.unknown_parts += came.unknown_parts;
        taken.copied.extend(came.copied);
        taken.clock_wrong.extend(came.clock_wrong);
        self.photos.extend(later.photos);
        self.photos_unnamed.extend(later.photos_unnamed);
        for (photo, files) in later.photos_wrong {
            self.photos_wrong.entry(photo).or_default().extend(files);
        }
    }

    /// Takes in a piece; whether its photo is not whole after it, and is to be tried after the last piece.
    fn piece(
        &mut self,
        piece: &PhotoPiece,
        photos: &Photos,
        named: &BTreeSet<PhotoHash>,
        damaged: &BTreeSet<PhotoHash>,
    ) -> io::Result<bool> {
        if !named.contains(&piece.sha256) {
            self.photos_unnamed.insert(piece.sha256);
            return Ok(false);
        }
        let mend = damaged.contains(&piece.sha256) && !self.photos.contains(&piece.sha256);
        let taken = if mend { photos.mend(piece) } else { photos.take_in(piece) }?;
        if taken == PieceTaken::Complete {
            self.photos.insert(piece.sha256);
        }
        Ok(mend || photos.size(&piece.sha256).is_none())
    }
}

/// How a file of bundles is called, `1a2b3c4d-5e6f7a8b.pitb`: by the device that wrote it and a hash of what is in it.
pub fn bundle_name(device: DeviceId, hash: &[u8; 32]) -> String {
    const DIGITS: usize = 8;
    format!("{}-{}.pitb", &device.to_hex()[..DIGITS], &photo_name(hash)[..DIGITS])
}

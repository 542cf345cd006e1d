//! `pitface look`: what is inside a bundle file.

use crate::Answer;
use crate::argument::Shown;
use crate::carried::files::{read_bytes, unlocked};
use crate::carried::taking::missing_json;
use crate::carried::team_word::TeamWordArgument;
use crate::carried::{device_json, local};
use crate::json::merged;
use crate::trouble::Trouble;
use clap::Args;
use pitface_core::merge::plan::{Arrival, Fate, Missing, plan};
use pitface_core::merge::{Bundle, Damage, DeviceId, PIECE_BYTES, PartKind, PhotoPiece, read_file};
use pitface_core::store::{PhotoHash, StoreError, photo_name};
use pitface_core::words::{Words, Wrote};
use pitface_locked::is_locked;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

/// Which file.
#[derive(Args)]
pub struct Look {
    /// A bundle file; nothing of it is taken in.
    #[arg(value_name = "FILE.pitb")]
    file: PathBuf,
    #[command(flatten)]
    team_word: TeamWordArgument,
}

impl Look {
    /// Looks.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let word = self.team_word.word()?;
        let bytes = read_bytes(&self.file)?;
        let locked = is_locked(&bytes);
        let bytes = unlocked(&self.file, bytes, word.as_ref())?;
        let inside = Inside::of(&bytes).map_err(|damage| Trouble::of_said(&self.file, &damage))?;
        let words = shown.words();
        let mut lines: Vec<String> = locked.then(|| words.locked_inside()).into_iter().collect();
        lines.extend(inside.told(&words));
        let json = merged(json!({ "locked": locked }), inside.json());
        let answer = Answer::new(lines.join("\n") + "\n", json);
        Ok(Answer { sound: inside.holds(), ..answer })
    }
}

/// What a file holds.
struct Inside<'a> {
    bundles: Vec<Result<Bundle, Damage>>,
    /// The pieces of each photo, by its size and their offsets.
    photos: BTreeMap<(PhotoHash, u64), BTreeMap<u64, &'a [u8]>>,
    /// Kind and size of parts that nobody here knows.
    unknown: Vec<(u16, u64)>,
    missing: BTreeSet<Missing>,
}

impl<'a> Inside<'a> {
    fn of(bytes: &'a [u8]) -> Result<Self, Damage> {
        let mut inside = Self {
            bundles: Vec::new(),
            photos: BTreeMap::new(),
            unknown: Vec::new(),
            missing: BTreeSet::new(),
        };
        for part in read_file(bytes)? {
            match part.kind {
                PartKind::Edits => inside.bundles.push(Bundle::read(part.content)),
                PartKind::PhotoPiece => {
                    let piece = PhotoPiece::read(part.content)?;
                    let photo = inside.photos.entry((piece.sha256, piece.size_bytes)).or_default();
                    photo.insert(piece.offset, piece.bytes);
                }
                PartKind::Other(kind) => inside.unknown.push((kind, part.content.len() as u64)),
                PartKind::End => {}
            }
        }
        inside.missing = inside.missing();
        Ok(inside)
    }

    /// Returns what a store that has nothing would still lack after this file.
    fn missing(&self) -> BTreeSet<Missing> {
        let sound = self.bundles.iter().flatten();
        let arrivals: Vec<Arrival> =
            sound.map(|bundle| Arrival { header: &bundle.header, chains: &bundle.chains }).collect();
        // There are no lines yet of which a chain could be asked for.
        let nothing = |_, _| Err(StoreError::NoKey);
        let fates = plan(&[], &arrivals, nothing).map_or_else(|_| Vec::new(), |plan| plan.fates);
        let waits = |fate| match fate {
            Fate::Waits(missing) => Some(missing),
            Fate::Used { .. } => None,
        };
        fates.into_iter().filter_map(waits).collect()
    }

    fn holds(&self) -> bool {
        let mut photos = self.photos.iter().map(|((photo, size), pieces)| holds(photo, *size, pieces));
        self.bundles.iter().all(Result::is_ok) && photos.all(|holds| holds != Some(false))
    }

    fn holder(&self, device: DeviceId) -> &str {
        let mut headers = self.bundles.iter().flatten().map(|bundle| &bundle.header);
        headers.find(|header| header.signer() == device).map_or("", |header| &header.holder)
    }

    fn told(&self, words: &Words) -> Vec<String> {
        let mut lines = Vec::new();
        for bundle in &self.bundles {
            let header = match bundle {
                Ok(bundle) => &bundle.header,
                Err(damage) => {
                    lines.push(words.bundle_broken(&damage.to_string()));
                    continue;
                }
            };
            let (device, signer) = (header.device, header.signer());
            let holder = self.holder(device);
            // Alone, so that nothing of theirs stands beside it.
            let fingerprint = signer.to_string();
            lines.extend((!lines.contains(&fingerprint)).then_some(fingerprint));
            let wrote = Wrote { device, holder, when: local(header.sealed_ms) };
            lines.push(words.bundle_inside(&wrote, header.first, header.last, &header.written_by));
            lines.extend((device != signer).then(|| words.vouches(signer, &header.holder, device)));
        }
        for ((photo, size_bytes), pieces) in &self.photos {
            let counts = [pieces.len() as u64, size_bytes.div_ceil(PIECE_BYTES)];
            lines.push(words.photo_inside(
                &photo_name(photo),
                *size_bytes,
                counts,
                holds(photo, *size_bytes, pieces),
            ));
        }
        lines.extend(self.unknown.iter().map(|(kind, size_bytes)| words.unknown_inside(*kind, *size_bytes)));
        let gaps = self.missing.iter().map(|missing| words.gap_inside(missing, self.holder(missing.device)));
        lines.extend(gaps);
        let whole = self.missing.is_empty() && self.bundles.iter().any(Result::is_ok);
        lines.extend(whole.then(|| words.no_gap_inside()));
        lines
    }

    fn json(&self) -> Value {
        let bundle = |bundle: &Result<Bundle, Damage>| match bundle {
            Ok(Bundle { header, .. }) => merged(
                device_json(header.device, self.holder(header.device)),
                json!({
                    "holds": true, "signer": device_json(header.signer(), &header.holder),
                    "first": header.first, "last": header.last, "edits": header.count(),
                    "sealed_ms": header.sealed_ms, "written_by": header.written_by,
                }),
            ),
            Err(damage) => json!({ "holds": false, "wrong": damage.to_string() }),
        };
        let photo = |((photo, size_bytes), pieces): (&(PhotoHash, u64), &BTreeMap<u64, &[u8]>)| {
            json!({
                "sha256": photo_name(photo), "size_bytes": size_bytes, "pieces_here": pieces.len(),
                "pieces": size_bytes.div_ceil(PIECE_BYTES), "holds": holds(photo, *size_bytes, pieces),
            })
        };
        let unknown = |(kind, size_bytes): &(u16, u64)| json!({ "kind": kind, "size_bytes": size_bytes });
        json!({
            "bundles": self.bundles.iter().map(bundle).collect::<Vec<_>>(),
            "photos": self.photos.iter().map(photo).collect::<Vec<_>>(),
            "unknown": self.unknown.iter().map(unknown).collect::<Vec<_>>(),
            "missing": self.missing.iter().map(missing_json).collect::<Vec<_>>(),
        })
    }
}

/// Returns whether a photo's hash is right; `None` if not all of it is here.
fn holds(photo: &PhotoHash, size_bytes: u64, pieces: &BTreeMap<u64, &[u8]>) -> Option<bool> {
    if pieces.len() as u64 != size_bytes.div_ceil(PIECE_BYTES) {
        return None;
    }
    let hash = pieces.values().fold(Sha256::new(), Sha256::chain_update);
    Some(hash.finalize().as_slice() == photo)
}

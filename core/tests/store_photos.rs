//! Photos on the disk: pieces from any carrier in any order, wrong bytes, damage, and copies that do not say where.

use crate::store_support;

use pitface_core::merge::{PIECE_BYTES, PhotoPiece};
use pitface_core::record::Photo;
use pitface_core::store::{
    Leaving, PhotoHash, Photos, PieceTaken, Store, Stripped, photo_hash, photo_name, shown_size, stripped,
    without_notes,
};
use proptest::prelude::*;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use store_support::{DEVICE, NOW_MS, ellmoor, id};
use tempfile::TempDir;

const PIECE: usize = PIECE_BYTES as usize;

/// A photo of so many pieces, the last one short.
fn photo(pieces: usize) -> Vec<u8> {
    (0..PIECE * (pieces - 1) + 1000).map(|at| (at / 7 + at / 4096) as u8).collect()
}

fn hash(bytes: &[u8]) -> PhotoHash {
    Sha256::digest(bytes).into()
}

fn piece(bytes: &[u8], number: usize) -> PhotoPiece<'_> {
    let offset = number * PIECE;
    let end = bytes.len().min(offset + PIECE);
    PhotoPiece {
        sha256: hash(bytes),
        size_bytes: bytes.len() as u64,
        offset: offset as u64,
        bytes: &bytes[offset..end],
    }
}

fn folder() -> (TempDir, Photos) {
    let folder = tempfile::tempdir().unwrap();
    let photos = Photos::new(folder.path().join("photos"));
    (folder, photos)
}

/// Names in the folder of photos.
fn names(folder: &TempDir) -> BTreeSet<String> {
    let entries = std::fs::read_dir(folder.path().join("photos")).unwrap();
    entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

#[test]
fn a_photo_is_kept_once_under_its_hash_and_comes_out_in_pieces() {
    let (folder, photos) = folder();
    let bytes = photo(3);
    let taken = folder.path().join("taken.jpg");
    std::fs::write(&taken, &bytes).unwrap();
    let kept = photos.keep(&taken).unwrap();
    assert_eq!((kept.sha256, kept.size_bytes, kept.new), (hash(&bytes), bytes.len() as u64, true));
    assert!(!photos.keep(&taken).unwrap().new);
    assert_eq!(names(&folder), BTreeSet::from([photo_name(&hash(&bytes))]));
    let mut found = Vec::new();
    let mut offsets = Vec::new();
    photos
        .each_piece(&hash(&bytes), |piece| {
            assert!(PhotoPiece::read(&piece.write()[16..][..48 + piece.bytes.len()]).is_ok());
            found.extend(piece.bytes);
            offsets.push(piece.offset);
            Ok(())
        })
        .unwrap();
    assert_eq!((found, offsets), (bytes, vec![0, PIECE_BYTES, 2 * PIECE_BYTES]));
}

#[test]
fn what_is_no_photo_is_not_kept() {
    let (folder, photos) = folder();
    let empty = folder.path().join("empty.jpg");
    std::fs::write(&empty, []).unwrap();
    assert!(photos.keep(&empty).is_err());
    assert!(photos.keep(&folder.path().join("nowhere.jpg")).is_err());
    assert!(names(&folder).is_empty());
    assert_eq!(photo_hash("photo.new"), None);
    assert_eq!(photo_hash(&"G".repeat(64)), None);
    assert_eq!(photo_hash(&photo_name(&[0xa5; 32])), Some([0xa5; 32]));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Each carrier brings some pieces, some of them twice, in any order; it is the whole once all were brought and never before.
    #[test]
    fn any_pieces_in_any_order_from_any_carriers(brought in prop::collection::vec(0..4_usize, 0..14), cut: bool) {
        let (folder, photos) = folder();
        let bytes = photo(4);
        let mut here = BTreeSet::new();
        for (at, number) in brought.iter().enumerate() {
            if cut {
                // The power went while a piece was written: half of it lies beside its place.
                let parts = folder.path().join("photos").join(format!("{}.part", photo_name(&hash(&bytes))));
                if parts.is_dir() {
                    std::fs::write(parts.join(format!("{}-{}.new", bytes.len(), number * PIECE)), b"half").unwrap();
                }
            }
            let was_whole = here.len() == 4;
            let new = here.insert(*number);
            let taken = Photos::new(folder.path().join("photos")).take_in(&piece(&bytes, *number)).unwrap();
            let expected = match () {
                () if was_whole || !new => PieceTaken::Known,
                () if here.len() == 4 => PieceTaken::Complete,
                () => PieceTaken::Kept,
            };
            prop_assert_eq!(taken, expected, "{} at {}", number, at);
            if here.len() < 4 {
                prop_assert_eq!(photos.pieces(&hash(&bytes)), here.len());
            }
        }
        let whole = here.len() == 4;
        prop_assert_eq!(photos.missing(&[hash(&bytes)]).is_empty(), whole);
        if whole {
            prop_assert_eq!(std::fs::read(photos.path(&hash(&bytes))).unwrap(), bytes);
            prop_assert_eq!(names(&folder).len(), 1, "no pieces are left");
        }
    }
}

#[test]
fn wrong_bytes_under_a_right_name_are_told_and_replaced() {
    let (_folder, photos) = folder();
    let bytes = photo(3);
    let mut other = bytes.clone();
    other[PIECE + 5] ^= 1;
    let wrong = PhotoPiece { sha256: hash(&bytes), ..piece(&other, 1) };
    assert_eq!(photos.take_in(&piece(&bytes, 0)).unwrap(), PieceTaken::Kept);
    assert_eq!(photos.take_in(&wrong).unwrap(), PieceTaken::Kept);
    assert_eq!(photos.take_in(&piece(&bytes, 2)).unwrap(), PieceTaken::Wrong);
    assert_eq!((photos.size(&hash(&bytes)), photos.pieces(&hash(&bytes))), (None, 3));
    for number in 0..3 {
        photos.take_in(&piece(&bytes, number)).unwrap();
    }
    assert_eq!(photos.finish(&hash(&bytes), bytes.len() as u64).unwrap(), PieceTaken::Complete);
    assert!(photos.is_sound(&hash(&bytes)));
}

#[test]
fn a_wrong_size_does_not_stand_in_the_way() {
    let (_folder, photos) = folder();
    let bytes = photo(2);
    let short = PhotoPiece { size_bytes: 10, offset: 0, bytes: &bytes[..10], sha256: hash(&bytes) };
    let long = PhotoPiece { size_bytes: 1 << 60, ..piece(&bytes, 0) };
    assert_eq!(photos.take_in(&short).unwrap(), PieceTaken::Wrong);
    assert_eq!(photos.take_in(&long).unwrap(), PieceTaken::Kept);
    photos.take_in(&piece(&bytes, 0)).unwrap();
    assert_eq!(photos.take_in(&piece(&bytes, 1)).unwrap(), PieceTaken::Complete);
}

#[test]
fn after_a_power_cut_right_before_the_photo_got_its_name_any_file_finishes_it() {
    let (folder, photos) = folder();
    let bytes = photo(2);
    let parts = folder.path().join("photos").join(format!("{}.part", photo_name(&hash(&bytes))));
    std::fs::create_dir_all(&parts).unwrap();
    for number in 0..2 {
        let name = format!("{}-{}", bytes.len(), number * PIECE);
        std::fs::write(parts.join(name), piece(&bytes, number).bytes).unwrap();
    }
    assert_eq!(photos.take_in(&piece(&bytes, 0)).unwrap(), PieceTaken::Known);
    assert_eq!(photos.finish(&hash(&bytes), bytes.len() as u64).unwrap(), PieceTaken::Complete);
}

#[test]
fn damage_is_named_and_mended_from_pieces() {
    let (_folder, photos) = folder();
    assert_eq!(photos.check().unwrap().sound, 0, "no folder, no photos");
    let (one, other) = (photo(2), photo(1));
    for (bytes, pieces) in [(&one, 2), (&other, 1)] {
        for number in 0..pieces {
            photos.take_in(&piece(bytes, number)).unwrap();
        }
    }
    let path = photos.path(&hash(&one));
    let mut rotten = one.clone();
    rotten[PIECE] ^= 4;
    std::fs::write(&path, rotten).unwrap();
    let checked = photos.check().unwrap();
    assert_eq!((checked.sound, checked.damaged), (1, BTreeSet::from([hash(&one)])));
    assert_eq!(photos.take_in(&piece(&one, 0)).unwrap(), PieceTaken::Known, "it goes by the name");
    photos.mend(&piece(&one, 1)).unwrap();
    assert_eq!(photos.mend(&piece(&one, 0)).unwrap(), PieceTaken::Complete);
    assert_eq!(std::fs::read(&path).unwrap(), one);
    assert!(photos.check().unwrap().damaged.is_empty());
}

/// A segment of a JPEG.
fn segment(marker: u8, content: &[u8]) -> Vec<u8> {
    let length = u16::try_from(content.len() + 2).unwrap().to_be_bytes();
    [&[0xff, marker], length.as_slice(), content].concat()
}

/// Exif that says how the picture is turned and where it was taken; the latter stands in a list of its own at 38.
fn exif(big: bool, way: u16) -> Vec<u8> {
    let short = |number: u16| if big { number.to_be_bytes() } else { number.to_le_bytes() };
    let long = |number: u32| if big { number.to_be_bytes() } else { number.to_le_bytes() };
    let value = [short(way), [0, 0]].concat();
    let parts: Vec<&[u8]> = vec![b"Exif\0\0", if big { b"MM" } else { b"II" }];
    let mut content = parts.concat();
    content.extend([short(42).as_slice(), &long(8), &short(2)].concat());
    content.extend([short(0x0112).as_slice(), &short(3), &long(1), &value].concat());
    content.extend([short(0x8825).as_slice(), &short(4), &long(1), &long(38)].concat());
    content.extend([long(0).as_slice(), &short(1)].concat());
    content.extend([short(1).as_slice(), &short(2), &long(2), b"N\0\0\0", &long(0)].concat());
    content.extend(b"54.4960 N 2.5160 E");
    content
}

/// A picture, but for its segments of notes, with stuffed bytes and restarts in its data.
fn picture() -> [Vec<u8>; 2] {
    let tables = [segment(0xdb, &[7; 65]), segment(0xc0, &[8, 0, 16, 0, 16, 1, 1, 0x11, 0])].concat();
    let scan = [segment(0xda, &[1, 1, 0, 0, 63, 0]), vec![1, 0xff, 0, 0xe1, 0xff, 0xd3, 9, 0xff, 0xd9]];
    [tables, scan.concat()]
}

fn holds(bytes: &[u8], sought: &[u8]) -> bool {
    bytes.windows(sought.len()).any(|window| window == sought)
}

#[test]
fn a_copy_to_share_does_not_say_where_and_shows_the_same_picture() {
    let [tables, scan] = picture();
    for big in [true, false] {
        let app0 = segment(0xe0, b"JFIF\0\x01\x02\0\0\x01\0\x01\0\0");
        let notes = [
            segment(0xe1, &exif(big, 6)),
            segment(0xe1, b"http://ns.adobe.com/xap/1.0/\0<x GPSLatitude='54,29.76N'/>"),
            segment(0xed, b"Photoshop 3.0\08BIM Ellmoor"),
            segment(0xe2, b"MPF\0 serial 4711"),
            segment(0xe5, b"maker: serial 4711"),
            segment(0xfe, b"taken 2026-08-19, serial 4711"),
        ];
        let taken = [&[0xff, 0xd8], app0.as_slice(), &notes.concat(), &tables, &scan].concat();
        // Some cameras put another whole picture behind it, with notes of its own.
        let behind = [taken.as_slice(), &taken].concat();
        for taken in [taken, behind] {
            let shared = without_notes(&taken).unwrap();
            for said in [&b"54.4960"[..], b"GPSLatitude", b"Ellmoor", b"4711", &[0x88, 0x25], &[0x25, 0x88]] {
                assert!(holds(&taken, said) || said.len() == 2);
                assert!(!holds(&shared, said), "{said:?}");
            }
            assert!(shared.starts_with(&[&[0xff, 0xd8], app0.as_slice()].concat()));
            assert!(
                shared.ends_with(&[tables.as_slice(), &scan].concat()),
                "not one byte of the picture changed"
            );
            let turned = &shared[2 + app0.len()..shared.len() - tables.len() - scan.len()];
            assert_eq!(
                turned[..10],
                segment(0xe1, &[0; 32])[..4].iter().chain(b"Exif\0\0").copied().collect::<Vec<_>>()
            );
            assert_eq!(turned[20..30], [0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6], "it is still turned");
            assert_eq!(without_notes(&shared), Some(shared.clone()));
        }
    }
}

#[test]
fn an_upright_picture_needs_no_notes() {
    let [tables, scan] = picture();
    for way in [0, 1, 9] {
        let taken = [&[0xff, 0xd8], segment(0xe1, &exif(true, way)).as_slice(), &tables, &scan].concat();
        assert_eq!(without_notes(&taken), Some([&[0xff, 0xd8], tables.as_slice(), &scan].concat()));
    }
}

#[test]
fn what_a_picture_is_shown_by_stays() {
    let [tables, scan] = picture();
    let shows = [
        segment(0xe0, b"JFIF\0\x01\x02\0\0\x01\0\x01\0\0"),
        segment(0xe2, b"ICC_PROFILE\0\x01\x01colours"),
        segment(0xee, b"Adobe\0\x64\0\0\0\0\x01"),
    ]
    .concat();
    let taken = [&[0xff, 0xd8], shows.as_slice(), &tables, &scan].concat();
    assert_eq!(stripped(&taken), Stripped::Same);
}

#[test]
fn a_photo_is_as_large_as_it_is_shown() {
    let [_, scan] = picture();
    // SOF0, 480 high and 640 wide (ITU-T T.81, B.2.2).
    let frame = segment(0xc0, &[8, 1, 0xe0, 2, 0x80, 1, 1, 0x11, 0]);
    for (way, size) in [(1, [640, 480]), (3, [640, 480]), (6, [480, 640]), (8, [480, 640])] {
        let taken = [&[0xff, 0xd8], segment(0xe1, &exif(false, way)).as_slice(), &frame, &scan].concat();
        assert_eq!(shown_size(&taken), Some(size), "turned {way}");
        assert_eq!(shown_size(&without_notes(&taken).unwrap()), Some(size), "and without its notes");
        for end in 0..taken.len() - scan.len() {
            assert_eq!(shown_size(&taken[..end]), None, "broken off at {end}");
        }
    }
    let png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x02\x80\0\0\x01\xe0";
    assert_eq!(shown_size(png), Some([640, 480]));
    assert_eq!(shown_size(b"no picture"), None);
}

#[test]
fn a_photo_with_notes_is_replaced_before_it_leaves() {
    let folder = tempfile::tempdir().unwrap();
    let photos = Photos::new(folder.path().join("photos"));
    let mut store = Store::create_or_open(&folder.path().join("notes"), DEVICE).unwrap();
    let [tables, scan] = picture();
    let taken = [&[0xff, 0xd8], segment(0xe1, &exif(true, 1)).as_slice(), &tables, &scan].concat();
    let clean = [&[0xff, 0xd8], tables.as_slice(), &scan].concat();
    let kept = photos.keep_bytes(&taken).unwrap();
    let other = photos.keep_bytes(b"no picture").unwrap();
    let mut notes = ellmoor();
    let photo = notes.pits.iter().flat_map(|pit| &pit.photos).next().unwrap().clone();
    for pit in &mut notes.pits {
        pit.photos.clear();
    }
    notes.pits[0].photos = [&kept, &other, &kept]
        .into_iter()
        .enumerate()
        .map(|(at, kept)| Photo {
            id: id(9_000 + at as u64),
            sha256: photo_name(&kept.sha256),
            size_bytes: kept.size_bytes,
            ..photo.clone()
        })
        .collect();
    store.save_notes(&notes, NOW_MS).unwrap();
    let chosen = vec![kept.sha256, other.sha256];
    let leaving = store.photos_to_leave(&photos, chosen, NOW_MS).unwrap();
    assert_eq!(leaving, Leaving { photos: vec![hash(&clean)], stripped: 1, stay: vec![other.sha256] });
    assert_eq!(std::fs::read(photos.path(&hash(&clean))).unwrap(), clean);
    assert!(photos.is_sound(&kept.sha256), "the original stays here");
    let named: Vec<String> = store.load_notes(notes.field.id).unwrap().pits[0]
        .photos
        .iter()
        .map(|photo| photo.sha256.clone())
        .collect();
    assert_eq!(named, [hash(&clean), other.sha256, hash(&clean)].map(|hash| photo_name(&hash)));
    assert!(!store.photos().unwrap().contains(&kept.sha256), "nothing names it any more");
    // The second time there is nothing to do.
    let again = store.photos_to_leave(&photos, leaving.photos.clone(), NOW_MS).unwrap();
    assert_eq!((again.photos, again.stripped), (leaving.photos, 0));
}

proptest! {
    /// Whatever comes, it does not fail, and what is no JPEG stays as it is.
    #[test]
    fn anything_can_be_shared(bytes: Vec<u8>, cut in 0..400_usize, flip in 0..400_usize) {
        if !bytes.starts_with(&[0xff, 0xd8]) {
            prop_assert_eq!(without_notes(&bytes), None);
        }
        let [tables, scan] = picture();
        let mut taken = [&[0xff, 0xd8], segment(0xe1, &exif(true, 3)).as_slice(), &tables, &scan].concat();
        let length = taken.len();
        taken[flip % length] ^= 0x10;
        taken.truncate(length - cut % length);
        without_notes(&taken);
    }
}

/// Whatever forged pieces came before, and in whatever order: a file with all that is right brings the photo.
#[test]
fn a_forged_piece_never_keeps_the_good_ones_out() {
    let bytes = photo(4);
    let wrong = vec![7; PIECE];
    for forged in 1..16_usize {
        let (_folder, photos) = folder();
        for number in (0..4).filter(|number| forged >> number & 1 == 1) {
            let good = piece(&bytes, number);
            photos.take_in(&PhotoPiece { bytes: &wrong[..good.bytes.len()], ..good }).unwrap();
        }
        let mut taken: Vec<PieceTaken> =
            (0..4).map(|number| photos.take_in(&piece(&bytes, number)).unwrap()).collect();
        if photos.size(&hash(&bytes)).is_none() {
            taken.push(photos.finish(&hash(&bytes), bytes.len() as u64).unwrap());
        }
        assert!(photos.is_sound(&hash(&bytes)), "{forged:04b}: {taken:?}");
    }
}

//! Walkers with a store each: they note, hand over, take in, see what differs and settle it.

use crate::support;

use pitface_core::merge::{FileWriter, Part, PartKind, PhotoPiece, read_file};
use pitface_core::store::{DeviceId, Store};
use serde_json::Value;
use sha2::{Digest, Sha256};
use support::walker::{STORE, Walker, dug_to, pair, photo_noted, share_all, with_photo};
use support::{ONE_PIT, Place};

#[test]
fn three_walkers_share_a_folder() {
    let (ann, ben, cat) = (Walker::new("Ann"), Walker::new("Ben"), Walker::new("Cat"));
    let shared = Place::new();
    let folder = shared.path("").display().to_string();
    ann.notes(ONE_PIT);
    ben.notes(&ONE_PIT.replace("Long Sedge", "Short Sedge"));
    cat.notes(&ONE_PIT.replace("Long Sedge", "Mere Piece"));
    for walker in [&ann, &ben, &cat] {
        walker.share(&folder);
    }
    // Nobody is trusted unasked, and each is told whom to ask.
    let told = cat.place.good(&["hand-over", STORE, "--folder", &folder]);
    assert!(told.contains(&format!("Ann ({}) is not known here", ann.fingerprint())), "{told}");
    assert!(told.contains("Compare"), "{told}");
    assert!(told.contains(&format!("pitface take-in {STORE} --accept {}", ann.fingerprint())), "{told}");
    let told = cat.place.good(&["partners", STORE]);
    assert!(told.starts_with(&format!("{}\n  Cat: This device", cat.fingerprint())), "{told}");
    assert!(told.contains("\n  Ann: waits to be accepted, no edits here."), "{told}");
    for one in [&ann, &ben, &cat] {
        for other in [&ann, &ben, &cat].into_iter().filter(|other| other.name != one.name) {
            // Whoever shared first has not met the others yet.
            one.share(&folder);
            assert_ne!(one.accept(other)["edits"], 0, "{} of {}", one.name, other.name);
        }
    }
    share_all(&[&ann, &ben, &cat], &folder);
    assert_eq!(ann.digest(), ben.digest());
    assert_eq!(ann.digest(), cat.digest());
    assert_eq!(ann.place.json(&["partners", STORE])["edits_not_carried"], 0);

    // Two measure the same pit again.
    ann.notes(&dug_to(460));
    ben.measures_again(470);
    share_all(&[&ann, &ben, &cat], &folder);
    let told = cat.place.good(&["settle", STORE]).replace('\u{a0}', " ");
    assert!(told.contains("One value has several versions:\n1. Long Sedge, pit 1: dug to\n"), "{told}");
    assert!(told.contains("  1: 47 cm, written by Ben ("), "{told}");
    assert!(told.contains("  2: 46 cm, written by Ann ("), "{told}");
    assert!(told.contains("; this one is shown"), "{told}");
    let told = ann.place.good(&["settle", STORE, "--language", "de"]).replace('\u{a0}', " ");
    assert!(told.contains("1. Long Sedge, Grube 1: gegraben bis\n  1: 47 cm, von Ben ("), "{told}");
    let told = cat.place.good(&["settle", STORE, "--keep", "1", "2"]).replace('\u{a0}', " ");
    assert!(told.starts_with("Long Sedge, pit 1, dug to: 46 cm stands from now on.\nNo value has"), "{told}");
    share_all(&[&ann, &ben, &cat], &folder);
    for walker in [&ann, &ben] {
        assert_eq!(walker.place.json(&["settle", STORE])["versions"], Value::Array(Vec::new()));
        assert_eq!(walker.digest(), cat.digest());
        walker.place.good(&["check", STORE]);
    }

    // Nobody touched the file of somebody else, and none was left half-written.
    let names = shared.names(".");
    for name in &names {
        let [device, hash] = [name.get(..8), name.get(9..17)].map(|hex| hex.is_some_and(is_hex));
        assert!(device && hash && name[17..] == *".pitb", "{name}");
    }
    let before: Vec<_> = names.iter().map(|name| std::fs::read(shared.path(name)).unwrap()).collect();
    share_all(&[&ann, &ben, &cat], &folder);
    assert_eq!(shared.names("."), names, "at rest nothing is written");
    let after: Vec<_> = names.iter().map(|name| std::fs::read(shared.path(name)).unwrap()).collect();
    assert_eq!(before, after);
}

fn is_hex(text: &str) -> bool {
    text.chars().all(|letter| letter.is_ascii_hexdigit())
}

#[test]
fn what_one_deleted_and_another_went_on_with_is_told_and_decided() {
    let back: &[&str] = &["bring-back", STORE, "1"];
    let stays: &[&str] = &["settle", STORE, "--stay-deleted", "1"];
    for (decide, pits, said, left) in [
        (back, 1, "is back", "Nothing is deleted."),
        (stays, 0, "stays deleted", "Nothing was deleted that somebody else went on with."),
    ] {
        let (ann, ben) = pair();
        ann.removes_all_pits(r#"{"pitface": 1, "field": {"name": "Long Sedge"}, "pits": []}"#);
        ben.measures_again(480);
        let file = ben.hand_over("more.pitb", &[]);
        ann.place.good(&["take-in", STORE, &file]);
        let told = ann.place.good(&["settle", STORE]);
        assert!(told.contains("1. Long Sedge, pit (deleted): deleted by Ann ("), "{told}");
        assert!(told.contains(", changed by Ben (") && told.contains("(dug to)"), "{told}");
        let told = ann.place.good(decide);
        assert!(told.contains(said) && told.contains(left), "{told}");
        let file = ann.hand_over("decided.pitb", &[]);
        ben.place.good(&["take-in", STORE, &file]);
        assert_eq!(ann.digest(), ben.digest());
        let store = Store::open_existing(&ben.place.path(STORE), DeviceId([9; 16])).unwrap();
        assert_eq!(store.fields().unwrap()[0].pits, pits);
    }
}

#[test]
fn what_is_not_in_the_list_cannot_be_settled() {
    let (ann, _) = pair();
    let before = ann.digest();
    for options in [["--keep", "1", "1"].as_slice(), &["--keep", "0", "0"], &["--stay-deleted", "1"]] {
        let told = ann.place.bad(&[&["settle", STORE], options].concat());
        assert!(told.starts_with("arguments: --") && told.contains("there is no"), "{told}");
    }
    assert_eq!(ann.digest(), before);
}

#[test]
fn a_damaged_file_is_refused_and_changes_nothing() {
    let (ann, ben) = pair();
    ann.notes(&dug_to(460));
    let file = ann.hand_over("more.pitb", &[]);
    let mut bytes = std::fs::read(&file).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    std::fs::write(ben.place.path("damaged.pitb"), &bytes).unwrap();
    std::fs::write(ben.place.path("short.pitb"), &bytes[..middle]).unwrap();
    let store = std::fs::read(ben.place.path(STORE)).unwrap();
    // The sound file beside them is not used either.
    let told = ben.place.bad(&["take-in", STORE, &file, "damaged.pitb", "short.pitb"]);
    assert_eq!(told.lines().count(), 2, "{told}");
    assert!(told.contains("damaged.pitb: ") && told.contains("fetch it again"), "{told}");
    assert_eq!(std::fs::read(ben.place.path(STORE)).unwrap(), store);
    ben.place.bad(&["take-in", "new.pitface", "damaged.pitb"]);
    assert!(!ben.place.path("new.pitface").exists());
    ben.place.bad(&["look", "damaged.pitb"]);
    // In a shared folder it is told, and does not stop the sound ones.
    let shared = Place::new();
    std::fs::write(shared.path("damaged.pitb"), &bytes).unwrap();
    std::fs::copy(&file, shared.path("sound.pitb")).unwrap();
    let folder = shared.path("").display().to_string();
    let ran = ben.place.run(&["hand-over", STORE, "--folder", &folder]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.err.contains("damaged.pitb: "), "{}", ran.err);
    assert_eq!(ann.digest(), ben.digest());
}

#[test]
fn a_gap_is_told_until_it_is_filled() {
    let (ann, ben) = pair();
    ann.notes(&dug_to(460));
    let first = ann.hand_over("first.pitb", &[]);
    ann.notes(&dug_to(470));
    let second = ann.hand_over("second.pitb", &["--to", "first.pitb"]);
    let told = ben.place.good(&["look", &second]);
    assert!(told.contains("The file does not bring edits 1 to "), "{told}");
    let told = ben.place.json(&["take-in", STORE, &second]);
    assert_eq!((&told["edits"], told["missing"].as_array().unwrap().len()), (&Value::from(0), 1));
    assert_eq!(told["missing"][0]["device"], ann.fingerprint());
    let told = ben.place.good(&["partners", STORE]);
    assert!(told.contains(" is missing") || told.contains(" are missing"), "{told}");
    assert!(told.contains("Ask anybody who has met that device"), "{told}");
    let told = ben.place.json(&["take-in", STORE, &first]);
    assert_eq!(told["missing"], Value::Array(Vec::new()));
    assert_eq!(ann.digest(), ben.digest());
}

#[test]
fn what_the_other_has_is_left_out() {
    let (ann, ben) = pair();
    let told = ann.place.good(&["hand-over", STORE, "--to", &ben.fingerprint(), "--out", "for_ben.pitb"]);
    let count = |name: &str| read_file(&std::fs::read(ann.place.path(name)).unwrap()).unwrap().len();
    ann.hand_over("for_all.pitb", &[]);
    assert!(
        !ann.place.path("for_ben.pitb").exists() || count("for_ben.pitb") < count("for_all.pitb"),
        "{told}"
    );
    let told =
        ann.place.bad(&["hand-over", STORE, "--to", "0000-0000-0000-0000-0000", "--out", "for_nobody.pitb"]);
    assert!(told.contains("no device 0000-0000-0000-0000-0000"), "{told}");
    let told = ann.place.bad(&["take-in", STORE, "--accept", "Ben"]);
    assert!(told.contains("no fingerprint"), "{told}");
}

/// The bytes of a file in a format that is not known yet.
fn from_the_future() -> Vec<u8> {
    let mut bytes = b"PITB\x02\0\0\x01\0\0\0\0\0\0\0\x05later".to_vec();
    let hash = Sha256::digest(&bytes);
    bytes.extend(hash);
    bytes
}

#[test]
fn a_newer_file_is_kept_for_later() {
    let (ann, _) = pair();
    let before = ann.digest();
    std::fs::write(ann.place.path("later.pitb"), from_the_future()).unwrap();
    let told = ann.place.good(&["take-in", STORE, "later.pitb"]);
    assert!(told.contains("newer version") && told.contains("kept"), "{told}");
    assert_eq!(ann.place.json(&["take-in", STORE, "later.pitb"])["files_held"], 1);
    assert_eq!(ann.digest(), before);
    assert!(ann.place.bad(&["look", "later.pitb"]).contains("update the program"));
}

#[test]
fn a_part_that_nobody_here_knows_and_nobody_signed_stays_out() {
    let (ann, ben) = pair();
    let part = Part::write(PartKind::Other(0x8001), b"from a later version");
    let mut file = FileWriter::new(Vec::new());
    file.add(&part).unwrap();
    std::fs::write(ann.place.path("later.pitb"), file.end().unwrap()).unwrap();
    let told = ben.place.good(&["look", &ann.place.path("later.pitb").display().to_string()]);
    assert!(told.contains("kind 32769"), "{told}");
    let told = ann.place.good(&["take-in", STORE, "later.pitb"]);
    assert!(told.contains("not kept: 1."), "{told}");
    let all = std::fs::read(ann.hand_over("all.pitb", &[])).unwrap();
    assert!(read_file(&all).unwrap().iter().all(|found| found.bytes != part));
}

#[test]
fn a_store_without_its_key_begins_anew_and_answers_for_what_was_there() {
    let (ann, ben) = pair();
    let old = ann.fingerprint();
    ann.notes(&dug_to(460));
    std::fs::remove_file(ann.place.path("settings/pitface/key")).unwrap();
    let file = ann.hand_over("anew.pitb", &[]);
    assert_ne!(ann.fingerprint(), old);
    let told = ben.place.good(&["look", &file]);
    assert!(told.contains(&format!("answers for edits of device {old}")), "{told}");
    let told = ben.place.good(&["take-in", STORE, &file]);
    assert!(told.contains("is not known here"), "{told}");
    let new = ann.fingerprint();
    let told = ben.place.good(&["take-in", STORE, "--accept", &new]);
    assert!(
        told.contains(&format!("Ann ({new}) is accepted.")) && told.contains("speaks for itself"),
        "{told}"
    );
    let told = ben.place.bad(&["partners", STORE, "--believe", &new, &old]);
    assert!(told.contains("refuse it first, if it is lost"), "{told}");
    let told = ben.place.good(&["partners", STORE, "--refuse", &old, "--after", "2999-12-31"]);
    assert!(told.contains(&format!("  pitface partners {STORE} --believe {new} {old}")), "{told}");
    let told = ben.place.good(&["partners", STORE, "--believe", &new, &old]);
    assert!(told.contains("is believed.") && told.contains("they are taken in."), "{told}");
    assert_eq!(ann.digest(), ben.digest());
    let told = ann.place.good(&["partners", STORE]);
    assert!(told.contains("This store under an earlier name"), "{told}");
}

#[test]
fn the_key_is_made_once_and_for_this_person_alone() {
    let (ann, ben) = pair();
    let key = ann.place.path("settings/pitface/key");
    let text = std::fs::read_to_string(&key).unwrap();
    ann.notes(&dug_to(460));
    assert_eq!(std::fs::read_to_string(&key).unwrap(), text);
    assert_ne!(std::fs::read_to_string(ben.place.path("settings/pitface/key")).unwrap(), text);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        assert_eq!(std::fs::metadata(&key).unwrap().permissions().mode() & 0o777, 0o600);
    }
    assert!(ann.place.good(&["hand-over", "--help"]).contains("do not copy it"));
}

#[test]
fn photos_travel_and_are_mended() {
    let (ann, ben) = pair();
    let (name, bytes) = with_photo(&ann);
    let notes = ann.hand_over("notes.pitb", &["--without-photos"]);
    let told = ben.place.json(&["take-in", STORE, &notes]);
    assert_eq!(told["photos"], Value::Array(Vec::new()));
    let told = ben.place.json(&["partners", STORE]);
    assert_eq!((&told["photos_here"], &told["photos_named"]), (&Value::from(0), &Value::from(1)));
    let told = ben.place.good(&["check", STORE]);
    assert!(told.contains("that are not here: 1"), "{told}");

    let all = ann.hand_over("all.pitb", &[]);
    let told = ben.place.good(&["look", &all]);
    assert!(told.contains(&format!("Photo {}, 1500 kB: whole", &name[..8])), "{told}");
    assert!(ben.place.good(&["take-in", STORE, &all]).contains("Photos that came: 1."));
    let path = ben.place.path("photos").join(&name);
    assert_eq!(std::fs::read(&path).unwrap(), bytes);

    let mut rotten = bytes.clone();
    rotten[77] ^= 2;
    std::fs::write(&path, rotten).unwrap();
    let ran = ben.place.run(&["check", STORE]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.contains(&format!("Photo {} is damaged", &name[..8])), "{}", ran.out);
    let ran = ben.place.run(&["hand-over", STORE, "--out", "all.pitb"]);
    assert!(ran.err.contains("damaged and stays here"), "{}", ran.err);
    let told = ben.place.good(&["check", STORE, "--repair", &all]);
    assert!(told.contains("as it was taken again") && told.contains("Sound: "), "{told}");
    assert_eq!(std::fs::read(&path).unwrap(), bytes);

    // Of somebody who is not accepted nothing is kept but the bundles.
    let cat = Walker::new("Cat");
    let told = cat.place.json(&["take-in", STORE, &all]);
    assert_eq!(told["photos_unnamed"], serde_json::json!([name]));
    assert!(!cat.place.path("photos").exists());
}

/// The file with a bit turned over in the last piece of its photo, and all hashes right again.
fn forged(walker: &Walker, file: &str) -> String {
    let bytes = std::fs::read(file).unwrap();
    let mut forged = FileWriter::new(Vec::new());
    for part in read_file(&bytes).unwrap() {
        let piece = (part.kind == PartKind::PhotoPiece).then(|| PhotoPiece::read(part.content).unwrap());
        match piece.filter(|piece| piece.offset > 0) {
            Some(piece) => {
                let mut wrong = piece.bytes.to_vec();
                wrong[5] ^= 1;
                forged.add(&PhotoPiece { bytes: &wrong, ..piece }.write()).unwrap();
            }
            None => forged.add(part.bytes).unwrap(),
        }
    }
    let path = walker.place.path("forged.pitb");
    std::fs::write(&path, forged.end().unwrap()).unwrap();
    path.display().to_string()
}

#[test]
fn a_forged_piece_of_a_photo_is_told_with_its_file_and_keeps_nothing_out() {
    let (ann, ben) = pair();
    let (name, bytes) = with_photo(&ann);
    let all = ann.hand_over("all.pitb", &[]);
    let forged = forged(&ann, &all);
    let kept = ben.place.path("photos").join(&name);
    let told = ben.place.good(&["take-in", STORE, &forged]);
    assert!(
        told.contains(&format!("photo {} do not fit together since {forged} came", &name[..8])),
        "{told}"
    );
    assert!(!kept.exists());
    let told = ben.place.json(&["take-in", STORE, &forged, &all]);
    assert_eq!(told["photos"], serde_json::json!([name]));
    assert_eq!(told["photos_wrong_in"], serde_json::json!([{"photo": name, "file": forged}]));
    assert_eq!(std::fs::read(&kept).unwrap(), bytes);

    // Nor where a check brings photos back.
    std::fs::remove_file(&kept).unwrap();
    let told = ben.place.good(&["check", STORE, "--repair", &forged, &all]);
    assert!(told.contains("Sound: "), "{told}");
    assert_eq!(std::fs::read(&kept).unwrap(), bytes);
    std::fs::remove_file(&kept).unwrap();
    let told = ben.place.good(&["take-in", STORE, &forged, &all]);
    assert!(told.contains(&format!("Photo {} is here", &name[..8])), "{told}");
}

#[test]
fn a_damaged_store_is_told_and_made_anew_from_what_others_have() {
    let (ann, ben) = pair();
    // A name that stands in the log and in the current cells.
    let path = ann.place.path(STORE);
    let mut bytes = std::fs::read(&path).unwrap();
    let found: Vec<usize> =
        (0..bytes.len() - 10).filter(|at| &bytes[*at..at + 10] == b"Long Sedge").collect();
    assert!(found.len() >= 2);
    for at in found {
        bytes[at] = b'W';
    }
    std::fs::write(&path, bytes).unwrap();
    let ran = ann.place.run(&["check", STORE]);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    assert!(ran.out.contains("edits 1 to ") && ran.out.contains("not as they were written"), "{}", ran.out);
    let file = ben.hand_over("all.pitb", &[]);
    let told = ann.place.json(&["take-in", "new.pitface", &file, "--accept", &ben.fingerprint()]);
    assert_ne!(told["edits"], 0);
    std::fs::copy(ann.place.path("new.pitface"), &path).unwrap();
    assert_eq!(ann.digest(), ben.digest());
}

#[test]
fn photos_leave_without_what_the_camera_noted_unless_asked_for() {
    let (ann, ben) = pair();
    let notes: &[u8] = b"Exif\0\0 54.4960 N 2.5160 E, serial 4711";
    let segment = [&[0xff, 0xe1, 0, notes.len() as u8 + 2], notes].concat();
    let picture: &[u8] = &[0xff, 0xda, 0, 2, 1, 2, 3, 0xff, 0xd9];
    let (name, taken) = photo_noted(&ann, &[&[0xff, 0xd8], segment.as_slice(), picture].concat());
    let told = ann.place.good(&["hand-over", STORE, "--out", "all.pitb"]);
    assert!(told.contains("without the place, time and camera noted in them: 1."), "{told}");
    let file = ann.place.path("all.pitb");
    let bundle = std::fs::read(&file).unwrap();
    assert!(!bundle.windows(4).any(|window| window == b"4711"));
    ben.place.good(&["take-in", STORE, &file.display().to_string()]);
    ben.place.good(&["check", STORE]);
    let clean = [&[0xff, 0xd8], picture].concat();
    let photos = ben.place.names("photos");
    assert_eq!(photos.len(), 1);
    assert_eq!(std::fs::read(ben.place.path("photos").join(&photos[0])).unwrap(), clean, "the same picture");
    // The original stays where it was taken, and is not told to be missing anywhere.
    assert_eq!(std::fs::read(ann.place.path("photos").join(&name)).unwrap(), taken);
    assert_eq!(ben.place.json(&["partners", STORE])["photos_named"], 1);
    assert_eq!(ann.digest(), ben.digest());
    // What is no JPEG cannot be looked through.
    photo_noted(&ann, b"no picture, serial 4711");
    let told = ann.place.good(&["hand-over", STORE, "--out", "all.pitb"]);
    assert!(told.contains("Photos that stay here, because"), "{told}");
    let holds = || std::fs::read(&file).unwrap().windows(4).any(|window| window == b"4711");
    assert!(!holds());
    ann.place.good(&["hand-over", STORE, "--out", "all.pitb", "--photos-as-taken"]);
    assert!(holds());
}

#[test]
fn chosen_fields_go_alone_with_their_photos() {
    let (ann, ben) = (Walker::new("Ann"), Walker::new("Ben"));
    with_photo(&ann);
    let file = ann.place.file("other.notes.json", &ONE_PIT.replace("Long Sedge", "Mrs Reed's garden"));
    ann.place.good(&["read", &file, "--store", STORE]);
    let out = ann.place.path("for_ben");
    let out_text = out.display().to_string();
    let told = ann.place.good(&["hand-over", STORE, "--field", "Long Sedge", "--out", &out_text]);
    assert!(told.contains("nothing of any other"), "{told}");
    let mut all = Vec::new();
    for entry in ["Long_Sedge.notes.json"].into_iter().map(|name| out.join(name)) {
        all.extend(std::fs::read(entry).unwrap());
    }
    assert!(!all.windows(4).any(|window| window == b"Reed"));
    assert_eq!(std::fs::read_dir(&out).unwrap().count(), 2, "the notes and the folder of photos");
    // Ben reads them, with the same ids, and has the photo.
    let notes = out.join("Long_Sedge.notes.json").display().to_string();
    ben.place.good(&["read", &notes, "--store", STORE]);
    let partners = ben.place.json(&["partners", STORE]);
    assert_eq!((&partners["photos_here"], &partners["photos_named"]), (&1.into(), &1.into()));
    ben.place.good(&["check", STORE]);
    // With a team word set it has to be said that they are open.
    ann.place.file("word", "turf lark beet mill");
    let more = ["hand-over", STORE, "--field", "Long Sedge", "--out", &out_text, "--team-word-file", "word"];
    assert!(ann.place.bad(&more).contains("cannot be locked"));
    ann.place.good(&[&more[..], &["--open"]].concat());
}

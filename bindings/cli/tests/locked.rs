//! A team locks its files with a word: whoever has it takes them in as always, and for others they are shut.

use crate::support;

use std::fs;
use support::walker::{STORE, Walker, dug_to, pair};
use support::{Place, Ran};

const WORD: &str = "turf lark beet mill";

/// How every age file begins.
const BEGINNING: &[u8] = b"age-encryption.org/v1\n-> scrypt ";

/// A file with a word in it, in a walker's own folder.
fn keeps(walker: &Walker, word: &str) {
    walker.place.file("word", &format!("{word}\n"));
}

const WITH_WORD: [&str; 2] = ["--team-word-file", "word"];

fn with<'a>(arguments: &[&'a str], more: &[&'a str]) -> Vec<&'a str> {
    [arguments, more].concat()
}

#[test]
fn a_locked_file_is_taken_in_with_the_word_and_by_nobody_else() {
    let (ann, ben) = pair();
    for walker in [&ann, &ben] {
        keeps(walker, WORD);
    }
    ann.notes(&dug_to(460));
    let told = ann.place.good(&with(&["hand-over", STORE, "--out", "more.pitb", "--locked"], &WITH_WORD));
    assert!(told.contains("locked with the team word"), "{told}");
    let bytes = fs::read(ann.place.path("more.pitb")).unwrap();
    assert!(bytes.starts_with(BEGINNING));
    assert!(!bytes.windows(4).any(|window| window == b"PITB"));
    // A file is known by how it begins, whatever it is called.
    let file = ben.place.path("fetched.bin").display().to_string();
    fs::write(&file, &bytes).unwrap();

    let store = fs::read(ben.place.path(STORE)).unwrap();
    for command in
        [["take-in", STORE, &file].as_slice(), &["look", &file], &["check", STORE, "--repair", &file]]
    {
        let told = ben.place.bad(command);
        assert!(told.contains("the file is locked"), "{told}");
        assert!(told.contains("PITFACE_TEAM_WORD") && told.contains("--team-word-file"), "{told}");
    }
    ben.place.file("other", "turf lark beet hill");
    let told = ben.place.bad(&["take-in", STORE, &file, "--team-word-file", "other"]);
    assert!(told.contains("the team word does not open it") && !told.contains("hill"), "{told}");
    assert_eq!(fs::read(ben.place.path(STORE)).unwrap(), store);

    let told = ben.place.good(&with(&["look", &file], &WITH_WORD));
    let begins = format!("The file is locked with the team word.\n{}\nAnn (", ann.fingerprint());
    assert!(told.starts_with(&begins), "{told}");
    let mut from_variable = ben.place.command(&["take-in", STORE, &file, "--json"]);
    let ran = Ran::of(from_variable.env("PITFACE_TEAM_WORD", format!(" {WORD}\n")));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(!ran.out.contains("\"edits\": 0"), "{}", ran.out);
    assert_eq!(ann.digest(), ben.digest());
    // The file goes before the variable.
    let arguments = ["look", &file, "--team-word-file", "other"];
    assert_eq!(Ran::of(ben.place.command(&arguments).env("PITFACE_TEAM_WORD", WORD)).code, Some(2));
}

#[test]
fn a_word_that_is_missing_or_too_short_locks_nothing() {
    let (ann, _) = pair();
    ann.place.file("short", "turf lark");
    ann.place.file("weak", "passwordpassword");
    ann.place.file("common", "qwertyuiop123");
    ann.place.file("two_lines", "turf lark beet\nmill and so on");
    ann.place.file("empty", "\n");
    let lock = ["hand-over", STORE, "--out", "more.pitb", "--locked"];
    for (more, said) in [
        ([].as_slice(), "there is no team word"),
        (&["--team-word-file", "short"], "fewer than 12 characters"),
        (&["--team-word-file", "weak"], "is found in about 10^"),
        (&["--team-word-file", "common"], "is found in about 10^"),
        (&["--team-word-file", "two_lines"], "does not hold one line"),
        (&["--team-word-file", "empty"], "does not hold one line"),
        (&["--team-word-file", "nowhere"], "cannot be read"),
    ] {
        let told = ann.place.bad(&with(&lock, more));
        assert!(told.contains(said), "{told}");
        assert!(!ann.place.path("more.pitb").exists());
    }
    let empty = Ran::of(ann.place.command(&lock).env("PITFACE_TEAM_WORD", "  "));
    assert!(empty.err.contains("there is no team word"), "{}", empty.err);
}

#[test]
fn with_a_word_set_nothing_leaves_in_the_clear_unless_asked_for() {
    let (ann, ben) = pair();
    keeps(&ann, WORD);
    ann.notes(&dug_to(460));
    let hand_over = |more: &[&str]| {
        let told =
            ann.place.json(&with(&["hand-over", STORE, "--out", "more.pitb"], &with(&WITH_WORD, more)));
        (
            told["locked"].as_bool().unwrap(),
            fs::read(ann.place.path("more.pitb")).unwrap().starts_with(BEGINNING),
        )
    };
    assert_eq!(hand_over(&[]), (true, true));
    assert_eq!(hand_over(&["--open"]), (false, false));
    let shared = Place::new();
    let folder = shared.path("").display().to_string();
    assert!(ann.share_with(&folder, &WITH_WORD));
    assert!(shared.names(".").iter().all(|name| fs::read(shared.path(name)).unwrap().starts_with(BEGINNING)));
    // The folder is known as locked, also once its files are gone; Ben never saw it locked.
    for name in shared.names(".") {
        fs::remove_file(shared.path(&name)).unwrap();
    }
    let ran = ann.place.run(&["hand-over", STORE, "--folder", &folder]);
    assert_eq!((ran.code, shared.names(".").len()), (Some(2), 0), "{}", ran.out);
    assert!(
        ran.err.contains("nothing is put here in the clear") && ran.err.contains("--open"),
        "{}",
        ran.err
    );
    assert!(ann.share_with(&folder, &["--open"]));
    assert!(ben.share_with(&folder, &[]));
}

#[test]
fn a_foreign_or_damaged_locked_file_blocks_nobody() {
    let (ann, ben) = pair();
    let shared = Place::new();
    let folder = shared.path("").display().to_string();
    ann.share(&folder);
    // Somebody else's, under a name of no device here; and one that was locked by nobody at all.
    let stranger = Place::new();
    stranger.notes("long_sedge");
    stranger.good(&["read", "long_sedge.notes.json", "--store", STORE]);
    stranger.file("word", "a word of somebody else");
    stranger.good(&with(&["hand-over", STORE, "--out", "foreign.pitb", "--locked"], &WITH_WORD));
    fs::copy(stranger.path("foreign.pitb"), shared.path("0badcafe-00000000.pitb")).unwrap();
    fs::write(shared.path("torn.pitb"), b"age-encryption.org/v1\n-> scrypt").unwrap();
    ben.notes(&dug_to(470));
    for (walker, more) in [(&ben, [].as_slice()), (&ann, &WITH_WORD)] {
        keeps(walker, WORD);
        let arguments = with(&["hand-over", STORE, "--folder", &folder], more);
        let ran = walker.place.run(&arguments);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert!(ran.err.contains("0badcafe") && ran.err.contains("torn.pitb"), "{}", ran.err);
    }
    assert_eq!(ann.digest(), ben.digest());
}

#[test]
fn a_word_that_was_mistyped_locks_nothing_into_a_folder() {
    let (ann, _) = pair();
    keeps(&ann, WORD);
    let shared = Place::new();
    let folder = shared.path("").display().to_string();
    ann.share_with(&folder, &WITH_WORD);
    ann.notes(&dug_to(480));
    ann.place.file("mistyped", "turf lark beet mile");
    // Nothing new is there that the word could be tried on: it is tried on a file that is known.
    let told = ann.place.bad(&["hand-over", STORE, "--folder", &folder, "--team-word-file", "mistyped"]);
    assert!(told.contains("the team word does not open it"), "{told}");
    assert_eq!(shared.names(".").len(), 1);
    assert!(ann.share_with(&folder, &WITH_WORD));
    assert_eq!(shared.names(".").len(), 2);
}

#[test]
fn a_damaged_locked_file_changes_nothing() {
    let (ann, ben) = pair();
    for walker in [&ann, &ben] {
        keeps(walker, WORD);
    }
    ann.notes(&dug_to(460));
    ann.place.good(&with(&["hand-over", STORE, "--out", "more.pitb", "--locked"], &WITH_WORD));
    let bytes = fs::read(ann.place.path("more.pitb")).unwrap();
    let store = fs::read(ben.place.path(STORE)).unwrap();
    let flipped = |at: usize| {
        let mut bytes = bytes.clone();
        bytes[at] ^= 1;
        bytes
    };
    let length = bytes.len();
    let mut damaged: Vec<Vec<u8>> = [0, 30, 50, 100, 160, 170, length / 2, length - 1].map(flipped).into();
    damaged.extend([10, 60, 150, 200, length - 1].map(|end| bytes[..end].to_vec()));
    damaged.push([bytes.as_slice(), b"\n"].concat());
    for bytes in damaged {
        fs::write(ben.place.path("damaged.pitb"), bytes).unwrap();
        ben.place.bad(&with(&["take-in", STORE, "damaged.pitb"], &WITH_WORD));
        ben.place.bad(&with(&["take-in", "new.pitface", "damaged.pitb"], &WITH_WORD));
        assert!(!ben.place.path("new.pitface").exists());
    }
    assert_eq!(fs::read(ben.place.path(STORE)).unwrap(), store);
}

#[test]
fn a_file_made_to_hang_is_refused_at_once() {
    let (ann, _) = pair();
    keeps(&ann, WORD);
    ann.place.good(&with(&["hand-over", STORE, "--out", "more.pitb", "--locked"], &WITH_WORD));
    let bytes = fs::read(ann.place.path("more.pitb")).unwrap();
    let line = bytes.split(|byte| *byte == b'\n').nth(1).unwrap();
    let begins = bytes.windows(line.len()).position(|window| window == line).unwrap() + line.len() - 2;
    let mut bytes = bytes.clone();
    // Two to the thirtieth would be a tebibyte.
    bytes[begins..begins + 2].copy_from_slice(b"30");
    fs::write(ann.place.path("hangs.pitb"), bytes).unwrap();
    let told = ann.place.bad(&with(&["look", "hangs.pitb"], &WITH_WORD));
    assert!(told.contains("more work (2^30)"), "{told}");
}

#[test]
fn a_folder_that_is_locked_stays_locked() {
    let (ann, ben) = pair();
    for walker in [&ann, &ben] {
        keeps(walker, WORD);
    }
    let shared = Place::new();
    let folder = shared.path("").display().to_string();
    ann.notes(&dug_to(460));
    assert!(ann.share_with(&folder, &with(&["--locked"], &WITH_WORD)));
    // Ben has the word and does not think of locking.
    ben.notes(&dug_to(470));
    assert!(ben.share_with(&folder, &WITH_WORD));
    assert!(ann.share_with(&folder, &WITH_WORD));
    while ann.share_with(&folder, &WITH_WORD) || ben.share_with(&folder, &WITH_WORD) {}
    assert_eq!(ann.digest(), ben.digest());
    let names = shared.names(".");
    assert!(names.len() >= 3);
    for name in &names {
        assert!(fs::read(shared.path(name)).unwrap().starts_with(BEGINNING), "{name}");
    }

    // Without the word, or with another, nothing gets there in the clear; what is not locked is taken in all the same.
    let other = Place::new();
    fs::copy(ben.hand_over("all.pitb", &[]), other.path("clear.pitb")).unwrap();
    fs::copy(shared.path(&names[0]), other.path(&names[0])).unwrap();
    let folder = other.path("").display().to_string();
    ann.notes(&dug_to(480));
    ann.place.file("other", "another word altogether");
    for (more, said) in [
        ([].as_slice(), "nothing is put here in the clear: the folder is locked"),
        (&["--team-word-file", "other"], "the team word opens none of the files that the team locked here"),
    ] {
        let ran = ann.place.run(&with(&["hand-over", STORE, "--folder", &folder, "--gather"], more));
        assert_eq!(ran.code, Some(2), "{}", ran.out);
        assert!(ran.err.contains(&names[0]) && ran.err.contains(said), "{}", ran.err);
        assert!(
            ran.out.starts_with("Taken in: nothing new.") && !ran.out.contains("nothing to hand over"),
            "{}",
            ran.out
        );
        assert_eq!(other.names(".").len(), 2);
    }
    // Whoever means to begin with a new word says so.
    let begin = ["hand-over", STORE, "--folder", &folder, "--locked", "--team-word-file", "other"];
    let ran = ann.place.run(&begin);
    assert_eq!((ran.code, other.names(".").len()), (Some(0), 3), "{}", ran.err);
    // With a name that a program for the format gives.
    fs::rename(other.path(&names[0]), other.path("by_hand.pitb.age")).unwrap();
    let ran = ben.place.run(&with(&["hand-over", STORE, "--folder", &folder], &WITH_WORD));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(!ran.err.contains("by_hand"), "{}", ran.err);
}

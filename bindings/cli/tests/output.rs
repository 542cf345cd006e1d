//! What comes in and goes out: answers that cannot be written, files that are not ours to replace, input without an end.
#![cfg(target_os = "linux")]

use crate::support;

use std::fs::{self, File};
use std::os::unix::fs::symlink;
use std::process::{Command, Stdio};
use support::{ONE_PIT, Place, Ran};

fn pipe(place: &Place, name: &str) {
    assert!(Command::new("mkfifo").arg(place.path(name)).status().unwrap().success());
}

#[test]
fn an_answer_that_cannot_be_written_is_no_success() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let cases: [&[&str]; 5] =
        [&["read", &notes], &["--json", "read", &notes], &["help"], &["--version"], &["completions", "bash"]];
    for arguments in cases {
        let full = File::options().write(true).open("/dev/full").unwrap();
        let ran = Ran::of(place.command(arguments).stdout(full));
        assert_eq!(ran.code, Some(2), "{arguments:?}: {}", ran.err);
        assert!(ran.err.starts_with("standard output: cannot be written"), "{arguments:?}: {}", ran.err);
    }
}

#[test]
fn a_reader_that_went_away_has_what_it_wanted() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    for arguments in [&["read", &notes][..], &["help"], &["class"]] {
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let ran = Ran::of(place.command(arguments).stdout(writer));
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{arguments:?}");
    }
}

#[test]
fn what_is_not_ours_is_not_replaced() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    fs::create_dir(place.path("out")).unwrap();
    let target = "out/mere_piece-pit-1.svg";
    let refused = |what: &str| {
        let before = fs::read_link(place.path(target)).ok();
        let bytes = fs::symlink_metadata(place.path(target))
            .unwrap()
            .is_file()
            .then(|| fs::read(place.path(target)).unwrap());
        let told = place.bad(&["draw", &notes, "--out", "out"]);
        assert!(told.starts_with(target) && told.contains(what), "{told}");
        assert_eq!(place.names("out"), ["mere_piece-pit-1.svg"], "nothing else is left there");
        assert_eq!(fs::read_link(place.path(target)).ok(), before);
        if let Some(bytes) = bytes {
            assert_eq!(fs::read(place.path(target)).unwrap(), bytes);
        }
        fs::remove_file(place.path(target)).unwrap();
    };
    let a_file = |text: &str| fs::write(place.path(target), text).unwrap();
    a_file(ONE_PIT);
    refused("a notes file");
    a_file(&format!("{}\n", "5e".repeat(32)));
    refused("a key");
    a_file("Dear neighbour");
    refused("another file");
    a_file("<!DOCTYPE html><title>somebody's page</title>");
    refused("another file");
    a_file("<svg xmlns=\"http://www.w3.org/2000/svg\"><title>somebody's drawing</title></svg>");
    refused("another file");
    place.good(&["read", &notes, "--store", target]);
    for beside in ["out/mere_piece-pit-1.svg-wal", "out/mere_piece-pit-1.svg-shm"] {
        let _ = fs::remove_file(place.path(beside));
    }
    refused("a store");
    symlink("/dev/null", place.path(target)).unwrap();
    refused("a link");
    pipe(&place, target);
    refused("a pipe or a device");
    // Empty, or an earlier one: that is ours.
    a_file("");
    place.good(&["draw", &notes, "--out", "out"]);
    place.good(&["draw", &notes, "--out", "out", "--theme", "dark"]);
    let store = place.file("out/estate.pitb", ONE_PIT);
    place.good(&["read", &notes, "--store", "kept.pitface"]);
    let told = place.bad(&["hand-over", "kept.pitface", "--out", &store]);
    assert!(told.contains("a notes file stands"), "{told}");
    assert_eq!(fs::read_to_string(place.path(&store)).unwrap(), ONE_PIT);
}

#[test]
fn a_drawing_never_goes_over_notes_that_somebody_changed() {
    let place = Place::new();
    place.good(&["demo", "--out", "estate"]);
    let notes = place.path("estate/mere_piece.notes.json");
    let changed = fs::read_to_string(&notes).unwrap().replace("Mere Piece", "My Piece");
    fs::write(&notes, &changed).unwrap();
    let told = place.bad(&["demo", "--out", "estate"]);
    assert!(told.contains("mere_piece.notes.json: a notes file stands"), "{told}");
    assert_eq!(fs::read_to_string(&notes).unwrap(), changed);
}

#[test]
fn standard_input_is_a_notes_file_too() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let given = || Stdio::from(File::open(place.path(&notes)).unwrap());
    let ran = Ran::of(place.command(&["--json", "read", "-"]).stdin(given()));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(ran.out, place.good(&["--json", "read", &notes]));
    let ran = Ran::of(place.command(&["draw", "-", "--out", "out"]).stdin(given()));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(place.path("out/notes-pit-1.svg").exists());
    let ran = Ran::of(place.command(&["read", "-"]).stdin(Stdio::null()));
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.starts_with("standard input: "), "{}", ran.err);
    let ran = Ran::of(place.command(&["read", "-", "-"]).stdin(given()));
    assert!(ran.err.contains("standard input is named twice"), "{}", ran.err);
}

#[test]
fn input_without_an_end_is_refused() {
    let place = Place::new();
    let zeros = Stdio::from(File::open("/dev/zero").unwrap());
    let ran = Ran::of(place.command(&["read", "-"]).stdin(zeros));
    assert!(ran.code == Some(2) && ran.err.contains("longer than 16 MiB"), "{}", ran.err);
    let told = place.bad(&["read", "/dev/zero"]);
    assert!(told.contains("a pipe or a device"), "{told}");
    pipe(&place, "waiting.notes.json");
    let told = place.bad(&["read", "waiting.notes.json"]);
    assert!(told.contains("a pipe or a device"), "{told}");
    let notes = place.notes("mere_piece");
    let told = place.bad(&["read", &notes, "--store", "waiting.notes.json"]);
    assert!(told.contains("not a file"), "{told}");
    File::create(place.path("large.notes.json")).unwrap().set_len((16 << 20) + 1).unwrap();
    let told = place.bad(&["read", "large.notes.json"]);
    assert!(told.contains("longer than 16 MiB"), "{told}");
}

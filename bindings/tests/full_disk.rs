//! The app on a phone that is really full: a file system of one megabyte, in a mount namespace of its own. Needs Linux and
//! the right to mount; where that is missing the test says so.
#![cfg(target_os = "linux")]

use crate::support;

use pitface_bindings::{PitfaceError, Session, ShownScreen};
use serde_json::Value;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;
use support::{field_id, noted, open, tap, type_in};

const FOLDER: &str = "PITFACE_TEST_FULL_PHONE";
const FULL: &str = "Not saved: the phone is full. Free some space and tap again.";

#[test]
fn a_full_phone_says_so_loses_nothing_and_goes_on_with_room() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path().to_str().unwrap();
    let mounted = |command: &str| {
        let script = format!("mount -t tmpfs -o size=1m none '{folder}' && {command}");
        Command::new("unshare").args(["--mount", "sh", "-c", &script]).env(FOLDER, folder).output()
    };
    if !mounted("true").is_ok_and(|done| done.status.success()) {
        eprintln!("may not mount here: a full phone was not tested");
        return;
    }
    let this = std::env::current_exe().unwrap();
    let done =
        mounted(&format!("'{}' --ignored --exact full_disk::on_the_full_phone --nocapture", this.display()))
            .unwrap();
    let said = String::from_utf8_lossy(&done.stdout) + String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success() && said.contains("1 passed"), "{said}");
}

/// Writes until nothing more fits.
fn fill(path: &Path) {
    let mut filler = std::fs::File::create(path).unwrap();
    for size in [4_096, 1] {
        while filler.write_all(&vec![0; size]).is_ok() {}
    }
}

/// Sets the headland to so many metres.
fn headland(session: &Session, metres: u32) -> ShownScreen {
    let to = metres * 1_000;
    let act = format!(r#"{{"field":{{"detail":{{"detail":"headland","to":{{"millimetres":{to}}}}}}}}}"#);
    session.tap(act).unwrap()
}

fn headland_noted(session: &Session, field: &str) -> u64 {
    let notes: Value = serde_json::from_str(&noted(session, field)).unwrap();
    notes["field"]["headland_mm"].as_u64().unwrap() / 1_000
}

fn files(folder: &Path) -> Vec<String> {
    let mut files: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().file_name().into_string().unwrap())
        .collect();
    files.sort();
    files
}

#[test]
#[ignore = "run by the test above, on its small disk"]
fn on_the_full_phone() {
    let folder = PathBuf::from(std::env::var(FOLDER).unwrap());
    let app = folder.join("app");
    let filler = folder.join("filler");
    std::fs::create_dir(&app).unwrap();

    // No room for the first start: told apart, and nothing half is left in the way of the next one.
    fill(&filler);
    assert_eq!(open(&app).err(), Some(PitfaceError::DiskFull));
    std::fs::remove_file(&filler).unwrap();

    let session = open(&app).unwrap();
    let screen = tap(&session, &session.screen().unwrap(), "English");
    let screen = tap(&session, &screen, "Start a field");
    type_in(&session, &screen, "Fen Piece");
    let field = field_id(&session);
    let place = format!(r#"{{"go":{{"detail":{{"field":"{field}","detail":"headland"}}}}}}"#);
    session.tap(place).unwrap();
    assert!(headland(&session, 2).saved);

    // Taps are saved until one is not; the screen then shows what is saved, and so do the notes.
    fill(&filler);
    let mut last = 2;
    let refused = loop {
        let screen = headland(&session, last + 1);
        if !screen.saved {
            break screen;
        }
        last += 1;
        assert!(last < 190, "the disk does not get full");
    };
    assert_eq!(refused.told, FULL);
    assert_eq!(refused.answer.as_ref().unwrap().line, format!("Now: {last}\u{a0}m"));
    assert_eq!(headland_noted(&session, &field), u64::from(last));
    let before = noted(&session, &field);

    // The same for a setting, a photo and a file handed over; nothing half is left of them.
    let listed = files(&app);
    let screen = session.tap(r#"{"own":{"left_handed":true}}"#.into()).unwrap();
    assert_eq!((screen.told.as_str(), screen.saved, screen.left_handed), (FULL, false, false));
    let outside = tempfile::tempdir().unwrap();
    let taken = outside.path().join("taken.jpg");
    std::fs::write(&taken, vec![7; 50_000]).unwrap();
    let photo = |pit: &str| {
        let path = taken.display().to_string();
        session.photo_taken(field.clone(), pit.to_owned(), None, path, "image/jpeg".into()).unwrap()
    };
    assert_eq!(photo(&field).told, FULL);
    let exported = session.export_field(field.clone(), folder.display().to_string());
    assert_eq!(exported, Err(PitfaceError::DiskFull));
    assert_eq!(files(&folder), ["app", "filler"]);
    let left: Vec<String> = files(&app).into_iter().filter(|name| name != "photos").collect();
    assert_eq!(left, listed);
    assert_eq!(files(&app.join("photos")), [""; 0]);
    let demo = support::demo("mere_piece");
    let screen = support::take_in(&session, &demo);
    assert_eq!((screen.told.as_str(), screen.saved), (FULL, false));
    assert_eq!(noted(&session, &field), before);

    // A restart on the full phone has everything that was saved.
    drop(session);
    let session = open(&app).unwrap();
    assert_eq!(noted(&session, &field), before);

    // With room the next tap works, without another start.
    std::fs::remove_file(&filler).unwrap();
    let screen = headland(&session, last + 1);
    assert!(screen.saved, "{}", screen.told);
    assert_eq!(headland_noted(&session, &field), u64::from(last) + 1);
    assert!(session.tap(r#"{"own":{"left_handed":true}}"#.into()).unwrap().left_handed);
    assert!(support::take_in(&session, &demo).saved);
}

//! A folder that may not be written. Root may write everywhere, so under root the tapping is done by a child process that
//! runs as nobody.
#![cfg(unix)]

use crate::support;

use pitface_bindings::{PitfaceError, Session, ShownScreen};
use std::os::unix::fs::{MetadataExt, PermissionsExt};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::Command;
use support::{field_id, noted, open, tap, type_in};

const FOLDER: &str = "PITFACE_TEST_READ_ONLY_PHONE";
const LOCKED: &str = "Not saved: the app may not write to its own files.";
const NOBODY: u32 = 65_534;

fn allow(path: &Path, mode: u32) {
    std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).unwrap();
}

#[test]
fn a_folder_that_may_not_be_written_is_told_and_nothing_is_lost() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let this = folder.join("this_test");
    std::fs::copy(std::env::current_exe().unwrap(), &this).unwrap();
    allow(&this, 0o755);
    allow(folder, 0o777);
    let mut child = Command::new(&this);
    child.args(["--ignored", "--exact", "read_only::in_the_read_only_folder", "--nocapture"]);
    child.env(FOLDER, folder).env("TMPDIR", folder).current_dir("/");
    if std::fs::metadata(folder).unwrap().uid() == 0 {
        child.uid(NOBODY).gid(NOBODY);
    }
    let done = child.output().unwrap();
    let said = String::from_utf8_lossy(&done.stdout) + String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success() && said.contains("1 passed"), "{said}");
}

/// Returns whether the app's folder and all its files may be written.
fn writable(app: &Path, writable: bool) {
    allow(app, 0o755);
    for file in std::fs::read_dir(app).unwrap() {
        let file = file.unwrap().path();
        let mode = match (file.is_dir(), writable) {
            (true, true) => 0o755,
            (true, false) => 0o555,
            (false, true) => 0o644,
            (false, false) => 0o444,
        };
        allow(&file, mode);
    }
    allow(app, if writable { 0o755 } else { 0o555 });
}

fn headland(session: &Session, field: &str, mm: u32) -> ShownScreen {
    session.tap(format!(r#"{{"go":{{"detail":{{"field":"{field}","detail":"headland"}}}}}}"#)).unwrap();
    let to = format!(r#"{{"millimetres":{mm}}}"#);
    session.tap(format!(r#"{{"field":{{"detail":{{"detail":"headland","to":{to}}}}}}}"#)).unwrap()
}

#[test]
#[ignore = "run by the test above, as a user who may not write"]
fn in_the_read_only_folder() {
    let folder = PathBuf::from(std::env::var(FOLDER).unwrap());
    let app = folder.join("app");
    std::fs::create_dir(&app).unwrap();
    let session = open(&app).unwrap();
    let screen = tap(&session, &session.screen().unwrap(), "English");
    let screen = tap(&session, &screen, "Start a field");
    type_in(&session, &screen, "Fen Piece");
    let field = field_id(&session);
    assert!(headland(&session, &field, 24_000).saved);

    // Locked while the app runs: what cannot be written is told.
    writable(&app, false);
    std::fs::write(app.join("probe"), "").unwrap_err();
    let setting = r#"{"own":{"left_handed":true}}"#;
    let screen = session.tap(setting.into()).unwrap();
    assert_eq!((screen.told.as_str(), screen.saved, screen.left_handed), (LOCKED, false, false));
    let taken = folder.join("taken.jpg");
    std::fs::write(&taken, "abc").unwrap();
    let path = taken.display().to_string();
    let screen = session.photo_taken(field.clone(), field.clone(), None, path, "image/jpeg".into()).unwrap();
    assert_eq!((screen.told.as_str(), screen.saved), (LOCKED, false));
    // The notes are held open: a tap is saved, or told as not saved, and the notes agree with what was told.
    let screen = headland(&session, &field, 28_000);
    assert!(screen.saved || screen.told == LOCKED, "{}", screen.told);
    let before = noted(&session, &field);
    assert_eq!(before.contains("28000"), screen.saved);

    // A start in a locked folder says what is to be done, and leaves every file as it was.
    drop(session);
    writable(&app, false);
    let bytes = || {
        let files = std::fs::read_dir(&app).unwrap().map(|file| file.unwrap().path());
        let mut files: Vec<_> = files.map(|file| (file.clone(), std::fs::read(file).unwrap())).collect();
        files.sort();
        files
    };
    let as_they_were = bytes();
    let Err(PitfaceError::Storage { reason }) = open(&app) else { panic!("opened") };
    assert!(reason.contains("move it to a folder that can, or allow writing"), "{reason}");
    assert!(bytes() == as_they_were);

    // Allowed again everything is there, and the next tap works.
    writable(&app, true);
    let session = open(&app).unwrap();
    assert_eq!(noted(&session, &field), before);
    assert!(headland(&session, &field, 30_000).saved);
    assert!(session.tap(setting.into()).unwrap().left_handed);
}

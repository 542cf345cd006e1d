//! From a medium that is read only notes still get out. Root may write everywhere, so under root the program runs as nobody.
#![cfg(unix)]

use crate::support;

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt};
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::Command;
use support::Ran;
use support::walker::{STORE, Walker, with_photo};

const NOBODY: u32 = 65_534;

fn allow(path: &Path, mode: u32) {
    fs::set_permissions(path, Permissions::from_mode(mode)).unwrap();
}

#[test]
fn what_cannot_be_written_is_still_handed_over_listed_and_checked() {
    let (ann, ben) = (Walker::new("Ann"), Walker::new("Ben"));
    with_photo(&ann);
    let folder = ann.place.folder.path();
    let program = folder.join("program");
    fs::copy(env!("CARGO_BIN_EXE_pitface"), &program).unwrap();
    let out = ann.place.path("out");
    fs::create_dir(&out).unwrap();
    for (path, mode) in [
        ("program", 0o755),
        ("out", 0o777),
        (STORE, 0o444),
        ("photos", 0o555),
        ("settings", 0o755),
        ("settings/pitface", 0o755),
        ("settings/pitface/key", 0o644),
    ] {
        allow(&ann.place.path(path), mode);
    }
    for photo in ann.place.names("photos") {
        allow(&ann.place.path("photos").join(photo), 0o444);
    }
    allow(folder, 0o555);
    let before = fs::read(ann.place.path(STORE)).unwrap();
    let as_nobody = |arguments: &[&str]| {
        let mut command = Command::new(&program);
        command.args(arguments).current_dir(folder).env("XDG_CONFIG_HOME", folder.join("settings"));
        command.env_remove("PITFACE_TEAM_WORD");
        if fs::metadata(folder).unwrap().uid() == 0 {
            command.uid(NOBODY).gid(NOBODY);
        }
        Ran::of(&mut command)
    };
    let ran = [
        as_nobody(&["hand-over", STORE, "--out", "out/all.pitb"]),
        as_nobody(&["partners", STORE]),
        as_nobody(&["check", STORE]),
        as_nobody(&["tables", "--store", STORE, "--out", "out/tables"]),
    ];
    allow(folder, 0o755);
    for ran in &ran {
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert!(ran.err.contains("worked with in memory"), "{}", ran.err);
    }
    assert!(fs::read(ann.place.path(STORE)).unwrap() == before, "the store has changed");
    let file = out.join("all.pitb").display().to_string();
    let told = ben.place.json(&["take-in", STORE, &file, "--accept", &ann.fingerprint()]);
    assert_ne!(told["edits"], 0);
    assert_eq!(ben.digest(), ann.digest());
}

//! Bad input: exit code 2, a line a fault with file, place, what is wrong and what to do, and nothing else.

use crate::support;

use serde_json::Value;
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use support::{ONE_PIT, Place, Ran};

#[test]
fn every_fault_of_every_file_is_told_on_its_own_line() {
    let place = Place::new();
    let spoilt = ONE_PIT.replace("\"crumbs\"", "\"dust\"").replace("\"depth_mm\": 0", "\"depth_mm\": -5");
    let (one, other) = (place.file("one.notes.json", &spoilt), place.file("other.notes.json", "{"));
    let told = place.bad(&["read", &one, &other]);
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines.len(), 3, "{told}");
    assert!(
        lines.iter().any(|line| line.starts_with("one.notes.json: pits[0].walk[0].comes_away: ")),
        "{told}"
    );
    assert!(
        lines.iter().any(|line| line.starts_with("one.notes.json: pits[0].rolls[0].depth_mm: ")),
        "{told}"
    );
    assert!(lines.iter().any(|line| line.starts_with("other.notes.json: ")), "{told}");
    assert!(lines.iter().all(|line| line.contains("; ")), "each says what to do:\n{told}");
}

#[test]
fn faults_come_as_json_too() {
    let place = Place::new();
    let notes = place.file("one.notes.json", &ONE_PIT.replace("\"crumbs\"", "\"dust\""));
    let ran = place.run(&["read", &notes, "--json"]);
    assert_eq!(ran.code, Some(2));
    let told: Value = serde_json::from_str(&ran.out).unwrap();
    let error = &told["errors"][0];
    assert_eq!(error["file"], "one.notes.json");
    assert_eq!(error["place"], "pits[0].walk[0].comes_away");
    assert!(error["wrong"].as_str().is_some_and(|wrong| wrong.contains("dust")));
    assert!(error["todo"].as_str().is_some_and(|todo| todo.contains("crumbs")));
    assert!(ran.err.starts_with("one.notes.json: "));
}

#[test]
fn what_is_no_notes_file_is_refused_by_what_it_is() {
    let place = Place::new();
    std::fs::create_dir(place.path("folder")).unwrap();
    std::fs::write(place.path("latin.notes.json"), [0xff, 0xfe, b'{']).unwrap();
    let other = place.file("other.notes.json", r#"{"type": "FeatureCollection"}"#);
    assert!(place.bad(&["read", "nowhere.notes.json"]).starts_with("nowhere.notes.json: cannot be read"));
    assert!(place.bad(&["read", "folder"]).starts_with("folder: cannot be read"));
    assert!(place.bad(&["read", "latin.notes.json"]).contains("UTF-8"));
    assert!(place.bad(&["read", &other]).contains("not a notes file"));
}

#[test]
fn help_and_version_are_no_fault() {
    let place = Place::new();
    for arguments in [&["help"][..], &["--help"], &["--version"], &["read", "--help"]] {
        place.good(arguments);
    }
}

/// A folder with everything that can be wrong in it.
#[cfg(target_os = "linux")]
fn spoilt() -> Place {
    use std::os::unix::fs::{PermissionsExt as _, symlink};
    let place = Place::new();
    place.file("good.notes.json", &fs::read_to_string(place.path(&place.notes("mere_piece"))).unwrap());
    place
        .file("lapwing.notes.json", &fs::read_to_string(place.path(&place.notes("lapwing_ground"))).unwrap());
    let sedge = |end: u32| {
        let id = format!("\"id\": \"01890000-0000-7000-8000-00000000000{end}\", \"name\": \"Long");
        place.file(&format!("sedge_{end}.notes.json"), &ONE_PIT.replace("\"name\": \"Long", &id))
    };
    let kept = ["good.notes.json", "lapwing.notes.json", &sedge(1), &sedge(2)];
    place.good(&[&["read"], &kept[..], &["--store", "kept.pitface"]].concat());
    let folders = ["folder", "taken", "linked", "piped", "tabled", "changed", "written"];
    let settings = ["spoilt", "unknown", "french", "keyless"].map(|name| format!("{name}/pitface"));
    for folder in folders.into_iter().chain(settings.iter().map(String::as_str)) {
        fs::create_dir_all(place.path(folder)).unwrap();
    }
    for (name, text) in table()["files"].as_object().unwrap() {
        place.file(name, &text.as_str().unwrap().replace("ONE_PIT", ONE_PIT));
    }
    place.file("typo.notes.json", &ONE_PIT.replace("\"crumbs\"", "\"crumb\""));
    place.file("centimetres.notes.json", &ONE_PIT.replace("450", "45").replace("200", "20"));
    place.file("cut.notes.json", &ONE_PIT[..100]);
    place.file("deep.notes.json", &"[".repeat(5000));
    fs::write(place.path("latin.notes.json"), [0xff, 0xfe, b'{']).unwrap();
    fs::File::create(place.path("large.notes.json")).unwrap().set_len(17 << 20).unwrap();
    symlink("../letter.txt", place.path("linked/good-pit-1.svg")).unwrap();
    let key = fs::Permissions::from_mode(0o600);
    fs::set_permissions(place.path("keyless/pitface/key"), key).unwrap();
    for pipe in ["pipe", "piped/good-pit-1.svg"] {
        assert!(Command::new("mkfifo").arg(place.path(pipe)).status().unwrap().success());
    }
    place
}

fn table() -> Value {
    serde_json::from_str(include_str!("../../../tests/vectors/bad_commands.json")).unwrap()
}

/// Returns whether what was told is what the table has, `…` there standing for anything.
fn is_as_written(told: &str, written: &str) -> bool {
    let mut rest = told;
    let parts: Vec<&str> = written.split('…').collect();
    for (index, part) in parts.iter().enumerate() {
        match rest.find(part) {
            Some(at) if index > 0 || at == 0 => rest = &rest[at + part.len()..],
            _ => return false,
        }
    }
    rest.is_empty() || parts.last() == Some(&"")
}

#[test]
#[cfg(target_os = "linux")]
fn every_bad_command_says_what_the_table_says_and_changes_nothing() {
    let place = spoilt();
    let tool = Path::new(env!("CARGO_BIN_EXE_pitface")).parent().unwrap();
    let path = format!("{}:{}", tool.display(), std::env::var("PATH").unwrap());
    let everything = || {
        let listed = Command::new("find").arg(place.folder.path()).output().unwrap().stdout;
        let mut names: Vec<String> = String::from_utf8(listed).unwrap().lines().map(str::to_owned).collect();
        names.sort();
        let edits = place.json(&["check", "kept.pitface"])["edits"].clone();
        (names, edits)
    };
    let (before, table) = (everything(), table());
    let rows = table["rows"].as_array().unwrap();
    assert!(rows.len() >= 120, "{}", rows.len());
    let mut wrong = Vec::new();
    for row in rows {
        let typed = row["typed"].as_str().unwrap();
        let mut shell = Command::new("sh");
        shell.args(["-c", typed]).current_dir(place.folder.path()).stdin(Stdio::null());
        shell.env("PATH", &path).env("LC_ALL", "C").env("XDG_CONFIG_HOME", "settings");
        let ran = Ran::of(&mut shell);
        let told: Vec<&str> = ran.err.lines().collect();
        let written: Vec<&str> =
            row["told"].as_array().unwrap().iter().map(|line| line.as_str().unwrap()).collect();
        let same = told.len() == written.len()
            && told.iter().zip(&written).all(|(told, written)| is_as_written(told, written));
        if !same || ran.code != Some(2) || !ran.out.is_empty() || row["code"] != 2 {
            wrong.push(format!("{typed} ends with {:?} and says\n{}{}", ran.code, ran.out, ran.err));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert_eq!(everything(), before);
}

//! What somebody sees who knows nothing yet, and in which language.

use crate::support;

use std::env;
use std::path::Path;
use std::process::Command;
use support::{Place, Ran};

#[test]
fn nothing_asked_is_answered_with_help() {
    let place = Place::new();
    let help = place.good(&[]);
    assert_eq!(help, place.good(&["--help"]));
    for part in [
        "Usage: pitface",
        "A field, from its notes file or from a store:\n  read ",
        "Options:",
        "pitface demo --out out",
    ] {
        assert!(help.contains(part), "{part} is missing in\n{help}");
    }
    assert!(help.lines().all(|line| line.chars().count() <= 120), "{help}");
}

/// The lines below `Example:` in a command's help, joined where one is continued.
fn examples(help: &str) -> Vec<String> {
    let (_, after) = help.split_once("Example").unwrap_or_default();
    let lines = after.split_once('\n').map_or("", |(_, lines)| lines).replace("\\\n", "");
    lines.lines().map(str::trim).filter(|line| line.starts_with("pitface ")).map(str::to_owned).collect()
}

#[test]
#[cfg(unix)]
fn every_example_of_the_help_can_be_typed() {
    let place = Place::new();
    place.good(&["demo", "--out", "out"]);
    let tool = Path::new(env!("CARGO_BIN_EXE_pitface")).parent().unwrap();
    let path = format!("{}:{}", tool.display(), env::var("PATH").unwrap());
    let overview = place.good(&["help"]);
    let commands = overview.lines().filter_map(|line| line.strip_prefix("  ")?.split(' ').next());
    let mut count = 0;
    for command in commands.filter(|name| !name.is_empty() && !name.starts_with('-') && *name != "help") {
        let help = place.good(&["help", command]);
        let all = examples(&help);
        assert!(!all.is_empty(), "{command} has no example:\n{help}");
        for example in all {
            let mut shell = Command::new("sh");
            shell.args(["-c", &example]).current_dir(place.folder.path()).env("PATH", &path);
            let ran = Ran::of(shell.env("XDG_CONFIG_HOME", place.path("settings")).env("LC_ALL", "C"));
            assert_eq!(ran.code, Some(0), "{example}: {}", ran.err);
            count += 1;
        }
    }
    assert!(count > 25, "{count}");
}

#[test]
fn language_and_unit_come_from_options_then_settings_then_the_environment() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let told = |arguments: &[&str], environment: &[(&str, &str)]| {
        let mut command = place.command(&[&["read", &notes], arguments].concat());
        let ran = Ran::of(command.envs(environment.iter().copied()));
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let german = ran.out.contains("Vorgewende");
        let inches = ran.out.contains("\u{a0}in ") || ran.out.contains("\u{a0}in.");
        (german, inches)
    };
    assert_eq!(told(&[], &[]), (false, false));
    assert_eq!(told(&[], &[("LANG", "de_DE.UTF-8")]), (true, false));
    assert!(told(&[], &[("LANG", "de_DE.UTF-8"), ("LC_MEASUREMENT", "en_US.UTF-8")]).0);
    assert_eq!(told(&[], &[("LC_ALL", "en_US.UTF-8")]), (false, true));
    assert_eq!(told(&["--language", "en"], &[("LANG", "de_DE.UTF-8")]), (false, false));
    std::fs::create_dir_all(place.path("settings/pitface")).unwrap();
    place.file("settings/pitface/settings.json", r#"{"language": "de", "units": "cm"}"#);
    assert_eq!(told(&[], &[("LC_ALL", "en_US.UTF-8")]), (true, false));
    assert_eq!(told(&["--language", "en", "--units", "in"], &[]), (false, true));
    place.file("settings/pitface/settings.json", r#"{"language": "fr"}"#);
    let told = place.bad(&["read", &notes]);
    assert!(told.contains("settings.json: language: ") && told.contains("use one of: en, de"), "{told}");
}

#[test]
fn completions_and_manual_know_every_command() {
    let place = Place::new();
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let script = place.good(&["completions", shell]);
        assert!(script.contains("hand-over") && script.contains("feel"), "{shell}");
    }
    place.good(&["manual", "--out", "man"]);
    let names = place.names("man");
    assert!(
        ["pitface.1", "pitface-read.1", "pitface-set.1"]
            .iter()
            .all(|page| names.iter().any(|name| name == page)),
        "{names:?}"
    );
    let page = std::fs::read_to_string(place.path("man/pitface-read.1")).unwrap();
    assert!(page.contains(".TH pitface\\-read 1") || page.contains(".TH pitface-read 1"), "{page}");
    assert!(page.contains("pitface read"), "{page}");
    // Written anew over what it wrote before.
    place.good(&["manual", "--out", "man"]);
}

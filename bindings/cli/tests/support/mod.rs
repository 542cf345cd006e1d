//! Runs the built `pitface` in a folder of its own.

pub mod walker;

use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tempfile::TempDir;

/// A folder with some of the estate's notes in it; settings of the person running the tests stay out of it.
pub struct Place {
    pub folder: TempDir,
}

/// What a run left.
pub struct Ran {
    pub code: Option<i32>,
    pub out: String,
    pub err: String,
}

impl Ran {
    pub fn of(command: &mut Command) -> Self {
        let output: Output = command.output().expect("pitface runs");
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
        Self { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
    }
}

impl Place {
    pub fn new() -> Self {
        Self { folder: tempfile::tempdir().expect("a temporary folder") }
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Writes a file; its name, as the commands take it.
    pub fn file(&self, name: &str, text: &str) -> String {
        std::fs::write(self.path(name), text).expect("a written file");
        name.to_owned()
    }

    /// Notes of the estate under their own name.
    pub fn notes(&self, stem: &str) -> String {
        let name = format!("{stem}.notes.json");
        let text = std::fs::read_to_string(demo().join(&name)).expect("notes of the estate");
        self.file(&name, &text)
    }

    /// The program with arguments, not yet started.
    pub fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_pitface"));
        command
            .args(arguments)
            .current_dir(self.folder.path())
            .env("XDG_CONFIG_HOME", self.path("settings"))
            .env_remove("PITFACE_TEAM_WORD");
        for locale in ["LC_ALL", "LC_MESSAGES", "LC_MEASUREMENT", "LANG"] {
            command.env_remove(locale);
        }
        command
    }

    pub fn run(&self, arguments: &[&str]) -> Ran {
        Ran::of(&mut self.command(arguments))
    }

    /// Runs what should go well; its standard output.
    pub fn good(&self, arguments: &[&str]) -> String {
        let ran = self.run(arguments);
        assert_eq!(ran.code, Some(0), "{arguments:?}: {}", ran.err);
        assert!(!ran.out.is_empty(), "{arguments:?} says nothing");
        ran.out
    }

    /// The same with `--json`.
    pub fn json(&self, arguments: &[&str]) -> Value {
        let out = self.good(&[arguments, &["--json"]].concat());
        serde_json::from_str(&out).expect("one JSON value")
    }

    /// Returns what is said of the one field that is asked about.
    pub fn field(&self, arguments: &[&str]) -> Value {
        let mut answer = self.json(arguments);
        let fields = answer["fields"].as_array_mut().expect("a list of fields");
        assert_eq!(fields.len(), 1, "{arguments:?}");
        fields.swap_remove(0)
    }

    /// Runs what should be refused; its standard error.
    pub fn bad(&self, arguments: &[&str]) -> String {
        let ran = self.run(arguments);
        assert_eq!(ran.code, Some(2), "{arguments:?}: {}{}", ran.out, ran.err);
        assert_eq!(ran.out, "", "{arguments:?} answers and fails");
        ran.err
    }

    /// Names in a folder below this one, sorted.
    pub fn names(&self, folder: &str) -> Vec<String> {
        let entries = std::fs::read_dir(self.path(folder)).expect("a folder");
        let name = |entry: std::io::Result<std::fs::DirEntry>| {
            entry.expect("an entry").file_name().into_string().expect("UTF-8")
        };
        let mut names: Vec<String> = entries.map(name).collect();
        names.sort();
        names
    }
}

/// An answer without the ids in it, which differ with where it comes from.
pub fn without_ids(mut answer: Value) -> Value {
    fn strip(value: &mut Value) {
        if let Value::Object(object) = value {
            object.retain(|key, _| key != "id" && key != "field_id");
            object.values_mut().for_each(strip);
        } else if let Value::Array(list) = value {
            list.iter_mut().for_each(strip);
        }
    }
    strip(&mut answer);
    answer
}

fn demo() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("demo")
}

/// A sound notes file with one pit, to be spoilt.
pub const ONE_PIT: &str = r#"{"pitface": 1, "field": {"name": "Long Sedge"}, "pits": [{"place": "open",
    "dug_to_mm": 450, "face": "moist", "walk": [{"to_mm": 200, "comes_away": "crumbs", "resistance": "slips_in"},
    {"to_mm": 450, "comes_away": "rounded_lumps"}], "rolls": [{"depth_mm": 0, "roll": "crumbles"}]}]}"#;

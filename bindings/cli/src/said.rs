//! What a command has to say, and how it gets out: whole, or field by field where there may be thousands.

use crate::json::{self, merged};
use crate::output;
use crate::progress::Progress;
use crate::trouble::Trouble;
use pitface_core::RULES;
use pitface_core::harmless;
use serde_json::{Value, json};
use std::io::{self, Write};
use std::process::ExitCode;

/// An answer that is made whole before a word of it is printed: once as sentences, once as JSON.
pub struct Answer {
    /// As sentences.
    pub text: String,
    /// As JSON.
    pub json: Value,
    /// Lines for standard error that stop nothing.
    pub remarks: String,
    /// Whether what was looked at is as it should be; else the exit code says so.
    pub sound: bool,
}

impl Answer {
    /// One with nothing beside it.
    pub fn new(text: String, json: Value) -> Self {
        Self { text, json, remarks: String::new(), sound: true }
    }
}

/// What is said of one of several fields.
pub struct OneSaid {
    /// As sentences.
    pub text: String,
    /// As JSON.
    pub json: Value,
    /// Lines for standard error that stop nothing.
    pub remarks: String,
}

/// Answers of fields, each made when its turn comes and printed before the next, so that no more than one is held in memory.
pub struct FieldByField {
    /// How many there are.
    pub count: usize,
    /// What is said of each.
    pub fields: Box<dyn Iterator<Item = Result<OneSaid, Trouble>>>,
    /// What stands below all of them.
    pub closing: String,
}

/// What a command has to say.
pub enum Said {
    /// All of it.
    Whole(Answer),
    /// Field by field.
    FieldByField(FieldByField),
}

impl From<Answer> for Said {
    fn from(answer: Answer) -> Self {
        Self::Whole(answer)
    }
}

impl From<FieldByField> for Said {
    fn from(fields: FieldByField) -> Self {
        Self::FieldByField(fields)
    }
}

impl Said {
    /// Prints it; how the command ends.
    pub fn print(self, as_json: bool) -> ExitCode {
        match self {
            Self::Whole(Answer { text, json, remarks, sound }) => {
                output::remark(&remarks);
                output::printed(
                    &if as_json { pretty(&json) } else { harmless::lines(&text).into_owned() },
                    sound,
                )
            }
            Self::FieldByField(fields) => fields.print(as_json),
        }
    }
}

impl FieldByField {
    fn print(self, as_json: bool) -> ExitCode {
        let progress = Progress::over(self.count);
        let mut out = io::BufWriter::new(io::stdout().lock());
        let closing = if as_json { "\n  ]\n}\n".to_owned() } else { self.closing };
        let mut write = |text: &str| {
            let text = if as_json { harmless::json(text) } else { harmless::lines(text) };
            out.write_all(text.as_bytes())
        };
        let mut written = if as_json { write(&opening()) } else { Ok(()) };
        for (index, said) in self.fields.enumerate() {
            if written.is_err() {
                break;
            }
            let OneSaid { text, json, remarks } = match said {
                Ok(said) => said,
                Err(trouble) => {
                    // Of what went wrong after all was known to be sound: a file that changed meanwhile.
                    drop(out);
                    output::remark(&trouble.to_string());
                    return ExitCode::from(2);
                }
            };
            output::remark(&remarks);
            written = if as_json {
                write(if index == 0 { "\n" } else { ",\n" })
                    .and_then(|()| write(&indented(&format!("{json:#}"))))
            } else {
                write(&text)
            };
            progress.step();
        }
        written = written.and_then(|()| write(&closing)).and_then(|()| out.flush());
        output::ended(written, true)
    }
}

/// How the JSON of several fields begins; [`json::fields`] gives the same.
fn opening() -> String {
    format!("{{\n  \"format\": {},\n  \"rules\": {},\n  \"fields\": [", json::FORMAT, json!(RULES))
}

/// Two levels further in, where it stands in a list.
fn indented(text: &str) -> String {
    let lines: Vec<String> = text.lines().map(|line| format!("    {line}")).collect();
    lines.join("\n")
}

/// An answer as JSON, under the version of its form.
pub fn pretty(answer: &Value) -> String {
    let text = format!("{:#}\n", merged(json!({ "format": json::FORMAT }), answer.clone()));
    harmless::json(&text).into_owned()
}

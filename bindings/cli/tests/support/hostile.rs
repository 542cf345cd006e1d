//! Senders whose name, program and field are made to deceive. The command line and the screens are tested with them.

use pitface_core::merge::{FileWriter, KeyFromSeed, Signer as _};
use pitface_core::record::{RecordId, notes};
use pitface_core::store::{Sealer, Store};
use std::path::Path;

/// Of somebody else.
pub const FORGED: &str = "0123-4567-89ab-cdef-0123";

/// Names; each begins as Ann does.
pub fn names() -> Vec<String> {
    let lines = ["\n", "\r\n", "\r", "\u{b}", "\u{c}", "\u{85}", "\u{2028}", "\u{2029}"];
    let broken = lines.map(|end| format!("Ann{end}{FORGED}{end}  pitface take-in --accept {FORGED}{end}"));
    let turned =
        ["\u{202e}", "\u{2067}", "\u{200f}", "\u{61c}"].map(|turn| format!("Ann{turn}3210-fedc{turn}("));
    let unseen = "A\u{200b}n\u{feff}n\u{2060}\u{ad}\u{e0041}".to_owned();
    let terminal = format!("Ann\u{1b}[2K\u{1b}[1A{FORGED}\u{9b}1A\u{7}\u{8}\u{8}\0");
    let brackets = format!("Ann ({FORGED})");
    let marks = format!("Ann{}", "\u{335}".repeat(400));
    broken.into_iter().chain(turned).chain([unseen, terminal, brackets, marks, "Ann".repeat(3_334)]).collect()
}

/// Writes the file of a sender who calls everything `name`, with one field; their fingerprint.
pub fn file_of(name: &str, field: &str, folder: &Path, file: &str) -> String {
    let key = KeyFromSeed::new(&[7; 32]);
    let mut theirs = Store::create_or_open(&folder.join("theirs.pitface"), key.device()).unwrap();
    let mut last = 0;
    let mut ids = || {
        last += 1;
        RecordId::new(1, [last; 10])
    };
    let mut noted = notes::read(field, &mut ids).unwrap().notes;
    name.clone_into(&mut noted.field.name);
    theirs.save_notes(&noted, 1_790_000_000_000).unwrap();
    let sealer =
        Sealer { signer: &key, holder: name, written_by: name, now_ms: 1_790_000_000_001, ahead_ms: None };
    theirs.seal(&sealer).unwrap();
    let mut written = FileWriter::new(Vec::new());
    theirs.hand_over(None, &mut written).unwrap();
    std::fs::write(folder.join(file), written.end().unwrap()).unwrap();
    key.device().to_string()
}

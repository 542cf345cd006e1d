//! What a command says, on its way out: an answer that did not arrive is no success.

use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::harmless;
use std::io::{self, ErrorKind, Write};
use std::path::Path;
use std::process::ExitCode;

/// Prints an answer to standard output; how the command ends: with 2 if what was asked about is not as it should be, or if the answer
/// could not be written. A reader that has gone away (`pitface read … | head`) has what it wanted.
pub fn printed(text: &str, sound: bool) -> ExitCode {
    let mut out = io::stdout().lock();
    let written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    drop(out);
    ended(written, sound)
}

/// How the command ends after writing to standard output.
pub fn ended(written: io::Result<()>, sound: bool) -> ExitCode {
    match written {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            remark(&not_written(&error).to_string());
            ExitCode::from(2)
        }
        _ => ExitCode::from(if sound { 0 } else { 2 }),
    }
}

/// Prints lines to standard error, harmless ones. Nobody is left to tell where that is closed.
pub fn remark(lines: &str) {
    let _ = io::stderr().write_all(harmless::lines(lines).as_bytes());
}

fn not_written(error: &io::Error) -> Trouble {
    cannot(
        Path::new("standard output"),
        "cannot be written",
        error,
        "make room, or send the answer elsewhere",
    )
}

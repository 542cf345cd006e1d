//! What a notes file holds, from its place or from standard input: text, and no more of it than is sensible.

use crate::output;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::record::notes::LONGEST_BYTES;
use std::fs::File;
use std::io::{self, IsTerminal as _, Read};
use std::path::{Path, PathBuf};

/// Stands for standard input where a notes file is named.
const STANDARD_INPUT: &str = "-";

/// How an input is called in what is said of it.
pub fn called(file: &Path) -> &Path {
    if is_standard_input(file) { Path::new("standard input") } else { file }
}

/// Returns whether standard input is meant.
pub fn is_standard_input(file: &Path) -> bool {
    file == Path::new(STANDARD_INPUT)
}

/// Nothing, if standard input, which can be read once, is not named more often.
pub fn named_once(files: &[PathBuf]) -> Result<(), Trouble> {
    if files.iter().filter(|file| is_standard_input(file)).count() > 1 {
        return Err(Trouble::of_arguments(Fault::new("", "standard input is named twice", "name `-` once")));
    }
    Ok(())
}

/// The bytes of a file of another program, no more of them than `most` and one.
///
/// # Errors
/// It cannot be read, or is no ordinary file.
pub fn of_another_program(file: &Path, most: usize) -> Result<Vec<u8>, Trouble> {
    let unread = |error: io::Error| cannot(file, "cannot be read", &error, "name a file of another program");
    // Opening a pipe waits for whoever fills it, perhaps for ever.
    if !std::fs::metadata(file).map_err(unread)?.is_file() {
        let wrong = "this is a folder, a pipe or a device, not a file";
        return Err(Trouble::one(file, Fault::new("", wrong, "name a file of another program")));
    }
    let mut bytes = Vec::new();
    let opened = File::open(file).map_err(unread)?;
    opened.take(most as u64 + 1).read_to_end(&mut bytes).map_err(unread)?;
    Ok(bytes)
}

/// The text of a notes file.
///
/// # Errors
/// It cannot be read, is no ordinary file, has no end in sight, or is no UTF-8.
pub fn text(file: &Path) -> Result<String, Trouble> {
    if is_standard_input(file) && io::stdin().is_terminal() {
        // Not to be taken for a command that hangs.
        output::remark("reading a notes file from standard input; end it with Ctrl-D\n");
    }
    let bytes = if is_standard_input(file) {
        up_to_longest(file, io::stdin().lock())?
    } else {
        // Opening a pipe waits for whoever fills it, perhaps for ever.
        let is_ordinary = std::fs::metadata(file).map_err(|error| unread(file, &error))?.is_file();
        if !is_ordinary && !file.is_dir() {
            let todo = "name a notes file, or give its text to standard input with `-`";
            return Err(Trouble::one(file, Fault::new("", "this is a pipe or a device, not a file", todo)));
        }
        up_to_longest(file, File::open(file).map_err(|error| unread(file, &error))?)?
    };
    String::from_utf8(bytes).map_err(|_| {
        let fault = Fault::new("", "this is no UTF-8 text", "save the notes file as UTF-8");
        Trouble::one(called(file), fault)
    })
}

fn up_to_longest(file: &Path, from: impl Read) -> Result<Vec<u8>, Trouble> {
    let mut bytes = Vec::new();
    from.take(LONGEST_BYTES + 1).read_to_end(&mut bytes).map_err(|error| unread(file, &error))?;
    if bytes.len() as u64 > LONGEST_BYTES {
        let wrong =
            format!("this is longer than {} MiB, the most a notes file may have", LONGEST_BYTES >> 20);
        return Err(Trouble::one(
            called(file),
            Fault::new("", wrong, "name a notes file: it holds one field"),
        ));
    }
    Ok(bytes)
}

fn unread(file: &Path, error: &io::Error) -> Trouble {
    cannot(called(file), "cannot be read", error, "name a notes file")
}

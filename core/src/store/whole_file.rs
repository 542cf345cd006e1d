//! Files that are there whole or not at all, also after a power cut.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Puts a file in place whole: whoever looks, also after a power cut, finds the one before or this one.
///
/// # Errors
/// As writing does; the one before is there then.
pub fn write_whole(path: &Path, content: &[u8]) -> io::Result<()> {
    let new = beside(path);
    let mut file = File::create(&new)?;
    let written = file.write_all(content).and_then(|()| put_in_place(&file, &new, path));
    if written.is_err() {
        let _ = fs::remove_file(&new);
    }
    written
}

/// A name beside a file for what will replace it; one name, so that a crash leaves at most one.
pub fn beside(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".new");
    name.into()
}

/// Syncs what is written beside it and gives it its name.
///
/// # Errors
/// As writing does.
pub fn put_in_place(file: &File, new: &Path, path: &Path) -> io::Result<()> {
    file.sync_all()?;
    fs::rename(new, path)?;
    path.parent().map_or(Ok(()), sync_folder)
}

/// A new name in a folder lasts once the folder is synced.
#[cfg(unix)]
pub(super) fn sync_folder(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}

#[cfg(not(unix))]
pub(super) fn sync_folder(_: &Path) -> io::Result<()> {
    Ok(())
}

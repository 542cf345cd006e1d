//! Files that are there whole or not at all, also after a power cut.
//!
//! What is being written has a name of its own in the folder of its place, `.pitface-` and sixteen hex digits and `.new`: made anew and never
//! through a link, not to be guessed, locked while it is written. What a killed program left behind is known by that name and gone
//! with [`remove_left_over`] the next time.

use std::collections::hash_map::RandomState;
use std::fs::{self, File, OpenOptions};
use std::hash::{BuildHasher as _, Hasher as _};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

const BEGINNING: &str = ".pitface-";
const ENDING: &str = ".new";
const DIGITS: usize = 16;

/// Who may read a file, beside whoever owns it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Readers {
    /// Nobody: notes, photos, keys.
    Owner,
    /// Whomever the person's own settings let in (umask): what is meant for others.
    Others,
}

/// A file that is being written beside its place. Dropped before [`NewFile::put_at`], it is gone.
#[derive(Debug)]
pub struct NewFile {
    file: File,
    path: PathBuf,
    /// Whether it still has its passing name.
    passing: bool,
}

impl NewFile {
    /// Begins one in a folder.
    ///
    /// # Errors
    /// As making a file does.
    pub fn begin(folder: &Path, readers: Readers) -> io::Result<Self> {
        let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
        loop {
            let path = folder.join(format!("{BEGINNING}{:016x}{ENDING}", random()));
            let file = match made_anew(&path, readers) {
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => continue,
                made => made?,
            };
            // Where files cannot be locked, what is left over is not removed by others.
            let _ = file.try_lock();
            // Between these two somebody may have taken it for left over.
            if path.exists() {
                return Ok(Self { file, path, passing: true });
            }
        }
    }

    /// Where it lies now.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The file itself.
    pub fn file(&self) -> &File {
        &self.file
    }

    /// Syncs it and gives it its place, in the folder it was begun in; what was there is replaced.
    ///
    /// # Errors
    /// As writing does; what was there before is there then.
    pub fn put_at(mut self, place: &Path) -> io::Result<()> {
        self.file.sync_all()?;
        self.rename(place)?;
        place.parent().map_or(Ok(()), sync_folder)
    }

    /// Gives it its place without a sync: for what may be lost in a power cut.
    ///
    /// # Errors
    /// As renaming does; what was there before is there then.
    pub fn put_unsynced(mut self, place: &Path) -> io::Result<()> {
        self.rename(place)
    }

    /// The same as [`Self::put_at`], where nothing is there yet.
    ///
    /// # Errors
    /// [`io::ErrorKind::AlreadyExists`] where something is.
    pub fn put_new(self, place: &Path) -> io::Result<()> {
        self.file.sync_all()?;
        fs::hard_link(&self.path, place)?;
        place.parent().map_or(Ok(()), sync_folder)
    }

    fn rename(&mut self, place: &Path) -> io::Result<()> {
        fs::rename(&self.path, place)?;
        self.passing = false;
        Ok(())
    }
}

impl Write for NewFile {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.file.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.file.flush()
    }
}

impl Drop for NewFile {
    fn drop(&mut self) {
        if self.passing {
            let _ = fs::remove_file(&self.path);
        }
    }
}

/// Puts a file in place whole, for its owner alone: whoever looks, also after a power cut, finds the one before or this one.
///
/// # Errors
/// As writing does; the one before is there then.
pub fn write_whole(path: &Path, content: &[u8]) -> io::Result<()> {
    let mut new = NewFile::begin(path.parent().unwrap_or(Path::new("")), Readers::Owner)?;
    new.write_all(content)?;
    new.put_at(path)
}

/// Removes what killed programs left in a folder. Whose program holds the folder `alone` needs no lock to know that nobody writes there.
/// What cannot be removed stays: nobody reads it.
pub fn remove_left_over(folder: &Path, alone: bool) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let is_file = entry.file_type().is_ok_and(|kind| kind.is_file());
        if is_file && is_passing(&entry.file_name().to_string_lossy()) {
            let path = entry.path();
            let left = || File::open(&path).is_ok_and(|file| file.try_lock().is_ok());
            if alone || left() {
                let _ = fs::remove_file(&path);
            }
        }
    }
}

/// Makes a folder for its owner alone, with those above it, if it is not there.
///
/// # Errors
/// As making a folder does.
pub fn make_own_folder(folder: &Path) -> io::Result<()> {
    let mut maker = fs::DirBuilder::new();
    maker.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut maker, 0o700);
    maker.create(folder)
}

/// Makes a file that is not there yet, also not as a link.
pub(super) fn made_anew(path: &Path, readers: Readers) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.write(true).read(true).create_new(true);
    #[cfg(unix)]
    {
        let mode = if readers == Readers::Owner { 0o600 } else { 0o666 };
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, mode);
    }
    #[cfg(not(unix))]
    let _ = readers;
    options.open(path)
}

/// Takes from all but its owner what they may do with a file or folder that is there. One that belongs to somebody else stays as it is.
pub(super) fn for_owner_alone(path: &Path) {
    #[cfg(unix)]
    if let Ok(found) = fs::metadata(path) {
        use std::os::unix::fs::PermissionsExt as _;
        let mode = found.permissions().mode();
        if mode & 0o077 != 0 {
            let _ = fs::set_permissions(path, fs::Permissions::from_mode(mode & 0o7700));
        }
    }
    #[cfg(not(unix))]
    let _ = path;
}

fn is_passing(name: &str) -> bool {
    let digits = name.strip_prefix(BEGINNING).and_then(|rest| rest.strip_suffix(ENDING));
    digits
        .is_some_and(|digits| digits.len() == DIGITS && digits.bytes().all(|digit| digit.is_ascii_hexdigit()))
}

/// Chance from the operating system, by way of the keys of the standard library's hash tables.
fn random() -> u64 {
    RandomState::new().build_hasher().finish()
}

/// A new name in a folder lasts once the folder is synced.
///
/// # Errors
/// As opening and syncing do.
#[cfg(unix)]
pub fn sync_folder(folder: &Path) -> io::Result<()> {
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    File::open(folder)?.sync_all()
}

/// A new name in a folder lasts once the folder is synced; here nobody can ask for it.
///
/// # Errors
/// None.
#[cfg(not(unix))]
pub fn sync_folder(_: &Path) -> io::Result<()> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_is_not_put_is_gone_and_one_that_is_written_is_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let count = || fs::read_dir(folder.path()).unwrap().count();
        drop(NewFile::begin(folder.path(), Readers::Owner).unwrap());
        assert_eq!(count(), 0);
        let mut being_written = NewFile::begin(folder.path(), Readers::Owner).unwrap();
        being_written.write_all(b"half").unwrap();
        // A killed program's: the same name, but nobody holds it.
        fs::write(folder.path().join(".pitface-0123456789abcdef.new"), b"half").unwrap();
        fs::write(folder.path().join(".pitface-notes"), b"not ours").unwrap();
        remove_left_over(folder.path(), false);
        assert_eq!(count(), 2);
        being_written.put_at(&folder.path().join("place")).unwrap();
        assert_eq!(fs::read(folder.path().join("place")).unwrap(), b"half");
        assert_eq!(count(), 2);
    }

    #[cfg(unix)]
    #[test]
    fn a_link_is_replaced_and_never_written_through() {
        use std::os::unix::fs::PermissionsExt as _;
        let folder = tempfile::tempdir().unwrap();
        let [victim, place] = ["victim", "place"].map(|name| folder.path().join(name));
        fs::write(&victim, b"of somebody else").unwrap();
        for name in ["place", "place.new"] {
            std::os::unix::fs::symlink(&victim, folder.path().join(name)).unwrap();
        }
        write_whole(&place, b"ours").unwrap();
        assert_eq!(fs::read(&victim).unwrap(), b"of somebody else");
        assert_eq!(fs::read(&place).unwrap(), b"ours");
        assert!(!place.is_symlink());
        assert_eq!(fs::metadata(&place).unwrap().permissions().mode() & 0o777, 0o600);
    }

    #[test]
    fn what_is_put_as_new_replaces_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("key");
        let put = |content: &[u8]| {
            let mut new = NewFile::begin(folder.path(), Readers::Owner).unwrap();
            new.write_all(content).unwrap();
            new.put_new(&place)
        };
        put(b"first").unwrap();
        assert_eq!(put(b"second").unwrap_err().kind(), io::ErrorKind::AlreadyExists);
        assert_eq!(fs::read(&place).unwrap(), b"first");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }
}

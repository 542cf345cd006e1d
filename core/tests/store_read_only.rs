//! Folders and files that the system really does not let be written. Root may write everywhere, so under root the
//! opening is done by a child process that runs as nobody.
#![cfg(unix)]

use crate::store_support;

use pitface_core::store::{Store, StoreError};
use std::os::unix::fs::{MetadataExt, PermissionsExt};
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::Command;
use store_support::{DEVICE, NOW_MS, ellmoor, place};

const FOLDER: &str = "PITFACE_TEST_READ_ONLY";
const NOBODY: u32 = 65_534;

fn allow(path: &Path, mode: u32) {
    std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).unwrap();
}

#[test]
fn a_folder_or_file_that_may_not_be_written_is_named_and_left_alone() {
    let (folder, path) = place();
    let folder = folder.path();
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&ellmoor(), NOW_MS).unwrap();
    let bytes = std::fs::read(&path).unwrap();
    let locked = folder.join("locked.store");
    std::fs::copy(&path, &locked).unwrap();
    let unreadable = folder.join("unreadable.store");
    std::fs::copy(&path, &unreadable).unwrap();
    let this = folder.join("this_test");
    std::fs::copy(std::env::current_exe().unwrap(), &this).unwrap();
    allow(&this, 0o755);
    allow(&path, 0o666);
    allow(&locked, 0o444);
    allow(&unreadable, 0o000);
    allow(folder, 0o555);

    let mut child = Command::new(&this);
    child.args(["--ignored", "--exact", "store_read_only::opens_in_the_read_only_folder", "--nocapture"]);
    child.env(FOLDER, folder).current_dir("/");
    if std::fs::metadata(folder).unwrap().uid() == 0 {
        child.uid(NOBODY).gid(NOBODY);
    }
    let done = child.output().unwrap();
    allow(folder, 0o755);
    allow(&unreadable, 0o600);
    let said = String::from_utf8_lossy(&done.stdout) + String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success() && said.contains("1 passed"), "{said}");
    for file in [&path, &locked, &unreadable] {
        assert!(std::fs::read(file).unwrap() == bytes, "{} has changed", file.display());
    }
    assert_eq!(std::fs::read_dir(folder).unwrap().count(), 4);
}

#[test]
#[ignore = "run by the test above, as a user who may not write"]
fn opens_in_the_read_only_folder() {
    let folder = std::path::PathBuf::from(std::env::var(FOLDER).unwrap());
    std::fs::write(folder.join("probe"), "").unwrap_err();
    for file in ["new.store", "ellmoor.store", "locked.store", "unreadable.store"] {
        let error = Store::create_or_open(&folder.join(file), DEVICE).unwrap_err();
        assert!(matches!(error, StoreError::ReadOnly), "{file}: {error:?}");
        assert!(error.to_string().contains("move it to a folder that can, or allow writing"), "{error}");
    }
}

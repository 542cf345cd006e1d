//! What is noted is its owner's: stores, photos and the key are readable by nobody else.
#![cfg(unix)]

use crate::support;

use std::fs::{self, Permissions};
use std::os::unix::fs::PermissionsExt;
use std::path::Path;
use support::walker::{STORE, pair, with_photo};

fn mode(path: &Path) -> u32 {
    fs::metadata(path).unwrap().permissions().mode() & 0o777
}

#[test]
fn stores_photos_and_keys_are_their_owners_alone() {
    let (ann, ben) = pair();
    with_photo(&ann);
    let file = ann.hand_over("all.pitb", &[]);
    ben.place.good(&["take-in", STORE, &file]);
    assert_eq!(mode(&ben.place.path(STORE)), 0o600);
    assert_eq!(mode(&ben.place.path("photos")), 0o700);
    let photos = ben.place.names("photos");
    assert_eq!(photos.len(), 1);
    assert_eq!(mode(&ben.place.path("photos").join(&photos[0])), 0o600);
    assert_eq!(mode(&ben.place.path("settings/pitface")), 0o700);
    assert_eq!(mode(&ben.place.path("settings/pitface/key")), 0o600);
    // What is for others stays so.
    assert_ne!(mode(&ann.place.path("all.pitb")) & 0o044, 0, "a bundle is for others");
    // A store of an earlier version is closed when it is opened.
    fs::set_permissions(ben.place.path(STORE), Permissions::from_mode(0o644)).unwrap();
    ben.place.good(&["partners", STORE]);
    assert_eq!(mode(&ben.place.path(STORE)), 0o600);
}

#[test]
fn a_key_that_others_can_read_is_told() {
    let (ann, _) = pair();
    let key = ann.place.path("settings/pitface/key");
    assert_eq!(ann.place.run(&["partners", STORE]).err, "");
    fs::set_permissions(&key, Permissions::from_mode(0o640)).unwrap();
    let ran = ann.place.run(&["partners", STORE]);
    assert_eq!(ran.code, Some(0));
    assert!(
        ran.err.contains("others on this machine can read") && ran.err.contains("chmod 600"),
        "{}",
        ran.err
    );
}

//! What this store knows of the files in folders that several share, so that none is read twice. A note for this device alone: without it, all
//! are read again.
//!
//! It stands in the store and not beside it: a store that comes back from a backup then knows just the files whose edits it has.

use super::{PhotoHash, Store, StoreError};
use rusqlite::{TransactionBehavior, params};
use std::collections::BTreeMap;

/// A file of a shared folder that was read whole and taken in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownFile {
    /// Its size and when it was last changed (nanoseconds since 1970), by which it is known again.
    pub stamp: FileStamp,
    /// Whether it is locked.
    pub locked: bool,
    /// The hashes of its parts.
    pub parts: Vec<[u8; 32]>,
    /// The photos of which it has pieces, and whether all of them.
    pub photos: BTreeMap<PhotoHash, bool>,
}

/// How a file that did not change is known again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FileStamp {
    /// Bytes.
    pub size_bytes: u64,
    /// Nanoseconds since 1970, negative before.
    pub changed_ns: i64,
}

impl Store {
    /// The files known of a folder, by name. One of which this version cannot read what is noted is left out.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn known_files(&self, folder: &str) -> Result<BTreeMap<String, KnownFile>, StoreError> {
        const SQL: &str =
            "SELECT name, size_bytes, changed_ns, locked, parts, photos FROM shared_files WHERE folder = ?1";
        let mut statement = self.connection.prepare(SQL)?;
        let rows = statement.query_map([folder], |row| {
            let parts: Vec<u8> = row.get(4)?;
            let photos: Vec<u8> = row.get(5)?;
            let file = KnownFile {
                stamp: FileStamp {
                    size_bytes: row.get::<_, i64>(1)?.cast_unsigned(),
                    changed_ns: row.get(2)?,
                },
                locked: row.get(3)?,
                parts: parts.as_chunks().0.to_vec(),
                photos: photos.as_chunks::<33>().0.iter().map(photo_of).collect(),
            };
            Ok((row.get(0)?, file))
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Notes all files known of a folder, in the place of what was noted before.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn know_files(
        &mut self,
        folder: &str,
        files: &BTreeMap<String, KnownFile>,
    ) -> Result<(), StoreError> {
        const FILE: &str =
            "INSERT INTO shared_files (folder, name, size_bytes, changed_ns, locked, parts, photos)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
        if self.known_files(folder)? == *files {
            return Ok(());
        }
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.execute("DELETE FROM shared_files WHERE folder = ?1", [folder])?;
        for (name, file) in files {
            transaction.prepare_cached(FILE)?.execute(params![
                folder,
                name,
                file.stamp.size_bytes.cast_signed(),
                file.stamp.changed_ns,
                file.locked,
                file.parts.as_flattened(),
                file.photos.iter().flat_map(bytes_of).collect::<Vec<u8>>(),
            ])?;
        }
        Ok(transaction.commit()?)
    }

    /// Returns whether a folder was ever locked, as far as this store saw.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn folder_is_locked(&self, folder: &str) -> Result<bool, StoreError> {
        Ok(self.connection.prepare("SELECT 1 FROM locked_folders WHERE folder = ?1")?.exists([folder])?)
    }

    /// Notes that a folder is locked; it stays so.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn lock_folder(&mut self, folder: &str) -> Result<(), StoreError> {
        if !self.folder_is_locked(folder)? {
            self.connection.execute("INSERT INTO locked_folders (folder) VALUES (?1)", [folder])?;
        }
        Ok(())
    }
}

fn photo_of(bytes: &[u8; 33]) -> (PhotoHash, bool) {
    let (hash, whole) =
        bytes.split_first_chunk::<32>().map_or(([0; 32], &[][..]), |(hash, whole)| (*hash, whole));
    (hash, whole == [1])
}

fn bytes_of((photo, whole): (&PhotoHash, &bool)) -> impl Iterator<Item = u8> {
    photo.iter().copied().chain([u8::from(*whole)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::merge::DeviceId;

    #[test]
    fn files_are_known_again_folder_by_folder() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("notes.pitface");
        let mut store = Store::create_or_open(&path, DeviceId([1; 16])).unwrap();
        let file = KnownFile {
            stamp: FileStamp { size_bytes: 1 << 33, changed_ns: -5 },
            locked: true,
            parts: vec![[1; 32], [2; 32]],
            photos: BTreeMap::from([([3; 32], true), ([4; 32], false)]),
        };
        let files = BTreeMap::from([("a.pitb".to_owned(), file.clone()), ("b.pitb".to_owned(), file)]);
        store.know_files("/shared", &files).unwrap();
        store.know_files("/other", &BTreeMap::new()).unwrap();
        assert_eq!(store.known_files("/shared").unwrap(), files);
        assert!(store.known_files("/other").unwrap().is_empty());
        assert!(!store.folder_is_locked("/shared").unwrap());
        store.lock_folder("/shared").unwrap();
        store.lock_folder("/shared").unwrap();
        drop(store);
        let store = Store::open_existing(&path, DeviceId([1; 16])).unwrap();
        assert!(store.folder_is_locked("/shared").unwrap() && !store.folder_is_locked("/other").unwrap());
        assert_eq!(store.known_files("/shared").unwrap(), files);
        store.check().unwrap();
    }
}

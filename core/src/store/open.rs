//! Opening and creating. Whatever is refused is refused before a byte of the file is touched.

use super::schema::{self, APPLICATION_ID, SCHEMA_VERSION};
use super::whole_file::{Readers, for_owner_alone, made_anew};
use super::{DeviceId, Store, StoreError, write_ahead};
use crate::merge::Chain;
use rusqlite::config::DbConfig::{SQLITE_DBCONFIG_ENABLE_QPSG, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE};
use rusqlite::{Connection, OpenFlags, OptionalExtension, TransactionBehavior, params};
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// SQLite's file header (sqlite.org/fileformat2.html, 1.3).
const HEADER_BYTES: usize = 100;
const MAGIC: &[u8] = b"SQLite format 3\0";
const USER_VERSION_AT: usize = 60;
const APPLICATION_ID_AT: usize = 68;

/// Statements kept prepared on the connection: all that this room has.
const STATEMENTS: usize = 32;

impl Store {
    /// Opens the store at `path`, creating it if nothing is there; an older schema is brought up to date. `device`
    /// writes from now on.
    ///
    /// # Errors
    /// See [`StoreError`]; on any of them nothing has changed.
    pub fn create_or_open(path: &Path, device: DeviceId) -> Result<Self, StoreError> {
        let was_there = path.exists();
        let opened = Self::open(path, device, OpenFlags::SQLITE_OPEN_CREATE);
        // SQLite leaves an empty file where it could not go on. Another creator's file is not ours to remove.
        if let Err(error) = &opened
            && !was_there
            && !matches!(error, StoreError::InUse)
            && std::fs::metadata(path).is_ok_and(|left| left.len() == 0)
        {
            let _ = std::fs::remove_file(path);
        }
        opened
    }

    /// Opens the store at `path`, which must be there.
    ///
    /// # Errors
    /// [`StoreError::Missing`] if nothing is; else as [`Store::create_or_open`].
    pub fn open_existing(path: &Path, device: DeviceId) -> Result<Self, StoreError> {
        if !path.exists() {
            return Err(StoreError::Missing(path.to_owned()));
        }
        Self::open(path, device, OpenFlags::empty())
    }

    /// A store in memory, gone when it is dropped: what is only asked about is kept nowhere, and goes the same way.
    ///
    /// # Errors
    /// None but a fault of this program or of its memory.
    pub fn in_memory(device: DeviceId) -> Result<Self, StoreError> {
        let mut connection = Connection::open_in_memory()?;
        configure(&connection)?;
        bring_up_to_date(&mut connection)?;
        let device = number_of(&mut connection, device)?;
        Ok(Self { connection, device, lost_saves: false })
    }

    fn open(path: &Path, device: DeviceId, create: OpenFlags) -> Result<Self, StoreError> {
        // In full, so that SQLite takes no name (such as `:memory:`) for something else than a file.
        let path = &std::path::absolute(path)?;
        let is_empty = look(path)?;
        if is_empty && create.is_empty() {
            return Err(StoreError::NotAStore("the file is empty"));
        }
        if path.exists() {
            for_owner_alone(path);
            return Self::open_there(path, device, create);
        }
        // What SQLite puts beside it is for the same people. Where it cannot be made, SQLite says why.
        let is_made = !create.is_empty() && made_anew(path, Readers::Owner).is_ok();
        let opened = Self::open_there(path, device, create);
        if opened.is_err() && is_made && !has_content(path) {
            let _ = std::fs::remove_file(path);
        }
        opened
    }

    fn open_there(path: &Path, device: DeviceId, create: OpenFlags) -> Result<Self, StoreError> {
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX | create;
        let lost_saves = write_ahead::is_damaged(path);
        let mut connection = Connection::open_with_flags(path, flags)?;
        // Until everything is known to be in order, closing must not move a write-ahead log into the file.
        let was_cut_off = has_content(&beside(path, "-wal"));
        connection.set_db_config(SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, was_cut_off)?;
        if connection.is_readonly("main")? {
            return Err(StoreError::ReadOnly);
        }
        configure(&connection)?;
        if was_cut_off {
            // With the first read the file is locked, and nothing has been written yet.
            connection.pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0))?;
            write_ahead::bring_to_disk(path);
        }
        bring_up_to_date(&mut connection)?;
        turn_on_log(&connection)?;
        schema::verify(&connection)?;
        let device = number_of(&mut connection, device)?;
        connection.set_db_config(SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false)?;
        Ok(Self { connection, device, lost_saves })
    }
}

/// Turns the write-ahead log on. Should that fail half way, SQLite would go on with a journal, and a save would not be on the disk
/// when it returns.
fn turn_on_log(connection: &Connection) -> Result<(), StoreError> {
    let mut statement = connection.prepare("PRAGMA journal_mode = WAL")?;
    let mut rows = statement.query([])?;
    let mut mode = String::new();
    // To the end: it is committed after the row that tells the mode, and only then an error is heard.
    while let Some(row) = rows.next()? {
        mode = row.get(0)?;
    }
    if mode == "wal" {
        return Ok(());
    }
    Err(StoreError::File(std::io::Error::other("its write-ahead log cannot be begun")))
}

/// Looks at the bare file, so that a foreign one is never opened. Tells whether there is nothing in it yet.
pub(super) fn look(path: &Path) -> Result<bool, StoreError> {
    // Before it is opened: to open a pipe is to wait for whoever fills it.
    let is_file = match std::fs::metadata(path) {
        Ok(there) => there.is_file(),
        Err(error) if error.kind() == ErrorKind::NotFound => {
            let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
            return match folder {
                Some(folder) if !folder.is_dir() => Err(StoreError::Missing(folder.to_owned())),
                _ => Ok(true),
            };
        }
        Err(error) => return Err(error.into()),
    };
    if !is_file {
        return Err(StoreError::NotAStore("it is not a file"));
    }
    let mut header = Vec::new();
    File::open(path)?.take(HEADER_BYTES as u64).read_to_end(&mut header)?;
    if header.is_empty() {
        return Ok(true);
    }
    // A power cut while it was created: SQLite rolls that back, and it is looked at again from within.
    if has_content(&beside(path, "-journal")) {
        return Ok(false);
    }
    if header.len() < HEADER_BYTES || !header.starts_with(MAGIC) {
        return Err(StoreError::NotAStore("it is no SQLite file"));
    }
    check_marks(number_at(&header, APPLICATION_ID_AT), i64::from(number_at(&header, USER_VERSION_AT)))?;
    Ok(false)
}

fn number_at(header: &[u8], at: usize) -> i32 {
    header[at..at + 4].iter().fold(0, |number, byte| number << 8 | i32::from(*byte))
}

pub(super) fn has_content(path: &Path) -> bool {
    std::fs::metadata(path).is_ok_and(|file| file.len() > 0)
}

pub(super) fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    name.into()
}

fn check_marks(application_id: i32, version: i64) -> Result<(), StoreError> {
    if application_id != APPLICATION_ID {
        return Err(StoreError::NotAStore("it is a SQLite file of another program"));
    }
    if version > SCHEMA_VERSION {
        return Err(StoreError::NewerSchema { found: version, known: SCHEMA_VERSION });
    }
    if version < 1 {
        return Err(StoreError::Corrupt(format!("its schema version is {version}")));
    }
    Ok(())
}

/// How the file is worked with. The lock is taken with the first read and held until the store is dropped.
pub(super) fn configure(connection: &Connection) -> Result<(), StoreError> {
    connection.busy_timeout(Duration::ZERO)?;
    connection.set_prepared_statement_cache_capacity(STATEMENTS);
    // A statement is planned once, not again for every number of a field that is bound (because of the partial indexes).
    connection.set_db_config(SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    connection.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    // Real syncs on Apple's systems; elsewhere these two do nothing.
    connection.pragma_update(None, "fullfsync", true)?;
    connection.pragma_update(None, "checkpoint_fullfsync", true)?;
    connection.pragma_update(None, "foreign_keys", true)?;
    connection.pragma_update(None, "temp_store", 2)?;
    // What is redacted is gone from the file too.
    connection.pragma_update(None, "secure_delete", true)?;
    // Files come from elsewhere: nothing in their schema is to be run, and damaged pages are to be noticed.
    connection.pragma_update(None, "trusted_schema", false)?;
    connection.pragma_update(None, "cell_size_check", true)?;
    Ok(())
}

/// Creates the tables in an empty file, or migrates those of an earlier version, in one transaction.
pub(super) fn bring_up_to_date(connection: &mut Connection) -> Result<(), StoreError> {
    let read = |connection: &Connection, name| connection.pragma_query_value(None, name, |row| row.get(0));
    let version: i64 = read(connection, "user_version")?;
    let pages: i64 = read(connection, "page_count")?;
    if pages > 0 {
        let id = connection.pragma_query_value(None, "application_id", |row| row.get(0))?;
        check_marks(id, version)?;
    }
    if version < SCHEMA_VERSION {
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
        schema::migrate(&transaction, version)?;
        transaction.commit()?;
    }
    Ok(())
}

/// The row of a device's line, made if it writes here for the first time.
pub(super) fn number_of(connection: &mut Connection, device: DeviceId) -> Result<i64, StoreError> {
    let find = "SELECT number FROM devices WHERE id = ?1 AND own = 1";
    if let Some(number) = connection.query_row(find, [device.0], |row| row.get(0)).optional()? {
        return Ok(number);
    }
    // It may be there already from a bundle: written by this device before its store was lost.
    let own = "INSERT INTO devices (id, base, own, chain) VALUES (?1, ?1, 1, ?2)
        ON CONFLICT (id) DO UPDATE SET own = 1 RETURNING number";
    // On its own, a statement that returns a row is committed after that row was read, where no error is heard any more.
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let number = transaction.query_row(own, params![device.0, Chain::start(device).0], |row| row.get(0))?;
    transaction.commit()?;
    Ok(number)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_log_left_behind_is_written_again_before_anything_is_written_behind_it() {
        let folder = tempfile::tempdir().unwrap();
        let [path, left] = ["ellmoor.store", "left.store"].map(|name| folder.path().join(name));
        let store = Store::create_or_open(&path, DeviceId([1; 16])).unwrap();
        for ending in ["", "-wal"] {
            std::fs::copy(beside(&path, ending), beside(&left, ending)).unwrap();
        }
        drop(store);
        let log = File::options().write(true).open(beside(&left, "-wal")).unwrap();
        log.set_modified(std::time::UNIX_EPOCH).unwrap();
        let before = std::fs::read(beside(&left, "-wal")).unwrap();
        let store = Store::open_existing(&left, DeviceId([1; 16])).unwrap();
        assert_ne!(log.metadata().unwrap().modified().unwrap(), std::time::UNIX_EPOCH);
        assert!(std::fs::read(beside(&left, "-wal")).unwrap() == before, "the same as it was");
        store.check().unwrap();
    }

    #[test]
    fn a_save_is_on_the_disk_before_it_returns() {
        let folder = tempfile::tempdir().unwrap();
        let store = Store::create_or_open(&folder.path().join("ellmoor.store"), DeviceId([1; 16])).unwrap();
        let read = |name: &str| -> String {
            let sql = format!("SELECT CAST({name} AS TEXT) FROM pragma_{name}");
            store.connection.query_row(&sql, [], |row| row.get(0)).unwrap()
        };
        assert_eq!(read("journal_mode"), "wal");
        // FULL: NORMAL does not sync the write-ahead log at commit.
        assert_eq!(read("synchronous"), "2");
        for on in ["fullfsync", "checkpoint_fullfsync", "foreign_keys"] {
            assert_eq!(read(on), "1", "{on}");
        }
        assert_eq!(read("temp_store"), "2");
        assert_eq!(read("locking_mode"), "exclusive");
    }
}

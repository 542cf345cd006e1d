//! A store that cannot be written, on a full disk or a medium that is read only: a copy of it in memory, from which notes still get out.

use super::open::{bring_up_to_date, configure, has_content, look, number_of};
use super::{DeviceId, Store, StoreError};
use rusqlite::{Connection, OpenFlags};
use std::path::Path;

impl Store {
    /// A copy in memory of the store at a path, as it was last saved; it can be written as any other, and is gone when it is dropped. Nothing
    /// is written into the store, nor beside it.
    ///
    /// # Errors
    /// As [`Store::open_existing`]; [`StoreError::ReadOnly`] where a program that was cut off left saves beside the store, which only opening it
    /// brings in.
    pub fn open_aside(path: &Path, device: DeviceId) -> Result<Self, StoreError> {
        let path = &std::path::absolute(path)?;
        if !path.exists() {
            return Err(StoreError::Missing(path.clone()));
        }
        if look(path)? {
            return Err(StoreError::NotAStore("the file is empty"));
        }
        if ["-wal", "-journal"].iter().any(|ending| has_content(&super::open::beside(path, ending))) {
            return Err(StoreError::ReadOnly);
        }
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE
            | OpenFlags::SQLITE_OPEN_CREATE
            | OpenFlags::SQLITE_OPEN_NO_MUTEX
            | OpenFlags::SQLITE_OPEN_URI;
        let mut connection = Connection::open_with_flags(":memory:", flags)?;
        connection.execute("ATTACH ?1 AS disk", [unchanging(path)])?;
        copy(&connection)?;
        connection.execute_batch("DETACH disk")?;
        configure(&connection)?;
        bring_up_to_date(&mut connection)?;
        let device = number_of(&mut connection, device)?;
        Ok(Self { connection, device, lost_saves: false })
    }
}

/// A file that SQLite takes as one that nobody changes, so that it needs neither locks nor files beside it (sqlite.org/uri.html).
pub(super) fn unchanging(path: &Path) -> String {
    // `%` first: it stands in what the others become.
    let name = path.to_string_lossy().replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    format!("file://{name}?mode=ro&immutable=1")
}

/// Tables first, then what is in them, then what hangs on them.
fn copy(connection: &Connection) -> Result<(), StoreError> {
    const MADE: &str =
        "SELECT type, name, sql FROM disk.sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%'
        ORDER BY type <> 'table'";
    let made: Vec<(String, String, String)> = connection
        .prepare(MADE)?
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
        .collect::<Result<_, _>>()?;
    let (tables, hanging): (Vec<_>, Vec<_>) = made.iter().partition(|(kind, ..)| kind == "table");
    for (_, name, sql) in tables {
        connection.execute_batch(sql)?;
        let name = name.replace('"', "\"\"");
        connection.execute_batch(&format!("INSERT INTO main.\"{name}\" SELECT * FROM disk.\"{name}\""))?;
    }
    for (_, _, sql) in hanging {
        connection.execute_batch(sql)?;
    }
    for mark in ["application_id", "user_version"] {
        let value: i64 = connection.query_row(&format!("PRAGMA disk.{mark}"), [], |row| row.get(0))?;
        connection.pragma_update(None, mark, value)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Person, RecordId, Unknown};

    #[test]
    fn a_copy_has_everything_and_leaves_the_store_as_it_is() {
        let folder = tempfile::tempdir().unwrap();
        // A name that would mean something in a URI.
        let path = folder.path().join("50 % of #1?.pitface");
        let device = DeviceId([1; 16]);
        let mut store = Store::create_or_open(&path, device).unwrap();
        let person = |number: u8| Person {
            id: RecordId::new(1, [number; 10]),
            name: "walker".into(),
            left_handed: None,
            unknown: Unknown::new(),
        };
        store.save_person(&person(1), 1).unwrap();
        let digest = store.digest().unwrap();
        drop(store);
        let before = std::fs::read(&path).unwrap();
        let mut copy = Store::open_aside(&path, device).unwrap();
        assert_eq!(copy.digest().unwrap(), digest);
        copy.check().unwrap();
        copy.save_person(&person(2), 2).unwrap();
        assert_eq!(copy.persons().unwrap().len(), 2);
        drop(copy);
        assert!(std::fs::read(&path).unwrap() == before, "the store has changed");
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
        assert_eq!(Store::open_existing(&path, device).unwrap().persons().unwrap(), [person(1)]);
    }
}

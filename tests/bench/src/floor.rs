//! The floor: plain rusqlite with the store's own settings (WAL, FULL), one table, no thought.

use rusqlite::{Connection, Result, params};
use std::ops::Range;
use std::path::Path;

/// A database that holds cells and nothing else.
pub struct Plain {
    connection: Connection,
    next: i64,
}

impl Plain {
    /// Made new at `path` with `cells` rows spread evenly over `owners`.
    pub fn create(path: &Path, owners: u32, cells: u32) -> Result<Self> {
        let connection = Self::connect(path)?;
        connection.execute_batch(
            "CREATE TABLE cell (owner INTEGER NOT NULL, number INTEGER NOT NULL, value BLOB NOT NULL,
             PRIMARY KEY (owner, number)) WITHOUT ROWID; BEGIN",
        )?;
        for cell in 0..cells {
            connection.prepare_cached("INSERT INTO cell VALUES (?1, ?2, ?3)")?.execute(params![
                cell % owners,
                cell / owners,
                &b"crumbs"[..]
            ])?;
        }
        connection.execute_batch("COMMIT")?;
        Ok(Self { connection, next: i64::from(cells) })
    }

    fn connect(path: &Path) -> Result<Connection> {
        let connection = Connection::open(path)?;
        connection.pragma_update(None, "journal_mode", "WAL")?;
        connection.pragma_update(None, "synchronous", "FULL")?;
        Ok(connection)
    }

    /// Opens the file anew and reads one row, as little as an opening can do.
    pub fn open(path: &Path) -> Result<i64> {
        Self::connect(path)?.query_row("SELECT number FROM cell LIMIT 1", [], |row| row.get(0))
    }

    /// One row in a transaction of its own, durable when this returns.
    pub fn insert(&mut self) -> Result<()> {
        self.next += 1;
        self.connection.prepare_cached("INSERT INTO cell VALUES (?1, ?2, ?3)")?.execute(params![
            -1,
            self.next,
            &b"crumbs"[..]
        ])?;
        Ok(())
    }

    /// All cells of these owners.
    pub fn select(&self, owners: Range<u32>) -> Result<usize> {
        let mut statement = self
            .connection
            .prepare_cached("SELECT number, value FROM cell WHERE owner >= ?1 AND owner < ?2")?;
        let rows = statement.query_map([owners.start, owners.end], |row| {
            Ok((row.get::<_, i64>(0)?, row.get::<_, Vec<u8>>(1)?))
        })?;
        rows.collect::<Result<Vec<_>>>().map(|cells| cells.len())
    }
}

//! Many rows with one statement: most of what writing a row costs is the statement around it.

use super::StoreError;
use rusqlite::types::ToSqlOutput;
use rusqlite::{CachedStatement, Connection};

/// Rows that one statement writes: no more, so that SQLite has their values in memory that it keeps ready.
pub(super) const MANY: usize = 16;

/// Writes rows of so many columns into a table.
pub(super) struct Rows<'a, const COLUMNS: usize> {
    connection: &'a Connection,
    into: &'static str,
    one: CachedStatement<'a>,
    /// Made when it is needed first.
    many: Option<CachedStatement<'a>>,
}

impl<'a, const COLUMNS: usize> Rows<'a, COLUMNS> {
    /// `into`: SQL up to the values. Where it says what else to do than to abort, and foreign keys are off, SQLite need not note how to
    /// take the rows of one statement back.
    pub(super) fn new(connection: &'a Connection, into: &'static str) -> Result<Self, StoreError> {
        let one = connection.prepare_cached(&Self::sql(into, 1))?;
        Ok(Self { connection, into, one, many: None })
    }

    fn sql(into: &str, rows: usize) -> String {
        let row = format!("({})", ["?"; COLUMNS].join(", "));
        format!("{into} VALUES {}", vec![row; rows].join(", "))
    }

    /// Writes rows whose values `values` tells.
    pub(super) fn write<'row, Row>(
        &mut self,
        rows: &'row [Row],
        values: impl Fn(&'row Row) -> [ToSqlOutput<'row>; COLUMNS],
    ) -> Result<(), StoreError> {
        let (many, left) = rows.as_chunks::<MANY>();
        for rows in many {
            let statement = match &mut self.many {
                Some(statement) => statement,
                None => self.many.insert(self.connection.prepare_cached(&Self::sql(self.into, MANY))?),
            };
            bind(statement, rows, &values)?;
            statement.raw_execute()?;
        }
        for row in left {
            bind(&mut self.one, std::slice::from_ref(row), &values)?;
            self.one.raw_execute()?;
        }
        Ok(())
    }
}

fn bind<'row, Row, const COLUMNS: usize>(
    statement: &mut CachedStatement,
    rows: &'row [Row],
    values: impl Fn(&'row Row) -> [ToSqlOutput<'row>; COLUMNS],
) -> Result<(), StoreError> {
    let mut at = 0;
    for row in rows {
        for value in values(row) {
            at += 1;
            statement.raw_bind_parameter(at, value)?;
        }
    }
    Ok(())
}

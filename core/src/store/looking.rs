//! Before anything is signed: whether the edits are still those that were written. Signed, a damaged edit would go to the whole team, and
//! nobody there could tell it from what was noted.

use super::lines::Lines;
use super::{Store, StoreError};
use crate::merge::Chain;
use rusqlite::{Connection, OptionalExtension};

impl Store {
    /// [`Store::check`], before what is here is written out for others in another form than a bundle.
    ///
    /// # Errors
    /// [`StoreError::NotAsWritten`] if anything is not as it was written; whatever the disk reports.
    pub fn look_before_giving_out(&self) -> Result<(), StoreError> {
        match self.check() {
            Err(StoreError::Corrupt(what)) => Err(StoreError::NotAsWritten(what)),
            looked => looked.map(drop),
        }
    }
}

/// Compares the chain that is kept beside the log with the edits after the last bundle of each line; of a line that is in bundles to its
/// end, with the last of them.
pub(super) fn look(connection: &Connection, lines: &Lines) -> Result<(), StoreError> {
    const BUNDLE: &str = "SELECT last, after FROM parts WHERE line = ?1 AND kind = 1 AND first <= last
        ORDER BY last DESC LIMIT 1";
    for (place, line) in lines.all.iter().enumerate() {
        let bundle = connection
            .prepare_cached(BUNDLE)?
            .query_row([lines.rows[place]], |row| Ok((row.get::<_, i64>(0)?.cast_unsigned(), row.get(1)?)))
            .optional()?;
        let (from, before) = match bundle {
            Some((last, after)) => (last, Chain(after)),
            None => (line.first - 1, lines.chain_at(connection, place, line.first - 1)?),
        };
        as_written(
            connection,
            lines,
            place,
            from,
            before,
            line.last,
            lines.chain_at(connection, place, line.last)?,
        )?;
    }
    Ok(())
}

/// An error unless the edits of a line that come after `from`, where its chain is `before`, lead to `after` at `last`.
pub(super) fn as_written(
    connection: &Connection,
    lines: &Lines,
    place: usize,
    from: u64,
    before: Chain,
    last: u64,
    after: Chain,
) -> Result<(), StoreError> {
    match lines.made(connection, place, from, before, last) {
        Ok(made) if made == after => Ok(()),
        Ok(_) | Err(StoreError::Corrupt(_)) => {
            let device = lines.all[place].device;
            let what =
                format!("edits {} to {last} of device {device} are not as they were written", from + 1);
            Err(StoreError::NotAsWritten(what))
        }
        Err(error) => Err(error),
    }
}

//! Names, positions and remarks, and taking them out of every copy.

use super::cells::Cell;
use super::log::record_id;
use super::{Sealer, Store, StoreError};
use crate::record::RecordId;

/// The cells that hold a name, a position or a remark, which may have either, and without which their record is still shown: name and outline of a field, place and person of a pit and of an
/// after-dig, name of a marked part, and the remarks.
const PERSONAL: &str = "100, 101, 160, 202, 204, 207, 403, 907, 1000, 1002, 1100";

/// A name, a position or a remark that stands in the log, now or from before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Personal {
    /// Of which record.
    pub record: RecordId,
    /// Which cell of it.
    pub cell: Cell,
    /// Values written here, which can be taken out.
    pub here: u64,
    /// Values that others wrote: they take them out themselves.
    pub others: u64,
}

impl Store {
    /// All names, positions and remarks, those of deleted records and earlier values too.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn personal(&self) -> Result<Vec<Personal>, StoreError> {
        let sql = format!(
            "SELECT record, field, sum(own), sum(1 - own) FROM log JOIN devices ON number = device
            WHERE field IN ({PERSONAL}) AND value <> x'f6' AND substr(value, 1, 1) <> x'ff'
            GROUP BY record, field ORDER BY record, field"
        );
        let mut statement = self.connection.prepare(&sql)?;
        let mut rows = statement.query([])?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            let record = record_id(row.get(0)?)?;
            let [here, others] = [row.get::<_, i64>(2)?, row.get(3)?].map(i64::cast_unsigned);
            found.push(Personal { record, cell: Cell(row.get(1)?), here, others });
        }
        Ok(found)
    }

    /// Empties a cell of [`Store::personal`], and takes what was written into it here out of this store and, with the next file, out of every other that
    /// takes it in. This cannot be undone. Tells how many values that were.
    ///
    /// # Errors
    /// As [`Store::redact`]; where that fails the cell may be empty already.
    pub fn take_out(&mut self, record: RecordId, cell: Cell, sealer: &Sealer) -> Result<u64, StoreError> {
        self.save_together(sealer.now_ms, |saving| saving.empty(record, cell))?;
        self.redact(record, cell, sealer)
    }
}

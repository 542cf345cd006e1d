//! The tables, and the way from each earlier version to the next.
//!
//! | version | what it brought |
//! |---|---|
//! | 1 | devices, log, cells |
//! | 2 | `undoes`, so that a device can take back its saves one after the other; `shown` and two indexes, so that lists are found without reading every cell |
//! | 3 | lines of edits with their chains, parts of bundles, whom to trust and who has seen what: merging |
//! | 4 | what each notes file said last, which records are one field, what is known of the files in shared folders; devices that are refused, devices that are believed about others, since when a holder's name holds |
//!
//! A released step is never edited: a new version is a new entry in [`STEPS`]. A store made new walks all
//! of them, so old and new stores cannot differ.

use super::StoreError;
use rusqlite::{Connection, Transaction};

/// Marks the file as ours in the SQLite header: "PITF".
pub const APPLICATION_ID: i32 = 0x5049_5446;

/// Version of the tables that this program writes.
pub const SCHEMA_VERSION: i64 = 4;

/// SQL that leads from version n to n + 1, for each n from 0.
const STEPS: [&str; SCHEMA_VERSION as usize] = [VERSION_1, VERSION_2, VERSION_3, VERSION_4];

const VERSION_1: &str = "
CREATE TABLE devices (
    number INTEGER PRIMARY KEY,
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16)
) STRICT;
CREATE TABLE log (
    device INTEGER NOT NULL REFERENCES devices (number),
    sequence INTEGER NOT NULL CHECK (sequence > 0),
    clock INTEGER NOT NULL CHECK (clock > 0),
    record BLOB NOT NULL CHECK (length(record) = 16),
    field INTEGER NOT NULL CHECK (field BETWEEN 0 AND 65535),
    predecessors BLOB NOT NULL,
    value BLOB NOT NULL,
    PRIMARY KEY (device, sequence)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER log_is_never_changed BEFORE UPDATE ON log
    BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;
CREATE TRIGGER log_is_never_cut BEFORE DELETE ON log
    BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;
CREATE TABLE cells (
    record BLOB NOT NULL,
    field INTEGER NOT NULL,
    device INTEGER NOT NULL,
    sequence INTEGER NOT NULL,
    clock INTEGER NOT NULL,
    value BLOB NOT NULL,
    PRIMARY KEY (record, field, device, sequence)
) STRICT, WITHOUT ROWID;
";

// A parent cell is CBOR [id, list, rank]: sorted as bytes, the records in one list of one parent lie side by
// side in the order of their ranks (RFC 8949 4.2.1: a shorter integer sorts before a longer one). Version 1 knew one
// head a cell, so all of them are shown.
const VERSION_2: &str = "
ALTER TABLE log ADD COLUMN undoes INTEGER;
ALTER TABLE cells ADD COLUMN shown INTEGER NOT NULL DEFAULT 1;
CREATE INDEX children ON cells (value) WHERE field = 2 AND shown = 1;
CREATE INDEX deleted ON cells (record) WHERE field = 3 AND shown = 1 AND value = x'f5';
";

// A row of `devices` is a line of edits: `base` is the device whose edits they are, and `id` the same unless the line is that of another
// copy of it, which parts from line `parent` at sequence `first`. `chain` is that at `last`; NULL = to be made from the log.
// `own`: written here. Of the log nothing is changed but a value that is redacted: 0xff and its hash are left. A part with `line` NULL waits, or is nothing but handed on.
const VERSION_3: &str = "
ALTER TABLE devices ADD COLUMN base BLOB;
ALTER TABLE devices ADD COLUMN parent INTEGER REFERENCES devices (number);
ALTER TABLE devices ADD COLUMN first INTEGER NOT NULL DEFAULT 1;
ALTER TABLE devices ADD COLUMN last INTEGER NOT NULL DEFAULT 0;
ALTER TABLE devices ADD COLUMN clock INTEGER NOT NULL DEFAULT 0;
ALTER TABLE devices ADD COLUMN chain BLOB;
ALTER TABLE devices ADD COLUMN own INTEGER NOT NULL DEFAULT 0;
UPDATE devices SET base = id, own = 1,
    last = coalesce((SELECT max(sequence) FROM log WHERE device = number), 0),
    clock = coalesce((SELECT max(clock) FROM log WHERE device = number), 0);
CREATE INDEX lines ON devices (base);
DROP TRIGGER log_is_never_changed;
CREATE TRIGGER log_is_never_changed BEFORE UPDATE ON log
    WHEN NEW.device <> OLD.device OR NEW.sequence <> OLD.sequence OR NEW.clock <> OLD.clock
        OR NEW.record <> OLD.record OR NEW.field <> OLD.field OR NEW.predecessors <> OLD.predecessors
        OR NEW.undoes IS NOT OLD.undoes OR length(NEW.value) <> 33 OR substr(NEW.value, 1, 1) <> x'ff'
    BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;
CREATE TABLE parts (
    hash BLOB PRIMARY KEY CHECK (length(hash) = 32),
    kind INTEGER NOT NULL,
    line INTEGER REFERENCES devices (number),
    first INTEGER NOT NULL,
    last INTEGER NOT NULL,
    before BLOB,
    after BLOB,
    signer BLOB,
    redacts INTEGER NOT NULL DEFAULT 0,
    bytes BLOB NOT NULL
) STRICT;
CREATE INDEX parts_of_line ON parts (line, last);
CREATE TABLE signers (
    id BLOB PRIMARY KEY CHECK (length(id) = 16),
    key BLOB NOT NULL CHECK (length(key) = 32),
    holder TEXT NOT NULL,
    accepted INTEGER NOT NULL DEFAULT 0,
    ahead_ms INTEGER,
    clock_wrong INTEGER NOT NULL DEFAULT 0
) STRICT, WITHOUT ROWID;
CREATE TABLE seen (
    observer BLOB NOT NULL,
    line INTEGER NOT NULL REFERENCES devices (number),
    sequence INTEGER NOT NULL,
    PRIMARY KEY (observer, line)
) STRICT, WITHOUT ROWID;
CREATE TABLE held (
    hash BLOB PRIMARY KEY,
    bytes BLOB NOT NULL
) STRICT;
";

// A reading is one time that a notes file was read: `first` is the sequence of what it saved, NULL if nothing, negative once that is taken back. `said` is what
// the file then said of a record, if that was something else than before: cells and short hashes of their values; empty if the record was removed at
// the file's word. Neither leaves this device.
// Notes for this device alone (`shared.rs`); `parts` is hashes one after the other, `photos` hashes each with 1 behind it if the file has all of it.
// `refused_ms`: what the device sealed later than that is refused (0: whatever comes); NULL = it is not refused. `holder_last`, `holder_ms`: how far its
// edits went, and when it sealed, where it last said how its holder is called. `believed`: a person said yes to what `signer` answers for of `device`,
// up to its edit `last`.
const VERSION_4: &str = "
CREATE INDEX same ON cells (record) WHERE field = 6;
CREATE TABLE readings (
    number INTEGER PRIMARY KEY,
    source TEXT NOT NULL,
    field BLOB NOT NULL CHECK (length(field) = 16),
    device INTEGER REFERENCES devices (number),
    first INTEGER
) STRICT;
CREATE INDEX readings_of_source ON readings (source);
CREATE TABLE said (
    reading INTEGER NOT NULL REFERENCES readings (number),
    record BLOB NOT NULL CHECK (length(record) = 16),
    cells BLOB NOT NULL,
    PRIMARY KEY (reading, record)
) STRICT, WITHOUT ROWID;
CREATE TABLE locked_folders (
    folder TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;
CREATE TABLE shared_files (
    folder TEXT NOT NULL,
    name TEXT NOT NULL,
    size_bytes INTEGER NOT NULL,
    changed_ns INTEGER NOT NULL,
    locked INTEGER NOT NULL,
    parts BLOB NOT NULL,
    photos BLOB NOT NULL,
    PRIMARY KEY (folder, name)
) STRICT, WITHOUT ROWID;
ALTER TABLE signers ADD COLUMN refused_ms INTEGER;
ALTER TABLE signers ADD COLUMN holder_last INTEGER NOT NULL DEFAULT 0;
ALTER TABLE signers ADD COLUMN holder_ms INTEGER NOT NULL DEFAULT 0;
CREATE TABLE believed (
    signer BLOB NOT NULL,
    device BLOB NOT NULL,
    last INTEGER NOT NULL,
    PRIMARY KEY (signer, device)
) STRICT, WITHOUT ROWID;
";

/// Brings the tables from `version` to [`SCHEMA_VERSION`], in the caller's transaction.
pub(super) fn migrate(transaction: &Transaction, version: i64) -> Result<(), StoreError> {
    for step in STEPS.iter().skip(usize::try_from(version).unwrap_or(0)) {
        transaction.execute_batch(step)?;
    }
    transaction.pragma_update(None, "user_version", SCHEMA_VERSION)?;
    Ok(())
}

/// That the tables are there and whole enough to be used.
pub(super) fn verify(connection: &Connection) -> Result<(), StoreError> {
    const NAMES: &str = "SELECT count(*) FROM sqlite_schema WHERE name IN
        ('devices', 'log', 'cells', 'children', 'deleted', 'lines', 'parts', 'signers', 'seen', 'held',
         'same', 'readings', 'said', 'locked_folders', 'shared_files', 'believed')";
    let found: i64 = connection.query_row(NAMES, [], |row| row.get(0))?;
    if found == 16 { Ok(()) } else { Err(StoreError::Corrupt("tables are missing".into())) }
}

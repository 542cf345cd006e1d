//! The floor: a plain table of edits and one of what holds, in SQLite as ours has it (write-ahead log, synced at commit). The latest by
//! the clock wins. Nothing is signed or hashed, nothing is known of what an edit replaces, and versions are not kept.

use crate::peer::{Merged, Peer, Result, hand_over_path, most_memory, timed};
use crate::work::{CELLS, Save, Scalar, Work};
use rusqlite::{Connection, OptionalExtension, params};
use std::fs;
use std::path::Path;

/// Plain SQLite.
pub struct WithSqlite;

/// As ours.
const LEVEL: i32 = 19;
const LARGEST_BYTES: usize = 64 << 20;

impl Peer for WithSqlite {
    fn prepare(&self, work: &Work, folder: &Path) -> Result<()> {
        let mut own = open(&folder.join("own"))?;
        for (season, devices) in [&work.spring, &work.summer].into_iter().enumerate() {
            for (device, saves) in devices.iter().enumerate() {
                let file = zstd::bulk::compress(&write(work, device, saves)?, LEVEL)?;
                if device == 0 {
                    take_in(&mut own, &[&file])?;
                }
                fs::write(hand_over_path(folder, season, device), file)?;
            }
        }
        Ok(())
    }

    fn merge(&self, folder: &Path, hand_overs: &[Vec<u8>]) -> Result<Merged> {
        fs::copy(folder.join("own"), folder.join("merged"))?;
        let mut connection = open(&folder.join("merged"))?;
        let (took, ()) = timed(|| take_in(&mut connection, hand_overs))?;
        let memory = most_memory()?;
        let (saved, ()) = timed(|| {
            drop(connection);
            Ok(())
        })?;
        Ok(Merged { took, saved, memory })
    }

    fn open(&self, folder: &Path, id: [u8; 16]) -> Result<()> {
        read(&open(&folder.join("merged"))?, id, "zone")?
            .map(drop)
            .ok_or_else(|| "the pit is not there".into())
    }

    fn shown(&self, folder: &Path, work: &Work, cells: &[(usize, usize)]) -> Result<Vec<Option<Scalar>>> {
        let connection = open(&folder.join("merged"))?;
        cells.iter().map(|(pit, cell)| read(&connection, work.ids[*pit], CELLS[*cell].0)).collect()
    }

    fn accepts(&self, hand_over: &[u8]) -> bool {
        let taken = || take_in(&mut open(Path::new(":memory:"))?, &[hand_over]);
        taken().is_ok()
    }
}

fn open(path: &Path) -> Result<Connection> {
    let connection = Connection::open(path)?;
    connection.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
    connection.pragma_update(None, "journal_mode", "WAL")?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    connection.execute_batch(
        "CREATE TABLE IF NOT EXISTS log (device INTEGER, time_ms INTEGER, cell INTEGER, record BLOB, value BLOB,
            PRIMARY KEY (device, time_ms, cell)) WITHOUT ROWID;
        CREATE TABLE IF NOT EXISTS cells (record BLOB, cell INTEGER, time_ms INTEGER, value BLOB,
            PRIMARY KEY (record, cell)) WITHOUT ROWID;",
    )?;
    Ok(connection)
}

/// Saves as one row an edit: time and device, pit, cell, length of the value and the value. Columns would pack closer; it is the time that is asked of this one.
fn write(work: &Work, device: usize, saves: &[Save]) -> Result<Vec<u8>> {
    let mut bytes = Vec::new();
    for save in saves {
        for (cell, value) in &save.cells {
            let value = encode(value);
            bytes.extend(save.time_ms.to_be_bytes());
            bytes.extend([device as u8, *cell as u8, u8::try_from(value.len())?]);
            bytes.extend(work.ids[save.pit]);
            bytes.extend(value);
        }
    }
    Ok(bytes)
}

fn take_in<File: AsRef<[u8]>>(connection: &mut Connection, files: &[File]) -> Result<()> {
    let transaction = connection.transaction()?;
    let mut log = transaction.prepare("INSERT INTO log VALUES (?1, ?2, ?3, ?4, ?5)")?;
    let mut cells = transaction.prepare(
        "INSERT INTO cells VALUES (?1, ?2, ?3, ?4) ON CONFLICT (record, cell) DO UPDATE
            SET time_ms = excluded.time_ms, value = excluded.value WHERE excluded.time_ms > time_ms",
    )?;
    for file in files {
        let edits = zstd::bulk::decompress(file.as_ref(), LARGEST_BYTES)?;
        let mut rest = edits.as_slice();
        while let Some((head, after)) = rest.split_at_checked(27) {
            let time_ms = i64::from_be_bytes(head[..8].try_into()?);
            let (device, cell, record) = (head[8], head[9], &head[11..]);
            let (value, after) = after.split_at_checked(head[10].into()).ok_or("cut off")?;
            rest = after;
            log.execute(params![device, time_ms, cell, record, value])?;
            cells.execute(params![record, cell, time_ms, value])?;
        }
    }
    drop((log, cells));
    Ok(transaction.commit()?)
}

fn read(connection: &Connection, id: [u8; 16], cell: &str) -> Result<Option<Scalar>> {
    let cell = CELLS.iter().position(|(name, _)| *name == cell);
    let found: Option<Vec<u8>> = connection
        .prepare_cached("SELECT value FROM cells WHERE record = ?1 AND cell = ?2")?
        .query_row(params![id, cell.map(|cell| cell as i64)], |row| row.get(0))
        .optional()?;
    Ok(found.and_then(|bytes| decode(&bytes)))
}

/// A letter for its type before the value.
fn encode(value: &Scalar) -> Vec<u8> {
    match value {
        Scalar::Number(number) => [b"n".as_slice(), &number.to_be_bytes()].concat(),
        Scalar::Text(text) => [b"t", text.as_bytes()].concat(),
        Scalar::Bytes(bytes) => [b"b", bytes.as_slice()].concat(),
    }
}

fn decode(bytes: &[u8]) -> Option<Scalar> {
    match bytes.split_first()? {
        (b'n', number) => Some(Scalar::Number(i64::from_be_bytes(number.try_into().ok()?))),
        (b't', text) => Scalar::text(std::str::from_utf8(text).ok()?),
        (_, bytes) => Some(Scalar::Bytes(bytes.to_vec())),
    }
}

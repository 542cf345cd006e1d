//! Silent rot: a bit of the store's files turns over. It is found when the store is opened or checked, or nothing that was noted
//! has changed; and from another phone all of it comes back.
//!
//! `PITFACE_FLIPS=n` turns over n bits of each table and of the whole file instead of as many as in the normal run.

use crate::merge_support;

use merge_support::{Phone, folder, key, pit};
use pitface_core::merge::{DeviceId, Signer};
use pitface_core::store::{Store, StoreError};
use rusqlite::types::Value;
use rusqlite::{Connection, OpenFlags};
use std::collections::BTreeMap;
use std::hash::{BuildHasher, RandomState};
use std::path::Path;

/// What vouches for itself: edits, cells, devices, bundles, keys.
const NOTED: [(&str, &str); 5] = [
    ("log", "device, sequence, clock, record, field, predecessors, value"),
    ("cells", "record, field, device, sequence, clock, value, shown"),
    ("devices", "number, id, base, parent, first, last, clock, chain"),
    ("parts", "hash, kind, first, last, before, after, signer, bytes"),
    ("signers", "id, key"),
];
/// What nothing vouches for: see [`Store::check`].
const BESIDE: [(&str, &str); 5] = [
    ("log", "device, sequence, undoes"),
    ("devices", "number, own"),
    ("parts", "hash, line"),
    ("signers", "id, holder, accepted, ahead_ms, clock_wrong"),
    ("seen", "observer, line, sequence"),
];

type Rows = BTreeMap<String, Vec<Vec<Value>>>;

fn flips() -> u64 {
    std::env::var("PITFACE_FLIPS").ok().and_then(|flips| flips.parse().ok()).unwrap_or(60)
}

fn rows(path: &Path, tables: &[(&str, &str)]) -> Option<Rows> {
    let connection = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY).ok()?;
    let mut all = Rows::new();
    for (table, columns) in tables {
        // Without the indexes: in the order of the table itself.
        let mut statement = connection.prepare(&format!("SELECT {columns} FROM {table} NOT INDEXED")).ok()?;
        let count = statement.column_count();
        let read = statement.query_map([], |row| (0..count).map(|at| row.get(at)).collect()).ok()?;
        let mut read: Vec<Vec<Value>> = read.collect::<Result<_, _>>().ok()?;
        read.sort_by_cached_key(|row| format!("{row:?}"));
        all.insert((*table).to_owned(), read);
    }
    Some(all)
}

/// Ann's store, closed: her own edits, sealed but for the last, Ben's, and two versions of a name. And Ben's phone, who has all of it.
fn ann_and_ben() -> (Phone, Phone) {
    let (mut ann, mut ben) = Phone::pair();
    for name in ["Long Sedge", "Short Sedge"] {
        let field = ann.new_field(name);
        ben.take_in(&ann.hand_over());
        let place = pit(&mut ann, field, 300);
        for depth in 1..20 {
            ann.step(place, depth * 20);
        }
        ann.rename(field, "by Ann");
        ben.rename(field, "by Ben");
        for _ in 0..12 {
            pit(&mut ben, field, 200);
        }
        ann.take_in(&ben.hand_over());
    }
    let field = ann.store.fields().unwrap()[0].id;
    let place = pit(&mut ann, field, 250);
    ann.seal();
    for depth in 1..10 {
        ann.step(place, depth * 20);
    }
    ben.take_in(&ann.hand_over());
    // After the last seal.
    for depth in 10..20 {
        ann.step(place, depth * 20);
    }
    let now = ann.now();
    ann.store.undo(now).unwrap();
    (ann, ben)
}

/// How a flip was noticed.
#[derive(Debug)]
enum Noticed {
    Opening,
    Checking(String),
    /// Nothing that was noted has changed; the number of changed rows that nothing vouches for.
    Harmless(bool),
    Not(String),
}

fn notice(path: &Path, whole: &Rows, beside: &Rows) -> Noticed {
    let device = key(1).device();
    match Store::open_existing(path, device) {
        Err(_) => return Noticed::Opening,
        Ok(store) => {
            if let Err(error) = store.check() {
                assert!(!matches!(error, StoreError::File(_)), "{error}");
                return Noticed::Checking(error.to_string());
            }
        }
    }
    match rows(path, &NOTED) {
        Some(now) if now == *whole => Noticed::Harmless(rows(path, &BESIDE).as_ref() != Some(beside)),
        Some(now) => Noticed::Not(differences(whole, &now)),
        None => Noticed::Not("a table cannot be read".into()),
    }
}

fn differences(whole: &Rows, now: &Rows) -> String {
    let differs = |table: &&String| whole[*table] != now[*table];
    let table = whole.keys().find(differs).unwrap();
    let changed = now[table].iter().find(|row| !whole[table].contains(row));
    format!("{table}: {changed:?}")
}

/// Bits by chance of those pages (numbers from 1).
fn bits(pages: &[u64], page_bytes: u64, count: u64) -> Vec<u64> {
    let chance = RandomState::new();
    let bit = |number| {
        let page = pages[(chance.hash_one((0, number)) % pages.len() as u64) as usize] - 1;
        page * page_bytes * 8 + chance.hash_one((1, number)) % (page_bytes * 8)
    };
    (0..count).map(bit).collect()
}

/// The pages of a tree from its root down, without those that long values run over to (sqlite.org/fileformat2.html, 1.6).
fn pages_of(file: &[u8], page_bytes: u64, root: u64) -> Vec<u64> {
    let page = &file[((root - 1) * page_bytes) as usize..][..page_bytes as usize];
    let head = &page[if root == 1 { 100 } else { 0 }..];
    let short = |bytes: &[u8]| usize::from(u16::from_be_bytes([bytes[0], bytes[1]]));
    let child = |bytes: &[u8]| u64::from(u32::from_be_bytes([bytes[0], bytes[1], bytes[2], bytes[3]]));
    let mut pages = vec![root];
    if matches!(head[0], 2 | 5) {
        let cells = (0..short(&head[3..])).map(|at| child(&page[short(&head[12 + 2 * at..])..]));
        for child in cells.chain([child(&head[8..])]) {
            pages.extend(pages_of(file, page_bytes, child));
        }
    }
    pages
}

#[test]
fn a_bit_that_turned_over_in_the_file_is_found_or_harmless() {
    let (ann, _ben) = ann_and_ben();
    let (_folder, path) = ann.closed();
    let (whole, beside) = (rows(&path, &NOTED).unwrap(), rows(&path, &BESIDE).unwrap());
    let bytes = std::fs::read(&path).unwrap();
    let connection = Connection::open(&path).unwrap();
    let page_bytes: u64 =
        connection.query_row("PRAGMA page_size", [], |row| row.get::<_, i64>(0)).unwrap().cast_unsigned();
    let mut areas: BTreeMap<String, Vec<u64>> = BTreeMap::new();
    let mut statement =
        connection.prepare("SELECT name, rootpage FROM sqlite_schema WHERE rootpage > 0").unwrap();
    let mut found = statement.query([]).unwrap();
    while let Some(row) = found.next().unwrap() {
        let root: i64 = row.get(1).unwrap();
        areas.insert(row.get(0).unwrap(), pages_of(&bytes, page_bytes, root.cast_unsigned()));
    }
    drop(found);
    drop(statement);
    drop(connection);
    areas.insert("the whole file".into(), (1..=bytes.len() as u64 / page_bytes).collect());
    let place = folder();
    let copy = place.path().join("notes.pitface");
    let (mut not, mut named_wrongly, mut named, mut in_log) = (Vec::new(), Vec::new(), 0, 0);
    for (area, pages) in &areas {
        let (mut opening, mut checking, mut harmless, mut unvouched) = (0, 0, 0, 0);
        for bit in bits(pages, page_bytes, flips()) {
            let mut rotten = bytes.clone();
            rotten[(bit / 8) as usize] ^= 1 << (bit % 8);
            std::fs::write(&copy, &rotten).unwrap();
            let _ = std::fs::remove_file(place.path().join("notes.pitface-wal"));
            match notice(&copy, &whole, &beside) {
                Noticed::Opening => opening += 1,
                Noticed::Checking(told) => {
                    checking += 1;
                    std::fs::write(&copy, &rotten).unwrap();
                    if let Some(edits) = rows(&copy, &NOTED).and_then(|now| edits_that_changed(&whole, &now))
                    {
                        in_log += 1;
                        match names(&told, &edits) {
                            Some(true) => named += 1,
                            Some(false) => named_wrongly.push(format!("{told}, but {edits:?}")),
                            None => {}
                        }
                    }
                }
                Noticed::Harmless(changed) => {
                    harmless += 1;
                    unvouched += u64::from(changed);
                }
                Noticed::Not(what) => not.push(format!("{area}: {what}")),
            }
        }
        println!(
            "{area}: {} bits; found on opening {opening}, on checking {checking}; harmless {harmless}, {unvouched} of them in \
             what nothing vouches for",
            flips()
        );
    }
    println!(
        "of {in_log} flips that changed edits of the log alone, {named} were named with device and edits"
    );
    assert!(not.is_empty(), "{} not found: {:#?}", not.len(), &not[..not.len().min(8)]);
    assert!(named_wrongly.is_empty(), "{named_wrongly:#?}");
    assert!(named * 20 >= in_log * 19 && in_log > 0, "{named} of {in_log} were named");
}

#[test]
fn a_device_whose_row_cannot_be_right_is_told() {
    let (ann, _ben) = ann_and_ben();
    let (_folder, path) = ann.closed();
    let whole = std::fs::read(&path).unwrap();
    for rotten in ["first = 0", "first = -1", "last = first - 2", "parent = number", "parent = 9"] {
        std::fs::write(&path, &whole).unwrap();
        let connection = Connection::open(&path).unwrap();
        connection.pragma_update(None, "foreign_keys", false).unwrap();
        connection.execute(&format!("UPDATE devices SET {rotten} WHERE number = 2"), []).unwrap();
        drop(connection);
        let noticed = notice(&path, &Rows::new(), &Rows::new());
        assert!(matches!(noticed, Noticed::Opening | Noticed::Checking(_)), "{rotten}: {noticed:?}");
    }
}

/// Device and sequences of the edits that are not as before, if the log is what changed and can still be read.
fn edits_that_changed(whole: &Rows, now: &Rows) -> Option<Vec<(DeviceId, i64)>> {
    let only_log = whole.keys().all(|table| table == "log" || whole[table] == now[table]);
    let same_names =
        |rows: &Rows| rows["log"].iter().map(|row| (row[0].clone(), row[1].clone())).collect::<Vec<_>>();
    if !only_log || whole["log"] == now["log"] || same_names(whole) != same_names(now) {
        return None;
    }
    let device = |number: &Value| {
        let row = whole["devices"].iter().find(|row| row[0] == *number)?;
        match &row[2] {
            Value::Blob(base) => Some(DeviceId(base.as_slice().try_into().ok()?)),
            _ => None,
        }
    };
    let changed = now["log"].iter().filter(|row| !whole["log"].contains(row));
    let name = |row: &Vec<Value>| match row[1] {
        Value::Integer(sequence) => Some((device(&row[0])?, sequence)),
        _ => None,
    };
    changed.map(name).collect()
}

/// Returns whether a message names device and edits, and those.
fn names(told: &str, edits: &[(DeviceId, i64)]) -> Option<bool> {
    let (_, rest) = told.split_once("edits ")?;
    let mut words = rest.split(' ');
    let first: i64 = words.next()?.parse().ok()?;
    let last: i64 = words.nth(1)?.parse().ok()?;
    let device = words.nth(2)?;
    Some(edits.iter().any(|(changed, at)| (first..=last).contains(at) && device == changed.to_string()))
}

#[test]
fn what_rotted_comes_back_from_another_phone_and_cells_from_the_log() {
    let (mut ann, mut ben) = ann_and_ben();
    ben.take_in(&ann.hand_over());
    let digest = ann.store.digest().unwrap();
    assert_eq!(ben.store.digest().unwrap(), digest);
    let (_folder, path) = ann.closed();

    let rotten = folder();
    let copy = rotten.path().join("notes.pitface");
    std::fs::copy(&path, &copy).unwrap();
    let cell = Connection::open(&copy).unwrap();
    cell.execute("UPDATE cells SET value = x'6162' WHERE field = (SELECT max(field) FROM cells)", [])
        .unwrap();
    drop(cell);
    let mut store = Store::open_existing(&copy, key(1).device()).unwrap();
    assert!(store.check().unwrap_err().to_string().contains("rebuild mends it"));
    store.rebuild().unwrap();
    store.check().unwrap();
    assert_eq!(store.digest().unwrap(), digest);
    drop(store);

    // The log itself: a new store in its place, and all of it from Ben.
    let log = Connection::open(&copy).unwrap();
    log.execute_batch(
        "DROP TRIGGER log_is_never_changed; UPDATE log SET value = x'6162' WHERE sequence = 30;",
    )
    .unwrap();
    drop(log);
    let told = Store::open_existing(&copy, key(1).device()).unwrap().check().unwrap_err().to_string();
    assert!(told.contains("edits ") && told.contains(" of device "), "{told}");
    let mut anew = Phone::new(1);
    anew.trust(2);
    anew.take_in(&ben.hand_over());
    anew.store.check().unwrap();
    assert_eq!(anew.store.digest().unwrap(), digest);
}

#[test]
fn a_bundle_that_rotted_is_found_and_named() {
    let (ann, _ben) = ann_and_ben();
    let (_folder, path) = ann.closed();
    let parts = Connection::open(&path).unwrap();
    parts
        .execute(
            "UPDATE parts SET bytes = CAST(substr(bytes, 1, 99) || x'00' || substr(bytes, 101) AS BLOB)
                WHERE line = (SELECT number FROM devices WHERE id = ?1)",
            [key(2).device().0],
        )
        .unwrap();
    drop(parts);
    let told = Store::open_existing(&path, key(1).device()).unwrap().check().unwrap_err().to_string();
    assert!(told.contains("the bundle with edits 1 to"), "{told}");
    assert!(told.contains(&key(2).device().to_string()), "{told}");
}

/// As after a kill: the log beside the file is read when the store is opened, up to the first frame that does not fit. SQLite drops the rest
/// without a word. Whole saves after it give that away; the very last one cannot be told from one that a power cut tore.
#[test]
fn a_bit_that_turned_over_in_the_log_left_behind_is_found_or_harmless_but_for_the_last_save() {
    let (mut ann, _ben) = ann_and_ben();
    let field = ann.store.fields().unwrap()[0].id;
    let mut edits = Vec::new();
    for number in 0..12 {
        pit(&mut ann, field, 300 + number);
        edits.push(ann.store.check().unwrap().edits);
    }
    let digest = ann.store.digest().unwrap();
    let files = ann.bytes();
    let log = files.iter().find(|(name, _)| name.ends_with("-wal")).unwrap().1.clone();
    let last_save = edits[edits.len() - 1] - edits[edits.len() - 2];
    let (chance, place) = (RandomState::new(), folder());
    let (mut found, mut harmless, mut last, mut wrong) = (0, 0, 0, Vec::new());
    for number in 0..flips() * 2 {
        // Half of them in the last quarter.
        let begin = if number % 2 == 0 { 0 } else { log.len() as u64 * 6 };
        let bit = begin + chance.hash_one(number) % (log.len() as u64 * 8 - begin);
        for (name, bytes) in &files {
            let mut bytes = bytes.clone();
            if name.ends_with("-wal") {
                bytes[(bit / 8) as usize] ^= 1 << (bit % 8);
            }
            std::fs::write(place.path().join(name), bytes).unwrap();
        }
        let store = Store::open_existing(&place.path().join("notes.pitface"), key(1).device());
        match store.as_ref().map(|store| (store.check(), store.digest().unwrap())) {
            Err(_) | Ok((Err(_), _)) => found += 1,
            Ok((_, now)) if now == digest => harmless += 1,
            Ok((Ok(checked), _)) if checked.edits + last_save == edits[edits.len() - 1] => last += 1,
            Ok((Ok(checked), _)) => {
                wrong.push(format!("bit {bit}: {} edits left of {edits:?}", checked.edits));
            }
        }
    }
    println!(
        "{} bits of the log: {found} found, {harmless} harmless, {last} cost the last save unseen",
        flips() * 2
    );
    assert!(wrong.is_empty(), "{} not found: {:#?}", wrong.len(), &wrong[..wrong.len().min(5)]);
    assert!(found > 0);
}

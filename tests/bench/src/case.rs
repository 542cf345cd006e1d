//! What is measured, each beside its floor.

use crate::field::notes_json;
use crate::floor::Plain;
use crate::measure::interleaved;
use crate::table::{Bar, Row};
use pitface_core::answer::FieldAnswer;
use pitface_core::reading::{Table, read_pit, reference_faces};
use pitface_core::record::{ComesAway, FieldNotes, RecordId, notes};
use pitface_core::report::sheet;
use pitface_core::store::{DeviceId, Store};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use std::error::Error;
use std::hint::black_box;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// How much is measured.
pub struct Size {
    /// Pits in the large store.
    pub pits: usize,
    /// Rounds of a quick measurement; slow ones make a tenth.
    pub rounds: usize,
}

impl Size {
    /// As the bars are meant.
    pub const FULL: Self = Self { pits: 10_000, rounds: 1_000 };
    /// A quick look.
    pub const SHORT: Self = Self { pits: 1_000, rounds: 100 };
}

/// Pits of one field: of the one that is read, called and loaded, and of every field of the large store.
const FIELD_PITS: usize = 50;
const DEVICE: DeviceId = DeviceId([7; 16]);
/// The first moment of 2026, Unix milliseconds.
const NOW_MS: u64 = 1_767_225_600_000;

/// All rows, measured in `folder`.
pub fn all(folder: &Path, size: &Size) -> Result<Vec<Row>, Box<dyn Error>> {
    let mut large = Large::fill(folder, size.pits / FIELD_PITS)?;
    let mut rows = reading(&large, size);
    rows.extend(keeping(&mut large, size)?);
    rows.extend(opening(large, size)?);
    Ok(rows)
}

/// A store of many fields, and a plain database of as many cells.
struct Large {
    store: Store,
    path: PathBuf,
    plain: Plain,
    plain_path: PathBuf,
    /// The last field of the store, which is also the last in the plain database.
    notes: FieldNotes,
    pits: Range<u32>,
}

impl Large {
    fn fill(folder: &Path, fields: usize) -> Result<Self, Box<dyn Error>> {
        let (path, plain_path) = (folder.join("ours.pitface"), folder.join("plain.sqlite"));
        let mut store = Store::create_or_open(&path, DEVICE)?;
        let mut notes = sample(0)?;
        for number in 0..fields {
            notes = sample(number)?;
            store.save_notes(&notes, NOW_MS)?;
        }
        let cells = store.check()?.cells;
        let pits = u32::try_from(fields * FIELD_PITS)?;
        let plain = Plain::create(&plain_path, pits, u32::try_from(cells)?)?;
        Ok(Self { store, path, plain, plain_path, notes, pits: pits - FIELD_PITS as u32..pits })
    }
}

fn sample(number: usize) -> Result<FieldNotes, Box<dyn Error>> {
    read(number, &notes_json(number, FIELD_PITS))
}

/// A notes file with ids of its own, `number` setting those of two files apart.
pub fn read(number: usize, text: &str) -> Result<FieldNotes, Box<dyn Error>> {
    // Ids follow each other as they would when noted one after the other.
    let mut made = 0_u16;
    let read = notes::read(text, &mut || {
        made += 1;
        let mut random = [0; 10];
        random[..2].copy_from_slice(&made.to_be_bytes());
        RecordId::new(NOW_MS + number as u64, random)
    });
    read.map(|read| read.notes)
        .map_err(|faults| faults.iter().map(ToString::to_string).collect::<String>().into())
}

/// One pit and a whole field, read and called; beside it what SQLite takes to hand over as many cells.
fn reading(large: &Large, size: &Size) -> Vec<Row> {
    let Large { notes, plain, pits, .. } = large;
    let references = reference_faces(notes);
    let one_pit = interleaved(
        size.rounds,
        || drop(black_box(read_pit(black_box(&notes.pits[3]), &notes.field, &references, Table::standard()))),
        || drop(black_box(plain.select(pits.start..pits.start + 1))),
    );
    let whole_field = interleaved(
        size.rounds,
        || {
            let answer = FieldAnswer::of(black_box(notes).clone(), None);
            black_box((answer.readers(), answer.next(), answer.next_looks()));
        },
        || drop(black_box(plain.select(pits.clone()))),
    );
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    let page = interleaved(
        size.rounds / 10,
        || {
            let answer = FieldAnswer::of(black_box(notes).clone(), None);
            black_box(sheet(&words, &answer, &|_| None));
        },
        || drop(black_box(plain.select(pits.clone()))),
    );
    vec![
        Row {
            what: "reading one pit",
            floor: "plain SELECT of a pit's cells",
            measured: one_pit,
            bar: Bar::Within(Duration::from_micros(50)),
        },
        Row {
            what: "all that follows from a field of 50 pits",
            floor: "plain SELECT of the field's cells",
            measured: whole_field,
            bar: Bar::Within(Duration::from_millis(5)),
        },
        Row {
            what: "... and its sheet, without photos",
            floor: "plain SELECT of the field's cells",
            measured: page,
            bar: Bar::Within(Duration::from_millis(50)),
        },
    ]
}

/// A tap and a load. What fails is told once the measuring is done.
fn keeping(large: &mut Large, size: &Size) -> Result<Vec<Row>, Box<dyn Error>> {
    let Large { store, plain, notes, pits, .. } = large;
    let pit = notes.pits[1].id;
    let mut step = notes.pits[1].walk[0].clone();
    let mut now_ms = NOW_MS;
    let (mut tapped, mut inserted) = (Ok(()), Ok(()));
    let tap = interleaved(
        size.rounds / 2,
        || {
            now_ms += 1;
            step.comes_away = match step.comes_away {
                Some(ComesAway::Crumbs) => Some(ComesAway::RoundedLumps),
                _ => Some(ComesAway::Crumbs),
            };
            keep_first(&mut tapped, store.save_step(pit, &step, now_ms).map(drop));
        },
        || keep_first(&mut inserted, plain.insert()),
    );
    tapped?;
    inserted?;
    let (mut loaded, mut selected) = (Ok(()), Ok(()));
    let load = interleaved(
        size.rounds / 10,
        || keep_first(&mut loaded, store.load_notes(notes.field.id).map(|notes| drop(black_box(notes)))),
        || {
            let cells = plain.select(pits.clone());
            keep_first(&mut selected, cells.map(|cells| _ = black_box(cells)));
        },
    );
    loaded?;
    selected?;
    Ok(vec![
        Row {
            what: "one committed tap",
            floor: "plain INSERT of one row, FULL",
            measured: tap,
            bar: Bar::Times(1.5),
        },
        Row {
            what: "loading a field of 50 pits",
            floor: "plain SELECT of the field's cells",
            measured: load,
            bar: Bar::None,
        },
    ])
}

/// Opening the file until its fields can be listed.
fn opening(large: Large, size: &Size) -> Result<Vec<Row>, Box<dyn Error>> {
    let Large { store, path, plain, plain_path, .. } = large;
    drop((store, plain));
    let rounds = size.rounds / 20;
    let (mut opened, mut listed, mut plainly) = (Ok(()), Ok(()), Ok(()));
    let open = interleaved(
        rounds,
        || keep_first(&mut opened, Store::open_existing(&path, DEVICE).map(drop)),
        || keep_first(&mut plainly, Plain::open(&plain_path).map(drop)),
    );
    let open_and_list = interleaved(
        rounds,
        || {
            let fields = Store::open_existing(&path, DEVICE).and_then(|store| store.fields());
            keep_first(&mut listed, fields.map(|fields| drop(black_box(fields))));
        },
        || keep_first(&mut plainly, Plain::open(&plain_path).map(drop)),
    );
    opened?;
    listed?;
    plainly?;
    let row = |what, measured| Row {
        what,
        floor: "plain open and SELECT of one row",
        measured,
        bar: Bar::Within(Duration::from_millis(50)),
    };
    Ok(vec![row("opening the large store", open), row("... and listing its fields", open_and_list)])
}

/// Keeps the first error of many rounds.
fn keep_first<E>(kept: &mut Result<(), E>, now: Result<(), E>) {
    if kept.is_ok() {
        *kept = now;
    }
}

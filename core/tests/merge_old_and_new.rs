//! Builds of different age: what a newer one wrote goes through an older one and comes out as it was, and what an older
//! one cannot read it keeps until it can.

use crate::merge_forge;
use crate::merge_support;

use ciborium::Value;
use merge_forge::{Forged, cbor, file, with_version};
use merge_support::{Phone, key, pit};
use pitface_core::merge::{
    Bundle, Chain, Content, Damage, Edit, EditName, Header, Part, PartKind, Predecessor, Signer, read_file,
    seal,
};
use pitface_core::record::{PlaceKind, RecordId};
use pitface_core::store::{Cell, Kind, NotShown, TakenIn, WhyNotShown};
use rusqlite::{Connection, params};
use std::path::PathBuf;
use tempfile::TempDir;

/// Cells that this version does not know: one among those of a field, and one far off.
const NEW_OF_FIELD: u16 = 190;
const NEW_OF_PIT: u16 = 64_000;
const COMES_AWAY: u16 = 301;
const PLACE: u16 = 200;

fn header(first: u64, before: Chain) -> Header {
    Header {
        device: key(1).device(),
        first,
        before,
        witness: Vec::new(),
        seen: Vec::new(),
        written_by: "a later version".to_owned(),
        sealed_ms: 1_760_000_500_000,
        ahead_ms: None,
        holder: String::new(),
        key: [0; 32],
        last: 0,
        after: before,
        sections: Vec::new(),
    }
}

fn bundles(file: &[u8]) -> Vec<Bundle> {
    let parts = read_file(file).unwrap();
    let edits = parts.iter().filter(|part| part.kind == PartKind::Edits);
    edits.map(|part| Bundle::read(part.content).unwrap()).collect()
}

/// A field with a pit as a newer build notes it: with cells, a code and a kind of record that this one does not know.
struct Newer {
    field: RecordId,
    edits: Vec<Edit>,
}

impl Newer {
    fn noted() -> Self {
        let mut ann = Phone::new(1);
        let field = ann.new_field("Long Sedge");
        pit(&mut ann, field, 300);
        let mut edits = bundles(&ann.hand_over()).remove(0).edits;
        for edit in &mut edits {
            if edit.field == COMES_AWAY {
                edit.content = Content::Value(cbor(&250.into()));
            }
        }
        let kind = |edit: &&Edit, kind: u8| {
            edit.field == Cell::KIND.number() && edit.content == Content::Value(cbor(&kind.into()))
        };
        let of = |number: u8| edits.iter().find(|edit| kind(edit, number)).unwrap().record;
        let (of_field, of_pit) = (of(1), of(2));
        let hangs = edits.iter().find(|edit| edit.record == of_pit && edit.field == Cell::PARENT.number());
        let hangs = hangs.unwrap().content.clone();
        let clock = edits.last().unwrap().clock;
        let new_record = [1, 0x99, 0, 0, 0, 0, 0x70, 0, 0x80, 0, 0, 0, 0, 0, 0, 77];
        let new = |record, field, content| Edit { clock, record, field, predecessors: Vec::new(), content };
        let value = |value: Value| Content::Value(cbor(&value));
        // −0.0 and the smallest number above 0, in eight bytes where four would do too: kept as they are.
        let double =
            Content::Value([vec![0x82, 0xfb, 0x80], vec![0; 7], vec![0xfb], vec![0; 7], vec![1]].concat());
        let text = Value::Map(vec![("u\u{308}\0\u{202e}".into(), Value::Tag(4_711, Box::new(Value::Null)))]);
        edits.extend([
            new(of_field, NEW_OF_FIELD, value(text)),
            new(of_pit, NEW_OF_PIT, double),
            new(new_record, Cell::KIND.number(), value(77.into())),
            new(new_record, Cell::PARENT.number(), hangs),
            new(new_record, 7_700, value("what the new kind of record says".into())),
        ]);
        Self { field, edits }
    }

    fn part(&self) -> Vec<u8> {
        seal(&key(1), header(1, Chain::start(key(1).device())), &self.edits).unwrap()
    }

    /// Another edit of the new cell of the field.
    fn goes_on(&self) -> Vec<u8> {
        self.says_anew(NEW_OF_FIELD, "said anew")
    }

    /// Another edit of the first cell with a number.
    fn says_anew(&self, field: u16, value: &str) -> Vec<u8> {
        let bundle = bundles(&file(&[self.part()])).remove(0);
        let at = self.edits.iter().position(|edit| edit.field == field).unwrap();
        let name = EditName { device: key(1).device(), sequence: at as u64 + 1 };
        let edit = Edit {
            clock: self.edits.last().unwrap().clock + (1 << 16),
            predecessors: vec![Predecessor { name, line: 0 }],
            content: Content::Value(cbor(&value.into())),
            ..self.edits[at].clone()
        };
        seal(&key(1), header(bundle.header.last + 1, bundle.header.after), &[edit]).unwrap()
    }
}

/// What a newer build wrote, edited by an older one, reaches a third as it was.
#[test]
fn new_cells_go_through_an_older_build_bit_by_bit() {
    let newer = Newer::noted();
    let part = newer.part();
    let (mut old, mut third) = (Phone::new(2), Phone::new(3));
    for phone in [&mut old, &mut third] {
        phone.trust(1);
        phone.trust(2);
    }
    assert_eq!(old.take_in(&file(std::slice::from_ref(&part))).edits, newer.edits.len() as u64);
    old.store.check().unwrap();

    // The older one sees the rest, and saves the notes as a whole.
    let mut notes = old.store.load_notes(newer.field).unwrap();
    assert_eq!((notes.pits.len(), notes.pits[0].walk.len()), (1, 1));
    assert_eq!(notes.pits[0].walk[0].comes_away, None, "a code of later times");
    notes.field.name = "Sedge".to_owned();
    notes.pits[0].walk[0].to_mm = 250;
    let now = old.now();
    old.store.save_notes(&notes, now).unwrap();
    old.store.rebuild().unwrap();

    let handed_over = old.hand_over();
    let parts = read_file(&handed_over).unwrap();
    assert!(parts.iter().any(|found| found.bytes == part), "handed on as it came");
    let of_old: Vec<Edit> = bundles(&handed_over)
        .into_iter()
        .filter(|bundle| bundle.header.device == old.id())
        .flat_map(|bundle| bundle.edits)
        .collect();
    assert!(!of_old.is_empty());
    for edit in &of_old {
        assert!(![NEW_OF_FIELD, NEW_OF_PIT, COMES_AWAY, 7_700].contains(&edit.field), "{edit:?}");
    }

    // A newer build goes on from there; its cells are those of its own last edits.
    third.take_in(&handed_over);
    let onward = file(&[newer.goes_on()]);
    for phone in [&mut old, &mut third] {
        assert_eq!(phone.take_in(&onward).edits, 1);
        phone.store.check().unwrap();
        assert_eq!(phone.store.conflicts().unwrap(), []);
    }
    assert_eq!(third.store.digest().unwrap(), old.store.digest().unwrap());
    let there = bundles(&third.hand_over());
    let of_newer: Vec<Edit> = there
        .into_iter()
        .filter(|bundle| bundle.header.device == key(1).device())
        .flat_map(|bundle| bundle.edits)
        .collect();
    assert_eq!(of_newer[..newer.edits.len()], newer.edits);
}

/// A kind of place that only a newer build knows: the older one leaves the pit out, tells so, works on beside it, and hands it on.
#[test]
fn a_pit_that_an_older_build_cannot_show_goes_through_it() {
    let mut newer = Newer::noted();
    let place = newer.edits.iter().position(|edit| edit.field == PLACE).unwrap();
    newer.edits[place].content = Content::Value(cbor(&"under_the_moon".into()));
    let hidden = RecordId::from_bytes(newer.edits[place].record).unwrap();
    let part = newer.part();
    let (mut old, mut third) = (Phone::new(2), Phone::new(3));
    Phone::trust_all(&mut [&mut old, &mut third]);
    old.trust(1);
    third.trust(1);
    old.take_in(&file(std::slice::from_ref(&part)));
    let mut notes = old.store.load_notes(newer.field).unwrap();
    assert_eq!((notes.field.name.as_str(), notes.pits.len()), ("Long Sedge", 0));
    let told = old.store.not_shown(newer.field).unwrap();
    let why = WhyNotShown::NewValue(Cell::known(PLACE).unwrap());
    assert!(told.contains(&NotShown { record: hidden, kind: Some(Kind::Pit), why }), "{told:?}");
    let by_kind: Vec<_> = NotShown::by_kind(&told).into_iter().collect();
    assert_eq!(by_kind, [(None, 1), (Some(Kind::Pit), 1)], "and a record of a kind nobody here knows");

    let beside = pit(&mut old, newer.field, 400);
    notes.field.name = "Sedge".to_owned();
    let now = old.now();
    old.store.save_notes(&notes, now).unwrap();
    old.store.check().unwrap();
    let handed_over = old.hand_over();
    for bundle in bundles(&handed_over).iter().filter(|bundle| bundle.header.device == old.id()) {
        assert!(bundle.edits.iter().all(|edit| edit.record != *hidden.as_bytes()));
    }
    third.take_in(&handed_over);
    assert_eq!(third.store.not_shown(newer.field).unwrap(), told);
    assert!(read_file(&third.hand_over()).unwrap().iter().any(|found| found.bytes == part), "as it came");

    // Where the value means something, the pit is there with all that hangs on it.
    let known = file(&[newer.says_anew(PLACE, PlaceKind::Headland.code())]);
    for phone in [&mut old, &mut third] {
        phone.take_in(&known);
        assert_eq!(phone.store.conflicts().unwrap(), []);
        let notes = phone.store.load_notes(newer.field).unwrap();
        let pits: Vec<_> = notes.pits.iter().map(|pit| (pit.id, pit.walk.len())).collect();
        assert_eq!(pits, [(hidden, 1), (beside, 1)]);
    }
    assert_eq!(third.store.digest().unwrap(), old.store.digest().unwrap());
}

/// Two newer builds that disagree about a cell nobody here knows: both stay.
#[test]
fn versions_of_an_unknown_cell_both_stay() {
    let newer = Newer::noted();
    let mut old = Phone::new(2);
    old.trust(1);
    old.trust(4);
    old.take_in(&file(&[newer.part(), newer.goes_on()]));
    let at = newer.edits.iter().position(|edit| edit.field == NEW_OF_FIELD).unwrap();
    let bundle = bundles(&file(&[newer.part()])).remove(0);
    let witness = pitface_core::merge::Witness {
        name: EditName { device: key(1).device(), sequence: at as u64 + 1 },
        chain: bundle.chains[at],
    };
    let edit = Edit {
        predecessors: vec![Predecessor { name: witness.name, line: 1 }],
        content: Content::Value(cbor(&"said otherwise".into())),
        ..newer.edits[at].clone()
    };
    let device = key(4).device();
    let header = Header { device, witness: vec![witness], ..header(1, Chain::start(device)) };
    assert_eq!(old.take_in(&file(&[seal(&key(4), header, &[edit]).unwrap()])).edits, 1);
    let conflicts = old.store.conflicts().unwrap();
    assert_eq!(conflicts.len(), 1);
    assert_eq!((conflicts[0].cell.number(), conflicts[0].versions.len()), (NEW_OF_FIELD, 2));
}

/// A bundle with a section that need not be known is handed on byte for byte. A part that nobody signs is not.
#[test]
fn what_need_not_be_known_is_handed_on() {
    let path =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors/bundles/version_1/newer.pitb");
    let came = std::fs::read(path).unwrap();
    let mut phones = [Phone::new(2), Phone::new(3)];
    let mut travelling = came.clone();
    for phone in &mut phones {
        phone.trust(1);
        phone.trust(2);
        let taken = phone.take_in(&travelling);
        assert!(!taken.held && taken.edits >= 2, "{taken:?}");
        phone.store.check().unwrap();
        travelling = phone.hand_over();
        let parts: Vec<&[u8]> = read_file(&travelling).unwrap().into_iter().map(|part| part.bytes).collect();
        for part in read_file(&came).unwrap() {
            assert_eq!(part.bytes[5], 1, "of a higher minor version");
            assert_eq!(parts.contains(&part.bytes), part.kind == PartKind::Edits, "{:?}", part.kind);
        }
    }
}

/// Files that this version must leave alone.
fn unreadable() -> Vec<(&'static str, Vec<u8>)> {
    let good = seal(&key(1), header(1, Chain::start(key(1).device())), &Newer::noted().edits).unwrap();
    let forged = Forged::of(Part::first_of(&good).unwrap().0.content, 1);
    let listed = forged.listed()[0].as_array().unwrap().clone();
    let raw = listed[4].as_integer().unwrap().try_into().unwrap();
    let edits = forged.sections.clone();
    let critical =
        forged.clone().with_sections(&[(1, 1, 1, raw, edits.clone()), (9, 1, 0, 3, b"new".to_vec())]).part();
    let codec = forged.with_sections(&[(1, 1, 2, raw, edits)]).part();
    vec![
        ("a critical section", file(&[good.clone(), critical])),
        ("another way of packing", file(&[codec])),
        ("a kind of part", file(&[good.clone(), Part::write(PartKind::Other(0x7fff), b"new")])),
        ("a major version", with_version(&good, 2, 0)),
    ]
}

#[test]
fn what_must_be_known_is_kept_as_it_is() {
    let mut phone = Phone::new(2);
    phone.trust(1);
    phone.new_field("Elm Field");
    let before = phone.store.digest().unwrap();
    for (what, file) in unreadable() {
        for _ in 0..2 {
            let taken = phone.take_in(&file);
            assert_eq!(taken, TakenIn { held: true, ..TakenIn::default() }, "{what}");
        }
    }
    assert_eq!(phone.store.digest().unwrap(), before);
    let now = phone.now();
    assert_eq!(phone.store.take_in_held(now).unwrap(), [], "this version has not become newer");
    phone.store.check().unwrap();
    let mut files: Vec<Vec<u8>> = unreadable().into_iter().map(|(_, file)| file).collect();
    files.sort();
    assert_eq!(held(&connection(&phone).1), files, "each once, as it came");
}

/// What rots while it waits is told, and taking it in again mends it.
#[test]
fn a_file_that_waits_is_checked_too() {
    let mut phone = Phone::new(2);
    phone.trust(1);
    let (_, waits) = unreadable().remove(0);
    phone.take_in(&waits);
    let (folder, connection) = connection(&phone);
    let rotten = [&waits[..waits.len() - 1], &[0]].concat();
    connection.execute("UPDATE held SET bytes = ?1", [rotten]).unwrap();
    drop(connection);
    let path = folder.path().join("notes.pitface");
    let mut store = pitface_core::store::Store::open_existing(&path, phone.id()).unwrap();
    let told = store.check().unwrap_err().to_string();
    assert!(told.contains("a file that waits for an update is not as it came"), "{told}");
    assert!(store.take_in(&waits, 1_770_000_000_000).unwrap().held);
    store.check().unwrap();
}

/// After an update, as if the file had been of a later version until now; a damaged one does not stop the others.
#[test]
fn what_was_kept_is_taken_in_after_an_update() {
    let mut phone = Phone::new(2);
    phone.trust(1);
    let good = file(&[Newer::noted().part()]);
    let (folder, connection) = connection(&phone);
    for (hash, bytes) in [([0_u8; 32], &good[..good.len() - 1]), ([1; 32], good.as_slice())] {
        connection.execute("INSERT INTO held (hash, bytes) VALUES (?1, ?2)", params![hash, bytes]).unwrap();
    }
    drop(connection);
    let path = folder.path().join("notes.pitface");
    let mut store = pitface_core::store::Store::open_existing(&path, phone.id()).unwrap();
    let taken = store.take_in_held(1_770_000_000_000).unwrap();
    assert_eq!(taken.len(), 1);
    assert_eq!(taken[0].edits, Newer::noted().edits.len() as u64);
    assert_eq!(store.fields().unwrap().len(), 1);
    assert_eq!(store.take_in_held(1_770_000_000_000).unwrap(), []);
    drop(store);
    assert!(held(&Connection::open(path).unwrap()).is_empty());
}

/// A copy of a phone's database.
fn connection(phone: &Phone) -> (TempDir, Connection) {
    let folder = tempfile::tempdir().unwrap();
    for (name, bytes) in phone.bytes() {
        std::fs::write(folder.path().join(name), bytes).unwrap();
    }
    let connection = Connection::open(folder.path().join("notes.pitface")).unwrap();
    (folder, connection)
}

fn held(connection: &Connection) -> Vec<Vec<u8>> {
    let mut statement = connection.prepare("SELECT bytes FROM held ORDER BY bytes").unwrap();
    let rows = statement.query_map([], |row| row.get(0)).unwrap();
    rows.collect::<Result<_, _>>().unwrap()
}

/// The newest of this version are told from damage even where both could be said.
#[test]
fn a_damaged_file_of_a_later_version_is_damaged() {
    for (what, mut file) in unreadable() {
        let middle = file.len() / 2;
        file[middle] ^= 1;
        let read = read_file(&file).and_then(|parts| {
            parts
                .iter()
                .filter(|part| part.kind == PartKind::Edits)
                .try_for_each(|part| Bundle::read(part.content).map(drop))
        });
        assert!(!matches!(read, Err(Damage::Newer(_))) && read.is_err(), "{what}: {read:?}");
    }
}

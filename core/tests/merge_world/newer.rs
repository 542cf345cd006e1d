//! What a newer build writes: cells, codes, kinds, sections and parts that this version does not know. It has a key of its own, signs
//! its edits by hand, and takes them in where it writes them.

use crate::merge_forge::{Forged, cbor, file, with_version};
use crate::merge_support::{Phone, key};
use ciborium::Value;
use pitface_core::merge::{
    Bundle, Chain, Content, DeviceId, Edit, EditName, Header, Part, PartKind, Predecessor, Signer, Witness,
    read_file, seal,
};
use pitface_core::record::{PlaceKind, RecordId};
use pitface_core::store::{Cell, Kind, WhyNotShown};
use std::collections::{BTreeMap, BTreeSet};

/// Cells that this version does not know, and known ones in which it finds what it does not know.
const NEW_OF_FIELD: u16 = 190;
const NEW_OF_PIT: u16 = 64_000;
const NAME: u16 = 100;
const PLACE: u16 = 200;
const STEP_TO: u16 = 300;
/// A kind of record that this version does not know, and its cell.
const NEW_KIND: u8 = 77;
const NEW_OF_KIND: u16 = 7_700;
/// A section and a part that it does not know.
const NEW_SECTION: u16 = 9;
const NEW_PART: u16 = 0x8004;

/// What a newer build does.
#[derive(Debug, Clone, Copy)]
pub enum New {
    /// A new cell of a field.
    OfField,
    /// A new cell of a pit.
    OfPit,
    /// A pit in a place that is new.
    Place,
    /// The depth of a step, said in another way.
    Depth,
    /// The name of a field, said in another way.
    Name,
    /// A record of a new kind in a field.
    Kind,
    /// What is not shown is said as it was once.
    Known,
}

/// How a bundle of a newer build is packed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Packed {
    Plain,
    /// With a section and a part that need not be known.
    WithMore,
    /// With a section that has to be known.
    Critical,
}

/// The writer in a newer build: its key, and its line of edits as it goes on here.
#[derive(Clone)]
pub struct Writer {
    seed: u8,
    chains: Vec<Chain>,
}

/// What was written.
pub struct Written {
    /// The file as a newer build reads it.
    pub file: Vec<u8>,
    /// The part with the edits, and as an older build gets it if that is another one.
    pub part: Vec<u8>,
    pub critical: Option<Vec<u8>>,
    /// What has to be found in the end, as texts of [`super::texts`] and parts of [`parts`] are.
    pub names: BTreeSet<String>,
}

/// A record, the number of a cell and what is put there.
type NewCell = ([u8; 16], u16, Vec<u8>);

/// An edit that is there: its chain names it.
struct There {
    name: EditName,
    edit: Edit,
    predecessors: Vec<Chain>,
}

impl Writer {
    pub fn new(seed: u8) -> Self {
        Self { seed, chains: Vec::new() }
    }

    fn device(&self) -> DeviceId {
        key(self.seed).device()
    }

    /// Writes something new into a field: what is asked for if there is where to; `number` makes it another than all others.
    pub fn write(
        &mut self,
        phone: &mut Phone,
        field: RecordId,
        new: New,
        packed: Packed,
        number: u64,
    ) -> Option<Written> {
        let cells = Self::cells(phone, field, new, number)
            .or_else(|| Self::cells(phone, field, New::OfField, number))?;
        let there = there(&phone.hand_over());
        let latest = there.values().map(|there| there.edit.clock).max().unwrap_or(0);
        let clock = latest.max(phone.now() << 16) + 1;
        let mut witness: Vec<Witness> = Vec::new();
        let mut edits = Vec::new();
        for (record, field, value) in cells {
            let mut predecessors: Vec<Predecessor> = heads(&there, record, field)
                .into_iter()
                .map(|(name, chain)| Predecessor { name, line: self.line(name, chain, &mut witness) })
                .collect();
            predecessors.sort_unstable();
            edits.push(Edit { clock, record, field, predecessors, content: Content::Value(value) });
        }
        Some(self.pack(&edits, witness, packed, number))
    }

    /// The number of the line that an edit is in; 0 = that of this writer.
    fn line(&self, name: EditName, chain: Chain, witness: &mut Vec<Witness>) -> u32 {
        let own = name.device == self.device() && self.chains.get(name.sequence as usize - 1) == Some(&chain);
        if own {
            return 0;
        }
        witness.push(Witness { name, chain });
        witness.len() as u32
    }

    /// The cells that are written.
    fn cells(phone: &mut Phone, field: RecordId, new: New, number: u64) -> Option<Vec<NewCell>> {
        let notes = phone.store.load_notes(field).unwrap();
        let of_field = *field.as_bytes();
        let pit = notes.pits.first().map(|pit| *pit.id.as_bytes());
        let step = notes.pits.iter().flat_map(|pit| &pit.walk).next().map(|step| *step.id.as_bytes());
        // −0.0 in eight bytes where two would do: kept as it is.
        let double = [vec![0x82, 0xfb, 0x80], vec![0; 7], cbor(&number.into())].concat();
        let text = |what: &str| cbor(&format!("{what} {number}").into());
        Some(match new {
            New::OfField => {
                vec![(of_field, NEW_OF_FIELD, double), (of_field, NEW_OF_FIELD + 1, text("said"))]
            }
            New::OfPit => vec![(pit?, NEW_OF_PIT, text("of a pit"))],
            New::Place => vec![(pit?, PLACE, text("place")), (pit?, NEW_OF_PIT, double)],
            New::Depth => vec![(step?, STEP_TO, double)],
            New::Name => vec![(of_field, NAME, cbor(&Value::Array(vec![number.into(), "name".into()])))],
            New::Kind => {
                let record = *phone.new_id().as_bytes();
                let hangs = vec![Value::Bytes(of_field.to_vec()), Value::from(NEW_KIND), Value::from(number)];
                vec![
                    (record, Cell::KIND.number(), cbor(&NEW_KIND.into())),
                    (record, Cell::PARENT.number(), cbor(&Value::Array(hangs))),
                    (record, NEW_OF_KIND, text("of a kind")),
                ]
            }
            New::Known => {
                let hidden = phone.store.not_shown(field).unwrap();
                let place = WhyNotShown::NewValue(Cell::known(PLACE).unwrap());
                let pit = hidden.iter().find(|one| one.kind == Some(Kind::Pit) && one.why == place)?;
                vec![(*pit.record.as_bytes(), PLACE, cbor(&PlaceKind::Headland.code().into()))]
            }
        })
    }

    /// Seals edits and goes on behind them.
    fn pack(&mut self, edits: &[Edit], witness: Vec<Witness>, packed: Packed, number: u64) -> Written {
        let device = self.device();
        let before = self.chains.last().copied().unwrap_or_else(|| Chain::start(device));
        let first = self.chains.len() as u64 + 1;
        let header = Header {
            device,
            first,
            before,
            witness,
            seen: Vec::new(),
            written_by: "a later version".to_owned(),
            sealed_ms: 1_760_000_500_000,
            ahead_ms: None,
            holder: String::new(),
            key: [0; 32],
            last: 0,
            after: before,
            sections: Vec::new(),
        };
        let plain = seal(&key(self.seed), header, edits).unwrap();
        let content = Part::first_of(&plain).unwrap().0.content;
        self.chains.extend(Bundle::read(content).unwrap().chains);
        let more = |flags| {
            let forged = Forged::of(content, self.seed);
            let raw = forged.listed()[0].as_array().unwrap()[4].as_integer().unwrap().try_into().unwrap();
            let sections = forged.sections.clone();
            let new = cbor(&number.into());
            forged.with_sections(&[(1, 1, 1, raw, sections), (NEW_SECTION, flags, 0, new.len() as u64, new)])
        };
        let mut parts = vec![plain.clone()];
        if packed == Packed::WithMore {
            parts = vec![
                with_version(&more(0).part(), 1, 1),
                Part::write(PartKind::Other(NEW_PART), &cbor(&number.into())),
            ];
        }
        let mut names: BTreeSet<String> = self::parts(&file(&parts));
        names.extend(edits.iter().map(|edit| super::text(&edit.content).unwrap()));
        let critical = (packed == Packed::Critical).then(|| with_version(&more(1).part(), 1, 1));
        Written { file: file(&parts), part: parts.remove(0), critical, names }
    }
}

/// All edits of a file, by their chains.
fn there(file: &[u8]) -> BTreeMap<Chain, There> {
    let parts = read_file(file).unwrap();
    let bundles: Vec<Bundle> = parts
        .iter()
        .filter(|part| part.kind == PartKind::Edits)
        .map(|part| Bundle::read(part.content).unwrap())
        .collect();
    let before: BTreeMap<Chain, Chain> = bundles
        .iter()
        .flat_map(|bundle| {
            let before = std::iter::once(bundle.header.before).chain(bundle.chains.iter().copied());
            bundle.chains.iter().copied().zip(before)
        })
        .collect();
    // What is named may be in none of these bundles: then it waits, as they do.
    let back = |from: Chain, steps: u64| (0..steps).try_fold(from, |at, _| before.get(&at).copied());
    let mut there = BTreeMap::new();
    for bundle in bundles {
        let Header { device, first, witness, .. } = bundle.header;
        for ((edit, chain), sequence) in bundle.edits.into_iter().zip(bundle.chains).zip(first..) {
            let named = |predecessor: &Predecessor| match predecessor.line.checked_sub(1) {
                None => back(chain, sequence - predecessor.name.sequence),
                Some(at) => {
                    let Witness { name, chain } = witness[at as usize];
                    back(chain, name.sequence - predecessor.name.sequence)
                }
            };
            let predecessors = edit.predecessors.iter().filter_map(named).collect();
            there.insert(chain, There { name: EditName { device, sequence }, edit, predecessors });
        }
    }
    there
}

/// The edits of a cell that no other has replaced.
fn heads(there: &BTreeMap<Chain, There>, record: [u8; 16], field: u16) -> Vec<(EditName, Chain)> {
    let of_cell = || there.iter().filter(|(_, one)| one.edit.record == record && one.edit.field == field);
    let replaced: BTreeSet<Chain> = of_cell().flat_map(|(_, one)| one.predecessors.iter().copied()).collect();
    of_cell().filter(|(chain, _)| !replaced.contains(chain)).map(|(chain, one)| (one.name, *chain)).collect()
}

/// The parts of a file that have to be handed on byte for byte: those that newer builds signed.
pub fn parts(file: &[u8]) -> BTreeSet<String> {
    let parts = read_file(file).unwrap();
    let is_newer = |part: &&Part| match part.kind {
        PartKind::Edits => Header::of_content(part.content).unwrap().written_by == "a later version",
        _ => false,
    };
    parts.iter().filter(is_newer).map(|part| format!("part {:02x?}", part.hash)).collect()
}

/// Parts that an older build has to leave alone, each beside what a newer one makes of it.
#[derive(Default)]
pub struct Critical(Vec<(Vec<u8>, Vec<u8>)>);

impl Critical {
    pub fn add(&mut self, plain: Vec<u8>, critical: Vec<u8>) {
        self.0.push((plain, critical));
    }

    /// A file as a newer build hands it over.
    pub fn packed(&self, file: &[u8]) -> Vec<u8> {
        self.exchanged(file, |(plain, critical)| (plain, critical))
    }

    /// A file as a newer build reads it.
    pub fn understood(&self, file: &[u8]) -> Vec<u8> {
        self.exchanged(file, |(plain, critical)| (critical, plain))
    }

    fn exchanged<'a>(
        &'a self,
        bytes: &'a [u8],
        which: impl Fn(&'a (Vec<u8>, Vec<u8>)) -> (&'a Vec<u8>, &'a Vec<u8>),
    ) -> Vec<u8> {
        if self.0.is_empty() {
            return bytes.to_vec();
        }
        let other = |part: &'a [u8]| {
            let found = self.0.iter().map(&which).find(|(from, _)| from.as_slice() == part);
            found.map_or(part, |(_, to)| to.as_slice())
        };
        let parts: Vec<&[u8]> = read_file(bytes).unwrap().into_iter().map(|part| other(part.bytes)).collect();
        file(&parts)
    }
}

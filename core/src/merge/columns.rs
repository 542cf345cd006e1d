//! Edits as columns: what is alike lies together, so that it packs closely.

use super::varint::{Reader, put, put_signed};
use super::{Content, Damage, DeviceId, Edit, EditName, Predecessor, Witness, cbor};
use ciborium::Value;
use std::collections::HashMap;

/// Most edits in one bundle.
pub const MOST_EDITS: u64 = 1 << 18;
/// Most predecessors in one bundle, so that a small file cannot fill the memory.
pub const MOST_PREDECESSORS: u64 = 1 << 21;

/// Where edits stand: whose, from which sequence, and what their predecessors are told against.
#[derive(Debug, Clone, Copy)]
pub struct Standing<'a> {
    /// Whose edits.
    pub device: DeviceId,
    /// Sequence of the first.
    pub first: u64,
    /// The other devices that predecessors name.
    pub witness: &'a [Witness],
}

/// Packs edits; `None` if a predecessor is neither an earlier one of this device nor covered by the witness, or they do not
/// ascend.
pub fn write(standing: Standing, edits: &[Edit]) -> Option<Vec<u8>> {
    let mut columns = [const { Vec::new() }; COLUMNS];
    let [
        record_times,
        rest,
        save_times,
        counters,
        of_save,
        of_record,
        fields,
        counts,
        lines,
        distances,
        values,
    ] = &mut columns;
    let mut last_ms = 0;
    for save in edits.chunk_by(|edit, next| edit.clock == next.clock) {
        let (time_ms, counter) = (milliseconds(save[0].clock), save[0].clock & COUNTER);
        put_signed(save_times, time_ms - last_ms);
        put(counters, counter);
        put(of_save, save.len() as u64);
        last_ms = time_ms;
    }
    let (mut places, mut records) = (HashMap::new(), Vec::new());
    let mut last_place = 0_u64;
    for (edit, sequence) in edits.iter().zip(standing.first..) {
        let place = *places.entry(edit.record).or_insert_with(|| {
            put_signed(record_times, born_ms(&edit.record) - milliseconds(edit.clock));
            records.push(edit.record);
            (records.len() - 1) as u64
        });
        put_signed(of_record, place.wrapping_sub(last_place).cast_signed());
        last_place = place;
        put(fields, edit.field.into());
        put(counts, edit.predecessors.len() as u64);
        if !edit.predecessors.is_sorted_by(|a, b| a < b) {
            return None;
        }
        for predecessor in &edit.predecessors {
            put(lines, predecessor.line.into());
            put(distances, standing.distance(*predecessor, sequence)?);
        }
    }
    // What is alike in all ids lies apart from what is chance.
    rest.extend(records.iter().map(|record| record[6]));
    rest.extend(records.iter().map(|record| record[8]));
    rest.extend(records.iter().flat_map(chance_of));
    for at in by_field(edits.iter().map(|edit| edit.field)) {
        match &edits[at].content {
            Content::Value(value) => {
                put(values, value.len() as u64);
                values.extend(value);
            }
            Content::Redacted(hash) => {
                put(values, 0);
                values.extend(hash);
            }
        }
    }
    let mut bytes = Vec::new();
    // Writing to memory does not fail.
    let _ = ciborium::into_writer(&Value::Array(columns.map(Value::Bytes).to_vec()), &mut bytes);
    Some(bytes)
}

/// Unpacks `count` edits.
///
/// # Errors
/// If the columns do not say exactly that many.
pub fn read(standing: Standing, count: u64, bytes: &[u8]) -> Result<Vec<Edit>, Damage> {
    if count > MOST_EDITS {
        return Err(Damage::TooLarge("too many edits in one part"));
    }
    let [
        mut record_times,
        rest,
        save_times,
        counters,
        of_save,
        mut of_record,
        mut fields,
        mut counts,
        mut lines,
        mut distances,
        mut values,
    ] = split(bytes).ok_or(BROKEN)?.map(Reader);
    let mut edits = saves([save_times, counters, of_save], count)?;
    let mut records = Vec::new();
    let rest = Rest::new(rest.0)?;
    let (mut place, mut named_so_far) = (0_i64, 0_u64);
    for (edit, sequence) in edits.iter_mut().zip(standing.first..) {
        place = place.checked_add(of_record.signed()?).ok_or(BROKEN)?;
        let at = usize::try_from(place).map_err(|_| BROKEN)?;
        if at == records.len() {
            let time_ms = milliseconds(edit.clock).checked_add(record_times.signed()?).ok_or(BROKEN)?;
            records.push(rest.id(at, time_ms)?);
        }
        edit.record = *records.get(at).ok_or(BROKEN)?;
        edit.field = fields.number()?.try_into().map_err(|_| BROKEN)?;
        let count = counts.number()?;
        named_so_far = named_so_far.saturating_add(count);
        if named_so_far > MOST_PREDECESSORS {
            return Err(Damage::TooLarge("too many predecessors in one part"));
        }
        for _ in 0..count {
            let named = standing.named(lines.number()?, distances.number()?, sequence).ok_or(BROKEN)?;
            // Ascending, so that there is one way to write them.
            if edit.predecessors.last().is_some_and(|last| *last >= named) {
                return Err(BROKEN);
            }
            edit.predecessors.push(named);
        }
    }
    if records.len() != rest.count() {
        return Err(BROKEN);
    }
    for at in by_field(edits.iter().map(|edit| edit.field)) {
        edits[at].content = match usize::try_from(values.number()?).map_err(|_| BROKEN)? {
            0 => Content::Redacted(super::part::array(values.bytes(32)?)),
            length => {
                let value = values.bytes(length)?;
                cbor::items(value).ok_or(Damage::Damaged("a value is no item of CBOR"))?;
                Content::Value(value.to_vec())
            }
        };
    }
    for column in [record_times, of_record, fields, counts, lines, distances, values] {
        column.end()?;
    }
    Ok(edits)
}

/// Edits of which only the clock is known, from the three columns of saves.
fn saves(columns: [Reader; 3], count: u64) -> Result<Vec<Edit>, Damage> {
    let [mut times, mut counters, mut lengths] = columns;
    let mut edits = Vec::with_capacity(count as usize);
    let mut time_ms = 0_i64;
    while (edits.len() as u64) < count {
        time_ms = time_ms.checked_add(times.signed()?).ok_or(BROKEN)?;
        let (counter, alike) = (counters.number()?, lengths.number()?);
        // The store keeps clocks in 63 bits.
        let in_range = (0..1 << 47).contains(&time_ms) && counter <= COUNTER;
        let clock = time_ms.cast_unsigned() << 16 | counter;
        if !in_range || clock == 0 || alike == 0 || alike > count - edits.len() as u64 {
            return Err(BROKEN);
        }
        for _ in 0..alike {
            let empty = Content::Value(Vec::new());
            edits.push(Edit { clock, record: [0; 16], field: 0, predecessors: Vec::new(), content: empty });
        }
    }
    for column in [times, counters, lengths] {
        column.end()?;
    }
    Ok(edits)
}

/// What is not time in the ids of records.
struct Rest<'bytes> {
    sixth: &'bytes [u8],
    eighth: &'bytes [u8],
    chance: &'bytes [[u8; 8]],
}

impl<'bytes> Rest<'bytes> {
    fn new(column: &'bytes [u8]) -> Result<Self, Damage> {
        let (sixth, rest) = column.split_at(column.len() / 10);
        let (eighth, chance) = rest.split_at(sixth.len());
        match chance.as_chunks() {
            (chance, []) if chance.len() == sixth.len() => Ok(Self { sixth, eighth, chance }),
            _ => Err(BROKEN),
        }
    }

    fn count(&self) -> usize {
        self.chance.len()
    }

    /// The id at a place, if it is a UUID of version 7.
    fn id(&self, at: usize, time_ms: i64) -> Result<[u8; 16], Damage> {
        let chance = self.chance.get(at).ok_or(BROKEN)?;
        if !(0..1 << 48).contains(&time_ms) || self.sixth[at] >> 4 != 7 {
            return Err(BROKEN);
        }
        let mut id = [0; 16];
        id[..6].copy_from_slice(&time_ms.to_be_bytes()[2..]);
        (id[6], id[7], id[8]) = (self.sixth[at], chance[0], self.eighth[at]);
        id[9..].copy_from_slice(&chance[1..]);
        Ok(id)
    }
}

/// The bytes of an id that are nothing but chance.
fn chance_of(id: &[u8; 16]) -> [u8; 8] {
    let mut chance = [id[7]; 8];
    chance[1..].copy_from_slice(&id[9..]);
    chance
}

/// The milliseconds in an id.
fn born_ms(id: &[u8; 16]) -> i64 {
    id[..6].iter().fold(0, |time_ms, byte| time_ms << 8 | i64::from(*byte))
}

/// The milliseconds of a clock.
fn milliseconds(clock: u64) -> i64 {
    (clock >> 16).cast_signed()
}

/// The counter of a clock.
const COUNTER: u64 = 0xffff;

const COLUMNS: usize = 11;

const BROKEN: Damage = Damage::Damaged("its edits are not as the format says");

/// The columns.
fn split(bytes: &[u8]) -> Option<[&[u8]; COLUMNS]> {
    let (major, count, mut rest) = cbor::head(bytes)?;
    let mut columns: [&[u8]; COLUMNS] = [&[]; COLUMNS];
    ((major, count) == (cbor::ARRAY, columns.len() as u64)).then_some(())?;
    for column in &mut columns {
        (*column, rest) = cbor::string(rest, cbor::BYTES)?;
    }
    rest.is_empty().then_some(columns)
}

/// Places of edits in the order of their fields.
fn by_field(fields: impl Iterator<Item = u16>) -> Vec<usize> {
    let mut order: Vec<(u16, usize)> = fields.zip(0..).collect();
    order.sort_unstable();
    order.into_iter().map(|(_, at)| at).collect()
}

impl Standing<'_> {
    /// The device of a line of edits, and the sequence from which distances in it are counted.
    fn line(&self, line: u32, own: u64) -> Option<EditName> {
        match line.checked_sub(1) {
            None => Some(EditName { device: self.device, sequence: own }),
            Some(at) => self.witness.get(at as usize).map(|witness| witness.name),
        }
    }

    fn distance(&self, predecessor: Predecessor, own: u64) -> Option<u64> {
        let from = self.line(predecessor.line, own).filter(|from| from.device == predecessor.name.device)?;
        let distance = from.sequence.checked_sub(predecessor.name.sequence)?;
        (distance > 0 || predecessor.line > 0).then_some(distance)
    }

    fn named(&self, line: u64, distance: u64, own: u64) -> Option<Predecessor> {
        let line = u32::try_from(line).ok()?;
        let EditName { device, sequence: from } = self.line(line, own)?;
        // Nothing replaces itself, and there is no edit 0.
        let sequence = from.checked_sub(distance).filter(|sequence| *sequence > 0)?;
        (distance > 0 || line > 0).then_some(Predecessor { name: EditName { device, sequence }, line })
    }
}

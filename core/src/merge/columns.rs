//! Edits as columns: what is alike lies together, so that it packs closely.

use super::varint::{Reader, put, put_signed};
use super::{Content, Damage, DeviceId, Edit, EditName, Predecessor, Witness};
use ciborium::Value;
use std::collections::HashMap;

/// Most edits in one bundle.
pub const MOST_EDITS: u64 = 1 << 18;

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
    let [mut records, mut saves, mut of_record, mut fields, mut predecessors, mut lengths, mut values] =
        [const { Vec::new() }; 7];
    let mut places = HashMap::new();
    let (mut last_place, mut last_clock) = (0_i64, 0_u64);
    for save in edits.chunk_by(|edit, next| edit.clock == next.clock) {
        put_signed(&mut saves, save[0].clock.wrapping_sub(last_clock).cast_signed());
        put(&mut saves, save.len() as u64);
        last_clock = save[0].clock;
    }
    for (edit, sequence) in edits.iter().zip(standing.first..) {
        let next = places.len() as i64;
        let place = *places.entry(edit.record).or_insert_with(|| {
            records.extend(edit.record);
            next
        });
        put_signed(&mut of_record, place - last_place);
        last_place = place;
        put(&mut fields, edit.field.into());
        put(&mut predecessors, edit.predecessors.len() as u64);
        if !edit.predecessors.is_sorted_by(|a, b| a < b) {
            return None;
        }
        for predecessor in &edit.predecessors {
            put(&mut predecessors, predecessor.line.into());
            put(&mut predecessors, standing.distance(*predecessor, sequence)?);
        }
    }
    for (_, edit) in by_field(edits.iter().map(|edit| edit.field)).iter().map(|at| (at, &edits[*at])) {
        match &edit.content {
            Content::Value(value) => {
                put(&mut lengths, value.len() as u64);
                values.extend(value);
            }
            Content::Redacted(hash) => {
                put(&mut lengths, 0);
                values.extend(hash);
            }
        }
    }
    let columns = [records, saves, of_record, fields, predecessors, lengths, values];
    let mut bytes = Vec::new();
    // Writing to memory does not fail.
    let _ = ciborium::into_writer(&Value::Array(columns.into_iter().map(Value::Bytes).collect()), &mut bytes);
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
    let columns: Vec<Vec<u8>> = ciborium::from_reader::<Value, _>(bytes)
        .ok()
        .and_then(|value| {
            value.into_array().ok()?.into_iter().map(|column| column.into_bytes().ok()).collect()
        })
        .ok_or(BROKEN)?;
    let columns: &[Vec<u8>; 7] = columns.as_slice().try_into().map_err(|_| BROKEN)?;
    let [records, saves, of_record, fields, predecessors, lengths, values] = columns;
    let (records, left) = records.as_chunks::<16>();
    // A record's id is a UUID of version 7.
    if !left.is_empty() || records.iter().any(|record| record[6] >> 4 != 7) {
        return Err(BROKEN);
    }
    let mut edits = Vec::with_capacity(count as usize);
    let mut saves = Reader(saves);
    let mut clock = 0_u64;
    while (edits.len() as u64) < count {
        clock = clock.wrapping_add(saves.signed()?.cast_unsigned());
        let alike = saves.number()?;
        // The store keeps clocks in 63 bits.
        if alike == 0 || alike > count - edits.len() as u64 || clock == 0 || clock > i64::MAX as u64 {
            return Err(BROKEN);
        }
        for _ in 0..alike {
            let empty = Content::Value(Vec::new());
            edits.push(Edit { clock, record: [0; 16], field: 0, predecessors: Vec::new(), content: empty });
        }
    }
    let (mut of_record, mut fields, mut predecessors) =
        (Reader(of_record), Reader(fields), Reader(predecessors));
    let mut place = 0_i64;
    for (edit, sequence) in edits.iter_mut().zip(standing.first..) {
        place = place.checked_add(of_record.signed()?).ok_or(BROKEN)?;
        edit.record = *usize::try_from(place).ok().and_then(|place| records.get(place)).ok_or(BROKEN)?;
        edit.field = fields.number()?.try_into().map_err(|_| BROKEN)?;
        for _ in 0..predecessors.number()? {
            let (line, distance) = (predecessors.number()?, predecessors.number()?);
            let named = standing.named(line, distance, sequence).ok_or(BROKEN)?;
            // Ascending, so that there is one way to write them.
            if edit.predecessors.last().is_some_and(|last| *last >= named) {
                return Err(BROKEN);
            }
            edit.predecessors.push(named);
        }
    }
    let (mut lengths, mut values) = (Reader(lengths), Reader(values));
    for at in by_field(edits.iter().map(|edit| edit.field)) {
        edits[at].content = match usize::try_from(lengths.number()?).map_err(|_| BROKEN)? {
            0 => Content::Redacted(super::part::array(values.bytes(32)?)),
            length => match values.bytes(length)? {
                // No item of CBOR begins so (RFC 8949, 3.2.1).
                [0xff, ..] => return Err(BROKEN),
                value => Content::Value(value.to_vec()),
            },
        };
    }
    for column in [saves, of_record, fields, predecessors, lengths, values] {
        column.end()?;
    }
    Ok(edits)
}

const BROKEN: Damage = Damage::Damaged("its edits are not as the format says");

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

//! Who is who, where a notes file does not say: a record without an id takes the one the store has for the same
//! field name and the same place in its list, so that reading a file again edits records and makes no new ones.

use pitface_core::record::{FieldNotes, Pit, RecordId};
use std::collections::BTreeSet;

/// Gives the records whose ids are in `made` those of `kept`, place by place. An id is never given twice.
pub fn adopt(notes: &mut FieldNotes, kept: &FieldNotes, made: &BTreeSet<RecordId>) {
    let mut adopter = Adopter { made, taken: ids(notes).filter(|id| !made.contains(id)).collect() };
    adopter.take(&mut notes.field.id, Some(kept.field.id));
    for (place, pit) in notes.pits.iter_mut().enumerate() {
        let by_id = kept.pits.iter().find(|kept| kept.id == pit.id);
        let kept = by_id.or_else(|| kept.pits.get(place).filter(|_| made.contains(&pit.id)));
        adopter.take(&mut pit.id, kept.map(|kept| kept.id));
        if let Some(kept) = kept.filter(|kept| kept.id == pit.id) {
            adopter.parts(pit, kept);
        }
    }
}

/// Every id of a field, the parts of a pit before the pit.
pub fn ids(notes: &FieldNotes) -> impl Iterator<Item = RecordId> {
    let parts = notes.pits.iter().flat_map(|pit| {
        let steps = pit.walk.iter().map(|step| step.id);
        let layers = pit.layers.iter().map(|layer| layer.id);
        let rolls = pit.rolls.iter().map(|roll| roll.id);
        let photos = pit.photos.iter().map(|photo| photo.id);
        steps.chain(layers).chain(rolls).chain(photos).chain([pit.id])
    });
    parts.chain([notes.field.id])
}

struct Adopter<'a> {
    made: &'a BTreeSet<RecordId>,
    taken: BTreeSet<RecordId>,
}

impl Adopter<'_> {
    fn take(&mut self, id: &mut RecordId, kept: Option<RecordId>) {
        if let Some(kept) = kept
            && self.made.contains(id)
            && self.taken.insert(kept)
        {
            *id = kept;
        }
    }

    fn parts(&mut self, pit: &mut Pit, kept: &Pit) {
        for (place, step) in pit.walk.iter_mut().enumerate() {
            self.take(&mut step.id, kept.walk.get(place).map(|kept| kept.id));
        }
        for (place, layer) in pit.layers.iter_mut().enumerate() {
            self.take(&mut layer.id, kept.layers.get(place).map(|kept| kept.id));
        }
        for (place, roll) in pit.rolls.iter_mut().enumerate() {
            self.take(&mut roll.id, kept.rolls.get(place).map(|kept| kept.id));
        }
        for (place, photo) in pit.photos.iter_mut().enumerate() {
            self.take(&mut photo.id, kept.photos.get(place).map(|kept| kept.id));
        }
    }
}

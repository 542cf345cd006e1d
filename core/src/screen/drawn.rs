//! Drawings with what is said of them, put together from the notes, what is read in them and the words: shared by the
//! screens and the command line.

use super::Pictured;
use crate::advice::sampling::{At, Ground, Next, Plan, next_pit};
use crate::advice::{FieldAdvice, TipDepth, ZoneCall, advise, stands_for};
use crate::picture::plan::{PlanPicture, plan};
use crate::picture::{Drawing, Face, FacePicture, Ruler, Tip, face, low_face};
use crate::place::{FieldMap, Walk, walk};
use crate::reading::{FieldReading, read_field};
use crate::record::{FieldNotes, PlaceKind, Zone};
use crate::words::{PlanTold, Words, ZoneTold};

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// A field with everything that follows from its notes.
#[derive(Debug, Clone)]
pub struct Seen<'a> {
    /// What was noted.
    pub notes: &'a FieldNotes,
    /// The field laid out.
    pub map: FieldMap,
    /// What was read in it, pit by pit.
    pub reading: FieldReading,
    /// The calls.
    pub advice: FieldAdvice,
}

impl<'a> Seen<'a> {
    /// Reads a field and makes the calls.
    pub fn of(notes: &'a FieldNotes) -> Self {
        let map = FieldMap::of(&notes.field);
        let reading = read_field(notes);
        let advice = advise(notes, &reading);
        Self { notes, map, reading, advice }
    }

    /// The call of a zone, where it has a pit.
    pub fn call_of(&self, zone: Zone) -> Option<&ZoneCall> {
        self.advice.zones.iter().find(|call| call.zone == zone)
    }

    /// The call that holds where a pit was dug; `None` for a reference pit, which stands for no zone.
    pub fn call_at(&self, pit: usize) -> Option<&ZoneCall> {
        self.call_of(stands_for(&self.map, self.notes.pits.get(pit)?)?)
    }

    /// The first reference pit with layers: what the others are drawn beside.
    pub fn reference(&self) -> Option<usize> {
        reference(self.notes, &self.reading)
    }

    /// What to do next; `None` where the usual plan cannot be worked with.
    pub fn next(&self) -> Option<Next> {
        next_pit(&Ground::of(self.notes, &self.reading), &Plan::default()).ok()
    }

    /// The last pit dug that has a position: its number and where it is.
    pub fn last_pit(&self) -> Option<(String, [f64; 2])> {
        last_pit(self.notes)
    }
}

fn reference(notes: &FieldNotes, reading: &FieldReading) -> Option<usize> {
    let mut pits = notes.pits.iter().zip(&reading.pits);
    pits.position(|(noted, read)| noted.place == PlaceKind::Reference && !read.layers.is_empty())
}

/// The last pit dug that has a position: its number and where it is, `[longitude, latitude]`.
pub fn last_pit(notes: &FieldNotes) -> Option<(String, [f64; 2])> {
    let pits = notes.pits.iter().enumerate();
    let placed = pits.filter_map(|(index, pit)| Some((pit.dug, index, pit.at?)));
    let (_, index, at) = placed.max_by_key(|(dug, index, _)| (*dug, *index))?;
    Some(((index + 1).to_string(), [at.longitude_deg, at.latitude_deg]))
}

/// The plan of a field; `None` where nothing of it has a place. `reading`, `map` and `advice` are those of the notes.
pub fn plan_of(
    words: &Words,
    notes: &FieldNotes,
    map: &FieldMap,
    reading: &FieldReading,
    advice: &FieldAdvice,
) -> Option<Pictured> {
    let next = match next_pit(&Ground::of(notes, reading), &Plan::default()) {
        Ok(Next::Pit { at: At::Place(place), .. }) => Some(place),
        _ => None,
    };
    let mut picture = PlanPicture::of(notes, reading, map, next);
    if picture.outline.is_empty() && picture.pits.iter().all(|pit| pit.at.is_none()) {
        return None;
    }
    let areas = map.areas();
    let call_of = |zone: Zone| advice.zones.iter().find(|call| call.zone == zone);
    let zones: Vec<ZoneTold> = Zone::ALL
        .iter()
        .map(|&zone| {
            let area = areas.iter().find(|area| area.zone == zone);
            ZoneTold { zone, hectares: area.map(|area| area.area_m2 / HECTARE_M2), call: call_of(zone) }
        })
        .filter(|told| told.hectares.is_some() || told.call.is_some())
        .collect();
    for part in &mut picture.parts {
        let name = Some(part.label.as_str()).filter(|name| !name.is_empty());
        part.label = words.plan_part(part.zone, name, call_of(part.zone));
    }
    let last = last_pit(notes).zip(next).map(|((number, from), next)| (number, walk(from, next)));
    let next_from: Option<(&str, Walk)> = last.as_ref().map(|(number, way)| (number.as_str(), *way));
    let hectares = map.whole_m2().map(|m2| m2 / HECTARE_M2);
    let told = PlanTold { field: &notes.field.name, hectares, zones: &zones, next_from };
    picture.words = words.plan_words(&picture, &told);
    Some(Pictured {
        title: words.plan_title(told.field),
        description: words.describe_plan(&picture, &told),
        drawing: plan(&picture),
    })
}

/// The face of a pit as far as it is noted, beside the reference where it is wanted and there is one, with the tip depth
/// where one is given. `reading` is that of the same notes.
pub fn face_of(
    words: &Words,
    notes: &FieldNotes,
    reading: &FieldReading,
    pit: usize,
    tip: Option<TipDepth>,
    beside_reference: bool,
) -> Option<Pictured> {
    pictured(words, (notes, reading, pit), tip, beside_reference, face)
}

/// The same no higher than its words need, where more is to be read below it.
pub fn low_face_of(
    words: &Words,
    notes: &FieldNotes,
    reading: &FieldReading,
    pit: usize,
    tip: Option<TipDepth>,
    beside_reference: bool,
) -> Option<Pictured> {
    pictured(words, (notes, reading, pit), tip, beside_reference, low_face)
}

fn pictured(
    words: &Words,
    (notes, reading, pit): (&FieldNotes, &FieldReading, usize),
    tip: Option<TipDepth>,
    beside_reference: bool,
    draw: fn(&FacePicture) -> Drawing,
) -> Option<Pictured> {
    let (dug, read) = (notes.pits.get(pit)?, reading.pits.get(pit)?);
    let beside = beside_reference && dug.place != PlaceKind::Reference;
    let reference = reference(notes, reading).filter(|_| beside);
    let title = words.pit_numbered(pit + 1, dug.place);
    let of = |index: usize, title: String, tip: Option<Tip>| {
        Face::of(&reading.pits[index], title, tip, |layer| words.layer_label(layer))
    };
    let line = tip.map(|tip| Tip { lo_mm: tip.lo_mm, hi_mm: tip.hi_mm, label: words.tip_label(&tip) });
    let beside = reference.map(|reference| of(reference, words.pit(PlaceKind::Reference), None));
    let faces: Vec<Face> = beside.into_iter().chain([of(pit, title.clone(), line)]).collect();
    let deepest_mm = faces.iter().map(|face| face.dug_to_mm).max().unwrap_or(0);
    let ruler = Ruler::down_to(deepest_mm, words.unit(), words.unit_sign());
    let beside = reference.map(|reference| &reading.pits[reference]);
    Some(Pictured {
        description: words.describe(dug.place, read, beside, tip.as_ref()),
        drawing: draw(&FacePicture { faces, ruler, text_scale: 1.0 }),
        title,
    })
}

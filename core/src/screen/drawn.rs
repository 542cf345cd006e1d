//! Drawings with what is said of them, put together from the notes, what is read in them and the words: shared by the
//! screens and the command line.

use super::Pictured;
use crate::advice::TipDepth;
use crate::advice::sampling::{At, Next};
use crate::answer::FieldAnswer;
use crate::picture::plan::{PlanPicture, plan};
use crate::picture::{Drawing, Face, FacePicture, Ruler, Tip, face, low_face};
use crate::place::{Walk, walk};
use crate::record::{PlaceKind, Zone};
use crate::words::{PlanTold, Words, ZoneTold};

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// The plan of a field; `None` where nothing of it has a place.
pub fn plan_of(words: &Words, answer: &FieldAnswer) -> Option<Pictured> {
    let FieldAnswer { notes, map, .. } = answer;
    let next = match answer.next().map(|dig| dig.next) {
        Some(Next::Pit { at: At::Place(place), .. }) => Some(place),
        _ => None,
    };
    let mut picture = PlanPicture::of(notes, &answer.reading, map, next);
    if picture.outline.is_empty() && picture.pits.iter().all(|pit| pit.at.is_none()) {
        return None;
    }
    let areas = map.areas();
    let zones: Vec<ZoneTold> = Zone::ALL
        .iter()
        .map(|&zone| {
            let area = areas.iter().find(|area| area.zone == zone);
            ZoneTold {
                zone,
                hectares: area.map(|area| area.area_m2 / HECTARE_M2),
                call: answer.call_of(zone),
            }
        })
        .filter(|told| told.hectares.is_some() || told.call.is_some())
        .collect();
    for part in &mut picture.parts {
        let name = Some(part.label.as_str()).filter(|name| !name.is_empty());
        part.label = words.plan_part(part.zone, name, answer.call_of(part.zone));
    }
    let last = answer.last_pit().zip(next).map(|((number, from), next)| (number, walk(from, next)));
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
/// where one is given.
pub fn face_of(
    words: &Words,
    answer: &FieldAnswer,
    pit: usize,
    tip: Option<TipDepth>,
    beside_reference: bool,
) -> Option<Pictured> {
    pictured(words, (answer, pit), tip, beside_reference, face)
}

/// The same no higher than its words need, where more is to be read below it.
pub fn low_face_of(
    words: &Words,
    answer: &FieldAnswer,
    pit: usize,
    tip: Option<TipDepth>,
    beside_reference: bool,
) -> Option<Pictured> {
    pictured(words, (answer, pit), tip, beside_reference, low_face)
}

fn pictured(
    words: &Words,
    (answer, pit): (&FieldAnswer, usize),
    tip: Option<TipDepth>,
    beside_reference: bool,
    draw: fn(&FacePicture) -> Drawing,
) -> Option<Pictured> {
    let FieldAnswer { notes, reading, .. } = answer;
    let (dug, read) = (notes.pits.get(pit)?, reading.pits.get(pit)?);
    let beside = beside_reference && dug.place != PlaceKind::Reference;
    let reference = answer.reference().filter(|_| beside);
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

//! The plan of a field and the holes behind the machine as drawings.

use crate::field::FieldRead;
use crate::told_passes::dig_name;
use pitface_core::advice::after_dig::DigAdvice;
use pitface_core::advice::sampling::{At, Ground, Next, Plan, next_pit};
use pitface_core::picture::plan::{PlanPicture, plan};
use pitface_core::picture::{Drawing, Spoken, Theme, svg};
use pitface_core::place::{Walk, walk};
use pitface_core::record::{AfterDig, Pass, Zone};
use pitface_core::screen::Pictured;
use pitface_core::screen::behind::Hole;
use pitface_core::words::{PlanTold, Words, ZoneTold};

/// A drawing with what is said of it.
pub struct Drawn {
    drawing: Drawing,
    /// Its title.
    pub title: String,
    description: String,
}

impl Drawn {
    /// As an SVG file.
    pub fn svg(&self, words: &Words, theme: Theme) -> String {
        let spoken =
            Spoken { language: words.language().code(), title: &self.title, description: &self.description };
        svg(&self.drawing, theme, &spoken)
    }
}

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// The plan of a field; `None` where nothing of it has a place.
pub fn plan_of(words: &Words, field: &FieldRead) -> Option<Drawn> {
    let FieldRead { notes, map, reading, advice, .. } = field;
    let ground = Ground::of(notes, reading);
    let next = match next_pit(&ground, &Plan::default()) {
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
    let last = last_pit(field).zip(next).map(|((number, from), next)| (number, walk(from, next)));
    let next_from: Option<(&str, Walk)> = last.as_ref().map(|(number, way)| (number.as_str(), *way));
    let hectares = map.whole_m2().map(|m2| m2 / HECTARE_M2);
    let told = PlanTold { field: &notes.field.name, hectares, zones: &zones, next_from };
    picture.words = words.plan_words(&picture, &told);
    Some(Drawn {
        title: words.plan_title(told.field),
        description: words.describe_plan(&picture, &told),
        drawing: plan(&picture),
    })
}

/// The last pit dug that has a position: its number and where it is.
pub fn last_pit(field: &FieldRead) -> Option<(String, [f64; 2])> {
    let pits = field.notes.pits.iter().enumerate();
    let placed = pits.filter_map(|(index, pit)| Some((pit.dug, index, pit.at?)));
    let (_, index, at) = placed.max_by_key(|(dug, index, _)| (*dug, *index))?;
    Some(((index + 1).to_string(), [at.longitude_deg, at.latitude_deg]))
}

/// Every hole behind the machine, in the order of its number: beside the pit dug before where there is one. A hole
/// without readings has no drawing.
pub fn after_digs(words: &Words, field: &FieldRead) -> Vec<Option<Drawn>> {
    let both = field.notes.passes.iter().zip(&field.passes);
    let holes = both.flat_map(|(pass, said)| {
        pass.after_digs.iter().zip(&said.digs).map(move |(dig, said)| (pass, dig, said))
    });
    holes
        .enumerate()
        .map(|(index, (pass, dig, said))| hole(words, field, (pass, dig, said), dig_name(words, index)))
        .collect()
}

fn hole(
    words: &Words,
    field: &FieldRead,
    (pass, dig, said): (&Pass, &AfterDig, &DigAdvice),
    title: String,
) -> Option<Drawn> {
    let hole = Hole { notes: &field.notes, reading: &field.reading, pass, dig, said, text_scale: 1.0 };
    let Pictured { drawing, title, description } = hole.drawn(title, words)?;
    Some(Drawn { drawing, title, description })
}

//! Drawings with what is said of them, put together from the notes, what is read in them and the words: shared by the
//! screens and the command line.

use super::{Pictured, World};
use crate::advice::sampling::{At, Next};
use crate::advice::{TipDepth, ZoneCall};
use crate::answer::FieldAnswer;
use crate::picture::plan::{LOW, LaidOut, PlanMark, PlanPicture, lay_out, plan};
use crate::picture::{Drawing, Face, FacePicture, Point, Ruler, Tip, face, low_face};
use crate::place::{Plane, Walk, walk};
use crate::record::{PlaceKind, Position, Zone};
use crate::words::{Caption, PlanTold, Words, ZoneTold};
use serde::{Deserialize, Serialize};

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// The plan of a field with its key; `None` where nothing of it has a place.
pub fn plan_of(words: &Words, answer: &FieldAnswer) -> Option<Pictured> {
    if !has_places(answer) {
        return None;
    }
    let plane = PlanPicture::plane(&answer.notes, &answer.map)?;
    let (picture, description) = told(words, answer, plane, Shows::ALL);
    let drawing = plan(&picture);
    Some(Pictured { title: words.plan_title(&answer.notes.field.name), description, drawing })
}

/// The plan with its ground filled by the calls that are to be shown, and with a key; zones with such a call that have no
/// ground on it are named below it. `None` where nothing of the field has a place.
pub fn plan_filled(words: &Words, answer: &FieldAnswer, shows: Shows) -> Option<Pictured> {
    if !has_places(answer) {
        return None;
    }
    let plane = PlanPicture::plane(&answer.notes, &answer.map)?;
    let (mut picture, mut description) = told(words, answer, plane, shows);
    by_calls(&mut picture, answer, shows);
    if !shows.digs {
        picture.pits.clear();
        picture.after_digs.clear();
        picture.words.notes.clear();
        picture.words.key.retain(|line| line.mark.is_ground());
    }
    picture.tallest = LOW;
    picture.text_scale = SMALL_LETTERS;
    let off = answer.advice.zones.iter().filter(|call| (shows.call)(call) && !is_drawn(&picture, call.zone));
    if let Some(line) = words.zones_off(&off.collect::<Vec<_>>()) {
        description = format!("{description} {line}");
        picture.words.notes.push(line);
    }
    picture.words.key.retain(|line| line.mark != PlanMark::Tramline);
    let drawing = plan(&picture);
    Some(Pictured { title: words.plan_title(&answer.notes.field.name), description, drawing })
}

/// Returns whether the ground of a zone has a place on the plan.
fn is_drawn(picture: &PlanPicture, zone: Zone) -> bool {
    match zone {
        Zone::Open | Zone::Whole => picture.outline.len() > 2,
        Zone::Headland => !picture.headland.is_empty(),
        Zone::Gateway | Zone::Patch => picture.parts.iter().any(|part| part.zone == zone),
        // Nobody noted where they run.
        Zone::Wheelings => false,
    }
}

/// Fills the ground by its calls; lines on it would be taken for a hatching.
fn by_calls(picture: &mut PlanPicture, answer: &FieldAnswer, shows: Shows) {
    let calls =
        answer.advice.zones.iter().filter(|call| (shows.call)(call)).map(|call| (call.zone, call.call));
    picture.calls = Some(calls.collect());
    picture.tramlines.clear();
}

/// What a plan shows of what is to be done.
#[derive(Debug, Clone, Copy)]
pub struct Shows {
    /// Calls that are shown.
    call: fn(&ZoneCall) -> bool,
    /// Pits, holes behind the machine and where to dig next are shown.
    digs: bool,
}

impl Shows {
    /// Every call, what was dug, and where to dig next.
    pub const ALL: Self = Self { call: |_| true, digs: true };
    /// Only ground to be loosened, now or once it is dry enough.
    pub const TO_LOOSEN: Self = Self { call: |call| call.tip.is_some(), digs: false };
    /// No call.
    const NOTHING: Self = Self { call: |_| false, digs: false };
}

/// Returns whether an edge or a pit of the field has a place.
pub(super) fn has_places(answer: &FieldAnswer) -> bool {
    answer.map.has_outline() || answer.notes.pits.iter().any(|pit| pit.at.is_some())
}

/// A plan as it stands on a screen: low, without a key, and known where things lie on it.
pub(super) struct PlanOnScreen {
    /// What is seen, and all of it in words.
    pub pictured: Pictured,
    /// Where things lie on it.
    pub laid_out: LaidOut,
    /// From the drawing to the ground.
    pub ground: OnGround,
}

/// What a plan on a screen shows beside the field.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Beside {
    /// Ground is filled by its call.
    pub by_calls: bool,
    /// A place marked with a cross: a pit by its place in the notes, which is then not drawn as one, and where it lies,
    /// `[longitude, latitude]`.
    pub cross: Option<(usize, [f64; 2])>,
    /// Ground to be shown in any case: so many metres around a place, `[longitude, latitude]`.
    pub around: Option<([f64; 2], f64)>,
}

/// The plan of a field for a screen; `None` where nothing of it has a place and none is given.
pub(super) fn plan_on_screen(world: &World, answer: &FieldAnswer, beside: Beside) -> Option<PlanOnScreen> {
    let words = world.words;
    let given = beside.cross.map(|(_, at)| at).or(beside.around.map(|(at, _)| at));
    let plane = PlanPicture::plane(&answer.notes, &answer.map).or(given.map(Plane::at))?;
    let shows = if beside.by_calls { Shows::ALL } else { Shows::NOTHING };
    let (mut picture, mut description) = told(words, answer, plane, shows);
    picture.words.key.clear();
    picture.words.notes.clear();
    picture.tallest = LOW;
    picture.text_scale = world.letters;
    picture.own = world.fix.map(|fix| plane.flat(degrees(fix.position)));
    if !answer.map.has_outline() {
        let outline = answer.notes.field.outline.iter();
        picture.corners = outline.map(|&corner| plane.flat(corner)).collect();
    }
    picture.around = beside.around.map(|(at, metres)| (plane.flat(at), metres));
    if beside.by_calls {
        by_calls(&mut picture, answer, Shows::ALL);
    }
    if let Some((pit, at)) = beside.cross {
        // Its number is that of its place in the list.
        picture.pits[pit].at = None;
        picture.next = Some(plane.flat(at));
        picture.words.next = words.of(Caption::PlanPit);
    }
    description.extend(words.you_stand(&picture).map(|stand| format!(" {stand}")));
    let laid_out = lay_out(&picture);
    let pictured = Pictured {
        title: words.plan_title(&answer.notes.field.name),
        description,
        drawing: laid_out.drawing.clone(),
    };
    let LaidOut { origin, points_per_m, .. } = laid_out;
    let ground = OnGround { middle: plane.place([0.0, 0.0]), origin: [origin.x, origin.y], points_per_m };
    Some(PlanOnScreen { pictured, laid_out, ground })
}

/// Returns what a plan shows, with its words, and the same told.
fn told(words: &Words, answer: &FieldAnswer, plane: Plane, shows: Shows) -> (PlanPicture, String) {
    let FieldAnswer { notes, reading, map, .. } = answer;
    let next = match answer.next().map(|dig| dig.next).filter(|_| shows.digs) {
        Some(Next::Pit { at: At::Place(at), .. }) => Some(at),
        _ => None,
    };
    let mut picture = PlanPicture::laid_on(Some(plane), notes, reading, map, next);
    let areas = map.areas();
    let call_of = |zone: Zone| answer.call_of(zone).filter(|call| (shows.call)(call));
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
    let last = answer.last_pit().zip(next).map(|((number, from), next)| (number, walk(from, next)));
    let next_from: Option<(&str, Walk)> = last.as_ref().map(|(number, way)| (number.as_str(), *way));
    let hectares = map.whole_m2().map(|m2| m2 / HECTARE_M2);
    let told = PlanTold { field: &notes.field.name, hectares, zones: &zones, next_from };
    picture.words = words.plan_words(&picture, &told);
    let description = words.describe_plan(&picture, &told);
    (picture, description)
}

/// How a drawing of a plan lies on the ground; goes with an act, so that a touch means the place it meant when the plan was
/// drawn.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct OnGround {
    /// A place, `[longitude, latitude]` in degrees.
    pub middle: [f64; 2],
    /// Where it lies on the drawing, points from the left and from above.
    pub origin: [f64; 2],
    /// Points a metre.
    pub points_per_m: f64,
}

impl OnGround {
    /// The place at a point of the drawing, `[longitude, latitude]` in degrees; `None` where that is no number.
    pub fn place(&self, at: Point) -> Option<[f64; 2]> {
        let east_m = (at.x - self.origin[0]) / self.points_per_m;
        let north_m = (self.origin[1] - at.y) / self.points_per_m;
        let place = Plane::at(self.middle).place([east_m, north_m]);
        place.iter().all(|degrees| degrees.is_finite()).then_some(place)
    }
}

const fn degrees(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
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

/// The face of a pit alone and small: no title, nothing that lives in it, larger letters. What is left out is to be told
/// beside it.
pub fn small_face_of(
    words: &Words,
    answer: &FieldAnswer,
    pit: usize,
    tip: Option<TipDepth>,
) -> Option<Pictured> {
    let (dug, read) = (answer.notes.pits.get(pit)?, answer.reading.pits.get(pit)?);
    let line = tip.map(|tip| Tip { lo_mm: tip.lo_mm, hi_mm: tip.hi_mm, label: words.tip_label(&tip) });
    let mut alone = Face::of(read, String::new(), line, |layer| words.layer_label(layer));
    for layer in &mut alone.layers {
        (layer.roots, layer.channels, layer.patches) = (None, None, None);
    }
    let ruler = Ruler::down_to(alone.dug_to_mm, words.unit(), words.unit_sign());
    Some(Pictured {
        description: words.describe(dug.place, read, None, tip.as_ref()),
        drawing: low_face(&FacePicture { faces: vec![alone], ruler, text_scale: SMALL_LETTERS }),
        title: words.pit_numbered(pit + 1, dug.place),
    })
}

/// Size of letters on drawings that stand three beside each other on paper. Our judgement, by eye.
pub(crate) const SMALL_LETTERS: f64 = 1.35;

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

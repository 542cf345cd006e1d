//! What must fit together in a file whose single values are good: depths against each other and the hole, what is
//! placed against the outline.

use super::cursor::Book;
use super::json::below;
use crate::place::{MixUp, guess_mix_up};
use crate::record::depth::{self, DepthFault};
use crate::record::{FieldNotes, Layer, PartShape, Position, Step};

/// Steps thinner than this on the mean are those of a walk noted in centimetres: a knife's push is 5 to 10 mm
/// (common practice, no source), a step is several.
const THINNEST_STEP_MM: usize = 10;
/// Steps from which that can be told.
const FEWEST_STEPS: usize = 3;
/// A pit farther than this from its field's outline, in degrees, is somewhere else. Our judgement, wide on purpose.
const FAR_AWAY_DEG: f64 = 1.0;

/// What was read at a place of the file; `None` after a fault there.
pub type Placed<T> = (String, Option<T>);
/// A layer, and its bottom as noted: `None` where there is none.
pub type Noted = (Layer, Option<u32>);

/// The steps, each with its place, as far as they could be read: they go down, and end within the hole.
pub fn walk(read: Vec<Placed<Step>>, dug_to_mm: Option<u32>, book: &Book) -> Vec<Step> {
    let count = read.len();
    let steps: Vec<(String, Step)> =
        read.into_iter().filter_map(|(at, step)| step.map(|step| (at, step))).collect();
    for pair in steps.windows(2) {
        let ((_, Step { to_mm: above_mm, .. }), (at, Step { to_mm, .. })) = (&pair[0], &pair[1]);
        if to_mm <= above_mm {
            let wrong = format!("a step to {to_mm} mm comes after one to {above_mm} mm");
            book.fault(
                below(at, "to_mm"),
                wrong,
                "list the steps from the surface down, each deeper than the last",
            );
        }
    }
    if let Some((at, step)) = steps.iter().max_by_key(|(_, step)| step.to_mm)
        && count >= FEWEST_STEPS
        && (step.to_mm as usize) < count * THINNEST_STEP_MM
    {
        let wrong = format!("{count} steps of the walk end at {} mm", step.to_mm);
        let meant = step.to_mm * 10;
        let todo = format!("lengths are whole millimetres: did you mean {meant}, from {} cm?", step.to_mm);
        book.fault(below(at, "to_mm"), wrong, todo);
    }
    for (at, step) in &steps {
        within_hole(&below(at, "to_mm"), step.to_mm, dug_to_mm, book);
    }
    steps.into_iter().map(|(_, step)| step).collect()
}

/// The layers, each with its place and what was noted of its bottom, as far as they could be read: they lie one
/// below the other and end within the hole.
pub fn layers(read: Vec<Placed<Noted>>, dug_to_mm: Option<u32>, book: &Book) -> Vec<Layer> {
    let count = read.len();
    let read: Vec<_> = read.into_iter().filter_map(|(at, layer)| layer.map(|layer| (at, layer))).collect();
    let spans: Vec<_> = read.iter().map(|(_, (layer, bottom))| (layer.top_mm, *bottom)).collect();
    for breach in depth::breaches(&spans) {
        let between = matches!(breach, DepthFault::Gap { .. } | DepthFault::Overlap { .. });
        // With a layer unread there may be no gap where one seems to be.
        if between && read.len() < count {
            continue;
        }
        let (key, todo) = match breach {
            DepthFault::MissingBottom { .. } => {
                ("bottom_mm", "add the key \"bottom_mm\"; the lowest layer ends at the hole's bottom")
            }
            DepthFault::Equal { .. } => ("bottom_mm", "give the layer a thickness, or leave it out"),
            DepthFault::Inverted { .. } => ("bottom_mm", "depths count downwards: swap the two"),
            DepthFault::Gap { .. } => {
                ("top_mm", "let the layers meet, or add one between them; it needs no signs")
            }
            DepthFault::Overlap { .. } => ("top_mm", "let the lower layer begin where the upper one ends"),
        };
        book.fault(below(&read[breach.layer()].0, key), breach.to_string(), todo);
    }
    for (at, (_, bottom)) in &read {
        if let Some(bottom_mm) = bottom {
            within_hole(&below(at, "bottom_mm"), *bottom_mm, dug_to_mm, book);
        }
    }
    read.into_iter().map(|(_, (layer, _))| layer).collect()
}

fn within_hole(at: &str, depth_mm: u32, dug_to_mm: Option<u32>, book: &Book) {
    if let Some(dug_to_mm) = dug_to_mm.filter(|dug_to_mm| depth_mm > *dug_to_mm) {
        let wrong = format!("{depth_mm} mm lies below the hole's bottom at {dug_to_mm} mm");
        book.fault(at, wrong, "correct it, or the pit's \"dug_to_mm\"");
    }
}

/// What is placed lies near the outline of its field; longitude and latitude in the wrong order mostly show only here.
pub fn far_away(notes: &FieldNotes, book: &Book) {
    let Some(&corner) = notes.field.outline.first() else { return };
    let is_far = |longitude: f64, latitude: f64| {
        let east = (longitude - corner[0]).abs();
        east.min(360.0 - east) > FAR_AWAY_DEG || (latitude - corner[1]).abs() > FAR_AWAY_DEG
    };
    let all = placed(notes);
    let places: Vec<[f64; 2]> = all.iter().flat_map(|(_, places)| places.iter().copied()).collect();
    if places.len() > 1
        && let Some(mix_up) = guess_mix_up(&notes.field.outline, &places)
    {
        // All of them lie wrong against the outline in the same way: one fault, not one a pit.
        return book.fault("field.outline", mix_up.wrong(), mix_up.todo());
    }
    for (at, places) in all {
        // Of a ring or a course the first place far away: the others are wrong in the same way.
        let far = places.iter().position(|[longitude, latitude]| is_far(*longitude, *latitude));
        let Some(index) = far else { continue };
        let [longitude, latitude] = places[index];
        let todo = guess_mix_up(&notes.field.outline, &[places[index]]).map_or_else(
            || "correct it, or the outline".into(),
            |mix_up| {
                let [longitude, latitude] = mix_up.undone(places[index]);
                let hint = if mix_up == MixUp::Swapped { "longitude comes first: " } else { "" };
                format!("{hint}did you mean [{longitude}, {latitude}]?")
            },
        );
        let at = if at.ends_with("at") { at } else { format!("{at}[{index}]") };
        book.fault(at, format!("[{longitude}, {latitude}] lies far away from the field's outline"), todo);
    }
}

/// Every place and list of places of the notes, with where it stands: `at` holds one place, other keys hold lists.
fn placed(notes: &FieldNotes) -> Vec<(String, Vec<[f64; 2]>)> {
    let hole = |at: String, hole: Option<Position>| {
        hole.map(|hole| (format!("{at}.at"), vec![[hole.longitude_deg, hole.latitude_deg]]))
    };
    let parts = notes.field.parts.iter().enumerate().map(|(index, part)| match &part.shape {
        PartShape::Ring(ring) => (format!("field.parts[{index}].ring"), ring.clone()),
        PartShape::Circle { middle, .. } => (format!("field.parts[{index}].at"), vec![*middle]),
    });
    let lines = notes.field.lines.iter().enumerate();
    let lines = lines.map(|(index, line)| (format!("field.lines[{index}].along"), line.along.clone()));
    let pits = notes.pits.iter().enumerate();
    let pits = pits.filter_map(|(index, pit)| hole(format!("pits[{index}]"), pit.at));
    let digs = notes.passes.iter().enumerate().flat_map(|(index, pass)| {
        let digs = pass.after_digs.iter().enumerate();
        digs.map(move |(dig, found)| (format!("passes[{index}].after_digs[{dig}]"), found.at))
    });
    let digs = digs.filter_map(|(at, place)| hole(at, place));
    parts.chain(lines).chain(pits).chain(digs).collect()
}

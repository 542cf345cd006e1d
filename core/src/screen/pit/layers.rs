//! The layers of a pit: boundaries and looks by hand, in any order.

use super::super::bar::act_button;
use super::super::deleting::entry;
use super::super::step::FINE;
use super::super::{Act, Block, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World};
use super::faces::{face_to_move, own_place, to_layer};
use super::given::Given;
use super::look::answers_to;
use super::skipped::is_of_field;
use super::{AtPit, PitAct, boundary_places, remark, skip_tool};
use crate::picture::{Icon, Point, icon};
use crate::reading::{Clue, LayerReading, read_field};
use crate::record::{Field, FieldNotes, OrganicMatter, Pit, RecordId, Sign, TextureNote};
use crate::units::LengthUnit;
use crate::words::{FaceText, Heading, PitText, Words};

/// A layer thinner than this is no layer: thinner than a boundary can be seen. Our judgement.
const THINNEST_MM: u32 = 10;

pub(in crate::screen) fn show(
    field: RecordId,
    pit: RecordId,
    (layer, clue): (Option<u16>, Option<Clue>),
    world: &World,
) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    let layers = &at.reading().layers;
    let index = layer.map(usize::from).filter(|index| *index < layers.len());
    let place = Place::Layers { field, pit, layer: index.and(layer), clue };
    match (index.map(|index| (index, &layers[index])), clue) {
        (None, Some(clue)) if is_of_field(clue) => Some(question(&at, place, None, clue, world)),
        (None, _) => Some(all(&at, Place::Layers { field, pit, layer: None, clue: None }, world)),
        (Some((_, layer)), Some(clue)) if is_sign(clue) => {
            Some(question(&at, place, Some(layer), clue, world))
        }
        (Some((index, layer)), _) => {
            let place = Place::Layers { field, pit, layer: Some(index as u16), clue: None };
            Some(one(&at, place, (index, layer), world))
        }
    }
}

const fn is_sign(clue: Clue) -> bool {
    (clue as usize) < Sign::ALL.len()
}

/// All layers, and what is known of the field.
fn all(at: &AtPit, place: Place, world: &World) -> Screen {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::Layers, world);
    let layers = &at.reading().layers;
    shown.answer = Some(Headline::new(if layers.is_empty() {
        words.of(PitText::NoLayers)
    } else {
        words.layers_count(layers.len())
    }));
    shown.picture = face_to_move(at, world);
    let rows = layers.iter().enumerate().map(|(index, layer)| {
        let seen = Some(words.signs_seen(&layer.signs)).filter(|seen| !seen.is_empty());
        Row {
            icon: Some(icon(Icon::Layers)),
            title: words.describe_layer_short(layer),
            lines: vec![seen.unwrap_or_else(|| words.label(PitText::NotLooked))],
            does: Does::Act(Act::Go(to_layer(at.field, at.pit.id, index))),
        }
    });
    shown.blocks.push(Block::Ways { heading: String::new(), rows: rows.collect() });
    let (field, pit) = (at.field, at.pit.id);
    let moisture = Row {
        icon: None,
        title: words.label(FaceText::Moisture),
        lines: vec![at.pit.face.map_or_else(|| words.label(PitText::NotLooked), |face| words.label(face))],
        does: Does::Act(Act::Go(Place::Moisture { field, pit })),
    };
    shown.blocks.push(Block::Ways { heading: words.label(Heading::Face), rows: vec![moisture] });
    let of_field = Clue::ALL.iter().copied().filter(|&clue| is_of_field(clue)).map(|clue| Row {
        icon: None,
        title: words.label(clue),
        lines: vec![field_answer(&at.answer.notes.field, clue, words)],
        does: Does::Act(Act::Go(Place::Layers { field, pit, layer: None, clue: Some(clue) })),
    });
    shown.blocks.push(Block::Ways { heading: words.label(Heading::Field), rows: of_field.collect() });
    shown.next = Some(act_button(words.label(PitText::GiveCall), Act::Go(Place::Call { field, pit })));
    shown
}

/// One layer: its boundaries, and its signs.
fn one(at: &AtPit, place: Place, (index, layer): (usize, &LayerReading), world: &World) -> Screen {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::Layers, world);
    shown.answer = Some(Headline::new(words.describe_layer_short(layer)));
    shown.picture = face_to_move(at, world);
    let rows = Sign::ALL.iter().map(|&sign| {
        let clue = Clue::from(sign);
        let seen = layer.signs.get(sign);
        let to =
            Place::Layers { field: at.field, pit: at.pit.id, layer: Some(index as u16), clue: Some(clue) };
        Row {
            icon: None,
            title: words.label(clue),
            lines: vec![
                seen.map_or_else(|| words.label(PitText::NotLooked), |seen| words.answer(clue, seen)),
            ],
            does: Does::Act(Act::Go(to)),
        }
    });
    shown.blocks.push(Block::Ways { heading: String::new(), rows: rows.collect() });
    shown.blocks.extend(remark::told(at.pit, Some(layer)).map(|text| Block::Text(words.remark(&text))));
    shown.tools.push(remark::remark_tool(at, Some(index as u16), world));
    // What the knife alone told of is deleted with its steps, not here.
    let depths = (layer.top_mm, layer.bottom_mm);
    let noted = at.pit.layers.iter().filter(|noted| (noted.top_mm, noted.bottom_mm) == depths);
    shown.menu.extend(noted.filter_map(|noted| entry(&at.answer.notes, noted.id, world)));
    let own = |at_mm: &u32| *at_mm == layer.top_mm || *at_mm == layer.bottom_mm;
    shown.blocks.extend(boundary_places(at).into_iter().filter(own).map(|at_mm| nudges(at_mm, words)));
    shown
}

/// One boundary, moved by a step either way.
fn nudges(at_mm: u32, words: &Words) -> Block {
    let step_mm = match words.unit() {
        LengthUnit::Centimetres => 10,
        LengthUnit::Inches => LengthUnit::Inches.to_mm(0.5).cast_signed(),
    };
    let boundary = words.boundary(at_mm);
    let nudge =
        |by_mm: i32| act_button(words.nudge(by_mm), PitAct::Nudge { at_mm, by_mm }).about(boundary.clone());
    let answers = vec![nudge(-step_mm), nudge(step_mm)];
    Block::Question { text: boundary.clone(), columns: 2, answers }
}

/// The answers to one question; that nobody looked is a tool.
fn question(at: &AtPit, place: Place, layer: Option<&LayerReading>, clue: Clue, world: &World) -> Screen {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::Layers, world);
    let depths = layer.map_or((0, 0), |layer| (layer.top_mm, layer.bottom_mm));
    let line = layer.map(|layer| words.describe_layer_short(layer)).unwrap_or_default();
    shown.answer = Some(Headline { line, ..Headline::new(words.clue_asked(clue)) });
    if layer.is_some() {
        shown.picture = Some(super::faces::strip_face_alone(at, depths, world));
    }
    let given = match layer {
        Some(layer) => Sign::ALL.get(clue as usize).and_then(|&sign| layer.signs.get(sign)),
        None => field_index(&at.answer.notes.field, clue),
    };
    shown.blocks.push(answers_to(at.pit, depths, clue, given, world));
    let clear = PitAct::Look { top_mm: depths.0, bottom_mm: depths.1, clue, answer: None };
    shown.tools.push(skip_tool(clear, world));
    shown
}

/// The answer to a clue of the field, as an index.
fn field_index(field: &Field, clue: Clue) -> Option<usize> {
    match clue {
        Clue::Texture => field.texture.map(|texture| texture.group() as usize),
        Clue::OrganicMatter => match field.organic_matter? {
            OrganicMatter::Level(level) => Some(level as usize),
            OrganicMatter::Percent(_) => None,
        },
        _ => None,
    }
}

/// Returns what is noted of the field to a clue.
fn field_answer(field: &Field, clue: Clue, words: &Words) -> String {
    let day = match clue {
        Clue::LastLoosened => field.last_loosened,
        Clue::LastTraffic => field.last_traffic,
        _ => None,
    };
    let noted = match (clue, field.texture, field.organic_matter) {
        (Clue::Texture, Some(TextureNote::Class(texture)), _) => Some(words.label(texture.class)),
        (Clue::OrganicMatter, _, Some(OrganicMatter::Percent(percent))) => {
            Some(words.percent(percent / 100.0))
        }
        _ => field_index(field, clue).map(|index| words.answer(clue, index)),
    };
    let noted = noted.or_else(|| day.map(|day| words.date(day)));
    noted.unwrap_or_else(|| words.label(PitText::NotLooked))
}

/// Moves a boundary to where a finger was lifted, to the centimetre or half inch.
pub(super) fn drag(
    notes: &FieldNotes,
    pit: &Pit,
    at_mm: u32,
    place: Place,
    (point, world): (Option<Point>, &World),
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let at = AtPit::of(notes.field.id, pit.id, world);
    let face = at.and_then(|at| own_place(&at, world));
    let Some((face, point)) = face.zip(point) else { return Done::go(place) };
    let to_mm = FINE.nearest(face.depth_mm(point.y), world.words.unit());
    let by_mm = i64::from(to_mm) - i64::from(at_mm);
    nudge(notes, pit, (at_mm, i32::try_from(by_mm).unwrap_or(0)), place, new_id)
}

/// Moves a boundary; where there is no room for it, nothing happens.
pub(super) fn nudge(
    notes: &FieldNotes,
    pit: &Pit,
    (at_mm, by_mm): (u32, i32),
    place: Place,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let Some(index) = notes.pits.iter().position(|its| its.id == pit.id) else { return Done::go(place) };
    let read = &read_field(notes).pits[index];
    let depths = read.layers.iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect();
    let mut given = Given::of(pit, depths, new_id);
    let Some(to_mm) = at_mm.checked_add_signed(by_mm) else { return Done::go(place) };
    if !given.nudge(at_mm, to_mm, THINNEST_MM) {
        return Done::go(place);
    }
    Done::save(Edit::Pit { field: notes.field.id, pit: given.pit }, place)
}

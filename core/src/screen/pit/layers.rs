//! The layers of a pit: boundaries and looks by hand, in any order.

use super::super::bar::act_button;
use super::super::part::{choices, go};
use super::super::{Button, Does, Doing, Done, Draft, Edit, Known, Place, Row, ScreenKind, Size, World};
use super::given::Given;
use super::look::answers_to;
use super::skipped::is_of_field;
use super::walk::face_question;
use super::{Act, AtPit, PitAct};
use crate::reading::{Clue, LayerReading, read_field};
use crate::record::{Field, FieldNotes, OrganicMatter, Pit, RecordId, Sign, TextureNote};
use crate::units::LengthUnit;
use crate::words::{Heading, PitText, Words};

/// A layer thinner than this is no layer: thinner than a boundary can be seen. Our judgement.
const THINNEST_MM: u32 = 10;

pub(in crate::screen) fn show(
    field: RecordId,
    pit: RecordId,
    (layer, clue): (Option<u16>, Option<Clue>),
    world: &World,
) -> Option<Draft> {
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
fn all(at: &AtPit, place: Place, world: &World) -> Draft {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::Layers, &words.of(Heading::Layers), world);
    let to = |layer: Option<u16>, clue: Option<Clue>| {
        Does::Act(Act::Go(Place::Layers { field: at.field, pit: at.pit.id, layer, clue }))
    };
    shown.known.extend(at.face(None, false, world));
    let layers = &at.reading().layers;
    if layers.is_empty() {
        shown.known.push(Known::Sentence(words.of(PitText::NoLayers)));
    }
    let rows = layers.iter().enumerate().map(|(index, layer)| {
        let seen = Some(words.signs_seen(&layer.signs)).filter(|seen| !seen.is_empty());
        Row {
            icon: None,
            title: words.describe_layer_short(layer),
            lines: vec![seen.unwrap_or_else(|| words.label(PitText::NotLooked))],
            does: to(Some(index as u16), None),
        }
    });
    shown.known.push(Known::Rows(rows.collect()));
    shown.known.push(Known::Line(words.label(Heading::Field)));
    let of_field = Clue::ALL.iter().copied().filter(|&clue| is_of_field(clue)).map(|clue| Row {
        icon: None,
        title: words.label(clue),
        lines: vec![field_answer(&at.answer.notes.field, clue, words)],
        does: to(None, Some(clue)),
    });
    shown.known.push(Known::Rows(of_field.collect()));
    shown.doing.extend(face_question(at.pit.face, Size::Usual, world));
    let call = Place::Call { field: at.field, pit: at.pit.id };
    shown.bar.main = Some(go(words.label(PitText::GiveCall), call));
    shown
}

/// One layer: its boundaries, and its signs.
fn one(at: &AtPit, place: Place, (index, layer): (usize, &LayerReading), world: &World) -> Draft {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::Layers, &words.of(Heading::Layer), world);
    shown.known.push(Known::Sentence(words.describe_layer_short(layer)));
    shown.known.extend(at.face(None, false, world));
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
    shown.known.push(Known::Rows(rows.collect()));
    let bottom_mm = at.reading().layers.last().map_or(0, |last| last.bottom_mm);
    for at_mm in [layer.top_mm, layer.bottom_mm] {
        if at_mm > 0 && at_mm < bottom_mm {
            shown.doing.extend(nudges(at_mm, words));
        }
    }
    shown
}

/// One boundary, moved by a step either way.
fn nudges(at_mm: u32, words: &Words) -> [Doing; 2] {
    let step_mm = match words.unit() {
        LengthUnit::Centimetres => 10,
        LengthUnit::Inches => LengthUnit::Inches.to_mm(0.5).cast_signed(),
    };
    let boundary = words.boundary(at_mm);
    let nudge = |by_mm: i32| {
        let button = act_button(words.nudge(by_mm), PitAct::Nudge { at_mm, by_mm });
        Button { note: boundary.clone(), ..button }
    };
    [Doing::Question(boundary.clone()), choices(2, vec![nudge(-step_mm), nudge(step_mm)])]
}

/// The answers to one question, "not looked" among them.
fn question(at: &AtPit, place: Place, layer: Option<&LayerReading>, clue: Clue, world: &World) -> Draft {
    let words = world.words;
    let what = if layer.is_some() { Heading::Layer } else { Heading::Field };
    let mut shown = at.screen(place, ScreenKind::Layers, &words.of(what), world);
    shown.known.extend(layer.map(|layer| Known::Sentence(words.describe_layer_short(layer))));
    let depths = layer.map_or((0, 0), |layer| (layer.top_mm, layer.bottom_mm));
    let given = match layer {
        Some(layer) => Sign::ALL.get(clue as usize).and_then(|&sign| layer.signs.get(sign)),
        None => field_index(&at.answer.notes.field, clue),
    };
    let clear = PitAct::Look { top_mm: depths.0, bottom_mm: depths.1, clue, answer: None };
    let clear = act_button(words.label(PitText::NotLooked), clear).sized(Size::Small);
    shown.doing.push(choices(1, vec![clear]));
    shown.doing.push(Doing::Question(words.clue_asked(clue)));
    shown.doing.push(answers_to(at.pit, depths, clue, given, world));
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

/// What is noted of the field to a clue.
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

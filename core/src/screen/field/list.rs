//! The list of fields, the nearest first; finding one by name; starting one.

use super::super::bar::{blank, tool};
use super::super::incoming::same_names;
use super::super::own::Setting;
use super::super::part::{go, way, ways};
use super::super::partners::not_carried_note;
use super::super::{
    Act, Ask, Block, Button, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World,
};
use super::{FieldAct, Sought, degrees, lead};
use crate::picture::{Icon, icon};
use crate::place::{FieldMap, walk};
use crate::record::{Field, FieldNotes, PartShape, RecordId};
use crate::words::{Caption, FieldText, PitText};

/// From so many fields on one is looked for by its name. Our judgement: more than stand on two screens.
const MANY: usize = 10;
/// Nearer than this one stands at a field whose edge nobody walked, metres. Our judgement.
const AT_FIELD_M: f64 = 50.0;

pub(in crate::screen) fn list(world: &World) -> Screen {
    if !world.fields.is_empty() {
        return fields(None, world);
    }
    let mut shown = first(Place::Fields, world);
    let language = Place::Setting { setting: Setting::Language };
    let (title, now) = (world.words.label(Caption::Language), world.words.label(world.words.language()));
    shown.blocks.extend(ways([way(None, title, now, language)]));
    shown.menu = menu(world);
    shown
}

/// The fields whose names hold what is sought.
pub(in crate::screen) fn found(sought: Sought, world: &World) -> Screen {
    fields(Some(sought), world)
}

/// What this is, where nothing is noted yet, and how to begin.
pub(in crate::screen) fn first(place: Place, world: &World) -> Screen {
    let words = world.words;
    let kind = if place == Place::Welcome { ScreenKind::Welcome } else { ScreenKind::Fields };
    let mut shown = blank(place, kind, "Pitface".into(), world);
    let line = words.of(FieldText::WhatItIsLine);
    shown.answer = Some(Headline { line, ..Headline::new(words.of(FieldText::WhatItIs)) });
    shown.picture = super::start::picture(world);
    let take_in = Row {
        icon: Some(icon(Icon::OpenFile)),
        title: words.label(Caption::OpenFile),
        lines: Vec::new(),
        does: Does::Ask(Ask::OpenFile),
    };
    shown.blocks = ways([take_in]);
    shown.next = Some(go(words.label(PitText::StartField), Place::StartField));
    // What was saved last, elsewhere say, is taken back where one sees it.
    shown.tools = Vec::new();
    shown
}

fn fields(sought: Option<Sought>, world: &World) -> Screen {
    let words = world.words;
    let place = sought.map_or(Place::Fields, |sought| Place::FoundFields { sought });
    let mut shown = blank(place, ScreenKind::Fields, words.label(PitText::AllFields), world);
    shown.wants_position = true;
    let mut fields: Vec<(Option<f64>, &FieldNotes)> = world
        .fields
        .iter()
        .filter(|notes| sought.is_none_or(|sought| sought.is_in(&notes.field.name)))
        .map(|notes| (away_m(notes, world), notes))
        .collect();
    crate::order::sort_by(&mut fields, |(one_m, one), (other_m, other)| {
        let metres = |away: &Option<f64>| away.unwrap_or(f64::INFINITY);
        let name = |notes: &FieldNotes| (notes.field.name.to_lowercase(), notes.field.id);
        metres(one_m).total_cmp(&metres(other_m)).then_with(|| name(one).cmp(&name(other)))
    });
    let asked = if fields.is_empty() { FieldText::FoundNone } else { FieldText::WhichField };
    shown.answer = Some(Headline::new(words.of(asked)));
    if world.fields.len() >= MANY {
        shown.blocks.push(Block::Typing {
            label: words.label(FieldText::Find),
            value: sought.map(|sought| sought.text().to_owned()).unwrap_or_default(),
            act: FieldAct::Find.into(),
            long: false,
        });
    }
    shown.blocks.extend(ways(fields.into_iter().map(|(away_m, notes)| row(away_m, notes, world))));
    if sought.is_some() {
        let all = Row {
            icon: None,
            title: words.label(FieldText::AllAgain),
            lines: Vec::new(),
            does: Does::Act(Act::Go(Place::Fields)),
        };
        shown.blocks.extend(ways([all]));
    } else {
        shown.blocks.extend(ways(same_names(world)));
    }
    shown.tools.push(tool(Icon::Edge, words.label(PitText::StartField), Act::Go(Place::StartField)));
    shown.tools.push(Button {
        drawing: Some(icon(Icon::OpenFile)),
        ..Button::new(words.label(Caption::OpenFile), Does::Ask(Ask::OpenFile))
    });
    shown.menu = menu(world);
    shown
}

fn menu(world: &World) -> Vec<Button> {
    vec![go(world.words.label(PitText::Own), Place::Own), not_carried_note(world)]
}

/// How far the position is from a field, metres, 0 in it; `None` where one of the two is not known.
fn away_m(notes: &FieldNotes, world: &World) -> Option<f64> {
    let fix = world.fix?;
    let map = FieldMap::of(&notes.field);
    if map.has_outline() {
        return Some(map.locate(&fix.position).outside_m.unwrap_or(0.0));
    }
    let pits = notes.pits.iter().filter_map(|pit| pit.at).map(degrees);
    let parts = notes.field.parts.iter().filter_map(|part| match &part.shape {
        PartShape::Ring(ring) => ring.first().copied(),
        PartShape::Circle { middle, .. } => Some(*middle),
    });
    let here = degrees(fix.position);
    pits.chain(parts).map(|place| walk(here, place).distance_m).min_by(f64::total_cmp)
}

fn row(away_m: Option<f64>, notes: &FieldNotes, world: &World) -> Row {
    let words = world.words;
    let answer = world.answer_of(notes);
    let last = notes.pits.iter().filter_map(|pit| pit.dug).max().map(|dug| dug.date_naive());
    let (what, pits) = if notes.pits.is_empty() {
        (words.of(FieldText::DigFirst), words.of(PitText::NoPit))
    } else {
        let all_dug = super::zones_not_dug(&answer).is_empty();
        (words.headline(&answer.advice, all_dug), words.last_dug(notes.pits.len(), last))
    };
    let at =
        |metres: f64| metres < if notes.field.outline.is_empty() { AT_FIELD_M } else { f64::MIN_POSITIVE };
    let away =
        away_m.map(|metres| if at(metres) { words.of(PitText::YouAreHere) } else { words.away(metres) });
    Row {
        icon: lead(&answer).map(|call| icon(Icon::from(call.call))).or(Some(icon(Icon::Pit))),
        title: words.name(&notes.field.name),
        lines: [Some(what), Some(pits), away].into_iter().flatten().collect(),
        does: Does::Act(Act::Go(Place::Field { field: notes.field.id })),
    }
}

/// Asks for the name of a new field. The next step enters what is typed.
pub(in crate::screen) fn start(world: &World) -> Screen {
    let words = world.words;
    let mut shown = blank(Place::StartField, ScreenKind::Fields, words.label(PitText::StartField), world);
    shown.answer = Some(Headline {
        line: words.of(FieldText::NameEnough),
        ..Headline::new(words.of(FieldText::NameAsked))
    });
    shown.blocks.push(Block::Typing {
        label: words.of(PitText::FieldName),
        value: String::new(),
        act: FieldAct::Start.into(),
        long: false,
    });
    shown.next = Some(super::super::bar::act_button(words.label(PitText::StartField), FieldAct::Start));
    shown
}

/// The field with the name that was typed.
pub(super) fn begin(
    text: Option<&str>,
    place: Place,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let name = text.unwrap_or_default().trim();
    if name.is_empty() {
        return Done { told: world.words.of(PitText::FieldNameMissing), ..Done::go(place) };
    }
    let field = Field::new(new_id(), name);
    let place = Place::Field { field: field.id };
    Done::save(Edit::Field(field), place)
}

/// To the fields whose names hold what was typed; to all of them where nothing was.
pub(super) fn find(text: Option<&str>) -> Done {
    let sought = Sought::of(text.unwrap_or_default());
    Done::go(sought.map_or(Place::Fields, |sought| Place::FoundFields { sought }))
}

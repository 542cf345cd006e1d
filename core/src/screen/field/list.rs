//! The list of fields, the nearest first; finding one by name; starting one.

use super::super::bar::{blank, tool};
use super::super::incoming::same_names;
use super::super::own::Setting;
use super::super::part::{go, way, ways};
use super::super::partners::not_carried_note;
use super::super::{
    Act, Ask, Block, Button, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World, example,
};
use super::listed::{FieldListed, listed};
use super::{FieldAct, Sought};
use crate::picture::{Icon, icon};
use crate::record::{Field, RecordId};
use crate::words::{Caption, FieldText, PitText};

/// From so many fields on one is looked for by its name. Our judgement: more than stand on two screens.
const MANY: usize = 10;

pub(in crate::screen) fn list(world: &World) -> Screen {
    if !world.fields.is_empty() {
        return fields(None, world);
    }
    let mut shown = first(Place::Fields, world);
    let example = Row {
        icon: Some(icon(Icon::Show)),
        title: world.words.label(FieldText::LookAtExample),
        lines: Vec::new(),
        does: Does::Act(Act::Go(Place::Field { field: example::FIELD })),
    };
    shown.blocks.extend(ways([example]));
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

/// Returns what this is, where nothing is noted yet, and how to begin.
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
    // Where the last field was deleted nothing but undo shows that there was one.
    let taken_back = place == Place::Fields && world.undo.is_some();
    shown.tools.retain(|_| taken_back);
    shown
}

fn fields(sought: Option<Sought>, world: &World) -> Screen {
    let words = world.words;
    let place = sought.map_or(Place::Fields, |sought| Place::FoundFields { sought });
    let mut shown = blank(place, ScreenKind::Fields, words.label(PitText::AllFields), world);
    shown.wants_position = true;
    let mut fields = listed(world);
    fields.retain(|field| sought.is_none_or(|sought| sought.is_in(&field.name)));
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
    shown.blocks.extend(ways(fields.iter().filter_map(|field| row(field, world))));
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
    let words = world.words;
    let deleted = go(words.label(FieldText::DeletedHere), Place::WentAway);
    vec![go(words.label(PitText::Own), Place::Own), not_carried_note(world), deleted]
}

fn row(field: &FieldListed, world: &World) -> Option<Row> {
    let words = world.words;
    let notes = world.notes(field.field)?;
    let answer = world.answer_of(notes);
    let work = words.label(field.work);
    let lines = if notes.pits.is_empty() {
        [words.of(FieldText::DigFirst), work]
    } else {
        let last = notes.pits.iter().filter_map(|pit| pit.dug).max().map(|dug| dug.date_naive());
        let pits = words.last_dug(field.pits, last);
        [super::headline(&answer, answer.next().as_ref(), world).text, words.comma(&[work, pits])]
    };
    let away = field
        .distance_m
        .map(|metres| if field.here { words.of(PitText::YouAreHere) } else { words.away(metres) });
    Some(Row {
        icon: Some(icon(field.call.map_or(Icon::Pit, Icon::from))),
        title: words.name(&field.name),
        lines: lines.into_iter().chain(away).collect(),
        does: Does::Act(Act::Go(Place::Field { field: field.field })),
    })
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

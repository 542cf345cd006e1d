//! The next look: the one question whose answer would change the call most.

use super::super::bar::act_button;
use super::super::part::{answers, choices, go};
use super::super::{Button, Doing, Done, Draft, Edit, Known, Place, ScreenKind, Size, World};
use super::given::{Depths, Given};
use super::skipped::is_of_field;
use super::{AtPit, PitAct, Skipped};
use crate::advice::next_look_in;
use crate::picture::answer;
use crate::reading::{Clue, NextLook, PitReading, read_field};
use crate::record::{Field, FieldNotes, OrganicMatter, OrganicMatterLevel, Pit, RecordId, Sign, TextureNote};
use crate::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use crate::words::{Heading, PitText};
use chrono::{Datelike, NaiveDate};

/// Years offered for when something last happened; the last stands for longer ago.
const YEARS: [u8; 4] = [0, 1, 2, LONGEST_YEARS];
pub(super) const LONGEST_YEARS: u8 = 3;

pub(in crate::screen) fn show(
    field: RecordId,
    pit: RecordId,
    skipped: Skipped,
    world: &World,
) -> Option<Draft> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let place = Place::NextLook { field, pit, skipped };
    let mut shown = at.screen(place, ScreenKind::NextLook, &words.of(Heading::NextLook), world);
    shown.known.extend(at.face(None, false, world));
    let look = best(at.pit, at.reading(), &at.answer.notes.field, skipped);
    let ways = [
        look.map(|look| {
            let skip = PitAct::Skip { top_mm: look.top_mm, clue: look.clue };
            act_button(words.label(PitText::NotLooked), skip)
        }),
        Some(go(words.label(PitText::ByHand), super::walk::layers_of(field, pit))),
        Some(go(words.label(PitText::CallSoFar), Place::Call { field, pit })),
    ];
    let ways: Vec<Button> = ways.into_iter().flatten().map(|way| way.sized(Size::Small)).collect();
    shown.doing.push(choices(ways.len() as u8, ways));
    match look {
        Some(look) => {
            shown.known.push(Known::Line(words.why_asked(&look)));
            shown.doing.push(Doing::Question(words.question(&look)));
            shown.doing.push(answers_to(at.pit, (look.top_mm, look.bottom_mm), look.clue, None, world));
        }
        None => shown.known.push(Known::Sentence(words.no_more_looks())),
    }
    shown.bar.main = Some(go(words.label(PitText::Enough), Place::Roll { field, pit }));
    Some(shown)
}

/// The question most worth asking, without those skipped, and without those whose answer could not be used.
pub(super) fn best(pit: &Pit, read: &PitReading, field: &Field, skipped: Skipped) -> Option<NextLook> {
    // Time since something counts from the day of the pit.
    let unusable = |clue: Clue| pit.dug.is_none() && matches!(clue, Clue::LastLoosened | Clue::LastTraffic);
    next_look_in(read, field, |layer, clue| unusable(clue) || skipped.has(layer.top_mm, clue))
}

/// The answers to a clue as buttons, drawn where they can be.
pub(super) fn answers_to(
    pit: &Pit,
    (top_mm, bottom_mm): Depths,
    clue: Clue,
    given: Option<usize>,
    world: &World,
) -> Doing {
    let words = world.words;
    if matches!(clue, Clue::LastLoosened | Clue::LastTraffic) {
        let year = |years: u8| {
            let label = words.since_year(day_of(pit, years, world), years == LONGEST_YEARS);
            act_button(label, PitAct::Since { clue, years })
        };
        return answers(YEARS.map(year).into());
    }
    let button = |index: usize| {
        let seen = PitAct::Look { top_mm, bottom_mm, clue, answer: Some(index as u8) };
        act_button(words.answer(clue, index), seen).drawn(answer(clue, index)).chosen_if(given == Some(index))
    };
    answers((0..clue.answers().len()).map(button).collect())
}

/// Notes an answer, and goes on.
pub(super) fn answered(
    notes: &FieldNotes,
    pit: &Pit,
    (layer, clue, answer): (Depths, Clue, Option<usize>),
    place: Place,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    if is_of_field(clue) {
        let field = with_clue(&notes.field, clue, answer);
        return after(notes, Edit::Field(field), pit, place);
    }
    let Some(&sign) = Sign::ALL.get(clue as usize) else { return Done::go(place) };
    let read = read_field(notes);
    let Some(index) = notes.pits.iter().position(|its| its.id == pit.id) else { return Done::go(place) };
    let depths = read.pits[index].layers.iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect();
    let mut given = Given::of(pit, depths, new_id);
    given.look(layer, sign, answer);
    let edit = match changed_layers(pit, &given.pit).as_slice() {
        [] => return onward(notes, pit, place, Vec::new()),
        [only] => Edit::Layer { pit: pit.id, layer: (*only).clone() },
        _ => Edit::Pit { field: notes.field.id, pit: given.pit.clone() },
    };
    after(notes, edit, &given.pit, place)
}

/// Layers that are new or other than before.
fn changed_layers<'a>(before: &Pit, now: &'a Pit) -> Vec<&'a crate::record::Layer> {
    now.layers.iter().filter(|layer| !before.layers.contains(layer)).collect()
}

/// A field with a clue answered for all of it.
pub(in crate::screen) fn with_clue(field: &Field, clue: Clue, answer: Option<usize>) -> Field {
    let mut field = field.clone();
    match clue {
        Clue::Texture => {
            let group = answer.and_then(|answer| TextureGroup::ALL.get(answer).copied());
            field.texture = group.map(texture_of);
        }
        Clue::OrganicMatter => {
            let level = answer.and_then(|answer| OrganicMatterLevel::ALL.get(answer).copied());
            field.organic_matter = level.map(OrganicMatter::Level);
        }
        Clue::LastLoosened if answer.is_none() => field.last_loosened = None,
        Clue::LastTraffic if answer.is_none() => field.last_traffic = None,
        _ => {}
    }
    field
}

/// Texture by feel. Notes files know no group of sands or silts, so the class that stands for it is noted.
const fn texture_of(group: TextureGroup) -> TextureNote {
    let class = match group {
        TextureGroup::Sand => TextureClass::Sand,
        TextureGroup::Silty => TextureClass::SiltLoam,
        TextureGroup::Light | TextureGroup::Medium | TextureGroup::Heavy => return TextureNote::Group(group),
    };
    TextureNote::Class(Texture { scheme: TextureScheme::Usda, class })
}

/// Notes when something last happened, by the year. Nobody asks for the day: the middle of the year stands for it, and
/// of the pit's own year its first day, since it was before the pit.
pub(super) fn since(
    notes: &FieldNotes,
    pit: &Pit,
    clue: Clue,
    years: u8,
    place: Place,
    world: &World,
) -> Done {
    let day = Some(day_of(pit, years, world));
    let mut field = notes.field.clone();
    match clue {
        Clue::LastLoosened => field.last_loosened = day,
        Clue::LastTraffic => field.last_traffic = day,
        _ => return Done::go(place),
    }
    after(notes, Edit::Field(field), pit, place)
}

pub(super) fn day_of(pit: &Pit, years: u8, world: &World) -> NaiveDate {
    let dug = pit.dug.unwrap_or(world.now).date_naive();
    let month = if years == 0 { 1 } else { 7 };
    NaiveDate::from_ymd_opt(dug.year() - i32::from(years), month, 1).unwrap_or(dug)
}

pub(super) fn skip(notes: &FieldNotes, pit: &Pit, (top_mm, clue): (u32, Clue), place: Place) -> Done {
    match place {
        Place::NextLook { field, pit: id, skipped } => {
            let place = Place::NextLook { field, pit: id, skipped: skipped.with(top_mm, clue) };
            onward(notes, pit, place, Vec::new())
        }
        _ => Done::go(place),
    }
}

/// After an answer: the next question, or back to where it was answered by hand.
fn after(notes: &FieldNotes, edit: Edit, pit: &Pit, place: Place) -> Done {
    let mut notes = notes.clone();
    if let Edit::Field(field) = &edit {
        notes.field = field.clone();
    }
    onward(&notes, pit, place, vec![edit])
}

/// After something of a pit was saved: to the next look, or to the roll test where nothing is worth asking.
pub(super) fn then(notes: &FieldNotes, edit: Edit, pit: &Pit, skipped: Skipped) -> Done {
    after(notes, edit, pit, Place::NextLook { field: notes.field.id, pit: pit.id, skipped })
}

fn onward(notes: &FieldNotes, pit: &Pit, place: Place, edits: Vec<Edit>) -> Done {
    let place = match place {
        Place::NextLook { field, skipped, .. } => {
            let mut notes = notes.clone();
            for own in notes.pits.iter_mut().filter(|own| own.id == pit.id) {
                *own = pit.clone();
            }
            let read = read_field(&notes);
            let both = notes.pits.iter().zip(&read.pits).find(|(own, _)| own.id == pit.id);
            let look = both.and_then(|(own, read)| best(own, read, &notes.field, skipped));
            if look.is_some() { place } else { Place::Roll { field, pit: pit.id } }
        }
        Place::Layers { .. } => place.above().unwrap_or(place),
        _ => place,
    };
    Done { edits, ..Done::go(place) }
}

//! The next look: the one question whose answer would change the call most.

use super::super::bar::act_button;
use super::super::{Act, Block, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World};
use super::faces::strip_face;
use super::given::{Depths, Given};
use super::skipped::is_of_field;
use super::{AtPit, PitAct, Skipped, roll, skip_tool};
use crate::advice::next_look_in;
use crate::picture::{Icon, answer, icon};
use crate::reading::{Clue, LayerReading, NextLook, PitReading, TAP_WORTH, Table, read_field, shares};
use crate::record::{Field, FieldNotes, OrganicMatter, OrganicMatterLevel, Pit, RecordId, Sign, TextureNote};
use crate::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use crate::words::{FaceText, Heading};
use chrono::{Datelike, NaiveDate};

/// Years offered for when something last happened; the last stands for longer ago.
const YEARS: [u8; 4] = [0, 1, 2, LONGEST_YEARS];
pub(super) const LONGEST_YEARS: u8 = 3;
/// After so many looks passed over in a pit no more are asked: who passes over four does not want to look. Our judgement.
const MOST_PASSED: usize = 4;
/// No more looks than this are counted: counting takes a search each. Our judgement.
const MOST_COUNTED: usize = 5;
/// A look that a moist face cannot show (an air-dry piece in water) must be worth so many taps: it takes a dry piece and
/// some minutes. Our judgement.
const DRY_PIECE_TAPS: f64 = 10.0;

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let skipped = world.passed_over(pit);
    let Some(look) = best(at.pit, at.reading(), &at.answer.notes.field, skipped) else {
        return roll::show(field, pit, None, world);
    };
    let mut shown = at.screen(Place::NextLook { field, pit }, ScreenKind::NextLook, world);
    let left = left(at.pit, at.reading(), &at.answer.notes.field, skipped);
    let line = words.looks_to_see(left.saturating_sub(1), Some(&look));
    shown.answer = Some(Headline { line, ..Headline::new(words.question(&look)) });
    let lit = (!is_of_field(look.clue)).then_some((look.top_mm, look.bottom_mm));
    shown.picture = Some(strip_face(&at, lit, world));
    let depths = (look.top_mm, look.bottom_mm);
    shown.blocks.push(answers_to(at.pit, depths, look.clue, None, world));
    shown.blocks.push(ways(&at, world));
    shown.tools.push(skip_tool(PitAct::Skip { top_mm: look.top_mm, clue: look.clue }, world));
    Some(shown)
}

/// Out of the asking: to the roll test, the layers, and the answer so far.
fn ways(at: &AtPit, world: &World) -> Block {
    let (words, field, pit) = (world.words, at.field, at.pit.id);
    let row = |of: Icon, title: String, place: Place| Row {
        icon: Some(icon(of)),
        title,
        lines: Vec::new(),
        does: Does::Act(Act::Go(place)),
    };
    let mut rows = vec![
        row(Icon::Roll, words.label(Heading::RollTest), Place::Roll { field, pit }),
        row(Icon::Show, words.label(FaceText::AnswerSoFar), Place::Call { field, pit }),
        row(Icon::Layers, words.label(Heading::Layers), super::walk::layers_of(field, pit)),
    ];
    rows.extend(super::faces::layer_rows(at, world));
    Block::Ways { heading: String::new(), rows }
}

/// The question most worth asking, without those passed over, and without those whose answer could not be used. What a
/// moist face cannot show comes last, and only where it is worth the waiting.
pub(super) fn best(pit: &Pit, read: &PitReading, field: &Field, skipped: Skipped) -> Option<NextLook> {
    if skipped.looks() >= MOST_PASSED {
        return None;
    }
    // Time since something counts from the day of the pit.
    let unusable = |clue: Clue| pit.dug.is_none() && matches!(clue, Clue::LastLoosened | Clue::LastTraffic);
    let left_out = |layer: &LayerReading, clue: Clue| unusable(clue) || skipped.has(layer.top_mm, clue);
    let seen = next_look_in(read, field, |layer, clue| clue == Clue::ClodInWater || left_out(layer, clue));
    let dry = || next_look_in(read, field, left_out).filter(|look| look.gain >= DRY_PIECE_TAPS * TAP_WORTH);
    seen.or_else(dry)
}

/// How many looks are still to come, this one counted, if each shows what is most likely.
pub(super) fn left(pit: &Pit, read: &PitReading, field: &Field, skipped: Skipped) -> usize {
    let table = Table::standard();
    let mut read = read.clone();
    let mut count = 0;
    while let Some(look) = best(pit, &read, field, skipped).filter(|_| count < MOST_COUNTED) {
        count += 1;
        let likeliest = likeliest(&read.layers[look.layer], look.clue, table);
        let own = |index: usize| index == look.layer || is_of_field(look.clue);
        for (index, layer) in read.layers.iter_mut().enumerate() {
            if own(index) {
                layer.evidence = layer.evidence.with(look.clue, Some(likeliest));
                layer.shares = shares(&layer.evidence, table);
            }
        }
    }
    count
}

/// The answer to a clue that a layer most likely shows, as an index.
fn likeliest(layer: &LayerReading, clue: Clue, table: &Table) -> usize {
    let chance = |answer: usize| {
        let chances = table.chances(clue, answer, layer.evidence.texture);
        chances.map_or(0.0, |chances| {
            layer.shares.iter().zip(chances.iter()).map(|(share, chance)| share * chance).sum::<f64>()
        })
    };
    let answers = 0..clue.answers().len();
    answers.max_by(|one, other| chance(*one).total_cmp(&chance(*other))).unwrap_or(0)
}

/// The answers to a clue as buttons, drawn where they can be.
pub(super) fn answers_to(
    pit: &Pit,
    (top_mm, bottom_mm): Depths,
    clue: Clue,
    given: Option<usize>,
    world: &World,
) -> Block {
    let words = world.words;
    if matches!(clue, Clue::LastLoosened | Clue::LastTraffic) {
        let year = |years: u8| {
            let label = words.since_year(day_of(pit, years, world), years == LONGEST_YEARS);
            act_button(label, PitAct::Since { clue, years })
        };
        return Block::Question { text: String::new(), columns: 2, answers: YEARS.map(year).into() };
    }
    let button = |index: usize| {
        let seen = PitAct::Look { top_mm, bottom_mm, clue, answer: Some(index as u8) };
        act_button(words.answer(clue, index), seen).drawn(answer(clue, index)).chosen_if(given == Some(index))
    };
    let answers: Vec<_> = (0..clue.answers().len()).map(button).collect();
    Block::Question { text: String::new(), columns: columns(answers.len()), answers }
}

/// So many answers in a row that each stays large.
pub(super) const fn columns(answers: usize) -> u8 {
    match answers {
        0 | 1 => 1,
        2 | 4 => 2,
        _ => 3,
    }
}

/// Notes an answer, and goes on.
pub(super) fn answered(
    notes: &FieldNotes,
    pit: &Pit,
    (layer, clue, answer): (Depths, Clue, Option<usize>),
    place: Place,
    (world, new_id): (&World, &mut dyn FnMut() -> RecordId),
) -> Done {
    if is_of_field(clue) {
        let field = with_clue(&notes.field, clue, answer);
        return after(notes, Edit::Field(field), pit, place, world);
    }
    let Some(&sign) = Sign::ALL.get(clue as usize) else { return Done::go(place) };
    let read = read_field(notes);
    let Some(index) = notes.pits.iter().position(|its| its.id == pit.id) else { return Done::go(place) };
    let depths = read.pits[index].layers.iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect();
    let mut given = Given::of(pit, depths, new_id);
    given.look(layer, sign, answer);
    let edit = match changed_layers(pit, &given.pit).as_slice() {
        [] => return Done::go(onward(notes, pit, place, world.passed_over(pit.id), world)),
        [only] => Edit::Layer { pit: pit.id, layer: (*only).clone() },
        _ => Edit::Pit { field: notes.field.id, pit: given.pit.clone() },
    };
    after(notes, edit, &given.pit, place, world)
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
    after(notes, Edit::Field(field), pit, place, world)
}

pub(super) fn day_of(pit: &Pit, years: u8, world: &World) -> NaiveDate {
    let dug = pit.dug.unwrap_or(world.now).date_naive();
    let month = if years == 0 { 1 } else { 7 };
    NaiveDate::from_ymd_opt(dug.year() - i32::from(years), month, 1).unwrap_or(dug)
}

/// Passes a look over.
pub(super) fn skip(
    notes: &FieldNotes,
    pit: &Pit,
    (top_mm, clue): (u32, Clue),
    place: Place,
    world: &World,
) -> Done {
    let skipped = world.passed_over(pit.id).with(top_mm, clue);
    let place = onward(notes, pit, place, skipped, world);
    Done { passed_over: Some((pit.id, skipped)), ..Done::go(place) }
}

/// After an answer: the next question, or back to where it was answered by hand.
fn after(notes: &FieldNotes, edit: Edit, pit: &Pit, place: Place, world: &World) -> Done {
    let mut notes = notes.clone();
    if let Edit::Field(field) = &edit {
        notes.field = field.clone();
    }
    let place = onward(&notes, pit, place, world.passed_over(pit.id), world);
    Done::save(edit, place)
}

/// After something of a pit was saved: to the next look, or to the roll test where nothing is worth asking.
pub(super) fn then(notes: &FieldNotes, edit: Edit, pit: &Pit, world: &World) -> Done {
    after(notes, edit, pit, Place::NextLook { field: notes.field.id, pit: pit.id }, world)
}

/// Where one goes with the notes as they will be.
fn onward(notes: &FieldNotes, pit: &Pit, place: Place, skipped: Skipped, world: &World) -> Place {
    match place {
        Place::NextLook { .. } => {
            let mut notes = notes.clone();
            for own in notes.pits.iter_mut().filter(|own| own.id == pit.id) {
                *own = pit.clone();
            }
            let read = read_field(&notes);
            let both = notes.pits.iter().zip(&read.pits).find(|(own, _)| own.id == pit.id);
            let look = both.and_then(|(own, read)| best(own, read, &notes.field, skipped));
            if look.is_some() { place } else { roll::onward(&notes, pit, skipped, place, world) }
        }
        Place::Layers { .. } => place.above().unwrap_or(place),
        _ => place,
    }
}

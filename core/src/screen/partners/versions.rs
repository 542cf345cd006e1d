//! Values of which several versions stand, and records that were deleted while somebody went on with them: shown where
//! they are, one question at a time.

use super::super::bar::{act_button, blank, choice};
use super::super::part::go;
use super::super::{Act, Block, Button, Does, Headline, Place, Row, Screen, ScreenKind, World};
use super::PartnersAct;
use crate::record::RecordId;
use crate::store::{Belongs, Conflict, Version};
use crate::words::{PartnerText, Wrote};
use chrono::{DateTime, NaiveDateTime};

/// Those of a pit; or, without a pit, of a field and all in it that is of no pit.
fn of<'a>(field: RecordId, pit: Option<RecordId>, world: &'a World) -> Vec<&'a (Belongs, Conflict)> {
    let versions = world.partners.versions.iter();
    versions.filter(|(belongs, _)| belongs.field == Some(field) && belongs.pit == pit).collect()
}

/// One value with its versions: the tapped one stands from then on.
pub(in crate::screen) fn show_versions(
    field: RecordId,
    pit: Option<RecordId>,
    number: u16,
    world: &World,
) -> Option<Screen> {
    let words = world.words;
    let all = of(field, pit, world);
    let at = usize::from(number).min(all.len().checked_sub(1)?);
    let (belongs, conflict) = all[at];
    let place = Place::Versions { field, pit, number: u16::try_from(at).unwrap_or(u16::MAX) };
    let title = words.label(PartnerText::Versions);
    let mut screen = blank(place, ScreenKind::Versions, title, world);
    let of = words.versions_of(&words.belongs(belongs), conflict.cell);
    screen.answer = Some(Headline { line: of, ..Headline::new(words.label(PartnerText::WhichHolds)) });
    let button = |(index, version): (u16, &Version)| {
        let act =
            PartnersAct::Settle { record: conflict.record, cell: conflict.cell.number(), version: index };
        let label = words.version_label(conflict.cell, &version.value);
        Button { note: words.wrote(&wrote(version, world)), ..choice(label, act, index == 0) }
    };
    screen.blocks = vec![
        answers((0..).zip(&conflict.versions).map(button).collect()),
        Block::Text(words.label(PartnerText::BothKept)),
    ];
    if all.len() > 1 {
        let next = u16::try_from((at + 1) % all.len()).unwrap_or_default();
        let label = words.next_version(at + 1, all.len());
        screen.next = Some(go(label, Place::Versions { field, pit, number: next }));
    }
    Some(screen)
}

/// Answers to what the headline asks, one under the other.
fn answers(answers: Vec<Button>) -> Block {
    Block::Question { text: String::new(), columns: 1, answers }
}

/// Where to go once a value is settled: on to what is left of its kind, else above.
pub(super) fn after_one(place: Place, world: &World) -> Place {
    match place {
        Place::Versions { field, pit, .. } if of(field, pit, world).len() > 1 => place,
        _ => place.above().unwrap_or(Place::Fields),
    }
}

/// A record that was deleted while somebody went on with it.
pub(in crate::screen) fn show_regretted(number: u16, world: &World) -> Option<Screen> {
    let (words, all) = (world.words, &world.partners.regretted);
    let at = usize::from(number).min(all.len().checked_sub(1)?);
    let (belongs, regretted) = &all[at];
    let place = Place::Regretted { number: u16::try_from(at).unwrap_or(u16::MAX) };
    let mut screen = blank(place, ScreenKind::Versions, words.label(PartnerText::RegrettedShort), world);
    let others: Vec<_> =
        regretted.edited.iter().map(|(cell, version)| (*cell, wrote(version, world))).collect();
    let (place, deleted) = (words.belongs(belongs), wrote(&regretted.deleted, world));
    let line = words.regretted_short(&place, &deleted, &others);
    screen.answer = Some(Headline { line, ..Headline::new(words.label(PartnerText::WhatHolds)) });
    let record = regretted.record;
    let given = [
        (PartnerText::BringBack, PartnersAct::BringBack(record)),
        (PartnerText::StayDeleted, PartnersAct::StayDeleted(record)),
    ];
    let given = given.map(|(label, act)| act_button(words.label(label), act));
    let told = words.regretted_line(at + 1, &place, &deleted, &others);
    screen.blocks =
        vec![answers(given.into()), Block::Text(told), Block::Text(words.label(PartnerText::BothKept))];
    if all.len() > 1 {
        let next = u16::try_from((at + 1) % all.len()).unwrap_or_default();
        let label = words.next_version(at + 1, all.len());
        screen.next = Some(go(label, Place::Regretted { number: next }));
    }
    Some(screen)
}

/// Rows to all that is to be settled, for the screen of the partners.
pub(super) fn rows(world: &World) -> Vec<Row> {
    let (words, partners) = (world.words, world.partners);
    let mut places: Vec<(RecordId, Option<RecordId>)> = Vec::new();
    for (belongs, _) in &partners.versions {
        if let Some(field) = belongs.field
            && !places.contains(&(field, belongs.pit))
        {
            places.push((field, belongs.pit));
        }
    }
    let versions = places.into_iter().filter_map(|(field, pit)| row(field, pit, world));
    let regretted = (!partners.regretted.is_empty()).then(|| Row {
        icon: None,
        title: words.label(PartnerText::Regretted),
        lines: partners.regretted.iter().map(|(belongs, _)| words.belongs(belongs)).collect(),
        does: Does::Act(Act::Go(Place::Regretted { number: 0 })),
    });
    versions.chain(regretted).collect()
}

/// The row of what is to be settled in a pit, or in a field outside its pits.
fn row(field: RecordId, pit: Option<RecordId>, world: &World) -> Option<Row> {
    let words = world.words;
    let all = of(field, pit, world);
    let (first, _) = all.first()?;
    let cells = all.iter().map(|(_, conflict)| words.cell(conflict.cell));
    let mut of_pit = first.clone();
    // The pit or field itself, not what hangs in it.
    let depth = if pit.is_some() { 2 } else { 1 };
    of_pit.kinds.truncate(depth);
    Some(Row {
        icon: None,
        title: words.versions_in(&words.belongs(&of_pit), all.len()),
        lines: vec![words.comma(&cells.collect::<Vec<_>>())],
        does: Does::Act(Act::Go(Place::Versions { field, pit, number: 0 })),
    })
}

/// How many values of a pit have several versions; nothing where none has.
pub(in crate::screen) fn versions_line(field: RecordId, pit: RecordId, world: &World) -> Option<String> {
    let count = of(field, Some(pit), world).len();
    (count > 0).then(|| world.words.versions_here(count))
}

/// The same screen, with the way to what is to be settled in what it shows before everything else.
pub(in crate::screen) fn marked(mut screen: Screen, world: &World) -> Screen {
    let at = match screen.place {
        Place::Field { field } => Some((field, None)),
        Place::StartPit { field, pit: Some(pit) }
        | Place::KnifeWalk { field, pit }
        | Place::Layers { field, pit, layer: None, clue: None }
        | Place::Photos { field, pit }
        | Place::Call { field, pit } => Some((field, Some(pit))),
        _ => None,
    };
    if let Some(row) = at.and_then(|(field, pit)| row(field, pit, world)) {
        screen.blocks.insert(0, Block::Ways { heading: String::new(), rows: vec![row] });
    }
    screen
}

fn wrote<'a>(version: &'a Version, world: &World) -> Wrote<'a> {
    Wrote { device: version.device, holder: &version.holder, when: local(version.written_ms, world) }
}

/// A moment as it was here.
pub(in crate::screen) fn local(ms: u64, world: &World) -> Option<NaiveDateTime> {
    let time = DateTime::from_timestamp_millis(i64::try_from(ms).ok()?)?;
    Some(time.with_timezone(world.now.offset()).naive_local())
}

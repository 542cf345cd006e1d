//! One hole behind the machine: its depths one by one on the section, then what it says.

use super::drawn::key_below;
use super::hole::AtHole;
use super::next::Next;
use super::pass::causes;
use super::readings::across_mm;
use super::{BehindAct, HoleStep, READINGS, looks, machine_of};
use crate::advice::after_dig::unfinished;
use crate::picture::Icon;
use crate::record::RecordId;
use crate::screen::bar::{main_button, tool};
use crate::screen::deleting::entry;
use crate::screen::grid::Marked;
use crate::screen::{Act, Block, Does, Headline, Picture, Place, Row, Screen, Section, World};
use crate::words::{Caption, Heading, Words, WorkText};

/// A hole: the next depth while they are read, then what it says.
pub(in crate::screen) fn show(
    field: RecordId,
    pass: RecordId,
    dig: RecordId,
    world: &World,
) -> Option<Screen> {
    let at = AtHole::of(field, pass, Some(dig), world)?;
    let (noted, _) = at.dig()?;
    let reading_on = looks::nothing_noted(noted) || unfinished(noted, world.now.date_naive());
    let mut screen =
        if reading_on { reading(&at, noted.firm_mm.len(), None, world) } else { result(&at, world)? };
    screen.place = at.result();
    screen.menu.extend(entry(&at.answer.notes, dig, world));
    Some(screen)
}

/// One step of a hole.
pub(in crate::screen) fn show_step(
    field: RecordId,
    (pass, dig): (RecordId, Option<RecordId>),
    (step, from_mm): (HoleStep, Option<u32>),
    world: &World,
) -> Option<Screen> {
    let at = AtHole::of(field, pass, dig, world)?;
    Some(match step {
        HoleStep::Reading(number) => reading(&at, number.into(), from_mm, world),
        HoleStep::Readings => readings(&at, world),
        HoleStep::Slot(number) => slot(&at, number.into(), from_mm, world),
        HoleStep::Look { look, queued } => looks::show(&at, look, queued, world),
        HoleStep::Looks => looks::list(&at, world),
    })
}

/// One depth to firm ground: the next, or one that is put right.
fn reading(at: &AtHole, number: usize, from_mm: Option<u32>, world: &World) -> Screen {
    let words = world.words;
    let dig = at.dig_or_new();
    let number = number.min(dig.firm_mm.len());
    let step = HoleStep::Reading(number as u16);
    let mut screen = at.screen(step, from_mm, world);
    let across = machine_of(&at.answer.notes, at.pass()).map(|machine| across_mm(number, machine.spacing_mm));
    screen.answer = Some(Headline {
        line: words.reading_place(number + 1, READINGS.max(dig.firm_mm.len()), across),
        ..Headline::new(words.label(WorkText::FirmQuestion))
    });
    screen.picture = at.form(Some(number), world);
    let (aim, unit) = (at.aim(), words.unit());
    let chosen_mm = dig.firm_mm.get(number).copied();
    // The next depth is likely near the one before.
    let near_mm = chosen_mm.or(dig.firm_mm.last().copied());
    let grid = aim.offered(unit, near_mm, from_mm);
    let marked = Marked { chosen_mm, likely_mm: near_mm.or(aim.target_mm) };
    let of = words.reading_number(number + 1);
    screen.blocks = vec![grid.question(marked, &of, words, |mm| BehindAct::Read(mm).into())];
    screen.tools.extend(grid.moved([WorkText::LessDeep, WorkText::Deeper], words, |from_mm| {
        Act::Go(at.place(step, Some(from_mm)))
    }));
    if dig.firm_mm.is_empty() {
        let look = looks::next(&dig, at.season_on(), None);
        let look = look.map(|look| at.place(HoleStep::Look { look, queued: true }, None));
        let skip = |place| tool(Icon::Skip, words.label(WorkText::NotRead), Act::Go(place));
        screen.tools.extend(look.map(skip));
    }
    screen.blocks.extend(taken(at, Some(number), words));
    if machine_of(&at.answer.notes, at.pass()).is_none() {
        screen.blocks.push(Block::Text(words.label(Caption::NoMachineNoSection)));
    }
    screen.wants_position = dig.at.is_none() && chosen_mm.is_none();
    screen
}

/// The depths taken, the last first, each to be put right; but one.
fn taken(at: &AtHole, but: Option<usize>, words: &Words) -> Option<Block> {
    let dig = at.dig_or_new();
    let row = |(index, mm): (usize, &u32)| Row {
        icon: None,
        title: words.named(&words.reading_number(index + 1), &words.depth(*mm)),
        lines: Vec::new(),
        does: Does::Act(Act::Go(at.place(HoleStep::Reading(index as u16), None))),
    };
    let rows = dig.firm_mm.iter().enumerate().rev().filter(|(index, _)| Some(*index) != but);
    let rows: Vec<Row> = rows.map(row).collect();
    let heading = words.label(WorkText::Readings);
    (!rows.is_empty()).then_some(Block::Ways { heading, rows })
}

/// All depths on the section, to put one right or to add one.
fn readings(at: &AtHole, world: &World) -> Screen {
    let words = world.words;
    let dig = at.dig_or_new();
    let mut screen = at.screen(HoleStep::Readings, None, world);
    screen.answer = Some(Headline::new(words.label(WorkText::MendWhich)));
    screen.picture = at.form(None, world);
    screen.blocks = taken(at, None, words).into_iter().collect();
    let next = at.place(HoleStep::Reading(dig.firm_mm.len() as u16), None);
    screen.tools.push(tool(Icon::More, words.label(WorkText::OneMore), Act::Go(next)));
    screen
}

/// The bottom of one slot, leg by leg.
fn slot(at: &AtHole, number: usize, from_mm: Option<u32>, world: &World) -> Screen {
    let words = world.words;
    let dig = at.dig_or_new();
    let number = number.min(dig.slots_mm.len());
    let step = HoleStep::Slot(number as u16);
    let mut screen = at.screen(step, from_mm, world);
    screen.answer = Some(Headline {
        line: words.slot_place(number + 1, at.slots().max(number + 1)),
        ..Headline::new(words.label(WorkText::SlotQuestion))
    });
    let chosen_mm = dig.slots_mm.get(number).copied();
    let aim = at.aim();
    let near_mm = chosen_mm.or(dig.slots_mm.last().copied());
    let grid = aim.offered(words.unit(), near_mm, from_mm);
    let marked = Marked { chosen_mm, likely_mm: near_mm.or(aim.target_mm) };
    let of = words.slot_number(number + 1);
    screen.blocks = vec![grid.question(marked, &of, words, |mm| BehindAct::Slot(mm).into())];
    screen.tools.extend(grid.moved([WorkText::LessDeep, WorkText::Deeper], words, |from_mm| {
        Act::Go(at.place(step, Some(from_mm)))
    }));
    let row = |(index, mm): (usize, &u32)| Row {
        icon: None,
        title: words.named(&words.slot_number(index + 1), &words.depth(*mm)),
        lines: Vec::new(),
        does: Does::Act(Act::Go(at.place(HoleStep::Slot(index as u16), None))),
    };
    let rows: Vec<Row> =
        dig.slots_mm.iter().enumerate().filter(|(index, _)| *index != number).map(row).collect();
    if !rows.is_empty() {
        screen.blocks.push(Block::Ways { heading: words.label(WorkText::Slots), rows });
    }
    screen.caution = words.of(crate::advice::Caution::MachineStopped);
    screen
}

/// Returns what the pass did here, and why.
fn result(at: &AtHole, world: &World) -> Option<Screen> {
    let words = world.words;
    let (dig, said) = at.dig()?;
    let mut screen = at.screen(HoleStep::Readings, None, world);
    screen.answer =
        Some(Headline { line: words.after_dig_found(said), ..Headline::new(words.hole_headline(said)) });
    let readings = at.place(HoleStep::Readings, None);
    let drawn = at.hole(world)?.drawn_and_key(words.behind_title(), words);
    let key_lines = drawn.as_ref().map(|(_, key)| key.clone());
    screen.picture =
        drawn.map(|(pictured, _)| Picture { anywhere: Some(Act::Go(readings)), ..pictured.into() });
    let row = |text: WorkText, line: String, to: Place| Row {
        icon: None,
        title: words.label(text),
        lines: vec![line],
        does: Does::Act(Act::Go(to)),
    };
    let read =
        if dig.firm_mm.is_empty() { words.label(WorkText::NotRead) } else { words.depths_read(&dig.firm_mm) };
    let left = looks::left(dig, at.season_on());
    let rows = vec![
        row(WorkText::Readings, read, readings),
        row(WorkText::Seen, words.looks_left(left), at.place(HoleStep::Looks, None)),
    ];
    screen.blocks.push(Block::Ways { heading: String::new(), rows });
    if machine_of(&at.answer.notes, at.pass()).is_none() {
        screen.blocks.push(Block::Text(words.label(Caption::NoMachineNoSection)));
    } else if !dig.firm_mm.is_empty() && dig.firm_mm.len() < READINGS {
        screen.blocks.push(Block::Text(words.label(Caption::FewReadings)));
    }
    if let Some(lines) = key_lines {
        screen.blocks.push(key_below(lines, world.letters, words));
    }
    let why: Vec<String> = said.why.iter().map(|why| words.verdict_reason(why)).collect();
    let pair = said.pair.iter().map(|pair| words.pair_sentences(pair));
    let why: Vec<String> = why.into_iter().chain(pair).collect();
    screen.more.extend(causes(said, words));
    if !why.is_empty() {
        screen.more.push(Section { heading: words.label(Heading::Why), lines: why });
    }
    let next = Next::of(&at.answer, at.pass(), at.said_of_pass(), world.now.date_naive());
    let elsewhere = next.filter(|next| next.place(at.field, at.pass()) != at.result());
    let to_pass = Act::Go(Place::Pass { field: at.field, pass: Some(at.pass().id) });
    screen.next = Some(elsewhere.map_or_else(
        || main_button(words.label(WorkText::ToPass), to_pass),
        |next| next.button(at.field, at.pass(), words),
    ));
    screen.blocks.insert(0, Block::Text(words.next_sentence(at.said_of_pass())));
    Some(screen)
}

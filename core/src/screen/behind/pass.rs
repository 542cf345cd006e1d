//! One pass: what came of it, and what is noted of it.

use super::drawn::key_below;
use super::next::Next;
use super::{Hole, OfPass, PassDetail, PassSaid, machine_of};
use crate::advice::after_dig::{DigAdvice, PassAdvice};
use crate::answer::FieldAnswer;
use crate::picture::machine::KeyLine;
use crate::picture::{Icon, icon};
use crate::record::{AfterDig, Pass, RecordId, Zone};
use crate::screen::bar::{blank, main_button, tool};
use crate::screen::deleting::entry;
use crate::screen::{
    Act, Block, Does, Headline, Picture, Pictured, Place, Row, Screen, ScreenKind, Section, World,
};
use crate::words::{Caption, Heading, Words, WorkText};

pub(super) fn show(field: RecordId, pass: RecordId, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let today = world.now.date_naive();
    let (pass, said) = answer.notes.passes.iter().zip(&answer.passes).find(|(its, _)| its.id == pass)?;
    let place = Place::Pass { field, pass: Some(pass.id) };
    let mut screen = blank(place, ScreenKind::Pass, title_of(pass, words), world);
    screen.answer =
        Some(Headline { line: words.pass_line(said), ..Headline::new(words.pass_headline(said)) });
    let last = last_hole(&answer, (pass, said), today, world.letters);
    let drawn = last.and_then(|hole| {
        let (drawn, key) = hole.drawn_and_key(words.behind_title(), words)?;
        let anywhere = Some(Act::Go(Place::AfterDig { field, pass: pass.id, dig: hole.dig.id }));
        Some((Picture { anywhere, ..drawn.into() }, key))
    });
    let next = Next::of(&answer, pass, said, today);
    screen.next = next.map(|next| next.button(field, pass, words));
    if next != Some(Next::Dig) {
        let dig = Next::Dig.place(field, pass);
        screen.tools.push(tool(Icon::Behind, words.label(Caption::DigBehind), Act::Go(dig)));
    }
    screen.blocks.push(Block::Text(words.next_sentence(said)));
    screen.blocks.extend(holes(field, (pass, said), words));
    screen.blocks.push(details(&answer, OfPass::Noted(pass.id), pass, words));
    if let Some((picture, lines)) = drawn {
        screen.picture = Some(picture);
        screen.blocks.push(key_below(lines, world.letters, words));
    }
    let traffic = said.traffic.as_ref().map(|traffic| words.traffic_warning(traffic));
    screen.caution = traffic.as_ref().and_then(|lines| lines.first().cloned()).unwrap_or_default();
    screen.more = reasons(said, traffic.unwrap_or_default(), words);
    screen.menu.extend(entry(&answer.notes, pass.id, world));
    Some(screen)
}

/// A pass that its first answer saves.
pub(in crate::screen) fn show_new(
    field: RecordId,
    machine: Option<RecordId>,
    zone: Option<Zone>,
    world: &World,
) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let of = OfPass::New { machine, zone };
    let pass = Pass { machine, zone, ..Pass::new(field) };
    let title = words.label(Caption::NewPass);
    let mut screen = blank(of.place(field), ScreenKind::Pass, title, world);
    screen.answer = Some(Headline {
        line: words.label(WorkText::NewPassLine),
        ..Headline::new(words.label(WorkText::NewPassAnswer))
    });
    screen.blocks.push(details(&answer, of, &pass, words));
    screen.next = Some(if machine.is_none() && !answer.notes.machines.is_empty() {
        let (pass, detail) = (of, PassDetail::Machine);
        let ask = Place::PassDetail { field, pass, detail, from_mm: None };
        main_button(words.label(WorkText::SayMachine), Act::Go(ask))
    } else {
        main_button(words.label(WorkText::RanToday), PassSaid::Done(world.now.date_naive()))
    });
    Some(screen)
}

/// Returns what a pass is called in the line at the very top.
fn title_of(pass: &Pass, words: &Words) -> String {
    words.pass_title(&Pass { tip_mm: None, speed_kmh: None, ..pass.clone() }, None)
}

/// Everything else that the holes and the wheels say.
fn reasons(said: &PassAdvice, traffic: Vec<String>, words: &Words) -> Vec<Section> {
    let mut lines: Vec<String> = Vec::new();
    lines.extend(said.no_strip_before.then(|| words.no_strip_before()));
    lines.extend(traffic);
    let worst = said.digs.iter().rfind(|dig| !dig.season_on && Some(dig.verdict) == said.verdict);
    let mut sections: Vec<Section> = worst.and_then(|dig| causes(dig, words)).into_iter().collect();
    lines.extend(worst.and_then(|dig| dig.pair).map(|pair| words.pair_sentences(&pair)));
    if !lines.is_empty() {
        sections.push(Section { heading: words.label(Heading::Why), lines });
    }
    sections
}

/// The last hole of a pass that can be drawn.
fn last_hole<'a>(
    answer: &'a FieldAnswer,
    (pass, said): (&'a Pass, &'a PassAdvice),
    today: chrono::NaiveDate,
    text_scale: f64,
) -> Option<Hole<'a>> {
    let holes = pass.after_digs.iter().zip(&said.digs);
    let mut read =
        holes.filter(|(dig, _)| !crate::advice::after_dig::unfinished(dig, today) && dig.firm_mm.len() > 1);
    let (notes, reading) = (&answer.notes, &answer.reading);
    read.next_back().map(|(dig, said)| Hole { notes, reading, pass, dig, said, text_scale })
}

/// The last hole of a pass that can be drawn, with what it says.
pub(in crate::screen) fn last_drawn<'a>(
    answer: &'a FieldAnswer,
    (pass, said): (&'a Pass, &'a PassAdvice),
    today: chrono::NaiveDate,
    text_scale: f64,
    words: &Words,
) -> Option<(&'a DigAdvice, Pictured, Vec<KeyLine>)> {
    let hole = last_hole(answer, (pass, said), today, text_scale)?;
    let index = pass.after_digs.iter().position(|its| its.id == hole.dig.id)?;
    let (drawn, key) = hole.drawn_and_key(title(index, hole.dig, words), words)?;
    Some((hole.said, drawn, key))
}

/// Likely causes of a hole: the first with what to check and to change, the others in a line.
pub(super) fn causes(dig: &DigAdvice, words: &Words) -> Option<Section> {
    let (first, others) = dig.causes.split_first()?;
    let others = others.iter().take(OTHER_CAUSES).map(|cause| words.cause_line(cause));
    let lines = words.cause_lines(first).into_iter().chain(others).collect();
    Some(Section { heading: words.label(Heading::Causes), lines })
}

/// Causes told beside the likeliest. Our judgement.
const OTHER_CAUSES: usize = 2;

/// Returns what a hole is called.
fn title(index: usize, dig: &AfterDig, words: &Words) -> String {
    words.hole_behind(index + 1, dig.dug.map(|dug| dug.date_naive()))
}

fn holes(field: RecordId, (pass, said): (&Pass, &PassAdvice), words: &Words) -> Option<Block> {
    let rows: Vec<Row> = (pass.after_digs.iter().zip(&said.digs).enumerate())
        .map(|(index, (dig, said))| Row {
            icon: Some(icon(Icon::Behind)),
            title: title(index, dig, words),
            lines: vec![words.hole_headline(said)],
            does: Does::Act(Act::Go(Place::AfterDig { field, pass: pass.id, dig: dig.id })),
        })
        .collect();
    let heading = words.label(Caption::Holes);
    (!rows.is_empty()).then_some(Block::Ways { heading, rows })
}

/// Returns what is noted of a pass, each a way to its question.
fn details(answer: &FieldAnswer, of: OfPass, pass: &Pass, words: &Words) -> Block {
    let field = answer.notes.field.id;
    let row = |text: WorkText, value: Option<String>, detail: PassDetail| Row {
        icon: None,
        title: words.label(text),
        lines: vec![value.unwrap_or_else(|| words.label(Caption::NotNoted))],
        does: Does::Act(Act::Go(Place::PassDetail { field, pass: of, detail, from_mm: None })),
    };
    let ground: Vec<String> = pass
        .zone
        .map(|zone| words.label(zone))
        .into_iter()
        .chain(pass.extent.map(|extent| words.of(extent)))
        .collect();
    let rolled = pass.rolls.iter().find(|roll| Some(roll.depth_mm) == pass.tip_mm);
    let machine = machine_of(&answer.notes, pass).map(|machine| words.name(&machine.name));
    let mut rows = vec![
        row(WorkText::PassMachine, machine, PassDetail::Machine),
        row(WorkText::PassGround, (!ground.is_empty()).then(|| words.comma(&ground)), PassDetail::Zone),
        row(WorkText::TipDepth, pass.tip_mm.map(|mm| words.depth(mm)), PassDetail::Tip),
        row(WorkText::Speed, pass.speed_kmh.map(|kmh| words.speed(kmh)), PassDetail::Speed),
        row(WorkText::PassDay, pass.done.map(|day| words.date(day)), PassDetail::Day),
    ];
    if pass.tip_mm.is_some() {
        let rolled = rolled.map(|roll| words.label(roll.roll));
        rows.push(row(WorkText::PassRoll, rolled, PassDetail::Roll));
    }
    if pass.done.is_some() {
        let driven = pass.driven_on.map(|day| words.date(day));
        let driven = driven.or_else(|| Some(words.label(Caption::WheelsNo)));
        rows.push(row(WorkText::PassWheels, driven, PassDetail::Wheels));
    }
    Block::Ways { heading: String::new(), rows }
}

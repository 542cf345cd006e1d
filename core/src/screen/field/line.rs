//! What is asked about one line of drains, cables or pipes: how deep it lies, what it is, where its last place lies.

use super::super::bar::{act_button, blank, choice};
use super::super::part::way;
use super::super::step::COARSE;
use super::super::{Block, Button, Headline, Place, Row, Screen, ScreenKind, World};
use super::buried::{self, LineAct, STEPS_M};
use crate::place::Compass;
use crate::record::notes::length::{self, Length};
use crate::record::{Buried, BuriedLine, LineSort, RecordId};
use crate::words::{Caption, Detail, DetailText, FieldText, Words};
use serde::{Deserialize, Serialize};

/// What is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LineAsked {
    /// How deep its top lies.
    Depth,
    /// What it is made of or carries.
    Sort,
    /// Where its last place lies, by steps.
    LastPlace,
}

/// The ways a step goes.
const WAYS: [Compass; 4] = [Compass::North, Compass::South, Compass::West, Compass::East];
/// Depths offered, millimetres: common practice, no source.
const DEPTHS_MM: [u32; 4] = [400, 600, 800, 1_000];

/// Rows that lead to what can be asked, with what is noted.
pub(super) fn rows(field: RecordId, line: &BuriedLine, words: &Words) -> Vec<Row> {
    let to = |asked| Place::Line { field, line: line.id, asked };
    let noted = |value: Option<String>| value.unwrap_or_else(|| words.label(Caption::NotNoted));
    let depth = noted(line.depth_mm.map(|mm| words.depth(mm)));
    let mut rows = vec![way(None, depth_asked(line.kind, words), depth, to(LineAsked::Depth))];
    if sorts(line.kind).next().is_some() {
        let sort = noted(line.known().map(|sort| words.label(sort)));
        rows.push(way(None, words.label(DetailText::LineSort), sort, to(LineAsked::Sort)));
    }
    if !line.along.is_empty() {
        rows.push(way(None, words.label(DetailText::MoveLast), String::new(), to(LineAsked::LastPlace)));
    }
    rows
}

pub(in crate::screen) fn show(
    field: RecordId,
    line: RecordId,
    asked: LineAsked,
    world: &World,
) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let line = notes.field.lines.iter().find(|its| its.id == line)?;
    let place = Place::Line { field, line: line.id, asked };
    let mut shown = blank(place, ScreenKind::Field, words.label(line.kind), world);
    let asks = match asked {
        LineAsked::Depth => depth_asked(line.kind, words),
        LineAsked::Sort => words.label(DetailText::LineSort),
        LineAsked::LastPlace => words.label(DetailText::MoveLast),
    };
    shown.answer = Some(Headline { line: words.buried_line(line), ..Headline::new(asks) });
    match asked {
        LineAsked::Depth => shown.blocks = depths(line, words),
        LineAsked::Sort => shown.blocks = vec![sort(line, words)],
        LineAsked::LastPlace => {
            line.along.last()?;
            shown.picture = buried::plan(notes, line, world);
            shown.blocks = steps(words);
        }
    }
    Some(shown)
}

/// The depths that can be meant of what lies there.
pub(super) const fn believed(kind: Buried) -> &'static Length {
    match kind {
        Buried::Drain => &length::DRAINS,
        Buried::MoleDrain => &length::MOLE_DRAINS,
        Buried::Service => &length::SERVICES,
    }
}

fn depth_asked(kind: Buried, words: &Words) -> String {
    words.label(match kind {
        Buried::Drain => Detail::Drains,
        Buried::MoleDrain => Detail::MoleDrains,
        Buried::Service => Detail::Services,
    })
}

/// None where the kind says it all.
fn sorts(kind: Buried) -> impl Iterator<Item = LineSort> {
    LineSort::ALL.iter().copied().filter(move |sort| sort.kind() == kind)
}

/// Answers to what the headline asks.
fn question(columns: u8, answers: Vec<Button>) -> Block {
    Block::Question { text: String::new(), columns, answers }
}

fn not_noted(act: LineAct, unnoted: bool, words: &Words) -> Button {
    choice(words.label(Caption::NotNoted), act, unnoted)
}

fn sort(line: &BuriedLine, words: &Words) -> Block {
    let known = line.known();
    let named = sorts(line.kind)
        .map(|sort| choice(words.label(sort), LineAct::Sort(Some(sort)), known == Some(sort)));
    question(3, named.chain([not_noted(LineAct::Sort(None), known.is_none(), words)]).collect())
}

fn depths(line: &BuriedLine, words: &Words) -> Vec<Block> {
    let (unit, range) = (words.unit(), believed(line.kind).believed());
    let usual = DEPTHS_MM.iter().map(|&mm| COARSE.nearest(mm, unit)).filter(|mm| range.contains(mm));
    let button = |mm: u32| choice(words.depth(mm), LineAct::Deep(Some(mm)), line.depth_mm == Some(mm));
    let mut blocks = vec![question(4, usual.map(button).collect())];
    if let Some(mm) = line.depth_mm {
        let step = words.depth(COARSE.step_mm(unit));
        let labels = [words.step_less(&step), words.step_more(&step)];
        let sides = COARSE.around(mm, unit, range.clone());
        let side = |(label, to): (String, Option<u32>)| {
            act_button(label, LineAct::Deep(Some(to.unwrap_or(mm)))).enabled_if(to.is_some())
        };
        blocks.push(question(2, labels.into_iter().zip(sides).map(side).collect()));
    }
    blocks.push(question(1, vec![not_noted(LineAct::Deep(None), line.depth_mm.is_none(), words)]));
    blocks
}

fn steps(words: &Words) -> Vec<Block> {
    let step = |way: Compass, metres: u16| Button {
        note: words.distance(f64::from(metres)),
        ..act_button(words.label(way), LineAct::Step { way, metres })
    };
    let row = |(text, metres)| Block::Question {
        text: words.of(text),
        columns: 4,
        answers: WAYS.map(|way| step(way, metres)).to_vec(),
    };
    [FieldText::ShortSteps, FieldText::LongSteps].into_iter().zip(STEPS_M).map(row).collect()
}

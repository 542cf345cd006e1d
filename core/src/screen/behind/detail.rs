//! One question about a pass. Its answer leads back to the pass; the same once more takes it back.

use super::{BehindAct, OfPass, PassDetail, PassSaid};
use crate::answer::FieldAnswer;
use crate::picture::{Icon, icon, roll};
use crate::record::{Extent, Pass, RecordId, RollOutcome, Zone};
use crate::screen::bar::{blank, choice, tool};
use crate::screen::grid::{Grid, Marked};
use crate::screen::step::FINE;
use crate::screen::{Act, Block, Button, Does, Headline, Place, Row, Screen, ScreenKind, World};
use crate::words::{Caption, Words, WorkText};
use chrono::{Days, NaiveDate};

/// Speeds offered: so many steps, of so much, from so much on, km/h. Our judgement.
const SPEEDS_KMH: (u32, f64, f64) = (18, 0.5, 2.5);
/// Tip depth taken as likely where no zone asks for one. Our judgement.
const USUAL_TIP_MM: u32 = 350;
/// Deepest tips offered.
const DEEPEST_TIP_MM: u32 = 1_200;
/// Days offered, today with those before it. Our judgement.
const DAYS: u64 = 5;

pub(in crate::screen) fn show(
    field: RecordId,
    of: OfPass,
    (detail, from_mm): (PassDetail, Option<u32>),
    world: &World,
) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let new;
    let pass = match of {
        OfPass::Noted(pass) => answer.notes.passes.iter().find(|its| its.id == pass)?,
        OfPass::New { machine, zone } => {
            new = Pass { machine, zone, ..Pass::new(field) };
            &new
        }
    };
    let place = |from_mm| Place::PassDetail { field, pass: of, detail, from_mm };
    let title = words.label(if matches!(of, OfPass::New { .. }) { Caption::NewPass } else { Caption::Pass });
    let mut screen = blank(place(from_mm), ScreenKind::Pass, title, world);
    let ask = |text: String| Headline::new(text);
    match detail {
        PassDetail::Machine => {
            screen.answer = Some(ask(words.label(Caption::WhichMachine)));
            screen.blocks.push(machines(&answer, pass, words));
        }
        PassDetail::Zone => {
            screen.answer = Some(ask(words.label(Caption::WhichZone)));
            let button =
                |&zone: &Zone| choice(words.label(zone), PassSaid::Zone(zone), pass.zone == Some(zone));
            screen.blocks.push(question(2, Zone::ALL.iter().map(button).collect()));
            let detail = PassDetail::Extent;
            let extent = Place::PassDetail { field, pass: of, detail, from_mm: None };
            screen.tools.push(tool(Icon::Skip, words.label(Caption::HowMuch), Act::Go(extent)));
        }
        PassDetail::Extent => {
            screen.answer = Some(ask(words.label(Caption::HowMuch)));
            let button = |&extent: &Extent| {
                choice(words.label(extent), PassSaid::Extent(extent), pass.extent == Some(extent))
            };
            screen.blocks.push(question(2, Extent::ALL.iter().map(button).collect()));
        }
        PassDetail::Tip => tips(&answer, pass, (from_mm, &place), words, &mut screen),
        PassDetail::Speed => {
            screen.answer =
                Some(Headline { line: words.in_kmh(), ..ask(words.label(WorkText::SpeedQuestion)) });
            screen.blocks.push(question(6, speeds(pass, words)));
        }
        PassDetail::Day => {
            screen.answer = Some(ask(words.label(Caption::WhichDay)));
            screen.blocks.push(question(2, days(pass, world)));
        }
        PassDetail::Wheels => {
            screen.answer = Some(ask(words.label(Caption::DrivenOn)));
            screen.blocks.push(question(2, wheels(pass, world)));
        }
        PassDetail::Roll => {
            let tip_mm = pass.tip_mm?;
            screen.answer = Some(Headline {
                line: words.label(Caption::RollAtTips),
                ..ask(words.label(WorkText::RollQuestion))
            });
            let noted = pass.rolls.iter().find(|roll| roll.depth_mm == tip_mm).map(|roll| roll.roll);
            let button = |&outcome: &RollOutcome| Button {
                drawing: Some(roll(outcome)),
                ..choice(words.label(outcome), BehindAct::Roll(outcome), noted == Some(outcome))
            };
            screen.blocks.push(question(2, RollOutcome::ALL.iter().map(button).collect()));
        }
    }
    Some(screen)
}

fn question(columns: u8, answers: Vec<Button>) -> Block {
    Block::Question { text: String::new(), columns, answers }
}

fn machines(answer: &FieldAnswer, pass: &Pass, words: &Words) -> Block {
    let field = answer.notes.field.id;
    let machines = answer.notes.machines.iter().map(|machine| {
        let said = PassSaid::Machine(machine.id);
        let note = words.machine_measures(machine);
        Button { note, ..choice(words.name(&machine.name), said, pass.machine == Some(machine.id)) }
    });
    let answers: Vec<Button> = machines.collect();
    if !answers.is_empty() {
        return question(1, answers);
    }
    let new = Place::NewMachine { field, legs: None, spacing_mm: None, foot_width_mm: None };
    let row = Row {
        icon: Some(icon(Icon::Machine)),
        title: words.label(Caption::DescribeMachine),
        lines: vec![words.label(WorkText::NoMachineAnswer)],
        does: Does::Act(Act::Go(new)),
    };
    Block::Ways { heading: String::new(), rows: vec![row] }
}

/// Depth of the tips: what is wanted stands among the numbers.
fn tips(
    answer: &FieldAnswer,
    pass: &Pass,
    (from_mm, place): (Option<u32>, &dyn Fn(Option<u32>) -> Place),
    words: &Words,
    screen: &mut Screen,
) {
    let call = answer.to_loosen().find(|call| pass.zone.is_none_or(|zone| call.zone == zone));
    let wanted = call.and_then(|call| call.tip);
    screen.answer = Some(Headline {
        line: words.tip_wanted(wanted.as_ref().map(|tip| words.tip_range(tip))),
        ..Headline::new(words.label(WorkText::TipQuestion))
    });
    let likely_mm = wanted.map(|tip| u32::midpoint(tip.lo_mm, tip.hi_mm));
    let unit = words.unit();
    let grid =
        Grid::new((FINE, unit), DEEPEST_TIP_MM, likely_mm.unwrap_or(USUAL_TIP_MM), pass.tip_mm, from_mm);
    let marked = Marked { chosen_mm: pass.tip_mm, likely_mm };
    let given = |mm: u32| pass.tip_mm.is_some_and(|tip_mm| FINE.whole(tip_mm, unit) == FINE.whole(mm, unit));
    let act = |mm: u32| PassSaid::TipMm((!given(mm)).then_some(mm)).into();
    screen.blocks.push(grid.question(marked, &words.label(Caption::TipDepth), words, act));
    screen.tools.extend(
        grid.moved([WorkText::LessDeep, WorkText::Deeper], words, |from_mm| Act::Go(place(Some(from_mm)))),
    );
}

fn speeds(pass: &Pass, words: &Words) -> Vec<Button> {
    let (steps, step, first) = SPEEDS_KMH;
    let button = |number: u32| {
        let kmh = first + f64::from(number) * step;
        let given = pass.speed_kmh.is_some_and(|given| (given - kmh).abs() < step / 4.0);
        let said = PassSaid::SpeedKmh((!given).then_some(kmh));
        choice(words.speed_number(kmh), said, given).about(words.speed(kmh))
    };
    (0..steps).map(button).collect()
}

/// A day as it is told on a button.
fn day_label(day: NaiveDate, today: NaiveDate, words: &Words) -> String {
    match (today - day).num_days() {
        0 => words.label(Caption::Today),
        1 => words.label(Caption::Yesterday),
        _ => words.date(day),
    }
}

fn days(pass: &Pass, world: &World) -> Vec<Button> {
    let (words, today) = (world.words, world.now.date_naive());
    let near = (0..=DAYS).filter_map(|days| today.checked_sub_days(Days::new(days)));
    let mut days: Vec<NaiveDate> = near.collect();
    days.extend(pass.done.filter(|done| !days.contains(done)));
    let button =
        |day: NaiveDate| choice(day_label(day, today, words), PassSaid::Done(day), pass.done == Some(day));
    days.into_iter().map(button).collect()
}

/// Wheels over it since, from the day of the pass on.
fn wheels(pass: &Pass, world: &World) -> Vec<Button> {
    let (words, today) = (world.words, world.now.date_naive());
    let mut days: Vec<NaiveDate> = vec![today];
    days.extend(today.pred_opt());
    days.extend(pass.driven_on.filter(|day| !days.contains(day)));
    days.retain(|day| pass.done.is_none_or(|done| done <= *day));
    let none = choice(words.label(Caption::WheelsNo), PassSaid::DrivenOn(None), pass.driven_on.is_none());
    let on = |day: NaiveDate| {
        let said = PassSaid::DrivenOn(Some(day));
        choice(day_label(day, today, words), said, pass.driven_on == Some(day))
    };
    [none].into_iter().chain(days.into_iter().map(on)).collect()
}

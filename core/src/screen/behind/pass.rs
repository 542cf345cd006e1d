//! One pass: what came of it, and what is noted of it.

use super::super::bar::{act_button, asked, choice, empty, main_button};
use super::super::step::FINE;
use super::super::{Act, Button, Does, Doing, Draft, Known, Pictured, Place, Row, ScreenKind, World};
use super::{BehindAct, Hole, PassSaid, machine_of};
use crate::advice::after_dig::{DigAdvice, PassAdvice};
use crate::answer::FieldAnswer;
use crate::picture::roll;
use crate::record::{AfterDig, Extent, Pass, RecordId, RollOutcome, Zone};
use crate::words::{Caption, Heading, Words};

/// Speeds offered, km/h. Our judgement.
const SPEEDS_KMH: [f64; 6] = [4.0, 5.0, 6.0, 7.0, 8.0, 9.0];
const SPEED_STEP_KMH: f64 = 0.5;
/// Tip depths offered where no zone asks for one. Our judgement.
const TIPS_MM: [u32; 6] = [250, 300, 330, 350, 400, 450];
/// Deepest and shallowest tips a step leads to.
const TIP_FITS_MM: std::ops::RangeInclusive<u32> = 50..=1_200;

pub(super) fn show(field: RecordId, pass: RecordId, world: &World) -> Option<Draft> {
    let (answer, words) = (world.answer(field)?, world.words);
    let today = world.now.date_naive();
    let (pass, said) = answer.notes.passes.iter().zip(&answer.passes).find(|(its, _)| its.id == pass)?;
    let place = Place::Pass { field, pass: Some(pass.id) };
    let machine = machine_of(&answer.notes, pass);
    let title = words.pass_title(pass, machine.map(|machine| machine.name.as_str()));
    let mut screen = empty(place, ScreenKind::Pass, title, world);
    screen.known = came_of_it(&answer, (pass, said), today, words);
    screen.known.extend(holes(field, (pass, said), words));
    if machine.is_none() {
        screen.known.push(Known::Line(words.label(Caption::NoMachineNoSection)));
    }
    screen.doing = [driven(pass, world), facts(&answer, pass, world), depth(&answer, pass, words)].concat();
    screen.known_first = screen.known.iter().any(|known| matches!(known, Known::Drawing(_)));
    screen.bar.main = Some(main_button(words.label(Caption::DigBehind), BehindAct::NewDig));
    Some(screen)
}

/// What the holes say.
fn came_of_it(
    answer: &FieldAnswer,
    (pass, said): (&Pass, &PassAdvice),
    today: chrono::NaiveDate,
    words: &Words,
) -> Vec<Known> {
    let mut known = vec![Known::Sentence(words.pass_verdict(said)), Known::Line(words.next_sentence(said))];
    let last = last_drawn(answer, (pass, said), today, 1.0, words);
    if let Some((dig, drawn)) = last {
        known.push(Known::Drawing(drawn));
        known.push(Known::Line(words.after_dig_sentence(dig)));
        known.extend(dig.pair.iter().map(|pair| Known::Line(words.pair_sentences(pair))));
        known.extend(causes(dig, words));
    }
    known.extend(said.held.as_ref().map(|held| Known::Line(words.held_sentence(held))));
    known.extend(said.no_strip_before.then(|| Known::Line(words.no_strip_before())));
    let traffic = said.traffic.as_ref().map(|traffic| words.traffic_warning(traffic));
    known.extend(traffic.into_iter().flatten().map(Known::Line));
    known
}

/// The last hole of a pass that can be drawn, with what it says.
pub(in crate::screen) fn last_drawn<'a>(
    answer: &FieldAnswer,
    (pass, said): (&Pass, &'a PassAdvice),
    today: chrono::NaiveDate,
    text_scale: f64,
    words: &Words,
) -> Option<(&'a DigAdvice, Pictured)> {
    let holes = pass.after_digs.iter().zip(&said.digs).enumerate();
    let read = holes.filter(|(_, (dig, _))| !crate::advice::after_dig::unfinished(dig, today));
    let drawn = read.filter_map(|(index, (dig, said))| {
        let hole = Hole { notes: &answer.notes, reading: &answer.reading, pass, dig, said, text_scale };
        Some((said, hole.drawn(title(index, dig, words), words)?))
    });
    drawn.last()
}

/// Likely causes of a hole: the first with what to check and to change, the others in a line.
pub(super) fn causes(dig: &DigAdvice, words: &Words) -> Option<Known> {
    let (first, others) = dig.causes.split_first()?;
    let others = others.iter().take(OTHER_CAUSES).map(|cause| words.cause_line(cause));
    let lines = words.cause_lines(first).into_iter().chain(others).collect();
    Some(Known::Section { heading: words.label(Heading::Causes), lines })
}

/// Causes told beside the likeliest. Our judgement.
const OTHER_CAUSES: usize = 2;

/// What a hole is called.
pub(super) fn title(index: usize, dig: &AfterDig, words: &Words) -> String {
    words.hole_behind(index + 1, dig.dug.map(|dug| dug.date_naive()))
}

fn holes(field: RecordId, (pass, said): (&Pass, &PassAdvice), words: &Words) -> Vec<Known> {
    let rows: Vec<Row> = (pass.after_digs.iter().zip(&said.digs).enumerate())
        .map(|(index, (dig, said))| Row {
            icon: None,
            title: title(index, dig, words),
            lines: vec![words.after_dig_sentence(said)],
            does: Does::Act(Act::Go(Place::AfterDig { field, pass: pass.id, dig: dig.id })),
        })
        .collect();
    if rows.is_empty() {
        Vec::new()
    } else {
        vec![Known::Line(words.label(Caption::Holes)), Known::Rows(rows)]
    }
}

/// Wheels over it since, where the day of the pass is known.
fn driven(pass: &Pass, world: &World) -> Vec<Doing> {
    let (words, today) = (world.words, world.now.date_naive());
    if pass.done.is_none_or(|done| done > today) {
        return Vec::new();
    }
    let is_today = pass.driven_on == Some(today);
    let noted = pass.driven_on.filter(|_| !is_today);
    let mut buttons = vec![
        choice(words.label(Caption::WheelsNo), PassSaid::DrivenOn(None), pass.driven_on.is_none()),
        choice(words.label(Caption::WheelsToday), PassSaid::DrivenOn(Some(today)), is_today),
    ];
    buttons.extend(noted.map(|day| choice(words.date(day), PassSaid::DrivenOn(noted), true)));
    asked(words.label(Caption::DrivenOn), 2, buttons)
}

fn facts(answer: &FieldAnswer, pass: &Pass, world: &World) -> Vec<Doing> {
    let words = world.words;
    let machines = answer.notes.machines.iter().map(|machine| {
        let said = PassSaid::Machine(machine.id);
        let note = words.machine_measures(machine);
        Button { note, ..choice(words.name(&machine.name), said, pass.machine == Some(machine.id)) }
    });
    let zones = Zone::ALL
        .iter()
        .map(|&zone| choice(words.label(zone), PassSaid::Zone(zone), pass.zone == Some(zone)))
        .collect();
    let extents = Extent::ALL
        .iter()
        .map(|&extent| choice(words.label(extent), PassSaid::Extent(extent), pass.extent == Some(extent)))
        .collect();
    let today = world.now.date_naive();
    let yesterday = today.pred_opt();
    let other = pass.done.filter(|&done| done != today && Some(done) != yesterday);
    let day = |label: String, day| choice(label, PassSaid::Done(day), pass.done == Some(day));
    let days = [
        Some(day(words.label(Caption::Today), today)),
        yesterday.map(|yesterday| day(words.label(Caption::Yesterday), yesterday)),
        other.map(|done| day(words.date(done), done)),
    ];
    [
        asked(words.label(Caption::WhichDay), 3, days.into_iter().flatten().collect()),
        asked(words.label(Caption::HowMuch), 2, extents),
        asked(words.label(Caption::WhichZone), 3, zones),
        asked(words.label(Caption::WhichMachine), 1, machines.collect()),
    ]
    .concat()
}

/// Roll test, speed and depth of the tips.
fn depth(answer: &FieldAnswer, pass: &Pass, words: &Words) -> Vec<Doing> {
    let rolled = |tip_mm: u32| {
        let noted = pass.rolls.iter().find(|roll| roll.depth_mm == tip_mm).map(|roll| roll.roll);
        let button = |&outcome: &RollOutcome| Button {
            drawing: Some(roll(outcome)),
            ..choice(words.label(outcome), BehindAct::Roll(outcome), noted == Some(outcome))
        };
        let question = words.asked(&words.label(Caption::RollAtTips), &words.depth(tip_mm));
        asked(question, 2, RollOutcome::ALL.iter().map(button).collect())
    };
    let rolls = pass.tip_mm.map(rolled).unwrap_or_default();
    [rolls, speed(pass, words), tips(answer, pass, words)].concat()
}

fn speed(pass: &Pass, words: &Words) -> Vec<Doing> {
    let what = words.label(Caption::PassSpeed);
    let to = |kmh| PassSaid::SpeedKmh(Some(kmh));
    let Some(kmh) = pass.speed_kmh else {
        let buttons = SPEEDS_KMH.iter().map(|&kmh| act_button(words.speed(kmh), to(kmh))).collect();
        return asked(words.asked(&what, &words.of(Caption::NotNoted)), 6, buttons);
    };
    let step = words.speed(SPEED_STEP_KMH);
    let (less, more) = (kmh - SPEED_STEP_KMH, kmh + SPEED_STEP_KMH);
    let buttons = vec![
        Button { enabled: less > 0.0, ..act_button(words.step_less(&step), to(less)) },
        act_button(words.label(Caption::NotNoted), PassSaid::SpeedKmh(None)),
        Button { enabled: more <= 20.0, ..act_button(words.step_more(&step), to(more)) },
    ];
    asked(words.asked(&what, &words.speed(kmh)), 3, buttons)
}

fn tips(answer: &FieldAnswer, pass: &Pass, words: &Words) -> Vec<Doing> {
    let (what, unit) = (words.label(Caption::TipDepth), words.unit());
    let to = |mm| PassSaid::TipMm(Some(mm));
    let Some(tip_mm) = pass.tip_mm else {
        let call = answer.to_loosen().find(|call| pass.zone.is_none_or(|zone| call.zone == zone));
        let wanted = call.and_then(|call| call.tip);
        let mut offered: Vec<u32> = wanted
            .map_or_else(|| TIPS_MM.to_vec(), |tip| (tip.lo_mm..=tip.hi_mm).step_by(5).collect())
            .into_iter()
            .map(|mm| FINE.nearest(mm, unit))
            .collect();
        offered.dedup();
        let buttons = offered.into_iter().take(6).map(|mm| act_button(words.depth(mm), to(mm))).collect();
        return asked(words.asked(&what, &words.of(Caption::NotNoted)), 6, buttons);
    };
    let step = words.depth(FINE.step_mm(unit));
    let [less, more] = FINE.around(tip_mm, unit, TIP_FITS_MM);
    let less = less.map(|mm| act_button(words.step_less(&step), to(mm)));
    let more = more.map(|mm| act_button(words.step_more(&step), to(mm)));
    let none = act_button(words.label(Caption::NotNoted), PassSaid::TipMm(None));
    let buttons = [less, Some(none), more].into_iter().flatten().collect();
    asked(words.asked(&what, &words.depth(tip_mm)), 3, buttons)
}

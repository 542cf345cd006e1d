//! One detail of a field, with its buttons: usual values, steps either way, answers, days, or a line to be typed.

use super::super::bar::{act_button, blank, choice, gone};
use super::super::pit::look::with_clue;
use super::super::step::{COARSE, FINE, Notch, WIDE};
use super::super::{Block, Button, Done, Edit, Headline, Place, Screen, ScreenKind, World};
use super::FieldAct;
use super::details::{held_to, leave_given, length_of, value_or_not, yes_no};
use crate::error::Fault;
use crate::harmless::typed_name;
use crate::reading::Clue;
use crate::record::notes::length::{self, Length};
use crate::record::remark;
use crate::record::{Field, OrganicMatter, RecordId};
use crate::units::LengthUnit;
use crate::words::{Caption, Detail, DetailText, FieldText, Listed, PitText, Words};
use chrono::{Datelike, Days, NaiveDate};
use serde::{Deserialize, Serialize};

/// What a detail is set to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DetailSet {
    /// Not noted.
    Nothing,
    /// A length, millimetres.
    Millimetres(u32),
    /// An answer of its closed list, by its place there.
    Answer(u8),
    /// A day.
    Day(NaiveDate),
    /// A share of a hundred.
    Percent(u32),
    /// Held to, given, or not.
    HeldTo(bool),
    /// What was typed.
    Typed,
}

/// How a length is set.
struct Scale {
    notch: Notch,
    /// Offered, millimetres.
    usual_mm: &'static [u32],
    believed: &'static Length,
}

/// Usual values: common practice, no source; steps lead to every other one.
const fn scale(detail: Detail) -> Option<Scale> {
    let (notch, usual_mm, believed): (_, &[u32], _) = match detail {
        Detail::Headland => {
            (WIDE, &[9_000, 12_000, 15_000, 18_000, 20_000, 24_000, 30_000, 36_000], &length::WIDTH)
        }
        Detail::Tramline => {
            (WIDE, &[12_000, 15_000, 18_000, 21_000, 24_000, 27_000, 30_000, 36_000], &length::WIDTH)
        }
        Detail::WheelTrack => {
            (COARSE, &[1_500, 1_650, 1_800, 1_900, 2_000, 2_100, 2_250, 3_000], &length::WHEEL_TRACK)
        }
        Detail::Tyre => (FINE, &[300, 350, 420, 480, 520, 600, 710, 800], &length::TYRE),
        Detail::Drains => (COARSE, &[300, 400, 500, 600, 700, 800, 900, 1_000], &length::DRAINS),
        Detail::MoleDrains => (COARSE, &[400, 450, 500, 550, 600], &length::MOLE_DRAINS),
        Detail::Services => (COARSE, &[300, 450, 600, 700, 800, 900, 1_000, 1_200], &length::SERVICES),
        Detail::Clearance => (COARSE, &[50, 100, 150, 200, 250, 300], &length::CLEARANCE),
        Detail::ServicesClearance => (COARSE, &[300, 400, 500, 600, 800, 1_000], &length::SERVICES_CLEARANCE),
        Detail::Tillage => (COARSE, &[50, 100, 150, 200, 250, 300], &length::TILLAGE),
        Detail::Reach => (COARSE, &[300, 350, 400, 450, 500, 550, 600], &length::REACH),
        _ => return None,
    };
    Some(Scale { notch, usual_mm, believed })
}

/// Buttons of usual values in a row.
const IN_A_ROW: u8 = 4;
/// Years offered for when something last happened; the last stands for longer ago.
const YEARS: [i32; 4] = [0, 1, 2, 3];
/// Weeks offered until something to come: from soon to next year. Our judgement.
const IN_WEEKS: [u64; 8] = [1, 2, 4, 6, 8, 12, 26, 40];
/// Nobody knows the day of a sowing further ahead, weeks: two years. Our judgement.
const FURTHEST_WEEKS: u64 = 104;
/// Slopes offered, metres of fall in 100 m: level, by steps as small as the advice tells apart, then steeper. Our judgement.
const SLOPES: [u32; 8] = [0, 2, 3, 5, 7, 9, 12, 15];
/// The steepest that a notes file holds, metres of fall in 100 m.
const STEEPEST: u32 = 100;

pub(in crate::screen) fn show(field: RecordId, detail: Detail, world: &World) -> Option<Screen> {
    let notes = world.notes(field)?;
    let (of, words) = (&notes.field, world.words);
    let place = Place::Detail { field, detail };
    let mut shown = blank(place, ScreenKind::Field, words.name(&of.name), world);
    let now = words.now(&value_or_not(of, detail, words));
    shown.answer = Some(Headline { line: now, ..Headline::new(words.label(detail)) });
    shown.blocks = match detail {
        Detail::Name => typing(detail, words.label(detail), of.name.clone()),
        Detail::CropNow => typing(detail, words.label(detail), of.crop_now.clone().unwrap_or_default()),
        Detail::LastCrop => typing(detail, words.label(detail), of.last_crop.clone().unwrap_or_default()),
        Detail::NextCrop => typing(detail, words.label(detail), of.next_crop.clone().unwrap_or_default()),
        Detail::Remark => typing(detail, words.label(detail), of.remark.clone().unwrap_or_default()),
        Detail::Stony => yes_or_no(detail, of.stony, yes_no, words),
        Detail::PlatesSoft => yes_or_no(detail, of.plates_soft, yes_no, words),
        Detail::Texture => of_list(detail, Clue::Texture, of.texture.map(|its| its.group() as usize), words),
        Detail::OrganicMatter => organic_matter(of, words),
        Detail::LastLoosened => days(detail, of.last_loosened, world),
        Detail::LastTraffic => days(detail, of.last_traffic, world),
        Detail::LastRain => days(detail, of.last_rain, world),
        Detail::NextSown => days_to_come(detail, of.next_sown, world),
        Detail::Slope => slopes(detail, of.slope_percent, words),
        Detail::ServicesAskedOn => days(detail, of.services_asked_on, world),
        Detail::ServicesAsked => {
            typing(detail, words.label(detail), of.services_asked.clone().unwrap_or_default())
        }
        Detail::ControlledTraffic => yes_or_no(detail, of.controlled_traffic, yes_no, words),
        Detail::DeepClay => yes_or_no(detail, of.deep_clay_anyway, held_to, words),
        Detail::ServicesLeave => yes_or_no(detail, of.services_leave, leave_given, words),
        _ => lengths(of, detail, words),
    };
    let asked = |block: &Block| matches!(block, Block::Question { .. });
    // Text alone is entered by the next step; where there are answers too, these stand for themselves.
    if !shown.blocks.iter().any(asked) {
        let enter = act_button(words.label(FieldText::Keep), set(detail, DetailSet::Typed));
        shown.next = Some(enter);
    }
    if detail != Detail::Name {
        let nothing = act_button(words.label(Caption::NotNoted), set(detail, DetailSet::Nothing));
        let unnoted = with(of, detail, DetailSet::Nothing) == *of;
        shown.blocks.push(question(1, vec![nothing.chosen_if(unnoted)]));
    }
    shown.blocks.push(Block::Text(words.detail_why(detail)));
    Some(shown)
}

/// Answers to what the headline asks.
fn question(columns: u8, answers: Vec<Button>) -> Block {
    Block::Question { text: String::new(), columns, answers }
}

fn yes_or_no<T: Listed>(
    detail: Detail,
    noted: Option<bool>,
    called: impl Fn(bool) -> T,
    words: &Words,
) -> Vec<Block> {
    let answer =
        |yes: bool| choice(words.label(called(yes)), set(detail, DetailSet::HeldTo(yes)), noted == Some(yes));
    vec![question(2, vec![answer(false), answer(true)])]
}

const fn set(detail: Detail, to: DetailSet) -> FieldAct {
    FieldAct::Detail { detail, to }
}

fn typing(detail: Detail, label: String, value: String) -> Vec<Block> {
    let act = set(detail, DetailSet::Typed).into();
    vec![Block::Typing { label, value, act, long: detail == Detail::Remark }]
}

/// The answers of a closed list.
fn of_list(detail: Detail, clue: Clue, given: Option<usize>, words: &Words) -> Vec<Block> {
    let answer = |index: usize| {
        choice(words.answer(clue, index), set(detail, DetailSet::Answer(index as u8)), given == Some(index))
    };
    vec![question(3, (0..clue.answers().len()).map(answer).collect())]
}

fn organic_matter(field: &Field, words: &Words) -> Vec<Block> {
    let (level, percent) = match field.organic_matter {
        Some(OrganicMatter::Level(level)) => (Some(level as usize), None),
        Some(OrganicMatter::Percent(percent)) => (None, Some(percent)),
        None => (None, None),
    };
    let typed = percent.map_or_else(String::new, |percent| words.typed_number(percent));
    let mut blocks = of_list(Detail::OrganicMatter, Clue::OrganicMatter, level, words);
    blocks.extend(typing(Detail::OrganicMatter, words.label(DetailText::OrPercent), typed));
    blocks
}

fn days(detail: Detail, noted: Option<NaiveDate>, world: &World) -> Vec<Block> {
    let (words, today) = (world.words, world.now.date_naive());
    let day =
        |label: String, day: NaiveDate| choice(label, set(detail, DetailSet::Day(day)), noted == Some(day));
    let years = YEARS.iter().filter_map(|&years| {
        // Nobody asks for the day: the middle of the year stands for it, of this year its first day.
        let middle = NaiveDate::from_ymd_opt(today.year() - years, if years == 0 { 1 } else { 7 }, 1)?;
        Some(day(words.since_year(middle, years == YEARS[YEARS.len() - 1]), middle))
    });
    let near = [
        day(words.label(Caption::Today), today),
        day(words.label(Caption::Yesterday), today.pred_opt().unwrap_or(today)),
    ];
    let mut blocks = vec![question(2, near.into_iter().chain(years).collect())];
    let typed = noted.map_or_else(String::new, |day| words.date(day));
    blocks.extend(typing(detail, words.label(DetailText::OrDay), typed));
    blocks
}

/// Days that are still to come, by the weeks until then.
fn days_to_come(detail: Detail, noted: Option<NaiveDate>, world: &World) -> Vec<Block> {
    let (words, today) = (world.words, world.now.date_naive());
    let day = |&weeks: &u64| {
        let day = today.checked_add_days(Days::new(7 * weeks))?;
        let button = choice(words.in_weeks(weeks), set(detail, DetailSet::Day(day)), noted == Some(day));
        Some(Button { note: words.date(day), ..button })
    };
    let mut blocks = vec![question(2, IN_WEEKS.iter().filter_map(day).collect())];
    let typed = noted.map_or_else(String::new, |day| words.date(day));
    blocks.extend(typing(detail, words.label(DetailText::OrDay), typed));
    blocks
}

/// How steep it is, in usual values.
fn slopes(detail: Detail, noted: Option<u32>, words: &Words) -> Vec<Block> {
    let answer = |&percent: &u32| {
        choice(words.slope(percent), set(detail, DetailSet::Percent(percent)), noted == Some(percent))
    };
    let typed = noted.map_or_else(String::new, |percent| percent.to_string());
    let mut blocks = vec![question(IN_A_ROW, SLOPES.iter().map(answer).collect())];
    blocks.extend(typing(detail, words.label(DetailText::OrSlope), typed));
    blocks
}

/// Usual values, and where there is one a step less and a step more.
fn lengths(field: &Field, detail: Detail, words: &Words) -> Vec<Block> {
    let Some(Scale { notch, usual_mm, believed }) = scale(detail) else { return Vec::new() };
    let (unit, noted) = (words.unit(), length_of(field, detail));
    let written = |mm: u32| match detail {
        Detail::Headland | Detail::Tramline => words.width(mm),
        _ => words.depth(mm),
    };
    let button = |label: String, mm: Option<u32>| {
        let to = set(detail, DetailSet::Millimetres(mm.or(noted).unwrap_or_default()));
        act_button(label, to).enabled_if(mm.is_some())
    };
    let mut offered: Vec<u32> = usual_mm.iter().map(|&mm| in_unit(mm, notch, unit)).collect();
    offered.dedup();
    let usual = offered.into_iter().map(|mm| button(written(mm), Some(mm)).chosen_if(noted == Some(mm)));
    let mut blocks = vec![question(IN_A_ROW, usual.collect())];
    if let Some(mm) = noted {
        let [less, more] = notch.around(mm, unit, believed.believed());
        let step = written(notch.step_mm(unit));
        let steps = vec![button(words.step_less(&step), less), button(words.step_more(&step), more)];
        blocks.push(question(2, steps));
    }
    blocks
}

/// A usual value as whoever measures in inches or feet would say it.
fn in_unit(mm: u32, notch: Notch, unit: LengthUnit) -> u32 {
    match unit {
        LengthUnit::Centimetres => mm,
        LengthUnit::Inches => notch.nearest(mm, unit),
    }
}

pub(super) fn tap(
    field: &Field,
    (detail, to): (Detail, DetailSet),
    text: Option<&str>,
    place: Place,
    world: &World,
) -> Result<Done, Fault> {
    let words = world.words;
    // Back to where it was asked: the field, a call, or all the details.
    let asked_at = world.back.unwrap_or(Place::Details { field: field.id });
    let (changed, then) = match to {
        DetailSet::Typed => match typed(field, detail, text.unwrap_or_default(), world) {
            Ok(changed) => (changed, asked_at),
            Err(told) => return Ok(Done { told, ..Done::go(place) }),
        },
        // A length may be wanted a step further.
        DetailSet::Millimetres(_) => (with(field, detail, to), place),
        _ => (with(field, detail, to), asked_at),
    };
    if changed == *field {
        return Ok(Done::go(then));
    }
    let within =
        |its: &Scale| length_of(&changed, detail).is_none_or(|mm| its.believed.believed().contains(&mm));
    let steep = changed.slope_percent.is_some_and(|percent| percent > STEEPEST);
    if changed.name.is_empty() || steep || scale(detail).is_some_and(|its| !within(&its)) {
        return Err(gone(words));
    }
    let told = words.asked(&words.label(detail), &value_or_not(&changed, detail, words));
    Ok(Done { told, ..Done::save(Edit::Field(changed), then) })
}

/// The field with what was typed, or what is wrong with that. Nothing typed is nothing noted.
fn typed(field: &Field, detail: Detail, text: &str, world: &World) -> Result<Field, String> {
    let (mut changed, words) = (field.clone(), world.words);
    if detail == Detail::Remark {
        changed.remark = remark::typed(text).map_err(|_| words.remark_long(remark::LONGEST))?;
        return Ok(changed);
    }
    let text = typed_name(text);
    let some = (!text.is_empty()).then(|| text.clone());
    match detail {
        Detail::Name => changed.name = some.ok_or_else(|| words.of(PitText::FieldNameMissing))?,
        Detail::CropNow => changed.crop_now = some,
        Detail::LastCrop => changed.last_crop = some,
        Detail::NextCrop => changed.next_crop = some,
        Detail::ServicesAsked => changed.services_asked = some,
        Detail::OrganicMatter => {
            // The unchanged line of an answer by word says nothing.
            let Some(text) = some else { return Ok(changed) };
            let percent = percent(&text).ok_or_else(|| words.of(DetailText::PercentWrong))?;
            changed.organic_matter = Some(OrganicMatter::Percent(percent));
        }
        Detail::LastLoosened | Detail::LastTraffic | Detail::LastRain | Detail::ServicesAskedOn => {
            let Some(text) = some else { return Ok(changed) };
            let day = day(&text).filter(|day| *day <= world.now.date_naive());
            let day = day.ok_or_else(|| words.of(DetailText::DayWrong))?;
            changed = with(&changed, detail, DetailSet::Day(day));
        }
        Detail::NextSown => {
            let Some(text) = some else { return Ok(changed) };
            let today = world.now.date_naive();
            let furthest = today.checked_add_days(Days::new(7 * FURTHEST_WEEKS)).unwrap_or(today);
            // A day that stands there may have gone by since.
            let can_be = |day: &NaiveDate| (today..=furthest).contains(day) || field.next_sown == Some(*day);
            let day = day(&text).filter(can_be);
            changed.next_sown = Some(day.ok_or_else(|| words.of(DetailText::DayToComeWrong))?);
        }
        Detail::Slope => {
            let Some(text) = some else { return Ok(changed) };
            let percent = percent(&text).ok_or_else(|| words.of(DetailText::PercentWrong))?;
            changed.slope_percent = Some(percent.round() as u32);
        }
        _ => {}
    }
    Ok(changed)
}

/// A number of percent, with either mark of decimals.
fn percent(text: &str) -> Option<f64> {
    let number: f64 = text.trim_end_matches('%').trim().replace(',', ".").parse().ok()?;
    (0.0..=100.0).contains(&number).then_some(number)
}

/// A day as it is shown, year first, or as many write it, day first with points.
fn day(text: &str) -> Option<NaiveDate> {
    ["%Y-%m-%d", "%d.%m.%Y"].iter().find_map(|written| NaiveDate::parse_from_str(text, written).ok())
}

/// The field with a detail set by a button.
fn with(field: &Field, detail: Detail, to: DetailSet) -> Field {
    let mut field = field.clone();
    let mm = match to {
        DetailSet::Millimetres(mm) => Some(mm),
        _ => None,
    };
    let day = match to {
        DetailSet::Day(day) => Some(day),
        _ => None,
    };
    let answer = match to {
        DetailSet::Answer(answer) => Some(usize::from(answer)),
        _ => None,
    };
    let percent = match to {
        DetailSet::Percent(percent) => Some(percent),
        _ => None,
    };
    let yes = match to {
        DetailSet::HeldTo(yes) => Some(yes),
        _ => None,
    };
    match detail {
        Detail::Name => {}
        Detail::Headland => field.headland_mm = mm,
        Detail::Tramline => field.tramline_mm = mm,
        Detail::WheelTrack => field.wheel_track_mm = mm,
        Detail::Tyre => field.tyre_mm = mm,
        Detail::Drains => field.drains_mm = mm,
        Detail::MoleDrains => field.mole_drains_mm = mm,
        Detail::Services => field.services_mm = mm,
        Detail::Clearance => field.clearance_mm = mm,
        Detail::ServicesClearance => field.services_clearance_mm = mm,
        Detail::ServicesAsked => field.services_asked = None,
        Detail::ServicesAskedOn => field.services_asked_on = day,
        Detail::LastRain => field.last_rain = day,
        Detail::ServicesLeave => field.services_leave = yes,
        Detail::Tillage => field.tillage_mm = mm,
        Detail::Stony => field.stony = yes,
        Detail::PlatesSoft => field.plates_soft = yes,
        Detail::NextCrop => field.next_crop = None,
        Detail::NextSown => field.next_sown = day,
        Detail::Slope => field.slope_percent = percent,
        Detail::Reach => field.reach_mm = mm,
        Detail::Texture => field = with_clue(&field, Clue::Texture, answer),
        Detail::OrganicMatter => field = with_clue(&field, Clue::OrganicMatter, answer),
        Detail::CropNow => field.crop_now = None,
        Detail::Remark => field.remark = None,
        Detail::LastCrop => field.last_crop = None,
        Detail::LastLoosened => field.last_loosened = day,
        Detail::LastTraffic => field.last_traffic = day,
        Detail::ControlledTraffic => field.controlled_traffic = yes,
        Detail::DeepClay => field.deep_clay_anyway = yes,
    }
    field
}

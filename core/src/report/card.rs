//! The driver's card: half a sheet with the ground to work, how deep and how, what lies buried, when to stop, and what it has
//! to look like behind the machine.

use super::page::{Blocks, Group, Line, Page};
use super::sheet::{closing, whole_ha};
use crate::advice::ZoneCall;
use crate::advice::after_dig::{READINGS, Verdict};
use crate::advice::machine::{Setting, Terms, layer_of, set, work_in_zone};
use crate::answer::FieldAnswer;
use crate::record::{Buried, Machine};
use crate::screen::drawn::{Shows, plan_filled};
use crate::words::{Heading, PageText, Words};

/// What stops the work. Common practice, no source.
const STOP: [PageText; 5] =
    [PageText::StopThread, PageText::StopHard, PageText::StopClods, PageText::StopSlip, PageText::StopRain];

/// The driver's card; `None` where nothing is to be loosened, now or once it is dry enough.
pub fn card(words: &Words, answer: &FieldAnswer) -> Option<Page> {
    let calls: Vec<&ZoneCall> = answer.to_loosen().collect();
    let first = *calls.first()?;
    let name = words.name(&answer.notes.field.name);
    let title = words.says_of(&words.label(PageText::Card), &name);
    let mut page = Blocks::default();
    page.within(Group::Card, |page| {
        page.text(Line::Title, &title);
        let to_work: f64 = calls.iter().filter_map(|call| zone_ha(answer, call)).sum();
        let parts =
            [whole_ha(answer).map(|ha| words.ground_ha(ha)), (to_work > 0.0).then(|| words.to_work(to_work))];
        page.text(Line::Meta, &words.comma(&parts.into_iter().flatten().collect::<Vec<_>>()));
        let set = settings(answer, &calls);
        for call in &calls {
            page.text(Line::Sentence, &words.call_sentence(call));
        }
        for (call, (_, setting, _)) in
            calls.iter().zip(&set).filter_map(|(call, set)| Some((call, set.as_ref()?)))
        {
            let forbidden = words.not_to_be_worked(setting).map(|line| words.zone_says(call.zone, &line));
            page.text(Line::Plain, &forbidden.unwrap_or_default());
        }
        page.within(Group::Pictures, |page| {
            if let Some(plan) = plan_filled(words, answer, Shows::TO_LOOSEN) {
                page.figure(plan, "");
            }
            page.part(&words.label(PageText::Buried), &buried(words, answer));
            page.part(&words.label(PageText::Stop), &STOP.map(|text| words.of(text)));
        });
        page.within(Group::Section, |page| how(page, words, answer, &calls, &set));
        let bottom_mm = first.tip.map_or(0, |tip| tip.bottom_mm);
        page.part(&words.label(PageText::DigBehind), &words.look_behind(bottom_mm, layer_of(first)));
        page.within(Group::Boxes, |page| boxes(page, words));
        closing(page, words);
    });
    Some(page.page(words, &title))
}

fn zone_ha(answer: &FieldAnswer, call: &ZoneCall) -> Option<f64> {
    answer.map.area_m2(call.zone).map(|m2| m2 / 10_000.0)
}

/// The machine of each zone as set: the one that last did it in this field, else the first that may be worked there.
fn settings<'a>(answer: &'a FieldAnswer, calls: &[&ZoneCall]) -> Vec<Option<(&'a Machine, Setting, f64)>> {
    let passes = answer.notes.passes.iter().zip(&answer.passes);
    let done = passes.filter(|(_, said)| said.verdict == Some(Verdict::Done));
    let proved = done.filter_map(|(noted, _)| noted.machine).next_back();
    let set_for = |call: &&ZoneCall| {
        let set_to = |machine: &'a Machine| {
            let work = work_in_zone(&answer.notes.field, call, machine, &Terms::default()).ok()?;
            Some((machine, set(machine, &work).ok()?, work.speed_kmh))
        };
        let all: Vec<_> = answer.notes.machines.iter().filter_map(set_to).collect();
        let proved = all.iter().position(|(machine, ..)| Some(machine.id) == proved);
        let fits = || all.iter().position(|(_, setting, _)| setting.not_to_be_worked.is_empty());
        let chosen = proved.or_else(fits).unwrap_or(0);
        all.into_iter().nth(chosen)
    };
    calls.iter().map(set_for).collect()
}

/// A line a zone: hectares, tip depth, machine, spacing, speed.
fn how(
    page: &mut Blocks,
    words: &Words,
    answer: &FieldAnswer,
    calls: &[&ZoneCall],
    set: &[Option<(&Machine, Setting, f64)>],
) {
    let heads = [
        words.label(Heading::Zone),
        words.label(Heading::TipDepth),
        words.label(PageText::Spacing),
        words.label(PageText::Speed),
        words.label(PageText::Machine),
    ];
    let rows = calls.iter().zip(set).map(|(call, set)| {
        let area = zone_ha(answer, call).map(|ha| words.ground_ha(ha));
        let zone = [Some(words.label(call.zone)), area].into_iter().flatten().collect::<Vec<_>>();
        let tip = call.tip.map(|tip| words.tip_range(&tip)).unwrap_or_default();
        let [spacing, speed, machine] = match set {
            Some((machine, _, kmh)) => {
                let speed = machine.speed.map_or((*kmh, *kmh), |speed| (speed.lo_kmh, speed.hi_kmh));
                [words.depth(machine.spacing_mm), words.speeds(speed.0, speed.1), words.name(&machine.name)]
            }
            None => [String::new(), String::new(), words.label(PageText::NoMachine)],
        };
        vec![words.comma(&zone), tip, spacing, speed, machine]
    });
    page.table(&words.label(PageText::Card), &heads, rows.collect());
}

/// Returns what is noted of cables, pipes and drains, and what is not known of them.
fn buried(words: &Words, answer: &FieldAnswer) -> Vec<String> {
    let field = &answer.notes.field;
    let mut said: Vec<String> = field.lines.iter().map(|line| words.buried_line(line)).collect();
    let unmarked = |kind: &&Buried| !field.lines.iter().any(|line| line.kind == **kind);
    let noted = Buried::ALL.iter().filter(unmarked);
    said.extend(noted.filter_map(|&kind| Some(words.buried_noted(kind, field.shallowest_mm(kind)?))));
    said.push(words.of(if said.is_empty() { PageText::NothingNoted } else { PageText::NotNamed }));
    let reasons = answer.to_loosen().flat_map(|call| &call.reasons);
    let told = reasons.filter(|why| super::sheet::is_buried(why)).map(|why| words.why(why));
    for line in told {
        if !said.contains(&line) {
            said.push(line);
        }
    }
    said
}

/// Room for what the driver reads, as many depths as the core asks for behind the machine.
fn boxes(page: &mut Blocks, words: &Words) {
    page.text(Line::Heading, &words.label(PageText::Readings));
    let mut heads = [PageText::Day, PageText::Driver, PageText::SetTo].map(|text| words.label(text)).to_vec();
    heads.extend((0..READINGS).map(|index| match index {
        0 => words.label(PageText::LineOne),
        _ if index + 1 == READINGS => words.label(PageText::LineOther),
        _ => (index + 1).to_string(),
    }));
    let empty = vec![String::new(); heads.len()];
    page.table(&words.label(PageText::Readings), &heads, vec![empty.clone(), empty]);
}

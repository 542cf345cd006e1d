//! The sheet of a field: what is to be done and why on its face, the pits in detail on its back.

use super::details::details;
use super::on_photo::photo_of;
use super::page::{Blocks, Group, Line, Page};
use crate::RULES;
use crate::advice::ground::{Areas, GroundWork, ground_work};
use crate::advice::machine::Terms;
use crate::advice::sampling::{At, Next};
use crate::advice::{Caution, Stance, What, Why, ZoneCall};
use crate::answer::FieldAnswer;
use crate::place::walk;
use crate::record::{Call, Machine};
use crate::screen::drawn::{Shows, face_of, plan_filled};
use crate::words::{Heading, PageText, WalkFrom, Words};

/// The file of a photo, asked for by its SHA-256 in hexadecimal; `None` where it is not at hand.
pub type PhotoFile<'a> = &'a dyn Fn(&str) -> Option<Vec<u8>>;

/// How many reasons are told of a zone beside the deciding one.
const FURTHER_REASONS: usize = 1;
/// Next looks told, those of the first pits.
const LOOKS: usize = 3;
/// What always stands at the end of a page.
const DEFERS: [Caution; 2] = [Caution::ProtectedGround, Caution::EstimatesOnly];

/// The sheet of a field.
pub fn sheet(words: &Words, answer: &FieldAnswer, photo: PhotoFile) -> Page {
    let mut page = Blocks::default();
    write_sheet(&mut page, words, answer, photo);
    page.page(words, &words.name(&answer.notes.field.name))
}

pub(super) fn write_sheet(page: &mut Blocks, words: &Words, answer: &FieldAnswer, photo: PhotoFile) {
    page.within(Group::Article, |page| {
        head(page, words, answer);
        page.text(Line::Sentence, &words.whole_sentence(&answer.advice));
        let to_do = |page: &mut Blocks| page.part(&words.label(PageText::ToDo), &to_do(words, answer));
        let mut told = false;
        page.within(Group::Pictures, |page| {
            // A photo takes the place beside the two drawings.
            told = !pictures(page, words, answer, photo);
            if told {
                to_do(page);
            }
        });
        let work = work(answer);
        page.within(Group::Section, |page| zones(page, words, answer, &work));
        page.within(Group::Columns, |page| {
            if !told {
                to_do(page);
            }
            page.part(&words.label(PageText::First), &first(words, answer));
            page.part(&words.label(PageText::Why), &why(words, answer));
            page.part(&words.label(PageText::Behind), &behind(words, answer));
            page.part(&words.label(PageText::NotLooked), &not_looked(words, answer));
            page.part(&words.label(PageText::Saves), &words.ground(&work, only_machine(answer)));
            let (_, others) = answer.advice.cautions();
            let others = others.into_iter().filter(|caution| !DEFERS.contains(caution));
            let others: Vec<String> = others.map(|caution| words.of(caution)).collect();
            page.within(Group::Section, |page| {
                page.text(Line::Heading, &words.label(Heading::Cautions));
                page.text(Line::Plain, &others.join(" "));
            });
        });
        closing(page, words);
    });
    details(page, words, answer, photo);
}

/// The field with its hectares, and who dug when.
pub(super) fn head(page: &mut Blocks, words: &Words, answer: &FieldAnswer) {
    let notes = &answer.notes;
    page.within(Group::Head, |page| {
        page.text(Line::Title, &words.name(&notes.field.name));
        let area = whole_ha(answer).map(|hectares| words.ground_ha(hectares));
        let days = notes.pits.iter().filter_map(|pit| pit.dug).map(|dug| dug.date_naive());
        let days = days.clone().min().zip(days.max());
        let mut who: Vec<String> = Vec::new();
        for by in notes.pits.iter().filter_map(|pit| pit.by.as_deref()).map(|by| words.name(by)) {
            if !who.contains(&by) {
                who.push(by);
            }
        }
        let dug = Some(words.dug(notes.pits.len(), days, &who));
        page.text(Line::Meta, &words.comma(&[area, dug].into_iter().flatten().collect::<Vec<_>>()));
        let remark = notes.field.remark.as_deref().map(|text| words.remark(text));
        page.text(Line::Plain, &remark.unwrap_or_default());
    });
}

/// By which rules it was said, and what comes before it.
pub(super) fn closing(page: &mut Blocks, words: &Words) {
    let rules = format!("{} {RULES}.", words.label(Heading::Rules));
    let told: Vec<String> = DEFERS.iter().map(|&caution| words.of(caution)).chain([rules]).collect();
    page.within(Group::Closing, |page| page.text(Line::Plain, &told.join(" ")));
}

pub(super) fn whole_ha(answer: &FieldAnswer) -> Option<f64> {
    answer.map.whole_m2().map(|m2| m2 / 10_000.0)
}

/// The plan filled by calls, the face that decided beside the reference, and its photo where there is one; gives whether
/// there is.
fn pictures(page: &mut Blocks, words: &Words, answer: &FieldAnswer, photo: PhotoFile) -> bool {
    if let Some(plan) = plan_filled(words, answer, Shows::ALL) {
        page.figure(plan, "");
    }
    let Some((pit, call)) = leading(answer) else { return false };
    let tip = call.and_then(|call| call.tip);
    if let Some(face) = face_of(words, answer, pit, tip, true) {
        let name = words.pit_numbered(pit + 1, answer.notes.pits[pit].place);
        page.figure(face, &words.says_of(&words.label(PageText::Decides), &name));
    }
    let photo = photo_of(words, answer, pit, photo);
    let there = photo.is_some();
    if let Some((drawn, photo)) = photo {
        let title = drawn.title.clone();
        page.figure_of(drawn, Some(photo), &title);
    }
    there
}

/// The call that leads the sheet, and the pit that decides it: ground to be loosened before other work before what is left.
fn leading(answer: &FieldAnswer) -> Option<(usize, Option<&ZoneCall>)> {
    let rank = |call: &&ZoneCall| (call.tip.is_none(), call.call == Call::LeaveIt);
    let call = answer.advice.zones.iter().min_by_key(rank);
    match call.and_then(|call| Some((deciding_pit(answer, call)?, call))) {
        Some((pit, call)) => Some((pit, Some(call))),
        None => (!answer.notes.pits.is_empty()).then_some((0, None)),
    }
}

/// The pit whose layer a zone's call names first; else the zone's first pit.
fn deciding_pit(answer: &FieldAnswer, call: &ZoneCall) -> Option<usize> {
    let named = call.reasons.iter().find_map(|why| match why.what {
        What::Layer { pit, .. } => pit.checked_sub(1),
        _ => None,
    });
    let in_zone = |index: &usize| answer.call_at(*index).is_some_and(|its| its.zone == call.zone);
    named.filter(in_zone).or_else(|| (0..answer.notes.pits.len()).find(in_zone))
}

fn only_machine(answer: &FieldAnswer) -> Option<&Machine> {
    match answer.notes.machines.as_slice() {
        [machine] => Some(machine),
        _ => None,
    }
}

/// Returns what working the harmed ground takes, with the only machine noted, else without one.
pub(super) fn work(answer: &FieldAnswer) -> GroundWork {
    let (field, areas, terms) = (&answer.notes.field, Areas::of(&answer.map), Terms::default());
    ground_work(field, &answer.advice, &areas, only_machine(answer), &terms)
        .or_else(|_| ground_work(field, &answer.advice, &areas, None, &terms))
        .unwrap_or_else(|_| unreachable!("without a machine there is nothing that cannot be so"))
}

/// A line a zone: call, tip depth, hectares, how sure of the pits and of the ground between them.
fn zones(page: &mut Blocks, words: &Words, answer: &FieldAnswer, work: &GroundWork) {
    let heads = [
        words.label(Heading::Zone),
        words.label(Heading::Call),
        words.label(Heading::TipDepth),
        words.label(PageText::SurePits),
        words.label(PageText::SureGround),
    ];
    let rows: Vec<Vec<String>> = work
        .zones
        .iter()
        .map(|zone| {
            let area = zone.area_ha.map(|hectares| words.ground_ha(hectares));
            let name = [Some(words.label(zone.zone)), area].into_iter().flatten().collect::<Vec<_>>();
            let Some(call) = answer.call_of(zone.zone) else {
                return vec![
                    words.comma(&name),
                    words.not_dug(),
                    String::new(),
                    String::new(),
                    String::new(),
                ];
            };
            let sure = words.sureness(call.sure, call.share);
            vec![
                words.comma(&name),
                words.label(call.call),
                call.tip.map(|tip| words.tip_range(&tip)).unwrap_or_default(),
                sure,
                words.sureness(call.ground.sure, call.ground.share),
            ]
        })
        .collect();
    page.table(&words.label(Heading::Zones), &heads, rows);
}

/// The zones' calls with their depths, work before what is left alone, and what has to follow.
fn to_do(words: &Words, answer: &FieldAnswer) -> Vec<String> {
    let whole = words.whole_sentence(&answer.advice);
    let mut calls: Vec<&ZoneCall> = answer.advice.zones.iter().collect();
    crate::order::sort_by_key(&mut calls, |call| (call.tip.is_none(), call.call == Call::LeaveIt));
    let mut said = Vec::new();
    for call in &calls {
        let sentence = Some(words.call_sentence(call)).filter(|sentence| *sentence != whole);
        let tip = call.tip.map(|tip| words.tip_sentences(&tip));
        let told = sentence.into_iter().chain(tip).collect::<Vec<_>>().join(" ");
        add(&mut said, Some(told).filter(|told| !told.is_empty()));
    }
    for call in calls {
        call.follow_up.iter().for_each(|&step| add(&mut said, Some(words.of(step))));
    }
    if said.is_empty() {
        said.push(words.label(PageText::NothingToDo));
    }
    said
}

/// Adds what is not said yet.
fn add(said: &mut Vec<String>, line: Option<String>) {
    said.extend(line.filter(|line| !said.contains(line)));
}

/// Returns what must be so before: cautions that bear on what is done now, rolls, what lies buried.
fn first(words: &Words, answer: &FieldAnswer) -> Vec<String> {
    let (now, _) = answer.advice.cautions();
    let now = now.into_iter().filter(|caution| !DEFERS.contains(caution));
    let mut said: Vec<String> = now.map(|caution| words.of(caution)).collect();
    let reasons = answer.advice.zones.iter().flat_map(|call| &call.reasons);
    reasons.filter(|why| is_first(why)).for_each(|why| add(&mut said, Some(words.why(why))));
    said
}

/// Returns whether a reason is something that must be so before the ground is worked.
const fn is_first(why: &Why) -> bool {
    let rolls = matches!(
        why.what,
        What::RollMissing { .. } | What::SurfaceRollMissing | What::RollPast { .. } | What::RainSince { .. }
    );
    let machine = matches!(why.what, What::NoMachine { .. } | What::BeyondReach { .. });
    rolls || machine || is_buried(why)
}

/// Returns whether a reason is about what lies buried.
pub(super) const fn is_buried(why: &Why) -> bool {
    matches!(
        why.what,
        What::TooNear { .. }
            | What::DepthUnknown { .. }
            | What::HangsOnDepth { .. }
            | What::Service { .. }
            | What::NeedsLeave { .. }
            | What::LiftOut { .. }
            | What::Asked { .. }
    )
}

/// Returns whether a reason is told of the pass behind which it was seen.
const fn is_behind(why: &Why) -> bool {
    matches!(why.what, What::Behind { .. })
}

/// Returns what decided each zone, and what speaks against it.
fn why(words: &Words, answer: &FieldAnswer) -> Vec<String> {
    let mut said = Vec::new();
    for call in &answer.advice.zones {
        let of = |stance: Stance| {
            let told = call
                .reasons
                .iter()
                .filter(move |why| why.stance == stance && !is_first(why) && !is_behind(why));
            told.map(|why| words.why(why))
        };
        let carry = of(Stance::For).take(1);
        let further = of(Stance::Against).chain(of(Stance::Note)).take(FURTHER_REASONS);
        let loss = call.rooting_loss.as_ref().map(|loss| words.rooting_loss(loss));
        let hangs = words.hangs_on(answer.changes(call.zone));
        let told: Vec<String> = hangs.into_iter().chain(carry).chain(further).chain(loss).collect();
        add(&mut said, (!told.is_empty()).then(|| words.zone_says(call.zone, &told.join(" "))));
    }
    let readers = answer.readers().map(|several| words.several_readers(several, &answer.notes.pits));
    said.extend(readers.into_iter().flatten());
    said
}

/// Returns what each pass of a machine did, by the holes behind it, and what comes next.
fn behind(words: &Words, answer: &FieldAnswer) -> Vec<String> {
    let passes = answer.notes.passes.iter().zip(&answer.passes);
    let machine = |id| answer.notes.machines.iter().find(|machine| Some(machine.id) == id);
    passes
        .map(|(noted, said)| {
            let machine = machine(noted.machine).map(|machine| machine.name.as_str());
            let title = words.pass_title(noted, machine);
            let held = said.held.map(|held| words.held_sentence(&held));
            let told: Vec<String> = [Some(words.pass_verdict(said)), held, Some(words.next_sentence(said))]
                .into_iter()
                .flatten()
                .collect();
            words.says_of(&title, &told.join(" "))
        })
        .collect()
}

/// The looks that would say most, what the field can be asked, and where to dig next.
fn not_looked(words: &Words, answer: &FieldAnswer) -> Vec<String> {
    let looks = answer.next_looks().iter().enumerate();
    let looks = looks.filter_map(|(index, look)| Some((index, look.as_ref()?))).take(LOOKS);
    let mut said: Vec<String> = looks
        .map(|(index, look)| {
            let pit = words.pit_numbered(index + 1, answer.notes.pits[index].place);
            words.says_of(&pit, &words.look(look))
        })
        .collect();
    said.extend(answer.worth_asking().iter().map(|worth| words.worth_asking(worth)));
    said.extend(answer.next().filter(|dig| dig.next != Next::Stop).map(|dig| {
        let place = match dig.next {
            Next::Pit { at: At::Place(place), .. } => Some(place),
            _ => None,
        };
        let way =
            answer.last_pit().zip(place).map(|((number, from), to)| (WalkFrom::Pit(number), walk(from, to)));
        let sentence = words.next_pit_sentence(&dig.next, way);
        dig.why.map_or_else(|| sentence.clone(), |why| format!("{sentence} {}", words.of(why)))
    }));
    said
}

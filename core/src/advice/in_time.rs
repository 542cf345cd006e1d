//! A field's state in time: what was loosened since its pits were dug, and what the holes behind the machine say of it.
//!
//! Pits tell how a zone was when they were dug. A loosening after them makes them past: then the holes behind the machine
//! speak, or new pits are asked for. A loosening before them that left a harmed layer did not last, and that is said first.

use super::FieldAdvice;
use super::after_dig::{Lasting, NextStep, PassAdvice, Verdict};
use super::belongs::{belonging, has_already};
use super::call::{Readiness, Stance, Sureness, What, Why, ZoneCall};
use crate::record::{Call, Extent, FieldNotes, Pass, Zone};
use chrono::NaiveDate;

/// Days within which a harmed layer found after a loosening means that it did not last: about three seasons (DPIRD, on 35
/// to 50 cm deep loosening); of older ones nothing else is to be expected.
const LASTS_DAYS: i64 = 3 * 365;

/// Returns whether a pass ran over ground of a zone.
pub fn covers(pass: &Pass, zone: Zone) -> bool {
    zone == Zone::Whole || pass.zone.is_none_or(|its| its == Zone::Whole || its == zone)
}

/// Returns whether a pass worked all of its zone.
fn is_whole(pass: &Pass) -> bool {
    pass.extent == Some(Extent::Zone)
}

/// The last day of anything noted.
pub fn last_day(notes: &FieldNotes) -> Option<NaiveDate> {
    let pits = notes.pits.iter().filter_map(|pit| pit.dug).map(|dug| dug.date_naive());
    let passes = notes.passes.iter().filter_map(|pass| pass.done);
    let digs = notes.passes.iter().flat_map(|pass| &pass.after_digs).filter_map(|dig| dig.dug);
    pits.chain(passes).chain(digs.map(|dug| dug.date_naive())).max()
}

/// The last day all of a zone was loosened before some pits of it were dug: those of that day and earlier describe the
/// ground no more.
pub fn past_until(notes: &FieldNotes, stands: &[Option<Zone>], zone: Zone) -> Option<NaiveDate> {
    let last = last_dug(notes, stands, zone)?;
    loosenings(notes, zone).filter(|day| *day < last).max()
}

/// Days on which all of a zone was loosened.
fn loosenings(notes: &FieldNotes, zone: Zone) -> impl Iterator<Item = NaiveDate> {
    let passes = notes.passes.iter().filter(move |pass| is_whole(pass) && covers(pass, zone));
    passes.filter_map(|pass| pass.done).chain(of_field(notes))
}

/// The field's own last loosening, where no pass of that day says more of it.
fn of_field(notes: &FieldNotes) -> Option<NaiveDate> {
    let told = |day: &NaiveDate| notes.passes.iter().any(|pass| pass.done == Some(*day));
    notes.field.last_loosened.filter(|day| !told(day))
}

/// The same as far as it still counts: less than [`LASTS_DAYS`] before the first pit that is noted, or after it.
pub fn recent_loosening(notes: &FieldNotes) -> Option<NaiveDate> {
    let first = notes.pits.iter().filter_map(|pit| pit.dug).map(|dug| dug.date_naive()).min()?;
    of_field(notes).filter(|day| first.signed_duration_since(*day).num_days() <= LASTS_DAYS)
}

/// The last day a pit of a zone was dug. `stands` is the zone that each pit stands for.
fn last_dug(notes: &FieldNotes, stands: &[Option<Zone>], zone: Zone) -> Option<NaiveDate> {
    let of_zone = |its: &Option<Zone>| its.is_some_and(|its| zone == Zone::Whole || its == zone);
    let pits = notes.pits.iter().zip(stands).filter(|(_, its)| of_zone(its));
    pits.filter_map(|(pit, _)| pit.dug).map(|dug| dug.date_naive()).max()
}

/// The calls as they stand today. `stands` is the zone of each pit, `dug` what the pits say, `passes` what the holes behind
/// the machine say.
pub fn as_of(
    notes: &FieldNotes,
    stands: &[Option<Zone>],
    dug: FieldAdvice,
    passes: &[PassAdvice],
) -> FieldAdvice {
    let FieldAdvice { zones, whole } = dug;
    let mut changed = false;
    let zones: Vec<ZoneCall> = zones
        .into_iter()
        .map(|call| {
            let before = call.call;
            let mut now = zone_now(notes, stands, passes, call);
            now.follow_up.retain(|step| !has_already(&notes.field, *step));
            changed |= now.call != before;
            now
        })
        .collect();
    let open = zones.iter().find(|call| call.zone == Zone::Open);
    // What the pits of all zones say together is past with the pits of one of them.
    let whole = match open {
        Some(open) if changed => {
            let told = whole.reasons.iter().filter(|why| matches!(why.what, What::ZonesDiffer { .. }));
            let reasons = told.cloned().chain(open.reasons.iter().cloned()).collect();
            ZoneCall { zone: Zone::Whole, pits: whole.pits, reasons, ..open.clone() }
        }
        _ => whole,
    };
    let mut now = FieldAdvice { zones, whole };
    now.whole.reasons = super::zones::telling_zones_apart(&now);
    now
}

/// The call of one zone as it stands today.
fn zone_now(notes: &FieldNotes, stands: &[Option<Zone>], passes: &[PassAdvice], call: ZoneCall) -> ZoneCall {
    let zone = call.zone;
    let last = last_dug(notes, stands, zone);
    // A day that is not known comes after the pits: a pass is noted because of them.
    let since = |done: Option<NaiveDate>| done.zip(last).is_none_or(|(done, last)| done >= last);
    let covering = || notes.passes.iter().zip(passes).filter(|(pass, _)| covers(pass, zone));
    let worked = covering().filter(|(pass, _)| is_whole(pass) && since(pass.done));
    let last_of = |(pass, _): &(&Pass, &PassAdvice)| pass.done.unwrap_or(NaiveDate::MAX);
    if let Some((pass, said)) = worked.max_by_key(last_of) {
        return worked_since(call, pass, said);
    }
    if let Some(on) = of_field(notes).filter(|day| last.is_some_and(|last| *day > last)) {
        return told(ZoneCall { tip: None, ..call }, Call::DigAgain, What::LoosenedSince { on });
    }
    let call = did_not_last(notes, last, call);
    let strips = covering().filter(|(pass, _)| !is_whole(pass) && since(pass.done));
    match strips.max_by_key(last_of) {
        Some((pass, said)) if matches!(call.call, Call::Loosen | Call::Wait) => strip_since(call, pass, said),
        _ => call,
    }
}

/// The zone was worked since its pits were dug: the holes behind the machine speak.
fn worked_since(call: ZoneCall, pass: &Pass, said: &PassAdvice) -> ZoneCall {
    let what = behind(pass, said);
    let lost = said.held.is_some_and(|held| held.lasting == Lasting::Lost);
    if lost {
        let what = What::DidNotLast { on: pass.done };
        return told(ZoneCall { tip: None, ..call }, Call::RootsFirst, what);
    }
    // What the pits did not ask steel for is not called otherwise because steel was used.
    let asked = matches!(call.call, Call::Loosen | Call::Wait | Call::AskSpecialist | Call::DigAgain);
    if !asked {
        return noted(call, what);
    }
    match said.next {
        NextStep::KeepOff | NextStep::GoOn if said.verdict == Some(Verdict::Done) || said.held.is_some() => {
            told(ZoneCall { tip: None, ..call }, Call::LeaveIt, what)
        }
        NextStep::KeepOff | NextStep::GoOn | NextStep::DigBehind => {
            told(ZoneCall { tip: None, ..call }, Call::DigAgain, what)
        }
        NextStep::StopLoosening => told(ZoneCall { tip: None, ..call }, Call::RootsFirst, what),
        NextStep::CheckFirst | NextStep::ChangeAndTry | NextStep::Wait => held_back(call, said.next, what),
    }
}

/// A strip was run since: what the hole behind it says holds for the rest.
fn strip_since(call: ZoneCall, pass: &Pass, said: &PassAdvice) -> ZoneCall {
    let what = behind(pass, said);
    match said.next {
        NextStep::DigBehind if call.call == Call::Loosen => {
            noted(ZoneCall { readiness: Readiness::StripFirst, ..call }, what)
        }
        NextStep::GoOn | NextStep::KeepOff | NextStep::DigBehind => noted(call, what),
        NextStep::StopLoosening => told(ZoneCall { tip: None, ..call }, Call::RootsFirst, what),
        NextStep::CheckFirst | NextStep::ChangeAndTry | NextStep::Wait => held_back(call, said.next, what),
    }
}

/// To wait, until it is drier or until a changed strip has done it. Without a depth there is nothing to wait for.
fn held_back(call: ZoneCall, next: NextStep, what: What) -> ZoneCall {
    if call.tip.is_none() {
        return noted(call, what);
    }
    let readiness = if next == NextStep::Wait { Readiness::Fit } else { Readiness::StripFirst };
    told(ZoneCall { readiness, ..call }, Call::Wait, what)
}

/// A harmed layer in pits dug after a loosening: it did not last.
fn did_not_last(notes: &FieldNotes, last: Option<NaiveDate>, mut call: ZoneCall) -> ZoneCall {
    let loosened = loosenings(notes, call.zone).filter(|day| {
        last.is_some_and(|last| *day < last && last.signed_duration_since(*day).num_days() <= LASTS_DAYS)
    });
    if let Some(on) = loosened.max().filter(|_| matches!(call.call, Call::Loosen | Call::Wait)) {
        call.reasons.insert(0, Why { stance: Stance::Against, what: What::DidNotLast { on: Some(on) } });
    }
    call
}

/// Returns what the holes behind a pass say.
fn behind(pass: &Pass, said: &PassAdvice) -> What {
    What::Behind {
        on: pass.done,
        strip: !is_whole(pass),
        verdict: said.verdict,
        next: said.next,
        check: said.check,
        remedy: said.remedy,
    }
}

/// The call with another one in its place, for this reason; what spoke for the earlier one is only noted.
fn told(mut call: ZoneCall, now: Call, what: What) -> ZoneCall {
    let works = matches!(now, Call::Loosen | Call::Wait);
    call.reasons.retain(|why| works || !is_of_work(&why.what));
    for why in call.reasons.iter_mut().filter(|why| why.stance == Stance::For) {
        why.stance = Stance::Note;
    }
    call.reasons.insert(0, Why { stance: Stance::For, what });
    // A hole behind the machine is measured; one of them is likely, not more.
    let sure = match (now, call.sure) {
        (Call::DigAgain, _) => Sureness::CannotSay,
        (_, Sureness::CannotSay) => Sureness::Likely,
        (_, sure) => sure,
    };
    let readiness = if now == Call::Wait { call.readiness } else { Readiness::Fit };
    belonging(ZoneCall { call: now, sure, readiness, ..call })
}

/// Returns what bears on a call only while there is work to be done.
const fn is_of_work(what: &What) -> bool {
    matches!(
        what,
        What::Rolled { .. }
            | What::RollMissing { .. }
            | What::SurfaceRollMissing
            | What::RollPast { .. }
            | What::RainSince { .. }
            | What::TooNear { .. }
            | What::DepthUnknown { .. }
            | What::NeedsLeave { .. }
            | What::LiftOut { .. }
            | What::HangsOnDepth { .. }
            | What::NoMachine { .. }
            | What::BeyondReach { .. }
    )
}

fn noted(mut call: ZoneCall, what: What) -> ZoneCall {
    call.reasons.push(Why { stance: Stance::Note, what });
    call
}

//! What a tap on a pass or a hole behind it has saved, in a short sentence.

use super::looks::SeenBehind;
use super::{BehindAct, PassSaid, machine_of};
use crate::advice::after_dig::PassClue;
use crate::record::{AfterDig, FieldNotes, Pass};
use crate::screen::Edit;
use crate::words::{Caption, Listed, Words};

/// Something of a pass, as it now is.
pub(super) fn of_pass(said: PassSaid, pass: &Pass, notes: &FieldNotes, words: &Words) -> String {
    match said {
        PassSaid::Machine(_) => {
            let machine = machine_of(notes, pass).map(|machine| words.name(&machine.name));
            value(&words.of(Caption::PassMachine), machine, words)
        }
        PassSaid::Zone(_) => value(&words.of(Caption::PassZone), pass.zone.map(|zone| words.of(zone)), words),
        PassSaid::Extent(_) => {
            value(&words.of(Caption::PassExtent), pass.extent.map(|extent| words.of(extent)), words)
        }
        PassSaid::Done(day) => words.kept(&words.date(day)),
        PassSaid::TipMm(tip_mm) => {
            value(&words.of(Caption::TipDepth), tip_mm.map(|tip_mm| words.depth(tip_mm)), words)
        }
        PassSaid::SpeedKmh(kmh) => {
            value(&words.of(Caption::PassSpeed), kmh.map(|kmh| words.speed(kmh)), words)
        }
        PassSaid::DrivenOn(_) => words.driven_kept(pass.driven_on),
    }
}

/// A roll test at the depth of the tips, noted or taken back.
pub(super) fn of_roll(edit: &Edit, depth_mm: u32, words: &Words) -> String {
    match edit {
        Edit::Roll { roll, .. } => words.rolled(roll.depth_mm, false, roll.roll),
        _ => value(&words.soil_from(Some(depth_mm)), None, words),
    }
}

/// Something of a hole, as it now is; a depth with its number, from 1.
pub(super) fn of_dig(act: &BehindAct, dig: &AfterDig, number: usize, words: &Words) -> String {
    match act {
        BehindAct::Read(mm) => words.kept_as(&words.reading_number(number), &words.depth(*mm)),
        BehindAct::Slot(mm) => words.kept_as(&words.slot_number(number), &words.depth(*mm)),
        BehindAct::Seen(seen) => of_look(*seen, dig, words),
        BehindAct::Pass(_) | BehindAct::Roll(_) => String::new(),
    }
}

fn of_look(seen: SeenBehind, dig: &AfterDig, words: &Words) -> String {
    let yes_no = |yes: bool| if yes { Caption::Yes } else { Caption::No };
    let of = |clue: PassClue| words.of(clue);
    match seen {
        SeenBehind::Profile(_) => answer(&of(PassClue::Profile), dig.profile, words),
        SeenBehind::Smear(_) => answer(&of(PassClue::Smear), dig.smear, words),
        SeenBehind::Lift(_) => answer(&of(PassClue::Lift), dig.lift, words),
        SeenBehind::Clods(_) => answer(&of(PassClue::Clods), dig.clods, words),
        SeenBehind::Plates(_) => answer(&of(PassClue::Plates), dig.plates, words),
        SeenBehind::SubsoilUp(_) => answer(&of(PassClue::SubsoilUp), dig.subsoil_up.map(yes_no), words),
        SeenBehind::Feet(_) => answer(&of(PassClue::Feet), dig.feet, words),
        SeenBehind::OldSlots(_) => answer(&of(PassClue::OldSlots), dig.old_slots.map(yes_no), words),
        SeenBehind::Roots(_) => answer(&words.of(Caption::Roots), dig.roots, words),
    }
}

fn answer(what: &str, noted: Option<impl Listed>, words: &Words) -> String {
    value(what, noted.map(|noted| words.of(noted)), words)
}

fn value(what: &str, noted: Option<String>, words: &Words) -> String {
    words.kept_as(what, &noted.unwrap_or_else(|| words.of(Caption::NotNoted)))
}

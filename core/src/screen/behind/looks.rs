//! What is seen in a hole behind the machine: one tap each, each may be left out.

use super::BehindAct;
use crate::advice::Caution;
use crate::advice::after_dig::PassClue;
use crate::record::{AfterDig, Clods, FeetSeen, Lift, PlatesLeft, Profile, RootsSeen, Smear};
use crate::screen::bar::{asked, choice};
use crate::screen::{Act, Button, Doing};
use crate::words::{Caption, Listed, Words};
use serde::{Deserialize, Serialize};

/// Something seen in the hole or at the machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "as in the record of an after-dig")]
pub enum SeenBehind {
    Profile(Profile),
    Smear(Smear),
    Lift(Lift),
    Clods(Clods),
    Plates(PlatesLeft),
    SubsoilUp(bool),
    Feet(FeetSeen),
    OldSlots(bool),
    Roots(RootsSeen),
}

/// Notes an answer; the same once more takes it back.
pub(super) fn toggle<T: PartialEq>(noted: &mut Option<T>, answer: T) {
    *noted = if noted.as_ref() == Some(&answer) { None } else { Some(answer) };
}

impl SeenBehind {
    pub(super) fn note(self, dig: &mut AfterDig) {
        match self {
            Self::Profile(seen) => toggle(&mut dig.profile, seen),
            Self::Smear(seen) => toggle(&mut dig.smear, seen),
            Self::Lift(seen) => toggle(&mut dig.lift, seen),
            Self::Clods(seen) => toggle(&mut dig.clods, seen),
            Self::Plates(seen) => toggle(&mut dig.plates, seen),
            Self::SubsoilUp(seen) => toggle(&mut dig.subsoil_up, seen),
            Self::Feet(seen) => toggle(&mut dig.feet, seen),
            Self::OldSlots(seen) => toggle(&mut dig.old_slots, seen),
            Self::Roots(seen) => toggle(&mut dig.roots, seen),
        }
    }
}

fn act(seen: SeenBehind) -> Act {
    BehindAct::Seen(seen).into()
}

fn answers<T: Listed + PartialEq>(
    all: &[T],
    noted: Option<T>,
    of: fn(T) -> SeenBehind,
    words: &Words,
) -> Vec<Button> {
    all.iter().map(|&seen| choice(words.label(seen), act(of(seen)), noted == Some(seen))).collect()
}

/// The questions of a hole; that at the machine has its caution beside it. Roots are asked a season
/// on.
pub(super) fn looks(dig: &AfterDig, season_on: bool, words: &Words) -> Vec<Doing> {
    let yes_no = |noted: Option<bool>, of: fn(bool) -> SeenBehind| {
        let button = |label: Caption, yes: bool| choice(words.label(label), act(of(yes)), noted == Some(yes));
        vec![button(Caption::Yes, true), button(Caption::No, false)]
    };
    let clue = |clue: PassClue| words.label(clue);
    let feet = format!("{}. {}", clue(PassClue::Feet), words.of(Caution::MachineStopped));
    let roots = if season_on {
        asked(words.label(Caption::Roots), 2, answers(RootsSeen::ALL, dig.roots, SeenBehind::Roots, words))
    } else {
        Vec::new()
    };
    [
        asked(words.label(Caption::OldSlots), 2, yes_no(dig.old_slots, SeenBehind::OldSlots)),
        asked(feet, 3, answers(FeetSeen::ALL, dig.feet, SeenBehind::Feet, words)),
        asked(words.label(Caption::SubsoilUp), 2, yes_no(dig.subsoil_up, SeenBehind::SubsoilUp)),
        asked(clue(PassClue::Clods), 2, answers(Clods::ALL, dig.clods, SeenBehind::Clods, words)),
        asked(clue(PassClue::Lift), 3, answers(Lift::ALL, dig.lift, SeenBehind::Lift, words)),
        asked(clue(PassClue::Plates), 3, answers(PlatesLeft::ALL, dig.plates, SeenBehind::Plates, words)),
        asked(clue(PassClue::Smear), 2, answers(Smear::ALL, dig.smear, SeenBehind::Smear, words)),
        asked(clue(PassClue::Profile), 2, answers(Profile::ALL, dig.profile, SeenBehind::Profile, words)),
        roots,
    ]
    .concat()
}

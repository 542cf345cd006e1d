//! What is seen in a hole behind the machine: one question a screen, each may be left out.

use super::hole::AtHole;
use super::{BehindAct, HoleLook, HoleStep, READINGS};
use crate::advice::Caution;
use crate::advice::after_dig::SEASON_DAYS;
use crate::picture::Icon;
use crate::record::{AfterDig, Clods, FeetSeen, Lift, Pass, PlatesLeft, Profile, RecordId, RootsSeen, Smear};
use crate::screen::bar::{choice, tool};
use crate::screen::{Act, Block, Button, Does, Headline, Place, Row, Screen, World};
use crate::words::{Caption, Listed, Words, WorkText};
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

/// Looks asked one after the other, those first that decide what the pass did: form and walls tell a slot from loosened
/// ground, lumps and plates mar one that is loose, large lumps with subsoil among them harm it (the marks of
/// `after_dig/verdict.rs`). With eight readings they make twelve taps. Our judgement.
fn queue(dig: &AfterDig, season_on: bool) -> Vec<HoleLook> {
    if season_on {
        return vec![HoleLook::Roots, HoleLook::Plates];
    }
    let large = dig.clods == Some(Clods::Large);
    let last = if large { HoleLook::SubsoilUp } else { HoleLook::Plates };
    vec![HoleLook::Form, HoleLook::Smear, HoleLook::Clods, last]
}

/// The next look of the queue after one, or the first of all, that is not made.
pub(super) fn next(dig: &AfterDig, season_on: bool, after: Option<HoleLook>) -> Option<HoleLook> {
    let queue = queue(dig, season_on);
    let from = after.map_or(Some(0), |look| Some(queue.iter().position(|its| *its == look)? + 1))?;
    queue.into_iter().skip(from).find(|look| !look.made(dig))
}

/// Returns whether a hole is dug so long after its pass that it tells whether it held.
pub(super) fn season_on(pass: &Pass, dig: &AfterDig) -> bool {
    let days = pass.done.zip(dig.dug).map(|(done, dug)| (dug.date_naive() - done).num_days());
    days.is_some_and(|days| days >= SEASON_DAYS)
}

/// Where a tap in a hole leads: to the next depth, then to the looks one by one, then to what the hole says.
pub(super) fn then(place: Place, pass: &Pass, dig: &AfterDig, act: &BehindAct, world: &World) -> Place {
    let (Some(field), result) =
        (place.field(), |field| Place::AfterDig { field, pass: pass.id, dig: dig.id })
    else {
        return place;
    };
    let to = |step| Place::InHole { field, pass: pass.id, dig: Some(dig.id), step, from_mm: None };
    let look =
        |after| next(dig, season_on(pass, dig), after).map(|look| to(HoleStep::Look { look, queued: true }));
    match (act, place) {
        // With the last reading the looks begin; an earlier one put right begins nothing.
        (BehindAct::Read(_), Place::InHole { step: HoleStep::Reading(number), .. })
            if usize::from(number) + 1 < dig.firm_mm.len() =>
        {
            result(field)
        }
        (BehindAct::Read(_), _) if dig.firm_mm.len() == READINGS => look(None).unwrap_or(result(field)),
        (BehindAct::Slot(_), Place::InHole { step: HoleStep::Slot(number), .. }) => {
            let more = dig.slots_mm.len() < slots(field, pass, world);
            if more && usize::from(number) + 1 == dig.slots_mm.len() {
                to(HoleStep::Slot(number + 1))
            } else {
                to(HoleStep::Looks)
            }
        }
        (BehindAct::Seen(_), Place::InHole { step: HoleStep::Look { look: this, queued }, .. }) => {
            if !this.made(dig) {
                to(HoleStep::Look { look: this, queued })
            } else if queued {
                look(Some(this)).unwrap_or(result(field))
            } else {
                to(HoleStep::Looks)
            }
        }
        _ => result(field),
    }
}

fn slots(field: RecordId, pass: &Pass, world: &World) -> usize {
    world.answer(field).map_or(0, |answer| super::readings::slots(&answer, pass))
}

fn act(seen: SeenBehind) -> Act {
    BehindAct::Seen(seen).into()
}

/// The answers of a list, that given marked.
fn answers<T: Listed + PartialEq>(
    all: &[T],
    noted: Option<T>,
    of: fn(T) -> SeenBehind,
    words: &Words,
) -> Vec<Button> {
    all.iter().map(|&seen| choice(words.label(seen), act(of(seen)), noted == Some(seen))).collect()
}

impl HoleLook {
    /// Returns whether it is answered.
    pub(super) fn made(self, dig: &AfterDig) -> bool {
        match self {
            Self::Form => dig.profile.is_some(),
            Self::Smear => dig.smear.is_some(),
            Self::Clods => dig.clods.is_some(),
            Self::Plates => dig.plates.is_some(),
            Self::SubsoilUp => dig.subsoil_up.is_some(),
            Self::Lift => dig.lift.is_some(),
            Self::OldSlots => dig.old_slots.is_some(),
            Self::Feet => dig.feet.is_some(),
            Self::Roots => dig.roots.is_some(),
        }
    }

    const fn question(self) -> WorkText {
        match self {
            Self::Form => WorkText::FormQuestion,
            Self::Smear => WorkText::SmearQuestion,
            Self::Clods => WorkText::ClodsQuestion,
            Self::Plates => WorkText::PlatesQuestion,
            Self::SubsoilUp => WorkText::SubsoilQuestion,
            Self::Lift => WorkText::LiftQuestion,
            Self::OldSlots => WorkText::OldQuestion,
            Self::Feet => WorkText::FeetQuestion,
            Self::Roots => WorkText::RootsQuestion,
        }
    }

    const fn name(self) -> WorkText {
        match self {
            Self::Form => WorkText::Form,
            Self::Smear => WorkText::Smear,
            Self::Clods => WorkText::Clods,
            Self::Plates => WorkText::Plates,
            Self::SubsoilUp => WorkText::Subsoil,
            Self::Lift => WorkText::Lift,
            Self::OldSlots => WorkText::Old,
            Self::Feet => WorkText::Feet,
            Self::Roots => WorkText::Roots,
        }
    }

    fn answers(self, dig: &AfterDig, words: &Words) -> Vec<Button> {
        let yes_no = |noted: Option<bool>, of: fn(bool) -> SeenBehind| {
            let button =
                |label: Caption, yes: bool| choice(words.label(label), act(of(yes)), noted == Some(yes));
            vec![button(Caption::Yes, true), button(Caption::No, false)]
        };
        match self {
            Self::Form => answers(Profile::ALL, dig.profile, SeenBehind::Profile, words),
            Self::Smear => answers(Smear::ALL, dig.smear, SeenBehind::Smear, words),
            Self::Clods => answers(Clods::ALL, dig.clods, SeenBehind::Clods, words),
            Self::Plates => answers(PlatesLeft::ALL, dig.plates, SeenBehind::Plates, words),
            Self::SubsoilUp => yes_no(dig.subsoil_up, SeenBehind::SubsoilUp),
            Self::Lift => answers(Lift::ALL, dig.lift, SeenBehind::Lift, words),
            Self::OldSlots => yes_no(dig.old_slots, SeenBehind::OldSlots),
            Self::Feet => answers(FeetSeen::ALL, dig.feet, SeenBehind::Feet, words),
            Self::Roots => answers(RootsSeen::ALL, dig.roots, SeenBehind::Roots, words),
        }
    }

    /// Returns what stands there now.
    fn noted(self, dig: &AfterDig, words: &Words) -> String {
        let given = self.answers(dig, words).into_iter().find(|button| button.chosen);
        given.map_or_else(|| words.label(WorkText::NotLooked), |button| button.label)
    }
}

/// One look, with what may have to be heeded in making it.
pub(super) fn show(at: &AtHole, look: HoleLook, queued: bool, world: &World) -> Screen {
    let words = world.words;
    let dig = at.dig_or_new();
    let mut screen = at.screen(HoleStep::Look { look, queued }, None, world);
    screen.answer = Some(Headline::new(words.label(look.question())));
    screen.picture = at.seen_so_far(world);
    let answers = look.answers(&dig, words);
    let columns = if answers.len() == 2 { 2 } else { 1 };
    screen.blocks = vec![Block::Question { text: String::new(), columns, answers }];
    if look == HoleLook::Feet {
        screen.caution = words.of(Caution::MachineStopped);
    }
    let result = at.result();
    if queued {
        let next = next(&dig, at.season_on(), Some(look));
        let skipped = next.map_or(result, |look| at.place(HoleStep::Look { look, queued: true }, None));
        screen.tools.push(tool(Icon::Skip, words.label(WorkText::NotLooked), Act::Go(skipped)));
        if next.is_some() {
            screen.tools.push(tool(Icon::Behind, words.label(WorkText::Enough), Act::Go(result)));
        }
    }
    screen
}

/// Everything to be looked at, with what stands there now.
pub(super) fn list(at: &AtHole, world: &World) -> Screen {
    let words = world.words;
    let dig = at.dig_or_new();
    let mut screen = at.screen(HoleStep::Looks, None, world);
    screen.answer = Some(Headline {
        line: words.looks_left(left(&dig, at.season_on())),
        ..Headline::new(words.label(WorkText::SeenWhat))
    });
    let row = |name: WorkText, line: String, step: HoleStep| Row {
        icon: None,
        title: words.label(name),
        lines: vec![line],
        does: Does::Act(Act::Go(at.place(step, None))),
    };
    let mut rows: Vec<Row> = looks(at.season_on())
        .map(|look| row(look.name(), look.noted(&dig, words), HoleStep::Look { look, queued: false }))
        .collect();
    let measured = if dig.slots_mm.is_empty() {
        words.label(WorkText::NotLooked)
    } else {
        words.depths_read(&dig.slots_mm)
    };
    let next = dig.slots_mm.len().min(at.slots().saturating_sub(1)) as u16;
    rows.insert(4.min(rows.len()), row(WorkText::Slots, measured, HoleStep::Slot(next)));
    screen.blocks = vec![Block::Ways { heading: String::new(), rows }];
    screen
}

/// The looks a hole can have: roots are asked a season on.
fn looks(season_on: bool) -> impl Iterator<Item = HoleLook> {
    HoleLook::ALL.iter().copied().filter(move |look| season_on || *look != HoleLook::Roots)
}

/// How many are not made.
pub(super) fn left(dig: &AfterDig, season_on: bool) -> usize {
    looks(season_on).filter(|look| !look.made(dig)).count()
}

/// Returns whether anything at all is noted of a hole.
pub(super) fn nothing_noted(dig: &AfterDig) -> bool {
    let looked = HoleLook::ALL.iter().any(|look| look.made(dig));
    dig.firm_mm.is_empty() && dig.slots_mm.is_empty() && !looked
}

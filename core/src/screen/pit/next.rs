//! The one thing worth doing now, beside a pit whose answer is shown.

use super::super::bar::act_button;
use super::super::part::go;
use super::super::{Button, Place, World};
use super::headline::{Says, says};
use super::{AtPit, look, roll};
use crate::advice::sampling::Next;
use crate::picture::{Icon, icon};
use crate::words::{FaceText, PitText};

/// Returns what the core finds worth doing now: what this face still lacks while one stands at it, then the next pit, then to show
/// what came out.
/// `looks`: how many looks are still to come.
pub(super) fn next_step(at: &AtPit, looks: usize, world: &World) -> Button {
    let (words, field, pit) = (world.words, at.field, at.pit.id);
    let says = says(at);
    let walk = || step(Icon::Layers, words.label(PitText::WalkOn), Place::KnifeWalk { field, pit });
    if says == Says::NoKnife {
        return walk();
    }
    if let Says::TooShallow(need_mm) = says {
        return Button { note: words.dig_down_to(need_mm), ..walk() };
    }
    let today = at.pit.dug.is_some_and(|dug| dug.date_naive() == world.now.date_naive());
    let skipped = world.passed_over(pit);
    if today && at.pit.rolls.is_empty() && looks > 0 {
        return step(Icon::Layers, words.look_on(looks), Place::NextLook { field, pit });
    }
    if today && !roll::to_come(at, skipped).is_empty() {
        return step(Icon::Roll, words.label(FaceText::RollNow), Place::Roll { field, pit });
    }
    let start = Place::StartPit { field, pit: None };
    match at.answer.next().map(|dig| dig.next) {
        Some(Next::Reference) => step(Icon::Reference, words.label(FaceText::DigReference), start),
        Some(Next::Pit { zone, .. }) => step(Icon::Pit, words.dig_in(zone), start),
        Some(Next::Behind { zone }) => {
            step(Icon::Behind, words.dig_behind_in(zone), Place::Pass { field, pass: None })
        }
        Some(Next::Stop) | None => {
            step(Icon::Show, words.label(FaceText::ShowIt), Place::Show { field, pit: Some(pit) })
        }
    }
}

/// How many looks at a face are still worth a tap.
pub(super) fn looks_left(at: &AtPit, world: &World) -> usize {
    look::left(at.pit, at.reading(), &at.answer.notes.field, world.passed_over(at.pit.id))
}

/// The same in words, for whoever is shown the pit.
pub(in crate::screen) fn next_label(at: &AtPit, world: &World) -> String {
    next_step(at, looks_left(at, world), world).label
}

fn step(of: Icon, label: String, place: Place) -> Button {
    Button { drawing: Some(icon(of)), ..go(label, place) }
}

/// The tool that shows what came out, to whoever stands there.
pub(super) fn show_tool(at: &AtPit, world: &World) -> Button {
    let place = Place::Show { field: at.field, pit: Some(at.pit.id) };
    let act = super::Act::Go(place);
    Button { drawing: Some(icon(Icon::Show)), ..act_button(world.words.label(PitText::Show), act) }
}

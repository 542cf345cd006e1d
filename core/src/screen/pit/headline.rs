//! What is to be done where a pit was dug, in one sentence. A pit alone never says to dig again what another pit lacks.

use super::super::{Headline, World};
use super::AtPit;
use super::walk::has_knife_answer;
use crate::advice::{Stance, What, Why, ZoneCall};
use crate::picture::{Icon, icon};
use crate::record::{Call, PlaceKind};
use crate::words::{FaceText, PitText, Words};

/// What a pit can say by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::screen) enum Says<'a> {
    /// It is the reference pit: the others are compared with it.
    Reference,
    /// The knife has told nothing yet.
    NoKnife,
    /// There is no reference pit to compare it with.
    NoReference,
    /// Its hole is too shallow: how deep it has to be.
    TooShallow(u32),
    /// Too little is seen of it to tell: why.
    TooFew(&'a Why),
    /// The call that holds where it was dug.
    Call(&'a ZoneCall),
    /// Nothing: no call holds there.
    Nothing,
}

/// Returns what a pit says.
pub(in crate::screen) fn says<'a>(at: &'a AtPit) -> Says<'a> {
    if !has_knife_answer(at.pit) {
        return Says::NoKnife;
    }
    if at.pit.place == PlaceKind::Reference {
        return Says::Reference;
    }
    let Some(call) = at.answer.call_at(at.index) else { return Says::Nothing };
    if call.lacks_reference() {
        return Says::NoReference;
    }
    let lead = call.reasons.iter().find(|why| why.stance == Stance::For);
    match (call.call, lead.map(|why| &why.what)) {
        (Call::DigAgain, Some(&What::TooShallow { dug_to_mm, need_mm })) if dug_to_mm == at.dug_to_mm() => {
            Says::TooShallow(need_mm)
        }
        (Call::DigAgain, Some(What::SignsTooFew { .. })) => lead.map_or(Says::Call(call), Says::TooFew),
        _ => Says::Call(call),
    }
}

/// The sentence with its sign.
pub(in crate::screen) fn headline(at: &AtPit, world: &World) -> Headline {
    let words = world.words;
    let says = says(at);
    let text = match says {
        Says::Reference => words.of(FaceText::IsReference),
        Says::NoKnife => words.of(FaceText::NoKnife),
        Says::NoReference => words.of(FaceText::ReferenceMissing),
        Says::TooShallow(need_mm) => words.dig_deeper(need_mm),
        Says::TooFew(_) => words.of(FaceText::TooFew),
        Says::Call(call) => words.call_headline(call),
        Says::Nothing => words.of(PitText::NoLayers),
    };
    let sign = match says {
        Says::Reference | Says::NoReference => Some(Icon::Reference),
        Says::Call(call) => Some(sign_of(call.call)),
        Says::TooShallow(_) => Some(Icon::Pit),
        Says::TooFew(_) | Says::NoKnife | Says::Nothing => None,
    };
    Headline { text, sign: sign.map(icon), line: line(says, words) }
}

/// The main reason, in one line.
fn line(says: Says, words: &Words) -> String {
    match says {
        Says::TooFew(why) => words.main_reason(why),
        Says::Reference => words.of(PitText::ReferenceStands),
        Says::NoReference => words.of(FaceText::ReferenceWhy),
        Says::Call(call) => {
            let lead = call.reasons.iter().find(|why| why.stance == Stance::For);
            lead.map_or_else(String::new, |why| words.main_reason(why))
        }
        Says::NoKnife | Says::TooShallow(_) | Says::Nothing => String::new(),
    }
}

/// The sign of a call.
const fn sign_of(call: Call) -> Icon {
    match call {
        Call::LeaveIt => Icon::LeaveIt,
        Call::RootsFirst => Icon::RootsFirst,
        Call::Loosen => Icon::Loosen,
        Call::Wait => Icon::Wait,
        Call::DrainFirst => Icon::DrainFirst,
        Call::DigAgain => Icon::DigAgain,
        Call::AskSpecialist => Icon::AskSpecialist,
    }
}

impl AtPit<'_> {
    /// Depth seen of its hole.
    fn dug_to_mm(&self) -> u32 {
        self.reading().dug_to_mm
    }
}

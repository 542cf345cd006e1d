//! A pit that is dug, walked and looked at by taps.

use super::{Phone, answers, demo};
use pitface_core::record::FieldNotes;
use pitface_core::screen::{Place, Screen, ScreenKind};

/// A field with its reference pit dug.
pub fn field_with_reference() -> Vec<FieldNotes> {
    let mut notes = demo().into_iter().find(|notes| notes.field.name == "Long Sedge").unwrap();
    notes.pits.truncate(1);
    vec![notes]
}

/// Which screen it is.
pub fn kind(phone: &Phone) -> ScreenKind {
    phone.screen().kind
}

/// Begins a pit in a wheeling, digs the hole and looks at its face: two taps.
pub fn dug(phone: &mut Phone) {
    phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
    phone.tap("Wheeling");
    phone.tap("Moist");
}

/// Walks down a pan: crumbs to 20 cm, plates to 30 cm, rounded lumps to 50 cm.
pub fn walked(phone: &mut Phone) {
    phone.tap("Slips in");
    phone.tap("Crumbs");
    for _ in 0..3 {
        phone.tap("Same as above");
    }
    phone.tap("Hard push");
    phone.tap("Flat plates");
    phone.tap("Same as above");
    phone.tap("Firm push");
    phone.tap("Rounded lumps");
    for _ in 0..3 {
        phone.tap("Same as above");
    }
    phone.tap("Bottom of hole");
}

/// What there is to see in the sound ground on top, in the pan, and below it.
pub const SEEN: [(&str, [&str; 6]); 3] = [
    ("0–20", ["Slips in", "Go right through", "Many", "Earthy", "Falls apart", "None"]),
    ("20–30", ["Hard push", "Turned sideways", "Cut off", "None", "No smell", "Falls apart"]),
    ("30–50", ["Firm push", "Go right through", "Some", "Earthy", "Falls apart", "None"]),
];

/// Answers every look by what there is to see; how many.
pub fn looked(phone: &mut Phone) -> usize {
    let mut count = 0;
    while kind(phone) == ScreenKind::NextLook {
        let screen = phone.screen();
        let buttons = answers(&screen);
        let question = sentence(&screen);
        let (_, seen) = SEEN.iter().find(|(depths, _)| question.starts_with(depths)).unwrap();
        let answer = seen.iter().find(|seen| buttons.iter().any(|button| button.label == **seen));
        phone.tap(answer.unwrap_or_else(|| panic!("{question}")));
        count += 1;
        assert!(count < 20, "the asking does not end");
    }
    count
}

/// Returns what a screen says or asks at display size.
pub fn sentence(screen: &Screen) -> String {
    screen.answer.clone().unwrap().text
}

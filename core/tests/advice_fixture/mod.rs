//! Fields and pits in a few words, for the tests of the advice room.

use pitface_core::advice::{FieldAdvice, What, ZoneCall, advise};
use pitface_core::reading::read_field;
use pitface_core::record::{
    FaceMoisture, Field, FieldNotes, Layer, Pit, PlaceKind, RecordId, Roll, RollOutcome, Sign, Signs,
    TextureNote, Unknown, Zone,
};
use pitface_core::soil::texture::TextureGroup;

pub fn id(number: u64) -> RecordId {
    RecordId::new(number, [7; 10])
}

pub fn signs(words: &[(Sign, &str)]) -> Signs {
    let mut signs = Signs::default();
    for (sign, word) in words {
        let answer = sign.answers().iter().position(|code| code == word);
        assert!(answer.is_some(), "{} {word}", sign.code());
        signs.set(*sign, answer);
    }
    signs
}

pub fn layer(top_mm: u32, bottom_mm: u32, signs: Signs) -> Layer {
    Layer { id: id(1), top_mm, bottom_mm, signs, texture: None, remark: None, unknown: Unknown::new() }
}

pub fn roll(depth_mm: u32, roll: RollOutcome) -> Roll {
    Roll { id: id(2), depth_mm, roll, unknown: Unknown::new() }
}

pub fn good() -> Signs {
    signs(&[
        (Sign::ComesAway, "crumbs"),
        (Sign::Resistance, "slips_in"),
        (Sign::Pores, "many"),
        (Sign::Channels, "many"),
        (Sign::Roots, "through"),
    ])
}

pub fn sound_subsoil() -> Signs {
    signs(&[
        (Sign::ComesAway, "rounded_lumps"),
        (Sign::Resistance, "firm_push"),
        (Sign::Pores, "some"),
        (Sign::Channels, "many"),
        (Sign::Roots, "through"),
    ])
}

pub fn pan() -> Signs {
    signs(&[
        (Sign::ComesAway, "flat_plates"),
        (Sign::Resistance, "hard_push"),
        (Sign::Pores, "none"),
        (Sign::Channels, "cut_off"),
        (Sign::Roots, "sideways"),
        (Sign::ClodInWater, "falls_apart"),
    ])
}

pub fn pit(number: u64, place: PlaceKind, layers: Vec<Layer>) -> Pit {
    Pit {
        by: Some(format!("walker {number}")),
        dug_to_mm: Some(450),
        face: Some(FaceMoisture::Moist),
        layers,
        ..Pit::new(id(number), place)
    }
}

/// A pit without harm.
pub fn sound_pit(number: u64, place: PlaceKind) -> Pit {
    pit(number, place, vec![layer(0, 250, good()), layer(250, 450, sound_subsoil())])
}

/// A pit with a clear plough pan from 220 mm to `bottom_mm`.
pub fn pan_pit(number: u64, place: PlaceKind, bottom_mm: u32) -> Pit {
    let layers = vec![
        layer(0, 220, good()),
        layer(220, bottom_mm, pan()),
        layer(bottom_mm, bottom_mm + 170, sound_subsoil()),
    ];
    Pit { dug_to_mm: Some(bottom_mm + 170), ..pit(number, place, layers) }
}

pub fn reference() -> Pit {
    sound_pit(900, PlaceKind::Reference)
}

pub fn field() -> Field {
    let texture = Some(TextureNote::Group(TextureGroup::Medium));
    Field { texture, ..Field::new(id(3), "Ellmoor, long ground") }
}

pub fn notes(pits: Vec<Pit>) -> FieldNotes {
    FieldNotes::new(field(), pits)
}

/// The plainest case for steel: reference sound, open ground with a pan to 280 mm, rolled right at both depths.
pub fn fit_to_loosen() -> FieldNotes {
    let mut harmed = pan_pit(1, PlaceKind::Open, 280);
    harmed.rolls = vec![roll(0, RollOutcome::ShortLengths), roll(310, RollOutcome::ShortLengths)];
    notes(vec![reference(), harmed])
}

pub fn calls(notes: &FieldNotes) -> FieldAdvice {
    advise(notes, &read_field(notes))
}

pub fn call_of(notes: &FieldNotes, zone: Zone) -> ZoneCall {
    let advice = calls(notes);
    advice.zones.into_iter().find(|call| call.zone == zone).unwrap_or(advice.whole)
}

pub fn open(notes: &FieldNotes) -> ZoneCall {
    call_of(notes, Zone::Open)
}

pub fn says(call: &ZoneCall, test: impl Fn(&What) -> bool) -> bool {
    call.reasons.iter().any(|why| test(&why.what))
}

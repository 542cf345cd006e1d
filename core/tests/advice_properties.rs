//! What must hold of every call, whatever was noted.

use crate::advice_fixture;

use advice_fixture::{calls, id, layer, notes, roll, says};
use pitface_core::advice::regret::best;
use pitface_core::advice::{FieldAdvice, Readiness, What, ZoneCall, advise, changes};
use pitface_core::reading::{Clue, Evidence, FieldReading, KINDS, Kind, PerKind, Table, read_field, shares};
use pitface_core::record::{
    Call, Cause, ChannelsSeen, ClodInWater, ComesAway, Condition, FaceMoisture, FieldNotes, Patches, Pit,
    PlaceKind, PoresSeen, Resistance, RollOutcome, RootsSeen, Sign, Signs, Smell, TextureNote, Zone,
};
use pitface_core::soil::texture::TextureGroup;
use proptest::prelude::*;

fn any_of<T: Copy + std::fmt::Debug + 'static>(list: &'static [T]) -> impl Strategy<Value = Option<T>> {
    prop::option::weighted(0.7, prop::sample::select(list))
}

prop_compose! {
    fn any_signs()(
        comes_away in any_of(ComesAway::ALL), resistance in any_of(Resistance::ALL),
        pores in any_of(PoresSeen::ALL), channels in any_of(ChannelsSeen::ALL), roots in any_of(RootsSeen::ALL),
        patches in any_of(Patches::ALL), smell in any_of(Smell::ALL),
        clod_in_water in prop::option::weighted(0.2, prop::sample::select(ClodInWater::ALL)),
    ) -> Signs {
        Signs { comes_away, resistance, pores, channels, roots, patches, smell, clod_in_water }
    }
}

/// Mostly such as can be read.
const FACES: [FaceMoisture; 4] =
    [FaceMoisture::Moist, FaceMoisture::Moist, FaceMoisture::Moist, FaceMoisture::Dry];

prop_compose! {
    fn any_pit()(
        number in 0u64..1_000_000, place in prop::sample::select(PlaceKind::ALL),
        face in prop::option::weighted(0.8, prop::sample::select(&FACES[..])),
        layers in prop::collection::vec((30u32..250, any_signs()), 0..5),
        rolls in prop::collection::vec((0u32..500, prop::sample::select(RollOutcome::ALL)), 0..4),
        below_mm in 0u32..200, dug in any::<bool>(),
    ) -> Pit {
        let mut pit = advice_fixture::pit(number, place, Vec::new());
        let mut top_mm = 0;
        for (thickness_mm, signs) in layers {
            pit.layers.push(layer(top_mm, top_mm + thickness_mm, signs));
            top_mm += thickness_mm;
        }
        pit.face = face;
        pit.dug_to_mm = dug.then_some(top_mm + below_mm);
        pit.rolls = rolls.into_iter().map(|(depth_mm, outcome)| roll(depth_mm, outcome)).collect();
        pit
    }
}

prop_compose! {
    fn any_notes()(
        pits in prop::collection::vec(any_pit(), 0..8),
        texture in prop::option::of(prop::sample::select(TextureGroup::ALL)),
        drains_mm in prop::option::weighted(0.2, 200u32..900), reach_mm in prop::option::weighted(0.2, 200u32..600),
        deep_clay_anyway in prop::option::of(any::<bool>()), reference in any::<bool>(),
    ) -> FieldNotes {
        let mut notes = notes(pits);
        if reference {
            notes.pits.push(advice_fixture::reference());
        }
        for (number, pit) in notes.pits.iter_mut().enumerate() {
            pit.id = id(number as u64);
        }
        notes.field.texture = texture.map(TextureNote::Group);
        (notes.field.drains_mm, notes.field.reach_mm) = (drains_mm, reach_mm);
        notes.field.deep_clay_anyway = deep_clay_anyway;
        notes
    }
}

fn every(advice: &FieldAdvice) -> impl Iterator<Item = &ZoneCall> {
    advice.zones.iter().chain([&advice.whole])
}

/// Returns what a call is, apart from how it is told.
fn gist(advice: &FieldAdvice) -> Vec<(Zone, Call, Readiness, Option<u32>, u64, usize)> {
    every(advice)
        .map(|call| {
            let tip = call.tip.map(|tip| tip.hi_mm);
            (call.zone, call.call, call.readiness, tip, call.share.to_bits(), call.pits)
        })
        .collect()
}

/// Loosening is justified, now or once it is dry enough.
fn is_steel(call: Call) -> bool {
    matches!(call, Call::Loosen | Call::Wait)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_input_gives_a_call_with_a_share_and_a_reason(notes in any_notes()) {
        for call in every(&calls(&notes)) {
            prop_assert!((0.0..=1.0 + 1e-9).contains(&call.share), "{}", call.share);
            prop_assert!(!call.reasons.is_empty());
            prop_assert!(call.cautions.len() >= 3);
        }
    }

    #[test]
    fn a_depth_stands_only_with_a_layer_to_break(notes in any_notes()) {
        for call in every(&calls(&notes)) {
            prop_assert_eq!(call.tip.is_some(), matches!(call.call, Call::Loosen | Call::Wait));
            if let Some(tip) = call.tip {
                prop_assert!(tip.pits > 0 && tip.lo_mm == tip.bottom_mm + 25 && tip.hi_mm >= tip.lo_mm);
                let mut layers = notes.pits.iter().flat_map(|pit| &pit.layers);
                prop_assert!(layers.any(|layer| layer.bottom_mm == tip.bottom_mm));
            }
        }
    }

    #[test]
    fn a_thread_at_tip_depth_never_gives_a_loosening(mut notes in any_notes()) {
        let before = calls(&notes);
        let map = pitface_core::place::FieldMap::of(&notes.field);
        for pit in &mut notes.pits {
            let zone = map.zone_of(pit);
            let tip = before.zones.iter().find(|call| Some(call.zone) == zone).and_then(|call| call.tip);
            pit.rolls.extend(tip.map(|tip| roll(tip.lo_mm, RollOutcome::Thread)));
        }
        for call in calls(&notes).zones {
            prop_assert_ne!(call.call, Call::Loosen);
        }
    }

    #[test]
    fn the_order_of_the_pits_changes_nothing(mut notes in any_notes()) {
        let before = gist(&calls(&notes));
        notes.pits.reverse();
        prop_assert_eq!(gist(&calls(&notes)), before);
    }

    #[test]
    fn a_pit_taken_in_twice_changes_nothing(mut notes in any_notes(), which in any::<prop::sample::Index>()) {
        prop_assume!(!notes.pits.is_empty());
        let twin = Pit { id: id(5_000_000), ..which.get(&notes.pits).clone() };
        prop_assume!(twin.place != PlaceKind::Reference);
        let before = gist(&calls(&notes));
        notes.pits.push(twin);
        let after = calls(&notes);
        prop_assert_eq!(gist(&after), before);
    }

    #[test]
    fn without_a_readable_reference_nothing_is_worked(mut notes in any_notes()) {
        notes.pits.retain(|pit| pit.place != PlaceKind::Reference);
        for call in every(&calls(&notes)) {
            prop_assert!(!is_steel(call.call), "{:?}", call.call);
        }
    }

    #[test]
    fn zones_without_pits_have_no_call(notes in any_notes()) {
        let advice = calls(&notes);
        for call in &advice.zones {
            prop_assert!(call.zone != Zone::Whole && call.pits > 0);
        }
        let none = |call: &ZoneCall| call.reasons.iter().any(|why| why.what == What::NoPits);
        prop_assert!(!advice.zones.iter().any(none));
    }
}

/// One sign one step better for roots; `None` where it has no better answer or no order.
fn better(mut signs: Signs, sign: Sign) -> Option<Signs> {
    let noted = signs.get(sign)?;
    let last = match sign {
        Sign::Resistance | Sign::Pores | Sign::Patches | Sign::Smell => sign.answers().len() - 1,
        Sign::Channels => ChannelsSeen::None as usize,
        Sign::Roots => RootsSeen::Stopped as usize,
        Sign::ComesAway | Sign::ClodInWater => return None,
    };
    (noted <= last).then_some(())?;
    signs.set(sign, Some(noted.checked_sub(1)?));
    Some(signs)
}

/// Loosening stands, or the structure asks for it and only a gate of the field holds it back. A better sign may open
/// a gate: a deeper layer found sound brings the tip up from the drains.
fn is_justified(call: &ZoneCall) -> bool {
    let gate = |what: &What| {
        matches!(
            what,
            What::Cemented { .. }
                | What::WaterStands { .. }
                | What::SignsClash { .. }
                | What::FaceUnreadable { .. }
                | What::TooNear { .. }
                | What::BeyondReach { .. }
                | What::DepthUnknown { .. }
                | What::NoMachine { .. }
                | What::DeepClay { .. }
                | What::TooShallow { .. }
                | What::NoReference
        )
    };
    is_steel(call.call) || says(call, gate)
}

/// The notes with each single improvement of a layer's sign.
fn improvements(notes: &FieldNotes) -> Vec<(FieldNotes, String)> {
    let mut all = Vec::new();
    for (at, pit) in notes.pits.iter().enumerate().filter(|(_, pit)| pit.place != PlaceKind::Reference) {
        for (layer, noted) in pit.layers.iter().enumerate() {
            for &sign in Sign::ALL {
                if let Some(signs) = better(noted.signs, sign) {
                    let mut notes = notes.clone();
                    notes.pits[at].layers[layer].signs = signs;
                    all.push((notes, format!("pit {at}, layer {layer}, {}", sign.code())));
                }
            }
        }
    }
    all
}

/// Returns whether shares after say Pressed more than before of a layer as harmed as it may be. A layer's own better sign
/// never does; one of the layer below may (the step in resistance grows). That speaks of the cause, and is no case of
/// "better, so no steel".
fn speaks_for_pressing(before: &PerKind, after: &PerKind) -> bool {
    let pressed = |shares: &PerKind, condition: Condition| {
        let of = |cause: Option<Cause>| -> f64 {
            let its =
                |kind: &Kind| kind.condition == condition && cause.is_none_or(|cause| kind.cause == cause);
            KINDS.iter().zip(shares).filter(|(kind, _)| its(kind)).map(|(_, share)| share).sum()
        };
        of(Some(Cause::Pressed)) / of(None)
    };
    Condition::ALL[1..].iter().any(|&harmed| pressed(after, harmed) > pressed(before, harmed) + 1e-12)
}

/// The same over all layers of a field; true also where layers became one.
fn speaks_for_pressing_anywhere(before: &FieldReading, after: &FieldReading) -> bool {
    before.pits.iter().zip(&after.pits).any(|(before, after)| {
        let layers = before.layers.iter().zip(&after.layers);
        before.layers.len() != after.layers.len()
            || layers.into_iter().any(|(before, after)| speaks_for_pressing(&before.shares, &after.shares))
    })
}

/// Clues that are not signs of the layer, texture aside.
const OTHER_CLUES: [Clue; 7] = [
    Clue::OrganicMatter,
    Clue::Place,
    Clue::Lies,
    Clue::Below,
    Clue::Reference,
    Clue::LastLoosened,
    Clue::LastTraffic,
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn a_better_sign_never_makes_a_layer_one_to_loosen(
        signs in any_signs(),
        others in prop::collection::vec((prop::sample::select(&OTHER_CLUES[..]), any::<prop::sample::Index>()), 0..5),
        texture in prop::option::of(0..TextureGroup::ALL.len()),
    ) {
        let mut evidence = Evidence::NONE.with(Clue::Texture, texture);
        for (clue, answer) in others {
            evidence = evidence.with(clue, Some(answer.index(clue.answers().len())));
        }
        let read = |signs: Signs| {
            let of = |known: Evidence, sign: &Sign| known.with((*sign).into(), signs.get(*sign));
            shares(&Sign::ALL.iter().fold(evidence, of), Table::standard())
        };
        for &sign in Sign::ALL {
            let Some(improved) = better(signs, sign) else { continue };
            let to_loosen = best(&read(improved)) == Call::Loosen;
            prop_assert!(best(&read(signs)) == Call::Loosen || !to_loosen, "{}: {:?}", sign.code(), signs);
        }
    }

    /// Pieces in water are left out: where a layer below is less clearly cemented for a better sign, the pan above it
    /// may be worked after all.
    #[test]
    fn a_better_sign_never_brings_a_loosening(mut notes in any_notes()) {
        for layer in notes.pits.iter_mut().flat_map(|pit| &mut pit.layers) {
            layer.signs.clod_in_water = None;
        }
        let reading = read_field(&notes);
        let now = advise(&notes, &reading);
        for (better, what) in improvements(&notes) {
            let read = read_field(&better);
            if speaks_for_pressing_anywhere(&reading, &read) {
                continue;
            }
            for (before, after) in now.zones.iter().zip(&advise(&better, &read).zones) {
                prop_assert!(is_justified(before) || !is_steel(after.call), "{}: {:#?} {:#?}", what, before, after);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn what_is_told_to_change_a_call_gives_another_call(notes in any_notes()) {
        for call in every(&calls(&notes)) {
            let told = changes(&notes, call.zone);
            prop_assert!(told.len() <= 3);
            for change in told {
                prop_assert_ne!(change.call, call.call);
                prop_assert!(!change.answers.is_empty());
            }
        }
    }
}

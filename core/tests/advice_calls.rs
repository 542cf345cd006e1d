//! From a read field to its calls, case by case.

use crate::advice_fixture;

use advice_fixture::{
    call_of, calls, fit_to_loosen, good, layer, notes, open, pan, pan_pit, pit, reference, roll, says, signs,
    sound_pit, sound_subsoil,
};
use chrono::{DateTime, FixedOffset};
use pitface_core::advice::{Caution, FollowUp, Obstacle, Readiness, Stance, Sureness, WaterHeld, What};
use pitface_core::record::{
    Buried, BuriedLine, Call, FaceMoisture, Field, FieldNotes, Machine, Pit, PlaceKind, RollOutcome, Sign,
    TextureNote, Unknown, Wings, Zone,
};
use pitface_core::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};

fn with_rolls(rolls: &[(u32, RollOutcome)]) -> FieldNotes {
    let mut notes = fit_to_loosen();
    notes.pits[1].rolls = rolls.iter().map(|&(depth_mm, outcome)| roll(depth_mm, outcome)).collect();
    notes
}

fn time(text: &str) -> Option<DateTime<FixedOffset>> {
    DateTime::parse_from_rfc3339(text).ok()
}

fn with_field(change: impl FnOnce(&mut FieldNotes)) -> FieldNotes {
    let mut notes = fit_to_loosen();
    change(&mut notes);
    notes
}

#[test]
fn a_clear_pan_rolled_right_is_to_be_loosened_just_below_it() {
    let call = open(&fit_to_loosen());
    assert_eq!((call.call, call.readiness, call.sure), (Call::Loosen, Readiness::Fit, Sureness::Sure));
    let tip = call.tip.unwrap();
    assert_eq!((tip.lo_mm, tip.hi_mm, tip.pits), (305, 330, 1));
    assert_eq!(call.cautions.first(), Some(&Caution::NobodyAsked));
    for caution in
        [Caution::MachineStopped, Caution::ProtectedGround, Caution::TrialStrip, Caution::DrainsUnknown]
    {
        assert!(call.cautions.contains(&caution), "{caution:?}");
    }
    assert!(call.follow_up.contains(&FollowUp::RootsAfter) && call.follow_up.contains(&FollowUp::NoTraffic));
    assert!(says(&call, |what| matches!(what, What::Layer { top_mm: 220, bottom_mm: 280, .. })));
}

#[test]
fn a_sound_field_is_left() {
    let notes = notes(vec![reference(), sound_pit(1, PlaceKind::Open)]);
    let advice = calls(&notes);
    assert_eq!((advice.zones[0].call, advice.whole.call), (Call::LeaveIt, Call::LeaveIt));
    assert_eq!(advice.zones[0].tip, None);
    assert_eq!(advice.zones[0].reasons[0].what, What::NothingHarmed);
    assert!(advice.zones[0].follow_up.is_empty());
}

#[test]
fn a_dry_face_gives_no_call_on_structure_and_a_wet_one_only_of_harm() {
    let dry = open(&with_field(|notes| notes.pits[1].face = Some(FaceMoisture::Dry)));
    assert_eq!(dry.call, Call::DigAgain);
    assert_eq!(dry.reasons[0].what, What::FaceUnreadable { face: FaceMoisture::Dry });
    assert_eq!(dry.follow_up, [FollowUp::DigWhenMoist]);
    // Plates and roots that turn are seen in a wet face too, but nothing can be worked.
    let wet = open(&with_field(|notes| notes.pits[1].face = Some(FaceMoisture::Wet)));
    assert_eq!((wet.call, wet.tip.map(|tip| tip.hi_mm)), (Call::Wait, Some(330)));
    assert_eq!(wet.reasons[0].what, What::FaceWet);
    // That a layer is sound it does not show.
    let sound = Pit { face: Some(FaceMoisture::Wet), ..sound_pit(1, PlaceKind::Open) };
    let sound = open(&notes(vec![reference(), sound]));
    assert_eq!(sound.call, Call::DigAgain);
    assert_eq!(sound.reasons[0].what, What::FaceUnreadable { face: FaceMoisture::Wet });
    assert_eq!(open(&with_field(|notes| notes.pits[1].face = None)).call, Call::Loosen);
}

/// A crust or a trodden sward is no case for a tine (AHDB: capping, slumping, healthy grassland).
#[test]
fn a_layer_at_the_surface_is_never_for_steel() {
    let shallow = |bottom_mm| {
        let layers =
            vec![layer(0, 30, good()), layer(30, bottom_mm, pan()), layer(bottom_mm, 450, sound_subsoil())];
        notes(vec![reference(), pit(1, PlaceKind::Open, layers)])
    };
    let call = open(&shallow(100));
    assert_eq!((call.call, call.tip), (Call::RootsFirst, None));
    assert_eq!(call.reasons[0].what, What::NearSurface { top_mm: 30, bottom_mm: 100 });
    assert_eq!(open(&shallow(130)).call, Call::Loosen);
    let mut grass = shallow(130);
    grass.field.crop_now = Some("permanent ryegrass, grazed".into());
    assert_eq!(open(&grass).call, Call::RootsFirst);
    assert_eq!(open(&grass).reasons[0].what, What::UnderGrass { top_mm: 30, bottom_mm: 130 });
}

/// Crumbs that stop the knife, many pores with channels cut off: no kind of layer is so.
#[test]
fn signs_that_clash_are_named_and_give_no_call() {
    let clashing = signs(&[
        (Sign::ComesAway, "crumbs"),
        (Sign::Resistance, "stops"),
        (Sign::Pores, "many"),
        (Sign::Channels, "cut_off"),
        (Sign::Roots, "through"),
        (Sign::Smell, "earthy"),
        (Sign::Patches, "clear"),
    ]);
    let layers = vec![layer(0, 200, good()), layer(200, 300, clashing), layer(300, 450, sound_subsoil())];
    let mut notes = notes(vec![reference(), pit(1, PlaceKind::Open, layers)]);
    let call = open(&notes);
    assert_eq!(call.call, Call::DigAgain);
    let What::SignsClash { top_mm, bottom_mm, signs } = &call.reasons[0].what else {
        panic!("{:?}", call.reasons)
    };
    assert_eq!((*top_mm, *bottom_mm), (200, 300));
    let camp = |sound: bool| -> Vec<&str> {
        let its = signs.iter().filter(|reason| (reason.decibans > 0.0) == sound);
        its.map(|reason| reason.clue.answers()[reason.answer]).collect()
    };
    assert!(camp(true).contains(&"many") && camp(true).contains(&"through"), "{:?}", camp(true));
    assert_eq!(camp(false), ["stops", "cut_off", "clear"]);
    // One such pit among two that agree takes nothing from them.
    notes.pits.extend([sound_pit(2, PlaceKind::Open), sound_pit(3, PlaceKind::Open)]);
    assert_eq!(open(&notes).call, Call::LeaveIt);
}

#[test]
fn a_shallow_pit_gives_no_call() {
    let shallow = Pit { dug_to_mm: Some(300), ..pit(1, PlaceKind::Open, vec![layer(0, 300, good())]) };
    let call = open(&notes(vec![reference(), shallow]));
    assert_eq!(call.reasons[0].what, What::TooShallow { dug_to_mm: 300, need_mm: 400 });
    assert_eq!(call.call, Call::DigAgain);
}

#[test]
fn a_pan_whose_bottom_was_not_seen_asks_for_a_deeper_hole() {
    let to_the_bottom = pit(1, PlaceKind::Open, vec![layer(0, 220, good()), layer(220, 450, pan())]);
    let call = open(&notes(vec![reference(), to_the_bottom]));
    assert_eq!(call.reasons[0].what, What::TooShallow { dug_to_mm: 450, need_mm: 500 });
    assert_eq!((call.call, call.tip), (Call::DigAgain, None));
}

#[test]
fn a_layer_that_holds_in_water_is_for_a_specialist() {
    let cemented = signs(&[
        (Sign::ComesAway, "one_mass"),
        (Sign::Resistance, "stops"),
        (Sign::Roots, "stopped"),
        (Sign::ClodInWater, "holds"),
    ]);
    let layers = vec![layer(0, 220, good()), layer(220, 300, cemented), layer(300, 450, sound_subsoil())];
    let call = open(&notes(vec![reference(), pit(1, PlaceKind::Open, layers)]));
    assert_eq!(call.call, Call::AskSpecialist);
    assert_eq!(call.reasons[0].what, What::Cemented { top_mm: 220, bottom_mm: 300 });
}

#[test]
fn without_a_readable_reference_nothing_is_worked() {
    let alone = with_field(|notes| drop(notes.pits.remove(0)));
    assert_eq!(open(&alone).call, Call::DigAgain);
    assert_eq!(open(&alone).reasons[0].what, What::NoReference);
    let dry = with_field(|notes| notes.pits[0].face = Some(FaceMoisture::Dry));
    assert_eq!(open(&dry).call, Call::DigAgain);
    // A reference that ends above the pan says nothing of it.
    let short = with_field(|notes| notes.pits[0].layers = vec![layer(0, 200, good())]);
    assert_eq!(open(&short).call, Call::DigAgain);
}

/// A dense layer met at random is natural nearly three times as often as pressed (Schneider & Don 2019), but only the
/// reference tells which this one is.
#[test]
fn a_dense_layer_is_left_only_beside_a_reference() {
    let dense = signs(&[
        (Sign::ComesAway, "sharp_blocks"),
        (Sign::Resistance, "hard_push"),
        (Sign::Pores, "few"),
        (Sign::Channels, "some"),
        (Sign::Roots, "in_cracks"),
    ]);
    let face = || vec![layer(0, 300, good()), layer(300, 450, dense)];
    let alone = open(&notes(vec![pit(1, PlaceKind::Open, face())]));
    assert_eq!((alone.call, &alone.reasons[0].what), (Call::DigAgain, &What::NoReference));
    let beside = notes(vec![pit(900, PlaceKind::Reference, face()), pit(1, PlaceKind::Open, face())]);
    assert_eq!(open(&beside).call, Call::LeaveIt);
}

#[test]
fn a_sound_zone_needs_no_reference_but_the_whole_field_does() {
    let advice = calls(&notes(vec![sound_pit(1, PlaceKind::Open)]));
    assert_eq!((advice.zones[0].call, advice.whole.call), (Call::LeaveIt, Call::DigAgain));
    assert_eq!(advice.whole.reasons[0].what, What::NoReference);
}

/// Clear rust or a sour smell in and above the pan over clean ground is the pan's own doing (WRB 2022, stagnic: the
/// grey is above, the ground below has less colour): it speaks for the pan, not for missing drains.
#[test]
fn wet_signs_above_the_pan_over_clean_ground_are_a_sign_of_the_pan() {
    for (sign, word) in [(Sign::Patches, "clear"), (Sign::Smell, "sour")] {
        let mut notes = fit_to_loosen();
        notes.pits[1].layers[1].signs = pan().overlaid(&signs(&[(sign, word)]));
        notes.pits[1].layers[2].signs = sound_subsoil().overlaid(&signs(&[(Sign::Patches, "none")]));
        let call = open(&notes);
        assert_eq!(call.call, Call::Loosen, "{word}");
        assert!(says(&call, |what| *what == What::WaterHeldUp { top_mm: 220, bottom_mm: 280 }));
    }
    // Colours of the subsoil alone are no matter of it.
    let mut below = fit_to_loosen();
    below.pits[1].layers[2].signs = sound_subsoil().overlaid(&signs(&[(Sign::Patches, "clear")]));
    assert_eq!(open(&below).call, Call::Loosen);
    assert!(!says(&open(&below), |what| matches!(what, What::WaterHeldUp { .. })));
}

/// Grey, sour, roots that end, down to the bottom of the hole, beside a dry reference: drains come first, whatever the
/// layers call for and also in a wet face.
#[test]
fn water_that_stands_through_the_profile_is_to_be_drained_first() {
    let drowned = |words: &[(Sign, &str)]| {
        let wet = signs(&[(Sign::Patches, "clear"), (Sign::Smell, "sour"), (Sign::Roots, "stopped")]);
        wet.overlaid(&signs(words))
    };
    for face in [FaceMoisture::Moist, FaceMoisture::Wet] {
        let layers = vec![
            layer(0, 150, good()),
            layer(150, 300, drowned(&[(Sign::ComesAway, "one_mass"), (Sign::Pores, "none")])),
            layer(300, 450, drowned(&[(Sign::ComesAway, "one_mass")])),
        ];
        let wet = Pit { face: Some(face), ..pit(1, PlaceKind::Open, layers) };
        let call = open(&notes(vec![reference(), wet]));
        assert_eq!((call.call, call.tip), (Call::DrainFirst, None), "{face:?}");
        assert_eq!(call.reasons[0].what, What::WaterStands { top_mm: 150, bottom_mm: 450, facts: 3 });
        assert_eq!(call.follow_up, [FollowUp::MendDrainage]);
    }
    // Old colours in ground that roots go through ask for nothing.
    let old = sound_subsoil().overlaid(&signs(&[(Sign::Patches, "clear")]));
    let layers = vec![layer(0, 150, good()), layer(150, 450, old)];
    assert_eq!(open(&notes(vec![reference(), pit(1, PlaceKind::Open, layers)])).call, Call::LeaveIt);
}

#[test]
fn a_thread_at_tip_depth_or_at_the_surface_is_to_wait_and_the_depth_stays_for_planning() {
    use RollOutcome::{Crumbles, ShortLengths, Thread};
    for (surface, tip) in [(ShortLengths, Thread), (Thread, ShortLengths), (Crumbles, Thread)] {
        let call = open(&with_rolls(&[(0, surface), (310, tip)]));
        assert_eq!((call.call, call.readiness), (Call::Wait, Readiness::Fit), "{surface:?} over {tip:?}");
        assert_eq!(call.tip.unwrap().hi_mm, 330);
        assert!(matches!(call.reasons[0].what, What::Rolled { roll: Thread, .. }));
        assert_eq!(call.follow_up, [FollowUp::RollAgain]);
    }
}

#[test]
fn a_dry_roll_at_tip_depth_is_allowed_but_cloddy() {
    let call = open(&with_rolls(&[(50, RollOutcome::ShortLengths), (310, RollOutcome::Crumbles)]));
    assert_eq!((call.call, call.readiness), (Call::Loosen, Readiness::Fit));
    assert!(call.cautions.contains(&Caution::CloddyDry));
    let dry_top = open(&with_rolls(&[(50, RollOutcome::Crumbles), (310, RollOutcome::ShortLengths)]));
    assert!(!dry_top.cautions.contains(&Caution::CloddyDry));
}

#[test]
fn without_a_roll_near_the_tip_it_is_justified_but_not_yet_fit() {
    for rolls in [vec![], vec![(0, RollOutcome::ShortLengths), (200, RollOutcome::Thread)]] {
        let call = open(&with_rolls(&rolls));
        assert_eq!((call.call, call.readiness), (Call::Loosen, Readiness::RollFirst { depth_mm: 330 }));
        assert!(says(&call, |what| *what == What::RollMissing { depth_mm: 330 }));
    }
}

#[test]
fn sand_is_never_dry_enough_by_the_roll() {
    let mut will_not_hold = with_rolls(&[(310, RollOutcome::WillNotHold)]);
    assert_eq!(open(&will_not_hold).readiness, Readiness::RollNotApplicable);
    will_not_hold.field.texture = Some(TextureNote::Group(TextureGroup::Sand));
    for roll_noted in [None, Some(RollOutcome::WillNotHold), Some(RollOutcome::Crumbles)] {
        let rolls: Vec<_> = roll_noted.map(|outcome| (310, outcome)).into_iter().collect();
        let mut sand = with_rolls(&rolls);
        sand.field.texture = will_not_hold.field.texture;
        let call = open(&sand);
        assert_eq!(
            (call.call, call.readiness),
            (Call::Loosen, Readiness::RollNotApplicable),
            "{roll_noted:?}"
        );
        assert!(call.cautions.contains(&Caution::SandSlowToPay));
    }
}

#[test]
fn the_last_day_of_rolling_counts() {
    let day = |text: &str| Some(DateTime::parse_from_rfc3339(text).unwrap());
    let mut notes = with_rolls(&[(310, RollOutcome::Thread)]);
    notes.pits[1].dug = day("2025-03-01T09:00:00+00:00");
    let mut later = pan_pit(2, PlaceKind::Open, 280);
    later.dug = day("2025-04-10T09:00:00+01:00");
    later.rolls = vec![roll(310, RollOutcome::ShortLengths)];
    notes.pits.push(later);
    assert_eq!(open(&notes).call, Call::Loosen);
    notes.pits[1].dug = notes.pits[2].dug;
    assert_eq!(open(&notes).call, Call::Wait);
}

/// Notes a depth of what lies buried.
type Set = fn(&mut Field, Option<u32>);

/// The shallow end of the tip range, 305 mm, must keep the clearance of each kind; the deep end is drawn up to it.
#[test]
fn nothing_buried_may_lie_within_the_clearance() {
    let set = |depth_mm: u32, set: Set| open(&with_field(|notes| set(&mut notes.field, Some(depth_mm))));
    let kinds: [(u32, Set); 3] = [
        (200, |field, mm| field.drains_mm = mm),
        (100, |field, mm| field.mole_drains_mm = mm),
        (600, |field, mm| field.services_mm = mm),
    ];
    for (clearance_mm, kind) in kinds {
        for (depth_mm, call) in [
            (250, Call::AskSpecialist),
            (304 + clearance_mm, Call::AskSpecialist),
            (305 + clearance_mm, Call::Loosen),
        ] {
            assert_eq!(set(depth_mm, kind).call, call, "clearance {clearance_mm}, at {depth_mm}");
        }
        let close = set(315 + clearance_mm, kind);
        assert_eq!(close.tip.unwrap().hi_mm, 315, "the deep end keeps clear too");
        assert!(says(&close, |what| matches!(what, What::HangsOnDepth { .. })), "{close:?}");
    }
    assert!(!set(600, kinds[0].1).cautions.contains(&Caution::DrainsUnknown));
    let call = set(400, kinds[2].1);
    let near = What::TooNear { obstacle: Obstacle::Services, depth_mm: 400, tip_mm: 305, clearance_mm: 600 };
    assert_eq!((&call.reasons[0].what, call.tip), (&near, None));
}

/// What is set for drains says nothing for cables, and no less than the floor is kept above these without a leave that
/// has not lapsed.
#[test]
fn a_service_has_a_clearance_of_its_own_with_a_floor() {
    let at = |set: &dyn Fn(&mut Field)| {
        let with = with_field(|notes| {
            notes.field.services_mm = Some(450);
            notes.field.clearance_mm = Some(0);
            notes.field.services_clearance_mm = Some(100);
            set(&mut notes.field);
        });
        open(&with)
    };
    let call = at(&|_| {});
    assert_eq!(call.call, Call::AskSpecialist, "the floor of 300 mm");
    let leave = |field: &mut Field| {
        field.services_asked = Some("the network".into());
        field.services_asked_on = time("2025-03-01T00:00:00+00:00").map(|day| day.date_naive());
        field.services_leave = Some(true);
    };
    let given = at(&leave);
    assert_eq!(given.call, Call::Loosen);
    assert!(says(&given, |what| matches!(what, What::Asked { lapsed: false, .. })));
    assert!(says(&given, |what| matches!(what, What::Service { depth_mm: Some(450), .. })));
    let mut old = with_field(|notes| {
        notes.field.services_mm = Some(450);
        notes.field.services_clearance_mm = Some(100);
        leave(&mut notes.field);
    });
    old.pits[1].dug = time("2026-03-02T09:00:00+00:00");
    old.pits[1].rolls.clear();
    let lapsed = open(&old);
    assert_eq!(lapsed.call, Call::AskSpecialist, "a year and a day later");
    assert!(says(&lapsed, |what| matches!(what, What::Asked { lapsed: true, .. })));
}

/// A wet surface, or clay, must not hide a cable.
#[test]
fn what_lies_buried_leads_whatever_else_holds() {
    let mut wet = with_rolls(&[(0, RollOutcome::Thread), (310, RollOutcome::Thread)]);
    wet.field.services_mm = Some(450);
    wet.field.reach_mm = Some(250);
    let call = open(&wet);
    assert_eq!(call.call, Call::AskSpecialist);
    assert!(matches!(call.reasons[0].what, What::TooNear { obstacle: Obstacle::Services, .. }));
    assert!(says(&call, |what| matches!(what, What::Rolled { roll: RollOutcome::Thread, .. })));
}

#[test]
fn a_marked_line_counts_with_its_depth() {
    let line = |depth_mm: Option<u32>| BuriedLine {
        id: advice_fixture::id(70),
        kind: Buried::Service,
        along: vec![[2.5, 54.5], [2.501, 54.5]],
        depth_mm,
        sort: None,
        unknown: Unknown::new(),
    };
    for (depth_mm, call) in [(904, Call::AskSpecialist), (905, Call::Loosen)] {
        let marked = with_field(|notes| notes.field.lines = vec![line(Some(1_200)), line(Some(depth_mm))]);
        assert_eq!(open(&marked).call, call, "a service at {depth_mm}");
    }
    let unknown = open(&with_field(|notes| notes.field.lines = vec![line(Some(1_200)), line(None)]));
    assert_eq!(unknown.call, Call::AskSpecialist);
    assert_eq!(unknown.reasons[0].what, What::DepthUnknown { obstacle: Obstacle::Services });
}

#[test]
fn the_machine_must_reach_below_the_pan() {
    let call = open(&with_field(|notes| notes.field.reach_mm = Some(300)));
    assert_eq!(call.call, Call::AskSpecialist);
    assert_eq!(call.reasons[0].what, What::BeyondReach { tip_mm: 305, reach_mm: 300 });
    let call = open(&with_field(|notes| notes.field.reach_mm = Some(320)));
    assert_eq!((call.call, call.tip.unwrap().hi_mm), (Call::Loosen, 320));
}

/// The machines noted are all there are: one that does is enough.
#[test]
fn some_machine_noted_must_do() {
    let machine = |foot_width_mm, reach_mm, wings| Machine {
        id: advice_fixture::id(80),
        name: "any".into(),
        legs: 3,
        spacing_mm: 500,
        foot_width_mm,
        wings,
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm,
        tractor: None,
        tractor_mass_kg: None,
        unknown: Unknown::new(),
    };
    let wings = Some(Wings { width_mm: 250, lift_mm: None });
    let of = |machines: Vec<Machine>| open(&with_field(|notes| notes.machines = machines.clone()));
    assert_eq!(of(vec![machine(60, None, None)]).call, Call::Loosen);
    assert_eq!(of(vec![machine(40, None, None)]).call, Call::AskSpecialist, "305 mm is below 7 x 40 mm");
    assert_eq!(of(vec![machine(40, None, wings)]).call, Call::Loosen, "with wings nobody gives a figure");
    assert_eq!(of(vec![machine(40, None, None), machine(60, None, None)]).call, Call::Loosen);
    let short = of(vec![machine(60, Some(300), None)]);
    assert_eq!(short.reasons[0].what, What::NoMachine { tip_mm: 305, foot_mm: 44 });
}

fn deep_clay(anyway: Option<bool>) -> FieldNotes {
    let mut harmed = pan_pit(1, PlaceKind::Open, 340);
    harmed.rolls = vec![roll(0, RollOutcome::ShortLengths), roll(370, RollOutcome::ShortLengths)];
    let mut notes = notes(vec![reference(), harmed]);
    notes.field.texture = Some(TextureNote::Group(TextureGroup::Heavy));
    notes.field.deep_clay_anyway = anyway;
    notes
}

#[test]
fn deep_clay_is_left_to_roots_unless_held_to() {
    let call = open(&deep_clay(None));
    assert_eq!((call.call, call.tip), (Call::RootsFirst, None));
    assert_eq!(call.reasons[0].what, What::DeepClay { bottom_mm: 340 });
    let call = open(&deep_clay(Some(true)));
    assert_eq!(call.call, Call::Loosen);
    let held_to = What::DeepClayHeldTo { bottom_mm: 340 };
    assert!(call.reasons.iter().any(|why| why.what == held_to && why.stance == Stance::Against));
}

#[test]
fn every_gate_that_fails_is_told_and_the_first_decides() {
    let mut notes = deep_clay(None);
    notes.pits[1].rolls = vec![roll(370, RollOutcome::Thread)];
    notes.field.drains_mm = Some(400);
    notes.field.deep_clay_anyway = Some(true);
    let call = open(&notes);
    assert_eq!(call.call, Call::AskSpecialist);
    assert!(matches!(call.reasons[0].what, What::TooNear { .. }));
    assert!(says(&call, |what| matches!(what, What::Rolled { roll: RollOutcome::Thread, .. })));
    assert!(says(&call, |what| matches!(what, What::DeepClayHeldTo { .. })));
    // Nobody waits for a dry day where the dry answer would be no steel.
    notes.field.drains_mm = None;
    assert_eq!(open(&notes).call, Call::Wait);
    notes.field.deep_clay_anyway = None;
    assert_eq!(open(&notes).call, Call::RootsFirst);
}

/// Dense and massive throughout, on light soil, in stubble too old to show roots.
fn bare_stubble(roots: &str) -> FieldNotes {
    let massive = signs(&[
        (Sign::ComesAway, "one_mass"),
        (Sign::Resistance, "hard_push"),
        (Sign::Pores, "few"),
        (Sign::Roots, roots),
    ]);
    let face = || vec![layer(0, 300, massive), layer(300, 450, sound_subsoil())];
    let mut notes = notes(vec![pit(900, PlaceKind::Reference, face()), pit(1, PlaceKind::Wheeling, face())]);
    notes.field.texture = Some(TextureNote::Group(TextureGroup::Light));
    notes
}

#[test]
fn on_light_soil_without_roots_it_asks_for_a_rooted_crop() {
    let call = call_of(&bare_stubble("none_to_judge"), Zone::Wheelings);
    assert_eq!(call.call, Call::DigAgain);
    assert_eq!(call.reasons[0].what, What::RootsNeeded { top_mm: 0, bottom_mm: 300 });
    assert_eq!(call.follow_up, [FollowUp::DigInRootedCrop]);
    assert_eq!(call_of(&bare_stubble("through"), Zone::Wheelings).call, Call::RootsFirst);
}

#[test]
fn each_zone_has_its_own_call_and_the_whole_says_that_they_differ() {
    let mut notes = fit_to_loosen();
    notes.pits[1].place = PlaceKind::Headland;
    notes.pits.push(sound_pit(2, PlaceKind::Open));
    let advice = calls(&notes);
    assert_eq!(
        advice.zones.iter().map(|zone| (zone.zone, zone.call)).collect::<Vec<_>>(),
        [(Zone::Open, Call::LeaveIt), (Zone::Headland, Call::Loosen),]
    );
    assert_eq!((advice.whole.zone, advice.whole.call), (Zone::Whole, Call::LeaveIt));
    assert_eq!(advice.whole.reasons[0].what, What::ZonesDiffer { loosen: vec![Zone::Headland] });
}

#[test]
fn harmed_ground_alone_says_nothing_of_the_field() {
    let mut notes = fit_to_loosen();
    notes.pits[1].place = PlaceKind::Headland;
    let advice = calls(&notes);
    assert_eq!((advice.zones[0].call, advice.whole.call), (Call::Loosen, Call::DigAgain));
    notes.pits.remove(0);
    assert_eq!(calls(&notes).whole.reasons[0].what, What::NoReference);
}

#[test]
fn the_whole_is_loosened_only_where_every_zone_is() {
    let mut notes = fit_to_loosen();
    let mut headland = pan_pit(2, PlaceKind::Headland, 300);
    headland.rolls = vec![roll(0, RollOutcome::ShortLengths), roll(330, RollOutcome::ShortLengths)];
    notes.pits.push(headland);
    let whole = calls(&notes).whole;
    assert_eq!((whole.call, whole.pits, whole.tip.unwrap().bottom_mm), (Call::Loosen, 2, 300));
}

#[test]
fn pits_of_a_zone_that_disagree_give_no_call() {
    let pits = vec![reference(), pan_pit(1, PlaceKind::Open, 280), sound_pit(2, PlaceKind::Open)];
    let call = open(&notes(pits));
    assert_eq!((call.call, call.sure), (Call::DigAgain, Sureness::CannotSay));
    assert_eq!(call.reasons[0].what, What::PitsDisagree { agree: 1, of: 2 });
    assert!(call.reasons.iter().any(|why| why.stance == Stance::Against));
}

#[test]
fn two_thirds_of_the_pits_carry_a_call() {
    let mut pits = vec![reference(), sound_pit(20, PlaceKind::Open)];
    pits.extend((1..=6).map(|number| pan_pit(number, PlaceKind::Open, 280)));
    let call = open(&notes(pits.clone()));
    assert_eq!((call.call, call.pits, call.tip.unwrap().pits), (Call::Loosen, 7, 6));
    assert!(call.reasons.iter().any(|why| why.stance == Stance::Against));
    pits.extend((21..=24).map(|number| sound_pit(number, PlaceKind::Open)));
    assert_eq!(open(&notes(pits)).call, Call::DigAgain);
}

#[test]
fn a_pit_that_cannot_be_read_leaves_the_others_their_call() {
    let mut notes = fit_to_loosen();
    notes.pits.push(Pit { face: Some(FaceMoisture::Dry), ..sound_pit(2, PlaceKind::Open) });
    let call = open(&notes);
    assert_eq!(call.call, Call::Loosen);
    let dry = What::FaceUnreadable { face: FaceMoisture::Dry };
    assert!(call.reasons.iter().any(|why| why.what == dry && why.stance == Stance::Note));
}

#[test]
fn alike_twins_count_once() {
    let mut notes = fit_to_loosen();
    let twin = Pit { id: advice_fixture::id(77), ..notes.pits[1].clone() };
    notes.pits.push(twin);
    let call = open(&notes);
    assert_eq!((call.pits, call.tip.unwrap().pits), (1, 1));
    assert!(says(&call, |what| *what == What::TwinsCountedOnce { twins: 1 }));
}

#[test]
fn a_pan_in_two_layers_is_cleared_to_its_deepest_bottom() {
    let harder = pan().overlaid(&signs(&[(Sign::Resistance, "stops")]));
    let layers = vec![
        layer(0, 220, good()),
        layer(220, 260, pan()),
        layer(260, 310, harder),
        layer(310, 450, sound_subsoil()),
    ];
    let call = open(&notes(vec![reference(), pit(1, PlaceKind::Open, layers)]));
    assert_eq!(call.tip.unwrap().bottom_mm, 310);
}

/// Nobody is told to do what the field has, or that a layer cuts off roots that were seen to pass it.
#[test]
fn what_follows_fits_the_field_and_the_notes() {
    use pitface_core::record::OrganicMatter;
    let rich = open(&with_field(|notes| notes.field.organic_matter = Some(OrganicMatter::Percent(7.0))));
    assert!(!rich.follow_up.contains(&FollowUp::OrganicMatter), "{:?}", rich.follow_up);
    let ley = open(&with_field(|notes| notes.field.crop_now = Some("ryegrass ley".into())));
    assert!(!ley.follow_up.contains(&FollowUp::RootsAfter), "{:?}", ley.follow_up);
    assert!(ley.rooting_loss.is_some());
    let passed = with_field(|notes| {
        notes.field.crop_now = Some("winter wheat".into());
        for layer in &mut notes.pits[1].layers {
            layer.signs = layer.signs.overlaid(&signs(&[(Sign::Roots, "in_cracks")]));
        }
    });
    assert_eq!(open(&passed).rooting_loss, None);
}

/// Plates of drained peat are its age, not wheels (Ilnicki & Zeitz 2003).
#[test]
fn peat_is_no_case_for_steel() {
    use pitface_core::record::OrganicMatter;
    let call = open(&with_field(|notes| notes.field.organic_matter = Some(OrganicMatter::Percent(25.0))));
    assert_eq!((call.call, call.tip), (Call::RootsFirst, None));
    assert_eq!(call.reasons[0].what, What::Peat { top_mm: 220, bottom_mm: 280 });
}

#[test]
fn a_reason_names_its_pit_by_the_number_it_has_in_the_notes() {
    let mut notes = fit_to_loosen();
    notes.pits.insert(1, Pit { face: Some(FaceMoisture::Dry), ..sound_pit(5, PlaceKind::Open) });
    assert!(says(&open(&notes), |what| matches!(what, What::Layer { pit: 3, top_mm: 220, .. })));
}

#[test]
fn a_field_without_pits_is_to_be_dug() {
    let advice = calls(&notes(Vec::new()));
    assert!(advice.zones.is_empty());
    assert_eq!((advice.whole.call, advice.whole.pits), (Call::DigAgain, 0));
    let only_reference = calls(&notes(vec![reference()]));
    assert_eq!(only_reference.whole.reasons[0].what, What::NoPits);
}

#[test]
fn a_harmed_layer_tells_what_it_cuts_off_of_the_crop() {
    let of = |crop: &str| open(&with_field(|notes| notes.field.crop_now = Some(crop.into()))).rooting_loss;
    let wheat = of("winter wheat").unwrap();
    // FAO-56, table 22: wheat roots 1.25 m; the pan begins at 220 mm.
    assert_eq!((wheat.potential_mm, wheat.top_mm), (1250, 220));
    assert!((wheat.share - 0.824).abs() < 1e-9);
    // 1.03 m of it lie below; loam to clay loam hold 1.5 to 2.4 inches a foot, sandy loam 1.3 to 1.7
    // (USDA-NRCS, Estimating Soil Moisture by Feel and Appearance).
    assert_eq!(wheat.water, Some(WaterHeld { least_mm: 129, most_mm: 206 }));
    let of_texture = |texture| {
        let with_crop = |notes: &mut FieldNotes| {
            notes.field.crop_now = Some("winter wheat".into());
            notes.field.texture = texture;
        };
        open(&with_field(with_crop)).rooting_loss.and_then(|loss| loss.water)
    };
    let sand = Texture { scheme: TextureScheme::Usda, class: TextureClass::SandyLoam };
    assert_eq!(of_texture(Some(TextureNote::Class(sand))), Some(WaterHeld { least_mm: 112, most_mm: 146 }));
    assert_eq!(of_texture(None), None);
    assert_eq!(of("a crop nobody knows"), None);
    // What is sown next counts before what stands there: a potato roots 0.5 m.
    let next = with_field(|notes| {
        notes.field.crop_now = Some("winter wheat".into());
        notes.field.next_crop = Some("potatoes".into());
    });
    assert_eq!(open(&next).rooting_loss.map(|loss| loss.potential_mm), Some(500));
    let sound = calls(&notes(vec![reference(), sound_pit(1, PlaceKind::Open)]));
    assert_eq!(sound.zones[0].rooting_loss, None);
}

//! What is said, by example.

use crate::common;

use pitface_core::advice::{
    Change, ChangedAnswer, FieldAdvice, OfGround, Readiness, RootingLoss, Stance, Sureness, TipDepth,
    WaterHeld, What, Why, ZoneCall,
};
use pitface_core::reading::{Clue, Kind, NextLook, Reason, read_field};
use pitface_core::record::{
    Call, Cause, ChannelsSeen, ComesAway, Condition, FieldNotes, PlaceKind, Resistance, RollOutcome,
    RootsSeen, Signs, Zone,
};
use pitface_core::soil::texture::{Texture, TextureClass, TextureScheme};
use pitface_core::units::LengthUnit::{self, Centimetres, Inches};
use pitface_core::words::{Language, Words};

fn english() -> Words {
    Words::new(Language::English, Centimetres)
}

fn german() -> Words {
    Words::new(Language::German, Centimetres)
}

/// Compares with the no-break spaces of measures written as plain ones.
#[track_caller]
fn says(said: &str, expected: &str) {
    assert_eq!(said.replace('\u{a0}', " "), expected);
}

fn tip(pits: usize, confidence: f64) -> TipDepth {
    TipDepth { lo_mm: 325, hi_mm: 350, bottom_mm: 300, cleared_share: 0.8, pits, confidence }
}

fn call(zone: Zone, call: Call) -> ZoneCall {
    ZoneCall {
        zone,
        call,
        readiness: Readiness::Fit,
        share: 0.86,
        sure: Sureness::Likely,
        ground: OfGround { pits: 2, agree: 2, share: 0.94, sure: Sureness::Sure },
        tip: matches!(call, Call::Loosen | Call::Wait).then(|| tip(5, 0.672)),
        pits: 5,
        reasons: Vec::new(),
        cautions: Vec::new(),
        follow_up: Vec::new(),
        rooting_loss: None,
    }
}

fn field(zones: &[(Zone, Call)], whole: Call) -> FieldAdvice {
    let zones = zones.iter().map(|&(zone, what)| call(zone, what)).collect();
    FieldAdvice { zones, whole: call(Zone::Whole, whole) }
}

const PRESSED: Kind = Kind { condition: Condition::Tight, cause: Cause::Pressed };
const SETTLED: Kind = Kind { condition: Condition::Tight, cause: Cause::Settled };

#[test]
fn depths_are_said_in_the_chosen_unit() {
    let say = |language, unit: LengthUnit, mm| Words::new(language, unit).depth(mm);
    says(&say(Language::English, Centimetres, 330), "33 cm");
    says(&say(Language::English, Centimetres, 305), "30.5 cm");
    says(&say(Language::German, Centimetres, 305), "30,5 cm");
    says(&say(Language::English, Inches, 330), "13 in");
    says(&say(Language::English, Inches, 343), "13½ in");
    says(&say(Language::English, Inches, 10), "½ in");
    says(&say(Language::German, Inches, 343), "13½ Zoll");
}

#[test]
fn ranges_have_one_unit_and_an_en_dash() {
    says(&english().depth_range(200, 305), "20–30.5 cm");
    says(&german().depth_range(200, 305), "20–30,5 cm");
    says(&english().depth_range_spoken(200, 300), "20 to 30 cm");
    says(&Words::new(Language::English, Inches).depth_range(300, 302), "12 in");
}

#[test]
fn a_tip_range_can_be_set_on_a_machine() {
    says(&english().tip_range(&tip(5, 0.6)), "33–35 cm");
    says(&Words::new(Language::English, Inches).tip_range(&tip(5, 0.6)), "13–13½ in");
    let narrow = TipDepth { lo_mm: 325, hi_mm: 328, ..tip(1, 0.2) };
    says(&english().tip_range(&narrow), "32.5–32.8 cm");
}

#[test]
fn shares_are_never_rounded_to_certainty() {
    says(&english().share(0.861), "86 of 100");
    says(&english().share(0.9999), "over 99 of 100");
    says(&english().share(0.001), "under 1 of 100");
    says(&english().share(1.0), "100 of 100");
    says(&english().small_share(0.8), "4 of 5");
    says(&english().small_share(0.83), "83 of 100");
    says(&german().percent(0.672), "67 %");
}

#[test]
fn a_call_is_one_sentence_with_zone_and_depth() {
    let headland = call(Zone::Headland, Call::Loosen);
    says(&english().call_sentence(&headland), "Loosen the headland at 33–35 cm.");
    says(&german().call_sentence(&headland), "Das Vorgewende 33–35 cm tief lockern.");
    says(&english().call_line(&headland), "Loosen 33–35 cm");
    says(&german().call_line(&call(Zone::Open, Call::LeaveIt)), "So lassen");
}

#[test]
fn a_loosening_without_a_roll_test_is_justified_but_not_fit() {
    let readiness = Readiness::RollFirst { depth_mm: 330 };
    let call = ZoneCall { readiness, ..call(Zone::Headland, Call::Loosen) };
    says(
        &english().call_sentence(&call),
        "Loosening the headland is justified, but not yet fit: roll soil from 33 cm first.",
    );
    says(
        &german().call_sentence(&call),
        "Das Vorgewende zu lockern ist begründet, aber erst nach der Ausrollprobe mit Boden aus 33 cm.",
    );
}

#[test]
fn a_field_whose_zones_differ_is_told_zone_by_zone() {
    let one = field(&[(Zone::Open, Call::LeaveIt), (Zone::Headland, Call::Loosen)], Call::LeaveIt);
    says(&english().whole_sentence(&one), "Work only the headland; leave the open ground.");
    says(&german().whole_sentence(&one), "Nur das Vorgewende lockern; das Feldinnere so lassen.");
    let many = [
        (Zone::Open, Call::RootsFirst),
        (Zone::Headland, Call::Loosen),
        (Zone::Wheelings, Call::Loosen),
        (Zone::Gateway, Call::Loosen),
        (Zone::Patch, Call::DigAgain),
    ];
    says(
        &english().whole_sentence(&field(&many, Call::RootsFirst)),
        "Work only the headland, the wheelings and the gateway; roots first on the open ground; dig again on the \
         marked patch.",
    );
}

#[test]
fn a_loosening_not_yet_fit_is_nowhere_told_as_fit() {
    let readiness = Readiness::RollFirst { depth_mm: 330 };
    let unfit = ZoneCall { readiness, ..call(Zone::Headland, Call::Loosen) };
    says(&english().call_line(&unfit), "Loosen 33–35 cm, roll first");
    let zones = vec![call(Zone::Open, Call::LeaveIt), unfit];
    let field = FieldAdvice { zones, whole: call(Zone::Whole, Call::LeaveIt) };
    says(
        &english().whole_sentence(&field),
        "Work only the headland, once the soil is known to be dry enough; leave the open ground.",
    );
}

#[test]
fn a_field_whose_zones_agree_is_told_as_one() {
    let same = field(&[(Zone::Open, Call::LeaveIt), (Zone::Headland, Call::LeaveIt)], Call::LeaveIt);
    says(&english().whole_sentence(&same), "Leave the whole field as it is.");
    says(&german().whole_sentence(&same), "Den ganzen Schlag so lassen.");
}

#[test]
fn where_open_ground_was_not_dug_the_rest_is_not_known() {
    let part = field(&[(Zone::Headland, Call::Loosen)], Call::DigAgain);
    says(&english().whole_sentence(&part), "Work only the headland; the rest of the field is not known yet.");
}

#[test]
fn how_sure_comes_with_its_share() {
    says(&english().sureness(Sureness::Likely, 0.86), "likely, 86 of 100");
    says(&german().sureness(Sureness::CannotSay, 0.4), "nicht zu beurteilen");
}

#[test]
fn a_tip_depth_says_what_it_rests_on() {
    says(
        &english().tip_statement(&tip(5, 0.672)),
        "clears 4 of 5 places; 5 pits, sure to 67 %; 8 pits would do",
    );
    says(
        &german().tip_statement(&tip(5, 0.672)),
        "reicht an 4 von 5 Stellen unter die Schicht; 5 Gruben, sicher zu 67 %; 8 Gruben würden genügen",
    );
    says(
        &english().tip_statement(&tip(1, 0.2)),
        "meant to clear 4 of 5 places, but with only 1 pit that is sure to no more than 20 %; 8 pits would do",
    );
    says(
        &english().tip_sentences(&tip(5, 0.672)),
        "Tip depth 33–35 cm, just below the layer, which ends at 30 cm. Clears 4 of 5 places; 5 pits, sure to \
         67 %; 8 pits would do.",
    );
}

#[test]
fn a_layer_gives_its_reasons_with_the_reference_last() {
    let reason = |clue, answer, decibans| Reason { clue, answer, decibans };
    let reasons = vec![
        reason(Clue::ComesAway, ComesAway::FlatPlates as usize, 12.0),
        reason(Clue::Reference, 1, 9.0),
        reason(Clue::Roots, RootsSeen::Sideways as usize, 7.0),
        reason(Clue::Smell, 0, -3.0),
        reason(Clue::Channels, ChannelsSeen::CutOff as usize, 3.0),
        reason(Clue::Pores, 2, 0.4),
    ];
    let what = What::Layer { pit: 3, top_mm: 200, bottom_mm: 300, kind: PRESSED, share: 0.86, reasons };
    let why = Why { stance: Stance::For, what };
    says(
        &english().why(&why),
        "20–30 cm in pit 3 reads as tight, pressed (86 of 100): flat plates, roots turned sideways, channels cut off; not so \
         in the reference pit. Against it: earthy smell.",
    );
    says(
        &german().why(&why),
        "20–30 cm in Grube 3 ist dicht, verdichtet (86 %): flache Platten, Wurzeln seitwärts abgelenkt, Gänge abgeschnitten; in der Vergleichsgrube nicht so. Dagegen: erdiger Geruch.",
    );
}

#[test]
fn the_next_look_asks_one_question_and_says_what_for() {
    let look = NextLook {
        layer: 1,
        top_mm: 250,
        bottom_mm: 300,
        clue: Clue::Roots,
        gain: 3.0,
        between: [PRESSED, SETTLED],
    };
    says(&english().question(&look), "25–30 cm: what do the roots do?");
    says(&english().why_question(&look), "decides between pressed and settled");
    says(
        &german().look(&look),
        "25–30 cm: Was machen die Wurzeln? Das entscheidet zwischen verdichtet und gesackt.",
    );
    says(&english().answer(Clue::Roots, 2), "Turned sideways");
    let loosened = NextLook { clue: Clue::LastLoosened, ..look };
    says(&english().question(&loosened), "When was the field last loosened?");
}

#[test]
fn kinds_that_differ_in_both_are_told_in_full() {
    let firm = Kind { condition: Condition::Firm, cause: Cause::Natural };
    let look = NextLook {
        layer: 0,
        top_mm: 0,
        bottom_mm: 50,
        clue: Clue::Pores,
        gain: 1.0,
        between: [PRESSED, firm],
    };
    says(&english().why_question(&look), "decides between “tight, pressed” and “firm, natural”");
    says(&english().kind_label(Kind { cause: Cause::Unclear, ..PRESSED }), "Tight, cause unclear");
}

#[test]
fn what_would_change_a_call() {
    let roots = ChangedAnswer::Clue { top_mm: 200, bottom_mm: 280, clue: Clue::Roots, answer: 0 };
    let roll = ChangedAnswer::Roll { surface: false, roll: RollOutcome::Thread };
    let one = Change { answers: vec![roots], call: Call::LeaveIt, hangs: false };
    says(&english().change(&one), "It would be Leave it if the roots went right through at 20–28 cm.");
    says(
        &german().change(&one),
        "Die Empfehlung wäre „So lassen“, wenn in 20–28 cm die Wurzeln glatt durchgingen.",
    );
    let hung = [Change { hangs: true, ..one.clone() }];
    says(
        &english().hangs_on(&hung).unwrap(),
        "The call hangs on one answer. It would be Leave it if the roots went right through at 20–28 cm.",
    );
    assert_eq!(english().hangs_on(&[one]), None);
    let two = Change { answers: vec![roots, roll], call: Call::Wait, hangs: false };
    says(
        &english().change(&two),
        "It would be Wait if the roots went right through at 20–28 cm and soil from tip depth rolled to a thread.",
    );
}

#[test]
fn what_a_layer_costs_a_crop() {
    let loss =
        RootingLoss { crop: "wheat".into(), potential_mm: 1250, top_mm: 450, share: 0.64, water: None };
    says(
        &english().rooting_loss(&loss),
        "The layer from 45 cm cuts off 64 % of the 125 cm that wheat could root.",
    );
    let water = Some(WaterHeld { least_mm: 104, most_mm: 146 });
    let loss = RootingLoss { water, ..loss };
    says(
        &english().rooting_loss(&loss),
        "The layer from 45 cm cuts off 64 % of the 125 cm that wheat could root; below it this soil has room for 100–150 mm of water that crops can use.",
    );
    says(
        &german().rooting_loss(&loss),
        "Die Schicht ab 45 cm nimmt 64 % der möglichen Wurzeltiefe weg (Weizen: 125 cm); darunter hat dieser Boden Platz für 100–150 mm nutzbares Wasser.",
    );
}

#[test]
fn roll_tests_and_textures() {
    says(
        &english().rolled(330, false, RollOutcome::ShortLengths),
        "Soil from 33 cm cracks into short lengths: right for loosening.",
    );
    let texture = Texture { scheme: TextureScheme::Usda, class: TextureClass::SandyLoam };
    says(
        &english().texture_sentence(texture),
        "Sandy loam (USDA triangle); a pit face in it is read as light soil.",
    );
}

#[test]
fn a_face_is_described_depth_by_depth_beside_the_reference() {
    let open = Signs {
        comes_away: Some(ComesAway::Crumbs),
        resistance: Some(Resistance::SlipsIn),
        roots: Some(RootsSeen::Through),
        ..Signs::default()
    };
    let pan = Signs {
        comes_away: Some(ComesAway::FlatPlates),
        resistance: Some(Resistance::HardPush),
        roots: Some(RootsSeen::Sideways),
        channels: Some(ChannelsSeen::CutOff),
        ..Signs::default()
    };
    let mut reference = common::pit(PlaceKind::Reference);
    reference.layers = vec![common::layer(0, 450, open)];
    let mut headland = common::pit(PlaceKind::Headland);
    headland.layers =
        vec![common::layer(0, 200, open), common::layer(200, 300, pan), common::layer(300, 450, open)];
    let notes = FieldNotes::new(common::field(), vec![reference, headland]);
    let read = read_field(&notes);
    let (reference, headland) = (&read.pits[0], &read.pits[1]);
    says(
        &english().describe(PlaceKind::Headland, headland, Some(reference), Some(&tip(1, 0.2))),
        "Pit on the headland, dug to 45 cm. The face is moist. 0 to 20 cm: open. Crumbs, the knife slips in, roots go \
         right through. It is the same in the reference pit. 20 to 30 cm: tight, pressed. Flat plates, the knife \
         needs a hard push, channels cut off, roots turned sideways. In the reference pit it is open there. 30 to \
         45 cm: open. Crumbs, the knife slips in, roots go right through. It is the same in the reference pit. The \
         tips should run at 33 to 35 cm.",
    );
    let (word, notes) = german().layer_label(&headland.layers[1]);
    assert_eq!((word.as_str(), notes[0].as_str()), ("Dicht", "verdichtet"));
    says(&notes[1], "20–30 cm");
}

#[test]
fn words_can_be_shared_between_threads() {
    const fn shared<T: Send + Sync>() {}
    shared::<Words>();
}

#[test]
fn a_photo_is_never_told_to_be_of_no_size() {
    let photo = |size_bytes: u64| pitface_core::record::Photo {
        id: pitface_core::record::RecordId::new(1, [1; 10]),
        sha256: String::new(),
        size_bytes,
        media_type: "image/jpeg".into(),
        taken: None,
        depth_mm: None,
        marks: Vec::new(),
        unknown: pitface_core::record::Unknown::new(),
    };
    for (size_bytes, told) in [(1_240_000, "1.2 MB"), (100_000, "0.1 MB"), (41_700, "42 kB"), (1_200, "1 kB")]
    {
        let line = english().photo_line(&photo(size_bytes)).replace('\u{a0}', " ");
        assert!(line.ends_with(told), "{line}");
    }
}

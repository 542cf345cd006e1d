//! What a hole behind the machine, its pass and a pit's place say, by example.

use crate::after_dig_words;

use after_dig_words::*;
use pitface_core::advice::after_dig::{
    Across, Check, DigAdvice, FailureCause, Held, Lasting, LikelyCause, NextStep, Pair, PassAdvice, Remedy,
    TrafficWarning, Verdict, VerdictReason,
};
use pitface_core::advice::machine::{Model, WhyNot};
use pitface_core::place::PlaceRemark;
use pitface_core::record::{AfterDig, Pass, PlaceKind, RootsSeen, Zone};
use pitface_core::units::LengthUnit::Inches;
use pitface_core::words::{Language, Words};

fn with(verdict: Verdict, change: impl FnOnce(&mut DigAdvice)) -> DigAdvice {
    let mut dig = dig(verdict);
    change(&mut dig);
    dig
}

#[test]
fn a_verdict_names_what_where_and_how_wide() {
    let partly = dig(Verdict::Partly);
    says(
        &english().after_dig_sentence(&partly),
        "Partly: 61 % of the layer is broken; it is firm between the tine lines (18 cm wide).",
    );
    says(
        &german().after_dig_sentence(&partly),
        "Teilweise: 61 % der Schicht sind aufgebrochen; fest ist es zwischen den Zinkenspuren (18 cm breit).",
    );
    says(
        &Words::new(Language::English, Inches).after_dig_sentence(&partly),
        "Partly: 61 % of the layer is broken; it is firm between the tine lines (7 in wide).",
    );
    let no_spacing = with(Verdict::Partly, |dig| dig.firm_at = vec![stretch(Across::Between, false)]);
    says(
        &english().after_dig_sentence(&no_spacing),
        "Partly: 61 % of the layer is broken; it is firm between the tine lines (30 % of the width).",
    );
    let not_done = with(Verdict::NotDone, |dig| dig.firm_at = vec![stretch(Across::Throughout, true)]);
    says(
        &english().after_dig_sentence(&not_done),
        "Not done: the layer stands as it was; it is firm from tine line to tine line.",
    );
    says(
        &german().after_dig_sentence(&not_done),
        "Nicht gelungen: Die Schicht ist unverändert; fest ist es von Zinkenspur zu Zinkenspur.",
    );
    says(
        &english().firm_stretch(&stretch(Across::Between, true)),
        "Firm between the tine lines: 21–39 cm from the first line.",
    );
}

#[test]
fn firm_ground_at_both_lines_is_said_once() {
    let lines = with(Verdict::Partly, |dig| dig.firm_at = vec![stretch(Across::AtLine, true); 2]);
    says(
        &english().after_dig_sentence(&lines),
        "Partly: 61 % of the layer is broken; it is firm at both tine lines (36 cm wide in all).",
    );
}

#[test]
fn a_verdict_says_the_harm_and_what_is_missing() {
    let pressed =
        with(Verdict::Worse, |dig| dig.why = vec![VerdictReason::Thrown, VerdictReason::PressedSlot]);
    says(
        &english().after_dig_sentence(&pressed),
        "Worse: the ground is pressed round the slots; subsoil lies on the surface in large clods.",
    );
    says(
        &german().after_dig_sentence(&pressed),
        "Schlechter als vorher: Um die Schlitze ist der Boden verdichtet; Grobe Brocken aus dem Unterboden liegen an der Oberfläche.",
    );
    let nothing = with(Verdict::CannotSay, |_| ());
    says(&english().after_dig_sentence(&nothing), "Cannot say: no depths to firm soil were read.");
    let no_mark = with(Verdict::CannotSay, |dig| (dig.target_mm, dig.layer_bottom_mm) = (None, None));
    assert!(english().after_dig_sentence(&no_mark).contains("the depth that was wanted"));
    let no_layer = with(Verdict::Done, |dig| {
        dig.layer_broken = Model::DoesNotApply(WhyNot::NoLayer);
        dig.why = vec![VerdictReason::SectionLoose { share: 0.82 }];
    });
    says(&english().after_dig_sentence(&no_layer), "Done: 82 % of the ground down to 34 cm is loose.");
}

#[test]
fn a_season_on_it_is_said_whether_it_held() {
    let later = |verdict| with(verdict, |dig| dig.season_on = true);
    says(&english().after_dig_sentence(&later(Verdict::Done)), "Held: 61 % of the layer is still broken.");
    says(
        &german().after_dig_sentence(&later(Verdict::NotDone)),
        "Nicht gehalten: Fest ist es wieder zwischen den Zinkenspuren (18 cm breit).",
    );
    for &verdict in Verdict::ALL {
        let (now, then) = (dig(verdict), later(verdict));
        assert_ne!(english().after_dig_sentence(&now), english().after_dig_sentence(&then));
    }
}

#[test]
fn figures_are_measured_against_the_figure_and_the_published_share() {
    let said = english().after_dig_figures(&dig(Verdict::Partly));
    let expected = [
        "Measured: 71 % of the ground down to 34 cm is loose.",
        "Measured: of the layer (22–29 cm) 2.7 cm is left on average; 61 % of it is broken.",
        "The ridge between the tine lines is 15 cm high; by the figure 10–17 cm.",
        "By the figure 81–89 % of the ground would be loosened.",
    ];
    assert_eq!(said.len(), expected.len());
    said.iter().zip(expected).for_each(|(said, expected)| says(said, expected));
    let below = with(Verdict::Partly, |dig| dig.figure = Model::DoesNotApply(WhyNot::BelowCriticalDepth));
    let said = german().after_dig_figures(&below);
    says(&said[2], "Der ungelockerte Rücken zwischen den Zinkenspuren ist 15 cm hoch.");
    assert!(said[3].contains("zur Seite gedrückt") && !said[3].contains('%'));
    let perhaps = with(Verdict::Partly, |dig| dig.figure = Model::AppliesIfAboveCritical(figure()));
    assert!(english().after_dig_figures(&perhaps)[3].starts_with("Only if the trial strip"));
    // USDA Forest Service 0834-2828, p. 6: 75 to 80 % of the compacted layer in ideal conditions.
    let published = english().published_share();
    says(
        &published[0],
        "Published for ideal conditions: 75–80 % of the compacted layer broken (USDA Forest Service 0834-2828, p. 6).",
    );
    says(&published[1], "No source gives a mark from which a pass is done; ours is 75 %.");
}

#[test]
fn a_cause_comes_with_reasons_check_and_change() {
    says(&english().cause_line(&spacing()), "Likely: spacing too wide, 64 of 100");
    says(
        &german().cause_line(&LikelyCause { share: 0.2, ..spacing() }),
        "Möglich: Zinkenabstand zu weit, 20 %",
    );
    let expected = [
        "Likely: spacing too wide, 64 of 100. For it: the ground between the lines stayed firm; the ridge is higher \
         than the figure has it. Against it: the walls of the slot are not smeared.",
        "Check: read the depth to firm soil from one tine line to the next, and measure the spacing of the legs.",
        "Then: set the legs closer, or run a second time between the lines.",
        "Machine stopped and keys out before anyone goes near the tines.",
    ];
    let said = english().cause_lines(&spacing());
    assert_eq!(said.len(), expected.len());
    said.iter().zip(expected).for_each(|(said, expected)| says(said, expected));
}

#[test]
fn the_caution_stands_where_somebody_goes_near_the_tines() {
    let caution = "Machine stopped and keys out before anyone goes near the tines.";
    says(
        &english().check_sentence(Check::SlotsAcross),
        &format!("Check: measure the slots behind the outer legs on both sides. {caution}"),
    );
    says(&english().remedy_sentence(Remedy::Slower), "Then: drive slower.");
    for check in [Check::LookAtFeet, Check::MeasureSlots, Check::ReadAcross] {
        assert!(english().check_sentence(check).ends_with(caution));
        let next = PassAdvice { check: Some(check), ..pass_advice(NextStep::CheckFirst) };
        assert!(english().next_sentence(&next).ends_with(caution));
    }
    for remedy in [Remedy::NewFeet, Remedy::Closer, Remedy::ShallowerOrWider, Remedy::LevelIt] {
        assert!(english().remedy_sentence(remedy).ends_with(caution));
        let next = PassAdvice { remedy: Some(remedy), ..pass_advice(NextStep::ChangeAndTry) };
        assert!(english().next_sentence(&next).ends_with(caution));
    }
    let feet = cause(FailureCause::WornFeet, 0.6, Vec::new());
    let lines = english().cause_lines(&feet);
    assert_eq!(lines.iter().filter(|line| line.contains("keys out")).count(), 1, "once is enough");
}

#[test]
fn a_pass_is_told_from_title_to_traffic() {
    says(
        &english().pass_title(&pass(), Some("Yard subsoiler")),
        "Trial strip on the headland, 1 September 2026, with Yard subsoiler at 34 cm, 6 km/h",
    );
    says(
        &german().pass_title(&Pass { speed_kmh: Some(4.5), ..pass() }, None),
        "Probestreifen auf dem Vorgewende, 1.9.2026, Scharspitzen in 34 cm Tiefe, 4,5 km/h",
    );
    says(&english().pass_title(&Pass::new(id()), None), "Pass");
    let change = PassAdvice { remedy: Some(Remedy::Closer), ..pass_advice(NextStep::ChangeAndTry) };
    assert!(english().next_sentence(&change).starts_with(
        "Next: set the legs closer, or run a second time between the lines; then another trial strip."
    ));
    says(
        &german().next_sentence(&pass_advice(NextStep::GoOn)),
        "Als Nächstes: die Zone mit dieser Einstellung fertig lockern.",
    );
    let digs = vec![dig(Verdict::Done), dig(Verdict::Partly)];
    let two = PassAdvice { verdict: Some(Verdict::Partly), digs, ..pass_advice(NextStep::GoOn) };
    says(
        &english().pass_verdict(&two),
        "The pass loosened in places only. So says the worst of the 2 holes behind it.",
    );
    says(
        &english().pass_verdict(&pass_advice(NextStep::DigBehind)),
        "No hole has been dug behind this pass yet.",
    );
    // soilandwater.org.uk: a sandy loam, driven on a week later, stronger than before down to 10 cm.
    let said = english().traffic_warning(&TrafficWarning { loosened: day(1), driven_on: day(8), days: 7 });
    says(&said[0], "Heavy wheels ran over it on 8 September 2026, 7 days after it was loosened.");
    assert!(said[1].contains("soilandwater.org.uk") && said[1].contains("10\u{a0}cm"));
    says(&said[2], "Keep heavy wheels off loosened ground.");
}

#[test]
fn whether_it_has_held_is_said_with_shares_and_roots() {
    let held =
        Held { lasting: Lasting::Held, then: Some(0.82), now: Some(0.78), roots: Some(RootsSeen::Through) };
    says(
        &english().held_sentence(&held),
        "It has held: 82 % was loose behind the machine, 78 % is a season on. Roots go right through.",
    );
    says(
        &german().held_sentence(&Held { roots: None, ..held }),
        "Es hat gehalten: Hinter der Maschine waren 82 % locker, eine Saison später sind es 78 %.",
    );
}

#[test]
fn before_and_behind_stand_side_by_side() {
    says(
        &english().pair_sentences(&pair()),
        "Before: tight at 22–29 cm. Behind the machine: firm only from 33 cm on average.",
    );
    says(
        &german().pair_sentences(&pair()),
        "Vorher dicht in 22–29 cm Tiefe. Hinter der Maschine: fest erst ab 33 cm im Mittel.",
    );
    let no_deeper = Pair { firm_now_mm: Some(220), ..pair() };
    assert!(english().pair_sentences(&no_deeper).ends_with("no deeper than before."));
    says(&english().pair_found(&pair()), "Compared with the nearest pit of the zone from before the pass.");
}

#[test]
fn where_a_pit_lies_is_said_in_whole_metres_or_feet() {
    let outside = |distance_m| PlaceRemark::Outside { distance_m, accuracy_m: 5.0 };
    let near = PlaceRemark::NearEdge { distance_m: 2.1, accuracy_m: 4.0, zone: Zone::Headland };
    let (open, gateway) = (PlaceKind::Open, PlaceKind::Gateway);
    says(&english().place_remark(4, open, &outside(12.0)), "Pit 4 lies 12 m outside the outline.");
    says(
        &Words::new(Language::English, Inches).place_remark(4, open, &outside(12.0)),
        "Pit 4 lies 39 ft outside the outline.",
    );
    says(
        &english().place_remark(4, open, &outside(3.0)),
        "Pit 4 lies 3 m outside the outline, within the accuracy of its position (±5 m).",
    );
    says(
        &english().place_remark(3, open, &near),
        "Pit 3 may also lie on the headland: the edge is 2 m away, and the position is accurate to ±4 m.",
    );
    says(
        &german().place_remark(3, open, &near),
        "Grube 3 kann auch auf dem Vorgewende liegen: Bis zum Rand sind es 2 m, und die Position stimmt auf ±4 m.",
    );
    says(
        &english().place_remark(3, gateway, &PlaceRemark::DiffersFromPlace { zone: Zone::Headland }),
        "By its position pit 3 lies on the headland; it was noted in a gateway, and that stands.",
    );
    says(
        &english().place_remark(3, open, &PlaceRemark::MovedTo { zone: Zone::Headland }),
        "Pit 3 was noted on open ground; by its position it lies on the headland and counts there.",
    );
}

#[test]
fn a_hole_is_spoken_with_everything_seen_and_nothing_else() {
    let dig = with(Verdict::Partly, |dig| (dig.pair, dig.causes) = (Some(pair()), vec![spacing()]));
    let said = english().describe_after_dig(&hole(), &dig).replace('\u{a0}', " ");
    for expected in [
        "Hole behind the machine. 34 cm was wanted. The layer ended at 29 cm.",
        "From tine line to tine line firm soil begins at 34; 30; 22.5; 30; 33 cm.",
        "some plates of the layer are left whole",
        "no subsoil lies on the surface",
        "roots go right through. Partly: 61 % of the layer is broken;",
        "Before: tight at 22–29 cm.",
        "Likely: spacing too wide, 64 of 100.",
        "keys out",
    ] {
        assert!(said.contains(expected), "{expected} is not in\n{said}");
    }
    // Not looked is never "none".
    let said = english().describe_after_dig(&AfterDig::new(id()), &dig);
    for unseen in ["plates", "surface", "lumps", "feet", "smeared or", "roots"] {
        assert!(!said.contains(unseen), "{unseen} is in\n{said}");
    }
}

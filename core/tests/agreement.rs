//! How far readers of the same pit agree.

use pitface_core::advice::agreement::{Agreement, ReaderFace, Weights, agreement, kappa};
use pitface_core::reading::FaceLayer;
use pitface_core::record::{Call, ComesAway, Resistance, RootsSeen, Sign, Signs};
use proptest::prelude::*;
use serde_json::Value;

const CASES: &str = include_str!("../../tests/vectors/agreement.json");

#[test]
fn kappas_agree_with_those_reckoned_by_hand() {
    let cases: Value = serde_json::from_str(CASES).expect("the vectors are JSON");
    for case in cases["kappa"].as_array().expect("a list") {
        let rows = case["table"].as_array().expect("rows");
        let mut pairs = Vec::new();
        for (one, row) in rows.iter().enumerate() {
            for (other, times) in row.as_array().expect("a row").iter().enumerate() {
                pairs.extend((0..times.as_u64().expect("a count")).map(|_| (one, other)));
            }
        }
        let weights = Weights::from_code(case["weights"].as_str().expect("a code")).expect("known weights");
        match (kappa(&pairs, rows.len(), weights), case["kappa"].as_f64()) {
            (None, None) => {}
            (Some(found), Some(expected)) => {
                assert!((found - expected).abs() <= case["tolerance"].as_f64().unwrap(), "{case} {found}");
            }
            (found, _) => panic!("{case} {found:?}"),
        }
    }
}

fn layer(top_mm: u32, bottom_mm: u32, signs: Signs) -> FaceLayer {
    FaceLayer { top_mm, bottom_mm, signs, texture: None }
}

fn seen(resistance: Resistance, comes_away: ComesAway) -> Signs {
    Signs { resistance: Some(resistance), comes_away: Some(comes_away), ..Signs::default() }
}

fn face(by: &str, layers: Vec<FaceLayer>, call: Call) -> ReaderFace {
    ReaderFace { by: by.to_owned(), layers, call: Some(call) }
}

fn of(agreement: &Agreement, sign: Sign) -> pitface_core::advice::agreement::SignAgreement {
    *agreement.signs.iter().find(|found| found.sign == sign).expect("compared")
}

#[test]
fn two_who_draw_the_boundary_elsewhere_differ_only_in_between() {
    let loose = seen(Resistance::SlipsIn, ComesAway::Crumbs);
    let tight = seen(Resistance::HardPush, ComesAway::Crumbs);
    let pit = vec![
        face("walker", vec![layer(0, 200, loose), layer(200, 400, tight)], Call::Loosen),
        face("farmer", vec![layer(0, 250, loose), layer(250, 400, tight)], Call::Loosen),
    ];
    let agreement = agreement(&[pit]);
    let resistance = of(&agreement, Sign::Resistance);
    assert_eq!((resistance.compared, resistance.same), (8, 7));
    // One of eight slices lies two of three steps apart.
    assert!((resistance.apart - 2.0 / 3.0 / 8.0).abs() < 1e-12);
    // Four and five of eight slip in: 1 - (1/8) / (4·3 + 4·5)/64.
    assert!((resistance.linear.unwrap() - 0.75).abs() < 1e-12);
    assert_eq!(resistance.equal, None);
    assert_eq!(of(&agreement, Sign::ComesAway).equal, None, "one answer throughout tells nothing");
    assert_eq!(agreement.differ_most, Some(Sign::Resistance));
    assert!(!agreement.calls_differ);
}

#[test]
fn it_matters_when_the_calls_differ() {
    let crumbs = seen(Resistance::FirmPush, ComesAway::Crumbs);
    let plates = seen(Resistance::HardPush, ComesAway::FlatPlates);
    let pit = vec![
        face("walker", vec![layer(0, 400, plates)], Call::Loosen),
        face("farmer", vec![layer(0, 400, crumbs)], Call::LeaveIt),
    ];
    let agreement = agreement(&[pit]);
    assert!(agreement.calls_differ);
    assert_eq!(agreement.differ_most, Some(Sign::ComesAway));
}

#[test]
fn of_three_readers_the_kappas_of_the_three_pairs_are_averaged() {
    let signs = |resistance| Signs { resistance: Some(resistance), ..Signs::default() };
    let (low, high) = (signs(Resistance::SlipsIn), signs(Resistance::Stops));
    let two = |upper, lower| vec![layer(0, 200, upper), layer(200, 400, lower)];
    let pit = vec![
        face("a", two(low, high), Call::LeaveIt),
        face("b", two(low, high), Call::LeaveIt),
        face("c", two(high, low), Call::LeaveIt),
    ];
    let resistance = of(&agreement(&[pit]), Sign::Resistance);
    assert!((resistance.quadratic.unwrap() - (1.0 - 1.0 - 1.0) / 3.0).abs() < 1e-12);
}

#[test]
fn no_roots_to_judge_by_is_no_place_on_the_scale() {
    let roots = |seen| Signs { roots: Some(seen), ..Signs::default() };
    let pit = vec![
        face("walker", vec![layer(0, 400, roots(RootsSeen::NoneToJudge))], Call::LeaveIt),
        face("farmer", vec![layer(0, 400, roots(RootsSeen::Stopped))], Call::LeaveIt),
    ];
    assert_eq!(agreement(&[pit]).signs, []);
}

#[test]
fn one_reader_alone_is_compared_with_nobody() {
    let pit =
        vec![face("walker", vec![layer(0, 400, seen(Resistance::Stops, ComesAway::OneMass))], Call::Loosen)];
    let agreement = agreement(&[pit.clone(), pit]);
    assert!(agreement.signs.is_empty() && agreement.differ_most.is_none() && !agreement.calls_differ);
}

proptest! {
    #[test]
    fn kappa_is_at_most_one_and_the_same_from_either_side(
        pairs in prop::collection::vec((0_usize..4, 0_usize..4), 0..40),
    ) {
        let swapped: Vec<_> = pairs.iter().map(|&(one, other)| (other, one)).collect();
        for &weights in Weights::ALL {
            let found = kappa(&pairs, 4, weights);
            prop_assert_eq!(found.is_some(), kappa(&swapped, 4, weights).is_some());
            if let (Some(found), Some(back)) = (found, kappa(&swapped, 4, weights)) {
                prop_assert!(found <= 1.0 + 1e-12 && (found - back).abs() < 1e-12);
            }
        }
    }
}

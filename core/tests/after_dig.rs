//! Holes dug behind the machine: the cases of `tests/vectors/after_dig.json`, each with its source or as our judgement.

use crate::after_dig_support;

use after_dig_support::{Given, told};
use pitface_core::advice::after_dig::{Check, DigAdvice, GOOD_CONDITIONS, PASS_MARK, PassAdvice, Remedy};
use pitface_core::advice::machine::Model;
use serde::Deserialize;
use serde_json::Value;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    id: String,
    source: String,
    remark: String,
    given: Given,
    expected: serde_json::Map<String, Value>,
}

#[derive(Deserialize)]
struct File {
    cases: Vec<Case>,
}

fn cases() -> Vec<Case> {
    let file: File =
        serde_json::from_str(include_str!("../../tests/vectors/after_dig.json")).expect("the file reads");
    assert!(file.cases.len() > 20);
    file.cases
}

/// Returns what came out under a name of the file: a number, a code, or the reason why there is none.
fn found(name: &str, pass: &PassAdvice, dig: &DigAdvice) -> Value {
    fn shown<T: Copy + Into<f64>>(model: &Model<T>) -> Value {
        match model {
            Model::Applies(value) | Model::AppliesIfAboveCritical(value) => Value::from((*value).into()),
            Model::DoesNotApply(why) => Value::from(why.code()),
        }
    }
    match name {
        "share" => shown(&dig.share),
        "layer_broken" => shown(&dig.layer_broken),
        "layer_left_mm" => shown(&dig.layer_left_mm),
        "one_hole" => pass.one_hole.into(),
        "rolled_wet" => pass.rolled_wet.into(),
        "lasts_months" => vec![pass.lasts.least_months, pass.lasts.most_months].into(),
        "check" => pass.check.map(Check::code).into(),
        "ridge_mm" => shown(&dig.ridge_mm),
        "figure_ridge_mm" => shown(&dig.figure.map(|ground| ground.most.ridge_mm)),
        "figure_share" => shown(&dig.figure.map(|ground| ground.most.share)),
        "figure" => match dig.figure {
            Model::Applies(_) => "applies".into(),
            Model::AppliesIfAboveCritical(_) => "applies_if_above_critical".into(),
            Model::DoesNotApply(why) => why.code().into(),
        },
        "verdict" => dig.verdict.code().into(),
        "next" => pass.next.code().into(),
        "remedy" => pass.remedy.map(Remedy::code).into(),
        "firm" => dig.firm_at.iter().map(|stretch| stretch.across.code()).collect(),
        "traffic_days" => pass.traffic.map(|warning| warning.days).into(),
        _ => panic!("{name} is not looked at"),
    }
}

fn check(case: &Case, name: &str, expected: &Value, pass: &PassAdvice) {
    let dig = &pass.digs[0];
    match name {
        // The likeliest ones, in their order; none where it is done or cannot be said.
        "causes" => {
            let expected: Vec<&str> =
                expected.as_array().expect("a list").iter().filter_map(Value::as_str).collect();
            let causes: Vec<&str> = dig.causes.iter().map(|cause| cause.cause.code()).collect();
            assert!(causes.starts_with(&expected), "{}: {causes:?}", case.id);
            assert_eq!(causes.is_empty(), expected.is_empty(), "{}", case.id);
        }
        "silent" => {
            let mut clues =
                dig.causes.iter().flat_map(|cause| &cause.reasons).map(|reason| reason.clue.code());
            assert!(!dig.causes.is_empty() && clues.all(|clue| clue != expected), "{}", case.id);
        }
        _ => {
            let found = found(name, pass, dig);
            let near = match (expected.as_f64(), found.as_f64()) {
                (Some(expected), Some(found)) => (expected - found).abs() < 6e-5,
                _ => *expected == found,
            };
            assert!(near, "{} {name}: {found}, not {expected}; {:?}", case.id, dig.why);
        }
    }
}

#[test]
fn every_case_comes_out_as_its_source_says() {
    for case in cases() {
        assert!(!case.source.is_empty() && !case.expected.is_empty(), "{} {}", case.id, case.remark);
        let pass = told(&case.given);
        assert_eq!(Some(pass.digs[0].verdict), pass.verdict, "{}", case.id);
        for (name, expected) in &case.expected {
            check(&case, name, expected, &pass);
        }
    }
}

#[test]
fn our_pass_mark_is_the_lower_end_of_good_conditions() {
    assert!((PASS_MARK - GOOD_CONDITIONS.0).abs() < f64::EPSILON && GOOD_CONDITIONS.1 > GOOD_CONDITIONS.0);
}

#[test]
fn everything_told_goes_into_json() {
    for case in cases() {
        let json = serde_json::to_value(told(&case.given)).expect("it is written");
        assert!(json["digs"][0]["verdict"].is_string() && json["next"].is_string(), "{}", case.id);
    }
}

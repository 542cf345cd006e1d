//! The decision cases of `tests/vectors/decisions.json`, read from their notes files as a person would write them:
//! what each source says comes out, and does not hang on the exact sizes in the table of clues.

use crate::vectors;

use pitface_core::advice::{Caution, FollowUp, Stance, ZoneCall, advise};
use pitface_core::reading::{FieldReading, Table, read_field, read_field_with};
use pitface_core::record::{Call, Cause, Condition, FieldNotes};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use serde::Deserialize;

/// One case: what is asked of a field, and what its source says of it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    id: String,
    file: String,
    zone: String,
    call: String,
    /// Tip depths the source accepts; none where it states none.
    tip_mm: Option<[u32; 2]>,
    layer: Option<Layer>,
    /// Reason that must carry the call.
    reason: Option<String>,
    caution: Option<String>,
    follow_up: Option<String>,
    source: String,
    /// What was added to the source's words to make a whole file.
    remark: String,
}

/// A layer that a pit of the zone must show.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Layer {
    top_mm: u32,
    bottom_mm: u32,
    condition: Option<String>,
    cause: Option<String>,
}

fn cases() -> Vec<(Case, FieldNotes)> {
    let cases: Vec<Case> = vectors::cases("decisions.json");
    let with_notes = cases.into_iter().map(|case| {
        let notes = vectors::notes(&vectors::text(&case.file));
        (case, notes)
    });
    with_notes.collect()
}

fn call_of(case: &Case, notes: &FieldNotes, reading: &FieldReading) -> ZoneCall {
    let advice = advise(notes, reading);
    let mut all = advice.zones.into_iter().chain([advice.whole]);
    all.find(|call| call.zone.code() == case.zone)
        .unwrap_or_else(|| panic!("{} has no {}", case.id, case.zone))
}

#[test]
fn every_case_names_its_source_and_what_was_added() {
    for (case, _) in cases() {
        assert!(!case.source.is_empty() && !case.remark.is_empty(), "{}", case.id);
    }
}

#[test]
fn what_the_source_says_comes_out() {
    for (case, notes) in cases() {
        let name = format!("{} {}", case.id, case.zone);
        let call = call_of(&case, &notes, &read_field(&notes));
        println!("{name}: {} {:.2} {:?}", call.call.code(), call.share, call.tip);
        assert_eq!(call.call.code(), case.call, "{name}: {:#?}", call.reasons);
        match (case.tip_mm, call.tip) {
            (Some([from_mm, to_mm]), Some(tip)) => {
                assert!(from_mm <= tip.lo_mm && tip.hi_mm <= to_mm, "{name}: {tip:?}");
            }
            (Some(_), None) => panic!("{name}: no tip depth"),
            (None, tip) => assert!(tip.is_none() || call.call == Call::Wait, "{name}: {tip:?}"),
        }
        if let Some(code) = &case.reason {
            let carrying = call.reasons.iter().filter(|why| why.stance == Stance::For);
            let told: Vec<_> = carrying.map(|why| serde_json::to_value(&why.what).unwrap()).collect();
            assert!(told.iter().any(|what| what["what"] == **code), "{name}: {told:#?}");
        }
        if let Some(code) = &case.caution {
            assert!(
                call.cautions.contains(&Caution::from_code(code).unwrap()),
                "{name}: {:?}",
                call.cautions
            );
        }
        if let Some(code) = &case.follow_up {
            let follow_up = FollowUp::from_code(code).unwrap();
            assert!(call.follow_up.contains(&follow_up), "{name}: {:?}", call.follow_up);
        }
    }
}

#[test]
fn the_layer_of_each_case_reads_as_stated() {
    for (case, notes) in cases() {
        let Some(wanted) = &case.layer else { continue };
        let reading = read_field(&notes);
        // The concern is the last pit of each file; a reference stands before it.
        let layers = &reading.pits.last().unwrap().layers;
        let found =
            layers.iter().find(|layer| (layer.top_mm, layer.bottom_mm) == (wanted.top_mm, wanted.bottom_mm));
        let layer = found.unwrap_or_else(|| panic!("{}: no such layer in {layers:#?}", case.id));
        let (condition, cause) = (layer.condition, layer.cause);
        println!("{}: {} {} {:.2}", case.id, condition.code(), cause.code(), layer.share);
        if let Some(code) = &wanted.condition {
            assert_eq!(Some(condition), Condition::from_code(code), "{}", case.id);
        }
        if let Some(code) = &wanted.cause {
            assert_eq!(Some(cause), Cause::from_code(code), "{}: {:#?}", case.id, layer.reasons);
        }
    }
}

#[test]
fn the_call_stands_when_every_size_in_the_table_is_off_by_up_to_a_fifth() {
    const TABLES: usize = 1_000;
    let mut random = TestRng::from_seed(RngAlgorithm::ChaCha, &[51; 32]);
    let mut factor = || 0.8 + 0.4 * (random.next_u64() >> 11) as f64 / (1u64 << 53) as f64;
    let cases = cases();
    let mut kept = vec![0; cases.len()];
    for _ in 0..TABLES {
        let table = Table::standard().perturbed(&mut factor);
        for (kept, (case, notes)) in kept.iter_mut().zip(&cases) {
            let call = call_of(case, notes, &read_field_with(notes, &table)).call;
            *kept += usize::from(call.code() == case.call);
        }
    }
    for (kept, (case, _)) in kept.iter().zip(&cases) {
        println!("{} {}: {} in {kept} of {TABLES} tables", case.id, case.zone, case.call);
    }
    for (kept, (case, _)) in kept.iter().zip(&cases) {
        assert!(*kept * 100 >= TABLES * 95, "{} {}: {kept} of {TABLES}", case.id, case.zone);
    }
}

//! The labelled fields of `tests/vectors/cases` (our judgement, two sets of labels made apart): how many calls are right
//! or could be defended, and that none is harmful.

use crate::vectors;

use pitface_core::advice::{FieldAdvice, ZoneCall, advise};
use pitface_core::reading::read_field;
use pitface_core::record::Call;
use serde::Deserialize;
use std::collections::BTreeMap;

/// How far a tip depth may lie outside the range of the label, in millimetres.
const TIP_OFF_MM: u32 = 10;

/// What an adviser would say of a field.
#[derive(Debug, Deserialize)]
struct Label {
    zones: BTreeMap<String, String>,
    main_zone: String,
    also_ok: Vec<String>,
    never: Vec<String>,
    tip_mm: Option<[u32; 2]>,
    why: String,
}

impl Label {
    /// The call wanted of the main zone, else of the only one that is labelled.
    fn wanted(&self) -> &str {
        let main = self.zones.get(&self.main_zone).or_else(|| self.zones.values().next());
        main.map_or("", String::as_str)
    }

    /// Returns whether a call of the main zone would do harm: one that is named so, or steel where none is wanted.
    fn is_harmful(&self, call: &str) -> bool {
        let steel = Call::Loosen.code();
        self.never.iter().any(|never| never == call)
            || (call == steel && self.wanted() != steel && !self.also_ok.iter().any(|ok| ok == steel))
    }

    fn is_right(&self, call: &str) -> bool {
        let also = self.also_ok.iter().any(|ok| ok == call);
        (self.wanted() == call || also) && !self.is_harmful(call)
    }
}

fn call_of<'a>(advice: &'a FieldAdvice, zone: &str) -> Option<&'a ZoneCall> {
    advice.zones.iter().find(|call| call.zone.code() == zone)
}

#[test]
fn the_calls_of_the_labelled_fields_are_right_and_none_is_harmful() {
    let labels: BTreeMap<String, Label> = serde_json::from_str(&vectors::text("cases/labels.json")).unwrap();
    let (mut main, mut zones, mut of_zones, mut harmful, mut shares) = (0, 0, 0, Vec::new(), Vec::new());
    for (name, label) in &labels {
        let notes = vectors::notes(&vectors::text(&format!("cases/{name}.notes.json")));
        let advice = advise(&notes, &read_field(&notes));
        let told = call_of(&advice, &label.main_zone).unwrap_or(&advice.whole);
        let call = told.call.code();
        let right = label.is_right(call);
        main += usize::from(right);
        if told.call != Call::DigAgain {
            shares.push(told.share);
        }
        if label.is_harmful(call) {
            harmful.push(format!("{name}: {call}"));
        }
        if !right {
            println!("{name} {}: {call}, wanted {}. {}", label.main_zone, label.wanted(), label.why);
        }
        for (zone, wanted) in &label.zones {
            let call = call_of(&advice, zone).map(|call| call.call.code());
            let as_wanted = call == Some(wanted) || (*zone == label.main_zone && right);
            of_zones += 1;
            zones += usize::from(as_wanted);
            if !as_wanted {
                println!("{name} {zone}: {call:?}, wanted {wanted}");
            }
        }
        if let (Some([lo_mm, hi_mm]), Call::Loosen | Call::Wait) = (label.tip_mm, told.call) {
            let tip = told.tip.unwrap_or_else(|| panic!("{name}: no tip depth"));
            assert!(
                tip.lo_mm <= hi_mm + TIP_OFF_MM && tip.hi_mm + TIP_OFF_MM >= lo_mm,
                "{name}: {tip:?}, wanted {lo_mm} to {hi_mm}"
            );
        }
    }
    shares.sort_by(f64::total_cmp);
    println!("told with {shares:.2?}");
    println!("main zone {main} of {}, all zones {zones} of {of_zones}", labels.len());
    assert_eq!(harmful, [""; 0]);
    assert!(main * 100 >= 95 * labels.len());
    assert!(zones * 100 >= 85 * of_zones);
}

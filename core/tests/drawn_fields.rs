//! How often the call of a drawn field is right, soil by soil, and whether a call told with 80 of 100 is right about 80
//! times in 100. Half of the fields are sound.

mod drawn_field;

use drawn_field::soils::SOILS;
use drawn_field::{Chance, Drawn, draw};
use pitface_core::advice::{ZoneCall, advise};
use pitface_core::reading::read_field;
use pitface_core::record::Call;

/// Fields drawn of each soil.
const EACH: usize = 30;
/// Chosen before the first run, and not changed for its outcome.
const SEED: u64 = 2026;

/// The call of the zone that holds the concern.
fn call_of(drawn: &Drawn) -> ZoneCall {
    let advice = advise(&drawn.notes, &read_field(&drawn.notes));
    advice.zones.into_iter().next().unwrap_or(advice.whole)
}

#[test]
fn drawn_fields_get_the_call_of_their_source() {
    let mut chance = Chance::new(SEED);
    let (mut right, mut sound_right, mut harmful, mut told) = (0, 0, 0, Vec::new());
    for soil in &SOILS {
        let mut calls = vec![0; Call::ALL.len()];
        let mut of_soil = 0;
        for _ in 0..EACH {
            let drawn = draw(soil, &mut chance);
            let call = call_of(&drawn);
            calls[call.call as usize] += 1;
            of_soil += usize::from(drawn.is_right(call.call));
            harmful += usize::from(drawn.is_harmful(call.call));
            if call.call != Call::DigAgain {
                told.push((call.share, drawn.is_right(call.call)));
            }
        }
        let listed = Call::ALL.iter().zip(&calls).filter(|(_, count)| **count > 0);
        let listed: Vec<String> = listed.map(|(call, count)| format!("{} {count}", call.code())).collect();
        println!("{:<38} {of_soil:>2} of {EACH}: {}", soil.name, listed.join(", "));
        right += of_soil;
        sound_right += if soil.sound { of_soil } else { 0 };
        assert!(!soil.source.is_empty(), "{}", soil.name);
    }
    let fields = SOILS.len() * EACH;
    println!("right {right} of {fields}, sound {sound_right} of {}, harmful {harmful}", fields / 2);
    print_reliability(&told);
    assert!(right * 100 >= 90 * fields);
    assert!(harmful * 100 <= fields);
}

/// Prints how often calls told with each share are right, with the Brier score against a constant.
fn print_reliability(told: &[(f64, bool)]) {
    const BINS: usize = 10;
    println!("told with      calls   mean   right");
    for bin in 0..BINS {
        let inside = |share: f64| ((share * BINS as f64) as usize).min(BINS - 1) == bin;
        let those: Vec<&(f64, bool)> = told.iter().filter(|(share, _)| inside(*share)).collect();
        if !those.is_empty() {
            let count = those.len() as f64;
            let mean = those.iter().map(|(share, _)| share).sum::<f64>() / count;
            let right = those.iter().filter(|(_, right)| *right).count() as f64 / count;
            println!("{:>3}-{:<3} of 100 {count:>6} {mean:>6.2} {right:>7.2}", bin * 10, bin * 10 + 10);
        }
    }
    let count = told.len() as f64;
    let rate = told.iter().filter(|(_, right)| *right).count() as f64 / count;
    let brier =
        told.iter().map(|(share, right)| (share - f64::from(u8::from(*right))).powi(2)).sum::<f64>() / count;
    println!("Brier score {brier:.3}, of a constant {:.3}", rate * (1.0 - rate));
}

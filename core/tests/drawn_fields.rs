//! How often the call of a drawn field is right, soil by soil, and whether a call told with 80 of 100 is right about 80
//! times in 100. Half of the fields are sound.

use crate::drawn_field;

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
    let (mut right, mut sound_right, mut harmful) = (0, 0, 0);
    for soil in &SOILS {
        let mut calls = vec![0; Call::ALL.len()];
        let mut of_soil = 0;
        for _ in 0..EACH {
            let drawn = draw(soil, 1.0, &mut chance);
            let call = call_of(&drawn);
            calls[call.call as usize] += 1;
            of_soil += usize::from(drawn.is_right(call.call));
            harmful += usize::from(drawn.is_harmful(call.call));
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
    assert!(right * 100 >= 90 * fields);
    assert!(harmful * 100 <= fields);
}

/// Calls told with their share, of walkers from careful to careless, and whether they were right.
#[test]
fn a_call_is_right_about_as_often_as_it_says() {
    let mut chance = Chance::new(SEED + 7);
    let mut told = Vec::new();
    for careless in [1.0, 2.0, 4.0, 6.0] {
        for soil in &SOILS {
            for _ in 0..EACH {
                let drawn = draw(soil, careless, &mut chance);
                let call = call_of(&drawn);
                if call.call != Call::DigAgain {
                    told.push((call.share, drawn.is_right(call.call)));
                }
            }
        }
    }
    print_reliability(&told);
    let share = |from: f64, to: f64| {
        let those: Vec<_> = told.iter().filter(|(share, _)| (from..to).contains(share)).collect();
        let mean = those.iter().map(|(share, _)| share).sum::<f64>() / those.len() as f64;
        (mean, those.iter().filter(|(_, right)| *right).count() as f64 / those.len() as f64)
    };
    for (from, to) in [(0.6, 0.75), (0.75, 0.85), (0.85, 1.01)] {
        let (mean, right) = share(from, to);
        assert!((mean - right).abs() < 0.1, "told with {mean:.2}, right {right:.2}");
    }
    let (brier, constant) = brier(&told);
    assert!(brier < constant, "{brier} {constant}");
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
    let (brier, constant) = brier(told);
    println!("Brier score {brier:.3}, of a constant {constant:.3}");
}

/// Mean squared distance between what is told and what comes true (Brier 1950, value from memory), and that of telling
/// always the share of right calls.
fn brier(told: &[(f64, bool)]) -> (f64, f64) {
    let came = |right: &bool| f64::from(u8::from(*right));
    let mean = |of: &dyn Fn(&(f64, bool)) -> f64| told.iter().map(of).sum::<f64>() / told.len() as f64;
    let rate = mean(&|(_, right)| came(right));
    (mean(&|(share, right)| (share - came(right)).powi(2)), rate * (1.0 - rate))
}

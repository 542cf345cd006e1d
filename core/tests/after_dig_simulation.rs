//! Strips that failed for one planted cause in a physical model: how often the ranking finds it. The table of causes was
//! settled on other seeds than these. Both tables are printed with
//! `cargo test -p pitface-core --test after_dig_simulation -- --nocapture`.

#![allow(clippy::expect_used, reason = "a broken fixture should end the test")]

mod virtual_strip;

use pitface_core::advice::after_dig::{FailureCause, Verdict, look_behind};
use pitface_core::advice::{CLEARED_SHARE, FieldAdvice, advise, tip_depth};
use pitface_core::reading::{FieldReading, read_field};
use pitface_core::record::{Field, FieldNotes, RecordId};
use virtual_strip::{Chance, Strip, failed};

const STRIPS: usize = 1_200;
const CAUSES: usize = FailureCause::ALL.len();
const FIRST_SEED: u64 = 20_261_126;

/// How often each cause was ranked first, by what was planted; and how often the planted one was among the first two.
struct Found {
    first: [[usize; CAUSES]; CAUSES],
    in_two: [usize; CAUSES],
    told_done: [usize; CAUSES],
}

fn seed() -> u64 {
    // Another seed may be given for tuning; the test's own is fixed.
    std::env::var("PITFACE_SEED").ok().and_then(|text| text.parse().ok()).unwrap_or(FIRST_SEED)
}

/// Runs all strips; `before_checks` leaves out what the checks of roll, slots and feet would have told.
fn run(before_checks: bool) -> Found {
    let field = Field::new(RecordId::new(9, [5; 10]), "Strip");
    let mut notes = FieldNotes::new(field, Vec::new());
    let reading = read_field(&notes);
    let mut advice = advise(&notes, &reading);
    let mut found = Found { first: [[0; CAUSES]; CAUSES], in_two: [0; CAUSES], told_done: [0; CAUSES] };
    for (planted, &cause) in FailureCause::ALL.iter().enumerate() {
        let mut chance = Chance(seed() + planted as u64 * 1_000_003);
        for _ in 0..STRIPS {
            let mut strip = failed(cause, &mut chance);
            if before_checks {
                strip.pass.rolls.clear();
                strip.pass.after_digs[0].slots_mm.clear();
                strip.pass.after_digs[0].feet = None;
            }
            match ranking(strip, &mut notes, &reading, &mut advice) {
                Some(ranking) => {
                    found.first[planted][ranking[0] as usize] += 1;
                    found.in_two[planted] += usize::from(ranking[..2].contains(&cause));
                }
                None => found.told_done[planted] += 1,
            }
        }
    }
    found
}

/// The causes in their order; `None` where the hole reads as done all the same.
fn ranking(
    strip: Strip,
    notes: &mut FieldNotes,
    reading: &FieldReading,
    advice: &mut FieldAdvice,
) -> Option<Vec<FailureCause>> {
    notes.machines = vec![strip.machine];
    notes.passes = vec![strip.pass];
    advice.whole.tip = tip_depth(&[strip.bottom_mm], CLEARED_SHARE);
    let passes = look_behind(notes, reading, advice);
    let dig = &passes[0].digs[0];
    assert_eq!(dig.causes.is_empty(), dig.verdict == Verdict::Done, "{:?}", dig.verdict);
    (!dig.causes.is_empty()).then(|| dig.causes.iter().map(|cause| cause.cause).collect())
}

impl Found {
    fn asked(&self, planted: usize) -> usize {
        STRIPS - self.told_done[planted]
    }

    fn share_in_two(&self, planted: usize) -> f64 {
        self.in_two[planted] as f64 / self.asked(planted) as f64
    }

    fn print(&self, title: &str) {
        println!("\n{title}; seed {}, {STRIPS} strips a cause; % ranked first, by what was planted", seed());
        let heads: Vec<String> = FailureCause::CODES.iter().map(|code| format!("{:>9.9}", code)).collect();
        println!("{:<17}{}  in 2  read as done", "planted", heads.concat());
        for (planted, code) in FailureCause::CODES.iter().enumerate() {
            let percent = |count: usize| 100.0 * count as f64 / self.asked(planted) as f64;
            let cells: Vec<String> =
                self.first[planted].iter().map(|count| format!("{:>9.1}", percent(*count))).collect();
            println!(
                "{code:<17}{} {:>5.1} {:>6.1} %",
                cells.concat(),
                100.0 * self.share_in_two(planted),
                100.0 * self.told_done[planted] as f64 / STRIPS as f64
            );
        }
    }
}

#[test]
fn the_planted_cause_is_among_the_first_two() {
    let found = run(false);
    found.print("All that a careful person takes");
    run(true).print("Before roll, slots and feet were looked at");
    for (planted, code) in FailureCause::CODES.iter().enumerate() {
        assert!(found.share_in_two(planted) >= 0.9, "{code}: {:.3}", found.share_in_two(planted));
    }
}

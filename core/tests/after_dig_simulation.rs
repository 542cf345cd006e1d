//! Strips that failed for one planted cause in a physical model: how often the ranking finds it, what it takes for that,
//! and which causes cannot be told apart without their check. The table of causes was settled before this test's seeds
//! were run. The tables are printed with `cargo test -p pitface-core --test after_dig_simulation -- --nocapture`.

use crate::virtual_strip;

use pitface_core::advice::after_dig::{
    CauseTable, Check, FailureCause, LikelyCause, Verdict, look_behind_with,
};
use pitface_core::advice::{CLEARED_SHARE, FieldAdvice, advise, tip_depth};
use pitface_core::reading::{FieldReading, read_field};
use pitface_core::record::{Field, FieldNotes, RecordId};
use virtual_strip::{CAREFUL, Chance, Strip, failed};

const STRIPS: usize = 1_200;
const CAUSES: usize = FailureCause::ALL.len();
const FIRST_SEED: u64 = 20_261_126;

fn seed() -> u64 {
    // Another seed may be given for tuning; the test's own is fixed.
    std::env::var("PITFACE_SEED").ok().and_then(|text| text.parse().ok()).unwrap_or(FIRST_SEED)
}

/// The strips of a cause, the same ones in every run.
fn strips(planted: usize, count: usize, slips: f64) -> impl Iterator<Item = Strip> {
    let mut chance = Chance(seed() + planted as u64 * 1_000_003);
    (0..count).map(move |_| failed(FailureCause::ALL[planted], slips, &mut chance))
}

/// A field that the strips are laid on one after the other.
struct Ground<'a> {
    notes: FieldNotes,
    reading: FieldReading,
    advice: FieldAdvice,
    table: &'a CauseTable,
}

impl<'a> Ground<'a> {
    fn new(table: &'a CauseTable) -> Self {
        let notes = FieldNotes::new(Field::new(RecordId::new(9, [5; 10]), "Strip"), Vec::new());
        let reading = read_field(&notes);
        let advice = advise(&notes, &reading);
        Self { notes, reading, advice, table }
    }

    /// The causes in their order; `None` where the hole reads as done all the same.
    fn causes(&mut self, strip: &Strip) -> Option<Vec<LikelyCause>> {
        self.notes.machines = vec![strip.machine.clone()];
        self.notes.passes = vec![strip.pass.clone()];
        self.advice.whole.tip = tip_depth(&[strip.bottom_mm], CLEARED_SHARE);
        let mut told = look_behind_with(&self.notes, &self.reading, &self.advice, self.table);
        let dig = told.remove(0).digs.remove(0);
        assert_eq!(dig.causes.is_empty(), dig.verdict == Verdict::Done, "{:?}", dig.verdict);
        (!dig.causes.is_empty()).then_some(dig.causes)
    }

    /// The same by somebody who did not roll, measure slots or look at feet, and then makes the checks that the first
    /// two causes ask for, until they ask for none of these.
    fn by_checks(&mut self, strip: &Strip) -> Option<(Vec<LikelyCause>, usize)> {
        let mut known = before_checks(strip);
        let mut causes = self.causes(&known)?;
        let mut made = 0;
        loop {
            let (hole, seen) = (&mut known.pass.after_digs[0], &strip.pass.after_digs[0]);
            let asked = causes.iter().take(2).find_map(|cause| match cause.check? {
                Check::RollAtTip if known.pass.rolls != strip.pass.rolls => {
                    known.pass.rolls.clone_from(&strip.pass.rolls);
                    Some(())
                }
                Check::MeasureSlots | Check::SlotsAcross if hole.slots_mm != seen.slots_mm => {
                    hole.slots_mm.clone_from(&seen.slots_mm);
                    Some(())
                }
                Check::LookAtFeet if hole.feet != seen.feet => {
                    hole.feet = seen.feet;
                    Some(())
                }
                _ => None,
            });
            if asked.is_none() {
                return Some((causes, made));
            }
            made += 1;
            causes = self.causes(&known)?;
        }
    }
}

/// A strip before roll, slots and feet were looked at.
fn before_checks(strip: &Strip) -> Strip {
    let mut before = strip.clone();
    before.pass.rolls.clear();
    before.pass.after_digs[0].slots_mm.clear();
    before.pass.after_digs[0].feet = None;
    before
}

/// How often each cause was ranked first, by what was planted; and how often the planted one was among the first two.
#[derive(Default)]
struct Found {
    first: [[usize; CAUSES]; CAUSES],
    in_two: [usize; CAUSES],
    asked: [usize; CAUSES],
    checks: usize,
}

impl Found {
    fn note(&mut self, planted: usize, causes: &[LikelyCause]) {
        self.asked[planted] += 1;
        self.first[planted][causes[0].cause as usize] += 1;
        let wanted = FailureCause::ALL[planted];
        self.in_two[planted] += usize::from(causes[..2].iter().any(|cause| cause.cause == wanted));
    }

    /// All strips, each looked at in this way.
    fn of(slips: f64, mut causes: impl FnMut(&Strip) -> Option<(Vec<LikelyCause>, usize)>) -> Self {
        let mut found = Self::default();
        for planted in 0..CAUSES {
            for strip in strips(planted, STRIPS, slips) {
                if let Some((causes, checks)) = causes(&strip) {
                    found.note(planted, &causes);
                    found.checks += checks;
                }
            }
        }
        found
    }

    fn share(&self, planted: usize, count: usize) -> f64 {
        count as f64 / self.asked[planted] as f64
    }

    fn share_in_two(&self, planted: usize) -> f64 {
        self.share(planted, self.in_two[planted])
    }

    fn print(&self, title: &str) {
        println!("\n{title}; seed {}, {STRIPS} strips a cause", seed());
        println!(
            "% ranked first, by what was planted; planted one in the first two; holes that read as done"
        );
        let heads: Vec<String> = FailureCause::CODES.iter().map(|code| format!(" {code:>8.8}")).collect();
        println!("{:<17}{}   in 2   done", "planted", heads.concat());
        for (planted, code) in FailureCause::CODES.iter().enumerate() {
            let cells: Vec<String> = self.first[planted]
                .iter()
                .map(|count| format!(" {:>8.1}", 100.0 * self.share(planted, *count)))
                .collect();
            let done = 100.0 * (STRIPS - self.asked[planted]) as f64 / STRIPS as f64;
            let in_two = 100.0 * self.share_in_two(planted);
            println!("{code:<17}{} {in_two:>6.1} {done:>6.1}", cells.concat());
        }
    }

    /// Causes that are taken for another one in a tenth of the cases or more.
    fn print_taken_for(&self) {
        for (planted, code) in FailureCause::CODES.iter().enumerate() {
            for (other, taken) in FailureCause::CODES.iter().enumerate() {
                let share = self.share(planted, self.first[planted][other]);
                if other != planted && share >= 0.1 {
                    println!("  {code} is taken for {taken} in {:.0} %", 100.0 * share);
                }
            }
        }
    }
}

#[test]
fn the_planted_cause_is_among_the_first_two() {
    let mut ground = Ground::new(CauseTable::standard());
    let full = Found::of(CAREFUL, |strip| ground.causes(strip).map(|causes| (causes, 0)));
    full.print("All that a careful person takes, a tenth of it missing or wrong");
    full.print_taken_for();
    let before = Found::of(CAREFUL, |strip| ground.causes(&before_checks(strip)).map(|causes| (causes, 0)));
    before.print("Before roll, slots and feet were looked at");
    before.print_taken_for();
    let checked = Found::of(CAREFUL, |strip| ground.by_checks(strip));
    checked.print("After those of these checks that the first two causes ask for");
    println!("  {:.2} checks a hole", checked.checks as f64 / checked.asked.iter().sum::<usize>() as f64);
    let careless = Found::of(0.3, |strip| ground.causes(strip).map(|causes| (causes, 0)));
    careless.print("With three tenths missing or wrong");
    for (planted, code) in FailureCause::CODES.iter().enumerate() {
        assert!(full.share_in_two(planted) >= 0.9, "{code}: {:.3}", full.share_in_two(planted));
    }
    // A hole that cannot be told without its checks says so: they lead there.
    let mean =
        |found: &Found| (0..CAUSES).map(|planted| found.share_in_two(planted)).sum::<f64>() / CAUSES as f64;
    assert!(mean(&checked) > mean(&before) + 0.05, "{:.3} {:.3}", mean(&checked), mean(&before));
}

/// The ranking must not hang on the exact sizes of the table, which are our judgement: with every log odds made up to
/// two fifths smaller or larger, each by its own factor, the planted cause is still found.
#[test]
fn the_ranking_does_not_hang_on_the_sizes_of_the_table() {
    let mut chance = Chance(seed() ^ 0xfeed);
    let mut lowest: f64 = 1.0;
    for _ in 0..20 {
        let table = CauseTable::standard().perturbed(&mut || chance.between(0.6, 1.4));
        let mut ground = Ground::new(&table);
        let mut found = Found::default();
        for planted in 0..CAUSES {
            for strip in strips(planted, 100, CAREFUL) {
                if let Some(causes) = ground.causes(&strip) {
                    found.note(planted, &causes);
                }
            }
        }
        let share = found.in_two.iter().sum::<usize>() as f64 / found.asked.iter().sum::<usize>() as f64;
        lowest = lowest.min(share);
    }
    println!("\nOf 20 tables with other sizes the worst finds {:.1} % among its first two", 100.0 * lowest);
    assert!(lowest >= 0.9, "{lowest:.3}");
}

//! Two to nine phones, whose clocks may be years off, note and delete and take back; files go astray, come twice or late, in any order and through
//! others; phones are lost, restored and copied; some get a newer build, which writes what the others do not know. In the end all have the
//! same, and nothing is gone that was saved.
//!
//! `PITFACE_SEEDS=0..10000 cargo test -p pitface-core --release --test merge_simulation -- --nocapture` runs other seeds.

use crate::merge_world;

use merge_world::{Plan, Tally, run};
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Returns what a plan ends in; a panic is as bad as any other end.
fn outcome(plan: &Plan) -> Result<Tally, String> {
    catch_unwind(AssertUnwindSafe(|| run(plan))).unwrap_or_else(|panic| {
        let text = panic.downcast_ref::<String>().cloned();
        Err(text.or_else(|| panic.downcast_ref::<&str>().map(ToString::to_string)).unwrap_or_default())
    })
}

/// Leaves out of a failing plan whatever can be left out.
fn shrunk(mut plan: Plan) -> Plan {
    let mut size = plan.acts.len() / 2;
    while size > 0 {
        let mut from = 0;
        while from < plan.acts.len() {
            let mut less = plan.clone();
            less.acts.drain(from..(from + size).min(plan.acts.len()));
            if outcome(&less).is_err() { plan = less } else { from += size }
        }
        size /= 2;
    }
    plan
}

fn seeds() -> std::ops::Range<u64> {
    let wanted = std::env::var("PITFACE_SEEDS").unwrap_or_else(|_| "0..500".into());
    let (from, to) = wanted.split_once("..").unwrap();
    from.parse().unwrap()..to.parse().unwrap()
}

#[test]
fn whatever_happens_all_end_alike_and_nothing_is_lost() {
    let seeds = seeds();
    let (mut acts, mut all) = (0, Tally::default());
    for seed in seeds.clone() {
        let plan = Plan::of(seed);
        acts += plan.acts.len();
        match outcome(&plan) {
            Ok(Tally { newer, left_alone, not_shown }) => {
                all.newer += newer;
                all.left_alone += left_alone;
                all.not_shown += not_shown;
            }
            Err(wrong) => {
                let least = shrunk(plan);
                let still = outcome(&least).unwrap_err();
                panic!("seed {seed}: {wrong}\nshrunk: {still}\n{least:?}");
            }
        }
    }
    let enough =
        seeds.end - seeds.start < 100 || (all.newer >= 200 && all.left_alone >= 10 && all.not_shown >= 50);
    assert!(enough, "builds are hardly mixed: {all:?}");
    println!("{} seeds, {acts} acts, {all:?}: all ended alike, nothing lost", seeds.end - seeds.start);
}

/// Plans that failed once, left with what it took, and the seeds they came from.
#[test]
fn what_went_wrong_once_does_not_again() {
    use merge_world::Act::{
        Backup, Clone, Delete, Field, HandOver, HandOverTo, Pit, Rename, Restore, Step, TakeIn, Undo,
    };
    // 322: bundles of one line were written out of their order, and the chain asked for in between.
    let out_of_order = Plan {
        skews_ms: vec![13_206, -473_040_000_000, -42_144],
        acts: vec![
            Field(2),
            Pit(2, 0),
            Step(2, 0, 0),
            HandOverTo(2, 1),
            TakeIn(1, 0),
            Rename(1, 0),
            Field(0),
            HandOver(1),
            Undo(1),
            TakeIn(0, 1),
            HandOver(0),
            Step(1, 0, 0),
            HandOver(1),
            HandOverTo(1, 0),
            TakeIn(2, 1),
        ],
    };
    // 1375: a restored phone has to be told again whom it trusted since the copy was made.
    let trusted_anew = Plan {
        skews_ms: vec![38_827, -473_040_000_000],
        acts: vec![Backup(1), Backup(0), Restore(0, false), Field(0), Restore(1, true)],
    };
    // 2175: a phone and its copy wrote the same into the same cell in the same millisecond.
    let same_instant = Plan {
        skews_ms: vec![-315_360_000_000, -28_291, 0, -22_510, 0, -42_291],
        acts: vec![Field(3), Clone(3), HandOver(3), Undo(3), Rename(6, 0), Delete(6, 0, true)],
    };
    for plan in [out_of_order, trusted_anew, same_instant] {
        outcome(&plan).unwrap();
    }
}

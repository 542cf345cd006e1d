//! Signs that clash: how far layers that can be read stay from it, and that nonsense reaches it.

use pitface_core::reading::{CLASH_DECIBANS, Clue, Evidence, Table, conflict};
use pitface_core::record::Sign;
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};

const LAYERS: usize = 4_000;

struct Draw(TestRng);

impl Draw {
    fn below(&mut self, end: usize) -> usize {
        (self.unit() * end as f64) as usize
    }

    fn unit(&mut self) -> f64 {
        (self.0.next_u64() >> 11) as f64 / (1u64 << 53) as f64
    }

    fn by_weight(&mut self, weights: &[f64]) -> usize {
        let mut left = self.unit() * weights.iter().sum::<f64>();
        weights
            .iter()
            .position(|weight| {
                left -= weight;
                left < 0.0
            })
            .unwrap_or(weights.len() - 1)
    }
}

/// Share of layers whose signs clash, where this share of the answers has nothing to do with the layer.
fn clashing(wrong: f64) -> f64 {
    let mut draw = Draw(TestRng::from_seed(RngAlgorithm::ChaCha, &[13; 32]));
    let table = Table::standard();
    let clash = (0..LAYERS).filter(|_| {
        let kind = draw.by_weight(&table.prior);
        let evidence = Sign::ALL.iter().fold(Evidence::NONE, |known, &sign| {
            let clue = Clue::from(sign);
            let answers = clue.answers().len();
            let answer = if draw.unit() < wrong {
                draw.below(answers)
            } else {
                let weights: Vec<f64> = (0..answers)
                    .map(|answer| {
                        table
                            .chances(clue, answer, None)
                            .map_or_else(|| table.silent(clue, answer, None), |chances| chances[kind])
                    })
                    .collect();
                draw.by_weight(&weights)
            };
            known.with(clue, Some(answer))
        });
        conflict(&evidence, table) >= CLASH_DECIBANS
    });
    clash.count() as f64 / LAYERS as f64
}

#[test]
fn one_layer_in_a_hundred_clashes_by_chance_and_one_in_ten_of_nonsense() {
    println!("{LAYERS} layers, seed 13; share with {CLASH_DECIBANS} decibans of conflict and more");
    let shares = [0.0, 0.1, 0.2, 0.5, 1.0].map(|wrong| (wrong, clashing(wrong)));
    for (wrong, share) in shares {
        println!("{:>4.0} % of the answers wrong: {:>5.1} %", 100.0 * wrong, 100.0 * share);
    }
    assert!(shares[0].1 <= 0.012);
    assert!(shares[1].1 <= 0.025);
    assert!(shares[4].1 >= 0.08);
}

#[test]
fn one_sign_clashes_with_nothing_and_the_order_changes_nothing() {
    let table = Table::standard();
    for &sign in Sign::ALL {
        for answer in 0..sign.answers().len() {
            let one = Evidence::NONE.with(sign.into(), Some(answer));
            assert!(conflict(&one, table).abs() < 1e-9);
        }
    }
    let pairs = [(Clue::Pores, 0), (Clue::Roots, 3), (Clue::Channels, 0)];
    let of = |order: [usize; 3]| {
        let known =
            order.iter().fold(Evidence::NONE, |known, &at| known.with(pairs[at].0, Some(pairs[at].1)));
        conflict(&known, table)
    };
    assert!((of([0, 1, 2]) - of([2, 0, 1])).abs() < 1e-9);
    assert!(of([0, 1, 2]) > 0.0, "many pores and worms against roots that end");
}

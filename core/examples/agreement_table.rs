//! Prints kappas of seeded pairs of readers as CSV, for the checks in `tests/outside`. Columns: number of answers,
//! weights, the first reader's answers parted by blanks, the second's, kappa (empty where there is none).

use pitface_core::advice::agreement::{Weights, kappa};

fn main() {
    let mut seed: u64 = 20_260_402;
    let mut below = move |limit: usize| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as usize % limit
    };
    for _ in 0..150 {
        let answers = 2 + below(4);
        let pairs: Vec<(usize, usize)> = (0..4 + below(40))
            .map(|_| {
                let one = below(answers);
                (one, if below(3) == 0 { below(answers) } else { one })
            })
            .collect();
        let list = |of: fn(&(usize, usize)) -> usize| {
            pairs.iter().map(|pair| of(pair).to_string()).collect::<Vec<_>>().join(" ")
        };
        let (first, second) = (list(|pair| pair.0), list(|pair| pair.1));
        for &weights in Weights::ALL {
            let found = kappa(&pairs, answers, weights).map_or(String::new(), |kappa| kappa.to_string());
            println!("{answers},{},{first},{second},{found}", weights.code());
        }
    }
}

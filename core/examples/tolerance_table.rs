//! How sure it is that the depth at a rank (1 = shallowest) of a number of pits covers a share of the ground, as CSV, for
//! the outside checks.

use pitface_core::advice::confidence;

fn main() {
    println!("pits,rank,share,confidence");
    for pits in 1..=60 {
        for rank in 1..=pits {
            for share in [0.05, 0.2, 0.5, 0.66, 0.8, 0.9, 0.95, 0.99] {
                println!("{pits},{rank},{share},{}", confidence(pits, rank, share));
            }
        }
    }
}

//! Prints intervals and the sequential test as CSV, for the checks in `tests/outside`. Rows begin with their kind:
//! `interval,pits,harmed,confidence,lo,hi`; `bounds,sound share,harmed share,loosened wrongly,left wrongly,lower,upper`;
//! `test,true share,chance left,expected pits`; `gain,pits,harmed,more pits,break-even share,gain`;
//! `still,pits,harmed,area in hectares,pits still expected`. The last three are of the default plan.

use pitface_core::advice::sampling::{Count, Plan};

fn main() {
    for pits in 1..=40 {
        for harmed in 0..=pits {
            for confidence in [0.5, 0.8, 0.95] {
                let share = Count::new(pits, harmed).share(confidence);
                println!("interval,{pits},{harmed},{confidence},{},{}", share.lo, share.hi);
            }
        }
    }
    let plan = Plan::default();
    let Plan { sound_share, harmed_share, loosened_wrongly, left_wrongly, .. } = plan;
    let bounds = plan.bounds();
    println!(
        "bounds,{sound_share},{harmed_share},{loosened_wrongly},{left_wrongly},{},{}",
        bounds.lower, bounds.upper
    );
    for percent in 0..=100 {
        let share = f64::from(percent) / 100.0;
        println!("test,{share},{},{}", plan.chance_left(share), plan.expected_pits(share));
    }
    for pits in 0..6 {
        for harmed in 0..=pits {
            let count = Count::new(pits, harmed);
            for more in 1..8 {
                for worth in [0.3, 0.5] {
                    println!("gain,{pits},{harmed},{more},{worth},{}", count.gain(more, worth));
                }
            }
            for area_ha in [0.5, 2.0, 8.0] {
                println!("still,{pits},{harmed},{area_ha},{}", plan.still_expected(count, area_ha));
            }
        }
    }
}

//! Prints seeded sections dug behind a machine as CSV, for the checks in `tests/outside`. Columns: depths to firm soil
//! parted by blanks, depth wanted, layer's bottom, share loosened, share of the layer broken, ridge (mm).

use pitface_core::advice::machine::{broken_share, measured_ridge_mm, section_share};

fn main() {
    let mut seed: u64 = 20_261_126;
    let mut below = move |limit: u32| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as u32 % limit
    };
    println!("readings_mm,target_mm,bottom_mm,share,broken,ridge_mm");
    println!("{}", row(&[350, 350, 200, 350, 350], 350, 300));
    for _ in 0..400 {
        let readings: Vec<u32> = (0..3 + below(12)).map(|_| 80 + below(420)).collect();
        println!("{}", row(&readings, 200 + below(300), 150 + below(300)));
    }
}

fn row(readings_mm: &[u32], target_mm: u32, bottom_mm: u32) -> String {
    let list = readings_mm.iter().map(u32::to_string).collect::<Vec<_>>().join(" ");
    let shown = |share: Option<f64>| share.map_or(String::new(), |share| share.to_string());
    let share = shown(section_share(readings_mm, target_mm));
    let broken = shown(broken_share(readings_mm, bottom_mm));
    let ridge = shown(measured_ridge_mm(readings_mm).map(f64::from));
    format!("{list},{target_mm},{bottom_mm},{share},{broken},{ridge}")
}

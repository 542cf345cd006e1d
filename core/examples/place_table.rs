//! Prints the area, headland strip and first side of seeded fields as CSV, for the checks in `tests/outside`: corners as
//! `longitude latitude` parted by `;`, areas in square metres, the headland 12 m wide.

use pitface_core::place::{Outline, walk};

fn main() {
    let mut seed: u64 = 20_260_101;
    let mut unit = move || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 11) as f64 / (1_u64 << 53) as f64
    };
    println!("corners,area_m2,headland_m2,first_side_m,first_bearing_deg");
    for _ in 0..200 {
        let (longitude, latitude) = (unit() * 340.0 - 170.0, unit() * 130.0 - 65.0);
        let count = 3 + (unit() * 9.0) as usize;
        let points: Vec<[f64; 2]> = (0..count)
            .map(|at| {
                let angle = at as f64 / count as f64 * std::f64::consts::TAU;
                let radius_m = 80.0 + 300.0 * unit();
                let east = radius_m * angle.cos() / 111_000.0 / latitude.to_radians().cos();
                [longitude + east, latitude + radius_m * angle.sin() / 111_000.0]
            })
            .collect();
        let Ok(outline) = Outline::new(&points) else { continue };
        let way = walk(points[0], points[1]);
        let corners: Vec<String> = points.iter().map(|[east, north]| format!("{east} {north}")).collect();
        println!(
            "{},{},{},{},{}",
            corners.join(";"),
            outline.area_m2(),
            outline.headland_m2(12_000),
            way.distance_m,
            way.bearing_deg
        );
    }
}

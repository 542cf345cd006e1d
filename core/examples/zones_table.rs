//! Prints the ground of each zone of seeded fields as CSV, for the checks in `tests/outside`. Corners are `longitude
//! latitude` parted by `;`, rings and circles (`longitude latitude radius`) by `|`; areas are in square metres, lengths in
//! millimetres.

use pitface_core::place::{FieldMap, Plane};
use pitface_core::record::{Field, Part, PartShape, RecordId, Unknown, Zone};

/// Numbers from 0 to below 1, the same ones in every run.
struct Chance(u64);

impl Chance {
    fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A ring around a place, so many metres across at most.
    fn ring(&mut self, plane: Plane, middle: [f64; 2], reach_m: f64) -> Vec<[f64; 2]> {
        let count = 3 + (self.unit() * 7.0) as usize;
        (0..count)
            .map(|at| {
                let angle = at as f64 / count as f64 * std::f64::consts::TAU;
                let radius_m = reach_m * (0.3 + 0.7 * self.unit());
                plane.place([middle[0] + radius_m * angle.cos(), middle[1] + radius_m * angle.sin()])
            })
            .collect()
    }

    fn spot(&mut self) -> [f64; 2] {
        [self.unit() * 600.0 - 300.0, self.unit() * 600.0 - 300.0]
    }
}

fn main() {
    let mut chance = Chance(20_260_202);
    println!(
        "outline,gateways,patches,headland_mm,tramline_mm,wheel_track_mm,tyre_mm,open,headland,wheelings,gateway,patch"
    );
    for number in 0..200 {
        let plane = Plane::at([chance.unit() * 340.0 - 170.0, chance.unit() * 130.0 - 65.0]);
        let mut field = Field::new(RecordId::new(number, [0; 10]), "seeded");
        field.outline = chance.ring(plane, [0.0, 0.0], 400.0);
        let numbers = [1_000.0, 20_000.0, 1_800.0, 200.0];
        let [headland, tramline, track, tyre] = numbers.map(|least| (least * (1.0 + chance.unit())) as u32);
        field.headland_mm = Some(headland * 10);
        (field.tramline_mm, field.wheel_track_mm, field.tyre_mm) = (Some(tramline), Some(track), Some(tyre));
        let circles: Vec<([f64; 2], f64)> =
            (0..2).map(|_| (plane.place(chance.spot()), 10.0 + 60.0 * chance.unit())).collect();
        let rings: Vec<Vec<[f64; 2]>> = (0..2)
            .map(|_| {
                let middle = chance.spot();
                chance.ring(plane, middle, 150.0)
            })
            .collect();
        let part = |zone, shape| Part { id: field.id, name: None, zone, shape, unknown: Unknown::new() };
        field.parts = circles
            .iter()
            .map(|&(middle, radius_m)| part(Zone::Gateway, PartShape::Circle { middle, radius_m }))
            .chain(rings.iter().map(|ring| part(Zone::Patch, PartShape::Ring(ring.clone()))))
            .collect();
        let map = FieldMap::of(&field);
        if !map.has_outline() {
            continue;
        }
        let corners = |ring: &Vec<[f64; 2]>| {
            let corners: Vec<String> = ring.iter().map(|[east, north]| format!("{east} {north}")).collect();
            corners.join(";")
        };
        let gateways: Vec<String> =
            circles.iter().map(|([east, north], radius_m)| format!("{east} {north} {radius_m}")).collect();
        let patches: Vec<String> = rings.iter().map(corners).collect();
        let areas = [Zone::Open, Zone::Headland, Zone::Wheelings, Zone::Gateway, Zone::Patch]
            .map(|zone| map.area_m2(zone).unwrap_or(0.0).to_string());
        println!(
            "{},{},{},{},{tramline},{track},{tyre},{}",
            corners(&field.outline),
            gateways.join("|"),
            patches.join("|"),
            headland * 10,
            areas.join(",")
        );
    }
}

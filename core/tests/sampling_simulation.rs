//! Virtual fields of known truth: pits and wrong calls of "where next and when to stop" against a fixed W and a grid
//! of ten pits. The default plan was settled on other seeds than these. The table is printed with `cargo test -p pitface-core --test sampling_simulation -- --nocapture`.

use crate::virtual_field;

use pitface_core::advice::sampling::{At, Count, Ground, Next, Plan, ZoneGround, next_pit};
use pitface_core::advice::{CLEARED_SHARE, rank_covering};
use pitface_core::place::Plane;
use pitface_core::record::Zone;
use virtual_field::{Chance, HIGH_M, MIDDLE, VirtualField, WIDE_M, ZONES};

const FIELDS: u64 = 1_500;
const FIRST_SEED: u64 = 20_260_401;

/// What one way of digging came to on one field.
#[derive(Default)]
struct Dug {
    pits: u32,
    counts: [Count; ZONES.len()],
    bottoms: [Vec<u32>; ZONES.len()],
}

impl Dug {
    fn dig(&mut self, field: &VirtualField, zone: usize, at: [f64; 2], chance: &mut Chance) {
        self.pits += 1;
        let seen = field.read(zone, at, chance);
        self.counts[zone] = self.counts[zone].with(seen.is_some());
        self.bottoms[zone].extend(seen);
    }
}

/// Sums over fields.
#[derive(Default)]
struct Totals {
    pits: u32,
    wrong: [u32; ZONES.len()],
    needless_ha: f64,
    missed_ha: f64,
    depth_error_mm: f64,
    depths: u32,
}

impl Totals {
    fn wrong(&self) -> u32 {
        self.wrong.iter().sum()
    }

    /// Holds the calls against the truth.
    fn judge(&mut self, field: &VirtualField, dug: &Dug, calls: [bool; ZONES.len()], worth: f64) {
        self.pits += dug.pits;
        for (zone, &loosen) in calls.iter().enumerate() {
            let truth = &field.truth[zone];
            let worth_it = truth.share > worth;
            self.wrong[zone] += u32::from(loosen != worth_it);
            if loosen {
                self.needless_ha += truth.area_ha * (1.0 - truth.share);
            } else if worth_it {
                self.missed_ha += truth.area_ha * truth.share;
            }
            let mut bottoms = dug.bottoms[zone].clone();
            bottoms.sort_unstable();
            if loosen && worth_it && !bottoms.is_empty() {
                let deepest = bottoms[rank_covering(bottoms.len(), CLEARED_SHARE, 0.8) - 1];
                self.depth_error_mm += f64::from(deepest.abs_diff(truth.bottom_mm));
                self.depths += 1;
            }
        }
    }

    fn row(&self, name: &str) -> String {
        let fields = FIELDS as f64;
        let depth = self.depth_error_mm / f64::from(self.depths.max(1));
        format!(
            "{name:<20} {:>5.2} {:>6} {:>6} {:>9} {:>10} {:>6.1} {:>9.2} {:>8.2}",
            f64::from(self.pits) / fields,
            self.wrong(),
            self.wrong[0],
            self.wrong[1],
            self.wrong[2],
            depth,
            self.needless_ha / fields,
            self.missed_ha / fields,
        )
    }
}

/// Where next and when to stop; the reference pit counts as a pit.
fn sequential(field: &VirtualField, plan: &Plan, chance: &mut Chance) -> (Dug, [bool; ZONES.len()]) {
    let flat = Plane::at(MIDDLE);
    let corner = |[east, north]: [f64; 2]| flat.place([east - WIDE_M / 2.0, north - HIGH_M / 2.0]);
    let mut ground = Ground {
        outline: [[0.0, 0.0], [WIDE_M, 0.0], [WIDE_M, HIGH_M], [0.0, HIGH_M]].map(corner).to_vec(),
        headland_mm: Some(virtual_field::HEADLAND_MM),
        zones: Vec::new(),
        dug: Vec::new(),
        reference_dug: false,
        buried: Vec::new(),
        clearance_m: 0.0,
    };
    let mut dug = Dug::default();
    loop {
        ground.zones = ZONES
            .iter()
            .enumerate()
            .map(|(at, &zone)| ZoneGround {
                zone,
                count: dug.counts[at],
                area_ha: Some(field.truth[at].area_ha),
                rings: Vec::new(),
            })
            .collect();
        match next_pit(&ground, plan).expect("the plan is sound") {
            Next::Stop => break,
            Next::Reference => {
                ground.reference_dug = true;
                ground.dug.push(corner(field.reference(chance)));
                dug.pits += 1;
            }
            Next::Pit { zone, at: At::Place(place), .. } => {
                let zone = ZONES.iter().position(|listed| *listed == zone).expect("a zone of the field");
                let [east, north] = flat.flat(place);
                dug.dig(field, zone, [east + WIDE_M / 2.0, north + HIGH_M / 2.0], chance);
                ground.dug.push(place);
            }
            other @ (Next::Pit { .. } | Next::Behind { .. }) => panic!("{other:?}"),
        }
    }
    let calls = dug.counts.map(|count| count.regret(plan.worth_share).says_loosen());
    (dug, calls)
}

/// Ten pits at places fixed beforehand; a zone that none of them met gets the call of all pits together.
fn fixed(
    field: &VirtualField,
    places: &[[f64; 2]],
    worth: f64,
    chance: &mut Chance,
) -> (Dug, [bool; ZONES.len()]) {
    let mut dug = Dug::default();
    for &at in places {
        dug.dig(field, VirtualField::zone_at(at, chance), at, chance);
    }
    let all = dug
        .counts
        .iter()
        .fold(Count::default(), |sum, count| Count::new(sum.pits + count.pits, sum.harmed + count.harmed));
    let calls = dug.counts.map(|count| {
        let count = if count.pits == 0 { all } else { count };
        f64::from(count.harmed) > worth * f64::from(count.pits)
    });
    (dug, calls)
}

/// Ten places evenly along a W across the field, 5 m inside its edge.
fn w_of_ten() -> Vec<[f64; 2]> {
    let (west, east, south, north) = (5.0, WIDE_M - 5.0, 5.0, HIGH_M - 5.0);
    let side = (east - west) / 4.0;
    (0..10)
        .map(|pit| {
            let along = (f64::from(2 * pit) + 1.0) / 5.0;
            let down = (along % 2.0 - 1.0).abs(); // 1 at the top of the W, 0 at its feet.
            [west + along * side, south + down * (north - south)]
        })
        .collect()
}

/// Five by two places in the middle of equal parts.
fn grid_of_ten() -> Vec<[f64; 2]> {
    (0..10)
        .map(|pit| {
            let (column, row) = (f64::from(pit % 5), f64::from(pit / 5));
            [(2.0 * column + 1.0) / 10.0 * WIDE_M, (2.0 * row + 1.0) / 4.0 * HIGH_M]
        })
        .collect()
}

#[test]
fn where_next_and_when_to_stop_needs_fewer_pits_for_no_more_wrong_calls() {
    let plan = Plan::default();
    let (w, grid) = (w_of_ten(), grid_of_ten());
    let (mut ours, mut by_w, mut by_grid) = (Totals::default(), Totals::default(), Totals::default());
    for seed in 0..FIELDS {
        let mut chance = Chance::new(FIRST_SEED + seed);
        let field = VirtualField::new(&mut chance);
        let (dug, calls) = sequential(&field, &plan, &mut chance);
        ours.judge(&field, &dug, calls, plan.worth_share);
        for (places, totals) in [(&w, &mut by_w), (&grid, &mut by_grid)] {
            let (dug, calls) = fixed(&field, places, plan.worth_share, &mut chance);
            totals.judge(&field, &dug, calls, plan.worth_share);
        }
    }
    println!("{FIELDS} fields, seeds from {FIRST_SEED}; calls of {} zones a field", ZONES.len());
    println!("                      pits wrong calls                         depth  needless  missed");
    println!("                      each    all   open  headland  wheelings     mm   ha each ha each");
    println!("{}", ours.row("where next and stop"));
    println!("{}", by_w.row("W of ten"));
    println!("{}", by_grid.row("grid of ten"));
    for fixed in [&by_w, &by_grid] {
        assert!(ours.wrong() <= fixed.wrong());
        assert!(f64::from(ours.pits) <= 0.6 * f64::from(fixed.pits));
    }
    assert_eq!(ZONES[0], Zone::Open);
}

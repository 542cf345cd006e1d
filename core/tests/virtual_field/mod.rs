//! A field of known truth: a compacted layer in round patches over open ground, a headland and wheelings that are
//! harmed more often, each patch with a depth of its own. All figures are invented for the simulation.

use pitface_core::record::Zone;

pub const WIDE_M: f64 = 400.0;
pub const HIGH_M: f64 = 250.0;
/// Invented ground in open water.
pub const MIDDLE: [f64; 2] = [2.5, 54.5];
pub const HEADLAND_MM: u32 = 18_000;
pub const ZONES: [Zone; 3] = [Zone::Open, Zone::Headland, Zone::Wheelings];
/// Share of the ground inside the headland that lies under wheels.
const WHEELED: f64 = 0.06;
/// Chance that a pit is read the other way than it is.
const MISREAD: f64 = 0.05;
/// Spread of a bottom as read.
const READ_OFF_MM: f64 = 15.0;

/// A seeded source of chance (splitmix64).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15))
    }

    /// Evenly from 0 to 1.
    pub fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, lo: f64, hi: f64) -> f64 {
        lo + (hi - lo) * self.unit()
    }

    /// About normal, around 0.
    fn off(&mut self, spread: f64) -> f64 {
        ((0..12).map(|_| self.unit()).sum::<f64>() - 6.0) * spread
    }
}

struct Patch {
    middle: [f64; 2],
    radius_m: f64,
    deeper_mm: f64,
}

/// What is true of a zone.
pub struct Truth {
    pub area_ha: f64,
    /// Share harmed.
    pub share: f64,
    /// Depth that clears 4 of 5 harmed places.
    pub bottom_mm: u32,
}

pub struct VirtualField {
    /// Harmed patches of each zone.
    patches: [Vec<Patch>; ZONES.len()],
    base_mm: [f64; ZONES.len()],
    pub truth: [Truth; ZONES.len()],
}

impl VirtualField {
    pub fn new(chance: &mut Chance) -> Self {
        // Most open ground is sound or has some patches; headlands and wheelings are harmed more often.
        let wanted =
            [aim(chance, [0.5, 0.25, 0.25]), aim(chance, [0.25, 0.25, 0.5]), aim(chance, [0.25, 0.2, 0.55])];
        let base = chance.between(220.0, 330.0);
        let base_mm = [base, base + chance.between(0.0, 60.0), base + chance.between(0.0, 80.0)];
        let patches = wanted.map(|share| grow(share, chance));
        let mut field = Self {
            patches,
            base_mm,
            truth: std::array::from_fn(|_| Truth { area_ha: 0.0, share: 0.0, bottom_mm: 0 }),
        };
        field.truth = std::array::from_fn(|zone| field.measure(zone));
        field
    }

    /// Goes over the zone in steps of 5 m.
    fn measure(&self, zone: usize) -> Truth {
        let mut places = 0_u32;
        let mut bottoms = Vec::new();
        for column in 0..(WIDE_M / 5.0) as u32 {
            for row in 0..(HIGH_M / 5.0) as u32 {
                let at = [column, row].map(|index| f64::from(index) * 5.0 + 2.5);
                if in_headland(at) == (ZONES[zone] == Zone::Headland) {
                    places += 1;
                    bottoms.extend(self.bottom_mm(zone, at));
                }
            }
        }
        bottoms.sort_unstable();
        let part = match ZONES[zone] {
            Zone::Headland => 1.0,
            Zone::Wheelings => WHEELED,
            _ => 1.0 - WHEELED,
        };
        Truth {
            area_ha: f64::from(places) * 25.0 / 10_000.0 * part,
            share: bottoms.len() as f64 / f64::from(places),
            bottom_mm: bottoms.get(bottoms.len() * 4 / 5).copied().unwrap_or(0),
        }
    }

    /// Bottom of the harmed layer at a place; `None` where it is sound.
    fn bottom_mm(&self, zone: usize, [east, north]: [f64; 2]) -> Option<u32> {
        self.patches[zone]
            .iter()
            .filter(|patch| (east - patch.middle[0]).hypot(north - patch.middle[1]) < patch.radius_m)
            .map(|patch| (self.base_mm[zone] + patch.deeper_mm) as u32)
            .max()
    }

    /// Returns what a pit shows: the layer's bottom as read, `None` = no harmed layer.
    pub fn read(&self, zone: usize, at: [f64; 2], chance: &mut Chance) -> Option<u32> {
        let (bottom_mm, off_mm) = (self.bottom_mm(zone, at), chance.off(READ_OFF_MM));
        if chance.unit() < MISREAD {
            return bottom_mm.is_none().then_some((self.base_mm[zone] + off_mm) as u32);
        }
        bottom_mm.map(|bottom_mm| (f64::from(bottom_mm) + off_mm) as u32)
    }

    /// The zone a pit falls into when nobody looks for one; wheelings by their share of the ground.
    pub fn zone_at(at: [f64; 2], chance: &mut Chance) -> usize {
        let wheeled = chance.unit() < WHEELED;
        match (in_headland(at), wheeled) {
            (true, _) => 1,
            (false, true) => 2,
            (false, false) => 0,
        }
    }

    /// A place that looks good: of some open ones a sound one, if there is one.
    pub fn reference(&self, chance: &mut Chance) -> [f64; 2] {
        let places: [[f64; 2]; 8] = std::array::from_fn(|_| {
            [chance.between(40.0, WIDE_M - 40.0), chance.between(40.0, HIGH_M - 40.0)]
        });
        places.into_iter().find(|&at| self.bottom_mm(0, at).is_none()).unwrap_or(places[0])
    }
}

/// The share to be harmed: little, patchy or widespread, with these chances.
fn aim(chance: &mut Chance, [little, patchy, _]: [f64; 3]) -> f64 {
    let kind = chance.unit();
    if kind < little {
        chance.between(0.0, 0.12)
    } else if kind < little + patchy {
        chance.between(0.12, 0.6)
    } else {
        chance.between(0.6, 0.98)
    }
}

/// Patches until about this share of the field is covered.
fn grow(share: f64, chance: &mut Chance) -> Vec<Patch> {
    let mut patches = Vec::new();
    let mut sound = 1.0;
    while 1.0 - sound < share && patches.len() < 400 {
        let radius_m = chance.between(12.0, 60.0);
        patches.push(Patch {
            middle: [chance.between(0.0, WIDE_M), chance.between(0.0, HIGH_M)],
            radius_m,
            deeper_mm: chance.off(25.0),
        });
        sound *= 1.0 - std::f64::consts::PI * radius_m * radius_m / (WIDE_M * HIGH_M);
    }
    patches
}

fn in_headland([east, north]: [f64; 2]) -> bool {
    let edge_m = east.min(WIDE_M - east).min(north).min(HIGH_M - north);
    edge_m < f64::from(HEADLAND_MM) / 1000.0
}

//! Draught of one narrow plain tine after `McKyes` and Ali 1977 (Journal of Terramechanics 14:43-58; formulas from
//! memory). It needs cohesion and friction, which nobody has who walks with a spade: for those who measured them.

use crate::error::Fault;
use std::ops::RangeInclusive;

/// Soil and tine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NarrowTine {
    /// Width of the tine, mm.
    pub width_mm: u32,
    /// Tip depth, mm.
    pub tip_mm: u32,
    /// Rake angle against the level, degrees.
    pub rake_degrees: f64,
    /// Friction of soil on the tine, degrees.
    pub soil_metal_degrees: f64,
    /// Internal friction of the soil, degrees.
    pub friction_degrees: f64,
    /// Cohesion of the soil, kPa.
    pub cohesion_kpa: f64,
    /// Unit weight of the soil, kN/m³.
    pub unit_weight_kn_m3: f64,
    /// Load on the surface, kPa.
    pub surcharge_kpa: f64,
}

/// What the method gives.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct TineForce {
    /// Angle of the failure plane against the level, degrees.
    pub failure_plane_degrees: f64,
    /// Factor of the soil's weight.
    pub n_gamma: f64,
    /// Factor of its cohesion.
    pub n_cohesion: f64,
    /// Factor of the load on its surface.
    pub n_surcharge: f64,
    /// Force on the tine, kN.
    pub force_kn: f64,
    /// Its part along the way, kN; adhesion left out.
    pub draught_kn: f64,
}

/// Ranges in which the method is used here. Our judgement.
const FITS: [(&str, RangeInclusive<f64>); 6] = [
    ("rake_degrees", 15.0..=90.0),
    ("soil_metal_degrees", 0.0..=35.0),
    ("friction_degrees", 0.0..=45.0),
    ("cohesion_kpa", 0.0..=200.0),
    ("unit_weight_kn_m3", 8.0..=25.0),
    ("surcharge_kpa", 0.0..=100.0),
];

impl NarrowTine {
    /// The force by the method.
    ///
    /// # Errors
    /// Each value out of its range.
    pub fn force(&self) -> Result<TineForce, Vec<Fault>> {
        let faults = self.faults();
        if !faults.is_empty() {
            return Err(faults);
        }
        // The failure plane is the one that takes least weight along. Steps of a hundredth of a degree are far finer
        // than the method.
        let planes = (500..8_500).map(|hundredth| f64::from(hundredth) / 100.0);
        let lightest = planes
            .filter_map(|plane| Some((plane, self.factors(plane)?)))
            .min_by(|(_, one), (_, other)| one[0].total_cmp(&other[0]));
        let Some((failure_plane_degrees, [n_gamma, n_cohesion, n_surcharge])) = lightest else {
            let wrong = "no failure plane carries the soil with these angles";
            return Err(vec![Fault::new("rake_degrees", wrong, "give smaller angles")]);
        };
        let [width, depth] = [self.width_mm, self.tip_mm].map(|mm| f64::from(mm) / 1000.0);
        let force_kn = width
            * (self.unit_weight_kn_m3 * depth * depth * n_gamma
                + self.cohesion_kpa * depth * n_cohesion
                + self.surcharge_kpa * depth * n_surcharge);
        let draught_kn = force_kn * (self.rake_degrees + self.soil_metal_degrees).to_radians().sin();
        Ok(TineForce { failure_plane_degrees, n_gamma, n_cohesion, n_surcharge, force_kn, draught_kn })
    }

    /// Factors of weight, cohesion and surcharge for a failure plane; `None` where it carries nothing.
    fn factors(&self, plane_degrees: f64) -> Option<[f64; 3]> {
        let cot = |degrees: f64| 1.0 / degrees.to_radians().tan();
        let (cot_rake, cot_plane) = (cot(self.rake_degrees), cot(plane_degrees));
        let cot_lower = cot(plane_degrees + self.friction_degrees);
        let den = cot(self.rake_degrees + self.soil_metal_degrees) + cot_lower;
        let width_per_depth = f64::from(self.width_mm) / f64::from(self.tip_mm);
        let reach = cot_rake + cot_plane;
        let side = (cot_plane * cot_plane + 2.0 * cot_rake * cot_plane).sqrt() / width_per_depth;
        (den > 1e-6).then(|| {
            [
                reach / 2.0 * (1.0 + 2.0 * side / 3.0) / den,
                (1.0 + cot_plane * cot_lower) * (1.0 + side) / den,
                reach * (1.0 + side) / den,
            ]
        })
    }

    fn faults(&self) -> Vec<Fault> {
        let values = [
            self.rake_degrees,
            self.soil_metal_degrees,
            self.friction_degrees,
            self.cohesion_kpa,
            self.unit_weight_kn_m3,
            self.surcharge_kpa,
        ];
        let outside = FITS.iter().zip(values).filter(|((_, fits), value)| !fits.contains(value));
        let mut faults: Vec<Fault> = outside
            .map(|((at, fits), value)| {
                let todo = format!("give {} to {}", fits.start(), fits.end());
                Fault::new(*at, format!("{value} is outside the method"), todo)
            })
            .collect();
        for (at, mm) in [("width_mm", self.width_mm), ("tip_mm", self.tip_mm)] {
            if mm == 0 {
                faults.push(Fault::new(at, "is 0", "give a length above 0"));
            }
        }
        faults
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TRIAL: NarrowTine = NarrowTine {
        width_mm: 75,
        tip_mm: 300,
        rake_degrees: 45.0,
        soil_metal_degrees: 20.0,
        friction_degrees: 30.0,
        cohesion_kpa: 10.0,
        unit_weight_kn_m3: 15.0,
        surcharge_kpa: 0.0,
    };

    /// Worked through by hand from the same formulas: guards the code, does not prove the method.
    #[test]
    fn the_trial_comes_out_as_worked_by_hand() {
        let force = TRIAL.force().unwrap();
        assert!((force.failure_plane_degrees - 56.8).abs() < 0.1);
        assert!((force.n_gamma - 7.15).abs() < 0.01);
        assert!((force.n_cohesion - 12.4).abs() < 0.1);
        assert!((force.force_kn - 3.5).abs() < 0.05 && (force.draught_kn - 3.2).abs() < 0.05);
    }

    #[test]
    fn deeper_wider_and_stickier_pull_harder() {
        let pull = |tine: NarrowTine| tine.force().unwrap().draught_kn;
        let trial = pull(TRIAL);
        assert!(pull(NarrowTine { tip_mm: 350, ..TRIAL }) > trial);
        assert!(pull(NarrowTine { width_mm: 100, ..TRIAL }) > trial);
        assert!(pull(NarrowTine { cohesion_kpa: 20.0, ..TRIAL }) > trial);
        assert!(pull(NarrowTine { surcharge_kpa: 5.0, ..TRIAL }) > trial);
    }

    #[test]
    fn values_outside_the_method_are_each_told() {
        let faults =
            NarrowTine { rake_degrees: f64::NAN, friction_degrees: 60.0, tip_mm: 0, ..TRIAL }.force();
        let places: Vec<String> = faults.unwrap_err().into_iter().map(|fault| fault.at).collect();
        assert_eq!(places, ["rake_degrees", "friction_degrees", "tip_mm"]);
    }
}

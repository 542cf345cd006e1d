//! The ground a row of tines loosens, as a drawing on paper: flat bottom, straight sides, no help from one tine to
//! the next. Ours, not published; how steep the sides are is known to a range only, and so is what is loosened. It holds only above critical depth, which is for the caller to see to ([`super::set`] does).

/// Slope of the sides against the level, degrees, as the range it is known to.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct SideSlope {
    /// Flattest: most is loosened.
    pub flat: f64,
    /// Steepest: least is.
    pub steep: f64,
}

impl SideSlope {
    /// A slope that was measured.
    pub const fn known(degrees: f64) -> Self {
        Self { flat: degrees, steep: degrees }
    }
}

/// What tines loosen over the range of their sides' slope.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct LoosenedRange {
    /// With the steepest sides.
    pub least: Loosened,
    /// With the flattest.
    pub most: Loosened,
}

/// Tines of one width at one depth and spacing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tines {
    /// Width of the bottom: over the wings, else of the foot.
    pub lifting_width_mm: u32,
    /// Tip depth.
    pub tip_mm: u32,
    /// Distance from tine to tine.
    pub spacing_mm: u32,
    /// Slope of the sides against the level, degrees, between 0 and 90.
    pub slope_degrees: f64,
}

/// What they loosen.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Loosened {
    /// Height of the ridge left between two tines, above tip depth; not above the surface.
    pub ridge_mm: u32,
    /// Whether the loosened ground of neighbours meets below the surface.
    pub meets: bool,
    /// Share of the ground down to tip depth that is loosened, 0 to 1.
    pub share: f64,
    /// Section loosened by a tine on its own, square metres.
    pub single_area_m2: f64,
    /// Width loosened at the surface by a tine on its own.
    pub surface_width_mm: u32,
}

impl Tines {
    fn cot(&self) -> f64 {
        1.0 / self.slope_degrees.to_radians().tan()
    }

    fn b(&self) -> f64 {
        self.lifting_width_mm.into()
    }

    fn d(&self) -> f64 {
        self.tip_mm.into()
    }

    /// Height at which the sides of neighbours meet above tip depth, mm; may lie above the surface.
    fn peak(&self) -> f64 {
        (f64::from(self.spacing_mm) - self.b()).max(0.0) / (2.0 * self.cot())
    }

    /// Returns what they loosen.
    pub fn loosened(&self) -> Loosened {
        let (b, d, cot, peak) = (self.b(), self.d(), self.cot(), self.peak());
        let spacing = f64::from(self.spacing_mm).max(1.0);
        let meets = peak < d;
        let share = if meets {
            // A ridge is a triangle as wide as the gap between two feet.
            1.0 - peak * peak * cot / (spacing * d)
        } else {
            (b + d * cot) / spacing
        };
        Loosened {
            ridge_mm: peak.min(d).round() as u32,
            meets,
            share: share.clamp(0.0, 1.0),
            single_area_m2: d * (b + d * cot) / 1e6,
            surface_width_mm: (b + 2.0 * d * cot).round() as u32,
        }
    }

    /// The widest spacing at which the ground at this depth is loosened over the full width; `None` at or below the
    /// tip, where it never is.
    pub fn widest_spacing_mm(&self, at_mm: u32) -> Option<u32> {
        let above_tip = f64::from(self.tip_mm.checked_sub(at_mm).filter(|above| *above > 0)?);
        // A hair is allowed for, since the cotangent of 45° falls short of 1.
        Some((self.b() + 2.0 * above_tip * self.cot() + 1e-6).floor() as u32)
    }

    /// The shallowest tip at which the ground at this depth is loosened over the full width, with these tines.
    pub fn shallowest_tip_mm(&self, at_mm: u32) -> u32 {
        at_mm.saturating_add(((self.peak() - 1e-6).ceil() as u32).max(1))
    }

    /// The narrowest wings (or foot) with which the ground at this depth is loosened over the full width; `None` at or
    /// below the tip.
    pub fn narrowest_lifting_width_mm(&self, at_mm: u32) -> Option<u32> {
        let above_tip = f64::from(self.tip_mm.checked_sub(at_mm).filter(|above| *above > 0)?);
        Some((f64::from(self.spacing_mm) - 2.0 * above_tip * self.cot() - 1e-6).ceil().max(0.0) as u32)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tines() -> impl Strategy<Value = Tines> {
        (10u32..800, 60u32..1_000, 100u32..2_000, 20.0f64..80.0).prop_map(
            |(lifting_width_mm, tip_mm, spacing_mm, slope_degrees)| Tines {
                lifting_width_mm,
                tip_mm,
                spacing_mm,
                slope_degrees,
            },
        )
    }

    fn full_width(tines: &Tines, at_mm: u32) -> bool {
        tines.widest_spacing_mm(at_mm).is_some_and(|widest_mm| tines.spacing_mm <= widest_mm)
    }

    proptest! {
        #[test]
        fn a_share_is_a_share(tines in tines()) {
            prop_assert!((0.0..=1.0).contains(&tines.loosened().share));
        }

        #[test]
        fn deeper_never_loosens_less(tines in tines(), deeper in 1u32..200) {
            let lower = Tines { tip_mm: tines.tip_mm + deeper, ..tines };
            let area = |tines: &Tines| tines.loosened().share * f64::from(tines.spacing_mm * tines.tip_mm);
            prop_assert!(lower.loosened().single_area_m2 > tines.loosened().single_area_m2);
            prop_assert!(area(&lower) >= area(&tines) - 1e-6);
        }

        #[test]
        fn wider_spacing_never_loosens_more(tines in tines(), wider in 1u32..500) {
            let apart = Tines { spacing_mm: tines.spacing_mm + wider, ..tines };
            prop_assert!(apart.loosened().share <= tines.loosened().share + 1e-12);
            prop_assert!(apart.loosened().ridge_mm >= tines.loosened().ridge_mm);
        }

        /// The share against the same figure summed in thin slices.
        #[test]
        fn the_share_is_that_of_the_figure(tines in tines()) {
            let slices = 4_000;
            let width = |slice: i32| {
                let above = (f64::from(slice) + 0.5) / f64::from(slices) * f64::from(tines.tip_mm);
                let width = f64::from(tines.lifting_width_mm)
                    + 2.0 * above / tines.slope_degrees.to_radians().tan();
                width.min(tines.spacing_mm.into())
            };
            let mean: f64 = (0..slices).map(width).sum::<f64>() / f64::from(slices);
            prop_assert!((mean / f64::from(tines.spacing_mm) - tines.loosened().share).abs() < 1e-3);
        }

        #[test]
        fn spacing_tip_and_wings_asked_for_are_the_least_that_break_a_depth(tines in tines(), above in 1u32..60) {
            let at_mm = tines.tip_mm - above;
            let spaced = |spacing_mm| full_width(&Tines { spacing_mm, ..tines }, at_mm);
            let widest_mm = tines.widest_spacing_mm(at_mm).unwrap();
            prop_assert!(spaced(widest_mm) && !spaced(widest_mm + 1));
            let deep = |tip_mm| full_width(&Tines { tip_mm, ..tines }, at_mm);
            let tip_mm = tines.shallowest_tip_mm(at_mm);
            prop_assert!(deep(tip_mm) && !deep(tip_mm - 1));
            let wide = |lifting_width_mm| full_width(&Tines { lifting_width_mm, ..tines }, at_mm);
            let narrowest_mm = tines.narrowest_lifting_width_mm(at_mm).unwrap();
            prop_assert!(wide(narrowest_mm) && !narrowest_mm.checked_sub(1).is_some_and(wide));
        }

        #[test]
        fn nothing_at_or_below_the_tip_is_broken(tines in tines(), below in 0u32..300) {
            prop_assert_eq!(tines.widest_spacing_mm(tines.tip_mm + below), None);
            prop_assert_eq!(tines.narrowest_lifting_width_mm(tines.tip_mm + below), None);
        }
    }
}

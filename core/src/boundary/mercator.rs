//! Map grids undone: from metres to degrees.

/// Half the longer axis of WGS 84 and GRS 80, metres, and their flattenings (EPSG ellipsoids 7030 and 7019).
const AXIS_M: f64 = 6_378_137.0;
/// Flattening of WGS 84.
pub const WGS_84: f64 = 1.0 / 298.257_223_563;
/// Flattening of GRS 80.
pub const GRS_80: f64 = 1.0 / 298.257_222_101;
/// As many steps bring a latitude to the last digit; each takes off two digits and more.
const STEPS: usize = 10;

/// A transverse Mercator grid on an ellipsoid with the longer axis of WGS 84.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TransverseMercator {
    /// Flattening of the ellipsoid.
    pub flattening: f64,
    /// Longitude of the middle.
    pub middle_deg: f64,
    /// Latitude of the origin.
    pub origin_deg: f64,
    /// Scale along the middle.
    pub scale: f64,
    /// Easting of the origin, metres.
    pub false_easting_m: f64,
    /// Northing of the origin, metres.
    pub false_northing_m: f64,
    /// Length of the file's unit.
    pub metres_a_unit: f64,
}

impl TransverseMercator {
    /// `[longitude, latitude]` in degrees of a place of the grid; `None` where the grid does not reach (3 000 km from its middle and
    /// more). By the series of Krüger (1912) to the fourth order, as Karney (2011, J. Geod. 85, eqs 11, 35 and 36) gives them:
    /// exact to a thousandth of a millimetre there.
    pub fn undone(&self, [easting, northing]: [f64; 2]) -> Option<[f64; 2]> {
        let n = self.flattening / (2.0 - self.flattening);
        let [n2, n3, n4] = [n * n, n.powi(3), n.powi(4)];
        let radius_m = AXIS_M / (1.0 + n) * (1.0 + n2 / 4.0 + n4 / 64.0) * self.scale;
        let back = [
            n / 2.0 - 2.0 * n2 / 3.0 + 37.0 * n3 / 96.0 - n4 / 360.0,
            n2 / 48.0 + n3 / 15.0 - 437.0 * n4 / 1440.0,
            17.0 * n3 / 480.0 - 37.0 * n4 / 840.0,
            4397.0 * n4 / 161_280.0,
        ];
        let east = (easting * self.metres_a_unit - self.false_easting_m) / radius_m;
        let north = (northing * self.metres_a_unit - self.false_northing_m) / radius_m + self.origin(n);
        if !(east.abs() < 0.5 && north.abs() < std::f64::consts::FRAC_PI_2) {
            return None;
        }
        let (mut upright, mut across) = (north, east);
        for (term, factor) in (1..).zip(back) {
            let times = 2.0 * f64::from(term);
            upright -= factor * (times * north).sin() * (times * east).cosh();
            across -= factor * (times * north).cos() * (times * east).sinh();
        }
        let conformal = (upright.sin() / across.cosh()).asin();
        let longitude = self.middle_deg + across.sinh().atan2(upright.cos()).to_degrees();
        let longitude = longitude - (longitude / 360.0).round() * 360.0;
        Some([longitude, self.latitude(conformal).to_degrees()])
    }

    /// The geographic latitude of a conformal one, radians.
    fn latitude(&self, conformal: f64) -> f64 {
        let eccentricity = (self.flattening * (2.0 - self.flattening)).sqrt();
        let isometric = conformal.tan().asinh();
        let mut sine = conformal.sin();
        for _ in 0..STEPS {
            sine = (isometric + eccentricity * (eccentricity * sine).atanh()).tanh();
        }
        sine.asin()
    }

    /// How far the grid's origin lies from the equator along its middle, in radii of the grid.
    fn origin(&self, n: f64) -> f64 {
        if self.origin_deg == 0.0 {
            return 0.0;
        }
        let [n2, n3, n4] = [n * n, n.powi(3), n.powi(4)];
        let forth = [
            n / 2.0 - 2.0 * n2 / 3.0 + 5.0 * n3 / 16.0 + 41.0 * n4 / 180.0,
            13.0 * n2 / 48.0 - 3.0 * n3 / 5.0 + 557.0 * n4 / 1440.0,
            61.0 * n3 / 240.0 - 103.0 * n4 / 140.0,
            49_561.0 * n4 / 161_280.0,
        ];
        let eccentricity = (self.flattening * (2.0 - self.flattening)).sqrt();
        let sine = self.origin_deg.to_radians().sin();
        let conformal = (sine.atanh() - eccentricity * (eccentricity * sine).atanh()).sinh().atan();
        let terms = (1..).zip(forth).map(|(term, factor)| factor * (2.0 * f64::from(term) * conformal).sin());
        conformal + terms.sum::<f64>()
    }
}

/// `[longitude, latitude]` in degrees of a place of web Mercator, which takes the earth for a sphere (EPSG method 1024); `None`
/// beyond its edge.
pub fn web_mercator([x, y]: [f64; 2]) -> Option<[f64; 2]> {
    let (east, north) = (x / AXIS_M, y / AXIS_M);
    let inside = east.abs() <= std::f64::consts::PI + 1e-9 && north.abs() <= std::f64::consts::PI + 1e-9;
    inside.then(|| [east.to_degrees().clamp(-180.0, 180.0), north.sinh().atan().to_degrees()])
}

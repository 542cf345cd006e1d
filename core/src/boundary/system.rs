//! The systems in which files have coordinates, and how each becomes WGS 84.

use super::mercator::{GRS_80, TransverseMercator, WGS_84, web_mercator};
use crate::error::Fault;

/// What to do where latitude may stand first.
pub(super) const SWAPPED: &str = "latitude may stand before longitude: take them swapped";
/// The system that is asked for where another one is not read; stands in what is to be done then.
pub(super) const WANTED: &str = "EPSG:4326";

/// Metres of a map grid whose sheets are believed to lie on WGS 84 or ETRS89.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Metres {
    /// Transverse Mercator, UTM among it, on an ellipsoid with this flattening.
    Transverse(TransverseMercator),
    /// Web Mercator (EPSG:3857).
    Web,
}

/// A system of coordinates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum System {
    /// Degrees on WGS 84.
    Wgs84,
    /// Degrees on ETRS89, taken as WGS 84: less than a metre apart in Europe in these years (EUREF; value from memory).
    Etrs89,
    /// Metres on WGS 84.
    Metres(Metres),
    /// Metres on ETRS89, taken as WGS 84.
    EtrsMetres(Metres),
}

/// Codes of the EPSG register (value from memory, checked by tests/outside with PROJ).
const WGS_84_CODES: [u32; 2] = [4326, 4979];
const ETRS_89_CODES: [u32; 2] = [4258, 4937];
const WEB_CODES: [u32; 3] = [3857, 900_913, 3785];
/// UTM zones by hundreds: north and south on WGS 84, north on ETRS89.
const UTM_NORTH: std::ops::RangeInclusive<u32> = 32_601..=32_660;
const UTM_SOUTH: std::ops::RangeInclusive<u32> = 32_701..=32_760;
const UTM_ETRS_89: std::ops::RangeInclusive<u32> = 25_828..=25_838;
/// UTM on ETRS89 with the zone's digits before the easting: code and zone.
const UTM_WITH_DIGITS: [(u32, u32); 2] = [(4647, 32), (5650, 33)];
/// False easting and northing of UTM, metres, and its scale.
const FALSE_EASTING_M: f64 = 500_000.0;
const FALSE_NORTHING_M: f64 = 10_000_000.0;
const UTM_SCALE: f64 = 0.9996;

impl System {
    /// The system of a code of the EPSG register; `None` of one that is not read here.
    pub fn of_epsg(code: u32) -> Option<Self> {
        Some(match code {
            _ if WGS_84_CODES.contains(&code) => Self::Wgs84,
            _ if ETRS_89_CODES.contains(&code) => Self::Etrs89,
            _ if WEB_CODES.contains(&code) => Self::Metres(Metres::Web),
            _ if UTM_NORTH.contains(&code) => Self::Metres(utm(code - UTM_NORTH.start() + 1, 0.0, WGS_84)),
            _ if UTM_SOUTH.contains(&code) => {
                Self::Metres(utm(code - UTM_SOUTH.start() + 1, FALSE_NORTHING_M, WGS_84))
            }
            _ if UTM_ETRS_89.contains(&code) => {
                Self::EtrsMetres(utm(code - UTM_ETRS_89.start() + 28, 0.0, GRS_80))
            }
            _ => {
                let (_, zone) = UTM_WITH_DIGITS.iter().find(|(its, _)| *its == code)?;
                let Metres::Transverse(utm) = utm(*zone, 0.0, GRS_80) else { return None };
                let false_easting_m = f64::from(*zone) * 1_000_000.0 + FALSE_EASTING_M;
                Self::EtrsMetres(Metres::Transverse(TransverseMercator { false_easting_m, ..utm }))
            }
        })
    }

    /// Returns whether it is on ETRS89, which is taken as WGS 84.
    pub fn is_etrs(self) -> bool {
        matches!(self, Self::Etrs89 | Self::EtrsMetres(_))
    }

    /// Returns whether its coordinates are metres of a map grid.
    pub fn is_metres(self) -> bool {
        matches!(self, Self::Metres(_) | Self::EtrsMetres(_))
    }

    /// `[longitude, latitude]` of a place of the file; `stated` where the file named the system.
    pub(super) fn placed(self, place: [f64; 2], stated: bool, at: &str) -> Result<[f64; 2], Fault> {
        if !place.iter().all(|number| number.is_finite()) {
            return Err(Fault::new(at, "a coordinate is no number", "save the file anew"));
        }
        let placed = match self {
            Self::Wgs84 | Self::Etrs89 => Some(place),
            Self::Metres(Metres::Web) | Self::EtrsMetres(Metres::Web) => web_mercator(place),
            Self::Metres(Metres::Transverse(grid)) | Self::EtrsMetres(Metres::Transverse(grid)) => {
                grid.undone(place)
            }
        };
        match placed {
            Some([longitude, latitude]) if longitude.abs() <= 180.0 && latitude.abs() <= 90.0 => {
                Ok([longitude, latitude])
            }
            _ => Err(self.off_the_globe(place, stated, at)),
        }
    }

    fn off_the_globe(self, [x, y]: [f64; 2], stated: bool, at: &str) -> Fault {
        if self.is_metres() {
            let wrong = format!("[{x}, {y}] lies outside the map grid that the file names");
            return Fault::new(at, wrong, "save it from the other program in WGS 84 (EPSG:4326)");
        }
        let wrong = format!("[{x}, {y}] is not on the globe");
        if x.abs() <= 90.0 && y.abs() <= 180.0 {
            return Fault::new(at, wrong, SWAPPED);
        }
        let guess = grids(x, y);
        let said = if stated { "degrees belong here, but " } else { "" };
        let todo = "save it from the other program in WGS 84 (EPSG:4326)";
        Fault::new(at, wrong, format!("{said}these look like {guess}: {todo}"))
    }
}

fn utm(zone: u32, false_northing_m: f64, flattening: f64) -> Metres {
    Metres::Transverse(TransverseMercator {
        flattening,
        middle_deg: f64::from(zone) * 6.0 - 183.0,
        origin_deg: 0.0,
        scale: UTM_SCALE,
        false_easting_m: FALSE_EASTING_M,
        false_northing_m,
        metres_a_unit: 1.0,
    })
}

/// Returns what numbers that are no degrees may be. Ranges from the definitions of the grids (UTM: 166 to 834 km east of its false
/// origin, up to 9 400 km north; value from memory).
fn grids(x: f64, y: f64) -> String {
    let within = |number: f64, lo: f64, hi: f64| (lo..=hi).contains(&number);
    let north = within(y, 0.0, 10_000_000.0);
    let digits = (x / 1_000_000.0).trunc();
    let rest = x - digits * 1_000_000.0;
    if north && within(x, 160_000.0, 840_000.0) {
        "metres of a map grid such as UTM, whose zone cannot be told from them".into()
    } else if north && within(digits, 1.0, 60.0) && within(rest, 160_000.0, 840_000.0) && digits >= 6.0 {
        format!("metres of UTM zone {digits} with the zone's digits in front")
    } else if within(x.abs(), 180.0, 20_037_509.0) && within(y.abs(), 90.0, 20_048_967.0) {
        "metres of a map grid".into()
    } else {
        "no coordinates of the earth".into()
    }
}

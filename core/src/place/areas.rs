//! The ground of each zone.

use super::FieldMap;
use super::shape::FINE;
use crate::record::Zone;
use geo::{Area, BooleanOps, MultiPolygon, unary_union};

/// The ground of one zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ZoneArea {
    /// Which.
    pub zone: Zone,
    /// Its area in square metres.
    pub area_m2: f64,
}

/// The zones on the plane, no ground in two of them.
pub(super) struct Split {
    /// Each with its ground, in the order of [`Zone::ALL`]; wheelings lie in open ground.
    pub(super) zones: Vec<(Zone, MultiPolygon)>,
}

impl FieldMap {
    /// The zones that have ground, in the order of [`Zone::ALL`]. With an outline they add up to the field's area;
    /// without one only gateways and patches are known. Wheelings take their share of open ground alone: on the
    /// headland the wheels run wherever they turn.
    pub fn areas(&self) -> Vec<ZoneArea> {
        let split = self.split();
        // The shares are taken in the plane, the area on the ellipsoid: the projection's error falls out.
        let scale = self.ground.as_ref().map_or(1.0, |ground| ground.area_m2 / ground.ring.unsigned_area());
        let area_of = |zone: Zone| {
            let on_plane = |sought: Zone| {
                let ground = split.zones.iter().find(|(its, _)| *its == sought);
                ground.map_or(0.0, |(_, ground)| ground.unsigned_area())
            };
            let pressed = self.wheelings.unwrap_or(0.0);
            let area_m2 = match zone {
                Zone::Wheelings => on_plane(Zone::Open) * pressed,
                Zone::Open => on_plane(Zone::Open) * (1.0 - pressed),
                zone => on_plane(zone),
            };
            ZoneArea { zone, area_m2: area_m2 * scale }
        };
        Zone::ALL.iter().map(|&zone| area_of(zone)).filter(|it| it.area_m2 > SMALLEST_M2).collect()
    }

    /// The area of one zone in square metres, of the whole field for [`Zone::Whole`]; `None` where the map does not
    /// give it.
    pub fn area_m2(&self, zone: Zone) -> Option<f64> {
        match zone {
            Zone::Whole => self.whole_m2(),
            zone => self.areas().into_iter().find(|area| area.zone == zone).map(|area| area.area_m2),
        }
    }

    /// Share of open ground that the wheels in the tramlines press, 0 to 1; `None` where spacing or tyre width is not
    /// known.
    pub const fn wheelings_share(&self) -> Option<f64> {
        self.wheelings
    }

    /// Area within the outline on the WGS 84 ellipsoid, in square metres.
    pub fn whole_m2(&self) -> Option<f64> {
        self.ground.as_ref().map(|ground| ground.area_m2)
    }

    /// The zones on the plane.
    pub(super) fn split(&self) -> Split {
        let marked = |zone: Zone| {
            let parts = self.parts.iter().filter(|part| part.zone == zone);
            let shapes: Vec<_> = parts.map(|part| part.shape.polygon(FINE)).collect();
            let all = unary_union(&shapes);
            self.ground.as_ref().map_or_else(|| all.clone(), |ground| all.intersection(&ground.ring))
        };
        let gateways = marked(Zone::Gateway);
        let patches = marked(Zone::Patch).difference(&gateways);
        let mut zones = Vec::new();
        if let Some(ground) = &self.ground {
            let taken = gateways.union(&patches);
            let open = ground.inner().difference(&taken);
            if ground.headland_m.is_some() {
                let strip = ground.ring.difference(ground.inner()).difference(&taken);
                zones.extend([(Zone::Open, open), (Zone::Headland, strip)]);
            } else {
                zones.push((Zone::Open, open));
            }
        }
        zones.extend([(Zone::Gateway, gateways), (Zone::Patch, patches)]);
        Split { zones }
    }
}

/// Ground smaller than this is what the sums leave over. Our judgement: smaller than the hole of a pit.
const SMALLEST_M2: f64 = 0.01;

//! A field laid out on the plane: its outline, headland strip and marked parts, and where a position lies among them.

use super::shape::{COARSE, Shape, corners, depth_in};
use super::{Outline, Plane, wheelings};
use crate::record::{BuriedLine, Field, Part, PartShape, Position, RecordId, Zone};
use geo::{Buffer, Distance, Euclidean, LineString, MultiPolygon, Point, Polygon};
use std::sync::OnceLock;

/// Accuracy taken for a position that was noted without one: that of a phone under open sky. Our judgement.
pub const UNSTATED_ACCURACY_M: f64 = 5.0;

/// A field laid out on the plane, built once from the field's record. Where parts overlap, a gateway comes before a
/// patch, a patch before the headland, the headland before open ground.
#[derive(Debug, Clone)]
pub struct FieldMap {
    pub(super) plane: Option<Plane>,
    pub(super) ground: Option<Ground>,
    pub(super) parts: Vec<MarkedPart>,
    pub(super) lines: Vec<BuriedLine>,
    pub(super) tramline_m: Option<f64>,
    /// Share of open ground that the wheelings take.
    pub(super) wheelings: Option<f64>,
}

/// The ground within a valid outline.
#[derive(Debug, Clone)]
pub(super) struct Ground {
    /// The outline on the plane.
    pub(super) ring: Polygon,
    /// Area on the ellipsoid.
    pub(super) area_m2: f64,
    /// Width of the headland, where there is one.
    pub(super) headland_m: Option<f64>,
    /// What the headland leaves, laid out when it is first asked for: with an outline of many corners it takes longer
    /// than all the rest.
    inner: OnceLock<MultiPolygon>,
}

/// A gateway or patch on the plane.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct MarkedPart {
    pub(super) id: RecordId,
    pub(super) name: Option<String>,
    pub(super) zone: Zone,
    pub(super) shape: Shape,
}

/// Where a position lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Located {
    /// The zone it lies in; `None` outside the outline, and where the map does not reach: outside every marked part
    /// of a field without an outline.
    pub zone: Option<Zone>,
    /// Metres outside the outline; `None` inside it, and where there is none.
    pub outside_m: Option<f64>,
    /// The edge of its zone, where it is nearer than the position's own accuracy.
    pub edge: Option<NearEdge>,
}

/// An edge between two zones. The outline is no such edge: a pit of the field was dug in the field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearEdge {
    /// Distance to it in metres.
    pub distance_m: f64,
    /// The zone on the other side; `None` where the map does not say.
    pub other: Option<Zone>,
}

impl FieldMap {
    /// Lays out a field. Without a valid outline the map knows neither open ground nor headland, but the marked parts
    /// stand; a part that cannot be (see [`Part::faults`]) is left out.
    pub fn of(field: &Field) -> Self {
        let width_m = |mm: Option<u32>| mm.filter(|mm| *mm > 0).map(|mm| f64::from(mm) / 1000.0);
        let outline = Outline::new(&field.outline).ok();
        let outlined = outline.as_ref().and_then(|outline| Some((outline, outline.plane()?)));
        let plane = outlined.map(|(_, plane)| plane).or_else(|| plane_of_marks(field));
        let ground = outlined.map(|(outline, plane)| Ground::of(outline, plane, width_m(field.headland_mm)));
        let parts = plane.map_or_else(Vec::new, |plane| {
            field.parts.iter().filter_map(|part| MarkedPart::of(part, plane)).collect()
        });
        Self {
            plane,
            ground,
            parts,
            lines: field.lines.clone(),
            tramline_m: width_m(field.tramline_mm),
            wheelings: wheelings::share_of(field),
        }
    }

    /// Returns whether the field has a valid outline.
    pub const fn has_outline(&self) -> bool {
        self.ground.is_some()
    }

    /// The plane everything lies on, its middle that of the field; `None` where nothing of the field has a place.
    pub const fn plane(&self) -> Option<Plane> {
        self.plane
    }

    /// Where a position lies. The edge of its zone is told where it is no further than the position's own accuracy,
    /// [`UNSTATED_ACCURACY_M`] where it has none.
    pub fn locate(&self, position: &Position) -> Located {
        let Some(plane) = self.plane else { return Located { zone: None, outside_m: None, edge: None } };
        let spot = Point::from(plane.flat([position.longitude_deg, position.latitude_deg]));
        let outside_m = self.ground.as_ref().map(|ground| -depth_in(&ground.ring, spot));
        if let Some(outside_m) = outside_m.filter(|outside_m| *outside_m > 0.0) {
            return Located { zone: None, outside_m: Some(outside_m), edge: None };
        }
        let depths = self.depths(spot, outside_m.map(|outside_m| -outside_m), accuracy_m(position));
        let zone = self.first_of(depths.map(|depth_m| depth_m > 0.0));
        let edge = (0..depths.len())
            .filter(|&at| depths[at].is_finite())
            .map(|at| {
                let mut across = depths.map(|depth_m| depth_m > 0.0);
                across[at] = !across[at];
                NearEdge { distance_m: depths[at].abs(), other: self.first_of(across) }
            })
            .filter(|edge| edge.other != zone && edge.distance_m <= accuracy_m(position))
            .min_by(|one, other| one.distance_m.total_cmp(&other.distance_m));
        Located { zone, outside_m: None, edge }
    }

    /// Metres from a line, `[longitude, latitude]`, to the nearest ground of a zone; nought where it runs through it. Of a
    /// gateway or patch to the part as marked, of any other zone to the outline. `None` where the map does not reach.
    pub(crate) fn away_m(&self, zone: Zone, along: &[[f64; 2]]) -> Option<f64> {
        let plane = self.plane?;
        let flat: Vec<[f64; 2]> = along.iter().map(|&place| plane.flat(place)).collect();
        let line = LineString::from(if flat.len() == 1 { vec![flat[0], flat[0]] } else { flat });
        if line.0.is_empty() {
            return None;
        }
        let to = |ground: &Polygon| Euclidean.distance(&line, ground);
        if matches!(zone, Zone::Gateway | Zone::Patch) {
            let parts = self.parts.iter().filter(|part| part.zone == zone);
            return parts.map(|part| to(&part.shape.polygon(COARSE))).min_by(f64::total_cmp);
        }
        self.ground.as_ref().map(|ground| to(&ground.ring))
    }

    /// How deep inside gateways, patches and headland a place lies; below zero outside them. `inside_m` is its way to
    /// the outline; depths up to `exact_m` are exact.
    fn depths(&self, place: Point, inside_m: Option<f64>, exact_m: f64) -> [f64; 3] {
        let deepest = |zone: Zone| {
            self.parts
                .iter()
                .filter(|part| part.zone == zone)
                .map(|part| part.shape.depth_m(place))
                .fold(f64::NEG_INFINITY, f64::max)
        };
        let headland = self
            .ground
            .as_ref()
            .zip(inside_m)
            .and_then(|(ground, inside_m)| ground.depth_in_headland_m(place, inside_m, exact_m));
        [deepest(Zone::Gateway), deepest(Zone::Patch), headland.unwrap_or(f64::NEG_INFINITY)]
    }

    /// The zone of a place by the parts it lies in, gateways, patches and headland; open ground where it lies in none.
    fn first_of(&self, inside: [bool; 3]) -> Option<Zone> {
        let zones = [Zone::Gateway, Zone::Patch, Zone::Headland];
        let marked = zones.into_iter().zip(inside).find(|(_, inside)| *inside).map(|(zone, _)| zone);
        marked.or_else(|| self.has_outline().then_some(Zone::Open))
    }
}

/// The accuracy of a position, or that taken for it.
pub(super) fn accuracy_m(position: &Position) -> f64 {
    position.accuracy_m.unwrap_or(UNSTATED_ACCURACY_M)
}

/// The plane that touches at the first thing marked on a field without an outline.
fn plane_of_marks(field: &Field) -> Option<Plane> {
    let part = field.parts.first().and_then(|part| match &part.shape {
        PartShape::Ring(ring) => ring.first().copied(),
        PartShape::Circle { middle, .. } => Some(*middle),
    });
    part.or_else(|| field.lines.first()?.along.first().copied()).map(Plane::at)
}

impl Ground {
    fn of(outline: &Outline, plane: Plane, headland_m: Option<f64>) -> Self {
        Self { ring: outline.flat(plane), area_m2: outline.area_m2(), headland_m, inner: OnceLock::new() }
    }

    /// Returns what the headland leaves; all of the ground where there is none.
    pub(super) fn inner(&self) -> &MultiPolygon {
        self.inner.get_or_init(|| {
            self.headland_m.map_or_else(|| self.ring.clone().into(), |width_m| self.ring.buffer(-width_m))
        })
    }

    /// How deep in the headland a place lies that is so far inside the outline; below zero in open ground. Told exactly
    /// where it is no more than `exact_m`, else at least that much.
    fn depth_in_headland_m(&self, place: Point, inside_m: f64, exact_m: f64) -> Option<f64> {
        let width_m = self.headland_m?;
        // From open ground the strip begins where the outline is its width away; from the strip the way to open
        // ground is no shorter, and longer in a corner.
        let least_m = width_m - inside_m;
        if least_m <= 0.0 || least_m > exact_m {
            return Some(least_m);
        }
        let inner = self.inner();
        if inner.0.is_empty() {
            return Some(f64::INFINITY);
        }
        Some(Euclidean.distance(&place, inner).max(least_m))
    }
}

impl MarkedPart {
    fn of(part: &Part, plane: Plane) -> Option<Self> {
        if !part.faults().is_empty() {
            return None;
        }
        let shape = match &part.shape {
            PartShape::Ring(places) => Shape::Ring(Outline::new(places).ok()?.flat(plane)),
            PartShape::Circle { middle, radius_m } => {
                Shape::Circle { middle: plane.flat(*middle).into(), radius_m: *radius_m }
            }
        };
        Some(Self { id: part.id, name: part.name.clone(), zone: part.zone, shape })
    }

    /// Its edge as `[east, north]`; a circle's is drawn through many corners.
    pub(super) fn edge(&self) -> Vec<[f64; 2]> {
        corners(self.shape.polygon(COARSE).exterior())
    }
}

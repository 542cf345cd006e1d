//! Where the next pit tells most: the zone with most at stake, then a clear place in it far from earlier pits.

use super::{Count, Plan, PlanFault, Verdict, usual_area_ha};
use crate::place::Plane;
use crate::record::Zone;
use geo::{BoundingRect, Contains, Distance, Euclidean, LineString, Point, Polygon};

/// Distance kept from the lines of drains and services when a pit is dug: a marked line may lie some 3 m off, and the
/// position shown another 2 m. Our judgement; it never stands for asking before digging.
pub const DIG_CLEARANCE_M: f64 = 5.0;
/// Most places weighed for one pit.
const CANDIDATES: f64 = 2_500.0;
/// A place in the headland keeps this share of its width from both sides.
const STRIP_MARGIN: f64 = 0.2;

/// A field as far as it matters for the next pit. Places are `[longitude, latitude]` in degrees.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// Ring of the field (see [`crate::place::Outline`] for what makes it valid); empty where it is not known.
    pub outline: Vec<[f64; 2]>,
    /// Width of the headland, where there is one.
    pub headland_mm: Option<u32>,
    /// The zones to be called.
    pub zones: Vec<ZoneGround>,
    /// Places of the pits already dug, the reference pit's too.
    pub dug: Vec<[f64; 2]>,
    /// Whether a reference pit has been dug.
    pub reference_dug: bool,
    /// Lines of drains and services.
    pub buried: Vec<Vec<[f64; 2]>>,
    /// Distance to keep from these lines.
    pub clearance_m: f64,
}

/// One zone of a field.
#[derive(Debug, Clone, PartialEq)]
pub struct ZoneGround {
    /// Which.
    pub zone: Zone,
    /// Its pits.
    pub count: Count,
    /// Its area; [`usual_area_ha`] is taken where it is not known.
    pub area_ha: Option<f64>,
    /// Ring around it where it is marked; empty to take it from the outline and the headland's width.
    pub ring: Vec<[f64; 2]>,
}

impl ZoneGround {
    fn area_ha(&self) -> f64 {
        self.area_ha
            .filter(|area| area.is_finite() && *area >= 0.0)
            .unwrap_or_else(|| usual_area_ha(self.zone))
    }
}

/// What to do next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Next {
    /// Dig the reference pit, where the soil looks good: away from wheelings, headland and edge. Its place is chosen
    /// by eye.
    Reference,
    /// Dig in this zone.
    Pit {
        /// The zone with most at stake.
        zone: Zone,
        /// Where in it.
        at: At,
        /// Expected regret of its call as it stands, in hectares of loosening.
        at_stake_ha: f64,
        /// Pits still to be expected in this zone, this one counted.
        still_expected: f64,
    },
    /// No zone is left where another pit would pay.
    Stop,
}

/// Where in a zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum At {
    /// Here, `[longitude, latitude]` in degrees; for wheelings the nearest wheeling to it.
    Place([f64; 2]),
    /// Choose by eye: the zone is not marked and there is no outline to take it from.
    ByEye,
    /// Nowhere: every place of the zone lies too near to a drain or service.
    NowhereClear,
}

/// What to do next on a field.
///
/// # Errors
/// A figure of the plan that cannot be worked with.
pub fn next_pit(ground: &Ground, plan: &Plan) -> Result<Next, PlanFault> {
    plan.check()?;
    if !ground.reference_dug {
        return Ok(Next::Reference);
    }
    let mut best: Option<(f64, &ZoneGround)> = None;
    for zone in &ground.zones {
        let area_ha = zone.area_ha();
        let at_stake_ha = plan.regret_ha(zone.count, area_ha).least();
        let open = plan.verdict(zone.count, area_ha) == Verdict::DigOn;
        if open && best.is_none_or(|(most, _)| at_stake_ha > most) {
            best = Some((at_stake_ha, zone));
        }
    }
    Ok(best.map_or(Next::Stop, |(at_stake_ha, zone)| Next::Pit {
        zone: zone.zone,
        at: place_in(zone, ground),
        at_stake_ha,
        still_expected: plan.still_expected(zone.count, zone.area_ha()),
    }))
}

/// Which part of a ring a zone is.
#[derive(Clone, Copy)]
enum Part {
    /// All of it.
    Ring,
    /// What lies further than this from its edge.
    Inside(f64),
    /// What lies within this of its edge.
    Strip(f64),
}

impl Part {
    /// How well inside a place at this distance from the edge is; `None` outside the part. In a strip every place
    /// is near an edge, so there nearness to it says nothing.
    fn room_m(self, edge_m: f64) -> Option<f64> {
        let room = match self {
            Self::Ring => edge_m,
            Self::Inside(width) => edge_m - width,
            Self::Strip(width) => {
                let between = width * STRIP_MARGIN..=width * (1.0 - STRIP_MARGIN);
                return between.contains(&edge_m).then_some(f64::INFINITY);
            }
        };
        (room > 0.0).then_some(room)
    }
}

/// The clear place of a zone farthest from every pit, and half as far from the zone's edge; of equal ones the most
/// southerly, then the most westerly.
fn place_in(zone: &ZoneGround, ground: &Ground) -> At {
    let width_m = ground.headland_mm.map_or(0.0, |width| f64::from(width) / 1000.0);
    let (ring, part) = if zone.ring.len() >= 3 {
        (&zone.ring, Part::Ring)
    } else {
        let part = match zone.zone {
            Zone::Open | Zone::Wheelings => Part::Inside(width_m),
            Zone::Headland if width_m > 0.0 => Part::Strip(width_m),
            Zone::Whole => Part::Ring,
            Zone::Headland | Zone::Gateway | Zone::Patch => return At::ByEye,
        };
        (&ground.outline, part)
    };
    let (Some(&corner), true) = (ring.first(), ring.len() >= 3) else { return At::ByEye };

    let plane = Plane::at(corner);
    let flat = |places: &[[f64; 2]]| -> LineString {
        places.iter().map(|&place| plane.flat(place)).collect::<Vec<_>>().into()
    };
    let field = Polygon::new(flat(ring), Vec::new());
    let dug: Vec<Point> = ground.dug.iter().map(|&place| plane.flat(place).into()).collect();
    let buried: Vec<LineString> = ground.buried.iter().map(|line| flat(line)).collect();
    let clear = |place: Point| {
        buried.iter().all(|line| match line.0.as_slice() {
            [] => true,
            [only] => Euclidean.distance(place, Point::from(*only)) > ground.clearance_m,
            _ => Euclidean.distance(&place, line) > ground.clearance_m,
        })
    };

    let mut best: Option<(f64, Point)> = None;
    for place in lattice(&field) {
        if !field.contains(&place) {
            continue;
        }
        let Some(room_m) = part.room_m(Euclidean.distance(&place, field.exterior())) else { continue };
        let nearest_m = dug.iter().map(|&pit| Euclidean.distance(place, pit)).fold(f64::INFINITY, f64::min);
        let far_m = nearest_m.min(2.0 * room_m);
        if best.is_none_or(|(most, _)| far_m > most) && clear(place) {
            best = Some((far_m, place));
        }
    }
    best.map_or(At::NowhereClear, |(_, place)| At::Place(plane.place(place.into())))
}

/// Places in even rows over the box around a ring, from south to north, in each row from west to east.
fn lattice(field: &Polygon) -> impl Iterator<Item = Point> {
    let around = field.bounding_rect();
    let (origin, wide, high) =
        around.map_or((geo::Coord { x: 0.0, y: 0.0 }, 0.0, 0.0), |it| (it.min(), it.width(), it.height()));
    let step = (wide * high / CANDIDATES).sqrt().max(0.1);
    let count = move |length: f64| (length / step).ceil() as u32;
    let at = move |index: u32| (f64::from(index) + 0.5) * step;
    (0..count(high)).flat_map(move |row| {
        (0..count(wide)).map(move |column| Point::new(origin.x + at(column), origin.y + at(row)))
    })
}

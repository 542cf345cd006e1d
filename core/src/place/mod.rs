//! Positions and the zones of a field: distances and areas on the WGS 84 ellipsoid, outlines, the headland strip.

mod compass;
mod geodesy;
mod outline;
mod plane;

pub use compass::Compass;
pub use geodesy::{Walk, walk};
pub use outline::{Outline, OutlineFault};
pub use plane::Plane;

use crate::record::{Pit, PlaceKind, Zone};

/// The zone a pit stands for: the one noted, else the one its place gives; `None` for a reference pit,
/// which stands for none.
pub fn zone_of(pit: &Pit) -> Option<Zone> {
    pit.zone.or(match pit.place {
        PlaceKind::Reference => None,
        PlaceKind::Open => Some(Zone::Open),
        PlaceKind::Wheeling => Some(Zone::Wheelings),
        PlaceKind::Headland => Some(Zone::Headland),
        PlaceKind::Gateway => Some(Zone::Gateway),
        PlaceKind::Other => Some(Zone::Patch),
    })
}

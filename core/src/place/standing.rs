//! Which zone a pit stands for, and what is to be said about where it lies.

use super::FieldMap;
use super::map::accuracy_m;
use crate::record::{Pit, PlaceKind, Zone};

/// What is to be said about where a pit lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PlaceRemark {
    /// Outside the outline.
    Outside {
        /// Metres to the outline.
        distance_m: f64,
        /// Accuracy of the position, or that taken for it.
        accuracy_m: f64,
    },
    /// So near to another zone that the position does not tell which of the two it lies in.
    NearEdge {
        /// Metres to the edge.
        distance_m: f64,
        /// Accuracy of the position, or that taken for it.
        accuracy_m: f64,
        /// The other zone it may lie in.
        zone: Zone,
    },
    /// The place as noted says another zone than the position; the place stands.
    DiffersFromPlace {
        /// The zone it lies in by its position.
        zone: Zone,
    },
    /// Noted as open ground, and put into another zone by its position.
    MovedTo {
        /// Which.
        zone: Zone,
    },
}

impl PlaceRemark {
    /// The code written in JSON.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Outside { .. } => "outside",
            Self::NearEdge { .. } => "near_edge",
            Self::DiffersFromPlace { .. } => "differs_from_place",
            Self::MovedTo { .. } => "moved_to",
        }
    }
}

/// The zone a place gives by itself; none for a reference.
const fn said(place: PlaceKind) -> Option<Zone> {
    match place {
        PlaceKind::Reference => None,
        PlaceKind::Open => Some(Zone::Open),
        PlaceKind::Wheeling => Some(Zone::Wheelings),
        PlaceKind::Headland => Some(Zone::Headland),
        PlaceKind::Gateway => Some(Zone::Gateway),
        PlaceKind::Other => Some(Zone::Patch),
    }
}

impl FieldMap {
    /// The zone a pit stands for; `None` for a reference pit, which stands for none. The zone noted comes first. A
    /// wheeling, headland, gateway or other patch was said by the person who stood there, and stands. Open ground
    /// is what is said where nothing catches the eye: there a position that lies in a marked part or the headland
    /// decides, if it is further from the edge than its own accuracy.
    pub fn zone_of(&self, pit: &Pit) -> Option<Zone> {
        pit.zone.or_else(|| self.moved_to(pit)).or_else(|| said(pit.place))
    }

    /// Returns what is to be said about where a pit lies. Of a reference pit, and of one whose zone was noted, only that it lies
    /// outside the field; of the others, near an edge, only where position and place do not agree anyway.
    pub fn remarks(&self, pit: &Pit) -> Vec<PlaceRemark> {
        self.remark(pit).into_iter().collect()
    }

    fn moved_to(&self, pit: &Pit) -> Option<Zone> {
        match self.remark(pit) {
            Some(PlaceRemark::MovedTo { zone }) => Some(zone),
            _ => None,
        }
    }

    fn remark(&self, pit: &Pit) -> Option<PlaceRemark> {
        let position = pit.at?;
        let located = self.locate(&position);
        let accuracy_m = accuracy_m(&position);
        if let Some(distance_m) = located.outside_m {
            return Some(PlaceRemark::Outside { distance_m, accuracy_m });
        }
        let said = said(pit.place).filter(|_| pit.zone.is_none())?;
        // Wheelings are not located: they lie in open ground.
        let on_map = if said == Zone::Wheelings { Zone::Open } else { said };
        let lies_in = located.zone.filter(|zone| *zone != on_map);
        if let Some(edge) = located.edge {
            let zone = lies_in.or(edge.other.filter(|_| said == Zone::Open))?;
            return self.could_be_told(on_map, zone).then_some(PlaceRemark::NearEdge {
                distance_m: edge.distance_m,
                accuracy_m,
                zone,
            });
        }
        let zone = lies_in?;
        if said == Zone::Open {
            return Some(PlaceRemark::MovedTo { zone });
        }
        self.could_be_told(on_map, zone).then_some(PlaceRemark::DiffersFromPlace { zone })
    }

    /// Returns whether the map would have put a place into the zone said, had it lain there, rather than into this one: an
    /// unmarked gateway is no reason to doubt that somebody stood in one.
    fn could_be_told(&self, said: Zone, lies_in: Zone) -> bool {
        let rank =
            |zone: Zone| [Zone::Gateway, Zone::Patch, Zone::Headland].iter().position(|its| *its == zone);
        let comes_first = rank(lies_in).is_some_and(|its| rank(said).is_none_or(|said| its < said));
        comes_first
            || match said {
                Zone::Gateway | Zone::Patch => self.parts.iter().any(|part| part.zone == said),
                Zone::Headland => self.ground.as_ref().is_some_and(|ground| ground.headland_m.is_some()),
                Zone::Open | Zone::Wheelings | Zone::Whole => true,
            }
    }
}

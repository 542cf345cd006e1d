//! Longitude and latitude mixed up: two places of one field that lie far apart and would lie together if numbers were
//! swapped or their signs turned.

use super::walk;
use std::fmt;

/// A place further than this from every corner of an outline is not in that field: the largest one believed is 7 km
/// across. Our judgement.
const FAR_M: f64 = 10_000.0;

/// How the numbers of an outline and those of other places may differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MixUp {
    /// Latitude was given before longitude.
    Swapped,
    /// East and west.
    EastWest,
    /// North and south.
    NorthSouth,
    /// East and west, and north and south.
    Both,
}

impl MixUp {
    const ALL: [Self; 4] = [Self::Swapped, Self::EastWest, Self::NorthSouth, Self::Both];

    /// The place meant, if this is what happened to `[longitude, latitude]`.
    pub fn undone(self, [longitude, latitude]: [f64; 2]) -> [f64; 2] {
        match self {
            Self::Swapped => [latitude, longitude],
            Self::EastWest => [-longitude, latitude],
            Self::NorthSouth => [longitude, -latitude],
            Self::Both => [-longitude, -latitude],
        }
    }

    /// Returns what is wrong.
    pub const fn wrong(self) -> &'static str {
        match self {
            Self::Swapped => "the outline lies where the pits would with longitude and latitude swapped",
            Self::EastWest => "the outline lies as far east as the pits lie west, or the other way round",
            Self::NorthSouth => "the outline lies as far north as the pits lie south, or the other way round",
            Self::Both => {
                "the outline lies on the other side of the globe from the pits, east to west and north to south"
            }
        }
    }

    /// Returns what to do about it.
    pub const fn todo(self) -> &'static str {
        match self {
            Self::Swapped => "give longitude first, then latitude, in the outline and in every pit",
            Self::EastWest => "give longitudes west of Greenwich with a minus, those east of it without",
            Self::NorthSouth => "give latitudes south of the equator with a minus, those north of it without",
            Self::Both => "give longitudes west and latitudes south with a minus, the others without",
        }
    }
}

impl fmt::Display for MixUp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}", self.wrong(), self.todo())
    }
}

/// How the numbers of an outline and of places that belong to its field (pits, corners of marked parts) were mixed up,
/// all `[longitude, latitude]` in degrees. `None` where at least one of the places lies near the outline as it is,
/// where no mix-up brings all of them to it, and where there is nothing to compare. Which of the two is wrong cannot
/// be told.
pub fn guess_mix_up(outline: &[[f64; 2]], places: &[[f64; 2]]) -> Option<MixUp> {
    let near = |place: [f64; 2]| {
        on_globe(place)
            && outline.iter().any(|&corner| on_globe(corner) && walk(corner, place).distance_m <= FAR_M)
    };
    if outline.is_empty() || places.is_empty() || places.iter().any(|&place| near(place)) {
        return None;
    }
    MixUp::ALL.into_iter().find(|mix_up| places.iter().all(|&place| near(mix_up.undone(place))))
}

fn on_globe([longitude, latitude]: [f64; 2]) -> bool {
    longitude.abs() <= 180.0 && latitude.abs() <= 90.0
}

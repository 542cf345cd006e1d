//! Directions as people say them.

use crate::record::codes::codes;

codes!(
    /// One of the eight points of the compass.
    Compass {
        North = "north",
        NorthEast = "north_east",
        East = "east",
        SouthEast = "south_east",
        South = "south",
        SouthWest = "south_west",
        West = "west",
        NorthWest = "north_west",
    }
);

impl Compass {
    /// The point nearest to a bearing, degrees from north clockwise; any number of turns.
    pub fn of(bearing_deg: f64) -> Self {
        let eighth = (bearing_deg.rem_euclid(360.0) / 45.0).round() as usize;
        Self::ALL[eighth % Self::ALL.len()]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_point_takes_the_eighth_around_it() {
        for (index, &point) in Compass::ALL.iter().enumerate() {
            let middle = 45.0 * index as f64;
            for bearing in [middle, middle - 22.0, middle + 22.0, middle - 360.0, middle + 720.0] {
                assert_eq!(Compass::of(bearing), point, "{bearing}");
            }
        }
        assert_eq!(Compass::of(359.9), Compass::North);
        assert_eq!(Compass::of(f64::NAN), Compass::North);
    }
}

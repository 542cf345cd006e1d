//! Positions and the zones of a field: distances and areas on the WGS 84 ellipsoid, outlines, the headland strip, the
//! map of a field and which zone a pit stands for.

mod areas;
mod compass;
mod drawn;
mod fixes;
mod geodesy;
mod globe;
mod grid;
mod map;
mod mix_up;
mod outline;
mod plane;
mod shape;
mod standing;
mod stay;
mod wheelings;

pub use areas::ZoneArea;
pub use compass::Compass;
pub use drawn::{LineFlat, PartFlat};
pub use fixes::{AveragedFix, COARSE, ENOUGH_S, Fix, LONGEST_S, average};
pub use geodesy::{Walk, walk};
pub use globe::{Rings, circle_of, ground_of, line_of};
pub use grid::on_grid;
pub use map::{FieldMap, Located, NearEdge, UNSTATED_ACCURACY_M};
pub use mix_up::{MixUp, guess_mix_up};
pub use outline::{Outline, OutlineFault};
pub use plane::Plane;
pub use standing::PlaceRemark;
pub use stay::stay;

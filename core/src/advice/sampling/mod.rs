//! How many pits, and where: the share of ground harmed in each zone, when the pits dug settle the call, and where
//! the next one tells most.

mod sequential;
mod share;

pub use sequential::{Bounds, Plan, PlanFault, Verdict, usual_area_ha};
pub use share::{Count, Regret, Share};

//! From a tip depth to a machine that is set right: critical depth, spacing, what it loosens, pull, power, fuel, work
//! rate and money. Every figure keeps its range, its source or formula, and is absent where its model does not hold.

mod compare;
mod critical;
mod draught;
mod fuel;
mod geometry;
mod in_zone;
mod mckyes_ali;
mod model;
mod money;
mod power;
mod rate;
mod section;
mod setting;
mod spacing;
mod table;

pub use compare::{Compared, Measure, compare};
pub use critical::{
    CriticalDepth, CriticalPlace, CriticalShift, FootWidth, critical_shifts, deepest_above_critical_mm,
    foot_width_for,
};
pub use draught::{Estimate, draught_kn, table_draught_n};
pub use fuel::{Fuel, FuelFormula};
pub use geometry::{Loosened, LoosenedRange, SideSlope, Tines};
pub use in_zone::{Terms, layer_of, work_in_zone};
pub use mckyes_ali::{NarrowTine, TineForce};
pub use model::{Model, WhyNot};
pub use money::{Price, break_even_t_per_ha};
pub use power::{
    Grip, TractorFit, drawbar_kw, grip, held_kmh, pto_kw, pull_per_weight, rated_pto_kw, tractor_fit,
};
pub use rate::{ha_per_hour, speed_for_kmh};
pub use section::{broken_share, left_mm, measured_ridge_mm, section_share};
pub use setting::{
    LayerBreak, LayerDepths, Needed, Setting, SpacingAnswer, TinesRange, Traction, Work, needed_for, set,
};
pub use spacing::{LeadingRange, SpacingFit, SpacingRange, leading_ranges};
pub use table::{
    CRITICAL_RATIO, DRAUGHT, DRAUGHT_FACTOR, DRAUGHT_SPREAD, DRAUGHT_WINGS_MM, DraughtRow, DraughtSoil,
    FIELD_EFFICIENCY, LEADING, LeadingRow, SIDE_SLOPE_DEGREES, SPACING, SpacingRow, Surface, TRACTION,
    TractionRow, USUAL_SPEED_KMH,
};

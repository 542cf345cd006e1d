//! From read pits to calls: gates, least expected regret, zones, tip depth, cautions, follow-up.

mod call;
pub mod regret;

pub use call::{
    Caution, Change, ChangedAnswer, FieldAdvice, FollowUp, Obstacle, Readiness, RootingLoss, Stance,
    Sureness, TipDepth, What, Why, ZoneCall,
};
pub use regret::{LAYER_CALLS, REGRET, RegretTable};

//! `pitface tip`: bottoms of the layers in, tip depth out.

use crate::Answer;
use crate::argument::{Shown, millimetres};
use crate::json::merged;
use crate::trouble::Trouble;
use clap::Args;
use pitface_core::RULES;
use pitface_core::advice::{CLEARED_SHARE, tip_depth, What, Why, Stance, in_the_way};
use pitface_core::record::Field;
use serde_json::json;

/// What was measured.
#[derive(Args)]
pub struct Tip {
    /// Depth of the harmed layer's bottom, one a pit: 300, 300mm, 30cm or 12in (a bare number is millimetres).
    #[arg(required = true, value_name = "BOTTOM", value_parser = millimetres)]
    bottoms: Vec<u32>,
    /// Share of the ground to be cleared, between 0 and 1.
    #[arg(long, value_name = "SHARE", default_value_t = CLEARED_SHARE, value_parser = share)]
    clear: f64,
    /// Depth to the top of the pipe drains or their fill.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    drains: Option<u32>,
    /// Depth to the top of the mole drains.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    mole_drains: Option<u32>,
    /// Depth to the shallowest cable or pipe.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    services: Option<u32>,
    /// Clearance to keep above all of these.
    #[arg(long, value_name = "LENGTH", value_parser = millimetres)]
    clearance: Option<u32>,
    /// Deepest tip depth the machine reaches.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    reach: Option<u32>,
}

//! A pit from its place to its call.

pub(super) mod call;
pub(super) mod layers;
pub(super) mod look;
pub(super) mod roll;
pub(super) mod start;
pub(super) mod walk;

use super::{Done, Place, World};
use crate::error::Fault;
use crate::record::RecordId;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PitAct {}

pub(super) fn tap(
    _place: Place,
    _act: &PitAct,
    _text: Option<&str>,
    _world: &World,
    _new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    unimplemented!()
}

//! Passes, and the holes behind the machine.

use super::{Done, Place, Screen, World};
use crate::error::Fault;
use crate::record::RecordId;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BehindAct {}

pub(super) fn show(_field: RecordId, _pass: Option<RecordId>, _world: &World) -> Option<Screen> {
    None
}

pub(super) fn show_dig(_field: RecordId, _pass: RecordId, _dig: RecordId, _world: &World) -> Option<Screen> {
    None
}

pub(super) fn tap(
    _place: Place,
    _act: &BehindAct,
    _text: Option<&str>,
    _world: &World,
    _new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    unimplemented!()
}

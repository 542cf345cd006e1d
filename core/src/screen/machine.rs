//! The machines of a field, and one of them set.

use super::{Done, Place, Screen, World};
use crate::error::Fault;
use crate::record::RecordId;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MachineAct {}

pub(super) fn show(_field: RecordId, _machine: Option<RecordId>, _world: &World) -> Option<Screen> {
    None
}

pub(super) fn tap(
    _place: Place,
    _act: &MachineAct,
    _text: Option<&str>,
    _world: &World,
    _new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    unimplemented!()
}

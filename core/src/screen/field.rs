//! The list of fields, and one field.

use super::{Done, Place, Screen, World};
use crate::error::Fault;
use crate::record::RecordId;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FieldAct {}

pub(super) fn list(_world: &World) -> Screen {
    unimplemented!()
}

pub(super) fn show(_field: RecordId, _world: &World) -> Option<Screen> {
    None
}

pub(super) fn tap(
    _place: Place,
    _act: &FieldAct,
    _text: Option<&str>,
    _world: &World,
    _new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    unimplemented!()
}

//! Own details: language, name, hand, units.

use super::{Done, Place, Screen, World};
use crate::error::Fault;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OwnAct {}

pub(super) fn welcome(_world: &World) -> Screen {
    unimplemented!()
}

pub(super) fn show(_world: &World) -> Screen {
    unimplemented!()
}

pub(super) fn tap(_place: Place, _act: &OwnAct, _text: Option<&str>, _world: &World) -> Result<Done, Fault> {
    unimplemented!()
}

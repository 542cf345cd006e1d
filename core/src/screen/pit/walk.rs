//! The knife walk.

use super::super::{Screen, World};
use crate::record::RecordId;

pub(in crate::screen) fn show(_field: RecordId, _pit: RecordId, _world: &World) -> Option<Screen> {
    None
}

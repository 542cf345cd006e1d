//! A pit from its place to the hole dug.

use super::super::{Screen, World};
use crate::record::RecordId;

pub(in crate::screen) fn show(_field: RecordId, _pit: Option<RecordId>, _world: &World) -> Option<Screen> {
    None
}

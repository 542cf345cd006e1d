//! A field handed over or taken in.

use super::{Screen, World};
use crate::record::RecordId;

pub(in crate::screen) fn show(_field: RecordId, _world: &World) -> Option<Screen> {
    None
}

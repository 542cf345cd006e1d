//! Short ways to write records in tests.

use pitface_core::record::{
    ComesAway, FaceMoisture, Field, Layer, Pit, PlaceKind, RecordId, Resistance, Signs, Step, Unknown,
};
use std::sync::atomic::{AtomicU64, Ordering};

/// A new id a call, the same ones in every run of one test.
pub fn id() -> RecordId {
    static COUNT: AtomicU64 = AtomicU64::new(0);
    RecordId::new(COUNT.fetch_add(1, Ordering::Relaxed), [0; 10])
}

/// A field of which nothing is known.
pub fn field() -> Field {
    Field::new(id(), "Long Sedge")
}

/// An empty pit, dug to 450 mm, its face moist.
pub fn pit(place: PlaceKind) -> Pit {
    Pit { dug_to_mm: Some(450), face: Some(FaceMoisture::Moist), ..Pit::new(id(), place) }
}

/// One step of a walk.
pub fn step(to_mm: u32, comes_away: Option<ComesAway>, resistance: Option<Resistance>) -> Step {
    Step { id: id(), to_mm, comes_away, resistance, unknown: Unknown::new() }
}

/// One layer.
pub fn layer(top_mm: u32, bottom_mm: u32, signs: Signs) -> Layer {
    Layer { id: id(), top_mm, bottom_mm, signs, texture: None, remark: None, unknown: Unknown::new() }
}

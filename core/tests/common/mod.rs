//! Short ways to write records in tests.
#![allow(dead_code, reason = "each test file uses some of them")]

use pitface_core::record::{
    ComesAway, FaceMoisture, Field, Layer, Pit, PlaceKind, RecordId, Resistance, Roll, RollOutcome, Signs,
    Step, Unknown,
};
use std::sync::atomic::{AtomicU64, Ordering};

/// A new id a call, the same ones in every run of one test.
pub fn id() -> RecordId {
    static COUNT: AtomicU64 = AtomicU64::new(0);
    RecordId::new(COUNT.fetch_add(1, Ordering::Relaxed), [0; 10])
}

/// A field of which nothing is known.
pub fn field() -> Field {
    Field {
        id: id(),
        name: "Long Sedge".into(),
        outline: Vec::new(),
        headland_mm: None,
        tramline_mm: None,
        texture: None,
        organic_matter: None,
        crop_now: None,
        last_crop: None,
        last_loosened: None,
        last_traffic: None,
        drains_mm: None,
        mole_drains_mm: None,
        services_mm: None,
        clearance_mm: None,
        reach_mm: None,
        deep_clay_anyway: None,
        unknown: Unknown::new(),
    }
}

/// An empty pit, dug to 450 mm, its face moist.
pub fn pit(place: PlaceKind) -> Pit {
    Pit {
        id: id(),
        place,
        zone: None,
        at: None,
        dug: None,
        by: None,
        dug_to_mm: Some(450),
        face: Some(FaceMoisture::Moist),
        walk: Vec::new(),
        layers: Vec::new(),
        rolls: Vec::new(),
        photos: Vec::new(),
        unknown: Unknown::new(),
    }
}

/// One step of a walk.
pub fn step(to_mm: u32, comes_away: Option<ComesAway>, resistance: Option<Resistance>) -> Step {
    Step { id: id(), to_mm, comes_away, resistance, unknown: Unknown::new() }
}

/// One layer.
pub fn layer(top_mm: u32, bottom_mm: u32, signs: Signs) -> Layer {
    Layer { id: id(), top_mm, bottom_mm, signs, texture: None, unknown: Unknown::new() }
}

/// One roll test.
pub fn roll(depth_mm: u32, roll: RollOutcome) -> Roll {
    Roll { id: id(), depth_mm, roll, unknown: Unknown::new() }
}

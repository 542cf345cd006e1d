//! The clock and new ids: what the core may not have.

use pitface_core::record::RecordId;
use std::time::{SystemTime, UNIX_EPOCH};
use uuid::Uuid;

/// A new id.
pub(crate) fn new_id() -> RecordId {
    let mut random = [0; 10];
    random.copy_from_slice(&Uuid::new_v4().as_bytes()[..10]);
    RecordId::new(now_ms(), random)
}

/// Milliseconds since 1970.
pub(crate) fn now_ms() -> u64 {
    let now = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(now.as_millis()).unwrap_or(u64::MAX)
}

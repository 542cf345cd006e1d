//! The clock and new ids: what the core may not have.

use pitface_core::record::RecordId;
use std::time::{SystemTime, UNIX_EPOCH};
use uuid::Uuid;

/// A new id, above all those made here before, also within a millisecond: of records that weigh alike the first one speaks.
pub(crate) fn new_id() -> RecordId {
    let made = Uuid::now_v7();
    let mut rest = [0; 10];
    rest.copy_from_slice(&made.as_bytes()[6..]);
    RecordId::new((made.as_u128() >> 80) as u64, rest)
}

/// Milliseconds since 1970.
pub(crate) fn now_ms() -> u64 {
    let now = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(now.as_millis()).unwrap_or(u64::MAX)
}

//! The hybrid logical clock: wall time where that moves on, a counter where it does not.
//!
//! 48 bits of Unix milliseconds over 16 bits of counter, so that stamps sort by time and never repeat
//! or go back on one device, whatever its wall clock does. A counter that overflows carries into the
//! milliseconds.

use super::StoreError;
use crate::error::Fault;

/// Bits of the counter.
const COUNTER_BITS: u32 = 16;

/// How far ahead of the own clock another device's may drag it, milliseconds: a day.
pub(super) const FURTHEST_AHEAD_MS: u64 = 24 * 60 * 60 * 1000;

/// The first stamp after `own`, this device's last, and `others`, the last of all others, at wall time `now_ms`. A stamp more than
/// a day ahead is another's wrong clock: it is not followed.
pub(super) fn next_among(own: i64, others: i64, now_ms: u64) -> Result<i64, StoreError> {
    let followed = others.min(latest_believed(now_ms));
    next(own.max(followed), now_ms)
}

/// The last stamp that a right clock could have made at wall time `now_ms`.
pub(super) fn latest_believed(now_ms: u64) -> i64 {
    let ms = i64::try_from(now_ms.saturating_add(FURTHEST_AHEAD_MS)).unwrap_or(i64::MAX);
    ms.checked_mul(1 << COUNTER_BITS).unwrap_or(i64::MAX)
}

/// The first stamp after `last` at wall time `now_ms`.
fn next(last: i64, now_ms: u64) -> Result<i64, StoreError> {
    i64::try_from(now_ms)
        .ok()
        .and_then(|ms| ms.checked_mul(1 << COUNTER_BITS))
        .and_then(|wall| wall.max(last).checked_add(1))
        .ok_or_else(|| {
            Fault::new("now_ms", format!("{now_ms} ms lies past the year 6000"), "set the device's clock")
                .into()
        })
}

/// The milliseconds of a stamp.
pub(super) fn unix_ms(stamp: i64) -> u64 {
    u64::try_from(stamp >> COUNTER_BITS).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn follows_the_wall_and_never_goes_back() {
        let first = next(0, 1_000).unwrap();
        assert_eq!(unix_ms(first), 1_000);
        let same_millisecond = next(first, 1_000).unwrap();
        let wall_went_back = next(same_millisecond, 10).unwrap();
        assert_eq!(wall_went_back, first + 2);
        assert_eq!(unix_ms(next(wall_went_back, 2_000).unwrap()), 2_000);
    }

    #[test]
    fn a_clock_of_years_ahead_is_not_followed() {
        let now_ms = 1_000_000;
        let years_ahead = next(0, now_ms + 20 * 365 * FURTHEST_AHEAD_MS).unwrap();
        let hours_ahead = next(0, now_ms + FURTHEST_AHEAD_MS / 2).unwrap();
        assert_eq!(unix_ms(next_among(0, years_ahead, now_ms).unwrap()), now_ms + FURTHEST_AHEAD_MS);
        assert_eq!(next_among(0, hours_ahead, now_ms).unwrap(), hours_ahead + 1);
        // What this device wrote itself is never gone back behind.
        assert_eq!(next_among(years_ahead, 0, now_ms).unwrap(), years_ahead + 1);
    }

    #[test]
    fn counter_overflow_carries_into_the_milliseconds() {
        let full = (5 << 16) + 0xffff;
        assert_eq!(unix_ms(next(full, 5).unwrap()), 6);
    }

    #[test]
    fn refuses_a_clock_past_its_range() {
        let error = next(0, 1 << 47).unwrap_err().to_string();
        assert!(error.contains("set the device's clock"), "{error}");
        next(i64::MAX, 0).unwrap_err();
    }
}

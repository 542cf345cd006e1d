//! The size of a photo.

use crate::picture::PHONE_WIDTH;

/// Size of a photo as it is shown, turned upright, in pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(missing_docs, reason = "fields say what they are")]
pub struct PhotoSize {
    pub width_px: u32,
    pub height_px: u32,
}

impl PhotoSize {
    /// Width and height of a drawing over it, points: as wide as a phone.
    pub(super) fn drawn(self) -> [f64; 2] {
        [PHONE_WIDTH, PHONE_WIDTH * f64::from(self.height_px) / f64::from(self.width_px)]
    }
}

//! A photo of a face with a scale: depths under a touch, and the layers drawn where they lie in the picture.
//!
//! Two touches along a tape give scale and tilt, as if the camera had looked at the face squarely. Four touches, two
//! along each of two plumb lines, give the perspective too: a plane seen by a camera, so that depth lines run together
//! where the picture says so. Which way up the picture is does not matter: a phone that looks down often does not know.
//!
//! Pure: the picture itself is never looked at, only its size and the marks.

mod overlay;
mod plane;
mod scale;
mod size;

pub use overlay::{on_photo, photo_svg};
pub use scale::{Scale, ScaleFault, marked};
pub use size::PhotoSize;

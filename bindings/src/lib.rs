//! The core of Pitface as a phone sees it: a [`Session`] over one folder, and one flat record a screen.
//!
//! A shell shows a [`ShownScreen`] as it comes, sends back the act of what was tapped, and does what only the platform can
//! ([`ShownDoes`]). An `if` about soil, places, time or records in a shell is a fault.
//!
//! # The other side of the border
//!
//! Kotlin and Swift are generated from the debug library and never committed:
//!
//! ```text
//! cargo build -p pitface-bindings
//! cargo run -p pitface-bindgen -- generate target/debug/libpitface_bindings.so -l kotlin --no-format -o DIR
//! cargo run -p pitface-bindgen -- generate target/debug/libpitface_bindings.so -l swift --no-format -o DIR
//! ```
//!
//! For Kotlin on a desktop (tests without a phone) add `--config bindings/host.toml`. The library must not be stripped: it
//! carries what the generator reads. A release library may be.

uniffi::setup_scaffolding!();

mod boundary;
mod bundle;
mod check;
mod drawing;
mod error;
mod folder;
mod given;
mod hand_over;
mod held;
mod key;
mod listen;
mod look_bundle;
mod made;
mod notes;
mod others;
mod photos;
mod position;
mod save;
mod session;
mod shown;
mod take_photo;
mod team_word;
mod undoing;

pub use bundle::BundleReady;
pub use check::{check_notes, read_field};
pub use drawing::{Anchor, Drawing, Point, Role, RoleColour, Shape, Theme, colours};
pub use error::PitfaceError;
pub use listen::{ChangeListener, Subscription};
pub use look_bundle::look_bundle;
pub use session::Session;
pub use shown::{
    ScreenKind, Section, ShownBlock, ShownButton, ShownDoes, ShownHeadline, ShownKeys, ShownPicture,
    ShownRow, ShownScreen, ShownThumbnail, ShownTouch, Stand,
};

//! Power cuts, full disks and failing disks under a store.
//!
//! [`shim`] stands between SQLite and the files: for folders with a [`Tape`] it records every change in its order and
//! fails calls on demand; all other files go to SQLite's own layer unseen. [`Disk`] plays a tape back and gives the states in which a
//! power cut could leave the files: what was synced is there, of the rest any part. [`Phone`] is a store with a
//! key, and [`scenario`] what is done with it.

mod disk;
mod phone;
pub mod scenario;
pub mod shim;
mod states;
mod tape;

pub use disk::{Disk, Fate, Files};
pub use phone::{Content, DEVICE, Phone};
pub use states::{Found, Wanted, go_through};
pub use tape::{Change, Fault, Tape};

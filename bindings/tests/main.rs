//! All tests of the session in one program.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may fail by it")]

mod edge_from_file;
mod files;
mod full_disk;
#[path = "../cli/tests/support/hostile.rs"]
mod hostile;
mod hostile_names;
mod kept;
mod photos_missing;
mod position;
mod read_only;
mod sharing;
mod starting;
mod support;
mod taking_in;
mod tapping;

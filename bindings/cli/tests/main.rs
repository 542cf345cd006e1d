//! All tests of the command line in one program.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may fail by it")]

mod asked;
mod commands;
mod faults;
mod gathered;
mod german;
mod ground;
mod help;
#[path = "support/hostile.rs"]
mod hostile;
mod hostile_names;
mod locked;
mod merging;
mod output;
mod permissions;
mod read_only;
mod reading_in;
mod readme;
mod redact;
mod set;
mod store;
mod support;
mod tables;

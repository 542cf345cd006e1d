//! The Pitface command line.
fn main() {}

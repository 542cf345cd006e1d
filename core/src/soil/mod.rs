//! Handbook tables and rules that know nothing of a pit. A value always carries the scheme it was read by.

pub mod texture;

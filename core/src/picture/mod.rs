//! Room of picture.

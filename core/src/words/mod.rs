//! Room of words.

//! Room of store.

//! A store that refuses, and whose folder is the same before and after.

use crate::merge_support::Phone;
use pitface_core::store::StoreError;

/// A store that has something, and whose folder must stay as it is.
pub struct Untouched {
    phone: Phone,
    folder: Vec<(String, Vec<u8>)>,
}

impl Untouched {
    pub fn new() -> Self {
        let (_, mut ben) = Phone::pair();
        ben.new_field("Elm Field");
        let folder = ben.bytes();
        Self { phone: ben, folder }
    }

    pub fn refuses(&mut self, file: &[u8]) {
        let taken = self.phone.store.take_in(file, 1_770_000_000_000);
        assert!(matches!(taken, Err(StoreError::Bundle(_))), "{taken:?}");
        assert_eq!(self.phone.bytes(), self.folder);
    }
}

//! The chain over a device's edits: equal chains, equal edits.

use super::{DeviceId, Edit};
use sha2::{Digest, Sha256};

/// The chain value at one edit, or before the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Chain(pub [u8; 32]);

impl Chain {
    /// Before a device's first edit.
    pub fn start(device: DeviceId) -> Self {
        Self(Sha256::new().chain_update("pitb1 chain").chain_update(device.0).finalize().into())
    }

    /// At the edit with this sequence, which follows on the one this value is of.
    #[must_use]
    pub fn then(self, sequence: u64, edit: &Edit) -> Self {
        Self(Sha256::new().chain_update(self.0).chain_update(edit.to_chain(sequence)).finalize().into())
    }
}

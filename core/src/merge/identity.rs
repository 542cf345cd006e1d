//! Who writes: an Ed25519 key a device, and the short id that follows from it.

use ed25519_dalek::{Signature, Signer as _, SigningKey, VerifyingKey};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fmt;

/// Identity of a device that writes: the first 16 bytes of the SHA-256 of its public key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub struct DeviceId(pub [u8; 16]);

impl DeviceId {
    /// The id of a public key.
    pub fn of_key(key: &[u8; 32]) -> Self {
        let mut id = [0; 16];
        id.copy_from_slice(&Sha256::digest(key)[..16]);
        Self(id)
    }

    /// All of it as 32 lower-case hex digits.
    pub fn to_hex(self) -> String {
        format!("{:032x}", u128::from_be_bytes(self.0))
    }

    /// The id of 32 hex digits; `None` if they are none.
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.len() == 32 && text.bytes().all(|digit| digit.is_ascii_hexdigit());
        u128::from_str_radix(text, 16).ok().filter(|_| digits).map(|id| Self(id.to_be_bytes()))
    }
}

/// Bytes of a fingerprint: 80 bits. To find a key whose fingerprint is that of a given one takes 2^80 tries, and nobody who compares it
/// by ear reads out more. Our judgement.
pub(crate) const FINGERPRINT_BYTES: u8 = 10;

/// The fingerprint that people compare: the first ten bytes as `1a2b-3c4d-5e6f-7a8b-9c0d`.
impl fmt::Display for DeviceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, pair) in self.0[..usize::from(FINGERPRINT_BYTES)].chunks_exact(2).enumerate() {
            let dash = if at > 0 { "-" } else { "" };
            write!(f, "{dash}{:02x}{:02x}", pair[0], pair[1])?;
        }
        Ok(())
    }
}

/// Signs with a key that the core never sees.
pub trait Signer {
    /// The public key, 32 bytes (RFC 8032).
    fn public_key(&self) -> [u8; 32];
    /// The Ed25519 signature over a message; `None` if the key cannot be used now.
    fn sign(&self, message: &[u8]) -> Option<[u8; 64]>;

    /// The id of the device that has this key.
    fn device(&self) -> DeviceId {
        DeviceId::of_key(&self.public_key())
    }
}

/// A key held in memory, from the 32 secret bytes of RFC 8032.
pub struct KeyFromSeed(SigningKey);

impl KeyFromSeed {
    /// The key of these secret bytes.
    pub fn new(seed: &[u8; 32]) -> Self {
        Self(SigningKey::from_bytes(seed))
    }
}

impl Signer for KeyFromSeed {
    fn public_key(&self) -> [u8; 32] {
        self.0.verifying_key().to_bytes()
    }
    fn sign(&self, message: &[u8]) -> Option<[u8; 64]> {
        Some(self.0.sign(message).to_bytes())
    }
}

/// Returns whether a signature is that of the key; keys of small order sign nothing.
pub(super) fn verifies(key: &[u8; 32], message: &[u8], signature: &[u8; 64]) -> bool {
    VerifyingKey::from_bytes(key)
        .is_ok_and(|key| key.verify_strict(message, &Signature::from_bytes(signature)).is_ok())
}

//! Identity of a record.

use std::fmt;
use uuid::{Builder, Uuid};

/// A UUID version 7 (RFC 9562): sorts by the time it was made, and is unique without a server.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize)]
#[serde(transparent)]
pub struct RecordId(Uuid);

impl RecordId {
    /// A new id from the caller's clock (Unix milliseconds) and ten random bytes.
    pub const fn new(unix_ms: u64, random: [u8; 10]) -> Self {
        Self(Builder::from_unix_timestamp_millis(unix_ms, &random).into_uuid())
    }

    /// The id in its 16 bytes.
    pub fn as_bytes(&self) -> &[u8; 16] {
        self.0.as_bytes()
    }

    /// An id from its 16 bytes; `None` unless they are a UUID version 7.
    pub fn from_bytes(bytes: [u8; 16]) -> Option<Self> {
        let uuid = Uuid::from_bytes(bytes);
        (uuid.get_version_num() == 7).then_some(Self(uuid))
    }

    /// An id from its usual text form; `None` unless it is a UUID version 7.
    pub fn parse(text: &str) -> Option<Self> {
        Uuid::try_parse(text).ok().and_then(|uuid| Self::from_bytes(*uuid.as_bytes()))
    }
}

impl<'de> serde::Deserialize<'de> for RecordId {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = <std::borrow::Cow<'de, str>>::deserialize(deserializer)?;
        Self::parse(&text).ok_or_else(|| serde::de::Error::custom("not a UUID of version 7"))
    }
}

impl fmt::Display for RecordId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

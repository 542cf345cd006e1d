//! What is looked for by name; it stands in the place, so that *back* leads from what was found to all fields.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Bytes kept: more letters than it takes to find a field.
const MOST: usize = 24;

/// Text to be found in names, in small letters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sought {
    bytes: [u8; MOST],
    length: u8,
}

impl Sought {
    /// Returns what was typed; nothing where that is blank.
    pub fn of(text: &str) -> Option<Self> {
        let text = text.trim().to_lowercase();
        let mut end = text.len().min(MOST);
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        let mut bytes = [0; MOST];
        bytes[..end].copy_from_slice(&text.as_bytes()[..end]);
        (end > 0).then_some(Self { bytes, length: end as u8 })
    }

    /// It, in small letters.
    pub fn text(&self) -> &str {
        std::str::from_utf8(&self.bytes[..usize::from(self.length)]).unwrap_or_default()
    }

    /// Returns whether a name has every word of it, in whatever order and case.
    pub fn is_in(&self, name: &str) -> bool {
        let name = name.to_lowercase();
        self.text().split_whitespace().all(|word| name.contains(word))
    }
}

impl Serialize for Sought {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.text())
    }
}

impl<'de> Deserialize<'de> for Sought {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::of(&text).ok_or_else(|| serde::de::Error::custom("nothing is sought"))
    }
}

//! Whole numbers in as few bytes as they need: unsigned LEB128, and zigzag for signed ones.

use super::Damage;

/// Adds a number.
pub(super) fn put(bytes: &mut Vec<u8>, mut number: u64) {
    while number >= 0x80 {
        bytes.push(number as u8 | 0x80);
        number >>= 7;
    }
    bytes.push(number as u8);
}

/// Adds a signed number.
pub(super) fn put_signed(bytes: &mut Vec<u8>, number: i64) {
    put(bytes, ((number << 1) ^ (number >> 63)).cast_unsigned());
}

/// A column being read.
pub(super) struct Reader<'bytes>(pub(super) &'bytes [u8]);

impl<'bytes> Reader<'bytes> {
    pub(super) fn number(&mut self) -> Result<u64, Damage> {
        let mut number = 0;
        for shift in (0..64).step_by(7) {
            let (&byte, rest) = self.0.split_first().ok_or(Damage::Damaged("a column is too short"))?;
            self.0 = rest;
            let bits = u64::from(byte & 0x7f);
            if shift == 63 && bits > 1 {
                break;
            }
            number |= bits << shift;
            if byte < 0x80 {
                return Ok(number);
            }
        }
        Err(Damage::Damaged("a number is too long"))
    }

    pub(super) fn signed(&mut self) -> Result<i64, Damage> {
        let number = self.number()?;
        Ok((number >> 1).cast_signed() ^ -(number & 1).cast_signed())
    }

    pub(super) fn bytes(&mut self, length: usize) -> Result<&'bytes [u8], Damage> {
        let (bytes, rest) =
            self.0.split_at_checked(length).ok_or(Damage::Damaged("a column is too short"))?;
        self.0 = rest;
        Ok(bytes)
    }

    /// Nothing may be left.
    pub(super) fn end(&self) -> Result<(), Damage> {
        if self.0.is_empty() { Ok(()) } else { Err(Damage::Damaged("a column is too long")) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn every_number_comes_back(number: u64, signed: i64) {
            let mut bytes = Vec::new();
            put(&mut bytes, number);
            put_signed(&mut bytes, signed);
            let mut reader = Reader(&bytes);
            prop_assert_eq!(reader.number(), Ok(number));
            prop_assert_eq!(reader.signed(), Ok(signed));
            prop_assert_eq!(reader.end(), Ok(()));
        }
    }

    #[test]
    fn a_number_beyond_64_bits_is_refused() {
        let mut most = vec![0xff; 9];
        most.push(1);
        assert_eq!(Reader(&most).number(), Ok(u64::MAX));
        most[9] = 2;
        assert!(Reader(&most).number().is_err());
        assert!(Reader(&[0x80; 11]).number().is_err());
    }
}

//! Just enough of CBOR (RFC 8949, 3) to see where items end without unpacking them: what a stranger packed into
//! kilobytes may unpack to gigabytes.

/// Major types.
pub(super) const BYTES: u8 = 2;
pub(super) const TEXT: u8 = 3;
pub(super) const ARRAY: u8 = 4;
const MAP: u8 = 5;
const TAG: u8 = 6;

/// The head of an item of known length: its major type, its number, and what follows.
pub(super) fn head(bytes: &[u8]) -> Option<(u8, u64, &[u8])> {
    let (first, rest) = bytes.split_first()?;
    let (major, short) = (first >> 5, first & 0x1f);
    let width = match short {
        0..24 => return Some((major, short.into(), rest)),
        24..28 => 1_usize << (short - 24),
        _ => return None,
    };
    let (number, rest) = rest.split_at_checked(width)?;
    Some((major, number.iter().fold(0, |number, byte| number << 8 | u64::from(*byte)), rest))
}

/// The content of a string at the beginning, and what follows.
pub(super) fn string(bytes: &[u8], wanted: u8) -> Option<(&[u8], &[u8])> {
    let (major, length, rest) = head(bytes)?;
    (major == wanted).then_some(())?;
    rest.split_at_checked(usize::try_from(length).ok()?)
}

/// How many items there are in bytes that are one item, those within counted; `None` if they are not one item.
pub(super) fn items(bytes: &[u8]) -> Option<u64> {
    let (mut rest, mut found, mut open) = (bytes, 0, 1_u64);
    while open > 0 {
        let (major, number, after) = head(rest)?;
        rest = match major {
            BYTES => string(rest, BYTES)?.1,
            TEXT => string(rest, TEXT).filter(|(text, _)| std::str::from_utf8(text).is_ok())?.1,
            _ => after,
        };
        let within = match major {
            ARRAY => number,
            MAP => number.checked_mul(2)?,
            TAG => 1,
            _ => 0,
        };
        open = (open - 1).checked_add(within)?;
        found += 1;
    }
    rest.is_empty().then_some(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of the examples in RFC 8949, appendix A, and cut or lengthened ones.
    #[test]
    fn items_are_counted_and_anything_else_is_refused() {
        let cases: [(&[u8], Option<u64>); 14] = [
            (&[0x00], Some(1)),
            (&[0x1b, 0, 0, 0, 0xe8, 0xd4, 0xa5, 0x10, 0], Some(1)),
            (&[0xfb, 0x7e, 0x37, 0xe4, 0x3c, 0x88, 0, 0x75, 0x9c], Some(1)),
            (&[0xf6], Some(1)),
            (&[0xc1, 0x1a, 0x51, 0x4b, 0x67, 0xb0], Some(2)),
            (&[0x44, 1, 2, 3, 4], Some(1)),
            (&[0x62, 0xc3, 0xbc, 0x61], None),
            (&[0x62, 0xc3, 0xbc], Some(1)),
            (&[0x62, 0xc3, 0x28], None),
            (&[0x83, 1, 0x82, 2, 3, 0x82, 4, 5], Some(8)),
            (&[0xa2, 1, 2, 3, 4], Some(5)),
            (&[0x9f, 0xff], None),
            (&[0xff; 33], None),
            (&[0xbb, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff], None),
        ];
        for (bytes, found) in cases {
            assert_eq!(items(bytes), found, "{bytes:x?}");
        }
        assert_eq!(items(&[]), None);
        assert_eq!(items(&[0x44, 1, 2, 3]), None);
    }
}

//! Photos without what cameras and programs noted in them: place, time, serial number.

/// Markers (ITU-T T.81, table B.1): start of the picture, its end, compressed data, and the segments with what cameras and
/// programs note.
pub(super) const START: u8 = 0xd8;
pub(super) const END: u8 = 0xd9;
pub(super) const SCAN: u8 = 0xda;
const APP0: u8 = 0xe0;
pub(super) const APP1: u8 = 0xe1;
const APP2: u8 = 0xe2;
const APP14: u8 = 0xee;
const APP15: u8 = 0xef;
const COMMENT: u8 = 0xfe;
/// Markers that stand inside compressed data: a byte that is none, and restarts.
const STUFFED: u8 = 0x00;
const RESTARTS: std::ops::RangeInclusive<u8> = 0xd0..=0xd7;

/// What is left of a photo without its notes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stripped {
    /// It has none.
    Same,
    /// The picture without them.
    Without(Vec<u8>),
    /// It is no JPEG: what it says cannot be known here.
    NoPicture,
}

/// A photo without its notes, see [`without_notes`].
pub fn stripped(photo: &[u8]) -> Stripped {
    match without_notes(photo) {
        None => Stripped::NoPicture,
        Some(kept) if kept == photo => Stripped::Same,
        Some(kept) => Stripped::Without(kept),
    }
}

/// A JPEG without what cameras and programs note in it beside the picture: of the segments for programs (APP0 to APP15) and comments only
/// those are kept that a picture is shown by (JFIF, the colour profile, Adobe's colours), so that Exif, XMP, IPTC, previews and what makers add are left
/// out, and so is what some cameras put behind the picture. Where Exif said how the picture is turned, a segment with that alone takes its
/// place. Everything else, the compressed picture above all, stays as it is byte for byte. One that is broken ends where it cannot be
/// read on, so that nothing unread goes out. `None`: it is no JPEG.
pub fn without_notes(jpeg: &[u8]) -> Option<Vec<u8>> {
    let rest = jpeg.strip_prefix(&[0xff, START])?;
    let mut kept = vec![0xff, START];
    strip(rest, &mut kept);
    Some(kept)
}

/// Returns whether a picture is shown by what stands in a segment for programs.
fn shows(marker: u8, content: &[u8]) -> bool {
    match marker {
        APP0 => content.starts_with(b"JFIF\0"),
        APP2 => content.starts_with(b"ICC_PROFILE\0"),
        APP14 => content.starts_with(b"Adobe"),
        _ => false,
    }
}

/// Copies what may be kept; `None` where it cannot be read on.
fn strip(jpeg: &[u8], kept: &mut Vec<u8>) -> Option<()> {
    let mut rest = jpeg;
    loop {
        let (&[0xff, marker], after) = rest.split_first_chunk()? else { return None };
        match marker {
            // A byte that only fills.
            0xff => rest = &rest[1..],
            END => {
                kept.extend([0xff, END]);
                return Some(());
            }
            _ => {
                let length = usize::from(u16::from_be_bytes(*after.first_chunk()?));
                let content = after.get(2..length.max(2))?;
                match marker {
                    APP1 => kept.extend(turned(content).into_iter().flat_map(turned_alone)),
                    APP0..=APP15 | COMMENT if !shows(marker, content) => {}
                    _ => kept.extend(&rest[..2 + length]),
                }
                rest = &after[length.max(2)..];
                if marker == SCAN {
                    let (compressed, after) = rest.split_at(compressed_bytes(rest));
                    kept.extend(compressed);
                    rest = after;
                }
            }
        }
    }
}

/// How far compressed data goes: up to the next marker that is none of its own.
fn compressed_bytes(bytes: &[u8]) -> usize {
    let ends = |pair: &[u8]| pair[0] == 0xff && pair[1] != STUFFED && !RESTARTS.contains(&pair[1]);
    bytes.windows(2).position(ends).unwrap_or(bytes.len())
}

const EXIF: &[u8; 6] = b"Exif\0\0";
/// Number of the entry that says how the picture is turned (Exif 2.32, 4.6.4), of the type of its value.
const ORIENTATION: u16 = 0x0112;
const SHORT: u16 = 3;

/// How the picture is turned, if Exif says so and it is not upright.
pub(super) fn turned(segment: &[u8]) -> Option<u16> {
    let tiff = segment.strip_prefix(EXIF)?;
    let big = match tiff.get(..2)? {
        b"MM" => true,
        b"II" => false,
        _ => return None,
    };
    let short = |at: usize| {
        let bytes = tiff.get(at..at + 2)?.try_into().ok()?;
        Some(if big { u16::from_be_bytes(bytes) } else { u16::from_le_bytes(bytes) })
    };
    let bytes = tiff.get(4..8)?.try_into().ok()?;
    let first = if big { u32::from_be_bytes(bytes) } else { u32::from_le_bytes(bytes) } as usize;
    let count = usize::from(short(first)?);
    let entry = (0..count).map(|entry| first + 2 + 12 * entry).find(|at| short(*at) == Some(ORIENTATION))?;
    let way = short(entry + 8).filter(|_| short(entry + 2) == Some(SHORT))?;
    (2..=8).contains(&way).then_some(way)
}

/// A segment that says only how the picture is turned.
fn turned_alone(way: u16) -> Vec<u8> {
    let mut content = EXIF.to_vec();
    content.extend(b"MM\0\x2a\0\0\0\x08\0\x01");
    content.extend(ORIENTATION.to_be_bytes());
    content.extend(SHORT.to_be_bytes());
    content.extend([0, 0, 0, 1]);
    content.extend(way.to_be_bytes());
    // The rest of the value, and no further list.
    content.extend([0; 6]);
    let length = u16::try_from(content.len() + 2).unwrap_or(u16::MAX);
    [&[0xff, APP1], length.to_be_bytes().as_slice(), &content].concat()
}

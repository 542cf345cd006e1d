//! How large a photo is when it is shown, read from the head of its file.

use super::share::{APP1, END, SCAN, START, turned};

/// Markers of a frame's head (ITU-T T.81, table B.1), which says the picture's size; DHT, JPG and DAC stand among them.
const FRAMES: std::ops::RangeInclusive<u8> = 0xc0..=0xcf;
const NO_FRAMES: [u8; 3] = [0xc4, 0xc8, 0xcc];
/// From this way of turning on (Exif 2.32, 4.6.4) width and height change places.
const ON_ITS_SIDE: u16 = 5;
/// What a PNG begins with, and where its head has the size (ISO/IEC 15948, 5.2 and 11.2.2).
const PNG: &[u8] = b"\x89PNG\r\n\x1a\n";
const PNG_WIDTH: usize = 16;

/// Width and height in pixels of a JPEG or PNG as it is shown, turned upright as Exif says; `None` of anything else and of a
/// head that is broken.
pub fn shown_size(photo: &[u8]) -> Option<[u32; 2]> {
    let size = if photo.starts_with(PNG) { png(photo) } else { jpeg(photo) }?;
    (!size.contains(&0)).then_some(size)
}

fn png(photo: &[u8]) -> Option<[u32; 2]> {
    let number = |at: usize| Some(u32::from_be_bytes(photo.get(at..at + 4)?.try_into().ok()?));
    Some([number(PNG_WIDTH)?, number(PNG_WIDTH + 4)?])
}

fn jpeg(photo: &[u8]) -> Option<[u32; 2]> {
    let mut rest = photo.strip_prefix(&[0xff, START])?;
    let mut way = None;
    loop {
        let (&[0xff, marker], after) = rest.split_first_chunk()? else { return None };
        match marker {
            // A byte that only fills.
            0xff => {
                rest = &rest[1..];
                continue;
            }
            SCAN | END => return None,
            _ => {}
        }
        let length = usize::from(u16::from_be_bytes(*after.first_chunk()?)).max(2);
        let content = after.get(2..length)?;
        if marker == APP1 {
            way = way.or_else(|| turned(content));
        }
        if FRAMES.contains(&marker) && !NO_FRAMES.contains(&marker) {
            let number =
                |at: usize| Some(u32::from(u16::from_be_bytes(content.get(at..at + 2)?.try_into().ok()?)));
            let (height, width) = (number(1)?, number(3)?);
            let lies = way.is_some_and(|way| way >= ON_ITS_SIDE);
            return Some(if lies { [height, width] } else { [width, height] });
        }
        rest = &after[length..];
    }
}

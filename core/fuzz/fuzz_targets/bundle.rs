//! A file of bundles: reading it neither panics nor takes more memory than its limits allow, and what was read can be
//! written again. Where no hash fits, none is asked for: half of the inputs are given the frame and the end they lack.
#![no_main]

use libfuzzer_sys::fuzz_target;
use pitface_core::merge::columns::{self, Standing};
use pitface_core::merge::{Bundle, DeviceId, FileWriter, Header, Part, PartKind, PhotoPiece, read_file};

fuzz_target!(|bytes: &[u8]| {
    let Some((way, bytes)) = bytes.split_first() else { return };
    match way % 4 {
        0 => read(bytes),
        // What a hash would have kept out.
        1 => {
            let mut file = FileWriter::new(Vec::new());
            let kind = if way & 4 == 0 { PartKind::Edits } else { PartKind::PhotoPiece };
            file.add(&Part::write(kind, bytes)).unwrap();
            read(&file.end().unwrap());
        }
        // What a signature would have kept out.
        2 => {
            let standing = Standing { device: DeviceId([7; 16]), first: 1 + u64::from(*way), witness: &[] };
            if let Ok(edits) = columns::read(standing, u64::from(*way >> 2), bytes) {
                let written = columns::write(standing, &edits).unwrap();
                assert_eq!(columns::read(standing, edits.len() as u64, &written).unwrap(), edits);
            }
        }
        _ => drop(Header::of_content(bytes)),
    }
});

fn read(file: &[u8]) {
    let Ok(parts) = read_file(file) else { return };
    for part in parts {
        match part.kind {
            PartKind::Edits => drop(Bundle::read(part.content)),
            PartKind::PhotoPiece => drop(PhotoPiece::read(part.content).map(|piece| piece.write())),
            _ => {}
        }
    }
}

//! A notes file: whatever stands in it, reading tells faults or gives notes that come back the same once written.
#![no_main]

use libfuzzer_sys::fuzz_target;
use pitface_core::record::RecordId;
use pitface_core::record::notes::{read, write};

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let mut made = 0;
    let mut new_id = || {
        made += 1;
        RecordId::new(made, [0; 10])
    };
    let Ok(first) = read(text, &mut new_id) else { return };
    let written = write(&first.notes);
    let again = read(&written, &mut new_id).expect("what was written can be read");
    assert_eq!(again.notes, first.notes);
});

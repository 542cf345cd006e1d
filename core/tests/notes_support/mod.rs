//! What the tests of the notes file share.

use pitface_core::record::{RecordId, notes};

/// Ids in counting order.
pub fn counting_ids() -> impl FnMut() -> RecordId {
    let mut count = 0;
    move || {
        count += 1;
        RecordId::new(count, [0; 10])
    }
}

/// Reads a good file.
pub fn read(text: &str) -> notes::Read {
    notes::read(text, &mut counting_ids()).unwrap_or_else(|faults| {
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        panic!("{}", told.join("\n"))
    })
}

//! Writes the Kotlin and Swift sides of `pitface-bindings`; how to call it stands in that crate's documentation.

fn main() {
    uniffi::uniffi_bindgen_main();
}

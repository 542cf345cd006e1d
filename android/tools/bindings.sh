#!/bin/bash
# The core as a library of this machine, into target/core, and its Kotlin side, into target/generated-bindings; or into the
# folder named instead of target.
# A run that changes nothing leaves the files alone, so that nothing is compiled again for it.
set -euo pipefail
cd "$(dirname "$0")/../.."
built=android/${1:-target}
out=$built/generated-bindings
cargo_target=${CARGO_TARGET_DIR:-target}
cargo build -q -p pitface-bindings -p pitface-bindgen
library=$cargo_target/debug/libpitface_bindings.so
fresh=$(mktemp -d)
trap 'rm -rf "$fresh"' EXIT
"$cargo_target/debug/pitface-bindgen" generate "$library" -l kotlin --no-format --config bindings/host.toml -o "$fresh"
mkdir -p "$out"
diff -qr "$fresh" "$out" > /dev/null || { rm -rf "$out" && cp -r "$fresh" "$out"; }
mkdir -p "$built/core"
cmp -s "$library" "$built/core/libpitface_bindings.so" || cp "$library" "$built/core/"

#!/bin/bash
# The core as a library of this machine, and its Kotlin side, into target/generated-bindings (or the folder named).
# A run that changes nothing leaves the files alone, so that nothing is compiled again for it.
set -euo pipefail
cd "$(dirname "$0")/../.."
out=android/${1:-target}/generated-bindings
cargo build -q -p pitface-bindings -p pitface-bindgen
library=target/debug/libpitface_bindings.so
fresh=$(mktemp -d)
trap 'rm -rf "$fresh"' EXIT
target/debug/pitface-bindgen generate "$library" -l kotlin --no-format --config bindings/host.toml -o "$fresh"
mkdir -p "$out"
diff -qr "$fresh" "$out" > /dev/null || { rm -rf "$out" && cp -r "$fresh" "$out"; }

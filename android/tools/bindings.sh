#!/bin/bash
# The core as a library of this machine, and its Kotlin side, into target/generated-bindings.
set -euo pipefail
cd "$(dirname "$0")/.."
mkdir -p target/generated-bindings

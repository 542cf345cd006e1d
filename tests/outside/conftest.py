"""What the outside checks share: the CSV that the core's example programs print.

They are built by `cargo build --workspace --examples`. PITFACE_BIN_DIR names the folder they were built into; it is
`target/debug` (or `debug` below CARGO_TARGET_DIR) where not set.
"""

import csv
import os
import subprocess
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


def built_into() -> Path:
    target = Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target"))
    return Path(os.environ.get("PITFACE_BIN_DIR", target / "debug"))


@cache
def rows_of(name: str) -> list[dict[str, str]]:
    program = built_into() / "examples" / name
    if not program.exists():
        pytest.fail(f"{program} is not there; build it with `cargo build --workspace --examples`")
    printed = subprocess.run([program], capture_output=True, text=True, check=True, timeout=60).stdout
    return list(csv.DictReader(printed.splitlines()))


@pytest.fixture(scope="session")
def example():
    """The rows that an example program prints, by its name."""
    return rows_of

"""Bundles, read by a program that shares nothing with the one that wrote them."""

import hashlib
import json
import random
import struct
import subprocess
from pathlib import Path

import cbor2
import pytest
from conftest import ROOT, built_into
from reader import Damaged, Edits, Piece, TooNew, as_json, read, sha

GOLDEN = sorted((ROOT / "tests/vectors/bundles").glob("*/*.pitb"))


def told(part) -> dict:
    """A part as the JSON beside a file tells it."""
    if isinstance(part, Edits):
        header = part.header
        names = {key: [[one.hex(), sequence, chain.hex()] for one, sequence, chain in header[key]] for key in (7, 8)}
        return {
            "kind": 1,
            "device": header[1].hex(),
            "signer": sha(header[2])[:16].hex(),
            "first": header[3],
            "last": header[4],
            "witness": names[7],
            "seen": names[8],
            "holder": header.get(13, ""),
            "written_by": header[9],
            "sealed_ms": header[10],
            "ahead_ms": header.get(12),
            "edits": [as_json(edit) for edit in part.edits],
        }
    if isinstance(part, Piece):
        return {
            "kind": 2,
            "photo": part.photo.hex(),
            "size": part.size,
            "offset": part.offset,
            "bytes": len(part.content),
            "hash_of_bytes": sha(part.content).hex(),
        }
    return {"kind": part.kind, "content": part.content.hex()}


def holds(path: Path) -> None:
    """A file holds what the JSON beside it tells."""
    expected = json.loads(path.with_suffix(".json").read_text())["parts"]
    for part in expected:
        for edit in part.get("edits", []):
            if isinstance(edit["value"], dict):
                value = edit["value"]
                edit["value"] = value["head"] + value["repeated"] * value["times"]
    parts = read(path.read_bytes())
    doubles = [part.pop("doubles", None) for part in expected]
    assert [told(part) for part in parts] == expected
    for part, bits in zip(parts, doubles):
        if bits:
            decoded = [cbor2.loads(edit.value) for edit in part.edits[: len(bits)]]
            assert [struct.pack(">d", value).hex() for value in decoded] == bits


def test_there_are_golden_bundles():
    assert len(GOLDEN) >= 9


@pytest.mark.parametrize("path", GOLDEN, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_golden_bundle_holds_what_is_told_of_it(path):
    holds(path)


@pytest.mark.parametrize("path", GOLDEN, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_changed_bit_or_a_lost_tail_is_refused(path):
    data = path.read_bytes()
    lots = random.Random(path.name)
    for at in [*range(16), *lots.sample(range(len(data)), 60)]:
        changed = bytearray(data)
        changed[at] ^= 1 << lots.randrange(8)
        with pytest.raises((Damaged, TooNew)):
            read(bytes(changed))
        with pytest.raises((Damaged, TooNew)):
            read(data[:at])


def test_what_rust_wrote_moments_ago_is_read(tmp_path):
    program = built_into() / "examples" / "golden_bundles"
    if not program.exists():
        pytest.fail(f"{program} is not there; build it with `cargo build --workspace --examples`")
    subprocess.run([program, tmp_path, "fresh"], check=True, timeout=60)
    written = sorted(tmp_path.glob("*.pitb"))
    assert {path.name for path in written} >= {path.name for path in GOLDEN}
    for path in written:
        holds(path)
    pieces = [part for part in read((tmp_path / "photo_in_three.pitb").read_bytes()) if isinstance(part, Piece)]
    photo = b"".join(piece.content for piece in pieces)
    assert len(pieces) == 3 and len(photo) == pieces[0].size
    assert hashlib.sha256(photo).digest() == pieces[0].photo


def test_files_put_one_behind_the_other_are_one_file():
    together = b"".join(path.read_bytes() for path in GOLDEN)
    assert len(read(together)) == sum(len(read(path.read_bytes())) for path in GOLDEN)

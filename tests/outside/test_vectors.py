"""The data files that Rust, Kotlin and Swift read: strict JSON, and a source beside every case.

Reference: the general-purpose validator `jsonschema`, draft 2020-12.
"""

import json

import jsonschema
import pytest
from conftest import ROOT

VECTORS = ROOT / "tests/vectors"
SOIL = ["classes", "moisture", "physics", "rooting", "texture"]
# What the file is, then lists of cases.
CASES = {
    "type": "object",
    "required": ["what"],
    "properties": {"what": {"type": "string", "minLength": 20}},
    "minProperties": 2,
    "additionalProperties": {
        "type": "array",
        "minItems": 1,
        "items": {"type": "object", "required": ["source"], "properties": {"source": {"type": "string", "minLength": 5}}},
    },
}


def strict(pairs):
    names = [name for name, _ in pairs]
    assert len(names) == len(set(names)), f"a key stands twice among {names}"
    return dict(pairs)


def no_constant(name):
    raise AssertionError(f"{name} is not JSON")


@pytest.mark.parametrize("path", sorted(VECTORS.rglob("*.json")), ids=lambda path: str(path.relative_to(VECTORS)))
def test_it_is_strict_json(path):
    json.loads(path.read_bytes().decode("utf-8"), object_pairs_hook=strict, parse_constant=no_constant)


@pytest.mark.parametrize("name", SOIL)
def test_every_case_of_the_soil_room_has_a_source(name):
    jsonschema.validate(json.loads((VECTORS / f"{name}.json").read_text("utf-8")), CASES)

"""The notes file's JSON Schema against jsonschema: good files pass, files of a wrong form do not.

Reference: the general-purpose validator `jsonschema`, draft 2020-12.
"""

import json
from copy import deepcopy
from pathlib import Path

import jsonschema
import pytest

ROOT = Path(__file__).resolve().parents[2]
VECTORS = ROOT / "tests" / "vectors"
SCHEMA = json.loads((ROOT / "core/src/record/notes/notes.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
SKIPPED = {"target", ".git", ".venv", "out", "node_modules"}
GOOD = [
    path
    for folder in ("tests", "bindings", "core")
    for path in sorted((ROOT / folder).rglob("*.notes.json"))
    if not SKIPPED & set(path.relative_to(ROOT).parts)
] + [VECTORS / "notes_full.json"]
BAD = json.loads((VECTORS / "bad_inputs.json").read_text("utf-8"))


def broken(case):
    """The file of a case: its own, or the good one with some values set and some keys removed."""
    if "text" in case:
        return json.loads(case["text"])
    file = deepcopy(BAD["good"])
    for pointer, value in case.get("set", {}).items():
        parent, key = parent_of(file, pointer)
        parent[key] = value
    for pointer in case.get("remove", []):
        parent, key = parent_of(file, pointer)
        del parent[key]
    return file


def parent_of(file, pointer):
    *path, key = pointer.split("/")[1:]
    for step in path:
        file = file[int(step) if isinstance(file, list) else step]
    return file, int(key) if isinstance(file, list) else key


def test_the_schema_is_one():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_there_are_files_to_check():
    assert len(GOOD) > 10


@pytest.mark.parametrize("path", GOOD, ids=lambda path: path.name)
def test_a_good_file_passes(path):
    errors = [f"{error.json_path}: {error.message}" for error in VALIDATOR.iter_errors(json.loads(path.read_text("utf-8")))]
    assert not errors


def test_the_good_file_that_the_bad_ones_come_from_passes():
    VALIDATOR.validate(BAD["good"])


@pytest.mark.parametrize("case", [case for case in BAD["cases"] if "schema" in case], ids=lambda case: case["name"])
def test_a_file_of_a_wrong_form_does_not(case):
    assert VALIDATOR.is_valid(broken(case)) == (case["schema"] == "accepts")


@pytest.mark.parametrize("case", [case for case in BAD["cases"] if "schema" not in case], ids=lambda case: case["name"])
def test_what_carries_no_verdict_is_not_json(case):
    with pytest.raises((json.JSONDecodeError, RecursionError)):
        json.loads(case["text"], parse_constant=reject_constant)


def reject_constant(name):
    raise json.JSONDecodeError(f"{name} is not JSON", name, 0)

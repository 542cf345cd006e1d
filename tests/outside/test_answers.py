"""Every command's answer on the demo against its JSON Schema in bindings/cli/schemas.

Reference: the general-purpose validator `jsonschema`, draft 2020-12.
"""

import json
import os
import subprocess

import jsonschema
import pytest
from conftest import ROOT, built_into
from referencing import Registry, Resource

SCHEMAS = ROOT / "bindings/cli/schemas"
PARTS = json.loads((SCHEMAS / "parts.schema.json").read_text("utf-8"))
REGISTRY = Registry().with_resource("parts.schema.json", Resource.from_contents(PARTS))
WINGED = "winged feet, 50 cm apart"
SET = ["set", "--tip", "35cm", "--foot", "80", "--legs", "3", "--spacing", "60cm", "--speed", "6", "--soil", "medium"]
MORE = ["--tractor", "120", "--drive", "front_assist", "--cost", "79", "--against", "foot=45", "--cohesion", "20"]
# Typed one after the other in one folder. Where several lines begin with one command, its answers take several forms.
TYPED = [
    ["demo", "--out", "out"],
    ["read", "out/mere_piece.notes.json"],
    ["read", "out/mere_piece.notes.json", "out/withy_bottom.notes.json", "--store", "kept.pitface"],
    ["read", "--store", "out/estate.pitface"],
    *([question, "--store", "out/estate.pitface", "--field", field] for question in ["next", "where", "draw", "behind", "ground"]
      for field in ["Lapwing Ground", "Mere Piece"]),
    ["next", "out/fox_heath.notes.json"],
    ["where", "out/lapwing_ground.notes.json", "--at", "2.5160", "54.4960"],
    ["ground", "out/lapwing_ground.notes.json", "--machine", WINGED, "--cost-per-hour", "95", "--fuel-price", "0.75"],
    ["page", "--store", "out/estate.pitface", "--out", "estate.html"],
    ["page", "out/mere_piece.notes.json", "--card", "--out", "card.html"],
    ["tables", "--store", "out/estate.pitface", "--out", "tables"],
    ["boundary", "tables/fields.gpkg"],
    ["boundary", "tables/fields.geojson", "--area", "1", "--into", "out/mere_piece.notes.json", "--anyway"],
    ["boundary", "tables/fields.geojson", "--area", "1", "--store", "out/estate.pitface", "--field", "Fox Heath", "--anyway"],
    ["roll", "--surface", "crumbles", "--at-depth", "short_lengths"],
    ["roll", "--surface", "thread", "--at-depth", "thread", "--texture", "sand"],
    ["texture", "--sand", "40", "--silt", "42", "--clay", "18"],
    ["texture", "--sand", "40", "--silt", "42", "--clay", "18", "--scheme", "uk"],
    ["texture", "--feel", "ball"],
    ["sample", "--ring", "50", "51", "--wet", "188", "--dry", "155", "--sand", "40", "--silt", "42", "--clay", "18"],
    ["sample", "--volume", "250", "--dry", "412.5", "--stones", "132.5", "--cone", "300psi"],
    ["sample", "--cone", "3MPa", "--moisture", "moist", "--subsoil", "sand"],
    ["class"],
    ["class", "rupture_force_moist_usda", "30"],
    ["tip", "280", "310", "330", "--drains", "40cm", "--reach", "300"],
    SET,
    [*SET, *MORE, "--friction", "30", "--draw", "section.svg"],
    ["fields", "out/estate.pitface"],
    ["write", "out/estate.pitface", "--out", "notes"],
    ["write", "out/estate.pitface", "--field", "Fox Heath"],
    ["new"],
    ["new", "starling.notes.json"],
    ["schema"],
    ["completions", "bash"],
    ["manual", "--out", "man"],
    ["hand-over", "out/estate.pitface", "--out", "estate.pitb"],
    ["look", "estate.pitb"],
    ["take-in", "kept.pitface", "estate.pitb"],
    ["partners", "kept.pitface"],
    ["settle", "kept.pitface"],
    ["hand-over", "kept.pitface", "--field", "Fox Heath", "--out", "chosen"],
    ["history", "kept.pitface"],
    ["join", "out/estate.pitface", "Fox Heath", "Far Drove"],
    ["undo", "out/estate.pitface"],
    ["undo", "out/estate.pitface", "--redo"],
    ["bring-back", "kept.pitface"],
    ["redact", "out/estate.pitface"],
    ["check", "kept.pitface"],
]  # fmt: skip
REFUSED = [["plough"], ["read", "nowhere.notes.json"], ["tip", "28"], ["read", "--store", "nowhere.pitface"]]


def schema(name: str) -> dict:
    return json.loads((SCHEMAS / f"{name}.schema.json").read_text("utf-8"))


def validator(name: str) -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(schema(name), registry=REGISTRY)


@pytest.fixture(scope="module")
def typed(tmp_path_factory):
    place = tmp_path_factory.mktemp("typed")
    program = os.environ.get("PITFACE", built_into() / "pitface")
    environment = {**os.environ, "XDG_CONFIG_HOME": str(place / "settings"), "LC_ALL": "C"}

    def type_(arguments: list[str], code: int) -> dict:
        if arguments[0] == "draw":
            arguments = [*arguments, "--out", "drawn"]
        command = [program, "--json", *arguments]
        done = subprocess.run(command, capture_output=True, text=True, cwd=place, env=environment, timeout=120)
        assert done.returncode == code, f"{arguments}: {done.stderr}"
        return json.loads(done.stdout)

    return [(arguments, type_(arguments, 0)) for arguments in TYPED], [(arguments, type_(arguments, 2)) for arguments in REFUSED]


@pytest.mark.parametrize("path", sorted(SCHEMAS.glob("*.json")), ids=lambda path: path.name)
def test_the_schema_itself_is_sound(path):
    jsonschema.Draft202012Validator.check_schema(json.loads(path.read_text("utf-8")))


def test_every_answer_is_as_its_schema_says(typed):
    for arguments, answer in typed[0]:
        faults = [f"{fault.json_path}: {fault.message[:200]}" for fault in validator(arguments[0]).iter_errors(answer)]
        assert not faults, f"{arguments}: {faults}"


def test_what_is_refused_is_as_its_schema_says(typed):
    for arguments, answer in typed[1]:
        validator("errors").validate(answer)
        assert answer["errors"][0]["todo"], arguments


def test_every_schema_is_used(typed):
    used = {arguments[0] for arguments in TYPED} | {"errors", "parts"}
    assert used == {path.name.removesuffix(".schema.json") for path in SCHEMAS.glob("*.json")}


def test_a_spoilt_answer_is_no_answer(typed):
    """The schemas can say no: an answer without one of its keys, or with a sentence for a code, does not pass."""
    for arguments, answer in typed[0]:
        said = validator(arguments[0])
        assert not said.is_valid({**answer, "format": 2}), arguments
        fields = answer.get("fields")
        if fields and arguments[0] != "schema":
            assert not said.is_valid({**answer, "fields": [{**fields[0], "field_id": "none"}]}), arguments
            assert not said.is_valid({**answer, "fields": {}}), arguments
    read = next(answer for arguments, answer in typed[0] if arguments[0] == "read")
    pit = read["fields"][0]["pits"][0]
    pit["layers"][0]["condition"] = "rather firm"
    assert not validator("read").is_valid(read)


def test_the_keys_of_fields_and_pits_are_all_described(typed):
    described = set(schema("read")["properties"]["fields"]["items"]["properties"]) | set(PARTS["$defs"]["field"]["properties"])
    parts = [PARTS["$defs"][part]["properties"] for part in ["pit", "placed_pit", "read_pit"]]
    of_pits = {key for part in parts for key in part}
    for arguments, answer in typed[0]:
        for field in answer["fields"] if arguments[0] == "read" else []:
            assert set(field) <= described, set(field) - described
            assert all(set(pit) <= of_pits for pit in field["pits"]), field["pits"]

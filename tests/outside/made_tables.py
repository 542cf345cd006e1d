"""What the checks of files for other programs share: fields written by the built `pitface`, and ways into each file."""

import csv
import json
import math
import os
import shutil
import sqlite3
import subprocess
from pathlib import Path

import pyproj
import pytest
from conftest import ROOT, built_into
from geographiclib.geodesic import Geodesic

ESTATE = sorted((ROOT / "bindings/cli/demo").glob("*.notes.json"))
FEATURES = ["fields", "zones", "parts", "lines", "pits", "after_digs"]
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")

# Texts that are lost somewhere on the way as a rule, as far as a notes file takes them: breaks and signs that nobody sees it refuses.
TEXTS = [
    '=HYPERLINK("x")', "+1", "-1", "@sum", "＝1", "'=1", "''", 'say "so", he said', "caf\u00e9", "cafe\u0301", "👩\u200d🌾 Ann", "שדה ארוך",
    " spaces ", "a;b,c", "null", "NaN", "1e5",
]  # fmt: skip
# Places whose digits are lost as a rule.
PLACES = [
    [0.1 + 0.2, 1 / 3], [-0.0, 5e-324], [180.0, 90.0], [-180.0, -90.0], [179.99999999, -89.99999999], [-1e-9, 1e-9],
    [2.50000005, 54.49999995], [-2.123456789012345, 54.987654321098765],
]  # fmt: skip


def run(place: Path, *arguments) -> dict:
    return asked(place, "tables", *arguments)


def asked(place: Path, *arguments) -> dict:
    program = os.environ.get("PITFACE", built_into() / "pitface")
    if shutil.which(program) is None:
        pytest.fail(f"{program} is not there; build it with `cargo build -p pitface`")
    settings = {**os.environ, "XDG_CONFIG_HOME": str(place / "settings")}
    done = subprocess.run([program, "--json", *arguments], capture_output=True, text=True, cwd=place, env=settings, timeout=120)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def notes(**more) -> dict:
    return {"pitface": 1, "field": {"name": "Long Sedge"}, "pits": [], **more}


def write(place: Path, *files: dict) -> list[str]:
    names = [f"{index}.notes.json" for index in range(len(files))]
    for name, content in zip(names, files):
        (place / name).write_text(json.dumps(content), encoding="utf-8")
    return names


def rows(place: Path, table: str) -> list[dict]:
    with (place / "out" / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


def unguarded(cell: str) -> str:
    return cell.removeprefix("'")


def features(place: Path, table: str | None = None) -> list[dict]:
    collection = json.loads((place / "out/fields.geojson").read_text(encoding="utf-8"))
    assert collection["type"] == "FeatureCollection"
    return [one for one in collection["features"] if table in (None, one["properties"]["table"])]


def packed(place: Path, table: str) -> list[dict]:
    base = sqlite3.connect(place / "out/fields.gpkg")
    base.row_factory = sqlite3.Row
    return [dict(row) for row in base.execute(f'SELECT * FROM "{table}" ORDER BY fid')]


def polygons(geometry: dict) -> list:
    return {"Polygon": [geometry["coordinates"]], "MultiPolygon": geometry["coordinates"]}[geometry["type"]]


def signed(ring) -> float:
    """Twice the signed area of a ring, counted from its first corner."""
    around = [(x - ring[0][0], y - ring[0][1]) for x, y in ring]
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(around, around[1:]))


def on_ellipsoid(rings: list) -> float:
    """Area on the ellipsoid in square metres by geographiclib, and the same by pyproj."""
    total = 0.0
    for ring in rings:
        polygon = Geodesic.WGS84.Polygon()
        for longitude, latitude in ring[:-1]:
            polygon.AddPoint(latitude, longitude)
        ours = polygon.Compute(False, True)[2]
        theirs, _ = pyproj.Geod(ellps="WGS84").polygon_area_perimeter(*zip(*ring[:-1]))
        assert math.isclose(ours, theirs, rel_tol=1e-7), (ours, theirs)
        total += ours
    return total


@pytest.fixture(scope="session")
def estate(tmp_path_factory) -> Path:
    place = tmp_path_factory.mktemp("estate")
    said = run(place, *ESTATE, "--out", "out")
    assert len(said["fields"]) == len(ESTATE) and len(said["written"]) == 12
    assert sorted(said["written"]) == sorted(f"out/{name}" for name in os.listdir(place / "out"))
    return place


HARD_FIELDS = {
    # East first, west first, and one with a bay that the antimeridian cuts in two pieces on one side.
    "east first": [[179.998, -16.8], [-179.998, -16.8], [-179.998, -16.797], [179.998, -16.797]],
    "west first": [[-179.998, -16.797], [-179.998, -16.8], [179.998, -16.8], [179.998, -16.797]],
    "a bay": [
        [179.997, -16.80012345678901], [-179.997, -16.8], [-179.997, -16.797], [179.999, -16.7971],
        [179.999, -16.7976], [-179.9985, -16.7982], [-179.9985, -16.7988], [179.997, -16.799],
    ],
    "on the line": [[179.99, 60.0], [-180.0, 60.0], [180.0, 60.004], [179.99, 60.004]],
    "from the line": [[-180.0, 60.0], [-180.0, 60.004], [179.99, 60.004], [179.99, 60.0]],
}  # fmt: skip


@pytest.fixture(scope="session")
def hard(tmp_path_factory) -> Path:
    """Fields across the antimeridian, with headland, gateways, drains; texts and places of every kind."""
    place = tmp_path_factory.mktemp("hard")
    across = [
        notes(
            field={
                "name": name,
                "outline": ring,
                "headland_mm": 24000,
                "parts": [{"zone": "patch", "at": [-179.99999, ring[0][1] + 0.001], "radius_m": 60}],
                "lines": [{"kind": "drain", "along": [ring[0], ring[1], ring[2]], "depth_mm": 800}],
            }
        )
        for name, ring in HARD_FIELDS.items()
    ]
    pits = [{"place": "open", "by": text} for text in TEXTS]
    pits += [{"place": "reference", "at": at, "accuracy_m": 2.0**53} for at in PLACES]
    texts = notes(field={"name": 'say "so", he said', "crop_now": "wheat " * 13, "organic_matter": 0.1 + 0.2}, pits=pits)
    files = write(place, *across, texts, notes())
    said = run(place, *files, "--out", "out")
    assert sum(field["pits_without_place"] for field in said["fields"]) == len(TEXTS)
    return place


@pytest.fixture(params=["estate", "hard"])
def place(request) -> Path:
    return request.getfixturevalue(request.param)

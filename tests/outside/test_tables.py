"""What leaves for other programs, read by other programs: GeoJSON, CSV and GeoPackage."""

import csv
import json
import math
import os
import shutil
import sqlite3
import subprocess
from pathlib import Path

import geopandas
import pyproj
import pytest
import shapely
from conftest import ROOT, built_into
from geographiclib.geodesic import Geodesic
from geopackage import faults, shape_of

csv.field_size_limit(1 << 24)
ESTATE = sorted((ROOT / "bindings/cli/demo").glob("*.notes.json"))
FEATURES = ["fields", "zones", "parts", "lines", "pits", "after_digs"]
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")

# Texts that are lost somewhere on the way as a rule.
TEXTS = [
    '=HYPERLINK("x")', "+1", "-1", "@sum", "\t=1", "＝1", "'=1", "''", 'say "so", he said', "two\nlines\r\nand three",
    "caf\u00e9", "cafe\u0301", "👩\u200d🌾 und 🏴󠁧󠁢󠁷󠁬󠁳󠁿", "שדה ארוך", "\u202eright to left", " spaces ", "a;b,c", "null", "NaN", "1e5", "a\0b", "\ufeffmark",
]  # fmt: skip
# Places whose digits are lost as a rule.
PLACES = [
    [0.1 + 0.2, 1 / 3], [-0.0, 5e-324], [180.0, 90.0], [-180.0, -90.0], [179.99999999, -89.99999999], [-1e-9, 1e-9],
    [2.50000005, 54.49999995], [-2.123456789012345, 54.987654321098765],
]  # fmt: skip


def run(place: Path, *arguments) -> dict:
    program = os.environ.get("PITFACE", built_into() / "pitface")
    if shutil.which(program) is None:
        pytest.fail(f"{program} is not there; build it with `cargo build -p pitface`")
    settings = {**os.environ, "XDG_CONFIG_HOME": str(place / "settings")}
    done = subprocess.run([program, "--json", "tables", *arguments], capture_output=True, text=True, cwd=place, env=settings, timeout=120)
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
    (east, north), around = ring[0], [(x - ring[0][0], y - ring[0][1]) for x, y in ring]
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


@pytest.fixture(scope="module")
def estate(tmp_path_factory) -> Path:
    place = tmp_path_factory.mktemp("estate")
    said = run(place, *ESTATE, "--out", "out")
    assert said["fields"] == len(ESTATE) and len(said["written"]) == 12
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


@pytest.fixture(scope="module")
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
    texts = notes(field={"name": TEXTS[8], "crop_now": "wheat " * 200_000, "organic_matter": 0.1 + 0.2}, pits=pits)
    files = write(place, *across, texts, notes())
    said = run(place, *files, "--out", "out")
    assert said["pits_without_place"] == len(TEXTS)
    return place


@pytest.fixture(params=["estate", "hard"])
def place(request) -> Path:
    return request.getfixturevalue(request.param)


def test_geojson_is_as_rfc_7946_wants_it(place):
    text = (place / "out/fields.geojson").read_text(encoding="utf-8")
    for feature in json.loads(text, parse_float=str)["features"]:
        geometry = feature["geometry"]
        flat = [] if geometry is None else str(geometry["coordinates"]).translate(str.maketrans("[],'", "    ")).split()
        assert all(len(number.partition(".")[2]) <= 7 for number in flat), flat
        assert "-0.0" not in flat
    for feature in features(place):
        assert feature["type"] == "Feature" and set(feature) >= {"geometry", "properties"}
        if feature["geometry"] is None:
            continue
        shape = shapely.from_geojson(json.dumps(feature["geometry"]))
        assert shape.is_valid and not shape.is_empty, feature
        for one in getattr(shape, "geoms", [shape]):
            west, south, east, north = one.bounds
            assert -180 <= west <= east <= 180 and -90 <= south <= north <= 90 and east - west < 1
        if shape.geom_type.endswith("Polygon"):
            for edge, *holes in polygons(feature["geometry"]):
                assert all(ring[0] == ring[-1] and len(ring) >= 4 for ring in [edge, *holes])
                assert signed(edge) > 0 and all(signed(hole) < 0 for hole in holes)


def test_gdal_reads_every_feature(place):
    read = geopandas.read_file(place / "out/fields.geojson")
    assert read.crs.to_epsg() == 4326
    assert len(read) == len(features(place))
    assert dict(read.table.value_counts()) == {
        table: len(rows(place, table)) for table in [*FEATURES, "passes"] if rows(place, table)
    }


def test_a_headland_goes_round_its_field(estate):
    headlands = [one for one in features(estate, "zones") if one["properties"]["zone"] == "headland" and one["geometry"]]
    rings = [len(polygon) for one in headlands for polygon in polygons(one["geometry"])]
    # A gateway cuts one of them open.
    assert len(rings) > 3 and sorted(set(rings)) == [1, 2] and rings.count(1) == 1


def test_areas_are_those_of_the_ellipsoid(estate):
    for feature in features(estate, "fields"):
        [[ring]] = polygons(feature["geometry"])
        assert math.isclose(on_ellipsoid([ring]), feature["properties"]["area_m2"], rel_tol=1e-7)
    for row in packed(estate, "fields"):
        shape, _, _ = shape_of(row["shape"])
        assert math.isclose(on_ellipsoid([piece.exterior.coords for piece in shape.geoms]), row["area_m2"], rel_tol=1e-7)


def test_zones_of_a_field_share_its_ground(estate):
    for field in features(estate, "fields"):
        number = field["properties"]["field_number"]
        zones = [one for one in features(estate, "zones") if one["properties"]["field_number"] == number]
        area = sum(one["properties"]["area_m2"] or 0 for one in zones)
        assert math.isclose(area, field["properties"]["area_m2"], rel_tol=1e-7)
        shapes = [shapely.from_geojson(json.dumps(one["geometry"])) for one in zones if one["geometry"]]
        whole = shapely.from_geojson(json.dumps(field["geometry"]))
        # A hundredth of a metre along the edges is what rounding takes or gives.
        assert math.isclose(sum(shape.area for shape in shapes), whole.area, rel_tol=1e-4)
        assert math.isclose(shapely.union_all(shapes).area, whole.area, rel_tol=1e-4)


def test_a_field_across_the_antimeridian_is_cut_there(hard):
    fields = features(hard, "fields")
    exact = packed(hard, "fields")
    for feature, row, (name, ring) in zip(fields, exact, HARD_FIELDS.items()):
        shape, _, _ = shape_of(row["shape"])
        pieces = [list(piece.exterior.coords) for piece in shape.geoms]
        assert len(pieces) == {"a bay": 3}.get(name, 1 if "line" in name else 2), name
        assert math.isclose(on_ellipsoid(pieces), row["area_m2"], rel_tol=1e-7), name
        rounded = [edge for edge, in polygons(feature["geometry"])]
        assert len(rounded) == len(pieces)
        # Every corner noted is there with all its digits; what the cut adds lies on the antimeridian.
        corners = {tuple(corner) for piece in pieces for corner in piece}
        noted = {tuple(corner) for corner in ring}
        assert {corner for corner in noted if abs(corner[0]) < 180} <= corners
        assert all(abs(longitude) == 180 for longitude, _ in corners - noted)
        for piece in pieces:
            assert len({longitude > 0 for longitude, _ in piece}) == 1, "a piece lies on one side"
    if_cut = [one for one in features(hard, "zones") if (one["geometry"] or {}).get("type") == "MultiPolygon"]
    assert {one["properties"]["zone"] for one in if_cut} >= {"open", "headland", "patch"}
    for one in features(hard, "lines")[:3]:
        assert one["geometry"]["type"] == "MultiLineString"


def test_a_circle_has_its_area(hard):
    for row in packed(hard, "parts"):
        shape, _, _ = shape_of(row["shape"])
        pieces = [piece.exterior.coords for piece in shape.geoms]
        assert len(pieces) == 2
        assert math.isclose(on_ellipsoid(pieces), math.pi * row["radius_m"] ** 2, rel_tol=1e-6)


def sevens(degrees: float) -> float:
    return round(degrees, 7) + 0.0


def near(given: float, wanted: float) -> bool:
    """The same to seven decimals: a half may be rounded either way."""
    return abs(given - wanted) <= 5.0000001e-8 and given == round(given, 7)


def optional(value, kind=str):
    return kind(value) if value not in (None, "") else None


def test_csv_says_what_the_notes_say(place):
    files = ESTATE if place.name.startswith("estate") else sorted(place.glob("*.notes.json"))
    all_notes = [json.loads(file.read_text(encoding="utf-8")) for file in files]
    tables = {table: rows(place, table) for table in ["fields", "pits", "steps", "rolls", "passes", "after_digs", "lines", "parts"]}
    expected = {table: [] for table in tables}
    places = {"pits": [], "after_digs": []}
    walks: dict = {}
    for number, note in enumerate(all_notes, 1):
        field = note["field"]
        keys = ["headland_mm", "tramline_mm", "wheel_track_mm", "tyre_mm", "crop_now", "last_crop", "last_loosened"]
        keys += ["last_traffic", "drains_mm", "mole_drains_mm", "services_mm", "clearance_mm", "reach_mm", "texture"]
        expected["fields"].append((number, field["name"], *(field.get(key) for key in keys)))
        for pit_number, pit in enumerate(note["pits"], 1):
            keys = ["place", "by", "dug", "dug_to_mm", "face", "accuracy_m"]
            expected["pits"].append((number, pit_number, *(pit.get(key) for key in keys)))
            places["pits"].append(pit.get("at"))
            steps = [(step["to_mm"], step.get("comes_away"), step.get("resistance")) for step in pit.get("walk", [])]
            expected["steps"] += [(number, pit_number, index, *step) for index, step in enumerate(steps, 1)]
            expected["rolls"] += [(number, pit_number, None, roll["depth_mm"], roll["roll"]) for roll in pit.get("rolls", [])]
        digs = 0
        for pass_number, one in enumerate(note.get("passes", []), 1):
            keys = ["machine", "zone", "extent", "done", "tip_mm", "speed_kmh", "driven_on"]
            expected["passes"].append((number, pass_number, *(one.get(key) for key in keys)))
            for dig in one.get("after_digs", []):
                digs += 1
                keys = ["before", "dug", "by", "profile", "smear", "lift", "clods", "plates", "feet", "roots", "subsoil_up", "old_slots"]
                lengths = [" ".join(map(str, dig.get(key, []))) or None for key in ["firm_mm", "slots_mm"]]
                expected["after_digs"].append((number, digs, pass_number, *(dig.get(key) for key in keys), *lengths))
                places["after_digs"].append(dig.get("at"))
        for line in field.get("lines", []):
            expected["lines"].append((number, line["kind"], line.get("depth_mm")))
        for part in field.get("parts", []):
            expected["parts"].append((number, part.get("name"), part["zone"], part.get("radius_m")))
    expected["rolls"] += [
        (number, None, pass_number, roll["depth_mm"], roll["roll"])
        for number, note in enumerate(all_notes, 1)
        for pass_number, one in enumerate(note.get("passes", []), 1)
        for roll in one.get("rolls", [])
    ]
    whole = {"field_number", "pit", "pass", "step", "after_dig", "before"}

    def cell(row, key):
        text = row[key]
        if text == "":
            return None
        if key in whole or (key.endswith("_mm") and key not in ("firm_mm", "slots_mm")):
            return int(text)
        if key in ("accuracy_m", "speed_kmh", "radius_m"):
            return float(text)
        if key in ("subsoil_up", "old_slots"):
            return {"true": True, "false": False}[text]
        return unguarded(text)

    def got(table, keys):
        return [tuple(cell(row, key) for key in keys.split()) for row in tables[table]]

    said = {
        "fields": "field_number field headland_mm tramline_mm wheel_track_mm tyre_mm crop_now last_crop last_loosened "
        "last_traffic drains_mm mole_drains_mm services_mm clearance_mm reach_mm texture",
        "pits": "field_number pit place by dug dug_to_mm face accuracy_m",
        "steps": "field_number pit step to_mm comes_away resistance",
        "rolls": "field_number pit pass depth_mm roll",
        "passes": "field_number pass machine zone extent done tip_mm speed_kmh driven_on",
        "after_digs": "field_number after_dig pass before dug by profile smear lift clods plates feet roots subsoil_up "
        "old_slots firm_mm slots_mm",
        "lines": "field_number kind depth_mm",
        "parts": "field_number name zone radius_m",
    }
    for table, keys in said.items():
        assert got(table, keys) == expected[table], table
    for table, noted in places.items():
        for row, at in zip(tables[table], noted, strict=True):
            given = [row["longitude_deg"], row["latitude_deg"]]
            assert (given == ["", ""]) == (at is None)
            for text, degrees in zip(given, at or []):
                assert near(float(text), degrees) and len(text.partition(".")[2]) <= 7, (text, degrees)


def test_no_text_begins_as_a_formula(hard):
    numbers = {"longitude_deg", "latitude_deg"}
    for table in ["fields", "pits"]:
        for row in rows(hard, table):
            for key, text in row.items():
                assert key in numbers or not text.startswith(FORMULA), (key, text)
    assert [unguarded(row["by"]) for row in rows(hard, "pits")][: len(TEXTS)] == TEXTS


def test_csv_lines_end_and_begin_as_rfc_4180_wants(place):
    for file in (place / "out").glob("*.csv"):
        text = file.read_bytes()
        assert text.endswith(b"\r\n") and not text.startswith(b"\xef\xbb\xbf")
        text.decode("utf-8")
        with file.open(encoding="utf-8", newline="") as open_file:
            header, *others = list(csv.reader(open_file, strict=True))
        assert len(set(header)) == len(header) and all(len(row) == len(header) for row in others)


def test_a_geopackage_breaks_no_requirement(place):
    assert faults(place / "out/fields.gpkg") == []


def test_geopandas_reads_each_layer_as_it_was_noted(hard):
    read = geopandas.read_file(hard / "out/fields.gpkg", layer="pits")
    assert read.crs.to_epsg() == 4326
    places = [shape for shape in read.geometry if shape is not None]
    # Every digit, and the sign of a zero.
    assert [[repr(degrees) for degrees in (shape.x, shape.y)] for shape in places] == [[repr(float(x)), repr(float(y))] for x, y in PLACES]
    assert [row["by"] for row in packed(hard, "pits")][: len(TEXTS)] == TEXTS
    assert {row["accuracy_m"] for row in packed(hard, "pits")} == {None, 2.0**53}
    for table in ["steps", "layers", "rolls", "passes", *FEATURES]:
        assert len(geopandas.read_file(hard / "out/fields.gpkg", layer=table)) == len(rows(hard, table))


def test_the_three_say_the_same(place):
    for table in ["fields", "zones", "parts", "lines", "pits", "passes", "after_digs"]:
        for feature, row, line in zip(features(place, table), packed(place, table), rows(place, table), strict=True):
            for key, value in feature["properties"].items():
                if key == "table" or key in ("steps", "layers", "rolls"):
                    continue
                stored = row[key]
                text = line[key]
                if isinstance(value, list):
                    assert stored == text == " ".join(map(str, value))
                elif isinstance(value, bool):
                    assert stored == int(value) and text == str(value).lower()
                elif isinstance(value, (int, float)):
                    assert stored == value == float(text)
                else:
                    assert stored == value == (unguarded(text) if text else None), key
    for table in ["steps", "layers", "rolls"]:
        nested = [inner for one in features(place) for inner in one["properties"].get(table, [])]
        stored = packed(place, table)
        assert len(nested) == len(stored)
        assert all(inner.items() <= row.items() for inner, row in zip(nested, stored))


def test_a_pit_without_a_position_stands_on_no_map(hard):
    pits = features(hard, "pits")
    assert [pit["geometry"] for pit in pits[: len(TEXTS)]] == [None] * len(TEXTS)
    assert all(row["shape"] is None for row in packed(hard, "pits")[: len(TEXTS)])


def test_the_last_field_has_nothing(hard):
    number = len(rows(hard, "fields"))
    assert rows(hard, "fields")[-1]["field"] == "Long Sedge" and features(hard, "fields")[-1]["geometry"] is None
    assert all(int(row["field_number"]) < number for table in ["pits", "parts", "lines"] for row in rows(hard, table))


def test_a_store_gives_what_its_files_gave(estate, tmp_path):
    run(tmp_path, *ESTATE, "--out", "from_files", "--store", "kept.pitface")
    run(tmp_path, "--out", "out", "--store", "kept.pitface")
    for table in ["fields", "pits", "layers", "zones", "rolls", "after_digs"]:

        def plain(place):
            ours = [{key: text for key, text in row.items() if not key.endswith("_id")} for row in rows(place, table)]
            ours = [{key: text for key, text in row.items() if key != "field_number"} for row in ours]
            return sorted(map(str, ours))

        assert plain(tmp_path) == plain(estate)
    ids = [row["pit_id"] for row in rows(tmp_path, "pits")]
    assert all(ids) and len(set(ids)) == len(ids)
    assert {one["id"] for one in features(tmp_path, "pits")} == set(ids)
    # Without a store nobody keeps the ids that were made for one reading.
    assert {row["pit_id"] for row in rows(estate, "pits")} == {""}


SPOILT = {
    "another application": "PRAGMA application_id = 1",
    "another version": "PRAGMA user_version = 10200",
    "no row -1": "DELETE FROM gpkg_spatial_ref_sys WHERE srs_id = -1",
    "a table untold": "DELETE FROM gpkg_contents WHERE table_name = 'steps'",
    "another kind of geometry": "UPDATE gpkg_geometry_columns SET geometry_type_name = 'POINT' WHERE table_name = 'fields'",
    "a line among places": "UPDATE pits SET shape = (SELECT shape FROM fields LIMIT 1) WHERE fid = 1",
    "a damaged header": "UPDATE pits SET shape = x'4751' || substr(shape, 3) WHERE fid = 1",
    "half a blob": "UPDATE fields SET shape = substr(shape, 1, 60) WHERE fid = 1",
    "an extent that is not so": "UPDATE gpkg_contents SET max_x = 0 WHERE table_name = 'pits'",
    "a reference nobody has": "UPDATE gpkg_geometry_columns SET srs_id = 4327 WHERE table_name = 'pits'",
    "no time of change": "UPDATE gpkg_contents SET last_change = 'yesterday' WHERE table_name = 'pits'",
    "a text for a number": "UPDATE pits SET dug_to_mm = 'deep' WHERE fid = 1",
    "no geometry columns": "DROP TABLE gpkg_geometry_columns",
}
# GDAL's own checks say nothing of these.
UNTOLD_BY_GDAL = {"a table untold", "an extent that is not so", "a text for a number", "another version", "a damaged header", "half a blob"}


def spoilt(estate: Path, into: Path, how: str) -> Path:
    path = into / "spoilt.gpkg"
    shutil.copy(estate / "out/fields.gpkg", path)
    base = sqlite3.connect(path)
    base.execute(SPOILT[how])
    base.commit()
    base.close()
    return path


@pytest.mark.parametrize("how", SPOILT)
def test_a_spoilt_geopackage_is_refused(estate, tmp_path, how):
    assert faults(spoilt(estate, tmp_path, how)) != []


def gdals_checks(path: Path) -> subprocess.CompletedProcess:
    """GDAL's validator, which Debian ships with its Python binding (python3-gdal)."""
    python, module = "/usr/bin/python3", "osgeo_utils.samples.validate_gpkg"
    if not Path(python).exists() or subprocess.run([python, "-c", f"import {module}"], capture_output=True).returncode:
        pytest.skip("GDAL's validator is not installed (Debian: python3-gdal)")
    clean = {"PATH": "/usr/bin:/bin"}
    return subprocess.run([python, "-m", module, path], capture_output=True, text=True, env=clean, timeout=120)


def test_gdals_validator_passes_it(place):
    checked = gdals_checks(place / "out/fields.gpkg")
    assert checked.returncode == 0, checked.stderr


@pytest.mark.parametrize("how", sorted(SPOILT.keys() - UNTOLD_BY_GDAL))
def test_gdals_validator_refuses_a_spoilt_one(estate, tmp_path, how):
    assert gdals_checks(spoilt(estate, tmp_path, how)).returncode != 0

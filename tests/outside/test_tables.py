"""What leaves for other programs, read by other programs: GeoJSON and CSV, and all three against each other."""

import csv
import json
import math

import geopandas
import shapely
from geopackage import shape_of
# `estate`, `hard` and `place` are fixtures.
from made_tables import (
    asked, ESTATE, FEATURES, FORMULA, HARD_FIELDS, TEXTS, estate, features, hard, on_ellipsoid, packed, place, polygons, rows, run, signed, unguarded,
)  # fmt: skip


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
    run(tmp_path, *ESTATE, "--out", "from_files")
    asked(tmp_path, "read", *ESTATE, "--store", "kept.pitface")
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

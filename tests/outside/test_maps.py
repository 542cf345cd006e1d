"""Maps for other programs, read by other programs: styles, photos and words in the GeoPackage, shapefiles and task data for terminals.

GDAL (through pyogrio), pyshp, Pillow, xmlschema and isoxml read; `task_data.xsd` and the checks of the GeoPackage are written from the
published structures and share nothing with the program.
"""

import hashlib
import io
import json
import shutil
import sqlite3
import subprocess
import xml.etree.ElementTree as ElementTree
import zipfile
from pathlib import Path

import geopandas
import numpy
import pytest
import shapefile
import shapely
import xmlschema
from conftest import ROOT
from geopackage import faults
from isoxml.converter.np_grid import to_numpy_array
from isoxml.util.isoxml_io import isoxml_from_path
from made_tables import ESTATE, FEATURES, asked, estate, features, notes, packed, rows, signed, write
from PIL import Image
from test_geopackage import gdals_checks

SCHEMA = xmlschema.XMLSchema10(ROOT / "tests/outside/task_data.xsd")
DEPTH, WORK_STATE = b"\x00\x33", b"\x01\x21"
# `GPSLatitude` and the rest hang on this tag of Exif.
GPS = 0x8825


@pytest.fixture(scope="module")
def terminal(tmp_path_factory) -> Path:
    place = tmp_path_factory.mktemp("terminal")
    asked(place, "tables", *ESTATE, "--out", "out", "--also", "shapefile,task-data")
    return place


def wanted(place: Path) -> dict:
    """The ground to be loosened, by number of the field and zone, with the range of its depth, as the GeoPackage has it."""
    read = geopandas.read_file(place / "out/fields.gpkg", layer="zones")
    read = read[(read.call == "loosen") & ~read.geometry.isna()]
    return {(row.field_number, row.zone): (row.geometry, row.tip_least_mm, row.tip_most_mm) for row in read.itertuples()}


def test_a_shapefile_has_the_depth_of_each_zone(terminal):
    ground = wanted(terminal)
    assert len(ground) >= 2
    read = geopandas.read_file(terminal / "out/loosen.zip")
    assert read.crs.to_epsg() == 4326 and read.is_valid.all() and set(read.geom_type) == {"Polygon"}
    assert {(row.FIELD_NO, row.ZONE) for row in read.itertuples()} == set(ground)
    for (field, zone), (shape, least, most) in ground.items():
        its = read[(read.FIELD_NO == field) & (read.ZONE == zone)]
        assert shapely.union_all(its.geometry).symmetric_difference(shape).area <= shape.area * 1e-9
        assert all(least <= depth <= most for depth in its.DEPTH_MM) and (its.DEPTH_CM == its.DEPTH_MM // 10).all()
    everything = geopandas.read_file(terminal / "out/zones.zip")
    assert (everything[everything.ADVICE != "loosen"].DEPTH_MM == 0).all() and len(everything) > len(read)


@pytest.mark.skipif(shutil.which("ogr2ogr") is None, reason="SKIPPED: no ogr2ogr (Debian: gdal-bin), so no map was put through it")
@pytest.mark.parametrize("packed_as", ["fields.gpkg", "zones.zip", "loosen.zip"])
def test_ogr2ogr_takes_over_every_row_without_a_word(terminal, tmp_path, packed_as):
    source = terminal / "out" / packed_as
    layers = FEATURES if packed_as == "fields.gpkg" else [source.stem]
    path = source if packed_as == "fields.gpkg" else f"/vsizip/{source}/{source.stem}.shp"
    for layer in layers:
        out = tmp_path / f"{layer}.geojson"
        command = ["ogr2ogr", "-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=15", out, path, layer]
        done = subprocess.run(command, capture_output=True, text=True, env={"PATH": "/usr/bin:/bin"}, timeout=60)
        # GDAL before 3.7 says of version 1.4, which it reads, that it does not know it.
        said = [line for line in done.stderr.splitlines() if "GeoPackage user_version" not in line]
        assert (done.returncode, said) == (0, []), layer
        taken = json.loads(out.read_text(encoding="utf-8"))["features"]
        if packed_as != "fields.gpkg":
            with shapefile.Reader(str(source)) as read:
                assert len(taken) == len(read) > 1
                assert [one["properties"]["ZONE"] for one in taken] == [record["ZONE"] for record in read.records()]
            assert all(one["geometry"] for one in taken)
            continue
        assert len(taken) == len(rows(terminal, layer)) > 0
        for one, row in zip(taken, packed(terminal, layer)):
            # Numbers with decimals are written with other digits in GeoJSON.
            kept = {name: value for name, value in row.items() if name not in ("fid", "shape") and name in one["properties"]}
            assert len(kept) == len(row) - 2
            plain = {name: value for name, value in kept.items() if not isinstance(value, float)}
            assert {name: one["properties"][name] for name in plain} == plain, layer
            assert (one["geometry"] is None) == (row["shape"] is None)


def test_a_shapefile_is_as_old_readers_want_it(terminal):
    with shapefile.Reader(str(terminal / "out/zones.zip")) as read:
        assert read.shapeType == shapefile.POLYGON
        assert all(name.isascii() and len(name) <= 10 for name, *_ in read.fields[1:])
        holes = 0
        for shape in read.shapes():
            starts = [*shape.parts, len(shape.points)]
            rings = [shape.points[one:other] for one, other in zip(starts, starts[1:])]
            assert all(ring[0] == ring[-1] for ring in rings)
            # The edge runs clockwise, holes the other way (ESRI Shapefile Technical Description, July 1998, page 8).
            assert signed(rings[0]) < 0 and all(signed(ring) > 0 for ring in rings[1:])
            holes += len(rings) - 1
        assert holes > 0
    with zipfile.ZipFile(terminal / "out/zones.zip") as packed_files:
        assert packed_files.testzip() is None
        assert sorted(packed_files.namelist()) == [f"zones.{ending}" for ending in ["cpg", "dbf", "prj", "shp", "shx"]]


@pytest.fixture(scope="module")
def task_data(terminal, tmp_path_factory):
    place = tmp_path_factory.mktemp("stick")
    with zipfile.ZipFile(terminal / "out/TASKDATA.zip") as packed_files:
        assert packed_files.testzip() is None
        packed_files.extractall(place)
    return place / "TASKDATA"


def test_task_data_holds_to_its_structure(task_data):
    text = (task_data / "TASKDATA.XML").read_text(encoding="utf-8")
    assert list(SCHEMA.iter_errors(text)) == []
    for good, bad in {
        'B="340"': 'B="3400"', 'A="0033"': 'A="33"', '"PFD2"': '"PFD-2"', ' H="0"': "", 'E="VPN1"': 'E="VPN9"',
        'A="3"': 'A="255"', 'B="Loosen': 'B="Loosen to this depth and not any deeper',
    }.items():  # fmt: skip
        assert good in text and list(SCHEMA.iter_errors(text.replace(good, bad))), f"{bad} is let through"


def test_a_second_reader_finds_the_ground_with_its_depth(terminal, task_data):
    ground = wanted(terminal)
    read, grids = isoxml_from_path(task_data)
    numbers = [int(row["field_number"]) for row in rows(terminal, "fields")]
    assert len(read.tasks) == len({field for field, _ in ground}) == len(grids)
    names = {row["field"]: int(row["field_number"]) for row in rows(terminal, "fields")}
    assert len(names) == len(numbers)
    for task, field in zip(read.tasks, read.partfields):
        assert task.designator == f"Advice: loosen {field.designator}"[:32].strip()
        assert task.device_allocations == [] and task.partfield_id_ref == field.id
        leave, *zones = task.treatment_zones
        assert [(value.process_data_ddi, value.process_data_value) for value in leave.process_data_variables] == [(WORK_STATE, 0)]
        its = {zone: ground_of for (number, zone), ground_of in ground.items() if number == names[field.designator]}
        assert len(zones) == len(its)
        grid = task.grids[0]
        cells = to_numpy_array(grids[grid.filename], grid)
        worked = 0.0
        for zone in zones:
            values = {value.process_data_ddi: value.process_data_value for value in zone.process_data_variables}
            assert set(values) == {DEPTH, WORK_STATE} and values[WORK_STATE] == 1
            assert all(value.device_element_id_ref is None for value in zone.process_data_variables)
            shapes = [shape for shape, least, most in its.values() if least <= values[DEPTH] <= most]
            shape = shapely.union_all(shapes)
            for row, column in numpy.argwhere(cells == zone.code):
                south = float(grid.minimum_north_position) + row * float(grid.cell_north_size)
                west = float(grid.minimum_east_position) + column * float(grid.cell_east_size)
                middle = shapely.Point(west + float(grid.cell_east_size) / 2, south + float(grid.cell_north_size) / 2)
                assert shape.contains(middle), (row, column)
                worked += float(grid.cell_east_size) * float(grid.cell_north_size)
        area = sum(shape.area for shape, _, _ in its.values())
        assert 0.5 * area < worked <= area


def test_nothing_goes_to_a_terminal_without_exact_places(tmp_path):
    with pytest.raises(AssertionError, match="a terminal needs places as noted"):
        asked(tmp_path, "tables", ESTATE[0], "--out", "out", "--positions", "coarse", "--also", "task-data")


def styles_of(place: Path) -> dict:
    base = sqlite3.connect(place / "out/fields.gpkg")
    # As QGIS looks for a default style: empty text for the schema, name and geometry column as they are written.
    asked_for = "SELECT f_table_name, styleQML FROM layer_styles WHERE f_table_schema = '' AND f_geometry_column = 'shape' AND useAsDefault = 1"
    return {table: ElementTree.fromstring(qml) for table, qml in base.execute(asked_for)}


def test_each_layer_has_a_style_with_a_hatching_for_each_call(estate):
    styles = styles_of(estate)
    assert set(styles) == {"fields", "zones", "parts", "lines", "pits", "after_digs"}
    for table, style in styles.items():
        columns = set(packed(estate, table)[0]) if packed(estate, table) else None
        expression = style.find("labeling/settings/text-style").get("fieldName")
        assert columns is None or set(expression.split('"')[1::2]) <= columns, table
    renderer = styles["zones"].find("renderer-v2")
    assert renderer.get("type") == "categorizedSymbol" and renderer.get("attr") == "call"
    symbols = {symbol.get("name"): symbol for symbol in renderer.findall("symbols/symbol")}
    labels = {one.get("value"): (one.get("label"), one.get("symbol")) for one in renderer.findall("categories/category")}
    for row in packed(estate, "zones"):
        label, symbol = labels[row["call"] or ""]
        assert row["call"] is None or row["call_label"] == label
        hatched = {layer.get("class") for layer in symbols[symbol].findall("layer")}
        assert ("LinePatternFill" in hatched) == (row["call"] not in (None, "leave_it", "dig_again")), row["call"]


@pytest.fixture(scope="module")
def pictured(tmp_path_factory) -> Path:
    """A pit with a photo that says where it was taken, one that is not there, and one pit without."""
    place = tmp_path_factory.mktemp("pictured")
    exif = Image.Exif()
    exif[GPS] = {1: "N", 2: (54.0, 30.0, 0.0), 3: "E", 4: (2.0, 30.0, 0.0)}
    image = io.BytesIO()
    Image.linear_gradient("L").convert("RGB").save(image, "JPEG", exif=exif)
    photo = image.getvalue()
    assert Image.open(io.BytesIO(photo)).getexif().get_ifd(GPS)
    name = hashlib.sha256(photo).hexdigest()
    (place / "photos").mkdir()
    (place / "photos" / name).write_bytes(photo)
    kept = {"sha256": name, "size_bytes": len(photo), "media_type": "image/jpeg"}
    missing = {**kept, "sha256": "0" * 64}
    pits = [{"place": "open"}, {"place": "reference", "photos": [{**kept, "depth_mm": 300}, missing]}]
    said = asked(place, "tables", *write(place, notes(pits=pits)), "--out", "out", "--also", "photos")
    assert (said["photos"], said["photos_left_out"]) == (1, 1)
    return place


def test_photos_are_related_files_without_their_places(pictured):
    path = pictured / "out/fields.gpkg"
    assert faults(path) == []
    checked = gdals_checks(path)
    assert checked.returncode == 0, checked.stderr
    base = sqlite3.connect(path)
    # OGC 18-000, requirements 1 to 3 and 7: both tables are told as extensions, the relation is one of media.
    told = base.execute("SELECT table_name FROM gpkg_extensions WHERE extension_name = 'gpkg_related_tables' AND scope = 'read-write'")
    assert {table for (table,) in told} == {"gpkgext_relations", "pits_photos"}
    [(left, key, right, its_key, kind, between)] = base.execute(
        "SELECT base_table_name, base_primary_column, related_table_name, related_primary_column, relation_name, mapping_table_name FROM gpkgext_relations"
    )
    assert (left, right, kind) == ("pits", "photos", "media")
    joined = f"SELECT pit, content_type, data FROM {between} JOIN {left} ON {key} = base_id JOIN {right} ON {right}.{its_key} = related_id"
    [(pit, media, data)] = base.execute(joined)
    picture = Image.open(io.BytesIO(data))
    assert (pit, media, picture.size) == (2, "image/jpeg", (256, 256)) and not picture.getexif()


@pytest.mark.parametrize("positions", ["coarse", "none"])
def test_places_are_coarse_or_left_out_in_every_file(tmp_path, positions):
    said = asked(tmp_path, "tables", *ESTATE, "--out", "out", "--positions", positions)
    assert said["positions"] == positions
    for table in ["fields", "zones", "parts", "lines", "pits", "after_digs"]:
        read = geopandas.read_file(tmp_path / "out/fields.gpkg", layer=table)
        places = [place for place in read.geometry if place is not None]
        assert (places != []) == (positions == "coarse" and table in ("pits", "after_digs")), table
        for place in places:
            assert all(abs(degrees - round(degrees, 2)) < 1e-9 for degrees in (place.x, place.y))
    kinds = {feature["geometry"]["type"] for feature in features(tmp_path) if feature["geometry"]}
    assert kinds == ({"Point"} if positions == "coarse" else set())
    assert {row["accuracy_m"] for row in rows(tmp_path, "pits")} == {""}
    assert faults(tmp_path / "out/fields.gpkg") == []


def test_words_and_units_are_those_asked_for(tmp_path, estate):
    asked(tmp_path, "tables", *ESTATE, "--out", "out", "--language", "de", "--units", "in")
    german, english = rows(tmp_path, "zones"), rows(estate, "zones")
    assert [row["call"] for row in german] == [row["call"] for row in english]
    assert {row["call_label"] for row in german if row["call"] == "loosen"} == {"Lockern"}
    for one, other in zip(german, english):
        assert (one["tip_least_in"] == "") == (other["tip_least_mm"] == "")
        if one["tip_least_in"]:
            assert round(float(one["tip_least_in"]) * 25.4) == int(other["tip_least_mm"])
    labels = {one.get("label") for one in styles_of(tmp_path)["zones"].iter("category")}
    assert "Lockern" in labels and "Loosen" not in labels

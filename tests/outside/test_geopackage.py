"""The GeoPackage, by requirement, by GDAL's own checks, and as geopandas reads it; a spoilt one is refused."""

import shutil
import sqlite3
import subprocess
from pathlib import Path

import geopandas
import pytest
from geopackage import faults
# `estate`, `hard` and `place` are fixtures.
from made_tables import FEATURES, PLACES, TEXTS, estate, hard, packed, place, rows


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

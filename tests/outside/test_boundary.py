"""Outlines and lines in files that general libraries wrote, read by `pitface boundary`: names, places and areas are those of the library
and of GeographicLib and PROJ.

`tests/vectors/boundary` holds the same files, as `write_all` made them, for the Rust tests to break:
`python tests/outside/test_boundary.py tests/vectors/boundary` writes them anew."""

import json
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import geopandas
import gpxpy.gpx
import pyproj
import pytest
import shapefile
import shapely
import simplekml
from geographiclib.geodesic import Geodesic

ROOT = Path(__file__).resolve().parents[2]

# Two fields with a hole and two parts, a drain, and a gateway as a point. Invented, in the North Sea.
MERE = [(2.5000, 54.5000), (2.5060, 54.5004), (2.5064, 54.5040), (2.5021, 54.5061), (2.4996, 54.5030)]
POND = [(2.5020, 54.5020), (2.5030, 54.5020), (2.5030, 54.5026), (2.5020, 54.5026)]
WITHY = [[(2.5100, 54.5000), (2.5140, 54.5000), (2.5140, 54.5020)], [(2.5150, 54.5000), (2.5180, 54.5002), (2.5170, 54.5030)]]
DRAIN = [(2.5005, 54.5010), (2.5030, 54.5015), (2.5055, 54.5010)]
GATE = (2.5, 54.5)

ELLIPSOID = Geodesic.WGS84


def hectares(ring):
    polygon = ELLIPSOID.Polygon()
    for longitude, latitude in ring:
        polygon.AddPoint(latitude, longitude)
    return abs(polygon.Compute()[2]) / 10_000


def metres(line):
    ways = zip(line, line[1:])
    return sum(ELLIPSOID.Inverse(a[1], a[0], b[1], b[0])["s12"] for a, b in ways)


def frame(code=4326, names=("Mere Piece", "Withy Bottom")):
    shapes = [shapely.Polygon(MERE, [POND]), shapely.MultiPolygon([shapely.Polygon(ring) for ring in WITHY])]
    return geopandas.GeoDataFrame({"name": list(names), "crop": ["wheat", "oats"]}, geometry=shapes, crs=4326).to_crs(code)


def geojson(path):
    frame().to_file(path, driver="GeoJSON", layer_options={"RFC7946": "YES", "COORDINATE_PRECISION": "9"})


def geojson_of_2008(path):
    """With a reference system, as the form of 2008 could have it: UTM zone 31 on WGS 84."""
    frame(32631).to_file(path, driver="GeoJSON", layer_options={"COORDINATE_PRECISION": "4"})


def geopackage(code):
    def write(path):
        frame(code).to_file(path, driver="GPKG", layer="fields")
        line = geopandas.GeoDataFrame({"name": ["Drain"]}, geometry=[shapely.LineString(DRAIN)], crs=4326)
        line.to_crs(code).to_file(path, driver="GPKG", layer="lines")

    return write


def zipped(path, stem):
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for part in sorted(path.parent.glob(f"{stem}.*")):
            if part != path:
                archive.write(part, f"fields/{part.name}")
                part.unlink()


def shapefile_by_gdal(code):
    def write(path):
        frame(code).to_file(path.with_name("by_gdal.shp"), driver="ESRI Shapefile", encoding="ISO-8859-1")
        zipped(path, "by_gdal")

    return write


def shapefile_by_pyshp(path):
    """With heights, rings turned the wrong way round, a shape that is nothing, an umlaut in a Western table, and no .prj."""
    with shapefile.Writer(str(path.with_name("by_pyshp")), shapeType=shapefile.POLYGONZ, encoding="latin-1") as writer:
        writer.field("CROP", "C", 20)
        writer.field("SCHLAG", "C", 40)
        closed = [[*place, 3.5] for place in [*MERE, MERE[0]]]
        hole = [[*place, 3.5] for place in [*POND, POND[0]]]
        writer.polyz([closed, hole])
        writer.record("wheat", "Mühlstück")
        writer.null()
        writer.record("none", "Nothing")
        writer.polyz([[[*place, 0] for place in [*ring, ring[0]]] for ring in WITHY])
        writer.record("oats", "Withy Bottom")
    zipped(path, "by_pyshp")


def kml(path):
    document = simplekml.Kml()
    folder = document.newfolder(name="Farm")
    folder.newpolygon(name="Mere Piece", outerboundaryis=[*MERE, MERE[0]], innerboundaryis=[[*POND, POND[0]]])
    both = folder.newmultigeometry(name="Withy Bottom")
    for ring in WITHY:
        both.newpolygon(outerboundaryis=[*ring, ring[0]])
    document.newlinestring(name="Drain", coords=DRAIN)
    document.newpoint(name="Gate", coords=[GATE])
    document.savekmz(str(path)) if path.suffix == ".kmz" else document.save(str(path))


def gpx(path):
    """A walk round the field that ends 3 m from where it began, with a pause, and a drain as a route."""
    file = gpxpy.gpx.GPX()
    track = gpxpy.gpx.GPXTrack(name="Mere Piece")
    file.tracks.append(track)
    end = (MERE[0][0], MERE[0][1] + 0.00003)
    for part in [MERE[:3], [*MERE[3:], end]]:
        segment = gpxpy.gpx.GPXTrackSegment()
        segment.points = [gpxpy.gpx.GPXTrackPoint(latitude, longitude, elevation=3) for longitude, latitude in part]
        track.segments.append(segment)
    route = gpxpy.gpx.GPXRoute(name="Drain")
    route.points = [gpxpy.gpx.GPXRoutePoint(latitude, longitude) for longitude, latitude in DRAIN]
    file.routes.append(route)
    file.waypoints.append(gpxpy.gpx.GPXWaypoint(GATE[1], GATE[0], name="Gate"))
    path.write_text(file.to_xml(), "utf-8")


FILES = {
    "rfc.geojson": geojson,
    "utm.geojson": geojson_of_2008,
    "degrees.gpkg": geopackage(4326),
    "utm_etrs89.gpkg": geopackage(25831),
    "utm.zip": shapefile_by_gdal(32631),
    "etrs89.zip": shapefile_by_gdal(4258),
    "web.zip": shapefile_by_gdal(3857),
    "pyshp.zip": shapefile_by_pyshp,
    "simple.kml": kml,
    "simple.kmz": kml,
    "walk.gpx": gpx,
}  # fmt: skip
# Metres rounded to four digits in the file, or to nanodegrees.
NEAR_DEG = 2e-8


def write_all(folder):
    folder.mkdir(exist_ok=True)
    for name, write in FILES.items():
        (folder / name).unlink(missing_ok=True)
        write(folder / name)


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("boundary")
    write_all(folder)
    return folder


def pitface(*arguments, code=0):
    folder = os.environ.get("PITFACE_BIN_DIR") or Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "debug"
    command = [Path(folder) / "pitface", "--json", "boundary", *map(str, arguments)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60)
    assert done.returncode == code, done.stderr + done.stdout
    return json.loads(done.stdout)


def same_ring(found, ring):
    """The same corners in turn, begun anywhere, either way round."""
    assert len(found) == len(ring)
    turned = [ring[at:] + ring[:at] for at in range(len(ring))]
    turned += [list(reversed(one)) for one in turned]
    return any(all(abs(a - b) <= NEAR_DEG for one, other in zip(found, way) for a, b in zip(one, other)) for way in turned)


@pytest.mark.parametrize("name", [name for name in FILES if not name.endswith("gpx")])
def test_areas_are_those_of_the_library(files, name):
    answer = pitface(files / name)
    areas = answer["areas"]
    first, rest = areas[0], areas[1:]
    assert [area["name"] for area in rest] == ["Withy Bottom", "Withy Bottom"]
    assert first["name"] == ("Mühlstück" if name == "pyshp.zip" else "Mere Piece")
    assert same_ring(first["ring"], MERE)
    assert first["hectares"] == pytest.approx(hectares(MERE), rel=1e-5)
    assert (first["holes"], first["part"]) == (1, None)
    assert first["holes_hectares"] == pytest.approx(hectares(POND), rel=1e-4)
    assert sorted(area["part"] for area in rest) == [1, 2]
    for ring in WITHY:
        assert any(len(area["ring"]) == 3 and same_ring(area["ring"], ring) for area in rest)
    assert answer["system_stated"] == (name != "pyshp.zip")
    assert answer["was_metres"] == (name.startswith("utm") or name == "web.zip")
    assert answer["was_etrs89"] == ("etrs89" in name)


@pytest.mark.parametrize("name", ["degrees.gpkg", "utm_etrs89.gpkg", "simple.kml", "simple.kmz", "walk.gpx"])
def test_lines_are_those_of_the_library(files, name):
    line = next(line for line in pitface(files / name)["lines"] if line["name"] == "Drain")
    assert all(abs(a - b) <= NEAR_DEG for one, other in zip(line["along"], DRAIN) for a, b in zip(one, other))
    assert line["length_m"] == pytest.approx(metres(DRAIN), abs=0.01)


def test_a_walk_with_a_pause_is_an_area(files):
    answer = pitface(files / "walk.gpx")
    [area] = answer["areas"]
    assert (area["name"], area["from_line"], answer["points"]) == ("Mere Piece", True, 1)
    assert area["hectares"] == pytest.approx(hectares([*MERE, (MERE[0][0], MERE[0][1] + 0.00003)]), rel=1e-6)


# UTM and Gauss-Krueger bands on WGS 84, either side of the equator, far from the middle and near it; web Mercator.
GRIDS = [32601, 32631, 32633, 32660, 32701, 32733, 32760, 25828, 25832, 25838, 4647, 5650, 3857]


@pytest.mark.parametrize("code", GRIDS)
def test_grids_are_those_of_proj(tmp_path, code):
    south = 32700 < code < 32800
    area = pyproj.CRS(code).area_of_use
    west, east = (area.west, area.east) if code != 3857 else (-179.0, 179.0)
    latitudes = [-79, -45, -0.5] if south else [0.5, 52, 83]
    to_grid = pyproj.Transformer.from_crs(4326, code, always_xy=True)
    for latitude in latitudes:
        for longitude in (west + 0.01, (west + east) / 2, east - 0.01):
            ring = [(longitude, latitude), (longitude + 0.004, latitude), (longitude + 0.004, latitude + 0.003)]
            metres = [list(to_grid.transform(*place)) for place in ring]
            file = tmp_path / "grid.geojson"
            crs = {"type": "name", "properties": {"name": f"urn:ogc:def:crs:EPSG::{code}"}}
            file.write_text(json.dumps({"type": "Polygon", "coordinates": [metres], "crs": crs}))
            [found] = pitface(file)["areas"]
            for place, expected in zip(found["ring"], ring):
                # A hundredth of a millimetre.
                assert abs(place[0] - expected[0]) < 1e-9 and abs(place[1] - expected[1]) < 1e-10, (place, expected)


@pytest.mark.parametrize("code", [27700, 2154, 31467, 3035, 28992, 26915])
def test_other_systems_are_refused(tmp_path, code):
    place = frame()
    if code == 26915:
        place = place.translate(xoff=-95)
        place = geopandas.GeoDataFrame({"name": ["a", "b"]}, geometry=place.values, crs=4326)
    place.to_crs(code).to_file(tmp_path / "other.shp")
    zipped(tmp_path / "other.zip", "other")
    [error] = pitface(tmp_path / "other.zip", code=2)["errors"]
    assert "reference system" in error["wrong"] and "EPSG:4326" in error["todo"]


def test_an_outline_goes_into_notes_and_store(files, tmp_path):
    notes = tmp_path / "mere.notes.json"
    notes.write_text('{"pitface": 1, "field": {"name": "Mere Piece"}, "pits": [{"place": "open", "at": [2.503, 54.502]}]}')
    out = tmp_path / "new.notes.json"
    answer = pitface(files / "utm.zip", "--area", "1", "--into", notes, "--out", out)
    assert answer["taken"]["outline_hectares"] == pytest.approx(hectares(MERE), rel=1e-5)
    assert same_ring(json.loads(out.read_text())["field"]["outline"], MERE)
    again = tmp_path / "again.notes.json"
    pitface(files / "simple.kml", "--line", "1", "--kind", "drain", "--depth", "80cm", "--into", out, "--out", again)
    field = json.loads(again.read_text())["field"]
    assert same_ring(field["outline"], MERE) and field["lines"][0]["depth_mm"] == 800


if __name__ == "__main__":
    write_all(Path(sys.argv[1]))

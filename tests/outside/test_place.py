"""Areas, walks, headland strips and zones against geographiclib, and against shapely in a projection by pyproj that the
core does not use."""

import math

import pyproj
import pytest
from geographiclib.geodesic import Geodesic
from shapely import unary_union
from shapely.geometry import Point, Polygon, box


@pytest.fixture(scope="module")
def fields(example):
    rows = example("place_table")
    assert len(rows) > 190
    numbers = ("area_m2", "headland_m2", "first_side_m", "first_bearing_deg")
    return [
        (
            [tuple(map(float, corner.split())) for corner in row["corners"].split(";")],
            *(float(row[name]) for name in numbers),
        )
        for row in rows
    ]


def test_areas_agree_with_geographiclib(fields):
    for corners, area, *_ in fields:
        ring = Geodesic.WGS84.Polygon()
        for longitude, latitude in corners:
            ring.AddPoint(latitude, longitude)
        _, _, expected = ring.Compute(False, True)
        assert area == pytest.approx(abs(expected), rel=1e-6)


def test_walks_agree_with_geographiclib(fields):
    for corners, _, _, distance, bearing in fields:
        (east, north), (to_east, to_north) = corners[:2]
        line = Geodesic.WGS84.Inverse(north, east, to_north, to_east)
        assert distance == pytest.approx(line["s12"], rel=1e-6)
        off = (bearing - line["azi1"] + 180) % 360 - 180
        assert math.isclose(off, 0, abs_tol=1e-6)


def test_headland_strips_agree_with_an_equal_area_projection(fields):
    for corners, _, headland, *_ in fields:
        longitude = sum(east for east, _ in corners) / len(corners)
        latitude = sum(north for _, north in corners) / len(corners)
        flat = pyproj.Proj(proj="laea", lon_0=longitude, lat_0=latitude, ellps="WGS84")
        field = Polygon([flat(*corner) for corner in corners])
        strip = field.area - field.buffer(-12, join_style="mitre").area
        assert headland == pytest.approx(strip, rel=0.005)


def flat_around(places):
    """An equal-area projection in the middle of some places, which the core does not use."""
    longitude = sum(east for east, _ in places) / len(places)
    latitude = sum(north for _, north in places) / len(places)
    return pyproj.Proj(proj="laea", lon_0=longitude, lat_0=latitude, ellps="WGS84")


def numbers(text):
    return [tuple(map(float, place.split())) for place in text.split(";")]


@pytest.fixture(scope="module")
def zones(example):
    """Fields with the zones that shapely gives them, and those of the core."""
    rows = example("zones_table")
    assert len(rows) > 190
    found = []
    for row in rows:
        places = numbers(row["outline"])
        flat = flat_around(places)
        field = Polygon([flat(*place) for place in places])
        circles = [tuple(map(float, circle.split())) for circle in row["gateways"].split("|")]
        gateways = unary_union([Point(flat(east, north)).buffer(radius, quad_segs=1000) for east, north, radius in circles])
        patches = unary_union([Polygon([flat(*place) for place in numbers(ring)]) for ring in row["patches"].split("|")])
        patches = patches.difference(gateways).intersection(field)
        gateways = gateways.intersection(field)
        inner = field.buffer(-float(row["headland_mm"]) / 1000, join_style="mitre")
        rest = inner.difference(gateways).difference(patches).area
        spacing, track, tyre = (float(row[name]) / 1000 for name in ("tramline_mm", "wheel_track_mm", "tyre_mm"))
        # Ten tramlines side by side, the ground under their wheels counted once.
        wheels = [run * spacing + side * track / 2 for run in range(10) for side in (-1, 1)]
        pressed = unary_union([box(wheel - tyre / 2, 0, wheel + tyre / 2, 1) for wheel in wheels]).area / (10 * spacing)
        expected = {
            "gateway": gateways.area,
            "patch": patches.area,
            "headland": field.area - gateways.area - patches.area - rest,
            "open": rest * (1 - pressed),
            "wheelings": rest * pressed,
        }
        found.append((field.area, expected, {zone: float(row[zone]) for zone in expected}))
    return found


@pytest.mark.parametrize("zone", ["gateway", "patch"])
def test_marked_parts_agree_with_shapely(zones, zone):
    met = 0
    for _, expected, found in zones:
        met += expected[zone] > 100
        assert found[zone] == pytest.approx(expected[zone], rel=1e-6, abs=0.02)
    assert met > 100


@pytest.mark.parametrize("zone", ["open", "wheelings", "headland"])
def test_what_is_left_agrees_with_shapely(zones, zone):
    for whole, expected, found in zones:
        assert found[zone] == pytest.approx(expected[zone], rel=0.005, abs=1e-5 * whole)


def test_zones_add_up(zones):
    for whole, _, found in zones:
        assert sum(found.values()) == pytest.approx(whole, rel=1e-6)

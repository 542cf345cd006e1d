"""Areas, walks and headland strips against geographiclib, and against shapely in a projection by pyproj that the
core does not use."""

import math

import pyproj
import pytest
from geographiclib.geodesic import Geodesic
from shapely.geometry import Polygon


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

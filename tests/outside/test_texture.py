"""Textures from fractions, over every whole-percent point of the triangles.

USDA: the package pedotri, an independent reading of the same triangle by polygons. A polygon does not say which of two
neighbours owns their common line, the handbook's rules do. An edge here is a point that lies on the outline of two or
more of pedotri's polygons, in exact whole numbers; off the edges both must agree everywhere.

UK: point in polygon, written here from the triangle's vertices, by winding number (the core tests convex sides).
"""

import json
from collections import Counter

import numpy as np
import pedotri
import pytest
from conftest import ROOT

COUNTED = json.loads((ROOT / "tests/vectors/texture.json").read_text("utf-8"))["sweep"]

# Clay, silt (percent; sand is the rest). Moeys, "The soil texture wizard", scheme UK.SSEW.
UK = {
    "clay": [(100, 0), (55, 0), (35, 20), (35, 45), (55, 45)],
    "sandy_clay": [(55, 0), (30, 0), (30, 20), (35, 20)],
    "silty_clay": [(55, 45), (35, 45), (35, 65)],
    "clay_loam": [(35, 20), (30, 20), (18, 32), (18, 62), (35, 45)],
    "silty_clay_loam": [(35, 45), (18, 62), (18, 82), (35, 65)],
    "sandy_clay_loam": [(30, 0), (18, 0), (18, 32), (30, 20)],
    "sandy_loam": [(18, 0), (15, 0), (0, 30), (0, 50), (18, 32)],
    "sandy_silt_loam": [(18, 32), (0, 50), (0, 80), (18, 62)],
    "silt_loam": [(18, 62), (0, 80), (0, 100), (18, 82)],
    "loamy_sand": [(15, 0), (10, 0), (0, 15), (0, 30)],
    "sand": [(10, 0), (0, 0), (0, 15)],
}


def sides(corners):
    return zip(corners, [*corners[1:], corners[0]])


def turn(one, other, point):
    """Twice the area of the triangle, its sign says on which side of one-other the point lies."""
    return (other[0] - one[0]) * (point[1] - one[1]) - (other[1] - one[1]) * (point[0] - one[0])


def on_outline(point, corners):
    def between(one, other):
        return all(min(a, b) <= p <= max(a, b) for a, b, p in zip(one, other, point))

    return any(turn(one, other, point) == 0 and between(one, other) for one, other in sides(corners))


def winds_round(point, corners):
    winding = 0
    for one, other in sides(corners):
        side = turn(one, other, point)
        winding += one[1] <= point[1] < other[1] and side > 0
        winding -= other[1] <= point[1] < one[1] and side < 0
    return winding != 0


@pytest.fixture(scope="module")
def sweep(example):
    rows = example("texture_sweep")
    return [(int(row["sand"]), int(row["silt"]), int(row["clay"]), row["usda"], row["uk"]) for row in rows]


def test_the_sweep_is_the_whole_triangle(sweep):
    assert len({(sand, clay) for sand, _, clay, _, _ in sweep}) == len(sweep) == 5151
    assert all(sand + silt + clay == 100 for sand, silt, clay, _, _ in sweep)


def test_usda_classes_have_the_published_number_of_points(sweep):
    assert Counter(usda for *_, usda, _ in sweep) == {case["usda"]: case["points"] for case in COUNTED}


def test_usda_agrees_with_pedotri_off_the_edges(sweep):
    sand, clay = (np.array([float(row[index]) for row in sweep]) for index in (0, 2))
    theirs = [name.lower().replace(" ", "_") for name in pedotri.classify(sand, clay, "USDA")]
    differing = {(row[0], row[2]) for row, their in zip(sweep, theirs) if row[3] != their}
    assert {row[3] for row in sweep} == set(theirs)

    polygons = [[tuple(map(int, corner)) for corner in one.vertices] for one in pedotri.get_classification("USDA").classes]
    edges = {
        (row[0], row[2])
        for row in sweep
        if sum(on_outline((row[0], row[2]), corners) for corners in polygons) >= 2
    }
    print(f"{len(edges)} of {len(sweep)} points lie on an edge, {len(differing)} of them differ in who owns it")
    assert differing <= edges
    assert len(differing) == 72
    assert len(edges) < 800, "edges must stay a small part, or there is nothing left to agree on"


def test_uk_agrees_with_the_vertices(sweep):
    edges = 0
    for sand, silt, clay, _, uk in sweep:
        point = (clay, silt)
        touched = {name for name, corners in UK.items() if on_outline(point, corners) or winds_round(point, corners)}
        assert set(uk.split("|")) == touched, f"sand {sand}, silt {silt}, clay {clay}"
        edges += len(touched) > 1
    print(f"{edges} of {len(sweep)} points lie on an edge")
    assert edges > 200, "the edges must be among what was compared"

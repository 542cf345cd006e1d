"""Depths read off a photo, reckoned again by scikit-image's projective transform: `tests/vectors/photo.json`."""

import json
import pathlib

import numpy
import pytest
from skimage.transform import ProjectiveTransform, SimilarityTransform

CASES = json.loads((pathlib.Path(__file__).parent.parent / "vectors" / "photo.json").read_text())["cases"]
DEEPEST_MM = 3000


def in_pixels(size, places):
    return numpy.array([[left * size[0] / 10_000, top * size[1] / 10_000] for left, top, *_ in places])


def to_face(size, marks):
    """From pixels to [across, depth]: two marks as a camera that looks squarely, four as a plane seen askew."""
    depths = [depth for _, _, depth in marks]
    if len(marks) == 2:
        kind, face = SimilarityTransform, [[0, depth] for depth in depths]
    else:
        kind, face = ProjectiveTransform, [[across, depth] for across, depth in zip([0, 0, 1000, 1000], depths)]
    return kind.from_estimate(in_pixels(size, marks), numpy.array(face, dtype=float))


def depth(transform, size, touch):
    mm = transform(in_pixels(size, [touch]))[0][1]
    return round(mm) if -0.5 <= mm <= DEEPEST_MM else None


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_depths_are_those_of_the_library(case):
    transform = to_face(case["size"], case["marks"])
    for touch in case["touches"]:
        assert depth(transform, case["size"], touch) == touch[2], touch

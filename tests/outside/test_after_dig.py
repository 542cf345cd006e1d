"""Sections dug behind a machine against numpy's trapezoid rule."""

import numpy
import pytest

trapezoid = getattr(numpy, "trapezoid", None) or numpy.trapz


def test_sections_agree_with_numpy(example):
    rows = example("after_dig_table")
    assert len(rows) == 401
    for row in rows:
        readings = numpy.array([int(mm) for mm in row["readings_mm"].split()], dtype=float)
        target, bottom = int(row["target_mm"]), int(row["bottom_mm"])
        across = numpy.linspace(0.0, 1.0, len(readings))
        share = trapezoid(numpy.minimum(readings, target), across) / target
        assert float(row["share"]) == pytest.approx(share, abs=1e-12)
        assert float(row["broken"]) == pytest.approx(numpy.mean(readings >= bottom), abs=1e-12)
        ridge = max(0.0, numpy.floor((readings[0] + readings[-1]) / 2) - readings[1:-1].min())
        assert float(row["ridge_mm"]) == ridge


def test_the_published_section(example):
    row = example("after_dig_table")[0]
    assert float(row["share"]) == pytest.approx(0.893, abs=0.001)

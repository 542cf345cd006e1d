"""Packing density, total and air-filled porosity, worked out again with numpy over a grid.

Formulas: Jones, Spoor & Thomasson 2003 (bulk density + 0.009 clay); newer German form (bulk density + 0.005 clay +
0.001 silt); particle density 2.65 g/cm3.
"""

import numpy as np
import pytest


@pytest.fixture(scope="module")
def grid(example):
    rows = example("density_grid")
    return {name: np.array([float(row[name]) for row in rows]) for name in rows[0]}


def test_the_grid_covers_arable_soils(grid):
    assert grid["bulk_density"].min() <= 0.8 and grid["bulk_density"].max() >= 1.9
    assert grid["clay"].min() == 0 and grid["clay"].max() == 60
    assert len(grid["clay"]) == 23 * 11


def test_packing_density_by_both_formulas(grid):
    by_clay = grid["bulk_density"] + 0.009 * grid["clay"]
    by_both = grid["bulk_density"] + grid["clay"] / 200 + grid["silt"] / 1000
    # The core keeps six decimals.
    np.testing.assert_allclose(grid["packing_clay"], by_clay, rtol=0, atol=5.1e-7)
    np.testing.assert_allclose(grid["packing_clay_silt"], by_both, rtol=0, atol=5.1e-7)


def test_pores_and_the_air_in_them(grid):
    solids = grid["bulk_density"] / 2.65
    np.testing.assert_allclose(grid["porosity"], 1 - solids, rtol=0, atol=1e-12)
    np.testing.assert_allclose(grid["air_filled"] + grid["water"] + solids, 1, rtol=0, atol=1e-12)
    assert (grid["air_filled"] >= 0).all()

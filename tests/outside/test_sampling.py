"""Clopper-Pearson intervals, the beta-binomial gain of further pits and Wald's sequential test against scipy, and
against the test itself walked out exactly and by simulation."""

import functools
import math
import os
import pathlib
import subprocess

import numpy
import pytest
from scipy import integrate, optimize, stats

BIN = pathlib.Path(os.environ.get("PITFACE_BIN_DIR", pathlib.Path(__file__).parents[2] / "target/debug"))
WORTH, PIT_COSTS_HA, MOST_PITS = 0.5, 0.1, 10


@pytest.fixture(scope="module")
def table():
    text = subprocess.run([BIN / "examples/sampling_table"], check=True, capture_output=True, text=True).stdout
    kinds = {}
    for line in text.splitlines():
        kind, *row = line.split(",")
        kinds.setdefault(kind, []).append([float(figure) for figure in row])
    return kinds


def test_intervals_agree_with_scipy(table):
    assert len(table["interval"]) == 3 * sum(range(2, 42))
    for pits, harmed, confidence, lo, hi in table["interval"]:
        expected = stats.binomtest(int(harmed), int(pits)).proportion_ci(confidence, method="exact")
        assert lo == pytest.approx(expected.low, abs=1e-9)
        assert hi == pytest.approx(expected.high, abs=1e-9)
        if harmed > 0:
            assert lo == pytest.approx(stats.beta.ppf((1 - confidence) / 2, harmed, pits - harmed + 1), abs=1e-9)


def test_bounds_are_walds(table):
    [(_, _, alpha, beta, lower, upper)] = table["bounds"]
    assert lower == pytest.approx(math.log(beta / (1 - alpha)), rel=1e-12)
    assert upper == pytest.approx(math.log((1 - beta) / alpha), rel=1e-12)


def test_operating_characteristic_agrees_with_walds_formula(table):
    [(sound, harmed, _, _, lower, upper)] = table["bounds"]
    up, down = math.log(harmed / sound), math.log((1 - harmed) / (1 - sound))
    for share, left, pits in table["test"]:
        drift = share * up + (1 - share) * down
        if abs(drift) < 1e-9 or share in (0, 1):
            continue

        def excess(h):
            return share * math.exp(h * up) + (1 - share) * math.exp(h * down) - 1

        side = 1 if drift < 0 else -1
        h = optimize.brentq(excess, side * 1e-6, side * 100, xtol=1e-14)
        expected = (math.exp(h * upper) - 1) / (math.exp(h * upper) - math.exp(h * lower))
        assert left == pytest.approx(expected, abs=1e-9)
        assert pits == pytest.approx((expected * lower + (1 - expected) * upper) / drift, rel=1e-9)
    by_share = {share: (left, pits) for share, left, pits in table["test"]}
    assert by_share[0][0] == pytest.approx(1) and by_share[1][0] == pytest.approx(0)
    assert by_share[0.5][0] == pytest.approx(upper / (upper - lower))
    assert by_share[0.5][1] == pytest.approx(-lower * upper / up**2)


def test_the_simulated_test_keeps_its_errors(table):
    [(sound, harmed, alpha, beta, lower, upper)] = table["bounds"]
    up, down = math.log(harmed / sound), math.log((1 - harmed) / (1 - sound))
    rng = numpy.random.default_rng(20260403)

    def loosened(share, runs=20_000, most=400):
        ratios = numpy.cumsum(numpy.where(rng.random((runs, most)) < share, up, down), axis=1)
        out = (ratios >= upper) | (ratios <= lower)
        assert out.any(axis=1).all()
        return (ratios[numpy.arange(runs), out.argmax(axis=1)] >= upper).mean()

    # Wald's guarantee: each error at most the stated one over the other's complement.
    assert loosened(sound) <= alpha / (1 - beta) + 0.01
    assert 1 - loosened(harmed) <= beta / (1 - alpha) + 0.01


def regret(pits, harmed, worth):
    belief = stats.beta(harmed + 0.5, pits - harmed + 0.5)
    below = belief.cdf(worth) - belief.mean() / worth * stats.beta(harmed + 1.5, pits - harmed + 0.5).cdf(worth)
    return min(below, below + belief.mean() / worth - 1)


def gain(pits, harmed, more, worth):
    foreseen = stats.betabinom(more, harmed + 0.5, pits - harmed + 0.5)
    then = sum(foreseen.pmf(hits) * regret(pits + more, harmed + hits, worth) for hits in range(more + 1))
    return regret(pits, harmed, worth) - then


def test_regret_in_closed_form_is_the_integral():
    for pits, harmed, worth in [(1, 0, 0.3), (4, 2, 0.5), (6, 1, 0.4)]:
        belief = stats.beta(harmed + 0.5, pits - harmed + 0.5)
        loosened = integrate.quad(lambda p: (1 - p / worth) * belief.pdf(p), 0, worth, limit=500)[0]
        left = integrate.quad(lambda p: (p / worth - 1) * belief.pdf(p), worth, 1, limit=500)[0]
        assert regret(pits, harmed, worth) == pytest.approx(min(loosened, left), abs=1e-6)


def test_gains_agree_with_scipy(table):
    assert len(table["gain"]) > 250
    for pits, harmed, more, worth, found in table["gain"]:
        assert found == pytest.approx(gain(int(pits), int(harmed), int(more), worth), abs=1e-9)


def test_pits_still_expected_agree_with_a_walk_over_all_outcomes(table):
    [(sound, harmed_share, _, _, lower, upper)] = table["bounds"]
    up, down = math.log(harmed_share / sound), math.log((1 - harmed_share) / (1 - sound))

    @functools.cache
    def still(pits, harmed, area_ha):
        ratio = harmed * up + (pits - harmed) * down
        if not lower < ratio < upper:
            return 0.0
        if pits == 0:
            pays = area_ha > PIT_COSTS_HA
        else:
            pays = any(
                gain(pits, harmed, more, WORTH) * area_ha > more * PIT_COSTS_HA
                for more in range(1, MOST_PITS - pits + 1)
            )
        if not pays:
            return 0.0
        share = (harmed + 0.5) / (pits + 1)
        return 1 + share * still(pits + 1, harmed + 1, area_ha) + (1 - share) * still(pits + 1, harmed, area_ha)

    for pits, harmed, area_ha, found in table["still"]:
        assert found == pytest.approx(still(int(pits), int(harmed), area_ha), abs=1e-9)

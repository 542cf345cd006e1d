"""How sure a number of pits makes a depth, against scipy: the distribution-free tolerance limit (Wilks 1941).

The share of ground covered by the k-th smallest of n depths follows Beta(k, n + 1 - k), so the confidence that it is at
least p is 1 - I_p(k, n + 1 - k). The core sums the binomial instead: two ways to the same number.
"""

import numpy as np
import pytest
from scipy import stats


@pytest.fixture(scope="module")
def table(example):
    rows = example("tolerance_table")
    return {name: np.array([float(row[name]) for row in rows]) for name in rows[0]}


def test_the_table_goes_through_every_rank(table):
    ranks = set(zip(table["pits"].astype(int), table["rank"].astype(int)))
    assert ranks == {(pits, rank) for pits in range(1, 61) for rank in range(1, pits + 1)}


def test_it_is_the_beta_distribution_of_order_statistics(table):
    beta = stats.beta.sf(table["share"], table["rank"], table["pits"] + 1 - table["rank"])
    np.testing.assert_allclose(table["confidence"], beta, rtol=1e-9, atol=1e-12)


def test_it_is_the_binomial_sum(table):
    binomial = stats.binom.cdf(table["rank"] - 1, table["pits"], table["share"])
    np.testing.assert_allclose(table["confidence"], binomial, rtol=1e-9, atol=1e-12)


def test_the_deepest_of_n_covers_with_one_less_the_share_to_the_nth(table):
    deepest = table["rank"] == table["pits"]
    wanted = 1 - table["share"][deepest] ** table["pits"][deepest]
    np.testing.assert_allclose(table["confidence"][deepest], wanted, rtol=1e-12)


def test_it_is_what_a_simulation_gives():
    """Five pits, the deepest, four fifths of the ground: 67 times in a hundred."""
    depths = np.random.default_rng(7).random((200_000, 5))
    assert (depths.max(axis=1) >= 0.8).mean() == pytest.approx(1 - 0.8**5, abs=0.005)

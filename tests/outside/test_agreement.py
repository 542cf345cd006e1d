"""Weighted kappa against scikit-learn."""

import os
import pathlib
import subprocess

import pytest
from sklearn.metrics import cohen_kappa_score

BIN = pathlib.Path(os.environ.get("PITFACE_BIN_DIR", pathlib.Path(__file__).parents[2] / "target/debug"))
WEIGHTS = {"equal": None, "linear": "linear", "quadratic": "quadratic"}


def test_kappas_agree_with_scikit_learn():
    text = subprocess.run([BIN / "examples/agreement_table"], check=True, capture_output=True, text=True).stdout
    rows = [line.split(",") for line in text.splitlines()]
    assert len(rows) == 450
    compared = 0
    for answers, weights, first, second, found in rows:
        if found:
            first, second = first.split(), second.split()
            labels = [str(answer) for answer in range(int(answers))]
            expected = cohen_kappa_score(first, second, labels=labels, weights=WEIGHTS[weights])
            assert float(found) == pytest.approx(expected, abs=1e-12)
            compared += 1
        else:
            assert first == second and len(set(first.split())) == 1
    assert compared > 400

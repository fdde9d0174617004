"""The curve of time over intensity keeps the shares it was made of."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from tercet.engine import Judgement, curve
from tercet.engine.curve import Curve
from tercet.engine.distribution import shares


def areas(drawn: Curve) -> np.ndarray:
    step = drawn.at[1] - drawn.at[0]
    easy, hard = drawn.at < 1.0, drawn.at >= drawn.lt2
    parts = (easy, ~easy & ~hard, hard)
    return np.array([drawn.density[part].sum() * step for part in parts])


def judged(scale: np.ndarray) -> Judgement:
    n = len(scale)
    shades = np.where(np.isfinite(scale), (scale >= 1).astype(int) + (scale >= 2), 4)
    none = np.full(n, np.nan)
    return Judgement(
        shades.astype(np.uint8), np.zeros(n), np.zeros(n, dtype=np.uint8), scale, none, none,
        none, none, 1.0,
    )  # fmt: skip


@given(arrays(np.float64, st.integers(0, 400), elements=st.floats(-1, 6) | st.just(np.nan)))
def test_bins_hold_every_judged_second_of_their_shade(scale: np.ndarray) -> None:
    run = judged(scale)
    counts = curve.spread(run)
    assert counts.shape == (60,)
    assert curve.by_shade(counts).tolist() == np.bincount(run.shades, minlength=5)[:3].tolist()


@pytest.mark.parametrize("target", [(80, 5, 15), (90, 1, 9), (60, 30, 10), (77, 3, 20)])
def test_the_wanted_curve_encloses_the_wanted_shares(target: tuple[float, ...]) -> None:
    assert areas(curve.wanted(target)) == pytest.approx(shares(target), abs=0.01)


def test_the_smooth_curve_moves_no_time_over_a_boundary() -> None:
    counts = np.zeros(60)
    counts[20:32], counts[32:36], counts[46:52] = 900, 250, 300
    for ratio in (1.15, 1.25, 1.35):
        drawn = curve.smooth(counts, ratio)
        assert areas(drawn) == pytest.approx(shares(curve.by_shade(counts)), abs=0.01)
        assert (drawn.density >= 0).all()


def test_all_three_curves_enclose_the_same_area() -> None:
    counts = np.arange(60.0)
    for drawn in (curve.smooth(counts), curve.wanted((80, 5, 15)), curve.arc()):
        assert areas(drawn).sum() == pytest.approx(1.0)


def test_without_time_there_is_no_curve() -> None:
    with pytest.raises(ValueError):
        curve.smooth(np.zeros(60))

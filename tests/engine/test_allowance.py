"""A week's allowance by hand, and three shares that always make 100."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine.allowance import allowance, share_out


def test_a_week_by_hand() -> None:
    week = allowance(6.0 * 3600, (0.80, 0.05, 0.15), (2 * 3600.0, 1200.0, 1800.0, 99.0, 0.0))
    assert week.wanted == pytest.approx((17_280, 1_080, 3_240))
    assert week.left == pytest.approx((10_080, -120, 1_440))


shares = st.integers(0, 100).flatmap(
    lambda a: st.integers(0, 100 - a).map(lambda b: (a, b, 100 - a - b))
)


@given(st.integers(0, 2), st.integers(0, 100), shares)
def test_three_shares_make_a_hundred(edited: int, value: int, before: tuple[int, int, int]) -> None:
    made = share_out(edited, value, before)
    assert sum(made) == 100
    assert made[edited] == value
    assert min(made) >= 0


def test_the_others_keep_their_proportion() -> None:
    assert share_out(0, 70, (80, 5, 15)) == (70, 8, 22)
    assert share_out(0, 90, (100, 0, 0)) == (90, 5, 5)

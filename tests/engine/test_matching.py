"""Planned and run, paired by hand and as a property."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tercet.engine.matching import Amount, amount_of, pair

EASY, WORK = Amount(False, 1800), Amount(True, 3600)


def test_a_double_day_in_any_order() -> None:
    assert pair([WORK, EASY], [Amount(False, 2000), Amount(True, 3300)]) == [1, 0]


def test_one_of_two_was_left_out() -> None:
    assert pair([WORK, EASY], [Amount(False, 1900)]) == [None, 0]
    assert pair([WORK], [Amount(False, 1900)]) == [0]  # run otherwise than planned
    assert pair([WORK], []) == [None]


def test_amounts() -> None:
    assert amount_of((1800.0, 30.0, 40.0, 500.0, 10.0)) == Amount(True, 1880.0)
    assert amount_of((1800.0, 20.0, 30.0)) == Amount(False, 1850.0)


amounts = st.lists(st.builds(Amount, st.booleans(), st.floats(0, 20_000)), max_size=5)


@given(amounts, amounts)
def test_each_run_stands_for_one(planned: list[Amount], run: list[Amount]) -> None:
    found = [place for place in pair(planned, run) if place is not None]
    assert len(set(found)) == len(found) == min(len(planned), len(run))

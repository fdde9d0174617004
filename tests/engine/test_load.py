"""Load and spacing against worked values; sources beside them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine import load


def test_session_load_by_effort_and_minutes() -> None:
    # Foster et al. 2001: effort on CR-10 times minutes; 5 for an hour is 300.
    assert load.session_load(5, 3600) == 300


@pytest.mark.parametrize(
    ("week", "total", "monotony", "strain"),
    [
        # Foster 1998: mean over standard deviation, and their product with the sum. He printed
        # no worked table that was found: these weeks are made up and worked by hand.
        ((300, 0, 450, 200, 0, 600, 350), 1900, 1.3127, 2494.1),
        ((300, 300, 300, 0, 300, 300, 300), 1800, 2.4495, 4409.1),
    ],
)
def test_monotony_and_strain(
    week: tuple[float, ...], total: float, monotony: float, strain: float
) -> None:
    found = load.week_load(week)
    assert found.total == total
    assert found.monotony == pytest.approx(monotony, abs=5e-5)
    assert found.strain == pytest.approx(strain, abs=0.05)


def test_seven_equal_days_have_no_monotony() -> None:
    assert load.week_load([100.0] * 7) == load.WeekLoad(700, None, None)
    with pytest.raises(ValueError):
        load.week_load([1, 2, 3])


def test_three_zone_weights() -> None:
    # Lucia et al. 2003, weights 1, 2, 3 (from memory); minutes of Esteve-Lanao et al. 2005.
    assert load.three_zone_load([40 * 60, 15 * 60, 5 * 60]) == 85
    assert load.three_zone_load([4581 * 60, 1354 * 60, 487 * 60]) == 8750


@pytest.mark.parametrize(
    ("kilometres", "size"),
    [(9.0, ""), (11.0, ""), (11.1, "small"), (13.0, "small"), (13.1, "moderate"),
     (20.0, "moderate"), (20.1, "large")],
)  # fmt: skip
def test_a_run_longer_than_those_of_thirty_days(kilometres: float, size: str) -> None:
    # Borders of Schuster Brandt Frandsen et al. 2025 (Br. J. Sports Med. 59:1203), longest 10 km.
    share = load.longer_than_before([0, 30], [10_000.0, 1000 * kilometres])
    assert np.isnan(share[0])
    assert load.spike_size(float(share[1])) == size


def test_what_lies_more_than_thirty_days_back_does_not_count() -> None:
    share = load.longer_than_before([0, 5, 31], [20_000.0, 8000.0, 10_000.0])
    assert share[2] == pytest.approx(0.25)


@given(st.lists(st.tuples(st.integers(0, 200), st.integers(0, 50_000)), max_size=40))
def test_longer_than_before_as_by_looking(runs: list[tuple[int, int]]) -> None:
    runs.sort()
    found = load.longer_than_before([d for d, _ in runs], [m for _, m in runs])
    for k, (day, metres) in enumerate(runs):
        before = [m for d, m in runs[:k] if day - 30 <= d]
        if before and max(before) > 0:
            assert found[k] == pytest.approx(metres / max(before) - 1)
        else:
            assert np.isnan(found[k])


def test_hard_days_strides_make_none() -> None:
    seconds = [[3000, 0, 100], [2400, 0, 200], [1000, 0, 150], [1800, 1000, 250], [3000, 900, 0]]
    assert load.hard_days([1, 2, 2, 4, 5], seconds) == [2, 4]
    assert load.too_close([2, 4, 5, 9], 2) == [(4, 5)]
    assert load.too_close([2, 4, 5, 9], 3) == [(2, 4), (4, 5)]


def test_days_in_a_row() -> None:
    assert load.longest_without_rest([]) == (0, 0)
    assert load.longest_without_rest([1, 2, 2, 3, 7, 8]) == (3, 3)


def test_a_session_counts_by_its_work() -> None:
    assert [load.session_shade(m, h) for m, h in ((0, 120), (900, 100), (0, 600))] == [0, 1, 2]

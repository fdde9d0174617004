"""A session's shades made calm to look at, and its minutes."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.library.trace import SessionTrace, Stretch, drawn_stretches, minutes


def shades(*runs: tuple[int, int]) -> np.ndarray:
    return np.concatenate([np.full(count, shade, dtype=np.uint8) for shade, count in runs])


def test_a_short_stretch_takes_its_longer_neighbours_shade() -> None:
    drawn = drawn_stretches(shades((0, 100), (2, 19), (1, 60)))
    assert drawn == (Stretch(0, 119, 0), Stretch(119, 179, 1))


def test_twenty_seconds_stay() -> None:
    drawn = drawn_stretches(shades((0, 100), (2, 20), (0, 60)))
    assert [s.shade for s in drawn] == [0, 2, 0]


def test_the_shortest_goes_first() -> None:
    # Hard 15 s and easy 3 s and hard 15 s are one hard stretch of 33 s, not lost in easy.
    drawn = drawn_stretches(shades((0, 100), (2, 15), (0, 3), (2, 15), (0, 100)))
    assert drawn == (Stretch(0, 100, 0), Stretch(100, 133, 2), Stretch(133, 233, 0))


def test_a_very_short_session_is_one_stretch() -> None:
    assert len(drawn_stretches(shades((0, 5), (2, 7)))) == 1
    assert drawn_stretches(np.zeros(0, dtype=np.uint8)) == ()


@given(st.lists(st.tuples(st.integers(0, 4), st.integers(1, 60)), min_size=1, max_size=60))
def test_stretches_cover_the_session_and_none_is_short(runs: list[tuple[int, int]]) -> None:
    whole = shades(*runs)
    drawn = drawn_stretches(whole)
    assert drawn[0].first == 0
    assert drawn[-1].stop == len(whole)
    for a, b in pairwise(drawn):
        assert a.stop == b.first
        assert a.shade != b.shade
    assert len(drawn) == 1 or all(s.stop - s.first >= 20 for s in drawn)


def test_minutes_sum_to_the_session() -> None:
    n = 150
    nothing = np.full(n, np.nan)
    heart = np.full(n, 140.0)
    heart[60:120] = np.nan
    trace = SessionTrace(
        seconds=np.arange(n, dtype=np.float64),
        shades=shades((0, 90), (2, 60)),
        level_speed=np.full(n, 3.0),
        speed=np.full(n, 3.0),
        heart_rate=heart,
        altitude=nothing,
        last_second_s=0.5,
    )
    rows = minutes(trace)
    assert [row.start_s for row in rows] == [0.0, 60.0, 120.0]
    assert rows[1].seconds == (30.0, 0.0, 30.0, 0.0, 0.0)
    assert sum(sum(row.seconds) for row in rows) == pytest.approx(trace.elapsed_s)
    assert rows[0].heart_rate == 140.0
    assert np.isnan(rows[1].heart_rate)

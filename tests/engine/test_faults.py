"""The two common faults: shown by a stretch that has them, silent otherwise and on too little."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tercet.engine.faults import LEAST_RUNS, never_easy, never_hard

HOUR = 3600.0
EASY = (HOUR, 0.0, 0.0)
CREPT = (0.7 * HOUR, 0.3 * HOUR, 0.0)
STRIDES = (HOUR, 0.0, 200.0)
WORK = (0.7 * HOUR, 0.0, 1200.0)


def test_runs_that_slide_into_the_middle_are_never_easy() -> None:
    # Nine runs of ten an hour each, three of them easy: hardly any stayed so.
    found = never_easy([CREPT] * 9 + [EASY] * 3, [False] * 12, 4)
    assert found.shown and (found.count, found.of) == (3, 12)
    assert not never_easy([EASY] * 9 + [CREPT] * 3, [False] * 12, 4).shown


def test_what_was_meant_and_what_was_work_is_no_fault() -> None:
    assert not never_easy([CREPT] * 9 + [EASY] * 9, [True] * 9 + [False] * 9, 4).shown
    work = never_easy([WORK] * 9 + [EASY] * 9, [False] * 18, 4)
    assert not work.shown and work.of == 9


def test_a_stretch_without_strides_is_never_hard() -> None:
    found = never_hard([EASY] * 16, 4)
    assert found.shown and found.hard_s == 0.0
    # Two runs a week with strides are hard running enough.
    assert not never_hard([EASY] * 8 + [STRIDES] * 8, 4).shown


def test_too_little_shows_nothing() -> None:
    few = LEAST_RUNS - 1
    assert not never_easy([CREPT] * few, [False] * few, 4).shown
    assert not never_hard([EASY] * few, 4).shown
    assert not never_easy([], [], 10).shown and not never_hard([], 10).shown
    assert not never_easy([CREPT] * 20, [False] * 20, 1).shown


@given(st.lists(st.tuples(*[st.floats(0.0, 9000.0)] * 3), max_size=30), st.integers(0, 20))
def test_counts_never_pass_what_was_run(runs: list[tuple[float, ...]], weeks: int) -> None:
    easy, hard = never_easy(runs, [False] * len(runs), weeks), never_hard(runs, weeks)
    assert 0 <= easy.count <= easy.of <= len(runs)
    assert 0 <= hard.count <= hard.of == len(runs)

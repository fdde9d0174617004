"""Bouts of work found, joined, described and named."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from tercet.engine import Repetition, Shade, repetitions
from tercet.engine.cleaning import run_lengths
from tercet.engine.motion import Motion
from tercet.engine.repetitions import describe, find, in_words
from tercet.engine.sprints import find_sprints


def session(work: float, rest: float, work_s: int, rest_s: int, count: int) -> Motion:
    speed = np.concatenate(
        (
            np.full(600, 2.7),
            np.tile(np.repeat([work, rest], [work_s, rest_s]), count),
            np.full(400, 2.6),
        )
    )
    running = speed >= 1.8
    clock = np.ones(len(speed), dtype=bool)
    return Motion(speed, speed.copy(), ~running, running, clock, False, 2)


@pytest.mark.parametrize(
    ("work_s", "rest_s", "rest", "count"),
    [(30, 30, 2.5, 20), (45, 90, 2.4, 8), (180, 120, 0.0, 6), (17, 60, 1.4, 10)],
)
def test_bouts_are_counted_and_measured(work_s: int, rest_s: int, rest: float, count: int) -> None:
    moved = session(4.4, rest, work_s, rest_s, count)
    bouts = find(moved.speed, moved, 3.3)
    assert len(bouts) == count
    found = describe(bouts, moved.speed, moved.metres, [Shade.HARD] * count)
    assert found[0].duration_s == work_s and found[0].recovery_s == rest_s
    assert found[0].distance_m == pytest.approx(4.4 * work_s)
    assert found[-1].recovery_s is None


def test_a_dip_within_a_bout_does_not_part_it() -> None:
    moved = session(4.0, 2.6, 300, 120, 4)
    trace = moved.speed.copy()
    for k in range(4):
        trace[600 + 420 * k + 150 : 600 + 420 * k + 190] = 3.6  # below work, within 12 %
    assert len(find(trace, moved, 3.7)) == 4


def test_steady_and_two_bouts_are_no_repetitions() -> None:
    steady = session(2.8, 2.7, 60, 60, 10)
    assert find(steady.speed, steady, 3.3) == []
    two = session(4.4, 2.5, 60, 60, 2)
    assert find(two.speed, two, 3.3) == []


def test_short_sprints_from_a_walk_are_found_though_smoothed() -> None:
    moved = session(4.2, 1.4, 10, 30, 7)
    speed = np.convolve(moved.speed, np.full(5, 0.2), mode="same")
    smoothed = Motion(speed, speed, moved.walking, moved.running, moved.clock, False, 2)
    sprints = find_sprints(smoothed, 3.8)
    assert len(sprints) == 7
    assert all(8 <= end - begin <= 14 for begin, end in sprints)
    jog = session(2.9, 1.4, 10, 30, 7)
    assert find_sprints(jog, 3.8) == []


@pytest.mark.parametrize(
    ("seconds", "metres", "name"),
    [(42.0, 203.0, "6 × 200 m"), (180.0, 851.0, "6 × 3 min"), (30.0, 137.0, "6 × 30 s")],
)
def test_sets_are_named_as_a_runner_would(seconds: float, metres: float, name: str) -> None:
    reps = [Repetition(100.0 * k, seconds, metres, 4.5, Shade.HARD) for k in range(6)]
    assert in_words(reps) == name
    assert in_words(reps[:2]) == ""


def test_a_stray_piece_is_no_part_of_a_set() -> None:
    moved = session(4.0, 2.6, 200, 120, 5)
    trace = moved.speed.copy()
    trace[300:312] = 4.0
    assert len(find(trace, moved, 3.3)) == 5


def joined_anew(pieces: list[list[int]], fast: np.ndarray) -> list[tuple[int, int]]:
    """The rule word for word: look at all dips again after every join."""
    while len(pieces) > 1:
        dips = []
        for (a, b), (c, d) in pairwise(pieces):
            core = min(float(np.median(fast[a:b])), float(np.median(fast[c:d])))
            share = repetitions.LONG_CONTRAST if c - b >= repetitions.LONG_S else (
                repetitions.CONTRAST
            )  # fmt: skip
            depth = 1.0 - float(np.median(fast[b:c])) / core
            dips.append(0.0 if c - b < repetitions.JOIN_S else depth / share)
        least = int(np.argmin(dips))
        if dips[least] >= 1.0:
            break
        pieces[least : least + 2] = [[pieces[least][0], pieces[least + 1][1]]]
    return [(a, b) for a, b in pieces]


@pytest.mark.parametrize("seed", range(8))
def test_stretches_are_joined_as_if_all_were_looked_at_after_every_join(seed: int) -> None:
    chance = np.random.default_rng(seed)
    fast = np.repeat(chance.uniform(2.0, 5.0, 80), chance.integers(1, 70, 80))
    pieces = [list(piece) for piece in run_lengths(fast >= 3.3)]
    expected = joined_anew([[*piece] for piece in pieces], fast)
    assert repetitions._joined(pieces, fast) == expected
    assert 1 < len(expected) < 40

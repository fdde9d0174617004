"""What is kept of a judgement: the same of its pieces as of the whole, and climbs."""

from __future__ import annotations

import numpy as np
import pytest
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import judge, long_lines
from tercet.engine.gist import climb, gist, gist_of_pieces
from tercet.engine.judging import judged_pieces


def test_pieces_one_by_one_give_what_the_whole_gives(monkeypatch: pytest.MonkeyPatch) -> None:
    run = simulate(Runner(), prescribe("tempo", stream(11, 0)), 11)
    lines, time = thresholds_of(run), run.samples["time"]
    short = gist(judge(streams_of(run), time, lines), lines)
    monkeypatch.setattr(long_lines, "LONGEST_S", 1_000)
    monkeypatch.setattr(long_lines, "PIECE_S", 1_000)
    whole = gist(judge(streams_of(run), time, lines), lines, 12.5)
    n, pieces = judged_pieces(streams_of(run), time, lines)
    kept = gist_of_pieces(pieces, lines, 12.5)
    assert n == len(kept.shades) > 2_000 and kept.parts
    for name in ("shades", "seconds", "metres", "spread"):
        np.testing.assert_array_equal(getattr(kept, name), getattr(whole, name))
    for name in ("parts", "fingerprint", "repetitions", "mends", "remarks", "intervals"):
        assert getattr(kept, name) == getattr(whole, name), name
    assert kept.climb_m == whole.climb_m and kept.fingerprint.warmth == 12.5
    assert sum(part.seconds for part in kept.parts.values()) == pytest.approx(kept.seconds[1])
    assert kept.fingerprint.running_s == pytest.approx(short.fingerprint.running_s, rel=0.02)
    assert max(kept.fingerprint.steady_at) > 1_000


def test_climb_of_level_ground_is_nothing_whatever_the_noise() -> None:
    noise = np.random.default_rng(1).normal(0, 0.5, 3600)
    assert climb(100 + noise) == 0.0


def test_climb_of_hills_is_their_height() -> None:
    # three hills of 40 m, each ten minutes long
    hills = 20 * (1 - np.cos(np.arange(1800) * 2 * np.pi / 600))
    assert climb(hills) == pytest.approx(120, rel=0.05)
    assert climb(np.linspace(500, 300, 900)) == 0.0


def test_no_climb_without_altitude() -> None:
    assert climb(np.full(3600, np.nan)) is None
    assert climb(np.arange(20.0)) is None

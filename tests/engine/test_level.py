"""Level tracking: sharp at jumps, calm in between, never more or less than a probability."""

from __future__ import annotations

import numpy as np
import pytest

from tercet.engine import level


def noisy(levels: list[float], seconds: list[int], spread: float = 0.03) -> np.ndarray:
    rng = np.random.default_rng(5)
    clean = np.repeat(levels, seconds)
    return clean + spread * rng.standard_normal(len(clean))


def test_jumps_are_found_to_the_second_and_plateaus_are_calm() -> None:
    seen = noisy([-0.3, 0.1, -0.3, 0.12, -0.3], [300, 40, 90, 200, 270])
    found = level.track(seen, np.full(len(seen), 0.03)).mean
    assert np.abs(np.median(found[320:338]) - 0.1) < 0.02
    rise = int(np.argmax(found[280:320] > -0.1)) + 280
    fall = int(np.argmax(found[320:360] < -0.1)) + 320
    assert abs(rise - 300) <= 1 and abs(fall - 340) <= 1
    assert np.std(found[50:280]) < 0.012


def test_every_row_is_a_probability_also_where_nothing_is_seen() -> None:
    seen = noisy([-0.2], [500])
    seen[100:180] = np.nan
    levels = level.sharpened(level.track(seen, np.full(500, 0.03)), seen)
    np.testing.assert_allclose(levels.belief.sum(axis=1), 1.0, atol=1e-4)
    assert (levels.belief >= 0).all()


@pytest.mark.parametrize("n", [0, 1, 59, 60, 61, 141])
def test_any_length_is_tracked(n: int) -> None:
    found = level.track(np.full(n, 0.05), np.full(n, 0.03))
    assert found.belief.shape[0] == n
    assert n < 2 or np.abs(found.mean - 0.05).max() < 0.02


def test_the_pieces_leave_no_seam() -> None:
    seen = noisy([-0.1], [600])
    whole = level.track(seen, np.full(600, 0.03)).mean
    shifted = level.track(seen[30:], np.full(570, 0.03)).mean  # cut elsewhere
    assert np.abs(whole[90:-60] - shifted[60:-60]).max() < 0.004


def test_a_stretched_grid_stretches_the_levels() -> None:
    levels = level.track(noisy([-0.3, 0.0], [200, 200]), np.full(400, 0.03))
    wide = level.regridded(levels, 1.5 * levels.grid)
    np.testing.assert_allclose(wide.mean, 1.5 * levels.mean, atol=1e-3)


def test_how_much_is_worked_at_once_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    seen = noisy([-0.3, 0.1, -0.2], [400, 90, 300])
    width = np.full(len(seen), 0.03)
    whole = level.sharpened(level.track(seen, width), seen).belief
    monkeypatch.setattr(level, "_AT_ONCE", 3)
    monkeypatch.setattr(level, "_EDGES_AT_ONCE", 4)
    np.testing.assert_array_equal(level.sharpened(level.track(seen, width), seen).belief, whole)


def test_a_long_line_gives_the_same_without_keeping_it_all(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    seen = noisy([-0.3, 0.1, -0.2], [400, 90, 301])
    seen[500:560] = np.nan
    width = np.full(len(seen), 0.03)
    kept = level.sharp(seen, width)
    monkeypatch.setattr(level, "KEPT_S", 600)
    monkeypatch.setattr(level, "_AT_ONCE", 3)
    monkeypatch.setattr(level, "_ROWS_AT_ONCE", 50)
    long = level.sharp(seen, width)
    assert isinstance(kept, level.Levels) and isinstance(long, level.LongLevels)
    np.testing.assert_array_equal(long.grid, kept.grid)
    np.testing.assert_allclose(long.mean, kept.mean, rtol=0, atol=1e-7)  # of float32 sums
    for _ in range(2):
        at = 0
        for begin, rows in long.blocks():
            assert begin == at and len(rows) <= 50
            np.testing.assert_array_equal(rows, kept.belief[at : at + len(rows)])
            at += len(rows)
        assert at == len(seen)

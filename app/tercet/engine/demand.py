"""Fusion: what the running asked of the runner, second by second, with its doubt."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tercet.engine import cleaning, doubt, ground, level, steadiness
from tercet.engine.judgement import Evidence
from tercet.engine.motion import Motion
from tercet.engine.scale import Floats, Shade, Thresholds, intensity
from tercet.engine.slope import Slopes

#: Walking costs this share of running the same way on the level: Minetti et al. 2002, 2.5 / 3.6.
WALKING_COST = 2.5 / 3.6
#: Change of the log cost of running by slope near the level, same source: 19.5 / 3.6.
COST_BY_SLOPE = 19.5 / 3.6
#: Spread of the unseen cost that comes and goes on known hills (natural log). [trial]
UNSEEN_SPREAD = 0.03
#: Shares by which a belt's changes of speed may be larger than shown, and their chances.
#: [trial]
STRETCHES = ((1.0, 0.3), (1.18, 0.4), (1.36, 0.3))
INDOOR_TRUST = 0.1
#: Spread of what comes and goes on a belt whose speed is known. [guess]
BELT_SPREAD = 0.008
#: Slower is no speed of running at all. [m/s]
LEAST_LEVEL = 0.3
#: Work lies above this share of the way from LT1 to LT2. [trial]
WORK = 0.35
#: Spread of the slope where there is no altitude. [trial]
NO_HILLS_SPREAD = 0.012
#: Time constant used where heart rate judges alone. [s]
ALONE_TAU_S = 50.0


@dataclass(frozen=True, eq=False)
class Weighed:
    """A shade, its probability, and the evidence of every second."""

    shades: NDArray[np.uint8]
    evidence: NDArray[np.uint8]
    scale: Floats  # NaN where speed does not judge
    level_speed: Floats  # followed, without ground and wind [m/s]
    even_speed: Floats  # the same, freed of most of the slowing and hastening on hills [m/s]
    probability: Floats  # of the shade given
    work_speed: float  # level speed that work exceeds [m/s]
    intervals: tuple[tuple[float, float], ...] = ()  # 90 %, seconds of each shade
    disbelieved_s: int = 0  # of heart rate [s]


def reference_speed(moved: Motion, thresholds: Thresholds | None) -> float:
    """LT2 speed, or where it is unknown a quarter above the usual speed of the run. [m/s]"""
    if thresholds is not None and thresholds.by_speed and thresholds.lt2_speed:
        return thresholds.lt2_speed
    speed = moved.speed[moved.running & (moved.speed > 0.3)]
    return 1.25 * float(np.median(speed)) if len(speed) else np.inf


def weigh(
    moved: Motion,
    level_speed: Floats,
    hills: Slopes,
    heart: Floats,
    thresholds: Thresholds | None,
) -> Weighed:
    """Judge every second with a speed.

    Parameters
    ----------
    moved : Motion
    level_speed : ndarray, shape (n,)
        Level-equivalent speed as seen. [m/s]
    hills : Slopes
    heart : ndarray, shape (n,)
        Cleaned heart rate. [beats/min]
    thresholds : Thresholds or None

    Returns
    -------
    Weighed
    """
    n = len(level_speed)
    shades = np.full(n, Shade.UNJUDGED, dtype=np.uint8)
    evidence = np.zeros(n, dtype=np.uint8)
    scale, probability = np.full(n, np.nan), np.zeros(n)
    shades[~moved.running] = Shade.NOT_RUNNING
    seen = moved.running & (level_speed > LEAST_LEVEL)
    if not seen.any():
        return Weighed(shades, evidence, scale, level_speed, level_speed, probability, np.inf)
    t = thresholds if thresholds is not None and thresholds.by_speed else None
    lt2 = reference_speed(moved, thresholds)
    log_speed = np.full(n, np.nan)
    log_speed[seen] = np.log(level_speed[seen] / lt2)
    width = np.full(n, level.scatter(log_speed))
    levels: level.Levels | level.LongLevels
    if moved.indoor and not moved.by_belt and t is not None:
        whole = level.sharpened(level.track(log_speed, width), log_speed)
        levels = _stretched(whole, moved, heart, t, hills)
    else:
        levels = level.sharp(log_speed, width)
    held = lt2 * np.exp(levels.mean)
    followed = np.where(seen, held, level_speed)
    even = followed.copy()
    hilly = np.where(moved.speed > LEAST_LEVEL, moved.speed, level_speed)[seen] / level_speed[seen]
    even[seen] *= hilly**steadiness.YIELDED
    if t is None:
        return Weighed(shades, evidence, scale, followed, even, probability, lt2)
    assert t.lt1_speed and t.lt2_speed
    spread = _unseen(moved, hills)
    leaned = np.zeros(n)
    if not moved.indoor:
        leaned, spread = steadiness.unseen_by_pace(np.log(np.maximum(even, 0.3)), seen, spread)
        even *= np.exp(steadiness.YIELDED * leaned)
    below = _listen(moved, followed * np.exp(leaned), heart, t, spread)
    at = (np.arange(len(below.along)) + 0.5) * below.step_s
    added = np.interp(np.arange(n) + 0.5, at, below.along) + leaned
    chances = _chances(levels, below, t, added, np.interp(np.arange(n) + 0.5, at, below.spread))
    judged = chances.argmax(axis=1)
    scale[seen] = intensity(
        (held * np.exp(added))[seen], rest=0.0, lt1=t.lt1_speed, lt2=t.lt2_speed
    )
    shades[seen] = judged[seen]
    # The scale tells the same shade as the probabilities.
    floor = np.array([-np.inf, 1.0, 2.0])[judged]
    top = np.array([1.0 - 1e-9, 2.0 - 1e-9, np.inf])[judged]
    scale = np.clip(scale, floor, top)
    probability[seen] = chances[seen, judged[seen]]
    evidence[seen] = Evidence.SPEED
    if below.heard:
        evidence[seen & np.isfinite(heart)] = Evidence.BOTH
    way = WORK * np.log(t.lt2_speed) + (1 - WORK) * np.log(t.lt1_speed)
    work = float(np.exp(way - added.mean()))
    shared = float(
        np.hypot(
            below.bearing * np.sqrt(below.belief @ (ground.COSTS - below.constant) ** 2),
            below.spread.mean() * np.sqrt(min(1.0, 2 * ground.LASTING_S / max(seen.sum(), 1))),
        )
    )
    sure = doubt.intervals(
        np.log(held[seen]) + added[seen],
        chances[seen],
        (float(np.log(t.lt1_speed)), float(np.log(t.lt2_speed))),
        shared,
    )
    return Weighed(
        shades, evidence, scale, followed, even, probability, work, sure, below.disbelieved_s
    )


def _chances(
    levels: level.Levels | level.LongLevels,
    below: ground.Ground,
    t: Thresholds,
    added: Floats,
    spread: Floats,
) -> Floats:
    """Probability of each shade in each second: levels and unseen costs mixed, shape (n, 3)."""
    assert t.lt1_speed and t.lt2_speed
    # What heart rate tells of the parts holds whatever the constant: less of its doubt is left.
    middle = below.constant
    costs = ground.COSTS
    nearer = middle + below.bearing * (costs - middle)
    hat = np.maximum(1 - np.abs(nearer[:, None] - costs[None, :]) / level.STEP, 0.0)
    belief = below.belief @ hat
    beside = added - middle
    fine = level.STEP / 3
    shift = np.clip(np.round(beside / fine).astype(np.int64), -90, 90)
    wide = np.clip(np.round(np.log2(np.maximum(spread, 1e-3) / 0.004)).astype(np.int64), 0, 5)
    kinds, which = np.unique((shift + 90) * 6 + wide, return_inverse=True)
    widths = 0.004 * 2.0 ** (kinds % 6)
    shifts = fine * (kinds // 6 - 90)
    # The sum of level and cost lies on one even grid, as both have the same step.
    span = len(levels.grid) + len(costs) - 1
    sums = levels.grid[0] + costs[0] + level.STEP * np.arange(span)
    mixed = []
    for line in (float(np.log(t.lt1_speed / t.lt2_speed)), 0.0):
        off = (sums[None, :] + shifts[:, None] - line) / widths[:, None]
        # A logistic stands for the normal law of what is in doubt.
        under = 1.0 / (1.0 + np.exp(np.clip(1.702 * off, -50, 50)))
        windows = np.lib.stride_tricks.sliding_window_view(under, len(costs), axis=1)
        mixed.append((windows @ belief).astype(np.float32))
    low, high = np.empty((2, len(which)))
    for begin, rows in levels.blocks():
        part = slice(begin, begin + len(rows))
        for found, mix in zip((low, high), mixed, strict=True):
            found[part] = np.einsum("nm,nm->n", rows, mix[which[part]])
    low, high = np.clip(low, 0.0, 1.0), np.clip(high, 0.0, 1.0)
    high = np.maximum(low, high)
    return np.stack((low, high - low, 1.0 - high), axis=1)


def _stretched(
    levels: level.Levels, moved: Motion, heart: Floats, t: Thresholds, hills: Slopes
) -> level.Levels:
    """Undo a watch's flattening of a belt's changes of speed, as far as heart rate asks for it.

    Without positions a watch guesses speed from the arm and shows less change than there is.
    """
    assert t.lt2_speed
    middle = float(np.median(levels.mean[moved.running]))
    spread = _unseen(moved, hills)
    best, chosen = -np.inf, levels
    for share, belief in STRETCHES:
        grid = middle + share * (levels.grid - middle)
        tried = level.regridded(levels, grid)
        followed = np.where(moved.running, t.lt2_speed * np.exp(tried.mean), moved.speed)
        asked, mean = _steps(_effort(moved, followed), heart, ground.STEP_S)
        said = ground.likelihood(asked, mean, t, spread, "guess") if t.by_heart_rate else 0.0
        likely = INDOOR_TRUST * said + np.log(belief)
        if likely > best:
            best, chosen = likely, tried
    return chosen


def _listen(
    moved: Motion, followed: Floats, heart: Floats, t: Thresholds, spread: float
) -> ground.Ground:
    """Hear what heart rate says of the unseen cost."""
    n = len(followed)
    source = ground.source_of(indoor=moved.indoor, told=moved.by_belt)
    if not t.by_heart_rate or not np.isfinite(heart).any():
        return ground.unheard(n, spread, source)
    asked, mean = _steps(_effort(moved, followed), heart, ground.STEP_S)
    wind = moved.wind
    if wind is not None:
        count = n // ground.STEP_S
        wind = wind[: count * ground.STEP_S].reshape(count, ground.STEP_S, 2).mean(axis=1)
    return ground.listen(asked, mean, t, spread, source, wind)


def _unseen(moved: Motion, hills: Slopes) -> float:
    """Prior spread of the cost that comes and goes unseen (natural log)."""
    if moved.by_belt:
        return BELT_SPREAD
    spread = float(hills.spread.max()) if hills.used else NO_HILLS_SPREAD * (not moved.indoor)
    return float(np.hypot(UNSEEN_SPREAD, COST_BY_SLOPE * spread))


def _effort(moved: Motion, followed: Floats) -> Floats:
    """Level-equivalent speed of every second, walking and standing at their lower cost."""
    effort = np.where(moved.running, followed, WALKING_COST * np.nan_to_num(moved.speed))
    return np.where(moved.clock & np.isfinite(effort), effort, 0.0)


def _steps(effort: Floats, heart: Floats, length: int) -> tuple[Floats, Floats]:
    """Means over steps: effort, and heart rate (NaN if mostly missing)."""
    count = len(effort) // length
    asked = effort[: count * length].reshape(count, length).mean(axis=1)
    beats = heart[: count * length].reshape(count, length)
    known = np.isfinite(beats)
    there = known.sum(axis=1)
    mean = np.where(known, beats, 0.0).sum(axis=1) / np.maximum(there, 1)
    mean[2 * there <= length] = np.nan
    return asked, mean


def by_heart_rate(heart: Floats, t: Thresholds) -> Floats:
    """Scale by heart rate alone, its lag undone; NaN where it is missing. Shape (n,)."""
    assert t.lt1_hr and t.lt2_hr
    smooth = cleaning.moving_mean(heart, 15)
    slow = cleaning.moving_mean(smooth, 15)
    rise = np.gradient(slow) if len(slow) > 1 else np.zeros(len(slow))
    ahead = cleaning.moving_median(smooth + ALONE_TAU_S * rise, 21)
    rest = t.hr_rest if t.hr_rest is not None else min(60.0, t.lt1_hr - 20)
    scale = intensity(ahead, rest=rest, lt1=t.lt1_hr, lt2=t.lt2_hr)
    return np.where(np.isfinite(heart), scale, np.nan)

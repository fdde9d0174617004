"""Fusion: what the running asked of the runner, second by second, with its doubt."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tercet.engine import cleaning, ground, kinetics, level
from tercet.engine.judgement import Evidence
from tercet.engine.motion import Motion
from tercet.engine.scale import Floats, Shade, Thresholds, intensity
from tercet.engine.slope import Slopes

#: Walking costs this share of running the same way on the level: Minetti et al. 2002, 2.5 / 3.6.
WALKING_COST = 2.5 / 3.6
#: Change of the log cost of running by slope near the level, same source: 19.5 / 3.6.
COST_BY_SLOPE = 19.5 / 3.6
#: Heart rate this far below or above what speed foretells is the sensor's fault. [beats/min]
#: [trial]
IMPLAUSIBLE_BPM = (22.0, 40.0)
#: Time constant used where heart rate judges alone. [s]
ALONE_TAU_S = 50.0


@dataclass(frozen=True, eq=False)
class Weighed:
    """A shade, its probability, and the evidence of every second."""

    shades: NDArray[np.uint8]
    evidence: NDArray[np.uint8]
    scale: Floats  # NaN where speed does not judge
    level_speed: Floats  # followed, without ground and wind [m/s]
    probability: Floats  # of the shade given
    work_speed: float  # level speed that work exceeds [m/s]


def weigh(
    moved: Motion, level_speed: Floats, hills: Slopes, heart: Floats, thresholds: Thresholds | None
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
    seen = moved.running & (level_speed > 0.3)
    if not seen.any():
        return Weighed(shades, evidence, scale, level_speed, probability, np.inf)
    t = thresholds if thresholds is not None and thresholds.by_speed else None
    lt2 = t.lt2_speed if t and t.lt2_speed else 1.25 * float(np.median(level_speed[seen]))
    log_speed = np.full(n, np.nan)
    log_speed[seen] = np.log(level_speed[seen] / lt2)
    width = np.full(n, level.scatter(log_speed))
    levels = level.track(log_speed, width)
    held = lt2 * np.exp(levels.mean)
    followed = np.where(seen, held, level_speed)
    if t is None:
        return Weighed(shades, evidence, scale, followed, probability, lt2)
    assert t.lt1_speed and t.lt2_speed
    below = _listen(moved, followed, heart, t)
    added = float(below.belief @ below.costs)
    chances = _chances(levels, below, t, float(hills.spread.max()) * COST_BY_SLOPE)
    judged = chances.argmax(axis=1)
    scale[seen] = intensity(
        held[seen] * np.exp(added), rest=0.0, lt1=t.lt1_speed, lt2=t.lt2_speed
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
    work = float(np.exp(0.4 * np.log(t.lt1_speed) + 0.6 * np.log(t.lt2_speed) - added))
    return Weighed(shades, evidence, scale, followed, probability, work)


def _chances(levels: level.Levels, below: ground.Ground, t: Thresholds, doubt: float) -> Floats:
    """Probability of each shade in each second: levels and added costs mixed, shape (n, 3)."""
    assert t.lt1_speed and t.lt2_speed
    grid = levels.grid[:, None] + below.costs[None, :]
    width = max(doubt, 0.25 * level.STEP)
    under = []
    for line in (np.log(t.lt1_speed / t.lt2_speed), 0.0):
        # A logistic stands for the normal law of the slope's doubt.
        below_line = 1.0 / (1.0 + np.exp(np.clip(1.702 * (grid - line) / width, -50, 50)))
        under.append(below_line @ below.belief)
    chance = np.asarray(levels.belief @ np.array(under, dtype=np.float32).T, dtype=np.float64)
    return np.stack((chance[:, 0], chance[:, 1] - chance[:, 0], 1.0 - chance[:, 1]), axis=1)


def _listen(moved: Motion, followed: Floats, heart: Floats, t: Thresholds) -> ground.Ground:
    """Hear what heart rate says of the whole run, twice if some of it was not to be believed."""
    if not t.by_heart_rate or not np.isfinite(heart).any():
        return ground.without_heart_rate(indoor=moved.indoor)
    effort = np.where(moved.running, followed, WALKING_COST * np.nan_to_num(moved.speed))
    effort = np.where(moved.clock & np.isfinite(effort), effort, 0.0)
    steps = len(effort) // ground.STEP_S
    if steps < 12:
        return ground.without_heart_rate(indoor=moved.indoor)
    shape = (steps, ground.STEP_S)
    end = steps * ground.STEP_S
    asked = effort[:end].reshape(shape).mean(axis=1)
    beats = heart[:end].reshape(shape)
    known = np.isfinite(beats)
    count = known.sum(axis=1)
    mean = np.where(known, beats, 0.0).sum(axis=1) / np.maximum(count, 1)
    mean[count < 3] = np.nan
    trust = count / ground.STEP_S
    heard = ground.listen(asked, mean, t, indoor=moved.indoor, trust=trust)
    if not heard.heard:
        return heard
    off = np.nan_to_num(mean - heard.expected)
    wrong = (off < -IMPLAUSIBLE_BPM[0]) | (off > IMPLAUSIBLE_BPM[1])
    if not wrong.any():
        return heard
    return ground.listen(
        asked, np.where(wrong, np.nan, mean), t, indoor=moved.indoor, trust=trust
    )


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

"""What moved and how: speed without the watch's lag, metres, and running told from walking."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tercet.engine import cleaning, wind
from tercet.engine.geodesy import step_lengths
from tercet.engine.known import MOSTLY
from tercet.engine.lag import earlier, lag_of
from tercet.engine.leaps import TOP_SPEED
from tercet.engine.power import told_by_power
from tercet.engine.scale import Floats
from tercet.engine.timeline import Timeline

#: Slower than this is walking or standing: not running. [m/s] (common practice, no source)
RUNNING_FLOOR = 1.8
#: Faster than this nobody walks for long: the walk-run transition lies near 2 m/s. [m/s]
WALKING_TOP = 2.2
#: Steps of running and of walking do not overlap; the border. [steps/min] [memory]
RUNNING_STEPS = 138.0
#: Watches smooth the step rate by about this much. [s] [trial]
CADENCE_LAG_S = 1


#: Speed by positions, whose errors are others, counts for this share over so many seconds. [trial]
OPINION, OPINION_S = 0.5, 41


@dataclass(frozen=True, eq=False)
class Motion:
    """All with one entry a second; speed NaN where nothing tells."""

    speed: Floats  # [m/s], the watch's lag undone
    metres: Floats  # [m], likewise; sums to the distance of the recording
    walking: NDArray[np.bool_]  # walking or standing while the timer ran
    running: NDArray[np.bool_]  # neither, and the timer ran
    clock: NDArray[np.bool_]  # the timer ran
    indoor: bool
    lag_s: int
    by_belt: bool = False  # speed was read off a treadmill by its runner
    wind: Floats | None = None  # (n, 2) of wind.bearings, None without positions


def read_motion(line: Timeline, *, indoor: bool, told: NDArray[np.bool_] | None = None) -> Motion:
    """Read motion from the grid.

    Parameters
    ----------
    line : Timeline
    indoor : bool
        Whether speed is a belt's, guessed by the watch.
    told : ndarray of bool, shape (n,), or None
        Where the runner gave the belt's speed: it has no lag and is no guess.

    Returns
    -------
    Motion
    """
    n = len(line)
    on_belt = np.zeros(n, dtype=bool) if told is None else told
    cadence = line.channels.get("cadence")
    recorded = _speed(line)
    if indoor:
        reference = cadence if cadence is not None else np.full(n, np.nan)
    else:
        reference = _speed_by_positions(line)
    lag = lag_of(recorded, reference, line.running_clock & (recorded > 0.5) & ~on_belt)
    speed, metres = recorded.copy(), line.metres.copy()
    if not indoor:
        recorded = _second_opinion(recorded, reference, lag, line.running_clock)
    for begin, end in cleaning.run_lengths(line.running_clock):
        speed[begin:end] = earlier(recorded[begin:end], lag)
        piece = line.metres[begin:end]
        if len(piece) > lag and not on_belt[begin:end].any():
            # The end stands for what the shift cut off, so the sum stays.
            metres[begin:end] = np.concatenate((piece[lag:], piece[:lag]))
    if on_belt.any():
        speed[on_belt] = line.channels["speed"][on_belt]
    steps = None if cadence is None else earlier(cadence, CADENCE_LAG_S)
    alive = np.isfinite(line.channels.get("heart_rate", speed))
    powered = told_by_power(line.channels.get("power"))
    on_foot = _runs(speed, steps, alive if powered is None else alive | powered)
    clock = line.running_clock
    known = int(np.count_nonzero(on_belt & clock & on_foot))
    by_belt = known > 0 and known >= MOSTLY * int(np.count_nonzero(clock & on_foot))
    running = clock & on_foot
    head = wind.bearings(
        line.channels.get("latitude"), line.channels.get("longitude"), speed, running
    )
    walking, inside = clock & ~on_foot, indoor or by_belt
    return Motion(speed, metres, walking, running, clock, inside, lag, by_belt, head)


def _second_opinion(recorded: Floats, placed: Floats, lag: int, clock: NDArray[np.bool_]) -> Floats:
    """Correct slow errors of the recorded speed by half of what positions say.

    Only what comes and goes is taken: neither the mean difference of the run nor its quick part.
    """
    if len(recorded) < 300:
        return recorded
    late = np.concatenate((placed[:1].repeat(lag), placed[: len(placed) - lag]))
    off = late - recorded
    good = np.isfinite(off) & clock & (recorded > 1.0) & (np.abs(off) < 1.5)
    if np.count_nonzero(good) < 300:
        return recorded
    off = np.where(good, np.clip(off - off[good].mean(), -0.8, 0.8), 0.0)
    share = cleaning.moving_mean(good.astype(np.float64), OPINION_S)
    slow = cleaning.moving_mean(off, OPINION_S) / np.maximum(share, 0.25)
    moved = np.maximum(recorded + OPINION * slow, 0.0)
    return np.where(recorded > 1.0, moved, recorded)


def _speed(line: Timeline) -> Floats:
    """Take recorded speed, filled where it is missing from the distance covered."""
    from_distance = np.full(len(line), np.nan)
    if line.metres.any():
        from_distance = cleaning.moving_mean(line.metres, 5)
    recorded = line.channels.get("speed")
    if recorded is None or not np.nanmax(np.append(recorded, 0.0)) > 0:
        return np.asarray(np.clip(from_distance, 0.0, TOP_SPEED))
    # A zero from a lost signal while the distance went on is no standing runner.
    lost = ~np.isfinite(recorded) | ((recorded < 0.1) & (from_distance > 1.5))
    return np.asarray(np.clip(np.where(lost, from_distance, recorded), 0.0, TOP_SPEED))


def _speed_by_positions(line: Timeline) -> Floats:
    lat, lon = line.channels.get("latitude"), line.channels.get("longitude")
    if lat is None or lon is None or len(lat) < 3:
        return np.full(len(line), np.nan)
    inside = (np.abs(lat) <= 90.0) & (np.abs(lon) <= 360.0)
    steps = step_lengths(np.where(inside, lat, 0.0), np.where(inside, lon, 0.0))
    steps[~(inside[1:] & inside[:-1]) | (steps > TOP_SPEED)] = np.nan
    padded = np.concatenate((steps[:1], steps, steps[-1:])).astype(np.float64)
    return np.asarray(0.5 * (padded[:-1] + padded[1:]), dtype=np.float64)


def _runs(speed: Floats, steps: Floats | None, alive: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Tell running from walking and standing, by steps first, which are quicker than speed."""
    if steps is None or not np.nanmax(np.append(steps, 0.0)) > 0:
        # Where neither speed nor steps tell, the timer does.
        return np.where(np.isfinite(speed), speed >= RUNNING_FLOOR, alive)
    by_steps = np.nan_to_num(steps) >= RUNNING_STEPS
    by_speed = np.where(np.isfinite(speed), speed >= WALKING_TOP, ~np.isfinite(steps) & alive)
    fast = np.where(np.isfinite(steps), speed >= 3.0, speed >= RUNNING_FLOOR)
    return np.where(np.isfinite(steps), by_steps | fast, by_speed)

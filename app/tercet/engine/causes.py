"""Why a second was moderate: one cause for each, and how much slower would have kept it easy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import fill_short, moving_mean, run_lengths
from tercet.engine.judgement import Evidence, Judgement
from tercet.engine.kinetics import GAIN
from tercet.engine.power import in_speeds
from tercet.engine.scale import Floats, Shade, Thresholds

Mask = NDArray[np.bool_]

#: Pace, heart rate and hills are compared as means over about a minute. [s]
CALM_S = 61
#: The run's own measure is taken in this span, once heart rate has settled. [s]
EARLY_S = (120, 900)
#: Easing off for so long below this share of LT1 ends what began too fast. [s]
EASED_S, EASED = 300, 0.97
#: This near LT1 is too fast from the start already: it only wavers about the line.
NEAR = 0.99
#: A hill counts if it adds this share of speed, over so many seconds, ... [trial]
HILL, HILL_S = 0.02, 31
#: ... and the running beside it, so far to each side, was easy. [s]
BESIDE_S = 421
#: A moderate second so near a repetition belongs to it. [s]
AROUND_S = 75
#: Fast stretches shorter than this leave moderate seconds at their edges. [s]
RAMP_S = 45
#: Work that was meant: it lasts, sets in at once by this share of speed, and lies this far up
#: the scale. [s], [trial]
MEANT_S, MEANT_JUMP, MEANT_SCALE = 240, 0.10, 1.4


#: The pace that would have been easy: three quarters of the part under LT1, in means over some
#: minutes, since hills and moods bring moments above any pace. [s]
EASY_CALM_S, EASY_QUANTILE = 181, 0.75


class Cause(IntEnum):
    """Where a moderate second came from; NONE for seconds that were not moderate."""

    NONE = 0
    START = 1  # too fast from the start
    LATE = 2  # crept up late
    CLIMB = 3  # climbed
    DRIFT = 4  # heart rate rose at steady pace
    AROUND = 5  # ramps and recoveries of repetitions
    MEANT = 6  # tempo, race, planned


#: Those that nobody set out for, in no order.
UNMEANT = (Cause.START, Cause.LATE, Cause.CLIMB, Cause.DRIFT, Cause.AROUND)


@dataclass(frozen=True)
class Part:
    """What of one run had one cause; speeds along the ground, NaN where unknown.

    ``easy_speed`` is the speed at which the part would have been easy but for moments.
    """

    seconds: float
    speed: float  # [m/s]
    easy_speed: float  # [m/s]


@dataclass(frozen=True, eq=False)
class _Line:
    """A run in additive parts, in units in which LT1 is a fixed line.

    By speed: natural logs of speed over LT1 speed. By heart rate: beats/min above LT1, with
    level speed turned into beats by the published gain.
    """

    whole: Floats  # what was judged; 0 is LT1
    pace: Floats  # part of it that is level speed
    hill: Floats  # part of the pace that hills added
    near: float  # NEAR, in these units
    eased: float
    steep: float
    jump: float


def causes(
    judged: Judgement, thresholds: Thresholds | None, *, meant: bool = False
) -> NDArray[np.uint8]:
    """Give every moderate second one cause.

    Parameters
    ----------
    judged : Judgement
    thresholds : Thresholds or None
        Those that judged it.
    meant : bool
        Whether all of it was meant: a race, a planned moderate session, or the runner says so.

    Returns
    -------
    ndarray of uint8, shape (n,)
        Values of :class:`Cause`, NONE wherever the shade is not moderate.

    Notes
    -----
    In order: what was meant (said so, written down, moderate repetitions, or work that sets in
    at once, lasts and lies well up between the lines); ramps and recoveries of repetitions;
    hills, where the running beside them was easy; heart rate that rose more than the pace
    explains; pace, from the start or late. The limits are this program's own.
    """
    moderate = judged.shades == Shade.MODERATE
    out = np.zeros(len(moderate), dtype=np.uint8)
    if not moderate.any():
        return out
    if meant:
        out[moderate] = Cause.MEANT
        return out
    judged_by = judged.evidence[judged.shades <= Shade.HARD]
    if (judged_by == Evidence.WORD).all():  # a written session: what was set out for, in words
        out[moderate] = Cause.MEANT
        return out
    left = moderate.copy()
    bouts = [(int(r.start_s), int(r.start_s + r.duration_s), r.shade) for r in judged.repetitions]
    for begin, end, shade in bouts:
        if shade == Shade.MODERATE:
            out[begin:end][left[begin:end]] = Cause.MEANT
    line = _line(judged, thresholds)
    sets = _sets(len(out), bouts)
    for begin, end, cause in _work(judged, line, sets):
        out[begin:end][left[begin:end]] = cause
    left &= out == Cause.NONE
    around = sets | _ramps(judged.shades)
    out[left & around] = Cause.AROUND
    left &= ~around
    if line is None:
        out[left] = Cause.DRIFT  # heart rate alone: no pace is known
    elif left.any():
        out[left] = _by_parts(judged, line, around | (out == Cause.MEANT))[left]
    return out


def parts(
    judged: Judgement, thresholds: Thresholds | None, cause: NDArray[np.uint8]
) -> dict[Cause, Part]:
    """Sum a run up by cause.

    Parameters
    ----------
    judged : Judgement
    thresholds : Thresholds or None
        Those that judged it.
    cause : ndarray of uint8, shape (n,)
        From :func:`causes`.

    Returns
    -------
    dict of Cause to Part
        Only causes that occur; their seconds add up to the moderate seconds.
    """
    weights = np.ones(len(cause))
    if len(weights):
        weights[-1] = judged.last_second_s
    seconds = np.bincount(cause, weights=weights, minlength=len(Cause))
    seconds[Cause.NONE] = 0.0
    line = _line(judged, thresholds)
    by_heart = thresholds is None or not (thresholds.by_speed or _by_watts(judged, thresholds))
    found = {}
    for k in np.flatnonzero(seconds).tolist():
        inside = cause == k
        known = judged.speed[inside & np.isfinite(judged.speed)]
        speed = float(known.mean()) if len(known) else float("nan")
        easy = float("nan")
        if line is not None and len(known):
            calm = moving_mean(line.whole, EASY_CALM_S)[inside]
            over = max(float(np.quantile(calm, EASY_QUANTILE)), 0.0)
            easy = speed - over / GAIN if by_heart else speed * float(np.exp(-over))
        found[Cause(k)] = Part(float(seconds[k]), speed, easy)
    return found


def together(pieces: Sequence[dict[Cause, Part]]) -> dict[Cause, Part]:
    """Sum up the parts of a run's pieces; speeds weigh by their seconds where they are known."""
    found: dict[Cause, Part] = {}
    for cause in Cause:
        same = [piece[cause] for piece in pieces if cause in piece]
        if same:
            seconds = sum(part.seconds for part in same)
            speeds = (
                _weighed([(part.seconds, part.speed) for part in same]),
                _weighed([(part.seconds, part.easy_speed) for part in same]),
            )
            found[cause] = same[0] if len(same) == 1 else Part(seconds, *speeds)
    return found


def _weighed(values: list[tuple[float, float]]) -> float:
    known = [(seconds, value) for seconds, value in values if value == value]
    whole = sum(seconds for seconds, _ in known)
    return sum(s * value for s, value in known) / whole if whole else float("nan")


def _line(judged: Judgement, t: Thresholds | None) -> _Line | None:
    """Put the run into additive parts; None where no speed is known."""
    speed, level = judged.speed, judged.level_speed
    if t is not None and _by_watts(judged, t):
        # Power tells of hills by itself: what was asked is all that is seen.
        t = in_speeds(t)
        speed = level = _demand(judged.scale, t)
    known = np.isfinite(speed) & np.isfinite(level) & (speed > 0.3) & (level > 0.3)
    if t is None or np.count_nonzero(known) < 60:
        return None
    gone = np.where(known, 0.0, np.nan)
    if t.by_speed:
        assert t.lt1_speed
        demand = _demand(judged.scale, t)
        whole = np.log(np.maximum(demand, 0.3) / t.lt1_speed) + gone
        pace = np.log(np.maximum(level, 0.3) / t.lt1_speed) + gone
        hill = np.log(np.maximum(level, 0.3) / np.maximum(speed, 0.3)) + gone
        limits = (np.log(NEAR), np.log(EASED), HILL, MEANT_JUMP)
    else:
        if t.lt1_hr is None or not np.isfinite(judged.heart_rate).any():
            return None
        whole = judged.heart_rate - t.lt1_hr + gone
        pace, hill = GAIN * level + gone, GAIN * (level - speed)
        per = GAIN * float(np.median(level[known]))
        limits = (np.log(NEAR) * per, np.log(EASED) * per, HILL * per, MEANT_JUMP * per)
    whole, pace, hill = (moving_mean(fill_short(_held(x)), w)
                         for x, w in ((whole, CALM_S), (pace, CALM_S), (hill, HILL_S)))  # fmt: skip
    return _Line(whole, pace, hill, *(float(x) for x in limits))


def _by_watts(judged: Judgement, t: Thresholds) -> bool:
    """Whether lines in watts alone judged it."""
    return t.by_power and not t.by_speed and bool((judged.evidence == Evidence.POWER).any())


def _demand(scale: Floats, t: Thresholds) -> Floats:
    """What was asked, as a level speed. [m/s]"""
    assert t.lt1_speed and t.lt2_speed
    above = t.lt1_speed + (scale - 1.0) * (t.lt2_speed - t.lt1_speed)
    return np.where(scale < 1.0, scale * t.lt1_speed, above)


def _held(values: Floats) -> Floats:
    """Fill what is unknown from the nearest before, else after."""
    known = np.isfinite(values)
    at = np.maximum.accumulate(np.where(known, np.arange(len(values)), -1))
    return values[np.where(at < 0, int(known.argmax()), at)]


def _work(judged: Judgement, line: _Line | None, sets: Mask) -> list[tuple[int, int, Cause]]:
    """Stretches of work that set in at once: tempo, race pace, or fast and slower in turn."""
    if line is None:
        return []
    hard = judged.shades == Shade.HARD
    scale = moving_mean(np.nan_to_num(judged.scale), 31)
    found = []
    for begin, end in _bridged((scale >= 1.0) & ~sets, 30):
        if begin < 120 or end - begin < MEANT_S or scale[begin:end].mean() < MEANT_SCALE:
            continue
        before, after = line.pace[begin - 110 : begin - 30], line.pace[begin + 30 : begin + 110]
        if float(np.median(after) - np.median(before)) >= line.jump:
            inside, fast = line.pace[begin:end], hard[begin:end]
            apart = 0.0
            if 30 < np.count_nonzero(fast) < end - begin - 30:
                apart = float(np.median(inside[fast]) - np.median(inside[~fast]))
            cause = Cause.AROUND if apart >= line.jump else Cause.MEANT
            found.append((begin - 30, end + 30, cause))
    return found


def _bridged(mask: Mask, gap: int) -> list[tuple[int, int]]:
    """Stretches of True, over gaps of up to so many seconds."""
    joined: list[tuple[int, int]] = []
    for begin, end in run_lengths(mask):
        if joined and begin - joined[-1][1] <= gap:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((begin, end))
    return joined


def _sets(n: int, bouts: list[tuple[int, int, Shade]]) -> Mask:
    """Seconds in and between repetitions, and shortly beside them."""
    mask = np.zeros(n, dtype=np.bool_)
    for k, (begin, end, _) in enumerate(bouts):
        last = end + AROUND_S
        # A recovery belongs to its set, however long within reason.
        if k + 1 < len(bouts) and bouts[k + 1][0] - end <= 600:
            last = max(last, bouts[k + 1][0])
        mask[max(begin - AROUND_S // 2, 0) : last] = True
    return mask


def _ramps(shades: NDArray[np.uint8]) -> Mask:
    """Short moderate stretches that touch hard ones."""
    mask = np.zeros(len(shades), dtype=np.bool_)
    hard = np.concatenate(([False], shades == Shade.HARD, [False]))
    if hard.any():
        for begin, end in run_lengths(shades == Shade.MODERATE):
            if end - begin <= RAMP_S and (hard[begin] or hard[end + 1]):
                mask[begin:end] = True
    return mask


def _by_parts(judged: Judgement, line: _Line, apart: Mask) -> NDArray[np.uint8]:
    """Hill, heart rate or pace for every second, as if all were moderate."""
    n = len(judged.shades)
    running = (judged.shades <= Shade.HARD) & ~apart
    first, last = EARLY_S
    at = np.flatnonzero(running)
    early = at[first:last] if len(at) > first + 120 else at
    if not len(early):
        return np.full(n, Cause.START, dtype=np.uint8)
    unseen = line.whole - line.pace
    grown = np.maximum(unseen - float(np.median(unseen[early])), 0.0)
    hastened = np.maximum(line.pace - float(np.median(line.pace[early])), 0.0)

    flat = running & (np.abs(line.hill) < line.steep)
    beside = _local_mean(line.whole - line.hill, flat, BESIDE_S)
    usual = float(np.median((line.whole - line.hill)[running]))
    beside = np.where(np.isfinite(beside), beside, usual)
    climbed = (line.hill >= line.steep) & (beside < 0.0)
    drifted = (line.whole - grown < 0.0) & (grown > hastened)

    out = np.full(n, Cause.LATE, dtype=np.uint8)
    if float(np.median(line.whole[early])) >= line.near:
        eased = moving_mean(np.where(running, line.whole, 0.0), EASED_S) < line.eased
        eased[: EASED_S // 2 + first] = False
        end = int(np.flatnonzero(eased)[0]) if eased.any() else n
        out[:end] = Cause.START
    out[: early[0]] = Cause.START
    out[drifted] = Cause.DRIFT
    out[climbed] = Cause.CLIMB
    return out


def _local_mean(values: Floats, where: Mask, reach: int) -> Floats:
    """Mean over the chosen seconds within reach to each side; NaN where there are few."""
    n = len(values)
    sums = np.concatenate(([0.0], np.cumsum(np.where(where, values, 0.0))))
    count = np.concatenate(([0], np.cumsum(where)))
    low = np.maximum(np.arange(n) - reach, 0)
    high = np.minimum(np.arange(n) + reach + 1, n)
    have = count[high] - count[low]
    mean = (sums[high] - sums[low]) / np.maximum(have, 1)
    return np.where(have >= 60, mean, np.nan)

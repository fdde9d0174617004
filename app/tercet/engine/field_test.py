"""A field test recognised in a run pointed at: a half-hour trial, or 3 and 12 minutes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tercet.engine.efforts import Effort, find_efforts
from tercet.engine.estimate import LT1_OVER_LT2, LT2_OVER_CRITICAL, Estimate
from tercet.engine.scale import Floats, Thresholds

#: A trial of half an hour lasts so long, give or take so much. [s]
HALF_HOUR_S, GIVE_S = 1800, 120
#: Of its heart rate the first ten minutes are left out (common practice, no source). [s]
RISE_S = 600
#: Half-widths of 90 % intervals: as a share of speed, and [beats/min] (common practice).
TRIAL_HALF, BEATS_HALF = 0.03, 4.0
#: LT1 is only a published share of LT2.
LT1_HALF = 0.08
#: The two trials last so long. [s]
SHORT_S, LONG_S = (150, 270), (540, 900)
#: D' that two trials must give. [m]
POSSIBLE_RESERVE = (50.0, 450.0)


@dataclass(frozen=True)
class FieldTest:
    """What was recognised, in words, and the lines it gives."""

    words: str
    estimate: Estimate


def recognise(level: Floats, running: NDArray[np.bool_], heart: Floats) -> FieldTest:
    """Find a field test in a run.

    Parameters
    ----------
    level : ndarray, shape (n,)
        Level-equivalent speed. [m/s]
    running : ndarray of bool, shape (n,)
    heart : ndarray, shape (n,)
        [beats/min], NaN where not known.

    Returns
    -------
    FieldTest
        A half-hour trial alone puts LT2 at its mean speed and at the mean heart rate of its last
        20 minutes (common practice, no source). Trials of 3 and 12 minutes give critical speed.

    Raises
    ------
    ValueError
        If the run holds neither; the message says what was sought.
    """
    half_hour = _half_hour(level, running, heart)
    if half_hour is not None:
        return half_hour
    efforts = find_efforts(level, running, heart, alone=False)
    short = [e for e in efforts if SHORT_S[0] <= e.seconds <= SHORT_S[1]]
    long = [e for e in efforts if LONG_S[0] <= e.seconds <= LONG_S[1]]
    if short and long:
        found = _two(max(short, key=lambda e: e.metres / e.seconds), max(long))
        if found is not None:
            return found
    raise ValueError(
        "No field test was recognised in it: neither half an hour at one even speed with easier "
        "running before and after, nor one trial of about 3 and one of about 12 minutes."
    )


def _half_hour(level: Floats, running: NDArray[np.bool_], heart: Floats) -> FieldTest | None:
    speed = np.where(running, np.nan_to_num(level), 0.0)
    n, length = len(speed), HALF_HOUR_S - GIVE_S
    if n < length:
        return None
    covered = np.concatenate(([0.0], np.cumsum(speed)))
    begin = int((covered[length:] - covered[:-length]).argmax())
    mean = float(covered[begin + length] - covered[begin]) / length
    fifths = np.diff(covered[begin + np.linspace(0, length, 6).astype(np.int64)]) / (length / 5)
    calm = np.convolve(speed, np.full(15, 1 / 15), "same")
    slow = np.flatnonzero(calm < 0.9 * mean)
    place = int(np.searchsorted(slow, begin + length // 2))
    first = int(slow[place - 1]) + 1 if place > 0 else 0
    last = int(slow[place]) if place < len(slow) else n
    rest = np.concatenate((speed[:first], speed[last:]))
    easier = len(rest) == 0 or float(np.median(rest)) < 0.9 * mean
    if fifths.min() < 0.93 * mean or abs(last - first - HALF_HOUR_S) > GIVE_S or not easier:
        return None
    values = {"lt1_speed": LT1_OVER_LT2 * mean, "lt2_speed": mean}
    interval = {"lt1_speed": LT1_HALF * mean, "lt2_speed": TRIAL_HALF * mean}
    words = f"a trial of {round((last - first) / 60)} minutes"
    end = heart[min(first + RISE_S, last) : last]
    if np.count_nonzero(np.isfinite(end)) > 0.8 * len(end) > 0:
        beats = float(np.nanmean(end))
        words += f", {beats:.0f} /min over its last {len(end) // 60} minutes"
        values["lt2_hr"], interval["lt2_hr"] = beats, BEATS_HALF
    return FieldTest(words, Estimate(Thresholds(**values), interval, "30 min trial"))


def _two(short: Effort, long: Effort) -> FieldTest | None:
    speed = (long.metres - short.metres) / (long.seconds - short.seconds)
    reserve = short.metres - speed * short.seconds
    if not POSSIBLE_RESERVE[0] <= reserve <= POSSIBLE_RESERVE[1]:
        return None
    lt2 = LT2_OVER_CRITICAL * speed
    words = (
        f"trials of {short.seconds / 60:.0f} and {long.seconds / 60:.0f} minutes: "
        f"critical speed and {reserve:.0f} m above it"
    )
    # Galbraith et al., Int. J. Sports Physiol. Perform. 9:931-935, 2014: 0.14 m/s in the field.
    half = float(np.hypot(1.645 * 0.14 * LT2_OVER_CRITICAL, 0.025 * lt2))
    return FieldTest(
        words,
        Estimate(
            Thresholds(lt1_speed=LT1_OVER_LT2 * lt2, lt2_speed=lt2),
            {"lt1_speed": LT1_HALF * lt2, "lt2_speed": half},
            "3 and 12 min trials",
        ),
    )

"""Judging one recording: speed with its hills, and heart rate with its lag, to one shade a second.

This is the engine's one door for judging. The method inside may be replaced; callers only know
:func:`judge` and what it returns.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine import cleaning, repetitions, slope, timeline
from tercet.engine.judgement import Evidence, Judgement
from tercet.engine.scale import Floats, Shade, Thresholds, intensity, shade_of

#: Bumped whenever the method changes, so that stored judgements can be told from new ones.
METHOD = 1

#: Slower than this is not running: standing about, or walking that nobody counts. [m/s]
RUNNING_FLOOR = 1.0
#: Time constant of heart rate after a change of pace, on and off alike, between the published
#: mean (57.6 s) and the usual default. Hunt, Fankhauser & Saengsuwan, BioMed Eng OnLine 14:117,
#: 2015. [s]
HEART_RATE_TAU_S = 50.0
#: Rise of heart rate with level speed below LT1, same source. [beats/min per m/s]
HEART_RATE_GAIN = 24.2
#: How far heart rate may move the demand of a whole run from what speed says (natural log).
#: Ground and wind only add to the cost; a watch's scale error goes both ways. [trial]
SHIFT_RANGE = (-0.03, 0.15)
#: Share of the difference between heart rate and speed that is believed to be ground and wind,
#: the rest being warmth, fatigue and the day. [trial]
SHIFT_TRUST = 0.35
#: Heart rate is believed to have settled after this long. [s]
SETTLING_S = 300


def judge(
    streams: timeline.Streams,
    sample_time: ArrayLike,
    thresholds: Thresholds | None,
    *,
    stops: Iterable[tuple[float, float]] = (),
) -> Judgement:
    """Judge every second of a run.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        ``heart_rate`` [beats/min], ``speed`` [m/s], ``distance`` [m], ``latitude`` and
        ``longitude`` [degrees], ``altitude`` [m], ``cadence`` [steps/min]; each with its own
        times [s]. Missing ones may be left out.
    sample_time : array_like, shape (m,)
        Times of all samples, not falling. [s]
    thresholds : Thresholds or None
        What is in force on the day; with None every running second is unjudged.
    stops : iterable of (begin, end)
        Spans during which the timer stood still. [s]

    Returns
    -------
    Judgement
        Every second in exactly one shade; the five sums add up to the elapsed time.

    Notes
    -----
    Speed is put on level ground by the cost of graded running, calm within steady running and
    sharp at the edges of repetitions. Heart rate, its lag undone, moves the whole run by a
    bounded share (ground and wind a watch cannot see), never a single second. Without speed,
    heart rate judges alone; with neither, the second is unjudged.
    """
    line = timeline.build(streams, sample_time, stops)
    n = len(line)
    nothing = np.full(n, np.nan)
    mends: dict[str, int] = {}
    cadence = line.channels.get("cadence")
    heart, found = cleaning.clean_heart_rate(line.channels.get("heart_rate", nothing), cadence)
    mends |= found
    speed, found = cleaning.clean_speed(_speed(line))
    mends |= found
    altitude = line.channels.get("altitude", nothing)
    grade, hills = slope.slope_along(altitude, line.covered[:-1])
    level = slope.level_speed(speed, grade)
    remarks = []
    if not hills and np.isfinite(altitude).any():
        remarks.append("Altitude too rough or the way too short: hills left out.")

    running = line.running_clock & _running(speed, cadence, heart)
    bouts: list[tuple[int, int]] = []
    steady = level
    if np.isfinite(level).any():
        work = _work_speed(level[running & np.isfinite(level)], thresholds)
        bouts = repetitions.find(np.where(running, level, 0.0), line.metres, work_speed=work)
        steady = _track(level, running, bouts)

    scale = nothing.copy()
    evidence = np.zeros(n, dtype=np.uint8)
    if thresholds is not None:
        scale, evidence = _fuse(steady, heart, running, bouts, thresholds)
    shades = shade_of(scale)
    shades[~running] = Shade.NOT_RUNNING
    evidence[~running] = Evidence.NONE
    scale = np.where(running, scale, np.nan)
    bout_shades = _shade_bouts(bouts, shades)
    if thresholds is not None:
        remarks += _remarks(shades, heart, thresholds, bouts)
    return Judgement(
        shades=shades,
        metres=line.metres,
        evidence=evidence,
        scale=scale,
        speed=speed,
        level_speed=steady,
        heart_rate=heart,
        altitude=altitude,
        last_second_s=line.last_second_s,
        repetitions=repetitions.describe(bouts, level, line.metres, bout_shades),
        mends=mends,
        remarks=tuple(remarks),
    )


def _speed(line: timeline.Timeline) -> Floats:
    """Take recorded speed, filled where it is missing from the distance covered."""
    from_distance = np.full(len(line), np.nan)
    if line.metres.any():
        from_distance = cleaning.moving_mean(line.metres, 5)
    recorded = line.channels.get("speed")
    if recorded is None or not np.nanmax(np.append(recorded, 0.0)) > 0:
        return from_distance
    # A zero from a lost signal while the distance went on is no standing runner.
    lost = ~np.isfinite(recorded) | ((recorded < 0.1) & (from_distance > 1.5))
    return np.where(lost, from_distance, recorded)


def _running(speed: Floats, cadence: Floats | None, heart: Floats) -> NDArray[np.bool_]:
    """Tell running from standing; where neither speed nor steps tell, the timer does."""
    calm = cleaning.moving_median(speed, 5)
    moving = np.where(np.isfinite(calm), calm >= RUNNING_FLOOR, np.isfinite(heart))
    if cadence is not None:
        stepping = cleaning.moving_median(cadence, 5)
        moving |= ~np.isfinite(calm) & (stepping >= 120.0)
    return np.asarray(moving, dtype=bool)


def _work_speed(level: Floats, thresholds: Thresholds | None) -> float:
    if thresholds is not None and thresholds.lt1_speed and thresholds.lt2_speed:
        return thresholds.lt1_speed + 0.6 * (thresholds.lt2_speed - thresholds.lt1_speed)
    return 1.25 * float(np.median(level)) if len(level) else np.inf


def _track(level: Floats, running: NDArray[np.bool_], bouts: list[tuple[int, int]]) -> Floats:
    """Follow the level speed: calm in steady running, sharp at the edges of the bouts."""
    calm = level.copy()
    outside = np.ones(len(level), dtype=bool)
    for begin, end in bouts:
        outside[begin:end] = False
    # Each stretch between stops and bouts is smoothed on its own, so no edge is blurred.
    for begin, end in cleaning.run_lengths(running & outside):
        piece = cleaning.moving_median(level[begin:end], 31)
        calm[begin:end] = cleaning.moving_mean(piece, 15) if np.isfinite(piece).all() else piece
    for begin, end in bouts:
        calm[begin:end] = np.nanmedian(level[begin:end])
    return calm


def _speed_of_heart_rate(heart: Floats, t: Thresholds) -> Floats:
    """Level speed at which a rested runner's heart would settle at these beats."""
    assert t.lt1_hr and t.lt2_hr and t.lt1_speed and t.lt2_speed
    above = (t.lt2_speed - t.lt1_speed) / (t.lt2_hr - t.lt1_hr)
    return np.where(
        heart < t.lt1_hr,
        t.lt1_speed + (heart - t.lt1_hr) / HEART_RATE_GAIN,
        t.lt1_speed + (heart - t.lt1_hr) * above,
    )


def _fuse(
    level: Floats,
    heart: Floats,
    running: NDArray[np.bool_],
    bouts: list[tuple[int, int]],
    t: Thresholds,
) -> tuple[Floats, NDArray[np.uint8]]:
    n = len(level)
    scale = np.full(n, np.nan)
    evidence = np.full(n, Evidence.NONE, dtype=np.uint8)
    by_speed = np.isfinite(level) if t.by_speed else np.zeros(n, dtype=bool)
    by_heart = np.isfinite(heart) if t.by_heart_rate else np.zeros(n, dtype=bool)
    if by_heart.any():
        assert t.lt1_hr and t.lt2_hr
        smooth = cleaning.moving_mean(heart, 15)
        settled = smooth + HEART_RATE_TAU_S * np.gradient(cleaning.moving_mean(smooth, 15))
        settled = cleaning.moving_median(settled, 21)
        rest = t.hr_rest if t.hr_rest is not None else min(60.0, t.lt1_hr - 20)
        alone = by_heart & ~by_speed
        scale[alone] = intensity(settled, rest=rest, lt1=t.lt1_hr, lt2=t.lt2_hr)[alone]
        evidence[alone] = Evidence.HEART_RATE
    if by_speed.any():
        assert t.lt1_speed and t.lt2_speed
        shift = 0.0
        both = by_speed & by_heart & running
        both[:SETTLING_S] = False
        for begin, end in bouts:
            both[begin : end + 180] = False
        if t.by_heart_rate and np.count_nonzero(both) >= SETTLING_S:
            expected = _speed_of_heart_rate(cleaning.moving_mean(heart, 61), t)
            usable = both & (expected > 0.5) & (level > 0.5)
            if usable.any():
                gap = float(np.median(np.log(expected[usable] / level[usable])))
                shift = float(np.clip(SHIFT_TRUST * gap, *SHIFT_RANGE))
        demand = level * np.exp(shift)
        by = intensity(demand, rest=0.0, lt1=t.lt1_speed, lt2=t.lt2_speed)
        scale[by_speed] = by[by_speed]
        evidence[by_speed] = Evidence.SPEED
        evidence[both] = Evidence.BOTH
    return scale, evidence


def _shade_bouts(bouts: list[tuple[int, int]], shades: NDArray[np.uint8]) -> list[Shade]:
    return [
        Shade(int(np.bincount(shades[begin:end], minlength=5).argmax())) for begin, end in bouts
    ]


def _remarks(
    shades: NDArray[np.uint8], heart: Floats, t: Thresholds, bouts: list[tuple[int, int]]
) -> list[str]:
    """Say where heart rate sat above LT1 although the running was easy."""
    if t.lt1_hr is None or not np.isfinite(heart).any():
        return []
    easy = shades == Shade.EASY
    for begin, end in bouts:
        easy[begin : end + 180] = False
    above = int(np.count_nonzero(easy & (heart >= t.lt1_hr)))
    if above < 300:
        return []
    return [f"Above LT1 by heart rate for {above // 60} min of easy running (warmth, fatigue?)."]

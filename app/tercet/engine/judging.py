"""Judging one recording: speed with its hills, and heart rate with its lag, to one shade a second.

This is the engine's one door for judging. The method inside may be replaced; callers only know
:func:`judge` and what it returns.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine import (
    cleaning,
    demand,
    heart_faults,
    known,
    long_lines,
    repetitions,
    slope,
    timeline,
    way,
)
from tercet.engine.judgement import Evidence, Judgement
from tercet.engine.kinetics import GAIN as HEART_RATE_GAIN
from tercet.engine.known import NOTHING, Known
from tercet.engine.motion import read_motion
from tercet.engine.power import calmed
from tercet.engine.scale import MIDDLE, Floats, Shade, Thresholds, shade_of
from tercet.engine.sprints import find_sprints, with_sprints
from tercet.engine.stand_in import stand_in

__all__ = ["HEART_RATE_GAIN", "METHOD", "judge", "judged_pieces"]

#: Bumped whenever the method changes, so that stored judgements can be told from new ones.
METHOD = 5

#: Watches smooth their altimeter, which so lags behind. [s] [trial]
ALTITUDE_LAG_S = 3


def judge(
    streams: timeline.Streams,
    sample_time: ArrayLike,
    thresholds: Thresholds | None,
    *,
    stops: Iterable[tuple[float, float]] = (),
    beside: Known = NOTHING,
) -> Judgement:
    """Judge every second of a run.

    Parameters
    ----------
    streams : mapping of str to (time, values)
        ``heart_rate`` [beats/min], ``speed`` [m/s], ``distance`` [m], ``latitude`` and
        ``longitude`` [degrees], ``altitude`` [m], ``cadence`` [steps/min], ``power`` [W]; each with
        its own times [s]. Missing ones may be left out.
    sample_time : array_like, shape (m,)
        Times of all samples, not falling. [s]
    thresholds : Thresholds or None
        What is in force on the day; with None every running second is unjudged.
    stops : iterable of (begin, end)
        Spans during which the timer stood still. [s]
    beside : Known
        Pressed laps, belt speeds and the runner's effort, where known.

    Returns
    -------
    Judgement
        Every second in exactly one shade; the five sums add up to the elapsed time.

    Notes
    -----
    What is judged is demand: level-equivalent speed with the cost of ground and wind. Speed,
    put on the level by the cost of graded running, is followed by a hidden Markov chain; heart
    rate, its lag undone, tells how much ground and wind may have added over the whole run, never
    in a single second. A second gets the shade that is most probable. Without speed, heart rate
    judges alone; where neither judged any second, the runner's effort does; else the second is
    unjudged. A recording longer than ``long_lines.LONGEST_S`` is judged in pieces.
    """
    n, pieces = judged_pieces(streams, sample_time, thresholds, stops=stops, beside=beside)
    return long_lines.joined(pieces, n)


def judged_pieces(
    streams: timeline.Streams,
    sample_time: ArrayLike,
    thresholds: Thresholds | None,
    *,
    stops: Iterable[tuple[float, float]] = (),
    beside: Known = NOTHING,
) -> tuple[int, Iterator[Judgement]]:
    """Judge as :func:`judge` does, but give the pieces of a long recording one by one.

    Returns
    -------
    n : int
        Seconds of the whole.
    pieces : iterator of Judgement
        In order, each judged when asked for; a single one unless the recording is long. Mends
        of samples stand in the first.
    """
    mended, mends = cleaning.mend_samples(streams)
    leapt = round(timeline.leapt(mended))
    heard = mended.get("heart_rate", (np.zeros(0),))[0]
    missing = heart_faults.bridged(heard, np.asarray(sample_time, dtype=np.float64), timeline.GAP_S)
    if missing:
        mends["heart rate missing for moments, bridged"] = missing
    if leapt:
        mends["metres of leaps that nobody runs, left out"] = leapt
    grid = timeline.Grid(mended, sample_time, stops)
    indoor = "latitude" not in mended

    def judged() -> Iterator[Judgement]:
        for begin, end in long_lines.edges(len(grid)):
            line, told = known.on_belts(grid.stretch(begin, end), beside.belts, begin)
            laps = beside.laps
            if end - begin < len(grid):
                laps = tuple(lap - begin for lap in laps if begin <= lap <= end)
            piece = _judge_line(line, told, indoor, thresholds, laps, beside.effort)
            if not begin:
                piece = replace(piece, mends={**mends, **piece.mends})
            del line, told
            yield piece
            del piece  # the next one is judged without it in memory

    return len(grid), judged()


def _judge_line(
    line: timeline.Timeline,
    told: NDArray[np.bool_],
    indoor: bool,
    thresholds: Thresholds | None,
    laps: tuple[float, ...],
    effort: int | None,
) -> Judgement:
    """Judge what is on the grid; ``told`` is where the runner gave a belt's speed."""
    moved = read_motion(line, indoor=indoor, told=told)
    nothing = np.full(len(line), np.nan)
    cadence = line.channels.get("cadence")
    heart, mends = heart_faults.clean_heart_rate(line.channels.get("heart_rate", nothing), cadence)
    altitude = line.channels.get("altitude", nothing)
    ahead = np.minimum(np.arange(len(line)) + ALTITUDE_LAG_S, max(len(line) - 1, 0))
    hills = slope.slope_along(altitude[ahead], line.covered[:-1])
    sprints = find_sprints(moved, demand.reference_speed(moved, thresholds))
    hills = with_sprints(hills, sprints, altitude[ahead], moved.metres)
    level = slope.level_speed(moved.speed, hills.slope)
    remarks = []
    if not told.any():
        north, east = line.channels.get("latitude"), line.channels.get("longitude")
        share = way.scale_of(north, east, moved.speed, moved.running)
        level = level * share
        if abs(share - 1.0) >= way.WORTH_SAYING:
            by = f"{100 * abs(share - 1):.1f} % {'faster' if share > 1.0 else 'slower'}"
            remarks.append(f"By its positions the watch's speed was taken {by}.")
    power = line.channels.get("power")
    stands = stand_in(power, level, moved, thresholds)
    lost = stands.by_power
    if not hills.used and np.isfinite(altitude).any():
        remarks.append("Too short a way to know its hills: left out.")

    judged = demand.weigh(stands.moved, stands.level, hills, heart, stands.lines)
    if judged.disbelieved_s:
        mends["heart rate far from what the pace asks, left out"] = judged.disbelieved_s
    shades, evidence, scale = judged.shades, judged.evidence, judged.scale
    sure = judged.intervals
    evidence[lost & (evidence != Evidence.NONE)] = Evidence.POWER
    if thresholds is not None:
        alone = moved.running & ~np.isfinite(scale) & np.isfinite(heart)
        if thresholds.by_heart_rate and alone.any():
            by_heart = demand.by_heart_rate(heart, thresholds)
            scale[alone] = by_heart[alone]
            shades[alone] = shade_of(by_heart[alone])
            evidence[alone] = Evidence.HEART_RATE
            # What heart rate judged alone is not known any better: it stands in both ends.
            more = np.bincount(shades[alone], minlength=3)[:3].tolist()
            sure = tuple((a + m, b + m) for (a, b), m in zip(sure, more, strict=False))
    shades, evidence, scale = _by_effort(shades, evidence, scale, effort)
    bouts = repetitions.find(judged.even_speed, stands.moved, judged.work_speed, sprints)
    bouts = repetitions.at_laps(bouts, laps)
    bout_shades = [
        Shade(int(np.bincount(shades[begin:end], minlength=5).argmax())) for begin, end in bouts
    ]
    if thresholds is not None:
        remarks += _remarks(shades, heart, thresholds, bouts)
    run = stands.level if stands.shown is None else stands.shown
    return Judgement(
        shades=shades,
        metres=moved.metres,
        evidence=evidence,
        scale=scale,
        speed=moved.speed,
        level_speed=judged.level_speed if stands.shown is None else stands.shown,
        heart_rate=heart,
        altitude=altitude,
        last_second_s=line.last_second_s,
        repetitions=repetitions.describe(bouts, run, moved.metres, bout_shades),
        mends=mends,
        remarks=tuple(remarks),
        probability=judged.probability,
        intervals=sure,
        power=calmed(power),
    )


def _by_effort(
    shades: NDArray[np.uint8], evidence: NDArray[np.uint8], scale: Floats, effort: int | None
) -> tuple[NDArray[np.uint8], NDArray[np.uint8], Floats]:
    """Take the runner's word for the whole session where no channel judged any of it."""
    open_ = shades == Shade.UNJUDGED
    if effort is None or not open_.any() or (shades <= Shade.HARD).any():
        return shades, evidence, scale
    shade = known.shade_of_effort(effort)
    return (
        np.where(open_, np.uint8(shade), shades).astype(np.uint8),
        np.where(open_, np.uint8(Evidence.WORD), evidence).astype(np.uint8),
        np.where(open_, MIDDLE[shade], scale),
    )


def _remarks(
    shades: NDArray[np.uint8],
    heart: Floats,
    t: Thresholds,
    bouts: list[tuple[int, int]],
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

"""What one run shows about thresholds: best stretches, hard efforts, steady pieces, heart rates."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tercet.engine import cleaning
from tercet.engine.efforts import Effort, find_efforts
from tercet.engine.judgement import Judgement
from tercet.engine.scale import Floats, Shade

#: Best efforts are kept for these durations. [s]
EFFORT_S = (60, 120, 180, 300, 420, 600, 900, 1200, 1800, 3600)
#: Steady pieces are sought from here on, so long each, after so long a lead-in. [s]
STEADY_FROM_S, PIECE_S, LEAD_S = 480, 300, 120


@dataclass(frozen=True)
class Fingerprint:
    """What one run shows about thresholds; small enough to be kept beside the run."""

    best_m: tuple[float, ...]  # level metres in the best stretch of each of EFFORT_S, 0 if shorter
    steady_hr: tuple[float, ...]  # mean heart rate of steady five-minute pieces [beats/min]
    steady_speed: tuple[float, ...]  # their level speed [m/s]
    hr_top: float  # highest 20-s mean heart rate, 0 without
    hr_low: float  # lowest 60-s mean heart rate, 0 without
    typical_speed: float  # median level speed while running, 0 without
    running_s: float
    #: Hard efforts that stand alone; None in a fingerprint taken before they were kept.
    efforts: tuple[Effort, ...] | None = None
    steady_at: tuple[float, ...] = ()  # middle of each steady piece from the start [s]
    warmth: float | None = None  # mean temperature, if recorded [degrees C]


def fingerprint(judgement: Judgement, warmth: float | None = None) -> Fingerprint:
    """Take from a run what estimating needs.

    Parameters
    ----------
    judgement : Judgement
        Its cleaned speed and heart rate are used, not its shades, so thresholds don't matter.
    warmth : float or None
        Mean temperature of the run if recorded. [degrees C]

    Returns
    -------
    Fingerprint
    """
    running = judgement.shades != Shade.NOT_RUNNING
    level = np.where(running, np.nan_to_num(judgement.level_speed), 0.0)
    heart = judgement.heart_rate
    n = len(level)
    covered = np.concatenate(([0.0], np.cumsum(level)))
    best = [float((covered[s:] - covered[:-s]).max()) if 0 < s <= n else 0.0 for s in EFFORT_S]
    hr_top = hr_low = 0.0
    if np.count_nonzero(np.isfinite(heart)) > 120:
        known = heart[np.isfinite(heart)]
        hr_top = float(cleaning.moving_mean(known, 20).max())
        hr_low = float(cleaning.moving_mean(known, 60).min())
    rates, speeds, places = _steady(level, heart, running)
    moving = level[level > 0]
    return Fingerprint(
        tuple(best),
        tuple(rates),
        tuple(speeds),
        hr_top,
        hr_low,
        float(np.median(moving)) if len(moving) else 0.0,
        float(running.sum()),
        find_efforts(level, running, heart),
        tuple(places),
        warmth,
    )


def together(prints: Sequence[tuple[int, Fingerprint]]) -> Fingerprint:
    """What the pieces of one long run show, each with the second at which it begins."""
    if len(prints) == 1:
        return prints[0][1]
    pieces = [piece for _, piece in prints]
    seconds = sum(piece.running_s for piece in pieces)
    speed = sum(piece.typical_speed * piece.running_s for piece in pieces)
    efforts = [effort for piece in pieces for effort in piece.efforts or ()]
    return Fingerprint(
        tuple(max(best) for best in zip(*(piece.best_m for piece in pieces), strict=True)),
        tuple(rate for piece in pieces for rate in piece.steady_hr),
        tuple(speed for piece in pieces for speed in piece.steady_speed),
        max(piece.hr_top for piece in pieces),
        min((piece.hr_low for piece in pieces if piece.hr_low), default=0.0),
        speed / seconds if seconds else 0.0,
        seconds,
        tuple(sorted(efforts, key=lambda effort: -effort.seconds)),
        tuple(begin + place for begin, piece in prints for place in piece.steady_at),
        pieces[0].warmth,
    )


def _steady(
    level: Floats, heart: Floats, running: np.ndarray
) -> tuple[list[float], list[float], list[float]]:
    rates, speeds, places = [], [], []
    for begin in range(STEADY_FROM_S, len(level) - PIECE_S + 1, PIECE_S):
        part = slice(begin, begin + PIECE_S)
        lead = level[begin - LEAD_S : begin]
        if not running[begin - LEAD_S : part.stop].all() or not np.isfinite(heart[part]).all():
            continue
        middle = float(np.median(level[part]))
        if middle <= 1.5 or abs(float(np.median(lead)) - middle) >= 0.2:
            continue
        low, high = np.percentile(level[part], (10, 90)).tolist()
        if high - low < 0.15 * middle:
            rates.append(round(float(np.mean(heart[part])), 1))
            speeds.append(round(middle, 3))
            places.append(float(begin + PIECE_S // 2))
    return rates, speeds, places

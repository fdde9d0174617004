"""Heart rate against level speed in steady running, and where it meets a line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tercet.engine.fingerprint import Fingerprint
from tercet.engine.scale import Floats
from tercet.engine.slope import level_speed

#: Gain of heart rate in running with its spread: K. J. Hunt et al., BioMed Eng OnLine 14:117,
#: 2015. [beats/min per m/s]
GAIN, GAIN_SPREAD = 24.2, 8.3
#: Rise in an hour of steady running after the first ten minutes, and its spread [memory].
DRIFT, DRIFT_SPREAD, DRIFT_FROM_S = 6.0, 4.0, 600.0
#: Rise with each degree above this, and its spread [memory]. [beats/min], [degrees C]
WARM, WARM_SPREAD, WARM_FROM = 0.4, 0.3, 18.0
#: Spread of one day's heart rate against another's, and of pieces within a run. [trial]
DAY_SPREAD, PIECE_SPREAD = 4.0, 2.5
#: Fewer runs with steady pieces than this tell nothing.
FEWEST_RUNS = 3
NINE_OF_TEN = 1.645
#: Slower or faster no line is looked for. [m/s]
SLOWEST, FASTEST = 1.5, 6.5


@dataclass(frozen=True, eq=False)
class Pieces:
    """Steady five-minute pieces of many runs; arrays of one length."""

    run: Floats  # number of the run each belongs to
    at: Floats  # middle of the piece from the run's start [s]
    heart_rate: Floats  # [beats/min]
    speed: Floats  # level [m/s]
    warmth: Floats  # [degrees C], NaN where not recorded

    @property
    def runs(self) -> int:
        """How many runs they come from."""
        return len(np.unique(self.run))


@dataclass(frozen=True)
class Relation:
    """Heart rate about one speed, at ten minutes into a run in usual weather."""

    speed: float  # about which it holds [m/s]
    heart_rate: float  # there [beats/min]
    half: float  # of its 90 % interval
    gain: float  # [beats/min per m/s]
    warm: float  # [beats/min per degree above 18]
    #: How much running there was at that speed, in days' worth of it.
    support: float


@dataclass(frozen=True)
class Meeting:
    """The level speed at which steady running meets a heart rate."""

    speed: float  # [m/s]
    half: float  # of its 90 % interval [m/s]
    gain: float  # [beats/min per m/s]
    warm: float  # [beats/min per degree above 18]
    runs: int

    def on_grade(self, grade: float) -> float:
        """The ground speed of the same effort on a grade (rise over run). [m/s]"""
        return self.speed / float(level_speed(1.0, grade))

    def in_warmth(self, degrees: float) -> float:
        """The speed at a temperature [degrees C]; that of 18 degrees below it. [m/s]"""
        return self.speed - self.warm * max(0.0, degrees - WARM_FROM) / self.gain


def pieces_of(runs: Sequence[Fingerprint]) -> Pieces:
    """Gather the steady pieces of runs.

    Parameters
    ----------
    runs : sequence of Fingerprint
        Those kept by earlier versions, without the times of their pieces, give none.
    """
    table = [
        (k, at, beats, speed, np.nan if run.warmth is None else run.warmth)
        for k, run in enumerate(runs)
        for at, beats, speed in zip(run.steady_at, run.steady_hr, run.steady_speed, strict=False)
    ]
    columns = np.array(table, dtype=np.float64).reshape(len(table), 5).T
    return Pieces(*columns)


def relation(pieces: Pieces, speed: float, width: float) -> Relation:
    """Fit heart rate near a speed; far pieces count less, odd ones hardly.

    Parameters
    ----------
    pieces : Pieces
    speed : float
        [m/s]
    width : float
        Spread of the weights about it, as a share of the speed.

    Returns
    -------
    Relation

    Raises
    ------
    ValueError
        With fewer than three runs.
    """
    if pieces.runs < FEWEST_RUNS:
        raise ValueError(f"Fewer than {FEWEST_RUNS} runs with ten minutes of steady running.")
    off = pieces.speed - speed
    late = np.maximum(0.0, pieces.at - DRIFT_FROM_S) / 3600.0
    warm = np.maximum(0.0, np.nan_to_num(pieces.warmth, nan=WARM_FROM) - WARM_FROM)
    rows = np.stack([np.ones_like(off), off, late, warm], axis=1)
    _, which, counts = np.unique(pieces.run, return_inverse=True, return_counts=True)
    # Pieces of one run share its day: together they tell little more than one.
    weight = np.exp(-0.5 * (off / (width * speed)) ** 2) / (
        DAY_SPREAD**2 * counts[which] + PIECE_SPREAD**2
    )
    spreads = np.array([np.inf, GAIN_SPREAD, DRIFT_SPREAD, WARM_SPREAD])
    guess = np.array([0.0, GAIN, DRIFT, WARM]) / spreads**2
    trust = np.ones_like(weight)
    for _ in range(12):
        both = (weight * trust)[:, None]
        normal = (rows * both).T @ rows + np.diag(1.0 / spreads**2)
        found = np.linalg.lstsq(normal, (rows * both).T @ pieces.heart_rate + guess, rcond=None)[0]
        trust = 5.0 / (4.0 + ((pieces.heart_rate - rows @ found) / 5.0) ** 2)
    error = float(np.sqrt(np.linalg.pinv(normal)[0, 0]))
    near = np.abs(off) < 0.07 * speed
    return Relation(
        speed,
        float(found[0]),
        NINE_OF_TEN * error,
        float(found[1]),
        float(max(found[3], 0.0)),
        float((weight * trust)[near].sum() * DAY_SPREAD**2),
    )


def meeting(pieces: Pieces, heart_rate: float, width: float = 0.12) -> Meeting:
    """Find the level speed at which steady running meets a heart rate.

    Parameters
    ----------
    pieces : Pieces
        Of the last weeks.
    heart_rate : float
        [beats/min]
    width : float
        As in :func:`relation`.

    Returns
    -------
    Meeting

    Raises
    ------
    ValueError
        With fewer than three runs, or if the heart rate lies far from all of them.
    """
    if pieces.runs < FEWEST_RUNS:
        raise ValueError(f"Fewer than {FEWEST_RUNS} runs with ten minutes of steady running.")
    speed = float(np.median(pieces.speed))
    for _ in range(6):
        near = relation(pieces, speed, width)
        gain = max(near.gain, GAIN / 2)
        step = (heart_rate - near.heart_rate) / gain
        speed = float(np.clip(speed + np.clip(step, -0.4, 0.4), SLOWEST, FASTEST))
    reach = 1.15 * float(np.percentile(pieces.speed, 95))
    if not 0.85 * float(np.percentile(pieces.speed, 5)) <= speed <= reach:
        raise ValueError("No steady running came near that heart rate.")
    return Meeting(speed, near.half / gain, gain, near.warm, pieces.runs)

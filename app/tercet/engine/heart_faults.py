"""Heart rate freed of what cannot be a heart, each fault counted by its name."""

from __future__ import annotations

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from tercet.engine.cleaning import moving_mean, moving_median, run_lengths
from tercet.engine.scale import Floats

#: What a running human's heart does. [beats/min]
HEART_RATE_RANGE = (35.0, 230.0)
#: A heart rate that stays the very same for longer is a frozen sensor. [s]
FROZEN_S = 60
#: A heart rate this close to the step rate ... [beats/min]
LOCK_WITHIN = 4.0
#: ... for most of this long follows the steps ... [s]
LOCK_S = 30
#: ... if it came there by a step of this size. [beats/min]
LOCK_JUMP = 8.0
#: Steps between neighbouring seconds larger than this are no heart; many of them make a stretch
#: wild. [beats/min] [trial]
WILD_STEP = 7.0
#: A false start ends within this long, by a step of this size between means over so long, while
#: the steps stay the same. [s], [beats/min], [s], [steps/min] [guess]
START_S, START_JUMP, START_MEAN_S, SAME_STEPS = 600, 18.0, 7, 20.0
#: Heart rate is missing if it is not there for so long, and for so many times as long as usual,
#: since some watches keep it more rarely than the rest. [s], [times]
MOMENT_S, OFTEN = 5.0, 3.0
#: It was another value for so long before as well as after. [s]
BESIDE_S = 60
#: What is over sooner was the first rise of a heart that starts to run. [s]
LEAST_START_S = 30


def clean_heart_rate(values: Floats, cadence: Floats | None) -> tuple[Floats, dict[str, int]]:
    """Take out what cannot be a heart: out of range, wild, frozen, or following the steps.

    Parameters
    ----------
    values : ndarray, shape (n,)
        Heart rate on the grid. [beats/min]
    cadence : ndarray, shape (n,), or None
        Step rate. [steps/min]

    Returns
    -------
    cleaned : ndarray of float64, shape (n,)
        NaN where nothing can be trusted. [beats/min]
    mends : dict of str to int
        Seconds touched, by plain name.
    """
    x = values.copy()
    mends: dict[str, int] = {}

    def take_out(bad: NDArray[np.bool_], name: str) -> None:
        bad = bad & np.isfinite(x)
        if bad.any():
            mends[name] = int(bad.sum())
            x[bad] = np.nan

    low, high = HEART_RATE_RANGE
    take_out((x < low) | (x > high), "heart rate outside what a heart does, left out")
    if not np.isfinite(x).any():
        return x, mends
    shown = x.copy()
    steps = np.abs(np.diff(x, prepend=x[:1]))
    wild = moving_mean(np.where(steps > WILD_STEP, 1.0, 0.0), 61) > 2.5 / 61
    spikes = np.abs(x - moving_median(x, 61)) > 12.0
    take_out(wild & (spikes | (steps > WILD_STEP)), "wild heart rate, left out")
    take_out(np.abs(x - moving_median(x, 31)) > 20.0, "heart-rate spikes, left out")
    frozen = np.zeros(len(x), dtype=bool)
    still = np.isfinite(x[1:]) & np.isfinite(x[:-1]) & (x[1:] == x[:-1])
    for begin, end in run_lengths(still):
        if end - begin >= FROZEN_S:
            frozen[begin : end + 1] = True
    take_out(frozen, "heart rate frozen, left out")
    locked = np.zeros(len(x), dtype=bool) if cadence is None else _locked(x, cadence)
    take_out(locked, "heart rate following the steps, left out")
    # A step looks wild: it is sought in what was shown, but for faults that have their own.
    shown[frozen | locked] = np.nan
    take_out(_false_start(shown, cadence), "heart rate of a false start, left out")
    return x, mends


def _false_start(x: Floats, cadence: Floats | None) -> NDArray[np.bool_]:
    """Where heart rate was another until it stepped to what it is, far quicker than a heart."""
    false = np.zeros(len(x), dtype=bool)
    first, width = x[: START_S + START_MEAN_S], START_MEAN_S
    if len(first) < LEAST_START_S + 2 * width:
        return false
    jump = _jumps(first, width)
    if cadence is not None:
        moved = np.abs(_jumps(cadence[: len(first)], width))
        jump[~(moved <= SAME_STEPS)] = np.nan
    at = np.flatnonzero(np.abs(np.nan_to_num(jump)) > START_JUMP)
    # What leaps and comes back is another fault.
    if len(at) and abs(np.sign(jump[at]).sum()) == len(at):
        end = int(at[-1]) + width
        before, after = (x[max(end - BESIDE_S, 0) : end - width], x[end : end + BESIDE_S])
        if end >= LEAST_START_S and np.isfinite(before).any() and np.isfinite(after).any():
            false[:end] = abs(np.nanmedian(after) - np.nanmedian(before)) > START_JUMP
    return false


def _jumps(values: Floats, width: int) -> Floats:
    """From the mean before to the mean after, at every place that has both; NaN spreads."""
    means = sliding_window_view(values, width).mean(axis=1)
    return np.asarray(means[width:] - means[:-width], dtype=np.float64)


def _locked(x: Floats, cadence: Floats) -> NDArray[np.bool_]:
    """Where heart rate follows the steps: near them for long, with a step at either end."""
    near = np.isfinite(x) & (np.abs(x - np.nan_to_num(cadence, nan=-99.0)) <= LOCK_WITHIN)
    share = moving_mean(near.astype(np.float64), LOCK_S)
    locked = np.zeros(len(x), dtype=bool)
    for begin, end in run_lengths(share >= 0.7):
        inside = x[begin:end]
        if end - begin < LOCK_S or not np.isfinite(inside).any():
            continue
        # A runner's heart may rightly beat at the step rate: only a step at an end tells.
        ends = ((x[max(begin - 30, 0) : max(begin - 8, 0)], inside[:20]),
                (x[end + 8 : end + 30], inside[-20:]))  # fmt: skip
        for outside, beside in ends:
            if np.isfinite(outside).any() and np.isfinite(beside).any():
                leap = abs(float(np.nanmedian(outside)) - float(np.nanmedian(beside)))
                if leap > LOCK_JUMP:
                    locked[max(begin - 5, 0) : end + 5] = True
    return locked


def bridged(heard: Floats, samples: Floats, longest: float) -> int:
    """Seconds in which heart rate was missing from samples, but for so short that it is bridged.

    Parameters
    ----------
    heard : ndarray, shape (m,)
        Times of heart rates, rising. [s]
    samples : ndarray, shape (n,)
        Times of all samples, not falling. [s]
    longest : float
        What is missing for longer is not bridged. [s]
    """
    if len(heard) < 2:
        return 0
    apart = np.diff(heard)
    lacking = np.searchsorted(samples, heard[1:], "left") - np.searchsorted(
        samples, heard[:-1], "right"
    )
    least = max(MOMENT_S, OFTEN * float(np.median(apart)))
    return round(float(apart[(lacking > 0) & (apart > least) & (apart <= longest)].sum()))

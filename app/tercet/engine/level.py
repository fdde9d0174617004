"""The level a runner holds: sharp where it jumps, calm where it stays, with all its doubt.

A hidden Markov chain over levels of log speed, 1.5 % apart. From second to second the level
stays, creeps to a neighbour or, rarely, jumps anywhere; what is seen scatters about it with
heavy tails. Forward and backward passes give the probability of every level in every second.
To be quick in Python, the time is cut into overlapping pieces that are worked side by side;
the chain forgets within the overlap.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tercet.engine.scale import Floats

Narrow = NDArray[np.float32]

#: Distance of neighbouring levels (natural log).
STEP = 0.015
#: Levels reach this far below and above LT2 speed (natural log).
LOWEST, HIGHEST = -1.2, 0.66
#: Chances per second of creeping to either neighbour, and of jumping anywhere. [trial]
CREEP, JUMP = 0.05, 1 / 200
#: Chance of a jump in a second that is not seen: after a walk or a stop all is open. [trial]
UNSEEN_JUMP = 0.2
#: Errors of neighbouring seconds hang together: each counts for this share. [trial]
TEMPER = 1 / 8
#: Degrees of freedom of the errors' law. [trial]
DEGREES = 5.0
#: A change by so much (natural log) within so many seconds to each side is a jump. [trial]
EDGE_RISE, EDGE_S = 0.12, 3
#: Seconds worked in one piece, and the overlap to each side.
PIECE_S, OVERLAP_S = 60, 40
#: Pieces side by side: two hours, so that half a day does not fill memory with what they take.
_AT_ONCE = 120
_EDGES_AT_ONCE = 2**9


@dataclass(frozen=True, eq=False)
class Levels:
    """Probability of every level in every second."""

    grid: Floats  # (m,) natural log of speed over LT2 speed
    belief: Narrow  # (n, m), rows sum to one

    @property
    def mean(self) -> Floats:
        """Expected level of every second, shape (n,)."""
        return np.asarray(self.belief @ self.grid.astype(np.float32), dtype=np.float64)


def _likelihoods(seen: Floats, grid: Floats, width: Floats) -> Narrow:
    """Tempered Student likelihood of every level in every second, one for what is not seen."""
    kinds, which = np.unique(np.round(np.log(width) / 0.25).astype(np.int64), return_inverse=True)
    fine = STEP / 4
    low = grid[0] - 3 * STEP
    cells = int((grid[-1] + 3 * STEP - low) / fine) + 1
    known = np.isfinite(seen)
    at = np.clip(np.round((np.where(known, seen, low) - low) / fine), 0, cells - 1)
    off = (low + fine * np.arange(cells)[:, None] - grid[None, :]) ** 2
    power = -0.5 * TEMPER * (DEGREES + 1)
    tables = [(1 + off / (DEGREES * np.exp(0.5 * k))) ** power for k in kinds.tolist()]
    table = np.concatenate([*tables, np.ones((1, len(grid)))]).astype(np.float32)
    table /= table.max(axis=1, keepdims=True)
    return np.asarray(
        table[np.where(known, at.astype(np.int64) + cells * which, len(table) - 1)],
        dtype=np.float32,
    )


def _step(p: Narrow, out: Narrow, scratch: Narrow, jump: Narrow) -> None:
    """One second on: stay, creep, jump; the chances are the same in both directions."""
    np.multiply(p, np.float32(CREEP), out=scratch)
    np.multiply(p, np.float32(1 - 2 * CREEP) - jump, out=out)
    out[:, 1:] += scratch[:, :-1]
    out[:, :-1] += scratch[:, 1:]
    out += jump / np.float32(p.shape[1])


def track(seen: Floats, width: Floats) -> Levels:
    """Find the level of every second.

    Parameters
    ----------
    seen : ndarray, shape (n,)
        Natural log of level-equivalent speed over LT2 speed; NaN where not seen.
    width : ndarray, shape (n,)
        Spread of what is seen about the level (natural log), positive.

    Returns
    -------
    Levels
    """
    n = len(seen)
    known = seen[np.isfinite(seen)]
    low, high = (float(known.min()), float(known.max())) if len(known) else (-0.3, 0.3)
    low, high = max(low - 3 * STEP, LOWEST), min(high + 3 * STEP, HIGHEST)
    high = max(high, low + 10 * STEP)
    first, last = int(np.floor(low / STEP)), int(np.ceil(high / STEP))
    grid = np.asarray(STEP * np.arange(first, last + 1), dtype=np.float64)
    m = len(grid)
    if n == 0:
        return Levels(grid, np.zeros((0, m), dtype=np.float32))
    pieces = -(-n // PIECE_S)
    padded = np.full(pieces * PIECE_S + 2 * OVERLAP_S, np.nan)
    padded[OVERLAP_S : OVERLAP_S + n] = seen
    wide = np.full(len(padded), float(width[0]))
    wide[OVERLAP_S : OVERLAP_S + n] = width
    belief = np.empty((pieces, PIECE_S, m), dtype=np.float32)
    for begin in range(0, pieces, _AT_ONCE):
        some = belief[begin : begin + _AT_ONCE]
        part = slice(begin * PIECE_S, (begin + len(some)) * PIECE_S + 2 * OVERLAP_S)
        _work(padded[part], grid, wide[part], some)
    belief = belief.reshape(pieces * PIECE_S, m)[:n]
    for begin in range(0, n, PIECE_S * _AT_ONCE):
        rows = belief[begin : begin + PIECE_S * _AT_ONCE]
        rows /= rows.sum(axis=1, keepdims=True)
    return Levels(grid, belief)


def _work(padded: Floats, grid: Floats, wide: Floats, out: Narrow) -> None:
    """Work neighbouring pieces side by side; ``out`` has the shape (pieces, PIECE_S, m)."""
    pieces, _, m = out.shape
    span = PIECE_S + 2 * OVERLAP_S
    likely = _likelihoods(padded, grid, wide)
    index = PIECE_S * np.arange(pieces)[None, :] + np.arange(span)[:, None]
    jumps = np.where(np.isfinite(padded), JUMP, UNSEEN_JUMP).astype(np.float32)[index][..., None]
    p = np.full((pieces, m), 1 / m, dtype=np.float32)
    step, scratch = np.empty_like(p), np.empty_like(p)
    length = pieces * PIECE_S
    for k in range(OVERLAP_S + PIECE_S):
        _step(p, step, scratch, jumps[k])
        np.multiply(step, likely[k : k + length : PIECE_S], out=p)
        p /= p.sum(axis=1, keepdims=True)
        if k >= OVERLAP_S:
            out[:, k - OVERLAP_S] = p
    p = np.full((pieces, m), 1 / m, dtype=np.float32)
    for k in range(span - 1, OVERLAP_S - 1, -1):
        # p is what the seconds after k say of the level at k.
        _step(p, step, scratch, jumps[min(k + 1, span - 1)])
        if k < OVERLAP_S + PIECE_S:
            out[:, k - OVERLAP_S] *= step
        np.multiply(step, likely[k : k + length : PIECE_S], out=p)
        p /= p.sum(axis=1, keepdims=True)


def regridded(levels: Levels, grid: Floats) -> Levels:
    """The same belief with its levels moved elsewhere, back on an even grid.

    Parameters
    ----------
    levels : Levels
    grid : ndarray, shape (m,)
        Where the levels are to lie, rising.

    Returns
    -------
    Levels
    """
    first, last = int(np.floor(grid[0] / STEP)), int(np.ceil(grid[-1] / STEP))
    even = np.asarray(STEP * np.arange(first, last + 1), dtype=np.float64)
    share = np.maximum(1.0 - np.abs(grid[:, None] - even[None, :]) / STEP, 0.0)
    return Levels(even, levels.belief @ share.astype(np.float32))


def sharpened(levels: Levels, seen: Floats) -> Levels:
    """Take what is seen for the level in the few seconds of a jump, where none is held.

    Parameters
    ----------
    levels : Levels
        From :func:`track`; changed, for a copy of half a day takes 20 MB.
    seen : ndarray, shape (n,)
        As there.

    Returns
    -------
    Levels
    """
    mean = levels.mean
    n = len(mean)
    if n <= 2 * EDGE_S:
        return levels
    k = np.arange(n)
    before, after = mean[np.maximum(k - EDGE_S, 0)], mean[np.minimum(k + EDGE_S, n - 1)]
    edge = (np.abs(after - before) > EDGE_RISE) & np.isfinite(seen)
    places = np.flatnonzero(edge)
    for begin in range(0, len(places), _EDGES_AT_ONCE):
        some = places[begin : begin + _EDGES_AT_ONCE]
        lower, upper = np.minimum(before, after)[some], np.maximum(before, after)[some]
        at = np.clip(seen[some], lower, upper)
        hat = np.maximum(1.0 - np.abs(at[:, None] - levels.grid[None, :]) / STEP, 0.0)
        levels.belief[some] = hat / np.maximum(hat.sum(axis=1, keepdims=True), 1e-9)
    return levels


def scatter(seen: Floats) -> float:
    """Spread of what is seen about a level held, from the run itself.

    Parameters
    ----------
    seen : ndarray, shape (n,)
        As in :func:`track`.

    Returns
    -------
    float
        Between 0.012 and 0.08 (natural log).
    """
    known = seen[np.isfinite(seen)]
    if len(known) < 60:
        return 0.03
    apart = np.abs(known[6:] - known[:-6])
    return float(np.clip(1.4826 * np.median(apart) / np.sqrt(2.0), 0.012, 0.08))

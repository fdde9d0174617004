"""The level a runner holds: sharp where it jumps, calm where it stays, with all its doubt.

A hidden Markov chain over levels of log speed, 1.5 % apart. From second to second the level
stays, creeps to a neighbour or, rarely, jumps anywhere; what is seen scatters about it with
heavy tails. Forward and backward passes give the probability of every level in every second.
To be quick in Python, the time is cut into overlapping pieces that are worked side by side;
the chain forgets within the overlap.
"""

from __future__ import annotations

from collections.abc import Iterator
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
_EDGES_AT_ONCE, _ROWS_AT_ONCE = 2**9, 2**11
#: The belief of a longer line is not kept, as that of half a day takes 20 MB. [s]
KEPT_S = 6 * 3600


@dataclass(frozen=True, eq=False)
class Levels:
    """Probability of every level in every second."""

    grid: Floats  # (m,) natural log of speed over LT2 speed
    belief: Narrow  # (n, m), rows sum to one

    @property
    def mean(self) -> Floats:
        """Expected level of every second, shape (n,)."""
        return np.asarray(self.belief @ self.grid.astype(np.float32), dtype=np.float64)

    def blocks(self) -> Iterator[tuple[int, Narrow]]:
        """The belief by some seconds at once, with the second at which they begin."""
        for begin in range(0, len(self.belief), _ROWS_AT_ONCE):
            yield begin, self.belief[begin : begin + _ROWS_AT_ONCE]


class LongLevels:
    """Levels of a line of many hours, sharpened.

    Their belief would fill memory: only what is expected is kept, and all of the belief is worked
    out anew, by hours, where it is asked for.
    """

    def __init__(self, seen: Floats, width: Floats) -> None:
        self._line = _Line(seen, width)
        self.grid = self._line.grid
        narrow = self.grid.astype(np.float32)
        mean = np.concatenate([rows @ narrow for _, rows in self._line.blocks()]).astype(np.float64)
        self._edges = _edges(mean, seen)
        self.mean = mean
        for places, hats in _hats(*self._edges, self.grid):
            self.mean[places] = hats @ narrow

    def blocks(self) -> Iterator[tuple[int, Narrow]]:
        """As :meth:`Levels.blocks`."""
        places, at = self._edges
        for begin, rows in self._line.blocks():
            low, high = np.searchsorted(places, (begin, begin + len(rows)))
            for some, hats in _hats(places[low:high], at[low:high], self.grid):
                rows[some - begin] = hats
            for place in range(0, len(rows), _ROWS_AT_ONCE):
                yield begin + place, rows[place : place + _ROWS_AT_ONCE]


class _Line:
    """A line of seconds, laid out in pieces that overlap, with what each second seen tells.

    Rows of levels are one longer than there are levels, and end in a level that is never: so a
    creep to the neighbour is one sum over all rows.
    """

    def __init__(self, seen: Floats, width: Floats) -> None:
        n, known = len(seen), seen[np.isfinite(seen)]
        low, high = (float(known.min()), float(known.max())) if len(known) else (-0.3, 0.3)
        low, high = max(low - 3 * STEP, LOWEST), min(high + 3 * STEP, HIGHEST)
        high = max(high, low + 10 * STEP)
        first, last = int(np.floor(low / STEP)), int(np.ceil(high / STEP))
        self._seconds = n
        self.grid = np.asarray(STEP * np.arange(first, last + 1), dtype=np.float64)
        self._pieces = -(-n // PIECE_S)
        padded = np.full(self._pieces * PIECE_S + 2 * OVERLAP_S, np.nan)
        padded[OVERLAP_S : OVERLAP_S + n] = seen
        wide = np.full(len(padded), float(width[0]) if n else 1.0)
        wide[OVERLAP_S : OVERLAP_S + n] = width
        self._jump = np.where(np.isfinite(padded), JUMP, UNSEEN_JUMP).astype(np.float32)
        self._table, self._row = _likelihoods(padded, self.grid, wide)

    def blocks(self) -> Iterator[tuple[int, Narrow]]:
        """Belief by some hours at once, each in the place of those before, and where they begin."""
        m = len(self.grid)
        room = np.empty((min(_AT_ONCE, self._pieces), PIECE_S, m), dtype=np.float32)
        for begin in range(0, self._pieces, _AT_ONCE):
            some = room[: self._pieces - begin]
            self._work(begin, some)
            rows = some.reshape(-1, m)[: self._seconds - PIECE_S * begin]
            rows /= rows.sum(axis=1, keepdims=True)
            yield PIECE_S * begin, rows

    def _work(self, begin: int, out: Narrow) -> None:
        """Work neighbouring pieces side by side; ``out`` has the shape (pieces, PIECE_S, m)."""
        pieces, _, m = out.shape
        span = PIECE_S + 2 * OVERLAP_S
        second = PIECE_S * (begin + np.arange(pieces))[None, :] + np.arange(span)[:, None]
        row, jump = self._row[second], self._jump[second][..., None]
        stay, jump = np.float32(1 - 2 * CREEP) - jump, jump / np.float32(m)
        p, step, scratch, likely = np.zeros((4, pieces, m + 1), dtype=np.float32)
        there, stepped = p[:, :m], step[:, :m]

        def see(k: int) -> None:
            np.take(self._table, row[k], axis=0, out=likely, mode="clip")
            np.multiply(step, likely, out=p)
            np.divide(p, np.add.reduce(there, axis=1, keepdims=True), out=p)

        there[:] = 1 / m
        for k in range(OVERLAP_S + PIECE_S):
            _step(p, step, scratch, stay[k], jump[k])
            see(k)
            if k >= OVERLAP_S:
                out[:, k - OVERLAP_S] = there
        there[:] = 1 / m
        for k in range(span - 1, OVERLAP_S - 1, -1):
            # p is what the seconds after k say of the level at k.
            after = min(k + 1, span - 1)
            _step(p, step, scratch, stay[after], jump[after])
            if k < OVERLAP_S + PIECE_S:
                out[:, k - OVERLAP_S] *= stepped
            see(k)


def _likelihoods(seen: Floats, grid: Floats, width: Floats) -> tuple[Narrow, NDArray[np.int32]]:
    """Tempered Student likelihood of every level: a table, and the row of every second.

    The last row, of what is not seen, is one for all levels; the last level of every row is never.
    """
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
    row = np.where(known, at.astype(np.int64) + cells * which, len(table) - 1)
    return np.pad(table, ((0, 0), (0, 1))), row.astype(np.int32)


def _step(p: Narrow, out: Narrow, scratch: Narrow, stay: Narrow, jump: Narrow) -> None:
    """One second on: stay, creep, jump; the chances are the same in both directions."""
    np.multiply(p, np.float32(CREEP), out=scratch)
    np.multiply(p, stay, out=out)
    levels, creeping = out.reshape(-1), scratch.reshape(-1)
    levels[1:] += creeping[:-1]
    levels[:-1] += creeping[1:]
    out += jump


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
    line = _Line(seen, width)
    belief = np.empty((len(seen), len(line.grid)), dtype=np.float32)
    for begin, rows in line.blocks():
        belief[begin : begin + len(rows)] = rows
    return Levels(line.grid, belief)


def sharp(seen: Floats, width: Floats) -> Levels | LongLevels:
    """Levels of every second as :func:`track` and :func:`sharpened` find them.

    Parameters
    ----------
    seen, width : ndarray, shape (n,)
        As for :func:`track`.

    Returns
    -------
    Levels or LongLevels
        The latter from :data:`KEPT_S` on.
    """
    if len(seen) > KEPT_S:
        return LongLevels(seen, width)
    return sharpened(track(seen, width), seen)


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
    for places, hats in _hats(*_edges(levels.mean, seen), levels.grid):
        levels.belief[places] = hats
    return levels


def _edges(mean: Floats, seen: Floats) -> tuple[NDArray[np.int64], Floats]:
    """Seconds of a jump, and the level that is seen there, within what is held on both sides."""
    k, n = np.arange(len(mean)), len(mean)
    if n <= 2 * EDGE_S:
        return k[:0], mean[:0]
    before, after = mean[np.maximum(k - EDGE_S, 0)], mean[np.minimum(k + EDGE_S, n - 1)]
    edge = (np.abs(after - before) > EDGE_RISE) & np.isfinite(seen)
    lower, upper = np.minimum(before, after)[edge], np.maximum(before, after)[edge]
    return np.flatnonzero(edge), np.clip(seen[edge], lower, upper)


def _hats(
    places: NDArray[np.int64], at: Floats, grid: Floats
) -> Iterator[tuple[NDArray[np.int64], Narrow]]:
    """Belief in the two levels about each of these, with their places, some at once."""
    for begin in range(0, len(places), _EDGES_AT_ONCE):
        some = slice(begin, begin + _EDGES_AT_ONCE)
        hat = np.maximum(1.0 - np.abs(at[some, None] - grid[None, :]) / STEP, 0.0)
        hat /= np.maximum(hat.sum(axis=1, keepdims=True), 1e-9)
        yield places[some], hat.astype(np.float32)


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

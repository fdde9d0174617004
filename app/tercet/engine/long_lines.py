"""Recordings that last for days are judged piece by piece, so that memory stays bounded."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, fields, replace
from itertools import pairwise
from typing import Any

import numpy as np

from tercet.engine.judgement import Judgement, Repetition

Intervals = tuple[tuple[float, float], ...]

#: A line of more seconds is judged in pieces: longer than nearly all races of one go. [s]
LONGEST_S = 36 * 3600
#: Pieces last at most so long. [s]
PIECE_S = 12 * 3600
#: Of a judgement, what a piece may have nothing of though another has.
MAY_LACK = ("power",)


def edges(n: int) -> list[tuple[int, int]]:
    """Begin and end of the equal pieces of a line of ``n`` seconds; one if it is not long."""
    if n <= LONGEST_S:
        return [(0, n)]
    places: list[int] = np.linspace(0, n, math.ceil(n / PIECE_S) + 1).astype(np.int64).tolist()
    return list(pairwise(places))


def cut(judged: Judgement) -> Iterator[Judgement]:
    """The pieces of a judgement, each on a clock of its own."""
    n = len(judged.shades)
    for begin, end in edges(n):
        if (begin, end) == (0, n):
            yield judged
            return
        inside: dict[str, Any] = {
            item.name: values[begin:end]
            for item in fields(judged)
            if isinstance(values := getattr(judged, item.name), np.ndarray)
        }
        repetitions = tuple(
            replace(rep, start_s=rep.start_s - begin)
            for rep in judged.repetitions
            if begin <= rep.start_s < end
        )
        last = judged.last_second_s if end == n else 1.0
        yield replace(judged, **inside, repetitions=repetitions, last_second_s=last)


@dataclass
class Told:
    """What pieces said beside their seconds, put together while they come."""

    repetitions: list[Repetition] = field(default_factory=list)
    mends: dict[str, int] = field(default_factory=dict)
    remarks: dict[str, None] = field(default_factory=dict)
    _intervals: list[Intervals] = field(default_factory=list)
    _known: bool = False

    def add(self, begin: int, piece: Judgement) -> None:
        """Take in the piece that begins at a second of the line."""
        self.repetitions += [replace(rep, start_s=rep.start_s + begin) for rep in piece.repetitions]
        for name, count in piece.mends.items():
            self.mends[name] = self.mends.get(name, 0) + count
        self.remarks |= dict.fromkeys(piece.remarks)
        self._known |= bool(piece.intervals)
        seconds = piece.seconds_by_shade()[:3].tolist()
        self._intervals.append(piece.intervals or tuple((s, s) for s in seconds))

    @property
    def intervals(self) -> Intervals:
        """The ends of the pieces' intervals, summed shade by shade; empty if none has any."""
        return _summed(self._intervals) if self._known else ()


def joined(pieces: Iterable[Judgement], n: int) -> Judgement:
    """Put the pieces of a line together.

    Parameters
    ----------
    pieces : iterable of Judgement
        In order, those of :func:`edges`.
    n : int
        Seconds of the line.

    Returns
    -------
    Judgement
        Of all ``n`` seconds. What is weighed over a whole run (unseen costs, repetitions, the
        runner's effort) is weighed over a piece; the ends of intervals and the mends are summed.
    """
    arrays: dict[str, Any] = {}
    told, begin = Told(), 0
    for piece in pieces:
        end = begin + len(piece.shades)
        if end - begin == n:
            return piece
        for item in fields(piece):
            values = getattr(piece, item.name)
            if isinstance(values, np.ndarray) and len(values):
                blank = np.nan if item.name in MAY_LACK else 0
                whole = arrays.setdefault(item.name, np.full(n, blank, dtype=values.dtype))
                whole[begin:end] = values
        told.add(begin, piece)
        begin = end
    return replace(
        piece,  # for the length of the last second
        **arrays,
        repetitions=tuple(told.repetitions),
        mends=told.mends,
        remarks=tuple(told.remarks),
        intervals=told.intervals,
    )


def _summed(intervals: Sequence[Intervals]) -> Intervals:
    """Sum the ends, shade by shade."""
    return tuple(
        (sum(low for low, _ in ends), sum(high for _, high in ends))
        for ends in zip(*intervals, strict=True)
    )

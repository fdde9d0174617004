"""Recordings that last for days are judged piece by piece, so that memory stays bounded."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import fields, replace
from itertools import pairwise
from typing import Any

import numpy as np

from tercet.engine.judgement import Judgement, Repetition

Intervals = tuple[tuple[float, float], ...]

#: A line of more seconds is judged in pieces: longer than nearly all races of one go. [s]
LONGEST_S = 36 * 3600
#: Pieces last at most so long. [s]
PIECE_S = 12 * 3600


def in_pieces(n: int, judge: Callable[[int, int], Judgement]) -> Judgement:
    """Judge a line whole, or if it is long in equal pieces that are put together.

    Parameters
    ----------
    n : int
        Seconds of the line.
    judge : callable
        Judges seconds ``begin`` to ``end`` on their own, both of them whole.

    Returns
    -------
    Judgement
        Of all ``n`` seconds. What is weighed over a whole run (unseen costs, repetitions, the
        runner's effort) is weighed over a piece; the ends of intervals and the mends are summed.
    """
    if n <= LONGEST_S:
        return judge(0, n)
    edges = np.linspace(0, n, math.ceil(n / PIECE_S) + 1).astype(np.int64).tolist()
    arrays: dict[str, Any] = {}
    repetitions: list[Repetition] = []
    mends: dict[str, int] = {}
    remarks: dict[str, None] = {}
    intervals: list[Intervals] = []
    known: list[bool] = []
    for begin, end in pairwise(edges):
        piece = judge(begin, end)
        for field in fields(piece):
            values = getattr(piece, field.name)
            if isinstance(values, np.ndarray):
                whole = arrays.setdefault(field.name, np.zeros(n, dtype=values.dtype))
                whole[begin:end] = values
        repetitions += [replace(rep, start_s=rep.start_s + begin) for rep in piece.repetitions]
        for name, count in piece.mends.items():
            mends[name] = mends.get(name, 0) + count
        remarks |= dict.fromkeys(piece.remarks)
        seconds = piece.seconds_by_shade()[:3].tolist()
        known.append(bool(piece.intervals))
        intervals.append(piece.intervals or tuple((s, s) for s in seconds))
    return replace(
        piece,  # for the length of the last second
        **arrays,
        repetitions=tuple(repetitions),
        mends=mends,
        remarks=tuple(remarks),
        intervals=_summed(intervals) if any(known) else (),
    )


def _summed(intervals: Sequence[Intervals]) -> Intervals:
    """Sum the ends, shade by shade."""
    return tuple(
        (sum(low for low, _ in ends), sum(high for _, high in ends))
        for ends in zip(*intervals, strict=True)
    )

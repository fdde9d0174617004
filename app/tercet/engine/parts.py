"""The parts of a session told apart: warm-up, work, recovery, cool-down, and long easy running."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from tercet.engine.cleaning import run_lengths
from tercet.engine.judgement import Judgement
from tercet.engine.load import session_shade
from tercet.engine.scale import Shade

Label = Literal["warm-up", "easy running", "work", "recovery", "cool-down"]

#: Moderate and hard running without repetitions is work from this length on. [s] [guess]
SUSTAINED_S = 300.0
#: Easy or standing for no longer than this does not end it. [s] [guess]
DIP_S = 60
#: What comes before the first work or after the last is a run of its own if longer. [s] [guess]
LONGEST_LEAD_S = 1800.0
#: Under this, what lies before, between or after work is an edge, no part. [s]
EDGE_S = 3.0


@dataclass(frozen=True)
class Part:
    """A part of a session; times in seconds from its start.

    ``seconds`` and ``metres`` are by shade, in the order of :class:`Shade`.
    """

    start_s: float
    end_s: float
    label: Label
    seconds: tuple[float, ...]
    metres: tuple[float, ...]

    @property
    def duration_s(self) -> float:
        """From its start to its end, also what was not running. [s]"""
        return self.end_s - self.start_s

    @property
    def distance_m(self) -> float:
        """All metres of it. [m]"""
        return math.fsum(self.metres)


@dataclass(frozen=True)
class PartSum:
    """All parts of one label together."""

    label: Label
    count: int
    duration_s: float
    seconds: tuple[float, ...]
    metres: tuple[float, ...]

    @property
    def distance_m(self) -> float:
        """All metres of them. [m]"""
        return math.fsum(self.metres)


def parts(judged: Judgement) -> tuple[Part, ...]:
    """Tell the parts of a session apart.

    Parameters
    ----------
    judged : Judgement

    Returns
    -------
    tuple of Part
        Without gap or overlap from 0 to ``elapsed_s``; empty where there was no work.

    Notes
    -----
    Work is every repetition, and every stretch of at least five minutes moderate or hard that holds
    none; without repetitions only in a session that counts as moderate or hard
    (:func:`~tercet.engine.load.session_shade`), so that an easy run over a hill has no work.
    What lies between two bouts is recovery, whether jogged, walked or stood. What lies before the
    first is the warm-up and what follows the last the cool-down, or easy running where it is longer
    than half an hour (strides at the end of an easy run make no warm-up of it).
    """
    work = _work(judged)
    if not work:
        return ()
    elapsed = judged.elapsed_s
    cuts: list[tuple[float, float, Label]] = []
    at = 0.0
    for begin, end in work:
        if begin - at > EDGE_S:
            before: Label = "recovery" if cuts else _lead(begin - at, "warm-up")
            cuts.append((at, begin, before))
        elif cuts:
            cuts[-1] = (cuts[-1][0], begin, cuts[-1][2])
        else:
            begin = 0.0
        cuts.append((begin, end, "work"))
        at = end
    if elapsed - at > EDGE_S:
        cuts.append((at, elapsed, _lead(elapsed - at, "cool-down")))
    else:
        cuts[-1] = (cuts[-1][0], elapsed, cuts[-1][2])
    return tuple(_part(judged, *cut) for cut in cuts)


def summed(found: Sequence[Part]) -> tuple[PartSum, ...]:
    """Add up the parts of each label, in the order in which the labels first come."""
    by_label: dict[Label, list[Part]] = {}
    for part in found:
        by_label.setdefault(part.label, []).append(part)
    return tuple(
        PartSum(
            label,
            len(held),
            math.fsum(part.duration_s for part in held),
            tuple(math.fsum(column) for column in zip(*(p.seconds for p in held), strict=True)),
            tuple(math.fsum(column) for column in zip(*(p.metres for p in held), strict=True)),
        )
        for label, held in by_label.items()
    )


def _lead(length: float, label: Label) -> Label:
    return "easy running" if length > LONGEST_LEAD_S else label


def _work(judged: Judgement) -> list[tuple[float, float]]:
    """Begin and end of every bout of work, in order, none overlapping. [s]"""
    elapsed = judged.elapsed_s
    bouts = [
        (rep.start_s, min(rep.start_s + rep.duration_s, elapsed)) for rep in judged.repetitions
    ]
    seconds = judged.seconds_by_shade()
    if bouts or session_shade(float(seconds[1]), float(seconds[2])) > 0:
        strained = (judged.shades == Shade.MODERATE) | (judged.shades == Shade.HARD)
        bouts += [
            (float(a), min(float(b), elapsed))
            for a, b in _sustained(strained)
            if not any(a < end and begin < b for begin, end in bouts)
        ]
    out: list[tuple[float, float]] = []
    for begin, end in sorted(bouts):
        start = max(begin, out[-1][1]) if out else begin
        if end > start:
            out.append((start, end))
    return out


def _sustained(strained: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """Stretches of moderate and hard running, dips joined, long enough in what they hold."""
    pieces = [(int(a), int(b)) for a, b in run_lengths(strained)]
    joined = pieces[:1]
    for (_, end), (begin, stop) in pairwise(pieces):
        if begin - end <= DIP_S:
            joined[-1] = (joined[-1][0], stop)
        else:
            joined.append((begin, stop))
    return [(a, b) for a, b in joined if np.count_nonzero(strained[a:b]) >= SUSTAINED_S]


def _part(judged: Judgement, begin: float, end: float, label: Label) -> Part:
    """Sum up a part; each second counts by how much of it lies inside."""
    n = len(judged.shades)
    first, stop = min(int(begin), n), min(math.ceil(end), n)
    whole = np.ones(stop - first)
    edges = np.arange(first, stop, dtype=np.float64)
    length = np.minimum(edges + 1.0, judged.elapsed_s) - edges
    inside = np.minimum(edges + length, end) - np.maximum(edges, begin)
    share = np.divide(inside, length, out=whole, where=length > 0)
    shades = judged.shades[first:stop]
    seconds = np.bincount(shades, weights=inside, minlength=len(Shade))
    metres = np.bincount(shades, weights=share * judged.metres[first:stop], minlength=len(Shade))
    return Part(begin, end, label, tuple(seconds.tolist()), tuple(metres.tolist()))

"""Planned sessions beside what was run: paired day by day, by kind and length."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

#: So much moderate and hard running makes a session more than an easy one. [s] [guess]
WORK_S = 60.0


@dataclass(frozen=True)
class Amount:
    """What a session asks or was: whether there is work in it, and how long it is."""

    work: bool
    seconds: float  # [s]


def amount_of(seconds: Sequence[float]) -> Amount:
    """Make an amount of seconds by shade, in the order of Shade."""
    return Amount(
        seconds[1] + seconds[2] >= WORK_S, float(sum(seconds[:3])) + float(sum(seconds[4:5]))
    )


def pair(planned: Sequence[Amount], run: Sequence[Amount]) -> list[int | None]:
    """Say which run of a day is which planned session.

    Parameters
    ----------
    planned, run : sequence of Amount
        Of one local day.

    Returns
    -------
    list of int or None
        For each planned session the place of its run; None where none is left. Each run stands
        for one planned session only. Alike in kind goes first, then alike in length.
    """
    costs = sorted(
        (plan.work != done.work, _apart(plan.seconds, done.seconds), p, r)
        for p, plan in enumerate(planned)
        for r, done in enumerate(run)
    )
    out: list[int | None] = [None] * len(planned)
    taken: set[int] = set()
    for _, _, p, r in costs:
        if out[p] is None and r not in taken:
            out[p] = r
            taken.add(r)
    return out


def _apart(a: float, b: float) -> float:
    return abs(math.log(max(a, 1.0) / max(b, 1.0)))

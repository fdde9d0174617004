"""Planned sessions beside what was run: paired day by day, by kind and length."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

#: So much moderate and hard running makes a session more than an easy one. [s] [guess]
WORK_S = 60.0


class Amount(NamedTuple):
    """What a session asks or was: whether there is work in it, and how long it is."""

    work: bool
    seconds: float  # [s]


def amount_of(seconds: Sequence[float]) -> Amount:
    """Make an amount of seconds by shade, in the order of Shade."""
    easy, moderate, hard, *others = seconds
    unjudged = others[1] if len(others) > 1 else 0.0
    return Amount(moderate + hard >= WORK_S, easy + moderate + hard + unjudged)


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
    if not run:
        return [None] * len(planned)
    if len(planned) == 1:  # almost every day
        return [min(range(len(run)), key=lambda r: _cost(planned[0], run[r]))]
    costs = sorted(
        (*_cost(plan, done), p, r) for p, plan in enumerate(planned) for r, done in enumerate(run)
    )
    out: list[int | None] = [None] * len(planned)
    taken: set[int] = set()
    for _, _, p, r in costs:
        if out[p] is None and r not in taken:
            out[p] = r
            taken.add(r)
    return out


def _cost(plan: Amount, done: Amount) -> tuple[bool, float]:
    apart = math.log(max(plan.seconds, 1.0) / max(done.seconds, 1.0))
    return plan.work != done.work, abs(apart)

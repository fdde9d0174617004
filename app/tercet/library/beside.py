"""What is known of a stored run beside its samples, as the engine takes it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from tercet.engine.known import Belt, Known


def known_of(
    laps: str, effort: int | None, belts: Iterable[tuple[float, float, float]] = ()
) -> Known:
    """Pressed laps, belt speeds and effort of a run.

    Parameters
    ----------
    laps : str
        As stored with the run, JSON.
    effort : int or None
        Session RPE (CR-10).
    belts : iterable of (start, end, speed)
        Said by the runner. [s], [s], [m/s]
    """
    return Known(
        laps=presses(json.loads(laps)),
        belts=tuple(Belt(*belt) for belt in belts),
        effort=effort,
    )


def presses(laps: Iterable[Mapping[str, Any]]) -> tuple[float, ...]:
    """Moments at which the runner pressed lap: the ends of laps that ended so. [s]"""
    return tuple(lap["start_s"] + lap["duration_s"] for lap in laps if lap["pressed"])

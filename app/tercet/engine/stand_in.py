"""Running power in the place of speed: where speed was lost, or where the lines are watts alone."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tercet.engine.demand import LEAST_LEVEL
from tercet.engine.motion import Motion
from tercet.engine.power import (
    in_speeds,
    level_speed_by_lines,
    level_speed_by_power,
    share_between,
    told_by_power,
)
from tercet.engine.scale import Floats, Thresholds


@dataclass(frozen=True, eq=False)
class StandIn:
    """What is judged as level speed, and by which lines; all of it speed where no power is."""

    level: Floats  # (n,) [m/s]
    by_power: NDArray[np.bool_]  # (n,) where it is power's
    lines: Thresholds | None
    moved: Motion  # on the scale of ``level``
    shown: Floats | None = None  # (n,) level speed as run, where ``level`` is another [m/s]


def stand_in(
    power: Floats | None, level: Floats, moved: Motion, thresholds: Thresholds | None
) -> StandIn:
    """Put power where level speed is missing, or everywhere if only watts have lines.

    Parameters
    ----------
    power : ndarray, shape (n,), or None
        [W], NaN where unknown.
    level : ndarray, shape (n,)
        Level-equivalent speed as seen, NaN or near zero where it is lost. [m/s]
    moved : Motion
    thresholds : Thresholds or None

    Returns
    -------
    StandIn

    Notes
    -----
    Lines that are watts alone are put on a scale of speed in proportion to them; what speed was
    recorded goes onto it by its relation to power in this run, so that it fills power's gaps.
    """
    lines = in_speeds(thresholds) if thresholds is not None else None
    there = told_by_power(power)
    if lines is not thresholds and there is not None and there.any():
        by_lines = level_speed_by_lines(power, lines)
        assert by_lines is not None
        share = share_between(by_lines, level, moved.running)
        by_power = moved.running & np.isfinite(by_lines)
        judged = np.where(by_power, by_lines, share * level)
        speed = np.where(moved.running, judged, share * moved.speed)
        mostly = bool(2 * np.count_nonzero(by_power) > np.count_nonzero(moved.running))
        # Power holds the slope and much of the ground, and no arm guesses it.
        on_scale = replace(moved, speed=speed, indoor=moved.indoor or mostly, by_belt=mostly)
        return StandIn(judged, by_power, lines, on_scale, level)
    by_lines = level_speed_by_lines(power, thresholds)
    found = level_speed_by_power(power, level, moved.running) if by_lines is None else by_lines
    lost = moved.running & ~(level > LEAST_LEVEL) & np.isfinite(found)
    if by_lines is not None and 2 * np.count_nonzero(lost) > np.count_nonzero(moved.running):
        # Mostly power: as with a belt's own speed, no arm guesses it and no slope hides in it.
        moved = replace(moved, by_belt=True)
    return StandIn(np.where(lost, found, level), lost, thresholds, moved)

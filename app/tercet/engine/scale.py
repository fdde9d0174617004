"""The one scale of intensity: 0 at rest, 1 at LT1, 2 at LT2, continuous above."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine.shades import LETTERS, Shade, Thresholds, check_thresholds

__all__ = [
    "LETTERS",
    "MIDDLE",
    "Floats",
    "Shade",
    "Thresholds",
    "check_thresholds",
    "intensity",
    "shade_of",
]

Floats = NDArray[np.float64]

#: Where easy, moderate and hard lie on the scale if nothing but a word tells.
MIDDLE = (0.75, 1.5, 2.25)


def intensity(values: ArrayLike, *, rest: float, lt1: float, lt2: float) -> Floats:
    """Put a channel on the scale that all channels share.

    Parameters
    ----------
    values : array_like, shape (n,)
        Heart rate [beats/min] or level-equivalent speed [m/s]; NaN stays NaN.
    rest, lt1, lt2 : float
        The channel's value at rest, at LT1 and at LT2, in the same unit.

    Returns
    -------
    ndarray of float64, shape (n,)
        0 at rest, 1 at LT1, 2 at LT2, straight between them and on above LT2 with the same
        slope as between LT1 and LT2; below rest it is negative, so that wrong settings show.

    Raises
    ------
    ValueError
        Unless rest < lt1 < lt2.

    Notes
    -----
    The scale is this program's own; the two lines are the borders of the three domains
    (moderate, heavy and severe in physiology; easy, moderate and hard here).
    """
    if not rest < lt1 < lt2:
        raise ValueError(f"rest, LT1 and LT2 must rise: {rest:g}, {lt1:g}, {lt2:g}")
    x = np.asarray(values, dtype=np.float64)
    return np.where(x <= lt1, (x - rest) / (lt1 - rest), 1.0 + (x - lt1) / (lt2 - lt1))


def shade_of(scale: ArrayLike) -> NDArray[np.uint8]:
    """Name the shade of points on the scale: easy < 1 <= moderate < 2 <= hard; NaN is unjudged.

    Parameters
    ----------
    scale : array_like, shape (n,)
        Points on the scale of :func:`intensity`. [unitless]

    Returns
    -------
    ndarray of uint8, shape (n,)
        Values of :class:`Shade`.
    """
    x = np.asarray(scale, dtype=np.float64)
    shades = np.full(x.shape, Shade.UNJUDGED, dtype=np.uint8)
    shades[x < 1.0] = Shade.EASY
    shades[(x >= 1.0) & (x < 2.0)] = Shade.MODERATE
    shades[x >= 2.0] = Shade.HARD
    return shades

"""Textures as lines: the strokes of a texture cut to a shape, so that they stay lines on paper."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QLineF, QRectF

from tercet.engine.scale import Floats

UPRIGHT_PITCH = 4.0
SLANTED_PITCH = 6.0


def in_polygon(x: Floats, y: Floats, pitch: float, *, slanted: bool) -> list[QLineF]:
    """Strokes inside a closed shape.

    Parameters
    ----------
    x, y : ndarray, shape (n,)
        Its corners in order, y downwards.
    pitch : float
        Distance of the strokes along x.
    slanted : bool
        Rising to the right at 45 degrees; else upright.
    """
    across = x + y if slanted else x
    along = x if slanted else y
    next_across, next_along = np.roll(across, -1), np.roll(along, -1)
    low, high = np.minimum(across, next_across), np.maximum(across, next_across)
    span = np.where(next_across == across, 1.0, next_across - across)
    lines = []
    first = math.floor(float(across.min()) / pitch) + 1
    for k in range(first, math.ceil(float(across.max()) / pitch)):
        at = k * pitch
        cut = (low <= at) & (at < high)
        places = np.sort(
            along[cut] + (at - across[cut]) / span[cut] * (next_along[cut] - along[cut])
        )
        for a, b in zip(places[::2].tolist(), places[1::2].tolist(), strict=False):
            if b - a > 0.3:
                lines.append(QLineF(a, at - a, b, at - b) if slanted else QLineF(at, a, at, b))
    return lines


def in_rect(rect: QRectF, pitch: float, *, slanted: bool) -> list[QLineF]:
    """Strokes inside a rectangle, counted from its lower left corner."""
    left, right, top, bottom = rect.left(), rect.right(), rect.top(), rect.bottom()
    lines = []
    if not slanted:
        at = left + pitch / 2.0
        while at < right:
            lines.append(QLineF(at, top, at, bottom))
            at += pitch
        return lines
    height, width = bottom - top, right - left
    at = pitch / 2.0  # where the stroke, drawn on, crosses the foot, counted from height before
    while at < width + height:
        low, high = max(0.0, at - height), min(width, at)
        shift = bottom - height + at
        lines.append(QLineF(left + low, shift - low, left + high, shift - high))
        at += pitch
    return lines

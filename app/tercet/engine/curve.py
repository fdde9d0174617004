"""The smooth curve of time over intensity: what is kept of a run, and the curve made of many."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine.distribution import shares
from tercet.engine.judgement import Judgement
from tercet.engine.scale import Floats

#: Borders of the bins on the scale of intensity; LT1 and LT2 are borders, so that sums by shade
#: stay exact. The first and last bins hold all beyond them.
EDGES = np.concatenate(
    (np.linspace(0.5, 1.0, 33), np.linspace(1.0, 2.0, 13)[1:], np.linspace(2.0, 4.0, 17)[1:])
)
BINS = len(EDGES) - 1
_OF_SHADE = (slice(0, 32), slice(32, 44), slice(44, 60))
#: Spread of the smoothing, in shares of LT1 speed. [trial]
SMOOTH = 0.03
#: LT2 speed over LT1 speed where the runner's is unknown: 84 / 67 (Condello et al. 2014).
USUAL_RATIO = 84 / 67
_DIAGONAL = np.arange(3)


@dataclass(frozen=True, eq=False)
class Curve:
    """A density over intensity; the area below is 1, and each shade's part its share.

    ``at`` is level speed as a share of LT1 speed, so that LT1 lies at 1 and LT2 at ``lt2``.
    """

    at: Floats  # (n,)
    density: Floats  # (n,)
    lt2: float


def spread(judged: Judgement) -> NDArray[np.uint32]:
    """Count a run's judged seconds by intensity.

    Parameters
    ----------
    judged : Judgement

    Returns
    -------
    ndarray of uint32, shape (60,)
        Whole seconds in each bin of :data:`EDGES`; the bins of a shade hold its seconds. [s]
    """
    out = np.zeros(BINS, dtype=np.uint32)
    for shade, part in enumerate(_OF_SHADE):
        points = judged.scale[judged.shades == shade]
        edges = EDGES[part.start : part.stop + 1]
        at = np.searchsorted(edges, np.nan_to_num(points, nan=float(edges[0])), "right") - 1
        count = part.stop - part.start
        out[part] = np.bincount(np.clip(at, 0, count - 1), minlength=count)
    return out


def by_shade(spreads: ArrayLike) -> Floats:
    """Seconds easy, moderate, hard of counts by intensity, shape (..., 60) to (..., 3)."""
    table = np.asarray(spreads, dtype=np.float64)
    return np.stack([table[..., part].sum(axis=-1) for part in _OF_SHADE], axis=-1)


@lru_cache(maxsize=8)
def grid(ratio: float = USUAL_RATIO) -> Floats:
    """The places at which curves are drawn, for an LT2 so many times LT1 speed; shape (281,)."""
    return np.linspace(0.5, 1.0 + 3.0 * (ratio - 1.0), 281)


def smooth(seconds: ArrayLike, ratio: float = USUAL_RATIO) -> Curve:
    """Draw a smooth density through counts by intensity.

    Parameters
    ----------
    seconds : array_like, shape (60,)
        Sums of :func:`spread`. [s]
    ratio : float
        LT2 speed over LT1 speed.

    Returns
    -------
    Curve

    Raises
    ------
    ValueError
        If nothing was counted.

    Notes
    -----
    A normal kernel, then each shade's part brought back to its share, so that smoothing moves
    no time over a boundary.
    """
    mass = np.asarray(seconds, dtype=np.float64)
    part = shares(by_shade(mass))
    return Curve(grid(ratio), _to_shares(_kernel(ratio) @ mass, part, ratio), ratio)


def wanted(target: ArrayLike, ratio: float = USUAL_RATIO) -> Curve:
    """The curve of wanted shares: tall on easy, low in the middle, a small hump on hard.

    Parameters
    ----------
    target : array_like, shape (3,)
        Shares of easy, moderate, hard.
    ratio : float
        LT2 speed over LT1 speed.

    Returns
    -------
    Curve
        Its shape within a shade is common practice, no source; its areas are the target.
    """
    part = shares(target)
    at = grid(ratio)
    easy = np.exp(-0.5 * ((at - 0.83) / 0.065) ** 2) / 0.065
    hard = np.exp(-0.5 * ((at - ratio * 1.11) / 0.075) ** 2) / 0.075
    middle = np.exp(-0.5 * ((at - (1 + ratio) / 2) / 0.12) ** 2) / 0.12
    mixed = part[0] * easy + part[1] * middle + part[2] * hard + 1e-9
    return Curve(at, _to_shares(mixed, part, ratio), ratio)


def arc(ratio: float = USUAL_RATIO) -> Curve:
    """One broad hump over the middle, as running by feel often makes; the same area.

    Common practice, no source.
    """
    at = grid(ratio)
    hump = np.exp(-0.5 * ((at - (0.5 + 0.5 * ratio)) / 0.17) ** 2)
    return Curve(at, hump / (hump.sum() * (at[1] - at[0])), ratio)


def _place(scale: Floats, ratio: float) -> Floats:
    """From the scale of intensity to shares of LT1 speed."""
    return np.where(scale <= 1.0, scale, 1.0 + (scale - 1.0) * (ratio - 1.0))


@lru_cache(maxsize=8)
def _kernel(ratio: float) -> Floats:
    """How much of each bin lies at each place, shape (281, 60)."""
    middle = _place((EDGES[1:] + EDGES[:-1]) / 2.0, ratio)
    kernel = np.exp(-0.5 * ((grid(ratio)[:, None] - middle[None, :]) / SMOOTH) ** 2)
    return np.asarray(kernel / kernel.sum(axis=0), dtype=np.float64)


@lru_cache(maxsize=8)
def _parts(ratio: float) -> tuple[Floats, Floats]:
    """Soft and sharp membership of each place in the three shades, shape (3, 281) each."""
    at = grid(ratio)
    over = [1.0 / (1.0 + np.exp(-(at - line) / 0.012)) for line in (1.0, ratio)]
    soft = np.stack((1.0 - over[0], over[0] - over[1], over[1]))
    inside = np.stack((at < 1.0, (at >= 1.0) & (at < ratio), at >= ratio)).astype(np.float64)
    return soft, inside


def _to_shares(density: Floats, part: Floats, ratio: float) -> Floats:
    """Weigh a density smoothly so that its parts between the lines have the given areas."""
    at = grid(ratio)
    step = float(at[1] - at[0])
    soft, inside = _parts(ratio)
    areas = inside @ (soft * density).T * step
    # A shade without any density cannot be weighed: a little of each keeps the three apart.
    areas[_DIAGONAL, _DIAGONAL] += 1e-9
    weights = np.maximum(np.linalg.solve(areas, part), 0.0)
    weighed = weights @ soft * density
    return np.asarray(weighed / (weighed.sum() * step), dtype=np.float64)

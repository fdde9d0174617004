"""The shape of an intensity distribution: its class and its polarization index."""

from __future__ import annotations

import math
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats

Structure = Literal["polarised", "pyramidal", "threshold", "high-intensity", "none"]

#: Strictly above this, with the polarised structure, a distribution counts as polarised.
POLARISED_ABOVE = 2.0


def shares(amounts: ArrayLike) -> Floats:
    """Normalise easy, moderate and hard amounts to shares.

    Parameters
    ----------
    amounts : array_like, shape (3,)
        Seconds, metres or sessions.

    Returns
    -------
    ndarray of float64, shape (3,)
        Adding up to 1. [unitless]

    Raises
    ------
    ValueError
        If an amount is negative or not finite, or all are zero.
    """
    return np.array(_three(amounts))


def _three(amounts: ArrayLike) -> tuple[float, float, float]:
    """The shares as plain numbers: a season has hundreds of threes, too small for arrays."""
    values = np.asarray(amounts, dtype=np.float64).tolist()
    if not isinstance(values, list) or len(values) != 3 or isinstance(values[0], list):
        raise ValueError("give three amounts, none negative, not all zero")
    total = math.fsum(values) if all(map(math.isfinite, values)) else math.nan
    if not total > 0 or min(values) < 0:
        raise ValueError("give three amounts, none negative, not all zero")
    a, b, c = values
    return a / total, b / total, c / total


def structure(amounts: ArrayLike) -> Structure:
    """Name the order of the three shares [1]_.

    Parameters
    ----------
    amounts : array_like, shape (3,)
        Easy, moderate, hard.

    Returns
    -------
    str
        "polarised" (easy > hard > moderate), "pyramidal" (easy > moderate > hard),
        "threshold" (moderate the largest), "high-intensity" (hard the largest), or "none"
        where shares tie.

    References
    ----------
    .. [1] G. Treff et al., Front. Physiol. 10:707, 2019; the last two readings differ between
       authors.
    """
    z1, z2, z3 = _three(amounts)
    if z1 > z3 > z2:
        return "polarised"
    if z1 > z2 > z3:
        return "pyramidal"
    if z2 > max(z1, z3):
        return "threshold"
    if z3 > max(z1, z2):
        return "high-intensity"
    return "none"


def polarization_index(amounts: ArrayLike) -> float | None:
    """Polarization index, ``log10(z1 / z2 * z3 * 100)`` of the shares [1]_.

    Parameters
    ----------
    amounts : array_like, shape (3,)
        Easy, moderate, hard in any one unit.

    Returns
    -------
    float or None
        None where hard exceeds easy, for which the index is not made. Zero without hard; with
        no moderate, one hundredth is moved from hard to moderate (the paper's special cases,
        known here from memory).

    References
    ----------
    .. [1] G. Treff et al., Front. Physiol. 10:707, 2019.
    """
    z1, z2, z3 = _three(amounts)
    if z3 > z1:
        return None
    if z3 == 0:
        return 0.0
    if z2 == 0:
        z2, z3 = 0.01, z3 - 0.01
        if z3 <= 0:
            return 0.0
    return math.log10(z1 / z2 * z3 * 100)


def is_polarised(amounts: ArrayLike) -> bool:
    """Whether a distribution has the polarised structure and an index above 2.

    Parameters
    ----------
    amounts : array_like, shape (3,)
    """
    index = polarization_index(amounts)
    return structure(amounts) == "polarised" and index is not None and index > POLARISED_ABOVE

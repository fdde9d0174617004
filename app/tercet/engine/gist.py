"""What is kept of a judgement: its sums and what they were made of; of long ones by pieces."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tercet.engine import causes, curve, fingerprint, long_lines
from tercet.engine.cleaning import moving_mean
from tercet.engine.judgement import Judgement, Repetition
from tercet.engine.scale import Floats, Thresholds


@dataclass(frozen=True, eq=False)
class Gist:
    """Sums of a run and what else is kept of it, apart from its seconds' shades nothing long."""

    shades: NDArray[np.uint8]  # (n,) of Shade
    seconds: Floats  # (5,) by shade [s]
    metres: Floats  # (5,) by shade [m]
    spread: NDArray[np.uint32]  # of curve.spread
    parts: dict[causes.Cause, causes.Part]
    climb_m: float | None
    fingerprint: fingerprint.Fingerprint
    repetitions: tuple[Repetition, ...]
    mends: dict[str, int]
    remarks: tuple[str, ...]
    intervals: tuple[tuple[float, float], ...]


def gist(judged: Judgement, thresholds: Thresholds | None, warmth: float | None = None) -> Gist:
    """Take from a judgement what is kept of it.

    Parameters
    ----------
    judged : Judgement
    thresholds : Thresholds or None
        Those that judged it.
    warmth : float or None
        Mean temperature if recorded. [degrees C]

    Returns
    -------
    Gist
        The same as :func:`gist_of_pieces` gives.
    """
    found = gist_of_pieces(long_lines.cut(judged), thresholds, warmth)
    return replace(
        found,
        repetitions=judged.repetitions,
        mends=dict(judged.mends),
        remarks=judged.remarks,
        intervals=judged.intervals,
    )


def gist_of_pieces(
    pieces: Iterable[Judgement], thresholds: Thresholds | None, warmth: float | None = None
) -> Gist:
    """Take what is kept from the pieces of a judgement, holding one of them at a time.

    Parameters
    ----------
    pieces : iterable of Judgement
        In order, at least one; as ``judging.judged_pieces`` gives them.
    thresholds, warmth
        As for :func:`gist`.

    Returns
    -------
    Gist
        What no piece alone shows, as a best stretch over a seam, is not in it.
    """
    told, begin = long_lines.Told(), 0
    shades: list[NDArray[np.uint8]] = []
    seconds, metres = np.zeros(5), np.zeros(5)
    spread = np.zeros(curve.BINS, dtype=np.uint32)
    parts: list[dict[causes.Cause, causes.Part]] = []
    climbs: list[float] = []
    prints: list[tuple[int, fingerprint.Fingerprint]] = []
    for piece in pieces:
        told.add(begin, piece)
        shades.append(piece.shades)
        seconds += piece.seconds_by_shade()
        metres += piece.metres_by_shade()
        spread += curve.spread(piece)
        parts.append(causes.parts(piece, thresholds, causes.causes(piece, thresholds)))
        if (climbed := climb(piece.altitude)) is not None:
            climbs.append(climbed)
        prints.append((begin, fingerprint.fingerprint(piece, warmth)))
        begin += len(piece.shades)
        del piece  # before the next one is judged
    return Gist(
        shades[0] if len(shades) == 1 else np.concatenate(shades),
        seconds,
        metres,
        spread,
        causes.together(parts),
        sum(climbs) if climbs else None,
        fingerprint.together(prints),
        tuple(told.repetitions),
        told.mends,
        tuple(told.remarks),
        told.intervals,
    )


def climb(altitude: ArrayLike) -> float | None:
    """Metres climbed, from altitude calmed over half a minute with steps under 2 m left out.

    Parameters
    ----------
    altitude : array_like, shape (n,)
        One value a second, NaN where unknown. [m]

    Returns
    -------
    float or None
        None where less than a minute of it is known. [m]
    """
    known = np.asarray(altitude, dtype=np.float64)
    known = known[np.isfinite(known)]
    if len(known) < 60:
        return None
    calm = moving_mean(known, 31)
    total, low = 0.0, float(calm[0])
    for height in calm[::5].tolist():
        if height < low:
            low = height
        elif height - low >= 2.0:
            total += height - low
            low = height
    return total

"""The shape of a stretch's distribution: classes and index three ways, and the curves."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from tercet.domain import DatedThresholds
from tercet.engine import curve, distribution
from tercet.engine.curve import Curve
from tercet.language import tr
from tercet.library import counted
from tercet.library.engine_words import worded
from tercet.library.figures import Figures, Span
from tercet.library.views import Five
from tercet.store import queries
from tercet.store.database import Store

#: A curve needs so much running. [s]
CURVE_S = 3 * 3600.0


@dataclass(frozen=True)
class Shape:
    """One way of counting: the amounts, their shares, the class and the index."""

    by: str  # time, distance, sessions
    amounts: tuple[float, float, float]
    shares: tuple[float, float, float] | None  # None where nothing was judged
    structure: str
    index: float | None
    polarised: bool

    @property
    def words(self) -> str:
        """The class in words: an index alone makes nothing polarised."""
        if self.shares is None:
            return tr("nothing judged")
        if self.structure == "polarised" and not self.polarised:
            return tr("between polarised and pyramidal")
        return tr("no class: shares tie") if self.structure == "none" else worded(self.structure)


@dataclass(frozen=True, eq=False)
class Drawn:
    """A stretch's curves; ``run`` is None under three hours of judged running."""

    span: Span
    seconds: tuple[float, float, float]
    shares: tuple[float, float, float]
    run: Curve | None
    wanted: Curve
    arc: Curve


def shapes(span: Span) -> tuple[Shape, Shape, Shape]:
    """Class and index of a stretch by time, by distance and by sessions."""
    # Plain sums: turning thousands of tuples into arrays takes longer than adding them.
    judged = [s for s in (run.seconds for run in span.runs) if s[0] + s[1] + s[2] > 0]
    sessions = np.array(counted.sessions(span.runs), dtype=np.float64)
    return (
        shape("time", _sums(judged)),
        shape("distance", _sums([run.metres for run in span.runs])),
        shape("sessions", sessions),
    )


def _sums(rows: Sequence[Five]) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    columns = list(zip(*rows, strict=True))[:3] if rows else ((0.0,), (0.0,), (0.0,))
    return np.array([math.fsum(column) for column in columns])


def shape(by: str, amounts: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> Shape:
    """Class and index of three amounts."""
    a, b, c = amounts.tolist()
    if a + b + c <= 0:
        return Shape(by, (a, b, c), None, "none", None, False)
    total = a + b + c
    order, index = distribution.structure(amounts), distribution.polarization_index(amounts)
    polarised = order == "polarised" and (index or 0.0) > distribution.POLARISED_ABOVE
    return Shape(by, (a, b, c), (a / total, b / total, c / total), order, index, polarised)


def drawn(span: Span, figures: Figures, ratio: float) -> Drawn | None:
    """The curves of a stretch; None where nothing was judged.

    Parameters
    ----------
    span : Span
    figures : Figures
        Holding the stretch's runs.
    ratio : float
        LT2 speed over LT1 speed of the runner.
    """
    counts = figures.spread_of(span.runs)
    total = float(counts.sum())
    if total <= 0:
        return None
    a, b, c = curve.by_shade(counts).tolist()
    return Drawn(
        span,
        (a, b, c),
        (a / total, b / total, c / total),
        curve.smooth(counts, ratio) if total >= CURVE_S else None,
        _wanted(span.shares, ratio),
        curve.arc(ratio),
    )


@lru_cache(maxsize=64)
def _wanted(shares: tuple[float, float, float], ratio: float) -> Curve:
    return curve.wanted(shares, ratio)


def in_force_now(store: Store) -> DatedThresholds | None:
    """The latest thresholds, whose paces stand at the boundaries."""
    entries = queries.thresholds(store)
    return entries[-1] if entries else None


def ratio_of(entry: DatedThresholds | None) -> float:
    """LT2 speed over LT1 speed, or the usual one."""
    values = entry.values if entry is not None else None
    if values is None or not (values.lt1_speed and values.lt2_speed):
        return curve.USUAL_RATIO
    return values.lt2_speed / values.lt1_speed

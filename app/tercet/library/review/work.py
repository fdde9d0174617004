"""Repetitions of one kind across the season, and how fast they were."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean, median

import numpy as np

from tercet.language import tr
from tercet.library.review import figures
from tercet.library.review.blocks import Axis
from tercet.library.review.content import Page, Table
from tercet.library.review.pictures import DotPicture, Dots
from tercet.library.review.scope import bare
from tercet.library.views import SeasonView
from tercet.store import packing, queries, review_queries
from tercet.store.database import Store
from tercet.units import METRES

#: A kind is shown across the season from this many sessions on.
LEAST_SESSIONS = 3
#: Kinds of this length are shown before shorter and longer ones. [m]
MIDDLING_M = (150.0, 1300.0)
#: Repetitions further than this from their session's middle length are of another kind.
ALIKE = 0.25


@dataclass(frozen=True)
class Set:
    """The main set of one session: its kind in words, and its repetitions [m, s, m/s]."""

    run_id: int
    day: date
    kind: str
    metres: tuple[float, ...]
    seconds: tuple[float, ...]
    speeds: tuple[float, ...]
    recovery: float | None  # median [s]

    @property
    def speed(self) -> float:
        """Mean speed of the set [m/s]."""
        return sum(self.metres) / sum(self.seconds)


def sets(store: Store, view: SeasonView) -> list[Set]:
    """The main sets of a season's running, oldest first."""
    out = []
    with_sets = [s for s in view.sessions if s.repetitions and s.sport == "running"]
    kept = review_queries.repetitions(store, [session.id for session in with_sets])
    for session in with_sets:
        found = json.loads(kept.get(session.id, "[]"))
        kind = session.repetitions.partition("\N{MULTIPLICATION SIGN} ")[2]
        if not kind or not found:
            continue
        out += _main_set(session.id, session.day, kind, found)
    return out


def _main_set(run_id: int, day: date, kind: str, found: Sequence[dict[str, float]]) -> list[Set]:
    by = "duration_s" if kind.endswith(("min", " s")) else "distance_m"
    middle = median([rep[by] for rep in found])
    alike = [
        rep
        for rep in found
        if rep["distance_m"] > 0.0
        and rep["duration_s"] > 0.0
        and abs(rep[by] - middle) <= ALIKE * middle
    ]
    if not alike:
        return []
    metres = [float(rep["distance_m"]) for rep in alike]
    seconds = [float(rep["duration_s"]) for rep in alike]
    rests = [float(rep["recovery_s"]) for rep in alike if rep.get("recovery_s") is not None]
    return [
        Set(
            run_id,
            day,
            kind,
            tuple(metres),
            tuple(seconds),
            tuple([m / s for m, s in zip(metres, seconds, strict=True)]),
            median(rests) if rests else None,
        )
    ]


def repetitions(found: Sequence[Set], view: SeasonView, units: str) -> Page:
    """The kind run most often: every repetition a dot, faster is higher."""
    name = tr("Repetitions")
    kinds: dict[str, list[Set]] = defaultdict(list)
    for item in found:
        kinds[item.kind].append(item)
    rows = tuple(
        (
            figures.short_day(item.day),
            f"{len(item.metres)} \N{MULTIPLICATION SIGN} {item.kind}",
            figures.duration(fmean(item.seconds)),
            f"{fmean(item.metres):.0f} m",
            figures.pace(item.speed, units),
            figures.NOTHING if item.recovery is None else figures.duration(item.recovery),
        )
        for item in found
    )
    table = Table(
        (
            tr("day"),
            tr("set"),
            tr("time"),
            tr("length"),
            tr("pace"),
            tr("recovery", "rest between"),
        ),
        rows,
        frozenset({0, 1}),
        tuple((item.run_id,) for item in found),
    )
    enough = [items for items in kinds.values() if len(items) >= LEAST_SESSIONS]
    often = max(enough, key=lambda items: (_middling(items), len(items)), default=[])
    if not often:
        return Page(
            "repetitions", name, name, "", None, table,
            missing=tr("This page needs three sessions with repetitions of one kind."),
        )  # fmt: skip
    kind = often[0].kind
    first, last = often[0].speed, often[-1].speed
    before, after = figures.pace(first, units), figures.pace(last, units)
    if before == after:
        title = tr("The {kind} repetitions stayed at {pace}", kind=kind, pace=after)
    else:
        title = tr(
            "The {kind} repetitions went from {before} to {after}",
            kind=kind,
            before=before.partition(" ")[0],
            after=after,
        )
    speeds = [speed for item in often for speed in item.speeds]
    axis = Axis(view.blocks)
    apart = len(axis.spans) > 1
    return Page(
        "repetitions",
        name,
        title,
        tr(
            "Every dot is one of the {n} sessions of {kind}; faster is higher. The bar is a "
            "session's mean.",
            n=len(often),
            kind=kind,
        ),
        DotPicture(
            tuple(
                Dots(
                    axis.at(item.day.toordinal()),
                    item.speeds,
                    item.speed,
                    figures.pace(item.speed, units),
                    found.index(item),
                )
                for item in often
            ),
            pace_marks(min(speeds), max(speeds), units),
            tuple(
                (
                    axis.at(b.start.toordinal()),
                    axis.at(b.end.toordinal()) + 1.0,
                    bare(b) if apart else b.name,
                )
                for b in view.blocks
            ),
        ),
        table,
    )


def _middling(items: Sequence[Set]) -> bool:
    """Whether a kind tells more than strides, which stay alike, or long tempo pieces."""
    low, high = MIDDLING_M
    return low <= fmean([metre for item in items for metre in item.metres]) <= high


def fastest(store: Store, run_id: int, metres: float) -> float | None:
    """Shortest time in which a run covered a distance [s]; None without its distance by time."""
    row = queries.run(store, run_id)
    if row is None:
        return None
    packed = queries.streams(store, row["sha256"], row["part"])
    if "time" not in packed or "distance" not in packed:
        return None
    stream = packing.unpack_streams(packed)[1]["distance"]
    far = np.maximum.accumulate(stream.values)
    if len(far) < 2 or far[-1] - far[0] < metres:
        return None
    starts = far <= far[-1] - metres
    ends = np.interp(far[starts] + metres, far, stream.time)
    return float((ends - stream.time[starts]).min())


def pace_marks(slow: float, fast: float, units: str) -> tuple[tuple[float, str], ...]:
    """Three to six round paces between two speeds, as speed and words."""
    unit = METRES[units]
    low, high = unit / fast, unit / slow
    for step in (5, 10, 15, 20, 30, 60, 120, 300):
        count = int(high // step) - int(-(-low // step)) + 1
        if count <= 5:
            first = int(-(-low // step)) * step
            paces = range(first, int(high) + 1, step)
            return tuple((unit / pace, figures.pace(unit / pace, units)) for pace in paces)
    return ()

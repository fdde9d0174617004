"""What is kept about each run of a stretch of the season, ready to be summed: no judging anew."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, NamedTuple
from weakref import WeakKeyDictionary

import numpy as np
from numpy.typing import NDArray

from tercet import week_days
from tercet.domain import Changes
from tercet.engine.causes import Cause, Part
from tercet.engine.curve import BINS
from tercet.language import tr
from tercet.library.held import HeldRuns
from tercet.library.views import BlockView, SeasonView, SessionView
from tercet.store import season_queries
from tercet.store.database import Store

#: Words in a session's name by which its moderate running was meant.
_MEANT = re.compile(
    r"\b(tempo|threshold|progressi\w+|steady|moderate|race|marathon pace|cruise|time trial)\b", re.I
)
#: Planned moderate running of this much makes what was run of it meant. [s]
_PLANNED_S = 60.0


@dataclass(frozen=True)
class Span:
    """A block or a whole season, with its running; ``key`` tells it from others."""

    key: str
    name: str
    kind: str
    start: date
    end: date
    runs: tuple[SessionView, ...]
    meant: frozenset[int]  # runs whose moderate running was set out for
    shares: tuple[float, float, float]  # wanted easy, moderate, hard
    block_id: int | None = None

    @property
    def weeks(self) -> int:
        """Number of weeks, cut ones whole."""
        return len(week_days.starts(self.start, self.end))


@dataclass(frozen=True, eq=False)
class Figures:
    """Kept figures of runs by id; ``spread`` has one row a run, in the order of ``rows``."""

    told: dict[int, dict[str, list[float | None]]]  # as kept; only runs with moderate seconds
    meant: dict[int, bool]  # where the runner has said so, or not so
    untold: frozenset[int]  # judged before causes were kept
    places: dict[int, str]
    rows: dict[int, int]
    spread: NDArray[np.uint32]  # (n, 60) [s]

    def parts(self, run: SessionView, meant: bool) -> dict[Cause, Part]:
        """A run's moderate seconds by cause; the runner's own word goes before ``meant``."""
        found = {
            Cause[name]: Part(seconds or 0.0, *(math.nan if v is None else v for v in speeds))
            for name, (seconds, *speeds) in self.told.get(run.id, {}).items()
        }
        if not self.meant.get(run.id, meant) or not found:
            return found
        return {Cause.MEANT: Part(sum(p.seconds for p in found.values()), math.nan, math.nan)}

    def spread_of(self, runs: Iterable[SessionView]) -> NDArray[np.float64]:
        """Seconds by intensity of these runs, shape (60,)."""
        at = [self.rows[run.id] for run in runs if run.id in self.rows]
        return self.spread[at].sum(axis=0, dtype=np.float64) if at else np.zeros(BINS)


def running_of(block: BlockView) -> tuple[SessionView, ...]:
    """The running sessions of a block, oldest first."""
    return tuple(
        session
        for week in block.weeks
        for day in week.days
        for session in day
        if session.sport == "running"
    )


def meant_runs(view: SeasonView) -> frozenset[int]:
    """Runs whose moderate running was set out for: races, by name, or by what was planned."""
    races = {race.day for race in view.races}
    found = set()
    for block in view.blocks:
        for week in block.weeks:
            for item in (item for day in week.planned for item in day):
                if item.run_id is not None and item.seconds[1] >= _PLANNED_S:
                    found.add(item.run_id)
            for session in (session for day in week.days for session in day):
                if session.seconds[1] > 0 and (
                    session.kind == "race" or session.day in races or _MEANT.search(session.name)
                ):
                    found.add(session.id)
    return frozenset(found)


def spans(view: SeasonView) -> list[Span]:
    """The whole season first, then its blocks, oldest first; those without runs left out."""
    meant = meant_runs(view)
    blocks = [
        Span(
            str(block.id) if block.id is not None else block.start.isoformat(),
            block.name,
            block.kind,
            block.start,
            block.end,
            runs,
            meant,
            block.shares,
            block.id,
        )
        for block in view.blocks
        if (runs := running_of(block))
    ]
    if not blocks:
        return []
    every = tuple(run for span in blocks for run in span.runs)
    whole = Span(
        "season", tr("Whole season"), "season", blocks[0].start, blocks[-1].end, every, meant,
        (0.8, 0.05, 0.15),
    )  # fmt: skip
    return [whole, *blocks]


def span_at(found: Sequence[Span], day: date) -> Span | None:
    """The block that holds a day, else the last one begun before it, else the first."""
    blocks = [span for span in found if span.key != "season"]
    begun = [span for span in blocks if span.start <= day]
    return begun[-1] if begun else next(iter(blocks), None)


def read(store: Store) -> Figures:
    """What is kept of all runs, the same object as long as nothing of it was touched."""
    held = _kept.of(store)
    before = _figures.get(store)
    if before is not None and before[0] is held:
        return before[1]
    found = Figures(
        {number: item.told for number, item in held.items() if item.told},
        {number: item.meant for number, item in held.items() if item.meant is not None},
        frozenset(number for number, item in held.items() if item.told is None),
        {number: item.place for number, item in held.items() if item.place},
        {number: k for k, number in enumerate(held)},
        np.frombuffer(b"".join(item.spread for item in held.values()), dtype="<u4").reshape(
            len(held), BINS
        ),
    )
    _figures[store] = held, found
    return found


class _Kept(NamedTuple):
    """What is kept of one run; ``told`` is None if it was judged before causes were kept."""

    told: dict[str, list[float | None]] | None
    meant: bool | None
    place: str
    spread: bytes


def _read(store: Store, ids: Sequence[int] | None) -> dict[int, _Kept]:
    rows = season_queries.figures(store, ids)
    # One text of all: reading thousands of short ones takes longer.
    told: list[Any] = json.loads(f"[{','.join(row[3] or 'null' for row in rows)}]")
    empty = bytes(4 * BINS)
    return {
        number: _Kept(entry, None if said is None else bool(said), place or "", spread or empty)
        for (number, said, place, _, spread), entry in zip(rows, told, strict=True)
    }


_kept = HeldRuns(_read)
_figures: WeakKeyDictionary[Store, tuple[Mapping[int, _Kept], Figures]] = WeakKeyDictionary()


def set_meant(store: Store, run_id: int, meant: bool | None) -> Changes:
    """Say whether a run's moderate running was meant; None leaves it to name and plan."""
    step = tr("Say what was meant")
    with store.atomic(step):
        store.put("run", {"id": run_id, "meant": None if meant is None else int(meant)})
    return Changes(runs=True, step=step)

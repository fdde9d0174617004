"""The repetition book as the screens show it: fast metres by week and length, and remarks."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from tercet import week_days
from tercet.engine.repetition_book import (
    CLASSES,
    LONG,
    Set,
    in_one_run,
    metres_by_class,
    sets_of,
)
from tercet.language import month, tr
from tercet.library.held import HeldRuns
from tercet.library.views import SeasonView
from tercet.store import plan_queries
from tercet.store.database import Store


@dataclass(frozen=True)
class BookSet:
    """Repetitions of one length in one run."""

    run_id: int
    day: date
    words: str
    reps: Set


@dataclass(frozen=True)
class BookWeek:
    """A week, or the part of it in one block; sets in the order of their days."""

    first_day: date
    sets: tuple[BookSet, ...]

    def of_length(self, place: int) -> tuple[BookSet, ...]:
        """The sets of one length."""
        return tuple(item for item in self.sets if item.reps.length == place)


@dataclass(frozen=True)
class BookBlock:
    """A block's weeks that hold repetitions, and its fast metres by length."""

    name: str
    kind: str
    weeks: tuple[BookWeek, ...]
    metres: tuple[float, ...]
    current: bool
    years: str = ""  # "2026", or "2025/26" for a block over New Year


@dataclass(frozen=True)
class Remark:
    """Something pointed out: one sentence, and the run to open."""

    text: str
    run_id: int
    day: date


@dataclass(frozen=True)
class Book:
    """The whole book, oldest block first."""

    blocks: tuple[BookBlock, ...]
    remarks: tuple[Remark, ...]

    @property
    def metres(self) -> float:
        """All fast metres."""
        return sum(sum(block.metres) for block in self.blocks)


def book(store: Store, view: SeasonView) -> Book:
    """Gather all fast repetitions of the store under the season's blocks.

    Parameters
    ----------
    store : Store
    view : SeasonView
        For its blocks, with the unplanned stretches between them.

    Returns
    -------
    Book
        Long repetitions in a base block, and weeks with nearly all fast metres in one run, are
        remarked, latest first (common practice, no source).
    """
    runs = sorted(_sets.of(store).items(), key=lambda run: (run[1].start, run[0]))
    sets = [item for _, run in runs for item in run.sets]
    sets.sort(key=lambda item: item.day)
    days = [item.day for item in sets]
    blocks, remarks = [], []
    for block in view.blocks:
        inside = sets[bisect_left(days, block.start) : bisect_right(days, block.end)]
        by_week: dict[date, list[BookSet]] = {}
        for item in inside:
            by_week.setdefault(week_days.start_of(item.day), []).append(item)
        made = tuple(
            BookWeek(first_day, tuple(items)) for first_day, items in sorted(by_week.items())
        )
        if made:
            current = block.start <= view.today <= block.end
            metres = metres_by_class([item.reps for item in inside])
            blocks.append(BookBlock(block.name, block.kind, made, metres, current, _years(made)))
        for week in made:
            over = week.first_day < week_days.start_of(view.today)
            remarks += _remarks(block.kind, week, over=over)
    return Book(tuple(blocks), tuple(reversed(remarks)))


class _Run(NamedTuple):
    start: float  # UTC [s]
    sets: tuple[BookSet, ...]


def _read(store: Store, ids: Sequence[int] | None) -> dict[int, _Run]:
    return {
        run_id: _Run(start, tuple(BookSet(run_id, day, said, item) for item in sets_of(found)))
        for run_id, start, day, said, found in plan_queries.repetitions(store, ids)
    }


_sets = HeldRuns(_read)


def _years(weeks: tuple[BookWeek, ...]) -> str:
    days = [item.day.year for week in weeks for item in week.sets]
    first, last = min(days), max(days)
    return str(first) if first == last else f"{first}/{last % 100:02d}"


def _remarks(kind: str, week: BookWeek, *, over: bool) -> list[Remark]:
    out = []
    if kind == "base":
        for item in week.of_length(LONG):
            count = len(item.reps.metres)
            mean = item.reps.total_m / count
            text = tr(
                "{n} × {metres} m on {day} {month} stands in a base block; "
                "common practice keeps fast ones at {longest} or shorter there.",
                n=count,
                metres=round(mean / 10) * 10,
                day=item.day.day,
                month=month(item.day.month),
                longest=CLASSES[LONG - 1],
            )
            out.append(Remark(text, item.run_id, item.day))
    by_run: dict[int, float] = {}
    for item in week.sets:
        by_run[item.run_id] = by_run.get(item.run_id, 0.0) + item.reps.total_m
    share = in_one_run(list(by_run.values()))
    if share is not None and over:
        run_id = max(by_run, key=lambda key: by_run[key])
        day = next(item.day for item in week.sets if item.run_id == run_id)
        text = tr(
            "{percent} % of the fast metres in the week of {day} {month} were run on one day; "
            "spread, each day stays lighter.",
            percent=round(share * 100),
            day=week.first_day.day,
            month=month(week.first_day.month),
        )
        out.append(Remark(text, run_id, day))
    return out

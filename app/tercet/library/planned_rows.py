"""Planned sessions as views, read once and then kept: an edit makes only its own days anew."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from weakref import WeakKeyDictionary

from tercet.domain import DatedThresholds, Planned
from tercet.engine.matching import amount_of, pair
from tercet.library.dated import in_force
from tercet.library.plans import understand
from tercet.library.views import PlannedView, SessionView
from tercet.store import plan_queries, queries
from tercet.store.database import Store

Views = tuple[PlannedView, ...]
Day = tuple[tuple[Planned, ...], Sequence[SessionView], Views]


@dataclass(frozen=True)
class _Held:
    """What is planned as of a mark of the store, and each day as it was last made."""

    mark: tuple[int, int]
    today: date
    thresholds: list[DatedThresholds]
    entries: dict[int, Planned]
    by_day: dict[date, tuple[Planned, ...]]
    days: dict[date, Day]


_held: WeakKeyDictionary[Store, _Held] = WeakKeyDictionary()


def planned_views(
    store: Store, running: Mapping[date, Sequence[SessionView]], today: date
) -> dict[date, Views]:
    """Planned sessions by day, each with the run that was made for it.

    Parameters
    ----------
    store : Store
    running : mapping of date to sequence of SessionView
        All running by local day.
    today : date
    """
    held = _held.get(store)
    mark, touched = store.touched_since(held.mark if held is not None else None)
    entries: dict[int, Planned]
    if held is None or touched is None:
        entries = {entry.id or 0: entry for entry in plan_queries.planned(store)}
        by_day = _by_day(list(entries.values()))
        thresholds, days = queries.thresholds(store), {}
    else:
        entries, by_day, days = held.entries, held.by_day, held.days
        ids = {int(str(key)) for table, key in touched if table == "planned"}
        if ids:
            entries, by_day = _mended(store, held, ids)
        thresholds = held.thresholds
        if any(table == "threshold" for table, _ in touched):
            thresholds, days = queries.thresholds(store), {}
        if today != held.today:
            days = {}
    made: dict[date, Day] = {}
    for day, items in by_day.items():
        run = running.get(day, ())
        kept = days.get(day)
        if kept is None or kept[0] is not items or kept[1] != run:
            kept = items, run, _views_of_day(items, run, thresholds, today)
        made[day] = kept
    _held[store] = _Held(mark, today, thresholds, entries, by_day, made)
    return {day: views for day, (_, _, views) in made.items()}


def _by_day(entries: Sequence[Planned]) -> dict[date, tuple[Planned, ...]]:
    """Entries by day, in their order."""
    found: dict[date, list[Planned]] = {}
    for entry in sorted(entries, key=lambda item: (item.place, item.id or 0)):
        found.setdefault(entry.day, []).append(entry)
    return {day: tuple(items) for day, items in found.items()}


def _mended(
    store: Store, held: _Held, ids: set[int]
) -> tuple[dict[int, Planned], dict[date, tuple[Planned, ...]]]:
    """Only the touched entries read anew, and only their days put together again."""
    fresh = {entry.id or 0: entry for entry in plan_queries.planned(store, sorted(ids))}
    gone = [held.entries[number] for number in ids if number in held.entries]
    days = {entry.day for entry in (*gone, *fresh.values())}
    before = [item for day in days for item in held.by_day.get(day, ()) if item.id not in ids]
    entries = {number: e for number, e in held.entries.items() if number not in ids} | fresh
    by_day = {day: items for day, items in held.by_day.items() if day not in days}
    return entries, by_day | _by_day([*before, *fresh.values()])


def _views_of_day(
    items: Sequence[Planned],
    run: Sequence[SessionView],
    thresholds: Sequence[DatedThresholds],
    today: date,
) -> Views:
    force = in_force(thresholds, items[0].day)
    values = force.values if force is not None else None
    told = [understand(item.notation, values) for item in items]
    asked = [k for k, item in enumerate(told) if not item.rest]
    wanted = [told[k].amount for k in asked]
    found = pair(wanted, [amount_of(view.seconds) for view in run])
    made_by = {k: run[place].id for k, place in zip(asked, found, strict=True) if place is not None}
    out = []
    for k, (item, sense) in enumerate(zip(items, told, strict=True)):
        missed = "missed" if item.day < today else "to run"
        state = "rest" if sense.rest else "done" if k in made_by else missed
        out.append(
            PlannedView(
                item.id or 0,
                item.day,
                item.place,
                item.notation,
                sense.seconds,
                sense.metres,
                state,
                made_by.get(k),
                tuple(piece.text for piece in sense.unclear),
                item.note,
            )
        )
    return tuple(out)

"""The sessions of a store as views, read once and then kept: an edit reads only what it touched."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any
from weakref import WeakKeyDictionary

from tercet import language
from tercet.library import localtime, session_kinds
from tercet.library.views import SessionView
from tercet.store import queries, season_queries
from tercet.store.database import Store

#: Sums by shade of a session that was not judged.
_NOTHING = (0.0,) * 10
#: If more sessions than this were touched, all are read anew.
_FEW = 50


@dataclass(frozen=True)
class _Held:
    """Views as of a mark of the store, with what orders them, in one language."""

    spoken: str
    mark: tuple[int, int]
    races: dict[str, str]
    views: list[SessionView]
    order: dict[int, tuple[float, int]]


_held: WeakKeyDictionary[Store, _Held] = WeakKeyDictionary()


def session_views(store: Store) -> list[SessionView]:
    """All sessions, oldest first; on a race day the longest run bears the race's name."""
    held = _held.get(store)
    if held is not None and held.spoken != language.code():
        held = None  # sessions without a name are called by what they were
    mark, touched = store.touched_since(held.mark if held is not None else None)
    found = None
    if held is not None and touched is not None:
        found = held if not touched else _mended(store, held, touched, mark)
    if found is None:
        found = _all(store, mark)
    if found is not held:
        _held[store] = _Held(language.code(), mark, found.races, found.views, found.order)
    return list(found.views)


def _all(store: Store, mark: tuple[int, int]) -> _Held:
    rows = season_queries.sessions(store)
    races = {race.day.isoformat(): race.name for race in queries.races(store)}
    order = {row[0]: (row[2], row[0]) for row in rows}
    return _Held(language.code(), mark, races, _views(rows, races), order)


def _mended(
    store: Store, held: _Held, touched: Sequence[tuple[str, object]], mark: tuple[int, int]
) -> _Held | None:
    """Only the touched sessions read anew; None where more may have changed."""
    if any(table in ("race", "threshold") for table, _ in touched):
        return None
    ids = {int(str(key)) for table, key in touched if table in ("run", "judgement")}
    if len(ids) > _FEW:
        return None
    before = [view for view in held.views if view.id in ids]
    rows = season_queries.sessions(store, sorted(ids)) if ids else []
    days = {view.day.isoformat() for view in before} | {row[1] for row in rows}
    if days & held.races.keys():
        return None  # another run may now be the longest of a race day
    order = {number: key for number, key in held.order.items() if number not in ids}
    order |= {row[0]: (row[2], row[0]) for row in rows}
    views = [view for view in held.views if view.id not in ids] + _views(rows, held.races)
    views.sort(key=lambda view: order[view.id])
    return _Held(held.spoken, mark, held.races, views, order)


def _views(rows: Sequence[Any], races: dict[str, str]) -> list[SessionView]:
    longest: dict[str, tuple[float, int]] = {}
    if races:
        for number, day, _, _, _, sport, _, _, moving_s, *_ in rows:
            if day in races and sport == "running":
                longest[day] = max(longest.get(day, (0.0, 0)), (moving_s, number))
    raced = {run: races[day] for day, (_, run) in longest.items()}
    views = []
    for (number, day, start, offset, name, sport, kind, elapsed_s, moving_s, distance_m, hr_mean,
         climb_m, effort, note, clock, words, estimated, *sums) in rows:  # fmt: skip
        a, b, c, d, e, f, g, h, i, j = sums if sums[0] is not None else _NOTHING
        views.append(
            SessionView(
                number,
                date.fromisoformat(day),
                localtime.local_time(start, offset),
                name or raced.get(number) or words or session_kinds.name(sport, kind),
                sport,
                kind,
                (a, b, c, d, e),
                (f, g, h, i, j),
                elapsed_s,
                moving_s,
                distance_m,
                hr_mean,
                climb_m,
                effort,
                note,
                words or "",
                bool(estimated),
                clock,
            )
        )
    return views

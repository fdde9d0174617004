"""Answers held for each run say the same as answers read anew, whatever was done in between."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tercet.library import (
    corrections,
    counted,
    figures,
    lines,
    operations,
    repetition_book,
    season,
)
from tercet.library.library import Library
from tercet.store import queries, season_queries
from tercet.store.database import Store

DEEDS = ("effort", "meant", "word", "kind", "delete", "thresholds", "undo", "redo", "read")
HELD = (counted._told, figures._kept, lines._prints, repetition_book._sets)
DAY = date(2026, 4, 1)


def answers(store: Store) -> list[object]:
    kept = figures.read(store)
    told = [counted.behind(store, DAY, DAY + timedelta(days=d)) for d in (20, 100, 400)]
    spreads = {number: kept.spread[row].tobytes() for number, row in kept.rows.items()}
    rest = (kept.told, kept.meant, kept.untold, kept.places)
    book = repetition_book.book(store, season.season(store))
    return [told, spreads, rest, lines.stored(store), book]


def anew(store: Store) -> list[object]:
    """As a store that nobody has read yet would give them."""
    before = [(of, of._held.pop(store)) for of in HELD if store in of._held]
    found = answers(store)
    for of, kept in before:
        of._held[store] = kept
    return found


def do(store: Store, deed: str, place: int) -> None:
    ids = queries.run_ids(store)
    number = ids[place % len(ids)] if ids else 0
    if deed == "effort" and ids:
        operations.set_effort(store, number, place % 10)
    elif deed == "meant" and ids:
        figures.set_meant(store, number, bool(place % 2))
    elif deed == "word" and ids:
        corrections.shade_stretch(store, number, 600.0, 900.0, "EXH"[place % 3], "")
    elif deed == "kind" and ids:
        operations.set_kind(store, [number], ("running", "cycling")[place % 2], "")
    elif deed == "delete" and ids:
        operations.delete_runs(store, [number])
    elif deed == "thresholds":
        entries = queries.thresholds(store)
        changed = [replace(entry, estimated=bool(place % 2)) for entry in entries]
        operations.set_thresholds(store, changed, {}, step="Confirm")
    elif deed == "undo":
        operations.undo(store)
    elif deed == "redo":
        operations.redo(store)
    else:
        answers(store)


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.lists(st.tuples(st.sampled_from(DEEDS), st.integers(0, 20)), max_size=10))
def test_held_answers_are_those_read_anew(season_library: Library, deeds: list) -> None:
    for deed, place in deeds:
        season_library.call(do, deed, place)
        assert season_library.call(answers) == season_library.call(anew)


def test_an_edit_asks_only_for_the_run_it_touched(
    season_library: Library, monkeypatch: pytest.MonkeyPatch
) -> None:
    season_library.call(answers)
    asked = []
    read = season_queries.figures

    def watched(store: Store, ids=None):
        asked.append(ids)
        return read(store, ids)

    monkeypatch.setattr(season_queries, "figures", watched)
    number = season_library.call(queries.run_ids)[3]
    season_library.call(operations.set_effort, number, 4)
    season_library.call(figures.read)
    first = season_library.call(figures.read)
    assert asked == [[number]]
    assert season_library.call(figures.read) is first


def test_what_another_process_wrote_is_seen(season_library: Library) -> None:
    number = season_library.call(queries.run_ids)[3]
    assert number not in season_library.call(figures.read).meant
    with closing(sqlite3.connect(season_library.folder / "tercet.db")) as other:
        other.execute("UPDATE run SET meant = 1 WHERE id = ?", (number,))
        other.commit()
    assert season_library.call(figures.read).meant[number] is True

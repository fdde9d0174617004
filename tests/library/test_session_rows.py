"""Views that are kept say the same as views read anew, whatever was done in between."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tercet import language
from tercet.domain import Race
from tercet.library import operations, session_rows
from tercet.library.library import Library
from tercet.library.session_rows import session_views
from tercet.store import queries
from tercet.store.database import Store

DEEDS = ("note", "effort", "kind", "delete", "races", "thresholds", "undo", "redo", "read")


def anew(store: Store) -> list:
    """As a store that nobody has read yet would give them."""
    kept = session_rows._held.pop(store, None)
    found = session_views(store)
    if kept is not None:
        session_rows._held[store] = kept
    return found


def do(store: Store, deed: str, place: int) -> None:
    ids = queries.run_ids(store)
    number = ids[place % len(ids)] if ids else 0
    if deed == "note" and ids:
        operations.set_note(store, number, f"said {place}")
    elif deed == "effort" and ids:
        operations.set_effort(store, number, place % 10)
    elif deed == "kind" and ids:
        operations.set_kind(store, [number], ("running", "cycling")[place % 2], "")
    elif deed == "delete" and ids:
        operations.delete_runs(store, [number])
    elif deed == "races":
        days = sorted({view.day for view in session_views(store)}) or [date(2026, 5, 1)]
        race = Race(days[place % len(days)], f"Race {place}")
        operations.set_plan(store, queries.blocks(store), [race])
    elif deed == "thresholds":
        entries = queries.thresholds(store)
        changed = [replace(entry, estimated=bool(place % 2)) for entry in entries]
        operations.set_thresholds(store, changed, {}, step="Confirm")
    elif deed == "undo":
        operations.undo(store)
    elif deed == "redo":
        operations.redo(store)
    else:
        session_views(store)


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.lists(st.tuples(st.sampled_from(DEEDS), st.integers(0, 20)), max_size=12))
def test_kept_views_are_those_read_anew(season_library: Library, deeds: list) -> None:
    for deed, place in deeds:
        season_library.call(do, deed, place)
        assert season_library.call(session_views) == season_library.call(anew)


def test_an_edit_reads_only_what_it_touched(
    season_library: Library, monkeypatch: pytest.MonkeyPatch
) -> None:
    season_library.call(session_views)
    asked = []
    read = session_rows.season_queries.sessions

    def watched(store: Store, ids=None):
        asked.append(ids)
        return read(store, ids)

    monkeypatch.setattr(session_rows.season_queries, "sessions", watched)
    number = season_library.call(queries.run_ids)[3]
    season_library.call(operations.set_note, number, "windy")
    assert next(v for v in season_library.call(session_views) if v.id == number).note == "windy"
    assert asked == [[number]]
    season_library.call(session_views)
    assert asked == [[number]]


def test_sessions_without_a_name_are_called_in_the_language_in_use(season_library: Library) -> None:
    assert "Run" in {view.name for view in season_library.call(session_views)}
    try:
        language.use("de")
        names = {view.name for view in season_library.call(session_views)}
    finally:
        language.use(language.SOURCE)
    assert "Lauf" in names and "Run" not in names
    assert "Run" in {view.name for view in season_library.call(session_views)}

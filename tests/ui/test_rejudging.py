"""Runs of an older method are judged anew behind the open window."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from threading import Event
from typing import Any

from PySide6.QtCore import Qt

from tercet.engine.judging import METHOD
from tercet.library import judging_anew, operations
from tercet.library.library import Library
from tercet.store import queries
from tercet.store.database import Store
from tercet.ui.window import MainWindow

Open = Callable[..., MainWindow]


def sums(library: Library) -> list[list[float]]:
    return [[row[name] for name in queries.SECONDS] for row in library.call(queries.sessions)]


def aged(store: Store) -> None:
    """What an older version may have left: other sums, under its own number."""
    with store.atomic("Age", kept=False):
        for run_id in queries.run_ids(store):
            store.put("judgement", {"run_id": run_id, "method": METHOD - 1, "easy_s": 1.0})


def test_runs_of_an_older_method_are_judged_anew_behind_the_window(
    qtbot, some_library: Library, open_window: Open
) -> None:
    right = sums(some_library)
    run_id = some_library.call(queries.run_ids)[0]
    some_library.call(operations.set_note, run_id, "calf felt tight")
    before = some_library.undo_names()
    some_library.call(aged)
    assert sums(some_library) != right
    window = open_window(some_library)
    assert window.foot.isVisible()
    qtbot.waitUntil(lambda: sums(some_library) == right, timeout=20_000)
    qtbot.waitUntil(lambda: not window._rejudging.part.isVisible(), timeout=10_000)
    assert some_library.call(judging_anew.waiting) == 0
    assert some_library.undo_names() == before
    view = window.view
    assert view is not None
    qtbot.waitUntil(lambda: sum_shown(window) == round(sum(row[0] for row in right)))


def sum_shown(window: MainWindow) -> int:
    view = window.view
    return round(sum(run.seconds[0] for run in view.sessions)) if view is not None else -1


def test_stopped_by_hand_it_goes_on_at_the_next_start(
    qtbot, some_library: Library, open_window: Open, monkeypatch: Any
) -> None:
    some_library.call(aged)
    count = some_library.call(judging_anew.waiting)
    window: list[MainWindow] = []
    kept, free = judging_anew._keep, Event()

    def keep(store: Store, batch: Any) -> int:
        free.wait(10)
        return kept(store, batch)

    with monkeypatch.context() as patch:
        patch.setattr(judging_anew, "BATCH", 1)
        patch.setattr(judging_anew, "_keep", keep)
        window.append(open_window(some_library))
        part = window[0]._rejudging
        qtbot.waitUntil(part.stop.isVisible, timeout=10_000)
        qtbot.mouseClick(part.stop, Qt.MouseButton.LeftButton)
        free.set()
        qtbot.waitUntil(lambda: not part.running, timeout=10_000)
        assert "next start" in part.told.text()
        window[0].close()
    left = some_library.call(judging_anew.waiting)
    assert 0 < left <= count
    again = open_window(some_library)
    qtbot.waitUntil(lambda: some_library.call(judging_anew.waiting) == 0, timeout=20_000)
    assert again.isVisible()


def test_thresholds_without_their_judgements_are_caught_up_with_and_so_is_their_undo(
    qtbot, some_library: Library, open_window: Open
) -> None:
    """As an import leaves them that was stopped while it judged."""
    before = sums(some_library)
    window = open_window(some_library)
    qtbot.waitUntil(lambda: window.view is not None)
    (entry, *_) = some_library.call(queries.thresholds)
    slower = replace(entry.values, lt1_speed=2.0, lt2_speed=2.4, lt1_hr=None, lt2_hr=None)
    changed = replace(entry, values=slower, id=None)
    window.acts.do(partial(operations.set_thresholds, step="Lines"), [changed], {})
    qtbot.waitUntil(lambda: sums(some_library) != before, timeout=20_000)
    qtbot.waitUntil(lambda: not window._rejudging.running, timeout=20_000)
    assert some_library.call(judging_anew.waiting) == 0
    qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: sums(some_library) == before, timeout=20_000)


def test_a_run_touched_meanwhile_keeps_what_was_said(some_library: Library) -> None:
    some_library.call(aged)
    run_id = some_library.call(queries.run_ids)[0]
    given = some_library.call(judging_anew._given, run_id)
    assert given is not None
    row = judging_anew.tried_again(*given[1])
    assert row is not None
    some_library.call(operations.set_effort, run_id, 7)  # judged by this, now
    late = {**row, "easy_s": 99_999.0}
    assert some_library.call(judging_anew._keep, [(run_id, given[0], late)]) == 0
    assert all(seconds[0] < 99_999.0 for seconds in sums(some_library))

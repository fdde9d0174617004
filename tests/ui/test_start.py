"""What the start may load before the first picture, and what that picture shows."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from datetime import date

import pytest

from tercet.library import operations
from tercet.library.library import Library
from tercet.ui import glance, pages
from tercet.ui.window import MainWindow

HEAVY = ("numpy", "pandas", "pyqtgraph", "multiprocessing", "fitdecode", "lark")


def test_the_window_and_the_store_load_nothing_heavy() -> None:
    asked = (
        "import sys; import tercet.__main__, tercet.library.library, tercet.ui.application; "
        f"print([name for name in {HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True)
    assert done.stdout.strip() == "[]"


def test_all_is_shown_without_the_readers_of_files_and_without_reading_sources() -> None:
    asked = (
        "import sys, linecache; from importlib import import_module; "
        "from tercet.ui.loading import HEAVY; list(map(import_module, HEAVY)); "
        "print([name for name in ('tercet.formats', 'fitdecode') if name in sys.modules], "
        "[name for name in linecache.cache if 'tercet' in name or 'pyqtgraph' in name])"
    )
    done = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True)
    assert done.stdout.strip() == "[] []"


@pytest.fixture
def library(some_library: Library) -> Library:
    return some_library


@pytest.fixture
def seen(qtbot, open_window, library) -> Library:
    """A library whose season was in a window that is closed again."""
    window = open_window()
    window.season_page.sheet.select_session(window.view.sessions[1].id)
    window.close()
    return library


def test_the_first_picture_is_the_sheet_as_it_was_left(qtbot, seen) -> None:
    kept = glance.read(seen.folder, date(2026, 7, 1))
    assert kept is not None and kept.season.today == date(2026, 7, 1)
    window = MainWindow(seen)
    qtbot.addWidget(window)
    shown = []
    sheet = window.season_page.sheet

    def first() -> None:
        # Before anything was loaded or read:
        assert not window.season_page.loaded and window.view is None
        shown.append((sheet.selected_session(), sheet.verticalScrollBar().value()))
        shown.append([sheet.columnWidth(k) for k in range(8)])

    window.sheet_shown.connect(first)
    with qtbot.waitSignal(window.season_shown, timeout=20_000):
        window.show()
    assert shown[0] == (window.view.sessions[1].id, sheet.verticalScrollBar().value())
    assert shown[1] == [sheet.columnWidth(k) for k in range(8)]
    part = {session.id: session for session in kept.season.sessions}
    assert part == {session.id: session for session in window.view.sessions}
    window.close()


def test_what_further_pages_need_is_loaded_once_the_window_can_be_used(
    qtbot, open_window, library, tmp_path, monkeypatch
) -> None:
    (tmp_path / "needed_by_a_page.py").write_text("")
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.setattr(pages, "DIALOGS", ("needed_by_a_page",))
    open_window().close()
    monkeypatch.setattr(pages, "LOADED_AFTER_MS", 0)
    assert "needed_by_a_page" not in sys.modules  # closed too soon
    window = open_window()
    qtbot.waitUntil(lambda: "needed_by_a_page" in sys.modules)
    window.further._loading.wait()  # a module is listed before it is whole
    monkeypatch.delitem(sys.modules, "needed_by_a_page")


def test_after_any_change_of_the_store_the_glance_is_not_believed(seen) -> None:
    run = seen.call(lambda store: store.rows("SELECT id FROM run"))[0]["id"]
    seen.call(operations.set_note, run, "hot")
    assert glance.read(seen.folder, date.today()) is None


def test_a_damaged_glance_is_left_aside(seen) -> None:
    for text in ("", "{", '{"stamp":"x"}', "[]", "\x00"):
        (seen.folder / glance.NAME).write_text(text, "utf-8")
        assert glance.read(seen.folder, date.today()) is None, text


def test_a_glance_cut_anywhere_is_left_aside(seen) -> None:
    place = seen.folder / glance.NAME
    whole = place.read_text("utf-8")
    assert glance.read(seen.folder, date.today()) is not None
    for at in range(0, len(whole), max(1, len(whole) // 50)):
        place.write_text(whole[:at], "utf-8")
        assert glance.read(seen.folder, date.today()) is None


def test_a_large_store_is_opened_without_reading_all_of_it(tmp_path) -> None:
    from tercet.store import database
    from tercet.store.database import Store

    Store(tmp_path).close()
    db = sqlite3.connect(tmp_path / "tercet.db")
    db.executemany(
        "INSERT INTO stream VALUES (?, 0, 'speed', zeroblob(3000))",
        [(f"{k:064x}",) for k in range(3000)],
    )
    db.commit()
    db.close()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(database, "CHECKED_S", 0.0)
        store = Store(tmp_path)  # as if it took too long
    store.purge()  # no file is known by these contents
    assert store.rows("SELECT COUNT(*) AS n FROM stream")[0]["n"] == 0
    store.close()

"""Finding runs in the window, and doing one thing with several of them."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from tests.ui.hands import by_key
from tests.ui.test_window import imported

from tercet.library import season

# The offscreen platform says this of every menu.
pytestmark = pytest.mark.qt_log_ignore("does not support", extend=True)


@pytest.fixture
def window(qtbot, open_window, some_logs):
    made = open_window()
    imported(qtbot, made, some_logs)
    made.show_recordings(False)
    return made


def test_ctrl_f_finds_by_typing_and_enter_goes_on(qtbot, window) -> None:
    by_key(qtbot, window, Qt.Key.Key_F)
    bar, sheet = window.season_page.search, window.season_page.sheet
    assert bar.isVisible() and bar.field.hasFocus()
    qtbot.keyClicks(bar.field, "april")
    wanted = [s.id for s in window.view.sessions if s.day.month == 4]
    assert list(bar.found) == wanted and f"{len(wanted)}" in bar.said.text()
    seen = []
    for _ in wanted:
        qtbot.keyClick(bar.field, Qt.Key.Key_Return)
        seen.append(sheet.selected_session())
    assert sorted(seen) == sorted(wanted)
    sheet.setFocus()
    qtbot.keyClick(sheet, Qt.Key.Key_N)
    assert sheet.selected_session() in wanted
    bar.field.setFocus()
    bar.field.setText("mood > 3")
    assert "cannot be compared" in bar.wrong.text() and bar.wrong.isVisible()
    assert not bar.next.isEnabled()
    qtbot.keyClick(bar.field, Qt.Key.Key_Escape)
    assert not bar.isVisible() and sheet.hasFocus()


def test_several_sessions_get_one_kind_and_go_in_one_step(qtbot, window, library) -> None:
    sheet = window.season_page.sheet
    runs = [s for s in window.view.sessions if s.sport == "running"][:3]
    sheet.choose([s.id for s in runs])
    sheet.menu_asked.emit(window.mapToGlobal(sheet.pos()))
    menu = window.findChild(type(window.season_page.sheet_menu))
    texts = [action.text() for action in menu.actions()]
    assert "Delete 3 sessions" in texts and "Open" not in texts
    kinds = next(a for a in menu.actions() if a.text() == "Kind of 3 sessions").menu()
    next(a for a in kinds.actions() if a.text() == "trail").trigger()
    menu.close()

    def kinds_now() -> set[str]:
        found = {s.id: s.kind for s in library.call(season.session_views)}
        return {found[s.id] for s in runs}

    qtbot.waitUntil(lambda: kinds_now() == {"trail"}, timeout=10_000)
    qtbot.waitUntil(lambda: not window.refreshing, timeout=10_000)
    sheet.choose([s.id for s in runs])
    by_key(qtbot, window, Qt.Key.Key_Backspace)
    gone = len(window.view.sessions) - 3
    qtbot.waitUntil(lambda: len(library.call(season.session_views)) == gone, timeout=10_000)
    assert library.undo_names()[0] == "Delete 3 sessions"

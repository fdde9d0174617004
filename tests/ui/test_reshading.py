"""Saying what a stretch was: by dragging, by keys, for the whole run."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QInputDialog
from tests.ui.test_window import imported

from tercet.library import season

# The offscreen platform says this of every menu.
pytestmark = pytest.mark.qt_log_ignore("does not support", extend=True)


@pytest.fixture
def on_page(qtbot, open_window, library, some_logs):
    window = open_window()
    imported(qtbot, window, some_logs / "2026-04-14-1843.fit")
    run = window.view.sessions[0]
    window.sessions.open(run.id)
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page, timeout=10_000)
    return window


def seconds(library):
    return library.call(season.session_views)[0].seconds


def choose(qtbot, window, text: str) -> None:
    """Trigger an entry of the open menu."""
    menu = window.session_page.stretch_menu
    qtbot.waitUntil(menu.isVisible, timeout=5_000)
    action = next(action for action in menu.actions() if action.text() == text)
    action.trigger()
    menu.close()


def test_a_dragged_stretch_is_shaded_and_undone(qtbot, on_page, library) -> None:
    window, before = on_page, seconds(library)
    chart = window.session_page.panel.chart
    begin = QPoint(int(chart.place_of(600)), chart.height() // 3)
    end = QPoint(int(chart.place_of(1200)), chart.height() // 3)
    qtbot.mousePress(chart.viewport(), Qt.MouseButton.LeftButton, pos=begin)
    middle = (begin + end) / 2
    for point in (middle, end):
        qtbot.mouseMove(chart.viewport(), point)
        drag(chart, point)
    qtbot.mouseRelease(chart.viewport(), Qt.MouseButton.LeftButton, pos=end)
    start, stop = chart.stretch
    assert start == pytest.approx(600, abs=15) and stop == pytest.approx(1200, abs=15)
    choose(qtbot, window, "Hard")
    qtbot.waitUntil(lambda: seconds(library) != before, timeout=10_000)
    assert seconds(library)[2] - before[2] == pytest.approx(stop - start, abs=60)
    panel = window.session_page.panel
    qtbot.waitUntil(lambda: "as you said" in panel.made_from.text(), timeout=10_000)
    assert "because you said so" in window.session_page.panel._why(900)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.acts.undo()
    assert seconds(library) == before


def drag(chart, point: QPoint) -> None:
    """Move with the left button held; QTest moves without buttons."""
    from PySide6.QtCore import QEvent, QPointF
    from PySide6.QtGui import QMouseEvent

    event = QMouseEvent(
        QEvent.Type.MouseMove, QPointF(point), QPointF(chart.mapToGlobal(point)),
        Qt.MouseButton.NoButton, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    QApplication.sendEvent(chart.viewport(), event)


def test_a_stretch_is_chosen_by_keys_alone(qtbot, on_page, library) -> None:
    window, chart = on_page, on_page.session_page.panel.chart
    chart.setFocus()
    qtbot.keyClick(chart, Qt.Key.Key_Home)
    qtbot.keyClick(chart, Qt.Key.Key_Space)
    for _ in range(3):
        qtbot.keyClick(chart, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert chart.stretch == (0, 181)
    qtbot.keyClick(chart, Qt.Key.Key_Return)
    choose(qtbot, window, "Leave it out")
    wanted = "Leave out 0:00 to 3:01"
    qtbot.waitUntil(lambda: library.undo_names()[0] == wanted, timeout=10_000)


def test_a_click_chooses_no_stretch_and_escape_lets_one_go(qtbot, on_page) -> None:
    chart = on_page.session_page.panel.chart
    qtbot.mouseClick(
        chart.viewport(), Qt.MouseButton.LeftButton,
        pos=QPoint(int(chart.place_of(600)), chart.height() // 3),
    )  # fmt: skip
    assert chart.stretch is None and not on_page.session_page.stretch_menu.isVisible()
    chart.choose_stretch((10, 100))
    chart.setFocus()
    qtbot.keyClick(chart, Qt.Key.Key_Escape)
    assert chart.stretch is None


def test_a_whole_run_is_said_and_the_belt_asked_for(qtbot, on_page, library, monkeypatch) -> None:
    window = on_page
    actions = {a.text(): a for a in window.session_page.head.kind.menu().actions()}
    before = seconds(library)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        actions["Count all of it as moderate"].trigger()
    assert seconds(library)[0] == seconds(library)[2] == 0.0
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        actions["Take back what was said about the shades"].trigger()
    assert seconds(library) == before
    monkeypatch.setattr(QInputDialog, "getDouble", lambda *_: (20.0, True))
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        actions["Treadmill belt speed…"].trigger()
    assert seconds(library)[2] > before[2] + 300.0

"""Every further page of the window fits, as far as words go, at all sizes and in both looks."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QApplication
from tests.ui import fit
from tests.ui.test_fit import LOOKS, filled, filled_store, settle, shown

from tercet.ui.pages import PAGES

__all__ = ["filled", "filled_store", "shown"]


@pytest.mark.parametrize(("width", "height", "scale", "dark"), LOOKS)
def test_every_further_page_fits(qtbot, shown, width, height, scale, dark) -> None:
    window = shown(width, height, scale, dark)
    wrong: dict[str, list[str]] = {}
    for entry in PAGES:
        window.show_view(entry.key)
        page = window.further.current
        assert page is not None, entry.key
        qtbot.waitUntil(lambda: window._answers.waiting == 0, timeout=20_000)
        settle(qtbot, window)
        found = [*fit.faults(page), *fit.nameless(page)]
        if window.size() != QSize(width, height):
            found.append(f"the window had to grow to {window.size()}")
        if found:
            wrong[entry.key] = found
    assert not wrong, "\n".join(f"{key}: {line}" for key, lines in wrong.items() for line in lines)


def test_f6_brings_every_pane_of_a_high_page_into_view(qtbot, shown) -> None:
    window = shown(1366, 768, 1.5, False)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    for key in ("plan", "repetitions"):
        window.show_view(key)
        qtbot.waitUntil(lambda: window._answers.waiting == 0, timeout=20_000)
        settle(qtbot, window)
        reached = set()
        for _ in range(5):
            window.next_pane()
            focus = QApplication.focusWidget()
            assert focus is not None and not focus.visibleRegion().isEmpty(), key
            reached.add(focus)
        assert {widget for widget in window.further.ring() if widget.isEnabled()} <= reached


def test_enter_brings_the_next_day_of_a_week_into_view(qtbot, shown) -> None:
    window = shown(1366, 768, 1.5, False)
    window.show_view("plan")
    qtbot.waitUntil(lambda: window._answers.waiting == 0, timeout=20_000)
    settle(qtbot, window)
    days = []
    for _ in range(4):
        window.next_pane()
        if QApplication.focusWidget() is window.further.ring()[2]:
            break
    for _ in range(6):
        focus = QApplication.focusWidget()
        assert focus is not None and not focus.visibleRegion().isEmpty()
        days.append(focus)
        qtbot.keyClick(focus, Qt.Key.Key_Return)
    assert len(set(days)) == 6

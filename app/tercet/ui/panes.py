"""F6: the focus goes round the panes that are in view."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

if TYPE_CHECKING:
    from tercet.ui.window import MainWindow


def ring_of(window: MainWindow, *, loaded: bool) -> list[QWidget]:
    """What takes the focus in each pane of the window, in order."""
    ring: list[QWidget] = [window.bar.current, window.empty.choose]
    if loaded:
        page, session = window.season_page, window.session_page
        ring += [page.strip.race, page.sheet, *page.build_up.ring, page.card.open]
        ring += [page.recordings.choose, session.head.kind, session.panel.chart]
        ring += [session.repetitions.table, session.notes.note, *window.further.ring()]
    return ring


def focus_next(ring: Sequence[QWidget]) -> None:
    """Move the focus to the pane after the one that holds it; the first if none does.

    Parameters
    ----------
    ring : sequence of QWidget
        What takes the focus in each pane, in order; those not in view are passed over.
    """
    ring = [widget for widget in ring if widget.isVisible() and widget.isEnabled()]
    if not ring:
        return
    focus = QApplication.focusWidget()
    at = next((k for k, widget in enumerate(ring) if focus is widget), None)
    if at is None:
        at = next((k for k, widget in enumerate(ring) if _same_pane(widget, focus)), -1)
    ring[(at + 1) % len(ring)].setFocus(Qt.FocusReason.ShortcutFocusReason)


def _same_pane(widget: QWidget, focus: QWidget | None) -> bool:
    """Whether both lie in one pane, a frame that says so or the widget itself."""
    if focus is None:
        return False
    pane: QWidget | None = widget
    while pane is not None and not (pane.property("pane") or pane.property("bar")):
        pane = pane.parentWidget()
    return (pane or widget).isAncestorOf(focus)

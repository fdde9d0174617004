"""The focus by keyboard: when it is shown, and how it goes round the panes in view."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget

#: Focus that came by these is shown.
KEYBOARD = (
    Qt.FocusReason.TabFocusReason,
    Qt.FocusReason.BacktabFocusReason,
    Qt.FocusReason.ShortcutFocusReason,
)
#: Focus that came back by these, from a menu or another window, is shown as it was before.
BACK = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)


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
    taken = ring[(at + 1) % len(ring)]
    taken.setFocus(Qt.FocusReason.ShortcutFocusReason)
    scroll_to(taken)


def put_last(window: QWidget, widget: QWidget) -> None:
    """Let Tab reach a widget after all else in its window, whatever was built behind it."""
    last = window.previousInFocusChain()
    while last is not None and not last.focusPolicy() & Qt.FocusPolicy.TabFocus:
        last = last.previousInFocusChain()
    if last is not None and last is not widget:
        QWidget.setTabOrder(last, widget)


def scroll_to(widget: QWidget) -> None:
    """Bring what took the focus into view where a page is higher than its window.

    What scrolls by itself, as a list of weeks, stays where it was scrolled to.
    """
    step = widget.parentWidget()
    while step is not None:
        if isinstance(step, QScrollArea):
            page = step.widget()
            if page is None or page is widget:
                widget = step
            elif widget.height() <= step.viewport().height():
                step.ensureWidgetVisible(widget)
            else:
                step.verticalScrollBar().setValue(widget.mapTo(page, QPoint()).y())
        step = step.parentWidget()


def _same_pane(widget: QWidget, focus: QWidget | None) -> bool:
    """Whether both lie in one pane, a frame that says so or the widget itself."""
    if focus is None:
        return False
    pane: QWidget | None = widget
    while pane is not None and not (pane.property("pane") or pane.property("bar")):
        pane = pane.parentWidget()
    return (pane or widget).isAncestorOf(focus)

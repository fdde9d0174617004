"""What may not happen to a widget in view: words cut off, overlap, leaving the window."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QAbstractSpinBox,
    QCheckBox,
    QComboBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QSplitterHandle,
    QTabBar,
    QWidget,
)

from tercet.ui.focus_ring import FocusRing
from tercet.ui.undo_bar import UndoBar
from tercet.ui.widgets import ElidedLabel

#: These lie over others by purpose.
OVERLAYS = (FocusRing, UndoBar)
#: Rounding of layouts. [px]
SLACK = 1


def name_of(widget: QWidget) -> str:
    """Name a widget for a message."""
    text = widget.text() if isinstance(widget, (QLabel, QAbstractButton)) else ""
    said = text or widget.accessibleName() or widget.objectName()
    return f"{type(widget).__name__} {said[:48]!r} in {type(widget.parentWidget()).__name__}"


def in_view(top: QWidget) -> list[QWidget]:
    """All visible widgets of a window, without those of other windows."""
    return [
        widget
        for widget in top.findChildren(QWidget)
        if widget.isVisible() and widget.window() is top.window()
    ]


def cut_off(top: QWidget) -> Iterator[str]:
    """Words that are wider or higher than their box."""
    for widget in in_view(top):
        if isinstance(widget, QLabel) and widget.text():
            yield from _label(widget)
        elif isinstance(widget, (QPushButton, QRadioButton, QCheckBox)) and widget.text():
            metrics = widget.fontMetrics()
            words = metrics.size(Qt.TextFlag.TextShowMnemonic.value, widget.text())
            if words.width() > widget.width() or words.height() > widget.height() + SLACK:
                yield f"{name_of(widget)}: {words} in {widget.size()}"
            elif widget.minimumSizeHint().width() > widget.width() + SLACK:
                yield f"{name_of(widget)}: {widget.minimumSizeHint()} in {widget.size()}"
        elif isinstance(widget, (QComboBox, QAbstractSpinBox)):
            text = widget.currentText() if isinstance(widget, QComboBox) else widget.text()
            room = widget.rect()
            field = widget.findChild(QLineEdit)
            if field is not None and field.isVisible():
                room = field.rect()
            if widget.fontMetrics().horizontalAdvance(text) > room.width():
                yield f"{name_of(widget)}: {text!r} in {room.width()}"


def _label(label: QLabel) -> Iterator[str]:
    metrics, room = label.fontMetrics(), label.contentsRect()
    if isinstance(label, ElidedLabel):
        wide = metrics.horizontalAdvance(label.text()) > room.width()
        if wide and label.toolTip() != label.text():
            yield f"{name_of(label)}: cut without a tool tip"
        if metrics.height() > room.height() + SLACK:
            yield f"{name_of(label)}: {metrics.height()} high in {room.height()}"
        return
    flags = Qt.TextFlag.TextWordWrap if label.wordWrap() else Qt.TextFlag(0)
    if label.buddy() is not None:
        flags |= Qt.TextFlag.TextShowMnemonic
    box = QRect(0, 0, room.width() if label.wordWrap() else 100_000, 100_000)
    words = metrics.boundingRect(box, int(label.alignment()) | flags.value, label.text())
    if words.width() > room.width() + SLACK or words.height() > room.height() + SLACK:
        yield f"{name_of(label)}: {words.size()} in {room.size()}"


def overlapping(top: QWidget) -> Iterator[str]:
    """Siblings in view that lie over one another."""
    seen = [widget for widget in in_view(top) if not isinstance(widget, OVERLAYS)]
    by_parent: dict[QWidget, list[QWidget]] = {}
    for widget in seen:
        by_parent.setdefault(widget.parentWidget(), []).append(widget)
    for parent, children in by_parent.items():
        if isinstance(parent, (QAbstractScrollArea, QTabBar, QAbstractSpinBox, QComboBox)):
            continue  # they place their own parts
        for place, first in enumerate(children):
            for second in children[place + 1 :]:
                both = first.geometry().intersected(second.geometry())
                handles = isinstance(first, QSplitterHandle) or isinstance(second, QSplitterHandle)
                if both.width() > SLACK and both.height() > SLACK and not handles:
                    yield f"{name_of(first)} and {name_of(second)} share {both.size()}"


def outside(top: QWidget) -> Iterator[str]:
    """Widgets that reach past their window, or past a parent that cuts them off."""
    window = top.rect()
    for widget in in_view(top):
        if isinstance(widget, OVERLAYS) or _scrolled(widget):
            continue
        place = QRect(widget.mapTo(top, QPoint()), widget.size())
        if not window.adjusted(-SLACK, -SLACK, SLACK, SLACK).contains(place):
            yield f"{name_of(widget)} at {place} in {window}"


def _scrolled(widget: QWidget) -> bool:
    parent = widget.parentWidget()
    while parent is not None:
        if isinstance(parent, QAbstractScrollArea):
            return True
        parent = parent.parentWidget()
    return False


def sideways(top: QWidget) -> Iterator[str]:
    """Scrolled contents that are wider than what shows them, with no way to scroll there."""
    for area in in_view(top):
        if isinstance(area, QAbstractScrollArea):
            bar = area.horizontalScrollBar()
            hidden = area.horizontalScrollBarPolicy() == Qt.ScrollBarPolicy.ScrollBarAlwaysOff
            if hidden and bar.maximum() > SLACK:
                yield f"{name_of(area)}: {bar.maximum()} px can't be reached"


def faults(top: QWidget) -> list[str]:
    """All of the above."""
    return [*cut_off(top), *overlapping(top), *outside(top), *sideways(top)]


def nameless(top: QWidget) -> list[str]:
    """Widgets in view that take the focus and say nothing to a screen reader."""
    found = []
    for widget in in_view(top):
        if widget.focusPolicy() == Qt.FocusPolicy.NoFocus or widget.focusProxy() is not None:
            continue
        if widget.objectName().startswith("qt_"):
            continue  # a part of a field, spoken with it
        said = widget.accessibleName()
        if not said and isinstance(widget, (QAbstractButton, QLabel)):
            said = widget.text()
        if not said.strip():
            found.append(name_of(widget))
    return found

"""Small widgets that several screens share: panes, labels by role, key and figure pairs."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, QSize, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from tercet.ui import stairs, theme

#: After another text size a page has been laid out for so long. [ms]
SETTLED_MS = 300


class Label(QLabel):
    """A label whose font and colour follow a role of the theme."""

    def __init__(
        self, text: str = "", role: str = "body", color: str = "text", *, wrap: bool = False
    ) -> None:
        super().__init__(text)
        self._role, self._color = role, color
        self.setWordWrap(wrap)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self._dress(theme.current())

    def set_color(self, color: str) -> None:
        """Take another colour role."""
        self._color = color
        self._dress(theme.current())

    def changeEvent(self, event: QEvent) -> None:
        """Another look comes as a style sheet, which puts back the colours of before it."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.StyleChange:
            self._dress(theme.current())

    def _dress(self, look: theme.Theme) -> None:
        # Setting what is set costs a walk through the style sheet, at each new parent.
        font, color = look.font(self._role), look.color(self._color)
        if self.font() != font or not self.testAttribute(Qt.WidgetAttribute.WA_SetFont):
            self.setFont(font)
        palette = self.palette()
        if palette.color(self.foregroundRole()) != color:
            palette.setColor(self.foregroundRole(), color)
            self.setPalette(palette)


class ElidedLabel(Label):
    """A label of one line that gives way: what doesn't fit ends in an ellipsis, whole on pointing.

    ``text`` stays the whole text, for tests and screen readers alike.
    """

    def __init__(
        self,
        text: str = "",
        role: str = "body",
        color: str = "text",
        *,
        mode: Qt.TextElideMode = Qt.TextElideMode.ElideRight,
    ) -> None:
        super().__init__(text, role, color)
        self._mode = mode
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)

    def minimumSizeHint(self) -> QSize:
        """A few letters wide."""
        narrow = min(super().minimumSizeHint().width(), self.fontMetrics().averageCharWidth() * 6)
        return QSize(narrow, super().minimumSizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw what fits."""
        painter = QPainter(self)
        painter.setPen(self.palette().color(self.foregroundRole()))
        room = self.contentsRect()
        shown = self.fontMetrics().elidedText(self.text(), self._mode, room.width())
        tip = self.text() if shown != self.text() else ""
        if self.toolTip() != tip:
            self.setToolTip(tip)
        painter.drawText(room, int(self.alignment()), shown)


class Pane(QFrame):
    """A pane of the page's colour with a thin edge."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("pane", True)


class Rule(QFrame):
    """A thin line between parts."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(1)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the line."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.current().color("rule"))


class Figure(QWidget):
    """A big value with a word under it."""

    def __init__(self, word: str) -> None:
        super().__init__()
        self.value = Label("", "big")
        self.word = Label(word, "small", "text_2")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.value)
        column.addWidget(self.word)

    def set(self, value: str) -> None:
        """Show a value."""
        self.value.setText(value)
        self.setAccessibleName(f"{self.word.text()}: {value}")


class StairWidget(QWidget):
    """One stair of seconds by shade on a scale of its own."""

    def __init__(self) -> None:
        super().__init__()
        self._seconds: tuple[float, ...] = (0.0, 0.0, 0.0, 0.0, 0.0)
        self._full = 1.0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def set(self, seconds: tuple[float, ...], full: float) -> None:
        """Show seconds by shade; ``full`` seconds fill the width."""
        self._seconds, self._full = seconds, max(full, 1.0)
        self.update()

    def sizeHint(self) -> QSize:
        """As high as the stair of the session page."""
        return QSize(240, theme.current().px(28))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the stair."""
        look = theme.current()
        painter = QPainter(self)
        heights = stairs.heights((11, 17, 23), look)
        scale = (self.width() - 12) * 3600 / self._full
        stairs.paint_stair(painter, 1, self.height() - 2, scale, self._seconds[:3], heights, look)


class DropZone(QFrame):
    """A dashed frame that says where recordings may be dropped."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._active = False

    def set_active(self, active: bool) -> None:
        """Draw the frame in the focus colour while files hover."""
        self._active = active
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the dashes."""
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = painter.pen()
        pen.setColor(look.color("focus" if self._active else "control"))
        pen.setWidthF(2.0)
        pen.setDashPattern([4, 3])
        painter.setPen(pen)
        painter.setBrush(look.color("sunken"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 6, 6)


class BandRow(QFrame):
    """A row with a coloured band at its left: something to look at."""

    def __init__(self, role: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._band = role

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw ground, edge and band."""
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(look.color("rule"))
        painter.setBrush(look.color("sunken"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 5, 5)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.color(self._band))
        painter.drawRoundedRect(QRectF(QPointF(6, 8), QPointF(10, self.height() - 8)), 2, 2)


def button(text: str, *, primary: bool = False, name: str = "") -> QPushButton:
    """A button in the program's look; ``name`` is spoken where the text alone says too little."""
    made = QPushButton(text)
    made.setProperty("primary", primary)
    made.setCursor(Qt.CursorShape.PointingHandCursor)
    if name:
        made.setAccessibleName(name)
    return made


def clear_scroll(inside: QWidget, area: QScrollArea | None = None) -> QScrollArea:
    """Scroll a widget up and down where the height is short, on the ground that is there."""
    area = area or QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    for widget in (area.viewport(), inside):
        widget.setProperty("clear", True)
    area.setWidget(inside)
    _Place(area)
    return area


class _Place(QObject):
    """Keeps the same part of what is scrolled in view at another text size."""

    def __init__(self, area: QScrollArea) -> None:
        super().__init__(area)
        self._bar = area.verticalScrollBar()
        self._share, self._scale = 0.0, theme.current().scale
        self._settled = QTimer(self, interval=SETTLED_MS, singleShot=True)
        self._settled.timeout.connect(self._settle)
        self._bar.valueChanged.connect(self._scrolled)
        self._bar.rangeChanged.connect(self._laid_out)

    def _scrolled(self, value: int) -> None:
        if theme.current().scale == self._scale:
            self._share = value / max(self._bar.maximum(), 1)

    def _laid_out(self, _: int, high: int) -> None:
        # In several steps, and for a hidden page not before it is shown; or as it is taken apart.
        if theme.current().scale != self._scale and shiboken6.isValid(self._bar):
            self._bar.setValue(round(self._share * high))
            self._settled.start()

    def _settle(self) -> None:
        self._scale = theme.current().scale

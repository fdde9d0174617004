"""A review page on the screen: painted to the room there is, its numbers to be clicked."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QCursor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPixmap
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.language import tr
from tercet.library.review.content import Page
from tercet.ui import theme
from tercet.ui.review import frame
from tercet.ui.review.board import HEIGHT, WIDTH, Mark
from tercet.ui.review.frame import Foot
from tercet.ui.review.looks import Look


class PageView(QWidget):
    """Shows one page at 16:9 in the middle of its room, or over all of it.

    ``row_asked`` gives the row of the table behind a number; ``words_asked`` asks to edit.
    """

    row_asked = Signal(int)
    pointed = Signal(QPointF)  # where the pointer is, as shares of the page; outside when it left
    words_asked = Signal()

    def __init__(self, *, fills: bool = False) -> None:
        super().__init__()
        self._fills = fills
        self._page: Page | None = None
        self._look = Look()
        self._foot = Foot("", 1, 1)
        self._marks: list[Mark] = []
        self._spots: list[Mark] = []
        self._drawn = QPixmap()
        self._point: QPointF | None = None
        self.arrow: QCursor | Qt.CursorShape = Qt.CursorShape.ArrowCursor
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_page(self, page: Page | None, look: Look, foot: Foot) -> None:
        """Show a page in a look, with its foot."""
        if (page, look, foot) == (self._page, self._look, self._foot):
            return  # it stands there already
        self._page, self._look, self._foot = page, look, foot
        if page is not None:
            self.setAccessibleName(tr("Page {n}: {title}", n=foot.number, title=page.title))
            self.setAccessibleDescription(f"{page.line} {page.missing}".strip())
        self._drawn = QPixmap()
        self.update()

    @property
    def page(self) -> Page | None:
        """The page in view."""
        return self._page

    @property
    def marks(self) -> list[Mark]:
        """The words of the page and where they stand."""
        return self._marks

    def room(self) -> QRectF:
        """Where the page lies."""
        whole = QRectF(self.rect())
        if self._fills:
            return whole
        scale = min(whole.width() / WIDTH, whole.height() / HEIGHT)
        size = (WIDTH * scale, HEIGHT * scale)
        return QRectF((whole.width() - size[0]) / 2.0, 0.0, *size)

    def row_at(self, place: QPointF) -> int | None:
        """The row of the table behind the number at a place of the widget."""
        inside = place - self.room().topLeft()
        for mark in self._marks:
            if mark.row is not None and mark.rect.adjusted(-8, -8, 8, 8).contains(inside):
                return mark.row
        return next((spot.row for spot in self._spots if spot.rect.contains(inside)), None)

    def sizeHint(self) -> QSize:
        return QSize(640, 360)

    def minimumSizeHint(self) -> QSize:
        return QSize(260, 146)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        room = self.room()
        if self._fills:
            painter.fillRect(self.rect(), self._look.color("pane"))
        ratio = self.devicePixelRatio()
        size = (room.size() * ratio).toSize()
        if self._drawn.size() != size:
            self._draw(size, ratio, room)
        painter.drawPixmap(room.topLeft(), self._drawn)
        if self._point is not None:
            place = QPointF(self._point.x() * room.width(), self._point.y() * room.height())
            radius = 19.0 * frame.scale_of(room.width(), room.height())
            paint_pointer(painter, room.topLeft() + place, radius)
        if not self._fills:
            painter.setPen(theme.current().color("edge"))
            painter.drawRect(room.adjusted(0.5, 0.5, -0.5, -0.5))

    def _draw(self, size: QSize, ratio: float, room: QRectF) -> None:
        """Paint once for a size; turning to it again costs nothing."""
        self._drawn = QPixmap(size)
        self._drawn.setDevicePixelRatio(ratio)
        self._drawn.fill(self._look.color("pane"))
        if self._page is None:
            return
        painter = QPainter(self._drawn)
        self._spots = []
        self._marks = frame.paint(
            painter, self._page, self._look, room.width(), room.height(), self._foot, self._spots
        )
        painter.end()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        hand = self.row_at(event.position()) is not None
        shape = Qt.CursorShape.PointingHandCursor if hand else self.arrow
        if self.cursor().shape() != Qt.CursorShape.BlankCursor:
            self.setCursor(shape)
        room = self.room()
        inside = event.position() - room.topLeft()
        self.pointed.emit(QPointF(inside.x() / room.width(), inside.y() / room.height()))
        super().mouseMoveEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        self.pointed.emit(QPointF(-1.0, -1.0))
        super().leaveEvent(event)

    @property
    def pointed_at(self) -> QPointF | None:
        """Where the presenter points, as shares of the page."""
        return self._point

    def point_at(self, place: QPointF) -> None:
        """Show a pointer at shares of the page; none outside of it."""
        inside = 0.0 <= place.x() <= 1.0 and 0.0 <= place.y() <= 1.0
        self._point = place if inside else None
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        row = self.row_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and row is not None:
            self.row_asked.emit(row)
        super().mouseReleaseEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if self.row_at(event.position()) is None:
            self.words_asked.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self._fills:
            self.row_asked.emit(-1)
        else:
            super().keyPressEvent(event)


def paint_pointer(painter: QPainter, place: QPointF, radius: float) -> None:
    """A ring in the colour of the focus on white, to point with."""
    look = theme.current()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for role, width in (("pane", 7.0), ("focus", 4.0)):
        painter.setPen(QPen(look.color(role), width))
        painter.drawEllipse(place, radius, radius)
        painter.drawPoint(place)


def thumbnail(page: Page, look: Look, width: int, height: int, ratio: float) -> QPixmap:
    """A page in small, without its foot's words to be read."""
    made = QPixmap(round(width * ratio), round(height * ratio))
    made.setDevicePixelRatio(ratio)
    painter = QPainter(made)
    frame.paint(painter, page, look, width, height, Foot("", 1, 1))
    painter.end()
    return made

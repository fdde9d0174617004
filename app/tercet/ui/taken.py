"""A chart taken along: as picture, drawing and numbers, by copy, by file, or dragged out."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtCore import (
    QBuffer,
    QByteArray,
    QEvent,
    QIODevice,
    QMimeData,
    QPoint,
    Qt,
    QUrl,
)
from PySide6.QtGui import (
    QAction,
    QDrag,
    QEnterEvent,
    QImage,
    QImageWriter,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
)
from PySide6.QtWidgets import QApplication, QFileDialog, QMenu, QToolButton, QWidget

from tercet.language import mark, tr
from tercet.library.review import tables
from tercet.ui import drawing as drawings
from tercet.ui import theme

SVG = "image/svg+xml"
PNG = "image/png"
#: Pixels a logical pixel, so that a picture in a document is sharp in print.
SHARP = 2.0
#: Width of the picture that hangs at the pointer. [px]
HANGING = 240
KINDS = (
    (mark("Picture (*.png)"), ("png", "svg", "csv")),
    (mark("Drawing (*.svg)"), ("svg", "png", "csv")),
    (mark("Numbers (*.csv)"), ("csv", "png", "svg")),
)

_kept: list[TemporaryDirectory[str]] = []


def picture(widget: QWidget) -> QImage:
    """The widget as an image, sharp enough for print."""
    sharp = max(SHARP, widget.devicePixelRatioF())
    image = QImage(widget.size() * sharp, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(sharp)
    image.fill(theme.current().color("pane"))
    widget.render(image)
    return image


def drawing(widget: QWidget, name: str) -> bytes:
    """The widget as a drawing of lines and letters, SVG 1.2 Tiny."""

    def paint(painter: QPainter) -> None:
        painter.fillRect(widget.rect(), theme.current().color("pane"))
        widget.render(painter, QPoint())

    return drawings.svg(widget.size(), name, "", paint).encode()


def csv_of(text: str) -> str:
    """Numbers parted by tabs as comma-separated text; cells with commas stand in quotes."""
    out = io.StringIO()
    writer = csv.writer(out)
    for line in text.split("\n"):
        writer.writerow([tables.safe(cell) for cell in line.split("\t")])
    return out.getvalue()


def png_of(image: QImage) -> bytes:
    """An image as PNG."""
    kept = QByteArray()
    buffer = QBuffer(kept)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    buffer.close()
    return bytes(kept.data())


def mime(widget: QWidget, name: str, numbers: str) -> QMimeData:
    """All forms of a chart at once: who takes it picks one.

    A document takes the picture or the drawing, a table the numbers, a folder the file.
    """
    image, data = picture(widget), QMimeData()
    png = png_of(image)
    data.setImageData(image)
    data.setData(PNG, png)
    data.setData(SVG, drawing(widget, name))
    data.setText(numbers)
    data.setUrls([QUrl.fromLocalFile(str(_file(name, png)))])
    return data


def _file(name: str, png: bytes) -> Path:
    """A file to be dropped into a folder; it is gone when the program has ended."""
    if not _kept:
        _kept.append(TemporaryDirectory(prefix="tercet-"))
    target = Path(_kept[0].name) / f"{tables.plain_name(name)}.png"
    target.write_bytes(png)
    return target


def save(widget: QWidget, name: str, numbers: str, target: Path) -> None:
    """Write a chart as PNG, SVG or comma-separated text, by the file's ending.

    Raises
    ------
    OSError
        If it cannot be written.
    """
    kind = target.suffix.lower()
    if kind == ".csv":
        target.write_text(csv_of(numbers), encoding="utf-8", newline="")
    elif kind == ".svg":
        target.write_bytes(drawing(widget, name))
    else:
        target.write_bytes(png_of(picture(widget)))


class Handle(QToolButton):
    """A small grip in a chart's corner: dragged, it takes the chart along; a click opens a menu.

    It is there while the pointer is over the chart.
    """

    def __init__(self, chart: QWidget, whole: QWidget, actions: list[QAction]) -> None:
        super().__init__(chart)
        self._chart, self._whole = chart, whole
        self._pressed: QPoint | None = None
        self.name = ""
        self.numbers: Callable[[], str] = str
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.setToolTip(tr("Drag the chart to a document or a folder, or click to copy or save it"))
        self.setAccessibleName(tr("Take the chart along"))
        self._menu = QMenu(self)
        self._menu.addActions(actions)
        chart.installEventFilter(self)
        self.hide()

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Come and go with the pointer."""
        if event.type() == QEvent.Type.Enter:
            self._place()
            self.show()
            self.raise_()
        elif event.type() == QEvent.Type.Resize:
            self._place()
        elif event.type() in (QEvent.Type.Leave, QEvent.Type.Hide):
            self.hide()
        return False

    def _place(self) -> None:
        side = theme.current().px(24)
        self.setGeometry(self._chart.width() - side - 2, 2, side, side)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Stay while pointed at."""
        super().enterEvent(event)
        self.show()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Remember where a drag may begin."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed = event.position().toPoint()
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Begin the drag once the pointer went far enough."""
        if self._pressed is None or not event.buttons() & Qt.MouseButton.LeftButton:
            return
        moved = event.position().toPoint() - self._pressed
        if moved.manhattanLength() >= QApplication.startDragDistance():
            self._pressed = None
            self.drag()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click opens the menu."""
        if self._pressed is not None:
            self._pressed = None
            self._menu.popup(self.mapToGlobal(QPoint(0, self.height())))
        event.accept()

    def drag(self) -> None:
        """Let the chart hang at the pointer until it is dropped."""
        self.hide()
        drag = QDrag(self._chart)
        drag.setMimeData(mime(self._whole, self.name, self.numbers()))
        hanging = QPixmap.fromImage(picture(self._whole))
        drag.setPixmap(hanging.scaledToWidth(HANGING, Qt.TransformationMode.SmoothTransformation))
        drag.exec(Qt.DropAction.CopyAction)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Two columns of dots on a raised ground."""
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(look.color("control"))
        painter.setBrush(look.color("raised"))
        painter.drawRoundedRect(self.rect().adjusted(0, 0, -1, -1), 5, 5)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.color("text_2"))
        step = self.height() / 5.0
        middle = self.rect().center()
        for column in (-0.5, 0.5):
            for row in (-1, 0, 1):
                x, y = middle.x() + 0.5 + column * step, middle.y() + 0.5 + row * step
                painter.drawEllipse(round(x) - 1, round(y) - 1, 3, 3)


def ask_where(parent: QWidget, name: str) -> Path | None:
    """Ask for a file to save a chart in; None if nothing was chosen."""
    endings = {tr(words): order for words, order in KINDS}
    chosen, kind = QFileDialog.getSaveFileName(
        parent, tr("Save the chart"), tables.plain_name(name), ";;".join(endings)
    )
    if not chosen:
        return None
    return tables.with_ending(Path(chosen), endings.get(kind, KINDS[0][1]))

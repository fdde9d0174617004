"""A big value with the word for it below, and a swatch before it where it belongs to a shade."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QSizePolicy, QWidget

from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.ui import stairs
from tercet.ui import theme as themes

#: Stands for the dashed target line among the swatches.
TARGET = "target"
#: Said of every number that comes from thresholds nobody has confirmed.
ABOUT = mark("about")


class Swatch(QWidget):
    """A key swatch of a shade, or a piece of the target line."""

    def __init__(self, of: Shade | str) -> None:
        super().__init__()
        self._of = of
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        look = themes.current()
        return QSize(look.px(24 if self._of == TARGET else 17), look.px(22))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = themes.current()
        painter = QPainter(self)
        if isinstance(self._of, Shade):
            size = look.px(17), look.px(20)
            box = QRectF(0.0, self.height() - size[1] - 1.0, size[0], size[1])
            stairs.paint_key(painter, box, self._of, look)
        else:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            pen = QPen(look.color("text"), 1.7)
            pen.setCapStyle(Qt.PenCapStyle.FlatCap)
            pen.setDashPattern([3.6, 1.4])
            painter.setPen(pen)
            low, high = self.height() * 0.7, self.height() * 0.35
            painter.drawLine(QPointF(1.0, low), QPointF(self.width() - 1.0, high))
        painter.end()


class Value(QWidget):
    """One number and what it is, read together by a screen reader."""

    def __init__(self, word: str, swatch: Shade | str | None = None) -> None:
        super().__init__()
        self._estimated = False
        self._number, self._word, self._about = QLabel("–"), QLabel(word), QLabel(tr(ABOUT))
        self._about.setVisible(False)
        self._word.setProperty("secondary", True)
        self._grid = grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(0)
        grid.setHorizontalSpacing(themes.current().px(8))
        self._swatch = Swatch(swatch) if swatch is not None else None
        if self._swatch is not None:
            grid.addWidget(self._swatch, 0, 0)
        number = QHBoxLayout()
        number.setSpacing(themes.current().px(4))
        number.addWidget(self._about, 0, Qt.AlignmentFlag.AlignBottom)
        number.addWidget(self._number)
        grid.addLayout(number, 0, 1)
        grid.addWidget(self._word, 1, 1, 1, 2)
        grid.setColumnStretch(2, 1)
        themes.changed.connect(self.restyle)
        self.restyle()

    def set_inline(self, inline: bool) -> None:
        """Put the word beside the number, where height is short, or below it."""
        self._grid.removeWidget(self._word)
        self._grid.addWidget(self._word, *((0, 2, 1, 1) if inline else (1, 1, 1, 2)))

    def show_swatch(self, shown: bool) -> None:
        """Take the swatch away from a number that it does not belong to."""
        if self._swatch is not None:
            self._swatch.setVisible(shown)

    def restyle(self, *_: object) -> None:
        look = themes.current()
        self._number.setFont(look.font("big"))
        self._word.setFont(look.font("body"))
        self._about.setFont(look.font("small_italic"))
        if self._swatch is not None:
            self._swatch.updateGeometry()

    @property
    def text(self) -> str:
        """The number as shown."""
        number = self._number.text()
        return tr("about {value}", value=number) if self._estimated else number

    @property
    def word(self) -> str:
        """The word as shown."""
        return self._word.text()

    def show_value(self, number: str, word: str | None = None) -> None:
        """Show another number, and another word if one is given; *about* stands small before it."""
        about = tr("about {value}", value="")
        self._estimated = number.startswith(about)
        self._number.setText(number.removeprefix(about))
        self._about.setVisible(self._estimated)
        if word is not None:
            self._word.setText(word)
        self.setAccessibleName(f"{self._word.text()} {number}")

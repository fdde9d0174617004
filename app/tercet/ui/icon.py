"""The program's own icon: a small stair of the three shades on a page; drawn, for any size."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QIcon, QPainter, QPen, QPixmap

from tercet.engine.shades import Shade
from tercet.ui.theme import Theme

SIZES = (16, 24, 32, 48, 128)
#: The page, its line, and the steps, as parts of the icon's width: left, top, width, height.
PAGE = (0.03, 0.03, 0.94, 0.94)
LINE = (0.125, 0.84, 0.75, 0.04)
STEPS = (
    (Shade.EASY, (0.15, 0.55, 0.28, 0.28)),
    (Shade.MODERATE, (0.46, 0.39, 0.18, 0.44)),
    (Shade.HARD, (0.67, 0.18, 0.18, 0.65)),
)


def icon() -> QIcon:
    """Draw the icon in the sizes that desktops ask for."""
    made = QIcon()
    for size in SIZES:
        made.addPixmap(drawn(size))
    return made


def drawn(size: int) -> QPixmap:
    """Draw the icon in one size, in the light look's colours on every ground."""
    look = Theme()
    pixmap = QPixmap(size, size)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(look.color("control"), max(1.0, size / 48)))
    painter.setBrush(look.color("pane"))
    painter.drawRoundedRect(_box(PAGE, size), size / 7, size / 7)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    for shade, place in STEPS:
        painter.fillRect(_box(place, size).toRect(), look.color(shade.name.lower()))
    painter.setPen(look.color("easy_outline"))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(_box(STEPS[0][1], size).toRect().adjusted(0, 0, -1, -1))
    painter.fillRect(_box(LINE, size).toAlignedRect(), look.color("text"))
    painter.end()
    return pixmap


def _box(place: tuple[float, float, float, float], size: int) -> QRectF:
    left, top, width, height = (part * size for part in place)
    return QRectF(left, top, width, height)

"""What is painted as a drawing of lines and letters, SVG 1.2 Tiny."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRect, QSize
from PySide6.QtGui import QPainter
from PySide6.QtSvg import QSvgGenerator

from tercet.ui.theme import SANS, SERIF


def svg(size: QSize, title: str, line: str, paint: Callable[[QPainter], object]) -> str:
    """Draw what is painted on a page of this size; the title and the line tell what it is."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    made = QSvgGenerator()
    made.setOutputDevice(buffer)
    made.setSize(size)
    made.setViewBox(QRect(0, 0, size.width(), size.height()))
    made.setTitle(title)
    made.setDescription(line)
    painter = QPainter(made)
    paint(painter)
    painter.end()
    buffer.close()
    text = bytes(data.data()).decode("utf-8")
    for family in (SANS, SERIF):
        # A name that ends in a number needs quotes.
        text = text.replace(f'font-family="{family}"', f"font-family=\"'{family}'\"")
    return text

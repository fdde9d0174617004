"""Making, turning and printing the season review."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from tercet.library import season
from tercet.library.library import Library
from tercet.library.review import build
from tests.bench.timing import Figure, pair


def review(folder: Path) -> Iterator[Figure]:
    """The review of the sample season: from the store, a page on the screen, the whole PDF."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtCore import QBuffer, QIODevice, QPointF
    from PySide6.QtGui import QImage, QPainter, QPdfWriter

    from tercet.ui import theme
    from tercet.ui.application import application
    from tercet.ui.review import frame, looks, paper
    from tercet.ui.review.frame import Foot

    app = application()
    theme.apply(app, False)
    library = Library(folder / "store")
    made, _ = library.call(build.review)
    yield pair(
        "the review's pages from the store",
        lambda: library.call(build.review),
        "the season alone",
        lambda: library.call(season.season),
    )
    library.close()
    light = looks.look("light")
    image = QImage(1366, 768, QImage.Format.Format_RGB32)

    def pages() -> list[frame.Mark]:
        marks = []
        for number, page in enumerate(made.shown, 1):
            painter = QPainter(image)
            marks += frame.paint(painter, page, light, 1366.0, 768.0, Foot("Runner", number, 9))
            painter.end()
        return marks

    words = pages()

    def only_words(device: QImage | QPdfWriter) -> None:
        painter = QPainter(device)
        painter.setFont(light.font("body"))
        for mark in words:
            painter.drawText(QPointF(mark.rect.left(), mark.rect.bottom()), mark.words)
        painter.end()

    figure = pair("every page turned", pages, "their words alone", lambda: only_words(image))
    yield figure
    print(f"  = {1000 * figure.value_s / len(made.shown):.1f} ms a page (wanted <= 100)")
    sizes = []

    def written() -> None:
        sizes.append(len(paper.pdf(made, light, "a4")))

    def bare() -> None:
        buffer = QBuffer()
        buffer.open(QIODevice.OpenModeFlag.WriteOnly)
        only_words(QPdfWriter(buffer))

    yield pair("the review as PDF", written, "its pages' words alone in one", bare)
    print(f"  = {sizes[-1] / 1e6:.2f} MB (wanted <= 2)")

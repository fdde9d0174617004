"""The intensity curve of one stretch: time over intensity by shade, beside two others, in words."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.engine.curve import Curve
from tercet.engine.shades import whole_shares
from tercet.language import mark, tr
from tercet.library.shape import Drawn
from tercet.ui import theme
from tercet.ui.curve_paint import boundaries, paint_curve

NAMES = (mark("Easy"), mark("Moderate"), mark("Hard"))


class CurveView(QWidget):
    """One stretch's curve, with the shares, the thresholds and the lines named."""

    def __init__(self) -> None:
        super().__init__()
        self._drawn: Drawn | None = None
        self._paces = ("", "")
        self._arc = True
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._dress(theme.current())
        theme.changed.connect(self._dress)

    def _dress(self, look: theme.Theme) -> None:
        self.setMinimumHeight(look.px(160))
        self.update()

    def show_curve(self, drawn: Drawn | None, paces: tuple[str, str]) -> None:
        """Show a stretch, and the paces of the two thresholds."""
        self._drawn, self._paces = drawn, paces
        self.setAccessibleDescription(sentence(drawn))
        self.update()

    def show_arc(self, shown: bool) -> None:
        """Show the common arc, or leave it out."""
        self._arc = shown
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._drawn is not None:
            self._paint(painter, self._drawn, look)

    def _paint(self, painter: QPainter, drawn: Drawn, look: theme.Theme) -> None:
        line = QFontMetricsF(look.font("small")).height()
        foot, top = 2 * line + look.px(16), line + look.px(8)
        area = QRectF(2, top, self.width() - 4, max(self.height() - foot - top, 20.0))
        shown = [curve for curve in (drawn.run, drawn.wanted) if curve is not None]
        highest = max(float(curve.density.max()) for curve in shown)
        paint_curve(painter, drawn, area, highest, look, arc=self._arc)
        self._words(painter, drawn, area, boundaries(drawn, area), highest, look)

    def _words(
        self, painter: QPainter, drawn: Drawn, area: QRectF, lines: list[float], highest: float,
        look: theme.Theme,
    ) -> None:  # fmt: skip
        bold, small = look.font("small_bold"), look.font("small")
        metrics = QFontMetricsF(bold)
        base = area.bottom() + look.px(6) + metrics.ascent()
        edges = (area.left(), *lines, area.right())
        painter.setFont(bold)
        painter.setPen(look.color("text"))
        end = area.left()
        for k, share in enumerate(whole_shares(drawn.shares)):
            name = tr(NAMES[k])
            words = f"{name}  {share} %"
            width = metrics.horizontalAdvance(words)
            left = max((edges[k] + edges[k + 1] - width) / 2, end)
            painter.drawText(QPointF(min(left, area.right() - width), base), words)
            end = left + width + look.px(12)
        painter.setFont(small)
        painter.setPen(look.color("text_2"))
        metrics = QFontMetricsF(small)
        base += metrics.height() + look.px(2)
        painter.drawText(QPointF(area.left(), base), tr("slow jog"))
        out = metrics.horizontalAdvance(tr("flat out"))
        painter.drawText(QPointF(area.right() - out, base), tr("flat out"))
        for x, words in zip(lines, self._paces, strict=True):
            width = metrics.horizontalAdvance(words)
            left = x - width / 2
            if x == lines[0]:
                left = min(left, (lines[0] + lines[1]) / 2 - width - look.px(4))
            else:
                left = max(left, (lines[0] + lines[1]) / 2 + look.px(4))
            painter.drawText(QPointF(left, base), words)
        if drawn.run is None:
            return
        self._name(painter, drawn.wanted, tr("wanted"), area, highest, look, 0.76, left=True)
        if self._arc:
            self._name(painter, drawn.arc, tr("common arc"), area, highest, look, 1.3)

    @staticmethod
    def _name(
        painter: QPainter, curve: Curve, words: str, area: QRectF, highest: float,
        look: theme.Theme, where: float, *, left: bool = False,
    ) -> None:  # fmt: skip
        """Write a line's name outside it, right of where it falls or left of where it rises."""
        k = int(np.argmin(np.abs(curve.at - where)))
        x = area.left() + (curve.at[k] - curve.at[0]) / (curve.at[-1] - curve.at[0]) * area.width()
        y = area.bottom() - curve.density[k] / highest * area.height()
        font = look.font("small")
        path = QPainterPath()
        aside = -QFontMetricsF(font).horizontalAdvance(words) - look.px(8) if left else look.px(8)
        path.addText(QPointF(x + aside, y - look.px(4)), font, words)
        painter.strokePath(path, QPen(look.color("pane"), 3.4))
        painter.fillPath(path, look.color("text_2"))


def sentence(drawn: Drawn | None) -> str:
    """What a stretch's curve shows, for reading aloud."""
    if drawn is None:
        return tr("Nothing has been judged in this stretch.")
    whole = whole_shares(drawn.shares)
    wanted = whole_shares(drawn.span.shares)
    return tr(
        "{stretch}: {easy} per cent easy, {moderate} moderate, {hard} hard; wanted {wanted}.",
        stretch=drawn.span.name,
        easy=whole[0],
        moderate=whole[1],
        hard=whole[2],
        wanted=f"{wanted[0]}, {wanted[1]}, {wanted[2]}",
    )

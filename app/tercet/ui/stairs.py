"""The three shades as they are drawn everywhere: stair bars, textured brushes, key swatches.

Intensity is told three times, by lightness, height and texture. Time that could not be judged
is drawn after the three shades as a hollow bar with the control colour's outline, at the height
of easy; time not spent running is never drawn.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QBrush,
    QFontMetricsF,
    QImage,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QTransform,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.ui import theme as themes
from tercet.ui.theme import Theme

#: Heights of easy, moderate and hard [px at 100 % text]: in a 28 px row, and on a page.
SHEET_HEIGHTS = (9.0, 14.0, 19.0)
PAGE_HEIGHTS = (16.0, 25.0, 34.0)
#: Part of a key swatch's height that each shade fills.
KEY_HEIGHTS = (0.4, 0.7, 1.0)
MIN_WIDTH = 2.5
DOUBLE_GAP = 5.0
_KEY_STEP = 46
_PLANNED = (mark("length planned"), mark("still to run"))
_RARE = {
    "unjudged": mark("unjudged"),
    "other": mark("other sport"),
    "cut": mark("bar cut, hours beside it"),
}
_SPOKEN = {
    "unjudged": mark("unjudged"),
    "other": mark("other"),
    "cut": mark("cut"),
    "planned": mark("planned"),
}
_ROLES = ("easy", "moderate", "hard")
_EDGES = ("easy_outline", "moderate_edge", "hard_edge")


def heights(base: tuple[float, float, float], theme: Theme) -> tuple[float, float, float]:
    """Stair heights grown with the text, in whole logical pixels."""
    return (float(theme.px(base[0])), float(theme.px(base[1])), float(theme.px(base[2])))


def steps(
    left: float, px_per_hour: float, seconds: Sequence[float], dpr: float = 1.0
) -> tuple[list[tuple[int, float, float]], float]:
    """Lay a stair out: ``(step, left, right)`` of every shade run, and the stair's right end.

    Parameters
    ----------
    left : float
        Left end [logical px].
    px_per_hour : float
        Length of one hour [logical px].
    seconds : sequence of 3 to 5 floats
        In the order of :class:`~tercet.engine.scale.Shade`; step 3 of the result is unjudged.
    dpr : float
        Device pixels in a logical one; every edge lies on a whole device pixel.

    Notes
    -----
    No step is narrower than 2.5 px. Steps are parted by 1 px taken from the wider of the two,
    if that one is wider than 4 px.
    """
    amounts = [*seconds[:3], seconds[4] if len(seconds) > 4 else 0.0]
    x = round(left * dpr) / dpr
    least = math.ceil(MIN_WIDTH * dpr) / dpr
    laid: list[list[float]] = []
    exact = x
    for index, amount in enumerate(amounts):
        if amount <= 0.0:
            continue
        exact = max(exact, x) + amount * px_per_hour / 3600.0
        right = max(round(exact * dpr) / dpr, x + least)
        laid.append([index, x, right])
        x = right
    for a, b in pairwise(laid):
        wide_a, wide_b = a[2] - a[1], b[2] - b[1]
        if max(wide_a, wide_b) > 4.0:
            if wide_a >= wide_b:
                a[2] -= 1.0
            else:
                b[1] += 1.0
    return [(int(index), start, end) for index, start, end in laid], x


# The same through scrolling and zoom; a screen of years holds about a thousand.
_kept_steps = lru_cache(maxsize=4096)(steps)


def paint_stair(
    painter: QPainter,
    rect_left: float,
    baseline_y: float,
    px_per_hour: float,
    seconds: Sequence[float],
    heights: Sequence[float],
    theme: Theme,
    *,
    estimated: bool = False,
) -> float:
    """Paint one session, week or block as a stair and return its right end [logical px].

    Unjudged seconds follow the three shades as a hollow bar with the control colour's outline at
    easy's height. ``estimated`` (judged by thresholds that nobody has confirmed) dashes the
    outline of easy; the words beside it say *about*.
    """
    dpr = painter.device().devicePixelRatio()
    laid, right = _kept_steps(rect_left, px_per_hour, tuple(seconds), dpr)
    for index, start, end in laid:
        height = heights[min(index, 2)] if index < 3 else heights[0]
        rect = QRectF(start, baseline_y - height, end - start, height)
        if index == 0:
            painter.fillRect(rect, theme.color("easy"))
            paint_outline(painter, rect, "easy_outline", theme, dashed=estimated)
        elif index == 3:
            paint_outline(painter, rect, "control", theme)
        else:
            painter.setBrushOrigin(rect.bottomLeft())
            painter.fillRect(rect, shade_brush(Shade(index), theme, dpr))
    return right


def paint_outline(
    painter: QPainter, rect: QRectF, role: str, theme: Theme, *, dashed: bool = False
) -> None:
    """Draw a crisp 1 px outline just inside ``rect``."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(outline_pen(role, theme, dashed))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))


@lru_cache(maxsize=128)
def outline_pen(role: str, theme: Theme, dashed: bool = False, width: float = 1.0) -> QPen:
    """A pen in a role's colour, kept for the next use."""
    pen = QPen(theme.color(role), width)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if dashed:
        pen.setDashPattern([3.0, 2.0])
    return pen


@lru_cache(maxsize=64)
def shade_brush(shade: Shade, theme: Theme, dpr: float = 1.0) -> QBrush:
    """The textured fill of a shade.

    The texture is measured in logical pixels: set the painter's brush origin to a corner of
    the shape, and reset a stretching transform before filling (a chart maps its polygon first).
    ``UNJUDGED`` and ``NOT_RUNNING`` have no fill.
    """
    if shade > Shade.HARD:
        return QBrush(Qt.BrushStyle.NoBrush)
    role = _ROLES[shade]
    if shade == Shade.EASY or theme.texture == "off":
        return QBrush(theme.color(role))
    strong = theme.texture == "strong"
    line = theme.color(f"text_on_{role}" if strong else f"{role}_texture")
    pitch = (6.0 if shade == Shade.MODERATE else 4.0) * (2.0 if strong else 1.0)
    # Four pitches make a tile of whole device pixels at every quarter step of screen scaling.
    side = 4.0 * pitch
    pixels = max(1, round(side * dpr))
    tile = QImage(pixels, pixels, QImage.Format.Format_ARGB32_Premultiplied)
    tile.fill(theme.color(role))
    painter = QPainter(tile)
    painter.scale(pixels / side, pixels / side)
    if shade == Shade.MODERATE:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(line, 1.3))
        for n in range(-4, 9):
            x = n * pitch
            painter.drawLine(QPointF(x - 1.0, side + 1.0), QPointF(x + side + 1.0, -1.0))
    else:
        for n in range(4):
            painter.fillRect(QRectF(n * pitch + pitch / 2.0, 0.0, 1.0, side), line)
    painter.end()
    brush = QBrush(tile)
    brush.setTransform(QTransform.fromScale(side / pixels, side / pixels))
    return brush


def paint_key(painter: QPainter, rect: QRectF, shade: Shade, theme: Theme) -> None:
    """Paint a key swatch standing on the rectangle's foot, as high as the shade's step."""
    step = KEY_HEIGHTS[shade] if shade <= Shade.HARD else KEY_HEIGHTS[0]
    height = max(1.0, round(rect.height() * step))
    box = QRectF(rect.left(), rect.bottom() - height, rect.width(), height)
    if shade > Shade.HARD:
        paint_outline(painter, box, "control", theme)
        return
    painter.setBrushOrigin(box.bottomLeft())
    painter.fillRect(box, shade_brush(shade, theme, painter.device().devicePixelRatio()))
    paint_outline(painter, box, _EDGES[shade], theme)


def paint_pennant(painter: QPainter, x: float, top: float, base: float, theme: Theme) -> None:
    """Paint a race's flag in ink: its pole at ``x`` from ``top`` down to ``base``."""
    px, ink = theme.px, theme.color("text")
    x = float(round(x))
    painter.fillRect(QRectF(x, top, 2, base - top), ink)
    flag = [QPointF(x + 1, top), QPointF(x + px(11), top + px(5)), QPointF(x + 1, top + px(10))]
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    painter.drawPolygon(QPolygonF(flag))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)


def paint_cut(painter: QPainter, end: float, base: float, height: float, theme: Theme) -> None:
    """Paint the two slanted strokes at the end of a bar that is longer than its column."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(theme.color("text"), 1.4))
    for shift in (0.0, 4.0):
        x = end + shift
        painter.drawLine(QPointF(x - 2, base + 2), QPointF(x + 3, base - height - 1))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)


class KeyStrip(QWidget):
    """What the marks mean, at the foot of the sheet; what doesn't fit goes, today first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._present = dict.fromkeys(("unjudged", "other", "cut", "planned"), False)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Key"))
        self._describe()
        themes.changed.connect(self._theme_changed)

    def set_present(
        self,
        *,
        unjudged: bool = False,
        other: bool = False,
        cut: bool = False,
        planned: bool = False,
    ) -> None:
        """Say which of the rarer marks the sheet shows."""
        self._present = {"unjudged": unjudged, "other": other, "cut": cut, "planned": planned}
        self._describe()
        self.update()

    def entries(self) -> list[str]:
        """Entries that fit the width, in their order, as they are worded in English."""
        look = themes.current()
        metrics = QFontMetricsF(look.font("small"))
        shown = [mark("easy"), mark("moderate"), mark("hard")]
        shown += [words for name, words in _RARE.items() if self._present[name]]
        shown += [*(_PLANNED if self._present["planned"] else ()), mark("race"), mark("today")]
        for going in ("today", "race", "other sport", _RARE["cut"], "unjudged"):
            room = sum(metrics.horizontalAdvance(tr(words)) + look.px(_KEY_STEP) for words in shown)
            if room > self.width() and going in shown:
                shown.remove(going)
        return shown

    def sizeHint(self) -> QSize:
        return QSize(400, themes.current().px(30))

    def minimumSizeHint(self) -> QSize:
        return QSize(0, themes.current().px(30))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = themes.current()
        painter = QPainter(self)
        painter.fillRect(self.rect(), look.color("sunken"))
        painter.fillRect(QRectF(0, 0, self.width(), 1), look.color("rule"))
        font = look.font("small")
        painter.setFont(font)
        metrics = QFontMetricsF(font)
        size = look.px(18)
        top = (self.height() - size) / 2.0
        x = float(look.px(14))
        for entry in self.entries():
            words = tr(entry)
            box = QRectF(round(x), round(top), size, size)
            x += _paint_entry(painter, box, entry, look) + look.px(7)
            painter.setPen(look.color("text_2"))
            text = QRectF(x, 0, self.width() - x, self.height())
            painter.drawText(text, Qt.AlignmentFlag.AlignVCenter, words)
            x += metrics.horizontalAdvance(words) + look.px(16)
        painter.end()

    def _describe(self) -> None:
        text = tr(
            "Easy is low and outlined, moderate is middle and slanted, hard is high and upright"
        )
        rare = [tr(_SPOKEN[name]) for name, present in self._present.items() if present]
        self.setAccessibleDescription(", ".join([text, *rare]))

    def _theme_changed(self) -> None:
        self.updateGeometry()
        self.update()


def _paint_entry(painter: QPainter, box: QRectF, words: str, theme: Theme) -> float:
    """Paint one mark of the key and return its width."""
    shades = {"easy": Shade.EASY, "moderate": Shade.MODERATE, "hard": Shade.HARD}
    if words in shades:
        paint_key(painter, box, shades[words], theme)
    elif words == _PLANNED[0]:
        painter.fillRect(
            QRectF(box.left(), box.bottom() - 3, box.width(), 2), theme.color("text_2")
        )
    elif words == _PLANNED[1]:
        low, high = box.height() * KEY_HEIGHTS[0], box.height()
        step = round(box.width() * 0.6)
        for left, width, height in ((0, step, low), (step, box.width() - step, high)):
            corner = QRectF(box.left() + left, box.bottom() - height, width, height)
            paint_outline(painter, corner, "control", theme)
    elif words in ("unjudged", "other sport"):
        paint_key(painter, box, Shade.UNJUDGED, theme)
    elif words == "race":
        paint_pennant(painter, box.left(), box.top(), box.bottom(), theme)
        return float(theme.px(12))
    elif words == "today":
        painter.fillRect(QRectF(box.left(), box.top(), 3, box.height()), theme.color("focus"))
        return 3.0
    else:
        paint_cut(painter, box.left() + 2, box.bottom() - 2, theme.px(11), theme)
        return float(theme.px(9))
    return box.width()

"""A session's stair bar with the times below its steps."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.library.views import ZERO, Five
from tercet.ui import stairs, words
from tercet.ui import theme as themes

#: Words of each step: as it is, estimated, hardly any, and as heard, also if estimated.
STEPS = (
    (
        mark("Easy {time}"),
        mark("Easy about {time}"),
        mark("Easy under {time}"),
        mark("easy {time}"),
        mark("easy about {time}"),
    ),
    (
        mark("Moderate {time}"),
        mark("Moderate about {time}"),
        mark("Moderate under {time}"),
        mark("moderate {time}"),
        mark("moderate about {time}"),
    ),
    (
        mark("Hard {time}"),
        mark("Hard about {time}"),
        mark("Hard under {time}"),
        mark("hard {time}"),
        mark("hard about {time}"),
    ),
)


def step_words(index: int, seconds: float, estimated: bool) -> str:
    """Name and time of step 0, 1 or 2: ``Easy 0:49``, ``Easy about 0:49``, ``Hard under 0:01``."""
    if 0.0 < seconds < 30.0:
        return tr(STEPS[index][2], time="0:01")
    return tr(STEPS[index][estimated], time=words.hours(seconds))


def left_out_words(seconds: Five) -> str:
    """What of the recording the three steps don't hold, in a sentence; empty if nothing."""
    unjudged = words.duration(seconds[Shade.UNJUDGED])
    other = words.duration(seconds[Shade.NOT_RUNNING])
    if seconds[Shade.UNJUDGED] >= 1.0 and seconds[Shade.NOT_RUNNING] >= 1.0:
        return tr(
            "{unjudged} of running could not be judged and {other} was not running.",
            unjudged=unjudged,
            other=other,
        )
    if seconds[Shade.UNJUDGED] >= 1.0:
        return tr("{time} of running could not be judged.", time=unjudged)
    if seconds[Shade.NOT_RUNNING] >= 1.0:
        return tr("{time} was not running.", time=other)
    return ""


class SessionStair(QWidget):
    """Easy, moderate and hard over the whole width, each step as long as it lasted."""

    def __init__(self) -> None:
        super().__init__()
        self._seconds: Five = ZERO
        self._estimated = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        themes.changed.connect(self.restyle)

    def restyle(self, *_: object) -> None:
        self.updateGeometry()
        self.update()

    def show_seconds(self, seconds: Five, estimated: bool) -> None:
        """Show a session's seconds by shade."""
        self._seconds, self._estimated = seconds, estimated
        spoken = [
            tr(step[3 + estimated], time=words.spoken(amount))
            for step, amount in zip(STEPS, seconds, strict=False)
            if amount > 0.0
        ]
        self.setAccessibleName(tr("Time in each shade"))
        self.setAccessibleDescription(", ".join(spoken) or tr("nothing judged"))
        self.update()

    def sizeHint(self) -> QSize:
        look = themes.current()
        line = QFontMetricsF(look.font("small_bold")).height()
        return QSize(look.px(300), look.px(stairs.PAGE_HEIGHTS[2] + 4) + round(line))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = themes.current()
        painter = QPainter(self)
        drawn = sum(self._seconds[:3]) + self._seconds[Shade.UNJUDGED]
        if drawn > 0.0:
            self._paint(painter, drawn, look)
        painter.end()

    def _paint(self, painter: QPainter, drawn: float, look: themes.Theme) -> None:
        per_hour = self.width() * 3600.0 / drawn
        dpr = self.devicePixelRatioF()
        laid, right = stairs.steps(0.0, per_hour, self._seconds, dpr)
        if right > self.width():
            # Short steps are widened, which the others must make room for.
            per_hour *= (2.0 * self.width() - right - 1.0) / self.width()
            laid, _ = stairs.steps(0.0, per_hour, self._seconds, dpr)
        heights = stairs.heights(stairs.PAGE_HEIGHTS, look)
        foot = float(look.px(stairs.PAGE_HEIGHTS[2]))
        stairs.paint_stair(
            painter, 0.0, foot, per_hour, self._seconds, heights, look, estimated=self._estimated
        )
        font = look.font("small_italic" if self._estimated else "small_bold")
        metrics = QFontMetricsF(font)
        painter.setFont(font)
        painter.setPen(look.color("text"))
        labels = [
            (step_words(index, self._seconds[index], self._estimated), start, end)
            for index, start, end in laid
            if index < len(STEPS)
        ]
        baseline = foot + look.px(3) + metrics.ascent()
        for text, left in place_labels(
            [(text, metrics.horizontalAdvance(text), a, b) for text, a, b in labels],
            float(self.width()),
            float(look.px(16)),
        ):
            painter.drawText(QPointF(left, baseline), text)


def place_labels(
    labels: list[tuple[str, float, float, float]], room: float, least: float
) -> list[tuple[str, float]]:
    """Set words below their steps: the first flush left, the others flush right with the step.

    Parameters
    ----------
    labels : list of (words, width, step's left, step's right)
        From left to right [px].
    room, least : float
        Width at hand and the least gap between two labels.

    Returns
    -------
    list of (words, left)
        None overlap; where they would, they are pushed right, then back inside ``room``.
    """
    lefts: list[float] = []
    for k, (_, width, start, end) in enumerate(labels):
        left = start if k == 0 else end - width
        if k:
            left = max(left, lefts[-1] + labels[k - 1][1] + least)
        lefts.append(max(left, 0.0))
    limit = room
    for k in range(len(labels) - 1, -1, -1):
        lefts[k] = max(min(lefts[k], limit - labels[k][1]), 0.0)
        limit = lefts[k] - least
    return [(label[0], left) for label, left in zip(labels, lefts, strict=True)]

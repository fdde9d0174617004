"""A session's trace in small: the shaded area and its line, without axes."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet import units
from tercet.language import mark, tr
from tercet.library.trace import SessionTrace, drawn_stretches
from tercet.ui import theme
from tercet.ui.charts.canvas import Mapper, level_line, line_pen
from tercet.ui.charts.trace_paint import Main, paint_line, paint_stretches
from tercet.ui.charts.trace_shape import columns, drawn_by, main_channel, trace_range

#: Under this height nothing could be read. [px at 100 %]
LEAST_HEIGHT = 48
#: What is drawn, by its channel.
NAMES = {
    "pace": mark("Pace through the session, shaded by intensity"),
    "power": mark("Running power through the session, shaded by intensity"),
    "heart": mark("Heart rate through the session, shaded by intensity"),
}


class SmallTrace(QWidget):
    """Draws what it was given last; nothing before."""

    def __init__(self) -> None:
        super().__init__()
        self._main: Main | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        self.setAccessibleName(tr("Trace of the session"))
        theme.changed.connect(self.update)

    def show_trace(self, trace: SessionTrace | None) -> None:
        """Draw this session, or nothing."""
        self._main = None
        if trace is not None and len(trace.seconds):
            by = drawn_by(trace)
            values, lines = main_channel(trace)
            self._main = Main(
                by=by,
                values=values,
                boundaries=(None, None),
                # The same ends as on the session's page, so that an even run looks even.
                ends=trace_range(values, trace.shades, lines, 0.07),
                stretches=drawn_stretches(trace.shades),
                trace=trace,
                units=units.chosen(),
            )
            self.setAccessibleName(tr(NAMES[by]))
        self.update()

    @property
    def shown(self) -> bool:
        """Whether there is a trace to see."""
        return self._main is not None

    def sizeHint(self) -> QSize:
        """What the card has room for."""
        return QSize(300, theme.current().px(110))

    def minimumSizeHint(self) -> QSize:
        """It gives way before all else."""
        return QSize(0, 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the area and the line."""
        look = theme.current()
        main = self._main
        area = QRectF(self.rect()).adjusted(0.0, 2.0, 0.0, 0.0)
        if main is None or area.height() < look.px(LEAST_HEIGHT):
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        across = area.width() / max(main.trace.elapsed_s, 1.0)
        up = area.height() / (main.ends.high - main.ends.low)
        mapper = Mapper(QTransform(across, 0, 0, -up, 0, area.bottom() + main.ends.low * up), area)
        painter.setClipRect(area)
        seconds = main.trace.seconds
        paint_stretches(painter, mapper, seconds, main.values, main.stretches, look)
        x, y = columns(seconds, main.values, int(area.width()))
        paint_line(painter, mapper, x, y, look)
        foot = line_pen(look.color("text_2"), 1.4)
        level_line(painter, area.left(), area.right(), area.bottom() - 1.0, foot)
        painter.end()

"""A session's trace, shaded, with its other channels in strips below, and a line to look along."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import partial

import pyqtgraph as pg
from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QPainter

from tercet.language import tr
from tercet.library.trace import SessionTrace, drawn_stretches
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.charts.canvas import Axis, Canvas, Drawing, KeptDrawing, Mapper
from tercet.ui.charts.trace_paint import (
    Main,
    paint_boundaries,
    paint_main,
    paint_stretch,
    paint_strip,
)
from tercet.ui.charts.trace_shape import (
    Range,
    drawn_by,
    even_marks,
    main_channel,
    pace_marks,
    trace_range,
)
from tercet.ui.charts.trace_strips import BEAT_STEPS, WATT_STEPS, Strip, strips_of

MARGIN = 0.07
#: A shorter drag is a click. [s]
SHORTEST_CHOSEN_S = 3
MINUTE_STEPS = tuple(60.0 * m for m in (1, 2, 5, 10, 15, 20, 30, 60, 120))


class _Panel:
    """One plot with its axes and its piece of the line one looks along."""

    def __init__(self, chart: Canvas, name: str, drawings: Sequence[Drawing]) -> None:
        self.name = name
        self.left, self.foot = Axis("left"), Axis("bottom", stroke=4.0)
        self.plot = chart.make_plot(self.left, self.foot)
        self.line = pg.InfiniteLine(angle=90, movable=False)
        self.line.setZValue(20.0)
        self.line.setVisible(False)
        for item in (*drawings, self.line):
            self.plot.addItem(item)


class TraceChart(Canvas):
    """Pace through a session (else power, else heart rate), shaded second by second.

    ``second_pointed`` gives the second under the pointer or the arrow keys, -1 when it leaves;
    ``repetition_pointed`` the repetition clicked, counted from 0, or -1. A stretch is chosen by
    dragging, or by Space at its beginning and Enter at its end; Esc lets it go.
    """

    second_pointed = Signal(int)
    repetition_pointed = Signal(int)
    stretch_chosen = Signal(int, int)  # first second and the one after the last

    def __init__(self) -> None:
        super().__init__()
        self._trace: SessionTrace | None = None
        self._main: Main | None = None
        self._strips: dict[str, Strip] = {}
        self._units: words.Units = "km"
        self._second = -1
        self._selected = -1
        self._begun = -1  # where a stretch begins, while it is being chosen
        self._stretch: tuple[int, int] | None = None
        boundaries = Drawing(self._paint_boundaries, z=10.0)
        chosen = Drawing(self._paint_stretch, z=15.0)
        # Kept as pictures, for the line one looks along passes over them.
        self._main_drawn = KeptDrawing(self._paint_main)
        self._strips_drawn = {
            name: KeptDrawing(partial(self._paint_strip, name))
            for name in ("heart", "power", "height")
        }
        self._all = (
            _Panel(self, "main", [self._main_drawn, boundaries, chosen]),
            *(_Panel(self, name, [drawn]) for name, drawn in self._strips_drawn.items()),
        )
        self._panels: tuple[_Panel, ...] = ()
        self.setAccessibleName(tr("Trace of the session"))
        self.restyle()

    @property
    def second(self) -> int:
        """The second the line stands on, -1 if none."""
        return self._second

    @property
    def selected(self) -> int:
        """The repetition marked, counted from 0, -1 if none."""
        return self._selected

    @property
    def strips_pixels(self) -> int:
        """How high the strips below the trace are. [px at 100 %]"""
        return sum(strip.pixels for strip in self._strips.values())

    def set_data(self, trace: SessionTrace, units: words.Units = "km") -> None:
        """Draw this session; nothing is marked or pointed at any more."""
        self._trace, self._units = trace, units
        self._second = self._selected = self._begun = -1
        self._stretch = None
        values, boundaries = main_channel(trace)
        self._main = Main(
            by=drawn_by(trace),
            values=values,
            boundaries=boundaries,
            ends=trace_range(values, trace.shades, boundaries, MARGIN),
            stretches=drawn_stretches(trace.shades),
            trace=trace,
            units=units,
        )
        self._strips = strips_of(trace)
        for drawn in (self._main_drawn, *self._strips_drawn.values()):
            drawn.forget()
        self._show_panels()
        self.lay_out()
        self.redraw()

    def mark_repetition(self, index: int) -> None:
        """Mark a repetition, counted from 0; -1 marks none."""
        self._selected = index
        self._main_drawn.forget()
        self.redraw()

    def point(self, second: int) -> None:
        """Put the line on a second of the session, or take it away with -1."""
        if self._trace is None or second == self._second:
            return
        self._second = min(second, len(self._trace.seconds) - 1)
        for panel in self._panels:
            panel.line.setVisible(self._second >= 0)
            if self._second >= 0:
                panel.line.setValue(float(self._second) + 0.5)
        self.second_pointed.emit(self._second)

    @property
    def stretch(self) -> tuple[int, int] | None:
        """The stretch chosen, as its first second and the one after its last."""
        return self._stretch

    def choose_stretch(self, stretch: tuple[int, int] | None) -> None:
        """Choose a stretch, or none."""
        self._stretch = stretch
        self.redraw()

    def _show_panels(self) -> None:
        """Show the panels that this session fills."""
        for panel in self._panels:
            self.ci.removeItem(panel.plot)
        filled = {"main", *self._strips}
        self._panels = tuple(panel for panel in self._all if panel.name in filled)
        for row, panel in enumerate(self._panels):
            self.ci.addItem(panel.plot, row, 0)
            panel.line.setVisible(False)
            panel.plot.showAxis("bottom", row == len(self._panels) - 1)

    def lay_out(self) -> None:
        if self._trace is None or self._main is None:
            return
        look = themes.current()
        line = QFontMetricsF(look.font("small")).height()
        main, trace = self._main, self._trace
        foot = math.ceil(line + look.px(8))
        last = self._panels[-1]
        last.foot.setHeight(foot)
        strips = [self._strips[panel.name] for panel in self._panels[1:]]
        heights = [look.px(strip.pixels) for strip in strips]
        for panel, height in zip(self._panels[1:], heights, strict=True):
            panel.plot.setFixedHeight(height + (foot if panel is last else 0))
        main_height = max(self.height() - sum(heights) - foot, 1.0)
        head = 2.2 * line if trace.repetitions or trace.parts else 0.6 * line
        span = (main.ends.high - main.ends.low) * main_height / max(main_height - head, 1.0)
        ranges = [Range(main.ends.low, main.ends.low + span)]
        marks = [self._main_marks(main, main_height - head, line)]
        for strip, height in zip(strips, heights, strict=True):
            ends, labelled = strip.ends_and_marks(trace.shades, height, line)
            ranges.append(ends)
            marks.append([(value, words.number(value)) for value in labelled])
        metrics = QFontMetricsF(look.font("small"))
        widest = max((metrics.horizontalAdvance(w) for m in marks for _, w in m), default=0.0)
        gutter = math.ceil(widest + look.px(12))
        length = max(trace.elapsed_s, 1.0)
        pen = pg.mkPen(look.color("text"), width=1)
        for panel, ends, labels in zip(self._panels, ranges, marks, strict=True):
            panel.left.setWidth(gutter)
            panel.left.set_marks(labels)
            panel.line.setPen(pen)
            box = panel.plot.vb
            box.setRange(xRange=(0.0, length), yRange=(ends.low, ends.high), padding=0.0)
        last.foot.set_marks(self._time_marks(length, self.width() - gutter, line))
        self.ci.layout.activate()  # now, not after a first painting in the old places
        for panel in self._panels:
            panel.plot.layout.activate()

    def _main_marks(self, main: Main, pixels: float, line: float) -> list[tuple[float, str]]:
        if main.by == "pace":
            speeds = pace_marks(main.ends, words.UNIT_METRES[self._units], pixels, 1.7 * line)
            marks = [(speed, words.bare_pace(speed, self._units)) for speed in speeds]
        else:
            steps = WATT_STEPS if main.by == "power" else BEAT_STEPS
            values = even_marks(main.ends, pixels, 1.7 * line, steps)
            marks = [(value, words.number(value)) for value in values]
        self._main = main.with_grid(tuple(value for value, _ in marks))
        return marks

    def _time_marks(self, length: float, pixels: float, line: float) -> list[tuple[float, str]]:
        """Minutes along the foot, hours and minutes for the long; the unit at the end."""
        seconds = even_marks(Range(0.0, length), pixels, 4.0 * line, MINUTE_STEPS)
        long = length > 6000.0
        unit = tr("h:min") if long else tr("min")
        room = 3.0 * line / max(pixels, 1.0) * length
        marks = [
            (s, words.hours(s) if long else words.number(s / 60.0))
            for s in seconds
            if s <= length - room
        ]
        return [*marks, (length, unit)]

    def _paint_main(self, painter: QPainter, mapper: Mapper) -> None:
        if self._main is not None:
            paint_main(painter, mapper, self._main, self._selected, themes.current())

    def _paint_boundaries(self, painter: QPainter, mapper: Mapper) -> None:
        if self._main is not None:
            paint_boundaries(painter, mapper, self._main, themes.current())

    def _paint_stretch(self, painter: QPainter, mapper: Mapper) -> None:
        if self._stretch is not None:
            paint_stretch(painter, mapper, self._stretch, themes.current())

    def _paint_strip(self, name: str, painter: QPainter, mapper: Mapper) -> None:
        if self._main is not None and name in self._strips:
            paint_strip(painter, mapper, self._main, self._strips[name], themes.current())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        second = self._second_at(event.position())
        self.point(second)
        if event.buttons() & Qt.MouseButton.LeftButton and self._begun >= 0 and second >= 0:
            self._stretch_to(second)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        begun, self._begun = self._begun, -1
        if begun >= 0 and self._stretch is not None:
            self.stretch_chosen.emit(*self._stretch)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.point(-1)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        second = self._second_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and second >= 0:
            self._choose(self._repetition_at(second))
            self._begun = second
            self.choose_stretch(None)

    def _stretch_to(self, second: int) -> None:
        """Choose from where it was begun to here, if that is long enough to be meant."""
        low, high = sorted((self._begun, second))
        self.choose_stretch((low, high + 1) if high - low >= SHORTEST_CHOSEN_S else None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._trace is None or not len(self._trace.seconds):
            event.ignore()
            return
        last = len(self._trace.seconds) - 1
        step = 1
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            step = 10
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            step = 60
        wanted = {
            Qt.Key.Key_Left: max(self._second - step, 0),
            Qt.Key.Key_Right: min(self._second + step, last),
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }.get(Qt.Key(event.key()))
        if wanted is not None:
            self.show_ring()
            self.point(wanted)
            if self._begun >= 0:
                self._stretch_to(wanted)
        elif event.key() == Qt.Key.Key_Space and self._second >= 0:
            self._begun = self._second
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._stretch is not None:
            self._begun = -1
            self.stretch_chosen.emit(*self._stretch)
        elif event.key() == Qt.Key.Key_Escape and (self._begun >= 0 or self._stretch is not None):
            self._begun = -1
            self.choose_stretch(None)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._second >= 0:
            self._choose(self._repetition_at(self._second))
        elif event.key() == Qt.Key.Key_Escape and self._second >= 0:
            self.point(-1)
        else:
            event.ignore()

    def _choose(self, index: int) -> None:
        self.mark_repetition(index)
        self.repetition_pointed.emit(index)

    def _second_at(self, position: QPointF) -> int:
        """The second under a point of the widget, -1 outside the plots."""
        if self._trace is None or not len(self._trace.seconds):
            return -1
        scene = self.mapToScene(position.toPoint())
        boxes = [panel.plot.vb for panel in self._panels]
        if not any(box.sceneBoundingRect().contains(scene) for box in boxes):
            return -1
        second = math.floor(boxes[0].mapSceneToView(scene).x())
        return min(max(second, 0), len(self._trace.seconds) - 1)

    def place_of(self, second: int) -> float:
        """Where a second stands, from the widget's left edge [px]."""
        box = self._panels[0].plot.vb
        return float(self.mapFromScene(box.mapViewToScene(QPointF(second, 0.0))).x())

    def _repetition_at(self, second: int) -> int:
        assert self._trace is not None
        for index, repetition in enumerate(self._trace.repetitions):
            if repetition.start_s <= second < repetition.start_s + repetition.duration_s:
                return index
        return -1

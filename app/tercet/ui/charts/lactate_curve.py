"""A step test: each candidate in its own row over the curve, the area shaded by the choice."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QRadioButton, QSizePolicy, QWidget

from tercet.engine import lactate
from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.library.engine_words import worded
from tercet.ui import stairs, theme, words

LINES = ("LT1", "LT2")
METHODS = {
    "log-log": mark("log-log"),
    "baseline + 0.5": mark("baseline + 0.5"),
    "baseline + 1.0": mark("baseline + 1.0"),
    "fixed 2.0": mark("fixed 2.0"),
    "fixed 4.0": mark("fixed 4.0"),
    "modified Dmax": mark("modified Dmax"),
}
_APART = {"km": mark("{seconds} s/km apart"), "miles": mark("{seconds} s/mile apart")}
#: Widths left of the plot, and the height of the curve. [px at 100 %]
NAMES, MARGIN, CURVE = 210, 64, 124


class LactateChart(QWidget):
    """Radios at the left, dots on the curve's speed axis at the right, the curve below them."""

    chosen = Signal()

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        self._test: lactate.StepTest | None = None
        self._found: tuple[lactate.Candidate, ...] = ()
        self.radios: dict[str, QRadioButton] = {}
        self._groups: list[QButtonGroup] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Lactate curve with candidates for LT1 and LT2"))
        theme.changed.connect(self._restyle)

    def set(self, test: lactate.StepTest | None) -> None:
        """Show a test with its candidates; the middle one of each line is chosen first."""
        before = {line: self.choice(line) for line in LINES}
        for radio in self.radios.values():
            radio.hide()
            radio.deleteLater()
        self.radios, self._groups = {}, []
        self._test = test
        self._found = lactate.candidates(test) if test is not None else ()
        for line in LINES:
            group = QButtonGroup(self)
            self._groups.append(group)
            kept, offered = before[line], lactate.middle(self._found, line)
            for item in self._of(line):
                radio = QRadioButton(tr(METHODS.get(item.method, item.method)), self)
                radio.setEnabled(not item.reason)
                radio.setToolTip(worded(item.reason))
                said = worded(item.reason) or words.pace(item.speed, self._units)
                radio.setAccessibleName(f"{line}, {radio.text()}: {said}")
                group.addButton(radio)
                self.radios[item.method] = radio
                wanted = kept.method if kept is not None else offered and offered.method
                if item.method == wanted and not item.reason:
                    radio.setChecked(True)
                radio.toggled.connect(self._toggled)
                radio.show()
            if group.checkedButton() is None and offered is not None:
                self.radios[offered.method].setChecked(True)
        self._restyle()

    def _of(self, line: str) -> Sequence[lactate.Candidate]:
        group = [item for item in self._found if item.line == line]
        return sorted(group, key=lambda item: (bool(item.reason), item.speed))

    def choice(self, line: str) -> lactate.Candidate | None:
        """The candidate chosen for a line."""
        return next(
            (
                item
                for item in self._of(line)
                if item.method in self.radios and self.radios[item.method].isChecked()
            ),
            None,
        )

    def _toggled(self, on: bool) -> None:
        if on:
            self.update()
            self.chosen.emit()

    def _restyle(self, *_: object) -> None:
        self.updateGeometry()
        self.setMinimumHeight(self.sizeHint().height())
        self._place()
        self.update()

    @property
    def _row(self) -> int:
        return theme.current().px(28)

    def sizeHint(self) -> QSize:
        """All rows and the curve."""
        rows = len(self._found) + 2 if self._found else 0
        return QSize(560, rows * self._row + theme.current().px(CURVE))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep each radio in its row."""
        self._place()

    def _rows(self) -> list[tuple[str, lactate.Candidate | None, int]]:
        """Heading or candidate of every row, with its top."""
        out: list[tuple[str, lactate.Candidate | None, int]] = []
        for line in LINES:
            items = self._of(line)
            if items:
                out.append((line, None, len(out) * self._row))
            out += [(line, item, (len(out) + k) * self._row) for k, item in enumerate(items)]
        return out

    def _place(self) -> None:
        look = theme.current()
        for _, item, top in self._rows():
            if item is not None:
                radio = self.radios[item.method]
                radio.setFont(look.font("small"))
                radio.setGeometry(0, top, look.px(NAMES - 66), self._row)

    # Painting ----------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw rows, brackets, lines and the curve."""
        test = self._test
        if test is None:
            return
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(look.font("small"))
        metrics = QFontMetricsF(painter.font())
        rows = self._rows()
        left = look.px(NAMES + 20)
        head = len(rows) * self._row
        area = QRectF(
            left, head + look.px(6), self.width() - left - look.px(MARGIN),
            self.height() - head - look.px(34),
        )  # fmt: skip
        low, high = float(test.speeds[0]), float(test.speeds[-1])

        def x_of(speed: float) -> float:
            return area.left() + (speed - low) / (high - low) * area.width()

        top = float(max(test.lactates.max(), 5.0)) * 1.05

        def y_of(value: float) -> float:
            return area.bottom() - value / top * area.height()

        self._paint_rows(painter, look, metrics, rows, area, x_of)
        self._paint_curve(painter, look, area, x_of, y_of)
        self._paint_axes(painter, look, metrics, area, x_of, y_of, top)

    def _paint_rows(self, painter, look, metrics, rows, area, x_of) -> None:  # type: ignore[no-untyped-def]
        lift = metrics.ascent() / 2 - 1
        for line, item, y in rows:
            middle = y + self._row / 2
            if item is None:
                painter.setFont(look.font("small_bold"))
                painter.setPen(look.color("text"))
                painter.drawText(QPointF(0, middle + lift), tr("{line}, choose one", line=line))
                painter.setFont(look.font("small"))
                self._paint_bracket(painter, look, metrics, line, area, middle, x_of)
                continue
            painter.setPen(look.color("rule"))
            painter.drawLine(QPointF(area.left(), middle), QPointF(area.right(), middle))
            chosen = self.radios[item.method].isChecked()
            painter.setFont(look.font("small_bold" if chosen else "small"))
            painter.setPen(look.color("text_3" if item.reason else "text"))
            text = words.NOTHING if item.reason else words.bare_pace(item.speed, self._units)
            wide = QFontMetricsF(painter.font()).horizontalAdvance(text)
            painter.drawText(QPointF(look.px(NAMES) - wide, middle + lift), text)
            painter.setFont(look.font("small"))
            if item.reason:
                painter.drawText(QPointF(area.left(), middle + lift), worded(item.reason))
                continue
            painter.setPen(QPen(look.color("text"), 1.5))
            x = x_of(item.speed)
            if chosen:
                painter.drawLine(QPointF(x, middle), QPointF(x, area.bottom()))
            painter.setBrush(look.color("text" if chosen else "pane"))
            painter.drawEllipse(QPointF(x, middle), 4, 4)

    def _paint_bracket(self, painter, look, metrics, line, area, y, x_of) -> None:  # type: ignore[no-untyped-def]
        speeds = [item.speed for item in self._of(line) if not item.reason]
        if len(speeds) < 2:
            return
        ends = [x_of(min(speeds)), x_of(max(speeds))]
        painter.setPen(look.color("text_2"))
        painter.drawLine(QPointF(ends[0], y), QPointF(ends[1], y))
        for x in ends:
            painter.drawLine(QPointF(x, y - 3), QPointF(x, y + 3))
        metres = words.UNIT_METRES[self._units]
        apart = round(metres / min(speeds) - metres / max(speeds))
        text = tr(_APART[self._units], seconds=apart)
        wide = metrics.horizontalAdvance(text)
        x = ends[1] + look.px(10)
        if x + wide > self.width():
            x = ends[0] - look.px(10) - wide
        painter.drawText(QPointF(x, y + metrics.ascent() / 2 - 1), text)

    def _paint_curve(self, painter, look, area, x_of, y_of) -> None:  # type: ignore[no-untyped-def]
        test = self._test
        assert test is not None
        low, high = float(test.speeds[0]), float(test.speeds[-1])
        one, two = self.choice("LT1"), self.choice("LT2")
        edges = [low, *(item.speed if item is not None else high for item in (one, two)), high]
        dpr = painter.device().devicePixelRatio()
        for shade, begin, end in zip(Shade, edges, edges[1:], strict=False):
            if end <= begin or (one is None or two is None):
                continue
            x = np.linspace(begin, end, 60)
            y = np.maximum(lactate.curve(test, x), 0.0)
            points = [
                QPointF(x_of(a), y_of(b)) for a, b in zip(x.tolist(), y.tolist(), strict=True)
            ]
            points += [QPointF(x_of(end), area.bottom()), QPointF(x_of(begin), area.bottom())]
            painter.setPen(look.color("pane"))
            painter.setBrushOrigin(area.bottomLeft())
            painter.setBrush(stairs.shade_brush(Shade(shade), look, dpr))
            painter.drawPolygon(QPolygonF(points))
        x = np.linspace(low, high, 160)
        curve = lactate.curve(test, x)
        painter.setPen(QPen(look.color("text"), 1.8))
        painter.drawPolyline(
            QPolygonF([QPointF(x_of(a), y_of(b)) for a, b in zip(x, curve, strict=True)])
        )
        painter.setBrush(look.color("pane"))
        for speed, value in zip(test.speeds.tolist(), test.lactates.tolist(), strict=True):
            painter.drawEllipse(QPointF(x_of(speed), y_of(value)), 3.5, 3.5)

    def _paint_axes(self, painter, look, metrics, area, x_of, y_of, top) -> None:  # type: ignore[no-untyped-def]
        painter.setPen(QPen(look.color("text_2"), 1.5))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        painter.setPen(look.color("text_2"))
        for value in (2.0, 4.0, 8.0, 12.0):
            if value < top:
                text = words.number(value) + (" mmol/L" if value == 4.0 else "")
                y = y_of(value)
                wide = metrics.horizontalAdvance(text)
                at = QPointF(area.left() - wide - look.px(8), y + metrics.ascent() / 2 - 1)
                painter.drawText(at, text)
                painter.drawLine(QPointF(area.left() - 4, y), QPointF(area.left(), y))
        test = self._test
        assert test is not None
        kmh = 3.6
        first, last = int(np.ceil(test.speeds[0] * kmh)), int(test.speeds[-1] * kmh)
        for value in range(first, last + 1):
            text = tr("{speed} km/h", speed=value) if value == last else str(value)
            wide = metrics.horizontalAdvance(str(value))
            at = QPointF(x_of(value / kmh) - wide / 2, area.bottom() + look.px(20))
            painter.drawText(at, text)

"""One column of the bench: four fields for a set, what is predicted of it, three values."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from tercet import units
from tercet.engine.scale import Thresholds
from tercet.engine.uptake import Predicted, predict
from tercet.language import mark, tr
from tercet.ui import theme, words
from tercet.ui.amounts import mark_wrong
from tercet.ui.bench_chart import BenchChart, session_s
from tercet.ui.twin import Twin
from tercet.ui.widgets import ElidedLabel, Figure, Label

_LENGTH = re.compile(r"\s*(\d{2,5})\s*m?\s*|\s*(\d{1,2}(?:[.,]\d{1,3})?)\s*km\s*")
_CLOCK = re.compile(r"\s*(\d{1,2}):([0-5]\d)\s*(?:min)?\s*")
_PACE = re.compile(r"\s*(\d{1,2}):([0-5]\d)\s*(?:/\s*(km|mile|mi))?\s*")
_RECOVERY = re.compile(r"\s*(\d{1,2}):([0-5]\d)\s*([^\W\d_]+)?\s*")
#: What a recovery may be, as it is typed and written.
HOWS = {"jog": mark("jog"), "walk": mark("walk"), "stand": mark("stand")}
LONG_SET = mark("Give a set of less than 4 hours.")
#: Sessions longer than this are not drawn. [s]
LONGEST_S = 4 * 3600.0


@dataclass(frozen=True)
class Sketch:
    """A set as typed; its length is in metres, or in seconds where they are given."""

    count: int
    metres: float | None
    seconds: float | None
    speed: float  # [m/s]
    recovery_s: float
    how: str

    @property
    def work_s(self) -> float:
        """Time of one repetition [s]."""
        return self.seconds if self.seconds is not None else (self.metres or 0.0) / self.speed

    @property
    def total_m(self) -> float:
        """Metres of all repetitions."""
        return self.count * self.speed * self.work_s

    @property
    def notation(self) -> str:
        """The set in the notation of paper logs, which keeps its pace."""
        length = f"{self.metres:.0f} m" if self.metres else f"{self.work_s:.0f} s"
        pace = words.bare_pace(self.speed, "km")
        how = {"stand": "rest"}.get(self.how, self.how)
        recovery = f" / {self.recovery_s:.0f} s {how}" if self.recovery_s else ""
        return f"{self.count} x {length} @ {pace}/km{recovery}"

    def split(self, times: float) -> Sketch:
        """The same metres in repetitions so many times as long, recovery as long in proportion."""
        count = max(1, round(self.count / times))
        metres = self.total_m / count
        return Sketch(
            count, round(metres / 10) * 10.0, None, self.speed, self.recovery_s * times, self.how
        )


class BenchSet(QWidget):
    """Fields and picture of one set; ``changed`` follows every valid edit."""

    changed = Signal()

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name
        self.sketch: Sketch | None = None
        self.predicted: Predicted | None = None
        self.count, self.length = QLineEdit(), QLineEdit()
        self.pace, self.recovery = QLineEdit(), QLineEdit()
        fields = QGridLayout()
        fields.setHorizontalSpacing(6)
        fields.setVerticalSpacing(2)
        for place, (word, field, stretch) in enumerate(
            (
                (tr("count"), self.count, 3),
                (tr("length"), self.length, 5),
                (tr("pace"), self.pace, 5),
                (tr("recovery"), self.recovery, 5),
            )
        ):
            label = Label(word, "small", "text_2")
            label.setBuddy(field)
            field.setAccessibleName(f"{name}: {word}")
            field.textEdited.connect(self._typed)
            fields.addWidget(label, 0, place)
            fields.addWidget(field, 1, place)
            fields.setColumnStretch(place, stretch)
        self.total = Label("", "small_bold")
        self.session = ElidedLabel("", "small", "text_2")
        line = QHBoxLayout()
        line.addWidget(self.total)
        line.addWidget(self.session, 1)
        self.chart = BenchChart(name)
        self.twin = Twin(self.chart, tr("{name}, half a minute a row", name=name), self)
        self.near, self.highest = Figure(tr("near highest")), Figure(tr("highest uptake"))
        self.heart = Figure(tr("highest heart rate"))
        values = QHBoxLayout()
        for figure in (self.near, self.highest, self.heart):
            values.addWidget(figure)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(fields)
        column.addLayout(line)
        column.addWidget(self.twin, 1)
        column.addLayout(values)
        self._dress()
        theme.changed.connect(self._dress)

    def put(self, sketch: Sketch) -> None:
        """Fill the fields."""
        self.count.setText(str(sketch.count))
        length = f"{sketch.metres:.0f} m" if sketch.metres else words.duration(sketch.work_s)
        self.length.setText(length)
        self.pace.setText(words.pace(sketch.speed))
        how = tr(HOWS.get(sketch.how, sketch.how))
        self.recovery.setText(f"{words.duration(sketch.recovery_s)} {how}")
        self.read()

    def read(self) -> bool:
        """Take the fields over; those that cannot be say why, and the picture stays."""
        count = int(self.count.text()) if self.count.text().strip().isdigit() else 0
        metres, seconds = _length_of(self.length.text())
        speed = _speed_of(self.pace.text())
        rest = _recovery_of(self.recovery.text())
        fine = [1 <= count <= 60, bool(metres or seconds), speed is not None, rest is not None]
        for field, good, example in zip(
            (self.count, self.length, self.pace, self.recovery),
            fine,
            (
                tr("Give 1 to 60 repetitions."),
                tr("Give a length such as 200 m, 1000 m or 3:00."),
                tr("Give a pace such as {pace}.", pace=words.pace(5.0)),
                tr("Give a recovery such as 1:00 jog, walk or stand."),
            ),
            strict=True,
        ):
            mark_wrong(field, "" if good else example)
            if not good:
                self._tell(example)
        if not all(fine) or speed is None or rest is None:
            return False
        recovery, how = rest
        made = Sketch(count, metres, seconds, speed, recovery, how)
        if not 1 <= made.work_s <= 7200 or made.count * (made.work_s + recovery) > LONGEST_S:
            mark_wrong(self.count, tr(LONG_SET))
            self._tell(tr(LONG_SET))
            return False
        self.sketch = made
        return True

    def _tell(self, problem: str) -> None:
        """Say what is wrong in place of the set's sums."""
        self.total.clear()
        self.session.setText(problem)

    def reckon(self, thresholds: Thresholds) -> None:
        """Predict the set for a runner and show its values."""
        s = self.sketch
        if s is None:
            return
        self.predicted = found = predict(
            s.count, s.work_s, s.speed, s.recovery_s, s.how, thresholds
        )
        time = words.duration(s.count * s.work_s)
        self.total.setText(tr("{length} fast in {time}", length=words.bout(s.total_m), time=time))
        minutes = round(session_s(found) / 60.0)
        self.session.setText(tr("session {n} min, without warm-up", n=minutes))
        self.near.set(words.duration(found.near_s))
        self.highest.set(words.share(found.highest))
        beats = found.highest_heart_rate
        self.heart.set(words.heart_rate(beats) if math.isfinite(beats) else tr("not known"))
        self.twin.set_numbers(lambda: (tuple(map(tr, HEADINGS)), table_rows(found)), {1})
        self.chart.describe(
            tr(
                "Predicted for {count} of {length}: highest uptake {highest}, {near} near the "
                "highest, heart rate up to {heart}.",
                count=s.count,
                length=self.length.text(),
                highest=self.highest.value.text(),
                near=self.near.value.text(),
                heart=self.heart.value.text(),
            )
        )

    def _typed(self) -> None:
        if self.read():
            self.changed.emit()

    def _dress(self) -> None:
        look = theme.current()
        self.setMinimumWidth(look.px(290))
        for field in (self.count, self.length, self.pace, self.recovery):
            field.setMinimumWidth(look.px(44))


HEADINGS = (mark("Time"), "", mark("Uptake"), mark("Heart rate"))


def table_rows(predicted: Predicted) -> list[tuple[str, ...]]:
    """A prediction in steps of half a minute, under :data:`HEADINGS`."""
    rows: list[tuple[str, ...]] = []
    for second in range(0, len(predicted.work), 30):
        beats = float(predicted.heart_rate[second])
        rows.append(
            (
                words.duration(second),
                tr("repetition") if predicted.work[second] else tr("easy"),
                words.share(float(predicted.uptake[second])),
                words.heart_rate(beats) if math.isfinite(beats) else "",
            )
        )
    return rows


def _length_of(text: str) -> tuple[float | None, float | None]:
    clock = _CLOCK.fullmatch(text)
    if clock is not None:
        return None, int(clock[1]) * 60.0 + int(clock[2]) or None
    found = _LENGTH.fullmatch(text)
    if found is None:
        return None, None
    metres = float(found[1]) if found[1] else float(found[2].replace(",", ".")) * 1000.0
    return (metres if 20 <= metres <= 20_000 else None), None


def _recovery_of(text: str) -> tuple[float, str] | None:
    """Seconds of a recovery and how it is spent, a jog unless said; None if it is none."""
    found = _RECOVERY.fullmatch(text)
    known = {word: key for key, english in HOWS.items() for word in (english, tr(english))}
    how = known.get(found[3] or "jog") if found is not None else None
    if found is None or how is None:
        return None
    return int(found[1]) * 60.0 + int(found[2]), how


def _speed_of(text: str) -> float | None:
    found = _PACE.fullmatch(text)
    seconds = int(found[1]) * 60 + int(found[2]) if found is not None else 0
    if found is None or not seconds:
        return None
    unit = {"km": "km", "mile": "miles", "mi": "miles"}.get(found[3], units.chosen())
    speed = units.METRES[unit] / seconds
    return speed if 1.0 <= speed <= 10.0 else None

"""Thresholds: what is in force, three plain ways to better ones, and what each would change."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from threading import Event
from typing import Any, Literal

from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDateEdit,
    QDialog,
    QDoubleSpinBox,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QProgressBar,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import DatedThresholds
from tercet.engine import Thresholds, check_thresholds, estimate, physiology
from tercet.library.library import Library, Preview
from tercet.library.reading import in_force
from tercet.library.season_file import speed_of
from tercet.ui import words
from tercet.ui.jobs import Job
from tercet.ui.widgets import Label, Rule, StairWidget, button

Page = Literal["race", "maximum", "typed"]
PAGES: tuple[Page, ...] = ("race", "maximum", "typed")
DISTANCES = (
    ("5 km", 5000.0),
    ("10 km", 10000.0),
    ("Half marathon", 21097.5),
    ("Marathon", 42195.0),
    ("1 mile", 1609.344),
    ("3 km", 3000.0),
)
CAUTION = (
    "Estimates and formulas can be well off for one person. With heart disease, heart medicines, "
    "pain, illness, or after a long break, ask a doctor before training hard; stop if you feel "
    "chest pain, faintness or unusual breathlessness."
)


def duration_of(text: str) -> float:
    """Seconds of a time such as 44:10 or 1:35:20.

    Raises
    ------
    ValueError
        If it is none.
    """
    parts = text.strip().split(":")
    if len(parts) not in (2, 3) or not all(part.isascii() and part.isdigit() for part in parts):
        raise ValueError(f'"{text.strip()}" is no time: write 44:10, or 1:35:20 with hours')
    numbers = [int(part) for part in parts]
    if any(number > 59 for number in numbers[1:]):
        raise ValueError(f'"{text.strip()}" has over 59 minutes or seconds')
    total = 0
    for number in numbers:
        total = total * 60 + number
    return float(total)


class ThresholdsDialog(QDialog):
    """Asks for one thing, shows what it would change, and applies it on one click."""

    applied = Signal(object)  # Changes

    def __init__(
        self,
        library: Library,
        entries: list[DatedThresholds],
        page: Page = "typed",
        units: words.Units = "km",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Thresholds")
        self.setMinimumWidth(560)
        self._library, self._entries, self._units = library, entries, units
        self._job: Job | None = None
        self._preview: Preview | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 16)
        column.setSpacing(10)
        column.addWidget(Label("Thresholds", "pane_title"))
        column.addWidget(Label(self._now_words(), "body", "text_2", wrap=True))
        self.tabs = QTabWidget()
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(self._race_page(), "A recent race")
        self.tabs.addTab(self._maximum_page(), "Highest heart rate or age")
        self.tabs.addTab(self._typed_page(), "The thresholds themselves")
        self.tabs.setCurrentIndex(PAGES.index(page))
        self.tabs.currentChanged.connect(lambda _: self._forget())
        column.addWidget(self.tabs)
        line = QHBoxLayout()
        line.addWidget(Label("In force from"))
        self.start = QDateEdit(QDate.currentDate())
        self.start.setCalendarPopup(True)
        self.start.setAccessibleName("In force from")
        self.start.dateChanged.connect(lambda _: self._forget())
        line.addWidget(self.start)
        self.reach = QComboBox()
        self.reach.setAccessibleName("Which runs are judged by them")
        self.reach.addItem("runs before it too", "all")
        self.reach.addItem("from that day on only", "later")
        only_guess = all(entry.estimated for entry in entries)
        self.reach.setCurrentIndex(0 if only_guess else 1)
        self.reach.currentIndexChanged.connect(lambda _: self._forget())
        line.addWidget(self.reach)
        line.addStretch()
        column.addLayout(line)
        self.error = Label("", "small", "not_read", wrap=True)
        self.error.hide()
        column.addWidget(self.error)
        column.addWidget(Rule())
        column.addWidget(self._change_part())
        column.addWidget(Label(CAUTION, "small", "text_2", wrap=True))
        buttons = QHBoxLayout()
        buttons.addStretch()
        self.keep = button("Keep it as it is")
        self.keep.clicked.connect(self.reject)
        self.show_change = button("Show what it would change", primary=True)
        self.show_change.clicked.connect(self._ask)
        self.use = button("Use these", primary=True)
        self.use.clicked.connect(self._apply)
        self.use.hide()
        for made in (self.keep, self.show_change, self.use):
            made.setAutoDefault(False)
            buttons.addWidget(made)
        self.show_change.setDefault(True)
        column.addLayout(buttons)

    # Pages -------------------------------------------------------------------------------

    def _race_page(self) -> QWidget:
        page = QWidget()
        form = QFormLayout(page)
        self.distance = QComboBox()
        for name, metres in DISTANCES:
            self.distance.addItem(name, metres)
        self.distance.setCurrentIndex(1)
        self.time = QLineEdit()
        self.time.setPlaceholderText("44:10 or 1:35:20")
        self.race_words = Label("", "small", "text_2", wrap=True)
        form.addRow("Distance", self.distance)
        form.addRow("Time", self.time)
        form.addRow(self.race_words)
        self.time.textChanged.connect(lambda _: self._race_changed())
        self.distance.currentIndexChanged.connect(lambda _: self._race_changed())
        return page

    def _race_changed(self) -> None:
        self._forget()
        self.race_words.setText("")
        try:
            seconds = duration_of(self.time.text())
            metres = float(self.distance.currentData())
            found = estimate.from_race(metres, seconds)
        except ValueError:
            return
        power = physiology.speed_for_duration(seconds, metres, 3600.0)
        self.race_words.setText(
            f"Pace for one hour by a power law (good from 3.5 to 230 min): "
            f"{words.pace(power, self._units)}. With the oxygen-cost model, midway: LT2 about "
            f"{words.pace(found.values.lt2_speed or 0, self._units)}, LT1 about "
            f"{words.pace(found.values.lt1_speed or 0, self._units)}."
        )

    def _maximum_page(self) -> QWidget:
        page = QWidget()
        form = QFormLayout(page)
        self.maximum = self._beats("not known")
        self.age = self._beats("not said")
        self.age.setRange(0, 100)
        self.age.setSuffix(" years")
        form.addRow("Highest heart rate ever seen", self.maximum)
        form.addRow("or age", self.age)
        form.addRow(
            Label(
                "A measured maximum beats a formula: from age alone, one runner in three is more "
                "than 10 beats away (208 − 0.7 × age; Tanaka and others, 2001).",
                "small",
                "text_2",
                wrap=True,
            )
        )
        return page

    def _typed_page(self) -> QWidget:
        page = QWidget()
        form = QFormLayout(page)
        now = in_force(self._entries, date.today())
        values = now.values if now is not None else Thresholds()
        self.lt1_pace, self.lt2_pace = QLineEdit(), QLineEdit()
        for field, speed in ((self.lt1_pace, values.lt1_speed), (self.lt2_pace, values.lt2_speed)):
            field.setPlaceholderText("5:20")
            field.setText("" if speed is None else words.bare_pace(speed, self._units))
            field.textChanged.connect(lambda _: self._forget())
        self.lt1_hr, self.lt2_hr = self._beats(), self._beats()
        self.rest, self.top = self._beats(), self._beats()
        for box, beats in (
            (self.lt1_hr, values.lt1_hr),
            (self.lt2_hr, values.lt2_hr),
            (self.rest, values.hr_rest),
            (self.top, values.hr_max),
        ):
            box.setValue(round(beats) if beats is not None else 0)
        for name, pace, beats_box in (
            ("LT1", self.lt1_pace, self.lt1_hr),
            ("LT2", self.lt2_pace, self.lt2_hr),
        ):
            pace.setAccessibleName(f"{name} pace, minutes per {self._units}")
            beats_box.setAccessibleName(f"{name} heart rate")
            line = QHBoxLayout()
            line.addWidget(pace)
            line.addWidget(Label(f"/{self._units}", "small", "text_2"))
            line.addWidget(beats_box)
            form.addRow(name, line)
        form.addRow("Resting heart rate", self.rest)
        form.addRow("Highest heart rate", self.top)
        return page

    def _beats(self, none: str = "not known") -> QDoubleSpinBox:
        box = QDoubleSpinBox()
        box.setDecimals(0)
        box.setRange(0, 240)
        box.setSpecialValueText(none)
        box.setSuffix(" /min")
        box.valueChanged.connect(lambda _: self._forget())
        return box

    def _change_part(self) -> QWidget:
        self.change = QWidget()
        column = QVBoxLayout(self.change)
        column.setContentsMargins(0, 0, 0, 0)
        self.change_title = Label("What this would change", "block")
        column.addWidget(self.change_title)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("Runs judged")
        column.addWidget(self.bar)
        self.now_stair, self.then_stair = StairWidget(), StairWidget()
        self.now_words, self.then_words = Label("", "small"), Label("", "small")
        for word, stair, label in (
            ("now", self.now_stair, self.now_words),
            ("then", self.then_stair, self.then_words),
        ):
            line = QHBoxLayout()
            name = Label(word, "small", "text_2")
            name.setFixedWidth(44)
            line.addWidget(name)
            line.addWidget(stair, 1)
            line.addWidget(label)
            column.addLayout(line)
        self.change_words = Label("", "small", "text_2", wrap=True)
        column.addWidget(self.change_words)
        self.change.hide()
        return self.change

    # What was asked ----------------------------------------------------------------------

    def wanted(self) -> DatedThresholds:
        """What the open page asks for.

        Raises
        ------
        ValueError
            With what is wrong and an example of right.
        """
        start = self.start.date().toPython()
        assert isinstance(start, date)
        page = PAGES[self.tabs.currentIndex()]
        if page == "typed":
            values = Thresholds(
                lt1_hr=self.lt1_hr.value() or None,
                lt2_hr=self.lt2_hr.value() or None,
                lt1_speed=self._speed(self.lt1_pace),
                lt2_speed=self._speed(self.lt2_pace),
                hr_rest=self.rest.value() or None,
                hr_max=self.top.value() or None,
            )
            self._check_paces(values)
            check_thresholds(values)
            return DatedThresholds(start, values, "typed")
        guess: DatedThresholds | None
        if page == "race":
            race = estimate.from_race(
                float(self.distance.currentData()), duration_of(self.time.text())
            )
            guess = self._library.estimate(maximum=self._known_maximum(), race=race)
            source = f"{self.distance.currentText()} in {self.time.text().strip()}"
            if guess is None:
                guess = DatedThresholds(start, race.values, source, True, race.interval)
            guess = replace(guess, source=source)
        else:
            maximum, half = self.maximum.value(), 5.0
            source = f"highest heart rate {maximum:.0f} /min"
            if not maximum:
                if not self.age.value():
                    raise ValueError(
                        "Give the highest heart rate, such as 186, or an age, such as 42."
                    )
                maximum, half = physiology.maximal_heart_rate(self.age.value()), 17.0
                source = f"age {self.age.value():.0f}"
            guess = self._library.estimate(maximum=maximum)
            rates = estimate.heart_rates_from_maximum(maximum, half)
            if guess is None:
                guess = DatedThresholds(start, rates.values, source, True, rates.interval)
            guess = replace(guess, source=source, interval={**guess.interval, **rates.interval})
        return replace(guess, start=start)

    def _known_maximum(self) -> float | None:
        """A maximum that was measured or said before, not one that was guessed."""
        now = in_force(self._entries, date.today())
        return now.values.hr_max if now is not None and not now.estimated else None

    def _speed(self, field: QLineEdit) -> float | None:
        text = field.text().strip().removesuffix(f"/{self._units}").strip()
        if not text:
            return None
        return speed_of(f"{text}/{self._units}")

    def _check_paces(self, values: Thresholds) -> None:
        if values.lt1_speed and values.lt2_speed and values.lt1_speed >= values.lt2_speed:
            raise ValueError(
                "LT1 must be slower than LT2: "
                f"{words.bare_pace(values.lt1_speed, self._units)} and "
                f"{words.bare_pace(values.lt2_speed, self._units)}."
            )

    def entries(self) -> list[DatedThresholds]:
        """All dated thresholds as they would be then."""
        new = self.wanted()
        if self.reach.currentData() == "all":
            first = min([new.start, *(entry.start for entry in self._entries)])
            kept = [entry for entry in self._entries if entry.start > new.start]
            return [replace(new, start=first), *kept]
        return [*(entry for entry in self._entries if entry.start != new.start), new]

    def _now_words(self) -> str:
        now = in_force(self._entries, date.today())
        if now is None:
            return "None yet: running is kept but not judged."
        about = "about " if now.estimated else ""
        said = []
        for name in ("lt1", "lt2"):
            speed, beats = getattr(now.values, f"{name}_speed"), getattr(now.values, f"{name}_hr")
            bits = []
            if speed is not None:
                bits.append(f"{about}{words.pace(speed, self._units)}")
            if beats is not None:
                bits.append(f"{about}{words.heart_rate(beats)}")
            if bits:
                said.append(f"{name.upper()} {', '.join(bits)}")
        return f"In force today: {'; '.join(said)}. From: {now.source}."

    # Doing it ----------------------------------------------------------------------------

    def _forget(self) -> None:
        self._preview = None
        if hasattr(self, "use"):
            self.error.hide()
            self.change.hide()
            self.use.hide()
            self.show_change.show()
            self.show_change.setDefault(True)

    def _ask(self) -> None:
        try:
            entries = self.entries()
            for entry in entries:
                check_thresholds(entry.values)
        except ValueError as error:
            self.error.setText(str(error))
            self.error.show()
            return
        self.error.hide()
        self.bar.setRange(0, 0)
        self.bar.show()
        self.change.show()
        self.show_change.setEnabled(False)

        def call(tell: Callable[[Any], None], stop: Event) -> Preview:
            return self._library.preview(entries, tell, stop)

        self._job = Job(call, self)
        self._job.progressed.connect(self._progress)
        self._job.finished.connect(self._shown)
        self._job.failed.connect(self._failed)
        self._job.start()

    def _progress(self, now: Any) -> None:
        self.bar.setRange(0, max(now.total, 1))
        self.bar.setValue(now.done)

    def _failed(self, error: Exception) -> None:
        self._job = None
        self.change.hide()
        self.show_change.setEnabled(True)
        self.error.setText(str(error))
        self.error.show()

    def _shown(self, preview: Preview) -> None:
        self._job = None
        self.show_change.setEnabled(True)
        self._preview = preview
        self.bar.hide()
        full = max(sum(preview.before[:3]), sum(preview.after[:3]))
        for stair, label, sums in (
            (self.now_stair, self.now_words, preview.before),
            (self.then_stair, self.then_words, preview.after),
        ):
            stair.set(sums, full)
            judged = sum(sums[:3])
            label.setText(f"{100 * sums[0] / judged:.0f} % easy" if judged else "not judged")
        runs = "1 run is" if preview.changed == 1 else f"{preview.changed} runs are"
        self.change_words.setText(
            f"{runs} judged anew. The change can be undone with Ctrl+Z."
            if preview.judgements
            else "There are no runs yet; new ones will be judged by these."
        )
        self.show_change.hide()
        self.use.show()
        self.use.setDefault(True)
        self.use.setFocus(Qt.FocusReason.OtherFocusReason)

    def _apply(self) -> None:
        if self._preview is None:
            return
        changes = self._library.use(self._preview, "Change thresholds")
        self.applied.emit(changes)
        self.accept()

    def done(self, result: int) -> None:
        """Stop a running preview before closing."""
        if self._job is not None:
            self._job.stop()
            self._job.wait()
        super().done(result)

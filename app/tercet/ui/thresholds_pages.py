"""Three ways to thresholds, a page each: what it asks, what is wrong with it, what it gives."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDoubleSpinBox,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QWidget,
)

from tercet.domain import DatedThresholds
from tercet.engine import Thresholds, check_thresholds, estimate, physiology
from tercet.language import mark, tr
from tercet.library.library import Library
from tercet.library.season_file import speed_of
from tercet.ui import theme, words
from tercet.ui.fields import beats_box, watts_box
from tercet.ui.flow import FlowLayout
from tercet.ui.lines.words import problem_in_words
from tercet.ui.widgets import Label

DISTANCES = (
    (mark("5 km"), 5000.0),
    (mark("10 km"), 10000.0),
    (mark("Half marathon"), 21097.5),
    (mark("Marathon"), 42195.0),
    (mark("1 mile"), 1609.344),
    (mark("3 km"), 3000.0),
)
#: Half-width of the 90 % interval of a maximum: seen, or from age alone. [beats/min]
SEEN, FROM_AGE = 5.0, 17.0

#: Where typed values may come from: the word that is kept, and the field's.
SOURCES = (
    (mark("typed"), mark("known to me")),
    (
        mark("step test by ventilation"),
        mark("step test by ventilation: VT1 is LT1, VT2 is LT2"),
    ),
    (mark("step test in a laboratory"), mark("step test in a laboratory")),
)
#: What people run from 3.5 to 230 minutes lies well inside. [m/s]
SLOWEST, FASTEST = 1.5, 7.5

#: From the library, in a thread of its own, to the thresholds that a page asks for.
Finder = Callable[[Library], DatedThresholds]


class FieldError(ValueError):
    """A value that cannot be, with the field that holds it."""

    def __init__(self, text: str, field: QWidget) -> None:
        super().__init__(text)
        self.field = field


def duration_of(text: str) -> float:
    """Seconds of a time such as 44:10 or 1:35:20.

    Raises
    ------
    ValueError
        If it is none.
    """
    parts = text.strip().split(":")
    if len(parts) not in (2, 3) or not all(part.isascii() and part.isdigit() for part in parts):
        raise ValueError(
            tr('"{typed}" is no time: write 44:10, or 1:35:20 with hours.', typed=text.strip())
        )
    numbers = [int(part) for part in parts]
    if any(number > 59 for number in numbers[1:]):
        raise ValueError(
            tr('"{typed}" has over 59 minutes or seconds: write 44:10.', typed=text.strip())
        )
    total = 0
    for number in numbers:
        total = total * 60 + number
    return float(total)


class Page(QWidget):
    """Fields that ask for one thing; ``edited`` when any of them changes."""

    edited = Signal()

    def finder(self, start: date) -> Finder:
        """What to ask the library for, from what is typed now.

        Raises
        ------
        FieldError
            With what is wrong, an example of right, and the field.
        """
        raise NotImplementedError

    def _form(self) -> QFormLayout:
        form = QFormLayout(self)
        form.setContentsMargins(0, 12, 0, 4)
        form.setHorizontalSpacing(theme.current().px(16))
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.FieldsStayAtSizeHint)
        return form


class RacePage(Page):
    """A race run lately: its distance and time."""

    def __init__(self, units: words.Units, known_maximum: float | None) -> None:
        super().__init__()
        self._units, self._known = units, known_maximum
        self.distance = QComboBox()
        self.distance.setAccessibleName(tr("Distance of the race"))
        for name, metres in DISTANCES:
            self.distance.addItem(tr(name), metres)
        self.distance.setCurrentIndex(1)
        self.time = QLineEdit()
        self.time.setAccessibleName(tr("Time of the race"))
        self.time.setPlaceholderText(tr("44:10 or 1:35:20"))
        self.words = Label("", "small", "text_2", wrap=True)
        form = self._form()
        form.addRow(tr("Distance"), self.distance)
        form.addRow(tr("Time"), self.time)
        form.addRow(self.words)
        self.time.textChanged.connect(lambda _: self._changed())
        self.distance.currentIndexChanged.connect(lambda _: self._changed())
        self._changed()

    def know(self, maximum: float | None) -> None:
        """Take a highest heart rate that somebody has confirmed."""
        self._known = maximum

    def finder(self, start: date) -> Finder:
        metres, seconds = self.typed()
        race = estimate.from_race(metres, seconds)
        source = f"{DISTANCES[self.distance.currentIndex()][0]} in {self.time.text().strip()}"
        maximum = self._known

        def find(library: Library) -> DatedThresholds:
            guess = library.estimate(maximum=maximum, race=race)
            if guess is None:
                guess = DatedThresholds(start, race.values, source, True, race.interval)
            return replace(guess, start=start, source=source)

        return find

    def typed(self) -> tuple[float, float]:
        """Metres and seconds typed; raises FieldError for what cannot be."""
        metres = float(self.distance.currentData())
        try:
            seconds = duration_of(self.time.text())
        except ValueError as error:
            raise FieldError(str(error), self.time) from error
        try:
            estimate.from_race(metres, seconds)
        except ValueError as error:
            raise FieldError(self._said(str(error), metres, seconds), self.time) from error
        return metres, seconds

    def _said(self, problem: str, metres: float, seconds: float) -> str:
        """The problem in the words of the page, with an example of right."""
        speed = metres / seconds if seconds else 0.0
        if SLOWEST <= speed <= FASTEST:
            return f"{problem[:1].upper()}{problem[1:]}."
        name, time = self.distance.currentText(), self.time.text().strip()
        return tr(
            "{distance} in {time} would be {pace}, which is no running. "
            "A time is written 44:10, or 1:35:20 with hours.",
            distance=name,
            time=time,
            pace=words.pace(speed, self._units),
        )

    def _changed(self) -> None:
        self.edited.emit()
        try:
            metres, seconds = self.typed()
        except FieldError:
            self.words.setText(tr("Written 44:10, or 1:35:20 with hours. Both lines come from it."))
            return
        found = estimate.from_race(metres, seconds).values
        power = physiology.speed_for_duration(seconds, metres, 3600.0)
        self.words.setText(
            tr(
                "Pace for one hour by a power law (good from 3.5 to 230 min): {pace}. "
                "With the oxygen-cost model, midway: LT2 about {lt2}, LT1 about {lt1}.",
                pace=words.pace(power, self._units),
                lt2=words.pace(found.lt2_speed or 0, self._units),
                lt1=words.pace(found.lt1_speed or 0, self._units),
            )
        )


class MaximumPage(Page):
    """The highest heart rate ever seen, or at least an age."""

    def __init__(self) -> None:
        super().__init__()
        self.maximum = beats_box(tr("Highest heart rate ever seen"))
        self.age = beats_box(tr("Age in years"), tr("not said"))
        self.age.setRange(0, 100)
        self.age.setSuffix(tr(" years", "after an age"))
        form = self._form()
        form.addRow(tr("Highest heart rate ever seen"), self.maximum)
        form.addRow(tr("or age"), self.age)
        form.addRow(
            Label(
                tr(
                    "A measured maximum beats a formula: from age alone, one runner in three is "
                    "more than 10 beats away (208 − 0.7 × age; Tanaka and others, 2001)."
                ),
                "small",
                "text_2",
                wrap=True,
            )
        )
        for box in (self.maximum, self.age):
            box.valueChanged.connect(lambda _: self.edited.emit())

    def finder(self, start: date) -> Finder:
        maximum, half = self.maximum.value(), SEEN
        source = f"highest heart rate {maximum:.0f} /min"
        if not maximum:
            if not self.age.value():
                raise FieldError(
                    tr("Give the highest heart rate, such as 186, or an age, such as 42."),
                    self.maximum,
                )
            maximum, half = physiology.maximal_heart_rate(self.age.value()), FROM_AGE
            source = f"age {self.age.value():.0f}"
        try:
            rates = estimate.heart_rates_from_maximum(maximum, half)
            check_thresholds(rates.values)
        except ValueError as error:
            raise FieldError(
                tr("{problem} Write such as 186.", problem=problem_in_words(str(error))),
                self.maximum,
            ) from error

        def find(library: Library) -> DatedThresholds:
            guess = library.estimate(maximum=maximum)
            if guess is None:
                guess = DatedThresholds(start, rates.values, source, True, rates.interval)
            interval = {**guess.interval, **rates.interval}
            return replace(guess, start=start, source=source, interval=interval)

        return find


class TypedPage(Page):
    """The two lines themselves, and the two ends of the heart's range."""

    def __init__(self, units: words.Units, values: Thresholds) -> None:
        super().__init__()
        self._units = units
        self.lt1_pace, self.lt2_pace = QLineEdit(), QLineEdit()
        self.lt1_hr, self.lt2_hr = beats_box(tr("LT1 heart rate")), beats_box(tr("LT2 heart rate"))
        self.rest, self.top = (
            beats_box(tr("Resting heart rate")),
            beats_box(tr("Highest heart rate")),
        )
        self.lt1_power, self.lt2_power = watts_box(tr("LT1 power")), watts_box(tr("LT2 power"))
        self.source = QComboBox()
        self.top_pace = QLineEdit()
        self.top_pace.setPlaceholderText("2:50")
        self.top_pace.setAccessibleName(tr("Top speed of a sprint, minutes per {unit}", unit=units))
        self.top_pace.textChanged.connect(lambda _: self.edited.emit())
        form = self._form()
        for name, pace, box in (
            ("LT1", self.lt1_pace, self.lt1_hr),
            ("LT2", self.lt2_pace, self.lt2_hr),
        ):
            pace.setPlaceholderText("5:20")
            pace.setAccessibleName(tr("{line} pace, minutes per {unit}", line=name, unit=units))
            pace.textChanged.connect(lambda _: self.edited.emit())
            form.addRow(
                name, _pair(pace, Label(tr(words.PACE_WORDS[units]), "small", "text_2"), box)
            )
        form.addRow(tr("Resting heart rate"), self.rest)
        form.addRow(tr("Highest heart rate"), self.top)
        form.addRow(tr("Top speed, as a pace"), self.top_pace)
        form.addRow(tr("Running power at LT1, LT2"), _side_by_side(self.lt1_power, self.lt2_power))
        form.addRow(tr("Where from"), self.source)
        for name, word in SOURCES:
            self.source.addItem(tr(word), name)
        self.source.setAccessibleName(tr("Where these values come from"))
        self.source.currentIndexChanged.connect(lambda _: self.edited.emit())
        self.show_values(values)
        for field in (
            self.lt1_hr, self.lt2_hr, self.rest, self.top, self.lt1_power, self.lt2_power,
        ):  # fmt: skip
            field.valueChanged.connect(lambda _: self.edited.emit())

    def show_values(self, values: Thresholds) -> None:
        """Put values into the fields."""
        for pace, speed in (
            (self.lt1_pace, values.lt1_speed),
            (self.lt2_pace, values.lt2_speed),
            (self.top_pace, values.top_speed),
        ):
            pace.setText("" if speed is None else words.bare_pace(speed, self._units))
        for field, beats in (
            (self.lt1_hr, values.lt1_hr),
            (self.lt2_hr, values.lt2_hr),
            (self.rest, values.hr_rest),
            (self.top, values.hr_max),
            (self.lt1_power, values.lt1_power),
            (self.lt2_power, values.lt2_power),
        ):
            field.setValue(round(beats) if beats is not None else 0)

    def finder(self, start: date) -> Finder:
        values = Thresholds(
            lt1_hr=self.lt1_hr.value() or None,
            lt2_hr=self.lt2_hr.value() or None,
            lt1_speed=self._speed(self.lt1_pace),
            lt2_speed=self._speed(self.lt2_pace),
            hr_rest=self.rest.value() or None,
            hr_max=self.top.value() or None,
            top_speed=self._speed(self.top_pace),
            lt1_power=self.lt1_power.value() or None,
            lt2_power=self.lt2_power.value() or None,
        )
        if values.lt1_speed and values.lt2_speed and values.lt1_speed >= values.lt2_speed:
            pair = [words.bare_pace(v, self._units) for v in (values.lt1_speed, values.lt2_speed)]
            raise FieldError(
                tr(
                    "LT1 must be slower than LT2: {lt1} and {lt2}. Right would be 5:20 and 4:30.",
                    lt1=pair[0],
                    lt2=pair[1],
                ),
                self.lt1_pace,
            )
        try:
            check_thresholds(values)
        except ValueError as error:
            raise FieldError(*self._beats_error(values, str(error))) from error
        source = str(self.source.currentData())
        return lambda _library: DatedThresholds(start, values, source)

    def _beats_error(self, values: Thresholds, problem: str) -> tuple[str, QWidget]:
        """The problem in the words of the page, and its field."""
        fields: dict[str, QWidget] = {
            "lt1_hr": self.lt1_hr,
            "lt2_hr": self.lt2_hr,
            "hr_rest": self.rest,
            "hr_max": self.top,
            "lt1_speed": self.lt1_pace,
            "lt2_speed": self.lt2_pace,
            "top_speed": self.top_pace,
            "lt1_power": self.lt1_power,
            "lt2_power": self.lt2_power,
        }
        named = [name for name in fields if name in problem]
        # Of a pair that belongs together the missing one is the wrong one.
        wrong = next((n for n in named if getattr(values, n) is None), next(iter(named), ""))
        said = problem_in_words(problem)
        example = tr("Right would be LT1 5:20 and 150, LT2 4:30 and 170.")
        if wrong.endswith("power"):
            example = tr("Right would be LT1 232 W and LT2 283 W.")
        return f"{said} {example}", fields.get(wrong, self.lt1_pace)

    def _speed(self, field: QLineEdit) -> float | None:
        text = field.text().strip().removesuffix(f"/{self._units}").strip()
        if not text:
            return None
        try:
            return speed_of(f"{text}/{self._units}")
        except ValueError as error:
            raise FieldError(tr('"{typed}" is no pace: write 5:20.', typed=text), field) from error


def _pair(pace: QLineEdit, unit: Label, box: QDoubleSpinBox) -> QWidget:
    left = QWidget()
    line = QHBoxLayout(left)
    line.setContentsMargins(0, 0, 0, 0)
    line.addWidget(pace)
    line.addWidget(unit)
    return _side_by_side(left, box)


def _side_by_side(*parts: QWidget) -> QWidget:
    """Parts in a row, or below one another where there is no room."""
    holder = QWidget()
    row = FlowLayout(holder)
    for part in parts:
        row.addWidget(part)
    return holder

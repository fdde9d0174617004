"""Races and goals: the race a season leads to, every number of the count-back, what it gives."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QDate
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from tercet import units, week_days
from tercet.domain import Block, Race
from tercet.engine.countback import Rules, taper_weeks_for
from tercet.language import mark, several, tr
from tercet.library import planning
from tercet.library.plans import nowadays
from tercet.library.views import SeasonView
from tercet.ui import words
from tercet.ui.amounts import AmountEdit, NumberEdit, mark_wrong
from tercet.ui.day_edit import DayEdit
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.focus_ring import FocusRing
from tercet.ui.goals import goal_of, goal_words
from tercet.ui.page import Context
from tercet.ui.plan_rows import DAY, main_race
from tercet.ui.widgets import Label, Rule, button

_DISTANCES = (
    ("5 km", 5000.0),
    ("10 km", 10_000.0),
    (mark("half marathon"), 21_097.5),
    (mark("marathon"), 42_195.0),
)
#: A distance as typed, in the unit chosen unless one is named.
_TYPED = re.compile(r"\s*(\d+(?:[.,]\d*)?)\s*(km|mi|miles)?\s*")
#: Words, field of Rules, lowest and highest, what stands after it, factor from the rule.
_NUMBERS = (
    (mark("Taper"), "taper_weeks", 0, 6, mark("weeks"), 1),
    (mark("Specific"), "specific_weeks", 0, 16, mark("weeks"), 1),
    (mark("Support"), "support_weeks", 0, 16, mark("weeks"), 1),
    (mark("All three at most"), "most_weeks", 1, 30, mark("weeks"), 1),
    (mark("Weeks grow at most"), "growth", 0, 50, mark("% a week"), 100),
    (mark("Up to, of today's volume"), "most_over_today", 100, 300, "%", 100),
    (mark("One week easier in"), "easier_every", 0, 8, mark("weeks"), 1),
    (mark("An easier week is"), "easier_share", 30, 100, mark("% of it"), 100),
    (mark("The race's week is"), "race_week_share", 10, 100, mark("% of before"), 100),
)
#: What is said of the numbers' origin.
ORIGIN = mark(
    "Common practice, no source: preparation of at most 12 weeks, growth, easier weeks. A taper of "
    "about two weeks with 41 to 60 % less running: Bosquet 2007, from memory. Growing slowly was "
    "not shown to prevent injuries (Buist 2008). With pain or illness do less, and ask a doctor "
    "or coach before you train hard if your health has changed."
)


class CountBackDialog(QDialog):
    """Shows what the count-back would lay out at each change, and lays it out as one step."""

    def __init__(
        self,
        context: Context,
        view: SeasonView,
        blocks: Sequence[Block],
        races: Sequence[Race],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._context, self._view = context, view
        self._blocks, self._races = list(blocks), list(races)
        self._id: int | None = None
        self.setWindowTitle(tr("Races and goals"))
        self.race = QComboBox()
        self.race.setAccessibleName(tr("Race"))
        for item in self._races:
            self.race.addItem(f"{item.name}, {words.short_day(item.day)}", item.id)
        self.race.addItem(tr("Another race"), None)
        self.name = QLineEdit()
        self.name.setAccessibleName(tr("Name of the race"))
        self.day = DayEdit(view.today + 84 * DAY, tr("Race day"))
        self.distance = QComboBox()
        self.distance.setEditable(True)
        self.distance.setAccessibleName(
            tr("Distance: a name, or a number of {unit}", unit=units.word())
        )
        self.distance.addItems([tr(name) for name, _ in _DISTANCES])
        self.goal = QLineEdit()
        self.goal.setAccessibleName(tr("Goal time, such as 1:24:00"))
        self.goal.setPlaceholderText(tr("not set"))
        self.start = DayEdit(view.today, tr("First day of the plan"))
        self.volume = AmountEdit(tr("Running time of a week nowadays"))
        self.numbers: dict[str, NumberEdit] = {}
        self.shown = Label("", "body", wrap=True)
        self.error = ErrorLine()
        self.cancel, self.save_race = button(tr("Cancel")), button(tr("Keep the race only"))
        self.save_race.setToolTip(
            tr("Nothing is counted back, and the season's main race stays as it is")
        )
        self.remove = button(tr("Remove the race"))
        self.apply = button(tr("Lay out the season"), primary=True)
        self._arrange()
        now = nowadays(view)
        # Without running of late nothing is guessed: too much would be the worse guess.
        self.volume.show_amount(now or None, "time")
        self._value = now
        self._connect()
        main = main_race(view)
        at = self.race.findData(main.id) if main is not None else self.race.count() - 1
        self.race.setCurrentIndex(max(at, 0))
        self._race_chosen()
        self._ring = FocusRing(self)
        fit_to_screen(self, 760, 620)

    def _arrange(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 14, 20, 14)
        column.setSpacing(8)
        column.addWidget(Label(tr("Race"), "pane_title"))
        fields = QGridLayout()
        fields.setHorizontalSpacing(10)
        top = ((tr("Race"), self.race), (tr("Name"), self.name), (tr("Day"), self.day))
        more = (
            (tr("Distance"), self.distance),
            (tr("Goal time"), self.goal),
            (tr("Plan from"), self.start),
        )
        for row, parts in enumerate((top, more)):
            for place, (text, field) in enumerate(parts):
                label = Label(text, "small", "text_2")
                label.setBuddy(field)
                fields.addWidget(label, 2 * row, place)
                fields.addWidget(field, 2 * row + 1, place)
        for place in range(3):
            fields.setColumnStretch(place, 1)
        column.addLayout(fields)
        column.addWidget(Rule())
        column.addWidget(Label(tr("Counting back"), "pane_title"))
        grid = QGridLayout()
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(5)
        told: list[tuple[str, QWidget, str]] = [(tr("A week nowadays"), self.volume, "h")]
        for label_of, key, low, high, unit_of, _ in _NUMBERS:
            text, unit = tr(label_of), tr(unit_of)
            box = NumberEdit(f"{text}, {unit}", low, high)
            box.setFixedWidth(self.volume.width())
            self.numbers[key] = box
            told.append((text, box, unit))
        for number, (text, field, unit) in enumerate(told):
            row, place = number % 5, 3 * (number // 5)
            label = Label(text, "body", "text_2")
            label.setBuddy(field)
            grid.addWidget(label, row, place)
            grid.addWidget(field, row, place + 1)
            grid.addWidget(Label(unit, "small", "text_2"), row, place + 2)
        grid.setColumnStretch(2, 1)
        grid.setColumnStretch(5, 1)
        column.addLayout(grid)
        column.addWidget(Rule())
        column.addWidget(self.shown)
        column.addWidget(self.error)
        column.addStretch(1)
        column.addWidget(Label(tr(ORIGIN), "small", "text_2", wrap=True))
        buttons = QHBoxLayout()
        buttons.addWidget(self.save_race)
        buttons.addWidget(self.remove)
        buttons.addStretch(1)
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.apply)
        column.addLayout(buttons)

    def _connect(self) -> None:
        for made in (self.cancel, self.save_race, self.remove):
            made.setAutoDefault(False)
        self.apply.setDefault(True)
        self.race.currentIndexChanged.connect(self._race_chosen)
        self.day.dateChanged.connect(self._reckon)
        self.start.dateChanged.connect(self._reckon)
        self.distance.currentTextChanged.connect(self._distance_changed)
        self.goal.textChanged.connect(self._reckon)
        self.volume.told.connect(self._volume_told)
        for box in self.numbers.values():
            box.valueChanged.connect(self._reckon)
        self.cancel.clicked.connect(self.reject)
        self.save_race.clicked.connect(self._keep_race)
        self.remove.clicked.connect(self._remove_race)
        self.apply.clicked.connect(self._apply)

    def _race_chosen(self) -> None:
        self._id = self.race.currentData()
        race = next((item for item in self._races if item.id == self._id), None)
        if race is not None:
            self.name.setText(race.name)
            self.day.setDate(QDate(race.day.year, race.day.month, race.day.day))
            known = [tr(name) for name, metres in _DISTANCES if metres == race.distance_m]
            if known:
                self.distance.setCurrentText(known[0])
            elif race.distance_m:
                self.distance.setCurrentText(
                    f"{words.number(race.distance_m / units.metres(), 2)} {units.word()}"
                )
            else:
                self.distance.setCurrentText("")
            self.goal.setText(goal_words(race.goal_s))
        else:
            self.name.setText(tr("Race"))
            self.goal.setText("")
            ahead = self._view.today + 84 * DAY
            self.day.setDate(QDate(ahead.year, ahead.month, ahead.day))
        start = planning.usual_start(self._blocks, self._races, self.day.day, self._view.today)
        self.start.setDate(QDate(start.year, start.month, start.day))
        self.remove.setEnabled(race is not None)
        self._show_rules(self._kept_rules())
        self._distance_changed()

    def _show_rules(self, rules: Rules) -> None:
        for _, key, _, _, _, factor in _NUMBERS:
            box = self.numbers[key]
            box.blockSignals(True)
            box.setValue(round(getattr(rules, key) * factor))
            box.blockSignals(False)

    def _kept_rules(self) -> Rules:
        kept = str(self._context.settings.value("countback", ""))
        numbers = kept.split()
        if len(numbers) != len(_NUMBERS) or not all(n.isdigit() for n in numbers):
            return replace(Rules(), taper_weeks=taper_weeks_for(self._metres()))
        told = zip(_NUMBERS, numbers, strict=True)
        scaled = {key: int(n) / f if f > 1 else int(n) for (_, key, *_, f), n in told}
        return Rules(**scaled)  # type: ignore[arg-type]

    def _metres(self) -> float | None:
        text = self.distance.currentText().strip()
        named = {tr(name): metres for name, metres in _DISTANCES}.get(text)
        if named is not None:
            return named
        found = _TYPED.fullmatch(text)
        if found is None:
            return None
        unit = {"km": "km", "mi": "miles", "miles": "miles"}.get(found[2], units.chosen())
        metres = float(found[1].replace(",", ".")) * units.METRES[unit]
        return metres if 0 < metres < 1e6 else None

    def _distance_changed(self) -> None:
        if not self._context.settings.value("countback", ""):
            self.numbers["taper_weeks"].setValue(taper_weeks_for(self._metres()))
        self._reckon()

    def _volume_told(self, value: float | None) -> None:
        self._value = value or 0.0
        self._reckon()

    def rules(self) -> Rules:
        """The numbers as typed; a ``ValueError`` says which cannot be."""
        told = {key: self.numbers[key].value() for _, key, *_ in _NUMBERS}
        scaled = {key: told[key] / f if f > 1 else told[key] for _, key, *_, f in _NUMBERS}
        return Rules(**scaled)  # type: ignore[arg-type]

    def wanted_race(self) -> Race:
        """The race as typed."""
        old = next((item for item in self._races if item.id == self._id), Race(self.day.day, ""))
        name = self.name.text().strip() or tr("Race")
        goal = goal_of(self.goal.text())
        return replace(
            old, day=self.day.day, name=name, distance_m=self._metres(), goal_s=goal, main=True
        )

    def _reckon(self) -> None:
        """Say what would be laid out, or what is wrong."""
        bad_goal = bool(self.goal.text().strip()) and goal_of(self.goal.text()) is None
        mark_wrong(self.goal, tr("Give a time such as 1:24:00 or 38:30.") if bad_goal else "")
        try:
            if not self._value:
                raise ValueError(tr("say how long you run in a week nowadays, such as 2:30"))
            race = self.wanted_race()
            made = planning.laid_blocks(
                self._blocks,
                self._races,
                race,
                self.start.day,
                self._view.today,
                self._value,
                self.rules(),
            )
        except ValueError as error:
            text = str(error)
            self.shown.setText("")
            self.error.show_error(f"{text[:1].upper()}{text[1:]}.")
            self.apply.setEnabled(False)
            return
        self.error.clear_error()
        self.apply.setEnabled(not bad_goal)
        ahead = [b for b in made if b.end >= self._view.today and b.start <= race.day]
        parts = [_block_words(block) for block in ahead]
        text = tr("{blocks}; race {day}.", blocks="; ".join(parts), day=words.short_day(race.day))
        if race.goal_s and race.distance_m:
            pace = words.pace(race.distance_m / race.goal_s)
            text = " ".join([text, tr("The goal is {pace}.", pace=pace)])
        self.shown.setText(text)

    def _keep(self) -> None:
        numbers = " ".join(str(self.numbers[key].value()) for _, key, *_ in _NUMBERS)
        self._context.settings.setValue("countback", numbers)

    def _keep_race(self) -> None:
        self._context.acts.do(planning.set_race, planning.as_kept(self._races, self.wanted_race()))
        self.accept()

    def _remove_race(self) -> None:
        if self._id is not None:
            self._context.acts.do(planning.remove_race, self._id)
            self.accept()

    def _apply(self) -> None:
        self._keep()
        self._context.acts.do(
            planning.lay_out,
            self.wanted_race(),
            self.start.day,
            self._view.today,
            self._value,
            self.rules(),
        )
        self.accept()


def _block_words(block: Block) -> str:
    count, day = len(week_days.starts(block.start, block.end)), words.short_day(block.start)
    if not block.volume:
        one, many = mark("{block} from {day}, {n} week"), mark("{block} from {day}, {n} weeks")
        return several(count, one, many, block=block.name, day=day)
    return several(
        count,
        mark("{block} from {day}, {n} week, first {hours} h"),
        mark("{block} from {day}, {n} weeks, first {hours} h"),
        block=block.name,
        day=day,
        hours=words.hours(block.volume.first_s),
    )

"""Putting sessions right: starts, zones and sports of many at once, joining, cutting, parting."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from typing import Any
from zoneinfo import available_timezones

from PySide6.QtCore import Qt, QTime, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QSpinBox,
    QTimeEdit,
    QVBoxLayout,
    QWidget,
)

from tercet.language import tr
from tercet.library import localtime, moments, operations, pieces
from tercet.library.library import Library
from tercet.library.pieces import Correctable
from tercet.library.session_kinds import KINDS
from tercet.ui import theme
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.focus_ring import FocusRing
from tercet.ui.jobs import Answers
from tercet.ui.session_lines import SessionLines
from tercet.ui.widgets import Label, button

#: So many different zones of sessions are named.
MOST_SOURCES = 3


class CorrectionsDialog(QDialog):
    """Sessions at the left, one or many chosen; what can be put right of them at the right."""

    applied = Signal(object)  # Changes

    def __init__(
        self,
        library: Library,
        sessions: Sequence[Correctable],
        chosen: Collection[int] = (),
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._library = library
        self._sessions = {session.id: session for session in sessions}
        self._answers = Answers(self)
        self.setWindowTitle(tr("Corrections"))
        self.list = SessionLines(sessions, chosen)
        self.count = Label("", "small", "text_2")
        self.days, self.hours, self.minutes = (
            _amount(*told)
            for told in (
                (tr("days"), tr("Move by days"), 40_000),
                (tr("hours"), tr("Move by hours"), 23),
                (tr("minutes"), tr("Move by minutes"), 59),
            )
        )
        self.zone = QComboBox()
        self.zone.setEditable(True)
        self.zone.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        typed = self.zone.lineEdit()
        assert typed is not None
        typed.setPlaceholderText(tr("such as Europe/Madrid"))
        self.zone.setAccessibleName(tr("Time zone"))
        self.zone_now = Label("", "small", "text_2", wrap=True)
        self.sport = QComboBox()
        self.sport.addItems([tr(each.said) for each in KINDS])
        self.sport.setAccessibleName(tr("Sport"))
        self.at = QTimeEdit(QTime(0, 30))
        self.at.setDisplayFormat("h:mm:ss")
        self.at.setAccessibleName(tr("Cut so long after the start"))
        self.attached = QComboBox()
        self.attached.setAccessibleName(tr("Recordings taken for the same run"))
        self.move_starts, self.set_zone, self.by_place, self.set_sport = (
            button(text)
            for text in (
                tr("Move the starts"),
                tr("Set the zone"),
                tr("Go by the place"),
                tr("Set the sport"),
            )
        )
        self.join, self.cut, self.part = (
            button(text) for text in (tr("Join the two"), tr("Cut in two"), tr("Part it again"))
        )
        self.error = ErrorLine()
        self.close_button = button(tr("Close"))
        self._arrange()
        self.list.selectionModel().selectionChanged.connect(self._show)
        self._ring = FocusRing(self)
        fit_to_screen(self, 940, 560)
        self._show()
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)
        # The system's files name them: some time, which the store's thread has.
        zones = library.submit(lambda _: sorted(available_timezones()))
        self._answers.when(zones, self._offer_zones)

    def _arrange(self) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(20, 14, 20, 14)
        both = QHBoxLayout()
        both.setSpacing(24)
        left = QVBoxLayout()
        left.addWidget(Label(tr("Sessions"), "pane_title"))
        left.addWidget(self.list, 1)
        left.addWidget(self.count)
        both.addLayout(left, 1)
        form = QFormLayout()
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        form.setVerticalSpacing(6)
        for title, fields, made in (
            (tr("Starts, moved by"), (self.days, self.hours, self.minutes), self.move_starts),
            (tr("Time zone that they were run in"), (self.zone,), self.set_zone),
            (tr("What they were"), (self.sport,), self.set_sport),
            (tr("Two sessions that are one run"), (), self.join),
            (tr("One session, cut so long after its start"), (self.at,), self.cut),
            (tr("Taken for the same run"), (self.attached,), self.part),
        ):
            line = QHBoxLayout()
            for field in fields:
                line.addWidget(field, 1 if isinstance(field, QComboBox) else 0)
            made.setAutoDefault(False)
            line.addWidget(made)
            if not fields:
                line.addStretch()
            form.addRow(Label(title, "body_bold"), line)
            if made is self.set_zone:
                self.by_place.setAutoDefault(False)
                line.addWidget(self.by_place)
                form.addRow(self.zone_now)
        both.addLayout(form, 1)
        whole.addLayout(both, 1)
        whole.addWidget(self.error)
        foot = QHBoxLayout()
        foot.addWidget(Label(tr("Each of these can be undone."), "small", "text_2"), 1)
        foot.addWidget(self.close_button)
        whole.addLayout(foot)
        self.close_button.clicked.connect(self.reject)
        self.move_starts.clicked.connect(self._move)
        self.set_zone.clicked.connect(
            lambda: self._do(moments.set_zone, self.chosen, self.zone.currentText())
        )
        self.by_place.clicked.connect(lambda: self._do(moments.by_place, self.chosen))
        self.set_sport.clicked.connect(self._set_sport)
        self.join.clicked.connect(lambda: self._do(pieces.join, *self.chosen))
        self.cut.clicked.connect(self._cut)
        self.part.clicked.connect(self._part)

    @property
    def chosen(self) -> list[int]:
        """Ids of the sessions chosen."""
        return self.list.chosen

    def _offer_zones(self, zones: list[str]) -> None:
        """Name the time zones there are; what was typed meanwhile stays."""
        typed = self.zone.currentText()
        self.zone.addItems(zones)
        self.zone.setCurrentIndex(-1)
        self.zone.setEditText(typed)

    def _show(self) -> None:
        """What can be done with so many sessions."""
        chosen = self.chosen
        count = len(chosen)
        self.count.setText(tr("{n} chosen", n=count) if count else tr("None chosen"))
        self.error.clear_error()
        self.zone_now.setText(zone_words([self._sessions[number].zone_from for number in chosen]))
        for made in (self.move_starts, self.set_zone, self.by_place, self.set_sport):
            made.setEnabled(count > 0)
        self.join.setEnabled(count == 2)
        self.cut.setEnabled(count == 1)
        self.attached.clear()
        if count == 1:
            for sha256, part, name in self._sessions[chosen[0]].attached:
                self.attached.addItem(name, (sha256, part))
        self.part.setEnabled(self.attached.count() > 0)
        self.attached.setEnabled(self.attached.count() > 0)

    def _move(self) -> None:
        days, hours, minutes = (box.value() for box in (self.days, self.hours, self.minutes))
        self._do(moments.shift, self.chosen, days * 86_400.0 + hours * 3600.0 + minutes * 60.0)

    def _set_sport(self) -> None:
        said = KINDS[self.sport.currentIndex()]
        self._do(operations.set_kind, self.chosen, said.sport, said.kind)

    def _cut(self) -> None:
        self._do(pieces.cut, self.chosen[0], self.at.time().msecsSinceStartOfDay() / 1000.0)

    def _part(self) -> None:
        sha256, part = self.attached.currentData()
        self._do(pieces.part_again, self.chosen[0], sha256, part)

    def _do(self, call: Callable[..., Any], *given: Any) -> None:
        """Do it in the store's thread and close; what cannot be done is said here."""

        def then(changes: Any) -> None:
            self.applied.emit(changes)
            self.accept()

        def failed(error: BaseException) -> None:
            said = str(error)
            self.error.show_error(f"{said[:1].upper()}{said[1:]}.")

        self.error.clear_error()
        self._answers.when(self._library.submit(call, *given), then, failed)


def zone_words(sources: Sequence[str]) -> str:
    """What the clocks of sessions follow now, each thing once."""
    told = list(dict.fromkeys(_zone_source(source) for source in sources))
    if len(told) > MOST_SOURCES:
        return tr("Their clocks follow {n} different zones.", n=len(told))
    return " ".join(told)


def _zone_source(source: str) -> str:
    kind, _, zone = source.partition(" ")
    if kind == localtime.FILE:
        return tr("The clock is the one in the file.")
    if kind == localtime.PLACE:
        return tr("The clock is that of the place of the run: {zone}.", zone=zone)
    if kind == localtime.SAID:
        return tr("The clock was set by you: {zone}.", zone=zone)
    if kind == localtime.RUNNER:
        if not zone:
            return tr("The clock is that of your own zone: the one of this computer.")
        return tr("The clock is that of your own zone: {zone}.", zone=zone)
    return tr("The clock was kept from an earlier version, as it was taken in then.")


def _amount(unit: str, name: str, most: int) -> QSpinBox:
    box = QSpinBox()
    box.setRange(-most, most)
    box.setSuffix(f" {unit}")
    box.setAccessibleName(name)
    box.setMinimumWidth(theme.current().px(96))
    return box

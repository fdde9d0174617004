"""Where two copies of a record say different things: both shown, one chosen for each."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QDialog, QHBoxLayout, QRadioButton, QVBoxLayout, QWidget

from tercet import language
from tercet.language import mark, several, tr
from tercet.library import session_kinds
from tercet.library.record_report import Conflict, Merged
from tercet.ui.fields import fit_to_screen
from tercet.ui.widgets import Label, Rule, button, clear_scroll

#: One and several things of a part of the plan, by its table.
PARTS = {
    "threshold": (mark("{n} threshold"), mark("{n} thresholds")),
    "block": (mark("{n} block"), mark("{n} blocks")),
    "race": (mark("{n} race"), mark("{n} races")),
    "planned": (mark("{n} planned session"), mark("{n} planned sessions")),
    "test": (mark("{n} test"), mark("{n} tests")),
}


def in_words(item: Conflict, value: Any) -> str:
    """What one side says."""
    if item.part:
        return several(len(value), *PARTS[item.part])
    if value in ("", None, []):
        return tr("nothing said")
    if item.saying == "effort":
        return tr("{effort} of 10", effort=value)
    if item.saying == "meant":
        return tr("meant") if value else tr("not meant")
    if item.saying == "kind":
        return session_kinds.said(value[0], value[1])
    if item.saying == "day":
        moment = datetime.fromtimestamp(value[0], UTC) + timedelta(seconds=value[1])
        return tr(
            "{day} {month} {year}, {clock}",
            day=moment.day,
            month=language.month(moment.month),
            year=moment.year,
            clock=f"{moment:%H:%M}",
        )
    if item.saying == "corrections":
        return several(len(value), mark("{n} stretch"), mark("{n} stretches"))
    return f"“{value}”"


class ConflictsDialog(QDialog):
    """One question a conflict; this copy's word stands until the other is chosen."""

    chosen = Signal(object, object)  # kept, taken: lists of Conflict

    def __init__(self, done: Merged, conflicts: list[Conflict], parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Two copies say different things"))
        self._conflicts = conflicts
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 16, 16, 16)
        whole.setSpacing(12)
        who = done.by or done.runner
        when = done.written[:10]
        origin = tr("The other copy was written {when}. Nothing of yours was changed.", when=when)
        if who:
            origin = tr(
                "The other copy is {who}'s, written {when}. Nothing of yours was changed.",
                who=who,
                when=when,
            )
        whole.addWidget(Label(origin, wrap=True))
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 8, 0)
        self.mine: list[QRadioButton] = []
        self.theirs: list[QRadioButton] = []
        self._groups = []
        for item in conflicts:
            rows.addWidget(Label(item.about, "body_bold", wrap=True))
            mine, theirs = QRadioButton(tr("Keep what is here")), QRadioButton(tr("Take theirs"))
            mine.setChecked(True)
            group = QButtonGroup(self)
            for made, value in ((mine, item.mine), (theirs, item.theirs)):
                group.addButton(made)
                said = Label(in_words(item, value), wrap=True)
                said.setContentsMargins(24, 0, 0, 4)
                made.setAccessibleDescription(said.text())
                rows.addWidget(made)
                rows.addWidget(said)
            self._groups.append(group)
            self.mine.append(mine)
            self.theirs.append(theirs)
            rows.addWidget(Rule())
        rows.addStretch(1)
        whole.addWidget(clear_scroll(inside), 1)
        foot = QHBoxLayout()
        self.later = button(tr("Ask again next time"))
        self.save = button(tr("Settle"), primary=True)
        foot.addStretch(1)
        foot.addWidget(self.later)
        foot.addWidget(self.save)
        whole.addLayout(foot)
        self.later.clicked.connect(self.reject)
        self.save.clicked.connect(self._save)
        self.save.setDefault(True)
        fit_to_screen(self, 560, 420)

    def _save(self) -> None:
        pairs = list(zip(self._conflicts, self.theirs, strict=True))
        kept = [item for item, theirs in pairs if not theirs.isChecked()]
        taken = [item for item, theirs in pairs if theirs.isChecked()]
        self.accept()
        self.chosen.emit(kept, taken)

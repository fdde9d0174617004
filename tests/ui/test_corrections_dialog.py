"""The corrections dialog and the question of a start, as hands use them."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QDateTime, Qt, QTime
from tests.formats.build import run_fit

from tercet import resources
from tercet.library import pieces, season
from tercet.library.library import Library
from tercet.library.unset_clock import asks_for_start
from tercet.store import queries
from tercet.ui.corrections_dialog import CorrectionsDialog
from tercet.ui.start_dialog import StartDialog

SAMPLES = resources.samples()
NAMES = ("season.toml", "2026-04-15-1806.fit", "2026-05-12-1813.fit")


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    made.take_in([SAMPLES / name for name in NAMES])
    yield made
    made.close()


def opened(library: Library, qtbot) -> CorrectionsDialog:
    sessions = library.call(pieces.correctable)
    dialog = CorrectionsDialog(library, sessions, [sessions[-1].id])
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def starts(library: Library) -> list[datetime]:
    return [session.start for session in library.call(season.season).sessions]


def press(dialog, made, qtbot) -> None:
    with qtbot.waitSignal(dialog.applied):
        qtbot.mouseClick(made, Qt.MouseButton.LeftButton)


def test_many_starts_are_moved_at_once(library, qtbot) -> None:
    before, dialog = starts(library), opened(library, qtbot)
    assert dialog.count.text() == "1 chosen" and not dialog.join.isEnabled()
    assert "in the file" in dialog.zone_now.text()
    dialog.list.selectAll()
    assert dialog.count.text() == "2 chosen" and dialog.join.isEnabled()
    dialog.days.setValue(1)
    dialog.hours.setValue(-2)
    press(dialog, dialog.move_starts, qtbot)
    assert starts(library) == [start + timedelta(hours=22) for start in before]


def test_a_session_is_cut_and_what_cannot_be_is_said(library, qtbot) -> None:
    dialog = opened(library, qtbot)
    dialog.list.selectAll()
    qtbot.mouseClick(dialog.join, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(dialog.error.isVisible)
    assert "too long for one run." in dialog.error.text()
    dialog.list.clearSelection()
    assert dialog.count.text() == "None chosen" and not dialog.cut.isEnabled()
    line = dialog.list.visualRect(dialog.list.model().index(1, 0))
    qtbot.mouseClick(dialog.list.viewport(), Qt.MouseButton.LeftButton, pos=line.center())
    dialog.at.setTime(QTime(0, 20))
    press(dialog, dialog.cut, qtbot)
    assert len(starts(library)) == 3


def test_sport_and_zone_are_said(library, qtbot) -> None:
    dialog = opened(library, qtbot)
    dialog.sport.setCurrentText("cycling")
    press(dialog, dialog.set_sport, qtbot)
    assert [row["sport"] for row in library.call(queries.sessions)] == ["cycling", "running"]
    dialog = opened(library, qtbot)
    dialog.zone.setCurrentText("Nowhere/Here")
    qtbot.mouseClick(dialog.set_zone, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(dialog.error.isVisible)
    assert dialog.error.text().startswith("No time zone is called")


def test_a_start_is_told(library, tmp_path, monkeypatch, qtbot) -> None:
    monkeypatch.setattr("tests.formats.build.START_FIT", 200)
    (tmp_path / "a.fit").write_bytes(bytes(run_fit(900)))
    library.take_in([tmp_path / "a.fit"])
    (file,) = library.call(queries.files_to_look_at)
    assert asks_for_start(file.problem)
    dialog = StartDialog(library, file)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.start.setDateTime(QDateTime(2026, 5, 1, 18, 0, 0))
    press(dialog, dialog.keep, qtbot)
    assert datetime(2026, 5, 1, 18, 0) in starts(library)

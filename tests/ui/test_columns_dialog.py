"""The columns dialog as hands use it: choices, what they would give, and keeping them."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from tercet.library import naming
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.columns_dialog import CHOICES, ColumnsDialog

ROWS = "".join(f"{k}/{k + 1}/2026;{5 + k};{30 + 5 * k}:00\n" for k in range(1, 9))


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    yield made
    made.close()


def opened(library: Library, tmp_path: Path, text: str, qtbot) -> ColumnsDialog:
    (tmp_path / "log.csv").write_text(text)
    library.take_in([tmp_path / "log.csv"])
    (row,) = library.call(queries.files_to_look_at)
    dialog = ColumnsDialog(library, library.call(naming.waiting, row.sha256))
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def choose(dialog: ColumnsDialog, column: int, words: str) -> None:
    dialog.choices[column].setCurrentText(words)


def test_choosing_the_order_of_the_day_reads_the_table(library, tmp_path, qtbot) -> None:
    dialog = opened(library, tmp_path, f"Tag;km;Dauer\n{ROWS}", qtbot)
    qtbot.waitUntil(lambda: "No line of it" in dialog.given.text())
    assert not dialog.keep.isEnabled()
    choose(dialog, 0, "day, 31/12")
    qtbot.waitUntil(dialog.keep.isEnabled)
    assert dialog.given.text() == "8 runs from 2026-02-01 to 2026-09-08, 76 km in 7:00."
    with qtbot.waitSignal(dialog.applied):
        qtbot.mouseClick(dialog.keep, Qt.MouseButton.LeftButton)
    assert len(library.call(queries.sessions)) == 8
    assert not library.call(queries.files_to_look_at)


def test_what_is_missing_is_said_before_anything_is_read(library, tmp_path, qtbot) -> None:
    dialog = opened(library, tmp_path, f"a;b;c\n{ROWS}", qtbot)
    assert dialog.given.text() == "Name the column that holds the day."
    choose(dialog, 0, "day, 12/31")
    assert dialog.given.text() == "Name a column of distances or of times taken."
    choose(dialog, 1, "distance, km")
    choose(dialog, 2, "distance, miles")
    assert dialog.given.text() == "Two columns are named distance: choose one of them."
    choose(dialog, 2, "time taken, m:ss")
    qtbot.waitUntil(dialog.keep.isEnabled)


def test_samples_without_a_day_ask_for_their_start(library, tmp_path, qtbot) -> None:
    text = "seconds,hr\n" + "".join(f"{k},{120 + k}\n" for k in range(60))
    dialog = opened(library, tmp_path, text, qtbot)
    assert dialog.naming.holds == "samples" and dialog.start.isVisible()
    qtbot.waitUntil(dialog.keep.isEnabled)
    assert "60 samples" in dialog.given.text()
    with qtbot.waitSignal(dialog.applied):
        qtbot.mouseClick(dialog.keep, Qt.MouseButton.LeftButton)
    (run,) = library.call(queries.sessions)
    assert run["channels"] == "heart_rate"


def test_every_choice_is_worded_once() -> None:
    for choices in CHOICES.values():
        words = [choice[2] for choice in choices]
        assert len(set(words)) == len(words)

"""Several runners through the window: added, opened, handed over, taken in, settled."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from tercet.domain import Block, Race
from tercet.library import operations, record, roster
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.desk import Desk
from tercet.ui.squad_line import one_word, race_words, share_words, where

TODAY = date.today()


@pytest.fixture
def library(some_library: Library) -> Library:
    return some_library


@pytest.fixture
def desk(qtbot, library: Library) -> Iterator[Desk]:
    """A window over a runner with some runs, and a second runner beside."""
    library.call(operations.set_setting, "runner", "Ines Aldana")
    block = Block(TODAY - timedelta(days=8), TODAY + timedelta(days=12), "Hills", "base", 0.9)
    library.call(operations.set_plan, [block], [Race(TODAY + timedelta(days=46), "Half")])
    roster.add(library.folder, "Oskar Wren")
    made = Desk(library)
    with qtbot.waitSignal(made.main.season_shown, timeout=20_000):
        made.main.show()
    yield made
    made.main.close()
    made.main.deleteLater()
    made.close()


def squad_page(qtbot, desk: Desk):
    desk.main.show_view("squad")
    page = desk.main.further.current
    qtbot.waitUntil(lambda: len(page.lines) == 2, timeout=5_000)
    return page


def test_a_line_a_runner_in_the_order_of_races(qtbot, desk: Desk) -> None:
    page = squad_page(qtbot, desk)
    assert [line.row.runner.name for line in page.lines] == ["Ines Aldana", "Oskar Wren"]
    first, second = (line.row for line in page.lines)
    assert where(first) == "Hills, week 2 of 3"
    assert where(second) == "no block today" and one_word(second, TODAY) == "no runs yet"
    assert race_words(second, TODAY)[0] == "no race ahead"
    assert share_words(second) == ("", "", False)
    assert "in 46 days" in page.lines[0].accessibleName()
    assert desk.main.bar.runner.isChecked()


def test_enter_opens_a_runner_and_ctrl_tab_comes_back(qtbot, desk: Desk, library: Library) -> None:
    page = squad_page(qtbot, desk)
    page.lines[0].setFocus()
    QTest.keyClick(page.lines[0], Qt.Key.Key_Down)
    qtbot.waitUntil(lambda: page.lines[1].hasFocus() or not desk.main.isActiveWindow())
    before = desk.main
    QTest.keyClick(page.lines[1], Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.main is not before, timeout=5_000)
    qtbot.waitUntil(lambda: desk.main.bar.runner.text() == "Oskar Wren", timeout=10_000)
    assert desk.library.folder != library.folder
    # The first runner's record is let go of, so that it can be opened again.
    desk.next_runner()
    qtbot.waitUntil(lambda: desk.main.bar.runner.text() == "Ines Aldana", timeout=10_000)
    qtbot.waitUntil(lambda: desk.main.view is not None, timeout=10_000)
    assert desk.main.view.session_count == 6


def test_the_names_menu_lists_the_others(qtbot, desk: Desk) -> None:
    menu = desk.main.bar.runner_menu
    menu.aboutToShow.emit()
    menu.aboutToShow.emit()
    assert [a.text() for a in menu.actions()].count("Open Oskar Wren") == 1
    before = desk.main
    next(a for a in menu.actions() if a.text() == "Open Oskar Wren").trigger()
    qtbot.waitUntil(lambda: desk.main is not before, timeout=5_000)


def test_a_runner_that_is_open_elsewhere_is_told(qtbot, desk: Desk, library: Library) -> None:
    other = next(r for r in roster.runners(library.folder) if r.name == "Oskar Wren")
    holding = Library(other.folder)
    try:
        before = desk.main
        desk.go_to(other.folder)
        assert desk.main is before
        assert "already open" in before.undo_bar.words.text()
    finally:
        holding.close()


def test_a_name_that_is_taken_is_told_on_the_page(qtbot, desk: Desk) -> None:
    page = squad_page(qtbot, desk)
    page.add_named("oskar wren")
    assert "already" in page.error.text() and page.error.isVisible()


def test_a_record_goes_out_and_in_and_a_conflict_is_settled(
    qtbot, desk: Desk, library: Library, tmp_path: Path
) -> None:
    page = squad_page(qtbot, desk)
    assert page.record.file_name().startswith("Ines Aldana 20")
    target = tmp_path / "ines.zip"
    page.record.hand_over(target)
    qtbot.waitUntil(lambda: "Written" in page.record.said.text(), timeout=20_000)
    other = Library(tmp_path / "elsewhere")
    try:
        from tercet.library import record_merge

        record_merge.take_in(other, target)
        run = other.call(queries.run_ids)[0]
        other.call(operations.set_note, run, "the athlete's words")
        assert record.write(other, tmp_path / "back.zip", by="Ines")
    finally:
        other.close()
    library.call(operations.set_note, library.call(queries.run_ids)[0], "the coach's words")
    page.record.take_in(tmp_path / "back.zip")
    qtbot.waitUntil(lambda: page.record.dialog is not None, timeout=20_000)
    dialog = page.record.dialog
    assert len(dialog.mine) == 1
    dialog.theirs[0].setChecked(True)
    QTest.mouseClick(dialog.save, Qt.MouseButton.LeftButton)

    def notes() -> set[str]:
        return {row["note"] for row in library.call(queries.sessions)}

    qtbot.waitUntil(lambda: "the athlete's words" in notes(), timeout=5_000)
    desk.main.acts.undo()
    qtbot.waitUntil(lambda: "the coach's words" in notes(), timeout=5_000)


def test_another_runners_record_is_asked_about(
    qtbot, desk: Desk, library: Library, tmp_path: Path
) -> None:
    page = squad_page(qtbot, desk)
    other = Library(tmp_path / "other")
    try:
        other.call(operations.set_setting, "runner", "Tove Marsh")
        assert record.write(other, tmp_path / "tove.zip")
    finally:
        other.close()
    page.record.take_in(tmp_path / "tove.zip")
    qtbot.waitUntil(lambda: "Tove Marsh's record" in page.record.said.text(), timeout=5_000)
    assert library.call(operations.undo).step != "Take in a record"
    library.call(operations.redo)
    QTest.mouseClick(page.record.anyway, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "into Ines Aldana" in page.record.said.text(), timeout=10_000)
    assert not page.record.anyway.isVisible()


def test_a_file_that_is_no_record_is_told(qtbot, desk: Desk, tmp_path: Path) -> None:
    page = squad_page(qtbot, desk)
    wrong = tmp_path / "wrong.zip"
    wrong.write_bytes(b"nothing of the kind")
    page.record.take_in(wrong)
    qtbot.waitUntil(lambda: "no record" in page.record.said.text(), timeout=5_000)
    assert page.record.take.isEnabled()

"""Blocks and races: typed, checked, previewed, applied and taken back."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDoubleSpinBox,
    QLineEdit,
    QPushButton,
    QWidget,
)
from tests.ui.hands import by_key

from tercet import resources
from tercet.domain import DatedThresholds, Race
from tercet.engine import Thresholds
from tercet.library import operations
from tercet.library.dated import with_new
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.day_edit import DayEdit
from tercet.ui.plan_dialog import PlanDialog
from tercet.ui.thresholds_pages import duration_of

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def window(open_window: Callable, library: Library) -> Iterator[QWidget]:
    """A window over three runs judged by an estimate."""
    names = ("2026-04-14-1843.fit", "2026-05-02-0845.tcx", "2026-05-08-1855.gpx")
    library.take_in([resources.samples() / name for name in names])
    yield open_window()


def dialog_of(qtbot, window: QWidget, kind: type[QDialog]):
    qtbot.waitUntil(lambda: any(d.isVisible() for d in window.findChildren(kind)), timeout=10_000)
    return next(d for d in window.findChildren(kind) if d.isVisible())


def press(qtbot, button: QPushButton) -> None:
    assert button.isVisible() and button.isEnabled()
    qtbot.mouseClick(button, LEFT)


def test_from_a_day_on_leaves_what_was_before() -> None:
    values = Thresholds(lt1_speed=3.0, lt2_speed=3.6)
    old = DatedThresholds(date(2026, 4, 1), values, "old")
    later = DatedThresholds(date(2026, 6, 1), values, "later")
    new = DatedThresholds(date(2026, 5, 1), values, "new")
    assert [e.source for e in with_new([old, later], new, everything=False)] == [
        "old", "later", "new",
    ]  # fmt: skip
    whole = with_new([old, later], new, everything=True)
    assert [(e.source, e.start) for e in whole] == [
        ("new", old.start), ("later", later.start),
    ]  # fmt: skip
    same_day = DatedThresholds(later.start, values, "again")
    assert [e.source for e in with_new([old, later], same_day, everything=False)] == [
        "old", "again",
    ]  # fmt: skip


def test_times_are_read() -> None:
    assert duration_of("44:10") == 44 * 60 + 10
    assert duration_of(" 1:35:20 ") == 3600 + 35 * 60 + 20


# Blocks and races


def plan(qtbot, window) -> PlanDialog:
    by_key(qtbot, window, Qt.Key.Key_B)
    return dialog_of(qtbot, window, PlanDialog)


def cell(dialog: PlanDialog, row: int, column: int) -> QWidget:
    found = dialog.blocks.cellWidget(row, column)
    assert found is not None
    return found


def set_day(field: QWidget, day: date) -> None:
    assert isinstance(field, DayEdit)
    field.setDate(QDate(day.year, day.month, day.day))


def test_saving_keeps_a_race_distance_nobody_touched_to_the_metre(qtbot, library) -> None:
    half = Race(date(2026, 9, 27), "Half", 21097.5)
    library.call(operations.set_plan, [], [half])
    stored = library.call(queries.races)
    dialog = PlanDialog(library, [], stored)
    qtbot.addWidget(dialog)
    assert dialog.wanted_races() == stored
    distance = dialog.races.cellWidget(0, 2)
    assert isinstance(distance, QDoubleSpinBox)
    distance.setValue(10.0)
    assert dialog.wanted_races()[0].distance_m == 10_000.0


def test_a_block_and_a_race_are_added_named_and_saved(qtbot, window, library) -> None:
    dialog = plan(qtbot, window)
    assert dialog.no_blocks.isVisible() and not dialog.blocks.isVisible()
    press(qtbot, dialog.add_block)
    name = dialog.focusWidget()
    assert isinstance(name, QLineEdit) and name.accessibleName() == "Block name"
    qtbot.keyClicks(name, "Hills")  # the suggested name is selected, so it is typed over
    kind = cell(dialog, 0, 1)
    assert isinstance(kind, QComboBox)
    kind.setCurrentText("support")
    set_day(cell(dialog, 0, 2), date(2026, 4, 6))
    set_day(cell(dialog, 0, 3), date(2026, 5, 10))
    press(qtbot, dialog.add_race)
    qtbot.keyClicks(dialog.focusWidget(), "Harbour 10")
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, dialog.save)
    (block,) = library.call(queries.blocks)
    assert (block.name, block.kind) == ("Hills", "support")
    assert (block.start, block.end) == (date(2026, 4, 6), date(2026, 5, 10))
    (race,) = library.call(queries.races)
    assert race.name == "Harbour 10"
    assert "Hills" in [shown.name for shown in window.view.blocks]
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, window.undo_bar.undo)
    assert not library.call(queries.blocks) and not library.call(queries.races)


def test_a_removed_block_is_gone_and_comes_back_by_undo(qtbot, window, library) -> None:
    from tercet.domain import Block

    library.call(
        operations.set_plan, [Block(date(2026, 4, 6), date(2026, 5, 10), "Hills", "base")], []
    )
    dialog = plan(qtbot, window)
    remove = cell(dialog, 0, 5)
    assert isinstance(remove, QPushButton)
    press(qtbot, remove)
    assert dialog.blocks.rowCount() == 0 and dialog.no_blocks.isVisible()
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, dialog.save)
    assert not library.call(queries.blocks)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        by_key(qtbot, window, Qt.Key.Key_Z)
    assert [block.name for block in library.call(queries.blocks)] == ["Hills"]


def test_blocks_that_overlap_or_end_early_are_named(qtbot, window, library) -> None:
    dialog = plan(qtbot, window)
    for start, end in ((date(2026, 4, 6), date(2026, 5, 10)), (date(2026, 5, 4), date(2026, 6, 7))):
        press(qtbot, dialog.add_block)
        row = dialog.blocks.rowCount() - 1
        set_day(cell(dialog, row, 2), start)
        set_day(cell(dialog, row, 3), end)
    press(qtbot, dialog.save)
    assert dialog.isVisible()
    assert "overlap on 4 May" in dialog.error.text()
    assert "may begin on 11 May" in dialog.error.text()
    assert dialog.focusWidget() is cell(dialog, 1, 2)
    set_day(cell(dialog, 1, 2), date(2026, 6, 30))
    press(qtbot, dialog.save)
    assert "ends before it starts" in dialog.error.text()
    assert dialog.focusWidget() is cell(dialog, 1, 3)
    set_day(cell(dialog, 1, 3), date(2026, 7, 26))
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, dialog.save)
    assert len(library.call(queries.blocks)) == 2


def test_cancel_saves_nothing(qtbot, window, library) -> None:
    dialog = plan(qtbot, window)
    press(qtbot, dialog.add_block)
    press(qtbot, dialog.cancel)
    assert not library.call(queries.blocks)

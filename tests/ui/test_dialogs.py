"""Thresholds, blocks and races: typed, checked, previewed, applied and taken back."""

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
from tercet.library import operations, season
from tercet.library.dated import with_new
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.fields import DayEdit
from tercet.ui.plan_dialog import PlanDialog
from tercet.ui.thresholds_dialog import ThresholdsDialog
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


def thresholds(qtbot, window) -> ThresholdsDialog:
    return dialog_of(qtbot, window, ThresholdsDialog)


def press(qtbot, button: QPushButton) -> None:
    assert button.isVisible() and button.isEnabled()
    qtbot.mouseClick(button, LEFT)


def previewed(qtbot, dialog: ThresholdsDialog):
    press(qtbot, dialog.show_change)
    qtbot.waitUntil(lambda: dialog.preview is not None, timeout=20_000)
    return dialog.preview


def sums(library: Library) -> list[float]:
    """Easy, moderate and hard seconds of the whole season."""
    blocks = library.call(season.season).blocks
    return [sum(block.seconds[k] for block in blocks) for k in range(3)]


def test_a_race_is_previewed_used_taken_back_and_used_again(qtbot, window, library) -> None:
    press(qtbot, window.season_page.strip.race)
    dialog = thresholds(qtbot, window)
    before = sums(library)
    qtbot.keyClicks(dialog.race.time, "44:10")
    assert "LT2 about" in dialog.race.words.text()
    preview = previewed(qtbot, dialog)
    assert dialog.change.isVisible() and " change" in dialog.change.words.text()
    assert sums(library) == pytest.approx(before), "a preview changes nothing"
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, dialog.use)
    after = sums(library)
    assert after == pytest.approx(preview.after[:3], abs=0.01)
    kept = library.call(queries.thresholds)
    assert [entry.source for entry in kept] == ["10 km in 44:10"]
    assert window.undo_bar.isVisible() and window.undo_bar.words.text() == "Change thresholds"
    for key, wanted in ((Qt.Key.Key_Z, before), (Qt.Key.Key_Y, after)):
        with qtbot.waitSignal(window.season_shown, timeout=10_000):
            by_key(qtbot, window, key)
        assert sums(library) == wanted  # to the same digits


def test_a_slip_in_the_time_is_named_and_nothing_is_applied(qtbot, window, library) -> None:
    before = library.call(queries.thresholds)
    window.acts.edit_thresholds("race")
    dialog = thresholds(qtbot, window)
    qtbot.keyClicks(dialog.race.time, "4:41")
    qtbot.keyClick(dialog.race.time, Qt.Key.Key_Return)
    assert dialog.error.isVisible()
    # 10 km in 281 s is 28.1 s a kilometre.
    assert "10 km in 4:41 would be 0:28 /km" in dialog.error.text()
    assert "44:10" in dialog.error.text()
    assert dialog.focusWidget() is dialog.race.time
    assert dialog.race.time.property("wrong") is True
    assert dialog.preview is None and not dialog.use.isVisible()
    qtbot.keyClicks(dialog.race.time, "0")
    assert not dialog.error.isVisible()
    assert dialog.race.time.property("wrong") is False
    dialog.reject()
    assert library.call(queries.thresholds) == before


@pytest.mark.parametrize("text", ["", "abc", "44", "44:70", "1:70:00", "-4:10"])
def test_what_is_no_time_is_named_with_an_example(qtbot, window, text) -> None:
    window.acts.edit_thresholds("race")
    dialog = thresholds(qtbot, window)
    dialog.race.time.setText(text)
    press(qtbot, dialog.show_change)
    assert dialog.error.isVisible() and "44:10" in dialog.error.text()
    dialog.reject()


def test_an_age_gives_heart_rates(qtbot, window, library) -> None:
    window.acts.edit_thresholds("maximum")
    dialog = thresholds(qtbot, window)
    press(qtbot, dialog.show_change)
    assert "186" in dialog.error.text() and "42" in dialog.error.text()
    dialog.maximum.age.setValue(40)
    previewed(qtbot, dialog)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, dialog.use)
    (entry,) = library.call(queries.thresholds)
    assert entry.source == "age 40" and entry.estimated
    # 208 - 0.7 x 40 = 180 (Tanaka and others, 2001).
    assert entry.values.hr_max == pytest.approx(180.0)


def test_a_maximum_must_be_a_heart_rate(qtbot, window) -> None:
    window.acts.edit_thresholds("maximum")
    dialog = thresholds(qtbot, window)
    dialog.maximum.maximum.setValue(12)
    press(qtbot, dialog.show_change)
    assert dialog.error.isVisible() and "186" in dialog.error.text()
    dialog.reject()


def typed(dialog: ThresholdsDialog, *paces: str, beats: tuple[int, int] = (0, 0)) -> None:
    page = dialog.typed
    page.lt1_pace.setText(paces[0])
    page.lt2_pace.setText(paces[1])
    values = (*beats, 0, 0)
    for box, value in zip((page.lt1_hr, page.lt2_hr, page.rest, page.top), values, strict=True):
        box.setValue(value)


@pytest.mark.parametrize(
    ("paces", "beats", "said", "field"),
    [
        (("4:10", "4:41"), (0, 0), "LT1 must be slower than LT2: 4:10 and 4:41", "lt1_pace"),
        (("5:20", ""), (0, 0), "LT2 pace", "lt2_pace"),
        (("5:20", "4:30"), (170, 150), "LT1 heart rate must be below LT2 heart rate", "lt1_hr"),
        (("fast", "4:30"), (0, 0), "5:20", "lt1_pace"),
        (("", ""), (0, 0), "LT1", "lt1_pace"),
    ],
)
def test_values_that_cannot_be_are_named_as_a_pair(
    qtbot, window, paces, beats, said, field
) -> None:
    window.acts.edit_thresholds("typed")
    dialog = thresholds(qtbot, window)
    typed(dialog, *paces, beats=beats)
    press(qtbot, dialog.show_change)
    assert dialog.error.isVisible() and said in dialog.error.text()
    assert "5:20" in dialog.error.text()
    wrong = getattr(dialog.typed, field)
    assert wrong.property("wrong") is True
    dialog.reject()


def test_typed_thresholds_are_no_estimate_any_more(qtbot, window, library) -> None:
    assert library.call(season.season).estimated
    assert window.season_page.strip.isVisible()
    press(qtbot, window.season_page.strip.typed)
    dialog = thresholds(qtbot, window)
    typed(dialog, "5:20", "4:30", beats=(150, 170))
    preview = previewed(qtbot, dialog)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        press(qtbot, dialog.use)
    assert sums(library) == pytest.approx(preview.after[:3], abs=0.01)
    assert not library.call(season.season).estimated
    assert not window.season_page.strip.isVisible()


def test_what_is_typed_after_a_preview_takes_the_preview_away(qtbot, window) -> None:
    window.acts.edit_thresholds("typed")
    dialog = thresholds(qtbot, window)
    typed(dialog, "5:20", "4:30")
    previewed(qtbot, dialog)
    dialog.typed.lt1_pace.setText("5:10")
    assert dialog.preview is None
    assert not dialog.use.isVisible() and dialog.show_change.isVisible()
    dialog.reject()


def test_keep_it_as_it_is_changes_nothing(qtbot, window, library) -> None:
    before = library.call(queries.thresholds)
    window.acts.edit_thresholds("typed")
    dialog = thresholds(qtbot, window)
    typed(dialog, "5:20", "4:30")
    previewed(qtbot, dialog)
    press(qtbot, dialog.keep)
    assert library.call(queries.thresholds) == before


def test_asking_twice_opens_one_dialog(qtbot, window) -> None:
    window.acts.edit_thresholds()
    window.acts.edit_thresholds()
    dialog = thresholds(qtbot, window)
    assert len(window.findChildren(ThresholdsDialog)) == 1
    dialog.reject()


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

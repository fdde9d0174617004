"""Back from race day, by hand: keys, typing, dragging; what is stored and what is said."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import icalendar
import pytest
from PySide6.QtCore import QDate, QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QKeyEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tercet import resources
from tercet.domain import Block, Changes, DatedThresholds, Race
from tercet.engine import Thresholds
from tercet.engine.countback import Volume
from tercet.library import operations, planning
from tercet.library.library import Library
from tercet.store import plan_queries, queries
from tercet.ui import words
from tercet.ui.countback_dialog import CountBackDialog
from tercet.ui.plan_page import PlanPage
from tercet.ui.plan_tag import MIME

DAY = timedelta(days=1)
MONDAY = date.today() - date.today().weekday() * DAY
HARD = Thresholds(lt1_speed=3.0, lt2_speed=3.7)


@pytest.fixture
def page(qtbot, open_window: Callable, library: Library) -> Iterator[PlanPage]:
    """The page over one run and two blocks around today."""
    library.take_in([resources.samples() / "2026-04-14-1843.fit"])
    base = Block(
        MONDAY - 21 * DAY, MONDAY + 6 * DAY, "Hills", "base", 0.9, volume=Volume(18_000.0, 0.0)
    )
    peak = Block(MONDAY + 7 * DAY, MONDAY + 41 * DAY, "Sharpening", "specific", 0.8)
    library.call(
        operations.set_plan, [base, peak], [Race(MONDAY + 41 * DAY, "Half", 21_097.5, main=True)]
    )
    library.call(
        operations.set_thresholds, [DatedThresholds(MONDAY, HARD)], {}, step="Set thresholds"
    )
    window = open_window()
    window.resize(1366, 768)
    window.show_view("plan")
    found = window.further.current
    assert isinstance(found, PlanPage)
    qtbot.waitUntil(lambda: bool(found.week.lines), timeout=5_000)
    yield found


def stored(qtbot, library: Library, check: Callable[[list[Block]], bool]) -> list[Block]:
    qtbot.waitUntil(lambda: check(library.call(queries.blocks)), timeout=5_000)
    return library.call(queries.blocks)


def line_of(page: PlanPage, weekday: int):
    return next(line for line in page.week.lines if line.day.weekday() == weekday)


def test_typing_shows_what_is_understood_and_enter_goes_on(qtbot, page, library) -> None:
    tuesday = line_of(page, 1)
    tuesday.text.setFocus()
    qtbot.keyClicks(tuesday.text, "20 min easy, 6 x 1 min hard / 1 min jog")
    assert tuesday.hours.text() == "0:32"
    assert not library.call(plan_queries.planned)
    qtbot.keyClick(tuesday.text, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: len(library.call(plan_queries.planned)) == 1, timeout=5_000)
    assert library.call(plan_queries.planned)[0].day == MONDAY + DAY
    assert line_of(page, 2).text.hasFocus()


def test_an_unclear_piece_asks_and_adds_nothing_till_answered(qtbot, page, library) -> None:
    friday = line_of(page, 4)
    friday.text.setFocus()
    qtbot.keyClicks(friday.text, "40 min easy, 6 x 100 m strds")
    assert friday.hours.text() == "0:40"
    assert '"strds" adds nothing yet' in friday.question.text()
    assert friday.answers[0].text() == "Yes, strides"
    qtbot.mouseClick(friday.answers[0], Qt.MouseButton.LeftButton)
    assert friday.text.text() == "40 min easy, 6 x 100 m strides"
    assert friday.question.isHidden() or not friday.question.isVisible()
    qtbot.waitUntil(lambda: len(library.call(plan_queries.planned)) == 1, timeout=5_000)


def test_a_session_moves_by_keys_and_by_dropping(qtbot, page, library) -> None:
    library.call(planning.add_planned, MONDAY, "30 min easy")
    page.window().refresh()
    qtbot.waitUntil(lambda: line_of(page, 0).item is not None, timeout=5_000)
    tag = line_of(page, 0).tag
    tag.setFocus()
    for key in (Qt.Key.Key_M, Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Return):
        qtbot.keyClick(tag, key)
    day = lambda: library.call(plan_queries.planned)[0].day  # noqa: E731
    qtbot.waitUntil(lambda: day() == MONDAY + 2 * DAY, timeout=5_000)
    qtbot.waitUntil(lambda: line_of(page, 2).item is not None, timeout=5_000)
    data = QMimeData()
    data.setData(MIME, str(line_of(page, 2).item.id).encode())
    where = Qt.DropAction.MoveAction, data, Qt.MouseButton.LeftButton
    target = line_of(page, 5)
    enter = QDragEnterEvent(QPoint(20, 10), *where, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(target, enter)
    assert enter.isAccepted()
    drop = QDropEvent(QPointF(20, 10), *where, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(target, drop)
    qtbot.waitUntil(lambda: day() == MONDAY + 5 * DAY, timeout=5_000)


def test_three_shares_make_a_hundred_within_a_tenth_of_a_second(qtbot, page, library) -> None:
    hard = page.block.shares[2]
    hard.setFocus()
    hard.selectAll()
    qtbot.keyClicks(hard, "14")
    begun = time.perf_counter()
    with qtbot.waitSignal(page.window().season_shown, timeout=5_000):
        qtbot.keyClick(hard, Qt.Key.Key_Return)
    took = time.perf_counter() - begun
    assert [box.value() for box in page.block.shares] == [84, 2, 14]
    blocks = stored(qtbot, library, lambda found: found[0].hard_target == 0.14)
    assert (blocks[0].easy_target, blocks[0].moderate_target) == (0.84, 0.02)
    assert took < 0.3  # a busy machine; measured alone it is under 0.1 s


def test_undo_takes_an_edit_back_while_its_field_has_the_focus(qtbot, page, library) -> None:
    before = library.call(queries.blocks)
    hard = page.block.shares[2]
    hard.setFocus()
    hard.selectAll()
    qtbot.keyClicks(hard, "14")
    qtbot.keyClick(hard, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert hard.text() != "14"  # what is being typed comes first
    hard.selectAll()
    qtbot.keyClicks(hard, "14")
    with qtbot.waitSignal(page.window().season_shown, timeout=5_000):
        qtbot.keyClick(hard, Qt.Key.Key_Return)
    assert library.call(queries.blocks) != before
    qtbot.keyClick(hard, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    stored(qtbot, library, lambda found: found == before)


def test_an_edge_moves_by_keys_with_its_rule_said(qtbot, page, library) -> None:
    # The edge is in whole weeks; taper, specific and support of 14 weeks are remarked.
    grip = next(g for g in page.weeks.grips if "Hills" in g.accessibleName().split(" and ")[0])
    grip.setFocus()
    qtbot.keyClick(grip, Qt.Key.Key_Up)
    assert page.weeks.rows.spans != page._rows.spans
    qtbot.keyClick(grip, Qt.Key.Key_Escape)
    assert page.weeks.rows.spans == page._rows.spans
    qtbot.keyClick(grip, Qt.Key.Key_Down)
    qtbot.keyClick(grip, Qt.Key.Key_Return)
    blocks = stored(qtbot, library, lambda found: found[0].end == MONDAY + 13 * DAY)
    assert blocks[1].start == MONDAY + 14 * DAY


def test_counting_back_lays_the_season_out(qtbot, page, library) -> None:
    qtbot.mouseClick(page.races, Qt.MouseButton.LeftButton)
    dialog = page.findChild(CountBackDialog)
    assert dialog is not None
    # Nothing was run lately: the volume to begin with is asked for, not guessed.
    assert "Say how long you run" in dialog.error.text()
    assert not dialog.apply.isEnabled()
    dialog.activateWindow()
    dialog.volume.setFocus()
    qtbot.waitUntil(dialog.volume.hasFocus, timeout=5_000)
    qtbot.keyClicks(dialog.volume, "4:00")
    dialog.goal.setFocus()
    dialog.goal.setText("1:24:00")
    dialog.start.setDate(QDate(MONDAY.year, MONDAY.month, MONDAY.day))
    assert "3:59 /km" in dialog.shown.text()
    qtbot.mouseClick(dialog.apply, Qt.MouseButton.LeftButton)
    blocks = stored(qtbot, library, lambda found: found[-1].kind == "taper")
    assert blocks[-1].end == MONDAY + 41 * DAY
    assert library.call(queries.races)[0].goal_s == 5040.0


def test_a_race_beside_the_main_one_is_kept_and_removed(qtbot, page, library) -> None:
    def dialog() -> CountBackDialog:
        qtbot.mouseClick(page.races, Qt.MouseButton.LeftButton)
        return next(each for each in page.findChildren(CountBackDialog) if each.isVisible())

    first = dialog()
    assert first.remove.isEnabled()
    first.race.setCurrentIndex(first.race.count() - 1)
    assert not first.remove.isEnabled()
    first.name.selectAll()
    qtbot.keyClicks(first.name, "Town 10")
    qtbot.mouseClick(first.save_race, Qt.MouseButton.LeftButton)
    races = lambda: [(race.name, race.main) for race in library.call(queries.races)]  # noqa: E731
    both = [("Half", True), ("Town 10", False)]
    qtbot.waitUntil(lambda: sorted(races()) == both, timeout=5_000)
    qtbot.waitUntil(lambda: len(page._races) == 2, timeout=5_000)
    second = dialog()
    assert second.name.text() == "Half"
    second.race.setCurrentText(next(t for t in map(second.race.itemText, range(2)) if "Town" in t))
    qtbot.mouseClick(second.remove, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: races() == both[:1], timeout=5_000)


def test_the_plan_is_written_as_a_calendar(qtbot, page, library, tmp_path: Path) -> None:
    library.call(planning.add_planned, MONDAY, "30 min easy, 8 x 20 s strides / 40 s walk")
    target = tmp_path / "plan.ics"
    page.write_calendar(target)
    qtbot.waitUntil(target.exists, timeout=5_000)
    events = icalendar.Calendar.from_ical(target.read_bytes()).walk("VEVENT")
    assert sorted(str(event["SUMMARY"]) for event in events) == [
        "30 min easy, 8 x 20 s strides / 40 s walk",
        "Half",
    ]
    said = page.window().undo_bar
    qtbot.waitUntil(lambda: said.words.text() == "plan.ics holds 2 entries", timeout=5_000)
    assert not said.undo.isVisible()
    page.read_calendar(target)
    qtbot.wait(50)
    assert len(library.call(plan_queries.planned)) == 1


def test_n_on_the_sheet_goes_to_the_day_to_type(qtbot, page, library) -> None:
    window = page.window()
    window.show_view("season")
    sheet = window.season_page.sheet
    sheet.setFocus()
    qtbot.keyClick(sheet, Qt.Key.Key_T)
    qtbot.keyClick(sheet, Qt.Key.Key_N)
    assert window.further.current is page
    today = line_of(page, date.today().weekday())
    qtbot.waitUntil(today.text.hasFocus, timeout=5_000)
    qtbot.keyClicks(today.text, "35 min easy")
    qtbot.keyClick(today.text, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: bool(library.call(plan_queries.planned)), timeout=5_000)
    assert library.call(plan_queries.planned)[0].day == date.today()


def test_a_session_longer_than_wanted_is_said(qtbot, page, library) -> None:
    library.call(planning.add_planned, MONDAY + 6 * DAY, "2 h easy")
    page.block.longest.setFocus()
    qtbot.keyClicks(page.block.longest, "1:50")
    qtbot.keyClick(page.block.longest, Qt.Key.Key_Return)
    stored(qtbot, library, lambda found: found[0].longest == 6600.0)
    said = "Sun is longer than the longest run wanted, 1:50 h."
    qtbot.waitUntil(lambda: page.week.longer.text() == said, timeout=5_000)


def test_what_cannot_be_read_or_written_is_said(qtbot, page, tmp_path: Path) -> None:
    other = tmp_path / "notes.txt"
    other.write_text("no calendar")
    for call, told in (
        (lambda: page.read_calendar(other), "no calendar by RFC 5545"),
        (lambda: page.read_calendar(tmp_path / "gone.ics"), "was not read"),
        (lambda: page.write_calendar(tmp_path / "no" / "plan.ics"), "was not written"),
    ):
        with qtbot.waitSignal(page.context.answers.failed, timeout=5_000) as heard:
            call()
        assert told in str(heard.args[0])


def test_the_weeks_can_be_read_as_a_table(page) -> None:
    page.twin.show_table.trigger()
    table = page.twin.table
    assert table.rowCount() == len(page.weeks.rows.weeks)
    assert [table.item(row, 2).text() for row in (0, table.rowCount() - 1)][1] == "Sharpening"
    assert page.scale.isHidden()


def test_a_plan_goes_on_after_its_last_block_and_race(qtbot, page, library) -> None:
    library.call(operations.set_plan, [Block(MONDAY - 21 * DAY, MONDAY + 6 * DAY, "Taper")], [])
    library.call(planning.add_planned, MONDAY + 9 * DAY, "40 min easy")
    page.context.acts.changed.emit(Changes(plan=True))

    def named() -> list[str]:
        return [span.name for span in page.weeks.rows.spans[-2:]]

    qtbot.waitUntil(lambda: named() == ["Taper", "unplanned"], timeout=5_000)
    rows = page.weeks.rows
    assert rows.weeks[-1].first_day == MONDAY + 35 * DAY
    assert next(w for w in rows.weeks if w.first_day == MONDAY + 7 * DAY).planned_s == 2400
    page.weeks.choose(MONDAY + 7 * DAY)
    qtbot.waitUntil(page.block.make.isVisible, timeout=5_000)
    QTest.mouseClick(page.block.make, Qt.MouseButton.LeftButton)
    stored(qtbot, library, lambda blocks: len(blocks) == 2)


def row_point(page: PlanPage, week: date, x: int) -> QPoint:
    """A point in a week's row of the list, x px from its left at 100 %."""
    at = next(k for k, each in enumerate(page.weeks.rows.weeks) if each.first_day == week)
    height = page.weeks.row_height()
    return QPoint(x, 4 + at * height + height // 2)


def drag(qtbot, page: PlanPage, start: QPoint, end: QPoint) -> None:
    """Press, move and let go, as a hand does."""
    left = Qt.MouseButton.LeftButton
    qtbot.mousePress(page.weeks, left, pos=start)
    qtbot.mouseMove(page.weeks, end)
    there = QPointF(end), QPointF(page.weeks.mapToGlobal(end))
    event = QMouseEvent(
        QMouseEvent.Type.MouseMove, *there, left, left, Qt.KeyboardModifier.NoModifier
    )
    QApplication.sendEvent(page.weeks, event)
    qtbot.mouseRelease(page.weeks, left, pos=end)


def test_a_block_is_drawn_over_unplanned_weeks_by_mouse_and_by_keys(qtbot, page, library) -> None:
    library.call(operations.set_plan, library.call(queries.blocks), [])
    page.window().refresh()
    free = MONDAY + 42 * DAY
    qtbot.waitUntil(lambda: page.weeks.rows.weeks[-1].first_day > free + 7 * DAY, timeout=5_000)
    drag(qtbot, page, row_point(page, free, 240), row_point(page, free + 7 * DAY, 240))
    made = stored(qtbot, library, lambda found: len(found) == 3)[-1]
    assert (made.start, made.end) == (free, free + 13 * DAY)
    qtbot.waitUntil(lambda: page.block.start.day == free, timeout=5_000)
    library.call(operations.undo)
    page.window().refresh()
    qtbot.waitUntil(lambda: page.block.nothing.isVisible(), timeout=5_000)
    page.weeks.setFocus()
    # Upwards ends at the block above; what is drawn never lies over another.
    for _ in range(3):
        qtbot.keyClick(page.weeks, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(page.weeks, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(page.weeks, Qt.Key.Key_Return)
    made = stored(qtbot, library, lambda found: len(found) == 3)[-1]
    assert (made.start, made.end) == (free, free + 13 * DAY)


def test_a_block_is_moved_whole_by_mouse_and_by_keys(qtbot, page, library) -> None:
    peak = MONDAY + 7 * DAY
    drag(qtbot, page, row_point(page, peak, 60), row_point(page, peak - 7 * DAY, 60))
    blocks = stored(qtbot, library, lambda found: found[1].start == MONDAY)
    assert (blocks[0].end, blocks[1].end) == (MONDAY - DAY, MONDAY + 34 * DAY)
    qtbot.waitUntil(lambda: page.block.end.day == MONDAY + 34 * DAY, timeout=5_000)
    page.weeks.setFocus()
    for _ in range(9):  # as far as the block before keeps a week
        up = QKeyEvent.Type.KeyPress, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier
        QApplication.sendEvent(page.weeks, QKeyEvent(*up))
    assert library.call(queries.blocks) == blocks
    qtbot.keyRelease(page.weeks, Qt.Key.Key_Alt)
    blocks = stored(qtbot, library, lambda found: found[1].start == MONDAY - 14 * DAY)
    assert blocks[0].end == MONDAY - 15 * DAY
    qtbot.waitUntil(lambda: page.weeks.chosen == MONDAY - 14 * DAY, timeout=5_000)
    for day in (MONDAY, peak):
        library.call(operations.undo)
        assert library.call(queries.blocks)[1].start == day


def test_typed_days_keep_a_block_beside_its_neighbour(qtbot, page, library) -> None:
    page.weeks.choose(MONDAY + 7 * DAY)
    start = page.block.start
    qtbot.waitUntil(lambda: start.day == MONDAY + 7 * DAY, timeout=5_000)

    def type_day(field, day: date) -> None:
        field.setFocus()
        field.selectAll()
        qtbot.keyClicks(field, f"{words.short_day(day)} {day.year}")
        qtbot.keyClick(field, Qt.Key.Key_Return)

    type_day(start, MONDAY + 10 * DAY)
    blocks = stored(qtbot, library, lambda found: found[1].start == MONDAY + 10 * DAY)
    assert blocks[0].end == MONDAY + 9 * DAY
    # A day that would leave the neighbour none is refused, and the field says what holds.
    type_day(start, MONDAY - 40 * DAY)
    qtbot.waitUntil(lambda: start.day == MONDAY + 10 * DAY, timeout=5_000)
    assert library.call(queries.blocks) == blocks
    type_day(page.block.end, MONDAY)
    assert page.block.length.text() == "The last day must not lie before the first."
    type_day(page.block.end, MONDAY + 30 * DAY)
    stored(qtbot, library, lambda found: found[1].end == MONDAY + 30 * DAY)


def test_an_edge_closes_a_gap(qtbot, page, library) -> None:
    blocks = library.call(queries.blocks)
    first = replace(blocks[0], end=MONDAY - 8 * DAY)
    library.call(operations.set_plan, [first, blocks[1]], library.call(queries.races))
    page.window().refresh()
    qtbot.waitUntil(lambda: len(page.weeks.rows.spans) >= 3, timeout=5_000)
    grip = page.weeks.grips[0]
    grip.setFocus()
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Return):
        qtbot.keyClick(grip, key)
    stored(qtbot, library, lambda found: found[0].end == MONDAY + 6 * DAY)


def test_what_was_taken_back_leaves_the_block_s_fields(qtbot, page, library) -> None:
    field = page.block.longest
    field.setFocus()
    qtbot.keyClicks(field, "1:50")
    qtbot.keyClick(field, Qt.Key.Key_Tab)
    stored(qtbot, library, lambda found: found[0].longest == 6600.0)
    qtbot.wait(300)
    qtbot.keyClick(page.window(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    stored(qtbot, library, lambda found: found[0].longest is None)
    qtbot.waitUntil(lambda: field.text() == "", timeout=5_000)


def test_tab_goes_on_to_the_field_that_the_first_week_s_volume_opens(qtbot, page, library) -> None:
    base = library.call(queries.blocks)[0]
    page.context.acts.do(planning.set_block, replace(base, volume=None))
    qtbot.waitUntil(lambda: page.block.first.text() == "", timeout=5_000)
    page.block.first.setFocus()
    qtbot.keyClicks(page.block.first, "4:30")
    qtbot.keyClick(page.block.first, Qt.Key.Key_Tab)
    assert page.block.growth.hasFocus()
    qtbot.keyClicks(page.block.growth, "5")
    qtbot.keyClick(page.block.growth, Qt.Key.Key_Tab)
    wanted = Volume(16_200.0, growth=0.05)
    stored(qtbot, library, lambda found: found[0].volume == wanted)


def test_a_week_without_a_plan_has_nothing_to_copy(qtbot, page, library) -> None:
    assert not page.week.copy.isEnabled()
    page.context.acts.do(planning.add_planned, MONDAY, "40 min easy")
    qtbot.waitUntil(page.week.copy.isEnabled, timeout=5_000)
    qtbot.mouseClick(page.week.copy, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: len(library.call(plan_queries.planned)) == 2, timeout=5_000)

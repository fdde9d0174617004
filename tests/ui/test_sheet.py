"""The season sheet by real keys and mouse: moving, opening, pointing, what it draws and says."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, Qt
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QApplication, QLabel, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from tercet.library.views import (
    ZERO,
    BlockView,
    Five,
    RaceView,
    SeasonView,
    SessionView,
    WeekView,
)
from tercet.ui import sheet_layout, sheet_rows, theme
from tercet.ui.sheet import SeasonSheet
from tercet.ui.sheet_card import HoverCard
from tercet.ui.sheet_rows import Cell

MONDAY = date(2026, 4, 6)
TODAY = date(2026, 4, 29)
DISPLAY = Qt.ItemDataRole.DisplayRole
SPOKEN = Qt.ItemDataRole.AccessibleTextRole
Key = Qt.Key
# Said by the screenless plugin whenever a window is shown.
pytestmark = pytest.mark.qt_log_ignore("does not support propagateSizeHints")
Spec = tuple[int, str, Five]

EASY: Five = (2940.0, 0.0, 0.0, 60.0, 0.0)
HILLS: Five = (2940.0, 300.0, 1140.0, 30.0, 0.0)
LONG: Five = (6600.0, 0.0, 0.0, 0.0, 0.0)


def session(
    number: int, day: date, name: str, seconds: Five, sport: str = "running"
) -> SessionView:
    running = sum(seconds[:3]) + seconds[4]
    return SessionView(
        id=number,
        day=day,
        start=datetime(day.year, day.month, day.day, 6, 40),
        name=name,
        sport=sport,
        kind="",
        seconds=seconds,
        metres=(running * 3.0, 0.0, 0.0, 0.0, 0.0),
        elapsed_s=running + 60.0,
        moving_s=running or 3600.0,
        distance_m=running * 3.0,
    )


def week(monday: date, runs: list[SessionView], inside: tuple[bool, ...] = (True,) * 7) -> WeekView:
    days = tuple(tuple(s for s in runs if s.day == monday + timedelta(days=n)) for n in range(7))
    total = [sum(s.seconds[i] for s in runs if s.sport == "running") for i in range(5)]
    sums: Five = (total[0], total[1], total[2], total[3], total[4])
    return WeekView(monday, days, inside, sums, ZERO)


def block(name: str, weeks: list[WeekView], target: float = 0.8, **changes: object) -> BlockView:
    total = [sum(w.seconds[i] for w in weeks) for i in range(5)]
    judged = sum(total[:3])
    view = BlockView(
        id=1,
        name=name,
        kind="base",
        start=weeks[0].first_day,
        end=weeks[-1].first_day + timedelta(days=6),
        easy_target=target,
        weeks=tuple(weeks),
        seconds=(total[0], total[1], total[2], total[3], total[4]),
        metres=ZERO,
        easy_share=total[0] / judged if judged else None,
    )
    return replace(view, **changes)  # type: ignore[arg-type]


def season(blocks: list[BlockView], races: tuple[RaceView, ...] = ()) -> SeasonView:
    return SeasonView(tuple(blocks), races, TODAY, 1, 0, False)


def small() -> SeasonView:
    """Two blocks of two weeks; ids: week and day, as 13 for Wednesday of the first week."""
    number = iter(range(1, 5))
    blocks = []
    for name in ("Hills", "Threshold"):
        weeks = []
        for _ in range(2):
            n = next(number)
            monday = MONDAY + timedelta(weeks=n - 1)
            days = [monday + timedelta(days=d) for d in range(7)]
            runs = [
                session(10 * n + 2, days[1], "6 x 3 min uphill", HILLS),
                session(10 * n + 3, days[2], "Morning", EASY),
                session(100 * n + 3, days[2], "Evening", EASY),
                session(10 * n + 7, days[6], "Long run", LONG),
            ]
            weeks.append(week(monday, [r for r in runs if r.day <= TODAY]))
        blocks.append(block(name, weeks))
    return season(blocks, (RaceView(1, date(2026, 5, 3), "10 km"),))


class Holder(QWidget):
    """A window that keeps the keys the sheet left to it."""

    def __init__(self) -> None:
        super().__init__()
        self.unhandled: list[int] = []

    def keyPressEvent(self, event: QKeyEvent) -> None:
        self.unhandled.append(event.key())


@pytest.fixture
def sheet(qtbot: QtBot, qapp: QApplication) -> Iterator[SeasonSheet]:
    theme.apply(qapp, False, 1.0)
    holder = Holder()
    box = QVBoxLayout(holder)
    box.setContentsMargins(0, 0, 0, 0)
    view = SeasonSheet()
    box.addWidget(view)
    holder.resize(770, 400)
    qtbot.addWidget(holder)
    holder.show()
    qtbot.waitExposed(holder)
    view.set_season(small())
    view.setFocus()
    yield view
    view.card.hide()


@pytest.fixture
def press(qtbot: QtBot, sheet: SeasonSheet) -> Callable[..., None]:
    def pressed(*keys: Qt.Key, control: bool = False) -> None:
        modifier = (
            Qt.KeyboardModifier.ControlModifier if control else Qt.KeyboardModifier.NoModifier
        )
        for key in keys:
            qtbot.keyClick(sheet, key, modifier)

    return pressed


def where(sheet: SeasonSheet, day: date) -> QRect:
    """A day's cell in the viewport."""
    places = sheet_rows.build(small()).places
    row, column = places[day]
    return sheet.visualRect(sheet.model().index(row, column))


def current_day(sheet: SeasonSheet) -> str:
    return str(sheet.model().data(sheet.currentIndex(), SPOKEN)).split(",")[0]


def move(sheet: SeasonSheet, point: QPoint) -> None:
    """A real mouse move, which QTest doesn't deliver without a screen's pointer."""
    event = QMouseEvent(
        QEvent.Type.MouseMove,
        QPointF(point),
        QPointF(sheet.viewport().mapToGlobal(point)),
        Qt.MouseButton.NoButton,
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(sheet.viewport(), event)


# Keyboard.


def test_t_goes_to_today(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    press(Key.Key_T)
    assert current_day(sheet) == "Wednesday 29 April"


def test_arrows_go_by_day_and_week(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    sheet.select_session(12)
    press(Key.Key_Left)
    assert current_day(sheet) == "Monday 6 April"
    press(Key.Key_Down)
    assert current_day(sheet) == "Monday 13 April"
    press(Key.Key_Left)
    assert current_day(sheet) == "Sunday 12 April"
    press(Key.Key_Up)
    assert current_day(sheet) == "Sunday 12 April"


def test_down_passes_over_a_block_heading(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    sheet.select_session(27)
    press(Key.Key_Down)
    assert sheet.selected_session() == 37


def test_left_and_right_step_through_a_double(
    sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    sheet.select_session(12)
    visited = []
    for key in (Key.Key_Right, Key.Key_Right, Key.Key_Right, Key.Key_Left, Key.Key_Left):
        press(key)
        visited.append(sheet.selected_session())
    assert visited == [13, 103, None, 103, 13]


def test_home_end_and_blocks(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    sheet.select_session(13)
    press(Key.Key_End)
    assert sheet.selected_session() == 17
    press(Key.Key_Home)
    assert current_day(sheet) == "Monday 6 April"
    press(Key.Key_Down, control=True)
    assert current_day(sheet) == "Monday 20 April"
    press(Key.Key_Down, control=True)
    assert current_day(sheet) == "Monday 20 April"
    press(Key.Key_Up, control=True)
    assert current_day(sheet) == "Monday 6 April"


def test_page_keys_go_as_far_as_there_are_weeks(
    sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    sheet.select_session(12)
    press(Key.Key_PageDown)
    assert sheet.selected_session() == 42
    press(Key.Key_PageUp)
    assert sheet.selected_session() == 12


def test_enter_opens_the_session_of_a_double(
    qtbot: QtBot, sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    sheet.select_session(13)
    press(Key.Key_Right)
    with qtbot.waitSignal(sheet.session_activated) as signal:
        press(Key.Key_Return)
    assert signal.args == [103]


def test_enter_on_an_empty_day_opens_nothing(
    qtbot: QtBot, sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    sheet.select_session(12)
    press(Key.Key_Left)
    with qtbot.assertNotEmitted(sheet.session_activated):
        press(Key.Key_Return)


def test_selection_is_told_once_a_change(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    told: list[int] = []
    sheet.session_selected.connect(told.append)
    sheet.select_session(12)
    press(Key.Key_Right, Key.Key_Right, Key.Key_Right, Key.Key_Left)
    sheet.select_session(103)
    assert told == [12, 13, 103, -1, 103]  # a day without a session between


def test_other_keys_are_left_to_the_window(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    press(Key.Key_F6)
    holder = sheet.window()
    assert isinstance(holder, Holder)
    assert holder.unhandled == [Key.Key_F6]


def test_tab_leaves_in_one_step(qtbot: QtBot, sheet: SeasonSheet) -> None:
    after = QLabel("after", sheet.window())
    after.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    sheet.window().layout().addWidget(after)
    after.show()
    sheet.window().activateWindow()
    qtbot.waitUntil(sheet.hasFocus)
    qtbot.keyClick(sheet, Key.Key_Tab)
    assert after.hasFocus()


# Mouse.


def test_click_selects_and_opens(qtbot: QtBot, sheet: SeasonSheet) -> None:
    rect = where(sheet, date(2026, 4, 7))
    with qtbot.waitSignals([sheet.session_selected, sheet.session_activated]):
        qtbot.mouseClick(sheet.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    assert sheet.selected_session() == 12


def test_the_two_halves_of_a_double(qtbot: QtBot, sheet: SeasonSheet) -> None:
    rect = where(sheet, date(2026, 4, 8))
    for x, wanted in ((rect.left() + 4, 13), (rect.right() - 4, 103)):
        with qtbot.waitSignal(sheet.session_activated) as signal:
            qtbot.mouseClick(
                sheet.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(x, rect.center().y())
            )
        assert signal.args == [wanted]


def test_click_on_an_empty_day_or_heading_opens_nothing(qtbot: QtBot, sheet: SeasonSheet) -> None:
    with qtbot.assertNotEmitted(sheet.session_activated):
        for point in (where(sheet, date(2026, 4, 10)).center(), QPoint(40, 16)):
            qtbot.mouseClick(sheet.viewport(), Qt.MouseButton.LeftButton, pos=point)


def test_letting_go_elsewhere_opens_nothing(qtbot: QtBot, sheet: SeasonSheet) -> None:
    first, second = where(sheet, date(2026, 4, 7)), where(sheet, date(2026, 4, 8))
    with qtbot.assertNotEmitted(sheet.session_activated):
        qtbot.mousePress(sheet.viewport(), Qt.MouseButton.LeftButton, pos=first.center())
        qtbot.mouseRelease(sheet.viewport(), Qt.MouseButton.LeftButton, pos=second.center())


def test_pointing_tells_the_week_and_leaving_takes_it_back(sheet: SeasonSheet) -> None:
    told: list[date | None] = []
    sheet.week_pointed.connect(told.append)
    move(sheet, where(sheet, date(2026, 4, 7)).center())
    move(sheet, where(sheet, date(2026, 4, 8)).center())
    move(sheet, where(sheet, date(2026, 4, 15)).center())
    move(sheet, QPoint(40, 16))
    move(sheet, where(sheet, date(2026, 4, 15)).center())
    QApplication.sendEvent(sheet.viewport(), QEvent(QEvent.Type.Leave))
    assert told == [MONDAY, date(2026, 4, 13), None, date(2026, 4, 13), None]


def test_hover_card_says_the_same_in_words(qtbot: QtBot, sheet: SeasonSheet) -> None:
    move(sheet, where(sheet, date(2026, 4, 7)).center())
    assert not sheet.card.visible
    qtbot.waitUntil(lambda: sheet.card.visible, timeout=2000)
    card = sheet.window().findChild(HoverCard)
    assert isinstance(card, HoverCard)
    texts = [label.text() for label in card.findChildren(QLabel) if label.isVisible()]
    assert texts[0] == "6 x 3 min uphill"
    assert "1:13 run" in texts
    assert "easy 0:49   moderate 0:05   hard 0:19" in texts
    assert any("5:33 /km" in text for text in texts)  # 3 m/s
    assert "A click opens it" in texts
    assert sheet.window().rect().contains(card.geometry())
    qtbot.keyClick(sheet, Key.Key_Escape)
    assert not sheet.card.visible


def test_space_opens_the_card_and_closes_it(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    sheet.select_session(12)
    press(Key.Key_Space)
    assert sheet.card.visible
    press(Key.Key_Space)
    assert not sheet.card.visible


# What stands on it.


def test_days_are_spoken_with_everything_their_picture_tells(sheet: SeasonSheet) -> None:
    model = sheet.model()
    assert model.data(model.index(1, 2), SPOKEN) == (
        "Tuesday 7 April, 6 x 3 min uphill, run 1 hour 13: easy 49, moderate 5, hard 19 minutes"
    )
    assert model.data(model.index(1, 4), SPOKEN) == "Thursday 9 April, no run"
    assert "Morning, run 49 minutes" in model.data(model.index(1, 3), SPOKEN)
    assert "Evening" in model.data(model.index(1, 3), SPOKEN)
    places = sheet_rows.build(small()).places
    today = model.data(model.index(*places[TODAY]), SPOKEN)
    assert today.startswith("Wednesday 29 April, today, Morning")
    race = model.data(model.index(*places[date(2026, 5, 3)]), SPOKEN)
    assert race == "Sunday 3 May, race 10 km, no run"
    assert model.data(model.index(1, 0), SPOKEN).startswith("Week of 6 April 2026, 4 hours")
    assert model.headerData(3, Qt.Orientation.Horizontal, SPOKEN) == "Wednesday"


def test_heading_words() -> None:
    weeks = list(small().blocks[0].weeks)
    plain = block("Hills", weeks, 0.8)
    assert sheet_rows.length_words(plain) == "2 weeks"
    assert sheet_rows.share_words(plain) == ("91 % easy", False)
    assert sheet_rows.share_words(replace(plain, easy_target=0.95)) == (
        "91 % easy, short of 95",
        True,
    )
    estimated = replace(plain, estimated=True, easy_target=0.95)
    assert sheet_rows.share_words(estimated) == ("about 91 % easy, short of 95", True)
    # Not short of a target that the rounded share reaches.
    assert sheet_rows.share_words(replace(plain, easy_share=0.796))[1] is False
    assert sheet_rows.length_words(replace(plain, end=plain.start + timedelta(days=9))) == "10 days"
    odd = replace(plain, end=plain.start + timedelta(days=15))
    assert sheet_rows.length_words(odd) == "2 weeks 2 days"


def test_other_sports_and_unjudged_are_spoken_and_in_the_key(
    sheet: SeasonSheet,
) -> None:
    runs = [
        session(1, MONDAY, "Ride", ZERO, sport="cycling"),
        session(2, MONDAY + timedelta(days=1), "Run", (1800.0, 0.0, 0.0, 0.0, 600.0)),
    ]
    sheet.set_season(season([block("Base", [week(MONDAY, runs)])]))
    model = sheet.model()
    assert model.data(model.index(1, 1), SPOKEN) == "Monday 6 April, Ride, cycling 1 hour"
    assert "unjudged 10 minutes" in model.data(model.index(1, 2), SPOKEN)
    needs = {"unjudged": True, "other": True, "cut": False, "planned": False}
    assert sheet.key_needs() == needs


def test_minutes_add_up() -> None:
    assert sheet_rows.whole_minutes([29.6 * 60, 29.6 * 60, 0.4 * 60]) == [30, 30, 0]
    assert sheet_rows.whole_minutes([10.4 * 60, 10.4 * 60, 10.4 * 60]) == [11, 10, 10]


def test_a_week_split_by_two_blocks_stands_once_in_each(
    sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    first = (True,) * 3 + (False,) * 4
    second = tuple(not inside for inside in first)
    left = week(MONDAY, [session(1, MONDAY + timedelta(days=2), "A", EASY)], first)
    right = week(MONDAY, [session(2, MONDAY + timedelta(days=3), "B", EASY)], second)
    sheet.set_season(season([block("One", [left]), block("Two", [right])]))
    sheet.select_session(1)
    press(Key.Key_Right)
    assert sheet.selected_session() == 2
    assert "in another block" in sheet.model().data(sheet.model().index(1, 5), SPOKEN)


# Widths.


def no_extra(cell: Cell) -> float:
    return 0.0


def test_columns_are_as_wide_as_their_longest_day_and_fill_the_room() -> None:
    layout = sheet_layout.solve(sheet_rows.build(small()), 660.0, no_extra)
    margins = sheet_layout.LEFT + sheet_layout.RIGHT
    assert sum(layout.widths) == pytest.approx(660, abs=7)
    assert layout.widths[6] >= LONG[0] / 3600 * layout.px_per_hour + margins
    assert layout.widths[0] >= 44
    assert layout.widths[0] >= 40 / 60 * layout.px_per_hour
    assert layout.widths[6] == max(layout.widths)


def test_a_much_longer_day_is_cut_and_does_not_shrink_the_rest() -> None:
    weeks = []
    for n in range(60):
        monday = MONDAY + timedelta(weeks=n)
        seconds = (20000.0, 0.0, 600.0, 0.0, 0.0) if n == 30 else EASY
        weeks.append(week(monday, [session(n + 1, monday, "Run", seconds)]))
    sheet = sheet_rows.build(season([block("Base", weeks)]))
    assert sheet.has_cut
    assert sheet.cap_s == pytest.approx(sum(EASY[:3]))
    cell = sheet.rows[31].cells[0]
    (bar,) = sheet_layout.bars(cell, 60.0, sheet.cap_s)
    assert bar.cut
    assert bar.width == pytest.approx(49.0)


def test_doubles_stand_five_apart_and_each_can_be_hit() -> None:
    cell = sheet_rows.build(small()).rows[1].cells[2]
    first, second = sheet_layout.bars(cell, 20.0, 1e9)
    assert second.left - first.left - first.width == pytest.approx(5.0)
    (edge,) = sheet_layout.part_edges((first, second), 60.0)
    assert 24.0 <= edge <= 36.0


# Staying where it was, and the picture.


def long_season(weeks: int = 60) -> SeasonView:
    blocks = []
    number = 0
    for start in range(0, weeks, 5):
        made = []
        for n in range(start, start + 5):
            monday = TODAY - timedelta(days=TODAY.weekday(), weeks=weeks - 1 - n)
            number += 1
            made.append(week(monday, [session(number, monday, "Run", EASY)]))
        blocks.append(block(f"Block {start}", made))
    return season(blocks)


def test_scroll_and_selection_stay_when_the_season_changes(sheet: SeasonSheet) -> None:
    sheet.set_season(long_season())
    sheet.select_session(20)
    bar = sheet.verticalScrollBar()
    bar.setValue(410)
    before = long_season()
    earlier = session(999, before.blocks[0].weeks[0].first_day - timedelta(days=7), "Old", EASY)
    old = block("Older", [week(earlier.day, [earlier])])
    told: list[int] = []
    sheet.session_selected.connect(told.append)
    sheet.set_season(replace(before, blocks=(old, *before.blocks)))
    assert bar.value() == 410 + 36 + 28  # one heading and one week more above
    assert sheet.selected_session() == 20
    assert told == []


@pytest.mark.parametrize("shown_first", [True, False])
def test_first_season_opens_at_today(qtbot: QtBot, qapp: QApplication, shown_first: bool) -> None:
    theme.apply(qapp, False, 1.0)
    view = SeasonSheet()
    view.resize(770, 300)
    qtbot.addWidget(view)
    for step in (view.show, lambda: view.set_season(long_season()))[:: 1 if shown_first else -1]:
        step()
    qapp.processEvents()
    rows = sheet_rows.build(long_season()).places
    rect = view.visualRect(view.model().index(rows[TODAY][0], 3))
    assert view.viewport().rect().contains(rect)


def test_unknown_session_and_empty_season(sheet: SeasonSheet, press: Callable[..., None]) -> None:
    with pytest.raises(KeyError):
        sheet.select_session(9999)
    sheet.set_season(season([]))
    press(Key.Key_T, Key.Key_Down, Key.Key_Left, Key.Key_Home, Key.Key_Return, Key.Key_Space)
    assert sheet.selected_session() is None


def colours(sheet: SeasonSheet, rect: QRect) -> set[str]:
    image = sheet.viewport().grab(rect).toImage()
    return {
        image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())
    }


def name(role: str) -> str:
    return QColor(theme.current().color(role)).name()


@pytest.mark.parametrize("dark", [False, True])
def test_a_day_shows_its_three_shades(qapp: QApplication, sheet: SeasonSheet, dark: bool) -> None:
    theme.apply(qapp, dark, 1.0)
    found = colours(sheet, where(sheet, date(2026, 4, 7)))
    for role in ("easy", "easy_outline", "moderate", "hard", "hard_texture"):
        assert name(role) in found, role
    assert name("hard") not in colours(sheet, where(sheet, date(2026, 4, 12)))
    theme.apply(qapp, False, 1.0)


def test_today_selection_and_ring_look_different(
    sheet: SeasonSheet, press: Callable[..., None], qtbot: QtBot
) -> None:
    rect = where(sheet, date(2026, 4, 7))
    assert name("focus") in colours(sheet, where(sheet, TODAY))
    assert name("sunken") in colours(sheet, where(sheet, TODAY))
    qtbot.mouseClick(sheet.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    right = QRect(rect.right() - 2, rect.center().y() - 5, 1, 4)
    edge = right.translated(1, 0)
    assert name("selected") in colours(sheet, rect)
    assert colours(sheet, edge) == {name("focus")}  # a thin edge all round, which today has not
    assert name("focus") not in colours(sheet, right)
    press(Key.Key_Left, Key.Key_Right)
    assert name("focus") in colours(sheet, right)


def test_marking_a_week_changes_its_ground_only(sheet: SeasonSheet) -> None:
    day = where(sheet, date(2026, 4, 9))
    other = where(sheet, date(2026, 4, 16))
    sheet.mark_week(MONDAY)
    assert name("band") in colours(sheet, day)
    assert name("band") not in colours(sheet, other)
    sheet.mark_week(None)
    assert name("band") not in colours(sheet, day)


def test_the_ring_cuts_nothing_off_a_races_name(
    sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    sheet._go(date(2026, 5, 3))
    press(Key.Key_Left, Key.Key_Right)
    rect = where(sheet, date(2026, 5, 3))
    assert name("focus") in colours(sheet, rect)
    assert name("pane") not in colours(sheet, rect.adjusted(6, 3, -6, -6))


def test_race_pennant_in_ink(sheet: SeasonSheet) -> None:
    assert name("text") in colours(sheet, where(sheet, date(2026, 5, 3)))
    assert name("text") not in colours(sheet, where(sheet, date(2026, 4, 18)))


@pytest.mark.parametrize(("width", "scale"), [(520, 1.0), (770, 1.0), (770, 1.5), (683, 2.0)])
def test_everything_fits_its_width(
    qapp: QApplication, sheet: SeasonSheet, width: int, scale: float
) -> None:
    theme.apply(qapp, False, scale)
    sheet.window().resize(width, 600)
    qapp.processEvents()
    assert sheet.horizontalScrollBar().maximum() == 0
    assert sheet.rowHeight(1) == round(28 * scale)
    theme.apply(qapp, False, 1.0)


def test_taller_rows_in_a_tall_window(qapp: QApplication, sheet: SeasonSheet) -> None:
    sheet.window().resize(770, 1040)
    qapp.processEvents()
    assert sheet.rowHeight(1) == 32


@pytest.mark.slow
def years_of_runs(years: int) -> SeasonView:
    """Seven runs a week in blocks of five weeks."""
    blocks, number, count = [], 0, 52 * years
    for start in range(0, count, 5):
        weeks = []
        for n in range(start, start + 5):
            monday = TODAY - timedelta(days=TODAY.weekday(), weeks=count - 1 - n)
            runs = []
            for d in range(7):
                number += 1
                runs.append(session(number, monday + timedelta(days=d), "Run", HILLS))
            weeks.append(week(monday, runs))
        blocks.append(block(f"Block {start}", weeks))
    return season(blocks)


def test_ten_years_scroll_as_fast_as_one(qapp: QApplication, sheet: SeasonSheet) -> None:
    """What a frame costs goes by what is in view; its time on its own is for tests.bench.window."""
    sheet.window().resize(770, 682)

    def middle(years: int) -> float:
        sheet.set_season(years_of_runs(years))
        qapp.processEvents()
        bar = sheet.verticalScrollBar()
        frames = []
        for n in range(40):
            bar.setValue((n * 337) % bar.maximum())
            started = time.thread_time()  # of this thread: others use the same cores
            qapp.processEvents()
            frames.append(time.thread_time() - started)
        return sorted(frames)[20]

    one, ten, again = middle(1), middle(10), middle(1)
    assert ten < 2.0 * max(one, again)


def test_display_text_is_short(sheet: SeasonSheet) -> None:
    model = sheet.model()
    assert model.data(model.index(1, 3), DISPLAY) == "0:49, 0:49"


# Zoom, several sessions, and what a search lights up.


def test_rows_step_from_one_week_large_to_years_and_back(sheet: SeasonSheet) -> None:
    usual = sheet.verticalHeader().defaultSectionSize()
    heights = []
    for _ in range(4):
        sheet.zoom(1)
        heights.append(sheet.verticalHeader().defaultSectionSize())
        sheet.grab()
    assert heights == [18, 12, 5, 5]
    sheet.zoom(0)
    assert sheet.verticalHeader().defaultSectionSize() == usual
    for _ in range(4):
        sheet.zoom(-1)
    assert sheet.verticalHeader().defaultSectionSize() == 84
    sheet.grab()


def test_what_was_chosen_stays_in_view_through_zoom(sheet: SeasonSheet) -> None:
    last = small().sessions[-1]
    sheet.select_session(last.id)
    for step in (1, 1, 1, -1, -1, -1, -1, -1):
        sheet.zoom(step)
        assert sheet.viewport().rect().contains(where(sheet, last.day).center())


def test_shift_and_arrows_choose_days_and_plain_moves_let_them_go(
    qtbot: QtBot, sheet: SeasonSheet
) -> None:
    every = small().sessions
    sheet.select_session(every[0].id)
    for _ in range(7):
        qtbot.keyClick(sheet, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    last = sheet.model().cell(sheet.currentIndex()).day
    chosen = sheet.chosen_sessions()
    assert chosen == [s.id for s in every if every[0].day <= s.day <= last] and len(chosen) > 1
    qtbot.keyClick(sheet, Qt.Key.Key_Left)
    assert len(sheet.chosen_sessions()) <= 1


def test_dates_and_shift_space_choose_whole_weeks(
    qtbot: QtBot, sheet: SeasonSheet, press: Callable[..., None]
) -> None:
    seen: list[object] = []
    sheet.stretch_chosen.connect(seen.append)
    row = where(sheet, date(2026, 4, 14))
    left, below = QPoint(40, row.center().y()), QPoint(40, row.center().y() + row.height())
    qtbot.mousePress(sheet.viewport(), Qt.MouseButton.LeftButton, pos=left)
    assert seen[-1] == (date(2026, 4, 13), date(2026, 4, 19))
    qtbot.mouseMove(sheet.viewport(), below)
    qtbot.mouseRelease(sheet.viewport(), Qt.MouseButton.LeftButton, pos=below)
    press(Key.Key_Escape)
    assert seen[-1] is None
    press(Key.Key_T)
    shift = Qt.KeyboardModifier.ShiftModifier
    qtbot.keyClick(sheet, Key.Key_Space, shift)
    assert seen[-1] == (date(2026, 4, 27), date(2026, 5, 3))
    qtbot.keyClick(sheet, Key.Key_Up, shift)
    assert seen[-1] == (date(2026, 4, 20), date(2026, 5, 3))
    sheet.set_season(small())
    assert sheet.stretch == (date(2026, 4, 20), date(2026, 5, 3))


def test_control_and_clicks_choose_single_sessions(qtbot: QtBot, sheet: SeasonSheet) -> None:
    first, second = small().sessions[0], small().sessions[3]  # Tuesday, Sunday
    sheet.select_session(first.id)
    row, column, _ = sheet._where(second.id)
    spot = sheet.visualRect(sheet.model().index(row, column)).center()
    control = Qt.KeyboardModifier.ControlModifier
    qtbot.mouseClick(sheet.viewport(), Qt.MouseButton.LeftButton, control, spot)
    assert set(sheet.chosen_sessions()) == {first.id, second.id}
    qtbot.keyClick(sheet, Qt.Key.Key_Escape)
    assert sheet.chosen_sessions() == [first.id]


def test_what_a_search_found_stands_out(sheet: SeasonSheet) -> None:
    before = sheet.grab().toImage()
    sheet.light_up({small().sessions[0].id})
    assert sheet.grab().toImage() != before
    sheet.light_up(None)
    assert sheet.grab().toImage() == before

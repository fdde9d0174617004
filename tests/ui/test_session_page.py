"""The session page: its words, its two ways of marking, and what it tells of."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot
from tests.ui import invented

from tercet import engine
from tercet.engine.parts import Part
from tercet.engine.scale import Shade
from tercet.library.trace import SessionTrace
from tercet.library.views import SessionView
from tercet.ui import theme as themes
from tercet.ui.session_cards import NO_REPETITIONS, NOT_MENDED
from tercet.ui.session_page import CAUTION, SessionPage
from tercet.ui.session_stair import left_out_words, place_labels, step_words
from tercet.ui.session_trace import HINT, UNCOUNTED
from tercet.ui.session_wiring import MENDS, mend_words

#: Qt's plugin without a screen says so of every window.
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")

#: Where the engine mends.
ENGINE_MENDS = ("cleaning", "heart_faults", "judging")
WORDS: dict[str, Any] = {
    "block_name": "Sharpening",
    "week_number": 2,
    "made_from": "Shaded by pace. Boundaries from the 10 km race on 10 May.",
    "why": lambda second: f"second {second} is what it is",
}


@pytest.fixture
def page(qtbot: QtBot, qapp: QApplication) -> SessionPage:
    invented.plain_look(qapp)
    page = SessionPage()
    qtbot.addWidget(page)
    page.resize(1366, 700)
    page.show_session(*invented.hill_session(), **WORDS)
    page.show()
    qtbot.waitExposed(page)
    page.activateWindow()
    return page


def texts(widget: QWidget) -> list[str]:
    return [label.text() for label in widget.findChildren(QLabel) if label.isVisible()]


def show(page: SessionPage, **changes: Any) -> tuple[SessionView, SessionTrace]:
    session, trace = invented.hill_session()
    session = session._replace(**changes)
    page.show_session(session, trace, **WORDS)
    return session, trace


# Words ------------------------------------------------------------------------------------


def test_head_says_what_when_and_where(page: SessionPage) -> None:
    shown = texts(page)
    assert "6 × 3 min uphill" in shown
    assert any("17 June 2026, 06:40   Sharpening, week 2" in text for text in shown)
    head = page.head
    assert head.distance.text == "14.2 km"
    assert head.climb.text == "212 m"
    assert head.heart.text == "148 /min"
    assert head.effort.text == "7 of 10"
    # 4384 s less the minute that was not running.
    assert head.running.text == "1:12:04"


def test_the_trace_is_seen_whole_beside_longer_cards(page: SessionPage, qtbot: QtBot) -> None:
    mends = [f"mended: {n} s" for n in range(20)]
    page.show_session(*invented.hill_session(), **WORDS, mends=mends)
    window = page._scroll.viewport()
    qtbot.waitUntil(lambda: page._side.height() > window.height())
    chart = page.panel.chart
    for widget in (chart, page.panel.reason):
        foot = widget.mapTo(window, widget.rect().bottomLeft())
        assert foot.y() <= window.height()
    assert chart.height() >= chart.minimumHeight()


def test_another_sport_has_no_shades(page: SessionPage) -> None:
    show(page, sport="cycling", moving_s=3600.0, distance_m=30000.0)
    head = page.head
    assert not head.stair.isVisible() and not head.left_out.text()
    assert (head.running.text, head.running.word) == ("1:00:00", "moving time")
    assert head.pace.text == "2:00 /km"
    assert page.panel.reason.text() == UNCOUNTED
    show(page)
    assert head.stair.isVisible() and head.running.word == "running time"
    assert page.panel.reason.text() == HINT


def test_pace_is_that_of_running(page: SessionPage) -> None:
    show(page, seconds=(3000.0, 0.0, 0.0, 900.0, 0.0), metres=(10000.0, 0.0, 0.0, 500.0, 0.0))
    assert page.head.pace.text == "5:00 /km"


def test_what_is_missing_is_a_dash_or_not_said(page: SessionPage) -> None:
    show(page, hr_mean=None, climb_m=None, effort=None)
    head = page.head
    assert [v.text for v in (head.heart, head.climb, head.effort)] == ["–", "–", "not said"]
    assert page.notes.effort.text() == "not said"


def test_unjudged_and_not_running_are_said(page: SessionPage) -> None:
    assert page.head.left_out.text() == (
        "1:00 of running could not be judged and 1:00 was not running."
    )
    assert left_out_words((600.0, 0.0, 0.0, 0.4, 0.0)) == ""


def test_estimates_say_about(page: SessionPage) -> None:
    assert "about" not in page.head.stair.accessibleDescription()
    show(page, estimated=True)
    assert "easy about 49 minutes" in page.head.stair.accessibleDescription()
    assert "about right only" in page.head.left_out.text()
    assert step_words(0, 2940.0, True) == "Easy about 0:49"


def test_a_few_seconds_are_not_nothing() -> None:
    assert step_words(2, 12.0, False) == "Hard under 0:01"


def test_made_from_and_caution_are_shown(page: SessionPage) -> None:
    assert WORDS["made_from"] in texts(page)
    assert CAUTION in texts(page)


def test_miles(page: SessionPage) -> None:
    page.show_session(*invented.hill_session(), **WORDS, units="miles")
    assert page.head.distance.text == "8.82 mi"
    assert page.head.pace.text.endswith(" /mile")
    assert page.repetitions.table.horizontalHeaderItem(3).text() == "pace /mile"
    assert "min/mile" in page.panel.heading.text()


def test_labels_of_a_stair_never_overlap() -> None:
    placed = place_labels(
        [("a", 60.0, 0.0, 10.0), ("b", 80.0, 11.0, 14.0), ("c", 50.0, 15.0, 300.0)], 300.0, 16.0
    )
    lefts = [left for _, left in placed]
    assert lefts == [0.0, 76.0, 250.0]
    crowded = place_labels([("a", 60.0, 0.0, 280.0), ("b", 80.0, 281.0, 300.0)], 300.0, 16.0)
    assert crowded[1][1] == 220.0


def test_cleaning_card(page: SessionPage) -> None:
    assert NOT_MENDED in texts(page.cleaning)
    page.show_session(*invented.hill_session(), **WORDS, mends=("12 s of spikes taken out",))
    assert texts(page.cleaning) == ["Cleaning", "12 s of spikes taken out"]


# Repetitions and the trace ----------------------------------------------------------------


def test_repetitions_in_rows(page: SessionPage) -> None:
    table = page.repetitions.table
    row = [table.item(0, column).text() for column in range(5)]
    # 722 m in 180 s is 4:09 /km.
    assert row == ["1", "3:00", "722 m", "4:09", "2:00"]
    assert table.item(5, 4).text() == "end of the set"
    # From 722 to 752 m in 3 min: 249.3 and 239.4 s/km.
    assert "Slowest and fastest lie 10 s/km apart." in texts(page.repetitions)


def test_parts_in_rows_in_words_and_minute_by_minute(page: SessionPage) -> None:
    assert not page.parts.isVisible()
    session, trace = invented.hill_session()
    told = [
        Part(0.0, 1440.0, "warm-up", (1380.0, 60.0, 0, 0, 0), (3800.0, 200.0, 0, 0, 0)),
        Part(1440.0, 1620.0, "work", (0, 0, 180.0, 0, 0), (0, 0, 722.0, 0, 0)),
        Part(1620.0, 1740.0, "recovery", (90.0, 0, 0, 30.0, 0), (240.0, 0, 0, 0, 0)),
        Part(1740.0, 1920.0, "work", (0, 0, 180.0, 0, 0), (0, 0, 728.0, 0, 0)),
        Part(1920.0, 4384.0, "easy running", (2464.0, 0, 0, 0, 0), (6000.0, 0, 0, 0, 0)),
    ]
    page.show_session(session, replace(trace, parts=tuple(told)), **WORDS)
    table = page.parts.table
    assert page.parts.isVisible() and table.rowCount() == 4
    rows = [[table.item(k, c).text() for c in range(6)] for k in range(3)]
    assert rows == [
        ["warm-up", "24:00", "4.00", "23:00", "1:00", "–"],
        ["work × 2", "6:00", "1.45", "–", "–", "6:00"],
        ["recovery", "2:00", "0.24", "1:30", "–", "–"],
    ]
    spoken = page.panel.chart.accessibleDescription()
    assert "Work, 2 times: 6 minutes, 1.45 km, of it 6 minutes hard." in spoken
    assert "not running" in page.parts.accessibleDescription()
    # In the table that can be copied every minute names its part.
    lines = [line.split("\t") for line in page.panel.twin.text.splitlines()]
    column = lines[0].index("part")
    named = [line[column] for line in lines[1:]]
    assert named[0] == "warm-up" and named[24] == "work" and named[-1] == "easy running"


def test_no_repetitions(page: SessionPage) -> None:
    session, trace = invented.hill_session()
    page.show_session(session, replace(trace, repetitions=()), **WORDS)
    assert NO_REPETITIONS in texts(page.repetitions)
    assert not page.repetitions.table.isVisible()


def test_a_row_marks_the_plot_and_the_plot_a_row(page: SessionPage, qtbot: QtBot) -> None:
    table, chart = page.repetitions.table, page.panel.chart
    cell = table.visualRect(table.model().index(3, 1)).center()
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=cell)
    assert chart.selected == 3
    qtbot.keyClick(table, Qt.Key.Key_Down)
    assert chart.selected == 4
    scene = chart._panels[0].plot.vb.mapViewToScene(QPointF(1500.0, 3.0))
    at = chart.mapFromScene(scene)
    qtbot.mouseClick(chart.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert [index.row() for index in table.selectionModel().selectedRows()] == [0]
    scene = chart._panels[0].plot.vb.mapViewToScene(QPointF(300.0, 3.0))
    qtbot.mouseClick(chart.viewport(), Qt.MouseButton.LeftButton, pos=chart.mapFromScene(scene))
    assert table.selectionModel().selectedRows() == []


def test_why_is_read_along_the_trace(page: SessionPage, qtbot: QtBot) -> None:
    chart = page.panel.chart
    assert page.panel.reason.text() == HINT
    qtbot.keyClick(chart, Qt.Key.Key_Home)
    qtbot.keyClick(chart, Qt.Key.Key_Right)
    assert page.panel.reason.text() == "second 1 is what it is"
    assert chart.accessibleDescription() == "second 1 is what it is"


def test_minutes_as_a_table(page: SessionPage, qtbot: QtBot) -> None:
    page.notes.effort.setFocus()
    qtbot.keyClick(page.notes.effort, Qt.Key.Key_T, Qt.KeyboardModifier.ControlModifier)
    table = page.panel.twin.table
    assert table.isVisible()
    assert table.rowCount() == 74
    headings = [table.horizontalHeaderItem(k).text() for k in range(table.columnCount())]
    assert headings == ["from", "pace /km", "heart rate /min", "height m", "shade"]
    assert table.item(0, 4).text() == "easy 1:00"


def test_heading_says_what_is_drawn(page: SessionPage) -> None:
    assert page.panel.heading.text() == "Pace through the session, hills taken out, min/km"
    page.show_session(*invented.hill_session(speed=False), **WORDS)
    assert page.panel.heading.text() == "Heart rate through the session, /min"


def test_running_power_is_named_told_and_taken_along(page: SessionPage) -> None:
    chart, lowest = page.panel.chart, page.panel.chart.minimumHeight()
    page.show_session(*invented.hill_session(power=True), **WORDS)
    assert "running power, W; LT1 256, LT2 288" in chart.accessibleDescription()
    assert chart.minimumHeight() == lowest + 66
    lines = [line.split("\t") for line in page.panel.twin.text.splitlines()]
    column = lines[0].index("power W")
    # 2.7 m/s at 72 W for each.
    assert abs(int(lines[10][column]) - 194) <= 4
    page.show_session(*invented.hill_session(power=True, speed=False), **WORDS)
    assert page.panel.heading.text() == chart.accessibleName()
    assert page.panel.heading.text() == "Running power through the session, W"
    page.show_session(*invented.hill_session(), **WORDS)
    assert "power" not in page.panel.twin.text + chart.accessibleDescription()


# What is told -----------------------------------------------------------------------------


def test_a_note_is_told_once_typing_has_stopped(page: SessionPage, qtbot: QtBot) -> None:
    told: list[tuple[int, str]] = []
    page.note_changed.connect(lambda *what: told.append(what))
    note = page.notes.note
    note.selectAll()
    with qtbot.waitSignal(page.note_changed, timeout=3000):
        QTest.keyClicks(note, "calm")
        assert told == []
    assert told == [(87, "calm")]


def test_a_note_is_told_when_focus_leaves(page: SessionPage, qtbot: QtBot) -> None:
    note = page.notes.note
    note.setFocus()
    qtbot.waitUntil(note.hasFocus)
    note.selectAll()
    QTest.keyClicks(note, "calm")
    with qtbot.waitSignal(page.note_changed, timeout=200) as told:
        qtbot.keyClick(note, Qt.Key.Key_Tab)
    assert told.args == [87, "calm"]


def test_a_note_goes_to_its_own_session(page: SessionPage) -> None:
    told: list[tuple[int, str]] = []
    page.note_changed.connect(lambda *what: told.append(what))
    page.notes.note.setPlainText("typed on 87")
    show(page, id=88, note="of 88")
    page.save_now()
    assert told == [(87, "typed on 87")]
    assert page.notes.note.toPlainText() == "of 88"


def test_showing_a_session_tells_nothing(page: SessionPage, qtbot: QtBot) -> None:
    told: list[object] = []
    for signal in (page.note_changed, page.effort_changed, page.kind_changed):
        signal.connect(lambda *what: told.append(what))
    show(page, id=88, note="other", effort=3, kind="track")
    page.save_now()
    assert told == []


def test_the_same_session_again_keeps_typing_and_marks(page: SessionPage) -> None:
    page.repetitions.table.selectRow(2)
    page.notes.note.setPlainText("half a sent")
    show(page, effort=5)
    assert page.notes.note.toPlainText() == "half a sent"
    assert page.panel.chart.selected == 2
    assert page.notes.effort.value() == 5


def test_effort_is_told_and_shown(page: SessionPage, qtbot: QtBot) -> None:
    told: list[tuple[int, int | None]] = []
    page.effort_changed.connect(lambda *what: told.append(what))
    effort = page.notes.effort
    qtbot.keyClick(effort, Qt.Key.Key_Up)
    assert page.head.effort.text == "8 of 10"
    effort.setValue(effort.minimum())
    assert page.head.effort.text == "not said"
    effort.selectAll()
    QTest.keyClicks(effort, "10")
    qtbot.keyClick(effort, Qt.Key.Key_Return)
    assert told == [(87, 8), (87, None), (87, 10)]


def test_kind_is_chosen_from_a_menu(page: SessionPage, qtbot: QtBot) -> None:
    menu = page.head.kind.menu()
    kinds = [action.text() for action in menu.actions()]
    assert kinds[:6] == ["running", "treadmill", "trail", "track", "race", "walking"]
    assert page.head.kind.text() == "&Kind: running"
    with qtbot.waitSignal(page.kind_changed) as told:
        menu.popup(page.mapToGlobal(page.rect().center()))
        qtbot.mouseClick(
            menu, Qt.MouseButton.LeftButton, pos=menu.actionGeometry(menu.actions()[3]).center()
        )
    assert told.args is not None
    assert (told.args[1].sport, told.args[1].kind) == ("running", "track")
    show(page, sport="cycling")
    assert page.head.kind.text() == "&Kind: cycling"
    assert [action.text() for action in menu.actions() if action.isChecked()] == ["cycling"]
    show(page, sport="unknown")
    assert page.head.kind.text() == "&Kind: unknown sport"
    assert not [action for action in menu.actions() if action.isChecked()]


def test_ways_on(page: SessionPage, qtbot: QtBot) -> None:
    for button, signal in (
        (page.head.previous, page.previous_asked),
        (page.head.next, page.next_asked),
        (page.head.back, page.back_asked),
    ):
        with qtbot.waitSignal(signal):
            qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    for widget in (page.head.next, page.panel.chart, page.repetitions.table, page.notes.note):
        with qtbot.waitSignal(page.back_asked):
            qtbot.keyClick(widget, Qt.Key.Key_Escape)
    page.show_session(*invented.hill_session(), **WORDS, has_previous=False)
    assert not page.head.previous.isEnabled()
    assert page.head.next.isEnabled()


# Reach and room ---------------------------------------------------------------------------


def test_everything_is_reached_by_tab_and_has_a_name(page: SessionPage, qtbot: QtBot) -> None:
    page.head.kind.setFocus()
    qtbot.waitUntil(page.head.kind.hasFocus)
    reached: list[QWidget] = []
    for _ in range(12):
        focused = QApplication.focusWidget()
        if focused in reached:
            break
        reached.append(focused)
        QTest.keyClick(focused, Qt.Key.Key_Tab)
    wanted = [
        page.head.kind, page.head.previous, page.head.next, page.head.back,
        page.panel.chart, page.repetitions.table, page.notes.effort, page.notes.note,
    ]  # fmt: skip
    assert [widget for widget in wanted if widget not in reached] == []
    assert all(widget.accessibleName() for widget in wanted if widget is not page.head.back)


@pytest.mark.parametrize(("width", "scale", "folded"), [(1366, 1.0, False), (1100, 1.0, True)])
def test_cards_go_below_on_a_narrow_page(
    page: SessionPage, qapp: QApplication, width: int, scale: float, folded: bool
) -> None:
    page.resize(width, 700)
    qapp.processEvents()
    assert page.folded == folded
    below = page.repetitions.mapTo(page, page.repetitions.rect().topLeft()).y()
    assert (below > page.panel.mapTo(page, page.panel.rect().topLeft()).y()) == folded


def test_large_text_folds_the_page_and_scrolls(page: SessionPage, qapp: QApplication) -> None:
    bar = page._scroll.verticalScrollBar()
    assert bar.maximum() == 0
    themes.apply(qapp, dark=True, scale=1.5)
    qapp.processEvents()
    assert page.folded
    assert bar.maximum() > 0
    assert page._scroll.horizontalScrollBar().maximum() == 0


def test_shade_order_is_that_of_the_engine() -> None:
    # The page's words are in the order of Shade.
    assert [shade.name for shade in Shade][:3] == ["EASY", "MODERATE", "HARD"]


def test_every_mend_that_the_engine_counts_has_its_words() -> None:
    folder = Path(engine.__file__).parent
    source = "".join((folder / f"{name}.py").read_text("utf-8") for name in ENGINE_MENDS)
    counted = set(re.findall(r'mends\["([^"]+)"\] = |take_out\([^"]*"([^"]+)"\)', source))
    named = {first or second for first, second in counted}
    assert len(named) >= 12
    assert named == set(MENDS)
    assert mend_words("speed spikes, left out", 3) == "speed spikes, left out: 3"

"""The pane of the build-up: its values, its unit, its table, and copying."""

from __future__ import annotations

import csv
from dataclasses import replace
from datetime import date
from pathlib import Path
from xml.etree.ElementTree import fromstring

import numpy as np
import pytest
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QApplication, QLabel, QMenu
from pytestqt.qtbot import QtBot
from tests.ui import invented

from tercet.library.stretch import Stretch
from tercet.library.views import BuildUp
from tercet.ui import taken, words
from tercet.ui import theme as themes
from tercet.ui.buildup_pane import EMPTY, BuildUpPane
from tercet.ui.values import Swatch

#: Qt's plugin without a screen says so of every window.
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")


@pytest.fixture
def pane(qtbot: QtBot, qapp: QApplication) -> BuildUpPane:
    invented.plain_look(qapp)
    pane = BuildUpPane()
    qtbot.addWidget(pane)
    pane.resize(558, 404)
    pane.show_build_up(
        invented.season(), invented.season(metres=True), invented.TODAY, invented.RACES
    )
    pane.show()
    qtbot.waitExposed(pane)
    return pane


def one_block(hours: tuple[float, float, float], *, estimated: bool = False) -> dict[str, list]:
    start = date(2026, 6, 1)
    return {
        "time": [invented.straight("Hills", start, 28, hours, run_days=17, estimated=estimated)],
        "metres": [invented.straight("Hills", start, 28, hours, run_days=17, metres=True)],
    }


def test_values_are_those_of_the_block_holding_today(pane: BuildUpPane) -> None:
    pane.show_build_up(**one_block((8.0, 0.5, 1.0)), today=invented.TODAY)
    assert [v.text for v in (pane.easy, pane.moderate, pane.hard)] == ["8:00", "0:30", "1:00"]
    # 8 h less four times 1.5 h.
    assert (pane.in_hand.text, pane.in_hand.word) == ("2:00", "easy in hand")
    assert "Hills so far" in [label.text() for label in pane.findChildren(QLabel)]


def test_short_is_said_in_words(pane: BuildUpPane) -> None:
    pane.show_build_up(**one_block((5.0, 1.0, 0.5)), today=invented.TODAY)
    assert (pane.in_hand.text, pane.in_hand.word) == ("1:00", "easy short")


def test_after_the_season_the_last_block_with_runs_is_named(pane: BuildUpPane) -> None:
    pane.show_build_up(**one_block((8.0, 0.5, 1.0)), today=date(2026, 9, 1))
    labels = [label.text() for label in pane.findChildren(QLabel)]
    assert "Hills" in labels
    assert "Hills so far" not in labels


def test_estimates_say_about(pane: BuildUpPane) -> None:
    pane.show_build_up(**one_block((8.0, 0.5, 1.0), estimated=True), today=invented.TODAY)
    assert pane.easy.text == "about 8:00"
    assert "about 84 %" in pane.twin.text


def test_unit_button_changes_to_distance_and_back(pane: BuildUpPane, qtbot: QtBot) -> None:
    time_words = pane.easy.text
    assert pane.unit_button.text() == "time in hours"
    qtbot.mouseClick(pane.unit_button, Qt.MouseButton.LeftButton)
    assert pane.unit_button.text() == "distance in kilometres"
    assert pane.easy.text.endswith(" km")
    qtbot.keyClick(pane.unit_button, Qt.Key.Key_Space)
    assert pane.easy.text == time_words


def test_miles(pane: BuildUpPane, qtbot: QtBot) -> None:
    pane.set_units("miles")
    qtbot.mouseClick(pane.unit_button, Qt.MouseButton.LeftButton)
    assert pane.unit_button.text() == "distance in miles"
    assert pane.easy.text.endswith(" mi")


def test_summary_is_one_sentence_with_what_counts(pane: BuildUpPane) -> None:
    summary = pane.accessibleDescription()
    assert pane.chart.accessibleDescription() == summary
    assert summary.startswith("5 blocks in hours; Sharpening easy ")
    assert "Threshold of its 80 % easy" in summary
    assert summary.endswith(".")
    assert pane.easy.accessibleName() == f"easy {pane.easy.text}"


def test_ctrl_t_changes_chart_and_table_and_keeps_focus(pane: BuildUpPane, qtbot: QtBot) -> None:
    pane.activateWindow()
    pane.chart.setFocus()
    qtbot.waitUntil(pane.chart.hasFocus)
    qtbot.keyClick(pane.chart, Qt.Key.Key_T, Qt.KeyboardModifier.ControlModifier)
    assert pane.twin.table.isVisible()
    assert not pane.chart.isVisible()
    assert pane.twin.table.hasFocus()
    assert [pane.twin.table.item(row, 0).text() for row in range(5)] == [
        "Groundwork", "Hills", "Threshold", "Sharpening", "Races",
    ]  # fmt: skip
    qtbot.keyClick(pane.twin.table, Qt.Key.Key_T, Qt.KeyboardModifier.ControlModifier)
    assert pane.chart.isVisible()


def test_numbers_are_copied_with_tabs(pane: BuildUpPane) -> None:
    pane.twin.copy_numbers.trigger()
    lines = QGuiApplication.clipboard().text().split("\n")
    assert lines[0].startswith("block\teasy\tmoderate\thard\tshare of easy\tsessions")
    assert lines[5] == "Races\t–\t–\t–\t–\t–"
    assert all(line.count("\t") == 5 for line in lines)


def test_picture_is_copied(pane: BuildUpPane) -> None:
    pane.twin.copy_picture.trigger()
    assert QGuiApplication.clipboard().image().size() == pane.size() * pane.devicePixelRatioF()


def test_context_menu_offers_all_three(pane: BuildUpPane) -> None:
    for widget in (pane, pane.chart, pane.twin.table):
        assert widget.contextMenuPolicy() == Qt.ContextMenuPolicy.ActionsContextMenu
        names = [action.text() for action in widget.actions()]
        assert names == ["Show as table", "Copy picture", "Copy numbers", "Save chart…"]


def test_week_is_passed_both_ways(pane: BuildUpPane, qtbot: QtBot) -> None:
    with qtbot.waitSignal(pane.week_pointed) as pointed:
        qtbot.mouseMove(pane.chart.viewport(), QPoint(150, 150))
    assert pointed.args[0].weekday() == 0
    seen: list[object] = []
    pane.week_pointed.connect(seen.append)
    pane.mark_week(date(2026, 5, 11))
    assert "Threshold" in pane.chart.toolTip()
    assert seen == []


def test_empty_season_says_what_would_fill_it(pane: BuildUpPane) -> None:
    pane.show_build_up([], [], invented.TODAY)
    shown = [label.text() for label in pane.findChildren(QLabel) if label.isVisible()]
    assert EMPTY in shown
    assert not pane.chart.isVisible()
    assert pane.accessibleDescription() == EMPTY


@pytest.mark.parametrize("scale", [1.0, 1.5, 2.0])
def test_nothing_is_cut_at_larger_text(pane: BuildUpPane, qapp: QApplication, scale: float) -> None:
    themes.apply(qapp, dark=True, scale=scale)
    pane.resize(round(558 * scale), round(404 * scale))
    qapp.processEvents()
    for label in pane.findChildren(QLabel):
        if label.isVisible() and not label.wordWrap():
            assert label.width() >= label.sizeHint().width() or not label.text()
    assert pane.chart.height() > 150


def test_dragging_chooses_whole_weeks_and_a_click_lets_go(pane: BuildUpPane, qtbot: QtBot) -> None:
    view, seen = pane.chart.viewport(), []
    pane.stretch_chosen.connect(seen.append)
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=QPoint(120, 150))
    qtbot.mouseMove(view, QPoint(180, 150))
    qtbot.mouseMove(view, QPoint(240, 150))
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=QPoint(240, 150))
    first, last = seen[-1]
    assert (first.weekday(), last.weekday()) == (0, 6)
    assert (last - first).days > 14
    qtbot.mouseMove(view, QPoint(400, 150))
    assert pane.chart.stretch == (first, last)
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=QPoint(300, 150))
    assert seen[-1] is None
    assert pane.chart.stretch is None


def test_shift_and_arrows_choose_weeks_and_escape_lets_go(pane: BuildUpPane, qtbot: QtBot) -> None:
    seen: list[object] = []
    pane.stretch_chosen.connect(seen.append)
    for _ in range(2):
        qtbot.keyClick(pane.chart, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    first, last = seen[-1]  # type: ignore[misc]
    assert (last - first).days == 13
    assert first.weekday() == 0
    qtbot.keyClick(pane.chart, Qt.Key.Key_Escape)
    assert seen[-1] is None


def test_a_stretch_shows_its_own_sums_in_words(pane: BuildUpPane) -> None:
    before = pane.easy.text
    hours = (18000.0, 900.0, 1800.0, 0.0, 0.0)
    metres = (50000.0, 3000.0, 7000.0, 0.0, 0.0)
    days = date(2026, 4, 6), date(2026, 5, 3)
    pane.show_stretch(Stretch(*days, 17, hours, metres, 0.87, estimated=False))
    assert [v.text for v in (pane.easy, pane.moderate, pane.hard)] == ["5:00", "0:15", "0:30"]
    assert (pane.in_hand.text, pane.in_hand.word) == ("87 %", "of it easy")
    target = pane.in_hand.findChild(Swatch)
    assert target.isHidden()  # a share is not the target line
    said = pane.chart.accessibleDescription()
    assert said.startswith("4 weeks, 6 Apr to 3 May: easy 5:00, moderate 0:15, hard 0:30")
    pane.show_stretch(None)
    assert pane.easy.text == before and not target.isHidden()
    assert pane.chart.stretch is None


def test_what_is_dragged_out_is_picture_drawing_numbers_and_file(pane: BuildUpPane) -> None:
    data = taken.mime(pane, pane.twin.handle.name, pane.twin.handle.numbers())
    assert data.hasImage()
    assert bytes(data.data(taken.PNG).data()).startswith(b"\x89PNG")
    root = fromstring(bytes(data.data(taken.SVG).data()))
    assert root.tag.endswith("svg")
    assert any("Groundwork" in (node.text or "") for node in root.iter())
    assert data.text() == pane.twin.text
    dropped = Path(data.urls()[0].toLocalFile())
    assert dropped.name == "Build-up by block.png"
    assert dropped.read_bytes() == bytes(data.data(taken.PNG).data())


@pytest.mark.parametrize(("ending", "begins"), [("png", b"\x89PNG"), ("svg", b"<?xml")])
def test_a_chart_is_saved_by_its_ending(pane: BuildUpPane, tmp_path, ending, begins) -> None:
    target = tmp_path / f"chart.{ending}"
    taken.save(pane, "Build-up", pane.twin.text, target)
    assert target.read_bytes().startswith(begins)


def test_saved_numbers_are_comma_separated(pane: BuildUpPane, tmp_path: Path) -> None:
    target = tmp_path / "chart.csv"
    taken.save(pane, "Build-up", 'block\teasy\n"Hills", long\t5:00', target)
    with target.open(encoding="utf-8", newline="") as lines:
        assert list(csv.reader(lines)) == [["block", "easy"], ['"Hills", long', "5:00"]]


def test_the_handle_comes_with_the_pointer_and_opens_a_menu(
    pane: BuildUpPane, qtbot: QtBot
) -> None:
    handle = pane.twin.handle
    QApplication.sendEvent(pane.chart, QEvent(QEvent.Type.Enter))
    assert handle.isVisible()
    qtbot.mouseClick(handle, Qt.MouseButton.LeftButton)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    assert [action.text() for action in menu.actions()] == [
        "Copy picture", "Copy numbers", "Save chart…",
    ]  # fmt: skip
    menu.close()
    QApplication.sendEvent(pane.chart, QEvent(QEvent.Type.Leave))
    assert not handle.isVisible()


def test_the_chart_shows_a_changed_block_beside_those_that_stay_the_same(
    qtbot: QtBot, pane: BuildUpPane
) -> None:
    first, *rest = invented.season()

    def seen(block: BuildUp) -> NDArray[np.uint8]:
        blocks, metres = [block, *rest], invented.season(metres=True)
        pane.show_build_up(blocks, metres, invented.TODAY, invented.RACES)
        image = pane.chart.grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
        pixels = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
        return pixels[:, : image.width()].copy()

    before = seen(first)
    changed = seen(replace(first, hard=tuple(value * 2.0 for value in first.hard)))
    assert pane.twin.text.splitlines()[1].split("\t")[3] == words.hours(2.0 * first.hard[-1])
    named = seen(replace(first, block=replace(first.block, name="Hills", estimated=True)))
    assert "Hills" in pane.twin.text
    again = seen(first)
    # Single pixels differ by how the axis came to its range.
    different = [np.count_nonzero(image != before) for image in (changed, named, again)]
    assert different[0] > 200 and different[1] > 50 and different[2] < 50, different

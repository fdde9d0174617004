"""The main job through the window: drop, see, undo, close, open again."""

from __future__ import annotations

import time
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.ui.hands import drop

from tercet import resources
from tercet.library import season
from tercet.library.library import Library
from tercet.store import queries


def imported(qtbot, window, *paths: Path, timeout: int = 30_000):
    """Drop paths and wait until the season with them is shown."""
    with qtbot.waitSignal(window.import_ended, timeout=timeout) as ended:
        drop(window, *paths)
    qtbot.waitUntil(lambda: not window.refreshing, timeout=20_000)
    return ended.args[0]


def test_an_empty_store_shows_ways_to_begin(qtbot, open_window) -> None:
    window = open_window()
    assert window.pages.currentWidget() is window.empty
    assert window.empty.choose.isVisible() and window.empty.example.isVisible()


def test_dropped_files_become_a_coloured_season(qtbot, open_window, library, some_logs) -> None:
    window = open_window()
    report = imported(qtbot, window, some_logs)
    assert report.count("new") == 6
    assert report.count("same run") == 1
    assert report.count("other sport") == 1
    assert report.count("refused") == 2
    view = library.call(season.season)
    assert view.session_count == 6 and view.other_sports == 1
    # Nobody said any thresholds: they were estimated, and that is said.
    assert view.estimated
    judged = sum(sum(block.seconds[:3]) for block in view.blocks)
    assert judged > 0.9 * sum(sum(block.seconds[:3]) + block.seconds[4] for block in view.blocks)
    assert judged > 3 * 3600
    qtbot.waitUntil(lambda: window.season_page.strip.isVisible(), timeout=5_000)
    assert "about" in window.season_page.strip.lines.text()
    assert "6 sessions" in window.foot.left.text()


def test_the_same_numbers_in_window_store_and_tally(qtbot, open_window, library, some_logs) -> None:
    from tercet import cli
    from tercet.library import season_file

    window = open_window()
    samples = resources.samples()
    imported(qtbot, window, samples / "season.toml", some_logs)
    parsed = season_file.parse((samples / "season.toml").read_text("utf-8"))
    rows = cli.tally([some_logs], parsed.thresholds, parsed.zone)
    told = {
        (row["start_utc"], row["format"]): row["easy_s"] for row in rows if row["status"] == "read"
    }
    stored = library.call(queries.sessions)
    assert len(stored) == 7
    for row in stored:
        if row["sport"] != "running":
            continue
        start = time.strftime("%Y-%m-%dT%H:%M:%S", time.gmtime(row["start_utc"]))
        key = next(k for k in told if k[0].startswith(start) and k[1] == row["format"])
        assert row["easy_s"] == pytest.approx(told[key], abs=0.001)
    shown = {item.id: item.seconds for item in window.view.sessions}
    assert all(shown[row["id"]][0] == pytest.approx(row["easy_s"] or 0.0) for row in stored)


def test_dropping_the_same_again_adds_nothing(qtbot, open_window, library, some_logs) -> None:
    window = open_window()
    imported(qtbot, window, some_logs)
    before = library.call(season.season)
    report = imported(qtbot, window, some_logs)
    assert report.count("already here") == 10
    after = library.call(season.season)
    assert [block.seconds for block in before.blocks] == [block.seconds for block in after.blocks]


def test_ctrl_z_takes_a_whole_import_back_and_ctrl_y_brings_it_again(
    qtbot, open_window, library, some_logs
) -> None:
    window = open_window()
    imported(qtbot, window, some_logs)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert library.call(season.season).session_count == 0
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.keyClick(window, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert library.call(season.season).session_count == 6


def test_stop_keeps_what_was_read(qtbot, open_window, library) -> None:
    window = open_window()
    drop(window, resources.samples())
    pane = window.season_page.recordings
    qtbot.waitUntil(lambda: pane.bar.value() > 3, timeout=60_000)
    asked = time.monotonic()
    with qtbot.waitSignal(window.import_ended, timeout=20_000) as ended:
        qtbot.mouseClick(pane.stop, Qt.MouseButton.LeftButton)
    assert time.monotonic() - asked < 10
    report = ended.args[0]
    assert report.stopped
    assert pane.summary.text().startswith("Stopped.")
    kept = library.call(season.season).session_count
    assert 0 < kept < 120
    assert kept == report.count("new")


def test_enter_on_a_day_opens_the_session_and_escape_returns(
    qtbot, open_window, library, some_logs
) -> None:
    window = open_window()
    imported(qtbot, window, some_logs)
    window.show_recordings(False)
    first = window.view.sessions[0]
    sheet = window.season_page.sheet
    sheet.select_session(first.id)
    sheet.setFocus()
    qtbot.keyClick(sheet, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page, timeout=10_000)
    qtbot.keyClick(window.session_page, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.season_page, timeout=5_000)
    assert sheet.selected_session() == first.id


def test_a_skipped_file_stays_skipped(qtbot, open_window, library, some_logs) -> None:
    window = open_window()
    imported(qtbot, window, some_logs)
    problems = library.call(queries.files_to_look_at)
    assert {row.name for row in problems} == {"2026-05-21-1815.fit", "2026-06-20-0905.gpx"}
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.season_page.recordings.skip_asked.emit(problems[0].sha256)
    assert len(library.call(queries.files_to_look_at)) == 1


def test_closing_and_opening_again_keeps_everything(qtbot, tmp_path, some_logs) -> None:
    from tercet.ui import theme
    from tercet.ui.window import MainWindow

    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.apply(app, False)
    first = Library(tmp_path / "kept")
    window = MainWindow(first)
    qtbot.addWidget(window)
    window.resize(760, 560)  # within the offscreen platform's screen
    with qtbot.waitSignal(window.season_shown, timeout=20_000):
        window.show()
    imported(qtbot, window, some_logs)
    chosen = window.view.sessions[2].id
    window.show_recordings(False)
    window.season_page.sheet.select_session(chosen)
    sums = [block.seconds for block in window.view.blocks]
    window.close()
    first.close()

    second = Library(tmp_path / "kept")
    again = MainWindow(second)
    qtbot.addWidget(again)
    with qtbot.waitSignal(again.season_shown, timeout=20_000):
        again.show()
    assert [block.seconds for block in again.view.blocks] == sums
    assert again.pages.currentWidget() is again.season_page
    assert again.size() == window.size()
    assert again.season_page.sheet.selected_session() == chosen
    assert second.call(season.season, date(2026, 11, 25)).session_count == 6
    again.close()
    second.close()


def test_the_window_never_freezes_while_200_files_come_in(
    qtbot, open_window, library, tmp_path
) -> None:
    folder = tmp_path / "many"
    folder.mkdir()
    samples = sorted(resources.samples().glob("2026-*"))
    for k in range(200):
        source = samples[k % len(samples)]
        # A byte after the end makes another content of the same run: read, then recognised.
        data = source.read_bytes() + (b" " if k >= len(samples) else b"")
        (folder / f"{k:03d}-{source.name}").write_bytes(data)
    window = open_window()
    beats: list[float] = []
    beat = QTimer()
    beat.setInterval(5)
    beat.timeout.connect(lambda: beats.append(time.monotonic()))
    beat.start()
    imported(qtbot, window, folder, timeout=120_000)
    beat.stop()
    gaps = sorted(b - a for a, b in pairwise(beats))
    print(f"longest gaps: {[round(1000 * gap) for gap in gaps[-5:]]} ms of {len(beats)} beats")
    # The figure asked for is 100 ms; a loaded machine may pause the whole process for longer.
    assert gaps[-1] < 0.25
    assert gaps[int(len(gaps) * 0.999)] < 0.1


def test_the_page_in_view_comes_back_with_the_window(
    qtbot, open_window, library, some_logs
) -> None:
    library.take_in([some_logs])
    first = open_window()
    qtbot.waitUntil(lambda: first.view is not None, timeout=10_000)
    first.show_view("curve")
    assert first.further.current_key == "curve"
    first.close()
    again = open_window()
    qtbot.waitUntil(lambda: again.further.current_key == "curve", timeout=10_000)
    again.show_view("season")
    again.close()
    assert open_window().further.current_key == ""


def test_the_top_row_keeps_its_height_when_the_style_is_put_on_anew(open_window, qapp) -> None:
    # The desktop does that on its own, so with a chart that is dragged out.
    bar = open_window().bar
    heights = [made.height() for made in (bar.current, bar.season, bar.runner)]
    qapp.setStyleSheet(qapp.styleSheet())
    qapp.processEvents()
    assert [made.height() for made in (bar.current, bar.season, bar.runner)] == heights
    assert bar.current.height() == bar.height()


def test_tab_goes_from_the_sheet_to_what_stands_beside_it_and_last_to_the_foot(
    qtbot, open_window, some_library
) -> None:
    window = open_window(some_library)
    page = window.season_page
    window.activateWindow()
    page.sheet.setFocus()
    QTest.keyClick(page.sheet, Qt.Key.Key_Tab)
    assert page.right.isAncestorOf(QApplication.focusWidget())
    for view, last in (("season", page.card.open), ("curve", None)):
        window.show_view(view)
        last = last or window.further.current.blocks
        last.setFocus()
        QTest.keyClick(last, Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is window.foot.right


def test_the_card_says_that_a_day_has_no_session(open_window, some_library) -> None:
    window = open_window(some_library)
    sheet, card = window.season_page.sheet, window.season_page.card
    assert card.session is not None
    free = next(
        week.first_day + timedelta(days=k)
        for block in window.view.blocks
        for week in block.weeks
        for k, day in enumerate(week.days)
        if not day
    )
    sheet._go(free)
    assert card.session is None and card.name.text() == "No session on this day"


def test_a_season_page_that_is_not_in_view_shows_what_changed_once_it_is(
    qtbot, open_window, some_library
) -> None:
    window = open_window(some_library)
    run = window.view.sessions[-1]
    window.show_view("curve")
    page = window.season_page
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.acts.delete(run)
    assert window.view is not None and run.id not in {s.id for s in window.view.sessions}
    window.show_view("season")
    assert run.id not in page.sheet.model().sheet.sessions
    window.show_view("curve")
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.acts.undo()
    # Asked for from another page, as by a menu, or after a while, it is right as well.
    assert run.id in page.sheet.model().sheet.sessions
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.acts.set_effort(run.id, 7)
    page.sheet.select_session(run.id)
    qtbot.waitUntil(lambda: page.card.session.effort == 7, timeout=5_000)

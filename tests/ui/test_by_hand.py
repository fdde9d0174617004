"""The first evening and an ordinary day by mouse and by keys alone: strip, undo, list, look."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, Qt, QUrl
from PySide6.QtWidgets import QApplication, QWidget
from tests.ui import fit
from tests.ui.hands import by_key, drop

from tercet import resources
from tercet.library import season
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui import theme
from tercet.ui.focus_ring import FocusRing
from tercet.ui.undo_bar import STAYS_MS
from tercet.ui.window import MainWindow

LEFT = Qt.MouseButton.LeftButton
RUNS = ("2026-04-14-1843.fit", "2026-05-02-0845.tcx", "2026-05-08-1855.gpx")


@pytest.fixture
def runs(library: Library) -> Library:
    """Three runs, judged by an estimate."""
    library.take_in([resources.samples() / name for name in RUNS])
    return library


def shown(qtbot, window: MainWindow) -> None:
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        pass


def app() -> QApplication:
    found = QApplication.instance()
    assert isinstance(found, QApplication)
    return found


@pytest.fixture(autouse=True)
def plain_look() -> Iterator[None]:
    yield
    theme.apply(app(), False)


def on_session(window: MainWindow) -> bool:
    return window.pages.currentWidget() is window.session_page


# The strip


def test_leave_puts_the_strip_away_also_after_a_restart(qtbot, open_window, runs) -> None:
    window = open_window()
    strip = window.season_page.strip
    assert strip.isVisible() and "about" in strip.lines.text()
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(strip.leave, LEFT)
    assert not strip.isVisible() and not window.season_page.strip_rule.isVisible()
    assert runs.call(season.season).estimated, "leaving it confirms nothing"
    window.close()
    again = open_window()
    assert not again.season_page.strip.isVisible()


# Choosing, opening, deleting


def test_at_first_show_the_latest_session_is_chosen_and_drawn(qtbot, open_window, runs) -> None:
    window = open_window()
    card, last = window.season_page.card, window.view.sessions[-1]
    assert card.session == last and card.open.isVisible()
    assert window.season_page.sheet.selected_session() == last.id
    qtbot.waitUntil(lambda: card.trace.shown, timeout=10_000)
    picture = card.trace.grab().toImage()
    shades = {picture.pixelColor(x, picture.height() - 6).name() for x in range(picture.width())}
    assert theme.current().color("easy").name() in shades


def test_a_click_on_a_bar_opens_its_page(qtbot, open_window, runs) -> None:
    window = open_window()
    sheet = window.season_page.sheet
    first = window.view.sessions[0]
    sheet.select_session(first.id)
    box = sheet.visualRect(sheet.currentIndex())
    qtbot.mouseClick(sheet.viewport(), LEFT, pos=QPoint(box.left() + 12, box.center().y()))
    qtbot.waitUntil(lambda: on_session(window), timeout=10_000)
    assert window.sessions.current == first.id
    assert window.bar.current.text() == "Session"
    qtbot.mouseClick(window.session_page.head.next, LEFT)
    second = window.view.sessions[1]
    qtbot.waitUntil(lambda: window.session_page.session == second, timeout=10_000)
    qtbot.mouseClick(window.session_page.head.back, LEFT)
    assert window.bar.current.text() == "Season"
    assert sheet.selected_session() == second.id


def test_a_deleted_session_comes_back_by_the_undo_bar(qtbot, open_window, runs) -> None:
    window = open_window()
    last = window.view.sessions[-1]
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        by_key(qtbot, window, Qt.Key.Key_Backspace)
    assert runs.call(season.season).session_count == 2
    bar = window.undo_bar
    assert bar.isVisible() and bar.words.text().startswith(f"Deleted: {last.name}")
    assert not bar.undo.hasFocus(), "it takes no focus"
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(bar.undo, LEFT)
    assert runs.call(season.season).session_count == 3
    assert bar.words.text() == "Taken back: delete session" and bar.undo.text() == "Redo"
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(bar.undo, LEFT)
    assert runs.call(season.season).session_count == 2
    assert bar.undo.text() == "Undo"


def test_the_undo_bar_goes_after_its_time_but_not_under_the_hand(qtbot, open_window, runs) -> None:
    window = open_window()
    bar = window.undo_bar
    bar.say("Deleted: Run, 17 Jun")
    assert bar.accessibleName() == "Deleted: Run, 17 Jun"
    assert bar._timer.interval() == STAYS_MS
    bar.undo.setFocus(Qt.FocusReason.TabFocusReason)
    bar._timer.timeout.emit()
    assert bar.isVisible()
    window.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)
    bar._timer.timeout.emit()
    assert not bar.isVisible()


def test_deleting_the_last_session_leads_back_to_the_ways_to_begin(
    qtbot, open_window, library
) -> None:
    library.take_in([resources.samples() / RUNS[0]])
    window = open_window()
    window.show_view("session")
    qtbot.waitUntil(lambda: on_session(window), timeout=10_000)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.delete_session()
    assert window.pages.currentWidget() is window.empty
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        by_key(qtbot, window, Qt.Key.Key_Z)
    assert window.pages.currentWidget() is window.season_page


# The recordings pane


def test_the_list_of_an_import_can_be_filtered_and_a_file_skipped(
    qtbot, open_window, library, some_logs: Path
) -> None:
    window = open_window()
    with qtbot.waitSignal(window.import_ended, timeout=60_000):
        drop(window, some_logs)
    pane = window.season_page.recordings
    qtbot.waitUntil(lambda: not window.refreshing, timeout=20_000)
    assert pane.table.rowCount() == 10
    assert pane.table.item(0, 1).text() == "Not read"  # what needs a look comes first
    choices = [pane.filter.itemText(k) for k in range(pane.filter.count())]
    assert choices[0] == "All 10" and "New 6" in choices and "Not read 2" in choices
    pane.filter.setFocus()
    while pane.filter.currentText() != "Not read 2":
        qtbot.keyClick(pane.filter, Qt.Key.Key_Down)
    assert pane.table.rowCount() == 2
    assert all(pane.table.item(row, 2).text() for row in range(2)), "each with its reason"
    skip = next(b for b in pane.findChildren(type(pane.stop)) if b.text() == "Skip")
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(skip, LEFT)
    assert len(library.call(queries.files_to_look_at)) == 1
    assert "1 needs a look" in window.foot.right.text()
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(window.undo_bar.undo, LEFT)
    assert len(library.call(queries.files_to_look_at)) == 2


def test_closing_the_pane_leads_back_to_where_it_was_opened(qtbot, open_window, runs) -> None:
    window = open_window()
    window.show_view("session")
    qtbot.waitUntil(lambda: on_session(window), timeout=10_000)
    qtbot.mouseClick(window.foot.right, LEFT)
    assert window.season_page.recordings_shown and window.bar.current.text() == "Season"
    qtbot.keyClick(window.season_page.recordings.choose, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: on_session(window), timeout=10_000)
    assert window.bar.current.text() == "Session"


def test_files_over_the_window_are_counted_before_they_are_let_go(
    qtbot, open_window, some_logs: Path
) -> None:
    window = open_window()
    window.imports.hover([some_logs])
    assert "a folder would be added" in window.empty.dropped_words.text()
    qtbot.waitUntil(
        lambda: window.empty.dropped_words.text() == "10 files would be added", timeout=10_000
    )
    window.imports.hover([some_logs / "2026-04-14-1843.fit", some_logs / "notes.docx"])
    assert window.empty.dropped_words.text() == "2 files would be added"
    window.imports.hover_ended()
    assert window.empty.dropped_words.text() == "Recordings"


# Keys alone


def press(key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier):
    from PySide6.QtTest import QTest

    focus = app().focusWidget()
    assert focus is not None
    QTest.keyClick(focus, key, modifier)


def test_from_the_empty_window_to_a_session_without_a_mouse(
    qtbot, open_window, library, some_logs: Path, monkeypatch
) -> None:
    from PySide6.QtWidgets import QFileDialog

    files = [str(path) for path in sorted(some_logs.iterdir())]
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: (files, ""))
    window = open_window()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    assert app().focusWidget() is window.empty.choose
    with qtbot.waitSignal(window.import_ended, timeout=60_000):
        press(Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: not window.refreshing, timeout=20_000)
    press(Qt.Key.Key_Escape)  # closes the recordings pane
    sheet = window.season_page.sheet
    assert app().focusWidget() is sheet
    press(Qt.Key.Key_Up)
    press(Qt.Key.Key_Down)
    while sheet.selected_session() is None:
        press(Qt.Key.Key_Left)
    chosen = sheet.selected_session()
    press(Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: on_session(window), timeout=10_000)
    assert window.sessions.current == chosen
    press(Qt.Key.Key_Escape)
    assert window.pages.currentWidget() is window.season_page


def test_f6_goes_round_the_panes(qtbot, open_window, runs) -> None:
    window = open_window()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    page = window.season_page
    page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)
    seen: list[QWidget | None] = []
    for _ in range(5):
        press(Qt.Key.Key_F6)
        seen.append(app().focusWidget())
    assert seen == [
        page.build_up.chart, page.card.open, window.bar.current, page.strip.race, page.sheet,
    ]  # fmt: skip


def test_tab_reaches_every_control_of_the_season_page(qtbot, open_window, runs) -> None:
    window = open_window()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    wanted = {
        widget
        for widget in fit.in_view(window)
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isEnabled()
        and widget.focusProxy() is None
    }  # fmt: skip
    reached: set[QWidget] = set()
    for _ in range(len(wanted) + 4):
        press(Qt.Key.Key_Tab)
        focus = app().focusWidget()
        assert focus is not None
        reached.add(focus)
    assert not {fit.name_of(w) for w in wanted - reached}


def test_the_ring_shows_for_keys_only(qtbot, open_window, runs) -> None:
    window = open_window()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    ring = window.findChild(FocusRing)
    assert ring is not None and not ring.isVisible()
    window.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)
    while app().focusWidget() is not window.season_page.card.open:
        press(Qt.Key.Key_Tab)
    assert ring.isVisible()
    button = window.season_page.card.open
    place = button.mapTo(window, QPoint())
    around = ring.geometry()
    assert around.contains(place) and around.width() == button.width() + 8
    picture = window.grab().toImage()
    edge = picture.pixelColor(around.left() + 1, around.center().y()).name()
    assert edge == theme.current().color("focus").name()
    window.season_page.sheet.setFocus(Qt.FocusReason.MouseFocusReason)
    assert not ring.isVisible()


# The look


def test_dark_and_light_redraw_everything(qtbot, open_window, runs) -> None:
    window = open_window()
    actions = {action.text(): action for action in window.actions()}
    for name in ("Dark", "Light"):
        actions[name].trigger()
        qtbot.waitUntil(window.updatesEnabled)
        look = theme.current()
        assert look.dark == (name == "Dark")
        picture = window.grab().toImage()
        ground = picture.pixelColor(4, window.height() // 2).name()
        assert ground == look.color("window").name()
        page = window.season_page
        for pane in (page.build_up, page.card):
            corner = pane.mapTo(window, QPoint(6, pane.height() - 6))
            assert picture.pixelColor(corner).name() == look.color("pane").name()
        assert window.look.name == name.lower()


def test_another_text_size_keeps_what_is_shown(qtbot, open_window, runs) -> None:
    window = open_window()
    page = window.season_page
    first = window.view.sessions[0]
    page.sheet.select_session(first.id)
    figures = page.card.running.value.text(), page.card.shares.text(), page.build_up.easy.text
    actions = {action.text(): action for action in window.actions()}
    for size in (150, 200, 100):
        actions[f"Text {size} %"].trigger()
        qtbot.waitUntil(window.updatesEnabled)
        assert theme.current().scale == size / 100
        assert page.sheet.selected_session() == first.id
        assert figures == (
            page.card.running.value.text(), page.card.shares.text(), page.build_up.easy.text,
        )  # fmt: skip
        assert page.stacked == (1366 / (size / 100) - 10 < 1000)
    assert window.look.size == 100


def test_the_size_can_be_chosen_in_the_empty_window(qtbot, open_window) -> None:
    window = open_window()
    choice = window.empty.sizes.button(130)
    qtbot.mouseClick(choice, LEFT, pos=QPoint(8, choice.height() // 2))
    assert theme.current().scale == 1.3
    assert choice.isChecked()


def test_the_menu_marks_what_is_in_force(qtbot, open_window: Callable, runs) -> None:
    window = open_window()
    window.look.choose(name="light", size=130, texture="strong")
    view = next(a.menu() for a in window.bar.menu.actions() if a.text() == "View")
    view.aboutToShow.emit()
    marked = {action.text() for action in view.actions() if action.isChecked()}
    assert marked == {"Light", "Text 130 %", "Textures strong"}


def test_copied_files_come_in_and_nothing_copied_is_told(
    qtbot, open_window, runs, tmp_path
) -> None:
    window = open_window()
    clipboard = QApplication.clipboard()
    clipboard.clear()
    actions = {action.text(): action for action in window.actions()}
    actions["Add copied files"].trigger()
    assert window.undo_bar.isVisible() and "copied" in window.undo_bar.words.text()
    copied = QMimeData()
    copied.setUrls([QUrl.fromLocalFile(str(resources.samples() / "2026-07-16-0637.tcx"))])
    clipboard.setMimeData(copied)
    with qtbot.waitSignal(window.imports.ended, timeout=20_000):
        actions["Add copied files"].trigger()
    assert len(window._library.call(queries.run_ids)) == len(RUNS) + 1
    clipboard.clear()

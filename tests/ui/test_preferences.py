"""Preferences: chosen by hand, in force at once, kept for the next time."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from tests.ui import fit
from tests.ui.test_window import imported

from tercet import week_days
from tercet.ui import theme
from tercet.ui.desk import Desk
from tercet.ui.look import look_of
from tercet.ui.preferences import Preferences


@pytest.fixture
def dialog(qtbot, open_window, some_logs):
    window = open_window()
    imported(qtbot, window, some_logs / "2026-04-14-1843.fit")
    window.show_recordings(False)
    action = next(a for a in window.bar.menu.actions() if a.text() == "Preferences…")
    action.trigger()
    made = window.findChild(Preferences)
    qtbot.waitUntil(made.isVisible, timeout=5_000)
    yield made
    made.close()
    window.look.choose(name="light", size=100, texture="quiet")


def test_miles_are_written_at_once_and_kept(qtbot, dialog) -> None:
    window = dialog.parent()
    card = window.season_page.card
    assert card.distance.value.text().endswith("km")
    dialog.units.setFocus()
    qtbot.keyClick(dialog.units, Qt.Key.Key_Down)
    qtbot.waitUntil(lambda: card.distance.value.text().endswith(" mi"), timeout=10_000)
    assert card.pace.value.text().endswith("/mile")
    assert look_of(window._library.folder).units == "miles"


def test_theme_size_and_textures_are_put_on(qtbot, dialog) -> None:
    dialog.theme.setCurrentIndex(2)
    dialog.theme.activated.emit(2)
    assert theme.current().dark
    dialog.size_of_text.activated.emit(0)
    dialog.textures.setCurrentIndex(1)
    dialog.textures.activated.emit(1)
    assert theme.current().texture == "strong"


@pytest.mark.parametrize("size", [100, 200])
def test_the_dialog_fits_and_speaks(qtbot, dialog, size) -> None:
    dialog.parent().look.choose(size=size)
    dialog.adjustSize()
    qtbot.wait(50)
    assert not fit.faults(dialog) and not fit.nameless(dialog)


def test_twice_the_text_folds_the_top_row_without_cutting_it(qtbot, dialog) -> None:
    window = dialog.parent()
    window.look.choose(size=200)
    qtbot.waitUntil(window.updatesEnabled)
    bar = window.bar

    def below() -> int:
        return window.pages.geometry().top()

    qtbot.waitUntil(lambda: bar.geometry().bottom() < below(), timeout=5_000)
    assert bar.geometry().top() == 0 and bar.height() == bar.maximumHeight()
    views = bar._views.values()
    assert all(view.mapTo(window, view.rect().bottomLeft()).y() < below() for view in views)


def test_weeks_that_begin_on_sunday_are_laid_anew_in_a_new_window(qtbot, some_library):
    desk = Desk(some_library)
    first = desk.main
    with qtbot.waitSignal(first.season_shown, timeout=20_000):
        first.show()
    try:
        asked = Preferences(first.look, first)
        asked.remake_asked.connect(first.language_asked)
        asked.open()
        for key in (Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Up):  # to Saturday, and back
            qtbot.keyClick(asked.week, key)
        assert asked.isVisible()
        qtbot.keyClick(asked, Qt.Key.Key_Escape)
        qtbot.waitUntil(lambda: desk.main is not first, timeout=10_000)
        qtbot.waitUntil(lambda: desk.main.view is not None, timeout=20_000)
        header = desk.main.season_page.sheet.model().headerData(1, Qt.Orientation.Horizontal)
        starts = {week.first_day.weekday() for b in desk.main.view.blocks for week in b.weeks}
        assert header == "Sun" and starts == {week_days.SUNDAY}
        assert look_of(some_library.folder).week == "6"
    finally:
        week_days.begin_on(week_days.MONDAY)
        desk.main.close()
        desk.main.deleteLater()
        desk.close()


@pytest.mark.parametrize("size", [150, 200])
def test_the_chosen_day_stays_in_view_when_the_text_grows(qtbot, dialog, size) -> None:
    window = dialog.parent()
    window.resize(1366, 768)
    sheet = window.season_page.sheet
    sheet.choose(())
    sheet.setFocus()
    last = sheet.model().rowCount() - 1
    sheet._set_current(last, 5)

    def seen() -> bool:
        return sheet.viewport().rect().contains(sheet.visualRect(sheet.currentIndex()))

    qtbot.waitUntil(seen, timeout=5_000)
    window.look.choose(size=size)
    qtbot.wait(300)
    assert seen()
    window.look.choose(size=100)
    qtbot.wait(300)
    assert seen()

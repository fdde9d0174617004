"""The look round: begins once, goes by keys, can be left, comes back by the menu."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from tests.ui import fit

from tercet.library import operations
from tercet.store import queries
from tercet.ui.desk import Desk
from tercet.ui.tour import STEPS, Tour
from tercet.ui.window import MainWindow


@pytest.fixture
def desk(qtbot, some_library) -> Iterator[Desk]:
    made = Desk(some_library)
    made.main.resize(1366, 768)
    with qtbot.waitSignal(made.main.season_shown, timeout=20_000):
        made.main.show()
    yield made
    made.main.look.choose(size=100)
    made.main.close()
    made.main.deleteLater()
    made.close()


def tour_of(qtbot, window: MainWindow) -> Tour:
    qtbot.waitUntil(lambda: window.findChild(Tour) is not None, timeout=10_000)
    return window.findChild(Tour)


def test_it_goes_round_by_the_keyboard_and_begins_only_once(qtbot, desk: Desk) -> None:
    window = desk.main
    tour = tour_of(qtbot, window)
    assert 1 < len(STEPS) <= 4 and window.acceptDrops() and not tour.isModal()
    for _ in STEPS:
        round_ = tour.outline.geometry()
        assert tour.outline.isVisible() and not round_.isEmpty()
        assert not tour.geometry().intersects(round_)
        assert QRect(QPoint(), window.centralWidget().size()).contains(tour.geometry())
        assert tour.title.text() in tour.following.accessibleDescription()
        QTest.keyClick(tour.following, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: window.findChild(Tour) is None, timeout=5_000)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.refresh()
    assert window.findChild(Tour) is None


def test_escape_leaves_it_and_the_menu_brings_it_back(qtbot, desk: Desk) -> None:
    window = desk.main
    tour = tour_of(qtbot, window)
    QTest.keyClick(tour.following, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: window.findChild(Tour) is None, timeout=5_000)
    next(a for a in window.bar.menu.actions() if a.text() == "A look round").trigger()
    tour = tour_of(qtbot, window)
    QTest.mouseClick(tour.skip, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.findChild(Tour) is None, timeout=5_000)


def test_it_ends_when_the_last_run_is_gone(qtbot, desk: Desk, some_library) -> None:
    window = desk.main
    tour_of(qtbot, window)
    some_library.call(operations.delete_runs, [session.id for session in window.view.sessions])
    for row in some_library.call(queries.files_to_look_at):
        some_library.call(operations.put_away, row.sha256)
    window.refresh()
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.empty, timeout=5_000)
    qtbot.waitUntil(lambda: window.findChild(Tour) is None, timeout=5_000)


def test_it_fits_at_twice_the_text(qtbot, desk: Desk) -> None:
    tour = tour_of(qtbot, desk.main)
    desk.main.look.choose(size=200)
    for _ in STEPS[1:]:
        qtbot.wait(20)
        assert not fit.faults(tour) and not fit.nameless(tour)
        assert QRect(QPoint(), desk.main.centralWidget().size()).contains(tour.geometry())
        tour.following.click()


def test_it_waits_while_another_page_is_in_view(qtbot, desk: Desk) -> None:
    window = desk.main
    tour = tour_of(qtbot, window)
    window.show_view("thresholds")
    qtbot.waitUntil(lambda: not tour.isVisible() and not tour.outline.isVisible(), timeout=5_000)
    window.resize(1300, 760)
    assert not tour.outline.isVisible()
    window.show_view("season")
    window.season_page.show_recordings(True)
    qtbot.waitUntil(lambda: not tour.isVisible() and not tour.outline.isVisible(), timeout=5_000)
    window.season_page.show_recordings(False)
    window.show_view("season")
    qtbot.waitUntil(lambda: tour.isVisible() and tour.outline.isVisible(), timeout=5_000)


def test_it_goes_away_with_a_window_that_gives_way_to_another_language(qtbot, desk: Desk) -> None:
    before = desk.main
    tour = tour_of(qtbot, before)
    before.look.choose(language="de")
    desk.speak()
    assert desk.main is not before and tour.isHidden() and tour.outline.isHidden()
    qtbot.waitUntil(lambda: desk.main.view is not None, timeout=20_000)
    desk.main.look.choose(language="en")
    desk.speak()

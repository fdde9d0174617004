"""The review in the window, as hands use it: retitled, moved, left out, presented, saved."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QImage, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.ui import fit

from tercet.library import planning
from tercet.library.library import Library
from tercet.library.review import choices
from tercet.library.review.content import Before
from tercet.store import queries
from tercet.ui import theme
from tercet.ui.review.organiser import Organiser
from tercet.ui.review.page_list import KEY, NUMBER, THUMB
from tercet.ui.review.page_view import thumbnail
from tercet.ui.review.presenter import Presenter
from tercet.ui.widgets import Label
from tercet.ui.window import MainWindow


@pytest.fixture
def library(tmp_path: Path, reviewed_store: Path) -> Iterator[Library]:
    shutil.copytree(reviewed_store, tmp_path / "store")
    made = Library(tmp_path / "store")
    yield made
    made.close()


@pytest.fixture
def organiser(qtbot, open_window: Callable[[], MainWindow]) -> Organiser:
    window = open_window()
    window.show_view("review")
    page = window.further.current
    assert isinstance(page, Organiser)
    qtbot.waitUntil(lambda: page.review is not None, timeout=10_000)
    return page


def keys(page: Organiser) -> list[str]:
    assert page.review is not None
    return [content.key for content in page.review.pages]


def shown(page: Organiser) -> list[str]:
    assert page.review is not None
    return [content.key for content in page.review.shown]


def test_a_page_is_retitled_and_undo_takes_it_back(
    qtbot, organiser: Organiser, library: Library
) -> None:
    organiser.choose_in_list("blocks")
    page = organiser.current()
    assert page is not None
    before = page.title
    organiser.pane.title.setFocus()
    organiser.pane.title.selectAll()
    QTest.keyClicks(organiser.pane.title, "Specific ran hard")
    qtbot.waitUntil(lambda: organiser.current().title == "Specific ran hard", timeout=5_000)
    assert "Specific ran hard" in organiser.page.accessibleName()
    organiser.page.setFocus()
    organiser.context.acts.undo()
    qtbot.waitUntil(lambda: organiser.current().title == before, timeout=5_000)


def test_notes_last_and_stand_on_no_page(qtbot, organiser: Organiser, library: Library) -> None:
    organiser.notes.setPlainText("Start with the hills")
    organiser.close_quietly()
    scope = organiser.review.scope
    qtbot.waitUntil(
        lambda: library.call(choices.read, scope).notes == {"line": "Start with the hills"},
        timeout=5_000,
    )
    assert all("hills" not in mark.words for mark in organiser.page.marks)


def test_alt_and_arrow_move_a_page_and_a_click_leaves_it_out(qtbot, organiser: Organiser) -> None:
    before = keys(organiser)
    organiser.choose_in_list("volume")
    QTest.keyClick(organiser.list, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    qtbot.waitUntil(lambda: keys(organiser) != before, timeout=5_000)
    assert keys(organiser).index("volume") == before.index("volume") - 1
    organiser.pane.out.click()
    qtbot.waitUntil(lambda: "volume" not in shown(organiser), timeout=5_000)
    assert "volume" in keys(organiser)
    # Numbers count what is shown, in the list and at the foot alike.
    numbers = [organiser.list.item(k).data(NUMBER) for k in range(organiser.list.count())]
    assert [k for k in numbers if k] == list(range(1, len(shown(organiser)) + 1))
    assert numbers[keys(organiser).index("volume")] == 0

    def painted_without_number() -> bool:
        said = [mark.words for mark in organiser.page.marks]
        return bool(said) and not any(re.fullmatch(r"\d+ of \d+", words) for words in said)

    qtbot.waitUntil(painted_without_number, timeout=5_000)


def test_an_edit_reaches_every_page_that_shows_it(
    qtbot, organiser: Organiser, library: Library
) -> None:
    """The picture in small of each page, the page in view, its numbers, its name when spoken."""

    def pictures() -> dict[str, QImage]:
        rows = [organiser.list.item(k) for k in range(organiser.list.count())]
        drawn = {row.data(KEY): row.data(Qt.ItemDataRole.DecorationRole) for row in rows}
        return {key: made.toImage() for key, made in drawn.items() if made is not None}

    def fresh() -> dict[str, QImage]:
        return {
            page.key: thumbnail(page, organiser.look, *THUMB, 1.0).toImage()
            for page in organiser.review.pages
        }

    def numbers() -> list[tuple[str, ...]]:
        table = organiser.table
        return [
            tuple(table.item(row, column).text() for column in range(table.columnCount()))
            for row in range(table.rowCount())
        ]

    qtbot.waitUntil(lambda: pictures() == fresh(), timeout=10_000)
    before = organiser.review
    block = next(b for b in library.call(queries.blocks) if b.name == "Support")
    organiser.context.acts.do(planning.set_block, replace(block, easy_target=0.61))
    qtbot.waitUntil(lambda: organiser.review != before, timeout=10_000)
    after = {page.key: page for page in organiser.review.pages}
    changed = {page.key for page in before.pages if after[page.key] != page}
    assert "blocks" in changed
    assert set(pictures()) == set(after)  # one stays in view until it is drawn anew
    qtbot.waitUntil(lambda: pictures() == fresh(), timeout=10_000)
    organiser.choose_in_list("volume")
    organiser._numbers.click()
    assert numbers() == list(after["volume"].table.rows)
    organiser.choose_in_list("line")
    longest = max(organiser._view.sessions, key=lambda session: session.running_s)
    organiser.context.acts.delete(longest)
    before = organiser.review
    qtbot.waitUntil(lambda: organiser.review != before, timeout=10_000)
    assert numbers() == list(organiser.current().table.rows)
    assert organiser.current().title in organiser.page.accessibleName()
    organiser._numbers.click()
    claims = organiser.current().title.split()
    qtbot.waitUntil(
        lambda: set(claims) <= set(" ".join(mark.words for mark in organiser.page.marks).split()),
        timeout=10_000,
    )
    qtbot.waitUntil(lambda: pictures() == fresh(), timeout=10_000)
    spoken = organiser.list.item(0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert organiser.review.pages[0].title in spoken
    for page in organiser.review.pages:
        assert all(longest.id not in page.table.behind(k) for k in range(len(page.table.rows)))


def test_a_number_leads_to_its_runs(qtbot, organiser: Organiser) -> None:
    organiser.choose_in_list("blocks")
    qtbot.waitUntil(lambda: any(mark.row == 0 for mark in organiser.page.marks), timeout=5_000)
    mark = next(mark for mark in organiser.page.marks if mark.row == 0)
    place = organiser.page.room().topLeft() + mark.rect.center()
    asked: list[int] = []
    organiser.session_asked.connect(asked.append)
    QTest.mouseClick(organiser.page, Qt.MouseButton.LeftButton, pos=place.toPoint())
    dialog = next(child for child in organiser.children() if type(child).__name__ == "Behind")
    assert dialog.list.count() > 1
    QTest.keyClick(dialog.list, Qt.Key.Key_Return)
    assert asked


def test_the_coachs_lines_are_told_from_the_programs(qtbot, organiser: Organiser) -> None:
    organiser.choose_in_list("next")
    assert organiser.pane.lines.isVisible()
    assert not organiser.current().picture.own
    organiser.pane.lines.setPlainText("Easy to the wedding\nStrides twice a week\n")
    organiser.pane.lines.save()
    qtbot.waitUntil(lambda: organiser.current().picture.own, timeout=5_000)
    assert organiser.current().picture.lines == ("Easy to the wedding", "Strides twice a week")


def test_presenting_by_keys(qtbot, organiser: Organiser) -> None:
    organiser.choose_in_list("weeks")
    QTest.keyClick(organiser, Qt.Key.Key_F5)
    show = organiser.show_
    assert show.running
    wall = show.wall
    assert wall is not None
    assert show.presenter is None  # one screen: no notes anywhere
    assert show.page.key == "weeks"
    for key, place in (
        (Qt.Key.Key_Right, 2),
        (Qt.Key.Key_Space, 3),
        (Qt.Key.Key_PageUp, 2),
        (Qt.Key.Key_End, len(shown(organiser)) - 1),
        (Qt.Key.Key_Right, len(shown(organiser)) - 1),
        (Qt.Key.Key_Home, 0),
        (Qt.Key.Key_Left, 0),
    ):
        QTest.keyClick(wall, key)
        assert show.page.key == shown(organiser)[place]
    QTest.keyClicks(wall, "3")
    QTest.keyClick(wall, Qt.Key.Key_Return)
    assert show.page.key == shown(organiser)[2]
    QTest.keyClick(wall, Qt.Key.Key_B)
    assert wall.blank
    QTest.keyClick(wall, Qt.Key.Key_Right)
    assert not wall.blank
    assert show.page.key == shown(organiser)[2]
    QTest.keyClick(wall, Qt.Key.Key_Escape)
    assert not show.running
    assert organiser.current().key == shown(organiser)[2]


def test_into_a_run_and_back_to_the_same_page(qtbot, organiser: Organiser) -> None:
    organiser.choose_in_list("blocks")
    organiser.present()
    show = organiser.show_
    wall = show.wall
    QTest.keyClick(wall, Qt.Key.Key_O)
    qtbot.waitUntil(lambda: show.run is not None and show.run.page.session is not None)
    assert wall.on_run
    # A remote's keys blank a run, bring it back, and lead to the page again.
    for wanted in (True, False):
        QTest.keyClick(show.run.page, Qt.Key.Key_B)
        assert wall.blank == wanted
    QTest.keyClick(show.run.page, Qt.Key.Key_PageDown)
    assert not wall.on_run
    assert show.page.key == "blocks"
    QTest.keyClick(wall, Qt.Key.Key_O)
    qtbot.waitUntil(lambda: wall.on_run)
    show.run.page.effort_changed.emit(show.run.page.session.id, 4)
    qtbot.waitUntil(lambda: show.run.page.session.effort == 4, timeout=10_000)
    # Shaded otherwise on the wall, the page shows other numbers when one comes back to it.
    before = show.page.table.rows
    run = show.run.page.session
    show.run.page.shade_said.emit(run.id, 0.0, 1200.0, "H")
    qtbot.waitUntil(lambda: show.page.table.rows != before, timeout=20_000)
    shaded = show.page.table.rows
    # All that can be said of a run can be said here as well, a treadmill's belt too.
    show.run.page.belt_said.emit(run.id, run.elapsed_s, 4.9)
    qtbot.waitUntil(lambda: show.page.table.rows != shaded, timeout=20_000)
    QTest.keyClick(show.run.page, Qt.Key.Key_Escape)
    assert not wall.on_run
    assert show.page.key == "blocks"
    show.end()


def test_the_pointer_hides(qtbot, organiser: Organiser) -> None:
    organiser.present()
    view = organiser.show_.wall.view
    qtbot.waitUntil(lambda: view.cursor().shape() == Qt.CursorShape.BlankCursor, timeout=4_000)
    moved = QMouseEvent(
        QEvent.Type.MouseMove,
        QPointF(50.0, 60.0),
        view.mapToGlobal(QPointF(50.0, 60.0)),
        Qt.MouseButton.NoButton,
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(view, moved)
    assert view.cursor().shape() != Qt.CursorShape.BlankCursor
    organiser.show_.end()


def test_the_presenters_screen(qtbot, organiser: Organiser) -> None:
    made = Presenter()
    qtbot.addWidget(made)
    made.resize(1280, 720)
    made.show_page(organiser.review, 2, organiser.look, 1)
    made.show()
    before = Before("Season 2025", "3 October 2025", ("Easy to the wedding",))
    made.show_page(replace(organiser.review, before=before), 2, organiser.look, 1)
    told = [label.text() for label in made.findChildren(Label) if label.isVisible()]
    assert "Last review, Season 2025, written 3 October 2025" in told
    assert "Easy to the wedding" in told
    assert made.table.rowCount() == len(organiser.review.shown[2].table.rows)
    turned: list[int] = []
    made.turned.connect(turned.append)
    QTest.keyClick(made, Qt.Key.Key_Right)
    assert turned == [1]


def test_files_are_whole_or_absent(qtbot, organiser: Organiser, tmp_path: Path) -> None:
    saving, review = organiser.saving, organiser.review
    target = tmp_path / "review.pdf"
    with qtbot.waitSignal(saving.ended, timeout=20_000):
        saving.pdf(review, False, "a4", target)
    assert target.read_bytes().startswith(b"%PDF")
    kept = target.read_bytes()
    with qtbot.waitSignal(saving.ended, timeout=20_000) as told:
        saving.pdf(review, True, "a4", target)
        saving.stop()
    if "Stopped" in told.args[0]:
        assert target.read_bytes() == kept
    for name in ("page.png", "page.svg"):
        with qtbot.waitSignal(saving.ended, timeout=20_000):
            saving.picture(review, review.shown[0], organiser.look, tmp_path / name)
        assert (tmp_path / name).stat().st_size > 1_000
    for _ in range(2):  # into a folder of their own each time: nothing is written over
        with qtbot.waitSignal(saving.ended, timeout=20_000):
            saving.csv(review, tmp_path / "tables")
    folders = sorted(path.name for path in (tmp_path / "tables").iterdir())
    assert folders == [f"{review.name}, {review.runner}, tables{n}" for n in ("", " 2")]
    for name in folders:
        assert len(list((tmp_path / "tables" / name).iterdir())) == len(review.shown)
    with qtbot.waitSignal(saving.ended, timeout=20_000) as told:
        saving.pdf(review, False, "a4", tmp_path / "not there" / "review.pdf")
    assert told.args[0].startswith("Not saved")
    assert not list(tmp_path.rglob("*.part"))


def test_the_room_sees_a_click_on_a_number(organiser: Organiser) -> None:
    view = organiser.page
    assert view.row_at(QPointF(-5.0, -5.0)) is None


@pytest.mark.parametrize(
    ("width", "height", "scale"),
    [(1366, 768, 1.0), (1366, 768, 1.5), (1366, 768, 2.0), (1920, 1080, 1.0), (1000, 700, 1.0)],
)
def test_nothing_is_cut_off(
    qtbot, organiser: Organiser, width: int, height: int, scale: float
) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.apply(app, False, scale)
    qtbot.waitUntil(organiser.window().updatesEnabled)
    organiser.window().resize(width, height)
    presenter = Presenter()
    qtbot.addWidget(presenter)
    presenter.resize(max(width, 1280), max(height, 720))
    presenter.show()
    for content in organiser.review.pages:
        organiser.choose_in_list(content.key)
        qtbot.wait(20)
        assert not fit.faults(organiser), content.key
    assert not fit.nameless(organiser)
    presenter.show_page(organiser.review, 2, organiser.look, 4)
    qtbot.wait(20)
    assert not fit.faults(presenter)
    theme.apply(app, False)


def test_two_blocks_are_reviewed_side_by_side(qtbot, organiser: Organiser) -> None:
    pane = organiser.pane
    pane.scope.setCurrentIndex(pane.scope.findData("2026-04-13"))
    pane.scope.activated.emit(pane.scope.currentIndex())
    qtbot.waitUntil(lambda: organiser.review.name == "Groundwork", timeout=5_000)
    pane.beside.setCurrentIndex(pane.beside.findData("2026-08-10"))
    pane.beside.activated.emit(pane.beside.currentIndex())
    qtbot.waitUntil(lambda: organiser.review.name == "Groundwork and Specific", timeout=5_000)

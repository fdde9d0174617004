"""Nothing is cut off, lies over another or leaves the window: every page and dialog, all sizes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QApplication, QDialog, QLabel, QPushButton, QScrollArea, QWidget
from tests.ui import fit

from tercet import resources
from tercet.library.library import Library
from tercet.ui import theme
from tercet.ui.plan_dialog import PlanDialog
from tercet.ui.widgets import ElidedLabel
from tercet.ui.window import MainWindow

LOOKS = [
    pytest.param(width, height, scale, dark, id=f"{width}-{scale:g}-{'dark' if dark else 'light'}")
    for width, height, scales in ((1366, 768, (1.0, 1.5, 2.0)), (1920, 1080, (1.0,)))
    for scale in scales
    for dark in (False, True)
]


@pytest.fixture(scope="module")
def filled_store(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small store: runs, a ride, two broken files, blocks and races."""
    folder = tmp_path_factory.mktemp("fit") / "store"
    library = Library(folder)
    samples = resources.samples()
    names = ("2026-04-14-1843.fit", "2026-05-02-0845.tcx", "2026-07-23-0623.fit",
             "2026-06-27-0839.fit.gz", "2026-05-21-1815.fit", "2026-06-20-0905.gpx",
             "season.toml")  # fmt: skip
    library.take_in([samples / name for name in names])
    library.close()
    return folder


@pytest.fixture
def filled(filled_store: Path) -> Iterator[Library]:
    library = Library(filled_store)
    yield library
    library.close()


@pytest.fixture
def shown(qtbot, filled: Library) -> Iterator[Callable[..., MainWindow]]:
    """Open a window of a size and look over a store, and close it afterwards."""
    windows: list[MainWindow] = []

    def opened(width: int, height: int, scale: float, dark: bool, library: Library = filled):
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        theme.apply(app, dark, scale)
        window = MainWindow(library)
        qtbot.addWidget(window)
        windows.append(window)
        window.resize(width, height)
        with qtbot.waitSignal(window.season_shown, timeout=20_000):
            window.show()
        settle(qtbot, window)
        return window

    yield opened
    for window in windows:
        window.close()
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.apply(app, False)


def settle(qtbot, window: QWidget) -> None:
    """Let the layouts come to rest and everything be painted once."""
    for _ in range(4):
        qtbot.wait(5)
        window.grab()


def check(qtbot, window: QWidget, size: QSize | None = None) -> None:
    settle(qtbot, window)
    if size is not None:
        assert window.size() == size, "the window had to grow"
    assert not fit.faults(window)
    assert not fit.nameless(window)


@pytest.mark.parametrize(("width", "height", "scale", "dark"), LOOKS)
def test_every_page_fits(qtbot, shown, width, height, scale, dark) -> None:
    window = shown(width, height, scale, dark)
    size = QSize(width, height)
    check(qtbot, window, size)
    page = window.season_page
    if page.build_up.show_chart.isVisible():
        qtbot.mouseClick(page.build_up.show_chart, Qt.MouseButton.LeftButton)
        check(qtbot, window, size)
        qtbot.mouseClick(page.build_up.show_chart, Qt.MouseButton.LeftButton)
    window.undo_bar.say("Deleted: Ten times a thousand metres by the canal, 17 Jun")
    check(qtbot, window, size)
    bar = window.undo_bar
    assert window.foot.geometry().contains(QRect(bar.pos(), bar.size()))
    assert width / scale < 800 or bar.geometry().right() < window.foot.right.geometry().left()
    bar.say("Moved")
    counts = window.foot.left
    words = min(counts.fontMetrics().horizontalAdvance(counts.text()), counts.width())
    assert bar.geometry().right() >= counts.x() + words
    window.show_recordings(True)
    check(qtbot, window, size)
    window.show_recordings(False)
    window.show_view("session")
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page, timeout=10_000)
    check(qtbot, window, size)


@pytest.mark.parametrize(("width", "height", "scale", "dark"), LOOKS)
def test_every_dialog_fits(qtbot, shown, filled, width, height, scale, dark) -> None:
    window = shown(width, height, scale, dark)
    window.acts.edit_plan()
    plan = opened(qtbot, window, PlanDialog)
    check(qtbot, plan)
    plan.reject()


def opened(qtbot, window: QWidget, kind: type[QDialog]):
    qtbot.waitUntil(lambda: any(d.isVisible() for d in window.findChildren(kind)), timeout=10_000)
    return next(d for d in window.findChildren(kind) if d.isVisible())


@pytest.mark.parametrize(("width", "height", "scale", "dark"), LOOKS)
def test_the_empty_window_fits(qtbot, shown, tmp_path, width, height, scale, dark) -> None:
    library = Library(tmp_path / "store")
    window = shown(width, height, scale, dark, library)
    assert window.pages.currentWidget() is window.empty
    check(qtbot, window, QSize(width, height))
    assert window.focusWidget() is window.empty.choose
    window.close()
    library.close()


@pytest.mark.parametrize("scale", [1.0, 1.5, 2.0])
def test_the_strip_with_an_estimate_fits(qtbot, shown, tmp_path: Path, scale) -> None:
    library = Library(tmp_path / "store")
    library.take_in([resources.samples() / name for name in
                     ("2026-04-14-1843.fit", "2026-05-02-0845.tcx")])  # fmt: skip
    window = shown(1366, 768, scale, False, library)
    assert window.season_page.strip.isVisible()
    check(qtbot, window, QSize(1366, 768))
    window.close()
    library.close()


def test_the_check_sees_what_it_looks_for(qtbot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    holder.resize(200, 200)
    label = QLabel("far too many words for so little room", holder)
    label.setGeometry(0, 0, 60, 20)
    button = QPushButton("also too many words", holder)
    button.setGeometry(20, 10, 40, 30)
    gone = QLabel("x", holder)
    gone.setGeometry(190, 100, 40, 20)
    folded = ElidedLabel("words that give way to what stands beside them")
    folded.setParent(holder)
    folded.setGeometry(0, 60, 80, 24)
    area = QScrollArea(holder)
    area.setGeometry(0, 90, 50, 50)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    wide = QWidget()
    wide.setFixedSize(400, 20)
    area.setWidget(wide)
    holder.show()
    settle(qtbot, holder)
    assert len(list(fit.cut_off(holder))) == 2
    assert len(list(fit.overlapping(holder))) == 1
    assert len(list(fit.outside(holder))) == 1
    assert len(list(fit.sideways(holder))) == 1
    nameless = QWidget(holder)
    nameless.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    nameless.show()
    assert len(fit.nameless(holder)) >= 1
    assert folded.toolTip() == folded.text()

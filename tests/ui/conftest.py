"""A window over a store of its own, and helpers that do what hands do."""

from __future__ import annotations

import gc
import shutil
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QLocale
from PySide6.QtWidgets import QApplication

from tercet import language, resources, units
from tercet.library.library import Library
from tercet.ui import theme
from tercet.ui.loading import HEAVY
from tercet.ui.window import MainWindow


@pytest.fixture(autouse=True, scope="session")
def what_stays_is_not_collected() -> None:
    """Leave modules out of every collection between tests: they stay, and are most of it."""
    for name in HEAVY:
        import_module(name)
    gc.collect()
    gc.freeze()


@pytest.fixture(autouse=True)
def collecting_in_this_thread(what_stays_is_not_collected: None) -> Iterator[None]:
    """Delete what was closed and collect cycles between tests, here and in no other thread."""
    gc.disable()  # and not enabled again: fixtures of other scopes run threads as well
    yield
    # No loop runs that would delete closed windows; each that is left slows every new look.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()


@pytest.fixture(autouse=True)
def same_words() -> Iterator[None]:
    """Put back language, locale and units that a window may have chosen for the program."""
    before = QLocale()
    yield
    language.use(language.SOURCE)
    QLocale.setDefault(before)
    units.use("km")


@pytest.fixture
def library(tmp_path: Path) -> Iterator[Library]:
    made = Library(tmp_path / "store")
    yield made
    made.close()


#: Some sample files: runs in three formats, a pair, a ride.
SOME = (
    "2026-04-14-1843.fit",
    "2026-04-15-1806.fit",
    "2026-04-17-1831.fit",
    "2026-05-02-0845.tcx",
    "2026-05-08-1855.gpx",
    "2026-07-23-0623.fit",
    "2026-07-23-0623.gpx",
    "2026-06-27-0839.fit.gz",
    "2026-05-21-1815.fit",
    "2026-06-20-0905.gpx",
)


@pytest.fixture
def some_logs(tmp_path: Path) -> Path:
    """Those files in a folder, to be taken in."""
    folder = tmp_path / "logs"
    folder.mkdir()
    for name in SOME:
        shutil.copy(resources.samples() / name, folder / name)
    return folder


@pytest.fixture(scope="session")
def some_store(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A store that took them in; to be copied, not written to."""
    folder = tmp_path_factory.mktemp("some") / "store"
    library = Library(folder)
    library.take_in([resources.samples() / name for name in SOME])
    library.close()
    return folder


@pytest.fixture
def some_library(some_store: Path, tmp_path: Path) -> Iterator[Library]:
    """A library of one's own that holds those runs."""
    made = Library(shutil.copytree(some_store, tmp_path / "some"))
    yield made
    made.close()


@pytest.fixture
def open_window(qtbot, library: Library) -> Iterator[Callable[..., MainWindow]]:
    """Open a window over the library and wait until it shows its season or its empty page."""

    windows: list[MainWindow] = []

    def opened(over: Library = library) -> MainWindow:
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        theme.apply(app, False)
        window = MainWindow(over)
        qtbot.addWidget(window)
        windows.append(window)
        window.resize(1366, 768)
        with qtbot.waitSignal(window.season_shown, timeout=20_000):
            window.show()
        return window

    yield opened
    # Before the library closes, which is torn down after this.
    for window in windows:
        window.close()

"""Pictures of the screens, written without a display; also the README's pictures."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from PySide6.QtCore import QDeadlineTimer, QEventLoop
from PySide6.QtWidgets import QApplication

from tercet.library import season
from tercet.library.library import Library
from tercet.ui import theme
from tercet.ui.application import application
from tercet.ui.pages import PAGES
from tercet.ui.window import MainWindow

SIZES = ((1366, 768), (1920, 1080))
#: A screen that is not drawn after so long is not waited for. [ms]
PATIENCE_MS = 30_000


def write(
    library: Library,
    folder: Path,
    sizes: tuple[tuple[int, int], ...] = SIZES[:1],
    *,
    demo: bool = False,
) -> Iterator[Path]:
    """Write a picture of each screen, light and dark, and yield their paths."""
    folder.mkdir(parents=True, exist_ok=True)
    app = application()
    # Without a session there is no page of one to wait for.
    some = library.call(season.season).session_count > 0
    screens = ["season", "recordings"]
    if some:
        screens += ["session", *(entry.key for entry in PAGES)]
    for dark in (False, True):
        theme.apply(app, dark)
        window = MainWindow(library, demo=demo)
        shown: list[object] = []
        window.season_shown.connect(shown.append)
        for width, height in sizes:
            window.resize(width, height)
            window.show()
            _until(app, lambda shown=shown: bool(shown))  # type: ignore[misc]
            look = "dark" if dark else "light"
            for name in screens:
                _go(app, window, name)
                target = folder / f"{name}-{width}-{look}.png"
                # As small as PNG can be without losing anything.
                window.grab().save(str(target), quality=0)
                yield target
            window.show_view("season")
            window.show_recordings(False)
        window.close()
        window.deleteLater()
        app.processEvents()


def _go(app: QApplication, window: MainWindow, name: str) -> None:
    page = window.season_page
    if name == "session":
        # The session with the most repetitions shows the most of a page.
        view = window.view
        sessions = view.sessions if view is not None else ()
        telling = [item for item in sessions if item.repetitions and item.hr_mean is not None]
        if telling:
            window.sessions.open(max(telling, key=lambda item: item.seconds[2]).id)
        else:
            window.show_view("session")
        _until(app, lambda: window.pages.currentWidget() is window.session_page)
    elif name not in ("season", "recordings"):
        window.show_view(name)
        _until(app, lambda: window.further.current_key == name and not window.further.waiting)
    else:
        window.show_view("season")
        window.show_recordings(name == "recordings")
        _until(app, lambda: page.card.session is None or page.card.trace.shown)
    for _ in range(3):
        app.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 50)


def _until(app: QApplication, ready: Callable[[], bool]) -> None:
    deadline = QDeadlineTimer(PATIENCE_MS)
    while not ready() and not deadline.hasExpired():
        app.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 50)

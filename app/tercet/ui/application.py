"""Builds the application and the window, and runs them until the window closes."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from tercet.library.library import Library
from tercet.ui.collector import Collector
from tercet.ui.desk import Desk
from tercet.ui.icon import icon


def application() -> QApplication:
    """The one application object, named."""
    found = QApplication.instance()
    app = found if isinstance(found, QApplication) else QApplication(["tercet"])
    app.setApplicationName("Tercet")
    app.setApplicationDisplayName("Tercet")
    QGuiApplication.setDesktopFileName("tercet")
    return app


def run(library: Library, paths: Sequence[Path], *, demo: bool = False) -> int:
    """Open the window over a library; gives the exit code."""
    app = application()
    Collector(app)
    desk = Desk(library, demo=demo)
    desk.main.sheet_shown.connect(lambda: app.setWindowIcon(icon()))
    desk.main.take_in(list(paths))
    desk.main.show()
    code = app.exec()
    desk.close()
    return code

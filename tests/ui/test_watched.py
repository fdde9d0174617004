"""A watched folder in the running program: new files come in by themselves."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from PySide6.QtWidgets import QWidget

from tercet import resources
from tercet.library import watching
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui.imports_controller import Imports
from tercet.ui.watched import Watched

SAMPLES = resources.samples()


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    yield made
    made.close()


def test_new_files_come_in_by_themselves(library, tmp_path, qtbot) -> None:
    inbox = tmp_path / "inbox"
    inbox.mkdir()
    window = QWidget()
    qtbot.addWidget(window)
    imports = Imports(library, window)
    imports.set_ready()
    watched = Watched(imports, window)
    watched._timer.setInterval(50)
    with qtbot.waitSignal(watched.named, check_params_cb=lambda name: name == str(inbox)):
        watched.set_folder(str(inbox))
    with qtbot.waitSignal(imports.ended, timeout=20_000):
        shutil.copy(SAMPLES / "2026-04-15-1806.fit", inbox)
    assert len(library.call(queries.sessions)) == 1
    with qtbot.waitSignal(watched.named, check_params_cb=lambda name: name == ""):
        watched.set_folder("")
    assert library.call(watching.folder) == ""
    watched.close()
    imports.close()

"""Modules are loaded behind the window, and wait while somebody uses it."""

from __future__ import annotations

import gc
import sys

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from tercet.ui import loading
from tercet.ui.loading import Loading

#: A module of the standard library that nothing here needs.
UNUSED = "this"


@pytest.fixture(autouse=True)
def unused(capsys):
    sys.modules.pop(UNUSED, None)
    yield
    sys.modules.pop(UNUSED, None)


def test_a_module_waits_while_the_window_is_painted(qtbot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    qtbot.waitExposed(window)
    load = Loading(window, [UNUSED], spared=window)
    load.start()
    for _ in range(8):
        window.update()
        QTest.qWait(loading.REST_MS // 5)
    assert UNUSED not in sys.modules
    with qtbot.waitSignal(load.done):
        pass
    assert UNUSED in sys.modules


def test_it_does_not_wait_for_ever(qtbot, monkeypatch) -> None:
    monkeypatch.setattr(loading, "PATIENCE_S", 0.05)
    monkeypatch.setattr(loading, "REST_MS", 100_000)
    window = QWidget()
    qtbot.addWidget(window)
    load = Loading(window, [UNUSED], spared=window)
    with qtbot.waitSignal(load.done):
        load.start()
    assert UNUSED in sys.modules


def test_a_window_that_closes_does_not_wait_for_the_rest(qtbot, monkeypatch) -> None:
    monkeypatch.setattr(loading, "PATIENCE_S", 60.0)
    window = QWidget()
    qtbot.addWidget(window)
    load = Loading(window, [UNUSED], spared=window)
    load.start()
    load.wait()
    assert UNUSED not in sys.modules


def test_what_is_loaded_is_left_out_of_collections_until_the_window_closes(
    qtbot, open_window, monkeypatch
) -> None:
    monkeypatch.setattr(loading, "PATIENCE_S", 0.0)
    window = open_window()
    qtbot.waitUntil(lambda: gc.get_freeze_count() > 10_000)
    window.close()
    assert gc.get_freeze_count() == 0

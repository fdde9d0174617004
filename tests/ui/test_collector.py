"""Cycles with widgets are collected in the GUI thread, whichever thread allocates."""

from __future__ import annotations

import gc
import threading
import weakref

import pytest
from PySide6.QtWidgets import QWidget

from tercet.ui.collector import Collector


class Held(QWidget):
    """A widget in a cycle of its own, as a closed window with its lambdas is."""

    def __init__(self) -> None:
        super().__init__()
        self.me = self


@pytest.fixture
def thresholds():
    before = gc.get_threshold()
    gc.set_threshold(50, 2, 2)
    yield
    gc.set_threshold(*before)


def test_another_thread_never_collects_and_the_gui_thread_does(qtbot, thresholds) -> None:
    gc.enable()
    collector = Collector()
    assert not gc.isenabled()
    gone_in: list[str] = []
    widget = Held()
    weakref.finalize(widget, lambda: gone_in.append(threading.current_thread().name))
    del widget
    worker = threading.Thread(target=lambda: [[[] for _ in range(1000)] for _ in range(200)])
    worker.start()
    worker.join()
    assert gone_in == []

    def gone() -> bool:
        cycles = [[] for _ in range(2000)]
        collector.collect()
        return bool(cycles) and bool(gone_in)

    qtbot.waitUntil(gone, timeout=5_000)
    assert gone_in == [threading.main_thread().name]

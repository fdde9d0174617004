"""Shared by all tests: no screen, no network, no thread left over, no folder of the user's."""

from __future__ import annotations

import os
import socket
import sys
import threading
import time
from collections.abc import Iterator
from typing import Any

import hypothesis
import pytest

# What a busy machine takes for one example says nothing of the program.
hypothesis.settings.register_profile("unhurried", deadline=None)
hypothesis.settings.load_profile("unhurried")
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

#: A thread that ends by itself is given this long. [s]
PATIENCE_S = 5.0


@pytest.fixture(autouse=True, scope="session")
def nothing_of_the_users(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Point every folder that the program may choose by itself to one of the tests'."""
    home = tmp_path_factory.mktemp("home")
    with pytest.MonkeyPatch.context() as patch:
        for name in ("TERCET_STORE", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "APPDATA", "LOCALAPPDATA"):
            patch.setenv(name, str(home / name.lower()))
        yield


@pytest.fixture(autouse=True)
def refused_connections(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[Any]]:
    """Fail a test that opens a connection to anywhere, even if the attempt was swallowed."""
    refused: list[Any] = []

    def guarded(name: str) -> None:
        connect = getattr(socket.socket, name)

        def refuse(self: socket.socket, address: Any) -> Any:
            if self.family == getattr(socket, "AF_UNIX", None):
                return connect(self, address)
            refused.append(address)
            raise OSError(f"the tests run without a network: {address}")

        monkeypatch.setattr(socket.socket, name, refuse)

    guarded("connect")
    guarded("connect_ex")
    yield refused
    assert not refused, f"tried to connect to {refused}"


@pytest.fixture(autouse=True)
def no_thread_left(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Fail a test after which a thread of ours, a non-daemon thread or a QThread still runs."""
    before = set(threading.enumerate())
    qt_threads = _watch_qt_threads(monkeypatch)
    yield
    deadline = time.monotonic() + PATIENCE_S
    left = [
        thread
        for thread in threading.enumerate()
        if thread not in before and (not thread.daemon or thread.name.startswith("tercet"))
    ]
    for thread in left:
        thread.join(max(0.0, deadline - time.monotonic()))
    names = [thread.name for thread in left if thread.is_alive()]
    names += [repr(thread) for thread in qt_threads if _runs(thread, deadline)]
    assert not names, f"threads left running: {names}"


def _watch_qt_threads(monkeypatch: pytest.MonkeyPatch) -> list[Any]:
    """Collect the QThreads that are started from here on; none where Qt is not loaded."""
    started: list[Any] = []
    core = sys.modules.get("PySide6.QtCore")
    if core is not None:
        start = core.QThread.start

        def watched(thread: Any, *priority: Any) -> None:
            started.append(thread)
            start(thread, *priority)

        monkeypatch.setattr(core.QThread, "start", watched)
    return started


def _runs(thread: Any, deadline: float) -> bool:
    import shiboken6

    if not shiboken6.isValid(thread) or not thread.isRunning():
        return False
    return not thread.wait(int(1000 * max(0.0, deadline - time.monotonic())))

"""The guards that watch every test do bite: seen on a suite that breaks each of them."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

BAD_SUITE = """
import contextlib, socket, threading, time
from PySide6.QtCore import QThread

def test_swallows_a_refused_connection():
    with contextlib.suppress(OSError):
        socket.create_connection(("127.0.0.1", 9), timeout=1)

def test_leaves_a_thread():
    threading.Thread(target=time.sleep, args=(1.5,)).start()

def test_leaves_a_daemon_of_ours():
    threading.Thread(target=time.sleep, args=(1.5,), name="tercet-job", daemon=True).start()

class Slow(QThread):
    def run(self):
        time.sleep(1.5)

kept = Slow()

def test_leaves_a_qt_thread():
    kept.start()

def test_behaves():
    with socket.socketpair()[0]:
        pass
    ended = threading.Thread(target=time.sleep, args=(0.05,))
    ended.start()
"""


def test_connections_are_refused(refused_connections: list[Any]) -> None:
    with (
        socket.socket(socket.AF_INET) as plug,
        pytest.raises(OSError, match="without a network"),
    ):
        plug.connect(("127.0.0.1", 9))
    assert refused_connections == [("127.0.0.1", 9)]
    refused_connections.clear()


def test_each_guard_fails_its_test(tmp_path: Path) -> None:
    conftest = Path(__file__).parents[1] / "conftest.py"
    text = conftest.read_text("utf-8")
    assert "PATIENCE_S = 5.0" in text
    (tmp_path / "conftest.py").write_text(text.replace("PATIENCE_S = 5.0", "PATIENCE_S = 0.3"))
    (tmp_path / "pytest.ini").write_text("[pytest]\n")
    (tmp_path / "test_bad.py").write_text(BAD_SUITE)
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-p", "no:randomly", "-p", "no:cacheprovider", "-q"],
        cwd=tmp_path, env={**os.environ, "COLUMNS": "200"}, capture_output=True, text=True,
        timeout=60, check=False,
    )  # fmt: skip
    errors = [line for line in done.stdout.splitlines() if line.startswith("ERROR test_bad.py")]
    for name, words in (
        ("swallows_a_refused_connection", "tried to connect"),
        ("leaves_a_thread", "threads left running"),
        ("leaves_a_daemon_of_ours", "threads left running"),
        ("leaves_a_qt_thread", "threads left running"),
    ):
        assert any(name in line and words in line for line in errors), done.stdout
    assert len(errors) == 4, done.stdout
    assert done.returncode == 1

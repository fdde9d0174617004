"""One opener at a time: the second is told at once, and a lock never outlives its process."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tercet.store.database import Store
from tercet.store.errors import StoreBusy

HOLDER = """
import sys, time
from pathlib import Path
from tercet.store.database import Store
store = Store(Path(sys.argv[1]))
print("open", flush=True)
time.sleep(60)
"""


@pytest.fixture
def holder(tmp_path: Path):
    """Another process that has the store open."""
    app = str(Path(__file__).parents[2] / "app")
    process = subprocess.Popen(
        [sys.executable, "-c", HOLDER, str(tmp_path / "store")],
        env={**os.environ, "PYTHONPATH": app}, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    with process:
        assert process.stdout is not None and process.stdout.readline() == "open\n"
        yield process
        process.kill()


def test_a_second_opener_is_told_who_holds_it_within_two_seconds(holder, tmp_path: Path) -> None:
    before = time.monotonic()
    with pytest.raises(StoreBusy, match=rf"already open in another window .*{holder.pid}"):
        Store(tmp_path / "store")
    assert time.monotonic() - before < 2.0


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_second_way_to_the_same_folder_is_no_way_round(holder, tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(tmp_path / "store")
    with pytest.raises(StoreBusy):
        Store(tmp_path / "link")


def test_the_lock_of_a_killed_process_is_no_obstacle(holder, tmp_path: Path) -> None:
    holder.kill()
    holder.wait()
    assert (tmp_path / "store" / "tercet.lock").read_text() == str(holder.pid)
    Store(tmp_path / "store").close()


def test_a_lock_file_that_lies_about_is_no_obstacle(tmp_path: Path) -> None:
    (tmp_path / "tercet.lock").write_text("99999999999999999999 and more that is no number")
    store = Store(tmp_path)
    assert (tmp_path / "tercet.lock").read_text() == str(os.getpid())
    store.close()


def test_closing_lets_go(tmp_path: Path) -> None:
    for _ in range(3):
        Store(tmp_path).close()


def test_a_store_that_failed_to_open_lets_go(tmp_path: Path) -> None:
    (tmp_path / "tercet.db").write_bytes(b"no database, but a text that is long enough" * 99)
    with pytest.raises(Exception, match="damaged"):
        Store(tmp_path)
    (tmp_path / "tercet.db").unlink()
    Store(tmp_path).close()

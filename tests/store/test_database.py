"""Opening a store, whatever state its folder is in, and writing to it by steps."""

from __future__ import annotations

import hashlib
import os
import random
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tercet.store.database import STEPS_KEPT, Store
from tercet.store.errors import StoreError
from tercet.store.schema import MIGRATIONS

APP = str(Path(__file__).parents[2] / "app")
posix = pytest.mark.skipif(sys.platform == "win32", reason="rights and limits are POSIX's")


def put(store: Store, name: str, value: str, step: str = "step", token: object = None) -> None:
    with store.atomic(step, token):
        store.put("setting", {"name": name, "value": value})


def settings(store: Store) -> dict[str, str]:
    return {row["name"]: row["value"] for row in store.rows("SELECT name, value FROM setting")}


# Opening ---------------------------------------------------------------------------------


def test_a_new_store_is_empty_and_of_this_version(store: Store, dump: Callable) -> None:
    assert not any(dump(store).values())
    assert store.rows("PRAGMA user_version")[0][0] == len(MIGRATIONS)
    assert store.rows("PRAGMA synchronous")[0][0] == 2  # FULL
    assert store.rows("PRAGMA journal_mode")[0][0] == "delete"


def test_what_was_saved_is_there_again(tmp_path: Path) -> None:
    store = Store(tmp_path)
    put(store, "runner", "Ines")
    store.close()
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "originals", "tercet.db", "tercet.lock",
    ]  # fmt: skip
    store = Store(tmp_path)
    assert settings(store) == {"runner": "Ines"}
    store.close()


@pytest.mark.parametrize("journal", ["DELETE", "WAL"])
def test_a_newer_store_is_refused_and_not_touched(tmp_path: Path, journal: str) -> None:
    path = tmp_path / "tercet.db"
    newer = sqlite3.connect(path)
    newer.execute(f"PRAGMA journal_mode = {journal}")
    newer.execute("CREATE TABLE unheard_of (x)")
    newer.execute(f"PRAGMA user_version = {len(MIGRATIONS) + 1}")
    newer.commit()
    newer.close()
    before = hashlib.sha256(path.read_bytes()).hexdigest()
    with pytest.raises(StoreError, match=r"newer version of Tercet.*nothing was changed"):
        Store(tmp_path)
    assert hashlib.sha256(path.read_bytes()).hexdigest() == before


def filled(folder: Path) -> bytes:
    """Bytes of a closed store's file with a few hundred rows."""
    store = Store(folder)
    with store.atomic("fill"):
        for k in range(300):
            store.put("setting", {"name": f"setting {k}", "value": "x" * k})
    store.close()
    return (folder / "tercet.db").read_bytes()


def test_a_damaged_store_is_told_in_words_and_says_where_the_originals_are(tmp_path: Path) -> None:
    data = filled(tmp_path)
    for damaged in (
        bytes(4096) + data[4096:],  # the first page wiped
        data[:20_000],  # cut short
        b"not a database at all, whatever its name says" * 100,
        data[:8192] + bytes(8192) + data[16_384:],
    ):
        (tmp_path / "tercet.db").write_bytes(damaged)
        with pytest.raises(StoreError, match=r"damaged or not a store.*originals"):
            Store(tmp_path)


def test_one_changed_byte_never_ends_in_a_crash(tmp_path: Path) -> None:
    data = filled(tmp_path)
    chance = random.Random(20260413)
    for _ in range(60):
        at = chance.randrange(len(data))
        changed = data[:at] + bytes([data[at] ^ (1 << chance.randrange(8))]) + data[at + 1 :]
        (tmp_path / "tercet.db").write_bytes(changed)
        try:
            store = Store(tmp_path)
        except StoreError as error:
            assert str(tmp_path) in str(error)
            continue
        # it lay in a value or in free space: the store is still one, or says that a text broke
        try:
            assert len(settings(store)) >= 290
        except StoreError as error:
            assert "UTF-8" in str(error)
        finally:
            store.close()


def test_a_folder_where_the_file_should_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "tercet.db").mkdir()
    with pytest.raises(StoreError, match="cannot be opened"):
        Store(tmp_path)


def test_a_file_where_the_folder_should_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "store").write_text("in the way")
    with pytest.raises(StoreError, match="cannot be made"):
        Store(tmp_path / "store")


UNPRIVILEGED = """
import os, sys
from pathlib import Path
from tercet.library.library import Library
from tercet.store.errors import StoreError
if os.geteuid() == 0:
    os.setuid(65534)  # rights do not bind root
try:
    Library(Path(sys.argv[1])).close()
except StoreError as error:
    print(error)
"""


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that other users may enter; pytest's own may not be."""
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o755)
    yield folder
    folder.chmod(0o755)
    shutil.rmtree(folder)


def unprivileged(folder: Path) -> str:
    done = subprocess.run(
        [sys.executable, "-c", UNPRIVILEGED, str(folder)],
        env={**os.environ, "PYTHONPATH": APP}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.stderr == "" and done.returncode == 0
    return done.stdout


@posix
def test_a_folder_that_may_not_be_written_is_told(open_folder: Path) -> None:
    open_folder.chmod(0o555)
    said = unprivileged(open_folder)
    assert "cannot be written: Permission denied" in said and str(open_folder) in said
    assert "cannot be made: Permission denied" in unprivileged(open_folder / "below")


@posix
def test_a_file_that_may_not_be_written_is_told_or_can_be_read(open_folder: Path) -> None:
    Store(open_folder).close()
    for path in open_folder.rglob("*"):
        path.chmod(0o555 if path.is_dir() else 0o444)
    assert "cannot be written: Permission denied" in unprivileged(open_folder)
    (open_folder / "tercet.lock").chmod(0o666)
    assert unprivileged(open_folder) == ""  # opens, for there is nothing to write yet


# A full disk -----------------------------------------------------------------------------

FULL_DISK = """
import resource, sys
from pathlib import Path
from tercet.store.database import Store
from tercet.store.errors import StoreError

folder = Path(sys.argv[1])
store = Store(folder)
with store.atomic("first"):
    store.put("setting", {"name": "kept", "value": "yes"})
with store.atomic("second"):
    store.put("setting", {"name": "undone", "value": "x" * 100_000})
store.undo()
size = (folder / "tercet.db").stat().st_size
resource.setrlimit(resource.RLIMIT_FSIZE, (size + int(sys.argv[2]), resource.RLIM_INFINITY))
failed = 0
try:
    with store.atomic("third"):
        for k in range(40):
            store.put("setting", {"name": f"new {k}", "value": "x" * 100_000})
except StoreError as error:
    print(error)
    failed += 1
try:
    store.originals.keep("ab" * 32, bytes(2 * size + 5_000_000))
except StoreError as error:
    print(error)
    failed += 1
for replay in (store.redo, store.undo):
    try:
        replay()
    except StoreError as error:
        assert "Nothing was saved" in str(error)
assert failed == 2
kept = store.rows("SELECT value FROM setting WHERE name = 'kept'")
assert [row["value"] for row in kept] == ["yes"]
assert not store.rows("SELECT * FROM setting WHERE name LIKE 'new%'")
store.close()
store = Store(folder)  # a full disk does not keep it shut
store.purge()
resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
with store.atomic("fourth"):
    store.put("setting", {"name": "room again", "value": "yes"})
store.close()
"""


@posix
@pytest.mark.parametrize("room", [0, 60_000, 1_500_000])
def test_a_full_disk_is_told_and_loses_nothing(tmp_path: Path, room: int) -> None:
    done = subprocess.run(
        [sys.executable, "-c", FULL_DISK, str(tmp_path), str(room)],
        env={**os.environ, "PYTHONPATH": APP}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "Nothing was saved" in done.stdout and "could not be kept" in done.stdout
    store = Store(tmp_path)
    assert settings(store)["kept"] == settings(store)["room again"] == "yes"
    assert not list((tmp_path / "originals").rglob("*.part"))
    store.close()


# Writing ---------------------------------------------------------------------------------


def test_a_write_outside_a_step_raises(store: Store) -> None:
    with pytest.raises(RuntimeError, match="open step"):
        store.put("setting", {"name": "a", "value": "b"})
    with pytest.raises(RuntimeError, match="open step"):
        store.remove("setting", "a")
    with pytest.raises(RuntimeError, match="open step"):
        store.put_streams("ab", 0, {"time": b"x"})
    assert settings(store) == {}


def test_a_step_within_a_step_raises_and_spoils_nothing(store: Store) -> None:
    with pytest.raises(RuntimeError, match="already open"), store.atomic("outer"):
        store.put("setting", {"name": "a", "value": "b"})
        with store.atomic("inner"):
            pass
    assert settings(store) == {} and store.undo_name is None
    put(store, "a", "c")
    assert settings(store) == {"a": "c"}


def test_a_step_that_fails_leaves_no_trace(store: Store) -> None:
    put(store, "a", "1", "before")
    with pytest.raises(ZeroDivisionError), store.atomic("fails"):
        store.put("setting", {"name": "a", "value": "2"})
        store.put_streams("ab", 0, {"time": b"x"})
        raise ZeroDivisionError
    assert settings(store) == {"a": "1"}
    assert not store.rows("SELECT * FROM stream")
    assert store.undo_name == "before"


def test_a_step_that_changes_nothing_is_no_step(store: Store) -> None:
    put(store, "a", "1", "first")
    store.undo()
    put(store, "b", "1", "second")
    with store.atomic("nothing"):
        store.remove("setting", "never there")
        store.put("setting", {"name": "b", "value": "1"})
    assert store.undo_name == "second"


def test_a_step_is_one_transaction(tmp_path: Path, store: Store) -> None:
    with store.atomic("two"):
        store.put("setting", {"name": "a", "value": "1"})
        other = sqlite3.connect(tmp_path / "store" / "tercet.db")
        assert other.execute("SELECT COUNT(*) FROM setting").fetchone() == (0,)
        other.close()
        store.put("setting", {"name": "b", "value": "1"})
    other = sqlite3.connect(tmp_path / "store" / "tercet.db")
    assert other.execute("SELECT COUNT(*) FROM setting").fetchone() == (2,)
    other.close()


def test_only_so_many_steps_can_be_taken_back(store: Store) -> None:
    for k in range(STEPS_KEPT + 5):
        put(store, "count", str(k), f"step {k}")
    taken = 0
    while store.undo() is not None:
        taken += 1
    assert taken == STEPS_KEPT == 30
    assert settings(store) == {"count": "4"}


def test_steps_with_one_token_are_one_step(store: Store) -> None:
    token = object()
    put(store, "a", "1", "import", token)
    put(store, "b", "1", "import", token)
    put(store, "a", "2", "import", token)
    put(store, "c", "1", "other", object())
    assert store.undo_name == "other"
    store.undo()
    assert store.undo_name == "import"
    store.undo()
    assert settings(store) == {} and store.undo_name is None
    store.redo()
    assert settings(store) == {"a": "2", "b": "1"}


def test_steps_without_a_token_stay_apart(store: Store) -> None:
    put(store, "a", "1")
    put(store, "b", "1")
    store.undo()
    assert settings(store) == {"a": "1"}


def test_a_new_step_ends_what_could_be_redone(store: Store) -> None:
    put(store, "a", "1", "first")
    store.undo()
    assert store.redo_name == "first"
    put(store, "b", "1", "second")
    assert store.redo_name is None and store.redo() is None


def test_a_partial_row_keeps_the_rest(store: Store) -> None:
    with store.atomic("new"):
        number = store.put("race", {"id": None, "day": "2026-07-26", "name": "Harbour 10"})
    with store.atomic("rename"):
        store.put("race", {"id": number, "name": "Harbour Ten"})
    row = store.rows("SELECT * FROM race")[0]
    assert (row["id"], row["day"], row["name"]) == (number, "2026-07-26", "Harbour Ten")


def test_what_redo_brings_back_keeps_its_number(store: Store) -> None:
    with store.atomic("new"):
        number = store.put("race", {"id": None, "day": "2026-07-26", "name": "Harbour 10"})
    store.undo()
    assert not store.rows("SELECT * FROM race")
    store.redo()
    assert [row["id"] for row in store.rows("SELECT id FROM race")] == [number]


# Deleting for good -----------------------------------------------------------------------

FILE = {"name": "a.fit", "folder": "", "size": 1, "format": "FIT", "problem": "", "taken_in": ""}


def test_purging_removes_what_was_deleted_and_no_other(store: Store) -> None:
    kept, gone, unknown = "aa" * 32, "bb" * 32, "cc" * 32
    for name in (kept, gone, unknown):
        store.originals.keep(name, name.encode())
    with store.atomic("take in"):
        for name in (kept, gone):
            store.put("file", {"sha256": name, "status": "run", **FILE})
            store.put_streams(name, 0, {"time": b"x", "speed": b"y"})
    with store.atomic("delete"):
        store.remove("file", gone)
    store.purge()
    assert store.originals.path(kept).exists() and not store.originals.path(gone).exists()
    assert {row["sha256"] for row in store.rows("SELECT sha256 FROM stream")} == {kept}
    # a database may be a new one in place of a damaged one: what it never knew is not its to delete
    assert store.originals.path(unknown).exists()


def test_a_backup_is_a_store_of_its_own(store: Store, tmp_path: Path) -> None:
    put(store, "a", "1")
    (tmp_path / "copy").mkdir()
    store.back_up(tmp_path / "copy" / "tercet.db")
    put(store, "a", "2")
    copy = Store(tmp_path / "copy")
    assert settings(copy) == {"a": "1"}
    copy.close()

"""An import that is killed: the store opens, every run is whole or absent, nothing is lost."""

from __future__ import annotations

import json
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tercet import resources
from tercet.library import season
from tercet.library.library import Library
from tercet.store import packing, queries
from tercet.store.database import Store
from tercet.store.originals import sha256

KILLS = 20
FILES = 28
#: Every so many kills the files are read by worker processes, whose start takes a while.
WITH_WORKERS = 5
CHILD = """
import sys
from pathlib import Path

if __name__ == "__main__":
    from tercet.library import importing
    from tercet.library.library import Library
    importing.FEW_FILES = int(sys.argv[3])
    library = Library(Path(sys.argv[1]))
    print("begins", flush=True)
    library.take_in([Path(sys.argv[2])], lambda progress: print(progress.done, flush=True))
    print("ended", flush=True)
    library.close()
"""

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(sys.platform == "win32", reason="kill -9 is POSIX's"),
]


@pytest.fixture(scope="module")
def logs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The season file, every format, the run that is there twice, and the shortest runs."""
    folder = tmp_path_factory.mktemp("kill") / "logs"
    folder.mkdir()
    by_size = sorted(resources.samples().iterdir(), key=lambda path: path.stat().st_size)
    twice = [path for path in by_size if path.name.startswith("2026-07-23-0623")]
    for path in [*by_size[: FILES - len(twice)], *twice]:
        shutil.copy(path, folder / path.name)
    assert len({path.suffix for path in folder.iterdir()}) >= 5
    return folder


@pytest.fixture(scope="module")
def child(tmp_path_factory: pytest.TempPathFactory) -> Path:
    script = tmp_path_factory.mktemp("child") / "child.py"
    script.write_text(CHILD)
    return script


def start(child: Path, store: Path, logs: Path, workers: bool) -> subprocess.Popen[str]:
    """Start an import in a process of its own and come back when it begins to read."""
    app = str(Path(__file__).parents[2] / "app")
    process = subprocess.Popen(
        [sys.executable, str(child), str(store), str(logs), "1" if workers else "1000"],
        env={**os.environ, "PYTHONPATH": app}, stdout=subprocess.PIPE, text=True,
        stderr=subprocess.DEVNULL, start_new_session=True,
    )  # fmt: skip
    assert process.stdout is not None and process.stdout.readline() == "begins\n"
    return process


def seen(library: Library) -> list[tuple[object, ...]]:
    """What a season is, apart from row numbers and the time of the import."""
    view = library.call(season.season)
    runs = sorted(
        (s.start, s.sport, s.seconds, s.metres, s.elapsed_s, s.name) for s in view.sessions
    )
    blocks = [(b.name, b.start, b.end, b.seconds, b.metres, b.easy_share) for b in view.blocks]
    return [*blocks, *runs, *sorted(library.call(queries.counts).items())]


def check_whole(store: Store) -> int:
    """Every run that is there is whole; gives how many there are."""
    assert store.rows("PRAGMA integrity_check")[0][0] == "ok"
    rows = store.rows("SELECT * FROM run")
    for row in rows:
        judged = queries.judgement(store, row["id"])
        assert judged is not None
        packed = queries.streams(store, row["sha256"], row["part"])
        if row["notation"]:  # from paper: its words are all there is
            assert packed == {}
        else:
            clock, streams = packing.unpack_streams(packed)
            assert len(clock) == row["records"]
            assert streams.keys() == set(row["channels"].split())
        shades = packing.unpack_shades(judged["shades"])
        assert sum(judged[name] for name in queries.SECONDS) == pytest.approx(row["elapsed_s"])
        assert len(shades) - 1 < row["elapsed_s"] <= len(shades)
        assert json.loads(row["laps"]) is not None
        file = queries.file(store, row["sha256"])
        assert file is not None
    assert len({(row["sha256"], row["part"]) for row in rows}) == len(rows)
    for name in queries.known_files(store):
        assert sha256(store.originals.read(name)) == name
    # no judgement, attachment or thresholds without what they belong to
    assert not store.rows("SELECT 1 FROM judgement WHERE run_id NOT IN (SELECT id FROM run)")
    assert not store.rows("SELECT 1 FROM attachment WHERE run_id NOT IN (SELECT id FROM run)")
    assert not store.rows(
        "SELECT 1 FROM judgement WHERE threshold_id NOT IN (SELECT id FROM threshold)"
    )
    return len(rows)


def test_a_killed_import_is_finished_by_the_next(tmp_path: Path, logs: Path, child: Path) -> None:
    undisturbed = start(child, tmp_path / "undisturbed", logs, workers=True)
    assert undisturbed.communicate()[0].endswith("ended\n")
    library = Library(tmp_path / "undisturbed")
    want, every = seen(library), library.call(check_whole)
    library.close()

    chance = random.Random(20260413)
    found = []
    for k in range(KILLS):
        folder = tmp_path / f"store-{k}"
        # A moment is told by how far the import has come, so that a busy computer shifts none.
        read, delay = chance.randrange(FILES), chance.uniform(0.0, 0.1)
        with start(child, folder, logs, workers=k % WITH_WORKERS == 0) as process:
            assert process.stdout is not None
            assert not read or f"{read}\n" in process.stdout  # reads on until it comes
            time.sleep(delay)
            process.send_signal(signal.SIGKILL)
        library = Library(folder)
        try:
            found.append(library.call(check_whole))
            library.take_in([logs])
            assert seen(library) == want
            assert library.call(check_whole) == every
        finally:
            library.close()
        shutil.rmtree(folder)
    # they did fall before the first batch was saved, between batches, and near the end
    assert min(found) < every / 3 < max(found)
    assert len({count for count in found if 0 < count < every}) >= 2


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="reads Linux's list of processes")
def test_a_killed_import_leaves_no_worker_behind(tmp_path: Path, logs: Path, child: Path) -> None:
    with start(child, tmp_path / "store", logs, workers=True) as process:
        deadline = time.monotonic() + 20
        while len(session_of(process.pid)) < 3 and time.monotonic() < deadline:
            time.sleep(0.05)
        assert len(session_of(process.pid)) >= 3  # itself and its workers
        process.send_signal(signal.SIGKILL)
    deadline = time.monotonic() + 20
    while session_of(process.pid) and time.monotonic() < deadline:
        time.sleep(0.05)
    assert session_of(process.pid) == []


def session_of(leader: int) -> list[int]:
    """Processes of a session that still run."""
    out = []
    for entry in Path("/proc").iterdir():
        if not entry.name.isdigit():
            continue
        try:
            fields = (entry / "stat").read_text().rpartition(")")[2].split()
        except OSError:
            continue  # it ended while we looked
        if int(fields[3]) == leader and fields[0] != "Z":
            out.append(int(entry.name))
    return out

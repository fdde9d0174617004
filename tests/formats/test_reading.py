"""Any bytes, any path: recordings or a plain reason, never an exception."""

import gzip
import io
import os
import random
import socket
import time
import zipfile
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.formats.build import run_fit, run_gpx, run_tcx

import tercet.formats as formats
from tercet.domain import Failed, Recording
from tercet.formats import read_bytes, read_path
from tercet.formats.paper import Page
from tercet.formats.table import Table

RUNS = (
    b"Date;Start;Distance (km);Time;HR;Kind;Note\n"
    b"09.06.2026;18:05;8,05;0:45:10;141;easy;warm\n"
    b"10.06.2026;07:10;12,4;1:08:31;150;steady;\n"
    b'12.06.2026;;6,1;0:36:00;;;legs "heavy"\n'
)
SAMPLES = b"timestamp,heart_rate,speed (m/s),lat,lon\n" + b"".join(
    b"2026-06-09T18:05:%02dZ,%d,%.2f,43.1,-2.%d\n" % (k, 120 + k, 2.8 + k / 50, k)
    for k in range(10, 40)
)
SEEDS = {
    "fit": bytes(run_fit(12)),
    "gpx": run_gpx(5),
    "tcx": run_tcx(4),
    "runs": RUNS,
    "samples": SAMPLES,
    "gz": gzip.compress(run_gpx(30), mtime=0),
}
DIARY = (
    b"2026\nTue 9 June am: 15 min easy, 10 x 100 m fast / 100 m jog, 800 m jog\n"
    b"Wed 10 June: 12 km steady\nFri 12 June pm: 40 min easy # with Bea\n"
)


def workbook():
    """The runs as a spreadsheet, the same bytes every time."""
    book, made, same = openpyxl.Workbook(), io.BytesIO(), io.BytesIO()
    for line in RUNS.decode().splitlines():
        book.active.append(line.replace(",", ".").split(";"))
    book.save(made)
    with zipfile.ZipFile(made) as parts, zipfile.ZipFile(same, "w") as out:
        for name in parts.namelist():
            if not name.startswith("docProps"):  # which holds the time of saving
                out.writestr(zipfile.ZipInfo(name), parts.read(name), zipfile.ZIP_DEFLATED)
    return same.getvalue()


#: Files to be damaged, and how many of each in every run of the tests.
DAMAGED, OF_EACH = {**SEEDS, "paper": DIARY, "xlsx": workbook()}, 3_000


@pytest.fixture(autouse=True)
def no_network(monkeypatch):
    def refuse(*_):
        raise AssertionError("a reader opened a socket")

    monkeypatch.setattr(socket.socket, "connect", refuse)


def check(result):
    if isinstance(result, Table):
        assert result.runs
        for run in result.runs:
            assert run.seconds is None or 0 < run.seconds < 1e6, run
            assert run.metres is None or 0 < run.metres < 1e6, run
    elif isinstance(result, Page):
        assert result.runs  # a table may be damaged so that its lines begin like a diary's
    elif isinstance(result, Failed):
        assert result.status in ("refused", "passed over")
        assert result.reason.endswith((".", ".)", "?")) and "Error" not in result.reason, result
    else:
        assert result and all(isinstance(run, Recording) and run.records for run in result)


def mutated(seed, chance):
    data = bytearray(seed)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(data) or 1)
        match chance.randrange(5):
            case 0:
                del data[at:]
            case 1:
                del data[at : at + chance.randint(1, 16)]
            case 2:
                data[at:at] = chance.randbytes(chance.randint(1, 16))
            case 3:
                data[at : at + 1] = bytes([1 << chance.randrange(8) ^ (data[at] if data else 0)])
            case 4:
                data[at : at + chance.randint(1, 16)] = chance.randbytes(chance.randint(1, 16))
    return bytes(data)


@pytest.mark.parametrize("name", DAMAGED)
def test_mutated_files_never_raise_and_never_hang(name):
    chance = random.Random(20_260_301)
    slowest = 0.0
    for _ in range(OF_EACH):
        data = mutated(DAMAGED[name], chance)
        began = time.perf_counter()
        check(read_bytes(data))
        slowest = max(slowest, time.perf_counter() - began)
    assert slowest < 2.0


@settings(max_examples=200, deadline=None)
@given(st.sampled_from([b"", SEEDS["fit"][:14], b"<gpx>", b"\x1f\x8b"]), st.binary(max_size=200))
def test_any_bytes(head, rest):
    check(read_bytes(head + rest))


def test_an_error_nobody_thought_of_is_told_not_raised(monkeypatch):
    def broken(*_):
        raise ZeroDivisionError("oh")

    monkeypatch.setattr(formats, "read_fit", broken)
    failed = read_bytes(SEEDS["fit"])
    assert isinstance(failed, Failed) and "ZeroDivisionError: oh" in failed.reason


def test_what_a_file_is_does_not_depend_on_its_name(tmp_path):
    for name, data in SEEDS.items():
        path = tmp_path / f"{name}.txt"
        path.write_bytes(data)
        if name == "runs":
            assert read_path(path) == read_bytes(data)
            continue
        (run,) = read_path(path)
        assert run.records >= 4
        (same,) = read_path(str(path))
        assert same.records == run.records


@pytest.mark.parametrize("name", ["Läufe – 🏃.fit", "line\nbreak.fit", "مسار.fit", "a" * 250])
def test_odd_names(tmp_path, name):
    path = tmp_path / name
    path.write_bytes(SEEDS["fit"])
    assert read_path(path)[0].records == 12


def test_a_name_that_is_no_text(tmp_path):
    path = tmp_path / os.fsdecode(b"\xff\xfe.fit")
    path.write_bytes(SEEDS["fit"])
    assert read_path(path)[0].records == 12


def test_paths_that_are_no_file(tmp_path):
    folder = tmp_path / "x.fit"
    folder.mkdir()
    empty = tmp_path / "empty.fit"
    empty.touch()
    loop = tmp_path / "loop.fit"
    loop.symlink_to(loop)
    pipe = tmp_path / "pipe.fit"
    os.mkfifo(pipe)
    for path, word in (
        (folder, "folder"),
        (empty, "empty"),
        (tmp_path / "none.fit", "no such file"),
        (loop, "cannot be opened"),
        (pipe, "not an ordinary file"),
        ("nul\x00.fit", "cannot be opened"),
        (tmp_path / ("a" * 300), "cannot be opened"),
    ):
        failed = read_path(path)
        assert isinstance(failed, Failed) and word in failed.reason, failed


def test_a_file_without_permission(tmp_path, monkeypatch):
    path = tmp_path / "run.fit"
    path.write_bytes(SEEDS["fit"])

    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    # the tests may run as a user who may read everything
    monkeypatch.setattr(Path, "open", refuse)
    failed = read_path(path)
    assert isinstance(failed, Failed) and "permission" in failed.reason


def test_a_huge_file_is_not_even_opened(tmp_path):
    path = tmp_path / "run.fit"
    with path.open("wb") as file:
        file.truncate(600 * 1024 * 1024)  # sparse
    failed = read_path(path)
    assert isinstance(failed, Failed) and "larger than 512 MB" in failed.reason


def test_a_name_is_given_to_recordings_without_one():
    assert read_bytes(SEEDS["fit"], "Tuesday")[0].name == "Tuesday"
    assert read_bytes(SEEDS["gpx"], "Tuesday")[0].name == "Long run"

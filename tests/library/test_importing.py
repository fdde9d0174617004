"""Finding files, and running many calls with few in flight."""

from __future__ import annotations

import os
import struct
import sys
import time
import zipfile
from collections.abc import Iterator
from concurrent.futures.process import BrokenProcessPool
from multiprocessing.connection import Connection
from pathlib import Path
from threading import Event, Thread

import pytest

from tercet.library import importing, reading, sources
from tercet.library.importing import Progress, Report, in_order_of_ending
from tercet.library.intake import Taken
from tercet.library.reading import Terms
from tercet.library.sources import Source, find_files, opened_up


def make(folder: Path, *names: str) -> None:
    for name in names:
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(name.encode())


# Finding ---------------------------------------------------------------------------------


def test_a_folder_is_searched_in_the_order_of_names(tmp_path: Path) -> None:
    make(tmp_path, "b.fit", "a.gpx", "2026/may/x.tcx", "2026/april/y.fit", "c")
    found = [path.relative_to(tmp_path).as_posix() for path in find_files([tmp_path])]
    assert found == ["2026/april/y.fit", "2026/may/x.tcx", "a.gpx", "b.fit", "c"]


def test_hidden_files_and_folders_are_left_out(tmp_path: Path) -> None:
    make(tmp_path, "a.fit", ".hidden.fit", ".Trash/b.fit", "seen/.c.fit", "seen/d.fit")
    assert [path.name for path in find_files([tmp_path])] == ["a.fit", "d.fit"]


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_links_in_a_folder_are_not_followed(tmp_path: Path) -> None:
    make(tmp_path, "logs/a.fit", "elsewhere/b.fit")
    (tmp_path / "logs" / "link.fit").symlink_to(tmp_path / "elsewhere" / "b.fit")
    (tmp_path / "logs" / "loop").symlink_to(tmp_path / "logs", target_is_directory=True)
    assert [path.name for path in find_files([tmp_path / "logs"])] == ["a.fit"]


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_that_leads_nowhere_is_refused_with_the_reason(tmp_path: Path) -> None:
    make(tmp_path, "logs/a.fit")
    (tmp_path / "logs" / "dead.fit").symlink_to(tmp_path / "nowhere")
    (tmp_path / "logs" / "itself.fit").symlink_to(tmp_path / "logs" / "itself.fit")
    found = find_files([tmp_path / "logs"])
    assert [path.name for path in found] == ["a.fit", "dead.fit", "itself.fit"]
    for place in found[1:]:
        read = reading.read_file(str(place), Terms())
        assert read.status == "refused"
        assert read.problem == (
            f"It cannot be read: {place.name} is a link to a file that cannot be reached."
        )


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes there")
def test_what_is_no_file_is_left_out(tmp_path: Path) -> None:
    make(tmp_path, "a.fit")
    os.mkfifo(tmp_path / "pipe.fit")
    assert [path.name for path in find_files([tmp_path])] == ["a.fit"]


def test_files_and_folders_together_give_each_file_once(tmp_path: Path) -> None:
    make(tmp_path, "a.fit", "b.fit")
    asked = [tmp_path / "b.fit", str(tmp_path), tmp_path / "b.fit"]
    assert [path.name for path in find_files(asked)] == ["b.fit", "a.fit"]


def test_what_was_named_is_kept_for_the_list_even_if_it_is_not_there(tmp_path: Path) -> None:
    assert find_files([tmp_path / "gone.fit"]) == [tmp_path / "gone.fit"]
    assert find_files([]) == []


# Running ---------------------------------------------------------------------------------


def double(number: int) -> int:
    return 2 * number


def end_the_worker(number: int) -> int:
    if number == 5:
        time.sleep(0.3)
        os._exit(1)
    return 2 * number


def half_an_answer(begun: Path) -> bytes:
    """Answer so that only the beginning is ever written, as a worker stopped just then does."""

    def send(self: Connection, answer: memoryview) -> None:
        os.write(self.fileno(), struct.pack("!i", len(answer)) + bytes(answer[:10]))
        begun.touch()
        time.sleep(60)

    Connection._send_bytes = send  # type: ignore[attr-defined]
    return b"whole"


def calls(function, count: int) -> Iterator[tuple]:
    for number in range(count):
        yield str(number), function, (number,)


@pytest.mark.parametrize("made", [importing.Here, lambda: importing.Workers(2)])
def test_every_call_ends_once(made) -> None:
    workers = made()
    try:
        ended = dict(in_order_of_ending(workers, calls(double, 30), Event()))
    finally:
        workers.close()
    assert ended == {str(number): 2 * number for number in range(30)}


def test_a_call_that_kills_its_worker_is_named_and_the_rest_go_on() -> None:
    workers = importing.Workers(2)
    try:
        ended = list(in_order_of_ending(workers, calls(end_the_worker, 14), Event()))
    finally:
        workers.close()
    assert len(ended) == 14
    assert dict(ended) == {str(n): None if n == 5 else 2 * n for n in range(14)}


@pytest.mark.skipif(sys.platform == "win32", reason="answers go through another kind of pipe")
def test_workers_stopped_in_the_middle_of_an_answer_are_not_waited_for(tmp_path: Path) -> None:
    workers = importing.Workers(1)
    future = workers.submit(half_an_answer, tmp_path / "begun")
    while not (tmp_path / "begun").exists():
        time.sleep(0.01)
    ended = Thread(target=workers.end, daemon=True)
    ended.start()
    ended.join(10)
    assert not ended.is_alive()
    with pytest.raises(BrokenProcessPool):
        future.result(1)


def test_few_calls_are_in_flight() -> None:
    started: list[int] = []

    def counted() -> Iterator[tuple]:
        for number in range(100):
            started.append(number)
            yield str(number), double, (number,)

    workers = importing.Here()
    try:
        for seen, _ in enumerate(in_order_of_ending(workers, counted(), Event())):
            assert len(started) <= seen + 1 + workers.room
    finally:
        workers.close()


def test_stopping_starts_nothing_new() -> None:
    stop, ended = Event(), []
    workers = importing.Here()
    try:
        for label, _ in in_order_of_ending(workers, calls(double, 1000), stop):
            ended.append(label)
            if len(ended) == 5:
                stop.set()
    finally:
        workers.close()
    assert 5 <= len(ended) <= 5 + workers.room


def test_an_error_in_a_call_is_not_swallowed() -> None:
    def broken(_: int) -> int:
        raise LookupError("ours to mend")

    workers = importing.Here()
    try:
        with pytest.raises(LookupError, match="ours to mend"):
            list(in_order_of_ending(workers, calls(broken, 3), Event()))
    finally:
        workers.close()


def test_what_a_file_weighs_is_told_by_its_bytes(
    few_logs: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    gpx, fit = few_logs / "2026-05-08-1855.gpx", few_logs / "2026-04-15-1806.fit"
    packed = few_logs / "2026-05-27-1833.tcx.gz"
    with zipfile.ZipFile(tmp_path / "both.zip", "w", zipfile.ZIP_DEFLATED) as made:
        made.write(gpx, "a.bin")
        made.write(fit, "b.bin")
    members = list(opened_up([tmp_path / "both.zip"], tmp_path))
    monkeypatch.setattr(sources, "_LIGHT_BYTES", 0)
    given = [Source(str(place)) for place in (gpx, fit, packed, tmp_path / "gone")]
    assert [source.weight for source in (*given, *members)] == [
        gpx.stat().st_size,
        8 * fit.stat().st_size,
        12 * packed.stat().st_size,
        0,
        gpx.stat().st_size,
        8 * fit.stat().st_size,
    ]


def test_files_of_days_are_read_one_after_the_other_behind_the_rest(
    few_logs: Path, library, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[int | None, bool]] = []

    class Noted(importing.Here):
        def __init__(self, count: int | None = None) -> None:
            super().__init__()
            self.given = count

        def submit(self, call, *args):
            if isinstance(args[0], Source):
                asked.append((self.given, args[0].weight >= 150_000))
            return super().submit(call, *args)

    monkeypatch.setattr(importing, "FEW_FILES", 2)
    monkeypatch.setattr(importing, "Workers", Noted)
    monkeypatch.setattr(importing, "GIANT_BYTES", 150_000)
    report = library.take_in([few_logs])
    assert report.count("new") > 8
    giants = [count for count, giant in asked if giant]
    assert giants and set(giants) == {1}, asked
    assert asked == [(None, False)] * (len(asked) - len(giants)) + [(1, True)] * len(giants)


# Saying ----------------------------------------------------------------------------------


def test_a_report_says_it_all_in_one_line() -> None:
    outcomes = ["new", "new", "already here", "same run", "other sport", "season file"]
    outcomes += ["passed over", "refused", "refused"]
    report = Report([Taken(f"{k}.fit", outcome) for k, outcome in enumerate(outcomes)])
    assert report.words == (
        "2 new, 2 already here, 1 of other sports, 1 season file, 1 passed over, 2 not read"
    )
    assert Report().words == "0 new, 0 not read"


def test_progress_counts_up_to_the_whole(few_logs: Path, library) -> None:
    told: list[Progress] = []
    report = library.take_in([few_logs], told.append)
    reading = [step for step in told if step.current != "judging"]
    assert [step.done for step in reading] == list(range(1, len(report.taken) + 1))
    assert {step.total for step in reading} == {len(report.taken)}
    # counts are of what is saved, so that the last batch may still be missing from them
    assert [step.new for step in reading] == sorted(step.new for step in reading)
    assert 0 < reading[-1].new <= report.count("new")
    assert [step.done for step in told if step.current == "judging"] == list(
        range(1, report.count("new") + 1)
    )

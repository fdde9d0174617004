"""One file to judged rows, and which thresholds hold on which day."""

from __future__ import annotations

import gzip
import json
import weakref
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet import formats, resources
from tercet.domain import DatedThresholds, Recording
from tercet.engine import Thresholds, timeline
from tercet.library import reading
from tercet.library.beside import known_of
from tercet.library.reading import Terms
from tercet.store import packing
from tercet.store.originals import sha256

SAMPLES = resources.samples()
VALUES = Thresholds(146, 167, 2.95, 3.6, 48, 186)
ENTRY = DatedThresholds(date(2026, 4, 13), VALUES, id=7)


def dated(*days: date) -> list[DatedThresholds]:
    return [DatedThresholds(day, VALUES, id=k) for k, day in enumerate(days)]


def test_the_thresholds_of_a_day_are_the_last_that_had_begun() -> None:
    april, july = date(2026, 4, 13), date(2026, 7, 6)
    entries = dated(july, april)  # in any order

    def start_of(day: date) -> date:
        entry = reading.in_force(entries, day)
        assert entry is not None
        return entry.start

    assert start_of(july - timedelta(days=1)) == april
    assert start_of(july) == july
    assert start_of(date(2030, 1, 1)) == july
    assert start_of(date(2020, 1, 1)) == april  # before the first, the first
    assert reading.in_force([], july) is None


@given(st.lists(st.dates(date(2020, 1, 1), date(2030, 1, 1)), min_size=1), st.dates())
def test_some_thresholds_hold_on_every_day(days: list[date], day: date) -> None:
    entry = reading.in_force(dated(*days), day)
    assert entry is not None
    assert entry.start <= day or entry.start == min(days)
    assert not any(entry.start < other <= day for other in days)


def summary(metres: float, seconds: float) -> timeline.Summary:
    return timeline.Summary(seconds, seconds, metres, float("nan"), float("nan"))


@pytest.mark.parametrize(
    ("sport", "metres", "seconds", "taken_for"),
    [
        ("unknown", 6_000, 2_000, "running"),  # 3.0 m/s
        ("unknown", 3_000, 2_000, "unknown"),  # 1.5 m/s, a walk
        ("unknown", 20_000, 2_000, "unknown"),  # 10 m/s, a ride
        ("unknown", 100, 30, "unknown"),  # too short to tell
        ("cycling", 6_000, 2_000, "cycling"),  # what a file says is believed
        ("running", 20_000, 2_000, "running"),
    ],
)
def test_a_sport_that_is_not_said(
    sport: str, metres: float, seconds: float, taken_for: str
) -> None:
    assert reading.sport_by_data(sport, summary(metres, seconds)) == taken_for


def test_a_file_is_read_judged_and_packed() -> None:
    path = SAMPLES / "2026-04-15-1806.fit"
    read = reading.read_file(str(path), Terms((ENTRY,), "Europe/Madrid"))
    assert (read.status, read.format, read.problem) == ("read", "FIT", "")
    assert read.sha256 == sha256(path.read_bytes()) and read.size == len(path.read_bytes())
    (one,) = read.runs
    assert one.run["day"] == "2026-04-15" and one.run["sport"] == "running"
    assert one.judgement["threshold_id"] == 7
    assert set(one.run["channels"].split()) <= set(one.streams)
    five = [one.judgement[name] for name in reading.SECONDS]
    assert sum(five) == pytest.approx(one.run["elapsed_s"])
    assert json.loads(one.run["fingerprint"])["running_s"] > 0


def test_judging_what_was_stored_gives_what_was_judged_at_first() -> None:
    for name in ("2026-05-12-1813.fit", "2026-05-02-0845.tcx", "2026-05-08-1855.gpx"):
        (one,) = reading.read_file(str(SAMPLES / name), Terms((ENTRY,))).runs
        known = known_of(one.run["laps"], None)
        again = reading.judge_again(one.streams, one.run["stops"], ENTRY, beside=known)
        # Of the run's own row it gives what it was, where positions leapt.
        assert again.pop("run", {}).items() <= one.run.items()
        assert again == one.judgement


def test_without_thresholds_no_running_is_judged() -> None:
    (one,) = reading.read_file(str(SAMPLES / "2026-04-15-1806.fit"), Terms()).runs
    row = one.judgement
    assert row["threshold_id"] is None
    assert row["easy_s"] == row["moderate_s"] == row["hard_s"] == 0.0
    assert row["unjudged_s"] > 1000


def test_a_packed_copy_is_another_file_with_the_same_run(tmp_path: Path) -> None:
    plain = SAMPLES / "2026-04-15-1806.fit"
    packed = tmp_path / "run.fit.gz"
    packed.write_bytes(gzip.compress(plain.read_bytes()))
    one, other = (reading.read_file(str(path), Terms((ENTRY,))) for path in (plain, packed))
    assert one.sha256 != other.sha256
    drop = {"name"}
    (run,), (other_run,) = one.runs, other.runs
    assert {k: v for k, v in run.run.items() if k not in drop} == {
        k: v for k, v in other_run.run.items() if k not in drop
    }
    assert run.judgement == other_run.judgement and run.streams == other_run.streams


@pytest.mark.parametrize(
    ("name", "data", "status"),
    [
        ("empty.fit", b"", "refused"),
        ("cut.fit", (SAMPLES / "2026-05-21-1815.fit").read_bytes(), "refused"),
        ("broken.toml", b"[[thresholds]\n", "refused"),
        ("binary.toml", b"\xff\xfe\0", "refused"),
        ("notes.md", b"# Notes\n", "passed over"),
    ],
)
def test_what_gives_no_run_says_why(tmp_path: Path, name: str, data: bytes, status: str) -> None:
    (tmp_path / name).write_bytes(data)
    read = reading.read_file(str(tmp_path / name), Terms((ENTRY,)))
    assert (read.status, read.runs) == (status, ())
    assert read.problem.endswith(".") and read.sha256 == sha256(data)


def test_a_file_that_is_gone_or_too_large_is_refused_unread(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    gone = reading.read_file(str(tmp_path / "gone.fit"), Terms())
    assert (gone.status, gone.sha256) == ("refused", "") and "No such file" in gone.problem
    (tmp_path / "large.fit").write_bytes(bytes(200))
    monkeypatch.setattr(reading, "MAX_BYTES", 100)
    large = reading.read_file(str(tmp_path / "large.fit"), Terms())
    assert large.status == "refused" and "larger than" in large.problem


def recording_of(name: str) -> Recording:
    found = formats.read_path(SAMPLES / name)
    assert isinstance(found, list)
    return packing.rounded(found[0])


def test_samples_are_let_go_before_they_are_judged(monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[weakref.ref[Recording]] = []
    left: list[object] = []
    rounded, gist_of_pieces = packing.rounded, reading.gist_of_pieces

    def watched(*args: Any, **more: Any) -> Recording:
        recording = rounded(*args, **more)
        seen.append(weakref.ref(recording))
        return recording

    def looked(*args: Any) -> Any:
        left.append(seen[-1]())
        return gist_of_pieces(*args)

    monkeypatch.setattr(packing, "rounded", watched)
    monkeypatch.setattr(reading, "gist_of_pieces", looked)
    assert reading.read_file(str(SAMPLES / "2026-05-08-1855.gpx"), Terms()).status == "read"
    assert left == [None]


def test_the_local_day_of_a_run_that_crosses_midnight_is_that_of_its_start() -> None:
    recording = recording_of("2026-05-08-1855.gpx")  # GPX says no offset
    assert recording.utc_offset_s is None and recording.start.hour == 16
    for zone, day in (("Europe/Madrid", "2026-05-08"), ("Pacific/Auckland", "2026-05-09")):
        one = reading.prepare(recording, 0, [ENTRY], zone)
        assert one.run["day"] == day


def test_thresholds_are_chosen_by_the_local_day() -> None:
    recording = recording_of("2026-05-08-1855.gpx")
    entries = dated(date(2026, 5, 1), date(2026, 5, 9))
    for zone, place in (("Europe/Madrid", 0), ("Pacific/Auckland", 1)):
        assert reading.prepare(recording, 0, entries, zone).judgement["threshold_id"] == place

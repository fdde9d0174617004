"""Joining, cutting and parting runs; starts and zones put right; watches without a clock."""

from __future__ import annotations

import gzip
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import numpy as np
import pytest
from tests.formats.build import run_fit, run_gpx

from tercet import language, resources
from tercet.domain import Stream
from tercet.formats import fit
from tercet.library import moments, naming, operations, pieces, reading, season, unset_clock
from tercet.library.library import Library
from tercet.library.reading import Terms
from tercet.store import packing, queries

SAMPLES = resources.samples()
FIT = "2026-04-15-1806.fit"
#: Samples of the watch lie up to so far apart. [s]
APART_S = 10.0


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    made.take_in([SAMPLES / "season.toml", SAMPLES / FIT])
    yield made
    made.close()


def sessions(library: Library):
    return library.call(season.season).sessions


def test_cut_and_joined_again_a_run_is_what_it_was(library: Library) -> None:
    (whole,) = sessions(library)
    library.call(pieces.cut, whole.id, 1200.0)
    one, two = sessions(library)
    assert 0 <= (two.start - one.start).total_seconds() - 1200 <= APART_S
    assert one.elapsed_s + two.elapsed_s == pytest.approx(whole.elapsed_s)
    assert one.distance_m + two.distance_m == pytest.approx(whole.distance_m, abs=0.1)
    # Each piece is judged by what it shows itself; nothing is lost between them.
    assert sum(one.seconds) + sum(two.seconds) == pytest.approx(sum(whole.seconds))
    assert sum(one.metres) + sum(two.metres) == pytest.approx(sum(whole.metres), abs=0.1)
    library.call(pieces.join, one.id, two.id)
    (again,) = sessions(library)
    assert again.distance_m == pytest.approx(whole.distance_m, abs=0.1)
    assert again.seconds == whole.seconds
    for _ in range(2):
        library.call(operations.undo)
    assert sessions(library) == (whole,)
    library.call(operations.redo)
    assert sessions(library) == (one, two)


@pytest.mark.parametrize("at", [700.0, 1300.5, 2000.0])
def test_parts_hold_every_sample_and_share_the_one_at_the_cut(library: Library, at: float) -> None:
    (run,) = sessions(library)
    _, whole = library.call(pieces.stored, run.id)
    one, two = pieces.parted(whole, at)
    assert one.records + two.records == whole.records + 1
    assert two.start == one.start + timedelta(seconds=one.elapsed_s)
    back = packing.rounded(pieces.joined(one, two))
    np.testing.assert_allclose(back.time, whole.time, atol=1e-9)
    for name in whole.streams:
        np.testing.assert_allclose(back.streams[name].values, whole.streams[name].values, atol=0.01)


def test_a_gap_at_the_cut_falls_to_neither_piece(library: Library) -> None:
    (run,) = sessions(library)
    _, whole = library.call(pieces.stored, run.id)
    far = np.where(whole.time >= 1200.0, 400.0, 0.0)
    apart = replace(
        whole,
        time=whole.time + far,
        streams={
            name: Stream(stream.time + np.where(stream.time >= 1200.0, 400.0, 0.0), stream.values)
            for name, stream in whole.streams.items()
        },
    )
    one, two = pieces.parted(apart, 1300.0)
    assert one.records + two.records == whole.records
    assert one.elapsed_s < 1200.0 and (two.start - one.start).total_seconds() >= 1600.0


def test_what_was_said_of_stretches_goes_with_them(library: Library) -> None:
    (whole,) = sessions(library)

    def say(store) -> None:
        with store.atomic("say"):
            store.put("correction", {
                "run_id": whole.id, "kind": "shade", "start_s": 1000.0, "end_s": 1400.0,
                "shade": "H", "value": None, "said_at": "",
            })  # fmt: skip

    library.call(say)
    library.call(pieces.cut, whole.id, 1200.0)
    one, two = sessions(library)
    assert one.seconds[2] >= 190 and two.seconds[2] >= 190
    library.call(pieces.join, one.id, two.id)
    (again,) = sessions(library)
    assert again.seconds[2] >= 398


def test_what_cannot_be_a_piece_is_refused_and_changes_nothing(library: Library) -> None:
    (whole,) = sessions(library)
    with pytest.raises(ValueError, match="both pieces"):
        library.call(pieces.cut, whole.id, 2.0)
    library.take_in([SAMPLES / "2026-05-12-1813.fit"])
    one, two = sessions(library)
    with pytest.raises(ValueError, match="too long for one run"):
        library.call(pieces.join, one.id, two.id)
    assert sessions(library) == (one, two)


def test_the_same_run_is_parted_again(library: Library, tmp_path: Path) -> None:
    data = (SAMPLES / FIT).read_bytes()
    (tmp_path / "again.fit.gz").write_bytes(gzip.compress(data))
    assert library.take_in([tmp_path / "again.fit.gz"]).count("same run") == 1
    (run,) = sessions(library)
    ((content, part),) = library.call(queries.attachments, run.id)
    library.call(pieces.part_again, run.id, content, part)
    one, two = sessions(library)
    assert one.seconds == two.seconds and not library.call(queries.attachments, run.id)
    library.call(operations.undo)
    assert sessions(library) == (run,)


def test_starts_and_zones_are_put_right_for_many_at_once(library: Library) -> None:
    library.take_in([SAMPLES / "2026-05-12-1813.fit"])
    before = sessions(library)
    ids = [session.id for session in before]
    library.call(moments.shift, ids, 24 * 3600.0)
    assert [s.day for s in sessions(library)] == [s.day + timedelta(days=1) for s in before]
    library.call(operations.undo)
    library.call(moments.set_zone, ids, "Pacific/Auckland")
    moved = [s.start - b.start for s, b in zip(sessions(library), before, strict=True)]
    assert moved == [timedelta(hours=10)] * 2  # from the samples' UTC+2 to UTC+12
    assert [s.day for s in sessions(library)] == [s.day + timedelta(days=1) for s in before]
    with pytest.raises(ValueError, match="no time zone is called"):
        library.call(moments.set_zone, ids, "Nowhere/Here")


@pytest.mark.parametrize(
    ("start", "dead"),
    [
        (datetime(1970, 1, 1, tzinfo=UTC), True),
        (datetime(1989, 12, 31, 0, 4, tzinfo=UTC), True),
        (datetime(2000, 1, 1, 0, 1, tzinfo=UTC), True),
        (datetime(2106, 2, 7, 6, 28, tzinfo=UTC), True),
        (datetime(2001, 6, 1, tzinfo=UTC), False),
        (datetime(2026, 6, 9, tzinfo=UTC), False),
    ],
)
def test_clocks_that_were_never_set_are_known(start: datetime, dead: bool) -> None:
    assert unset_clock.dead_clock(start, datetime(2026, 6, 10, tzinfo=UTC)) is dead


@pytest.mark.parametrize("year", [1970, 1980, 2000, 2106, 2126])
def test_a_start_is_asked_for_wherever_counters_begin_or_end(year: int, tmp_path) -> None:
    text = run_gpx(60).replace(b">2026-03-01T", f">{year}-01-08T".encode())
    (tmp_path / "a.gpx").write_bytes(text)
    read = reading.read_file(str(tmp_path / "a.gpx"), Terms())
    assert read.status == "refused" and unset_clock.asks_for_start(read.problem)
    assert f"8 January {year}" in read.problem


def test_a_watch_without_a_clock_asks_and_is_read_by_the_answer(
    library: Library, tmp_path: Path, monkeypatch
) -> None:
    for name, second in (("a", 200), ("b", 90_200)):
        monkeypatch.setattr("tests.formats.build.START_FIT", second)
        (tmp_path / f"{name}.fit").write_bytes(bytes(run_fit(900)))
    report = library.take_in([tmp_path / "a.fit", tmp_path / "b.fit"])
    assert [taken.outcome for taken in report.taken] == ["refused"] * 2
    said = {Path(taken.path).name: taken.detail for taken in report.taken}
    assert "it says 31 December 1989" in said["a.fit"]  # reports come as files are done
    first, second = sorted(library.call(queries.files_to_look_at), key=lambda row: row.name)
    library.call(naming.tell_start, first.sha256, datetime(2026, 5, 1, 18, 0), alike=True)
    assert second.sha256 and not library.call(queries.files_to_look_at)
    days = [session.day for session in sessions(library)]
    assert days == [date(2026, 4, 15), date(2026, 5, 1), date(2026, 5, 2)]
    assert sessions(library)[1].start == datetime(2026, 5, 1, 18, 0)
    assert fit.FIT_EPOCH > 0


def test_what_a_clock_follows_is_noted_and_may_be_the_place(library: Library, tmp_path) -> None:
    (tmp_path / "a.gpx").write_bytes(run_gpx(900))
    library.call(operations.set_setting, "zone", "Asia/Tokyo")
    library.take_in([tmp_path / "a.gpx"])
    (run,) = [s for s in library.call(pieces.correctable) if s.zone_from != "file"]
    kind, _, zone = run.zone_from.partition(" ")
    assert kind == "place" and zone
    library.call(moments.set_zone, [run.id], "Pacific/Auckland")
    assert library.call(queries.run, run.id)["zone_from"] == "said Pacific/Auckland"
    library.call(moments.by_place, [run.id])
    again = next(s for s in library.call(pieces.correctable) if s.id == run.id)
    assert (again.start, again.zone_from) == (run.start, run.zone_from)


def test_a_run_taken_in_before_places_were_looked_at_stays(library: Library) -> None:
    (run,) = library.call(pieces.correctable)
    with pytest.raises(ValueError, match="no position"):
        library.call(moments.by_place, [run.id])


def test_a_day_without_a_clock_stays_that_day_in_every_zone(library: Library, tmp_path) -> None:
    (tmp_path / "log.txt").write_text("2026-06-09: 30 min easy\n2026-06-10 pm: 40 min easy\n")
    library.take_in([tmp_path / "log.txt"])
    ids = [s.id for s in library.call(pieces.correctable) if s.clock]
    assert len(ids) == 2
    library.call(moments.set_zone, ids, "Pacific/Auckland")
    assert [(s.day, s.clock) for s in sessions(library) if s.clock] == [
        (date(2026, 6, 9), "day"),
        (date(2026, 6, 10), "pm"),
    ]
    library.call(moments.shift, ids[:1], -3600.0)  # from now on its start is told
    assert {s.clock for s in sessions(library)} == {"", "day"}


def with_gap(hours: float, *, second: int = 900) -> bytes:
    """A GPX track of 15 min, nothing for hours, and a second part."""
    start = datetime(2026, 6, 9, 6, 0, tzinfo=UTC)
    seconds = [*range(0, 900, 2)]
    seconds += [int(898 + hours * 3600) + k for k in range(0, second, 2)]
    points = "".join(
        f'<trkpt lat="{41.5 + k * 6e-5:.6f}" lon="2.1">'
        f"<time>{start + timedelta(seconds=s):%Y-%m-%dT%H:%M:%SZ}</time></trkpt>"
        for k, s in enumerate(seconds)
    )
    return f'<gpx version="1.1"><trk><trkseg>{points}</trkseg></trk></gpx>'.encode()


@pytest.mark.parametrize(
    ("hours", "second", "runs"), [(2.9, 900, 1), (3.1, 900, 2), (9.0, 900, 2), (9.0, 60, 1)]
)
def test_a_recording_that_was_left_on_holds_two_runs(
    library: Library, tmp_path: Path, hours: float, second: int, runs: int
) -> None:
    (tmp_path / "a.gpx").write_bytes(with_gap(hours, second=second))
    before = {session.id for session in sessions(library)}
    library.take_in([tmp_path / "a.gpx"])
    made = [session for session in sessions(library) if session.id not in before]
    assert len(made) == runs
    if runs == 2:
        assert (made[1].start - made[0].start).total_seconds() == int(898 + hours * 3600)
        # taken back by joining, whatever lies between them in one file
        library.call(pieces.join, made[0].id, made[1].id)
        assert len(sessions(library)) == len(before) + 1
        library.call(operations.undo)
        assert [s for s in sessions(library) if s.id not in before] == made
    library.take_in([tmp_path / "a.gpx"])
    assert len(sessions(library)) == len(before) + runs


def test_a_file_without_a_clock_is_known_in_the_language_it_was_refused_in() -> None:
    start = datetime(1989, 12, 31, tzinfo=UTC)
    for spoken in language.languages():
        language.use(spoken)
        kept = unset_clock.question(start)
        language.use(language.SOURCE)
        assert unset_clock.asks_for_start(kept)
    assert not unset_clock.asks_for_start("It is larger than 64 MB.")

"""A runner's record handed over: whole, merged from both sides, twice the same, never believed."""

from __future__ import annotations

import json
import random
import shutil
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from hashlib import sha256
from pathlib import Path
from threading import Event
from typing import Any

import pytest

from tercet import resources
from tercet.domain import DatedThresholds
from tercet.engine import Thresholds
from tercet.formats.paper import Shorthand
from tercet.library import (
    figures,
    judging_anew,
    operations,
    paper_keep,
    pieces,
    record,
    record_merge,
    roster,
)
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.library.paper_log import Draft
from tercet.library.record import RecordError
from tercet.library.review import build, choices
from tercet.library.review.choices import Choices
from tercet.store import queries
from tercet.store import record_queries as rows
from tercet.store.database import Store

SAMPLES = resources.samples()
SOME = (
    "season.toml",
    "2026-04-14-1843.fit",
    "2026-05-09-0846.fit",
    "2026-05-02-0845.tcx",
    "2026-05-08-1855.gpx",
    "2026-07-23-0623.fit",
    "2026-07-23-0623.gpx",
    "diary-week.txt",
)


@pytest.fixture
def two(tmp_path: Path) -> Iterator[tuple[Library, Library]]:
    """A coach's store that holds some of a season, and an athlete's that is empty."""
    coach, athlete = Library(tmp_path / "coach"), Library(tmp_path / "athlete")
    coach.take_in([SAMPLES / name for name in SOME])
    yield coach, athlete
    coach.close()
    athlete.close()


def handed(library: Library, path: Path, by: str = "") -> Path:
    assert record.write(library, path, by=by)
    return path


def totals(library: Library) -> dict[Any, tuple[Any, ...]]:
    names = (*queries.SECONDS, *queries.METRES, "note", "effort", "kind", "day")
    return {
        (row["sha256"], row["part"]): tuple(row[name] for name in names)
        for row in library.call(queries.sessions)
    }


def number(library: Library, which: int = 0) -> int:
    return int(library.call(queries.run_ids)[which])


def everything(library: Library) -> Any:
    return library.call(
        lambda store: (
            rows.runs(store),
            {table: rows.plan_part(store, table) for table in rows.PLAN_PARTS},
            # Of two files of one run the first one read is told otherwise than the second.
            [(file["sha256"], file["name"], file["taken_in"]) for file in rows.files(store)],
        )
    )


def test_a_record_goes_over_whole_and_twice_in_changes_nothing(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    coach.call(operations.set_note, number(coach), "left calf quiet")
    coach.call(operations.set_effort, number(coach, 1), 6)
    coach.call(operations.set_kind, [number(coach, 2)], "running", "track")
    archive = handed(coach, tmp_path / "ines.zip")
    first = record_merge.take_in(athlete, archive)
    assert first.conflicts == []
    assert totals(athlete) == totals(coach)
    assert everything(athlete) == everything(coach)
    for file in coach.call(rows.files):
        name = file["sha256"]
        assert athlete.original(name).read_bytes() == coach.original(name).read_bytes()
    before = everything(athlete)
    second = record_merge.take_in(athlete, archive)
    assert (second.new_files, second.taken, second.conflicts) == (0, [], [])
    assert everything(athlete) == before
    # All that the first one did is one step, and the second one is none.
    athlete.call(operations.undo)
    assert athlete.call(operations.undo) is None
    assert totals(athlete) == {}


def test_another_runners_record_is_called_by_both_names(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, other = two
    archive = handed(coach, tmp_path / "ines.zip")
    assert "into" not in record_merge.take_in(coach, archive).words
    with_name = roster.add(other.folder, "Oskar Wren")
    oskar = Library(with_name)
    try:
        with pytest.raises(record.OtherRunner, match="Ines Aldana's record"):
            record_merge.take_in(oskar, archive)
        assert oskar.call(rows.files) == []
        words = record_merge.take_in(oskar, archive, whoever=True).words
    finally:
        oskar.close()
    assert words.startswith("Ines Aldana's record into Oskar Wren's, ")


def test_words_of_both_sides_are_kept(two: tuple[Library, Library], tmp_path: Path) -> None:
    coach, athlete = two
    record_merge.take_in(athlete, handed(coach, tmp_path / "one.zip"))
    coach.call(operations.set_note, number(coach), "steady, headwind")
    athlete.call(operations.set_note, number(athlete, 1), "slept badly")
    athlete.call(operations.set_effort, number(athlete), 8)
    athlete.call(figures.set_meant, number(athlete), True)
    back = record_merge.take_in(coach, handed(athlete, tmp_path / "two.zip"))
    assert back.conflicts == []
    record_merge.take_in(athlete, handed(coach, tmp_path / "three.zip"))
    assert totals(athlete) == totals(coach)
    said = {row["note"] for row in coach.call(queries.sessions)}
    assert {"steady, headwind", "slept badly"} <= said
    assert coach.call(queries.run, number(coach))["meant"] == 1


def test_an_older_copy_never_wins(two: tuple[Library, Library], tmp_path: Path) -> None:
    coach, athlete = two
    coach.call(operations.set_note, number(coach), "first words")
    old = handed(coach, tmp_path / "old.zip")
    record_merge.take_in(athlete, old)
    coach.call(operations.set_note, number(coach), "better words")
    assert record_merge.take_in(coach, old).conflicts == []
    assert "better words" in {row["note"] for row in coach.call(queries.sessions)}
    new = record_merge.take_in(athlete, handed(coach, tmp_path / "new.zip"))
    assert new.conflicts == []
    assert "better words" in {row["note"] for row in athlete.call(queries.sessions)}


@pytest.mark.parametrize("theirs", [True, False])
def test_a_conflict_is_told_and_settled_once(
    two: tuple[Library, Library], tmp_path: Path, theirs: bool
) -> None:
    coach, athlete = two
    record_merge.take_in(athlete, handed(coach, tmp_path / "one.zip"))
    coach.call(operations.set_note, number(coach), "the coach's")
    athlete.call(operations.set_note, number(athlete), "the athlete's")
    archive = handed(athlete, tmp_path / "two.zip")
    found = record_merge.take_in(coach, archive).conflicts
    assert [(item.mine, item.theirs) for item in found] == [("the coach's", "the athlete's")]
    assert "note" in found[0].about
    # Nothing was lost meanwhile, and it is told again until it is settled.
    assert "the coach's" in {row["note"] for row in coach.call(queries.sessions)}
    assert len(record_merge.take_in(coach, archive).conflicts) == 1
    coach.call(record_merge.choose, [] if theirs else found, found if theirs else [])
    notes = {row["note"] for row in coach.call(queries.sessions)}
    assert ("the athlete's" in notes) == theirs
    assert ("the coach's" in notes) != theirs
    assert record_merge.take_in(coach, archive).conflicts == []


def test_a_kind_said_on_one_side_only_is_no_conflict(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    # Both read the same files by themselves.
    athlete.take_in([SAMPLES / name for name in SOME])
    coach.call(operations.set_kind, [number(coach)], "running", "trail")
    done = record_merge.take_in(athlete, handed(coach, tmp_path / "one.zip"))
    assert done.conflicts == []
    assert totals(athlete) == totals(coach)
    athlete.call(operations.set_kind, [number(athlete, 1)], "running", "race")
    done = record_merge.take_in(athlete, handed(coach, tmp_path / "two.zip"))
    assert done.conflicts == []
    assert [row["kind"] for row in athlete.call(queries.sessions)].count("race") == 1


def test_a_log_read_in_two_zones_is_looked_into_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    coach, athlete = Library(tmp_path / "coach"), Library(tmp_path / "athlete")
    log = tmp_path / "log.txt"
    log.write_text("".join(f"2025-03-{day:02}: {20 + day} min easy\n" for day in range(1, 29)))
    for library, zone in ((coach, "Europe/Zurich"), (athlete, "America/New_York")):
        library.call(operations.set_setting, "zone", zone)
        library.take_in([log])
    looked: list[str] = []
    read_file = record_merge.reading.read_file

    def look(place: str, terms: record_merge.reading.Terms) -> record_merge.reading.ReadFile:
        looked.append(place)
        return read_file(place, terms)

    monkeypatch.setattr(record_merge.reading, "read_file", look)
    archive = handed(coach, tmp_path / "one.zip")
    done = record_merge.take_in(athlete, archive)
    # Each time what stands here is but what the log says in this zone.
    assert done.taken == ["28 starts"] and done.conflicts == []
    assert len(looked) == 1
    assert record_merge.take_in(athlete, archive).taken == [] and len(looked) == 1
    coach.close()
    athlete.close()


def test_a_stopped_writing_leaves_no_file(two: tuple[Library, Library], tmp_path: Path) -> None:
    stop = Event()
    stop.set()
    assert not record.write(two[0], tmp_path / "half.zip", stop=stop)
    assert list(tmp_path.glob("half*")) == []


def test_a_stopped_taking_in_ends_alike_when_it_is_done_again(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    archive = handed(coach, tmp_path / "one.zip")
    stop = Event()
    done = record_merge.take_in(athlete, archive, lambda _: stop.set(), stop)
    assert done.stopped
    record_merge.take_in(athlete, archive)
    assert totals(athlete) == totals(coach)


def test_stopped_while_runs_are_judged_by_the_thresholds_taken_in(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    archive = handed(coach, tmp_path / "one.zip")
    record_merge.take_in(athlete, archive)
    for entry in coach.call(queries.thresholds):
        slower = replace(entry.values, lt1_speed=0.9 * (entry.values.lt1_speed or 3.0))
        coach.call(put_threshold, replace(entry, values=slower))
    coach.judge_all_again()
    assert totals(athlete) != totals(coach)
    stop = Event()

    def told(now: Progress) -> None:
        if now.current == "judging":
            stop.set()

    done = record_merge.take_in(athlete, handed(coach, tmp_path / "two.zip"), told, stop)
    assert done.stopped
    assert [entry.values for entry in athlete.call(queries.thresholds)] == [
        entry.values for entry in coach.call(queries.thresholds)
    ]
    assert athlete.call(judging_anew.waiting) > 0
    judging_anew.judge_anew(athlete, lambda _: None, Event())
    assert totals(athlete) == totals(coach)


def change_json(source: Path, target: Path, name: str, change: Callable[[Any], Any]) -> Path:
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for item in old.namelist():
            data = old.read(item)
            if item == name:
                data = json.dumps(change(json.loads(data))).encode()
            new.writestr(item, data)
    return target


def test_what_is_no_record_is_told(two: tuple[Library, Library], tmp_path: Path) -> None:
    coach, athlete = two
    good = handed(coach, tmp_path / "good.zip")
    newer = change_json(
        good, tmp_path / "newer.zip", "manifest.json", lambda held: {**held, "version": 99}
    )
    with pytest.raises(RecordError, match="newer version"):
        record_merge.take_in(athlete, newer)
    plain = tmp_path / "plain.zip"
    with zipfile.ZipFile(plain, "w") as archive:
        archive.writestr("manifest.json", "[]")
    for path, words in ((plain, "not a runner's record"), (SAMPLES / "season.toml", "no record")):
        with pytest.raises(RecordError, match=words):
            record_merge.take_in(athlete, path)
    assert everything(athlete)[0] == []


def test_an_original_that_was_changed_is_not_believed(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    good, bad = handed(coach, tmp_path / "good.zip"), tmp_path / "bad.zip"
    with zipfile.ZipFile(good) as old, zipfile.ZipFile(bad, "w") as new:
        for item in old.namelist():
            data = old.read(item)
            new.writestr(item, data + b"x" if item.startswith("originals/") else data)
    with pytest.raises(RecordError, match="not as it was"):
        record_merge.take_in(athlete, bad)


def test_flipped_bytes_end_in_words_or_in_a_sound_store(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, _ = two
    data = bytearray(handed(coach, tmp_path / "good.zip").read_bytes())
    chance = random.Random(20261125)
    told = 0
    for turn in range(12):
        bad = bytearray(data)
        for _ in range(30):
            bad[chance.randrange(len(bad))] ^= 1 << chance.randrange(8)
        path = tmp_path / f"bad-{turn}.zip"
        path.write_bytes(bytes(bad))
        try:
            record.Archive(path).close()
        except RecordError as error:
            told += 1
            assert str(error)
    assert told  # some of it lay in the lists


def test_watts_go_over_and_are_not_named_where_there_are_none(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    """A copy of an earlier version, which knew no watts, is known again by its fingerprint."""
    coach, athlete = two
    assert all("lt1_power" not in row for row in coach.call(rows.plan_part, "threshold"))
    entry = coach.call(queries.thresholds)[-1]
    both = replace(entry.values, lt1_power=236.0, lt2_power=289.0)
    for k, values in enumerate((both, Thresholds(lt1_power=240.0, lt2_power=291.0))):
        coach.call(put_threshold, replace(entry, values=values))
        record_merge.take_in(athlete, handed(coach, tmp_path / f"watts{k}.zip"))
        assert athlete.call(queries.thresholds)[-1].values == values


def put_threshold(store: Store, entry: DatedThresholds) -> None:
    with store.atomic("Change"):
        store.put("threshold", queries.threshold_row(entry))


def test_names_of_a_record_reach_nothing_outside(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    good = handed(coach, tmp_path / "good.zip")
    bad = tmp_path / "bad.zip"
    with zipfile.ZipFile(good) as old, zipfile.ZipFile(bad, "w") as new:
        for item in old.namelist():
            held = old.read(item)
            if item == "files.jsonl":
                lines = [json.loads(line) for line in held.splitlines()]
                for line in lines:
                    line["name"] = "../../../outside.fit"
                held = "\n".join(json.dumps(line) for line in lines).encode()
            new.writestr(item, held)
    record_merge.take_in(athlete, bad)
    assert not list(tmp_path.parent.glob("outside.fit"))
    assert len(totals(athlete)) == len(totals(coach))


def test_another_copy_of_an_original_is_found_by_its_content(tmp_path: Path) -> None:
    copy = tmp_path / "renamed.fit"
    shutil.copy(SAMPLES / SOME[1], copy)
    assert (
        sha256(copy.read_bytes()).hexdigest()
        == sha256((SAMPLES / SOME[1]).read_bytes()).hexdigest()
    )
    library = Library(tmp_path / "store")
    other = Library(tmp_path / "other")
    try:
        library.take_in([copy])
        other.take_in([SAMPLES / SOME[1]])
        done = record_merge.take_in(other, handed(library, tmp_path / "a.zip"))
        assert (done.new_files, done.here) == (0, 1)
    finally:
        library.close()
        other.close()


def test_words_of_a_review_go_along_and_are_settled(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    key = coach.call(build.review)[0].scope
    lines = ("Easy to the wedding", "Strides twice a week", "Long run on Sundays")
    coach.call(choices.keep, key, Choices(next_lines=lines))
    record_merge.take_in(athlete, handed(coach, tmp_path / "one.zip"))
    assert athlete.call(choices.read, key).next_lines == lines
    again = record_merge.take_in(athlete, handed(coach, tmp_path / "again.zip"))
    assert not again.taken and not again.conflicts
    # The athlete changes a word: it is newer, and comes back without a question.
    athlete.call(choices.keep, key, Choices(next_lines=lines[:2]))
    record_merge.take_in(coach, handed(athlete, tmp_path / "back.zip"))
    assert coach.call(choices.read, key).next_lines == lines[:2]
    # Both change it: both are shown, and what is chosen is not asked about again.
    coach.call(choices.keep, key, Choices(next_lines=("Coach",)))
    athlete.call(choices.keep, key, Choices(next_lines=("Athlete",)))
    source = handed(coach, tmp_path / "both.zip")
    done = record_merge.take_in(athlete, source)
    assert [(item.mine, item.theirs) for item in done.conflicts] == [("Athlete", "Coach")]
    athlete.call(record_merge.choose, [], done.conflicts)
    assert athlete.call(choices.read, key).next_lines == ("Coach",)
    assert not record_merge.take_in(athlete, source).conflicts


def recorded(library: Library) -> list[Any]:
    return [row for row in library.call(queries.sessions) if row["channels"]]


def test_joined_and_cut_runs_go_over_and_back(two: tuple[Library, Library], tmp_path: Path) -> None:
    coach, athlete = two
    record_merge.take_in(athlete, handed(coach, tmp_path / "one.zip"))
    athlete.call(operations.set_note, number(athlete), "the athlete's")
    whole = number(coach)
    coach.call(pieces.cut, whole, 1200.0)
    coach.call(operations.set_note, number(coach, 1), "second half")
    done = record_merge.take_in(athlete, handed(coach, tmp_path / "two.zip"))
    assert done.conflicts == [] and "1 joined, cut or typed" in done.words
    assert len(recorded(athlete)) == len(recorded(coach))
    cut_here = [totals(library) for library in (coach, athlete)]
    assert {place: sums[:10] for place, sums in cut_here[0].items()} == {
        place: sums[:10] for place, sums in cut_here[1].items()
    }
    assert {"the athlete's", "second half"} <= {row["note"] for row in recorded(athlete)}
    # put together again by the athlete: the coach's older pieces give way
    first, second = number(athlete), number(athlete, 1)
    athlete.call(pieces.join, first, second)
    back = handed(athlete, tmp_path / "three.zip")
    record_merge.take_in(coach, back)
    assert len(recorded(coach)) == len(recorded(athlete))
    before = totals(coach)
    assert record_merge.take_in(coach, back).taken == [] and totals(coach) == before
    coach.call(operations.undo)
    assert len(recorded(coach)) == len(cut_here[0]) - len(
        [row for row in coach.call(queries.sessions) if not row["channels"]]
    )


def test_both_sides_cut_otherwise_and_each_keeps_its_own(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    record_merge.take_in(athlete, handed(coach, tmp_path / "one.zip"))
    coach.call(pieces.cut, number(coach), 1200.0)
    athlete.call(pieces.cut, number(athlete), 900.0)
    before = totals(athlete)
    done = record_merge.take_in(athlete, handed(coach, tmp_path / "two.zip"))
    assert "otherwise here and left so" in done.words
    assert totals(athlete) == before


def test_a_typed_page_goes_over_as_it_was_answered(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    page = "2026-08-03 am: 30 min Q\n2026-08-04: 20 min stdy\n2026-08-05: 40 min easy  # calf\n"
    coach.call(paper_keep.keep, Draft(page, Shorthand({"Q": "hard"}, "km")), date(2026, 11, 25))
    archive = handed(coach, tmp_path / "one.zip")
    record_merge.take_in(athlete, archive)
    assert totals(athlete) == totals(coach) and everything(athlete) == everything(coach)
    rows_of = athlete.call(queries.sessions)
    asked = [athlete.call(queries.run, row["id"]) for row in rows_of if row["unjudged_s"] == 1200]
    assert len(asked) == 1 and "stdy" in asked[0]["asks"]
    assert record_merge.take_in(athlete, archive).taken == []


def test_a_piece_that_cannot_be_one_is_not_believed(
    two: tuple[Library, Library], tmp_path: Path
) -> None:
    coach, athlete = two
    coach.call(pieces.cut, number(coach), 1200.0)
    archive = handed(coach, tmp_path / "one.zip")
    for name, value in (("time", [5.0, 1.0]), ("part", "x"), ("start_utc", 1e300), ("day", "no")):

        def change(lines: Any, name: str = name, value: Any = value) -> Any:
            return [{**line, name: value} if "time" in line else line for line in lines]

        bad = change_lines(archive, tmp_path / "bad.zip", "pieces.jsonl", change)
        with pytest.raises(RecordError, match="damaged"):
            record_merge.take_in(athlete, bad)
    assert totals(athlete) == {}


def change_lines(source: Path, target: Path, name: str, change: Callable[[Any], Any]) -> Path:
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for item in old.namelist():
            data = old.read(item)
            if item == name:
                lines = change([json.loads(line) for line in data.splitlines()])
                data = "".join(json.dumps(line) + "\n" for line in lines).encode()
            new.writestr(item, data)
    return target

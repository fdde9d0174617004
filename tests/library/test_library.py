"""Taking recordings in: each once, all of it one step that can be taken back, stopped, judged."""

from __future__ import annotations

import gzip
import shutil
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from threading import Event, Thread
from typing import Any

import pytest

from tercet import resources
from tercet.domain import DatedThresholds
from tercet.engine import Thresholds, estimate
from tercet.engine.judging import METHOD
from tercet.library import importing, judging_anew, operations, reading, season
from tercet.library import library as library_module
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.store import queries
from tercet.store.database import Store

SAMPLES = resources.samples()
RUN = "2026-05-09-0846.fit"
TWICE = ("2026-07-23-0623.fit", "2026-07-23-0623.gpx")
RIDE = "2026-06-27-0839.fit.gz"
PAIR = Thresholds(lt1_speed=2.7, lt2_speed=3.3)

Sums = dict[int, tuple[Any, ...]]


def sums(library: Library) -> Sums:
    """Every session's sums and the thresholds they were judged by."""
    rows = library.call(queries.sessions)
    names = (*queries.SECONDS, *queries.METRES, "threshold_id")
    return {row["id"]: tuple(row[name] for name in names) for row in rows}


def tables(library: Library) -> dict[str, list[tuple[Any, ...]]]:
    def look(store: Store) -> dict[str, list[tuple[Any, ...]]]:
        return {
            name: sorted((tuple(row) for row in store.rows(f"SELECT * FROM {name}")), key=repr)
            for name in ("file", "run", "judgement", "attachment", "threshold", "block", "race")
        }

    return library.call(look)


def judged_for_ever(*_: Any) -> None:
    """Stand for a judging that takes long, in a worker."""
    time.sleep(60)


def undo_all(library: Library) -> int:
    steps = 0
    while library.call(operations.undo) is not None:
        steps += 1
    return steps


# Taking in -------------------------------------------------------------------------------


def test_what_becomes_of_each_file_is_told(library: Library, few_logs: Path) -> None:
    report = library.take_in([few_logs])
    ended = {Path(item.path).name: item for item in report.taken}
    assert len(ended) == len(report.taken) == len(list(few_logs.iterdir()))
    assert report.count("new") == 10
    same = [ended[name] for name in TWICE if ended[name].outcome == "same run"]
    assert len(same) == 1 and "the same run as" in same[0].detail
    assert ended[RIDE].outcome == "other sport" and "cycling" in ended[RIDE].detail
    for name in ("2026-05-21-1815.fit", "2026-06-20-0905.gpx"):
        assert ended[name].outcome == "refused" and ended[name].detail.endswith(".")
    listed = library.call(queries.files_to_look_at)
    assert {file.name for file in listed} == {"2026-05-21-1815.fit", "2026-06-20-0905.gpx"}
    assert all(file.problem for file in listed)


def test_taking_it_in_again_adds_nothing(season_library: Library, season_logs: Path) -> None:
    before = tables(season_library)
    report = season_library.take_in([season_logs])
    assert report.count("already here") == len(report.taken) == len(list(season_logs.iterdir()))
    assert tables(season_library) == before
    assert season_library.undo_names() == (None, None)


def test_the_same_bytes_under_another_name_are_already_here(
    season_library: Library, tmp_path: Path
) -> None:
    shutil.copy(SAMPLES / RUN, tmp_path / "renamed.bin")
    before = tables(season_library)
    (item,) = season_library.take_in([tmp_path / "renamed.bin"]).taken
    assert item.outcome == "already here"
    assert tables(season_library) == before


def test_the_same_bytes_twice_in_one_import_count_once(library: Library, copied: Callable) -> None:
    folder = copied(RUN)
    shutil.copy(folder / RUN, folder / "copy.fit")
    report = library.take_in([folder])
    assert sorted(item.outcome for item in report.taken) == ["already here", "new"]
    assert len(library.call(queries.run_ids)) == 1


def test_a_packed_copy_is_the_same_run(library: Library, copied: Callable) -> None:
    folder = copied(RUN)
    (folder / "b.fit.gz").write_bytes(gzip.compress((folder / RUN).read_bytes()))
    report = library.take_in([folder])
    assert sorted(item.outcome for item in report.taken) == ["new", "same run"]
    assert len(library.call(queries.run_ids)) == 1


@pytest.mark.parametrize("order", [(0, 1), (1, 0)])
def test_a_run_in_two_formats_counts_once_and_the_richer_is_shown(
    library: Library, order: tuple[int, int]
) -> None:
    for place in order:
        library.take_in([SAMPLES / TWICE[place]])
    (row,) = library.call(queries.sessions)
    assert row["format"] == "FIT" and row["sha256"] != ""
    # the other file is known too, and belongs to the run
    assert len(library.call(queries.known_files)) == 2
    assert len(library.call(queries.attachments, row["id"])) == 1


def test_the_run_that_a_file_is_is_told_by_her_clock(library: Library) -> None:
    library.take_in([SAMPLES / TWICE[0]])
    (item,) = library.take_in([SAMPLES / TWICE[1]]).taken
    assert item.outcome == "same run"
    assert "23 July 2026, 06:23" in item.detail and "counted once" in item.detail


def test_a_richer_file_keeps_the_runners_note_and_effort(library: Library) -> None:
    library.take_in([SAMPLES / TWICE[1]])
    (run_id,) = library.call(queries.run_ids)
    library.call(operations.set_note, run_id, "wind from the sea")
    library.call(operations.set_effort, run_id, 3)
    library.take_in([SAMPLES / TWICE[0]])
    (row,) = library.call(queries.sessions)
    assert (row["id"], row["note"], row["effort"]) == (run_id, "wind from the sea", 3)


def test_another_sport_is_kept_apart(library: Library) -> None:
    (item,) = library.take_in([SAMPLES / RIDE]).taken
    assert item.outcome == "other sport"
    view = library.call(season.season)
    assert (view.session_count, view.other_sports) == (0, 1)
    assert library.call(queries.thresholds) == []  # a ride says nothing about running


def test_originals_are_kept_byte_for_byte(library: Library, few_logs: Path) -> None:
    report = library.take_in([few_logs])
    for item in report.taken:
        kept = library.call(lambda store, name=item.sha256: store.originals.read(name))
        assert kept == Path(item.path).read_bytes()


def test_workers_and_this_process_take_in_the_same(
    tmp_path: Path, season_logs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = []
    for few in (1, 1000):
        monkeypatch.setattr(importing, "FEW_FILES", few)
        monkeypatch.setattr("tercet.library.library.FEW_RUNS", few)
        library = Library(tmp_path / f"few-{few}")
        try:
            library.take_in([season_logs / "2026-04-15-1806.fit"])  # judged again below
            library.take_in([season_logs])
            rows = library.call(queries.sessions)
        finally:
            library.close()
        names = (*queries.SECONDS, *queries.METRES, "distance_m", "hr_mean", "day", "format")
        found.append({row["start_utc"]: tuple(row[name] for name in names) for row in rows})
    assert found[0] == found[1] and len(found[0]) == 11


def test_nothing_to_take_in(library: Library, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    assert library.take_in([tmp_path / "empty"]).taken == []
    (item,) = library.take_in([tmp_path / "gone.fit"]).taken
    assert item.outcome == "refused" and "No such file" in item.detail
    assert library.undo_names() == (None, None)


# Taking back -----------------------------------------------------------------------------


def test_one_undo_takes_a_whole_import_back_and_redo_brings_it_back(
    library: Library, few_logs: Path
) -> None:
    empty = tables(library)
    library.take_in([few_logs])
    after = tables(library)
    assert library.undo_names() == ("Add recordings", None)
    changes = library.call(operations.undo)
    assert changes is not None and changes.runs and changes.files and changes.thresholds
    assert tables(library) == empty
    assert library.undo_names() == (None, "Add recordings")
    assert library.call(operations.redo) is not None
    assert tables(library) == after
    assert library.call(operations.redo) is None


def test_what_was_taken_back_can_be_taken_in_again(library: Library, few_logs: Path) -> None:
    library.take_in([few_logs])
    view = library.call(season.season, date(2026, 10, 1))
    library.call(operations.undo)
    report = library.take_in([few_logs])
    assert report.count("new") == 10
    again = library.call(season.season, date(2026, 10, 1))
    assert [block.seconds for block in again.blocks] == [block.seconds for block in view.blocks]


def test_a_season_file_over_an_earlier_import_is_a_step_of_its_own(
    library: Library, few_logs: Path
) -> None:
    library.take_in([few_logs])
    before = tables(library)
    report = library.take_in([SAMPLES / "season.toml"])
    assert [item.outcome for item in report.taken] == ["season file"]
    assert report.taken[0].detail == "2 dated thresholds, 4 blocks, 2 races"
    assert library.undo_names() == ("Add recordings", None)
    assert not library.call(queries.judged_by_others, METHOD)
    assert not any(entry.estimated for entry in library.call(queries.thresholds))
    library.call(operations.undo)
    assert tables(library) == before


def test_deleted_sessions_come_back_and_go_for_good_after_a_restart(
    season_library: Library, tmp_path: Path
) -> None:
    before = tables(season_library)
    ids = season_library.call(queries.run_ids)
    (row,) = [row for row in season_library.call(queries.sessions) if row["id"] == ids[0]]
    season_library.call(operations.delete_runs, ids[:2])
    assert len(season_library.call(queries.run_ids)) == len(ids) - 2
    season_library.call(operations.undo)
    assert tables(season_library) == before
    season_library.call(operations.delete_runs, ids[:2])
    place = season_library.call(lambda store: store.originals.path(row["sha256"]))
    assert place.exists()
    season_library.close()
    again = Library(tmp_path / "season")
    assert not place.exists()
    assert not again.call(queries.streams, row["sha256"], row["part"])
    again.close()


# Stopping --------------------------------------------------------------------------------


@pytest.mark.parametrize("few", [6, 1000], ids=["workers", "this process"])
def test_stopping_keeps_what_was_read(
    library: Library, season_logs: Path, monkeypatch: pytest.MonkeyPatch, few: int
) -> None:
    monkeypatch.setattr(importing, "FEW_FILES", few)
    stop = Event()

    def told(progress: Progress) -> None:
        if progress.done >= 5:
            stop.set()

    report = library.take_in([season_logs], told, stop)
    assert report.stopped
    kept = library.call(queries.run_ids)
    assert 0 < len(kept) < 10
    assert report.count("new") == len(kept)
    # the next import finishes it
    library.take_in([season_logs])
    assert len(library.call(queries.run_ids)) == 10
    assert not library.call(queries.judged_by_others, METHOD)


@pytest.mark.parametrize("long_s", [1.0, 1e9], ids=["a worker", "this process"])
def test_stopped_while_it_is_judged_by_what_was_estimated(
    library: Library, few_logs: Path, monkeypatch: pytest.MonkeyPatch, long_s: float
) -> None:
    monkeypatch.setattr(library_module, "FEW_S", long_s)
    stop = Event()

    def told(progress: Progress) -> None:
        if progress.current == "judging":
            stop.set()

    report = library.take_in([few_logs], told, stop)
    assert report.stopped and report.count("new") == 10
    (entry,) = library.call(queries.thresholds)
    assert entry.estimated
    # the rest of the judging goes on behind the open window, and is no step of its own
    names = library.undo_names()
    count = library.call(judging_anew.waiting)
    assert count == len(library.call(queries.run_ids))
    assert judging_anew.judge_anew(library, lambda _: None, Event()) == count
    assert library.undo_names() == names
    assert not library.call(queries.judged_by_others, METHOD)
    running = [row for row in library.call(queries.sessions) if row["sport"] == "running"]
    assert all(row["easy_s"] > 0 for row in running)
    library.call(operations.undo)
    assert library.call(queries.thresholds) == [] and library.call(queries.run_ids) == []


def test_a_judging_that_is_stopped_is_not_waited_for(
    library: Library, few_logs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    library.take_in([few_logs])
    monkeypatch.setattr(library_module, "FEW_S", 1.0)
    monkeypatch.setattr(reading, "judge_again", judged_for_ever)
    stop, ended = Event(), Event()

    def judge() -> None:
        library.judge_all_again(stop=stop)
        ended.set()

    thread = Thread(target=judge, daemon=True)
    thread.start()
    assert not ended.wait(0.5)
    stop.set()
    assert ended.wait(5.0)


def test_stopped_before_it_began(library: Library, few_logs: Path) -> None:
    stop = Event()
    stop.set()
    report = library.take_in([few_logs], stop=stop)
    assert report.stopped and report.taken == []
    assert library.call(queries.known_files) == set()


# Thresholds ------------------------------------------------------------------------------


def test_nobody_knows_their_thresholds_so_they_are_estimated(
    library: Library, few_logs: Path
) -> None:
    library.take_in([few_logs])
    (entry,) = library.call(queries.thresholds)
    assert entry.estimated and entry.source and entry.interval
    assert entry.start == date(2026, 4, 15)  # in force from the first run
    assert entry.values.by_speed and entry.values.by_heart_rate
    assert library.call(season.season).estimated
    # each second is judged, and a later import does not estimate anew
    running = [row for row in library.call(queries.sessions) if row["sport"] == "running"]
    assert {row["threshold_id"] for row in running} == {entry.id}
    assert all(row["easy_s"] > 0 for row in running)


def test_a_later_import_leaves_the_estimate_alone(library: Library, copied: Callable) -> None:
    library.take_in([SAMPLES / RUN])
    before = library.call(queries.thresholds)
    library.take_in([SAMPLES / "2026-08-11-1820.fit"])
    assert library.call(queries.thresholds) == before


def test_a_preview_changes_nothing_and_use_stores_what_it_showed(season_library: Library) -> None:
    before = tables(season_library)
    entries = [
        DatedThresholds(date(2026, 4, 1), PAIR),
        DatedThresholds(date(2026, 7, 1), replace(PAIR, lt2_speed=3.6)),
    ]
    preview = season_library.preview(entries)
    assert tables(season_library) == before
    rows = season_library.call(queries.sessions)
    running = [row for row in rows if row["sport"] == "running"]
    assert preview.judgements.keys() == {row["id"] for row in running}
    for name, total in zip(queries.SECONDS, preview.before, strict=True):
        assert total == pytest.approx(sum(row[name] for row in running))
    assert 0 < preview.changed <= len(running)

    changes = season_library.use(preview, "Change thresholds")
    assert changes.thresholds and changes.runs
    stored = season_library.call(queries.thresholds)
    assert [(entry.start, entry.values) for entry in stored] == [
        (entry.start, entry.values) for entry in entries
    ]
    after = [row for row in season_library.call(queries.sessions) if row["sport"] == "running"]
    for name, total in zip(queries.SECONDS, preview.after, strict=True):
        assert total == pytest.approx(sum(row[name] for row in after))
    for row in after:
        kept = season_library.call(queries.judgement, row["id"])
        shown = preview.judgements[row["id"]]
        assert kept is not None and kept["shades"] == shown["shades"]
        # dated: each run by the thresholds of its day
        assert kept["threshold_id"] == stored[row["day"] >= "2026-07-01"].id
    assert not season_library.call(queries.judged_by_others, METHOD)
    season_library.call(operations.undo)
    assert tables(season_library) == before


def test_a_preview_that_is_stopped_can_not_be_half_used(season_library: Library) -> None:
    stop = Event()
    preview = season_library.preview(
        [DatedThresholds(date(2026, 4, 1), PAIR)], lambda _: stop.set(), stop
    )
    assert preview.judgements == {} and preview.changed == 0


def test_thresholds_that_cannot_be_are_refused_and_change_nothing(season_library: Library) -> None:
    before = tables(season_library)
    wrong = DatedThresholds(date(2026, 4, 1), Thresholds(lt1_speed=3.3, lt2_speed=2.7))
    with pytest.raises(ValueError, match="lt1_speed must be below lt2_speed"):
        season_library.call(operations.set_thresholds, [wrong], {}, step="Change thresholds")
    assert tables(season_library) == before and season_library.undo_names() == (None, None)


def test_judging_all_again_gives_the_same(season_library: Library) -> None:
    before = sums(season_library)
    season_library.judge_all_again()
    assert sums(season_library) == before
    assert season_library.undo_names() == (None, None)


def test_a_race_makes_a_better_estimate(season_library: Library) -> None:
    race = estimate.from_race(10_000, 2_700)
    guess = season_library.estimate(race=race)
    assert guess is not None and guess.estimated and guess.start == date(2026, 4, 15)
    assert guess.values.lt2_speed == pytest.approx(race.values.lt2_speed)
    known = season_library.estimate(maximum=186.0)
    assert known is not None and known.values.hr_max == 186.0
    # nearer the truth of the simulated runner (3.60 and 3.70 m/s) than its interval is wide
    assert known.values.lt2_speed is not None
    assert abs(known.values.lt2_speed - 3.65) <= known.interval["lt2_speed"]


def test_an_empty_library_has_no_estimate_but_what_it_is_told(library: Library) -> None:
    assert library.estimate() is None
    guess = library.estimate(maximum=190.0)
    assert guess is not None and guess.values.by_heart_rate and not guess.values.by_speed


# Things that go wrong --------------------------------------------------------------------


def test_a_season_file_whose_import_was_killed_is_finished_by_the_next(
    library: Library, few_logs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    library.take_in([few_logs])

    def killed(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch, pytest.raises(KeyboardInterrupt):
        patch.setattr(Library, "judge_all_again", killed)
        library.take_in([SAMPLES / "season.toml"])
    assert library.call(queries.judged_by_others, METHOD)
    library.take_in([few_logs])
    assert not library.call(queries.judged_by_others, METHOD)
    assert not library.call(season.season).estimated


def test_originals_outlive_a_damaged_database(
    season_library: Library, tmp_path: Path, season_logs: Path
) -> None:
    view = season_library.call(season.season, date(2026, 10, 1))
    season_library.close()
    folder = tmp_path / "season"
    (folder / "tercet.db").rename(folder / "damaged.db")
    for _ in range(2):  # as the message says: a new store, opened as often as one likes
        Library(folder).close()
    again = Library(folder)
    try:
        again.take_in([season_logs / "season.toml", folder / "originals"])
        found = again.call(season.season, date(2026, 10, 1))
        assert [block.seconds for block in found.blocks] == [b.seconds for b in view.blocks]
    finally:
        again.close()


def test_a_library_that_cannot_open_lets_go_of_its_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(_: Store) -> None:
        raise ZeroDivisionError

    with monkeypatch.context() as patch, pytest.raises(ZeroDivisionError):
        patch.setattr(Store, "purge", broken)
        Library(tmp_path)
    Library(tmp_path).close()

"""A paper log through the same doors as recordings: judged, kept, judged again, counted once."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from tercet import cli, resources
from tercet.domain import DatedThresholds, Race
from tercet.engine import Evidence, Shade, Thresholds
from tercet.formats.paper import Shorthand
from tercet.library import intake, operations, paper_keep, paper_log, reading, season, season_file
from tercet.library.library import Library
from tercet.library.written import Said
from tercet.store import paper_queries, queries

#: What the sample diary comes to by hand, seconds easy, moderate and hard. The season file has
#: LT1 at 339 s/km and LT2 at 278 s/km: easy takes 0.339 / 0.85 = 0.39882 s/m and hard
#: 0.278 / 1.08 = 0.25741 s/m.
#: Tue: 15 min + 1000 m jog + 800 m jog = 900 + 398.8 + 319.1 = 1617.9; 1000 m fast = 257.4.
#: Thu: 30 min + 1600 m jog = 1800 + 638.1 = 2438.1; 1600 m hard = 411.9.
DIARY = {
    "2026-06-09": (1618, 0, 257),
    "2026-06-10": (2700, 0, 0),
    "2026-06-11": (2438, 0, 412),
    "2026-06-13": (1800, 0, 0),
    "2026-06-14": (5100, 600, 0),
}
#: A recording of the evening of 15 April 2026.
EVENING = "2026-04-15-1806.fit"


@pytest.fixture
def typed(tmp_path: Path) -> Callable[..., Path]:
    def write(text: str, name: str = "diary.txt") -> Path:
        place = tmp_path / name
        place.write_text(text, "utf-8")
        return place

    return write


@pytest.fixture
def judged_library(library: Library) -> Library:
    library.take_in([resources.samples() / "season.toml"])
    return library


def sessions(library: Library) -> list[dict]:
    return [dict(row) for row in library.call(queries.sessions)]


def outcome(library: Library, place: Path) -> intake.Taken:
    (taken,) = library.take_in([place]).taken
    return taken


def minutes_of_evening(share: float = 1.0) -> int:
    (run,) = reading.read_file(str(resources.samples() / EVENING), reading.Terms()).runs
    return round(share * run.run["elapsed_s"] / 60)


def test_the_sample_diary_gives_the_minutes_reckoned_by_hand(judged_library) -> None:
    report = judged_library.take_in([resources.samples() / "diary-week.txt"])
    assert report.words == "1 new with 5 runs, 0 not read"
    rows = sessions(judged_library)
    got = {
        row["day"]: tuple(row[f"{name}_s"] for name in ("easy", "moderate", "hard")) for row in rows
    }
    assert got == DIARY
    assert all(row["not_running_s"] == row["unjudged_s"] == 0 for row in rows)
    assert all(
        row["elapsed_s"] == row["easy_s"] + row["moderate_s"] + row["hard_s"] for row in rows
    )
    assert rows[0]["hard_m"] == pytest.approx(1000) and rows[2]["hard_m"] == pytest.approx(1600)
    assert [row["words"] for row in rows] == ["10 × 100 m", "", "8 × 200 m", "", ""]
    # The runner's clock is Madrid's: seven in the morning there is five in UTC.
    assert [row["start_utc"] % 86_400 / 3600 for row in rows] == [5.0, 16.0, 5.0, 5.0, 5.0]
    assert {row["format"] for row in rows} == {"paper"}
    assert judged_library.call(queries.counts) == {"run": 1, "season file": 1}


def test_the_season_is_whole_with_its_diary_week(judged_library) -> None:
    judged_library.take_in([resources.samples() / "diary-week.txt"])
    view = judged_library.call(season.season, date(2026, 6, 20))
    (week,) = [
        week for block in view.blocks for week in block.weeks if week.first_day == date(2026, 6, 8)
    ]
    assert [len(day) for day in week.days] == [0, 1, 1, 1, 0, 1, 1]
    assert week.seconds[:3] == (13_656.0, 600.0, 669.0)


def test_a_session_is_shown_as_shaded_by_its_words(judged_library) -> None:
    judged_library.take_in([resources.samples() / "diary-week.txt"])
    first = sessions(judged_library)[0]["id"]
    detail = judged_library.call(season.session_detail, first)
    assert detail is not None and detail.by_words
    assert detail.file_name == "diary-week.txt"
    assert len(detail.trace.shades) == 1875 and len(detail.trace.repetitions) == 10
    assert set(detail.evidence) == {Evidence.WORD}
    assert detail.trace.shades[910] == Shade.HARD and detail.remarks == ()


def test_without_thresholds_words_are_judged_and_waiting_metres_are_told(library) -> None:
    library.take_in([resources.samples() / "diary-week.txt"])
    rows = sessions(library)
    assert [row["easy_s"] for row in rows] == [900, 2700, 1800, 1800, 5100]
    assert [row["distance_m"] for row in rows] == [2800, 0, 3200, 0, 0]
    # Words say nothing about thresholds, so none are estimated from them.
    assert library.call(queries.thresholds) == []
    detail = library.call(season.session_detail, rows[0]["id"])
    assert detail is not None and "without a time are not counted" in detail.remarks[0]


def test_new_thresholds_change_lengths_and_undo_brings_them_back(library) -> None:
    library.take_in([resources.samples() / "diary-week.txt"])
    before = sessions(library)
    values = Thresholds(lt1_speed=3.0, lt2_speed=4.0)
    library.use(library.preview([DatedThresholds(date(2026, 1, 1), values)]), "Change thresholds")
    rows = sessions(library)
    # 1800 m at 0.85 x 3 m/s are 705.9 s, 1000 m at 1.08 x 4 m/s are 231.5 s.
    assert (rows[0]["easy_s"], rows[0]["hard_s"]) == (1606, 231)
    assert rows[0]["elapsed_s"] == 1837 and rows[1]["distance_m"] == pytest.approx(2700 * 2.55)
    library.call(operations.undo)
    assert sessions(library) == before


def test_a_season_file_dropped_with_the_diary_judges_it_at_once(library, tmp_path) -> None:
    for name in ("season.toml", "diary-week.txt"):
        shutil.copy(resources.samples() / name, tmp_path / name)
    library.take_in([tmp_path / "season.toml", tmp_path / "diary-week.txt"])
    assert sessions(library)[0]["hard_s"] == 257
    library.call(operations.undo)
    assert sessions(library) == [] and library.call(queries.known_files) == set()


def test_what_is_not_understood_is_listed_and_the_rest_of_the_line_counts(library, typed) -> None:
    taken = outcome(library, typed("2026-06-09: 15 min easy, 4 x 100 m strds # with Bea\n"))
    assert taken.outcome == "new"
    (row,) = sessions(library)
    assert row["easy_s"] == 900 and row["elapsed_s"] == 900 and row["note"] == "with Bea"
    (listed,) = library.call(queries.files_to_look_at)
    assert listed.problem == "1 piece not understood: line 1 'strds': strides?"
    detail = library.call(season.session_detail, row["id"])
    assert detail is not None
    assert detail.remarks == ('Not understood and not counted: "strds". strides?',)


def test_a_diary_without_a_year_is_listed_as_refused(library, typed) -> None:
    taken = outcome(library, typed("Week of 8 June\nTue: 45 min easy\n"))
    assert taken.outcome == "refused" and "Write the year" in taken.detail
    assert sessions(library) == []


def test_an_entry_for_a_recorded_run_is_attached_and_counted_once(library, typed) -> None:
    outcome(library, resources.samples() / EVENING)
    before = sessions(library)
    for k, text in enumerate(("", "pm")):
        entry = f"2026-04-15 {text}: {minutes_of_evening()} min easy\n2026-04-16: 20 min easy\n"
        assert outcome(library, typed(entry, f"{k}.txt")).outcome == ("new", "same run")[k]
    after = sessions(library)
    assert after[0] == before[0] and len(after) == 2
    assert len(library.call(queries.attachments, before[0]["id"])) == 2


@pytest.mark.parametrize(
    ("entry", "runs"),
    [
        ("2026-04-15 am: {same} min easy", 2),  # the recording is of the evening
        ("2026-04-14: {same} min easy", 2),
        ("2026-04-15: {longer} min easy", 2),
        ("2026-04-15: {alike} min easy", 1),
        ("2026-04-15: {same} min easy\npm: {same} min easy", 2),  # a double: one was recorded
    ],
)
def test_only_one_entry_of_its_day_half_and_length_is_the_recording(
    library, typed, entry, runs
) -> None:
    text = entry.format(
        same=minutes_of_evening(), longer=minutes_of_evening(1.5), alike=minutes_of_evening(1.2)
    )
    outcome(library, resources.samples() / EVENING)
    outcome(library, typed(text))
    assert len(sessions(library)) == runs
    library.call(operations.undo)
    library.call(operations.undo)
    # The order in which they come does not matter.
    outcome(library, typed(text))
    taken = outcome(library, resources.samples() / EVENING)
    rows = sessions(library)
    assert len(rows) == runs
    assert taken.outcome == ("same run" if runs == 1 or "pm:" in text else "new")
    assert sum(row["format"] == "FIT" for row in rows) == 1


def test_a_recording_takes_the_place_of_its_entry_and_keeps_its_note(library, typed) -> None:
    text = f"2026-04-15: {minutes_of_evening()} min easy # windy\n"
    outcome(library, typed(text))
    (paper,) = sessions(library)
    taken = outcome(library, resources.samples() / EVENING)
    assert "paper entry of 15 April 2026" in taken.detail and "is shown" in taken.detail
    (row,) = sessions(library)
    assert row["id"] == paper["id"] and row["format"] == "FIT" and row["note"] == "windy"
    detail = library.call(season.session_detail, row["id"])
    assert detail is not None and not detail.by_words and detail.file_name == EVENING
    library.call(operations.undo)
    assert sessions(library) == [paper]


def test_the_same_lines_in_a_longer_page_are_known(library, typed) -> None:
    line = "2026-06-09 am: 45 min easy\n"
    outcome(library, typed(line, "1.txt"))
    assert outcome(library, typed(line, "2.txt")).outcome == "already here"
    assert outcome(library, typed(f"{line}2026-06-10: 30 min easy\n", "3.txt")).outcome == "new"
    assert outcome(library, typed("9 June 2026 am: 45  MIN easy\n", "4.txt")).outcome == "same run"
    assert [row["day"] for row in sessions(library)] == ["2026-06-09", "2026-06-10"]


def test_two_entries_of_a_page_are_two_runs(library, typed) -> None:
    outcome(library, typed("2026-06-09: 30 min easy\n2026-06-09: 30 min easy\n"))
    assert len(sessions(library)) == 2


def test_a_race_is_a_kind_of_running(judged_library, typed) -> None:
    outcome(judged_library, typed("2026-07-26: 2 km warm-up, 10 km race in 44:10\n"))
    (row,) = sessions(judged_library)
    assert row["kind"] == "race" and row["hard_s"] == 2650  # 4:25/km against 4:30/km
    judged_library.call(operations.set_kind, [row["id"]], "walking", "")
    judged_library.call(operations.set_kind, [row["id"]], "running", "race")
    assert sessions(judged_library) == [row]


def test_the_tally_gives_one_row_a_run(tmp_path) -> None:
    parsed = season_file.parse((resources.samples() / "season.toml").read_text("utf-8"))
    place = resources.samples() / "diary-week.txt"
    rows = cli.tally([place], parsed.thresholds, parsed.zone, per_second=True)
    assert [(row["easy_s"], row["moderate_s"], row["hard_s"]) for row in rows] == [*DIARY.values()]
    first = rows[0]
    assert (first["format"], first["sport"], first["records"]) == ("paper", "running", 0)
    assert (first["status"], first["thresholds"], first["problem"]) == ("read", "given", None)
    assert first["start_utc"] == "2026-06-09T05:00:00Z" and first["hr_mean"] is None
    assert len(first["reps"]) == 10 and len(first["shades"]) == first["elapsed_s"] == 1875
    assert set(cli.COLUMNS) <= set(first)
    untold = cli.tally([place], [], "Europe/Madrid")
    assert [row["thresholds"] for row in untold] == [None] * 5
    odd = tmp_path / "odd.txt"
    odd.write_text("2026-06-09: 15 min easy, 5 strds\n2026-06-10: 5 km easy\n", "utf-8")
    told = [row["problem"] for row in cli.tally([odd], parsed.thresholds, parsed.zone)]
    assert told == ["1 piece not understood: line 1 'strds': strides?", None]


def test_the_store_and_a_fresh_reading_agree(judged_library) -> None:
    place = resources.samples() / "diary-week.txt"
    judged_library.take_in([place])
    entries = judged_library.call(queries.thresholds)
    read = reading.read_file(str(place), reading.Terms(tuple(entries), "Europe/Madrid"))
    for item, row in zip(read.runs, sessions(judged_library), strict=True):
        assert item.streams == {} and item.run["notation"]
        again = reading.judge_again({}, "[]", replace(entries[0]), Said(item.run["notation"]))
        assert again["easy_s"] == item.judgement["easy_s"] == row["easy_s"]
        assert again["run"]["elapsed_s"] == row["elapsed_s"]


def test_a_dropped_diary_is_read_with_the_runners_shorthand(judged_library, typed) -> None:
    text = "2026-06-09: 45 min E # calm\n2026-06-10: 20 min Q, 10 min E\n"
    assert outcome(judged_library, typed("2026\n" + text, "1.txt")).outcome == "passed over"
    judged_library.call(operations.undo)
    judged_library.call(paper_keep.set_shorthand, Shorthand({"E": "easy", "Q": "fast"}))
    assert outcome(judged_library, typed(text, "2.txt")).outcome == "new"
    rows = sessions(judged_library)
    assert [(row["easy_s"], row["hard_s"]) for row in rows] == [(2700, 0), (600, 1200)]
    kept = judged_library.call(queries.run, rows[0]["id"])
    assert (kept["typed"], kept["notation"]) == ("45 min E", "45 min easy")
    # The runs stay as they are when a word is taken out of the shorthand.
    judged_library.call(paper_keep.set_shorthand, Shorthand({"E": "easy"}))
    judged_library.judge_all_again()
    assert sessions(judged_library) == rows
    assert judged_library.call(paper_keep.line_of, rows[0]["id"]) == "2026-06-09: 45 min E"


def test_race_paces_follow_from_the_last_race_and_stay_so_when_judged_again(
    judged_library, typed
) -> None:
    session = "6 x 1 km @ 10k pace / 60 s rest"
    outcome(judged_library, typed(f"2026-06-01: {session}\n2026-07-05: 10 km race in 40:00\n"))
    outcome(judged_library, typed(f"2026-07-12: {session}\n2027-07-12: {session}\n", "2.txt"))
    before, _, after, later = sessions(judged_library)
    # 10 km in 40:00 is 240 s/km; before it, and a year later, LT2 speed is taken for the pace of
    # one hour. Before it that is 1000/278 m/s: 12,950 m, so 10 km take 3600 x (10 / 12.95) ** 1.06
    # = 2737 s.
    assert before["moving_s"] == pytest.approx(6 * 273.7, abs=2)
    assert after["moving_s"] == 6 * 240 and after["hard_s"] == 6 * 240
    judged_library.judge_all_again()
    assert sessions(judged_library)[2] == after
    for row, said in ((after, "10 km in 40:00"), (later, "LT2 speed")):
        detail = judged_library.call(season.session_detail, row["id"])
        assert detail is not None and any(said in remark for remark in detail.remarks)


def test_a_recorded_race_is_a_result_too(library) -> None:
    outcome(library, resources.samples() / EVENING)
    (row,) = sessions(library)
    assert library.call(paper_queries.race_results) == []
    race = Race(date(2026, 4, 15), "Evening run", round(row["distance_m"] * 1.02))
    library.call(operations.set_plan, [], [race])
    (result,) = library.call(paper_queries.race_results)
    assert (result.seconds, result.metres) == (row["elapsed_s"], race.distance_m)
    far = replace(race, distance_m=row["distance_m"] * 1.2)
    library.call(operations.set_plan, [], [far])
    assert library.call(paper_queries.race_results) == []
    library.call(operations.set_plan, [], [])
    library.call(operations.set_kind, [row["id"]], "running", "race")
    (result,) = library.call(paper_queries.race_results)
    assert result.metres == row["distance_m"]


def test_an_entrys_note_goes_to_the_run_it_is_counted_as(library, typed) -> None:
    library.take_in([resources.samples() / EVENING])
    (run,) = sessions(library)
    library.call(operations.set_note, run["id"], "windy")
    minutes = minutes_of_evening()
    page = f"2026-04-15: {minutes} min easy  # calf\n"
    for _ in range(2):  # the same page twice says nothing more
        library.call(paper_keep.keep, paper_log.Draft(page), date(2026, 11, 25))
        assert [row["note"] for row in sessions(library)] == ["windy / calf"]
    table = typed(
        f"date,duration (min),distance (km),rpe,note\n2026-04-15,{minutes},,4,hot\n", "a.csv"
    )
    assert outcome(library, table).outcome == "same run"
    (row,) = sessions(library)
    assert (row["note"], row["effort"]) == ("windy / calf / hot", 4)
    for _ in range(3):
        library.call(operations.undo)
    assert sessions(library)[0]["note"] in ("", "windy")


def test_of_two_entries_of_a_day_the_nearer_one_is_the_recording(library, typed) -> None:
    minutes = minutes_of_evening()
    text = f"2026-04-15: {round(minutes * 0.85)} min easy # first\n"
    library.take_in([typed(f"{text}2026-04-15: {minutes} min easy # second\n")])
    library.take_in([resources.samples() / EVENING])
    recorded = next(row for row in sessions(library) if row["channels"])
    assert recorded["note"] == "second"
    assert [row["clock"] for row in sessions(library)].count("day") == 1

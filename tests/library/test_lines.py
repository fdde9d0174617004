"""The thresholds page's matter: flags with reasons, kept tests, what recordings tell."""

from __future__ import annotations

import json
from dataclasses import asdict, replace
from datetime import date, timedelta

import pytest

from tercet.domain import DatedThresholds
from tercet.engine import Thresholds
from tercet.engine.efforts import Effort
from tercet.engine.fingerprint import EFFORT_S, Fingerprint
from tercet.engine.judging import METHOD
from tercet.library import lines, operations
from tercet.library.dated import with_new
from tercet.library.library import Library, fingerprint_of
from tercet.store import queries
from tercet.store.lines_queries import RunPrint

TODAY = date(2026, 6, 12)
VALUES = Thresholds(152, 171, 3.55, 4.0, 46, 189)


def made(
    days_ago: int, number: int = 1, *, share: float = 1.0, hr: float = 140.0, **change: object
) -> RunPrint:
    values: dict[str, object] = {
        "best_m": tuple(3.0 * s if s <= 3600 else 0.0 for s in EFFORT_S),
        "steady_hr": (140.0, 142.0), "steady_speed": (3.2, 3.3), "hr_top": 160.0, "hr_low": 90.0,
        "typical_speed": 3.0, "running_s": 4000.0, "efforts": (), "steady_at": (630.0, 930.0),
    }  # fmt: skip
    text = json.dumps(asdict(Fingerprint(**(values | change))))  # type: ignore[arg-type]
    return RunPrint(number, TODAY - timedelta(days=days_ago), "", "", 4000.0, hr, share, text)


def held(*prints: RunPrint, weeks_ago: int = 2) -> lines.Stored:
    entry = DatedThresholds(TODAY - timedelta(weeks=weeks_ago), VALUES, "10 km race", id=1)
    return lines.Stored((entry,), prints, (), {})


def test_nothing_is_flagged_without_reason() -> None:
    assert lines.flags(held(made(3), made(5, 2)), TODAY) == ()
    assert lines.flags(lines.Stored((), (), (), {}), TODAY) == ()


def test_lines_older_than_eight_weeks_are_flagged_while_there_is_running() -> None:
    (flag,) = lines.flags(held(made(3), weeks_ago=9), TODAY)
    assert "9 weeks ago" in flag.reason and flag.offer == "recordings"
    assert lines.flags(held(made(3), weeks_ago=8), TODAY) == ()
    assert lines.flags(held(made(100), weeks_ago=9), TODAY) == ()


def test_a_fresh_test_is_not_old_though_it_judges_the_runs_before_it() -> None:
    old = held(made(3), weeks_ago=20)
    new = DatedThresholds(TODAY, VALUES, "10 km race", id=2)
    entries = with_new(old.entries, new, everything=True)
    assert entries[0].start == old.entries[0].start
    assert lines.flags(replace(old, entries=tuple(entries)), TODAY) == ()
    later = TODAY + timedelta(weeks=9)
    run = replace(made(3), day=later)
    (flag,) = lines.flags(replace(old, entries=tuple(entries), prints=(run,)), later)
    assert "9 weeks ago" in flag.reason


def test_long_easy_runs_above_lt1_are_flagged_from_the_second_on() -> None:
    one, two = made(3, 7, hr=156.0), made(9, 8, hr=155.0)
    assert lines.flags(held(one), TODAY) == ()
    (flag,) = lines.flags(held(two, one), TODAY)
    assert flag.runs == (8, 7) and "152 /min" in flag.reason
    assert lines.flags(held(two, replace(one, easy_share=0.5)), TODAY) == ()
    assert lines.flags(held(two, replace(one, moving_s=2400.0)), TODAY) == ()


def test_a_race_faster_than_lt2_allows_is_flagged() -> None:
    fast = made(4, 9, best_m=tuple(4.3 * s for s in EFFORT_S))
    (flag,) = lines.flags(held(fast), TODAY)
    assert flag.runs == (9,) and "30 minutes faster" in flag.reason and "4:10" in flag.reason
    # half an hour may be run 4 % faster than an hour
    assert lines.flags(held(made(4, 9, best_m=tuple(4.05 * s for s in EFFORT_S))), TODAY) == ()
    assert lines.flags(held(replace(fast, kind="treadmill")), TODAY) == ()
    # what was run before the lines were drawn says nothing against them
    assert lines.flags(held(replace(fast, day=TODAY - timedelta(days=30))), TODAY) == ()


def test_a_flag_left_stays_left_for_its_reason(library: Library) -> None:
    (flag,) = lines.flags(held(made(3), weeks_ago=9), TODAY)
    library.call(lines.leave, flag.key, TODAY)
    left = library.call(lines.stored).left
    assert lines.flags(replace(held(made(3), weeks_ago=9), left=left), TODAY) == ()
    assert lines.flags(replace(held(made(3), weeks_ago=17), left=left), TODAY) != ()
    library.call(operations.undo)
    assert library.call(lines.stored).left == {}


def test_a_test_is_kept_changed_removed_and_brought_back(library: Library) -> None:
    library.call(lines.keep_test, TODAY, "lactate", {"rows": [["10", "", "128", "1.1"]]})
    (kept,) = library.call(lines.stored).tests
    assert (kept.day, kept.kind, kept.rows["rows"][0][0]) == (TODAY, "lactate", "10")
    library.call(lines.keep_test, TODAY, "lactate", {"rows": []}, kept.id)
    assert library.call(lines.stored).tests[0].rows == {"rows": []}
    library.call(lines.remove_test, kept.id)
    assert library.call(lines.stored).tests == ()
    library.call(operations.undo)
    assert library.call(lines.stored).tests[0].id == kept.id


def test_recordings_tell_both_lines_and_the_ceiling() -> None:
    efforts = ((180.0, 920.0), (420.0, 1880.0), (900.0, 3800.0))  # CS 4 m/s, D' 200 m
    hard = [
        made(10 * k + 2, k, efforts=(Effort(s, m, 0.6, 180.0),))
        for k, (s, m) in enumerate(efforts, 1)
    ]
    found = lines.own(held(*hard, made(6, 8), made(9, 9)), TODAY)
    assert found.recorded is not None and found.refusal == ""
    assert found.recorded.critical.speed == pytest.approx(4.0, abs=0.01)
    assert found.ceiling is not None
    assert found.ceiling.speed == pytest.approx(3.25 + 11 / 24.2, abs=0.1)
    assert found.unread == 0


def test_what_recordings_do_not_tell_is_said() -> None:
    found = lines.own(held(made(3)), TODAY)
    assert found.recorded is None and "no hard effort" in found.refusal
    assert "1 run of the last 90 days" in found.refusal
    assert found.ceiling is None and "Fewer than 3 runs" in found.ceiling_refusal
    assert "the last 42 days" in found.ceiling_refusal


def test_an_old_fingerprint_still_loads_and_is_counted() -> None:
    table = json.loads(made(3).fingerprint)
    for name in ("efforts", "steady_at", "warmth"):
        del table[name]
    old = replace(made(3), fingerprint=json.dumps(table))
    assert fingerprint_of(old.fingerprint).efforts is None
    assert lines.own(held(old), TODAY).unread == 1


def test_a_straight_line_between_tests_is_stored_and_judged_by(season_library: Library) -> None:
    entries = season_library.call(lambda store: lines.stored(store)).entries
    last = max(entries, key=lambda entry: entry.start)
    newer = replace(
        last, id=None, start=last.start + timedelta(days=60), change="linear",
        values=replace(last.values, lt1_speed=last.values.lt1_speed * 1.2,  # type: ignore[operator]
                       lt2_speed=last.values.lt2_speed * 1.2),  # type: ignore[operator]
    )  # fmt: skip
    preview = season_library.preview([*entries, newer])
    season_library.use(preview, "Change thresholds")
    stored = season_library.call(lines.stored).entries
    assert [entry.change for entry in stored][-1] == "linear"
    assert not season_library.call(queries.judged_by_others, METHOD)

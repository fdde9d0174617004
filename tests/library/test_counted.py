"""What stands behind a total: sessions by their work, runs by what judged them, their doubt."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

from tests.library.spans import run

from tercet.library import corrections, counted
from tercet.library.library import Library
from tercet.store import queries


def test_a_session_counts_whole_by_its_work() -> None:
    # Session-goal approach: Seiler & Kjerland 2006; the minutes asked for are this program's own.
    runs = [run(1, 0, 50), run(2, 1, 50, 0, 5), run(3, 2, 50, 10, 4), run(4, 3, 50, 9, 4)]
    assert counted.sessions([*runs, run(5, 4, 0)]) == (2, 1, 1)


def test_runs_are_told_apart_by_what_judged_them(season_library: Library, tmp_path: Path) -> None:
    diary = tmp_path / "diary.txt"
    diary.write_text("20.06.2026 easy 50 min\n21.06.2026 40 min", "utf-8")
    before = season_library.call(counted.behind, date.min, date.max)
    season_library.take_in([diary])
    told = season_library.call(counted.behind, date.min, date.max)
    assert (before.runs, before.both, before.words) == (10, 10, 0)
    assert (told.runs, told.both, told.words, told.unjudged) == (12, 10, 1, 1)
    assert told.unjudged_s == 40 * 60.0
    assert (told.known >= 10, told.estimated) == (True, 0)


def test_doubt_is_the_sum_of_the_runs_and_holds_what_was_judged(season_library: Library) -> None:
    rows = season_library.call(
        lambda store: store.rows(
            "SELECT intervals, easy_s FROM judgement, run WHERE id = run_id AND sport = 'running'"
        )
    )
    told = season_library.call(counted.behind, date.min, date.max)
    ends = [json.loads(row["intervals"]) for row in rows]
    assert told.ranged == len(ends)
    assert abs(told.low[0] - sum(end[0][0] for end in ends)) < 1.0
    assert told.low[0] <= sum(row["easy_s"] for row in rows) <= told.high[0]


def test_a_channel_counts_only_with_its_thresholds(season_library: Library) -> None:
    def without(store: object, *names: str) -> None:
        for entry in queries.thresholds(store):  # type: ignore[arg-type]
            row = {**queries.threshold_row(entry), **dict.fromkeys(names)}
            with store.atomic("Change"):  # type: ignore[attr-defined]
                store.put("threshold", row)  # type: ignore[attr-defined]

    season_library.call(without, "lt1_hr")
    told = season_library.call(counted.behind, date.min, date.max)
    assert (told.both, told.pace, told.heart) == (0, 10, 0)


def test_what_the_runner_spoke_for_is_counted(season_library: Library) -> None:
    first = season_library.call(
        lambda store: store.rows("SELECT id FROM run WHERE sport = 'running' ORDER BY id")[0]["id"]
    )
    season_library.call(corrections.shade_stretch, first, 0.0, 60.0, "H", "")
    assert season_library.call(counted.behind, date.min, date.max).said == 1
    assert season_library.call(counted.behind, date.min, date(1990, 1, 1)).runs == 0

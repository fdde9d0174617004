"""Next steps of what stands out, written into the plan: once, and taken back by one undo."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest

from tercet.domain import Block, Race
from tercet.library import insight, next_steps, operations, planning, plans, season, suggested
from tercet.library.library import Library
from tercet.library.standing import Step
from tercet.store import plan_queries

TODAY = date(2026, 5, 10)  # a Sunday
WEEK = TODAY + timedelta(days=1)


def ran(library: Library, folder: Path, words: dict[int, str]) -> None:
    """Take in a diary, words by days before today, with a block around it."""
    lines = (f"{TODAY - timedelta(days=back):%d.%m.%Y} {text}" for back, text in words.items())
    diary = folder / "diary.txt"
    diary.write_text("\n".join(lines), "utf-8")
    library.take_in([diary])
    block = Block(TODAY - timedelta(days=34), TODAY, "Now", "base", 0.8)
    library.call(operations.set_plan, [block], [])


def steps(library: Library, key: str) -> list[Step]:
    view = library.call(season.season, TODAY)
    page = library.call(insight.middle_page, view, "")
    found = {remark.key: remark for remark in page.remarks}
    return [step for step in found[key].steps if step.lines or step.to.startswith("plan:")]


CASES = {
    "never hard": dict.fromkeys(range(1, 28, 3), "easy 45 min"),
    "easy short": dict.fromkeys(range(1, 28, 3), "easy 20 min, 20 min moderate"),
    "never easy": dict.fromkeys(range(1, 28, 3), "easy 20 min, 25 min moderate"),
    "longer": {1: "20 km easy 110 min"} | dict.fromkeys(range(4, 60, 3), "10 km easy 60 min"),
    "no rest": dict.fromkeys(range(16), "easy 40 min, 4 min hard"),
}


@pytest.mark.parametrize("key", CASES)
def test_a_step_writes_one_line_once_and_undo_takes_it_back(
    library: Library, tmp_path: Path, key: str
) -> None:
    ran(library, tmp_path, CASES[key])
    (step,) = steps(library, key)
    (line,) = step.lines
    assert TODAY < line.day <= WEEK + timedelta(days=6)
    told = plans.understand(line.notation, None)
    assert not told.unclear
    assert told.rest == (key == "no rest")
    assert (told.seconds[2] > 0) == (key == "never hard")
    library.call(next_steps.plan, step)
    library.call(next_steps.plan, step)
    assert [item.notation for item in library.call(plan_queries.planned)] == [line.notation]
    page = library.call(insight.middle_page, library.call(season.season, TODAY), "")
    assert page.next_week.amounts is not None
    assert page.next_week.amounts.hard == 0  # one line makes no block that asks for more
    (held,) = steps(library, key)
    assert held.lines == () and held.to == f"plan:{WEEK}"
    library.call(operations.undo)
    assert library.call(plan_queries.planned) == []
    assert steps(library, key) == [step]


def test_a_long_run_is_as_long_as_before_the_leap(library: Library, tmp_path: Path) -> None:
    ran(library, tmp_path, CASES["longer"])
    (step,) = steps(library, "longer")
    assert step.lines[0].notation == "60 min easy"
    library.call(planning.set_race, Race(TODAY - timedelta(days=1), "Town 20"))
    assert steps(library, "longer") == []


def test_strides_join_an_easy_run_where_no_usual_day_is_free(
    library: Library, tmp_path: Path
) -> None:
    ran(library, tmp_path, CASES["never hard"])
    view = library.call(season.season, TODAY)
    page = library.call(insight.middle_page, view, "")
    library.call(suggested.plan, page.suggested)
    before = library.call(plan_queries.planned)
    (step,) = steps(library, "never hard")
    library.call(next_steps.plan, step)
    library.call(next_steps.plan, step)
    after = library.call(plan_queries.planned)
    assert [item.day for item in after] == [item.day for item in before]
    longer = [b.notation for a, b in zip(before, after, strict=True) if a.notation != b.notation]
    assert longer == [f"{before[0].notation}, {next_steps.STRIDES}"]


def test_nothing_hard_beside_a_race_nor_in_recovery(library: Library, tmp_path: Path) -> None:
    ran(library, tmp_path, CASES["never hard"])
    library.call(planning.set_race, Race(WEEK + timedelta(days=3), "Town 10"))
    (step,) = steps(library, "never hard")
    assert all(abs((line.day - WEEK).days - 3) >= 2 for line in step.lines)
    library.call(planning.set_block, Block(WEEK, WEEK + timedelta(days=13), "Rest", "recovery"))
    assert steps(library, "never hard") == []


def test_what_is_long_past_is_not_answered(library: Library, tmp_path: Path) -> None:
    ran(library, tmp_path, CASES["never hard"])
    late = TODAY + timedelta(days=40)
    page = library.call(insight.middle_page, library.call(season.season, late), "")
    assert page.remarks
    assert not any(step.lines for remark in page.remarks for step in remark.steps)

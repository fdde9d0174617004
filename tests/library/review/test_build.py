"""The pages of a review: few words, numbers that agree with the season's, choices that last."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path

import pandas as pd
import pytest
from tests.library.spans import run

from tercet.domain import Block
from tercet.library import operations, season
from tercet.library.library import Library
from tercet.library.review import blocks as build_up
from tercet.library.review import build, choices, figures, scope, tables, volume
from tercet.library.review import pair as side_by_side
from tercet.library.review.choices import Choices
from tercet.library.review.content import MOST_WORDS, Review
from tercet.library.views import SeasonView, SessionView, WeekView

AFTER = date(2026, 10, 1)


def made(library: Library, key: str = "") -> Review:
    return library.call(build.review, key, AFTER)[0]


def test_every_page_has_one_claim_and_few_words(season_library: Library) -> None:
    review = made(season_library)
    assert [page.key for page in review.shown][:3] == ["line", "weeks", "blocks"]
    assert review.pages[-1].key == "next"
    for page in review.shown:
        assert page.title
        assert len(f"{page.title} {page.line}".split()) <= MOST_WORDS, page.key
        assert all(len(row) == len(page.table.headings) for row in page.table.rows)


def test_hard_days_are_those_of_the_other_pages() -> None:
    hard, tempo = run(1, 0, 30, 0, 3), run(2, 2, 20, 25)
    strides, more = run(3, 4, 40, 0, 4), run(4, 0, 30, 0, 3)
    days = volume.hard_days([hard, tempo, strides, more])
    assert days == [hard.day, tempo.day]  # of a day added up; tempo too


def test_two_blocks_of_one_name_bear_their_years(season_library: Library) -> None:
    view = season_library.call(season.season, AFTER)
    now = view.blocks[0]
    year = timedelta(days=364)
    before = replace(now, start=now.start - year, end=now.end - year)
    both = replace(view, blocks=(before, *view.blocks))
    pair = scope.scope(both, f"{now.start}+{before.start}")
    names = [f"{now.name} {block.start.year}" for block in (before, now)]
    assert [block.name for block in pair.view.blocks] == names
    assert pair.name == " and ".join(names)
    assert (now.start.isoformat(), names[1]) in scope.choices(both)


def year_before(view: SeasonView) -> SeasonView:
    """The season and the same a year before it."""
    year = timedelta(days=364)

    def earlier(week: WeekView) -> WeekView:
        days = [[s._replace(id=-s.id, day=s.day - year) for s in day] for day in week.days]
        return replace(week, first_day=week.first_day - year, days=tuple(map(tuple, days)))

    blocks = [
        replace(
            block, start=block.start - year, end=block.end - year,
            weeks=tuple(map(earlier, block.weeks)),
        )
        for block in view.blocks
    ]  # fmt: skip
    races = [replace(race, day=race.day - year) for race in view.races]
    return replace(view, blocks=(*blocks, *view.blocks), races=(*races, *view.races))


def test_two_seasons_are_laid_side_by_side_back_from_their_races(season_library: Library) -> None:
    both = year_before(season_library.call(season.season, AFTER))
    first, second = scope.seasons(both)
    keys = [f"{blocks[0].start}..{blocks[-1].start}" for blocks in (first, second)]
    about = scope.scope(both, scope.pair_key(*keys))
    assert (about.name, len(about.sides)) == ("Season 2025 and Season 2026", 2)
    page = side_by_side.back(about.sides, about.view)
    assert page.table.rows[-1][0] == "race"
    for row, ids in zip(page.table.rows, page.table.runs, strict=True):
        assert row[2] == row[4]  # the same running, so the same hours in every row
        assert sorted(-k for k in ids if k < 0) == sorted(k for k in ids if k > 0)
    ran = {run for runs in page.table.runs for run in runs}
    assert ran == {s.id for s in about.view.sessions if s.sport == "running"}
    told = side_by_side.differs(about.sides, about.view, 2).table.rows
    assert told[0][1] == "Easy share"
    # No empty months between the two, and a gap of half a year is no gap in training.
    axis = build_up.Axis(about.view.blocks)
    whole = axis.spans[-1][1] - axis.spans[0][0]
    assert whole == sum(right - left for left, right in axis.spans) + axis.ROOM
    gaps = [row for row in volume.volume(about.view).table.rows if row[0].startswith("from ")]
    assert all(int(row[5]) < 60 for row in gaps)


def test_figures_are_the_seasons(season_library: Library) -> None:
    view = season_library.call(season.season, AFTER)
    page = made(season_library).pages[0]
    for row, block in zip(page.table.rows, view.blocks, strict=False):
        assert row[0] == block.name
        assert row[3:6] == tuple(figures.hours(value) for value in block.seconds[:3])
        assert row[6] == figures.share(block.easy_share)
    ids = {session.id for session in view.sessions if session.sport == "running"}
    assert {run for runs in page.table.runs for run in runs} == ids


def test_a_table_read_by_pandas_has_the_stores_totals(season_library: Library) -> None:
    view = season_library.call(season.season, AFTER)
    for number in (0, 1):
        page = made(season_library).pages[number]
        frame = pd.read_csv(io.StringIO(tables.as_csv(page)))
        for k, name in ((0, "easy_s"), (1, "moderate_s"), (2, "hard_s")):
            total = sum(block.seconds[k] for block in view.blocks)
            assert frame[name].sum() == pytest.approx(total, abs=0.05)


def test_words_that_a_spreadsheet_would_run_are_quoted(tmp_path: Path, library: Library) -> None:
    chosen = Choices(next_lines=("=1+1", "steady, then easy"))
    key = made(library).scope
    library.call(choices.keep, key, chosen)
    review = made(library)
    assert review.pages[-1].title == "What to do next"
    written = tables.write_tables(review, tmp_path / "out")
    assert [path.parent.parent for path in written] == [tmp_path / "out"] * len(written)
    rows = list(csv.reader(io.StringIO(written[-1].read_text("utf-8"))))
    assert rows[1][1] == "'=1+1"
    assert not list((tmp_path / "out").rglob("*.part"))


def test_choices_last_and_are_taken_back(season_library: Library) -> None:
    before = made(season_library)
    keys = [page.key for page in before.pages]
    chosen = (
        Choices()
        .with_words("titles", "blocks", "Specific ran too much in the middle")
        .with_words("notes", "blocks", "Ask about Saturdays")
        .leave_out("weeks", True)
        .move(keys, "volume", -2)
    )
    season_library.call(choices.keep, before.scope, chosen)
    after = made(season_library)
    assert "weeks" not in [page.key for page in after.shown]
    moved = [page.key for page in after.pages]
    assert moved.index("volume") == keys.index("volume") - 2
    page = next(page for page in after.pages if page.key == "blocks")
    assert (page.title, page.notes) == (
        "Specific ran too much in the middle",
        "Ask about Saturdays",
    )
    assert page.retitled
    season_library.call(operations.undo)
    assert made(season_library) == before


def test_the_words_of_the_review_before_come_along(season_library: Library) -> None:
    first = Choices(next_lines=("More hills",), written="2026-07-06")
    season_library.call(choices.keep, "2026-04-13", first)
    season_library.call(choices.keep, "2026-08-10", Choices(next_lines=("Later",)))
    before = made(season_library, "2026-07-06").before
    assert before is not None
    assert (before.name, before.day) == ("Groundwork", "6 July 2026")
    assert before.lines == ("More hills",)
    assert made(season_library, "2026-04-13").before is None


def test_damaged_choices_are_as_none(library: Library) -> None:
    for value in ("{", "[]", '{"titles": 3, "order": 1, "hidden": null}'):
        library.call(operations.set_setting, "review x", value)
        assert library.call(choices.read, "x") == Choices()


def test_a_block_and_a_pair_are_reviewed_alone(season_library: Library) -> None:
    whole = made(season_library)
    alone = made(season_library, "2026-07-06")
    assert alone.name == "Support"
    assert [row[0] for row in alone.pages[0].table.rows] == ["Support", "All"]
    pair = made(season_library, scope.pair_key("2026-04-13", "2026-08-10"))
    assert [page.key for page in pair.pages][:3] == ["pair", "differs", "line"]
    assert [row[0] for row in pair.pages[2].table.rows] == ["Groundwork", "Specific", "All"]
    assert (pair.name, pair.scope) == ("Groundwork and Specific", "2026-04-13+2026-08-10")
    assert made(season_library, pair.scope) == pair
    # Of Support the race is in its third week of five, and all five are told of.
    beside = made(season_library, scope.pair_key("2026-07-06", "2026-08-10"))
    hours = next(row for row in beside.pages[1].table.rows if row[1] == "Hours")
    assert "5 weeks" in hours[2] and "3 and 5" not in hours[2]
    assert made(season_library, "nonsense").scope == whole.scope
    assert whole.scopes[0] == (whole.scope, whole.name)


def test_an_empty_store_says_what_would_fill_it(library: Library) -> None:
    review = made(library)
    assert [page.key for page in review.shown] == ["next"]
    assert all(page.missing for page in review.pages if page.key != "next")


def test_shares_add_up_to_a_hundred() -> None:
    assert figures.shares((1.0, 1.0, 1.0)) == ("33 %", "33 %", "34 %")
    assert figures.shares((83.6, 5.2, 11.2)) == ("84 %", "5 %", "11 %")
    assert figures.shares((73.59, 17.71, 8.7)) == ("74 %", "18 %", "8 %")
    assert figures.shares((0.0, 0.0, 0.0)) == ("–", "–", "–")


def session(day: date, note: str = "") -> SessionView:
    return SessionView(
        1, day, datetime(2026, 1, 1), "Run", "running", "", (3600.0, 0.0, 0.0, 0.0, 0.0),
        (0.0,) * 5, 3600.0, 3600.0, 10000.0, note=note,
    )  # fmt: skip


def test_a_gap_is_told_with_one_word_of_its_reason_and_no_more() -> None:
    first = date(2026, 3, 1)
    kept = [
        session(first),
        session(first + timedelta(days=2), "Fever since yesterday, at home in Corvaleta"),
        session(first + timedelta(days=12)),
        session(first + timedelta(days=14)),
    ]

    class View:
        sessions = tuple(kept)

    found = volume.find_gaps(kept, View())  # type: ignore[arg-type]
    assert found == [(first + timedelta(days=3), first + timedelta(days=11), "ill")]
    assert volume.reason_in(["cold wind"]) == ""


def test_years_without_a_break_are_reviewed_one_by_one(library: Library) -> None:
    first = date(2023, 1, 2)
    weeks = [first + timedelta(days=28 * k) for k in range(42)]
    plan = [Block(day, day + timedelta(days=27), f"Block {day}") for day in weeks]
    library.call(operations.set_plan, plan, [])
    review = library.call(build.review, "", date(2026, 3, 1))[0]
    names = [name for key, name in review.scopes if ".." in key]
    assert names == ["Season 2026", "Season 2025", "Season 2024", "Season 2023"]
    assert review.name == "Season 2026"

"""The plan's operations: never overlapping, one step each, laid over what is there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tercet.domain import Block, Planned, Race
from tercet.engine.countback import Rules, Volume, week_starts
from tercet.formats.calendar import read, write
from tercet.formats.paper import Shorthand
from tercet.library import operations, paper_keep, planning, season
from tercet.library.library import Library
from tercet.library.season_file import parse
from tercet.store import paper_queries, plan_queries, queries
from tercet.store.database import Store

DAY = timedelta(days=1)
TODAY = date(2026, 6, 17)  # a Wednesday
BASE = Block(date(2026, 4, 6), date(2026, 5, 31), "Hills", "base", 0.9)
PEAK = Block(date(2026, 6, 1), date(2026, 7, 5), "Sharpening", "specific", 0.8)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    made = Store(tmp_path)
    operations.set_plan(made, [BASE, PEAK], [Race(date(2026, 8, 2), "Half", 21_097.5)])
    yield made
    made.close()


def _blocks(store: Store) -> list[tuple[str, date, date]]:
    return [(block.name, block.start, block.end) for block in queries.blocks(store)]


def test_an_edge_moves_both_and_is_one_step(store: Store) -> None:
    first, second = queries.blocks(store)
    assert first.id and second.id
    planning.move_edge(store, first.id, second.id, date(2026, 6, 8))
    planning.move_edge(store, first.id, second.id, date(2026, 6, 15))
    assert _blocks(store) == [
        ("Hills", BASE.start, date(2026, 6, 14)),
        ("Sharpening", date(2026, 6, 15), PEAK.end),
    ]
    operations.undo(store)
    assert _blocks(store) == [("Hills", BASE.start, BASE.end), ("Sharpening", PEAK.start, PEAK.end)]
    with pytest.raises(ValueError, match="no day left"):
        planning.move_edge(store, first.id, second.id, date(2026, 7, 13))


def test_split_and_join(store: Store) -> None:
    first, second = queries.blocks(store)
    assert first.id and second.id
    planning.split_block(store, first.id, date(2026, 5, 4))
    a, b, _ = queries.blocks(store)
    assert (a.end, b.start, b.kind) == (date(2026, 5, 3), date(2026, 5, 4), "base")
    assert a.id and b.id
    planning.join_blocks(store, a.id, b.id)
    assert _blocks(store)[0] == ("Hills", BASE.start, BASE.end)
    with pytest.raises(ValueError, match="split"):
        planning.split_block(store, second.id, PEAK.start)


def test_targets_and_volume_are_kept_and_shown(store: Store) -> None:
    block = queries.blocks(store)[1]
    volume = Volume(22_800.0, 0.08, 27_000.0, 4, 0.7)
    wanted = replace(
        block,
        easy_target=0.78,
        moderate_target=0.07,
        hard_target=0.15,
        measure="metres",
        volume=volume,
        longest=6600.0,
    )
    planning.set_block(store, wanted)
    assert queries.blocks(store)[1] == wanted
    shown = season.season(store, TODAY).blocks[1]
    assert (shown.shares, shown.measure, shown.volume) == ((0.78, 0.07, 0.15), "metres", volume)
    assert [week.wanted for week in shown.weeks] == pytest.approx(
        [22_800, 24_624, 26_593.92, 0.7 * 26_593.92, 26_593.92]
    )
    with pytest.raises(ValueError, match="overlap"):
        planning.set_block(store, replace(wanted, start=date(2026, 5, 20)))
    other = season.season(store, TODAY).blocks[0]
    assert other.shares == pytest.approx((0.9, 0.02, 0.08))  # usual in a base block


def test_edits_of_different_things_about_a_block_are_undone_one_by_one(store: Store) -> None:
    block = queries.blocks(store)[1]
    volume = replace(block, volume=Volume(18_000.0, 0.0))
    for wanted in (volume, replace(volume, hard_target=0.1), replace(volume, hard_target=0.12)):
        planning.set_block(store, wanted)
    operations.undo(store)
    assert queries.blocks(store)[1] == volume
    operations.undo(store)
    assert queries.blocks(store)[1] == block


def test_counting_back_keeps_what_was_run(store: Store) -> None:
    race = queries.races(store)[0]
    planning.lay_out(store, race, date(2026, 6, 15), TODAY, 20_000.0, Rules())
    blocks = queries.blocks(store)
    assert [(b.name, b.start, b.end) for b in blocks] == [
        ("Hills", BASE.start, BASE.end),
        ("Sharpening", PEAK.start, date(2026, 6, 14)),
        ("Specific", date(2026, 6, 15), date(2026, 7, 19)),
        ("Taper", date(2026, 7, 20), date(2026, 8, 2)),
    ]
    assert queries.races(store)[0].main
    operations.undo(store)
    assert len(queries.blocks(store)) == 2


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 60), st.integers(0, 20)), max_size=6),
    st.integers(-100, 50),
    st.integers(60, 300),
    st.integers(-80, 0),
)
def test_laid_blocks_never_overlap(
    spans: list[tuple[int, int]], first: int, race_in: int, start: int
) -> None:
    at = TODAY + first * DAY
    blocks = []
    for number, (length, gap) in enumerate(spans):
        blocks.append(Block(at, at + (length - 1) * DAY, f"b{number}", "base", 0.9, number + 1))
        at += (length + gap) * DAY
    race = Race(TODAY + race_in * DAY, "Race", 10_000.0, 1)
    made = planning.laid_blocks(blocks, [race], race, TODAY + start * DAY, TODAY, 20_000.0)
    for one, two in pairwise(made):
        assert one.end < two.start
    assert race.day in [block.end for block in made]
    ids = [block.id for block in made if block.id is not None]
    assert len(set(ids)) == len(ids)


def test_planned_sessions_are_understood_matched_and_moved(store: Store) -> None:
    planning.add_planned(store, date(2026, 6, 16), "30 min easy")
    planning.add_planned(store, date(2026, 6, 19), "20 min easy, 8 x 1 min hard / 1 min jog")
    planning.add_planned(store, date(2026, 6, 20), "rest")
    planning.add_planned(store, date(2026, 6, 20), "40 min easy, 6 x 100 strds")
    view = season.season(store, TODAY)
    week = next(w for b in view.blocks for w in b.weeks if w.first_day == date(2026, 6, 15))
    tuesday, friday, saturday = week.planned[1], week.planned[4], week.planned[5]
    assert [item.state for item in (*tuesday, *friday, *saturday)] == [
        "missed",
        "to run",
        "rest",
        "to run",
    ]
    assert friday[0].seconds[:3] == (20 * 60 + 8 * 60, 0.0, 480.0)
    assert saturday[1].unclear == ("strds",)
    assert saturday[1].seconds[:3] == (2400.0, 0.0, 0.0)  # what is unclear adds nothing
    planning.move_planned(store, friday[0].id, date(2026, 6, 18))
    planning.move_planned(store, friday[0].id, date(2026, 6, 21), copy=True)
    assert [e.day.day for e in plan_queries.planned(store)] == [16, 18, 20, 20, 21]
    planning.copy_week(store, date(2026, 6, 15))
    assert len(plan_queries.planned(store)) == 10
    operations.undo(store)
    planning.edit_planned(store, friday[0].id, " ")
    assert len(plan_queries.planned(store)) == 4


def test_a_plan_goes_through_a_calendar_and_back(store: Store) -> None:
    lines = ["30 min easy", "15 min easy, 10 x 100 m fast / 100 m jog; 10 min easy"]
    for number, line in enumerate(lines):
        planning.add_planned(store, TODAY + number * DAY, line)
    written = write(planning.calendar_entries(store))
    found = read(written)
    assert isinstance(found, list)
    planning.take_calendar(store, found)
    assert [e.notation for e in plan_queries.planned(store)] == lines  # nothing twice
    for entry in plan_queries.planned(store):
        planning.remove_planned(store, entry.id or 0)
    planning.take_calendar(store, found)
    assert [(e.day, e.notation) for e in plan_queries.planned(store)] == [
        (TODAY, lines[0]),
        (TODAY + DAY, lines[1]),
    ]


def test_only_one_race_is_the_main_one(store: Store) -> None:
    planning.set_race(store, Race(date(2026, 7, 5), "10 km", 10_000.0, main=True))
    half = next(race for race in queries.races(store) if race.name == "Half")
    planning.set_race(store, replace(half, main=True, goal_s=5040.0))
    assert [(r.name, r.main, r.goal_s) for r in queries.races(store)] == [
        ("10 km", False, None),
        ("Half", True, 5040.0),
    ]


def test_last_years_main_race_stays_one(store: Store) -> None:
    half = next(race for race in queries.races(store) if race.name == "Half")
    planning.set_race(store, Race(half.day - 364 * DAY, "Half before", 21_097.5, main=True))
    planning.set_race(store, Race(half.day - 40 * DAY, "10 km", 10_000.0, main=True))
    planning.lay_out(store, half, TODAY, TODAY, 4 * 3600.0)
    marked = [(race.name, race.main) for race in queries.races(store)]
    assert marked == [("Half before", True), ("10 km", False), ("Half", True)]
    operations.undo(store)
    assert [race.name for race in queries.races(store) if race.main] == ["Half before", "10 km"]


def test_a_race_kept_beside_the_main_one_leaves_it_so() -> None:
    main = Race(date(2026, 9, 27), "Half", 21_097.5, main=True, id=1)
    beside = Race(date(2026, 8, 2), "10 km", 10_000.0, main=True)
    assert not planning.as_kept([main], beside).main
    assert planning.as_kept([main], replace(main, name="Half marathon", main=False)).main
    assert planning.as_kept([main], replace(beside, day=main.day + 300 * DAY)).main
    assert planning.as_kept([], beside).main


def test_planning_goes_on_after_a_block_that_leads_to_an_earlier_race() -> None:
    today = date(2026, 9, 23)
    taper = Block(date(2026, 9, 14), date(2026, 9, 27), "Taper", "taper", 0.8)
    half, spring = Race(taper.end, "Half"), Race(date(2027, 4, 18), "10 km")
    start = lambda race, blocks: planning.usual_start(blocks, [half], race.day, today)  # noqa: E731
    assert start(spring, [taper]) == date(2026, 9, 28)
    assert start(half, [taper]) == taper.start
    assert start(spring, []) == date(2026, 9, 21)


def test_a_planned_row_round_trip(store: Store) -> None:
    entry = Planned(TODAY, "45 min easy", 2, "with Aldo")
    row = plan_queries.planned_row(entry)
    assert row == {**row, "day": "2026-06-17", "place": 2, "note": "with Aldo"}
    assert len(week_starts(BASE.start, BASE.end)) == 8


def test_planned_easy_running_goes_on_from_today(store: Store) -> None:
    block = queries.blocks(store)[1]
    wanted = replace(block, easy_target=0.8, volume=Volume(10_000.0, 0.0, None, 0))
    planning.set_block(store, wanted)
    planning.add_planned(store, date(2026, 6, 16), "30 min easy")  # missed by now
    planning.add_planned(store, date(2026, 6, 19), "40 min easy, 5 min hard")
    built = season.build_up(season.season(store, TODAY))[1]
    # This week by its sessions, the next two by the volume's 80 %.
    assert [(date.fromordinal(day), value) for day, value in built.easy_ahead] == [
        (date(2026, 6, 18), 0.0),
        (date(2026, 6, 22), 2400.0),
        (date(2026, 6, 29), 10_400.0),
        (date(2026, 7, 6), 18_400.0),
    ]
    assert season.build_up(season.season(store, TODAY), "metres")[1].easy_ahead == ()
    assert season.build_up(season.season(store, date(2026, 8, 1)))[1].easy_ahead == ()


def test_a_season_file_of_another_year_leaves_this_years_plan(store: Store) -> None:
    text = """
        [[thresholds]]
        from = {0}-04-13
        lt1_speed = "5:40/km"
        lt2_speed = "4:40/km"
        [[blocks]]
        name = "{1}"
        kind = "base"
        start = {0}-04-13
        end = {0}-07-05
        [[races]]
        day = {0}-07-05
        name = "{1} 10"
        distance_m = 10000
        main = true
    """

    def held() -> list[list[str]]:
        return [
            [str(entry.start) for entry in queries.thresholds(store)],
            [block.name for block in queries.blocks(store)],
            [race.name for race in queries.races(store)],
        ]

    with store.atomic("Take in"):
        for block in queries.blocks(store):
            store.remove("block", block.id)
    for year, name in ((2031, "Now"), (2030, "Before"), (2031, "Anew")):
        with store.atomic("Take in"):
            operations.apply_season(store, parse(text.format(year, name)))
        if name == "Before":
            both = [["2030-04-13", "2031-04-13"], ["Before", "Now"], ["Before 10", "Now 10"]]
            assert [part[-2:] for part in held()] == both
    # The same days said anew take the place of what was said of them.
    assert held()[1] == ["Before", "Anew"]
    assert [day[:4] for day in held()[0]][-2:] == ["2030", "2031"]
    assert "Now 10" not in held()[2]


def test_a_season_file_plans_nothing_twice(store: Store) -> None:
    line = '[[planned]]\nday = 2026-06-16\nnotation = "30 min easy"\n'
    for text in (line, line + line.replace("30", "45")):
        with store.atomic("Take in"):
            operations.apply_season(store, parse(text))
    assert [(e.notation, e.place) for e in plan_queries.planned(store)] == [
        ("30 min easy", 0),
        ("45 min easy", 1),
    ]


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("25 Q", "25 easy"),  # could be kilometres or minutes: asked
        ("70 easy", "70 min easy"),  # nobody plans as many kilometres
        ("30 min Q, 5 km hard", "30 min easy, 5 km hard"),
    ],
)
def test_a_planned_line_is_read_with_the_runners_shorthand(
    library: Library, typed: str, plain: str
) -> None:
    library.call(paper_keep.set_shorthand, Shorthand({"Q": "easy"}, ""))
    library.call(planning.add_planned, date(2026, 6, 9), typed)
    assert [entry.notation for entry in library.call(plan_queries.planned)] == [plain]


def test_what_a_number_alone_means_is_asked_once(library: Library) -> None:
    library.call(planning.add_planned, date(2026, 6, 9), "25 easy")
    (entry,) = library.call(plan_queries.planned)
    library.call(planning.edit_planned, entry.id, "25 min easy")  # as one click answers it
    library.call(planning.add_planned, date(2026, 6, 10), "30 easy, 20 steady")
    told = [entry.notation for entry in library.call(plan_queries.planned)]
    assert told == ["25 min easy", "30 min easy, 20 min steady"]
    library.call(operations.undo)
    library.call(operations.undo)
    assert library.call(paper_queries.shorthand) == ({}, "")

"""The season as the screens get it: weeks in blocks, sums that agree, build-up, one session."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tercet.domain import Block
from tercet.engine import Shade, tally
from tercet.library import operations, season
from tercet.library.library import Library
from tercet.library.views import BlockView, SeasonView, SessionView
from tercet.store import packing, queries
from tercet.store.database import Store

TODAY = date(2026, 10, 1)


@pytest.fixture
def view(season_library: Library) -> SeasonView:
    return season_library.call(season.season, TODAY)


def running(view: SeasonView) -> list[SessionView]:
    return [session for session in view.sessions if session.sport == "running"]


def check_sums(view: SeasonView) -> None:
    """Sums of sessions are those of weeks, of blocks and of the season, by the engine too."""
    runs = running(view)
    total = np.array([run.seconds for run in runs]).reshape(-1, 5).sum(axis=0)
    for amount in ("seconds", "metres"):
        whole = np.array([getattr(run, amount) for run in runs]).reshape(-1, 5).sum(axis=0)
        blocks = np.array([getattr(block, amount) for block in view.blocks]).reshape(-1, 5)
        assert blocks.sum(axis=0) == pytest.approx(whole)
        for block in view.blocks:
            weeks = np.array([getattr(week, amount) for week in block.weeks])
            assert weeks.sum(axis=0) == pytest.approx(getattr(block, amount))
    table = tally.block_sums(
        [run.day for run in runs],
        np.array([run.seconds for run in runs]).reshape(-1, 5),
        [(block.start, block.end) for block in view.blocks],
    )
    assert table[-1].tolist() == [0.0] * 5  # no run lies outside every block
    for block, sums in zip(view.blocks, table, strict=False):
        assert block.seconds == tuple(sums.tolist())  # to the last digit
        assert block.easy_share == tally.easy_share(sums)
    assert total == pytest.approx(table.sum(axis=0))


def test_sums_of_weeks_blocks_and_season_agree(view: SeasonView) -> None:
    assert view.session_count == len(running(view)) == 10
    assert [block.name for block in view.blocks] == ["Groundwork", "Support", "Specific", "Taper"]
    check_sums(view)


def test_weeks_are_those_of_pandas(view: SeasonView) -> None:
    runs = running(view)
    frame = pd.DataFrame(
        [run.seconds for run in runs], index=pd.DatetimeIndex([pd.Timestamp(r.day) for r in runs])
    )
    by_sunday = frame.resample("W-SUN").sum()
    ours: dict[date, np.ndarray] = {}
    for block in view.blocks:
        for week in block.weeks:
            ours[week.first_day] = ours.get(week.first_day, np.zeros(5)) + np.array(week.seconds)
    for sunday, row in by_sunday.iterrows():
        assert ours[sunday.date() - timedelta(days=6)] == pytest.approx(row.to_numpy())


def test_a_session_lies_on_its_day_and_in_its_block(view: SeasonView) -> None:
    for block in view.blocks:
        for week in block.weeks:
            assert week.first_day.weekday() == 0 and len(week.days) == len(week.inside) == 7
            for k, (held, inside) in enumerate(zip(week.days, week.inside, strict=True)):
                day = week.first_day + timedelta(days=k)
                assert inside == (block.start <= day <= block.end)
                assert all(session.day == day and inside for session in held)


def test_other_sports_are_there_and_count_nothing(view: SeasonView) -> None:
    others = [session for session in view.sessions if session.sport != "running"]
    assert len(others) == view.other_sports == 1
    (ride,) = others
    week = next(w for b in view.blocks for w in b.weeks if ride in [s for d in w.days for s in d])
    assert sum(week.seconds) < ride.elapsed_s


def test_sessions_come_in_order_with_the_clock_she_saw(view: SeasonView) -> None:
    starts = [session.start for session in view.sessions]
    assert starts == sorted(starts)
    assert all(start.tzinfo is None for start in starts)
    # the names of the sample files are the local start
    assert {f"{start:%Y-%m-%d-%H%M}" for start in starts} >= {"2026-04-15-1806", "2026-09-24-0626"}


def test_every_session_has_a_name(view: SeasonView) -> None:
    assert all(session.name for session in view.sessions)


# Unplanned stretches ---------------------------------------------------------------------

DAYS = st.dates(date(2025, 11, 1), date(2027, 3, 1))
SPANS = st.lists(st.tuples(st.integers(0, 60), st.integers(1, 70)), max_size=4)


@pytest.fixture(scope="module")
def bare(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Store]:
    store = Store(tmp_path_factory.mktemp("bare"))
    yield store
    store.close()


def fill(store: Store, days: list[date], spans: list[tuple[int, int]]) -> None:
    """Runs of 40 + k min on days, and blocks with gaps between them, in place of what was."""
    with store.atomic("fill"):
        for table in ("run", "judgement", "block"):
            for row in store.rows(f"SELECT * FROM {table}"):
                store.remove(table, row["run_id" if table == "judgement" else "id"])
        for k, day in enumerate(days):
            store.put("run", {
                "id": k + 1, "sha256": f"{k}", "part": 0, "start_utc": day.toordinal() * 86400.0,
                "utc_offset_s": 0, "day": day.isoformat(), "sport": "running", "kind": "",
                "name": "", "device": "", "format": "FIT", "records": 1, "channels": "",
                "elapsed_s": 60.0 * (40 + k), "moving_s": 1.0, "distance_m": 1.0,
                "fingerprint": "", "stops": "[]", "laps": "[]", "damage": "",
            })  # fmt: skip
            sums = dict.fromkeys((*queries.SECONDS, *queries.METRES), 7.0 * (k + 1))
            store.put("judgement", {
                "run_id": k + 1, "method": 1, **sums, "easy_s": 60.0 * (40 + k), "shades": b"",
                "repetitions": "[]", "words": "", "mends": "{}", "remarks": "[]",
            })  # fmt: skip
        at = date(2026, 1, 1)
        for number, (gap, length) in enumerate(spans):
            start = at + timedelta(days=gap)
            at = start + timedelta(days=length)
            block = Block(start, at - timedelta(days=1), f"block {number}")
            store.put("block", queries.block_rows([block])[0])


@settings(deadline=None, max_examples=60)
@given(st.lists(DAYS, max_size=12), SPANS)
def test_any_season_holds_every_run_once_and_its_sums_agree(
    bare: Store, days: list[date], spans: list[tuple[int, int]]
) -> None:
    fill(bare, days, spans)
    view = season.season(bare, TODAY)
    assert sorted(s.id for s in view.sessions) == list(range(1, len(days) + 1))
    check_sums(view)
    stretches = [(block.start, block.end) for block in view.blocks]
    assert stretches == sorted(stretches)
    assert all(a[1] < b[0] for a, b in pairwise(stretches))
    assert sum(block.id is not None for block in view.blocks) == len(spans)
    for block in view.blocks:
        if block.id is None:
            check_unplanned(block, view.blocks)


def check_unplanned(block: BlockView, every: tuple[BlockView, ...]) -> None:
    """An unplanned stretch is a month of whole weeks, cut only by planned blocks."""
    assert any(session for week in block.weeks for day in week.days for session in day)
    # a week belongs to the month of its Thursday, as ISO 8601 has it for years
    for week in block.weeks:
        thursday = week.first_day + timedelta(days=3)
        assert f"{thursday:%B %Y}" == block.name
    planned = [other for other in every if other.id is not None]
    before = any(other.end == block.start - timedelta(days=1) for other in planned)
    after = any(other.start == block.end + timedelta(days=1) for other in planned)
    assert block.start.weekday() == 0 or before
    assert block.end.weekday() == 6 or after
    assert block.kind == "unplanned"


def test_a_season_without_a_plan_is_cut_into_months(library: Library, season_logs: Path) -> None:
    library.take_in([season_logs])
    library.call(operations.set_plan, [], [])
    view = library.call(season.season, TODAY)
    assert [block.name for block in view.blocks] == [
        "April 2026", "May 2026", "June 2026", "July 2026", "August 2026", "September 2026",
    ]  # fmt: skip
    # 1 April 2026 is a Wednesday: its week's Thursday is the 2nd, so April begins on 30 March
    april = view.blocks[0]
    assert (april.start, april.end) == (date(2026, 3, 30), date(2026, 5, 3))
    check_sums(view)


def test_an_empty_store_is_an_empty_season(library: Library) -> None:
    view = library.call(season.season, TODAY)
    assert (view.blocks, view.sessions, view.session_count, view.estimated) == ((), (), 0, False)
    assert season.build_up(view) == [] and season.block_table(view) == []


# Build-up --------------------------------------------------------------------------------


@pytest.mark.parametrize(("unit", "amount"), [("time", "seconds"), ("metres", "metres")])
def test_a_build_up_is_the_engines(view: SeasonView, unit: str, amount: str) -> None:
    runs = running(view)
    days = [run.day for run in runs]
    table = np.array([getattr(run, amount) for run in runs])
    for built, block in zip(season.build_up(view, unit), view.blocks, strict=True):
        want = tally.cumulative_by_day(days, table, block.start, block.end)
        assert built.block is block
        assert built.days == tuple(range(block.start.toordinal(), block.end.toordinal() + 2))
        for name, shade in (("easy", 0), ("moderate", 1), ("hard", 2)):
            line = getattr(built, name)
            assert line == tuple(want[:, shade].tolist())
            assert line[0] == 0.0
            assert line[-1] == pytest.approx(getattr(block, amount)[shade])


def test_a_build_up_ends_today(season_library: Library) -> None:
    today = date(2026, 8, 1)
    view = season_library.call(season.season, today)
    ends = [built.days[-1] for built in season.build_up(view)]
    blocks = [block.end.toordinal() + 1 for block in view.blocks]
    assert ends[0] == blocks[0]
    assert ends[1] == today.toordinal() + 1
    # what has not begun has its first day only
    assert [len(built.days) for built in season.build_up(view)][2:] == [2, 2]


def test_the_block_table_is_the_views(view: SeasonView) -> None:
    for row, block in zip(season.block_table(view), view.blocks, strict=True):
        assert row == (block.name, block.seconds, block.metres, block.easy_share)


# One session -----------------------------------------------------------------------------


def test_a_sessions_trace_is_what_was_stored(season_library: Library, view: SeasonView) -> None:
    for session in running(view):
        detail = season_library.call(season.session_detail, session.id)
        kept = season_library.call(queries.judgement, session.id)
        assert detail is not None and kept is not None
        trace = detail.trace
        stored = packing.unpack_shades(kept["shades"])
        assert trace.shades.tolist() == stored.tolist()
        assert trace.elapsed_s == pytest.approx(session.elapsed_s)
        weights = np.ones(len(stored))
        weights[-1] = trace.last_second_s
        sums = np.bincount(stored, weights=weights, minlength=5)
        assert sums == pytest.approx(np.array(session.seconds))
        for channel in (trace.speed, trace.level_speed, trace.heart_rate, trace.altitude):
            assert channel.shape == trace.shades.shape
        assert len(detail.evidence) == len(detail.scale) == len(stored)


def test_judging_afresh_for_the_page_gives_the_stored_shades(
    season_library: Library, view: SeasonView
) -> None:
    # evidence and scale on the page are made anew: they must be those of the stored shades
    for session in running(view):
        detail = season_library.call(season.session_detail, session.id)
        assert detail is not None
        unjudged = np.isnan(detail.scale) & (np.array(detail.evidence) == 0)
        stored = detail.trace.shades
        assert (np.isin(stored[unjudged], (Shade.NOT_RUNNING, Shade.UNJUDGED))).all()
        assert not np.isin(stored[~unjudged], (Shade.UNJUDGED,)).any()


def test_a_session_says_by_which_thresholds_it_was_judged(
    season_library: Library, view: SeasonView
) -> None:
    by_day = {session.day: session.id for session in running(view)}
    spring = season_library.call(season.session_detail, by_day[date(2026, 4, 15)])
    summer = season_library.call(season.session_detail, by_day[date(2026, 8, 11)])
    assert spring is not None and summer is not None
    assert spring.thresholds is not None and summer.thresholds is not None
    assert (spring.thresholds.lt2_hr, summer.thresholds.lt2_hr) == (167, 168)
    assert "13 April 2026" in spring.threshold_words and not spring.estimated
    assert "6 July 2026" in summer.threshold_words
    assert spring.trace.lt2_speed == pytest.approx(1000 / 278)
    assert spring.file_name == "2026-04-15-1806.fit"


def test_a_session_without_thresholds(library: Library, season_logs: Path) -> None:
    library.take_in([season_logs / "2026-04-15-1806.fit"])
    library.call(operations.set_thresholds, [], {}, step="Forget thresholds")
    (run_id,) = library.call(queries.run_ids)
    detail: Any = library.call(season.session_detail, run_id)
    assert detail.thresholds is None and detail.threshold_words == "" and not detail.estimated


def test_a_session_that_is_not_there(library: Library) -> None:
    assert library.call(season.session_detail, 1) is None


def test_another_sport_is_traced_without_shades(season_library: Library) -> None:
    view = season_library.call(season.season)
    (ride,) = [session for session in view.sessions if session.sport != "running"]
    detail: Any = season_library.call(season.session_detail, ride.id)
    trace = detail.trace
    assert set(trace.shades.tolist()) == {Shade.NOT_RUNNING}
    assert trace.lt1_speed is None and trace.lt2_hr is None and detail.thresholds is None
    assert not trace.repetitions and not trace.parts
    assert np.nanmedian(trace.speed) > 5.0  # faster than the runner's LT2 was

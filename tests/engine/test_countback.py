"""The count-back from race day: its rules on a thousand random seasons, and one by hand."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tercet.engine.countback import (
    SHARES,
    Rules,
    Volume,
    count_back,
    eased_weeks,
    preparation_weeks,
    taper_weeks_for,
    week_starts,
    week_volumes,
)

DAY = timedelta(days=1)
days = st.dates(date(2000, 1, 1), date(2060, 1, 1))


@settings(max_examples=1000)
@given(
    today=days,
    ahead=st.integers(0, 400),
    behind=st.integers(-30, 200),
    volume=st.floats(1800, 60_000),
    growth=st.floats(0, 0.2),
    taper=st.integers(0, 5),
    every=st.sampled_from((0, 2, 3, 4, 5)),
    others=st.lists(st.integers(-50, 400), max_size=4),
)
def test_the_rules_are_never_broken(
    today: date,
    ahead: int,
    behind: int,
    volume: float,
    growth: float,
    taper: int,
    every: int,
    others: list[int],
) -> None:
    race = today + ahead * DAY
    start = min(today - behind * DAY, race)
    rules = Rules(growth=growth, taper_weeks=taper, easier_every=every)
    lesser = [today + k * DAY for k in others]
    laid = count_back(race, start, today, volume, rules, lesser)
    assert laid[0].start == start
    assert laid[-1].end == race
    for first, second in pairwise(laid):
        assert second.start == first.end + DAY  # neither gap nor overlap
        assert second.start.weekday() == 0
    assert all(block.start <= block.end for block in laid)
    preparing = [block for block in laid if block.kind != "base"]
    assert sum(len(week_starts(block.start, block.end)) for block in preparing) <= 12
    spans = [(block.kind, block.start, block.end) for block in laid]
    assert preparation_weeks(spans, race) <= 12
    highest = volume
    for block in laid:
        if block.volume is None:
            assert block.end < today
            continue
        eased = eased_weeks(block.start, block.end, [day for day in lesser if day != race])
        weeks = week_starts(block.start, block.end)
        for monday, wanted in zip(
            weeks, week_volumes(block.volume, len(weeks), eased), strict=True
        ):
            if monday + 6 * DAY < today:
                continue  # was run already
            assert 0 < wanted <= highest * (1 + growth) * (1 + 1e-9)
            assert wanted <= 1.5 * volume * (1 + 1e-9)
            highest = max(highest, wanted)


def test_a_half_marathon_by_hand() -> None:
    # Sunday 2 August 2026, from Monday 2 March: 22 weeks, so base takes 22 - 12 = 10.
    laid = count_back(date(2026, 8, 2), date(2026, 3, 2), date(2026, 3, 2), 20_000.0)
    assert [(b.kind, b.start, b.end) for b in laid] == [
        ("base", date(2026, 3, 2), date(2026, 5, 10)),
        ("support", date(2026, 5, 11), date(2026, 6, 14)),
        ("specific", date(2026, 6, 15), date(2026, 7, 19)),
        ("taper", date(2026, 7, 20), date(2026, 8, 2)),
    ]
    base = laid[0].volume
    assert base is not None
    assert week_volumes(base, 6) == pytest.approx(
        [20_000, 21_600, 23_328, 0.7 * 23_328, 23_328, 25_194.24]
    )
    taper = laid[-1].volume
    specific = laid[-2].volume
    assert taper is not None and specific is not None
    assert week_volumes(taper, 2)[-1] == pytest.approx(0.45 * specific.first_s)


def test_a_season_under_way_goes_on_from_what_is_run() -> None:
    today = date(2026, 3, 24)
    laid = count_back(date(2026, 8, 2), date(2026, 3, 2), today, 20_000.0)
    base = laid[0].volume
    assert base is not None
    this_week = week_starts(laid[0].start, today)
    plain = Volume(base.first_s, base.growth, None, 4, 1.0)
    assert week_volumes(plain, len(this_week))[-1] == pytest.approx(20_000.0)


def test_little_time_keeps_the_last_parts() -> None:
    laid = count_back(date(2026, 8, 2), date(2026, 7, 6), date(2026, 7, 6), 20_000.0)
    assert [block.kind for block in laid] == ["specific", "taper"]


def test_a_longer_taper_shortens_the_first_part() -> None:
    day = date(2026, 3, 2)
    laid = count_back(date(2026, 8, 2), day, day, 20_000.0, Rules(taper_weeks=3))
    assert [(b.kind, len(week_starts(b.start, b.end))) for b in laid] == [
        ("base", 10),
        ("support", 4),
        ("specific", 5),
        ("taper", 3),
    ]


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="every week"):
        Rules(easier_every=1)
    with pytest.raises(ValueError, match="race"):
        count_back(date(2026, 1, 1), date(2026, 1, 2), date(2026, 1, 2), 1.0)
    with pytest.raises(ValueError, match="nowadays"):
        count_back(date(2026, 1, 9), date(2026, 1, 2), date(2026, 1, 2), 0.0)


def test_shares_and_tapers() -> None:
    assert all(sum(three) == pytest.approx(1.0) for three in SHARES.values())
    assert SHARES["base"][0] >= 0.9  # common practice, no source
    assert min(SHARES[kind][0] for kind in ("support", "specific")) >= 0.8
    assert [taper_weeks_for(m) for m in (5_000, 21_097.5, 42_195)] == [1, 2, 3]
    assert preparation_weeks([("base", date(2026, 1, 5), date(2026, 5, 3))], date(2026, 5, 3)) == 0

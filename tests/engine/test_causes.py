"""One cause for every moderate second, on runs whose cause is known."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest
from tests.accuracy.methods import streams_of, thresholds_of
from tests.simulator.known_causes import WAYS, known_cause

from tercet.engine import Judgement, Shade, Thresholds, judge
from tercet.engine.causes import Cause, causes, parts
from tercet.engine.notation import judge_pieces
from tercet.formats.paper import parse_session

#: Never used for choosing a limit.
SEEDS = (901, 902)


def judged_run(way: str, seed: int) -> tuple[Judgement, Thresholds]:
    run = known_cause(way, seed)
    lines = thresholds_of(run)
    if way == "warm":  # only where heart rate judges alone can its drift make running moderate
        lines = replace(lines, lt1_speed=None, lt2_speed=None)
    return judge(streams_of(run), run.samples["time"], lines, stops=run.stops), lines


@pytest.mark.parametrize("name", WAYS)
def test_nine_tenths_of_the_moderate_minutes_get_their_cause(name: str) -> None:
    counted: Counter[int] = Counter()
    for way in WAYS[name]:
        for seed in SEEDS:
            judged, lines = judged_run(way, seed)
            found = causes(judged, lines)
            assert np.array_equal(found != Cause.NONE, judged.shades == Shade.MODERATE)
            counted.update(found[found != Cause.NONE].tolist())
    assert counted[Cause[name.upper()]] >= 0.9 * counted.total() > 0


def test_what_was_meant_is_meant_whatever_it_looks_like() -> None:
    judged, lines = judged_run("fast end", 901)
    found = causes(judged, lines, meant=True)
    assert set(found.tolist()) == {Cause.NONE, Cause.MEANT}


def test_a_written_session_meant_what_it_says() -> None:
    judged = judge_pieces(parse_session("40 min easy, 20 min moderate").pieces, None)
    assert set(causes(judged, None).tolist()) == {Cause.NONE, Cause.MEANT}


def test_parts_add_up_and_slower_would_have_been_easy() -> None:
    judged, lines = judged_run("fast throughout", 901)
    found = parts(judged, lines, causes(judged, lines))
    total = sum(part.seconds for part in found.values())
    assert total == pytest.approx(judged.seconds_by_shade()[Shade.MODERATE])
    start = found[Cause.START]
    assert lines.lt1_speed is not None
    assert start.easy_speed < start.speed
    # The run is 4-12 % over LT1 speed, so an easy speed lies near LT1 speed.
    assert start.easy_speed == pytest.approx(lines.lt1_speed, rel=0.05)


def _bare(shades: list[int]) -> Judgement:
    n = len(shades)
    none = np.full(n, np.nan)
    return Judgement(
        np.array(shades, dtype=np.uint8), np.zeros(n), np.zeros(n, dtype=np.uint8), none, none,
        none, none, none, 1.0,
    )  # fmt: skip


@pytest.mark.parametrize("shades", [[], [0] * 50, [1], [1] * 30 + [2] * 30 + [4] * 10])
def test_every_moderate_second_has_a_cause_whatever_is_missing(shades: list[int]) -> None:
    judged = _bare(shades)
    for lines in (None, Thresholds(lt1_hr=150, lt2_hr=170), Thresholds(lt1_speed=3, lt2_speed=4)):
        found = causes(judged, lines)
        assert np.array_equal(found != Cause.NONE, judged.shades == Shade.MODERATE)
        sums = parts(judged, lines, found)
        assert sum(part.seconds for part in sums.values()) == shades.count(1)

"""Running power stands in where speed was lost, by what both said in the same run."""

from __future__ import annotations

import numpy as np
import pytest
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import Evidence, Shade, judge
from tercet.engine.power import level_speed_by_power


def test_power_is_put_on_the_scale_of_speed() -> None:
    speed = np.repeat([2.5, 3.5], 400)
    power = 80.0 * speed
    speed[700:] = np.nan
    found = level_speed_by_power(power, speed, np.ones(800, dtype=bool))
    np.testing.assert_allclose(found[:395], 2.5)
    np.testing.assert_allclose(found[405:], 3.5)
    power[10] = np.nan
    assert np.isnan(level_speed_by_power(power, speed, np.ones(800, dtype=bool))[10])


@pytest.mark.parametrize("power", [None, np.full(800, np.nan), np.full(800, 5.0)])
def test_without_power_or_with_too_little_nothing_is_said(power: np.ndarray | None) -> None:
    speed = np.full(800, 3.0)
    assert np.isnan(level_speed_by_power(power, speed, np.ones(800, dtype=bool))).all()
    assert np.isnan(level_speed_by_power(80 * speed, speed, np.arange(800) < 200)).all()


def test_a_tunnel_is_judged_by_power() -> None:
    """The watch keeps steps and power, but neither speed nor place nor distance, for 8 min."""
    run = simulate(
        Runner(), prescribe("tempo", stream(2, 0)), 2, sampling="1s", timer="running", waits=0,
        terrain="level", gps="open", gps_gaps=0, hr_source="none", ground=1.0, wind=0.0,
    )  # fmt: skip
    streams, clock, lines = streams_of(run), run.samples["time"], thresholds_of(run)
    begin = run.repetitions[0][0] + 300
    truth = np.array(["EMHRU".index(c) for c in run.truth])
    inside = slice(begin + 10, begin + 470)
    power = (clock, np.append(run.demand, run.demand[-1])[clock.astype(int)] * 78.0)
    kept = (clock < begin) | (clock > begin + 480)
    cut = {
        name: (time[kept], values[kept]) if name != "cadence" else (time, values)
        for name, (time, values) in streams.items()
    }
    way_time, way = cut["distance"]
    held = float(way[way_time < begin][-1])
    cut["distance"] = (
        way_time,
        np.where(way_time < begin, way, way - (way[way_time > begin][0] - held)),
    )
    without = judge(cut, clock, lines)
    told = judge(cut | {"power": power}, clock, lines)
    assert (without.evidence[inside] != Evidence.SPEED).all()
    assert (told.evidence[inside] == Evidence.POWER).all()
    assert np.mean(told.shades[inside] == truth[inside]) > 0.9
    assert np.mean(without.shades[inside] == Shade.UNJUDGED) > 0.9
    assert told.seconds_by_shade().sum() == pytest.approx(told.elapsed_s)

"""Running power stands in where speed was lost, by what both said in the same run."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, Simulated, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import Evidence, Shade, Thresholds, check_thresholds, judge
from tercet.engine.causes import Cause, causes, parts
from tercet.engine.power import level_speed_by_lines, level_speed_by_power


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


@pytest.mark.parametrize(
    ("kind", "least"),
    [("easy", 0.98), ("tempo", 0.9), ("reps_400", 0.96), ("progression", 0.95)],
)
def test_power_alone_judges_by_the_lines_in_watts(kind: str, least: float) -> None:
    """A meter off by a tenth in scale, as meters differ, with noise; no speed and no heart rate."""
    run = simulate(Runner(), prescribe(kind, stream(2, 1)), 6, sampling="1s", waits=0)
    clock, lines = run.samples["time"], thresholds_of(run)
    assert lines.lt1_speed and lines.lt2_speed
    meter = 70.0
    at = np.minimum(clock.astype(int), len(run.demand) - 1)
    noise = np.exp(np.random.default_rng(1).normal(0, 0.03, len(clock)))
    streams = {"power": (clock, run.demand[at] * meter * noise)}
    with_watts = replace(
        lines, lt1_power=meter * lines.lt1_speed, lt2_power=meter * lines.lt2_speed
    )
    judged = judge(streams, clock, with_watts)
    truth = np.array(["EMHRU".index(c) for c in run.truth])[: len(judged.shades)]
    ran = truth <= Shade.HARD
    assert np.mean(judged.shades[: len(truth)][ran] == truth[ran]) > least
    assert set(judged.evidence[judged.shades <= Shade.HARD].tolist()) == {Evidence.POWER}
    assert judged.seconds_by_shade().sum() == pytest.approx(judged.elapsed_s)
    # Without lines in watts nothing says what the meter's watts mean to this runner.
    assert (judge(streams, clock, lines).shades > Shade.HARD).all()


def measured(kind: str, number: int, meter: float = 70.0) -> tuple[Simulated, dict, Thresholds]:
    """A run with a meter that shows ``meter`` W for a m/s on level ground, and its lines in W."""
    run = simulate(Runner(), prescribe(kind, stream(2, 1)), number)
    clock, lines = run.samples["time"], thresholds_of(run)
    assert lines.lt1_speed and lines.lt2_speed
    at = np.minimum(clock.astype(int), len(run.demand) - 1)
    noise = np.exp(np.random.default_rng(number).normal(0, 0.03, len(clock)))
    power = {"power": (clock, run.demand[at] * meter * noise)}
    watts = Thresholds(lt1_power=meter * lines.lt1_speed, lt2_power=meter * lines.lt2_speed)
    return run, power, watts


@pytest.mark.parametrize(
    ("kind", "least"),
    [("easy", 0.98), ("tempo", 0.9), ("reps_400", 0.96), ("reps_200", 0.96)],
)
@pytest.mark.parametrize("beside", ["nothing", "all", "all, and heart rates"])
def test_lines_in_watts_alone_judge_power(kind: str, least: float, beside: str) -> None:
    """Nobody told a pace: what else was recorded may not turn the meter's word about."""
    run, streams, watts = measured(kind, 6)
    clock, known = run.samples["time"], thresholds_of(run)
    if beside != "nothing":
        streams = streams_of(run) | streams
    if beside.endswith("rates"):
        watts = replace(known, lt1_speed=None, lt2_speed=None, lt1_power=watts.lt1_power,
                        lt2_power=watts.lt2_power)  # fmt: skip
    judged = judge(streams, clock, watts, stops=run.stops)
    truth = np.array(["EMHRU".index(c) for c in run.truth])[: len(judged.shades)]
    ran = truth <= Shade.HARD
    assert np.mean(judged.shades[: len(truth)][ran] == truth[ran]) > least
    by = judged.evidence[judged.shades <= Shade.HARD]
    assert np.mean(by == Evidence.POWER) > 0.98
    assert len(judged.repetitions) == (0 if kind == "tempo" else len(run.repetitions))
    assert judged.seconds_by_shade().sum() == pytest.approx(judged.elapsed_s)
    if beside != "nothing":
        plain = judge(streams, clock, known, stops=run.stops)
        np.testing.assert_array_equal(judged.speed, plain.speed)
        np.testing.assert_array_equal(judged.metres, plain.metres)


def test_speed_fills_the_gaps_of_a_meter_by_what_both_said_in_the_run() -> None:
    """Power for the first half alone; by proportion the pace says the same of the second."""
    clock = np.arange(2401.0)
    speed = np.where(clock % 800 < 500, 2.8, 4.0)
    power = np.where(clock < 1200, 80.0 * speed, np.nan)
    lines = Thresholds(lt1_power=250.0, lt2_power=300.0)
    streams = {"speed": (clock, speed), "power": (clock, power)}
    judged = judge(streams, clock, lines)
    assert abs(judged.seconds_by_shade() - (1500, 0, 900, 0, 0)).max() <= 12
    assert set(judged.evidence[20:1180].tolist()) == {Evidence.POWER}
    assert set(judged.evidence[1220:].tolist()) == {Evidence.SPEED}
    # Pace alone says nothing of watts.
    assert (judge({"speed": streams["speed"]}, clock, lines).shades > Shade.HARD).all()


@pytest.mark.parametrize("kind", ["progression", "fartlek", "long_race_pace"])
def test_higher_lines_in_watts_never_make_a_run_harder(kind: str) -> None:
    run, power, watts = measured(kind, 8)
    assert watts.lt1_power and watts.lt2_power
    streams, clock = streams_of(run) | power, run.samples["time"]
    sums = []
    for factor in (0.85, 0.92, 1.0, 1.08, 1.15):
        lines = Thresholds(lt1_power=factor * watts.lt1_power, lt2_power=factor * watts.lt2_power)
        sums.append(judge(streams, clock, lines).seconds_by_shade())
    rise = np.diff(sums, axis=0)
    assert (rise[:, Shade.EASY] >= -1).all() and (rise[:, Shade.HARD] <= 1).all()
    assert rise[:, Shade.EASY].sum() > 60


def test_what_watts_found_moderate_has_its_causes() -> None:
    """Too strong by a twentieth from the start, on a way that nobody recorded a pace for."""
    clock = np.arange(2401.0)
    lines = Thresholds(lt1_power=250.0, lt2_power=300.0)
    power = 262.0 + np.random.default_rng(5).normal(0, 3, len(clock))
    judged = judge({"power": (clock, power)}, clock, lines)
    found = parts(judged, lines, causes(judged, lines))
    assert set(found) == {Cause.START}
    assert found[Cause.START].seconds == judged.seconds_by_shade()[Shade.MODERATE] > 2300
    paced = {"power": (clock, power), "speed": (clock, 0 * clock + 3.3)}
    judged = judge(paced, clock, lines)
    start = parts(judged, lines, causes(judged, lines))[Cause.START]
    assert start.easy_speed == pytest.approx(3.3 * 250 / 262, rel=0.01)


def test_lines_in_watts_change_no_run_without_power() -> None:
    run = simulate(Runner(), prescribe("tempo", stream(2, 0)), 2)
    streams, clock, lines = streams_of(run), run.samples["time"], thresholds_of(run)
    streams.pop("power", None)
    plain = judge(streams, clock, lines)
    watts = judge(streams, clock, replace(lines, lt1_power=200.0, lt2_power=260.0))
    np.testing.assert_array_equal(plain.shades, watts.shades)
    assert plain.intervals == watts.intervals


def test_a_judgement_keeps_the_power_that_it_saw() -> None:
    clock = np.arange(901.0)
    watts = np.where(clock < 300, 0.0, 240.0)
    judged = judge({"power": (clock, watts), "heart_rate": (clock, 0 * clock + 140)}, clock, None)
    assert judged.power.shape == judged.shades.shape
    assert np.isnan(judged.power[:290]).all()
    np.testing.assert_allclose(judged.power[310:], 240.0)
    assert len(judge({"speed": (clock, 0 * clock + 3)}, clock, None).power) == 0


def test_a_watt_on_a_line_is_a_speed_on_it() -> None:
    lines = Thresholds(lt1_speed=3.0, lt2_speed=3.6, lt1_power=240.0, lt2_power=300.0)
    found = level_speed_by_lines(np.repeat([120.0, 240.0, 270.0, 300.0, 330.0, 5.0], 20), lines)
    assert found is not None
    np.testing.assert_allclose(found[10::20][:5], [1.5, 3.0, 3.3, 3.6, 3.9])
    assert np.isnan(found[-1])
    assert level_speed_by_lines(np.full(9, 240.0), Thresholds(lt1_speed=3, lt2_speed=4)) is None


@pytest.mark.parametrize(
    ("watts", "problem"),
    [
        ((300.0, 240.0), "must be below"),
        ((240.0, None), "belong together"),
        ((9.0, 240.0), " W: 9"),
    ],
)
def test_watts_that_cannot_be_are_refused(watts: tuple, problem: str) -> None:
    with pytest.raises(ValueError, match=problem):
        check_thresholds(
            Thresholds(lt1_speed=3, lt2_speed=4, lt1_power=watts[0], lt2_power=watts[1])
        )

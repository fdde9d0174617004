"""What is known beside the samples: a belt's speed, pressed laps, the runner's effort."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from tests.accuracy import streams_of, thresholds_of
from tests.simulator import Runner, Simulated, prescribe, simulate
from tests.simulator.noise import stream

from tercet.engine import Evidence, Judgement, Shade, Thresholds, judge
from tercet.engine.known import Belt, Known, shade_of_effort
from tercet.engine.repetitions import at_laps


def right(run: Simulated, judged: Judgement) -> float:
    return float(np.mean([a == b for a, b in zip(run.truth, judged.letters, strict=True)]))


def judged_with(run: Simulated, beside: Known, **dropped: bool) -> Judgement:
    streams = {k: v for k, v in streams_of(run).items() if k not in dropped}
    lines = thresholds_of(run)
    return judge(streams, run.samples["time"], lines, stops=run.stops, beside=beside)


def treadmill(seed: int) -> Simulated:
    return simulate(Runner(), prescribe("treadmill_reps", stream(seed, 0)), seed)


def belts_of(run: Simulated) -> tuple[Belt, ...]:
    """What the belt showed: the mean speed of each step of the session, from its demand."""
    edges = [0]
    for begin, seconds, _ in run.repetitions:
        edges += [begin, begin + seconds]
    edges.append(run.elapsed_s)
    return tuple(
        Belt(a, b, round(float(np.median(run.demand[a:b])), 1)) for a, b in pairwise(edges)
    )


@pytest.mark.parametrize("seed", [41, 42, 43])
def test_a_belt_speed_read_off_judges_a_treadmill_run(seed: int) -> None:
    run = treadmill(seed)
    told = judged_with(run, Known(belts=belts_of(run)))
    assert right(run, told) > 0.97
    assert right(run, told) >= right(run, judged_with(run, Known())) - 0.005
    assert len(told.repetitions) == len(run.repetitions)


def test_metres_follow_the_belt() -> None:
    run = treadmill(44)
    belt = Belt(0.0, 1e9, 3.0)
    told = judged_with(run, Known(belts=(belt,)))
    assert told.metres.sum() == pytest.approx(3.0 * told.elapsed_s)
    assert told.seconds_by_shade().sum() == pytest.approx(told.elapsed_s)


def test_a_belt_knows_no_hills_and_no_places() -> None:
    """A watch that takes a gym's air for height and wanders about it."""
    clock = np.arange(1801.0)
    rng = np.random.default_rng(3)
    drift = np.cumsum(rng.normal(0, 1.0, (2, 1801)), axis=1)
    streams = {
        "speed": np.full(1801, 2.2),
        "altitude": 30 * np.sin(clock / 120.0),
        "latitude": 40 + drift[0] / 111_000,
        "longitude": 6 + drift[1] / 85_000,
    }
    told = judge(
        {name: (clock, values) for name, values in streams.items()},
        clock,
        Thresholds(lt1_speed=2.9, lt2_speed=3.5),
        beside=Known(belts=(Belt(0.0, 1e9, 2.8),)),
    )
    np.testing.assert_allclose(told.level_speed, 2.8, rtol=0.01)
    assert told.seconds_by_shade()[Shade.EASY] == 1800
    assert np.isnan(told.altitude).all()


def test_effort_judges_only_what_no_channel_judged() -> None:
    clock = np.arange(1801.0)
    way = {"cadence": (clock, np.full(1801, 168.0))}
    lines = thresholds_of(treadmill(41))
    plain = judge(way, clock, lines)
    assert plain.seconds_by_shade()[Shade.UNJUDGED] == 1800
    told = judge(way, clock, lines, beside=Known(effort=8))
    assert told.seconds_by_shade()[Shade.HARD] == 1800
    assert set(told.evidence.tolist()) == {Evidence.WORD}
    way["heart_rate"] = (clock, 100.0 + np.round(3 * np.sin(clock / 20)))
    both = judge(way, clock, lines)
    same = judge(way, clock, lines, beside=Known(effort=9))
    assert both.seconds_by_shade()[Shade.EASY] == 1800
    np.testing.assert_array_equal(both.shades, same.shades)


def test_shades_of_efforts() -> None:
    """Seiler & Kjerland 2006, Scand J Med Sci Sports 16:49-56 (bounds from memory)."""
    names = "".join(shade_of_effort(k).name[0] for k in range(11))
    assert names == "EEEEEMMHHHH"


def test_pressed_laps_place_the_edges_of_repetitions_and_other_laps_do_not() -> None:
    bouts = [(100, 160), (200, 262), (300, 361)]
    assert at_laps(bouts, (103.0, 158.0, 201.0, 259.0)) == [(103, 158), (201, 259), (300, 361)]
    assert at_laps(bouts, ()) == bouts
    assert at_laps(bouts, (0.0, 110.0, 400.0, float("nan"))) == bouts


def test_bouts_with_no_lap_between_them_are_one_where_the_others_were_pressed() -> None:
    bouts = [(100, 700), (800, 900), (925, 1400), (1500, 2100), (2200, 2800)]
    laps = [100.0, 700.0, 800.0, 1400.0, 1500.0, 2100.0, 2200.0, 2800.0]
    assert at_laps(bouts, laps) == [(100, 700), (800, 1400), (1500, 2100), (2200, 2800)]
    assert at_laps(bouts, laps[:3]) == [(100, 700), *bouts[1:]]


def test_laps_bring_repetitions_nearer_to_their_true_length() -> None:
    errors = {True: [], False: []}
    for seed in range(50, 56):
        run = simulate(Runner(), prescribe("reps_400", stream(seed, 0)), seed, laps="pressed")
        laps = tuple(float(start) for start, _, _, _ in run.laps[1:])
        for used in errors:
            reps = judged_with(run, Known(laps=laps if used else ())).repetitions
            if len(reps) == len(run.repetitions):
                off = [r.duration_s - t for r, (_, t, _) in zip(reps, run.repetitions, strict=True)]
                errors[used].append(float(np.mean(np.abs(off))))
    assert len(errors[True]) >= 5
    assert np.mean(errors[True]) <= np.mean(errors[False])

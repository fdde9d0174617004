"""The simulator: honest with its truth, repeatable, and near what was published."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from tests.simulator import (
    KINDS,
    MIDDLE_DISTANCE_MIX,
    Runner,
    Simulated,
    draw_runner,
    prescribe,
    season,
    simulate,
)
from tests.simulator.conditions import Conditions
from tests.simulator.heart import heart_rate
from tests.simulator.motion import Motion, move
from tests.simulator.noise import stream
from tests.simulator.terrain import cost_ratio, route


def one(kind: str, seed: int = 3, **conditions: object) -> Simulated:
    return simulate(Runner(), prescribe(kind, stream(seed, 0)), seed, **conditions)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_one_letter_a_second_and_samples_inside(kind: str) -> None:
    run = one(kind)
    time = run.samples["time"]
    assert time[0] == 0 and time[-1] == len(run.truth) == run.elapsed_s
    assert np.all(np.diff(time) > 0)
    assert set(run.truth) <= set("EMHR")
    assert {len(v) for v in run.samples.values()} == {len(time)}
    for start, length, metres in run.repetitions:
        assert 0 <= start < start + length <= run.elapsed_s and metres > 0
    assert sum(lap[1] for lap in run.laps) == run.elapsed_s


def test_the_same_seed_gives_the_same_run_and_another_does_not() -> None:
    first, again, other = one("fartlek", 5), one("fartlek", 5), one("fartlek", 6)
    assert first.truth == again.truth
    for name, values in first.samples.items():
        np.testing.assert_array_equal(values, again.samples[name])
    assert first.truth != other.truth


def test_conditions_change_the_record_but_not_the_truth() -> None:
    plain = one("reps_400", hr_source="strap", hr_fault="", timer="running")
    bad = one("reps_400", hr_source="optical", hr_fault="cadence lock", timer="running")
    assert plain.truth == bad.truth
    assert not np.array_equal(plain.samples["heart_rate"], bad.samples["heart_rate"])
    with pytest.raises(TypeError, match="no such condition: hr_falt"):
        one("easy", hr_falt="dead")


def test_truth_follows_demand_against_the_thresholds() -> None:
    run = one("reps_200", terrain="hilly", timer="running")
    runner = run.runner
    for letter, demand in zip(run.truth, run.demand.tolist(), strict=True):
        if letter == "H":
            assert demand >= runner.lt2_speed
        elif letter == "M":
            assert runner.lt1_speed <= demand < runner.lt2_speed
        else:
            assert demand < runner.lt1_speed


def test_short_fast_repetitions_are_hard_though_the_heart_never_says_so() -> None:
    run = one("reps_100", terrain="level")
    assert set(run.repetition_shades) == {"H"}
    assert float(run.true_heart_rate.max()) < run.runner.lt2_hr


def test_slope_cost_is_the_published_polynomial() -> None:
    """Minetti et al. 2002: Cr(i)/Cr(0) worked from the published coefficients, to 0.0005."""
    for slope, ratio in (
        (-0.20, 0.5000),
        (-0.10, 0.5977),
        (0.0, 1.0),
        (0.10, 1.6578),
        (0.45, 5.3961),
    ):
        assert cost_ratio(slope) == pytest.approx(ratio, abs=5e-4)


def test_heart_follows_a_step_as_measured_on_the_treadmill() -> None:
    """Hunt et al. 2015: tau 57.6 s, so 0.647 of a step after 60 s and 0.956 after 180 s.

    Mean of 60 runs, tolerance 0.04 (runs differ by 12 % in tau, and breathing adds noise).
    """
    runner = Runner(tau_s=57.6)
    effort = np.concatenate([np.full(500, 2.2), np.full(300, 2.9)])
    n = len(effort)
    motion = Motion(
        effort, effort, effort, ["run"] * n, [0] * n, [False] * n, np.zeros(n + 1),
        np.zeros(n + 1), np.zeros(n + 1), route("track", 400, 1), [], [],
    )  # fmt: skip
    hr = np.mean([heart_rate(motion, runner, Conditions(drift=0.0), s) for s in range(60)], axis=0)
    low, high = runner.steady_hr(2.2), runner.steady_hr(2.9)
    assert (hr[560] - low) / (high - low) == pytest.approx(0.647, abs=0.04)
    assert (hr[680] - low) / (high - low) == pytest.approx(0.956, abs=0.04)


def test_runners_are_drawn_from_the_published_spread() -> None:
    """Hunt et al. 2015: gain 24.2 +- 8.3, tau 57.6 +- 23.6; the draw is cut at its ends."""
    rng = stream(1, 1)
    runners = [draw_runner(rng) for _ in range(600)]
    assert np.mean([r.gain for r in runners]) == pytest.approx(24.2, abs=1.5)
    assert 5.5 < np.std([r.gain for r in runners]) < 8.5
    assert np.mean([r.tau_s for r in runners]) == pytest.approx(57.6, abs=3.0)
    for r in runners:
        assert r.hr_rest < r.lt1_hr < r.lt2_hr < r.hr_max and r.lt1_speed < r.lt2_speed


def test_a_lap_of_the_track_is_400_metres_and_loops_close() -> None:
    for terrain, metres in (("track", 400.0), ("hilly", 5400.0)):
        way = route(terrain, metres, 2)
        steps = np.hypot(np.diff(way.east), np.diff(way.north))
        assert float(steps.sum()) == pytest.approx(metres, rel=2e-3)
        assert way.height[0] == pytest.approx(way.height[-1], abs=1e-6)
        assert (way.east[0], way.north[0]) == pytest.approx((way.east[-1], way.north[-1]), abs=1e-6)


def test_soft_ground_and_headwind_cost_without_showing_in_speed() -> None:
    firm = move(Runner(), prescribe("easy", stream(1, 0)), Conditions(waits=0), 1)
    soft = move(
        Runner(), prescribe("easy", stream(1, 0)), Conditions(ground=1.15, soft_share=1.0), 1
    )
    assert np.median(soft.speed) < np.median(firm.speed)
    assert np.median(soft.demand) > 1.04 * np.median(firm.demand)


def test_faults_do_what_they_say() -> None:
    dead = one("easy", hr_source="strap", hr_fault="dead").samples["heart_rate"]
    assert np.isnan(dead[-1]) and not np.isnan(dead[0])
    locked = one("easy", hr_source="optical", hr_fault="cadence lock", sampling="1s").samples
    assert np.sum(np.abs(locked["heart_rate"] - locked["cadence"]) < 4) > 120
    belt = one("treadmill_easy").samples
    assert np.isnan(belt["latitude"]).all() and np.isnan(belt["altitude"]).all()
    gap = one("easy", gps_gaps=1, sampling="1s").samples
    assert np.isnan(gap["latitude"]).any()
    smart = np.diff(one("easy", sampling="smart", timer="running").samples["time"])
    assert smart.max() <= 6 and 3 < smart.mean() < 6


def test_a_standing_timer_keeps_no_samples_and_counts_as_not_running() -> None:
    run = one("easy", waits=3, timer="auto", sampling="1s")
    assert run.stops
    for first, last in run.stops:
        assert set(run.truth[first:last]) == {"R"}
        inside = (run.samples["time"] > first) & (run.samples["time"] < last)
        assert not inside.any()


def test_a_season_has_dates_in_order_one_runner_and_mostly_easy_running() -> None:
    runs = season(4, runs=60)
    assert len(runs) == 60 and len({r.runner for r in runs}) == 1
    assert all(a.start < b.start for a, b in itertools.pairwise(runs))
    assert len({r.kind for r in runs}) >= 10
    letters = "".join(r.truth for r in runs)
    easy, moderate, hard = (letters.count(c) for c in "EMH")
    assert 0.78 < easy / (easy + moderate + hard) < 0.95


def test_judged_by_heart_rate_alone_the_middle_swells_as_published() -> None:
    """Bellinger, Arnold & Minahan 2020, IJSPP 15:319-323: 14 highly trained runners.

    Easy / moderate / hard by speed 79.9 / 5.3 / 14.7 %, by heart rate 79.6 / 17.0 / 3.4 %: a
    shift of -0.3 / +11.7 / -11.3 points. Here 14 fast runners (LT2 4.9 m/s [guess]) with a mix
    chosen for that make-up (tolerance 2.5 points) show the shift within 5 points each; the rest
    of the difference is unexplained (how the study counted rests is not known). Zones here:
    below LT1 heart rate, up to LT2, above; not-running seconds left out of both.
    """
    by_speed, by_heart = np.zeros(3), np.zeros(3)
    for seed in range(14):
        runner = draw_runner(stream(seed, 9), lt2_speed=(4.9, 0.2), alike=0.3)
        speed_s, heart_s = np.zeros(3), np.zeros(3)
        for run in season(
            seed, 16, runner, mix=MIDDLE_DISTANCE_MIX,
            hr_source="strap", hr_fault="", timer="running", sampling="1s",
        ):  # fmt: skip
            running = np.array([c != "R" for c in run.truth])
            heart = run.samples["heart_rate"][:-1][running]
            zone = (heart >= runner.lt1_hr).astype(int) + (heart >= runner.lt2_hr)
            heart_s += np.bincount(zone, minlength=3)
            speed_s += [run.truth.count(c) for c in "EMH"]
        by_speed += 100 * speed_s / speed_s.sum() / 14
        by_heart += 100 * heart_s / heart_s.sum() / 14
    np.testing.assert_allclose(by_speed, [79.9, 5.3, 14.7], atol=2.5)
    np.testing.assert_allclose(by_heart - by_speed, [-0.3, 11.7, -11.3], atol=5.0)

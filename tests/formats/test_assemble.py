"""Order, bounds and absurd times."""

import pickle

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.formats.build import START

from tercet.domain import Failed, Lap, Recording
from tercet.formats import assemble as module
from tercet.formats.assemble import BOUNDS, COLUMN, COLUMNS, Draft, assemble, gather

ZERO = START.timestamp()


def matrix(seconds, **columns):
    samples = np.full((len(seconds), len(COLUMNS)), np.nan)
    samples[:, 0] = ZERO + np.asarray(seconds, dtype=float)
    for name, values in columns.items():
        samples[:, COLUMN[name]] = values
    return samples.T


def pairs(stream):
    return list(zip(stream.time.tolist(), stream.values.tolist(), strict=True))


def test_backward_and_double_times():
    run = assemble(
        Draft("GPX"),
        matrix(
            [0, 1, 1, 3, 2, 3],
            heart_rate=[100, 101, 102, 103, 104, 105],
            power=[200, np.nan, 202, np.nan, 204, 205],
        ),
    )
    assert run.records == 6
    assert run.time.tolist() == [0, 1, 1, 2, 3, 3]
    # of one second the first value in the file stays, and a later one fills a gap
    assert pairs(run.streams["heart_rate"]) == [(0, 100), (1, 101), (2, 104), (3, 103)]
    assert pairs(run.streams["power"]) == [(0, 200), (1, 202), (2, 204), (3, 205)]


seconds = st.lists(st.integers(0, 30) | st.floats(0, 1e5), min_size=1, max_size=40)


@settings(max_examples=100, deadline=None)
@given(seconds, st.data())
def test_promises_of_a_recording(times, data):
    anything = st.floats(allow_nan=True, allow_infinity=True)
    values = data.draw(st.lists(anything, min_size=len(times), max_size=len(times)))
    run = assemble(Draft("FIT"), matrix(times, **dict.fromkeys(COLUMNS[1:], values)))
    assert run.records == len(times) and run.time[0] == 0.0
    assert (np.diff(run.time) >= 0).all()
    for name, stream in run.streams.items():
        low, high = BOUNDS[name]
        assert len(stream.time) == len(stream.values) > 0
        assert (np.diff(stream.time) > 0).all()
        assert ((stream.values >= low) & (stream.values <= high)).all()
        assert np.isin(stream.time, run.time).all()


def test_a_recording_travels_between_processes():
    run = assemble(Draft("FIT"), matrix([0, 1], heart_rate=[100, 101]))
    copy = pickle.loads(pickle.dumps(run))
    assert copy.start == run.start and pairs(copy.streams["heart_rate"]) == [(0, 100), (1, 101)]


@pytest.mark.parametrize(
    ("samples", "word"),
    [
        (matrix([]), "no samples"),
        (matrix([np.nan, np.inf]), "carries a time"),
        (matrix([0, 10 * 86_400 + 1]), "ten days"),
        (matrix(np.arange(0, 86_400 * 40, 86_400)), "ten days"),
        (matrix([-ZERO - 2, -ZERO - 1]), "before 1970"),
        (matrix([1e10]), "after 2126"),
        (matrix([1.7e308, 1.7e308]), "after 2126"),
    ],
)
def test_absurd_times_fail(samples, word):
    failed = assemble(Draft("TCX", damage=["Cut."]), samples)
    assert isinstance(failed, Failed)
    assert (failed.status, failed.format) == ("refused", "TCX")
    assert word in failed.reason and failed.reason.endswith("Cut.")


def test_too_many_samples_fail(monkeypatch):
    monkeypatch.setattr(module, "MAX_SAMPLES", 3)
    assert isinstance(assemble(Draft("FIT"), matrix(range(4))), Failed)
    assert isinstance(assemble(Draft("FIT"), matrix(range(3))), Recording)


def test_a_few_impossible_times_are_left_out():
    times = [*range(300), 5e8, -ZERO]
    run = assemble(Draft("FIT"), matrix(times))
    assert (run.records, run.elapsed_s) == (300, 299.0)
    assert run.damage == "Samples left out for an impossible time: 2."


@pytest.mark.parametrize(
    ("strays", "damage", "kept"),
    [(1, "", 12), (2, "", None), (2, "Cut.", 12), (11, "Cut.", 12), (13, "Cut.", None)],
)
def test_how_many_impossible_times_are_let_pass(strays, damage, kept):
    times = [*range(12), *(5e8 + 1e7 * k for k in range(strays))]
    run = assemble(Draft("FIT", damage=[damage] if damage else []), matrix(times))
    assert (None if isinstance(run, Failed) else run.records) == kept


def test_times_keep_their_microseconds():
    run = assemble(Draft("GPX"), matrix([0.1, 0.300001, 1000.7]))
    assert run.time.tolist() == [0.0, 0.200001, 1000.6]


@pytest.mark.parametrize(
    ("sport", "told", "steps"),
    [
        ("running", [0, 85, 90], [0, 170, 180]),
        ("unknown", [85, 90, 88], [170, 180, 176]),
        ("running", [172, 0, 180], [172, 0, 180]),
        ("running", [0, 0, 0], [0, 0, 0]),
        ("cycling", [85, 90, 88], None),
    ],
)
def test_cadence_becomes_steps(sport, told, steps):
    run = assemble(Draft("FIT", sport=sport), matrix([0, 1, 2], cadence=told))
    got = run.streams["cadence"].values.tolist() if "cadence" in run.streams else None
    assert got == steps


def test_laps_are_placed_within_the_recording():
    laps = [
        Lap(ZERO + 50, 100, 1e9),
        Lap(ZERO - 5, 25, 60.0, True),
        Lap(ZERO + 500, 10),
        Lap(float("nan"), 10),
        Lap(ZERO, float("nan")),
    ]
    run = assemble(Draft("FIT", laps=laps), matrix([0, 100]))
    assert run.laps == (Lap(0.0, 20.0, 60.0, True), Lap(50.0, 50.0, None))


def test_stops_are_clipped_and_joined():
    told = [(20, 30), (-9, 5), (25, 40), (90, 200), (60, 60), (150, 160)]
    stops = [(ZERO + a, ZERO + b) for a, b in told]
    run = assemble(Draft("FIT", stops=stops), matrix([0, 100]))
    assert run.stops == ((0.0, 5.0), (20.0, 40.0), (90.0, 100.0))


@pytest.mark.parametrize(("told", "kept"), [(50_400, 50_400), (50_401, None), (None, None)])
def test_offsets_beyond_the_worlds_clocks(told, kept):
    assert assemble(Draft("GPX", utc_offset_s=told), matrix([0])).utc_offset_s == kept


def test_gather_tells_of_activities_that_were_refused():
    run = assemble(Draft("GPX"), matrix([0]))
    bad, other = Failed("Bad."), Failed("A route.", "passed over")
    (told,) = gather([bad, run, other], "GPX")
    assert told.damage == "Another activity in the file could not be read: Bad."
    assert gather([other, bad], "GPX") is other
    assert isinstance(gather([], "GPX"), Failed)

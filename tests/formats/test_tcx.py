"""TCX built as text comes back as recordings."""

import numpy as np
import pytest
from tests.formats.build import START, activity, run_tcx, tcx, tcx_lap, tcx_point

from tercet import formats
from tercet.domain import Failed
from tercet.formats.tcx import read_tcx


def one(data, name=""):
    recordings = read_tcx(data, name)
    assert not isinstance(recordings, Failed), recordings
    assert len(recordings) == 1
    return recordings[0]


def points(*seconds, **values):
    return [tcx_point(second, **values) for second in seconds]


def test_a_run_comes_back_whole():
    run = one(run_tcx(20), "given")
    assert (run.format, run.sport, run.device, run.name) == ("TCX", "running", "A watch", "given")
    assert run.start == START and run.time.tolist() == list(range(20))
    assert run.damage == "" and run.stops == ()
    seconds = np.arange(20)
    for name, expected in {
        "latitude": 50.0 + seconds * 2.7e-5,
        "longitude": 7.0,
        "altitude": 120.5,
        "distance": 3.0 * seconds,
        "heart_rate": 120.0 + seconds,
        "speed": 3.0,
        "cadence": 170.0,
        "power": 250.0,
    }.items():
        assert np.allclose(run.streams[name].values, expected, rtol=0, atol=1e-12), name
    (lap,) = run.laps
    assert (lap.start_s, lap.duration_s, lap.distance_m, lap.pressed) == (0.0, 19.0, 57.0, True)


def test_each_activity_is_a_recording():
    ride = activity(tcx_lap(0, 4, points(0, 1, 4)), sport="Biking")
    other = activity(tcx_lap(50, 3, points(50, 53)), sport="Other")
    found = read_tcx(tcx(ride, activity(), other))
    assert [(run.sport, run.records, len(run.laps)) for run in found] == [
        ("cycling", 3, 1),
        ("unknown", 2, 1),
    ]


def test_tracks_within_a_lap_are_parted_by_pauses():
    laps = [
        tcx_lap(0, 9, points(0, 1, 5), points(65, 69), metres=30),
        tcx_lap(69, 11, points(70, 80), trigger="Distance"),
    ]
    run = one(tcx(activity(*laps)))
    assert run.stops == ((5.0, 65.0),)
    # TCX tells the timer's 9 s; the lap lasted from 0 to 69
    assert [(lap.start_s, lap.duration_s, lap.pressed) for lap in run.laps] == [
        (0.0, 69.0, True),
        (69.0, 11.0, False),
    ]


def test_a_gap_between_laps_is_no_pause():
    laps = [tcx_lap(0, 5, points(0, 5)), tcx_lap(20, 5, points(20, 25))]
    assert one(tcx(activity(*laps))).stops == ()


def test_a_foot_pod_in_the_plain_cadence_element():
    point = tcx_point(0).replace("</Trackpoint>", "<Cadence>86</Cadence></Trackpoint>")
    assert one(tcx(activity(tcx_lap(0, 1, [point])))).streams["cadence"].values.tolist() == [172.0]


@pytest.mark.parametrize("bad", ["nan", "INF", "1e400", "1_0", "٤", "-1", ""])
def test_distances_that_are_none_are_missing(bad):
    lap = tcx_lap(0, 1, [tcx_point(0, distance=bad), tcx_point(1, distance=4)], metres=bad)
    run = one(tcx(activity(lap)))
    assert run.streams["distance"].time.tolist() == [1.0]
    assert run.laps[0].distance_m is None


def test_laps_without_times_are_left_out():
    lap = tcx_lap(0, "nan", points(0, 5))
    assert one(tcx(activity(lap))).laps == ()


def test_a_course_is_passed_over():
    course = (
        b'<TrainingCenterDatabase xmlns="urn:t"><Courses><Course><Name>Loop</Name><Track>'
        + "".join(points(0, 1)).encode()
        + b"</Track></Course></Courses></TrainingCenterDatabase>"
    )
    failed = read_tcx(course)
    assert isinstance(failed, Failed)
    assert failed.status == "passed over" and "course" in failed.reason
    cut = read_tcx(course[: course.index(b"</Track>")])
    assert isinstance(cut, Failed)


def test_an_activity_of_sums_only_is_passed_over():
    failed = read_tcx(tcx(activity(tcx_lap(0, 1800, metres=5000))))
    assert isinstance(failed, Failed) and failed.status == "passed over"


def test_points_without_times_are_a_route():
    lap = tcx_lap(0, 1, ["<Trackpoint><DistanceMeters>5</DistanceMeters></Trackpoint>"])
    failed = read_tcx(tcx(activity(lap)))
    assert isinstance(failed, Failed) and "route" in failed.reason


def test_a_cut_at_any_byte_gives_every_whole_point():
    data = run_tcx(3)
    mark = b"</Trackpoint>"
    ends = [at + len(mark) for at in range(len(data)) if data[at:].startswith(mark)]
    for cut in range(len(data) - 1):
        result = read_tcx(data[:cut])
        whole = sum(end <= cut for end in ends)
        if whole:
            assert [run.records for run in result] == [whole]
            assert result[0].sport == "running" and "cut short" in result[0].damage
        else:
            assert isinstance(result, Failed) and result.status == "refused"


def test_more_laps_than_a_run_can_have_are_refused_with_the_bound(monkeypatch):
    laps = [tcx_lap(5 * k, 5, points(5 * k, 5 * k + 5)) for k in range(4)]
    monkeypatch.setattr(formats.tcx, "MAX_LAPS", 4)
    assert len(one(tcx(activity(*laps))).laps) == 4
    monkeypatch.setattr(formats.tcx, "MAX_LAPS", 3)
    failed = formats.read_bytes(tcx(activity(*laps)))
    assert isinstance(failed, Failed) and failed.reason == "It holds more than 3 laps."

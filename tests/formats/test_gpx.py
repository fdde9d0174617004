"""GPX built as text comes back as recordings."""

import gpxpy
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.formats.build import START, gpx, gpx_point, run_gpx, segment, stamp

from tercet.domain import Failed
from tercet.formats.gpx import read_gpx


def one(data, name=""):
    recordings = read_gpx(data, name)
    assert not isinstance(recordings, Failed), recordings
    assert len(recordings) == 1
    return recordings[0]


def track(*points):
    return gpx(segment(points))


def test_a_run_comes_back_whole():
    run = one(run_gpx(20))
    assert (run.format, run.sport, run.name, run.device) == ("GPX", "running", "Long run", "maker")
    assert run.start == START and run.utc_offset_s is None
    assert run.time.tolist() == list(range(20))
    assert run.damage == "" and run.stops == () and run.laps == ()
    seconds = np.arange(20)
    for name, expected in {
        "latitude": 50.0 + seconds * 2.7e-5,
        "longitude": 7.0,
        "altitude": 120.5,
        "heart_rate": 120.0 + seconds,
        "cadence": 170.0,
        "temperature": 12.0,
    }.items():
        assert np.allclose(run.streams[name].values, expected, rtol=0, atol=1e-12), name
    assert set(run.streams) == {
        "latitude", "longitude", "altitude", "heart_rate", "cadence", "temperature",
    }  # fmt: skip


def test_a_second_reader_reads_the_same():
    # outside check: gpxpy 1.6
    data = run_gpx(25)
    points = gpxpy.parse(data.decode()).tracks[0].segments[0].points
    run = one(data)
    assert run.start == points[0].time
    assert [(p.time - points[0].time).total_seconds() for p in points] == run.time.tolist()
    assert [p.latitude for p in points] == run.streams["latitude"].values.tolist()
    assert [p.elevation for p in points] == run.streams["altitude"].values.tolist()


number = st.floats(-1e3, 8e3, allow_subnormal=False)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.floats(-90, 90).filter(bool),
            st.floats(-180, 180),
            st.none() | number,
            st.none() | st.integers(25, 250),
        ),
        min_size=1,
        max_size=20,
    )
)
def test_built_columns_come_back(rows):
    points = [
        gpx_point(k * 1.5, repr(lat), repr(lon), ele=ele, **({} if hr is None else {"hr": hr}))
        for k, (lat, lon, ele, hr) in enumerate(rows)
    ]
    run = one(track(*points))
    assert run.time.tolist() == [k * 1.5 for k in range(len(rows))]
    for index, name in enumerate(("latitude", "longitude", "altitude", "heart_rate")):
        told = [(k * 1.5, row[index]) for k, row in enumerate(rows) if row[index] is not None]
        stream = run.streams.get(name)
        got = list(zip(stream.time, stream.values, strict=True)) if stream else []
        assert got == told


@pytest.mark.parametrize(
    "bad",
    ["nan", "inf", "-inf", "1e400", "4_7", "٤٧", "47,5", "", "91", "-90.01", "0x10", "4 7"],
)  # fmt: skip
def test_a_latitude_that_is_no_latitude_is_missing(bad):
    run = one(track(gpx_point(0, bad, 7.0, hr=100), gpx_point(1, 50.0, 7.0, hr=101)))
    assert run.records == 2
    assert run.streams["latitude"].time.tolist() == [1.0]
    assert run.streams["longitude"].time.tolist() == [1.0]
    assert run.streams["heart_rate"].values.tolist() == [100, 101]


@pytest.mark.parametrize("bad", ["nan", "inf", "1e400", "1_20", "١٢٠", "0", "255", "65535", "-5"])
def test_a_heart_rate_that_is_none_is_missing(bad):
    run = one(track(gpx_point(0, hr=bad), gpx_point(1, hr=101)))
    assert run.streams["heart_rate"].values.tolist() == [101.0]


def test_position_0_0_is_no_position():
    run = one(track(gpx_point(0, 0, 0), gpx_point(1, 0, 7.0)))
    assert run.streams["latitude"].time.tolist() == [1.0]


@pytest.mark.parametrize(
    ("zone", "offset"),
    [("Z", None), ("", None), ("+00:00", None), ("+02:00", 7200), ("-03:30", -12_600)],
)
def test_offsets_of_the_clock(zone, offset):
    run = one(track(gpx_point(0, zone=zone), gpx_point(1, zone=zone)))
    assert run.start == START and run.utc_offset_s == offset


def test_fractions_of_a_second():
    run = one(track(gpx_point(0.116), gpx_point(1.128), gpx_point(2.125)))
    assert run.time.tolist() == [0.0, 1.012, 2.009]
    assert run.start.microsecond == 116_000


@pytest.mark.parametrize("bad", ["2026-13-01T00:00:00Z", "2026-03-01", "noon", "٢٠٢٦-03-01T00:00Z"])
def test_a_point_with_a_bad_time_is_left_out(bad):
    odd = gpx_point(1).replace(stamp(1), bad)
    run = one(track(gpx_point(0), odd, gpx_point(2)))
    assert run.time.tolist() == [0.0, 2.0]
    assert "want of a time: 1." in run.damage


def test_a_route_is_passed_over():
    untimed = read_gpx(track(gpx_point(), gpx_point()))
    assert isinstance(untimed, Failed)
    assert untimed.status == "passed over" and "route" in untimed.reason
    places = read_gpx(gpx(inside='<wpt lat="1" lon="2"><time>2026-03-01T00:00:00Z</time></wpt>'))
    assert isinstance(places, Failed) and places.status == "passed over"


def test_each_track_is_a_recording():
    first = f"<name>One</name>{segment([gpx_point(0), gpx_point(1)])}"
    empty = "<name>Nothing</name>"
    last = segment(gpx_point(100 + s) for s in range(3))
    runs = read_gpx(gpx(first, empty, last), "given")
    assert [(run.name, run.records) for run in runs] == [("One", 2), ("given", 3)]
    assert (runs[1].start - runs[0].start).total_seconds() == 100.0


def test_a_route_beside_a_run_does_not_matter():
    data = gpx(segment([gpx_point(), gpx_point()]), segment([gpx_point(0), gpx_point(1)]))
    assert one(data).damage == ""


def test_segments_are_parted_by_stops_if_there_is_a_gap():
    parts = [range(5), range(6, 10), range(70, 75)]
    run = one(gpx("".join(segment(gpx_point(s) for s in part) for part in parts)))
    assert run.stops == ((9.0, 70.0),)


@pytest.mark.parametrize(
    ("wording", "expected"),
    [
        ("running", ("running", "")),
        ("Run", ("running", "")),
        ("trail_running", ("running", "trail")),
        ("treadmill running", ("running", "treadmill")),
        ("cycling", ("cycling", "")),
        ("9", ("unknown", "")),
    ],
)
def test_type_of_the_track(wording, expected):
    run = one(gpx(f"<type>{wording}</type>{segment([gpx_point(0)])}"))
    assert (run.sport, run.kind) == expected


def test_names_of_places_and_points_are_not_the_tracks():
    data = gpx(
        f"<name>Mine</name>{segment([gpx_point(0).replace('<time>', '<name>No</name><time>')])}",
        inside="<metadata><name>File</name></metadata>",
    )
    assert one(data).name == "Mine"


def test_gpx_1_0_and_extensions_of_any_namespace():
    point = gpx_point(0).replace("</trkpt>", "<speed>3.25</speed></trkpt>")
    other = gpx_point(1).replace(
        "</trkpt>",
        '<extensions><a:heartrate xmlns:a="urn:a">140</a:heartrate><power>260</power>'
        "</extensions></trkpt>",
    )
    run = one(track(point, other))
    assert run.streams["speed"].values.tolist() == [3.25]
    assert run.streams["heart_rate"].values.tolist() == [140.0]
    assert run.streams["power"].values.tolist() == [260.0]


def test_cadence_in_steps_stays():
    run = one(track(*(gpx_point(s, cad=172 + s) for s in range(3))))
    assert run.streams["cadence"].values.tolist() == [172, 173, 174]


def test_a_cut_at_any_byte_gives_every_whole_point():
    data = run_gpx(4)
    ends = [at + len(b"</trkpt>") for at in range(len(data)) if data[at:].startswith(b"</trkpt>")]
    for cut in range(len(data) - 1):
        result = read_gpx(data[:cut])
        whole = sum(end <= cut for end in ends)
        if whole:
            assert [run.records for run in result] == [whole]
            assert "cut short" in result[0].damage
        else:
            assert isinstance(result, Failed) and result.status == "refused"


def test_damage_in_the_middle_keeps_what_stands_before():
    first = segment([gpx_point(0), gpx_point(1)])
    run = one(gpx(first + "<trkseg>&nothing;" + gpx_point(2) + "</trkseg>"))
    assert run.records == 2 and "damaged at line 2" in run.damage

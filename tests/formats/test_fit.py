"""FIT files built byte by byte come back as recordings."""

import struct
from datetime import UTC, datetime

import fitfast
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.formats import build
from tests.formats.build import START, START_FIT, Fit, run_fit

from tercet import resources
from tercet.domain import Failed
from tercet.formats import fit_frame, fit_messages, fit_records
from tercet.formats.fit import MAX_FIT_BYTES, read_fit
from tercet.formats.fit_records import FIELDS


def one(fit):
    recordings = read_fit(bytes(fit))
    assert not isinstance(recordings, Failed), recordings
    assert len(recordings) == 1
    return recordings[0]


def records(*rows, session=None):
    fit = Fit().add(build.FILE_ID, type=4)
    for row in rows:
        fit.add(build.RECORD, **row)
    if session:
        fit.add(build.SESSION, start_time=START_FIT, **session)
    return fit


def test_a_run_comes_back_whole():
    run = one(run_fit(20))
    assert (run.format, run.sport, run.kind) == ("FIT", "running", "")
    assert run.start == START and run.start.tzinfo is UTC
    assert run.time.tolist() == list(range(20))
    assert (run.records, run.elapsed_s) == (20, 19.0)
    assert run.utc_offset_s == 3600
    assert run.damage == "" and run.stops == ()
    seconds = np.arange(20)
    for name, expected in {
        "heart_rate": 120 + seconds,
        "speed": 3.0,
        "distance": 3.0 * seconds,
        "latitude": 50.0 + seconds * 2.7e-5,
        "longitude": 7.0,
        "altitude": 120.0,
        "cadence": 170.0,  # the file counts one foot
        "power": 250.0,
        "temperature": 12.0,
    }.items():
        # a semicircle is 180 / 2^31 degrees, so half of one is lost in writing
        assert np.allclose(run.streams[name].values, expected, rtol=0, atol=5e-8), name
        assert run.streams[name].time.tolist() == seconds.tolist()
    (lap,) = run.laps
    assert (lap.start_s, lap.duration_s, lap.distance_m, lap.pressed) == (0.0, 19.0, 57.0, True)


@pytest.mark.parametrize("options", [{"header_size": 12}, {"big_endian": True}])
def test_other_spellings_of_the_same_file(options):
    assert one(run_fit(5, **options)).streams["distance"].values.tolist() == [0, 3, 6, 9, 12]


def test_a_second_decoder_reads_the_same():
    # outside check: fitfast 0.1, a decoder in another language
    data = bytes(run_fit(30))
    ours, theirs = one(run_fit(30)), fitfast.records(data)
    stamps = np.asarray(theirs["timestamp"], dtype=np.float64)
    assert stamps[0] == ours.start.timestamp()
    assert (stamps - stamps[0]).tolist() == ours.time.tolist()
    for mine, name in (
        ("heart_rate", "heart_rate"),
        ("distance", "distance"),
        ("latitude", "position_lat"),
        ("longitude", "position_long"),
        ("speed", "enhanced_speed"),
        ("altitude", "enhanced_altitude"),
        ("power", "power"),
    ):
        assert np.allclose(ours.streams[mine].values, theirs[name], rtol=0, atol=1e-9), mine


column = st.lists(
    st.tuples(
        st.none() | st.integers(25, 250),  # heart rate
        st.none() | st.integers(0, 65_000),  # speed, mm/s
        st.none() | st.integers(0, 4_000_000),  # distance, cm
        st.none() | st.integers(-60, 80),  # temperature
    ),
    min_size=1,
    max_size=30,
)


@settings(max_examples=60, deadline=None)
@given(column)
def test_built_columns_come_back(rows):
    names = ("heart_rate", "speed", "distance", "temperature")
    fit = records(
        *(
            {"timestamp": START_FIT + 2 * k, **dict(zip(names, row, strict=True))}
            for k, row in enumerate(rows)
        )
    )
    run = one(fit)
    assert run.records == len(rows)
    for index, (name, scale) in enumerate(zip(names, (1, 1000, 100, 1), strict=True)):
        told = [(2.0 * k, r[index] / scale) for k, r in enumerate(rows) if r[index] is not None]
        stream = run.streams.get(name)
        got = list(zip(stream.time, stream.values, strict=True)) if stream else []
        assert got == told


def test_invalid_values_and_a_heart_rate_of_0_are_missing():
    run = one(
        records(
            {"timestamp": START_FIT, "heart_rate": 0, "speed": None, "position_lat": None},
            {"timestamp": START_FIT + 1, "heart_rate": 130, "speed": 2000, "position_lat": 0},
        )
    )
    assert run.records == 2
    assert run.streams["heart_rate"].time.tolist() == [1.0]
    assert run.streams["speed"].time.tolist() == [1.0]
    assert "latitude" not in run.streams


def test_enhanced_values_come_before_plain_ones():
    run = one(
        records(
            {
                "timestamp": START_FIT,
                "speed": 65_535,  # invalid
                "enhanced_speed": 4321,
                "altitude": None,
                "enhanced_altitude": (2500 + 500) * 5,
            }
        )
    )
    assert run.streams["speed"].values.tolist() == [4.321]
    assert run.streams["altitude"].values.tolist() == [2500.0]


def test_fractional_cadence_counts_and_cycling_has_no_steps():
    row = {"timestamp": START_FIT, "cadence": 88, "fractional_cadence": 64}  # of 128
    run = one(records(row, session={"sport": 1}))
    assert run.streams["cadence"].values.tolist() == [177.0]
    assert "cadence" not in one(records(row, session={"sport": 2})).streams


def test_compressed_time_headers():
    # protocol: the lower five bits count on from the last full time, rolling over at 32
    fit = Fit().add(build.FILE_ID, type=4)
    first = START_FIT // 32 * 32 + 30
    fit.add(build.RECORD, timestamp=first, heart_rate=100)
    fit.define(0, build.RECORD, ["heart_rate"])
    for second in (1, 2, 5, 33):
        fit.data(0, time_offset=(first + second) % 32, heart_rate=100 + second)
    run = one(fit)
    assert run.time.tolist() == [0, 1, 2, 5, 33]
    assert run.streams["heart_rate"].values.tolist() == [100, 101, 102, 105, 133]


@pytest.mark.parametrize(
    ("sport", "sub_sport", "expected"),
    [
        (1, 0, ("running", "")),
        (1, 1, ("running", "treadmill")),
        (1, 45, ("running", "treadmill")),
        (1, 3, ("running", "trail")),
        (1, 4, ("running", "track")),
        (2, 13, ("cycling", "")),
        (11, 0, ("walking", "")),
        (0, 0, ("unknown", "")),
        (201, 0, ("unknown", "")),
    ],
)
def test_sport_of_the_session(sport, sub_sport, expected):
    row = {"timestamp": START_FIT, "heart_rate": 100}
    run = one(records(row, session={"sport": sport, "sub_sport": sub_sport}))
    assert (run.sport, run.kind) == expected


def test_sport_without_a_session():
    row = {"timestamp": START_FIT, "heart_rate": 100}
    told = Fit().add(build.SPORT, sport=1, sub_sport=4).add(build.RECORD, **row)
    assert (one(told).sport, one(told).kind) == ("running", "track")
    assert one(records({**row, "activity_type": 1})).sport == "running"
    assert one(records(row)).sport == "unknown"


def test_timer_events_give_stops():
    fit = Fit().add(build.FILE_ID, type=4)
    for second in (0, 1, 2, 30, 31, 60):
        fit.add(build.RECORD, timestamp=START_FIT + second, heart_rate=120)
    # out of order on purpose: some devices write all events last; 0 start, 1 stop, 4 stop all
    for second, kind in ((50, 4), (0, 0), (2, 1), (30, 0)):
        fit.add(build.EVENT, timestamp=START_FIT + second, event=0, event_type=kind)
    fit.add(build.EVENT, timestamp=START_FIT + 10, event=8, event_type=0)  # no timer event
    assert one(fit).stops == ((2.0, 30.0), (50.0, 60.0))


@pytest.mark.parametrize(
    ("shift", "expected"),
    [
        (0, 0),
        (3600, 3600),
        (-25_200, -25_200),
        (19_800 + 20, 19_800),  # clocks a few seconds apart
        (14 * 3600, 14 * 3600),
        (15 * 3600, None),
        (-START_FIT, None),
    ],
)
def test_offset_of_the_local_clock(shift, expected):
    fit = records({"timestamp": START_FIT, "heart_rate": 100})
    fit.add(build.ACTIVITY, timestamp=START_FIT, local_timestamp=START_FIT + shift)
    assert one(fit).utc_offset_s == expected


def test_device_in_plain_words():
    # 255 is "development" in the public profile's list of makers
    assert one(run_fit(3)).device == "development 7"


def test_each_session_is_a_recording():
    fit = Fit().add(build.FILE_ID, type=4)
    for second in range(10):
        fit.add(build.RECORD, timestamp=START_FIT + second, heart_rate=100 + second)
    for start, seconds in ((0, 4), (4, 6)):
        fit.add(
            build.LAP,
            timestamp=START_FIT,
            start_time=START_FIT + start,
            total_elapsed_time=seconds * 1000,
            total_distance=0,
            lap_trigger=7,
            sport=1,
        )
    fit.add(build.SESSION, start_time=START_FIT + 4, sport=1)
    fit.add(build.SESSION, start_time=START_FIT, sport=2)
    ride, run = read_fit(bytes(fit))
    assert (ride.sport, ride.records, run.sport, run.records) == ("cycling", 4, "running", 6)
    assert (run.start - ride.start).total_seconds() == 4.0
    assert len(ride.laps) == len(run.laps) == 1


def test_chained_files_are_recordings_of_their_own():
    first, second = bytes(run_fit(4)), bytes(run_fit(7))
    settings_file = bytes(Fit().add(build.FILE_ID, type=2))
    found = read_fit(first + settings_file + second)
    assert [run.records for run in found] == [4, 7]
    assert [run.damage for run in found] == ["", ""]


@pytest.mark.parametrize("kind", [2, 6, 15, 5, 4 + 200])
def test_files_of_another_kind_are_passed_over(kind):
    failed = read_fit(bytes(Fit().add(build.FILE_ID, type=kind)))
    assert isinstance(failed, Failed)
    assert (failed.status, failed.format) == ("passed over", "FIT")


def test_a_course_with_records_is_passed_over():
    fit = Fit().add(build.FILE_ID, type=6)
    failed = read_fit(bytes(fit.add(build.RECORD, timestamp=START_FIT, distance=0)))
    assert isinstance(failed, Failed)
    assert failed.status == "passed over" and "course" in failed.reason


def test_an_activity_without_samples_is_refused():
    failed = read_fit(bytes(Fit().add(build.FILE_ID, type=4)))
    assert isinstance(failed, Failed) and failed.status == "refused"
    assert "no sample" in failed.reason


def test_a_clock_that_was_never_set():
    # times below 0x10000000 (1998-07-03T21:24:16Z) count from switching on
    relative = one(records({"timestamp": 1000, "heart_rate": 100}))
    assert relative.start == datetime(1989, 12, 31, 0, 16, 40, tzinfo=UTC)
    edge = one(records({"timestamp": 0x10000000, "heart_rate": 100}))
    assert edge.start == datetime(1998, 7, 3, 21, 24, 16, tzinfo=UTC)
    mixed = one(
        records({"timestamp": 1000, "heart_rate": 100}, {"timestamp": START_FIT, "heart_rate": 101})
    )
    assert mixed.records == 1 and "from before the clock was set: 1." in mixed.damage


def test_the_last_moment_of_the_counter_can_be_told():
    far = one(records({"timestamp": 0xFFFFFFFE, "heart_rate": 100}))
    assert far.start == datetime(2126, 2, 6, 6, 28, 14, tzinfo=UTC)


def test_a_wrong_check_sum_is_damage():
    data = bytearray(bytes(run_fit(10)))
    data[-1] ^= 0xFF
    (run,) = read_fit(bytes(data))
    assert run.records == 10 and "check sum is wrong" in run.damage


def test_a_length_that_was_never_written():
    data = bytearray(bytes(run_fit(10)))
    data[4:8] = bytes(4)
    (run,) = read_fit(bytes(data))
    assert run.records == 10 and "never finished" in run.damage


def test_bytes_behind_the_end_are_told():
    (run,) = read_fit(bytes(run_fit(10)) + b"more")
    assert run.records == 10 and "not read: 4." in run.damage


def test_damage_in_the_middle_loses_only_the_samples_it_hit():
    fit = run_fit(40)
    data = bytearray(bytes(fit))
    data[fit.ends[24]] = 0x0F  # data of a message that was never defined
    (run,) = read_fit(bytes(data))
    assert run.records == 39 and 25.0 not in run.time
    assert "could not be read" in run.damage and "check sum" in run.damage
    assert f"Bytes {fit.ends[24]:,} to {fit.ends[25]:,}" in run.damage


def test_damage_near_the_end_keeps_what_stands_before():
    fit = run_fit(40)
    data = bytearray(bytes(fit))
    data[fit.ends[37]] = 0x0F
    (run,) = read_fit(bytes(data))
    assert run.records == 38
    assert "Nothing after byte" in run.damage and "check sum" in run.damage


def test_the_quick_way_and_the_general_decoder_give_the_same():
    for place in sorted(resources.samples().glob("*.fit"))[::7]:
        for part in fit_frame.parts(place.read_bytes()):
            quick, general = fit_messages.decode(part), fit_messages.Decoded()
            samples = fit_messages._read(general, part.data, part, samples=True)
            assert quick.messages == general.messages
            for name in ("timestamp", "heart_rate", "distance", "position_lat", "cadence"):
                column = FIELDS.index(name)
                np.testing.assert_allclose(quick.samples[:, column], samples[:, column])
            for name in ("speed", "altitude"):  # the decoder copies the plain to the enhanced
                a, b = FIELDS.index(name), FIELDS.index(f"enhanced_{name}")
                told = np.where(
                    np.isnan(quick.samples[:, b]), quick.samples[:, a], quick.samples[:, b]
                )
                np.testing.assert_allclose(told, samples[:, b])


def test_a_cut_at_any_byte_gives_every_whole_record():
    fit = run_fit(12)
    data = bytes(fit)
    for cut in range(12, len(data)):
        result = read_fit(data[:cut])
        whole = sum(end <= cut for end in fit.ends)
        if whole:
            assert [run.records for run in result] == [whole]
            assert f"ends after {cut:,} bytes, {len(data):,} were announced" in result[0].damage
        else:
            assert isinstance(result, Failed) and result.status == "refused"
            assert "cut short" in result.reason


def test_samples_described_anew_each_time_are_all_read():
    fit = Fit().add(build.FILE_ID, type=4)
    for second in range(400):  # two descriptions in turn, each written again
        beside = {"heart_rate": 130} if second % 2 else {"cadence": 85}
        fit.add(build.RECORD, timestamp=START_FIT + second, **beside)
    run = one(fit)
    assert run.records == 400 and len(run.streams["heart_rate"].values) == 200 and not run.damage


def test_samples_described_in_endless_ways_end_the_reading():
    fit = Fit().add(build.FILE_ID, type=4)
    for number in range(fit_records.MAX_DEFINITIONS + 50):
        fit.body += bytes([0x40, 0, 0, 20, 0, 2, 253, 4, 0x86, 200 + number % 50, number // 50, 2])
        fit.body += struct.pack("<BI", 0, START_FIT + number) + bytes(number // 50)
    run = one(fit)
    assert run.records == fit_records.MAX_DEFINITIONS
    assert "Nothing after byte" in run.damage


def test_many_damages_are_told_in_few_words():
    fit = run_fit(400)
    data = bytearray(bytes(fit))
    for k in range(10, 380, 10):
        data[fit.ends[k]] = 0x0F
    run = one(data)
    assert run.records == 400 - 37
    assert "Further places that could not be read: 32." in run.damage


def test_too_large_a_file_is_refused():
    failed = read_fit(bytes(run_fit(2)) + bytes(MAX_FIT_BYTES))
    assert isinstance(failed, Failed) and "larger than 64 MB" in failed.reason


def test_what_is_no_fit_is_refused():
    assert isinstance(read_fit(b"anything else at all"), Failed)

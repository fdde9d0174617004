"""The encoders, read back by libraries that had no part in them."""

from __future__ import annotations

import io
from xml.etree import ElementTree

import fitdecode
import fitfast
import gpxpy
import numpy as np
import pytest
from fit_tool.fit_file import FitFile

from tests.simulator import Runner, Simulated, prescribe, simulate
from tests.simulator.noise import stream
from tests.simulator.write_fit import crc16, fit_bytes
from tests.simulator.write_gpx import gpx_bytes
from tests.simulator.write_tcx import tcx_bytes

CASES = {
    "stops": ("recovery", {"waits": 2, "timer": "auto", "gps_gaps": 1, "sampling": "smart"}),
    "laps": ("reps_100", {"laps": "pressed", "timer": "running"}),
    "belt": ("treadmill_easy", {"sampling": "smart"}),
    "ride": ("ride", {"sampling": "smart"}),
    "no heart": ("recovery", {"hr_source": "none", "hr_fault": "", "sampling": "smart"}),
}


def made(case: str) -> Simulated:
    kind, conditions = CASES[case]
    return simulate(Runner(), prescribe(kind, stream(2, 0)), 11, **conditions)


def messages(data: bytes) -> list[fitdecode.FitDataMessage]:
    with fitdecode.FitReader(
        io.BytesIO(data),
        check_crc=fitdecode.CrcCheck.RAISE,
        error_handling=fitdecode.ErrorHandling.RAISE,
    ) as reader:
        return [m for m in reader if m.frame_type == fitdecode.FIT_FRAME_DATA]


def test_crc_is_the_common_16_bit_one() -> None:
    """CRC-16/ARC of "123456789" is 0xBB3D (published check value, from memory)."""
    assert crc16(b"123456789") == 0xBB3D


@pytest.mark.parametrize("case", CASES)
def test_fit_reads_back_with_three_decoders(case: str) -> None:
    run = made(case)
    data = fit_bytes(run, "Run, with a name far too long for it")
    found = messages(data)
    count = len(run.samples["time"])
    assert sum(m.name == "record" for m in found) == count
    assert fitfast.message_counts(data)["record"] == count
    names = [type(r.message).__name__ for r in FitFile.from_bytes(data).records]
    assert names.count("RecordMessage") == count
    assert sum(m.name == "lap" for m in found) == len(run.laps)
    assert sum(m.name == "event" for m in found) == 2 + 2 * len(run.stops)
    assert data == fit_bytes(made(case), "Run, with a name far too long for it")


@pytest.mark.parametrize("case", CASES)
def test_fit_keeps_what_was_recorded(case: str) -> None:
    run = made(case)
    found = messages(fit_bytes(run))
    for field, stream_name, tolerance in (
        ("heart_rate", "heart_rate", 0.0),
        ("distance", "distance", 0.0051),
        ("enhanced_speed", "speed", 0.00051),
        ("enhanced_altitude", "altitude", 0.11),
    ):
        read = [m.get_value(field, fallback=None) for m in found if m.name == "record"]
        values = np.array([np.nan if v is None else v for v in read], dtype=float)
        np.testing.assert_allclose(values, run.samples[stream_name], rtol=0, atol=tolerance)
    activity = next(m for m in found if m.name == "activity")
    ahead = activity.get_value("local_timestamp") - activity.get_value("timestamp")
    assert ahead.total_seconds() == run.utc_offset_s
    session = next(m for m in found if m.name == "session")
    assert session.get_value("start_time") == run.start
    assert session.get_value("total_elapsed_time") == run.elapsed_s
    held = sum(b - a for a, b in run.stops)
    assert session.get_value("total_timer_time") == run.elapsed_s - held
    assert session.get_value("sport") == run.session.sport


def test_tcx_is_sound_xml_with_every_sample_once() -> None:
    for case in CASES:
        run = made(case)
        root = ElementTree.fromstring(tcx_bytes(run, "Strides & jog <1>"))
        points = root.findall(".//{*}Trackpoint")
        assert len(points) == len(run.samples["time"])
        beats = [
            int(p.text or "") for p in root.findall(".//{*}Trackpoint/{*}HeartRateBpm/{*}Value")
        ]
        heart = run.samples["heart_rate"]
        assert beats == heart[~np.isnan(heart)].astype(int).tolist()


def test_gpx_reads_back_with_a_segment_for_each_stretch() -> None:
    run = made("stops")
    track = gpxpy.parse(gpx_bytes(run, "Strides & jog").decode()).tracks[0]
    assert track.name == "Strides & jog"
    assert len(track.segments) == 1 + len(run.stops)
    latitude = run.samples["latitude"]
    read = [p.latitude for s in track.segments for p in s.points]
    np.testing.assert_allclose(read, latitude[~np.isnan(latitude)], rtol=0, atol=1e-6)

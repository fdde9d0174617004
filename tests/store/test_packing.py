"""Streams to bytes and back: nothing lost that the resolution keeps, damage told."""

from __future__ import annotations

from datetime import UTC, datetime

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.domain import STREAM_UNITS, Recording, Stream
from tercet.store import packing

#: Resolutions with the largest values a recording can hold.
LARGEST = {
    "time": 10 * 86_400.0,
    "heart_rate": 300.0,
    "speed": 100.0,
    "distance": 1_000_000.0,
    "latitude": 90.0,
    "longitude": 180.0,
    "altitude": 9_000.0,
    "cadence": 400.0,
    "power": 5_000.0,
    "temperature": 80.0,
}
channels = st.sampled_from(sorted(LARGEST))


@st.composite
def streams(draw: st.DrawFn) -> tuple[float, np.ndarray]:
    name = draw(channels)
    top = LARGEST[name]
    values = draw(st.lists(st.floats(-top, top), max_size=60))
    return packing.RESOLUTION[name], np.array(values, dtype=float)


def test_every_stream_has_a_resolution() -> None:
    assert packing.RESOLUTION.keys() == {"time", *STREAM_UNITS} == LARGEST.keys()


@given(streams())
def test_what_comes_back_is_within_half_a_step(given_stream: tuple[float, np.ndarray]) -> None:
    step, values = given_stream
    back = packing.unpack(packing.pack(values, step), step)
    assert back.shape == values.shape
    assert np.abs(back - values).max(initial=0) <= step / 2 * (1 + 1e-6)


@given(streams())
def test_rounded_values_come_back_to_the_last_bit(given_stream: tuple[float, np.ndarray]) -> None:
    step, values = given_stream
    rounded = np.rint(values / step) * step
    packed = packing.pack(rounded, step)
    back = packing.unpack(packed, step)
    assert back.tobytes() == rounded.tobytes() or (back == rounded).all()
    assert packing.pack(back, step) == packed


def steady(n: int = 3600) -> Recording:
    time = np.arange(n) * 1.0
    own = time[::7] + 0.25
    return Recording(
        start=datetime(2026, 5, 1, 6, 0, tzinfo=UTC),
        time=time,
        streams={
            "distance": Stream(time, 3.0123456 * time),
            "latitude": Stream(time, 45 + 1e-5 * np.sin(time / 60) + time * 2e-6),
            "heart_rate": Stream(own, 140.0 + (own % 5)),
        },
        format="FIT",
    )


def test_rounding_a_recording_again_changes_nothing() -> None:
    once = packing.rounded(steady())
    twice = packing.rounded(once)
    assert (once.time == twice.time).all()
    for name, stream in once.streams.items():
        assert (stream.time == twice.streams[name].time).all()
        assert (stream.values == twice.streams[name].values).all()


def test_rounding_in_place_takes_no_second_copy() -> None:
    apart, recording = packing.rounded(steady()), steady()
    recording.streams["heart_rate"].time.flags.writeable = False
    once = packing.rounded(recording, in_place=True)
    assert once.time is recording.time
    for name, stream in once.streams.items():
        assert stream.values is recording.streams[name].values
        assert (stream.time == apart.streams[name].time).all()
        assert (stream.values == apart.streams[name].values).all()
    assert once.streams["heart_rate"].time is not recording.streams["heart_rate"].time


def test_a_rounded_recording_comes_back_from_its_bytes() -> None:
    recording = packing.rounded(steady())
    clock, back = packing.unpack_streams(packing.pack_streams(recording))
    assert (clock == recording.time).all()
    assert back.keys() == recording.streams.keys()
    for name, stream in recording.streams.items():
        assert (back[name].time == stream.time).all()
        assert (back[name].values == stream.values).all()


def test_the_common_clock_is_kept_once() -> None:
    assert packing.pack_streams(steady()).keys() == {
        "time", "distance", "latitude", "heart_rate", "heart_rate.time",
    }  # fmt: skip


def test_an_hour_stays_small() -> None:
    assert sum(map(len, packing.pack_streams(steady()).values())) < 30_000


def test_an_empty_stream_comes_back_empty() -> None:
    assert packing.unpack(packing.pack(np.zeros(0), 0.1), 0.1).shape == (0,)


@given(st.lists(st.integers(0, 4), max_size=200))
def test_shades_come_back(shades: list[int]) -> None:
    packed = packing.pack_shades(np.array(shades, dtype=np.uint8))
    assert packing.unpack_shades(packed).tolist() == shades


@pytest.mark.parametrize(
    "damage",
    [
        lambda data: b"",
        lambda data: b"q" + data[1:],
        lambda data: data[:1],
        lambda data: data[:-3],
        lambda data: data[:8] + bytes(12) + data[20:],
        lambda data: b"l" + data[1:-5] + b"\0" * 5,
    ],
)
@pytest.mark.parametrize("first", [0.0, 4e6])
def test_damaged_bytes_are_told(damage, first: float) -> None:
    data = packing.pack(first + np.arange(500.0) ** 1.5, 1.0)
    with pytest.raises(ValueError):
        packing.unpack(damage(data), 1.0)


@pytest.mark.parametrize("data", [b"", b"x", packing.pack_shades(np.ones(99, np.uint8))[:-4]])
def test_damaged_shades_are_told(data: bytes) -> None:
    with pytest.raises(ValueError, match="damaged"):
        packing.unpack_shades(data)

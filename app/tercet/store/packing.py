"""Streams to compact bytes and back: whole numbers, their differences, shuffled, deflated.

What was measured and refused (parquet, npz, plain deflate) took more bytes or heavy libraries.
"""

from __future__ import annotations

import zlib
from collections.abc import Mapping
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from tercet.domain import Recording, Stream
from tercet.engine.scale import Floats

#: Resolution of each channel: what a watch can know, or finer.
RESOLUTION: Mapping[str, float] = {
    "time": 0.001,
    "heart_rate": 0.1,
    "speed": 0.001,
    "distance": 0.01,
    "latitude": 1e-7,
    "longitude": 1e-7,
    "altitude": 0.1,
    "cadence": 0.5,
    "power": 1.0,
    "temperature": 0.1,
}


def pack(values: Floats, resolution: float) -> bytes:
    """Pack finite numbers at a resolution."""
    whole = _steps_of(values, resolution).astype(np.int64)
    steps = np.empty_like(whole)
    steps[:1] = whole[:1]
    np.subtract(whole[1:], whole[:-1], out=steps[1:])
    width = 2 if np.abs(steps, dtype=np.int64).max(initial=0) < 2**15 else 8
    if (
        width == 8
        and np.abs(steps[1:]).max(initial=0) < 2**15
        and len(steps)
        and -(2**31) <= whole[0] < 2**31
    ):
        # Only the first value is large: it goes in front, so the rest fit in two bytes.
        head = int(whole[0]).to_bytes(4, "little", signed=True)
        body = steps[1:].astype("<i2")
        return b"h" + head + zlib.compress(_shuffle(body), 6)
    kind = "<i2" if width == 2 else "<i8"
    return (b"s" if width == 2 else b"l") + zlib.compress(_shuffle(steps.astype(kind)), 6)


def _steps_of(values: Floats, resolution: float, out: Floats | None = None) -> Floats:
    """Whole steps of a resolution, still as floats; one copy and no more, for runs may be long."""
    whole = np.divide(values, resolution, out=out, dtype=np.float64)
    return np.asarray(np.rint(whole, out=whole), dtype=np.float64)


def unpack(data: bytes, resolution: float) -> Floats:
    """Give back what :func:`pack` packed.

    Raises
    ------
    ValueError
        If the bytes are damaged.
    """
    try:
        if data[:1] == b"h":
            first = int.from_bytes(data[1:5], "little", signed=True)
            rest = _unshuffle(zlib.decompress(data[5:]), "<i2").astype(np.int64)
            steps = np.concatenate(([np.int64(first)], rest))
        elif data[:1] in (b"s", b"l"):
            kind = "<i2" if data[:1] == b"s" else "<i8"
            steps = _unshuffle(zlib.decompress(data[1:]), kind).astype(np.int64)
        else:
            raise ValueError("unknown packing of a stream")
    except zlib.error as error:
        raise ValueError("a stored stream is damaged") from error
    return np.asarray(np.cumsum(steps) * resolution, dtype=np.float64)


def _shuffle(values: NDArray[np.int16] | NDArray[np.int64]) -> bytes:
    return values.view(np.uint8).reshape(-1, values.itemsize).T.tobytes()


def _unshuffle(data: bytes, kind: str) -> NDArray[np.int16] | NDArray[np.int64]:
    size = np.dtype(kind).itemsize
    octets = np.frombuffer(data, dtype=np.uint8).reshape(size, -1)
    return np.ascontiguousarray(octets.T).view(kind).ravel()


def rounded(recording: Recording, *, in_place: bool = False) -> Recording:
    """Round a recording to the stored resolution, so that what is judged now is judged again alike.

    ``pack`` and ``unpack`` of a rounded recording change nothing. One that is long and of no use
    unrounded may be changed in place.
    """

    def at(values: Floats, name: str) -> Floats:
        out = values if in_place and values.flags.writeable else None
        whole = _steps_of(values, RESOLUTION[name], out)
        whole *= RESOLUTION[name]
        return whole

    time = at(recording.time, "time")
    streams = {
        name: Stream(
            time if stream.time is recording.time else at(stream.time, "time"),
            at(stream.values, name),
        )
        for name, stream in recording.streams.items()
        if name in RESOLUTION
    }
    return replace(recording, time=time, streams=streams)


def pack_streams(recording: Recording) -> dict[str, bytes]:
    """Pack the clock and every stream; a stream on the common clock does not repeat it."""
    packed = {"time": pack(recording.time, RESOLUTION["time"])}
    for name, stream in recording.streams.items():
        packed[name] = pack(stream.values, RESOLUTION[name])
        if not np.array_equal(stream.time, recording.time):
            packed[f"{name}.time"] = pack(stream.time, RESOLUTION["time"])
    return packed


def unpack_streams(packed: Mapping[str, bytes]) -> tuple[Floats, dict[str, Stream]]:
    """Give back the common clock and the streams."""
    clock = unpack(packed["time"], RESOLUTION["time"])
    streams = {}
    for name, data in packed.items():
        if name == "time" or name.endswith(".time"):
            continue
        own = packed.get(f"{name}.time")
        time = clock if own is None else unpack(own, RESOLUTION["time"])
        streams[name] = Stream(time, unpack(data, RESOLUTION[name]))
    return clock, streams


def pack_shades(shades: NDArray[np.uint8]) -> bytes:
    """Pack one shade a second."""
    return zlib.compress(np.ascontiguousarray(shades, dtype=np.uint8).tobytes(), 6)


def unpack_shades(data: bytes) -> NDArray[np.uint8]:
    """Give back what :func:`pack_shades` packed.

    Raises
    ------
    ValueError
        If the bytes are damaged.
    """
    try:
        return np.frombuffer(zlib.decompress(data), dtype=np.uint8)
    except zlib.error as error:
        raise ValueError("stored shades are damaged") from error

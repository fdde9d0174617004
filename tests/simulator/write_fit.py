"""A small FIT encoder: one running or cycling activity, the same bytes every time.

Message and field numbers are those of the public FIT profile; the CRC is its 16-bit one
(polynomial 0xA001, reflected).
"""

from __future__ import annotations

import struct
from datetime import UTC, datetime

import numpy as np

from tests.simulator.record import Simulated

FIT_EPOCH = datetime(1989, 12, 31, tzinfo=UTC)
ENUM, U8, U16, S32, STRING, U32, U32Z = 0x00, 0x02, 0x84, 0x85, 0x07, 0x86, 0x8C
_PACK = {ENUM: "B", U8: "B", U16: "H", S32: "i", U32: "I", U32Z: "I"}
_NOTHING = {ENUM: 0xFF, U8: 0xFF, U16: 0xFFFF, S32: 0x7FFFFFFF, U32: 0xFFFFFFFF, U32Z: 0}
NAME_BYTES = 24

Field = tuple[int, int]  # number in the profile, base type

# Global message numbers with their fields.
FILE_ID = (0, ((0, ENUM), (1, U16), (2, U16), (3, U32Z), (4, U32)))
EVENT = (21, ((253, U32), (0, ENUM), (1, ENUM)))
SPORT = (12, ((0, ENUM), (1, ENUM), (3, STRING)))
PLACED = (20, ((253, U32), (0, S32), (1, S32), (5, U32), (73, U32), (78, U32), (3, U8), (4, U8)))
INDOOR = (20, ((253, U32), (5, U32), (73, U32), (3, U8), (4, U8)))
LAP = (
    19,
    ((254, U16), (253, U32), (0, ENUM), (1, ENUM), (2, U32), (7, U32), (8, U32), (9, U32),
     (15, U8), (24, ENUM), (25, ENUM)),
)  # fmt: skip
SESSION = (
    18,
    ((254, U16), (253, U32), (0, ENUM), (1, ENUM), (2, U32), (5, ENUM), (6, ENUM), (7, U32),
     (8, U32), (9, U32), (16, U8), (17, U8), (25, U16), (26, U16), (28, ENUM)),
)  # fmt: skip
ACTIVITY = (34, ((253, U32), (0, U32), (1, U16), (2, ENUM), (3, ENUM), (4, ENUM), (5, U32)))

_CRC = []
for _byte in range(256):
    _value = _byte
    for _ in range(8):
        _value = (_value >> 1) ^ 0xA001 if _value & 1 else _value >> 1
    _CRC.append(_value)


def crc16(data: bytes) -> int:
    """Checksum of FIT headers and files."""
    value = 0
    for byte in data:
        value = (value >> 8) ^ _CRC[(value ^ byte) & 0xFF]
    return value


class _Body:
    """Data records, each message defined once; local numbers in the order of first use."""

    def __init__(self) -> None:
        self.bytes = bytearray()
        self.local: dict[object, tuple[int, struct.Struct]] = {}

    def add(self, message: tuple[int, tuple[Field, ...]], *values: int | bytes | None) -> None:
        number, kinds = message
        if message not in self.local:
            layout = "".join(
                f"{NAME_BYTES}s" if kind == STRING else _PACK[kind] for _, kind in kinds
            )
            self.local[message] = (len(self.local), struct.Struct("<B" + layout))
            self.bytes += struct.pack(
                "<BBBHB", 0x40 | self.local[message][0], 0, 0, number, len(kinds)
            )
            for field, kind in kinds:
                size = NAME_BYTES if kind == STRING else struct.calcsize(_PACK[kind])
                self.bytes += bytes((field, size, kind))
        header, packer = self.local[message]
        filled = [
            _NOTHING[kind] if value is None else value
            for value, (_, kind) in zip(values, kinds, strict=True)
        ]
        self.bytes += packer.pack(header, *filled)


def _whole(values: np.ndarray, factor: float, offset: float = 0.0) -> list[int | None]:
    """Scale to whole numbers; NaN becomes None."""
    return [None if x != x else max(0, round((x + offset) * factor)) for x in values.tolist()]


def _semicircles(values: np.ndarray) -> list[int | None]:
    return [None if x != x else round(x * (2**31 / 180.0)) for x in values.tolist()]


def _records(run: Simulated, begin: int, body: _Body) -> list[tuple[int, list[int | None]]]:
    s = run.samples
    times = [begin + int(t) for t in s["time"].tolist()]
    distance, speed = _whole(s["distance"], 100.0), _whole(s["speed"], 1000.0)
    heart, cadence = _whole(s["heart_rate"], 1.0), _whole(s["cadence"], 0.5)
    if np.isnan(s["latitude"]).all():
        rows = zip(distance, speed, heart, cadence, strict=True)
        return [(t, list(row)) for t, row in zip(times, rows, strict=True)]
    rows = zip(
        _semicircles(s["latitude"]), _semicircles(s["longitude"]), distance, speed,
        _whole(s["altitude"], 5.0, 500.0), heart, cadence, strict=True,
    )  # fmt: skip
    return [(t, list(row)) for t, row in zip(times, rows, strict=True)]


def _timer_s(run: Simulated, first: int, last: int) -> int:
    held = sum(max(0, min(last, b) - max(first, a)) for a, b in run.stops)
    return last - first - held


def _laps_and_session(run: Simulated, begin: int, end: int, body: _Body) -> None:
    heart, time = run.samples["heart_rate"], run.samples["time"]
    sport = 2 if run.session.sport == "cycling" else 1
    sub_sport = 1 if run.session.indoor else 4 if run.session.track else 0
    for number, (first, length, metres, trigger) in enumerate(run.laps):
        part = heart[(time >= first) & (time < first + length) & ~np.isnan(heart)]
        body.add(
            LAP, number, begin + first + length, 9, 1, begin + first, length * 1000,
            _timer_s(run, first, first + length) * 1000, round(metres * 100),
            round(float(part.mean())) if len(part) else None,
            {"manual": 0, "distance": 2, "session_end": 7}[trigger], sport,
        )  # fmt: skip
    beats = heart[~np.isnan(heart)]
    body.add(
        SESSION, 0, end, 8, 1, begin, sport, sub_sport, run.elapsed_s * 1000,
        _timer_s(run, 0, run.elapsed_s) * 1000, round(float(run.samples["distance"][-1]) * 100),
        round(float(beats.mean())) if len(beats) else None,
        int(beats.max()) if len(beats) else None, 0, len(run.laps), 0,
    )  # fmt: skip


def fit_bytes(run: Simulated, name: str = "", serial: int = 20260413) -> bytes:
    """Encode a run; its local clock goes into ``activity.local_timestamp``.

    Parameters
    ----------
    run : Simulated
    name : str
        For the sport message; at most 23 bytes of UTF-8.
    """
    begin = int((run.start - FIT_EPOCH).total_seconds())
    end = begin + run.elapsed_s
    body = _Body()
    body.add(FILE_ID, 4, 255, 1, serial, begin)
    sport = 2 if run.session.sport == "cycling" else 1
    sub_sport = 1 if run.session.indoor else 4 if run.session.track else 0
    if name:
        body.add(SPORT, sport, sub_sport, name.encode()[: NAME_BYTES - 1])
    rows = _records(run, begin, body)
    message = INDOOR if np.isnan(run.samples["latitude"]).all() else PLACED
    halts = sorted([(begin + a, 4) for a, _ in run.stops] + [(begin + b, 0) for _, b in run.stops])
    body.add(EVENT, begin, 0, 0)
    for time, row in rows:
        # A stop follows the sample of its second, a start goes before.
        while halts and (halts[0][0] < time or (halts[0][0] == time and halts[0][1] == 0)):
            at, kind = halts.pop(0)
            body.add(EVENT, at, 0, kind)
        body.add(message, time, *row)
    for at, kind in halts:
        body.add(EVENT, at, 0, kind)
    body.add(EVENT, end, 0, 4)
    _laps_and_session(run, begin, end, body)
    body.add(ACTIVITY, end, _timer_s(run, 0, run.elapsed_s) * 1000, 1, 0, 26, 1,
             end + run.utc_offset_s)  # fmt: skip
    header = struct.pack("<BBHI4s", 14, 0x10, 2132, len(body.bytes), b".FIT")
    whole = header + struct.pack("<H", crc16(header)) + bytes(body.bytes)
    return whole + struct.pack("<H", crc16(whole))

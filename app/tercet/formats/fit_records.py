"""Splits a FIT file into its samples, decoded at once, and the few other messages."""

from __future__ import annotations

import struct
from array import array
from dataclasses import dataclass, field
from itertools import pairwise
from types import MappingProxyType

import numpy as np

from tercet.engine.scale import Floats

RECORD = 20
#: Fields of the record message, in the order of the columns gathered here.
FIELDS = (
    "timestamp", "heart_rate", "speed", "enhanced_speed", "distance", "position_lat",
    "position_long", "altitude", "enhanced_altitude", "cadence", "fractional_cadence", "power",
    "temperature",
)  # fmt: skip
#: Their numbers in the public profile, with scale and offset: value = raw / scale - offset.
_NUMBERS = MappingProxyType(
    {
        253: ("timestamp", 1.0, 0.0),
        3: ("heart_rate", 1.0, 0.0),
        6: ("speed", 1000.0, 0.0),
        73: ("enhanced_speed", 1000.0, 0.0),
        5: ("distance", 100.0, 0.0),
        0: ("position_lat", 1.0, 0.0),
        1: ("position_long", 1.0, 0.0),
        2: ("altitude", 5.0, 500.0),
        78: ("enhanced_altitude", 5.0, 500.0),
        4: ("cadence", 1.0, 0.0),
        53: ("fractional_cadence", 128.0, 0.0),
        7: ("power", 1.0, 0.0),
        13: ("temperature", 1.0, 0.0),
    }
)
#: A field that packs two others; files with it are left to the general decoder.
_PACKED = 8
#: Base types of the protocol: code, numpy type, and the value that stands for nothing.
_TYPES = MappingProxyType(
    {
        0x00: ("u1", 0xFF), 0x01: ("i1", 0x7F), 0x02: ("u1", 0xFF), 0x83: ("i2", 0x7FFF),
        0x84: ("u2", 0xFFFF), 0x85: ("i4", 0x7FFFFFFF), 0x86: ("u4", 0xFFFFFFFF),
        0x88: ("f4", None), 0x89: ("f8", None), 0x0A: ("u1", 0), 0x8B: ("u2", 0), 0x8C: ("u4", 0),
        0x8E: ("i8", 2**63 - 1), 0x8F: ("u8", 2**64 - 1), 0x90: ("u8", 0),
    }
)  # fmt: skip
_HEADER_BYTES = 12
#: After a damage the next samples are looked for within so many bytes, and believed once so
#: many of them follow each other, no further apart than so many seconds.
_LOOKED_FOR, _FOLLOWING, _APART_S = 262_144, 4, 300
#: No device describes its samples in more ways than this.
MAX_DEFINITIONS = 1_000
#: Messages alike are looked for by so many at first. [messages]
_FEW = 32


@dataclass
class _Definition:
    """What a definition message says of the messages that follow it, and where samples are."""

    number: int
    size: int  # of a message, without its header byte
    raw: bytes
    big: bool
    fields: tuple[tuple[int, int, int, int], ...]  # number, place, size, base type
    starts: array[int] = field(default_factory=lambda: array("q"))  # of its samples in the file
    rows: array[int] = field(default_factory=lambda: array("q"))  # and among all samples

    @property
    def clock_at(self) -> int | None:
        """Where its timestamp stands, None without one."""
        return next((at for n, at, size, _ in self.fields if n == 253 and size == 4), None)


@dataclass
class Split:
    """The samples of a file, and a FIT file of all its other messages."""

    samples: Floats  # (n, len(FIELDS))
    rest: bytes
    stopped_at: int | None = None  # byte at which reading ended before the end
    ended: bool = False  # there because the file ends within a message
    skipped: list[tuple[int, int]] = field(default_factory=list)  # damaged bytes


def split(data: bytes, most: int) -> Split | None:
    """Split a FIT file.

    Parameters
    ----------
    data : bytes
        A file with a header of 12 bytes, as :func:`tercet.formats.fit_frame.parts` gives it.
    most : int
        Reading ends after so many samples.

    Returns
    -------
    Split or None
        ``samples`` in the units of the profile after scaling (positions in semicircles, times in
        FIT seconds), NaN where nothing was told. ``rest`` ends with the last sample once more.
        None for a file that only the general decoder reads: one with times in its headers, or
        with packed fields.
    """
    size = struct.unpack_from("<I", data, 4)[0]
    end = min(len(data), _HEADER_BYTES + size)
    return _Splitter(data, end, most).run()


class _Splitter:
    def __init__(self, data: bytes, end: int, most: int) -> None:
        self._data, self._end, self._most = data, end, most
        self._known: dict[int, _Definition] = {}
        self._rest = bytearray()
        self._octets = np.frombuffer(data, dtype=np.uint8)
        self._samples: dict[bytes, _Definition] = {}  # definitions of samples, by their fields
        self._count = 0  # of samples
        self._last: tuple[_Definition, int, int] | None = None  # last sample: local type, place
        self._found = Split(np.empty((0, len(FIELDS))), b"")

    def run(self) -> Split | None:
        at = self._walk(_HEADER_BYTES)
        while at is not None:
            again = self._next_samples(at)
            if again is None:
                self._found.stopped_at = at
                break
            self._found.skipped.append((at, again))
            self._found.ended = False
            at = self._walk(again)
        if at == -1:
            return None
        self._found.samples = self._decoded()
        self._close()
        return self._found

    def _walk(self, at: int) -> int | None:
        """Go from message to message; gives the place of a damage, or -1 for "not for me"."""
        data, end, known = self._data, self._end, self._known
        while at < end:
            head = data[at]
            if head & 0x80:
                return -1 if (head >> 5) & 3 in known else at
            if head & 0x40:
                size = self._define(at)
                if size <= 0:
                    return -1 if size < 0 else at
                at += size
                continue
            definition = known.get(head & 0x0F)
            if definition is None:
                return at
            after = at + 1 + definition.size
            if after > end:
                self._found.ended = True
                return at
            if definition.number == RECORD:
                step = after - at
                alike = self._alike(at, step)
                after = at + alike * step
                definition.starts.extend(range(at + 1, after, step))
                definition.rows.extend(range(self._count, self._count + alike))
                self._count += alike
                self._last = (definition, head & 0x0F, after - step)
                if self._count > self._most:
                    return None
            else:
                self._rest += data[at:after]
            at = after
        return None

    def _alike(self, at: int, step: int) -> int:
        """How many messages of this length and header follow each other here, this one included."""
        most = min((self._end - at) // step, self._most + 1 - self._count)
        found, width, head = 1, 0, self._data[at]
        while found < most and self._data[at + found * step] == head:
            width = min(max(4 * width, _FEW), most - found)
            first = at + found * step
            heads = self._octets[first : first + (width - 1) * step + 1 : step]
            others = np.flatnonzero(heads != head)
            if len(others):
                return found + int(others[0])
            found += width
        return found

    def _define(self, at: int) -> int:
        """Take note of a definition; gives its length, 0 where damaged, -1 if "not for me"."""
        data, end = self._data, self._end
        head = data[at]
        if at + 6 > end:
            self._found.ended = True
            return 0
        big = data[at + 2] == 1
        if data[at + 2] > 1:
            return 0
        number = int.from_bytes(data[at + 3 : at + 5], "big" if big else "little")
        count, place = data[at + 5], at + 6
        if place + 3 * count > end:
            self._found.ended = True
            return 0
        fields, size = [], 0
        for k in range(count):
            field_number, width, base = data[place + 3 * k : place + 3 * k + 3]
            fields.append((field_number, size, width, base))
            size += width
        place += 3 * count
        if head & 0x20:
            if place >= end or place + 1 + 3 * data[place] > end:
                self._found.ended = True
                return 0
            others = data[place]
            size += sum(data[place + 2 + 3 * k] for k in range(others))
            place += 1 + 3 * others
        if number == RECORD and any(f[0] == _PACKED for f in fields):
            return -1
        raw = data[at:place]
        old = self._known.get(head & 0x0F)
        if old is None or old.raw != raw:
            new = _Definition(number, size, raw, big, tuple(fields))
            if number == RECORD:
                new = self._samples.setdefault(raw[1:], new)
                if len(self._samples) > MAX_DEFINITIONS:
                    return 0
            self._known[head & 0x0F] = new
        self._rest += raw
        return place - at

    def _next_samples(self, damage: int) -> int | None:
        """Where samples like the last one go on after a damage."""
        if self._last is None or self._found.ended:
            return None
        definition, local, place = self._last
        if self._known.get(local) is not definition or definition.clock_at is None:
            return None
        data, step = self._data, definition.size + 1
        clock, order = 1 + definition.clock_at, "big" if definition.big else "little"

        def time(at: int) -> int:
            return int.from_bytes(data[at + clock : at + clock + 4], order)  # type: ignore[arg-type]

        before = time(place)
        stop = min(damage + _LOOKED_FOR, self._end - step * _FOLLOWING)
        start = max(place + step, damage + 1 - step)
        if start >= stop:
            return None
        alike = np.ones(stop - start, dtype=bool)
        for k in range(_FOLLOWING):
            alike &= self._octets[start + k * step : stop + k * step] == local
        for at in (start + np.flatnonzero(alike)).tolist():
            times = [before, *(time(at + k * step) for k in range(_FOLLOWING))]
            steps = [b - a for a, b in pairwise(times)]
            if 0 <= steps[0] <= 86_400 and all(0 <= s <= _APART_S for s in steps[1:]):
                return at
        return None

    def _decoded(self) -> Floats:
        """All samples as numbers, in the file's order."""
        samples = np.full((self._count, len(FIELDS)), np.nan)
        for definition in self._samples.values():
            starts = np.frombuffer(definition.starts, dtype=np.int64)
            rows = np.frombuffer(definition.rows, dtype=np.int64)
            for number, at, size, base in definition.fields:
                told, kind = _NUMBERS.get(number), _TYPES.get(base)
                if told is None or kind is None or size != int(kind[0][1]):
                    continue
                name, scale, offset = told
                cells = self._octets[(starts + at)[:, None] + np.arange(size)]
                raw = cells.view((">" if definition.big else "<") + kind[0])[:, 0]
                values = raw.astype(np.float64)
                if kind[1] is not None:
                    values[raw == kind[1]] = np.nan
                samples[rows, FIELDS.index(name)] = values / scale - offset
        return samples

    def _close(self) -> None:
        """End the rest with the last sample, and give it a header of its own."""
        if self._last is not None:
            definition, local, place = self._last
            raw = bytearray(definition.raw)
            raw[0] = (raw[0] & 0xF0) | local
            self._rest += raw + self._data[place : place + 1 + definition.size]
        header = bytearray(self._data[:_HEADER_BYTES])
        struct.pack_into("<I", header, 4, len(self._rest))
        self._found.rest = bytes(header + self._rest) + b"\0\0"

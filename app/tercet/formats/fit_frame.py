"""The outer frame of FIT files: headers, announced lengths and check sums."""

from __future__ import annotations

import struct
from dataclasses import dataclass, replace
from functools import cache

import numpy as np
from numpy.typing import NDArray

from tercet.language import grouped, tr

MAGIC = b".FIT"
_HEADER = struct.Struct("<2BHI4s")
_CRC_BYTES = 2
#: The check sum of the frame is CRC-16 with this polynomial, bits reflected, starting at 0.
_POLYNOMIAL = 0xA001
#: So many stretches at most are summed side by side.
_LANES = 256


@dataclass(frozen=True)
class Part:
    """One FIT file of the chain that a file may be.

    ``data`` starts with a header whose length field is sound; ``shift`` is what to add to an
    offset within ``data`` to get the offset in the file.
    """

    data: bytes
    shift: int
    damage: tuple[str, ...] = ()
    cut: bool = False  # its end is missing


def is_fit(data: bytes) -> bool:
    """Whether the file's first bytes are a FIT header."""
    return data[8:12] == MAGIC


def parts(data: bytes) -> list[Part]:
    """Take a FIT file apart into the chained files it consists of, and check their sums.

    Parameters
    ----------
    data : bytes
        The whole file.

    Returns
    -------
    list of Part
        In the file's order; what is missing or wrong is told in their ``damage``. Empty if
        not even the first header is whole.
    """
    found: list[Part] = []
    offset = 0
    while len(data) - offset >= _HEADER.size and data[offset + 8 : offset + 12] == MAGIC:
        header_size, protocol, profile, body_size, _ = _HEADER.unpack_from(data, offset)
        body = offset + max(header_size, _HEADER.size)
        end = body + body_size + _CRC_BYTES
        damage, cut = [], True
        if not body_size and len(data) - body > _CRC_BYTES:
            damage.append(tr("It was never finished: its length was not written."))
            body_size, end = len(data) - body, len(data)
        elif end > len(data):
            damage.append(
                tr(
                    "It is cut short: it ends after {bytes} bytes, {announced} were announced.",
                    bytes=grouped(len(data) - offset),
                    announced=grouped(end - offset),
                )
            )
            end = len(data)
        else:
            cut = False
            if crc16(data[offset:end]):  # over a sum that is right, this gives 0
                damage.append(tr("Its check sum is wrong: values may have changed."))
        # one plain header for all, since header sizes other than 12 and 14 stop the decoder
        header = _HEADER.pack(_HEADER.size, protocol, profile, body_size, MAGIC)
        found.append(Part(header + data[body:end], body - _HEADER.size, tuple(damage), cut))
        offset = end
    if found and offset < len(data):
        left = tr(
            "Bytes after its end that are no FIT, not read: {bytes}.",
            bytes=grouped(len(data) - offset),
        )
        found[-1] = replace(found[-1], damage=(*found[-1].damage, left))
    return found


def crc16(data: bytes) -> int:
    """Check sum of the FIT frame, many stretches of the data side by side.

    Parameters
    ----------
    data : bytes
        Any bytes.

    Returns
    -------
    int
        0 to 65535; the same as CRC-16/ARC.
    """
    table = _crc_table()
    pairs = np.frombuffer(data, "<u2", count=len(data) // 2)
    # Zeros in front change no sum that starts at 0.
    lanes = min(_LANES, max(1, len(pairs) // _LANES))
    steps = -(-len(pairs) // lanes)
    padded = np.zeros(lanes * steps, dtype=np.uint16)
    padded[len(padded) - len(pairs) :] = pairs
    # Beside the stretches go the sixteen bits of a sum: what a stretch of zeros makes of each.
    columns = np.zeros((steps, lanes + 16), dtype=np.uint16)
    columns[:, :lanes] = padded.reshape(lanes, steps).T
    sums = np.concatenate(
        (np.zeros(lanes, np.uint16), np.uint16(1) << np.arange(16, dtype=np.uint16))
    )
    for column in columns:
        sums = table[sums ^ column]
    bits, crc = sums[lanes:].tolist(), 0
    for stretch in sums[:lanes].tolist():
        moved = stretch
        for place, bit in enumerate(bits):
            if crc >> place & 1:
                moved ^= bit
        crc = moved
    if len(data) & 1:
        # the low byte alone: half a step is the full step of the byte after a zero byte
        crc = (crc >> 8) ^ int(table[((crc ^ data[-1]) & 0xFF) << 8])
    return crc


@cache
def _crc_table() -> NDArray[np.uint16]:
    """What two bytes, low byte first, turn a sum of 0 into; one entry for each pair."""
    values = np.arange(65_536, dtype=np.uint32)
    for _ in range(16):
        values = np.where(values & 1, (values >> 1) ^ _POLYNOMIAL, values >> 1)
    return values.astype(np.uint16)

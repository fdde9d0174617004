"""Decodes the messages of a FIT file with fitdecode, everything up to the first damage."""

from __future__ import annotations

import io
from array import array
from dataclasses import dataclass, field
from typing import Any

import fitdecode
import numpy as np
from fitdecode.profile import FIELD_TYPE_TIMESTAMP, MESSAGE_TYPES

from tercet.engine.scale import Floats
from tercet.formats.assemble import MAX_SAMPLES
from tercet.formats.fit_frame import Part
from tercet.formats.fit_records import FIELDS, RECORD, split
from tercet.language import grouped, tr

# message numbers of the profile
FILE_ID, SPORT, SESSION, LAP = 0, 12, 18, 19
EVENT, DEVICE, ACTIVITY = 21, 23, 34
_KEPT = {FILE_ID, SPORT, SESSION, LAP, EVENT, DEVICE, ACTIVITY}
#: No run has more laps, events and the like than this together.
MAX_MESSAGES = 20_000
#: So many damaged places are told one by one.
MOST_TOLD = 5
#: By the profile's own field objects, so that fields of other makers with the same names
#: ("Speed", "Power") are not mistaken for them.
_SLOTS = {
    known: FIELDS.index(known.name)
    for known in MESSAGE_TYPES[RECORD].fields.values()
    if known.name in FIELDS
}
_SLOTS[FIELD_TYPE_TIMESTAMP] = 0
_NOTHING = (float("nan"),) * len(FIELDS)
_NUMBERS = frozenset((int, float))

Message = dict[str, Any]


class _QuickReader(fitdecode.FitReader):  # type: ignore[misc]
    """The decoder without its retries on slow streams, which a third of the time goes into."""

    def _read_bytes(self, size: int) -> bytes:
        if size <= 0:
            raise ValueError("a field without length")
        chunk: bytes = self._fd.read(size)
        if len(chunk) != size:
            raise fitdecode.FitEOFError(size, len(chunk), self._read_offset)
        self._chunk_size += size
        self._read_offset += size
        self._read_size += size
        return chunk


@dataclass
class Decoded:
    """The messages of one part that are of use here."""

    samples: Floats = field(default_factory=lambda: np.empty((0, len(FIELDS))))
    messages: dict[int, list[Message]] = field(default_factory=lambda: {n: [] for n in _KEPT})
    activity_type: str = ""
    damage: list[str] = field(default_factory=list)
    offset: int | None = None  # of the damage in the file

    def first(self, number: int) -> Message:
        """The first message of this number, empty if there is none."""
        return next(iter(self.messages[number]), {})


def decode(part: Part) -> Decoded:
    """Read messages up to the end or the first damage.

    Parameters
    ----------
    part : Part
        One FIT file of a chain.

    Returns
    -------
    Decoded
        ``samples`` row by row in the order of ``FIELDS``, in the units of the profile after
        scaling (positions in semicircles, times in FIT seconds), NaN where nothing was told.
    """
    decoded = Decoded(damage=list(part.damage))
    found = split(part.data, MAX_SAMPLES)
    if found is None:
        decoded.samples = _read(decoded, part.data, part, samples=True)
        return decoded
    decoded.samples = found.samples
    _read(decoded, found.rest, part, samples=False)
    for first, last in found.skipped[:MOST_TOLD]:
        told = tr(
            "Bytes {first} to {last} could not be read.",
            first=grouped(first + part.shift),
            last=grouped(last + part.shift),
        )
        decoded.damage.append(told)
        decoded.offset = decoded.offset or first + part.shift
    if (more := len(found.skipped) - MOST_TOLD) > 0:
        decoded.damage.append(tr("Further places that could not be read: {n}.", n=grouped(more)))
    if found.stopped_at is not None:
        decoded.offset = found.stopped_at + part.shift
        if not (part.cut and found.ended):
            decoded.damage.append(
                tr("Nothing after byte {n} could be read.", n=grouped(decoded.offset))
            )
    return decoded


def _read(decoded: Decoded, data: bytes, part: Part, *, samples: bool) -> Floats:
    """Add the messages of a file, and with ``samples`` give those; else only its last is seen."""
    stream = io.BytesIO(data)
    records, slots, numbers = array("d"), _SLOTS, _NUMBERS
    reader = _QuickReader(
        stream,
        processor=None,
        check_crc=fitdecode.CrcCheck.DISABLED,
        error_handling=fitdecode.ErrorHandling.IGNORE,
    )
    message, others = None, 0
    try:
        for frame in reader:
            if frame.frame_type != fitdecode.FIT_FRAME_DATA:
                continue
            number = frame.def_mesg.global_mesg_num
            if number == RECORD:
                message = frame
                if not samples:
                    continue
                row: list[Any] = [*_NOTHING]
                for item in frame.fields:
                    slot = slots.get(item.field)
                    # malformed definitions turn numbers into tuples and strings
                    if slot is not None and item.value.__class__ in numbers:
                        row[slot] = item.value
                records.extend(row)
                if len(records) > MAX_SAMPLES * len(FIELDS):
                    break
            elif number in _KEPT:
                others += 1
                if others > MAX_MESSAGES:
                    told = tr(
                        "Of its laps and events only the first {most} were read.",
                        most=grouped(MAX_MESSAGES),
                    )
                    decoded.damage.append(told)
                    break
                decoded.messages[number].append(_by_name(frame))
    except Exception as error:
        # The decoder lets through errors of many kinds on damaged files, and what it has
        # given until then is sound.
        if samples:
            decoded.offset = stream.tell() + part.shift
            if not (part.cut and isinstance(error, fitdecode.FitEOFError)):
                decoded.damage.append(
                    tr("Nothing after byte {n} could be read.", n=grouped(decoded.offset))
                )
        else:
            decoded.damage.append(tr("A part of its laps and events could not be read."))
    if message is not None:
        decoded.activity_type = str(_by_name(message).get("activity_type") or "")
    return np.frombuffer(records, dtype=np.float64).reshape(-1, len(FIELDS))


def _by_name(frame: Any) -> Message:
    """Values of a message by field name; a field of several meanings by its general name."""
    values: Message = {}
    for item in frame.fields:
        if item.field is None or (item.field_def is not None and item.field_def.is_dev):
            continue
        if item.value is not None:
            values[(item.parent_field or item.field).name] = item.value
    return values

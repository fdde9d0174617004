"""Reads FIT files: every session in every FIT file of a chain becomes a recording."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tercet.domain import Failed, Lap, Recording
from tercet.engine.scale import Floats
from tercet.formats.assemble import COLUMNS, Draft, assemble, gather
from tercet.formats.fit_frame import Part, parts
from tercet.formats.fit_messages import (
    ACTIVITY,
    DEVICE,
    EVENT,
    FILE_ID,
    LAP,
    SESSION,
    SPORT,
    Decoded,
    Message,
    decode,
)
from tercet.formats.fit_records import FIELDS
from tercet.formats.sports import kind_of, sport_of
from tercet.language import grouped, mark, tr

FORMAT = "FIT"
#: Ten days of samples each second take some 30 MB.
MAX_FIT_BYTES = 64 * 1024 * 1024
#: FIT seconds count from 1989-12-31T00:00:00Z; below the second value, from switching on.
FIT_EPOCH = 631_065_600
FIRST_ABSOLUTE = 0x10000000
_QUARTER_HOUR = 900
_DEGREES = 180.0 / 2**31  # of a semicircle

_PASSED_OVER = {
    "settings": mark("It holds settings of a device, no activity."),
    "device": mark("It holds a description of a device, no activity."),
    "sport": mark("It holds settings of a sport, no activity."),
    "workout": mark("It holds a planned workout, no activity."),
    "course": mark("It holds a course to follow, no activity."),
    "schedules": mark("It holds a schedule, no activity."),
    "weight": mark("It holds weights, no activity."),
    "totals": mark("It holds totals, no activity."),
    "goals": mark("It holds goals, no activity."),
    "blood_pressure": mark("It holds blood pressures, no activity."),
    "monitoring_a": mark("It holds all-day monitoring, no activity."),
    "monitoring_daily": mark("It holds all-day monitoring, no activity."),
    "monitoring_b": mark("It holds all-day monitoring, no activity."),
    "segment": mark("It holds a segment, no activity."),
    "segment_list": mark("It holds a list of segments, no activity."),
}


def read_fit(data: bytes, name: str = "") -> list[Recording] | Failed:
    """Read a FIT file.

    Each FIT file of a chain, and each session within one, becomes a recording of its own.

    Parameters
    ----------
    data : bytes
        The whole file.
    name : str
        Name for the recordings.

    Returns
    -------
    list of Recording, or Failed
        Damaged and cut files give what stands before the damage.
    """
    if len(data) > MAX_FIT_BYTES:
        return Failed(tr("It is larger than {mb} MB.", mb=MAX_FIT_BYTES >> 20), format=FORMAT)
    found = parts(data)
    if not found:
        return Failed(tr("It does not begin with a FIT header."), format=FORMAT, offset=0)
    return gather((result for part in found for result in _read_part(part, name)), FORMAT)


def _read_part(part: Part, name: str) -> Iterator[Recording | Failed]:
    decoded = decode(part)
    kind = decoded.first(FILE_ID).get("type", "activity")
    damage = " ".join(decoded.damage)
    samples = decoded.samples
    if kind in _PASSED_OVER:
        yield Failed(tr(_PASSED_OVER[kind]), "passed over", FORMAT, decoded.offset)
        return
    if not len(samples):
        if damage or kind == "activity":
            reason = tr("It holds no sample that could be read.") + f" {damage}".rstrip()
            yield Failed(reason, format=FORMAT, offset=decoded.offset)
        else:
            yield Failed(tr("It holds no activity."), "passed over", FORMAT)
        return
    relative = samples[:, 0] < FIRST_ABSOLUTE
    if relative.any() and not relative.all():
        decoded.damage.append(
            tr(
                "Samples left out, from before the clock was set: {n}.",
                n=grouped(int(relative.sum())),
            )
        )
        samples = samples[~relative]
    yield from _recordings(decoded, samples, name)


def _recordings(decoded: Decoded, samples: Floats, name: str) -> Iterator[Recording | Failed]:
    """One recording a session, cut where the next session starts."""
    sessions = sorted(
        (s for s in decoded.messages[SESSION] if _moment(s, "start_time") is not None),
        key=lambda s: s["start_time"],
    )
    if len(sessions) < 2:
        sessions = sessions or decoded.messages[SESSION][:1] or [{}]
        borders = [-np.inf, np.inf]
    else:
        borders = [-np.inf, *(s["start_time"] for s in sessions[1:]), np.inf]
    for session, since, until in zip(sessions, borders[:-1], borders[1:], strict=True):
        inside = (samples[:, 0] >= since) & (samples[:, 0] < until)
        if len(sessions) > 1 and not inside.any():
            continue
        rows = samples[inside] if len(sessions) > 1 else samples
        end = float(np.nanmax(rows[:, 0])) if np.isfinite(rows[:, 0]).any() else 0.0
        draft = Draft(
            FORMAT,
            utc_offset_s=_utc_offset(decoded.first(ACTIVITY)),
            device=_device(decoded),
            name=name,
            laps=_laps(decoded.messages[LAP], since, until),
            stops=_stops(decoded.messages[EVENT], since, until, end),
            damage=decoded.damage,
        )
        draft.sport, draft.kind = _sport(decoded, session)
        yield assemble(draft, _columns(rows))


def _columns(rows: Floats) -> list[Floats]:
    """From the columns of ``FIELDS`` to ``COLUMNS``; semicircles to degrees, time to unix."""
    column = dict(zip(FIELDS, rows.T, strict=True))
    fraction = column["fractional_cadence"]
    fraction = np.where((fraction >= 0.0) & (fraction < 1.0), fraction, 0.0)
    found = {
        "time": column["timestamp"] + FIT_EPOCH,
        "heart_rate": column["heart_rate"],
        "speed": _either(column["enhanced_speed"], column["speed"]),
        "distance": column["distance"],
        "latitude": column["position_lat"] * _DEGREES,
        "longitude": column["position_long"] * _DEGREES,
        "altitude": _either(column["enhanced_altitude"], column["altitude"]),
        "cadence": column["cadence"] + fraction,
        "power": column["power"],
        "temperature": column["temperature"],
    }
    return [found[name] for name in COLUMNS]


def _either(better: Floats, other: Floats) -> Floats:
    return np.where(np.isnan(better), other, better)


def _moment(message: Message, key: str) -> int | None:
    """A time in FIT seconds, ``None`` if missing or counted from switching on."""
    value = message.get(key)
    return value if isinstance(value, int) and value >= FIRST_ABSOLUTE else None


def _number(message: Message, key: str) -> float | None:
    value = message.get(key)
    return float(value) if isinstance(value, int | float) and np.isfinite(value) else None


def _sport(decoded: Decoded, session: Message) -> tuple[str, str]:
    """Sport and kind by the first message that knows: session, sport, lap, record."""
    for message in (session, decoded.first(SPORT), decoded.first(LAP)):
        sport = sport_of(str(message.get("sport", "")) if "sport" in message else "")
        if sport != "unknown":
            kind = kind_of(str(message.get("sub_sport", ""))) if sport == "running" else ""
            return sport, kind
    return sport_of(decoded.activity_type), ""


def _device(decoded: Decoded) -> str:
    """What recorded it: product name, or maker and product as the profile words them."""
    devices = decoded.messages[DEVICE]
    creator = next((d for d in devices if d.get("device_index") in ("creator", 0)), {})
    words: list[str] = []
    for message in (decoded.first(FILE_ID), creator):
        told = message.get("product_name")
        words = [str(told)] if told else []
        if not words:
            words = [str(message[key]) for key in ("manufacturer", "product") if key in message]
        if words:
            break
    return " ".join(" ".join(words).replace("_", " ").split())[:80]


def _utc_offset(activity: Message) -> int | None:
    utc, local = _moment(activity, "timestamp"), activity.get("local_timestamp")
    if utc is None or not isinstance(local, int):
        return None
    return round((local - utc) / _QUARTER_HOUR) * _QUARTER_HOUR


def _laps(messages: list[Message], since: float, until: float) -> list[Lap]:
    laps = []
    for message in messages:
        start, duration = _moment(message, "start_time"), _number(message, "total_elapsed_time")
        if start is None or duration is None or not since <= start < until:
            continue
        pressed = message.get("lap_trigger") == "manual"
        distance = _number(message, "total_distance")
        laps.append(Lap(float(start + FIT_EPOCH), duration, distance, pressed))
    return laps


def _stops(
    messages: list[Message], since: float, until: float, end: float
) -> list[tuple[float, float]]:
    """Spans from a timer stop to the next start, or to the last sample, in unix seconds."""
    events = [
        (moment, str(message.get("event_type", "")))
        for message in messages
        if message.get("event") == "timer" and (moment := _moment(message, "timestamp"))
    ]
    stops, stopped = [], None
    for moment, kind in sorted(events, key=lambda event: event[0]):
        if not since <= moment < until:
            continue
        if kind.startswith("stop") and stopped is None:
            stopped = moment
        elif kind == "start" and stopped is not None:
            stops.append((float(stopped + FIT_EPOCH), float(moment + FIT_EPOCH)))
            stopped = None
    if stopped is not None:
        stops.append((float(stopped + FIT_EPOCH), end + FIT_EPOCH))
    return stops

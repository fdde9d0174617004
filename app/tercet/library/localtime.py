"""The local day a runner lived: from the file's own offset, else from place, else the runner's."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from zoneinfo import ZoneInfo

    from tercet.domain import Recording

_EPOCH = datetime(1970, 1, 1)
#: What a session's local clock follows, as the store keeps it; the last three before a zone.
FILE, PLACE, RUNNER, SAID = "file", "place", "runner", "said"


@dataclass(frozen=True)
class Local:
    """How far local time was ahead of UTC [s], and what says so, such as "place Asia/Tokyo"."""

    offset_s: int
    source: str


def zone_named(name: str) -> ZoneInfo | None:
    """A time zone by its IANA name; None for an empty or unknown name (then the computer's)."""
    if not name:
        return None
    from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def zone_of_place(latitude: float, longitude: float) -> str:
    """IANA name of the zone of a place [degrees]; nothing on the open sea or where none is known.

    At sea clocks go by the ship, so the meridians' zones that are drawn there say nothing.
    """
    if not (abs(latitude) <= 90.0 and abs(longitude) <= 180.0):
        return ""
    # its borders take memory: only where a place is asked about
    from tzfpy import get_tz

    name = get_tz(longitude, latitude)
    return "" if name.startswith("Etc/") or zone_named(name) is None else name


def local(recording: Recording, runner_zone: str) -> Local:
    """The local clock of a recording: the file's, else that of its place, else the runner's.

    The place is the middle fix: the first one of a watch is often still where it was switched
    off, on the other side of a flight.
    """
    if recording.utc_offset_s is not None:
        return Local(recording.utc_offset_s, FILE)
    both = [recording.streams.get(name) for name in ("latitude", "longitude")]
    fixes = [s.values[len(s.values) // 2] for s in both if s is not None and len(s.values)]
    place = zone_of_place(float(fixes[0]), float(fixes[1])) if len(fixes) == 2 else ""
    name, source = (place, PLACE) if place else (runner_zone, RUNNER)
    offset = offset_at(recording.start, None, zone_named(name))
    return Local(offset, f"{source} {name}".strip())


def offset_at(start: datetime, own_offset_s: int | None, zone: ZoneInfo | None) -> int:
    """Seconds that local time was ahead of UTC at an aware moment."""
    if own_offset_s is not None:
        return own_offset_s
    local = start.astimezone(zone)
    return int((local.utcoffset() or timedelta()).total_seconds())


def local_time(start_utc: float, offset_s: int) -> datetime:
    """Wall clock (naive) of a moment given in seconds since 1970."""
    return _EPOCH + timedelta(seconds=start_utc + offset_s)


def local_day(start: datetime, offset_s: int) -> date:
    """Local day of an aware moment."""
    return (start.astimezone(UTC).replace(tzinfo=None) + timedelta(seconds=offset_s)).date()

"""The local day a runner lived: from the file's own offset, else the runner's zone."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from zoneinfo import ZoneInfo

_EPOCH = datetime(1970, 1, 1)


def zone_named(name: str) -> ZoneInfo | None:
    """A time zone by its IANA name; None for an empty or unknown name (then the computer's)."""
    if not name:
        return None
    from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


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

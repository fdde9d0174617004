"""Numbers and times as XML writes them, read strictly."""

from __future__ import annotations

import math
from datetime import UTC, datetime

_SHORTEST_TIME = len("2026-01-01T00:00")


def number(text: str) -> float:
    """Read a plain decimal number in ASCII; anything else is NaN.

    Parameters
    ----------
    text : str
        May have blanks around it.

    Returns
    -------
    float
        NaN for what is no number, among them words such as "inf", "4_7" and numbers too
        large to hold.
    """
    try:
        value = float(text) if text.isascii() and "_" not in text else math.nan
    except ValueError:
        return math.nan
    return value if math.isfinite(value) else math.nan


def moment(text: str) -> tuple[float, int | None]:
    """Read a time as ISO 8601 writes it.

    Parameters
    ----------
    text : str
        Date and time with "Z", an offset, or neither (taken as UTC, as GPX and TCX mean it).

    Returns
    -------
    (float, int or None)
        Unix time [s], NaN if it cannot be read, and the offset [s] if it is given and not 0.
    """
    text = text.strip()
    try:
        time = datetime.fromisoformat(text)
    except ValueError:
        return math.nan, None
    if len(text) < _SHORTEST_TIME:
        return math.nan, None
    zone = time.utcoffset()
    if zone is None:
        return time.replace(tzinfo=UTC).timestamp(), None
    return time.timestamp(), int(zone.total_seconds()) or None

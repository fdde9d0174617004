"""Numbers and times as XML writes them, read strictly."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import UTC, datetime
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tercet.engine.scale import Floats

_UTC_SECONDS = len("2026-01-01T00:00:00Z")
_NO_FRACTION = b".000Z"
_SIXTY = {f"{value:02}": value for value in range(60)}
_SHORTEST_TIME = len("2026-01-01T00:00")


@lru_cache(maxsize=64)
def _hour(text: str) -> float:
    """Unix time of an hour written as "2026-01-01T00:", NaN for anything else. [s]"""
    try:
        return datetime.fromisoformat(f"{text}00:00+00:00").timestamp()
    except ValueError:
        return math.nan


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
    if len(text) == _UTC_SECONDS and text[-1] == "Z":
        # Most files write whole seconds of UTC, thousands in a row within one hour.
        minutes, seconds = _SIXTY.get(text[14:16]), _SIXTY.get(text[17:19])
        if minutes is not None and seconds is not None and text[16] == ":":
            hour = _hour(text[:14])
            if not math.isnan(hour):
                return hour + 60 * minutes + seconds, None
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


def moments_utc(texts: Sequence[bytes]) -> Floats | None:
    """Read times that are all written alike as whole seconds of UTC, as :func:`moment` does.

    Parameters
    ----------
    texts : sequence of bytes

    Returns
    -------
    ndarray of float64, shape (n,), or None
        Unix times [s]; None if a single one is written otherwise or cannot be read.
    """
    if all(text.endswith(_NO_FRACTION) for text in texts):
        texts = [text[: -len(_NO_FRACTION)] + b"Z" for text in texts]
    if set(map(len, texts)) != {_UTC_SECONDS}:
        return None
    letters = np.frombuffer(b"".join(texts), dtype=np.uint8).reshape(-1, _UTC_SECONDS)
    tens, ones = (letters[:, places].astype(np.int64) - ord("0") for places in ([14, 17], [15, 18]))
    sound = (letters[:, 16] == ord(":")) & (letters[:, 19] == ord("Z"))
    if not (sound.all() and _within(tens, 5) and _within(ones, 9)):
        return None
    same = (letters[1:, :14] == letters[:-1, :14]).all(axis=1)
    begins = [0, *(np.flatnonzero(~same) + 1).tolist()]
    hours = [_hour(texts[place][:14].decode("ascii", "replace")) for place in begins]
    hour = np.repeat(hours, np.diff([*begins, len(texts)]))
    if np.isnan(hour).any():
        return None
    minutes, seconds = (10 * tens + ones).T
    return np.asarray(hour + 60 * minutes + seconds, dtype=np.float64)


def _within(digits: NDArray[np.int64], most: int) -> bool:
    return bool(((digits >= 0) & (digits <= most)).all())

"""Pieces of a written session said again in plain words, to show how they were understood."""

from __future__ import annotations

from collections.abc import Sequence

from tercet.engine.notation import Bout, Piece

MILE_M = 1609.344
#: Races that have a name. [m]
_RACES = {1609.344: "mile", 21_097.5: "half marathon", 42_195.0: "marathon"}


def in_words(pieces: Sequence[Piece]) -> str:
    """A session: "20 min warm-up, 12 x 200 m at 3 km pace / 200 m jog"."""
    return ", ".join(_piece(piece) for piece in pieces)


def _piece(piece: Piece) -> str:
    if piece.inner:
        text = f"{piece.count} x ({in_words(piece.inner)})"
    else:
        text = f"{piece.count} x {bout(piece.work)}" if piece.count > 1 else bout(piece.work)
    return text if piece.recovery is None else f"{text} / {bout(piece.recovery)}"


def bout(item: Bout) -> str:
    """A stretch: "15 min easy", "5 km race in 19:42"."""
    parts = []
    if item.metres is not None:
        parts.append(length(item.metres))
    elif item.seconds is not None:
        parts.append(time(item.seconds))
    if item.word:
        parts.append(item.word)
    if item.metres is not None and item.seconds is not None:
        parts.append(f"in {clock(item.seconds)}")
    if item.speed is not None:
        parts.append(f"at {clock(1000.0 / item.speed)} /km")
    elif item.race_m is not None:
        parts.append(f"at {_RACES.get(item.race_m) or length(item.race_m)} pace")
    return " ".join(parts)


def length(metres: float) -> str:
    """A distance in the unit it was most likely written in."""
    for unit, size in (("mi", MILE_M), ("km", 1000.0)):
        value = metres / size
        whole = abs(value * 10 - round(value * 10)) < 1e-6 and value >= 1.0
        if whole and metres not in (21_097.5, 42_195.0):
            return f"{value:g} {unit}"
    return f"{metres:g} m" if metres < 2000.0 else f"{metres / 1000.0:.4g} km"


def time(seconds: float) -> str:
    """A time with its unit."""
    if seconds < 60 or (seconds < 120 and seconds % 60):
        return f"{seconds:g} s"
    if seconds % 60 == 0 and seconds <= 5400:
        return f"{seconds / 60:g} min"
    return f"{clock(seconds)} {'h' if seconds >= 3600 and seconds % 60 == 0 else ''}".strip()


def clock(seconds: float) -> str:
    """Minutes and seconds, from an hour on hours and minutes (and seconds if there are any)."""
    whole = round(seconds)
    if whole < 3600:
        return f"{whole // 60}:{whole % 60:02d}"
    text = f"{whole // 3600}:{whole % 3600 // 60:02d}"
    return text if whole % 60 == 0 else f"{text}:{whole % 60:02d}"

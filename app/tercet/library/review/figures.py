"""Numbers of the review as they are written, once, for screen, paper, page and table alike."""

from __future__ import annotations

import math
from datetime import date

from tercet.engine.shades import whole_shares

NOTHING = "–"
UNIT_METRES = {"km": 1000.0, "miles": 1609.344}
UNIT_WORDS = {"km": "km", "miles": "mi"}
PACE_WORDS = {"km": "/km", "miles": "/mile"}
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def hours(seconds: float) -> str:
    """Hours and minutes: ``28:24``."""
    minutes = math.floor(abs(seconds) / 60.0 + 0.5)
    return f"{minutes // 60}:{minutes % 60:02d}"


def duration(seconds: float) -> str:
    """To the second: ``1:13:04``, or ``3:06`` under an hour."""
    minutes, second = divmod(math.floor(abs(seconds) + 0.5), 60)
    hour, minute = divmod(minutes, 60)
    return f"{hour}:{minute:02d}:{second:02d}" if hour else f"{minute}:{second:02d}"


def pace(speed: float, units: str = "km") -> str:
    """Pace with its unit: ``5:09 /km``; a dash for none."""
    if not (math.isfinite(speed) and speed > 0.0):
        return NOTHING
    whole = math.floor(UNIT_METRES[units] / speed + 0.5)
    return f"{whole // 60}:{whole % 60:02d} {PACE_WORDS[units]}"


def distance(metres: float, units: str = "km") -> str:
    """One decimal from ten up, two below: ``14.2 km``, ``8.05 km``."""
    value = metres / UNIT_METRES[units]
    return f"{value:.{1 if round(value, 2) >= 10.0 else 2}f} {UNIT_WORDS[units]}"


def share(fraction: float | None, *, estimated: bool = False) -> str:
    """Whole per cent: ``90 %``, or ``about 90 %`` by thresholds that nobody confirmed."""
    if fraction is None:
        return NOTHING
    words = f"{math.floor(fraction * 100.0 + 0.5)} %"
    return f"about {words}" if estimated else words


def shares(amounts: tuple[float, float, float]) -> tuple[str, str, str]:
    """Three shares in whole per cent that add up to 100; easy as :func:`share` writes it."""
    total = sum(amounts)
    if total <= 0.0:
        return (NOTHING, NOTHING, NOTHING)
    easy, moderate, hard = whole_shares([amount / total for amount in amounts])
    return (f"{easy} %", f"{moderate} %", f"{hard} %")


def short_day(day: date) -> str:
    """Day and month: ``17 Jun``."""
    return f"{day.day} {MONTHS[day.month - 1][:3]}"


def day(value: date) -> str:
    """Whole date: ``17 June 2026``."""
    return f"{value.day} {MONTHS[value.month - 1]} {value.year}"


def span(start: date, end: date) -> str:
    """From one day to another: ``2 March to 17 June 2026``."""
    first = f"{start.day} {MONTHS[start.month - 1]}"
    if start.year != end.year:
        first += f" {start.year}"
    return f"{first} to {day(end)}"


def counted(count: int, word: str) -> str:
    """A number and its word: ``1 run``, ``4 runs``."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def listed(parts: list[str]) -> str:
    """Words for a sentence: ``a, b and c``."""
    return f"{', '.join(parts[:-1])} and {parts[-1]}" if len(parts) > 1 else "".join(parts)

"""Numbers of the review as they are written, once, for screen, paper, page and table alike."""

from __future__ import annotations

import math
from datetime import date

from tercet import language
from tercet.engine.shades import whole_shares
from tercet.language import mark, tr
from tercet.units import METRES, PACE_WORDS, WORDS

NOTHING = "–"
NOTHING_RUN = mark(
    "Nothing has been run in these blocks yet. Recordings or a paper log fill this page."
)


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
    whole = math.floor(METRES[units] / speed + 0.5)
    return f"{whole // 60}:{whole % 60:02d} {tr(PACE_WORDS[units])}"


def distance(metres: float, units: str = "km") -> str:
    """One decimal from ten up, two below: ``14.2 km``, ``8.05 km``."""
    value = metres / METRES[units]
    decimals = 1 if round(value, 2) >= 10.0 else 2
    return f"{language.number(value, decimals)} {tr(WORDS[units])}"


def share(fraction: float | None, *, estimated: bool = False) -> str:
    """Whole per cent: ``90 %``, or ``about 90 %`` by thresholds that nobody confirmed."""
    if fraction is None:
        return NOTHING
    words = f"{math.floor(fraction * 100.0 + 0.5)} %"
    return about(words, estimated=estimated)


def about(words: str, *, estimated: bool) -> str:
    """A number that is an estimate, or as it is: ``about 5:09 /km``."""
    return tr("about {number}", number=words) if estimated else words


def shares(amounts: tuple[float, float, float]) -> tuple[str, str, str]:
    """Three shares in whole per cent that add up to 100; easy as :func:`share` writes it."""
    total = sum(amounts)
    if total <= 0.0:
        return (NOTHING, NOTHING, NOTHING)
    easy, moderate, hard = whole_shares([amount / total for amount in amounts])
    return (f"{easy} %", f"{moderate} %", f"{hard} %")


def short_day(day: date) -> str:
    """Day and month: ``17 Jun``."""
    return tr("{day} {month}", day=day.day, month=language.short_month(day.month))


def day(value: date) -> str:
    """Whole date: ``17 June 2026``."""
    month = language.month(value.month)
    return tr("{day} {month} {year}", day=value.day, month=month, year=value.year)


def span(start: date, end: date) -> str:
    """From one day to another: ``2 March to 17 June 2026``."""
    first = day(start)
    if start.year == end.year:
        first = tr("{day} {month}", day=start.day, month=language.month(start.month))
    return tr("{first} to {last}", first=first, last=day(end))


def listed(parts: list[str]) -> str:
    """Words for a sentence: ``a, b and c``."""
    if len(parts) < 2:
        return "".join(parts)
    return tr("{words} and {last}", words=", ".join(parts[:-1]), last=parts[-1])

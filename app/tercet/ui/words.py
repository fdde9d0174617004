"""Numbers and dates as the screens write them; pure functions, no widgets.

Everything comes in as SI (seconds, metres, metres a second). ``units`` is ``"km"`` or
``"miles"``, what the user has chosen where it is not given. Decimal signs and the names of days
and months follow the default ``QLocale``.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, datetime

from PySide6.QtCore import QDate, QLocale

from tercet import units as unit_of
from tercet.language import mark, several, tr

Units = unit_of.Units
UNIT_METRES, UNIT_WORDS, PACE_WORDS = unit_of.METRES, unit_of.WORDS, unit_of.PACE_WORDS

FOOT_METRES = 0.3048
NOTHING = "–"


def number(value: float, decimals: int = 0) -> str:
    """Write a number with the locale's decimal sign and no grouping."""
    locale = QLocale()
    locale.setNumberOptions(QLocale.NumberOption.OmitGroupSeparator)
    return locale.toString(float(value), "f", decimals)


def hours(seconds: float) -> str:
    """Hours and minutes, to the nearest minute and without a sign: ``28:24``."""
    minutes = math.floor(abs(seconds) / 60.0 + 0.5)
    return f"{minutes // 60}:{minutes % 60:02d}"


def duration(seconds: float) -> str:
    """To the second: ``1:13:04``, or ``3:06`` under an hour."""
    whole = math.floor(abs(seconds) + 0.5)
    minutes, second = divmod(whole, 60)
    hour, minute = divmod(minutes, 60)
    return f"{hour}:{minute:02d}:{second:02d}" if hour else f"{minute}:{second:02d}"


def spoken(seconds: float) -> str:
    """A length of time in words for a screen reader: ``1 hour 13 minutes``."""
    whole = math.floor(abs(seconds) + 0.5)
    if whole < 60:
        return several(whole, mark("{n} second"), mark("{n} seconds"))
    hour, minute = divmod(math.floor(whole / 60.0 + 0.5), 60)
    parts = [several(hour, mark("{n} hour"), mark("{n} hours"))] if hour else []
    if minute:
        parts.append(several(minute, mark("{n} minute"), mark("{n} minutes")))
    return " ".join(parts)


def bare_pace(speed: float, units: Units | None = None) -> str:
    """Pace without its unit, from metres a second: ``5:09``; a dash for standing still."""
    if not (math.isfinite(speed) and speed > 0.0):
        return NOTHING
    whole = math.floor(UNIT_METRES[units or unit_of.chosen()] / speed + 0.5)
    return f"{whole // 60}:{whole % 60:02d}"


def pace(speed: float, units: Units | None = None) -> str:
    """Pace from metres a second: ``5:09 /km`` or ``8:17 /mile``."""
    bare = bare_pace(speed, units)
    unit = tr(PACE_WORDS[units or unit_of.chosen()])
    return bare if bare == NOTHING else f"{bare} {unit}"


def distance(metres: float, units: Units | None = None) -> str:
    """Distance with one decimal from ten up and two below: ``14.2 km``, ``8.05 km``."""
    value = metres / UNIT_METRES[units or unit_of.chosen()]
    decimals = 1 if round(value, 2) >= 10.0 else 2
    unit = tr(UNIT_WORDS[units or unit_of.chosen()])
    return f"{number(value, decimals)} {unit}"


def bout(metres: float, units: Units | None = None) -> str:
    """Length of a repetition: ``722 m`` under two kilometres, else as :func:`distance`."""
    return f"{number(metres)} m" if metres < 2000.0 else distance(metres, units)


def climb(metres: float, units: Units | None = None) -> str:
    """Height gained: ``212 m``, or ``696 ft`` beside miles."""
    return (
        f"{number(metres)} m"
        if (units or unit_of.chosen()) == "km"
        else tr("{feet} ft", feet=number(metres / FOOT_METRES))
    )


def watts(value: float) -> str:
    """Running power, such as "283 W"."""
    return tr("{watts} W", watts=number(value))


def heart_rate(beats: float) -> str:
    """Heart rate: ``148 /min``."""
    return tr("{beats} /min", beats=number(beats))


def share(fraction: float, *, estimated: bool = False) -> str:
    """Share in whole per cent: ``90 %``, or ``about 90 %`` from thresholds not confirmed."""
    words = f"{number(math.floor(fraction * 100.0 + 0.5))} %"
    return tr("about {value}", value=words) if estimated else words


def listed(parts: Sequence[str]) -> str:
    """Join words for a sentence: ``a, b and c``."""
    if len(parts) < 2:
        return "".join(parts)
    return tr("{first} and {last}", first=", ".join(parts[:-1]), last=parts[-1])


def long_day(day: date) -> str:
    """Whole date in the locale's own order: ``Wednesday, 17 June 2026``."""
    return QLocale().toString(_qdate(day), QLocale.FormatType.LongFormat)


def short_day(day: date) -> str:
    """Day and month: ``17 Jun``."""
    return QLocale().toString(_qdate(day), tr("d MMM", "pattern of a date, as Qt reads it"))


def at_clock(day: str, start: datetime, clock: str) -> str:
    """A day in words with its time; only am or pm, or nothing, where nobody wrote one."""
    if clock == "day":
        return day
    half = {"am": tr("am"), "pm": tr("pm")}.get(clock)
    return f"{day}, {half or f'{start:%H:%M}'}"


def weekday(day: date) -> str:
    """Short name of the weekday: ``Wed``."""
    return QLocale().toString(_qdate(day), "ddd")


def month(day: date) -> str:
    """Short name of the month: ``Jun``."""
    return QLocale().toString(_qdate(day), "MMM")


def _qdate(day: date) -> QDate:
    return QDate(day.year, day.month, day.day)

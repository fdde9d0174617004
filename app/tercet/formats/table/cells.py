"""Cells of a table as people write them: days, lengths of time, clocks and numbers."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from datetime import date, datetime, time, timedelta

from tercet.formats.values import number

#: Two-figure years from here on lie in the last century.
LAST_CENTURY = 70
FIRST_YEAR, LAST_YEAR = 1950, 2099
ORDERS = ("day first", "month first", "year first")
_EXCEL_EPOCH = date(1899, 12, 30)
_MONTHS = (
    "jan|januar|january|janv|janvier|ene|enero|gen", "feb|februar|february|févr|fevr|febrero",
    "mar|mär|märz|march|mrz|mars|marzo", "apr|april|avr|avril|abr|abril", "may|mai|mayo|mag",
    "jun|juni|june|juin|junio|giu", "jul|juli|july|juil|juillet|julio|lug",
    "aug|august|août|aout|ago|agosto", "sep|sept|september|septembre|septiembre|set",
    "oct|okt|oktober|october|octobre|octubre|ott", "nov|november|novembre|noviembre",
    "dec|dez|dezember|december|déc|décembre|dic|diciembre",
)  # fmt: skip
_FIGURES = re.compile(r"(\d{1,4})\s*[-/. ]\s*(\d{1,2})\s*[-/. ]\s*(\d{1,4})")
_NAMED = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?[.\s-]*([^\W\d_]+)\.?[,\s-]*(\d{4}|\d\d)(?![\d:])")
#: Also as computers write it: "Jun 11 07:34:09 PDT 2017", of which the zone is not believed.
_NAMED_FIRST = re.compile(
    r"([^\W\d_]+)\.?\s*(\d{1,2})(?:st|nd|rd|th)?[,\s]+(?:\d\d:\d\d:\d\d\s+(?:[A-Z]{2,5}\s+)?)?"
    r"(\d{4}|\d\d)(?![\d:])"
)
_WEEKDAY = re.compile(r"^[^\W\d_]{2,9}[.,]?\s+(?=[\d]|[^\W\d_]+\.?\s*\d)")
_CLOCK = re.compile(r"(\d{1,2})[:h.](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*(am|pm|a\.m\.|p\.m\.)?")
_PARTS = re.compile(r"(\d+):(\d{1,2})(?::(\d{1,2})(?:[.,]\d+)?)?")
#: The last of several figures may go without its unit: "1h05", "45'30".
_UNITS = re.compile(
    r"(?:(?P<d>\d+)\s*(?:d|days?)[\s,]*)?(?:(?P<h>\d+(?:[.,]\d+)?)\s*(?:h|hrs?|hours?|std)\.?[\s,]*)?"
    r"(?:(?P<m>\d+(?:[.,]\d+)?)\s*(?:m|min|mins|minutes?|'|′|(?(h)$|(?!)))\.?[\s,]*)?"
    r"(?:(?P<s>\d+(?:[.,]\d+)?)\s*(?:s|secs?|seconds?|sek|\"|″|''|(?(m)$|(?!)))\.?)?",
    re.IGNORECASE,
)
_ISO = re.compile(r"PT?(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?", re.IGNORECASE)
_PANDAS = re.compile(r"(\d+) days? (\d+):(\d\d):(\d\d)(?:\.\d+)?")


def orders_of(cells: Sequence[str]) -> list[str]:
    """Orders of day and month in which every day of a column can be read.

    Parameters
    ----------
    cells : sequence of str
        Empty ones are left out.

    Returns
    -------
    list of str
        Of :data:`ORDERS`; ``[""]`` where every cell says its order by itself (ISO 8601, dots,
        month names). Empty where some cell is a day in no order.
    """
    told = [cell for cell in dict.fromkeys(cells) if cell]
    if not told:
        return []
    if all(day_of(cell, "") is not None for cell in told):
        return [""]
    return [order for order in ORDERS if all(day_of(cell, order) is not None for cell in told)]


def day_of(cell: str, order: str) -> date | None:
    """The day a cell names.

    Parameters
    ----------
    cell : str
        A time of day after it is not looked at.
    order : str
        One of :data:`ORDERS`, or "" to read only what can be read in one way.
    """
    text = _WEEKDAY.sub("", cell.strip())
    if re.fullmatch(r"\d{8}", text):
        return _date(int(text[:4]), int(text[4:6]), int(text[6:]))
    if re.fullmatch(r"\d{5}(?:\.\d+)?", text):
        day = _EXCEL_EPOCH + timedelta(days=int(text[:5]))
        return day if FIRST_YEAR <= day.year <= LAST_YEAR else None
    named = _NAMED.match(text)
    if named is not None and (month := _month(named[2])):
        return _date(_year(named[3]), month, int(named[1]))
    named = _NAMED_FIRST.match(text)
    if named is not None and (month := _month(named[1])):
        return _date(_year(named[3]), month, int(named[2]))
    found = _FIGURES.match(text)
    if found is None or text[found.end() : found.end() + 1].isdigit():
        return None
    a, b, c = (int(part) for part in found.groups())
    if len(found[1]) == 4:
        return _date(a, b, c)
    if len(found[1]) == 3 or len(found[3]) == 3 or len(found[3]) == 1:
        return None
    if len(found[3]) == 4 and not order and "." in found[0]:
        return _date(c, b, a)  # dots mean day, month, year (common practice, no source)
    if order == "day first":
        return _date(_year(found[3]), b, a)
    if order == "month first":
        return _date(_year(found[3]), a, b)
    if order == "year first" and len(found[3]) == 2:
        return _date(_year(found[1]), b, c)
    return None


def _year(text: str) -> int:
    value = int(text)
    if len(text) > 2:
        return value
    return value + (1900 if value >= LAST_CENTURY else 2000)


def _month(word: str) -> int:
    plain = word.casefold()
    return next((k for k, names in enumerate(_MONTHS, 1) if plain in names.split("|")), 0)


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day) if FIRST_YEAR <= year <= LAST_YEAR else None
    except ValueError:
        return None


def clock_of(cell: str) -> time | None:
    """The time of day that a cell ends in, such as "07:30", "7:30 pm" or "2026-06-09 18:05:10"."""
    found = None
    for found in _CLOCK.finditer(cell.strip().casefold()):  # noqa: B007
        pass
    if found is None:
        return None
    hour, minute, second = int(found[1]), int(found[2]), int(found[3] or 0)
    half = (found[4] or "")[:1]
    if half:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "p" else 0)
    return time(hour, minute, second) if hour < 24 and minute < 60 and second < 60 else None


def moment_of(cell: str, order: str) -> tuple[datetime, bool] | None:
    """A day with its time of day: aware where the cell has an offset; True if it has a time."""
    text = cell.strip()
    try:
        told = datetime.fromisoformat(text)
    except ValueError:
        day = day_of(text, order)
        if day is None:
            return None
        rest = clock_of(text) if re.search(r"\d[:h]\d", text) else None
        return datetime.combine(day, rest or time()), rest is not None
    return told, len(text) > len("2026-01-01")


def parse_length(cell: str, unit: str) -> float | None:
    """Seconds that a cell names.

    Parameters
    ----------
    cell : str
        Such as "1:02:57", "62:57", "62 min", "1 h 3 min", "62.95" or "62:57:00".
    unit : str
        For a plain number "min", "s", "h" or, as spreadsheets keep them, "days". For figures
        with colons "h:mm" where two of them are hours and minutes, "m:ss" where three are
        minutes, seconds and sixtieths, as spreadsheets write minutes and seconds that were typed
        into them; else hours come first only where there are three.

    Returns
    -------
    float or None
        None where it cannot be read.
    """
    text = cell.strip()
    found = _PANDAS.fullmatch(text)
    if found is not None:
        d, h, m, s = (int(part) for part in found.groups())
        return float(d * 86_400 + h * 3600 + m * 60 + s)
    found = _PARTS.fullmatch(text)
    if found is not None:
        a, b, c = int(found[1]), int(found[2]), found[3]
        if b > 59 or (c is not None and int(c) > 59):
            return None
        if c is None:
            return float(a * 3600 + b * 60 if unit == "h:mm" else a * 60 + b)
        if unit == "m:ss":
            return a * 60 + b + int(c) / 60
        return float(a * 3600 + b * 60 + int(c))
    plain = number(text.replace(",", "."))
    if math.isfinite(plain):
        scale = {"min": 60.0, "s": 1.0, "h": 3600.0, "days": 86_400.0}.get(unit)
        return plain * scale if scale is not None and plain >= 0 else None
    found = _ISO.fullmatch(text) if text[:1] in "Pp" and len(text) > 2 else None
    if found is not None:
        return sum(
            float(part or 0) * by for part, by in zip(found.groups(), (3600, 60, 1), strict=True)
        )
    found = _UNITS.fullmatch(text)
    if found is None or not any(found.groups()):
        return None
    parts = zip(("d", "h", "m", "s"), (86_400, 3600, 60, 1), strict=True)
    return float(sum(float((found[name] or "0").replace(",", ".")) * by for name, by in parts))


def number_reader(cells: Sequence[str], delimiter: str) -> Callable[[str], float]:
    """How the numbers of a column are written: with a decimal point or a decimal comma.

    Parameters
    ----------
    cells : sequence of str
        The whole column.
    delimiter : str
        Of the table; where a comma parts the cells, a comma in a number parts thousands.

    Returns
    -------
    callable
        From a cell to its number, NaN where it is none; words after the number are left out.
    """
    with_comma = [cell for cell in cells if "," in cell]
    points = any("." in cell for cell in cells)
    thousands = with_comma and all(re.search(r"\d,\d{3}(?!\d)", cell) for cell in with_comma)
    comma = bool(with_comma) and not (thousands and (points or delimiter == ","))

    def read(cell: str) -> float:
        text = re.sub(r"\s*[^\W\d_][\w/°%.]*\s*$", "", cell.strip()) if cell else ""
        text = text.replace(".", "").replace(",", ".") if comma else text.replace(",", "")
        return number(text.replace("'", "").replace("’", "").replace("\u00a0", ""))

    return read

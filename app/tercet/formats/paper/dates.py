"""Days as diaries name them: by weekday, by date, with morning and evening."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from tercet.formats.paper.meaning import Doubt
from tercet.language import mark, tr, weekday

_DAYS = (
    "mon(?:day)?|mo", "tue(?:s(?:day)?)?|tu", "wed(?:nesday)?|we", "thu(?:r(?:s(?:day)?)?)?|th",
    "fri(?:day)?|fr", "sat(?:urday)?|sa", "sun(?:day)?|su",
)  # fmt: skip
_MONTHS = (
    "jan(?:uary)?", "feb(?:ruary)?", "mar(?:ch)?", "apr(?:il)?", "may", "june?", "july?",
    "aug(?:ust)?", "sep(?:t(?:ember)?)?", "oct(?:ober)?", "nov(?:ember)?", "dec(?:ember)?",
)  # fmt: skip
_MONTH = f"(?:{'|'.join(_MONTHS)})(?![a-z])"
_YEAR = r"(?:19[7-9]\d|20\d\d)(?!\d)"
_NTH = "(?:st|nd|rd|th)?"
_DATE = rf"""(?:
    (?P<y1>{_YEAR})-(?P<m1>\d\d?)-(?P<d1>\d\d?)(?![\d-])
  | (?P<d2>\d\d?){_NTH}\.?\s*(?P<m2>{_MONTH})\.?(?:,?\s*(?P<y2>{_YEAR})(?!\s*(?:m|x|×|\*)))?
  | (?P<m3>{_MONTH})\.?\s*(?P<d3>\d\d?){_NTH}(?!\d)(?:,?\s*(?P<y3>{_YEAR})(?!\s*(?:m|x|×|\*)))?
  | (?P<d4>\d\d?)\.\s?(?P<m4>\d\d?)\.(?:\s?(?P<y4>{_YEAR}))?(?!\d)
  | (?P<a5>\d\d?)/(?P<b5>\d\d?)/(?P<y5>{_YEAR})
)"""
_WEEKDAY = f"(?P<weekday>{'|'.join(_DAYS)})(?![a-z])"
_HEAD = re.compile(
    rf"""\s*(?:[•*]\s*)?(?:{_WEEKDAY}[.,]?\s*)?(?P<date>{_DATE})?[.,]?\s*
    (?P<half>(?:am|pm|a\.m\.|p\.m\.)(?![a-z]))?\s*(?P<mark>:|-(?!-)|–|—)?""",
    re.IGNORECASE | re.VERBOSE,
)
#: Days by one letter count only below a week's heading; S is the Saturday if that is to come.
_LETTER = re.compile(
    r"\s*(?P<letter>Su|Th|[MTWRFS])(?![\w/.'-])[:.,]?\s*(?P<half>am|pm)?(?=[\s:]|$)\s*:?"
)
_BY_LETTER = {"M": 0, "T": 1, "W": 2, "Th": 3, "R": 3, "F": 4, "S": 5, "Su": 6}
_WEEK = re.compile(
    rf"\W*(?:training\s+)?(?:week|wk|w/c)(?![a-z])\s*(?:\d\d?\s*[:,(–-])?[^\d:]{{0,20}}?(?:{_WEEKDAY}[.,]?\s*)?"
    rf"(?P<date>{_DATE})",
    re.IGNORECASE | re.VERBOSE,
)
_DAY_WORD = re.compile(rf"(?<![a-z]){_WEEKDAY}", re.IGNORECASE)
_YEAR_LINE = re.compile(rf"\D*?(?P<year>{_YEAR})\D*")
WHICH_YEAR = mark("Which year?")
#: A yearless date that lies this far before the one above it may belong to the next year. [days]
HALF_A_YEAR = 183


@dataclass(frozen=True)
class Head:
    """How a line names its day; characters ``start`` to ``end``. ``None`` is not said."""

    start: int
    end: int
    weekday: int | None
    half: str  # "am", "pm" or ""
    day: int | None = None
    month: int | None = None
    year: int | None = None
    #: "3/4/2026" may be the 3rd of April or the 4th of March.
    either_way: bool = False
    #: Named by one letter, which elsewhere may mean something else.
    letter: bool = False

    @property
    def dated(self) -> bool:
        """Whether it names a date, with or without a year."""
        return self.day is not None


def head_of(line: str) -> Head | None:
    """Find the day with which a line begins: "Tue am:", "Tue 9 June:", "2026-06-09", "pm:"."""
    found = _HEAD.match(line)
    if found is None or not any(found[name] for name in ("weekday", "date", "half")):
        return _by_letter(line)
    named = found["d2"] or found["m3"]
    clear = found["weekday"] or found["half"] or found["mark"] or found["y2"] or found["y3"]
    if (named and not clear) or (not found["weekday"] and not found["date"] and not found["mark"]):
        return None
    return _head(found, found.end())


def _by_letter(line: str) -> Head | None:
    found = _LETTER.match(line)
    if found is None:
        return None
    start = found.start("letter")
    weekday = _BY_LETTER[found["letter"]]
    return Head(start, found.end(), weekday, (found["half"] or ""), letter=True)


def week_of(line: str) -> Head | None:
    """Find the date of a heading such as "Week of Mon 2026-06-08"."""
    found = _WEEK.match(line)
    return None if found is None else _head(found, found.end())


def day_beside(line: str, heading: Head) -> int | None:
    """Where a day with something run begins behind a week's heading on the same line."""
    for found in _DAY_WORD.finditer(line, heading.end):
        head = head_of(line[found.start() :])
        rest = line[found.start() + head.end :] if head is not None and not head.dated else ""
        if any(character.isdigit() for character in rest):
            return found.start()
    return None


def year_of(line: str) -> int | None:
    """The year of a heading such as "2026" or "Diary, spring 2026"."""
    found = _YEAR_LINE.fullmatch(line)
    return None if found is None else int(found["year"])


def _head(found: re.Match[str], end: int) -> Head:
    groups = found.groupdict()

    def first(*names: str) -> str | None:
        return next((groups[name] for name in names if groups[name]), None)

    day, year = first("d1", "d2", "d3", "d4"), first("y1", "y2", "y3", "y4", "y5")
    month, either_way = first("m1", "m4"), False
    number = int(month) if month else _index(_MONTHS, first("m2", "m3"), 1)
    if groups["a5"]:
        a, b = int(groups["a5"]), int(groups["b5"])
        either_way = a <= 12 and b <= 12 and a != b
        day, number = (str(b), a) if b > 12 else (str(a), b)
    return Head(
        start=found.start() + len(found[0]) - len(found[0].lstrip()),
        end=end,
        weekday=_index(_DAYS, groups["weekday"], 0),
        half=(groups.get("half") or "").replace(".", "").casefold(),
        day=int(day) if day else None,
        month=number,
        year=int(year) if year else None,
        either_way=either_way,
    )


def _index(patterns: tuple[str, ...], text: str | None, first: int) -> int | None:
    if text is None:
        return None
    return next(
        k for k, pattern in enumerate(patterns, first) if re.fullmatch(pattern, text, re.IGNORECASE)
    )


def date_of(head: Head, year: int | None, last: date | None) -> date:
    """The date that a head names.

    Parameters
    ----------
    head : Head
        One with a day and a month.
    year : int or None
        The last year named above it.
    last : date or None
        The last date above it.

    Raises
    ------
    Doubt
        If there is no such date, its weekday is another, or its year is not certain.
    """
    if head.day is None or head.month is None:
        raise Doubt(head.start, head.end, tr("Which date?"))
    year_known = head.year or year
    if year_known is None:
        raise Doubt(head.start, head.end, tr(WHICH_YEAR), kind="year")
    try:
        if head.either_way:
            both = date(year_known, head.month, head.day), date(year_known, head.day, head.month)
            readings = _heads([f"{d}" for d in both], head)
            raise Doubt(head.start, head.end, tr("Day or month first?"), readings)
        found = date(year_known, head.month, head.day)
    except ValueError:
        raise Doubt(head.start, head.end, tr("There is no such date: which one?")) from None
    if head.year is None and last is not None and (last - found).days > HALF_A_YEAR:
        later = [f"{year_known + k}-{head.month:02d}-{head.day:02d}" for k in (1, 0)]
        raise Doubt(head.start, head.end, tr(WHICH_YEAR), _heads(later, head))
    if head.weekday is not None and found.weekday() != head.weekday:
        name = weekday(found.weekday())
        said = tr("{date} is a {weekday}: which day was it?", date=found, weekday=name)
        raise Doubt(head.start, head.end, said, _heads([f"{found}"], head))
    return found


def _heads(days: Sequence[str], head: Head) -> list[str]:
    """Dates as they would be written in a head's place."""
    half = f" {head.half}" if head.half else ""
    return [f"{day}{half}: " for day in days]

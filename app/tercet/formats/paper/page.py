"""A page of a training diary: its days, what was run on each, and what could not be read."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta

from tercet.domain import Failed
from tercet.formats.paper.dates import Head, date_of, head_of, week_of, year_of
from tercet.formats.paper.meaning import Doubt, Unclear
from tercet.formats.paper.session import comment_at, parse_session

FORMAT = "paper"
#: Larger texts are no diary. [bytes]
MAX_PAGE_BYTES = 1_000_000
#: A text is given up if of its first so many lines fewer than a quarter are days.
LOOKED_AT = 200
#: When a run began whose line says am, pm or neither (local time).
STARTS = {"am": time(7), "pm": time(18), "": time(12)}
NO_YEAR = (
    'It is a diary, but names no year. Write the year in its first line, such as "2026" or '
    '"Week of Mon 2026-06-08".'
)
#: So many unclear pieces are named in a problem.
NAMED = 4
_REST = re.compile(
    r"(?:(?:day |days )?off|rest(?: ?day)?|no run(?:ning)?|-|–|—)?[.!]?", re.IGNORECASE
)
_AGAIN = re.compile(r"[,;]?\s*(?<!\w)(am|pm)\s*:", re.IGNORECASE)


@dataclass(frozen=True)
class PaperRun:
    """One run of a diary.

    ``start`` is the local wall clock, naive: the hours of :data:`STARTS`, for diaries know no
    minutes. ``notation`` is the session as typed, without its day.
    """

    start: datetime
    notation: str
    line: int  # counted from 1
    note: str = ""


@dataclass(frozen=True)
class Page:
    """What was understood of a diary; places in ``unclear`` are those in its text."""

    runs: tuple[PaperRun, ...]
    unclear: tuple[tuple[int, Unclear], ...] = ()  # with line numbers
    damage: str = ""  # a plain sentence if the file could be read only in part

    @property
    def problem(self) -> str:
        """A plain sentence on what was not understood, or nothing."""
        if not self.unclear:
            return self.damage
        count = len(self.unclear)
        told = [f"line {line} '{piece.text}': {piece.question}" for line, piece in self.unclear]
        more = f"; and {count - NAMED} more" if count > NAMED else ""
        pieces = "1 piece" if count == 1 else f"{count} pieces"
        said = f"{pieces} not understood: {'; '.join(told[:NAMED])}{more}"
        return f"{self.damage} {said}".strip()


@dataclass
class _Reading:
    """What is known so far while going down a page."""

    year: int | None = None
    week: date | None = None
    last: date | None = None
    day: date | None = None  # of the line above, if it is certain
    dated: bool = False
    year_named: bool = False
    days: int = 0  # lines that are a day and understood, at least in part
    runs: list[PaperRun] = field(default_factory=list)
    others: int = 0
    unclear: list[tuple[int, Unclear]] = field(default_factory=list)


def read_page(data: bytes) -> Page | Failed | None:
    """Read a diary, told from other texts by its lines.

    Parameters
    ----------
    data : bytes
        Text in UTF-8, or in Windows' western code page.

    Returns
    -------
    Page, Failed or None
        None if it is no diary: one has a date, and at least half of its lines, headings left
        out, begin with a day and can be read at least in part. Failed for a diary that names no
        year, or of which no run could be read.
    """
    text = _text(data)
    if text is None:
        return None
    page = _Reading()
    offset = seen = 0
    for number, line in enumerate(text.splitlines(keepends=True), 1):
        if line.strip():
            seen += 1
            _read_line(page, number, line.rstrip(), offset)
        offset += len(line)
        if seen == LOOKED_AT and 4 * page.days < seen:
            return None
    if not page.days or page.days < page.others or not (page.dated or page.days > 1):
        return None
    if not page.year_named:
        return Failed(NO_YEAR, format=FORMAT)
    found = Page(tuple(page.runs), tuple(page.unclear))
    if page.runs:
        return found
    if found.problem:
        return Failed(f"No run could be read: {found.problem}", format=FORMAT)
    return Failed("This is a diary without a run.", "passed over", FORMAT)


def _text(data: bytes) -> str | None:
    if len(data) > MAX_PAGE_BYTES or b"\0" in data:
        return None
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")


def _read_line(page: _Reading, number: int, line: str, offset: int) -> None:
    def ask(doubt: Doubt) -> None:
        found = doubt.in_text(line)
        page.unclear.append(
            (number, replace(found, start=found.start + offset, end=found.end + offset))
        )

    heading = week_of(line)
    if heading is not None:
        page.dated, page.week, page.day = True, None, None
        page.year_named |= heading.year is not None
        try:
            page.week = page.last = date_of(heading, page.year, page.last)
            page.year = page.week.year
        except Doubt as doubt:
            page.year = heading.year or page.year
            ask(doubt)
        return
    head = head_of(line)
    if head is None:
        year = year_of(line)
        if year is not None:
            page.year, page.year_named = year, True
            page.week = page.last = page.day = None
        elif comment_at(line.lstrip()) > 0:
            page.others += 1
            ask(Doubt(0, min(len(line), 60), "Which day? Begin the line with it."))
        return
    page.dated |= head.dated
    page.year_named |= head.year is not None
    parts = _parts(line, head)
    sessions = [parse_session(line[first:last]) for first, last, _ in parts]
    resting = [is_rest(line[first:last]) for first, last, _ in parts]
    understood = any(resting) or any(session.pieces for session in sessions)
    page.days += understood
    page.others += not understood
    try:
        page.day = _day(page, head)
    except Doubt as doubt:
        page.day = None
        ask(doubt)
    for (first, last, half), session, rest in zip(parts, sessions, resting, strict=True):
        if rest:
            continue
        for piece in session.unclear:
            ask(Doubt(piece.start + first, piece.end + first, piece.question, piece.readings))
        if page.day is not None and session.pieces:
            start = datetime.combine(page.day, STARTS[half])
            typed = line[first:last][: comment_at(line[first:last])].strip()
            page.runs.append(PaperRun(start, typed, number, session.comment))


def _day(page: _Reading, head: Head) -> date:
    if head.dated:
        day = date_of(head, page.year, page.last)
        page.year = day.year
        page.week = None
    elif head.weekday is None:
        if page.day is None:
            raise Doubt(head.start, head.end, "Which date?")
        return page.day
    elif page.week is None:
        raise Doubt(head.start, head.end, "Which date?")
    else:
        day = page.week + timedelta(days=(head.weekday - page.week.weekday()) % 7)
        if page.last is not None and day < page.last:
            # A weekday that comes round again may be next week's, or merely written late.
            raise Doubt(head.start, head.end, "Which week? Write its date above.")
    page.last = day
    return day


def _parts(line: str, head: Head) -> Sequence[tuple[int, int, str]]:
    """The sessions of one line: begin, end, and the half of the day."""
    end = head.end + comment_at(line[head.end :])
    begin, half = head.end, head.half
    parts = []
    for found in _AGAIN.finditer(line, begin, end):
        if line[begin : found.start()].strip():
            parts.append((begin, found.start(), half))
        begin, half = found.end(), found[1].casefold()
    parts.append((begin, len(line), half))
    return parts


def is_rest(text: str) -> bool:
    """Whether a day's words say that nothing is run: "rest", "off", a dash."""
    return _REST.fullmatch(text[: comment_at(text)].strip()) is not None

"""The lines of a diary, one after the other: what day each is, and what was run on it."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta

from tercet.formats.paper.dates import (
    WHICH_YEAR,
    Head,
    date_of,
    day_beside,
    head_of,
    week_of,
    year_of,
)
from tercet.formats.paper.meaning import Doubt, Unclear
from tercet.formats.paper.session import Session, comment_at
from tercet.formats.paper.shorthand import Guess, Shorthand, resolve
from tercet.language import tr

#: When a run began whose line says am, pm or neither (local time).
STARTS = {"am": time(7), "pm": time(18), "": time(12)}
#: Years back from today that a date without a year may be offered in.
YEARS_BACK = 12
_REST = re.compile(
    r"(?:(?:day |days )?off|rest(?: ?day)?|no run(?:ning)?|-|–|—)?[.!]?", re.IGNORECASE
)
_OFF = re.compile(r"(?:day |days )?off|rest ?day|rest|no run(?:ning)?", re.IGNORECASE)
_AGAIN = re.compile(r"[,;]?\s*(?<!\w)(am|pm)\s*:", re.IGNORECASE)
_BOTH = re.compile(
    r"(?P<am>[^+#]+?)\s*\+\s*(?P<pm>[^+#]+?)\s*\(?am\s*[,/&+]?\s*pm\)?\s*$", re.IGNORECASE
)


@dataclass(frozen=True)
class Entry:
    """One line of a diary, or each session of a line that holds two.

    ``kind`` is "heading", "rest", "run" or "other"; ``start`` the local wall clock, naive, with
    the hours of :data:`STARTS`, None while the day is not certain. ``typed`` is the session as it
    stands there, ``notation`` the same in plain words. Places of ``unclear`` and ``guesses`` are
    those in the page's text.
    """

    number: int  # of the line, counted from 1
    kind: str
    start: datetime | None = None
    typed: str = ""
    notation: str = ""
    session: Session = field(default_factory=Session)
    unclear: tuple[Unclear, ...] = ()
    guesses: tuple[Guess, ...] = ()
    note: str = ""
    held: str = ""  # the notation to be kept while nobody has said whether guesses are right


@dataclass
class Reading:
    """What is known so far while going down a page."""

    shorthand: Shorthand = field(default_factory=Shorthand)
    guess: bool = False
    today: date | None = None  # to offer years from; None offers none
    year: int | None = None
    week: date | None = None
    last: date | None = None
    day: date | None = None  # of the line above, if it is certain
    dated: bool = False
    year_named: bool = False
    year_asked: bool = False
    days: int = 0  # lines that are a day and understood, at least in part
    others: int = 0
    entries: list[Entry] = field(default_factory=list)


def read_lines(
    text: str, shorthand: Shorthand | None = None, *, guess: bool = False, today: date | None = None
) -> tuple[Entry, ...]:
    """Read a page line by line, whatever it is.

    Parameters
    ----------
    text : str
        Lines end with a line feed only.
    shorthand : Shorthand or None
        This runner's own words.
    guess : bool
        Take likely readings where they are likely enough; the entries name each.
    today : date or None
        Years up to this day are offered where none is named.
    """
    page = Reading(shorthand or Shorthand(), guess, today)
    offset = 0
    for number, line in enumerate(text.split("\n"), 1):
        if line.strip():
            read_line(page, number, line.rstrip(), offset)
        offset += len(line) + 1
    return tuple(page.entries)


def is_rest(text: str) -> bool:
    """Whether a day's words say that nothing is run: "rest", "off", a dash."""
    return _REST.fullmatch(text[: comment_at(text)].strip()) is not None


def read_line(page: Reading, number: int, line: str, offset: int) -> None:
    """Read one line that is not blank, ``offset`` characters into its page."""

    def asked(doubt: Doubt) -> Unclear:
        found = doubt.in_text(line)
        return replace(found, start=found.start + offset, end=found.end + offset)

    heading = week_of(line)
    if heading is not None:
        unclear = _week(page, heading, asked)
        beside = day_beside(line, heading)
        if beside is not None:
            doubt = Doubt(beside, len(line.rstrip()), tr("Give each day a line of its own."))
            unclear = (*unclear, asked(doubt))
        page.entries.append(Entry(number, "heading", typed=line.strip(), unclear=unclear))
        return
    head = head_of(line)
    if head is not None and head.letter and page.week is None:
        head = None
    if head is None:
        year = year_of(line)
        if year is not None:
            page.year, page.year_named = year, True
            page.week = page.last = page.day = None
            page.entries.append(Entry(number, "heading"))
        elif comment_at(line.lstrip()) > 0:
            page.others += 1
            doubt = Doubt(0, min(len(line), 60), tr("Which day? Begin the line with it."))
            page.entries.append(Entry(number, "other", typed=line, unclear=(asked(doubt),)))
        return
    page.dated |= head.dated
    page.year_named |= head.year is not None
    about_day: tuple[Unclear, ...] = ()
    try:
        page.day = _day(page, head)
    except Doubt as doubt:
        page.day = None
        about_day = (asked(_with_years(page, doubt, head)),)
    entries = [
        _entry(page, number, line, part, offset, about_day if k == 0 else ())
        for k, part in enumerate(_parts(line, head))
    ]
    understood = any(entry.kind == "rest" or entry.session.pieces for entry in entries)
    page.days += understood
    page.others += not understood
    page.entries += entries


def _entry(
    page: Reading,
    number: int,
    line: str,
    part: tuple[int, int, str],
    offset: int,
    unclear: tuple[Unclear, ...],
) -> Entry:
    first, last, half = part
    text = line[first:last]
    start = None if page.day is None else datetime.combine(page.day, STARTS[half])
    if is_rest(text) or (page.guess and _is_off(text)):
        note = _OFF.sub("", text, count=1).strip(" ,;#-–—.()")
        return Entry(number, "rest", start, text.strip(), unclear=unclear, note=note)
    found = resolve(text, page.shorthand, guess=page.guess)
    shift = offset + first
    unclear += tuple(
        replace(u, start=u.start + shift, end=u.end + shift) for u in found.session.unclear
    )
    guesses = tuple(replace(g, start=g.start + shift, end=g.end + shift) for g in found.guesses)
    return Entry(
        number,
        "run",
        start,
        text[: comment_at(text)].strip(),
        found.notation[: comment_at(found.notation)].strip(),
        found.session,
        unclear,
        guesses,
        found.session.note,
        found.held[: comment_at(found.held)].strip(),
    )


def _is_off(text: str) -> bool:
    """A day off with a note, such as "off, calf"."""
    found = _OFF.match(text.strip())
    return (
        found is not None and not re.search(r"\d", text) and text.strip()[found.end() :][:1] in ",;"
    )


def _week(page: Reading, heading: Head, asked: Callable[[Doubt], Unclear]) -> tuple[Unclear, ...]:
    page.dated, page.week, page.day = True, None, None
    page.year_named |= heading.year is not None
    try:
        page.week = page.last = date_of(heading, page.year, page.last)
        page.year = page.week.year
    except Doubt as doubt:
        page.year = heading.year or page.year
        if doubt.kind == "year":
            doubt = _with_years(page, doubt, heading, week=True)
        elif doubt.readings:
            readings = [f"Week of {day.strip(' :')}" for day in doubt.readings]
            doubt = Doubt(doubt.start, doubt.end, doubt.question, readings)
        return (asked(doubt),)
    return ()


def _with_years(page: Reading, doubt: Doubt, head: Head, *, week: bool = False) -> Doubt:
    """Offer years for a date without one; asked once a page."""
    if doubt.kind != "year" or page.today is None:
        return doubt
    if page.year_asked:
        return Doubt(doubt.start, doubt.end, tr("Which year? It is asked above."), kind="year")
    page.year_asked = True
    readings = []
    for year in range(page.today.year, page.today.year - YEARS_BACK, -1):
        try:
            day = date(year, head.month or 1, head.day or 1)
        except ValueError:
            continue
        if day <= page.today and head.weekday in (None, day.weekday()):
            half = f" {head.half}" if head.half else ""
            readings.append(f"Week of {day}" if week else f"{day}{half}: ")
    return Doubt(doubt.start, doubt.end, tr(WHICH_YEAR), readings[:3], kind="year")


def _day(page: Reading, head: Head) -> date:
    if head.dated:
        day = date_of(head, page.year, page.last)
        page.year = day.year
        page.week = None
    elif head.weekday is None:
        if page.day is None:
            raise Doubt(head.start, head.end, tr("Which date?"))
        return page.day
    elif page.week is None:
        raise Doubt(head.start, head.end, tr("Which date?"))
    else:
        day = page.week + timedelta(days=(head.weekday - page.week.weekday()) % 7)
        if page.last is not None and day < page.last:
            # A weekday that comes round again may be next week's, or merely written late.
            raise Doubt(head.start, head.end, tr("Which week? Write its date above."))
        if head.letter and head.weekday == 5 and page.last == day:
            raise Doubt(head.start, head.end, tr("Saturday or Sunday?"), ("Sat ", "Sun "))
    page.last = day
    return day


def _parts(line: str, head: Head) -> Sequence[tuple[int, int, str]]:
    """The sessions of one line: begin, end, and the half of the day."""
    end = head.end + comment_at(line[head.end :])
    begin, half = head.end, head.half
    both = _BOTH.fullmatch(line, begin, end)
    if both is not None:
        return [(*both.span("am"), "am"), (*both.span("pm"), "pm")]
    parts = []
    for found in _AGAIN.finditer(line, begin, end):
        if line[begin : found.start()].strip():
            parts.append((begin, found.start(), half))
        begin, half = found.end(), found[1].casefold()
    parts.append((begin, len(line), half))
    return parts

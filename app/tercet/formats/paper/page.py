"""A page of a training diary: its days, what was run on each, and what could not be read."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from tercet.domain import Failed
from tercet.formats.paper.lines import Reading, read_line
from tercet.formats.paper.meaning import Unclear
from tercet.formats.paper.shorthand import Shorthand
from tercet.language import mark, several, tr

FORMAT = "paper"
#: Larger texts are no diary. [bytes]
MAX_PAGE_BYTES = 1_000_000
#: A text is given up if of its first so many lines fewer than a quarter are days.
LOOKED_AT = 200
NO_YEAR = mark(
    'It is a diary, but names no year. Write the year in its first line, such as "2026" or '
    '"Week of Mon 2026-06-08".'
)
#: So many unclear pieces are named in a problem.
NAMED = 4


@dataclass(frozen=True)
class PaperRun:
    """One run of a diary.

    ``start`` is the local wall clock, naive: the hours of
    :data:`~tercet.formats.paper.lines.STARTS`, for diaries know no
    minutes. ``notation`` is the session in plain words, without its day, ``typed`` as it stands.
    """

    start: datetime
    notation: str
    line: int  # counted from 1
    note: str = ""
    typed: str = ""


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
        told = "; ".join(
            tr("line {line} '{words}': {question}", line=line, words=piece.text,
               question=piece.question)
            for line, piece in self.unclear[:NAMED]
        )  # fmt: skip
        if count > NAMED:
            said = tr(
                "{n} pieces not understood: {first}; and {more} more.",
                n=count,
                first=told,
                more=count - NAMED,
            )
        else:
            said = several(
                count,
                mark("{n} piece not understood: {first}"),
                mark("{n} pieces not understood: {first}"),
                first=told,
            )
        return f"{self.damage} {said}".strip()


def read_page(data: bytes, shorthand: Shorthand | None = None) -> Page | Failed | None:
    """Read a diary, told from other texts by its lines.

    Parameters
    ----------
    data : bytes
        Text in UTF-8, or in Windows' western code page.
    shorthand : Shorthand or None
        The runner's own words.

    Returns
    -------
    Page, Failed or None
        None if it is no diary: one has a date, and at least half of its lines, headings left
        out, begin with a day and can be read at least in part. Failed for a diary that names no
        year, or of which no run could be read.
    """
    text = text_of(data)
    if text is None:
        return None
    page = Reading(shorthand or Shorthand())
    offset = seen = 0
    for number, line in enumerate(text.splitlines(keepends=True), 1):
        if line.strip():
            seen += 1
            read_line(page, number, line.rstrip(), offset)
        offset += len(line)
        if seen == LOOKED_AT and 4 * page.days < seen:
            return None
    if not page.days or page.days < page.others or not (page.dated or page.days > 1):
        return None
    if not page.year_named:
        return Failed(tr(NO_YEAR), format=FORMAT)
    runs = tuple(
        PaperRun(entry.start, entry.notation, entry.number, entry.note, entry.typed)
        for entry in page.entries
        if entry.start is not None and entry.session.pieces
    )
    unclear = tuple((e.number, item) for e in page.entries for item in e.unclear)
    found = Page(runs, unclear)
    if runs:
        return found
    if found.problem:
        return Failed(tr("No run could be read: {problem}", problem=found.problem), format=FORMAT)
    return Failed(tr("This is a diary without a run."), "passed over", FORMAT)


def text_of(data: bytes) -> str | None:
    """Text in UTF-8 or Windows' western code page; None for anything else, or too much."""
    if len(data) > MAX_PAGE_BYTES or b"\0" in data:
        return None
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")

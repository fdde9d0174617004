"""A session as runners write it, such as "15 min easy, 10 x 100 m fast / 100 m jog", to pieces."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from tercet.engine.notation import Bout, Piece
from tercet.formats.paper.asking import is_note, not_read
from tercet.formats.paper.meaning import Doubt, Unclear, meaning_of
from tercet.language import code, grouped, tr

if TYPE_CHECKING:
    from lark import Lark

#: Longer lines are no line of a diary. [characters]
MAX_LINE = 1_000
#: More than this in one session is asked about. [s], [m]
MAX_SECONDS, MAX_METRES = 86_400.0, 200_000.0
_COMMENT = re.compile(r"#|(?<!-)--(?!-)")
#: A comma with a figure close on both sides is a decimal comma; one in brackets parts nothing.
_CUT = re.compile(r"(?<!\d),|,(?!\d)|[;+]|(?<![a-z])(?:then|followed by)(?![a-z])", re.IGNORECASE)
_CLOCK = re.compile(r"\d{1,2}:[0-5]\d(?::[0-5]\d)?")
_BETWEEN = re.compile(
    r"(?P<rest>.+?)\s+(?:in[\s-]?)?between(?:\s+(?:the\s+)?(?:sets|reps|repetitions|each))?",
    re.IGNORECASE,
)
_PART = re.compile(r"(?:the\s+)?(?P<which>first|last|final)\s+", re.IGNORECASE)
_AT = re.compile(r"(?:@|(?<![a-z])at)\s*$", re.IGNORECASE)
_WITH = re.compile(r"(?<![a-z])(?:with|w/)\s*(?!u(?![a-z]))(?P<whom>[^\d/()@]+)$", re.IGNORECASE)


@dataclass(frozen=True)
class Session:
    """What was understood of a session and what was not, with places in its text.

    ``notes`` are words without a figure that say nothing of the running, such as "with Bea".
    """

    pieces: tuple[Piece, ...] = ()
    unclear: tuple[Unclear, ...] = ()
    comment: str = ""
    notes: tuple[str, ...] = ()

    @property
    def note(self) -> str:
        """Notes and comment as one text."""
        return ", ".join((*self.notes, *([self.comment] if self.comment else [])))


def comment_at(text: str) -> int:
    """Where the comment of a line begins, or the line's length."""
    found = _COMMENT.search(text)
    return found.start() if found else len(text)


def parse_session(text: str) -> Session:
    """Read one session.

    Parameters
    ----------
    text : str
        One line, without its day; a comment begins with ``#`` or ``--``.

    Returns
    -------
    Session
        Pieces in order. What is not understood is in ``unclear`` and in no piece; nothing is
        guessed. Never raises.
    """
    return _parsed(text, code())


@lru_cache(maxsize=4096)
def _parsed(text: str, _language: str) -> Session:
    """Kept for each language, since what is asked is asked in it."""
    end = comment_at(text)
    comment = text[end:].lstrip("#-").strip()
    if len(text) > MAX_LINE:
        question = tr("More than {most} characters: what is it?", most=grouped(MAX_LINE))
        return Session(unclear=(Unclear(0, len(text), text[:60], question),))
    pieces: list[Piece] = []
    unclear: list[Unclear] = []
    notes: list[str] = []
    for first, last in _spans(text[:end]):
        try:
            last = _without_company(text, first, last, notes)
            if not first < last:
                continue
            added = _added(text, first, last, pieces)
            if added is None:
                notes.append(text[first:last])
                continue
            if not _fits_a_day(added):
                raise Doubt(first, last, tr("More than a day's running: is that right?"))
        except Doubt as doubt:
            unclear.append(doubt.in_text(text))
        else:
            pieces = added
    return Session(tuple(pieces), tuple(unclear), comment, tuple(notes))


def _added(text: str, first: int, last: int, before: list[Piece]) -> list[Piece] | None:
    """The pieces with one more, which may say more of the piece before it; None for a note."""
    words = text[first:last]
    previous = before[-1] if before else None
    whole = _CLOCK.fullmatch(words)
    if whole and previous is not None and _only_metres(previous):
        joined = f"{text[previous.start : previous.end]} in {words}"
        return [*before[:-1], replace(_again(joined, first, last), start=previous.start, end=last)]
    between = _BETWEEN.fullmatch(words)
    if between and previous is not None and previous.recovery is None and previous.count > 1:
        joined = f"{text[previous.start : previous.end]} / {between['rest']}"
        return [*before[:-1], replace(_again(joined, first, last), start=previous.start, end=last)]
    part = _PART.match(words)
    if part is not None:
        piece = _piece(text, first + part.end(), last)
        return [*before[:-1], *_parted(previous, piece, part["which"].casefold(), first, last)]
    try:
        return [*before, _piece(text, first, last)]
    except Doubt as doubt:
        if doubt.kind == "note":
            return None
        raise


def _again(joined: str, first: int, last: int) -> Piece:
    """Read words put together from two places; what is asked is asked of the second."""
    try:
        return _piece(joined, 0, len(joined))
    except Doubt as doubt:
        raise Doubt(first, last, doubt.question) from doubt


def _parted(whole: Piece | None, part: Piece, which: str, first: int, last: int) -> list[Piece]:
    """A stretch of which the first or the last part was run otherwise."""
    if whole is None or whole.inner or whole.recovery or part.inner or part.recovery:
        raise Doubt(first, last, tr("Of which stretch?"))
    long, short = whole.work, part.work
    left: Bout | None = None
    if whole.count == part.count == 1:
        for name in ("seconds", "metres"):
            other = "metres" if name == "seconds" else "seconds"
            all_of_it, of_it = getattr(long, name), getattr(short, name)
            if getattr(long, other) is None and getattr(short, other) is None and of_it < all_of_it:
                left = replace(long, **{name: all_of_it - of_it})
    if left is None:
        raise Doubt(first, last, tr("How much of the stretch before it?"))
    rest = replace(whole, work=left)
    part = replace(part, start=first, end=last)
    return [part, rest] if which == "first" else [rest, part]


def _only_metres(piece: Piece) -> bool:
    bout = piece.work
    known = (bout.seconds, bout.speed, bout.race_m, piece.recovery)
    return piece.count == 1 and not piece.inner and bout.metres is not None and known == (None,) * 4


def _fits_a_day(pieces: list[Piece]) -> bool:
    bouts = [item for piece in pieces for item in piece.bouts()]
    return (
        sum(times * (bout.seconds or 0.0) for times, bout in bouts) <= MAX_SECONDS
        and sum(times * (bout.metres or 0.0) for times, bout in bouts) <= MAX_METRES
    )


def _without_company(text: str, first: int, last: int, notes: list[str]) -> int:
    """Where a piece ends without the words that say with whom it was run."""
    found = _WITH.search(text, first, last)
    if found is None or not is_note(found["whom"]):
        return last
    notes.append(text[found.start() : last].strip())
    return len(text[: found.start()].rstrip())


def _spans(text: str) -> Iterator[tuple[int, int]]:
    """Begin and end of each piece, without blanks around it; empty ones are left out."""
    begin = 0
    cuts = [(found.start(), found.end()) for found in _CUT.finditer(text)]
    for cut, after in [*cuts, (len(text), len(text))]:
        inside = text[begin:cut]
        if inside.count("(") > inside.count(")") and cut < len(text):
            continue
        bare = inside.strip(" \t.")
        if bare:
            first = begin + inside.index(bare)
            yield first, first + len(bare)
        begin = after


@cache
def _grammar() -> Lark:
    # Only whoever has a paper log waits for the parser library.
    from lark import Lark

    return Lark.open(
        "session.lark",
        rel_to=__file__,
        start="piece",
        parser="lalr",
        propagate_positions=True,
        maybe_placeholders=False,
    )


def _piece(text: str, first: int, last: int) -> Piece:
    from lark import UnexpectedCharacters, UnexpectedInput

    try:
        tree = _grammar().parse(text[first:last])
    except UnexpectedCharacters as error:
        raise not_read(text, first + (error.pos_in_stream or 0), first, last) from error
    except UnexpectedInput as error:
        raise not_read(text, last, first, last) from error
    try:
        piece = meaning_of(tree)
    except Doubt as doubt:
        if is_note(text[first:last]):
            raise Doubt(first, last, "", kind="note") from doubt
        found = doubt.moved(first)
        at = _AT.search(text, first, found.start)
        if at and found.readings and all(r.startswith(("@", "in ")) for r in found.readings):
            found = found.over(at.start(), found.end)
        raise found from doubt
    return replace(piece, start=first, end=last)

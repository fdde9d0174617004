"""A session as runners write it, such as "15 min easy, 10 x 100 m fast / 100 m jog", to pieces."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING

from tercet.engine.notation import WORDS, Piece
from tercet.formats.paper.meaning import Doubt, Unclear, meaning_of

if TYPE_CHECKING:
    from lark import Lark

#: Longer lines are no line of a diary. [characters]
MAX_LINE = 1_000
#: More than this in one session is asked about. [s], [m]
MAX_SECONDS, MAX_METRES = 86_400.0, 200_000.0
_COMMENT = re.compile(r"#|(?<!-)--(?!-)")
#: A comma with a figure close on both sides is a decimal comma; one in brackets parts nothing.
_COMMA = re.compile(r"(?<!\d),|,(?!\d)|;")
_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*|\d+(?:[.,:]\d+)*|\S")
_VOCABULARY = (*WORDS, "min", "km", "miles", "pace", "half marathon", "marathon")


@dataclass(frozen=True)
class Session:
    """What was understood of a session and what was not, with places in its text."""

    pieces: tuple[Piece, ...] = ()
    unclear: tuple[Unclear, ...] = ()
    comment: str = ""


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
    end = comment_at(text)
    comment = text[end:].lstrip("#-").strip()
    if len(text) > MAX_LINE:
        question = f"More than {MAX_LINE:,} characters: what is it?"
        return Session(unclear=(Unclear(0, len(text), text[:60], question),))
    pieces: list[Piece] = []
    unclear: list[Unclear] = []
    seconds = metres = 0.0
    for first, last in _spans(text[:end]):
        try:
            piece = _piece(text, first, last)
            more_s, more_m = _amounts(piece)
            if seconds + more_s > MAX_SECONDS or metres + more_m > MAX_METRES:
                raise Doubt(first, last, "More than a day's running: is that right?")
        except Doubt as doubt:
            unclear.append(doubt.in_text(text))
        else:
            pieces.append(piece)
            seconds, metres = seconds + more_s, metres + more_m
    return Session(tuple(pieces), tuple(unclear), comment)


def _amounts(piece: Piece) -> tuple[float, float]:
    """Seconds and metres that were written, all repetitions together."""
    bouts = [piece.work, *([piece.recovery] if piece.recovery is not None else [])]
    return (
        piece.count * sum(bout.seconds or 0.0 for bout in bouts),
        piece.count * sum(bout.metres or 0.0 for bout in bouts),
    )


def _spans(text: str) -> Iterator[tuple[int, int]]:
    """Begin and end of each piece, without blanks around it; empty ones are left out."""
    begin = 0
    cuts = [found.start() for found in _COMMA.finditer(text)]
    for cut in [*cuts, len(text)]:
        inside = text[begin:cut]
        if inside.count("(") > inside.count(")") and cut < len(text):
            continue
        bare = inside.strip(" \t.")
        if bare:
            first = begin + inside.index(bare)
            yield first, first + len(bare)
        begin = cut + 1


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
        raise _unknown(text, first + (error.pos_in_stream or 0), first, last) from error
    except UnexpectedInput as error:
        raise Doubt(first, last, "How should this be read?") from error
    try:
        piece = meaning_of(tree)
    except Doubt as doubt:
        raise doubt.moved(first) from doubt
    return replace(piece, start=first, end=last)


def _unknown(text: str, at: int, first: int, last: int) -> Doubt:
    """Ask about the word at which reading stopped, or about the piece if it is no word."""
    found = _WORD.match(text, at, last)
    # Reading may stop inside a word: "strides" is known, "stridesy" is not.
    while found is not None and at > first and text[at - 1].isalpha() and text[at].isalpha():
        at -= 1
        found = _WORD.match(text, at, last)
    if found is None or not found[0][0].isalpha():
        return Doubt(first, last, "How should this be read?")
    word = found[0].casefold()
    if word in _VOCABULARY:
        return Doubt(first, last, "How should this be read?")
    near = tuple(difflib.get_close_matches(word, _VOCABULARY, 2, 0.7))
    question = " or ".join(near) + "?" if near else "What does it mean?"
    return Doubt(at, found.end(), question, near)

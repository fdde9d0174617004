"""A planned line in plain words: read with the runner's shorthand, as a line of a diary is."""

from __future__ import annotations

from tercet.formats.paper import Shorthand, parse_session
from tercet.formats.paper.shorthand import PLAUSIBLE, resolve
from tercet.store import paper_queries
from tercet.store.database import Store


def plain(store: Store, text: str) -> str:
    """The line in the notation that all diaries share, so that it stays what it is.

    A number alone takes the runner's usual unit; without one it is minutes if it is more than
    anybody plans in kilometres (common practice, no source), else it is left to be asked about.
    """
    words, bare = paper_queries.shorthand(store)
    notation = resolve(text, Shorthand(words, bare)).notation
    for piece in reversed(parse_session(notation).unclear):
        if piece.kind == "bare" and _number(piece.text) > PLAUSIBLE["km"][1]:
            notation = f"{notation[: piece.start]}{piece.text.strip()} min{notation[piece.end :]}"
    return notation


def learn_unit(store: Store, before: str, after: str) -> None:
    """Keep the unit that was answered for a number alone, in an open step; asked once only."""
    words, bare = paper_queries.shorthand(store)
    if bare:
        return
    for piece in parse_session(before).unclear:
        if piece.kind != "bare":
            continue
        for reading in piece.readings:
            unit = reading.rpartition(" ")[2]
            told = before[: piece.start] + reading + before[piece.end :]
            if told == after and unit in PLAUSIBLE:
                store.put("setting", paper_queries.shorthand_row(words, unit))
                return


def _number(text: str) -> float:
    try:
        return float(text.strip().replace(",", "."))
    except ValueError:
        return 0.0

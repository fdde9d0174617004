"""One runner's shorthand: words of their own put into plain ones before a session is read."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from types import MappingProxyType

from tercet.engine.notation import WORDS
from tercet.engine.scale import Shade
from tercet.formats.paper.asking import VOCABULARY
from tercet.formats.paper.meaning import Unclear
from tercet.formats.paper.session import Session, comment_at, parse_session
from tercet.language import code

#: These always mean what the notation says.
RESERVED = frozenset(
    (*VOCABULARY, "h", "hr", "hrs", "s", "sec", "m", "k", "mi", "x", "in", "at", "with", "w", "per",
     "half", "hm", "mp", "hmp", "wu", "w/u", "cd", "c/d", "ez", "run", "am", "pm", "of")
)  # fmt: skip
#: A number alone is this runner's usual unit only if it lies between these. [the unit]
PLAUSIBLE = {"min": (10.0, 240.0), "km": (2.0, 42.0), "miles": (1.0, 26.0)}
#: More guesses than this in one session are left as questions.
MOST_GUESSES = 12
#: What stands for a word that says nothing of how hard it was.
NOT_JUDGED = "run"
_SHADE_WORD = re.compile(
    rf"(?<![\w-])(?:{'|'.join(sorted(WORDS, key=len, reverse=True))})(?![\w-])"
)
_WARM = re.compile(r"\s*(?:w/?u|c/?d|warm|cool)", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]+(?:[-/.][^\W\d_]+)*")


@dataclass(frozen=True)
class Shorthand:
    """What this runner's words mean, and the unit of a number alone ("" asks each time)."""

    words: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    bare: str = ""

    def meaning(self, word: str) -> str | None:
        """What a word stands for; single letters count as typed, longer words in any case."""
        if word.casefold() in RESERVED:
            return None
        return self.words.get(key_of(word))

    @property
    def key(self) -> tuple[tuple[tuple[str, str], ...], str]:
        """The same as a value that can be compared and kept."""
        return tuple(sorted(self.words.items())), self.bare


def key_of(word: str) -> str:
    """How a word is kept."""
    return word if len(word) == 1 else word.casefold()


@dataclass(frozen=True)
class Guess:
    """Characters of the typed text that were read as something, not for certain."""

    start: int
    end: int
    text: str
    reading: str
    others: tuple[str, ...] = ()
    kind: str = ""


@dataclass(frozen=True)
class Resolved:
    """A session read with a runner's shorthand; places are those in the typed text.

    ``notation`` is the same text in plain words: reading it alone gives the same pieces.
    """

    session: Session
    notation: str
    guesses: tuple[Guess, ...] = ()
    #: The notation as it is kept while nobody has said whether the guesses are right.
    held: str = ""


#: Characters ``start`` to ``end`` of the typed text and what stands there instead.
Edit = tuple[int, int, str]


def resolve(text: str, shorthand: Shorthand | None = None, *, guess: bool = False) -> Resolved:
    """Read a session with this runner's shorthand.

    Parameters
    ----------
    text : str
        As for :func:`~tercet.formats.paper.session.parse_session`.
    shorthand : Shorthand or None
    guess : bool
        Take the likeliest reading where it is likely enough, and say so.

    Returns
    -------
    Resolved
        Never raises.
    """
    own = shorthand or Shorthand()
    return _resolve(text, own.key, guess, code())


@lru_cache(maxsize=4096)
def _resolve(
    text: str, key: tuple[tuple[tuple[str, str], ...], str], guess: bool, _language: str
) -> Resolved:
    """Kept for each language, since what is asked is asked in it."""
    own = Shorthand(dict(key[0]), key[1])
    edits: list[Edit] = []
    for found in _WORD.finditer(text, 0, comment_at(text)):
        meaning = own.meaning(found[0])
        if meaning is not None:
            before = " " if found.start() and text[found.start() - 1].isalnum() else ""
            edits.append((found.start(), found.end(), f"{before}{meaning}"))
    guesses: list[Guess] = []
    while True:
        edits.sort()
        notation = _edited(text, edits)
        session = parse_session(notation)
        more = []
        for unclear in session.unclear:
            start, end = _typed(unclear.start, edits), _typed(unclear.end, edits, ends=True)
            reading = _reading(unclear, notation, own.bare, guess)
            if reading is None or any(a < end and start < b for a, b, _ in edits):
                continue
            more.append((start, end, reading))
            if unclear.kind != "bare":
                others = tuple(r for r in unclear.readings if r != reading)
                if unclear.kind == "word" and not others:
                    others = ("hard",) if WORDS.get(reading) == Shade.EASY else ("easy",)
                guesses.append(Guess(start, end, text[start:end], reading, others, unclear.kind))
        if not more or len(edits) > MOST_GUESSES:
            break
        edits += more
    places = _moved(session, text, edits)
    guesses.sort(key=lambda item: item.start)
    open_at = {(guess.start, guess.end): guess for guess in guesses}
    waiting = [
        edit if edit[:2] not in open_at else (*edit[:2], _held(open_at[edit[:2]])) for edit in edits
    ]
    return Resolved(places, notation, tuple(guesses), _edited(text, waiting))


def _held(guess: Guess) -> str:
    """What stands in the place of a guess: its time or length, and nothing of how hard it was."""
    if guess.reading.startswith("@"):
        return ""
    held = _SHADE_WORD.sub(NOT_JUDGED, guess.reading)
    return guess.text if held == guess.reading else held


def _reading(unclear: Unclear, notation: str, bare: str, guess: bool) -> str | None:
    """The reading that may be taken without asking."""
    if unclear.kind == "bare" and bare:
        if bare != "min" and _WARM.match(notation, unclear.end):
            return None  # "20 wu" is rarely as far as the runs are long
        low, high = PLAUSIBLE[bare]
        number = float(unclear.text.replace(",", "."))
        fits = [r for r in unclear.readings if r.endswith(f" {bare}")]
        return fits[0] if fits and low <= number <= high else None
    return unclear.readings[0] if guess and unclear.likely and unclear.readings else None


def _edited(text: str, edits: list[Edit]) -> str:
    out, at = [], 0
    for start, end, new in edits:
        out += [text[at:start], new]
        at = end
    return "".join([*out, text[at:]])


def _typed(place: int, edits: list[Edit], *, ends: bool = False) -> int:
    """Where a character of the edited text stands in the typed one."""
    moved = 0
    for start, end, new in edits:
        begin = start + moved
        if place < begin or (place == begin and ends):
            break
        if place < begin + len(new) or (ends and place == begin + len(new)):
            return end if ends else start
        moved += len(new) - (end - start)
    return place - moved


def _moved(session: Session, text: str, edits: list[Edit]) -> Session:
    if not edits:
        return session
    pieces = tuple(
        replace(p, start=_typed(p.start, edits), end=_typed(p.end, edits, ends=True))
        for p in session.pieces
    )
    unclear = []
    for item in session.unclear:
        start, end = _typed(item.start, edits), _typed(item.end, edits, ends=True)
        unclear.append(replace(item, start=start, end=end, text=text[start:end]))
    return replace(session, pieces=pieces, unclear=tuple(unclear))

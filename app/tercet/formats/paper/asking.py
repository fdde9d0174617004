"""What is asked about a piece that no rule of the notation reads, with its likeliest readings."""

from __future__ import annotations

import difflib
import re

from tercet.engine.notation import WORDS
from tercet.formats.paper.meaning import Doubt, either
from tercet.language import mark, tr

#: Words that the notation knows, as they would be offered.
VOCABULARY = (*WORDS, "min", "km", "miles", "pace", "half marathon", "marathon")
#: What a single letter may stand for, the likeliest first (common practice, no source).
LETTERS = {
    "e": ("easy",), "f": ("fast",), "h": ("hard",), "j": ("jog",),
    "r": ("recovery", "rest", "race"), "s": ("steady", "strides", "sprint"),
    "t": ("threshold", "tempo"), "w": ("walk", "warm-up"), "c": ("cool-down",),
    "wm": ("warm-up",), "st": ("steady", "strides"), "th": ("threshold",), "lt": ("threshold",),
    "mod": ("moderate",), "rec": ("recovery",), "xc": ("race", "easy", "hard"),
}  # fmt: skip
#: Offered for a word that looks like none known: one for each shade.
SHADES = ("easy", "steady", "hard")
#: How alike a word must be to be taken for a known one, and to be offered.
ALIKE, OFFERED = 0.75, 0.6
HOW = mark("How should this be read?")
_WORD = re.compile(r"[^\W\d_]+(?:[-/][^\W\d_]+)*|\d+(?:[.,:]\d+)*|\S")
_LETTERS = re.compile(r"[^\W\d_]+(?:[-/.][^\W\d_]+)*")
_ORDINAL = re.compile(r"(?<!\d)\d{1,4}(?:st|nd|rd|th)(?![a-z])", re.IGNORECASE)
_TIMES = r"(?:x|×|\*)"
_EITHER = re.compile(rf"(?P<two>(?P<a>\d+)\s*(?:/|-|–|or)\s*(?P<b>\d+)\s*{_TIMES})", re.IGNORECASE)
_NESTED = re.compile(
    rf"(?P<sets>\d+)\s*(?:{_TIMES}|sets?\s+of)\s*(?P<inner>\d+\s*{_TIMES}[^()]+)", re.IGNORECASE
)
_ON_OFF = re.compile(
    rf"(?P<count>\d+)\s*{_TIMES}\s*(?P<on>\d+(?:[.:]\d+)?)\s*(?P<unit>[a-z'\"]*)\s*on[\s,/]*"
    r"(?P<off>\d+(?:[.:]\d+)?)\s*(?P<unit2>[a-z'\"]*)\s*off",
    re.IGNORECASE,
)
_RANGE = re.compile(
    r"(?:@\s*|(?<![a-z])at\s+)?(?P<a>\d{1,2}:[0-5]\d)\s*(?:-|–|to)\s*(?P<b>\d{1,2}:[0-5]\d)"
    r"\s*(?P<unit>(?:min)?\s*(?:/|per\s)\s*(?:km|k|miles?|mi))(?![a-z])",
    re.IGNORECASE,
)


def is_note(words: str) -> bool:
    """Whether words say nothing of how long or how hard: no figure, no word known or like one."""
    if re.search(r"\d", _ORDINAL.sub("", words)):
        return False
    return not any(
        word.casefold() in LETTERS or _near(word.casefold(), ALIKE)
        for word in _LETTERS.findall(words)
    )


def not_read(text: str, at: int, first: int, last: int) -> Doubt:
    """Ask about a piece at which reading stopped at character ``at``.

    A doubt of the kind "note" is no question: its words say nothing of the running.
    """
    words = text[first:last]
    if is_note(words):
        return Doubt(first, last, "", kind="note")
    for found in (_either(words), _nested(words), _on_off(words), _range(words)):
        if found is not None:
            return found.moved(first)
    # Reading may stop inside a word: "strides" is known, "stridesy" is not.
    found_word = _WORD.match(text, at, last)
    while found_word is not None and at > first and text[at - 1].isalpha() and text[at].isalpha():
        at -= 1
        found_word = _WORD.match(text, at, last)
    if found_word is None or not found_word[0][0].isalpha():
        return Doubt(first, last, tr(HOW))
    word = found_word[0].casefold()
    if word in VOCABULARY:
        return Doubt(first, last, tr(HOW))
    return _unknown(word, at, found_word.end())


def _unknown(word: str, start: int, end: int) -> Doubt:
    if word in LETTERS:
        return Doubt(start, end, either(LETTERS[word]), LETTERS[word], kind="word")
    near = _near(word, OFFERED)
    if near:
        likely = bool(_near(word, ALIKE))
        return Doubt(start, end, either(near), near, kind="word", likely=likely)
    return Doubt(start, end, tr("What does it mean? How hard was it?"), SHADES, kind="word")


def _near(word: str, alike: float) -> tuple[str, ...]:
    if word in VOCABULARY:
        return (word,)
    if len(word) < 3:
        return ()
    # Without its vowels a word is often written short: "stdy", "tmpo", "strds".
    short = [known for known in WORDS if re.sub("(?<!^)[aeiou-]", "", known) == word]
    return (
        *short,
        *(w for w in difflib.get_close_matches(word, VOCABULARY, 2, alike) if w not in short),
    )[:2]


def _either(words: str) -> Doubt | None:
    found = _EITHER.match(words)
    if found is None:
        return None
    a, b = found["a"], found["b"]
    return Doubt(
        *found.span("two"), tr("{one} or {other} times?", one=a, other=b), (f"{a} x", f"{b} x")
    )


def _nested(words: str) -> Doubt | None:
    found = _NESTED.fullmatch(words)
    if found is None:
        return None
    sets, inner = found["sets"], found["inner"].strip()
    return Doubt(
        0,
        len(words),
        tr("{n} sets of {inner}?", n=sets, inner=inner),
        (f"{sets} x ({inner})",),
        likely=True,
    )


def _on_off(words: str) -> Doubt | None:
    found = _ON_OFF.search(words)
    if found is None:
        return None
    unit = found["unit"] or found["unit2"] or "min"
    on, off = f"{found['on']} {unit}", f"{found['off']} {found['unit2'] or unit}"
    readings = tuple(f"{found['count']} x {on} {how} / {off} jog" for how in ("hard", "steady"))
    return Doubt(*found.span(), tr('How hard was "on"?'), readings, likely=True)


def _range(words: str) -> Doubt | None:
    found = _RANGE.search(words)
    if found is None:
        return None
    ends = [int(m) * 60 + int(s) for m, s in (found[name].split(":") for name in "ab")]
    middle = (sum(ends) + 1) // 2
    unit = found["unit"] if found["unit"].startswith("/") else f" {found['unit']}"
    readings = tuple(f"@ {t // 60}:{t % 60:02d}{unit}" for t in (middle, *ends))
    start, end = found.span()
    return Doubt(start, end, tr("Which pace?"), readings, likely=True)

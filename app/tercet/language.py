"""The words a user reads, in the language chosen: one catalogue for screens, reviews and workers.

Sources are English sentences with ``{named}`` places. Catalogues are Qt Linguist's ``.ts`` files
in ``resources/language``; they are read here without Qt, because the library and its worker
processes word reasons and reviews too.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from tercet import resources

#: The language the sources are written in.
SOURCE = "en"

_words: Mapping[tuple[str, str], str] = {}
_code = SOURCE


def mark(source: str) -> str:
    """Name a text to be translated where it is used; gives it back as it is."""
    return source


_MONTHS = (
    mark("January"),
    mark("February"),
    mark("March"),
    mark("April"),
    mark("May"),
    mark("June"),
    mark("July"),
    mark("August"),
    mark("September"),
    mark("October"),
    mark("November"),
    mark("December"),
)
_SHORT_MONTHS = (
    mark("Jan"),
    mark("Feb"),
    mark("Mar"),
    mark("Apr"),
    mark("May"),
    mark("Jun"),
    mark("Jul"),
    mark("Aug"),
    mark("Sep"),
    mark("Oct"),
    mark("Nov"),
    mark("Dec"),
)
_DAYS = (
    mark("Monday"),
    mark("Tuesday"),
    mark("Wednesday"),
    mark("Thursday"),
    mark("Friday"),
    mark("Saturday"),
    mark("Sunday"),
)
_SHORT_DAYS = (
    mark("Mon"),
    mark("Tue"),
    mark("Wed"),
    mark("Thu"),
    mark("Fri"),
    mark("Sat"),
    mark("Sun"),
)


def tr(source: str, note: str = "", /, **values: object) -> str:
    """Word a text in the language in use.

    Parameters
    ----------
    source
        A whole English sentence or label, with ``{named}`` places.
    note
        Tells apart equal English texts that other languages word differently.
    values
        What the named places are filled with, already written as text or whole numbers.

    Raises
    ------
    KeyError
        If a named place is left without a value.
    """
    text = _words.get((source, note), source) if _words else source
    return text.format(**values) if values else text


def in_every_language(source: str) -> tuple[str, ...]:
    """A text without a note as each language words it, to know again what was kept in one."""
    return source, *(
        _catalogue(name).get((source, ""), source) for name in languages() if name != SOURCE
    )


def several(count: int, one: str, many: str, /, **values: object) -> str:
    """Word a number of things: ``one`` for exactly 1, else ``many``; both know ``{n}``."""
    return tr(one if count == 1 else many, n=count, **values)


def number(value: float, decimals: int = 0) -> str:
    """Write a number with the language's decimal sign and no grouping."""
    return f"{value:.{decimals}f}".replace(".", tr(".", "decimal sign"))


def grouped(value: float) -> str:
    """Write a count with the language's sign between thousands."""
    return f"{value:,.0f}".replace(",", tr(",", "thousands sign"))


def month(index: int) -> str:
    """Whole name of a month, 1 to 12."""
    return tr(_MONTHS[index - 1])


def short_month(index: int) -> str:
    """Short name of a month, 1 to 12."""
    return tr(_SHORT_MONTHS[index - 1])


def weekday(index: int) -> str:
    """Whole name of a weekday, 0 is Monday."""
    return tr(_DAYS[index])


def short_weekday(index: int) -> str:
    """Short name of a weekday, 0 is Monday."""
    return tr(_SHORT_DAYS[index])


def code() -> str:
    """The language in use, as ``de``."""
    return _code


def use(chosen: str) -> None:
    """Word everything in a language from here on; an unknown one is the source's."""
    global _words, _code
    _code = chosen if chosen in languages() else SOURCE
    _words = {} if _code == SOURCE else _catalogue(_code)


@cache
def languages() -> Mapping[str, str]:
    """Codes of the languages there are, with the name each has for itself."""
    own = {"de": "Deutsch", "fr": "Français", "es": "Español", "it": "Italiano"}
    found = sorted(
        path.stem.removeprefix("tercet_")
        for path in (resources.root() / "language").glob("tercet_*.ts")
    )
    return {SOURCE: "English", **{name: own.get(name, name) for name in found}}


@cache
def _catalogue(chosen: str) -> Mapping[tuple[str, str], str]:
    """Source and note to translation; an unfinished one is left out."""
    from xml.etree import ElementTree  # English needs none

    tree = ElementTree.parse(resources.root() / "language" / f"tercet_{chosen}.ts")
    found: dict[tuple[str, str], str] = {}
    for message in tree.iter("message"):
        translation = message.find("translation")
        if translation is not None and translation.text and not translation.get("type"):
            key = (message.findtext("source") or "", message.findtext("comment") or "")
            found[key] = translation.text
    return found

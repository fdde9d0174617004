"""Finding runs by date, words, kind, shade, length, pace and effort: one small set of trade words.

All parts of a search must hold: ``race 2026``, ``hard > 10 min``, ``june "left calf"``. Spaces
part them; words between quotation marks stay together.
"""

from __future__ import annotations

import operator
import re
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from datetime import date

from tercet import language
from tercet.language import tr
from tercet.library.views import SessionView

Test = Callable[[SessionView], bool]

MONTHS = (
    *("january", "february", "march", "april", "may", "june"),
    *("july", "august", "september", "october", "november", "december"),
)
WEEKDAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
#: What a run may be, beside its shades.
KINDS = ("race", "treadmill", "trail", "track")
SHADES = ("easy", "moderate", "hard")
COMPARE: dict[str, Callable[[float, float], bool]] = {
    ">": operator.gt, ">=": operator.ge, "<": operator.lt, "<=": operator.le, "=": operator.eq,
}  # fmt: skip
_PARTS = re.compile(
    r"""(?P<name>[^\W\d_]+)\s*(?P<sign>>=|<=|>|<|=)\s*(?P<value>\d*[.,]\d+|\d+(?::\d{2}){0,2})
        \s*(?P<unit>%|min\b|minutes\b|h\b|hours\b|s\b|km\b|miles\b|m\b|/km\b|/mile\b)?
    |"(?P<phrase>[^"]*)"?|(?P<word>[^\s"]+)""",
    re.VERBOSE | re.IGNORECASE,
)
_ISO = re.compile(r"(\d{4})-(\d{1,2})(?:-(\d{1,2}))?$")
_DAY = re.compile(r"(\d{1,2})\.(\d{1,2})\.(\d{4})?$")
KM, MILE = 1000.0, 1609.344


class SearchError(ValueError):
    """What is not understood, in words."""


@dataclass(frozen=True)
class Search:
    """A search that was understood."""

    tests: tuple[Test, ...]

    def __call__(self, session: SessionView) -> bool:
        """Whether a session is among what is looked for."""
        return all(test(session) for test in self.tests)


def parse(text: str, races: Collection[date] = ()) -> Search:
    """Read a search; running on the days of ``races`` is found as a race.

    Raises
    ------
    SearchError
        If a comparison names nothing that can be compared, or its value is of another kind.
    """
    own, tests = own_words(), []
    for found in _PARTS.finditer(text):
        if found["name"]:
            tests.append(_comparison(found, own))
        elif found["phrase"] is not None:
            tests.append(_words(found["phrase"]))
        else:
            tests.append(_word(found["word"], own, races))
    return Search(tuple(tests))


def own_words() -> dict[str, str]:
    """What the language in use calls the words of a search; those of the source hold in each."""
    told = {
        "easy": tr("easy"),
        "moderate": tr("moderate"),
        "hard": tr("hard"),
        "time": tr("time"),
        "distance": tr("distance"),
        "pace": tr("pace"),
        "effort": tr("effort", "word of a search"),
        "climb": tr("climb"),
        "race": tr("race"),
        "treadmill": tr("treadmill"),
        "trail": tr("trail"),
        "track": tr("track"),
        "repetitions": tr("repetitions", "word of a search"),
    }
    return {word.lower(): name for name, word in told.items()}


def _comparison(found: re.Match[str], own: Mapping[str, str]) -> Test:
    said, value, unit = found["name"].lower(), found["value"], (found["unit"] or "").lower()
    name = own.get(said, said)
    holds = COMPARE[found["sign"]]
    if name in SHADES:
        place = SHADES.index(name)
        if unit == "%":
            share = _number(value) / 100.0
            return lambda s: _ran(s) > 0 and holds(s.seconds[place] / _ran(s), share)
        seconds = _seconds(value, unit or "min")
        return lambda s: s.sport == "running" and holds(s.seconds[place], seconds)
    if name == "time":
        seconds = _seconds(value, unit or ("h" if ":" in value else "min"))
        return lambda s: holds(s.running_s if s.sport == "running" else s.moving_s, seconds)
    if name == "distance":
        metres = _number(value) * {"m": 1.0, "miles": MILE}.get(unit, KM)
        return lambda s: holds(s.distance_m, metres)
    if name == "pace":
        pace = _seconds(value, "pace") / (MILE if unit == "/mile" else KM)
        # A pace below another is the faster one, as it is read.
        return lambda s: _ran(s) > 0 and s.distance_m > 0 and holds(_ran(s) / s.distance_m, pace)
    if name in ("effort", "climb"):
        amount = _number(value)
        field = "effort" if name == "effort" else "climb_m"
        return lambda s: getattr(s, field) is not None and holds(getattr(s, field), amount)
    raise SearchError(
        tr(
            '"{name}" cannot be compared; easy, moderate, hard, time, distance, pace, '
            "effort and climb can: hard > 10 min",
            name=said,
        )
    )


def _word(text: str, own: Mapping[str, str], races: Collection[date]) -> Test:
    word = text.lower()
    name = own.get(word, word)
    if name == "race":
        return lambda s: s.kind == name or (_ran(s) and s.day in races) or _holds(s, word)
    if name in KINDS:
        return lambda s: s.kind == name or _holds(s, word)
    if name == "repetitions":
        return lambda s: bool(s.repetitions)
    if name in SHADES:
        place = SHADES.index(name)
        return lambda s: (
            (s.sport == "running" and s.seconds[place] == max(s.seconds[:3]) > 0) or _holds(s, word)
        )
    day = _date(word)
    if day is not None:
        return day
    return _words(word)


def _date(word: str) -> Test | None:
    """A year, a month, a weekday or a day; None if the word is none of them."""
    if re.fullmatch(r"(19|20)\d\d", word):
        return lambda s: s.day.year == int(word)
    if len(word) >= 3:
        for number, month in enumerate(MONTHS, 1):
            if month.startswith(word) or language.month(number).lower().startswith(word):
                return lambda s: s.day.month == number or _holds(s, word)
        for number, weekday in enumerate(WEEKDAYS):
            if weekday.startswith(word) or language.weekday(number).lower().startswith(word):
                return lambda s: s.day.weekday() == number or _holds(s, word)
    iso, day = _ISO.match(word), _DAY.match(word)
    if iso:
        wanted = tuple(int(part) for part in iso.groups() if part)
        return lambda s: _ymd(s.day)[: len(wanted)] == wanted
    if day:
        year = int(day[3]) if day[3] else None
        on = (int(day[2]), int(day[1]))
        return lambda s: (s.day.month, s.day.day) == on and year in (None, s.day.year)
    return None


def _words(text: str) -> Test:
    wanted = text.lower()
    return lambda s: _holds(s, wanted)


def _holds(session: SessionView, wanted: str) -> bool:
    held = (session.name, session.note, session.repetitions, session.kind, session.sport)
    return any(wanted in part.lower() for part in held if part)


def _ymd(day: date) -> tuple[int, int, int]:
    return day.year, day.month, day.day


def _ran(session: SessionView) -> float:
    """Judged running time [s]."""
    return sum(session.seconds[:3]) if session.sport == "running" else 0.0


def _number(text: str) -> float:
    if ":" in text:
        raise SearchError(tr("{text} is a time; a number is wanted here", text=text))
    return float(text.replace(",", "."))


def _seconds(text: str, unit: str) -> float:
    """A time: ``10`` in its unit, ``1:30`` as hours and minutes, or minutes of a pace."""
    if ":" in text:
        parts = [int(part) for part in text.split(":")]
        if len(parts) == 3:
            return parts[0] * 3600.0 + parts[1] * 60.0 + parts[2]
        return parts[0] * 60.0 + parts[1] if unit == "pace" else parts[0] * 3600.0 + parts[1] * 60.0
    factor = {"h": 3600.0, "hours": 3600.0, "s": 1.0}.get(unit, 60.0)
    return _number(text) * factor

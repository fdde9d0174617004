"""From the parse tree of one piece to what it says; what can be read two ways is asked about."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, TypeAlias

from tercet.engine.notation import WORDS, Bout, Piece
from tercet.language import mark, tr

#: A tree or a token of the parser library.
Node: TypeAlias = Any
MILE = 1609.344
_METRES = {"METRES": 1.0, "KM": 1000.0, "MILES": MILE}
#: Lengths of the marathon and its half. [m]
_NAMED = {"HALF": 21_097.5, "MARATHON": 42_195.0}
#: A number alone is metres if it is one that tracks are marked for. [m]
TRACK = frozenset(
    (60, 80, 100, 120, 150, 200, 250, 300, 350, 400, 500, 600, 800, 1000, 1200, 1500, 1600, 2000,
     2400, 3000, 5000, 10000)
)  # fmt: skip
#: "15 m" may be minutes: metres below this are asked about. [m]
LEAST_METRES = 30.0
#: People run between these, sprints and longer stretches. [m/s]
SLOWEST, FASTEST, FASTEST_FAR, FAR_M = 1.0, 12.0, 7.9, 600.0
#: "@ 3:30" without a unit is not asked about where it would be faster than this. [m/s]
FASTEST_PACE = 7.0
MAX_COUNT = 200
#: A set may hold sets to this depth, and all of it no more repetitions than this.
DEEPEST, MAX_REPETITIONS = 3, 500
#: A clock without a unit means minutes and seconds if it would be more hours than this.
MOST_HOURS = 9
#: Races whose pace may be asked for. [m]
RACES = (400.0, 200_000.0)


@dataclass(frozen=True)
class Unclear:
    """Characters ``start`` to ``end`` of a text that could not be read for certain.

    Each of ``readings``, the likeliest first, can be put in the place of these characters.
    ``kind`` is "word" for a word that may be this runner's own, "bare" for a number without a
    unit, else "". ``likely`` says that the first reading is good enough to be shown as a guess.
    """

    start: int
    end: int
    text: str
    question: str
    readings: tuple[str, ...] = ()
    kind: str = ""
    likely: bool = False


class Doubt(Exception):
    """A piece cannot be read for certain."""

    def __init__(
        self,
        start: int,
        end: int,
        question: str,
        readings: Sequence[str] = (),
        *,
        kind: str = "",
        likely: bool = False,
    ) -> None:
        super().__init__(question)
        self.start, self.end = start, end
        self.question, self.readings = question, tuple(readings)
        self.kind, self.likely = kind, likely

    def moved(self, by: int) -> Doubt:
        """The same, further on in a longer text."""
        return self.over(self.start + by, self.end + by)

    def over(self, start: int, end: int) -> Doubt:
        """The same about other characters."""
        return Doubt(start, end, self.question, self.readings, kind=self.kind, likely=self.likely)

    def in_text(self, text: str) -> Unclear:
        """The same with the words it is about."""
        words = text[self.start : self.end]
        return Unclear(
            self.start, self.end, words, self.question, self.readings, self.kind, self.likely
        )


@dataclass
class _Said:
    """What the parts of one bout said, each with its node for asking back."""

    times: list[tuple[Node, float]] = field(default_factory=list)
    lengths: list[tuple[Node, float]] = field(default_factory=list)
    speeds: list[tuple[Node, float]] = field(default_factory=list)
    races: list[tuple[Node, float]] = field(default_factory=list)
    words: list[tuple[Node, str]] = field(default_factory=list)
    #: Clocks without a unit wait until the distance is known; the text is where they stood.
    clocks: list[tuple[Node, str]] = field(default_factory=list)


def meaning_of(tree: Node, depth: int = 0) -> Piece:
    """Turn the tree of one piece into the piece.

    Raises
    ------
    Doubt
        With places in the text that was parsed.
    """
    parts = {part.data: part for part in tree.children}
    count, several = 1, "repeats" in parts
    if several:
        number = _number(parts["repeats"].children[0])
        if not number.is_integer() or not 1 <= number <= MAX_COUNT:
            raise _doubt(
                parts["repeats"], tr("Repetitions are whole numbers up to {most}.", most=MAX_COUNT)
            )
        count = int(number)
    recovery = None
    if "set" in parts:
        if depth >= DEEPEST:
            raise _doubt(tree, tr("Sets within sets within sets: how should this be read?"))
        inner = tuple(meaning_of(part, depth + 1) for part in parts["set"].children)
        work = Bout()
    else:
        inner = ()
        bout = parts["bout"]
        short = several or depth > 0
        bare_is_metres = short or any(_name(part) == "inside" for part in bout.children)
        work = _bout(bout, short=short, bare_is_metres=bare_is_metres)
    if "recovery" in parts:
        rest = parts["recovery"].children[0]
        recovery = _bout(rest, short=True, bare_is_metres=True, recovering=True)
    piece = Piece(work, count, recovery, inner)
    if sum(times for times, _ in piece.bouts()) > MAX_REPETITIONS:
        raise _doubt(tree, tr("More than {most} repetitions: is that right?", most=MAX_REPETITIONS))
    return piece


def _bout(tree: Node, *, short: bool, bare_is_metres: bool, recovering: bool = False) -> Bout:
    said = _Said()
    for part in tree.children:
        _hear(part, said, bare_is_metres)
    metres = _only(said.lengths, tr("Two distances: which one?"))
    for part, place in said.clocks:
        _hear_clock(part, place, said, metres, short)
    seconds = _only(said.times, tr("Two times: which one?"))
    speed = _only(said.speeds, tr("Two paces: which one?"))
    race = _only(said.races, tr("Two paces: which one?"))
    word = _word(said)
    if recovering and word == "recovery":
        word = ""  # the name of the thing, not how it was spent
    if seconds is None and metres is None:
        raise _doubt(tree, tr("How long?"), _lengths_for(word, short and not recovering))
    if (speed is not None) + (race is not None) + (None not in (seconds, metres)) > 1:
        raise _doubt(tree, tr("Two paces: which one?"))
    for pace in (speed, metres / seconds if metres and seconds else None):
        if pace is not None and word not in ("rest", "walk") and not _runs(pace, metres):
            raise _doubt(tree, tr("Nobody runs at that pace: what was meant?"))
    return Bout(seconds, metres, word, speed, race)


def _hear(part: Node, said: _Said, bare_is_metres: bool) -> None:
    """Add what one part says."""
    name = _name(part)
    children = getattr(part, "children", [])
    if name == "word":
        kind = children[0].type
        word = {"RUN_RACE": "race"}.get(kind, kind.lower().replace("_", "-"))
        said.words.append((part, word))
    elif name in ("distance", "bare", *_NAMED):
        said.lengths.append((part, _metres(part, bare_is_metres)))
    elif name == "inside":
        inner = children[0]
        if _name(inner) == "clock":
            said.clocks.append((inner, "in"))
        elif _name(inner) == "bare":
            said.clocks.append((inner, "bare"))
        else:
            said.times.append((inner, _seconds(inner)))
    elif name == "per_repetition":
        inner = children[0]
        if _name(inner) == "clock":
            said.clocks.append((inner, "@"))
        else:
            said.times.append((inner, _seconds(inner)))
    elif name == "clock":
        said.clocks.append((part, ""))
    elif name in ("pace_km", "pace_mile"):
        minutes, seconds = re.findall(r"\d+", children[0])[:2]
        said.speeds.append((part, _speed(part, int(minutes) * 60 + int(seconds), name)))
    elif name == "kmh":
        said.speeds.append((part, _number(children[0]) / 3.6))
    elif name in ("race_pace", "named_race"):
        said.races.append((part, _race(part)))
    elif name == "no_race":
        readings = ("@ 5 km pace", "@ 10 km pace", "@ half marathon pace")
        raise _doubt(part, tr("Pace of which race?"), readings)
    else:
        said.times.append((part, _seconds(part)))


def _hear_clock(part: Node, place: str, said: _Said, metres: float | None, short: bool) -> None:
    """Say what "1:30" is: by what it would make of the distance, else by where it stands."""
    text = str(part.children[0])
    if place == "bare":
        said.times.append((part, _seconds_alone(part, metres)))
        return
    figures = [int(figure) for figure in text.split(":")]
    if len(figures) == 3:
        seconds = figures[0] * 3600 + figures[1] * 60 + figures[2]
        if metres is None and not said.words:
            raise _doubt(part, tr("A time of day, or how long it took?"), (f"{text} h easy",))
        said.times.append((part, float(seconds)))
        return
    minutes, hours = figures[0] * 60 + figures[1], figures[0] * 3600 + figures[1] * 60
    if place == "@":
        paces = {
            f"@ {text}/{unit}": _speed(part, minutes, name)
            for unit, name in (("km", "pace_km"), ("mile", "pace_mile"))
        }
        told = {key: pace for key, pace in paces.items() if SLOWEST <= pace <= FASTEST_PACE}
        if metres is None:
            raise _doubt(part, tr("For a kilometre or a mile?"), tuple(told))
        alone = metres / minutes
        if _runs(alone, metres):
            told = {f"in {text}": alone, **told}
            if max(told.values()) < 1.01 * min(told.values()):
                said.times.append((part, float(minutes)))
                return
        raise _doubt(part, tr("For the repetition, the kilometre or the mile?"), tuple(told))
    if metres is not None:
        fits = [value for value in (minutes, hours) if value and _runs(metres / value, metres)]
        if len(fits) != 1:
            raise _doubt(part, tr("Does that time fit the distance?"))
        said.times.append((part, float(fits[0])))
    elif short or figures[0] > MOST_HOURS:
        said.times.append((part, float(minutes)))
    else:
        raise _doubt(part, tr("Hours or minutes?"), (f"{text} h", f"{text} min"))


def _seconds_alone(part: Node, metres: float | None) -> float:
    """What a number without a unit after "in" is: the only unit in which somebody runs that."""
    number = _number(part.children[0])
    figure = f"{number:g}"
    told = {
        f"{figure} {unit}": number * factor
        for unit, factor in (("s", 1.0), ("min", 60.0))
        if metres is not None and number > 0 and _runs(metres / (number * factor), metres)
    }
    if len(told) != 1:
        raise _doubt(part, tr("{figure} what: s or min?", figure=figure), tuple(told))
    return next(iter(told.values()))


def _runs(speed: float, metres: float | None) -> bool:
    fastest = FASTEST_FAR if metres is not None and metres >= FAR_M else FASTEST
    return SLOWEST <= speed <= fastest


def _speed(part: Node, seconds: float, name: str) -> float:
    if seconds <= 0:
        raise _doubt(part, tr("Nobody runs at that pace: what was meant?"))
    return (1000.0 if name == "pace_km" else MILE) / seconds


def _word(said: _Said) -> str:
    shades = {WORDS[word] for _, word in said.words}
    names = [word for _, word in said.words]
    if len(shades) > 1:
        (start, end), (again, last) = _place(said.words[0][0]), _place(said.words[-1][0])
        readings = tuple(names) if len(names) == 2 and again - end <= 1 else ()
        raise Doubt(start, last, either(list(dict.fromkeys(names))), readings)
    return "race" if "race" in names else names[0] if names else ""


def either(readings: Sequence[str]) -> str:
    """Ask which of some words of the notation was meant."""
    return tr(" or ", "between words of the notation").join(readings) + "?"


def _lengths_for(word: str, several: bool) -> tuple[str, ...]:
    if several and word:
        return (f"100 m {word}", f"20 s {word}")
    return (f"10 min {word}", f"2 km {word}") if word else ()


def _metres(part: Node, bare_is_metres: bool) -> float:
    name = _name(part)
    if name in _NAMED:
        return _NAMED[name]
    children = part.children
    number = _number(children[0])
    figure = f"{number:g}"
    if name == "bare":
        if bare_is_metres and number in TRACK:
            return number
        units, asked = (
            (("min", "s", "m"), mark("{figure} what: min, s or m?"))
            if bare_is_metres
            else (("min", "km", "miles"), mark("{figure} what: min, km or miles?"))
        )
        readings = tuple(f"{figure} {unit}" for unit in units)
        raise Doubt(
            *_place(part), tr(asked, figure=figure), readings,
            kind="bare",
        )  # fmt: skip
    if str(children[1]).casefold() == "m" and number < LEAST_METRES:
        raise _doubt(part, tr("Minutes or metres?"), (f"{figure} min", f"{figure} metres"))
    return _positive(part, number * _METRES[children[1].type])


def _race(part: Node) -> float:
    inner = part.children[0]
    short = {"MILES": MILE, "HALF_PACE": _NAMED["HALF"], "MARATHON_PACE": _NAMED["MARATHON"]}
    metres = short.get(_name(inner), 0.0)
    if _name(inner) == "bare":
        number = _number(inner.children[0])
        if number not in TRACK or number < RACES[0]:
            figure = f"{number:g}"
            readings = (f"in {figure} s", f"@ {figure} km pace")
            raise Doubt(*_place(part), tr("{figure} what?", figure=figure), readings, likely=True)
        metres = number
    metres = metres or _metres(inner, True)
    if not RACES[0] <= metres <= RACES[1]:
        raise _doubt(part, tr("Is there a race of that length?"))
    return metres


def _seconds(part: Node) -> float:
    """Seconds of a time with a unit."""
    name, children = _name(part), part.children
    if name in ("clock_hours", "clock_minutes"):
        figures = [int(figure) for figure in str(children[0]).split(":")]
        first = 3600 if name == "clock_hours" or len(figures) == 3 else 60
        value = sum(figure * first / 60**k for k, figure in enumerate(figures))
    elif name == "minutes_seconds":
        minutes, seconds = re.findall(r"\d+", str(children[0]))
        value = int(minutes) * 60.0 + int(seconds)
    else:
        unit = {"hours": 3600.0, "minutes": 60.0, "seconds": 1.0}[name]
        value = sum(_number(child) * unit / 60**k for k, child in enumerate(children))
    return _positive(part, value)


def _positive(part: Node, value: float) -> float:
    if not value > 0:
        raise _doubt(part, tr("Nothing at all?"))
    return value


def _number(token: Node) -> float:
    return float(str(token).replace(",", "."))


def _only(found: Sequence[tuple[Node, float]], question: str) -> float | None:
    if len(found) > 1:
        raise _doubt(found[1][0], question)
    return found[0][1] if found else None


def _name(part: Node) -> str:
    """The rule of a tree, the terminal of a token."""
    return str(getattr(part, "data", None) or getattr(part, "type", ""))


def _place(part: Node) -> tuple[int, int]:
    found: Node = getattr(part, "meta", part)
    return int(found.start_pos), int(found.end_pos)


def _doubt(part: Node, question: str, readings: Sequence[str] = ()) -> Doubt:
    return Doubt(*_place(part), question, readings)

"""What a table's columns hold: told by their headings, or named by the runner and remembered."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import asdict, dataclass

from tercet.formats.table.sheet import Sheet

#: Roles of a table of runs and of a run's samples, with the units each may have.
UNITS: dict[str, tuple[str, ...]] = {
    "day": ("", "day first", "month first", "year first"),
    "clock": ("",),
    "moment": ("", "day first", "month first", "year first"),
    "duration": ("", "h:mm:ss", "m:ss", "h:mm", "min", "s", "h", "days"),
    "distance": ("", "km", "mi", "m"),
    "heart rate": ("",),
    "highest heart rate": ("",),
    "climb": ("m", "ft"),
    "effort": ("",),
    "sport": ("",),
    "kind": ("",),
    "name": ("",),
    "note": ("",),
    "elapsed": ("", "s", "min", "ms"),
    "speed": ("", "km/h", "m/s", "mi/h"),
    "pace": ("", "min/km", "min/mi"),
    "latitude": ("",),
    "longitude": ("",),
    "altitude": ("m", "ft"),
    "cadence": ("",),
    "power": ("",),
    "temperature": ("",),
}
#: Words of headings, as spreadsheets and devices name them (common practice, no source).
_WORDS: tuple[tuple[str, str], ...] = (
    ("timestamp|date time|datetime|moment|start time local|zeitstempel", "moment"),
    ("lat|latitude|position lat|breite", "latitude"),
    ("lon|lng|long|longitude|position long|laenge|länge", "longitude"),
    ("day|date|datum|tag|fecha|giorno|jour", "day"),
    ("time of day|start|start time|begin|began|clock|uhrzeit|startzeit|hora", "clock"),
    ("duration|moving time|elapsed time|total time|run time|dauer|zeit|dur[eé]e|temps|tiempo"
     "|duraci[oó]n|mins?|minutes", "duration"),
    ("distance|dist|distanz|strecke|distancia|kilometers?|kilometres?|miles?|km|mi", "distance"),
    ("max heart rate|max hr|hr max|maximum heart rate|highest heart rate", "highest heart rate"),
    ("heart rate|hr|bpm|pulse|puls|heartrate|avg hr|average heart rate|mean heart rate|mean hr"
     "|avg heart rate|hr mean|fc", "heart rate"),
    ("climb|ascent|elevation gain|h[oö]henmeter|gain", "climb"),
    ("effort|rpe|session rpe|exertion|anstrengung", "effort"),
    ("sport|activity type|activity|sportart", "sport"),
    ("kind|type|run type|workout type|session|workout|art", "kind"),
    ("name|title|titel|route", "name"),
    ("note|notes|comment|comments|remark|remarks|bemerkung|notiz|description", "note"),
    ("elapsed|seconds|secs?|elapsed seconds|sample", "elapsed"),
    ("speed|velocity|geschwindigkeit|enhanced speed", "speed"),
    ("pace|tempo", "pace"),
    ("altitude|elevation|ele|alt|enhanced altitude|h[oö]he", "altitude"),
    ("cadence|cad|steps per minute|spm|run cadence", "cadence"),
    ("power|watts", "power"),
    ("temperature|temp", "temperature"),
)  # fmt: skip
_UNIT_WORDS: tuple[tuple[str, str], ...] = (
    (r"min(?:utes?)?\s*(?:/|per)\s*km", "min/km"),
    (r"min(?:utes?)?\s*(?:/|per)\s*mi(?:les?)?", "min/mi"),
    (r"km\s*(?:/|per)\s*h(?:our)?|kmh|kph", "km/h"),
    (r"mi(?:les)?\s*(?:/|per)\s*h(?:our)?|mph", "mi/h"),
    (r"m\s*(?:/|per)\s*s(?:ec)?", "m/s"),
    (r"km|kilomet(?:er|re)s?", "km"),
    (r"mi|miles?", "mi"),
    (r"m|met(?:er|re)s?", "m"),
    (r"ft|feet", "ft"),
    (r"ms|milliseconds?", "ms"),
    (r"min|mins|minutes?", "min"),
    (r"s|sec|secs|seconds?", "s"),
    (r"h|hrs?|hours?", "h"),
)
_ROLE = [(re.compile(words), role) for words, role in _WORDS]
_UNIT = [(re.compile(words), unit) for words, unit in _UNIT_WORDS]
_IN_BRACKETS = re.compile(r"[(\[]([^)\]]*)[)\]]")


@dataclass(frozen=True)
class Column:
    """A column of a table: its place from 0, what it holds, and its unit where that matters."""

    index: int
    role: str
    unit: str = ""


@dataclass(frozen=True)
class Naming:
    """What a table holds ("runs" or "samples") and in which columns."""

    holds: str
    columns: tuple[Column, ...]

    def find(self, role: str) -> Column | None:
        """The first column with a role."""
        return next((column for column in self.columns if column.role == role), None)

    def text(self) -> str:
        """As a setting keeps it."""
        return json.dumps({"holds": self.holds, "columns": [asdict(c) for c in self.columns]})

    @staticmethod
    def of_text(text: str) -> Naming:
        """A naming that a setting kept."""
        told = json.loads(text)
        return Naming(told["holds"], tuple(Column(**column) for column in told["columns"]))


def role_of(heading: str) -> tuple[str, str]:
    """What a heading names and its unit; empty where it does not say.

    Parameters
    ----------
    heading : str
        Such as "Distance (km)", "avg_hr", "TimeMin".
    """
    unit = ""
    bracket = _IN_BRACKETS.search(heading)
    if bracket is not None:
        unit = _unit(bracket[1])
        heading = heading[: bracket.start()] + " " + heading[bracket.end() :]
    spaced = re.sub(r"(?<=[a-zäöü])(?=[A-Z])", " ", heading)
    plain = " ".join(re.sub(r"[^0-9a-zA-ZÀ-ÿ/]+", " ", spaced).casefold().split())
    role = _role(plain)
    if role in ("distance", "duration") and not unit:
        unit = _unit(plain)
    if role or " " not in plain:
        return role, unit
    # the last word may be the unit: "distance km", "time min"
    front, _, last = plain.rpartition(" ")
    return _role(front), unit or _unit(last)


def _role(plain: str) -> str:
    if plain in ("time", "elapsed time"):
        return "time"  # a time of day, a length or a clock: its values say which
    return next((role for words, role in _ROLE if words.fullmatch(plain)), "")


def _unit(text: str) -> str:
    plain = text.strip().casefold().strip(".")
    return next((unit for words, unit in _UNIT if words.fullmatch(plain)), "")


def headings(sheet: Sheet) -> list[Column]:
    """The columns whose headings say what they hold; of two alike the one with a unit goes first.

    A plain "time" has the role "time".
    """
    found: dict[str, Column] = {}
    for index, heading in enumerate(sheet.header):
        role, unit = role_of(heading)
        if not role or not any(sheet.column(index)[:200]):
            continue
        if role not in found or (unit and not found[role].unit):
            found[role] = Column(index, role, unit)
    return sorted(found.values(), key=lambda column: column.index)


def described(columns: Sequence[Column]) -> str:
    """In words, for a question."""
    return ", ".join(column.role for column in columns)

"""The season file: a small TOML text with a runner, dated thresholds, blocks and races."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from itertools import pairwise
from typing import Any

from tercet.domain import Block, DatedThresholds, Planned, Race
from tercet.engine import Thresholds, check_thresholds
from tercet.engine.countback import Volume
from tercet.language import mark, tr
from tercet.library.engine_words import worded

#: No more of a season file is read. [bytes]
MAX_BYTES = 1_000_000
#: What a block is called that bears no name, by its kind.
BLOCK_NAMES = {
    "base": mark("Base"),
    "support": mark("Support"),
    "specific": mark("Specific"),
    "taper": mark("Taper"),
    "race week": mark("Race week"),
    "recovery": mark("Recovery"),
}
BLOCK_KINDS = tuple(BLOCK_NAMES)
_PACE = re.compile(r"(\d{1,2}):([0-5]\d(?:\.\d+)?)\s*/?\s*(km|mile|mi)")
_METRES = {"km": 1000.0, "mile": 1609.344, "mi": 1609.344}
_HEART = ("hr_rest", "hr_max", "lt1_hr", "lt2_hr")
_SPEED = ("lt1_speed", "lt2_speed")
_POWER = ("lt1_power", "lt2_power")


class SeasonFileError(ValueError):
    """What is wrong with a season file, in one plain line."""


@dataclass(frozen=True)
class SeasonFile:
    """What a season file holds; absent parts are empty."""

    runner: str = ""
    zone: str = ""
    thresholds: tuple[DatedThresholds, ...] = ()
    blocks: tuple[Block, ...] = ()
    races: tuple[Race, ...] = ()
    planned: tuple[Planned, ...] = ()

    def about(self, first: date, last: date | None = None) -> bool:
        """Whether days touch those from the first to the last that its parts name."""
        days = [entry.start for entry in self.thresholds] + [race.day for race in self.races]
        days += [day for block in self.blocks for day in (block.start, block.end)]
        return bool(days) and first <= max(days) and (last or first) >= min(days)


def speed_of(value: object) -> float:
    """Take a speed as a number [m/s] or a pace such as "5:20/km" or "8:35/mile".

    Raises
    ------
    ValueError
        If it is neither.
    """
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return float(value)
    found = _PACE.fullmatch(str(value).strip())
    if found is None:
        raise ValueError(
            tr(
                '"{value}" is no speed: give m/s such as 3.1, or a pace such as "5:20/km"',
                value=value,
            )
        )
    seconds = int(found[1]) * 60 + float(found[2])
    if seconds <= 0:
        raise ValueError(tr('"{value}" is no pace', value=value))
    return _METRES[found[3]] / seconds


def parse(text: str) -> SeasonFile:
    """Read a season file.

    Raises
    ------
    SeasonFileError
        With the entry and what is wrong with it.
    """
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise SeasonFileError(tr("not readable as TOML: {error}", error=error)) from error
    runner = _part(table, "runner", dict, {})
    result = SeasonFile(
        runner=str(runner.get("name", "")),
        zone=str(runner.get("zone", "")),
        thresholds=tuple(
            _entry("thresholds", k, _thresholds, row)
            for k, row in enumerate(_part(table, "thresholds", list, []), 1)
        ),
        blocks=tuple(
            _entry("blocks", k, _block, row)
            for k, row in enumerate(_part(table, "blocks", list, []), 1)
        ),
        races=tuple(
            _entry("races", k, _race, row)
            for k, row in enumerate(_part(table, "races", list, []), 1)
        ),
        planned=tuple(
            _entry("planned", k, _planned, row)
            for k, row in enumerate(_part(table, "planned", list, []), 1)
        ),
    )
    if not (result.thresholds or result.blocks or result.races or result.planned):
        raise SeasonFileError(
            tr("it holds no [[thresholds]], no [[blocks]], no [[races]] and no [[planned]]")
        )
    ordered = sorted(result.blocks, key=lambda block: block.start)
    for first, second in pairwise(ordered):
        if second.start <= first.end:
            raise SeasonFileError(
                tr(
                    'the blocks "{first}" and "{second}" overlap on {start}',
                    first=first.name,
                    second=second.name,
                    start=second.start,
                )
            )
    return result


def _part(table: Mapping[str, Any], name: str, kind: type, default: Any) -> Any:
    value = table.get(name, default)
    if not isinstance(value, kind):
        want = mark("{name} should be [[...]] entries")
        if kind is not list:
            want = mark("{name} should be a [table]")
        raise SeasonFileError(tr(want, name=name))
    return value


def _entry(name: str, number: int, make: Any, row: object) -> Any:
    try:
        if not isinstance(row, dict):
            raise ValueError(tr("not a table"))
        return make(row)
    except (ValueError, TypeError) as error:
        raise SeasonFileError(
            tr("[[{name}]] entry {number}: {error}", name=name, number=number, error=error)
        ) from error


def _day(row: Mapping[str, Any], name: str) -> date:
    if name not in row:
        raise ValueError(tr("{name} is missing, a date such as 2026-04-13", name=name))
    value = row[name]
    if isinstance(value, datetime):
        return value.date()
    if isinstance(value, date):
        return value
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise ValueError(
            tr('{name} = "{value}" is no date such as 2026-04-13', name=name, value=value)
        ) from None


def _thresholds(row: Mapping[str, Any]) -> DatedThresholds:
    unknown = set(row) - {"from", "source", *_HEART, *_SPEED, *_POWER}
    if unknown:
        raise ValueError(tr("unknown name {name}", name=sorted(unknown)[0]))
    values: dict[str, float] = {}
    for names, said in (
        (_HEART, mark("{name} should be a number in beats/min")),
        (_POWER, mark("{name} should be a number in W")),
    ):
        for name in (name for name in names if name in row):
            if isinstance(row[name], bool) or not isinstance(row[name], (int, float)):
                raise ValueError(tr(said, name=name))
            values[name] = float(row[name])
    for name in _SPEED:
        if name in row:
            values[name] = speed_of(row[name])
    thresholds = Thresholds(**values)
    try:
        check_thresholds(thresholds)
    except ValueError as error:
        raise ValueError(worded(str(error))) from error
    return DatedThresholds(_day(row, "from"), thresholds, str(row.get("source", "season file")))


def _block(row: Mapping[str, Any]) -> Block:
    start, end = _day(row, "start"), _day(row, "end")
    if end < start:
        raise ValueError(tr("it ends on {end}, before it starts on {start}", end=end, start=start))
    kind = str(row.get("kind", "base"))
    if kind not in BLOCK_KINDS:
        raise ValueError(
            tr('kind = "{kind}" is none of {kinds}', kind=kind, kinds=", ".join(BLOCK_KINDS))
        )
    target = row.get("easy_target", 0.9 if kind == "base" else 0.8)
    if isinstance(target, bool) or not isinstance(target, (int, float)) or not 0.5 <= target <= 1:
        raise ValueError(tr("easy_target should lie between 0.5 and 1"))
    moderate = _share(row, "moderate_target")
    if moderate is not None and target + moderate > 1 + 1e-9:
        raise ValueError(tr("easy_target and moderate_target make more than 1"))
    measure = str(row.get("measure", "time"))
    if measure not in ("time", "metres"):
        raise ValueError(tr('measure should be "time" or "metres"'))
    weekly = _amount(row, "weekly", measure)
    growth = _share(row, "growth") or 0.0
    return Block(
        start,
        end,
        str(row.get("name", tr(BLOCK_NAMES[kind]))),
        kind,
        float(target),
        moderate_target=moderate,
        hard_target=None if moderate is None else max(1.0 - target - moderate, 0.0),
        measure=measure,
        volume=None if weekly is None else Volume(weekly, growth),
        longest=_amount(row, "longest", measure),
    )


def _share(row: Mapping[str, Any], name: str) -> float | None:
    value = row.get(name)
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 <= value <= 1:
        raise ValueError(tr("{name} should lie between 0 and 1", name=name))
    return float(value)


def _clock(text: str, name: str, parts: str) -> float:
    """Seconds of "h:mm" or "h:mm:ss"."""
    found = re.fullmatch(r"(\d{1,2}):([0-5]\d)(?::([0-5]\d))?", text.strip())
    if found is None or (found[3] is None) != (parts == "h:mm"):
        raise ValueError(
            tr('{name} = "{text}" is no time such as {parts}', name=name, text=text, parts=parts)
        )
    return int(found[1]) * 3600.0 + int(found[2]) * 60.0 + int(found[3] or 0)


def _amount(row: Mapping[str, Any], name: str, measure: str) -> float | None:
    """A week or a run: "5:30" hours, or with metres a number of kilometres."""
    value = row.get(name)
    if value is None:
        return None
    if measure == "time":
        return _clock(str(value), name, "h:mm")
    if isinstance(value, bool) or not isinstance(value, (int, float)) or value <= 0:
        raise ValueError(tr("{name} should be a positive number of kilometres", name=name))
    return float(value) * 1000.0


def _race(row: Mapping[str, Any]) -> Race:
    distance = row.get("distance_m")
    if distance is not None and (
        isinstance(distance, bool) or not isinstance(distance, (int, float)) or distance <= 0
    ):
        raise ValueError(tr("distance_m should be a positive number of metres"))
    goal = row.get("goal")
    return Race(
        _day(row, "day"),
        str(row.get("name", tr("Race"))),
        None if distance is None else float(distance),
        goal_s=None if goal is None else _clock(str(goal), "goal", "h:mm:ss"),
        main=row.get("main") is True,
    )


def _planned(row: Mapping[str, Any]) -> Planned:
    notation = str(row.get("notation", "")).strip()
    if not notation:
        raise ValueError(
            tr('notation is missing, such as "40 min easy, 6 x 100 m fast / 100 m walk"')
        )
    return Planned(_day(row, "day"), notation, note=str(row.get("note", "")))

"""Reads TCX: every activity of the file, with its laps and the pauses within them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType

from tercet.domain import Failed, Lap, Recording
from tercet.formats.assemble import Draft
from tercet.formats.sports import kind_of, sport_of
from tercet.formats.unpack import Refused
from tercet.formats.values import moment, number
from tercet.formats.xml_points import Walker
from tercet.language import grouped, tr

_LONGEST_NAME = 200
#: No run has more.
MAX_LAPS = 20_000


class _Activities(Walker):
    format = "TCX"
    point = "Trackpoint"
    numbers = MappingProxyType(
        {
            "Time": "time",
            "LatitudeDegrees": "latitude",
            "LongitudeDegrees": "longitude",
            "AltitudeMeters": "altitude",
            "DistanceMeters": "distance",
            "Value": "heart_rate",
            "Cadence": "cadence",
            "RunCadence": "cadence",
            "Speed": "speed",
            "Watts": "power",
        }
    )

    def __init__(self) -> None:
        super().__init__()
        self.lap: dict[str, str] = {}
        self.courses = 0

    def opened(self, name: str, attributes: Mapping[str, str]) -> None:
        if name == "Activity":
            wording = attributes.get("Sport", "")
            self.draft = Draft(self.format, sport=sport_of(wording), kind=kind_of(wording))
        elif name == "Lap":
            self.lap = {"StartTime": attributes.get("StartTime", "")}
        elif name == "Track" and "Track" in self.lap:
            self.stretch_ends()
        elif name == "Course":
            self.courses += 1

    def closed(self, name: str, text: str) -> None:
        parent = self.path[-2] if len(self.path) > 1 else ""
        if name in ("Activity", "Course"):
            self.finish()
        elif name == "Lap":
            self.draft.laps.append(_lap(self.lap))
            self.lap = {}
            if len(self.draft.laps) > MAX_LAPS:
                raise Refused(tr("It holds more than {most} laps.", most=grouped(MAX_LAPS)))
        elif parent == "Lap":
            self.lap[name] = text
        elif name == "Name" and parent == "Creator":
            self.draft.device = " ".join(text.split())[:_LONGEST_NAME]

    def completed(self, draft: Draft) -> None:
        draft.laps = [_with_pauses(lap, draft.stops) for lap in draft.laps]

    def counts(self) -> bool:
        return "Course" not in self.path

    def nothing(self) -> str:
        if self.courses:
            return tr("It holds a course to follow: not a recorded run.")
        return tr("It holds no track, at most sums: not a recorded run.")


def read_tcx(pieces: bytes | Iterable[bytes], name: str = "") -> list[Recording] | Failed:
    """Read a TCX file; each activity becomes a recording.

    Parameters, result and errors are those of :meth:`tercet.formats.xml_points.Walker.read`.
    """
    return _Activities().read(pieces, name)


def _lap(told: Mapping[str, str]) -> Lap:
    start, _ = moment(told["StartTime"])
    distance = number(told.get("DistanceMeters", ""))
    return Lap(
        start,
        number(told.get("TotalTimeSeconds", "")),
        distance if distance == distance else None,
        told.get("TriggerMethod") == "Manual",
    )


def _with_pauses(lap: Lap, stops: list[tuple[float, float]]) -> Lap:
    """Add the pauses to the lap's length, since TCX tells the timer's seconds only."""
    duration = lap.duration_s
    for start, end in stops:
        if lap.start_s <= start < lap.start_s + duration:
            duration += end - start
    return replace(lap, duration_s=duration)

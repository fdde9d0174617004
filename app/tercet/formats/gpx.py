"""Reads GPX 1.0 and 1.1: every track of the file, with heart rate and the like by plain name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from tercet.domain import Failed, Recording
from tercet.formats.assemble import Draft
from tercet.formats.sports import kind_of, sport_of
from tercet.formats.xml_points import Walker
from tercet.language import tr

_LONGEST_NAME = 200


class _Tracks(Walker):
    format = "GPX"
    point = "trkpt"
    attributes = MappingProxyType({"lat": "latitude", "lon": "longitude"})
    # Extensions by local name, for every writer has a namespace of its own.
    numbers = MappingProxyType(
        {
            "time": "time",
            "ele": "altitude",
            "hr": "heart_rate",
            "heartrate": "heart_rate",
            "HeartRate": "heart_rate",
            "cad": "cadence",
            "cadence": "cadence",
            "RunCadence": "cadence",
            "power": "power",
            "watts": "power",
            "Watts": "power",
            "PowerInWatts": "power",
            "atemp": "temperature",
            "temp": "temperature",
            "temperature": "temperature",
            "speed": "speed",
            "Speed": "speed",
        }
    )

    creator = ""

    def opened(self, name: str, attributes: Mapping[str, str]) -> None:
        if name == "gpx":
            self.creator = " ".join(attributes.get("creator", "").split())[:_LONGEST_NAME]

    def closed(self, name: str, text: str) -> None:
        if name == "trkseg":
            self.stretch_ends()
        elif name == "trk":
            self.finish()
        elif self.path[-2:-1] == ["trk"]:
            if name == "name":
                self.draft.name = " ".join(text.split())[:_LONGEST_NAME]
            elif name == "type":
                self.draft.sport, self.draft.kind = sport_of(text), kind_of(text)

    def completed(self, draft: Draft) -> None:
        draft.device = self.creator

    def nothing(self) -> str:
        return tr("It holds no track: at most a route or places, not a run.")


def read_gpx(pieces: bytes | Iterable[bytes], name: str = "") -> list[Recording] | Failed:
    """Read a GPX file; each track becomes a recording.

    Parameters, result and errors are those of :meth:`tercet.formats.xml_points.Walker.read`.
    """
    return _Tracks().read(pieces, name)

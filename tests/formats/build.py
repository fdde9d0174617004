"""Writes small FIT, TCX and GPX files byte by byte, sharing no code with the readers.

FIT follows the published protocol: header, definition and data messages, CRC-16; message and
field numbers are those of the public profile.
"""

from __future__ import annotations

import struct
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime, timedelta

START = datetime(2026, 3, 1, 7, 30, tzinfo=UTC)
FIT_ZERO = datetime(1989, 12, 31, tzinfo=UTC)
START_FIT = int((START - FIT_ZERO).total_seconds())

# base types: number, struct letter, invalid value
ENUM, SINT8, UINT8 = (0x00, "B", 0xFF), (0x01, "b", 0x7F), (0x02, "B", 0xFF)
UINT16, SINT32, UINT32 = (0x84, "H", 0xFFFF), (0x85, "i", 0x7FFFFFFF), (0x86, "I", 0xFFFFFFFF)

#: field name: (number, base type, scale, offset), by message
FILE_ID = (0, {"type": (0, ENUM), "manufacturer": (1, UINT16), "product": (2, UINT16)})
RECORD = (
    20,
    {
        "timestamp": (253, UINT32),
        "position_lat": (0, SINT32),
        "position_long": (1, SINT32),
        "altitude": (2, UINT16),
        "heart_rate": (3, UINT8),
        "cadence": (4, UINT8),
        "distance": (5, UINT32),
        "speed": (6, UINT16),
        "power": (7, UINT16),
        "temperature": (13, SINT8),
        "activity_type": (42, ENUM),
        "fractional_cadence": (53, UINT8),
        "enhanced_speed": (73, UINT32),
        "enhanced_altitude": (78, UINT32),
    },
)
EVENT = (21, {"timestamp": (253, UINT32), "event": (0, ENUM), "event_type": (1, ENUM)})
LAP = (
    19,
    {
        "timestamp": (253, UINT32),
        "start_time": (2, UINT32),
        "total_elapsed_time": (7, UINT32),
        "total_distance": (9, UINT32),
        "lap_trigger": (24, ENUM),
        "sport": (25, ENUM),
    },
)
SESSION = (
    18,
    {
        "timestamp": (253, UINT32),
        "start_time": (2, UINT32),
        "sport": (5, ENUM),
        "sub_sport": (6, ENUM),
    },
)
SPORT = (12, {"sport": (0, ENUM), "sub_sport": (1, ENUM)})
ACTIVITY = (34, {"timestamp": (253, UINT32), "local_timestamp": (5, UINT32)})

Kind = tuple[int, Mapping[str, tuple[int, tuple[int, str, int]]]]


def crc(data: bytes) -> int:
    """CRC-16/ARC, bit by bit."""
    value = 0
    for byte in data:
        value ^= byte
        for _ in range(8):
            value = (value >> 1) ^ (0xA001 if value & 1 else 0)
    return value


class Fit:
    """Collects messages; ``bytes()`` gives the file."""

    def __init__(self, *, header_size: int = 14, big_endian: bool = False) -> None:
        self.body = bytearray()
        self.ends: list[int] = []  # offset in the file after each record message
        self.header_size = header_size
        self.order = ">" if big_endian else "<"
        self._last: dict[int, tuple[Kind, tuple[str, ...]]] = {}

    def define(self, local: int, kind: Kind, fields: Sequence[str]) -> None:
        number, known = kind
        self.body += struct.pack(
            f"{self.order}BBBHB", 0x40 | local, 0, self.order == ">", number, len(fields)
        )
        for field in fields:
            field_number, (base, letter, _) = known[field]
            self.body += bytes([field_number, struct.calcsize(letter), base])
        self._last[local] = (kind, tuple(fields))

    def data(self, local: int, *, time_offset: int | None = None, **values: int | None) -> None:
        """A data message of the last definition; what is not given is invalid."""
        kind, fields = self._last[local]
        head = local if time_offset is None else 0x80 | local << 5 | time_offset
        self.body.append(head)
        for field in fields:
            _, (_, letter, invalid) = kind[1][field]
            value = values.get(field)
            self.body += struct.pack(self.order + letter, invalid if value is None else value)
        if kind is RECORD:
            self.ends.append(self.header_size + len(self.body))

    def add(self, kind: Kind, **values: int | None) -> Fit:
        """Definition (if it is not the last one) and data in one."""
        local = {20: 0, 0: 1, 21: 2, 19: 3, 18: 4, 34: 5, 12: 6}[kind[0]]
        if self._last.get(local) != (kind, tuple(values)):
            self.define(local, kind, tuple(values))
        self.data(local, **values)
        return self

    def __bytes__(self) -> bytes:
        header = struct.pack("<BBHI4s", self.header_size, 0x20, 2100, len(self.body), b".FIT")
        if self.header_size == 14:
            header += struct.pack("<H", crc(header))
        whole = header + self.body
        return whole + struct.pack("<H", crc(whole))


def semicircles(degrees: float) -> int:
    return round(degrees * 2**31 / 180.0)


def run_fit(seconds: int = 20, **options: bool | int) -> Fit:
    """A run of 3 m/s with a stop_all at the end, one session, one lap, one activity."""
    fit = Fit(**options)  # type: ignore[arg-type]
    fit.add(FILE_ID, type=4, manufacturer=255, product=7)
    fit.add(EVENT, timestamp=START_FIT, event=0, event_type=0)
    for second in range(seconds):
        fit.add(
            RECORD,
            timestamp=START_FIT + second,
            position_lat=semicircles(50.0 + second * 2.7e-5),
            position_long=semicircles(7.0),
            altitude=round((120.0 + 500.0) * 5),
            heart_rate=120 + second % 30,
            cadence=85,
            distance=300 * second,
            speed=3000,
            power=250,
            temperature=12,
        )
    end = START_FIT + seconds - 1
    fit.add(EVENT, timestamp=end, event=0, event_type=4)
    fit.add(
        LAP,
        timestamp=end,
        start_time=START_FIT,
        total_elapsed_time=(seconds - 1) * 1000,
        total_distance=300 * (seconds - 1),
        lap_trigger=0,
        sport=1,
    )
    fit.add(SESSION, timestamp=end, start_time=START_FIT, sport=1, sub_sport=0)
    fit.add(ACTIVITY, timestamp=end, local_timestamp=end + 3600)
    return fit


def stamp(second: float, zone: str = "Z") -> str:
    time = START + timedelta(seconds=second)
    if zone not in ("", "Z"):
        sign = -1 if zone[0] == "-" else 1
        time += sign * timedelta(hours=int(zone[1:3]), minutes=int(zone[4:6]))
    text = time.strftime("%Y-%m-%dT%H:%M:%S")
    return text + (f".{time.microsecond:06d}" if time.microsecond else "") + zone


def gpx_point(
    second: float | None = None,
    lat: object = 50.0,
    lon: object = 7.0,
    *,
    zone: str = "Z",
    ele: object = None,
    **extensions: object,
) -> str:
    inner = "" if ele is None else f"<ele>{ele}</ele>"
    if second is not None:
        inner += f"<time>{stamp(second, zone)}</time>"
    if extensions:
        tags = "".join(f"<x:{key}>{value}</x:{key}>" for key, value in extensions.items())
        inner += f"<extensions><x:TrackPointExtension>{tags}</x:TrackPointExtension></extensions>"
    return f'<trkpt lat="{lat}" lon="{lon}">{inner}</trkpt>'


def gpx(*tracks: str, inside: str = "", head: str = "") -> bytes:
    """Each track is the text within <trk>."""
    body = "".join(f"<trk>{track}</trk>" for track in tracks)
    return (
        f'<?xml version="1.0" encoding="UTF-8"?>{head}\n'
        '<gpx xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:any" version="1.1" '
        f'creator="maker">{inside}{body}</gpx>'
    ).encode()


def segment(points: Iterable[str]) -> str:
    return f"<trkseg>{''.join(points)}</trkseg>"


def run_gpx(seconds: int = 20) -> bytes:
    points = (
        gpx_point(s, 50.0 + s * 2.7e-5, 7.0, ele=120.5, hr=120 + s % 30, cad=85, atemp=12)
        for s in range(seconds)
    )
    return gpx(f"<name>Long run</name><type>running</type>{segment(points)}")


def tcx_point(second: float, **values: object) -> str:
    """``values``: distance, hr, lat, lon, altitude, speed, cadence, watts, in any choice."""
    inner = f"<Time>{stamp(second)}</Time>"
    if "lat" in values:
        inner += (
            f"<Position><LatitudeDegrees>{values['lat']}</LatitudeDegrees>"
            f"<LongitudeDegrees>{values['lon']}</LongitudeDegrees></Position>"
        )
    for key, tag in (("altitude", "AltitudeMeters"), ("distance", "DistanceMeters")):
        if key in values:
            inner += f"<{tag}>{values[key]}</{tag}>"
    if "hr" in values:
        inner += f"<HeartRateBpm><Value>{values['hr']}</Value></HeartRateBpm>"
    extra = "".join(
        f"<{tag}>{values[key]}</{tag}>"
        for key, tag in (("speed", "Speed"), ("cadence", "RunCadence"), ("watts", "Watts"))
        if key in values
    )
    if extra:
        inner += f'<Extensions><TPX xmlns="urn:extension">{extra}</TPX></Extensions>'
    return f"<Trackpoint>{inner}</Trackpoint>"


def tcx_lap(
    start: float, seconds: float, *tracks: Iterable[str], metres: float = 0, trigger: str = "Manual"
) -> str:
    body = "".join(f"<Track>{''.join(track)}</Track>" for track in tracks)
    return (
        f'<Lap StartTime="{stamp(start)}"><TotalTimeSeconds>{seconds}</TotalTimeSeconds>'
        f"<DistanceMeters>{metres}</DistanceMeters><AverageHeartRateBpm><Value>99</Value>"
        f"</AverageHeartRateBpm><TriggerMethod>{trigger}</TriggerMethod>{body}</Lap>"
    )


def activity(*laps: str, sport: str = "Running") -> str:
    return (
        f'<Activity Sport="{sport}"><Id>{stamp(0)}</Id>{"".join(laps)}'
        "<Creator><Name>A watch</Name></Creator></Activity>"
    )


def tcx(*activities: str) -> bytes:
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n<TrainingCenterDatabase '
        'xmlns="http://www.garmin.com/xmlschemas/TrainingCenterDatabase/v2"><Activities>'
        f"{''.join(activities)}</Activities><Author><Name>Nobody</Name></Author>"
        "</TrainingCenterDatabase>"
    ).encode()


def run_tcx(seconds: int = 20) -> bytes:
    points = [
        tcx_point(
            s, lat=50.0 + s * 2.7e-5, lon=7.0, altitude=120.5, distance=3.0 * s, hr=120 + s % 30,
            speed=3.0, cadence=85, watts=250,
        )
        for s in range(seconds)
    ]  # fmt: skip
    return tcx(activity(tcx_lap(0, seconds - 1, points, metres=3.0 * (seconds - 1))))

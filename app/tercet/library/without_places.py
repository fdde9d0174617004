"""Runs handed on without their places, or without those near home; no original goes along."""

from __future__ import annotations

import math
import secrets
import zipfile
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path
from threading import Event
from types import MappingProxyType

import numpy as np

from tercet import language
from tercet.domain import Changes, Recording, Stream
from tercet.engine.geodesy import plane, step_lengths
from tercet.formats.tcx_written import write_tcx
from tercet.language import mark, tr
from tercet.library.importing import Progress
from tercet.library.library import Library
from tercet.library.record import RecordError
from tercet.store import packing, place_queries, queries
from tercet.store.database import Row, Store

SETTING = "home"
RADII = (200, 1000)  # [m]
USUAL_RADIUS = 500
#: The zone's middle lies aside from home by at most this share of its radius, so that the ends of
#: many cut tracks, which lie on a circle, do not point at the door.
ASIDE = 0.5
ABOUT = (
    mark("What is in this archive"),
    "",
    mark(
        "One TCX file a run: its clock in UTC, heart rate, speed, distance, altitude, cadence and "
        "power as far as they were recorded; where only positions were, distance reckoned from "
        "them."
    ),
    mark("No original file, no name, note, device, shading, threshold or plan."),
    mark(
        "Day, time, distance and altitude can still tell someone who knows the runner where a run "
        "was."
    ),
)


@dataclass(frozen=True)
class Home:
    """A zone round home: where it is, how far it reaches, and how far its middle lies aside."""

    latitude: float
    longitude: float
    radius_m: float = USUAL_RADIUS
    north_m: float = 0.0
    east_m: float = 0.0

    def __post_init__(self) -> None:
        told = (self.latitude, self.longitude, self.radius_m, self.north_m, self.east_m)
        if not all(map(math.isfinite, told)):
            raise ValueError("a place is two numbers")
        if not (abs(self.latitude) < 90.0 and abs(self.longitude) <= 180.0):
            raise ValueError("latitude lies within 90 degrees, longitude within 180")
        if not RADII[0] <= self.radius_m <= RADII[1]:
            raise ValueError("the zone reaches 200 to 1000 m")

    @property
    def words(self) -> str:
        """As it is typed: ``45.1234 7.1234``."""
        return f"{self.latitude:.4f} {self.longitude:.4f}"


def typed(text: str, radius_m: float) -> Home:
    """The zone round a typed place, two numbers in degrees, its middle put aside by chance.

    Raises
    ------
    ValueError
        If it is no place.
    """
    parts = text.replace(";", " ").replace(", ", " ").split()
    if len(parts) == 1:
        parts = text.split(",")
    if len(parts) != 2:
        raise ValueError("a place is two numbers")
    dice = secrets.SystemRandom()
    far, way = radius_m * ASIDE * math.sqrt(dice.random()), dice.random() * 2 * math.pi
    latitude, longitude = float(parts[0]), float(parts[1])
    return Home(latitude, longitude, radius_m, far * math.cos(way), far * math.sin(way))


def home(store: Store) -> Home | None:
    """The zone that was kept; None without one."""
    kept = queries.setting(store, SETTING)
    return Home(*map(float, kept.split())) if kept else None


def keep(store: Store, zone: Home | None) -> Changes:
    """Keep a zone, or forget it, which is a step of its own."""
    told = "" if zone is None else (zone.latitude, zone.longitude, zone.radius_m)
    value = " ".join(map(repr, (*told, zone.north_m, zone.east_m))) if zone is not None else ""
    step = tr("Change the zone round home") if value else tr("Forget the zone round home")
    with store.atomic(step, ("setting", SETTING) if value else None):
        store.put("setting", {"name": SETTING, "value": value})
    return Changes(settings=True, step=step)


def proposed(store: Store) -> str:
    """Where most runs start, to some 100 m, as it is typed; nothing where none has a place."""
    starts = Counter(place_queries.starts(store))
    cells = {(round(a * 1000), round(b * 1000)): n for (a, b), n in starts.items()}
    if not cells:
        return ""
    near = [(a, b) for a in (-1, 0, 1) for b in (-1, 0, 1)]
    best = max(cells, key=lambda c: sum(cells.get((c[0] + a, c[1] + b), 0) for a, b in near))
    return f"{best[0] / 1000:.3f} {best[1] / 1000:.3f}"


def left_out(streams: Mapping[str, Stream], zone: Home | None) -> dict[str, Stream]:
    """Streams without the points within a zone; without any place where there is no zone."""
    rest = {name: s for name, s in streams.items() if name not in ("latitude", "longitude")}
    north, east = streams.get("latitude"), streams.get("longitude")
    if north is None or east is None:
        return rest
    both, a, b = np.intersect1d(north.time, east.time, return_indices=True)
    latitude, longitude = north.values[a], east.values[b]
    if not {"distance", "speed"} & rest.keys() and len(both):
        # Else nothing would be left of a recording that holds its way only.
        steps = step_lengths(latitude, longitude)
        rest["distance"] = Stream(both, np.cumsum(np.concatenate(([0.0], steps))))
    if zone is None:
        return rest
    up, right = plane(latitude, longitude, (zone.latitude, zone.longitude))
    outside = np.hypot(up - zone.north_m, right - zone.east_m) > zone.radius_m
    rest["latitude"] = Stream(both[outside], latitude[outside])
    rest["longitude"] = Stream(both[outside], longitude[outside])
    return rest


def write(
    library: Library,
    target: Path,
    zone: Home | None,
    progress: Callable[[Progress], None] = lambda _: None,
    stop: Event | None = None,
) -> bool:
    """Write every run that was recorded into a zip archive; gives whether it was finished. Blocks.

    Raises
    ------
    RecordError
        If it cannot be written.
    """
    runs: list[Row] = library.call(place_queries.recorded)
    part = target.with_name(target.name + ".part")
    try:
        with zipfile.ZipFile(part, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
            archive.writestr("about.txt", _about(zone))
            for done, run in enumerate(runs, 1):
                if stop is not None and stop.is_set():
                    break
                packed = library.call(queries.streams, run["sha256"], run["part"])
                if "time" in packed:
                    begin = datetime.fromtimestamp(run["start_utc"], UTC)
                    name = f"{begin:%Y-%m-%d-%H%M%S}-{done}.tcx"
                    archive.writestr(name, _written(run, begin, packed, zone))
                progress(Progress(done, len(runs), run["day"]))
        if stop is not None and stop.is_set():
            return False
        part.replace(target)
    except OSError as error:
        raise RecordError(
            tr(
                "The runs could not be written: {error}. Choose another place, or make room there, "
                "and write them again.",
                error=error.strerror or error,
            )
        ) from error
    finally:
        part.unlink(missing_ok=True)
    return True


def _about(zone: Home | None) -> str:
    if zone is None:
        places = tr("It holds no place.")
    else:
        places = tr(
            "Places within {metres} m of a point near home are left out, all others are in it.",
            metres=language.number(zone.radius_m),
        )
    return "\n".join((*(tr(line) if line else "" for line in ABOUT), places, ""))


def _written(run: Row, begin: datetime, packed: Mapping[str, bytes], zone: Home | None) -> bytes:
    clock, streams = packing.unpack_streams(packed)
    plain = Recording(begin, clock, MappingProxyType(dict(streams)), "TCX", run["sport"])
    return write_tcx(replace(plain, streams=left_out(streams, zone)))

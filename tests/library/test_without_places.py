"""Runs handed on without places: the archive is read back, byte by byte and as recordings."""

from __future__ import annotations

import math
import re
import zipfile
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet import language
from tercet.domain import Recording, Stream
from tercet.formats.tcx import read_tcx
from tercet.formats.tcx_written import write_tcx
from tercet.library import without_places
from tercet.library.library import Library
from tercet.library.without_places import Home
from tercet.store import place_queries

EARTH_M = 6_371_000.0  # mean radius, IUGG


def haversine(lat: float, lon: float, zone: Home) -> float:
    """Metres between two places on a sphere, by the usual formula."""
    a, b = math.radians(lat), math.radians(zone.latitude)
    part = math.sin((a - b) / 2) ** 2
    part += math.cos(a) * math.cos(b) * math.sin(math.radians(lon - zone.longitude) / 2) ** 2
    return 2 * EARTH_M * math.asin(math.sqrt(part))


def read_back(target: Path) -> list[Recording]:
    out = []
    with zipfile.ZipFile(target) as archive:
        for name in archive.namelist():
            if name.endswith(".tcx"):
                read = read_tcx(archive.read(name), name)
                assert isinstance(read, list) and len(read) == 1
                out += read
    return out


def test_by_default_no_place_is_in_it(season_library: Library, tmp_path: Path) -> None:
    target = tmp_path / "runs.zip"
    assert without_places.write(season_library, target, None)
    held = season_library.call(place_queries.recorded)
    with zipfile.ZipFile(target) as archive:
        names = archive.namelist()
        every = b"".join(archive.read(name) for name in names)
    assert len(names) == len(held) + 1 and names[0] == "about.txt"
    assert not re.search(rb"Latitude|Longitude|Position", every)
    runs = read_back(target)
    assert all(not {"latitude", "longitude"} & run.streams.keys() for run in runs)
    assert all("speed" in run.streams or "distance" in run.streams for run in runs)


def test_what_is_in_it_is_told_in_the_language_in_use(
    season_library: Library, tmp_path: Path
) -> None:
    target = tmp_path / "runs.zip"
    language.use("de")
    try:
        assert without_places.write(season_library, target, without_places.typed("45 7", 400.0))
    finally:
        language.use(language.SOURCE)
    with zipfile.ZipFile(target) as archive:
        said = archive.read("about.txt").decode("utf-8")
    assert "im Umkreis von 400 m" in said and "archive" not in said


@pytest.mark.parametrize("radius", [200.0, 1000.0])
def test_no_place_near_home_is_in_it(
    season_library: Library, tmp_path: Path, radius: float
) -> None:
    text = season_library.call(without_places.proposed)
    zone = without_places.typed(text, radius)
    target = tmp_path / "runs.zip"
    assert without_places.write(season_library, target, zone)
    runs = read_back(target)
    far = [
        haversine(a, b, zone)
        for run in runs
        if "latitude" in run.streams
        for a, b in zip(
            run.streams["latitude"].values, run.streams["longitude"].values, strict=True
        )
    ]
    assert far and min(far) >= radius * (1 - without_places.ASIDE) - 2.0
    starts = season_library.call(place_queries.starts)
    assert min(haversine(*start, zone) for start in starts) < radius / 2


def test_the_zone_is_kept_with_its_middle(season_library: Library) -> None:
    zone = without_places.typed("45.1234, 7.5678", 400.0)
    assert math.hypot(zone.north_m, zone.east_m) <= 200.0
    season_library.call(without_places.keep, zone)
    assert season_library.call(without_places.home) == zone
    season_library.call(without_places.keep, None)
    assert season_library.call(without_places.home) is None


@pytest.mark.parametrize("text", ["", "45", "north east", "91 7", "45 181", "45 7 9", "nan nan"])
def test_what_is_no_place_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r".+"):
        without_places.typed(text, 500.0)


@given(
    st.lists(st.floats(0.0, 400.0), min_size=2, max_size=40),
    st.floats(1.0, 89.0),
    st.floats(-180.0, 180.0),
)
def test_a_written_recording_is_read_as_it_was(rise: list[float], lat: float, lon: float) -> None:
    clock = np.arange(len(rise), dtype=np.float64)
    metres = np.cumsum(np.minimum(rise, 8.0)).round(2)
    streams = {
        "distance": Stream(clock, metres),
        "heart_rate": Stream(clock[1:], np.full(len(rise) - 1, 141.0)),
        "latitude": Stream(clock, np.full(len(rise), lat)),
        "longitude": Stream(clock, np.full(len(rise), lon)),
    }
    start = datetime(2026, 4, 14, 16, 43, tzinfo=UTC)
    read = read_tcx(write_tcx(Recording(start, clock, streams, "FIT", "running")))
    assert isinstance(read, list)
    run = read[0]
    assert run.start == start and run.sport == "running"
    assert np.array_equal(run.time, clock)
    assert np.allclose(run.streams["distance"].values, metres)
    assert np.array_equal(run.streams["heart_rate"].time, clock[1:])
    assert np.allclose(run.streams["latitude"].values, lat, atol=1e-7)

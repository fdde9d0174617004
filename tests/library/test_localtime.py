"""Local days: across midnight, by the file's offset or the runner's zone, at changes of clocks."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.domain import Recording, Stream
from tercet.library.localtime import (
    local,
    local_day,
    local_time,
    offset_at,
    zone_named,
    zone_of_place,
)


def utc(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def day_in(zone: str, moment: str) -> date:
    start = utc(moment)
    return local_day(start, offset_at(start, None, zone_named(zone)))


@pytest.mark.parametrize(
    ("zone", "moment", "day"),
    [
        # IANA rules: Madrid +02:00 in summer, Kathmandu +05:45, Apia +13:00, Los Angeles -07:00
        ("Europe/Madrid", "2026-06-10T21:59:59", date(2026, 6, 10)),
        ("Europe/Madrid", "2026-06-10T22:00:00", date(2026, 6, 11)),
        ("Asia/Kathmandu", "2026-06-10T18:14:00", date(2026, 6, 10)),
        ("Asia/Kathmandu", "2026-06-10T18:15:00", date(2026, 6, 11)),
        ("America/Los_Angeles", "2026-06-11T06:59:00", date(2026, 6, 10)),
        ("Pacific/Apia", "2026-12-31T11:00:00", date(2027, 1, 1)),
        # clocks go forward on 29 March 2026 at 01:00 UTC and back on 25 October
        ("Europe/Madrid", "2026-03-28T22:30:00", date(2026, 3, 28)),
        ("Europe/Madrid", "2026-03-28T23:00:00", date(2026, 3, 29)),
        ("Europe/Madrid", "2026-03-29T22:00:00", date(2026, 3, 30)),
        ("Europe/Madrid", "2026-10-24T22:00:00", date(2026, 10, 25)),
        ("Europe/Madrid", "2026-10-25T22:30:00", date(2026, 10, 25)),
        ("Europe/Madrid", "2026-10-25T23:00:00", date(2026, 10, 26)),
    ],
)
def test_the_day_a_runner_lived(zone: str, moment: str, day: date) -> None:
    assert day_in(zone, moment) == day


@pytest.mark.parametrize(
    ("moment", "hours"),
    [
        ("2026-03-29T00:59:59", 1),
        ("2026-03-29T01:00:00", 2),
        ("2026-10-25T00:59:59", 2),
        ("2026-10-25T01:00:00", 1),
    ],
)
def test_the_offset_changes_with_the_clocks(moment: str, hours: int) -> None:
    assert offset_at(utc(moment), None, zone_named("Europe/Madrid")) == hours * 3600


def test_the_files_own_offset_comes_before_the_zone() -> None:
    # a runner from Madrid on a trip: the watch knew where it was
    start = utc("2026-06-10T22:30:00")
    assert offset_at(start, -7 * 3600, zone_named("Europe/Madrid")) == -7 * 3600
    assert local_day(start, -7 * 3600) == date(2026, 6, 10)
    assert offset_at(start, 0, zone_named("Europe/Madrid")) == 0


@pytest.mark.parametrize("name", ["", "Nowhere/Atall", "../etc/passwd", "\0", "UTC+3x"])
def test_a_zone_that_nobody_knows_is_no_zone(name: str) -> None:
    assert zone_named(name) is None


def test_without_a_zone_the_computers_is_taken() -> None:
    start = utc("2026-06-10T12:00:00")
    here = start.astimezone().utcoffset()
    assert here is not None
    assert offset_at(start, None, None) == here.total_seconds()


@given(
    st.datetimes(datetime(1990, 1, 1), datetime(2037, 1, 1)),
    st.sampled_from(["Europe/Madrid", "Australia/Lord_Howe", "America/St_Johns", "Asia/Kolkata"]),
)
def test_local_time_is_that_of_zoneinfo(moment: datetime, zone: str) -> None:
    start = moment.replace(microsecond=0, tzinfo=UTC)
    offset = offset_at(start, None, zone_named(zone))
    want = start.astimezone(ZoneInfo(zone)).replace(tzinfo=None)
    assert local_time(start.timestamp(), offset) == want
    assert local_day(start, offset) == want.date()


def test_before_1970_and_after_2038() -> None:
    for year in (1969, 2039):
        moment = datetime(year, 5, 1, 12, tzinfo=UTC)
        assert local_time(moment.timestamp(), 3600) == datetime(year, 5, 1, 13)
        assert local_day(moment, 13 * 3600) == date(year, 5, 1) + timedelta(days=1)


# Places: cities' coordinates from memory; offsets of the time-zone database.
SPAIN, TOKYO, CHRISTCHURCH = (40.42, -3.70), (35.68, 139.69), (-43.53, 172.63)
NEW_YORK, KATHMANDU, MID_ATLANTIC = (40.71, -74.01), (27.72, 85.32), (45.0, -30.0)


def run_at(
    moment: str, *places: tuple[float, float], own: int | None = None, home: str = "Europe/Madrid"
) -> tuple[str, str]:
    """Wall clock and what it follows, of a run through these places."""
    clock = np.arange(float(len(places)))
    streams = {
        name: Stream(clock, np.array([place[axis] for place in places]))
        for axis, name in enumerate(("latitude", "longitude"))
        if places
    }
    found = local(Recording(utc(moment), clock, streams, "GPX", utc_offset_s=own), home)
    return f"{local_time(utc(moment).timestamp(), found.offset_s):%Y-%m-%d %H:%M}", found.source


@pytest.mark.parametrize(
    ("moment", "place", "wall", "source"),
    [
        # away from home, on the other side of a flight: the day is the one lived there
        ("2026-06-10T21:30:00", TOKYO, "2026-06-11 06:30", "place Asia/Tokyo"),
        ("2026-06-11T02:30:00", NEW_YORK, "2026-06-10 22:30", "place America/New_York"),
        ("2026-06-10T18:20:00", KATHMANDU, "2026-06-11 00:05", "place Asia/Kathmandu"),
        # summer time ends in Spain on 25 October 2026 at 01:00 UTC, begins on 29 March
        ("2026-10-25T00:59:00", SPAIN, "2026-10-25 02:59", "place Europe/Madrid"),
        ("2026-10-25T01:00:00", SPAIN, "2026-10-25 02:00", "place Europe/Madrid"),
        ("2026-03-28T23:30:00", SPAIN, "2026-03-29 00:30", "place Europe/Madrid"),
        # New Zealand: summer time from 27 September 2026, 14:00 UTC the day before; ends 5 April
        ("2026-09-26T13:59:00", CHRISTCHURCH, "2026-09-27 01:59", "place Pacific/Auckland"),
        ("2026-09-26T14:00:00", CHRISTCHURCH, "2026-09-27 03:00", "place Pacific/Auckland"),
        ("2026-01-10T11:30:00", CHRISTCHURCH, "2026-01-11 00:30", "place Pacific/Auckland"),
        # the open sea, and a watch that writes zeros, have no zone of their own
        ("2026-06-10T21:30:00", MID_ATLANTIC, "2026-06-10 23:30", "runner Europe/Madrid"),
        ("2026-06-10T21:30:00", (0.0, 0.0), "2026-06-10 23:30", "runner Europe/Madrid"),
    ],
)
def test_the_place_says_the_zone(
    moment: str, place: tuple[float, float], wall: str, source: str
) -> None:
    assert run_at(moment, place) == (wall, source)


def test_the_files_own_offset_comes_before_the_place_and_the_runners_zone_after() -> None:
    assert run_at("2026-06-10T21:30:00", TOKYO, own=3600) == ("2026-06-10 22:30", "file")
    assert run_at("2026-06-10T21:30:00")[1] == "runner Europe/Madrid"
    assert run_at("2026-06-10T21:30:00", home="")[1] == "runner"


def test_a_first_fix_from_before_the_flight_does_not_say_where_a_run_was() -> None:
    wall, source = run_at("2026-06-10T21:30:00", SPAIN, TOKYO, TOKYO)
    assert (wall, source) == ("2026-06-11 06:30", "place Asia/Tokyo")


def test_a_run_across_midnight_belongs_to_the_day_it_began_on() -> None:
    assert run_at("2026-06-10T14:50:00", *([TOKYO] * 3600))[0] == "2026-06-10 23:50"


@given(st.floats(allow_nan=True), st.floats(allow_nan=True))
def test_no_position_is_too_odd(latitude: float, longitude: float) -> None:
    name = zone_of_place(latitude, longitude)
    assert not name or zone_named(name) is not None

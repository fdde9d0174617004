"""Numbers and dates in words. Formats: the visual language, section 13."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest
from PySide6.QtCore import QLocale

from tercet.ui import words

DAY = date(2026, 6, 17)


@pytest.fixture(autouse=True)
def plain_locale() -> Iterator[None]:
    before = QLocale()
    QLocale.setDefault(QLocale.c())
    yield
    QLocale.setDefault(before)


@pytest.mark.parametrize(
    ("seconds", "written"),
    [
        (102240.0, "28:24"),
        (0.0, "0:00"),
        (29.9, "0:00"),
        (30.0, "0:01"),
        (-3420.0, "0:57"),
        (3599.0, "1:00"),
        (360000.0, "100:00"),
    ],
)
def test_hours(seconds: float, written: str) -> None:
    assert words.hours(seconds) == written


@pytest.mark.parametrize(
    ("seconds", "written"),
    [(4384.0, "1:13:04"), (186.0, "3:06"), (59.6, "1:00"), (3599.5, "1:00:00"), (7.0, "0:07")],
)
def test_durations(seconds: float, written: str) -> None:
    assert words.duration(seconds) == written


def test_durations_as_spoken() -> None:
    assert words.spoken(4384.0) == "1 hour 13 minutes"
    assert words.spoken(3600.0) == "1 hour"
    assert words.spoken(119.0) == "2 minutes"
    assert words.spoken(1.0) == "1 second"


def test_pace_in_both_units() -> None:
    # 1609.344 m in 497 s is 8:17 a mile; the international mile is exact by definition.
    assert words.pace(1000.0 / 309.0) == "5:09 /km"
    assert words.pace(1609.344 / 497.0, "miles") == "8:17 /mile"
    assert words.bare_pace(1000.0 / 239.6) == "4:00"


@pytest.mark.parametrize("speed", [0.0, -1.0, float("nan"), float("inf")])
def test_no_pace_without_speed(speed: float) -> None:
    assert words.pace(speed) == words.NOTHING


@pytest.mark.parametrize(
    ("metres", "units", "written"),
    [
        (14200.0, "km", "14.2 km"),
        (8049.0, "km", "8.05 km"),
        (9996.0, "km", "10.0 km"),
        (9994.0, "km", "9.99 km"),
        (42195.0, "miles", "26.2 mi"),
        (5000.0, "miles", "3.11 mi"),
    ],
)
def test_distance(metres: float, units: words.Units, written: str) -> None:
    assert words.distance(metres, units) == written


def test_length_of_a_repetition_is_in_metres_while_short() -> None:
    assert words.bout(722.4) == "722 m"
    assert words.bout(1609.3, "miles") == "1609 m"
    assert words.bout(3000.0) == "3.00 km"


def test_shares_say_about_where_estimated() -> None:
    assert words.share(0.9) == "90 %"
    assert words.share(0.745) == "75 %"
    assert words.share(0.9, estimated=True) == "about 90 %"


def test_climb_in_both_units() -> None:
    # 0.3048 m is one international foot, exact by definition.
    assert words.climb(212.0) == "212 m"
    assert words.climb(212.0, "miles") == "696 ft"


def test_lists() -> None:
    assert words.listed([]) == ""
    assert words.listed(["a"]) == "a"
    assert words.listed(["a", "b", "c"]) == "a, b and c"


def test_dates_and_decimals_follow_the_locale() -> None:
    assert words.long_day(DAY) == "Wednesday, 17 June 2026"
    assert words.short_day(DAY) == "17 Jun"
    QLocale.setDefault(QLocale(QLocale.Language.German, QLocale.Country.Germany))
    assert words.long_day(DAY) == "Mittwoch, 17. Juni 2026"
    assert words.month(date(2026, 5, 1)) == "Mai"
    assert words.distance(14200.0) == "14,2 km"
    assert words.number(12345.0) == "12345"

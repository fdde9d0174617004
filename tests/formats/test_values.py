"""Strict numbers and times."""

import math

import pytest

from tercet.formats.values import moment, number


@pytest.mark.parametrize(
    ("text", "value"),
    [("47", 47.0), (" -4.25\n", -4.25), ("+3.", 3.0), (".5", 0.5), ("1.5E2", 150.0)],
)
def test_numbers(text, value):
    assert number(text) == value


@pytest.mark.parametrize(
    "text",
    ["", " ", "nan", "NaN", "inf", "-Infinity", "1e400", "4_7", "٤٧", "４７", "47,5", "0x1p3"],
)  # fmt: skip
def test_no_numbers(text):
    assert math.isnan(number(text))


@pytest.mark.parametrize(
    ("text", "seconds", "offset"),
    [
        # unix times worked out with GNU date
        ("2026-03-01T07:30:00Z", 1_772_350_200.0, None),
        (" 2026-03-01T07:30:00.250Z\n", 1_772_350_200.25, None),
        ("2026-03-01T08:30:00+01:00", 1_772_350_200.0, 3600),
        ("2026-03-01T04:00:00-03:30", 1_772_350_200.0, -12_600),
        ("2026-03-01T07:30:00", 1_772_350_200.0, None),
        ("2026-03-01T07:30:00+00:00", 1_772_350_200.0, None),
        ("2026-03-01T07:30:00.123456789Z", 1_772_350_200.123456, None),
        ("  20260301T07:30:00Z", 1_772_350_200.0, None),
        ("2026-03-01T07:59:59Z", 1_772_351_999.0, None),
    ],
)
def test_times(text, seconds, offset):
    assert moment(text) == (seconds, offset)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "2026-03-01",
        "2026-02-30T00:00:00Z",
        "2026-03-01T25:00:00Z",
        "07:30:00",
        "x" * 99,
        "2026-03-01T07:60:00Z",
        "2026-03-01T07-30:00Z",
        "2026-03-01T07:30:+1Z",
        "2026-03-01T07:٣0:00Z",
    ],
)
def test_no_times(text):
    seconds, offset = moment(text)
    assert math.isnan(seconds) and offset is None


def test_times_at_the_ends_of_the_calendar_do_not_raise():
    for text in ("0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00"):
        assert math.isfinite(moment(text)[0])

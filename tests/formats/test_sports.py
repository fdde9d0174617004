"""Wordings of sports."""

import pytest

from tercet.formats.sports import kind_of, on_foot, sport_of


@pytest.mark.parametrize(
    ("text", "sport", "kind"),
    [
        ("Running", "running", ""),
        ("TRAIL_RUNNING", "running", "trail"),
        ("track run", "running", "track"),
        ("treadmill", "running", "treadmill"),
        ("indoor_running", "running", "treadmill"),
        ("Jogging", "running", ""),
        ("Biking", "cycling", ""),
        ("track_cycling", "cycling", ""),
        ("wheelchair_push_run", "wheelchair push run", ""),
        ("rowing", "rowing", ""),
        ("trunk", "trunk", ""),
        ("Other", "unknown", ""),
        ("", "unknown", ""),
        ("9", "unknown", ""),
        ("x" * 10_000, "x" * 40, ""),
    ],
)
def test_wordings(text, sport, kind):
    assert (sport_of(text), kind_of(text)) == (sport, kind)


def test_steps_are_for_feet():
    assert [on_foot(s) for s in ("running", "unknown", "cycling", "rowing")] == [
        True,
        True,
        False,
        False,
    ]

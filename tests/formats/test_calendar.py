"""Calendars: written ones read back by a reference library and by us, any bytes never raise.

The reference is the registry's `icalendar`, a parser of RFC 5545 that shares no code with ours.
"""

from __future__ import annotations

from datetime import UTC, date, datetime

import icalendar
from hypothesis import given
from hypothesis import strategies as st

from tercet.domain import Failed
from tercet.formats.calendar import FOLD, Entry, read, write

NOW = datetime(2026, 6, 15, 12, 0, tzinfo=UTC)
lines = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Zl", "Zp")), min_size=1
).map(lambda text: " ".join(text.split()))
entries = st.lists(
    st.builds(Entry, st.dates(date(1970, 1, 1), date(2200, 1, 1)), lines.filter(bool)), max_size=8
)


@given(entries)
def test_a_reference_library_reads_what_is_written(planned: list[Entry]) -> None:
    calendar = icalendar.Calendar.from_ical(write(planned, NOW))
    events = calendar.walk("VEVENT")
    assert [(e.decoded("DTSTART"), str(e["SUMMARY"])) for e in events] == [
        (entry.day, entry.text) for entry in planned
    ]
    assert len({str(e["UID"]) for e in events}) == len(planned)
    assert not [e.errors for e in events if e.errors]


@given(entries)
def test_we_read_what_we_write(planned: list[Entry]) -> None:
    data = write(planned, NOW)
    assert all(len(line) <= FOLD for line in data.split(b"\r\n"))
    found = read(data)
    if not planned:
        assert isinstance(found, Failed)
        return
    assert isinstance(found, list)
    assert [(e.day, e.text) for e in found] == [
        (e.day, e.text) for e in sorted(planned, key=lambda e: e.day)
    ]


def test_what_the_reference_library_writes_is_read() -> None:
    calendar = icalendar.Calendar()
    calendar.add("prodid", "-//check//")
    calendar.add("version", "2.0")
    event = icalendar.Event()
    event.add("summary", "20 min easy, 8 x 200 m fast / 200 m jog; then 10 min easy")
    event.add("dtstart", datetime(2026, 6, 17, 18, 30))
    event.add("description", "on the track\nwith Aldo")
    alarm = icalendar.Alarm()
    alarm.add("description", "Reminder")
    event.add_component(alarm)
    calendar.add_component(event)
    found = read(calendar.to_ical())
    assert isinstance(found, list)
    assert found[0].day == date(2026, 6, 17)
    assert found[0].text == "20 min easy, 8 x 200 m fast / 200 m jog; then 10 min easy"
    assert found[0].note == "on the track\nwith Aldo"


def test_races_are_shown_but_not_planned_again() -> None:
    data = write([Entry(date(2026, 8, 2), "Half", "Race", "race-1", race=True)], NOW)
    assert str(icalendar.Calendar.from_ical(data).walk("VEVENT")[0]["SUMMARY"]) == "Half"
    assert isinstance(read(data), Failed)


def test_no_calendar() -> None:
    assert read(b"Mon: 40 min easy") is None


@given(st.binary(max_size=300))
def test_any_bytes_give_an_answer(data: bytes) -> None:
    found = read(b"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n" + data)
    assert isinstance(found, (list, Failed))

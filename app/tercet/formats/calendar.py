"""Calendars by RFC 5545: a plan written as whole-day events, and events read back as lines."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from tercet.domain import Failed
from tercet.language import tr

FORMAT = "iCalendar"
#: Lines are folded at this many octets, section 3.1 of the RFC.
FOLD = 75
MAX_BYTES = 5_000_000
_OURS = "tercet"
_DATE = re.compile(r"(\d{4})(\d\d)(\d\d)(?:T(\d\d)(\d\d)(\d\d)(Z?))?$")
_ESCAPED = re.compile(r"\\([\\;,nN])")


@dataclass(frozen=True)
class Entry:
    """A whole-day event: one line of a plan, or a race. ``key`` stays when it is written again."""

    day: date
    text: str
    note: str = ""
    key: str = ""
    race: bool = False


def write(entries: Sequence[Entry], now: datetime | None = None) -> bytes:
    """Write a calendar that any calendar program shows.

    Parameters
    ----------
    entries : sequence of Entry
    now : datetime or None
        Aware; when it was written.

    Returns
    -------
    bytes
        UTF-8 with CRLF, lines folded at 75 octets. An entry written again has the same UID, so
        that it takes the place of the earlier one.
    """
    stamp = (now or datetime.now(UTC)).astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Tercet//Season plan//EN"]
    for number, entry in enumerate(entries):
        after = entry.day + timedelta(days=1)
        lines += [
            "BEGIN:VEVENT",
            f"UID:{entry.key or f'{entry.day:%Y%m%d}-{number}'}@{_OURS}",
            f"DTSTAMP:{stamp}",
            f"DTSTART;VALUE=DATE:{entry.day:%Y%m%d}",
            f"DTEND;VALUE=DATE:{after:%Y%m%d}",
            f"SUMMARY:{_escape(entry.text)}",
            *([f"DESCRIPTION:{_escape(entry.note)}"] if entry.note else []),
            f"CATEGORIES:{'RACE' if entry.race else 'RUNNING'}",
            "TRANSP:TRANSPARENT",
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return b"".join(_folded(line) for line in lines)


def _escape(text: str) -> str:
    plain = " ".join(text.split()) if "\r" in text else text
    plain = "".join(c for c in plain if c == "\n" or c >= " ")
    for mark in ("\\", ";", ","):
        plain = plain.replace(mark, "\\" + mark)
    return plain.replace("\n", "\\n")


def _folded(line: str) -> bytes:
    """Break a line between characters, so that no part has more than 75 octets."""
    parts: list[bytes] = [b""]
    for letter in line:
        octets = letter.encode()
        if len(parts[-1]) + len(octets) > FOLD:
            parts.append(b" ")
        parts[-1] += octets
    return b"\r\n".join(parts) + b"\r\n"


def read(data: bytes) -> list[Entry] | Failed | None:
    """Read a calendar's events as lines of a plan.

    Parameters
    ----------
    data : bytes

    Returns
    -------
    list of Entry, Failed or None
        None if it is no calendar. An event with a time stands on its local day as written (on
        UTC's day if it is given in UTC). Races and events without words are left out; repeated
        events count once, on their first day. Failed if nothing is left.
    """
    if b"BEGIN:VCALENDAR" not in data[:2000].upper():
        return None
    if len(data) > MAX_BYTES:
        return Failed(tr("The calendar is larger than 5 MB."), format=FORMAT)
    text = re.sub(r"\r?\n[ \t]", "", data.decode("utf-8-sig", "replace"))
    entries: list[Entry] = []
    fields: dict[str, str] | None = None
    inner = 0  # alarms inside an event have words of their own
    for line in text.splitlines():
        head, _, value = line.partition(":")
        name = head.split(";")[0].strip().upper()
        if name == "BEGIN":
            if value.strip().upper() == "VEVENT":
                fields, inner = {}, 0
            elif fields is not None:
                inner += 1
        elif name == "END" and fields is not None:
            if inner:
                inner -= 1
            else:
                entries += _entry(fields)
                fields = None
        elif fields is not None and not inner:
            # A colon may stand in a quoted parameter; the value then begins after the quotes.
            if head.count('"') % 2:
                value = value.partition('":')[2]
            fields.setdefault(name, value)
    if not entries:
        return Failed(tr("The calendar holds no event to plan."), "passed over", FORMAT)
    return sorted(entries, key=lambda entry: entry.day)


def _entry(fields: dict[str, str]) -> list[Entry]:
    day = _day(fields.get("DTSTART", ""))
    text = " ".join(_plain(fields.get("SUMMARY", "")).split())
    race = "RACE" in fields.get("CATEGORIES", "").upper().split(",")
    if day is None or not text or race or fields.get("STATUS", "").upper() == "CANCELLED":
        return []
    key = fields.get("UID", "").removesuffix(f"@{_OURS}")
    return [Entry(day, text, _plain(fields.get("DESCRIPTION", "")).strip(), key)]


def _day(value: str) -> date | None:
    found = _DATE.match(value.strip())
    if found is None:
        return None
    try:
        return date(int(found[1]), int(found[2]), int(found[3]))
    except ValueError:
        return None


def _plain(value: str) -> str:
    return _ESCAPED.sub(lambda found: "\n" if found[1] in "nN" else found[1], value)

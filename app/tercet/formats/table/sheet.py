"""From the bytes of a delimited text to its cells: encoding, delimiter, heading row."""

from __future__ import annotations

import csv
import hashlib
import io
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from tercet.formats.table.workbook import ZIP_MAGIC, rows_of

#: Larger tables are refused. [bytes]
MAX_TABLE_BYTES = 32 * 2**20
MAX_COLUMNS = 300
#: Longer cells are no cell. [characters]
MAX_CELL = 20_000
_DELIMITERS = ",;\t"
_LOOKED_AT = 60
#: So many lines of other text may stand above the heading.
_PREAMBLE = 12
_NUMBER_LIKE = re.compile(r"[-+]?[\d.,:/ -]*\d[\d.,:/ TZ-]*")


@dataclass(frozen=True)
class Sheet:
    """Cells of a table. ``header`` is empty where no row names the columns."""

    header: tuple[str, ...]
    rows: list[list[str]]
    first_line: int  # of the first row, counted from 1
    delimiter: str

    @property
    def width(self) -> int:
        """Number of columns."""
        return len(self.header) or max((len(row) for row in self.rows[:_LOOKED_AT]), default=0)

    @property
    def shape(self) -> str:
        """What a naming of columns is remembered by: the heading, or how many columns."""
        told = "\x1f".join(cell.strip().casefold() for cell in self.header)
        return hashlib.sha256((told or f"{self.width} columns").encode()).hexdigest()[:16]

    def column(self, index: int) -> list[str]:
        """The cells of a column, blanks around them taken off."""
        return [row[index].strip() if index < len(row) else "" for row in self.rows]


def decoded(data: bytes) -> str | None:
    """Text in UTF-8, in UTF-16 with its mark, or in Windows' western code page; else None."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return data.decode("utf-16")
        except UnicodeDecodeError:
            return None
    if b"\0" in data:
        return None
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")


def sheet_of(data: bytes) -> Sheet | None:
    """Take a text for a table.

    Parameters
    ----------
    data : bytes
        The whole file: delimited text, or a spreadsheet.

    Returns
    -------
    Sheet or None
        None where the lines do not fall into at least two columns alike.

    Raises
    ------
    Refused
        For a spreadsheet that is damaged or over a bound.
    """
    if data.startswith(ZIP_MAGIC):
        return _of_rows([[cell[:MAX_CELL] for cell in row] for row in rows_of(data)], "")
    text = decoded(data)
    if text is None:
        return None
    head = [line for line in text[:100_000].splitlines()[: _LOOKED_AT + _PREAMBLE] if line.strip()]
    if len(text) > 100_000 and head:
        head.pop()  # cut in the middle
    delimiter = _delimiter(head)
    if not delimiter:
        return None
    try:
        # csv's own limit is for all the process; longer cells are cut off here instead
        rows = [
            [cell[:MAX_CELL] for cell in row]
            for row in csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
        ]
    except csv.Error:
        return None
    return _of_rows(rows, delimiter)


def _of_rows(rows: list[list[str]], delimiter: str) -> Sheet | None:
    """Find the heading among rows of cells."""
    rows = [[] if not any(row) else row for row in rows] if not delimiter else rows
    width = Counter(len(row) for row in rows[:_LOOKED_AT] if len(row) > 1).most_common(1)
    if not width or width[0][0] > MAX_COLUMNS:
        return None
    columns = width[0][0]
    first = next((k for k, row in enumerate(rows) if _is_full(row, columns)), None)
    if first is None or first > _PREAMBLE:
        return None
    header: tuple[str, ...] = ()
    if _names_columns(rows[first]):
        header = tuple(cell.strip() for cell in rows[first])
        first += 1
    body = rows[first:]
    while body and not any(cell.strip() for cell in body[-1]):
        body.pop()
    return Sheet(header, body, first + 1, delimiter) if body else None


def _is_full(row: Sequence[str], columns: int) -> bool:
    """Whether a row is one of the table, not a title above it."""
    return len(row) == columns and 2 * sum(bool(cell.strip()) for cell in row) >= columns


def _delimiter(lines: Sequence[str]) -> str:
    """The mark that cuts most lines into the same number of cells, more cells before fewer."""
    best, wins = "", (0.0, 0)
    for mark in _DELIMITERS:
        try:
            counts = Counter(len(row) for row in csv.reader(lines, delimiter=mark))
        except csv.Error:
            continue
        if not counts:
            continue
        width, often = max(counts.items(), key=lambda item: (item[0] > 1, item[1], item[0]))
        share = often / sum(counts.values())
        if width > 1 and share >= 0.6 and (round(share, 1), width) > wins:
            best, wins = mark, (round(share, 1), width)
    return best


def _names_columns(row: Sequence[str]) -> bool:
    """Whether a row holds words, not values."""
    told = [cell.strip() for cell in row if cell.strip()]
    return bool(told) and not any(_NUMBER_LIKE.fullmatch(cell) for cell in told)

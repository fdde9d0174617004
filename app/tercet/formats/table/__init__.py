"""Tables as text: a run's samples, or one run a line; columns told by headings or by the runner."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, tzinfo

from tercet.domain import Failed, Recording
from tercet.formats.table.columns import Column, Naming, headings
from tercet.formats.table.naming import Question, naming_of
from tercet.formats.table.runs import FORMAT, Table, TableRun, read_runs
from tercet.formats.table.samples import read_samples
from tercet.formats.table.sheet import Sheet, sheet_of

__all__ = ["FORMAT", "Column", "Naming", "Question", "Sheet", "Table", "TableRun", "naming_of",
           "read_table", "sheet_of"]  # fmt: skip

#: Rows of at least so many columns alike are a table even where no heading is understood.
LEAST_COLUMNS, LEAST_ROWS = 3, 3
#: With so many headings understood it is one, whatever else its lines look like.
LEAST_HEADINGS = 2


def read_table(
    data: bytes,
    name: str = "",
    known: Mapping[str, Naming] | None = None,
    start: datetime | None = None,
    zone: tzinfo | None = None,
    *,
    certain: bool = False,
) -> list[Recording] | Table | Failed | None:
    """Read a table.

    Parameters
    ----------
    data : bytes
        Text in UTF-8, UTF-16 with its mark, or Windows' western code page.
    name : str
        For a recording.
    known : mapping of str to Naming
        Namings of columns by the shape of the table (:attr:`Sheet.shape`).
    start : datetime or None
        When the run began, for samples that count from their start.
    zone : tzinfo or None
        Zone of clocks without an offset; None for the computer's.
    certain : bool
        Read it only if all of its columns are understood; else None.

    Returns
    -------
    list of Recording, Table, Failed or None
        None if it is no table. Failed with a question where the columns are not clear.
    """
    sheet = sheet_of(data)
    if sheet is None:
        return None
    try:
        naming = (known or {}).get(sheet.shape) or naming_of(sheet)
    except Question as question:
        understood = len(headings(sheet)) >= LEAST_HEADINGS
        small = sheet.width < LEAST_COLUMNS or len(sheet.rows) < LEAST_ROWS
        if not understood and (certain or small):
            return None
        return Failed(str(question), format="CSV")
    if naming.holds == "runs":
        return read_runs(sheet, naming)
    found = read_samples(sheet, naming, name, start, zone)
    return found if isinstance(found, Failed) else [found]

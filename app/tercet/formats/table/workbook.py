"""From a spreadsheet's file to the cells of its first sheet, as text; within fixed limits."""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from datetime import date, datetime, time, timedelta

from tercet.formats.unpack import Refused
from tercet.language import grouped, tr

#: The member that makes a zip file a spreadsheet.
WORKBOOK = "xl/workbook.xml"
ZIP_MAGIC = b"PK\x03\x04"
#: Parts that the cells come from; pictures, macros and the rest are never unpacked.
_PARTS = re.compile(
    r"\[Content_Types\]\.xml|_rels/\.rels|xl/(?:_rels/[^/]+\.rels|workbook\.xml|styles\.xml"
    r"|sharedStrings\.xml|worksheets/[^/]+\.xml)",
    re.IGNORECASE,
)
#: Unpacked parts together, and the corner of the cells. [bytes], [cells]
MAX_UNPACKED = 96 * 2**20
MAX_CELLS = 3_000_000
MAX_PARTS = 500
_PLACE = re.compile(rb"""\br\s*=\s*["']([A-Za-z]{0,7})([0-9]{1,10})["']""")
_ROW, _CELL = re.compile(rb"<(?:\w+:)?row[\s/>]"), re.compile(rb"<(?:\w+:)?c[\s/>]")
#: Day 0 of spreadsheets up to February 1900; a day of those weeks is a length of time.
_DAY_0, _LENGTHS_UNTIL = datetime(1899, 12, 31), datetime(1900, 3, 1)
_DAMAGED = (zipfile.BadZipFile, OSError, ValueError, NotImplementedError, EOFError, RuntimeError,
            zlib.error)  # fmt: skip


def names_in(data: bytes) -> list[str]:
    """Names of a zip file's members, none where it is damaged."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            return packed.namelist()
    except _DAMAGED:
        return []


def is_office(names: list[str]) -> bool:
    """Whether a zip file's members are those of a document of an office program."""
    return "[Content_Types].xml" in names or names[:1] == ["mimetype"]


def rows_of(data: bytes) -> list[list[str]]:
    """The cells of the first sheet that is shown.

    Days are ISO 8601, times of day ``hh:mm:ss``, lengths of time ``h:mm:ss`` with as many hours
    as there are; numbers have a point.

    Parameters
    ----------
    data : bytes
        The whole file.

    Raises
    ------
    Refused
        With a plain reason: damaged, locked, or over a bound.
    """
    safe = _unpacked(data)
    # only whoever has a spreadsheet waits for its reader
    from python_calamine import CalamineError, CalamineWorkbook, SheetTypeEnum, SheetVisibleEnum

    try:
        book = CalamineWorkbook.from_filelike(safe)
        shown = [
            sheet.name
            for sheet in book.sheets_metadata
            if sheet.typ == SheetTypeEnum.WorkSheet and sheet.visible == SheetVisibleEnum.Visible
        ]
        if not shown:
            raise Refused(tr("The spreadsheet has no sheet that is shown."))
        cells = book.get_sheet_by_name(shown[0]).to_python(skip_empty_area=False)
    except (CalamineError, ValueError, OSError) as error:
        raise Refused(tr("The spreadsheet is damaged: {error}.", error=error)) from error
    return [[text_of(cell) for cell in row] for row in cells]


def text_of(cell: object) -> str:
    """A cell as it would be typed."""
    if isinstance(cell, datetime):
        if cell < _LENGTHS_UNTIL:
            return text_of(cell - _DAY_0)
        return f"{cell.date()}" if cell.time() == time() else f"{cell:%Y-%m-%d %H:%M:%S}"
    if isinstance(cell, timedelta):
        seconds = round(cell.total_seconds())
        return f"{seconds // 3600}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"
    if isinstance(cell, time):
        return f"{cell:%H:%M:%S}"
    if isinstance(cell, date):
        return cell.isoformat()
    if isinstance(cell, bool):
        return ""
    if isinstance(cell, float):
        return f"{cell:.10g}"
    return str(cell)


def _unpacked(data: bytes) -> io.BytesIO:
    """The parts that are needed, unpacked and packed no more, so that no trap is left to unpack."""
    safe = io.BytesIO()
    try:
        with (
            zipfile.ZipFile(io.BytesIO(data)) as packed,
            zipfile.ZipFile(safe, "w", zipfile.ZIP_STORED) as out,
        ):
            wanted = [info for info in packed.infolist() if _PARTS.fullmatch(info.filename)]
            if len(wanted) > MAX_PARTS:
                raise Refused(tr("The spreadsheet has more than {most} parts.", most=MAX_PARTS))
            left = MAX_UNPACKED
            for info in wanted:
                with packed.open(info) as part:
                    text = part.read(left + 1)
                left -= len(text)
                if left < 0:
                    raise Refused(tr("Unpacked it is larger than {mb} MB.", mb=MAX_UNPACKED >> 20))
                if info.filename.startswith("xl/worksheets/"):
                    _check_corner(text)
                out.writestr(info.filename, text)
    except zlib.error as error:
        raise Refused(
            tr("The spreadsheet is damaged: one of its parts cannot be unpacked.")
        ) from error
    except _DAMAGED as error:
        raise Refused(tr("The spreadsheet is damaged: {error}.", error=error)) from error
    safe.seek(0)
    return safe


def _check_corner(sheet: bytes) -> None:
    """Refuse a sheet that would take memory for cells that nobody filled."""
    rows, columns = len(_ROW.findall(sheet)), 1
    cells = len(_CELL.findall(sheet))
    for letters, figures in set(_PLACE.findall(sheet)):
        rows = max(rows, int(figures))
        place = 0
        for letter in letters.upper():
            place = place * 26 + letter - 64
        columns = max(columns, place)
    if rows * columns > MAX_CELLS or cells > MAX_CELLS:
        raise Refused(tr("Its first sheet spans more than {most} cells.", most=grouped(MAX_CELLS)))


__all__ = ["WORKBOOK", "ZIP_MAGIC", "is_office", "names_in", "rows_of", "text_of"]

"""The tables of a review as comma-separated text, and files that are whole or absent."""

from __future__ import annotations

import csv
import io
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from tercet.language import tr

if TYPE_CHECKING:
    from tercet.library.review.content import Page, Review

EXACT = ("easy_s", "moderate_s", "hard_s", "unjudged_s")


def as_csv(page: Page) -> str:
    """A page's table; numbers as on the page, and exact seconds where there are some."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    table = page.table
    writer.writerow((*table.headings, *(EXACT if table.exact else ())))
    for k, row in enumerate(table.rows):
        exact: tuple[object, ...] = ()
        if table.exact:
            exact = table.exact[k] if k < len(table.exact) else ("",) * len(EXACT)
        writer.writerow((*(safe(cell) for cell in row), *exact))
    return out.getvalue()


def safe(cell: str) -> str:
    """Keep a spreadsheet from taking words for a formula."""
    return f"'{cell}" if cell[:1] in ("=", "+", "-", "@", "\t", "\r") else cell


def file_name(number: int, page: Page, ending: str) -> str:
    """Name of a page's own file: ``03-build-up-by-block.csv``."""
    words = "".join(c if c.isalnum() else "-" for c in page.name.lower())
    while "--" in words:
        words = words.replace("--", "-")
    return f"{number:02d}-{words.strip('-')}.{ending}"


def plain_name(words: str) -> str:
    """Words as the name of a file on every system."""
    bare = "".join(" " if c in '<>:"/\\|?*' or ord(c) < 32 else c for c in words)
    return " ".join(bare.split()).strip(". ")[:120] or tr("Review")


def free(place: Path) -> Path:
    """The place, or the next one by number that nothing stands at yet."""
    number, found = 2, place
    while found.exists():
        found = place.with_name(f"{place.stem} {number}{place.suffix}")
        number += 1
    return found


def with_ending(place: Path, endings: Sequence[str]) -> Path:
    """The place with one of these endings; where one had to be put on, nothing stands there yet."""
    if place.suffix.lower().lstrip(".") in endings:
        return place
    return free(place.with_name(f"{place.name}.{endings[0]}"))


def write_tables(review: Review, beside: Path) -> list[Path]:
    """Write the tables of all shown pages into a new folder inside a folder."""
    name = plain_name(tr("{name}, {runner}, tables", name=review.name, runner=review.runner))
    folder = free(beside / name.replace(".", " "))
    folder.mkdir(parents=True)
    written = []
    for number, page in enumerate(review.shown, 1):
        place = folder / file_name(number, page, "csv")
        write_whole(place, as_csv(page).encode("utf-8"))
        written.append(place)
    return written


def write_whole(place: Path, data: bytes) -> None:
    """Write a file beside its place and put it there when it is whole.

    Raises
    ------
    OSError
        If the disk is full or cannot be written; what stood there before still does.
    """
    part = place.with_name(f".{place.name}.part")
    try:
        with part.open("wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        part.replace(place)
    except BaseException:
        part.unlink(missing_ok=True)
        raise

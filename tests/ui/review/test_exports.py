"""What is written of a review: the same figures everywhere, real text, vectors, whole files."""

from __future__ import annotations

import io
import re
import shutil
import unicodedata
from datetime import date, timedelta
from pathlib import Path
from threading import Event
from xml.etree import ElementTree

import html5lib
import pypdf
import pypdfium2
import pytest
from PySide6.QtWidgets import QApplication

from tercet.domain import Block, Race
from tercet.library import operations
from tercet.library.library import Library
from tercet.library.review import build, choices, tables
from tercet.library.review.choices import Choices
from tercet.library.review.content import Review
from tercet.ui import theme
from tercet.ui.review import frame, looks, paper, web
from tercet.ui.review.board import Mark
from tercet.ui.review.frame import Foot
from tercet.ui.review.writing import Stopped

AFTER = date(2026, 10, 1)


@pytest.fixture(autouse=True)
def fonts(qapp: QApplication) -> None:
    theme.apply(qapp, False)


def plain(text: str) -> str:
    """Text without what a reader puts between words."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFKC", text))


@pytest.fixture(scope="module")
def written(review: Review, qapp: QApplication) -> bytes:
    theme.apply(qapp, False)
    return paper.pdf(review, looks.look("light", paper=True), "a4")


def test_every_number_is_equal_in_pdf_html_and_csv(review: Review, written: bytes) -> None:
    reader = pypdf.PdfReader(io.BytesIO(written))
    pdf = plain(" ".join(page.extract_text() for page in reader.pages))
    second = pypdfium2.PdfDocument(written)
    other = plain(" ".join(page.get_textpage().get_text_range() for page in second))
    second.close()
    tree = html5lib.parse(web.html(review, looks.look("light")), namespaceHTMLElements=False)
    page_text = plain(" ".join(tree.itertext()))
    for page in review.shown:
        comma = plain(tables.as_csv(page))
        for row in (page.table.headings, *page.table.rows):
            for cell in row:
                for place in (pdf, other, page_text, comma.replace('"', "")):
                    assert plain(cell) in place, (page.key, cell)
        for text in (page.title, page.line):
            assert plain(text) in pdf
            assert plain(text) in page_text


def test_every_number_on_a_page_stands_in_its_table_or_claim(review: Review) -> None:
    """Labels of the pictures are figures of the table, but for the marks of axes."""
    for number, page in enumerate(review.shown, 1):
        drawing = web.svg(page, looks.look("light"), Foot("R", number, len(review.shown)))
        words = [text.text or "" for text in ElementTree.fromstring(drawing).iter() if text.text]
        cells = plain(" ".join(cell for row in page.table.rows for cell in row))
        said = [w for w in words if re.fullmatch(r"(about )?\d+:\d\d(:\d\d)?", w)]
        for figure in said:
            assert plain(figure) in cells, (page.key, figure)


def test_every_number_and_every_shape_leads_to_its_runs(review: Review) -> None:
    from PySide6.QtGui import QImage, QPainter

    picture = QImage(1366, 768, QImage.Format.Format_RGB32)
    for page in review.shown:
        spots: list[Mark] = []
        painter = QPainter(picture)
        marks = frame.paint(painter, page, looks.look("light"), 1366, 768, Foot("", 1, 1), spots)
        painter.end()
        if page.key not in ("curve", "next"):
            assert spots, page.key
        for mark in (*marks, *spots):
            assert mark.row is None or mark.row < len(page.table.rows), page.key
        # What no run stands behind: thresholds, gaps, empty weeks, races not recorded, words.
        for k, row in enumerate(page.table.rows):
            without = page.key == "next" or row[1].startswith(("thresholds", "no runs"))
            empty = "0:00" in row if page.key in ("weeks", "volume") else row[-1] == "–"
            assert page.table.behind(k) or without or empty, (page.key, row)


def test_the_pdf_is_vector_text_with_bookmarks_and_language(review: Review, written: bytes) -> None:
    # A strict reader complains of what others pass over.
    reader = pypdf.PdfReader(io.BytesIO(written), strict=True)
    assert not any(page.images for page in reader.pages)
    assert reader.trailer["/Root"]["/Lang"] == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == f"{review.name}, {review.runner}"
    titles = [item.title for item in reader.outline if not isinstance(item, list)]
    assert titles[: len(review.shown)] == [page.title for page in review.shown]
    assert titles[-1] == "The numbers"
    for page in reader.pages:
        for font in page["/Resources"]["/Font"].values():
            descendant = font.get_object()["/DescendantFonts"][0].get_object()
            assert "/FontFile2" in descendant["/FontDescriptor"]
    assert len(written) < 2_000_000


@pytest.mark.parametrize(("name", "size"), [("letter", (792, 612)), ("wide", (960, 540))])
def test_other_papers(review: Review, name: str, size: tuple[int, int]) -> None:
    data = paper.pdf(review, looks.look("ink", paper=True), name)
    box = pypdf.PdfReader(io.BytesIO(data)).pages[0].mediabox
    assert (round(box.width), round(box.height)) == size


def test_no_place_leaves_the_program(review: Review, written: bytes) -> None:
    reader = pypdf.PdfReader(io.BytesIO(written))
    text = " ".join(page.extract_text() for page in reader.pages)
    text += web.html(review, looks.look("light")).decode("utf-8")
    assert not re.search(r"\b-?\d{1,2}\.\d{4,}\s*,\s*-?\d{1,3}\.\d{4,}\b(?=.{0,20}°)", text)
    assert ".fit" not in text
    assert ".gpx" not in text


def test_the_html_is_valid_and_asks_for_nothing(review: Review) -> None:
    text = web.html(review, looks.look("dark")).decode("utf-8")
    parser = html5lib.HTMLParser(strict=True)
    parser.parse(text)
    links = re.findall(r'(?:src|href|url)\s*[=(]\s*"?([^"\s)>]+)', text)
    assert links
    assert all(link.startswith(("#", "data:")) for link in links)
    assert "<script" not in text


def test_it_can_be_stopped(review: Review) -> None:
    stop = Event()
    stop.set()
    with pytest.raises(Stopped):
        paper.pdf(review, looks.look("light"), "a4", stop=stop)
    with pytest.raises(Stopped):
        web.html(review, looks.look("light"), stop=stop)


@pytest.mark.parametrize("size", [(1280, 720), (1366, 768), (1920, 1080), (1024, 768), (1403, 992)])
@pytest.mark.parametrize("name", list(looks.LOOKS))
def test_words_are_large_inside_the_page_and_apart(
    review: Review, size: tuple[int, int], name: str
) -> None:
    from PySide6.QtGui import QImage, QPainter

    picture = QImage(*size, QImage.Format.Format_RGB32)
    for number, page in enumerate(review.shown, 1):
        painter = QPainter(picture)
        marks = frame.paint(painter, page, looks.look(name), *size, Foot(review.runner, number, 9))
        painter.end()
        assert marks
        for k, mark in enumerate(marks):
            assert mark.size >= 24
            assert mark.rect.left() >= 0
            assert mark.rect.top() >= 0
            assert mark.rect.right() <= size[0], (page.key, mark.words)
            assert mark.rect.bottom() <= size[1], (page.key, mark.words)
            for other in marks[k + 1 :]:
                assert not mark.rect.intersects(other.rect), (page.key, mark.words, other.words)


def test_every_page_of_a_season_without_runs_can_be_painted(library: Library) -> None:
    from PySide6.QtGui import QImage, QPainter

    review, _ = library.call(build.review, "", date(2026, 4, 13))
    picture = QImage(1366, 768, QImage.Format.Format_RGB32)
    for page in review.pages:
        painter = QPainter(picture)
        marks = frame.paint(painter, page, looks.look("light"), 1366, 768, Foot("", 1, 1))
        painter.end()
        assert page.title in " ".join(mark.words for mark in marks)


@pytest.fixture(scope="module")
def crowded(tmp_path_factory: pytest.TempPathFactory, reviewed_store: Path) -> Review:
    """Twelve blocks with long names, races close together, and a coach of many words."""
    folder = tmp_path_factory.mktemp("crowded") / "store"
    shutil.copytree(reviewed_store, folder)
    library = Library(folder)
    first = date(2026, 4, 13)
    plan = [
        Block(
            first + timedelta(days=14 * k),
            first + timedelta(days=14 * k + 13),
            f"Aerobic foundation and hills number {k}",
        )
        for k in range(12)
    ]
    races = [
        Race(date(2026, 7, 26), "The very long name of a harbour race over ten kilometres", 1e4),
        Race(date(2026, 8, 2), "Another race a week later", 5000.0),
        Race(date(2026, 9, 27), "Corvaleta Half", 21097.5),
    ]
    library.call(operations.set_plan, plan, races)
    chosen = Choices(
        titles={"blocks": "A title that a coach wrote " + "at great length " * 12},
        remarks={"blocks": "A remark of many " + "words " * 60, "weeks": "One remark"},
        next_lines=tuple(f"A long line that the coach wrote for it, {k}" for k in range(14)),
    )
    library.call(choices.keep, library.call(build.review, "", AFTER)[0].scope, chosen)
    made, _ = library.call(build.review, "", AFTER)
    library.close()
    return made


@pytest.mark.parametrize("size", [(1280, 720), (1024, 768), (1403, 992)])
def test_two_blocks_stay_apart_too(reviewed_store: Path, size: tuple[int, int]) -> None:
    library = Library(reviewed_store)
    made, _ = library.call(build.review, "2026-04-13+2026-08-10", AFTER, "miles")
    library.close()
    assert made.shown[0].key == "pair"
    test_words_are_large_inside_the_page_and_apart(made, size, "ink")


@pytest.mark.parametrize("size", [(1280, 720), (1366, 768), (1024, 768), (1403, 992)])
def test_a_crowded_season_stays_apart_as_well(crowded: Review, size: tuple[int, int]) -> None:
    test_words_are_large_inside_the_page_and_apart(crowded, size, "light")
    data = paper.pdf(crowded, looks.look("light", paper=True), "letter")
    text = plain(" ".join(p.extract_text() for p in pypdf.PdfReader(io.BytesIO(data)).pages))
    assert plain("A long line that the coach wrote for it, 13") in text

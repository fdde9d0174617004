"""The review as one HTML file that needs nothing else: pictures, tables and letters inside."""

from __future__ import annotations

import base64
import io
import logging
from functools import lru_cache
from html import escape
from threading import Event

from fontTools import subset, ttLib
from fontTools.varLib import instancer
from PySide6.QtCore import QSize

from tercet import language, resources
from tercet.language import tr
from tercet.library.review.content import Page, Review
from tercet.ui import drawing
from tercet.ui.review import frame
from tercet.ui.review.board import HEIGHT, WIDTH
from tercet.ui.review.frame import Foot
from tercet.ui.review.looks import Look
from tercet.ui.review.writing import Progress, Stopped, title_of
from tercet.ui.theme import SANS, SERIF

#: Files of the fonts that pages use, with the family and slant they are told by.
_FACES: tuple[tuple[str, str, str, dict[str, float]], ...] = (
    ("SourceSans3-Upright.ttf", SANS, "normal", {}),
    ("SourceSans3-Italic.ttf", SANS, "italic", {"wght": 400}),
    ("SourceSerif4-Upright.ttf", SERIF, "normal", {"wght": 600, "opsz": 40}),
)
#: Letters of every page whatever stands on it.
_ALWAYS = "0123456789 .,:;%/–…×abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

# The library tells every table it leaves alone.
logging.getLogger("fontTools").setLevel(logging.ERROR)


def svg(page: Page, look: Look, foot: Foot, width: float = WIDTH, height: float = HEIGHT) -> str:
    """A page as a drawing whose words are words."""
    return drawing.svg(
        QSize(round(width), round(height)),
        page.title,
        page.line,
        lambda painter: frame.paint(painter, page, look, width, height, foot),
    )


def html(
    review: Review, look: Look, progress: Progress | None = None, stop: Event | None = None
) -> bytes:
    """Write the review as one page of HTML with every picture and every table in it."""
    parts = []
    pages = review.shown
    for number, page in enumerate(pages, 1):
        if stop is not None and stop.is_set():
            raise Stopped
        drawing = svg(page, look, Foot(review.runner, number, len(pages)))
        parts.append(_section(number, page, inline(drawing, page)))
        if progress is not None:
            progress(number, len(pages))
    title = escape(title_of(review))
    links = "\n".join(
        f'<li><a href="#page-{k}">{escape(page.title)}</a></li>' for k, page in enumerate(pages, 1)
    )
    body = "\n".join(parts)
    pages_word = escape(tr("Pages"), quote=True)
    text = (
        f'<!DOCTYPE html>\n<html lang="{language.code()}">\n<head>\n<meta charset="utf-8">\n'
        f'<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{title}</title>\n<style>\n{_style(look, _letters(review))}</style>\n</head>\n"
        f'<body>\n<header><h1>{title}</h1>\n<nav aria-label="{pages_word}"><ol>\n{links}\n'
        f"</ol></nav></header>\n<main>\n{body}\n</main>\n</body>\n</html>\n"
    )
    return text.encode("utf-8")


def inline(drawing: str, page: Page) -> str:
    """Cut a drawing's file down to the element that stands in a page of HTML."""
    start = drawing.index("<svg")
    head_end = drawing.index(">", start)
    inner = drawing[head_end + 1 :]
    inner = inner[inner.index("</desc>") + len("</desc>") :]
    view = drawing[drawing.index('viewBox="') :].split('"')[1]
    return (
        f'<svg viewBox="{view}" role="img" '
        f'aria-label="{escape(f"{page.title}. {page.line}", quote=True)}" '
        f'xmlns="http://www.w3.org/2000/svg">{inner.rstrip()}'
    )


def _section(number: int, page: Page, drawing: str) -> str:
    table = page.table
    head = "".join(f'<th scope="col">{escape(words)}</th>' for words in table.headings)
    rows = "\n".join(
        "<tr>"
        + "".join(
            f'<td class="w">{escape(cell)}</td>' if k in table.words else f"<td>{escape(cell)}</td>"
            for k, cell in enumerate(row)
        )
        + "</tr>"
        for row in table.rows
    )
    numbers = tr("Numbers of page {n}: {name}", n=number, name=page.name)
    return (
        f'<section id="page-{number}">\n<h2>{escape(page.title)}</h2>\n{drawing}\n'
        f"<details>\n<summary>{escape(numbers)}</summary>\n"
        f'<div class="t"><table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}\n</tbody>\n'
        "</table></div>\n</details>\n</section>"
    )


def _style(look: Look, letters: str) -> str:
    color = look.hex
    faces = "\n".join(_face(*face, letters=letters) for face in _FACES)
    return f"""{faces}
body {{ margin: 0 auto; max-width: 1100px; padding: 1rem; background: {color("window")};
  color: {color("text")}; font: 1rem/1.45 "{SANS}", sans-serif; }}
h1 {{ font: 600 1.7rem "{SERIF}", serif; }}
h2 {{ position: absolute; left: -999rem; }}
a {{ color: {color("text")}; }}
section {{ margin: 1.5rem 0; break-inside: avoid; }}
svg {{ display: block; width: 100%; height: auto; border: 1px solid {color("edge")};
  box-sizing: border-box; }}
summary {{ padding: .5rem 0; cursor: pointer; color: {color("text_2")}; }}
a:focus-visible, summary:focus-visible {{ outline: 2px solid {color("focus")};
  outline-offset: 2px; }}
.t {{ overflow-x: auto; }}
table {{ border-collapse: collapse; font-size: .9375rem; }}
th, td {{ padding: .15rem .7rem; text-align: right; border-bottom: 1px solid {color("rule")};
  font-variant-numeric: tabular-nums; }}
th:first-child, .w {{ text-align: left; }}
@media print {{ body {{ background: none; max-width: none; }} nav, summary {{ display: none; }} }}
"""


def _letters(review: Review) -> str:
    words = [_ALWAYS, review.runner, review.name]
    for page in review.shown:
        words += [page.title, page.line, page.remark, repr(page.picture)]
        words += [cell for row in (page.table.headings, *page.table.rows) for cell in row]
    return "".join(sorted(set("".join(words))))


def _face(file: str, family: str, slant: str, axes: dict[str, float], letters: str) -> str:
    """The rule that brings a font along, inside the style sheet."""
    weight = "600" if family == SERIF else "400" if axes else "200 900"
    data = base64.b64encode(_cut(file, tuple(axes.items()), letters)).decode("ascii")
    return (
        f'@font-face {{ font-family: "{family}"; font-style: {slant}; font-weight: {weight}; '
        f'src: url("data:font/woff;base64,{data}") format("woff"); }}'
    )


@lru_cache(maxsize=8)
def _cut(file: str, axes: tuple[tuple[str, float], ...], letters: str) -> bytes:
    """A font cut down to the letters used; kept, for it takes half a second."""
    font = ttLib.TTFont(resources.root() / "fonts" / file)
    options = subset.Options(layout_features=["kern", "tnum", "lnum", "mark"], hinting=False)
    cutter = subset.Subsetter(options)
    cutter.populate(text=letters)
    cutter.subset(font)
    if axes:
        # After the cut: the whole file takes seconds.
        font = instancer.instantiateVariableFont(font, dict(axes))
    font.flavor = "woff"
    out = io.BytesIO()
    font.save(out)
    return out.getvalue()

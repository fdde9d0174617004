"""Training diaries typed as text: a page to dated sessions, a session to pieces."""

from tercet.formats.paper.lines import Entry, is_rest, read_lines
from tercet.formats.paper.meaning import Unclear
from tercet.formats.paper.page import FORMAT, Page, PaperRun, read_page
from tercet.formats.paper.session import Session, parse_session
from tercet.formats.paper.shorthand import Guess, Shorthand, resolve

__all__ = [
    "FORMAT",
    "Entry",
    "Guess",
    "Page",
    "PaperRun",
    "Session",
    "Shorthand",
    "Unclear",
    "is_rest",
    "parse_session",
    "read_lines",
    "read_page",
    "resolve",
]

"""Training diaries typed as text: a page to dated sessions, a session to pieces."""

from tercet.formats.paper.meaning import Unclear
from tercet.formats.paper.page import FORMAT, Page, PaperRun, is_rest, read_page
from tercet.formats.paper.session import Session, parse_session

__all__ = [
    "FORMAT",
    "Page",
    "PaperRun",
    "Session",
    "Unclear",
    "is_rest",
    "parse_session",
    "read_page",
]

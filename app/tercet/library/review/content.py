"""What a review page holds: a claim, a line, a picture, and the numbers behind it."""

from __future__ import annotations

from dataclasses import dataclass, field

from tercet.library.review.pictures import Picture

#: Words on a page, its claim and its line together.
MOST_WORDS = 40


@dataclass(frozen=True)
class Table:
    """Numbers as they are written; the columns in ``words`` hold words and stand at the left.

    ``runs`` has, for each row, the ids of the runs behind it. ``exact`` has easy, moderate, hard
    and unjudged seconds of the first rows, for programs that read the numbers on.
    """

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    words: frozenset[int] = frozenset({0})
    runs: tuple[tuple[int, ...], ...] = ()
    exact: tuple[tuple[float, ...], ...] = ()

    def behind(self, row: int) -> tuple[int, ...]:
        """Ids of the runs behind a row."""
        return self.runs[row] if row < len(self.runs) else ()


@dataclass(frozen=True)
class Page:
    """One page of a review.

    ``name`` tells what it is about and does not change; ``title`` is the claim, which the coach
    may put in other words; ``remark`` is what the coach wrote on it, ``notes`` what only the
    presenter sees. ``missing`` says what would fill an empty page.
    """

    key: str
    name: str
    title: str
    line: str
    picture: Picture | None
    table: Table
    missing: str = ""
    remark: str = ""
    notes: str = ""
    hidden: bool = False
    retitled: bool = False

    @property
    def empty(self) -> bool:
        """Whether there is nothing to show on it."""
        return bool(self.missing)


@dataclass(frozen=True)
class Before:
    """What a coach wrote for the next block in the review before this one."""

    name: str  # what that review was about
    day: str  # when it was written; empty where that was not kept
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Review:
    """All pages in their order, those left out among them."""

    runner: str
    scope: str  # its key
    name: str  # of the season or the blocks
    pages: tuple[Page, ...]
    scopes: tuple[tuple[str, str], ...] = field(default=())  # key and name of what may be chosen
    before: Before | None = None

    @property
    def shown(self) -> tuple[Page, ...]:
        """The pages that are shown and written, in order."""
        return tuple(page for page in self.pages if not (page.hidden or page.empty))

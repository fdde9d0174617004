"""What all writers of a review share: telling progress, being stopped, the title."""

from __future__ import annotations

from collections.abc import Callable

from tercet.library.review.content import Review

Progress = Callable[[int, int], None]


class Stopped(Exception):
    """The user stopped it; nothing was written."""


def title_of(review: Review) -> str:
    """Title of the file."""
    return f"{review.name}, {review.runner}"

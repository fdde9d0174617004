"""What is asked on the command line, and the words that answer there; light, for every start."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn, TextIO

from tercet import __version__, language

if TYPE_CHECKING:
    from tercet.library.views import SeasonView


class UsageError(Exception):
    """A bad argument or file, in one clear line."""


class Parser(argparse.ArgumentParser):
    """Says what is wrong in one line, without the whole usage."""

    def error(self, message: str) -> NoReturn:
        """Raise instead of leaving the program."""
        raise UsageError(f"{message} (see {self.prog} --help)")


def parser() -> argparse.ArgumentParser:
    """The arguments of the window; ``tally`` has its own."""
    window = Parser(
        prog="tercet",
        description="A season tracker for distance runners: every second of every run judged "
        "easy, moderate or hard. `tercet tally --help` tells how to judge files without a window, "
        "`tercet review --help` how to write the season review.",
    )
    window.add_argument("paths", nargs="*", type=Path, help="recordings or folders to take in")
    window.add_argument(
        "--store",
        type=Path,
        metavar="DIR",
        help="keep everything in this folder; without it in the one that the variable TERCET_STORE "
        "names, else in your data folder",
    )
    window.add_argument(
        "--demo", action="store_true", help="open the example season in a store of its own"
    )
    window.add_argument(
        "--pictures",
        type=Path,
        metavar="DIR",
        help="write pictures of the screens to a folder instead of opening a window",
    )
    window.add_argument("--version", action="version", version=f"Tercet {__version__}")
    return window


def review_parser() -> argparse.ArgumentParser:
    """The arguments of ``tercet review``."""
    review = Parser(
        prog="tercet review",
        description="Write the season review as PDF or HTML, without a window or a display.",
    )
    review.add_argument(
        "paths", nargs="*", type=Path, metavar="PATH",
        help="recordings or folders of them; kept nowhere",
    )  # fmt: skip
    review.add_argument("--store", type=Path, metavar="DIR", help="review the runner kept here")
    review.add_argument(
        "--out", type=Path, required=True, metavar="FILE", help="ending in .pdf or .html"
    )
    review.add_argument("--theme", choices=("light", "dark", "ink"), default="light")
    review.add_argument("--paper", choices=("a4", "letter", "wide"), default="a4")
    review.add_argument(
        "--units", choices=("km", "miles"), help="without it those chosen in the window, else km"
    )
    review.add_argument(
        "--language", choices=tuple(language.languages()),
        help="without it the one chosen in the window, else the system's",
    )  # fmt: skip
    review.add_argument(
        "--about", default="", metavar="DAY",
        help="the block that begins on this day, such as 2026-04-13, or the season from one "
        "block's first day to another's, as DAY..DAY; two of either joined by +; without it the "
        "last season",
    )  # fmt: skip
    return review


def clock(seconds: float) -> str:
    """Hours, minutes and seconds."""
    whole = round(seconds)
    return f"{whole // 3600}:{whole // 60 % 60:02d}:{whole % 60:02d}"


def write_block_table(view: SeasonView, out: TextIO) -> None:
    """Print each block's easy, moderate and hard time and its share of easy."""
    width = max((len(block.name) for block in view.blocks), default=5)
    out.write(f"{'block':<{width}}  {'easy':>9} {'moderate':>9} {'hard':>9}  easy share\n")
    for block in view.blocks:
        times = " ".join(f"{clock(value):>9}" for value in block.seconds[:3])
        about = "about " if block.estimated else ""
        share = (
            "nothing run" if block.easy_share is None else f"{about}{100 * block.easy_share:.0f} %"
        )
        out.write(f"{block.name:<{width}}  {times}  {share}\n")


def complain(problem: str) -> int:
    """One clear line on stderr; gives the exit code."""
    sys.stderr.write(f"tercet: {problem}\n")
    return 2

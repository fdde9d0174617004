"""The README's grammar of paper logs is true: what it allows is read, as its examples say."""

from __future__ import annotations

import random
import re
from itertools import pairwise
from pathlib import Path

import pytest

from tercet.engine.notation import WORDS, stretches
from tercet.engine.shades import Shade, Thresholds
from tercet.formats.paper import Page, Session, parse_session, read_page
from tercet.library.paper_words import in_words

README = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
SECTION = README.split("## Paper log")[1].split("\n## ")[0]
GRAMMAR = SECTION.split("```\n")[1]
#: LT1 at 5:33/km, LT2 at 4:10/km: the table tells what was written, so speeds are not needed.
NOBODY = Thresholds()
#: What the grammar cannot know: whether somebody runs that, for so long.
SENSE = ("Nobody runs", "More than", "Does that time fit", "Minutes or metres", "Sets within")


def rows(head: str) -> list[list[str]]:
    """The cells of the table whose first row begins so."""
    table = SECTION.split(f"| {head} |")[1].split("\n\n")[0]
    lines = table.splitlines()[2:]
    return [[cell.strip().strip("`") for cell in line.strip("|").split(" | ")] for line in lines]


def told(session: Session) -> list[str]:
    """Amounts by shade as the table writes them."""
    out = []
    for shade in (Shade.EASY, Shade.MODERATE, Shade.HARD, Shade.NOT_RUNNING, Shade.UNJUDGED):
        found = [item for item in stretches(session.pieces, NOBODY) if item.shade == shade]
        seconds = sum(item.seconds or 0.0 for item in found)
        metres = sum(item.metres or 0.0 for item in found if item.seconds is None)
        clock = f"{int(seconds) // 60}:{int(seconds) % 60:02d} min"
        parts = [f"{seconds / 60:g} min" if seconds % 60 == 0 else clock] if seconds else []
        parts += [f"{round(metres / 1000, 2):g} km"] if metres else []
        out.append(" + ".join(parts))
    return out


def examples() -> list[list[str]]:
    return rows("typed | read as")


@pytest.mark.parametrize("cells", examples(), ids=lambda cells: cells[0])
def test_an_example_is_read_as_it_says(cells: list[str]) -> None:
    session = parse_session(cells[0])
    assert not session.unclear
    assert in_words(session.pieces) == cells[1]
    assert told(session) == cells[2:]
    # Said again in plain words it is the same.
    assert parse_session(cells[1]).pieces == session.pieces


@pytest.mark.parametrize("cells", rows("typed | asked"), ids=lambda cells: cells[0])
def test_an_unclear_piece_is_asked_about_as_it_says(cells: list[str]) -> None:
    (unclear,) = parse_session(cells[0]).unclear
    assert unclear.question == cells[1]
    assert ", ".join(unclear.readings) == cells[2].replace("`", "")


def test_the_page_in_the_readme_is_a_diary() -> None:
    lines = SECTION.split("**Days.**")[0].splitlines()
    text = "\n".join(line[4:] for line in lines if line.startswith("    "))
    page = read_page(text.encode())
    assert isinstance(page, Page) and not page.unclear and len(page.runs) == 4


# The grammar


def rules() -> dict[str, str]:
    found: dict[str, str] = {}
    name = ""
    for line in GRAMMAR.splitlines():
        left, _, right = line.partition(" = ") if " = " in line else ("", "", line)
        name = left.strip() or name
        found[name] = f"{found.get(name, '')} {right.strip()}".strip()
    return found


TOKEN = re.compile(r'"[^"]*"|[a-z]+|[{}\[\]()|]')


class Writer:
    """Writes sessions by the grammar, at random."""

    def __init__(self, seed: int) -> None:
        self.rules, self.chance, self.depth = rules(), random.Random(seed), 0

    def write(self, name: str) -> str:
        if name in ("number", "count", "hundreds"):
            most, unit = {"number": (30, 1), "count": (12, 1), "hundreds": (20, 100)}[name]
            return str(self.chance.randint(2, most) * unit)
        self.depth += 1
        text = self.alternatives(TOKEN.findall(self.rules[name]))
        self.depth -= 1
        return text

    def alternatives(self, tokens: list[str]) -> str:
        level, cuts = 0, [-1]
        for place, token in enumerate(tokens):
            level += (token in "{[(") - (token in "}])")
            if token == "|" and level == 0:
                cuts.append(place)
        parts = [tokens[a + 1 : b] for a, b in pairwise([*cuts, len(tokens)])]
        # Deep down only what ends is chosen.
        if self.depth > 5:
            parts = [part for part in parts if "part" not in part and "set" not in part] or parts
        return self.sequence(self.chance.choice(parts))

    def sequence(self, tokens: list[str]) -> str:
        out, place = [], 0
        while place < len(tokens):
            token = tokens[place]
            if token in "{[(":
                end = self.closing(tokens, place)
                times = self.chance.randint(0, 1) if token in "{[" else 1
                out += [self.alternatives(tokens[place + 1 : end]) for _ in range(times)]
                place = end
            else:
                out.append(token.strip('"') if token.startswith('"') else self.write(token))
            place += 1
        return "".join(out)

    @staticmethod
    def closing(tokens: list[str], place: int) -> int:
        level = 0
        for at in range(place, len(tokens)):
            level += (tokens[at] in "{[(") - (tokens[at] in "}])")
            if level == 0:
                return at
        raise ValueError("a bracket of the grammar is not closed")


def test_the_writer_knows_every_rule() -> None:
    assert set(rules()) >= {"session", "piece", "set", "bout", "recovery", "pace", "word"}
    named = {token for text in rules().values() for token in TOKEN.findall(text)}
    words = {token for token in named if token[0].isalpha()}
    assert words - {"number", "count", "hundreds"} <= set(rules())


def test_whatever_the_grammar_allows_is_read() -> None:
    read = 0
    for seed in range(400):
        text = Writer(seed).write("session")
        session = parse_session(text)
        # Lengths are drawn apart from times: what nobody runs is asked about, and so may be what
        # stands after it.
        if not any(u.question.startswith(SENSE) for u in session.unclear):
            assert not session.unclear, (text, session.unclear)
        assert not session.notes, text
        read += not session.unclear
    assert read > 100


def test_the_words_are_in_the_shades_that_the_grammar_groups_them_by() -> None:
    lines = GRAMMAR.split("word       =")[1].strip().splitlines()
    for line, shade in zip(lines, (Shade.EASY, Shade.MODERATE, Shade.HARD), strict=True):
        names = re.findall(r'"([^"]+)"', line)
        assert names and all(WORDS[name] == shade for name in names)
    missing = {word for word in WORDS if f'"{word}"' not in GRAMMAR and f" {word}" not in GRAMMAR}
    assert not missing

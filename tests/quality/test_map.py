"""DEVELOPERS.md holds the map of the source; `python tests/quality/test_map.py` writes it anew."""

from __future__ import annotations

import ast
from pathlib import Path

TOP = Path(__file__).resolve().parents[2]
HEAD = "## Map of the source\n"


def source_map() -> str:
    """One line a module: its path below app/tercet and the first sentence of its docstring."""
    lines = []
    base = TOP / "app" / "tercet"
    for place in sorted(base.rglob("*.py"), key=lambda p: (p.parent, p.name)):
        text = ast.get_docstring(ast.parse(place.read_text("utf-8"))) or ""
        first = text.partition("\n\n")[0].replace("\n", " ")
        lines.append(f"- `{place.relative_to(base).as_posix()}`: {first}")
    return "\n".join(lines) + "\n"


def test_every_module_says_its_duty() -> None:
    for line in source_map().splitlines():
        assert len(line.partition(": ")[2]) > 20, line


def test_developers_holds_the_map() -> None:
    text = (TOP / "DEVELOPERS.md").read_text("utf-8")
    assert text.partition(HEAD)[2].strip() == source_map().strip(), (
        "run: python tests/quality/test_map.py"
    )


if __name__ == "__main__":
    document = TOP / "DEVELOPERS.md"
    before = document.read_text("utf-8").partition(HEAD)[0]
    document.write_text(f"{before}{HEAD}\n{source_map()}", "utf-8")

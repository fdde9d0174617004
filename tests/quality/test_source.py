"""Rules for the source that no linter knows."""

from __future__ import annotations

import ast
import re
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
APP = sorted((ROOT / "app").rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", "app", "resources", "tests",
    "sample_logs",
}  # fmt: skip
MOST_LINES = 400
HEX_COLOUR = re.compile(r"#(?:[0-9a-fA-F]{8}|[0-9a-fA-F]{6}|[0-9a-fA-F]{3,4})\b")
SQL = re.compile(
    r"\b(SELECT .+ FROM|CREATE TABLE|INSERT (OR \w+ )?INTO|DELETE FROM|UPDATE \w+ SET|PRAGMA)\b"
)
#: Folders of the machines that the program was written on.
MACHINE_PATH = re.compile(r"(?<![\w.~-])/(?:work|root|farm)/")


def relative(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def strings(path: Path) -> Iterator[tuple[int, str]]:
    """Every string in a module, also the parts of f-strings and the docstrings."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.lineno, node.value


def listed(*options: str) -> list[str]:
    """Names from git's index; skips where there is no checkout."""
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("no git checkout")
    done = subprocess.run(
        [git, "ls-files", "-z", *options], cwd=ROOT, capture_output=True, check=True
    )
    return [name for name in done.stdout.decode("utf-8").split("\0") if name]


def test_colours_come_from_the_palette() -> None:
    found = [
        f"{relative(path)}:{line}: {text[:60]}"
        for path in APP
        for line, text in strings(path)
        if HEX_COLOUR.search(text)
    ]
    assert not found


def test_the_rule_for_colours_sees_them() -> None:
    seen = ["#1B2A41", "border: 1px solid #abc;", "#11223344 and more"]
    assert all(HEX_COLOUR.search(text) for text in seen)
    passed = ["#RRGGBB", "issue #12", "# decade", "#ABCDE"]
    assert not any(HEX_COLOUR.search(text) for text in passed)


def imports(path: Path) -> set[str]:
    out: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            out |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            out.add(node.module or "")
    return out


def test_only_the_store_speaks_sql() -> None:
    store = [path for path in APP if relative(path).startswith("app/tercet/store/")]
    spoken = [path for path in store if any(SQL.search(text) for _, text in strings(path))]
    assert len(spoken) >= 3  # the rule sees it where it is
    others = [path for path in APP if path not in store]
    assert not [relative(path) for path in others if "sqlite3" in imports(path)]
    assert not [
        f"{relative(path)}:{line}"
        for path in others
        for line, text in strings(path)
        if SQL.search(text)
    ]


def test_modules_are_short() -> None:
    lengths = {relative(path): len(path.read_text("utf-8").splitlines()) for path in APP}
    assert not {name: n for name, n in lengths.items() if n > MOST_LINES}
    assert sorted(lengths.values())[len(lengths) // 2] < 200


def test_nothing_is_put_off() -> None:
    later = re.compile(r"\b(TO" + r"DO|FIX" + r"ME|X" + r"XX)\b")
    assert not [
        f"{relative(path)}:{number}"
        for path in [*APP, *TESTS]
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1)
        if later.search(line)
    ]


def test_the_top_level_holds_only_what_belongs_there() -> None:
    top = {name.split("/")[0] for name in listed()}
    assert {name for name in top if not name.startswith(".")} <= TOP_LEVEL


def test_no_file_names_a_folder_of_the_machine_it_was_written_on() -> None:
    found = []
    for name in listed("--cached", "--others", "--exclude-standard"):
        path = ROOT / name
        if not path.is_file():
            continue
        data = path.read_bytes()
        if b"\0" in data[:4096]:
            continue
        for number, line in enumerate(data.decode("utf-8", "replace").splitlines(), 1):
            if MACHINE_PATH.search(line):
                found.append(f"{name}:{number}: {line.strip()[:80]}")
    assert not found


def test_the_rule_for_paths_sees_them() -> None:
    slash = "/"
    assert MACHINE_PATH.search(f'open("{slash}work{slash}main/x")')
    assert MACHINE_PATH.search(f"{slash}root{slash}venv")
    for passed in (
        f"example.org{slash}work{slash}of",
        f".{slash}work{slash}x",
        f"net{slash}root{slash}x",
    ):
        assert not MACHINE_PATH.search(passed), passed

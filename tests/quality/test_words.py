"""What a user reads goes through ``tr``, whole and where lupdate finds it."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]


def modules() -> list[Path]:
    return sorted((ROOT / "app" / "tercet").rglob("*.py"))


def name(call: ast.Call) -> str:
    return getattr(call.func, "attr", getattr(call.func, "id", ""))


def hidden(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Texts that lupdate does not find: inside an f-string, or put together before ``tr``."""
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            for call in ast.walk(node):
                if worded(call, ast.Constant):
                    yield node.lineno, "inside an f-string"
        if worded(node, ast.JoinedStr | ast.BinOp):
            yield getattr(node, "lineno", 0), "put together"


def worded(node: ast.AST, kind: Any) -> bool:
    """Whether this is a call of ``tr`` or ``mark`` on such an argument."""
    return (
        isinstance(node, ast.Call)
        and name(node) in {"tr", "mark"}
        and bool(node.args)
        and isinstance(node.args[0], kind)
    )


def test_nothing_is_hidden_from_the_extraction() -> None:
    found = [
        f"{path.relative_to(ROOT)}:{line} {why}"
        for path in modules()
        for line, why in hidden(ast.parse(path.read_text("utf-8")))
    ]
    assert not found, "\n".join(found)


def test_the_rule_bites() -> None:
    assert list(hidden(ast.parse("f\"{tr('Runs')} here\"")))
    assert list(hidden(ast.parse('tr(f"{n} runs")')))
    assert not list(hidden(ast.parse('x.setText(tr("{n} runs", n=n))')))

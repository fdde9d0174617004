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


def too_early(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Texts worded when a module is read, whose language would then stay."""
    later = {
        id(node)
        for made in ast.walk(tree)
        if isinstance(made, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        for part in (made.body if isinstance(made.body, list) else [made.body])
        for node in ast.walk(part)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and name(node) in {"tr", "several"} and id(node) not in later:
            yield node.lineno, "worded when the module is read"


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
        for rule in (hidden, too_early)
        for line, why in rule(ast.parse(path.read_text("utf-8")))
    ]
    assert not found, "\n".join(found)


def test_the_rule_bites() -> None:
    assert list(hidden(ast.parse("f\"{tr('Runs')} here\"")))
    assert list(hidden(ast.parse('tr(f"{n} runs")')))
    assert list(too_early(ast.parse("NAME = tr('Runs')")))
    assert list(too_early(ast.parse("def named(step=tr('Runs')): return step")))
    assert not list(too_early(ast.parse("def named(): return tr('Runs')")))
    assert not list(hidden(ast.parse('x.setText(tr("{n} runs", n=n))')))

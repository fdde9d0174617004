"""What a coach chose for a review: order, pages left out, words of their own; kept in the store."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from typing import Any

from tercet.domain import Changes
from tercet.language import tr
from tercet.library.review.content import Page
from tercet.store import queries
from tercet.store.database import Store

#: The setting's name before the scope's key.
PREFIX = "review "


@dataclass(frozen=True)
class Choices:
    """Choices for one scope; words by the page's key."""

    order: tuple[str, ...] = ()
    hidden: frozenset[str] = frozenset()
    titles: Mapping[str, str] = field(default_factory=dict)
    remarks: Mapping[str, str] = field(default_factory=dict)
    notes: Mapping[str, str] = field(default_factory=dict)
    next_lines: tuple[str, ...] = ()
    written: str = ""  # day on which those lines were written last
    then: str = ""  # first days of the two blocks that the intensity curve compares
    now: str = ""

    def with_words(self, kind: str, key: str, text: str) -> Choices:
        """Put a page's title, remark or notes in words of one's own; empty takes them back."""
        words = {**getattr(self, kind), key: text.strip()}
        kept: Any = {kind: {k: v for k, v in words.items() if v}}
        return replace(self, **kept)

    def leave_out(self, key: str, out: bool) -> Choices:
        """Leave a page out, or take it in again."""
        return replace(self, hidden=self.hidden | {key} if out else self.hidden - {key})

    def move(self, keys: Sequence[str], key: str, by: int) -> Choices:
        """Move a page up or down among ``keys``, the present order."""
        order = list(keys)
        at = order.index(key)
        to = min(max(at + by, 0), len(order) - 1)
        order.insert(to, order.pop(at))
        return replace(self, order=tuple(order))


def read(store: Store, scope: str) -> Choices:
    """Choices kept for a scope; what is not understood is as if it had not been chosen."""
    return parse(queries.setting(store, PREFIX + scope, "{}"))


def last_words(kept: Mapping[str, str], scope: str) -> tuple[str, Choices] | None:
    """The scope and the choices of the review before this one whose coach wrote what comes next.

    Parameters
    ----------
    kept : mapping of str to str
        Settings of reviews, by their name.
    scope : str
        Of the review at hand. Earlier is what was written earlier or, where that was not kept,
        what is about earlier blocks.
    """
    now = parse(kept.get(PREFIX + scope, "{}")).written or "9999"
    found = []
    for name, text in kept.items():
        other, made = name.removeprefix(PREFIX), parse(text)
        if other == scope or not made.next_lines:
            continue
        about = other.replace("..", "+").rpartition("+")[2]
        own = scope.replace("..", "+").rpartition("+")[2]
        earlier = made.written <= now if made.written else about <= own
        if earlier and about <= own:
            found.append((made.written or about, other, made))
    if not found:
        return None
    _, other, made = max(found, key=lambda item: item[:2])
    return other, made


def parse(text: str) -> Choices:
    """Choices as they are kept; what is not understood is as if it had not been chosen."""
    try:
        kept: Any = json.loads(text)
    except ValueError:
        return Choices()
    if not isinstance(kept, dict):
        return Choices()
    words = {
        kind: {str(k): str(v) for k, v in kept.get(kind, {}).items()}
        for kind in ("titles", "remarks", "notes")
        if isinstance(kept.get(kind, {}), dict)
    }
    lists = {
        kind: tuple(str(item) for item in kept.get(kind, ()))
        for kind in ("order", "hidden", "next_lines")
        if isinstance(kept.get(kind, ()), (list, tuple))
    }
    return Choices(
        order=lists.get("order", ()),
        hidden=frozenset(lists.get("hidden", ())),
        titles=words.get("titles", {}),
        remarks=words.get("remarks", {}),
        notes=words.get("notes", {}),
        next_lines=lists.get("next_lines", ()),
        written=str(kept.get("written", "")),
        then=str(kept.get("then", "")),
        now=str(kept.get("now", "")),
    )


def in_words(text: str) -> str:
    """What a review says in its coach's words, one after another."""
    made = parse(text)
    said = [*made.titles.values(), *made.remarks.values(), *made.next_lines, *made.notes.values()]
    if made.hidden:
        said.append(tr("left out: {pages}", pages=", ".join(sorted(made.hidden))))
    return "; ".join(said) or tr("only the order of its pages")


def keep(store: Store, scope: str, chosen: Choices, step: str = "") -> Changes:
    """Keep choices, as one undo step; quick edits of one thing are one step."""
    step = step or tr("Change the review")
    value = asdict(chosen)
    value["hidden"] = sorted(chosen.hidden)
    with store.atomic(step, ("review", scope, step)):
        store.put(
            "setting",
            {"name": PREFIX + scope, "value": json.dumps(value, ensure_ascii=False)},
        )
    return Changes(settings=True, step=step)


def apply(pages: Sequence[Page], chosen: Choices) -> tuple[Page, ...]:
    """Put pages in the chosen order and words; pages unknown to the order keep their place."""
    by_key = {page.key: page for page in pages}
    order = [key for key in chosen.order if key in by_key]
    for at, page in enumerate(pages):
        if page.key not in order:
            order.insert(min(at, len(order)), page.key)
    return tuple(
        replace(
            by_key[key],
            title=chosen.titles.get(key, by_key[key].title),
            retitled=key in chosen.titles,
            remark=chosen.remarks.get(key, ""),
            notes=chosen.notes.get(key, ""),
            hidden=key in chosen.hidden,
        )
        for key in order
    )

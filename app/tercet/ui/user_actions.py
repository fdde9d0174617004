"""What a user does to the store: done in its thread, told by the undo bar, taken back by Undo."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QWidget

from tercet import language
from tercet.language import mark, several, tr
from tercet.library import operations
from tercet.library.library import Library
from tercet.library.views import SessionView
from tercet.store import queries
from tercet.store.database import Store
from tercet.ui import words
from tercet.ui.jobs import Answers
from tercet.ui.undo_bar import UndoBar

if TYPE_CHECKING:
    from tercet.domain import Block, Changes, Race
    from tercet.library.record_report import Conflict
    from tercet.library.session_kinds import Kind


class Actions(QObject):
    """One method for each thing a user does; ``changed`` says that there is something to show."""

    changed = Signal(object)  # Changes

    def __init__(
        self, library: Library, answers: Answers, undo_bar: UndoBar, window: QWidget
    ) -> None:
        super().__init__(window)
        self._library, self._answers, self._window = library, answers, window
        self._undo_bar = undo_bar
        self._asking = False
        undo_bar.undo_asked.connect(self.undo)
        undo_bar.redo_asked.connect(self.redo)

    def do(
        self, call: Callable[..., Changes | None], *args: Any, quiet: bool = False, said: str = ""
    ) -> None:
        """Run one action in the store's thread, say what was done, and offer to undo it."""

        def then(changes: Changes | None) -> None:
            if changes is not None:
                if changes.step and not quiet:
                    self._undo_bar.say(said or tr(changes.step))
                self.changed.emit(changes)

        self._answers.when(self._library.submit(call, *args), then)

    def note(self, done: str) -> None:
        """Say what was done outside the store, such as a file written."""
        self._undo_bar.tell(done)

    def undo(self) -> None:
        """Take back the last step."""
        self._step(operations.undo, mark("Taken back: {step}"), self._undo_bar.say_undone)

    def redo(self) -> None:
        """Bring back the last undone step."""
        self._step(operations.redo, mark("Done again: {step}"), self._undo_bar.say)

    def _step(
        self, call: Callable[[Store], Changes | None], done: str, say: Callable[[str], None]
    ) -> None:
        def then(changes: Changes | None) -> None:
            if changes is not None:
                worded = tr(changes.step)
                # English goes on in small letters; a translation keeps its nouns' capitals.
                english = language.code() == language.SOURCE
                step = worded[:1].lower() + worded[1:] if english else worded
                say(tr(done, step=step))
                self.changed.emit(changes)

        self._answers.when(self._library.submit(call), then)

    def delete(self, session: SessionView) -> None:
        """Delete a session; undo brings it back."""
        said = tr("Deleted: {name}, {day}", name=session.name, day=words.short_day(session.day))
        self.do(operations.delete_runs, [session.id], said=said)

    def delete_several(self, sessions: Sequence[SessionView]) -> None:
        """Delete several sessions in one step."""
        said = several(len(sessions), mark("Deleted: {n} session"), mark("Deleted: {n} sessions"))
        self.do(operations.delete_runs, [session.id for session in sessions], said=said)

    def set_kind_of(self, run_ids: Sequence[int], kind: Kind) -> None:
        """Say of what kind several sessions are, in one step."""
        self.do(operations.set_kind, list(run_ids), kind.sport, kind.kind)

    def set_note(self, run_id: int, text: str) -> None:
        """Keep a note."""
        self.do(operations.set_note, run_id, text, quiet=True)

    def set_effort(self, run_id: int, effort: int | None) -> None:
        """Keep the effort said."""
        self.do(operations.set_effort, run_id, effort, quiet=True)

    def set_kind(self, run_id: int, kind: Kind) -> None:
        """Say of what kind a session is."""
        self.set_kind_of([run_id], kind)

    def settle(self, kept: Sequence[Conflict], taken: Sequence[Conflict]) -> None:
        """Settle where another copy of the record says something else."""
        from tercet.library import record_merge

        self.do(record_merge.choose, kept, taken)

    def skip(self, content: str) -> None:
        """Put a file that needs a look out of sight."""
        self.do(operations.put_away, content)

    def name_columns(self, content: str) -> None:
        """Ask what the columns of a table hold."""
        from tercet.library import naming
        from tercet.ui.columns_dialog import ColumnsDialog

        self._open(
            lambda store: naming.waiting(store, content),
            lambda table: ColumnsDialog(self._library, table, self._window),
        )

    def tell_start(self, content: str) -> None:
        """Ask when a run started whose watch had no clock."""
        from tercet.ui.start_dialog import StartDialog

        self._open(
            lambda store: queries.file(store, content),
            lambda file: StartDialog(self._library, file, self._window),
        )

    def correct(self, sessions: Sequence[SessionView]) -> None:
        """Open what can be put right of sessions, with these chosen."""
        from tercet.library import pieces
        from tercet.ui.corrections_dialog import CorrectionsDialog

        chosen = {session.id for session in sessions}

        self._open(
            pieces.correctable,
            lambda found: CorrectionsDialog(self._library, found, chosen, self._window),
        )

    def leave_estimate(self) -> None:
        """Put the strip with estimated thresholds away for some weeks."""
        now = datetime.now().isoformat(timespec="seconds")
        self.do(operations.set_setting, "estimate_left", now, quiet=True)

    def edit_plan(self) -> None:
        """Open the dialog for blocks and races."""
        from tercet.ui.plan_dialog import PlanDialog

        self._open(_plan, lambda plan: PlanDialog(self._library, plan[0], plan[1], self._window))

    def _open(self, question: Callable[[Store], Any], dialog: Callable[[Any], Any]) -> None:
        """Open a dialog over what the store answers; asked for twice, it opens once."""
        if self._asking:
            return
        self._asking = True

        def then(found: Any) -> None:
            made = dialog(found)
            made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            made.applied.connect(self.tell)
            made.open()
            self._asking = False

        def failed(_: BaseException) -> None:
            self._asking = False

        self._answers.when(self._library.submit(question), then, failed)

    def tell(self, changes: Changes) -> None:
        """Say what was done elsewhere, and that there is something to show."""
        self._undo_bar.say(tr(changes.step))
        self.changed.emit(changes)


def _plan(store: Store) -> tuple[list[Block], list[Race]]:
    return queries.blocks(store), queries.races(store)

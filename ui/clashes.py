"""What two windows changed differently, shown with both values and a button for each."""

from collections.abc import Callable
from functools import partial

from pydantic import JsonValue
from PySide6.QtCore import QObject

from matcher.job import Job
from matcher.store import Clash
from matcher.store.rebase import with_value_of
from ui.fields import fields
from ui.notices import Notices
from ui.session import Session
from ui.spans import shown

LONGEST = 40
"""Characters of a value that a button shows."""


class Clashes(QObject):
    """Puts each clash of the open job into the notices; the other window's value stands until answered."""

    def __init__(self, session: Session, notices: Notices, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session, self._notices = session, notices
        self._told: list[str] = []
        session.clashed.connect(self._tell)
        session.opened.connect(lambda _job: self._forget())

    def _tell(self, clashes: tuple[Clash, ...], mine: Job) -> None:
        for clash in clashes:
            own, other = self._value(clash.mine), self._value(clash.theirs)
            line = self.tr("{} was changed in another window too: {} there, {} here.").format(
                self._name(clash), other, own
            )
            keep: dict[str, Callable[[], object]] = {
                self.tr("Take {}").format(own): partial(self._take, clash, mine),
                self.tr("Leave {}").format(other): lambda: None,
            }
            self._told.append(line)
            self._notices.add(line, keep)

    def _take(self, clash: Clash, mine: Job) -> None:
        words = self.tr("taking this window's value")
        self._session.try_edit(words, lambda job: with_value_of(job, mine, clash.path))

    def _forget(self) -> None:
        for line in self._told:
            self._notices.remove(line)
        self._told.clear()

    def _name(self, clash: Clash) -> str:
        """Return what the user calls the thing."""
        if not clash.field or clash.field == "body":
            return self.tr("A listing")
        known = fields().get(clash.field)
        return known.label if known else clash.field.replace("_", " ").replace(".", ", ").capitalize()

    def _value(self, value: JsonValue) -> str:
        """Return a value in few words."""
        if isinstance(value, dict):
            value = value.get("value", value.get("title") or value.get("text") or value)
        if value is None or value == "":
            return self.tr("nothing")
        if isinstance(value, (list, tuple)):
            value = ", ".join(str(one) for one in value)
        words = " ".join(shown(str(value)).split())
        return words if len(words) <= LONGEST else f"{words[: LONGEST - 1]}…"

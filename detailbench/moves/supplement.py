"""Items of the supplement: what the owner is told, and answers, before a machine starts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.supplement import is_listed, mark_words
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.record.picture import one
from detailbench.record.things import SupplementItem
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class AddSupplementItem:
    """Something found after the arrival record: in words, of a panel, or a mark (its panel and, without words, its own
    description are taken)."""

    undoable: ClassVar[bool] = True
    job_id: str
    words: str = ""
    panel: str = ""
    mark_id: str = ""

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        words, panel = self.words.strip(), self.panel
        if self.mark_id:
            mark = one(picture.marks, self.mark_id)
            if panel not in ("", mark.panel):
                raise BadInput(
                    _("That mark is on the {panel}.").format(panel=panel_name(mark.panel)), field="panel", given=panel
                )
            if any(item.mark_id == mark.id for item in picture.supplement):
                raise Refused(_("That mark is in the supplement already."), rule="already")
            words, panel = words or mark_words(mark), mark.panel
        if not any(sign.isalnum() for sign in words):
            raise BadInput(_("Say in words what was found."), field="words", given=self.words)
        on_this_car(picture, (panel,), or_none=True)
        item = w.add(SupplementItem, job_id=self.job_id, words=words, panel=panel, mark_id=self.mark_id)
        where = panel_name(panel) if panel else _("whole car")
        return Done(self.job_id, _("for the supplement: {where}").format(where=where), item.id)


@dataclass(frozen=True)
class StrikeSupplementItem:
    """Take an item out; only while no closed supplement lists it."""

    undoable: ClassVar[bool] = True
    job_id: str
    item_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        item = one(picture.supplement, self.item_id)
        if is_listed(picture, item):
            raise Refused(
                _("A closed supplement lists it: it stays. What has changed since goes into a new item."), rule="closed"
            )
        w.withdraw(item)
        return Done(self.job_id, _("struck out of the supplement"), item.id)

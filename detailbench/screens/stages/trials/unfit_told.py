"""A refused technique in the notice line: it goes once the value was put right."""

from __future__ import annotations

from PySide6.QtCore import QObject

from detailbench.findings.technique_bounds import technique_unfit
from detailbench.record.picture import one
from detailbench.screens.context import Context
from detailbench.screens.stages.trials.hand import TrialHand


class UnfitTold(QObject):
    """Hears every notice; takes back none but its own kind, and only while it stands there."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__(hand)
        self._context, self._hand = context, hand
        self._stands = ""
        context.noticed.connect(self._noticed)
        hand.changed.connect(self._changed)

    def unfit(self) -> str:
        """The sentence against what is set up now; empty where nothing is."""
        picture, draft = self._context.picture, self._hand.draft
        if picture is None or draft is None:
            return ""
        combination = one(picture.shop.combinations, draft.combination_id)
        found = technique_unfit(picture, draft.panel, combination, draft.technique())
        return "" if found is None else found[1]

    def _noticed(self, sentence: str, kind: str) -> None:
        self._stands = sentence if kind == "stop" and sentence and sentence == self.unfit() else ""

    def _changed(self) -> None:
        if self._stands and self.unfit() != self._stands:
            self._context.notice("", "plain")

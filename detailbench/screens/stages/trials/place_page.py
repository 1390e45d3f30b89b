"""Where to try: typical, worst or confirming; fresh or on top; at which place; and what is known of this paint."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.trial_order import worst_too_early
from detailbench.findings.trial_places import check_place, no_place_words, patch_at
from detailbench.findings.trial_story import outcome_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, Trial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.stages.trials.draft import Draft
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.paint_part import PaintPart, paint_words
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column

FRESH = "fresh"
OFFERED = 5


class PlacePage(QWidget):
    """The place is pointed at on the map."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.spot = ChoiceRow(
            _("place"), (("typical", _("typical")), ("worst", _("worst")), ("confirming", _("confirming")))
        )
        self.under = in_line(ChoiceRow(_("on"), (), columns=3))
        self.at = sentence()
        self.spot.chosen.connect(lambda key: hand.set_draft(spot=key))
        self.under.chosen.connect(lambda key: hand.set_draft(on_top_of="" if key == FRESH else key))
        self.known = sentence()
        self.paint = PaintPart(context, hand)
        self.face = in_line(ChoiceRow(_("of"), (("where", _("the place")), ("paint", _("this paint"))), columns=2))
        self.faces = Faces()
        where, column = page_column(context.dress)
        for part in (self.spot, self.under, self.at, self.known):
            column.addWidget(part)
        column.addStretch(1)
        self.faces.addWidget(where)
        self.faces.addWidget(self.paint)
        self.face.set_value("where")
        self.face.chosen.connect(lambda key: self.faces.setCurrentIndex(list(self.face.buttons).index(key)))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(context.dress.look.measure.space("small"))
        whole.addWidget(self.face)
        whole.addWidget(self.faces, 1)

    def redraw(self) -> None:
        """Draw anew from the picture and what is set up."""
        draft = self._hand.draft
        self.paint.redraw()
        picture, group = self._context.picture, self._hand.group
        if picture is not None and group is not None:
            words, kind = paint_words(picture, group)
            self.known.setText(words)
            set_kind(self.known, kind)
        for part in (self.spot, self.under):
            part.setEnabled(draft is not None)
        why = self._hand.why_none()
        if draft is None:
            self.at.setText(why or _("Choose a panel of this group on the map: flat, typical, away from edges."))
            set_kind(self.at, "stop" if why else "")
            return
        self.spot.set_value(draft.spot)
        self._fill_under()
        words, kind = place_words(self._context.picture, self._hand.group, draft)
        self.at.setText(f"{why} {words}".strip())
        set_kind(self.at, "stop" if why else kind)

    def _fill_under(self) -> None:
        picture, draft = self._context.picture, self._hand.draft
        if picture is None or draft is None:
            return
        choices = [(FRESH, _("fresh place"))]
        choices += [
            (t.id, _("trial {n}").format(n=self._hand.number(t.id)))
            for t in beneath_offered(picture, self._hand.trials, draft)
        ]
        if [(key, b.text()) for key, b in self.under.buttons.items()] != choices:
            self.under.set_choices(choices)
        self.under.set_value(draft.on_top_of or FRESH)
        self.under.setVisible(len(choices) > 1)


def may_stand_on(trial: Trial, panel: str) -> bool:
    """Refining stands on a cut of the same panel."""
    return trial.panel == panel and not trial.on_top_of


def beneath_offered(picture: JobPicture, trials: Sequence[Trial], draft: Draft) -> list[Trial]:
    """The judged trials of the panel to refine on, in the order made. Where there is no room for all, what cleared
    comes before what did not, and the newer before the older; the one chosen is always among them."""
    judged = [(t, kept) for t in trials if may_stand_on(t, draft.panel) and (kept := outcome_of(picture, t.id))]
    judged.sort(key=lambda each: (each[0].id == draft.on_top_of, each[1].cleared == "yes", each[0].seq))
    return sorted((t for t, _kept in judged[-OFFERED:]), key=lambda t: t.seq)


def place_words(picture: JobPicture | None, group: FinishGroup | None, draft: Draft) -> tuple[str, str]:
    """Where the next trial is, and what speaks against it: (words, kind)."""
    if draft.on_top_of:
        return _("On top, the same place: it then speaks about the finish only."), ""
    told, kind = _("Point at the place on the map; without one only the panel is kept."), ""
    if picture is not None and draft.at is None and (lost := no_place_words(picture, draft.panel, to_be_made=True)):
        told, kind = f"{told} {lost}", "flagged"
    if picture is not None and draft.at is not None:
        sides = draft.section_w_mm, draft.section_h_mm
        patch = patch_at(picture, draft.panel, draft.at, draft.combination_id, *sides)
        found = check_place(picture, draft.panel, patch, draft.spot)
        told = " ".join(filter(None, (f"{draft.at.phrase()}.", found.taken or found.near)))
        kind = "stop" if found.taken else "flagged" if found.near else ""
    if picture is not None and group is not None and (early := worst_too_early(picture, group, draft.spot)):
        return f"{told} {early}", kind or "flagged"
    return told, kind

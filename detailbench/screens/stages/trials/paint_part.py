"""What is known of this paint, asked once for its finish group: lightness, refinish and cure, how it feels;
and what is known of its clear coat."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.cure import cure_words
from detailbench.findings.paint_feel import feel_of, feel_words
from detailbench.findings.thin_paint import clear_coat_words
from detailbench.moves.finish_groups import NotePaintFeel, SetGroupPaint
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.pages.shop.asked import day, show_day
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.kept_fields import KeptFields, some_number
from detailbench.screens.stages.work_parts.pages import in_line

Of = Callable[[FinishGroup], str]


class PaintPart(QWidget):
    """Each answer is kept when it is given; nothing is shown as chosen that nobody said."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        fields = self._fields = KeptFields(context, self)
        shades = [("dark", _("dark")), ("mid", _("mid")), ("light", _("light"))]
        self.lightness = in_line(fields.choice(_("lightness"), shades, self._lightness, self._setter("lightness")))
        yes_no = [("yes", _("yes")), ("no", _("no"))]
        self.refinished = in_line(
            fields.choice(_("refinished"), yes_no, self._reader(lambda g: g.refinished), self._setter("refinished"))
        )
        self.when = fields.text(
            _("refinished on"),
            self._reader(lambda g: show_day(g.refinished_on)),
            self._setter("refinished_on", day),
            check=day,
        )
        self.days = fields.text(
            _("maker's cure time, days"),
            self._reader(lambda g: "" if g.cure_days is None else format_number(g.cure_days)),
            self._setter("cure_days", some_number),
            check=some_number,
        )
        self.word = fields.text(_("the painter's word"), self._reader(lambda g: g.cure_word), self._setter("cure_word"))
        self.cure = sentence()
        self.coat = sentence()
        feels = [("soft", _("soft")), ("medium", _("medium")), ("hard", _("hard"))]
        self.feel = in_line(ChoiceRow(_("feel"), feels))
        self.sticky = in_line(ChoiceRow(_("sticky"), yes_no, columns=2))
        self.feel.chosen.connect(lambda key: self._felt(feel=key))
        self.sticky.chosen.connect(lambda key: self._felt(sticky=key))
        self._details = QWidget()
        dates = QHBoxLayout(self._details)
        dates.setContentsMargins(0, 0, 0, 0)
        dates.addWidget(self.when)
        dates.addWidget(self.days)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for piece in (self.lightness, self.refinished, self._details, self.word, self.cure):
            column.addWidget(piece)
        column.addWidget(self.feel)
        column.addWidget(self.sticky)
        column.addWidget(self.coat)
        column.addStretch(1)

    def redraw(self) -> None:
        """Show what is kept of the group."""
        picture, group = self._context.picture, self._hand.group
        self.setEnabled(group is not None)
        if picture is None or group is None:
            return
        self._fields.redraw()
        refinished = group.refinished == "yes"
        self._details.setVisible(refinished)
        self.word.setVisible(refinished)
        said = cure_words(picture, group, self._context.clock.now().date())
        self.cure.setText(said)
        self.cure.setVisible(bool(said))
        set_kind(self.cure, "flagged" if said else "")
        coat, words = clear_coat_words(picture, group)
        self.coat.setText(words)
        set_kind(self.coat, "flagged" if coat == "thin" else "")
        felt = feel_of(picture, group)
        self.feel.set_value(felt.feel)
        self.sticky.set_value(felt.sticky)

    def _lightness(self, picture: JobPicture) -> str:
        """The group's own, else the car's; empty while nobody said."""
        group = self._hand.group
        return "" if group is None else group.lightness or picture.car.lightness

    def _reader(self, read: Of) -> Callable[[JobPicture], str]:
        return lambda _picture: "" if self._hand.group is None else read(self._hand.group)

    def _setter(self, name: str, turn: Callable[[str], object] = str) -> Callable[[str, str], Any]:
        def to_move(job_id: str, text: str) -> SetGroupPaint:
            group = self._hand.group
            return SetGroupPaint(job_id, group.id if group is not None else "", {name: turn(text)})

        return to_move

    def _felt(self, feel: str = "", sticky: str = "") -> None:
        picture, group = self._context.picture, self._hand.group
        if picture is not None and group is not None:
            self._context.do(NotePaintFeel(picture.job.id, group.panels, feel, sticky), self)
            self.redraw()


def paint_words(picture: JobPicture, group: FinishGroup) -> tuple[str, str]:
    """What is known of a group's paint in one line, and its kind: flagged while nobody said how light it is."""
    lightness = group.lightness or picture.car.lightness
    told = [{"dark": _("dark"), "mid": _("mid"), "light": _("light"), "": _("lightness not said yet")}[lightness]]
    if group.refinished == "yes":
        told.append(_("refinished"))
    if group.irreplaceable == "yes":
        told.append(_("cannot be replaced"))
    felt = feel_words(feel_of(picture, group))
    told += [felt] if felt else []
    return _("This paint: {words}.").format(words=", ".join(told)), "" if lightness else "flagged"

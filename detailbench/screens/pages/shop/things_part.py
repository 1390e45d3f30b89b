"""One kind of the shop's things: the list on the left, the form for a new or the chosen one on the right."""

from __future__ import annotations

from dataclasses import MISSING, fields
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.kit_renewal import outdated
from detailbench.findings.kit_retired import hang_on_words
from detailbench.moves.kit_measures import measures_fit
from detailbench.moves.kit_range import RenewRange
from detailbench.moves.shop import AddToShop, ChangeInShop, Retire, shop_kind
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, caption, heading, sentence
from detailbench.screens.pages.shop.kinds import Kind
from detailbench.screens.pages.shop.thing_form import ThingForm, scrolled
from detailbench.screens.stages.work_parts.open_list import Line, OpenList

PART_FIELDS = {"machine": "machine_id", "pad": "pad_id", "product": "product_id"}
FROM_PAPERS = ("resolution_um", "accuracy_fixed_um", "accuracy_share", "accuracy_um", "u_um", "diameter_mm")


class ThingsPart(QWidget):
    """What is not in use any more stays in the list while it is asked for."""

    def __init__(self, context: Context, kind: Kind) -> None:
        super().__init__()
        self._context, self._kind = context, kind
        m = context.dress.look.measure
        self.list = OpenList(context.dress, kind.many)
        self.list.chosen.connect(lambda _key: self._show_chosen())
        self.with_retired = QPushButton(_("Show what is retired"))
        self.with_retired.setCheckable(True)
        self.with_retired.setAutoDefault(False)
        self.with_retired.setProperty("role", "choice")
        self.with_retired.setAccessibleName(_("Show what is retired"))
        self.with_retired.clicked.connect(self.redraw)
        asked = kind.asked()
        cls = shop_kind(kind.table)
        first = {f.name: f.default for f in fields(cls) if f.default is not MISSING and f.name not in FROM_PAPERS}
        self.form = ThingForm(context, asked, first, columns=3 if len(asked) > 8 else 2)
        self.form.entered.connect(self.keep)
        self.what = caption("")
        self.keep_it = button("", self.keep, role="main")
        self.new_one = button(_("Another new one"), self.start_anew)
        self.retire_it = button(_("Retire"), self.retire)
        left = QVBoxLayout()
        left.setSpacing(m.space("thin"))
        left.addWidget(heading(kind.many))
        if kind.says:
            left.addWidget(sentence(kind.says))
        left.addWidget(self.list, 1)
        left.addWidget(self.with_retired)
        self.hangs = sentence()
        self.in_range = sentence()
        self.put_in = button(_("Put it into the range there"), self._put_in, role="main")
        acts = QHBoxLayout()
        for each in (self.keep_it, self.new_one, self.retire_it):
            acts.addWidget(each)
        acts.addStretch(1)
        right = QVBoxLayout()
        right.setSpacing(m.space("thin"))
        right.addWidget(self.what)
        right.addWidget(scrolled(self.form), 1)
        right.addLayout(acts)
        right.addWidget(self.hangs)
        right.addWidget(self.in_range)
        right.addWidget(self.put_in)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("wide"))
        row.addLayout(left, 3)
        row.addLayout(right, 6)
        self.start_anew()

    def things(self) -> tuple[Any, ...]:
        """Those of the list: in use first, then, when asked for, the retired ones."""
        shop = self._context.shop
        found: tuple[Any, ...] = getattr(shop, self._kind.field) if shop is not None else ()
        used = tuple(t for t in found if not t.retired)
        return used + tuple(t for t in found if t.retired) if self.with_retired.isChecked() else used

    def redraw(self) -> None:
        """Show what the shop has now; what is being typed stays."""
        lines = []
        for thing in self.things():
            words = self._kind.line(thing)
            lines.append(Line(thing.id, _("{thing}\nretired").format(thing=words) if thing.retired else words))
        had = self.list.key
        self.list.set_lines(lines)
        if had and not self.list.key:
            self.start_anew()
        self._offer_range()
        self._enable()

    def _offer_range(self) -> None:
        """Where combinations of the range still name a part that was changed: how many, and one press to follow."""
        shop = self._context.shop
        held = 0
        if shop is not None and (field := PART_FIELDS.get(self._kind.table)):
            held = sum(1 for _c, values in outdated(shop) if field in values)
        text = (
            _("{n} combinations of the range still name what was replaced here.")
            if held != 1
            else (_("One combination of the range still names what was replaced here."))
        )
        self.in_range.setText(text.format(n=format_number(held)))
        for each in (self.in_range, self.put_in):
            each.setVisible(held > 0)

    def _put_in(self) -> None:
        self._context.do(RenewRange(), initiator=self)

    def start_anew(self) -> None:
        """An empty form for another one."""
        self.list.choose("")
        self.form.fill({})
        self._enable()

    def chosen(self) -> Any | None:
        """The thing chosen in the list, or None."""
        return next((t for t in self.things() if t.id == self.list.key), None)

    def keep(self) -> None:
        """Add what stands in the form, or change the chosen thing to it."""
        values = self.form.values()
        if values is None:
            return
        try:
            measures_fit(self._kind.table, values)
        except BadInput as error:
            self.form.refuse(error.field, str(error))
            self._context.notice(str(error), "stop")
            return
        old = self.chosen()
        if old is None:
            done = self._context.do(AddToShop(self._kind.table, values), initiator=self)
            if done is not None:
                self._someone_enters(done.id, "")
                self.start_anew()
                self.form.take_focus()
            return
        changed = {name: value for name, value in values.items() if value != getattr(old, name)}
        if not changed:
            self._context.notice(_("Nothing was changed."), "plain")
            return
        done = self._context.do(ChangeInShop(self._kind.table, old.id, changed), initiator=self)
        if done is not None:
            self._someone_enters(done.id, old.id)
            self.list.choose(done.id)
            self._show_chosen()

    def retire(self) -> None:
        """Out of use, or back into it; old jobs keep naming it."""
        thing = self.chosen()
        if thing is not None:
            self._context.do(Retire(self._kind.table, thing.id, back=thing.retired), initiator=self)

    def _someone_enters(self, new: str, old: str) -> None:
        """The first person of a shop enters from now on; so does someone who was given another name."""
        bench = self._context.bench
        if self._kind.table == "person" and bench is not None and bench.person == old:
            bench.person = new
            self._context.changed.emit(None, self)

    def _show_chosen(self) -> None:
        thing = self.chosen()
        if thing is not None:
            self.form.fill({a.name: getattr(thing, a.name) for a in self._kind.asked()})
        self._enable()

    def _enable(self) -> None:
        thing = self.chosen()
        new = thing is None
        self.what.setText(
            _("new: {kind}").format(kind=self._kind.one)
            if thing is None
            else _("chosen: {thing}").format(thing=self._kind.line(thing))
        )
        for it, text in (
            (self.keep_it, _("Add") if new else _("Keep the change")),
            (self.retire_it, _("Take back into use") if thing is not None and thing.retired else _("Retire")),
        ):
            it.setText(text)
            it.setAccessibleName(f"{text}: {self._kind.one}")
        self.new_one.setAccessibleName(_("Another new one: {kind}").format(kind=self._kind.one))
        shop = self._context.shop
        hangs = hang_on_words(shop, thing.id) if shop is not None and thing is not None and not thing.retired else ""
        self.hangs.setText(hangs)
        self.hangs.setAccessibleName(hangs)
        self.hangs.setVisible(bool(hangs))
        self.new_one.setVisible(not new)
        self.retire_it.setVisible(not new)

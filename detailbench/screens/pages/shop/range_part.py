"""The shop's range: combinations from mild to strong, their order, and a new one made of what is on the shelf."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.kit_names import combination_name, combinations_in_use
from detailbench.findings.kit_renewal import outdated
from detailbench.findings.kit_retired import part_retired
from detailbench.moves.kit_range import MoveInRange, RenewRange
from detailbench.moves.shop import AddToShop, Retire
from detailbench.record.things import Combination
from detailbench.screens.context import Context
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import button, caption, heading, sentence, set_kind
from detailbench.screens.pages.shop.kinds import machine_line, pad_line, product_line
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class RangePart(QWidget):
    """The order is a prior of this shop, not a law."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.list = OpenList(context.dress, _("range, mildest first"))
        self.list.chosen.connect(lambda _key: self._enable())
        self.milder = button(_("Milder"), lambda: self._move(-1), name=_("One place milder"))
        self.stronger = button(_("Stronger"), lambda: self._move(1), name=_("One place stronger"))
        self.retire_it = button(_("Retire"), self._retire, name=_("Retire: combination"))
        self.renew = button(_("Renew this one"), self._renew, name=_("Take what replaced its parts"))
        whole = _("Put what replaced their parts into the whole range")
        self.renew_all = button(_("Renew the whole range"), self._renew_all, role="main", name=whole)
        self.hold = button(_("Hold the order against our readings"), self._hold_against, role="quiet")
        self.held = sentence()
        self._order: tuple[Working, ...] = ()
        self.why = WhyButton(
            lambda: self._order[0] if self._order else None, context.show_working, _("order against our readings")
        )
        self.why.setVisible(False)
        self._outdated: set[str] = set()
        left = QVBoxLayout()
        left.setSpacing(m.space("thin"))
        left.addWidget(heading(_("Range")))
        left.addWidget(sentence(_("From mild to strong, as this shop sees it: where trials begin, not a law.")))
        left.addWidget(caption(_("mildest")))
        left.addWidget(self.list, 1)
        left.addWidget(caption(_("strongest")))
        acts = QHBoxLayout()
        for each in (self.milder, self.stronger, self.retire_it):
            acts.addWidget(each)
        acts.addStretch(1)
        left.addLayout(acts)
        renewing = QHBoxLayout()
        for each in (self.renew_all, self.renew):
            renewing.addWidget(each)
        renewing.addStretch(1)
        left.addLayout(renewing)
        left.addWidget(self.hold, 0, Qt.AlignmentFlag.AlignLeft)
        said = QHBoxLayout()
        said.addWidget(self.held, 1)
        said.addWidget(self.why)
        left.addLayout(said)
        self.shelves = {
            "machine_id": OpenList(context.dress, _("machines")),
            "pad_id": OpenList(context.dress, _("pads")),
            "product_id": OpenList(context.dress, _("compounds and polishes")),
        }
        right = QGridLayout()
        right.setHorizontalSpacing(m.space("small"))
        right.setVerticalSpacing(m.space("thin"))
        right.addWidget(caption(_("new: combination")), 0, 0, 1, 2)
        titles = (_("machine"), _("pad"), _("compound or polish"))
        for i, (title, shelf) in enumerate(zip(titles, self.shelves.values(), strict=True)):
            right.addWidget(caption(title), 1 + 2 * (i // 2), i % 2)
            right.addWidget(shelf, 2 + 2 * (i // 2), i % 2)
            shelf.chosen.connect(lambda _key: self._enable())
        self.add = button(_("Add at the strong end"), self._add, role="main")
        beside = QVBoxLayout()
        beside.addWidget(sentence(_("Choose one of each, add it, then move it to its place.")))
        beside.addStretch(1)
        beside.addWidget(self.add)
        right.addLayout(beside, 4, 1)
        right.setRowStretch(2, 1)
        right.setRowStretch(4, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("wide"))
        row.addLayout(left, 5)
        row.addLayout(right, 5)
        self.redraw()

    def redraw(self) -> None:
        """Show range and shelves as they are."""
        shop = self._context.shop
        if shop is None:
            return
        self._outdated = {c.id for c, _values in outdated(shop)}
        self.renew_all.setVisible(bool(self._outdated))
        lines = []
        for number, combination in enumerate(combinations_in_use(shop), start=1):
            name = combination_name(shop, combination.id)
            words = name
            if combination.id in self._outdated:
                words = _("{name}\na part of it has a new name or was changed").format(name=name)
            elif part_retired(shop, combination):
                words = _("{name}\na part of it is retired: for no new trial").format(name=name)
            lines.append(Line(combination.id, f"{number}  {words}"))
        self.list.set_lines(lines)
        for name, things, line in (
            ("machine_id", shop.machines, machine_line),
            ("pad_id", shop.pads, pad_line),
            ("product_id", shop.products, product_line),
        ):
            self.shelves[name].set_lines([Line(t.id, line(t)) for t in things if not t.retired])
        self._enable()

    def chosen(self) -> Combination | None:
        shop = self._context.shop
        found = combinations_in_use(shop) if shop is not None else ()
        return next((c for c in found if c.id == self.list.key), None)

    def _move(self, by: int) -> None:
        if self.list.key:
            self._context.do(MoveInRange(self.list.key, by), initiator=self)

    def _retire(self) -> None:
        if self.list.key:
            self._context.do(Retire("combination", self.list.key), initiator=self)

    def _add(self) -> None:
        shop = self._context.shop
        values: dict[str, Any] = {name: shelf.key for name, shelf in self.shelves.items()}
        if shop is None or not all(values.values()):
            self._context.notice(_("Choose a machine, a pad and a compound or polish first."), "stop")
            return
        in_use = combinations_in_use(shop)
        if any(all(getattr(c, name) == id_ for name, id_ in values.items()) for c in in_use):
            self._context.notice(_("That combination is in the range already."), "stop")
            return
        rung = max((c.rung for c in in_use), default=-1) + 1
        done = self._context.do(AddToShop("combination", values | {"rung": rung}), initiator=self)
        if done is not None:
            self.list.choose(done.id)
            self._enable()

    def _renew(self) -> None:
        """The chosen combination alone takes what replaced its parts."""
        self._renewed_by(RenewRange((self.list.key,)))

    def _renew_all(self) -> None:
        self._renewed_by(RenewRange())

    def _renewed_by(self, move: RenewRange) -> None:
        done = self._context.do(move, initiator=self)
        if done is not None and done.id:
            self.list.choose(done.id)
            self._enable()

    def _hold_against(self) -> None:
        """Say where the order and this shop's own readings disagree."""
        bench, shop = self._context.bench, self._context.shop
        if bench is None or shop is None:
            return
        from detailbench.findings.range_readings import range_readings  # heavy to load: only when asked for

        measured, neighbours = range_readings(shop, bench.jobs_with_trials())
        disagree = [n.sentence for n in neighbours if n.disagrees]
        if measured < 2:
            text = _("Fewer than two combinations were measured: your readings say nothing of the order yet.")
        elif disagree:
            text = "\n".join(disagree)
        else:
            text = _("{n} combinations were measured; your readings do not speak against the order.").format(
                n=format_number(measured)
            )
        self.held.setText(text)
        self.held.setAccessibleName(text)
        set_kind(self.held, "flagged" if disagree else "")
        # of those that disagree, else of the first two
        self._order = tuple(n.working for n in sorted(neighbours, key=lambda n: not n.disagrees))
        self.why.setVisible(bool(self._order))

    def _enable(self) -> None:
        combination = self.chosen()
        at = [line.key for line in self.list.lines()].index(combination.id) if combination is not None else -1
        self.milder.setEnabled(at > 0)
        self.stronger.setEnabled(combination is not None and at < len(self.list.lines()) - 1)
        self.retire_it.setEnabled(combination is not None)
        self.renew.setVisible(combination is not None and combination.id in self._outdated and len(self._outdated) > 1)
        self.add.setEnabled(all(shelf.key for shelf in self.shelves.values()))

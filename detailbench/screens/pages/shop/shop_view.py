"""What the Shop page shows: its parts' names down the left, the open part beside them."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.starter import StockStarterKit
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import area, button, rule
from detailbench.screens.pages.shop.kinds import kinds
from detailbench.screens.pages.shop.line_part import LinePart
from detailbench.screens.pages.shop.range_part import RangePart
from detailbench.screens.pages.shop.ruler_part import RulerPart
from detailbench.screens.pages.shop.safe.safe_part import SafePart
from detailbench.screens.pages.shop.settings_part import SettingsPart
from detailbench.screens.pages.shop.things_part import ThingsPart
from detailbench.screens.pages.shop.training.training_part import TrainingPart

KEY = "shop"
NAMES_MM = 103.0
IN_TWO_COLUMNS = (
    "machine", "person", "pad", "gauge", "product", "shim", "range", "line",
    "lamp", "settings", "towel", "safe", "sanding_disc", "screen", "training",
)  # fmt: skip  # the kit on the left, the rest of the shop on the right

Part = ThingsPart | RangePart | SettingsPart | RulerPart | SafePart | LinePart | TrainingPart


class ShopView(QWidget):
    """Parts are made when first opened."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        area(self, "surface")
        self._context = context
        self._kinds = {k.table: k for k in kinds()}
        m = context.dress.look.measure
        named = {k.table: k.many for k in self._kinds.values()}
        named |= {"range": _("Range"), "settings": _("Settings"), "safe": _("Kept safe")}
        named |= {"line": _("Gauges on a line"), "screen": _("This screen"), "training": _("Training")}
        self.names = ChoiceRow(_("Shop"), [(key, named[key]) for key in IN_TWO_COLUMNS], columns=2)
        self.names.setFixedWidth(m.px(NAMES_MM))
        self.names.chosen.connect(self.turn)
        self.kit = button(_("Put the starter kit on the shelf"), self._stock)
        self.parts: dict[str, Part] = {}
        self.faces = QStackedWidget()
        left = QVBoxLayout()
        left.addWidget(self.names)
        left.addStretch(1)
        right = QVBoxLayout()
        right.setSpacing(m.space("small"))
        right.addWidget(self.faces, 1)
        right.addWidget(self.kit, 0, Qt.AlignmentFlag.AlignLeft)
        row = QHBoxLayout(self)
        row.setContentsMargins(m.space("wide"), m.space("thin"), m.space("wide"), m.space("thin"))
        row.setSpacing(m.space("gap"))
        row.addLayout(left)
        row.addWidget(rule(upright=True))
        row.addLayout(right, 1)
        context.dress.changed.connect(lambda: self.names.setFixedWidth(context.dress.look.measure.px(NAMES_MM)))
        context.changed.connect(lambda _changes, _who: self.redraw())
        context.stage_opened.connect(lambda key: self.redraw() if key == KEY else None)
        self.turn("person")

    @property
    def part(self) -> Part:
        """The part that is open."""
        return self.parts[self.names.value]

    def turn(self, key: str) -> None:
        """Open this part."""
        self.names.set_value(key)
        if key not in self.parts:
            self.parts[key] = self._made(key)
            self.faces.addWidget(self.parts[key])
        self.faces.setCurrentWidget(self.parts[key])
        self.redraw()

    def redraw(self) -> None:
        """Show what there is now, in the open part."""
        self.part.redraw()
        shop = self._context.shop
        self.kit.setVisible(shop is not None and not shop.combinations)

    def _made(self, key: str) -> Part:
        if key in self._kinds:
            return ThingsPart(self._context, self._kinds[key])
        if key == "line":
            return LinePart(self._context)
        if key == "safe":
            return SafePart(self._context)
        if key == "range":
            return RangePart(self._context)
        if key == "training":
            return TrainingPart(self._context)
        return SettingsPart(self._context) if key == "settings" else RulerPart(self._context)

    def _stock(self) -> None:
        self._context.do(StockStarterKit(), initiator=self)

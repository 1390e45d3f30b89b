"""What may be worked: rules on totals without a figure, and the clear coat where a layer gauge measured it.

No clear coat is computed from a total here. A thicker panel is never more permission: above the shop's own totals the
thickness changes nothing, and "thicker than the rest" only ever makes a panel more careful. A layer gauge's figure only
ever adds a reason; it takes none away.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working, is_finite
from detailbench.thickness.layer_room import LayerRoom

PaintSystem = Literal[
    "clear over colour", "single-stage", "matt or satin", "tinted clear", "filmed", "wrapped", "bare", "unknown"
]
Measured = Literal["measured", "not measured", "cannot be read", "no value"]
Compared = Literal["like", "thicker", "thinner", "look again", "two groups", "not compared"]
Ruling = Literal["may be worked", "careful", "held back"]
LiftedBy = Literal["", "override", "agreement"]

STRICTER: tuple[Ruling, ...] = ("may be worked", "careful", "held back")
HAS_CLEAR: tuple[PaintSystem, ...] = ("clear over colour", "tinted clear")
SOURCE = Source(
    "rules of this program; totals and reserve are the shop's own: common practice, no source",
    "own derivation",
)
NO_ABRASIVE = ("matt or satin", "filmed", "wrapped", "bare")


@dataclass(frozen=True)
class ShopTotals:
    """The shop's own totals, µm; None until the shop types them. Leave below may not exceed careful below."""

    careful_below_um: float | None = None
    leave_below_um: float | None = None

    def __post_init__(self) -> None:
        for name in ("careful_below_um", "leave_below_um"):
            value = getattr(self, name)
            if value is not None and not (is_finite(value) and value > 0):
                raise BadInput(_("A total must be above nought."), field=name, given=value)
        if self.careful_below_um and self.leave_below_um and self.leave_below_um > self.careful_below_um:
            raise BadInput(_("“Leave below” cannot lie above “careful below”."), field="leave_below_um")


@dataclass(frozen=True)
class OwnerLimits:
    """What the owner does not want whatever we think; only a new agreement lifts it."""

    barred: bool = False
    most_um: float | None = None


@dataclass(frozen=True)
class PanelTells:
    """What is known about one panel. ``lowest_um`` counts places chosen by hand as well; ``removed_um`` is what was
    measured as removed from this panel so far in this job, None where there is no figure; ``planned_um`` what the plan
    still takes, where that is known; ``plan_unmeasured``: it takes something nobody has measured. ``clear_words``: what
    a layer gauge measured where no room left can be stated from it."""

    key: str
    measured: Measured
    paint_system: PaintSystem
    compared: Compared = "not compared"
    lowest_um: float | None = None
    low_extra_place: bool = False
    stated_repair: bool = False
    unconfirmed: bool = False
    removed_um: float | None = None
    planned_um: float = 0.0
    plan_unmeasured: bool = False
    clear_words: str = ""


@dataclass(frozen=True)
class Reason:
    """One sentence, the ruling it asks for, and what can lift it ("" where there is nothing to lift)."""

    sentence: str
    ruling: Ruling
    lifted_by: LiftedBy = ""


@dataclass(frozen=True)
class Permission:
    """The strictest of the reasons. ``clear_coat`` is a sentence, and holds no figure unless a layer gauge measured
    it; then ``room`` is what it found, otherwise None."""

    key: str
    ruling: Ruling
    abrasive: bool
    reasons: tuple[Reason, ...]
    clear_coat: str
    room: LayerRoom | None = None
    working: Working = field(kw_only=True, compare=False, repr=False)

    @property
    def may_override(self) -> bool:
        """A held panel that a person with a reason may still start: nothing of it needs an agreement."""
        return self.ruling == "held back" and all(
            r.lifted_by == "override" for r in self.reasons if r.ruling == "held back"
        )


def what_may_come_off(
    panel: PanelTells, shop: ShopTotals, owner: OwnerLimits, layers: LayerRoom | None = None
) -> Permission:
    """The ruling for one panel. ``layers``: what a layer gauge measured of its clear coat, where one did; under a film,
    without a clear coat, or where the paint is unknown it says nothing and is left out.
    Raises BadInput when a measured panel has no lowest total."""
    if panel.measured == "measured" and (panel.lowest_um is None or not is_finite(panel.lowest_um)):
        raise BadInput(_("A measured panel needs its lowest place."), field="lowest_um", given=panel.lowest_um)
    room = layers if panel.paint_system in HAS_CLEAR else None
    reasons = [
        *_of_owner(panel, owner),
        *_of_paint(panel),
        *_of_measuring(panel, shop),
        *_of_comparison(panel),
        *_of_layers(panel, room),
    ]
    rulings: list[Ruling] = [r.ruling for r in reasons]
    ruling = max(rulings, key=STRICTER.index, default=STRICTER[0])
    abrasive = panel.paint_system not in NO_ABRASIVE
    clear_coat = _clear_coat(panel) if room is None else room.sentences[0]
    working = _working(panel, shop, owner, layers, room, ruling, abrasive, reasons)
    return Permission(panel.key, ruling, abrasive, tuple(reasons), clear_coat, room, working=working)


def _of_owner(panel: PanelTells, owner: OwnerLimits) -> list[Reason]:
    out = []
    if owner.barred:
        out.append(Reason(_("The owner does not want this panel touched."), "held back", "agreement"))
    if owner.most_um is None:
        return out
    taken = (panel.removed_um or 0.0) + panel.planned_um
    if taken > owner.most_um or (panel.removed_um or 0.0) >= owner.most_um:
        text = _("Taken off and planned: {taken}; the owner allows {most}.")
        sentence = text.format(taken=format_thickness(taken, digits=1), most=format_thickness(owner.most_um, digits=1))
        out.append(Reason(sentence, "held back", "agreement"))
    elif panel.removed_um is None:
        out.append(Reason(_("The owner limits what may come off; nothing taken off was measured yet."), "careful"))
    elif panel.plan_unmeasured:
        out.append(Reason(_("The owner limits what may come off; what the steps take was not measured."), "careful"))
    return out


def _of_paint(panel: PanelTells) -> list[Reason]:
    held = {
        "matt or satin": _("Matt or satin paint: nothing abrasive here."),
        "filmed": _("Filmed: nothing abrasive here."),
        "wrapped": _("Wrapped: nothing abrasive here."),
        "bare": _("Bare: there is no paint to polish."),
    }
    careful = {
        "single-stage": _("Single-stage paint: there is no clear coat above the colour."),
        "tinted clear": _("Tinted clear: what comes off changes the colour."),
        "unknown": _("Paint system unknown."),
    }
    if panel.paint_system in held:
        return [Reason(held[panel.paint_system], "held back", "override")]
    if panel.paint_system in careful:
        return [Reason(careful[panel.paint_system], "careful")]
    return []


def _of_measuring(panel: PanelTells, shop: ShopTotals) -> list[Reason]:
    if panel.measured == "cannot be read":
        return [Reason(_("Cannot be read by this gauge: plan by trial and watch the temperature."), "careful")]
    if panel.measured == "no value":
        return [Reason(_("No value on a panel that should be metal: find out why first."), "careful")]
    if panel.measured == "not measured" or panel.lowest_um is None:
        return [Reason(_("Not measured: nothing is known about its thickness."), "careful")]
    out = []
    low = panel.lowest_um
    if shop.leave_below_um is None:
        out.append(Reason(_("The shop has not typed a “leave below” total: thickness cannot clear it."), "careful"))
    elif low < shop.leave_below_um:
        out.append(Reason(_below(low, _("leave below"), shop.leave_below_um), "held back", "override"))
    elif panel.planned_um > 0 and low - panel.planned_um < shop.leave_below_um:
        out.append(Reason(_after_plan(panel, shop.leave_below_um), "held back", "override"))
    if shop.careful_below_um is not None and low < shop.careful_below_um:
        out.append(Reason(_below(low, _("careful below"), shop.careful_below_um), "careful"))
    if panel.low_extra_place:
        out.append(Reason(_("A place chosen by hand is low."), "held back", "override"))
    if panel.unconfirmed:
        out.append(Reason(_("Readings not confirmed by a gauge check: they release nothing."), "held back", "override"))
    return out


def _of_comparison(panel: PanelTells) -> list[Reason]:
    words: dict[Compared, str] = {
        "thicker": _("Thicker than the rest: more paint is not more permission."),
        "thinner": _("Thinner than the rest."),
        "look again": _("May differ from the rest: more places here first."),
        "two groups": _("The panels of this car fall into two groups."),
    }
    out = [Reason(words[panel.compared], "careful")] if panel.compared in words else []
    if panel.stated_repair:
        out.append(Reason(_("A repair was stated here."), "careful"))
    return out


def _below(low_um: float, what: str, total_um: float) -> str:
    return _("Lowest place {low}: under the shop's “{what}” total of {total}.").format(
        low=format_thickness(low_um, digits=1), what=what, total=format_thickness(total_um)
    )


def _after_plan(panel: PanelTells, total_um: float) -> str:
    return _("Lowest place {low}, and {planned} planned: then under the shop's “leave below” total of {total}.").format(
        low=format_thickness(panel.lowest_um or 0.0, digits=1),
        planned=format_thickness(panel.planned_um, digits=1),
        total=format_thickness(total_um),
    )


def _of_layers(panel: PanelTells, room: LayerRoom | None) -> list[Reason]:
    if panel.paint_system not in HAS_CLEAR:
        return []
    if room is None:
        words = _("Room left in the clear coat cannot be stated.")
        return [Reason(f"{panel.clear_words} {words}", "careful")] if panel.clear_words else []
    out = []
    if room.refused:
        out.append(Reason(" ".join(room.sentences[1:]), "held back", "override"))
    if panel.plan_unmeasured:
        text = _("What the steps take off is not measured: room left is that of the paint as it stands.")
        out.append(Reason(text, "careful"))
    return out


def _clear_coat(panel: PanelTells) -> str:
    if panel.clear_words and panel.paint_system in HAS_CLEAR:
        return panel.clear_words
    plain = (
        panel.measured == "measured"
        and panel.paint_system == "clear over colour"
        and panel.compared == "like"
        and not panel.stated_repair
    )
    return _("Clear coat not measured: this gauge reads the total only.") if plain else _("Clear coat unknown.")


def _working(
    panel: PanelTells,
    shop: ShopTotals,
    owner: OwnerLimits,
    layers: LayerRoom | None,
    room: LayerRoom | None,
    ruling: Ruling,
    abrasive: bool,
    reasons: list[Reason],
) -> Working:
    inputs: dict[str, Plain] = {
        "measured": panel.measured,
        "paint_system": panel.paint_system,
        "compared": panel.compared,
        "lowest_um": panel.lowest_um,
        "low_extra_place": panel.low_extra_place,
        "stated_repair": panel.stated_repair,
        "unconfirmed": panel.unconfirmed,
        "removed_um": panel.removed_um,
        "planned_um": panel.planned_um,
        "plan_unmeasured": panel.plan_unmeasured,
        "clear_words": panel.clear_words,
        "careful_below_um": shop.careful_below_um,
        "leave_below_um": shop.leave_below_um,
        "barred": owner.barred,
        "most_um": owner.most_um,
        "layers": None if layers is None else [dict(layers.working.inputs)],
    }
    taken = (panel.removed_um or 0.0) + panel.planned_um
    results: dict[str, Plain] = {
        "taken_and_planned_um": taken,
        "ruling": ruling,
        "abrasive": abrasive,
        "reasons": [r.sentence for r in reasons],
    }
    if room is not None:
        results |= {"low_um": room.low_um, "risk": room.risk, "room_um": room.room_um}
    return Working(
        name="what_may_come_off",
        formula="the strictest of: owner's limits, paint system, lowest place against the shop's totals, comparison "
        "with twin and family, and what a layer gauge measured",
        inputs=inputs,
        results=results,
        source=SOURCE,
        changes_with=_("the shop's totals; more places; the owner's agreement; a gauge that resolves layers"),
        notes=(_("More paint is never more permission."),),
    )

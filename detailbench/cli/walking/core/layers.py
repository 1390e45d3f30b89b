"""A gauge that resolves layers, a gloss meter, and places apart."""

from __future__ import annotations

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.expecting import close_to, holds, same
from detailbench.cli.walking.core.hand import Hand, Unmet
from detailbench.cli.walking.core.surface import position
from detailbench.cli.walking.kinds import Quantity, amount
from detailbench.cli.walking.steps import layers as s
from detailbench.findings.first_panel import first_panels
from detailbench.findings.gauges import gloss_sessions
from detailbench.findings.gloss import PanelGloss, panel_gloss
from detailbench.findings.layers import side_layers
from detailbench.findings.panels import Moment, panel_seen
from detailbench.findings.permissions import permissions
from detailbench.findings.reference_places import references
from detailbench.moves.gloss import RecordGloss, StrikeGloss
from detailbench.moves.readings import AddPlace, RecordReading
from detailbench.moves.shop import AddToShop


def add_layer_gauge(step: s.AddLayerGauge, hand: Hand) -> None:
    values: dict[str, object] = {
        "name": step.gauge,
        "principle": "ultrasonic",
        "layers": True,
        "substrates": ("steel", "aluminium"),
        "serial": step.serial,
    }
    given = {
        "accuracy_fixed_um": amount(step.fixed),
        "accuracy_share": step.share and step.share.value / 100,
        "resolution_um": amount(step.resolution),
    }
    hand.do(AddToShop("gauge", values | {k: v for k, v in given.items() if v is not None}))


def add_gloss_meter(step: s.AddGlossMeter, hand: Hand) -> None:
    values = {
        "name": step.gauge,
        "principle": "gloss",
        "substrates": (),
        "angles_deg": step.angles,
        "serial": step.serial,
    }
    hand.do(AddToShop("gauge", values))


def _shown(reading: Quantity) -> str:
    return f"{reading.value:.{reading.digits}f}"


def _place(hand: Hand, number: int | None) -> str:
    """The id of the place with this number, reference places too; the place chosen last where none is named."""
    if number is None:
        chosen, hand.place = hand.place, ""
        return chosen
    for place in hand.picture.places:
        if (place.panel, place.number) == (hand.on_panel(), number):
            return place.id
    raise Refused(_("That panel has no place {n}.").format(n=number), rule="no_place")


def type_layers(step: s.TypeLayers, hand: Hand) -> None:
    if len(step.values) != 2:
        raise BadInput(_("Two numbers: the total, then the clear coat."), field="values")
    total, clear = step.values
    typed = f"{_shown(total)} / {_shown(clear)}" + ("" if total.unit == "um" else f" {total.unit}")
    hand.do(
        RecordReading(
            hand.job,
            hand.on_panel(),
            total.um,
            place_id=_place(hand, step.place),
            typed=typed,
            unit=total.unit,
            clear_um=clear.um,
        )
    )


def type_gloss(step: s.TypeGloss, hand: Hand) -> None:
    typed = f"{step.angle}: {_shown(step.gloss)}"
    place = _place(hand, step.place)
    hand.do(RecordGloss(hand.job, hand.on_panel(), step.angle, step.gloss.value, place_id=place, typed=typed))


def strike_gloss(_step: s.StrikeGlossValue, hand: Hand) -> None:
    places = {p.id for p in hand.picture.places if p.panel == hand.on_panel()}
    there = [r for r in hand.picture.gloss_readings if r.place_id in places]
    if not there:
        raise Refused(_("There is no gloss value on that panel."), rule="nothing")
    hand.do(StrikeGloss(hand.job, there[-1].id))


def place_apart(step: s.PlaceApart, hand: Hand) -> None:
    panel = hand.on_panel()
    at = position(hand, panel, step.at)
    if at is None:
        return
    origin, surface = ("control", "outer") if step.where == "control" else ("chosen", step.where)
    hand.place = hand.do(AddPlace(hand.job, panel, at, origin, surface)).id


def clear(step: s.ExpectClear, hand: Hand) -> None:
    moment: Moment = "polished" if step.moment == "after" else "as_found"
    layers = side_layers(hand.picture, panel_seen(hand.picture, hand.on_panel(step.of), moment))
    close_to(None if layers is None else layers.mean_um, step.clear)


def room(step: s.ExpectRoom, hand: Hand) -> None:
    ruling = permissions(hand.picture)[hand.on_panel(step.of)]
    if ruling.room is None:
        raise Unmet(_("there is no figure: {why}").format(why=ruling.clear_coat))
    close_to(ruling.room.room_um, step.room)


def no_room(step: s.ExpectNoRoom, hand: Hand) -> None:
    ruling = permissions(hand.picture)[hand.on_panel(step.of)]
    if ruling.room is not None:
        raise Unmet(" ".join(ruling.room.sentences))
    holds(step.part, ruling.clear_coat)


def _gloss(hand: Hand, panel: str = "") -> PanelGloss:
    seen = panel_gloss(hand.picture, hand.on_panel(panel))
    if seen is None:
        no_meter = not gloss_sessions(hand.picture)
        raise Unmet(_("no gloss meter is in hand") if no_meter else _("no gloss was read there"))
    return seen


def gloss(step: s.ExpectGloss, hand: Hand) -> None:
    seen = _gloss(hand, step.of)
    at = (seen.before if step.moment == "before" else seen.after).get(step.angle)
    close_to(None if at is None else at.mean_gu, step.gloss)


def gloss_change(step: s.ExpectGlossChange, hand: Hand) -> None:
    seen = _gloss(hand)
    if seen.change is None:
        raise Unmet(_("there is no figure: {why}").format(why=seen.why_none))
    same(seen.change.angle_deg, step.angle)
    close_to(seen.change.change_gu, step.change)


def no_gloss_change(step: s.ExpectNoGlossChange, hand: Hand) -> None:
    seen = _gloss(hand)
    if seen.change is not None:
        raise Unmet(seen.change.sentence)
    holds(step.part, seen.why_none)


def haze(step: s.ExpectHaze, hand: Hand) -> None:
    seen = _gloss(hand)
    index = seen.haze_before if step.moment == "before" else seen.haze_after
    close_to(None if index is None else index.haze_gu, step.haze)


def apart(step: s.ExpectApart, hand: Hand) -> None:
    panel = hand.on_panel()
    figures = next((r.figures for r in references(hand.picture) if (r.panel, r.surface) == (panel, step.where)), None)
    close_to(None if figures is None else figures.mean_um, step.mean)


def first_panel(step: s.ExpectFirstPanel, hand: Hand) -> None:
    seen = first_panels(hand.picture)
    if not seen or seen[-1].found is None:
        raise Unmet(seen[-1].why_none if seen else _("no panel is done yet"))
    same(seen[-1].found.outcome.replace(" ", "_"), step.outcome)
    holds(step.part, seen[-1].found.sentence)


ACTS = {
    s.AddLayerGauge: add_layer_gauge,
    s.AddGlossMeter: add_gloss_meter,
    s.TypeLayers: type_layers,
    s.TypeGloss: type_gloss,
    s.StrikeGlossValue: strike_gloss,
    s.PlaceApart: place_apart,
    s.ExpectClear: clear,
    s.ExpectRoom: room,
    s.ExpectNoRoom: no_room,
    s.ExpectGloss: gloss,
    s.ExpectGlossChange: gloss_change,
    s.ExpectNoGlossChange: no_gloss_change,
    s.ExpectHaze: haze,
    s.ExpectApart: apart,
    s.ExpectFirstPanel: first_panel,
}

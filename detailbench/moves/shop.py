"""The shop's own things: people, gauges, foils, lamps, kit, settings."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import MISSING, Field, dataclass, fields
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite
from detailbench.body.panels import PANEL_KEYS
from detailbench.findings.gauges import GLOSS
from detailbench.findings.kit_retired import hang_on_words
from detailbench.findings.settings import DEFAULTS, ONE_OF, WALK_TURNS, setting
from detailbench.findings.settings_bounds import setting_unfit
from detailbench.moves.gauge_lines import carry_line
from detailbench.moves.kit_measures import measures_fit
from detailbench.moves.move import SHOP, Done
from detailbench.record.tables import BY_NAME
from detailbench.record.thing import ShopThing
from detailbench.record.things import Gauge, Machine, Pad, Product, Setting
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer
from detailbench.thickness.gloss import ANGLES
from detailbench.trials.movement import Movement

HEADER = {"id", "entered_at", "entered_by", "seq", "withdrawn", "retired"}
NAMES = ("name", "label", "initials")
MEASURES = ("_um", "_mm", "_cm", "_rpm", "_share", "_s", "_s2", "_k", "_n", "_db", "rung")
MOST_SETTING = 1e9
IN_ORDER = (
    ("leave_below_um", "careful_below_um", "“Leave below” cannot lie above “careful below”."),
    ("plausible_low_um", "plausible_high_um", "The lower end cannot lie above the upper."),
)
CALLED: Mapping[str, str] = {
    "person": "person",
    "gauge": "gauge",
    "shim": "zero plate or foil",
    "lamp": "lamp",
    "machine": "machine",
    "pad": "pad",
    "product": "compound or polish",
    "combination": "combination",
    "towel": "towel",
    "sanding_disc": "sanding disc",
    "setting": "setting",
}
WORDS: Mapping[tuple[str, str], tuple[str, ...]] = {
    ("gauge", "principle"): choices("gauge", "principle"),
    ("lamp", "kind"): choices("lamp", "kind"),
    ("machine", "movement"): tuple(Movement),
    ("pad", "material"): choices("pad", "material"),
    ("product", "kind"): ("cutting", "medium", "finishing", "one_step"),
    ("shim", "substrate"): choices("shim", "substrate"),
    ("towel", "use"): choices("towel", "use"),
}


def shop_kind(table: str) -> type[ShopThing]:
    """The kind of thing behind a table's name. Raises BadInput for anything that is not the shop's."""
    cls = BY_NAME.get(table)
    if cls is None or not issubclass(cls, ShopThing) or table not in CALLED:
        raise BadInput(_("“{name}” is not something a shop keeps.").format(name=table), field="table", given=table)
    return cls


def own_fields(cls: type[ShopThing]) -> tuple[Field[Any], ...]:
    """What a person fills in: every field but the header."""
    return tuple(f for f in fields(cls) if f.name not in HEADER)


def _names_fit(table: str, cls: type[ShopThing], values: Mapping[str, Any]) -> None:
    known = {f.name for f in own_fields(cls)}
    for name in values:
        if name not in known:
            raise BadInput(_("A {kind} has no field “{name}”.").format(kind=_(CALLED[table]), name=name), field=name)


def _values_fit(w: Writer, cls: type[ShopThing], values: Mapping[str, Any]) -> None:
    """Names are there, measures are above nothing, words are among the known ones, and what is named exists."""
    for f in own_fields(cls):
        value = values.get(f.name)
        if f.name in NAMES and not str(value or "").strip():
            raise BadInput(_("Give it a name first."), field=f.name)
        known = WORDS.get((cls.table, f.name))
        if known is not None and value is not None and value not in known:
            raise BadInput(_("It must be one of: {words}.").format(words=", ".join(known)), field=f.name, given=value)
    for name, value in values.items():
        if name.endswith(MEASURES) and isinstance(value, (int, float)) and value < 0:
            raise BadInput(_("That cannot be below zero."), field=name, given=value)
    measures_fit(cls.table, values)
    if cls is Gauge:
        _gauge_fits({f.name: f.default for f in own_fields(cls)} | dict(values))
    for name, part in (("machine_id", Machine), ("pad_id", Pad), ("product_id", Product)):
        if name in values:
            w.get(part, values[name])


def _gauge_fits(values: Mapping[str, Any]) -> None:
    """A gloss meter measures at known angles and no thickness; a thickness gauge at none."""
    gloss, angles = values["principle"] == GLOSS, values["angles_deg"]
    if not isinstance(angles, tuple | list) or any(a not in ANGLES for a in angles):
        raise BadInput(_("Gloss is read at 20°, 60° or 85°."), field="angles_deg", given=angles)
    if gloss and not angles:
        raise BadInput(_("Say at which angles the gloss meter measures: 20, 60, 85."), field="angles_deg")
    if gloss and values["layers"]:
        raise BadInput(_("A gloss meter resolves no layers."), field="layers")
    if angles and not gloss:
        raise BadInput(_("Only a gloss meter measures at angles."), field="angles_deg", given=angles)


@dataclass(frozen=True)
class AddToShop:
    """A new person, gauge, shim, lamp, machine, pad, product or combination; ``values`` by field name."""

    undoable: ClassVar[bool] = True
    table: str
    values: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        cls = shop_kind(self.table)
        _names_fit(self.table, cls, self.values)
        for f in own_fields(cls):
            if f.default is MISSING and f.name not in NAMES and f.name not in self.values:
                raise BadInput(_("{what} is missing.").format(what=opened(f.name)), field=f.name)
        _values_fit(w, cls, self.values)
        thing = w.add(cls, **self.values)
        return Done(SHOP, _("{kind} added to the shop").format(kind=_(CALLED[self.table])), thing.id)


@dataclass(frozen=True)
class Retire:
    """Nothing of the shop is deleted, only retired: old jobs keep naming it."""

    undoable: ClassVar[bool] = True
    table: str
    id: str
    back: bool = False

    def make(self, w: Writer) -> Done:
        thing = w.get(shop_kind(self.table), self.id)
        hangs = "" if self.back or thing.retired else hang_on_words(w.shop(), thing.id)
        w.change(thing, retired=not self.back)
        says = _("{kind} taken back into use") if self.back else _("{kind} retired")
        return Done(SHOP, says.format(kind=_(CALLED[self.table])), thing.id, hangs)


@dataclass(frozen=True)
class ChangeInShop:
    """A changed thing is a new one that replaces the old, which is retired; a rename never rewrites an old job."""

    undoable: ClassVar[bool] = True
    table: str
    id: str
    values: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        cls = shop_kind(self.table)
        old = w.get(cls, self.id)
        _names_fit(self.table, cls, self.values)
        values = {f.name: getattr(old, f.name) for f in own_fields(cls)}
        if "replaces" in values:
            values["replaces"] = old.id
        values |= self.values
        _values_fit(w, cls, values)
        w.change(old, retired=True)
        new = w.add(cls, **values)
        if cls is Gauge:
            carry_line(w, old.id, new.id)
        return Done(SHOP, _("{kind} changed").format(kind=_(CALLED[self.table])), new.id)


@dataclass(frozen=True)
class SetSetting:
    """A setting of the shop: words or a number of 0 or more, as its default is; None empties one without a default."""

    undoable: ClassVar[bool] = True
    key: str
    value: Any

    def make(self, w: Writer) -> Done:
        default = DEFAULTS.get(self.key)
        if default is None:
            raise BadInput(_("There is no setting “{key}”.").format(key=self.key), field=self.key, given=self.value)
        if isinstance(default.value, str):
            if not isinstance(self.value, str):
                raise BadInput(_("Text is expected here."), field=self.key, given=self.value)
            self._one_of()
            if self.key == "walk_from" and self.value not in PANEL_KEYS:
                raise BadInput(_("Name the panel the walk begins at."), field=self.key, given=self.value)
            if self.key == "walk_turn" and self.value not in WALK_TURNS:
                raise BadInput(_("The walk goes by the left side first or by the right."), field=self.key)
        elif not (self.value is None and default.value is None) and not (
            is_finite(self.value) and 0 <= self.value <= MOST_SETTING
        ):
            raise BadInput(_("A number of 0 or more is expected here."), field=self.key, given=self.value)
        if self.key == "sound_volume" and self.value > 100:
            raise BadInput(_("100 is the loudest there is."), field=self.key, given=self.value)
        unfit = setting_unfit(self.key, self.value)
        if unfit:
            raise BadInput(unfit, field=self.key, given=self.value)
        self._fits_the_others(w)
        thing = w.add(Setting, key=self.key, value=json.dumps(self.value, ensure_ascii=False))
        return Done(SHOP, _("setting changed: {what}").format(what=_(default.says)), thing.id)

    def _one_of(self) -> None:
        """Raise BadInput where the setting is one of a few words and this is none of them."""
        if self.value in ONE_OF.get(self.key, (self.value,)):
            return
        says = {
            "unit": _("Thickness is shown in um or mil."),
            "page_size": _("The paper is A4 or Letter."),
            "adviser_stop": _("Trials stop by prove or by thrift."),
            "change_first": _("What is changed first is compound or pad."),
        }[self.key]
        raise BadInput(says, field=self.key, given=self.value)

    def _fits_the_others(self, w: Writer) -> None:
        """Raise BadInput for what every job would stumble over: two totals the wrong way round."""
        for low, high, sentence in IN_ORDER:
            if self.key not in (low, high) or self.value is None:
                continue
            shop = w.shop()
            values = {key: setting(shop, key) for key in (low, high)} | {self.key: self.value}
            if None not in values.values() and values[low] > values[high]:
                raise BadInput(_(sentence), field=self.key, given=self.value)

"""The shop's own things: people, gauges, foils, lamps, kit, settings."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.moves.move import SHOP, Done
from detailbench.record.tables import BY_NAME
from detailbench.record.thing import ShopThing
from detailbench.record.things import Setting
from detailbench.record.writing import Writer


def shop_kind(table: str) -> type[ShopThing]:
    """The kind of thing behind a table's name. Raises BadInput for anything that is not the shop's."""
    cls = BY_NAME.get(table)
    if cls is None or not issubclass(cls, ShopThing):
        raise BadInput(_("“{name}” is not something a shop keeps.").format(name=table), field="table", given=table)
    return cls


@dataclass(frozen=True)
class AddToShop:
    """A new person, gauge, shim, lamp, machine, pad, product or combination; ``values`` by field name."""

    undoable: ClassVar[bool] = True
    table: str
    values: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        cls = shop_kind(self.table)
        known = {f.name for f in fields(cls)}
        for name in self.values:
            if name not in known:
                raise BadInput(_("A {kind} has no field “{name}”.").format(kind=self.table, name=name), field=name)
        for name in ("name", "label", "initials"):
            if name in known and not str(self.values.get(name, "")).strip():
                raise BadInput(_("Give it a name first."), field=name)
        thing = w.add(cls, **self.values)
        return Done(SHOP, _("{kind} added to the shop").format(kind=self.table), thing.id)


@dataclass(frozen=True)
class Retire:
    """Nothing of the shop is deleted, only retired: old jobs keep naming it."""

    undoable: ClassVar[bool] = True
    table: str
    id: str
    back: bool = False

    def make(self, w: Writer) -> Done:
        thing = w.get(shop_kind(self.table), self.id)
        w.change(thing, retired=not self.back)
        says = _("{kind} taken back into use") if self.back else _("{kind} retired")
        return Done(SHOP, says.format(kind=self.table), thing.id)


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
        header = {"id", "entered_at", "entered_by", "seq", "withdrawn", "retired"}
        kept = {f.name: getattr(old, f.name) for f in fields(cls) if f.name not in header}
        if "replaces" in kept:
            kept["replaces"] = old.id
        for name in self.values:
            if name not in kept:
                raise BadInput(_("A {kind} has no field “{name}”.").format(kind=self.table, name=name), field=name)
        w.change(old, retired=True)
        new = w.add(cls, **{**kept, **self.values})
        return Done(SHOP, _("{kind} changed").format(kind=self.table), new.id)


@dataclass(frozen=True)
class SetSetting:
    """A setting of the shop; ``value`` is any plain value."""

    undoable: ClassVar[bool] = True
    key: str
    value: Any

    def make(self, w: Writer) -> Done:
        thing = w.add(Setting, key=self.key, value=json.dumps(self.value, ensure_ascii=False))
        return Done(SHOP, _("setting “{key}” changed").format(key=self.key), thing.id)

"""A new shop begins with a generic kit, lamps, a gauge and foils to correct, so that the first job can start."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.texts import _
from detailbench.moves.move import SHOP, Done
from detailbench.record.things import Combination, Lamp, Machine, Pad, Product, Towel
from detailbench.record.writing import Writer
from detailbench.trials.kit import starter_kit


@dataclass(frozen=True)
class StockStarterKit:
    """Machines, pads, compounds, the range made of them, lamps and towels of the starter kit; no gauge: that is the
    shop's own, with its own certificate; and no sanding disc: sanding is only ever agreed. Does nothing in a shop
    that has combinations."""

    undoable: ClassVar[bool] = True

    def make(self, w: Writer) -> Done:
        if w.shop().combinations:
            return Done(SHOP, _("the shop has its kit already"))
        kit = starter_kit()
        machines = {
            m.key: w.add(
                Machine,
                name=m.name,
                movement=str(m.movement),
                orbit_mm=m.orbit_mm,
                plate_mm=m.plate_mm,
                dials=tuple((str(d), float(n)) for d, n in m.dials),
                own_rpm=m.own_rpm,
                weight_n=m.weight_n or None,
            )
            for m in kit.machines
        }
        plates = {m.key: m.plate_mm for m in kit.machines}
        pads = {
            (p.key, size): w.add(Pad, name=p.name, material=p.material, diameter_mm=size)
            for p in kit.pads
            for size in p.sizes_mm
        }
        products = {
            c.key: w.add(Product, name=c.name, kind=c.kind, working_time_s=c.working_time_s) for c in kit.compounds
        }
        for rung, r in enumerate(kit.rungs):
            w.add(
                Combination,
                machine_id=machines[r.machine].id,
                pad_id=_fitting(pads, r.pad, plates[r.machine]).id,
                product_id=products[r.compound].id,
                rung=rung,
            )
        for lamp in kit.lamps:
            w.add(Lamp, name=lamp.name, kind=lamp.kind, colour_temperature_k=lamp.colour_k)
        for towel in kit.towels:
            w.add(Towel, name=towel.name, use=towel.use)
        return Done(SHOP, _("starter kit put on the shelf"))


def _fitting(pads: Mapping[tuple[str, float], Pad], key: str, plate_mm: float) -> Pad:
    """The smallest size of a pad that covers the machine's plate, else the largest there is."""
    sizes = sorted(size for name, size in pads if name == key)
    return pads[(key, next((s for s in sizes if s >= plate_mm), sizes[-1]))]

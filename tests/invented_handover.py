"""A whole invented job, Monday to Wednesday, from arrival to signatures. Every name and figure is made up."""

from __future__ import annotations

import io
import math
from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from invented_shop import InventedShop
from PIL import Image, ImageDraw

from detailbench.body.edges import EdgePosition, to_edges
from detailbench.findings.panels import outline_of
from detailbench.moves import arrival, handover, marks, photos, readings, readings_file, shop, surface, trials, work

ZERO = (0.1, 0.2, 0.0, 0.1, -0.1)
FOIL_BEFORE = (102.0, 102.5, 101.8, 102.2, 102.1)
FOIL_AFTER = (102.1, 102.3, 101.9, 102.4, 102.0)
MEANS = {
    "bonnet": 118.0, "wing_front_l": 112.0, "door_front_l": 241.0, "door_rear_l": 116.0, "quarter_rear_l": 121.0,
    "wing_front_r": 114.0, "door_front_r": 119.0, "door_rear_r": 115.0, "quarter_rear_r": 123.0, "roof": 109.0,
    "tailgate": 117.0, "sill_l": 104.0, "sill_r": 106.0, "fuel_flap": 120.0,
}  # fmt: skip
WIGGLE = (0.0, 2.0, -2.0, 1.0, 3.0, -1.0, -3.0, 2.0, 0.0, 1.0)
POLISHED = ("bonnet", "wing_front_l", "wing_front_r", "door_front_r", "roof")
SIGNATURE = (
    tuple((0.05 + 0.03 * i, 0.5 + 0.35 * math.sin(i * 0.9) * (1 - i / 34)) for i in range(30)),
    ((0.2, 0.85), (0.5, 0.8), (0.85, 0.86)),
)


class HandoverJob:
    """Makes the job move by move; ``job`` is its id."""

    def __init__(self, shop_: InventedShop) -> None:
        self.shop = shop_
        self.bench, self.clock = shop_.bench, shop_.clock
        self.job = ""
        self.session = ""
        self.lamp = next(x.id for x in self.bench.shop().lamps if x.kind == "P")

    def all(self) -> str:
        """Everything, from arrival to signatures."""
        self.arrive()
        self.photo("", jpeg("plate", 120, 30), "arrival", "VIN plate")
        self.see()
        self.photograph("before")
        self.measure()
        self.try_out()
        self.polish()
        self.look_again()
        self.measure_again()
        self.photograph("after")
        self.protect()
        self.pair()
        self.hand_back()
        return self.job

    def do(self, move: object) -> str:
        self.clock.forward(seconds=20)
        return self.bench.do(move).id  # type: ignore[arg-type]

    def arrive(self) -> None:
        bench = self.bench
        bench.do(shop.SetSetting("shop_name", "Invented Bay Two"))
        bench.do(shop.SetSetting("shop_address", "1 Made-up Yard"))
        bench.do(shop.SetSetting("careful_below_um", 100.0))
        bench.do(shop.SetSetting("leave_below_um", 80.0))
        second = self.do(shop.AddToShop("person", {"name": "Bo Invented", "initials": "BI", "role": "polisher"}))
        self.second = second
        values = {
            "name": "invented gauge two", "serial": "INV-0042", "certificate": "C-2031-7", "laboratory": "Invented Lab",
            "substrates": ("steel", "aluminium"), "resolution_um": 1.0,
        }  # fmt: skip
        self.gauge = self.do(shop.AddToShop("gauge", values))
        plate = {"label": "zero plate two", "value_um": 0.0, "substrate": "aluminium"}
        foil = {"label": "foil 126", "value_um": 126.0, "substrate": "aluminium", "certificate": "F-17"}
        self.zero_al = self.do(shop.AddToShop("shim", plate))
        self.foil_al = self.do(shop.AddToShop("shim", foil))
        new = arrival.NewJob(
            owner={"name": "Invented Owner", "telephone": "000 111", "address": "2 Made-up Lane"},
            plate="INV 01",
            car={
                "described": "Invented estate, second series", "colour": "dark blue", "lightness": "dark",
                "year": 2027, "vin": "1M8GDM9AXKP042788", "paint_code": "INV-B7",
            },
        )  # fmt: skip
        self.job = self.bench.do(new).scope
        self.do(arrival.SetVisit(self.job, {"odometer_in": 41200, "light": "overcast, in the yard"}))
        self.do(
            arrival.SetHopes(
                self.job,
                {
                    "hoped_level": "Swirl marks gone under the sun lamp on the bonnet and roof; stone chips may stay.",
                    "will_remain": "The chips on the bonnet and the long scratch on the right front door.",
                    "price_range": "as quoted by telephone",
                },
            )
        )
        self.do(arrival.AddDamage(self.job, "Kerbed wheel, right front"))
        self.do(arrival.AddDamage(self.job, "Small dent, paint whole", "door_rear_r"))

    def see(self) -> None:
        keys = tuple(outline_of(self.bench.job(self.job)).panels)
        self.do(surface.SetState(self.job, keys, clean="washed", how="contact wash"))
        self.do(surface.SetState(self.job, keys, clean="wiped", how="clay, panel wipe"))
        group = next(g for g in self.bench.job(self.job).groups if "bonnet" in g.panels)
        self.do(surface.SetPaintSystem(self.job, group.id, "clear_over_colour"))
        for panel, severity in (
            ("bonnet", 4), ("roof", 3), ("wing_front_l", 3), ("wing_front_r", 2), ("door_front_r", 3),
            ("tailgate", 2), ("door_front_l", 3),
        ):  # fmt: skip
            self.mark(panel, "swirl", severity)
        self.mark("door_front_r", "scratch_single", 4, depth=2, at=(0.2, 0.4), to=(0.75, 0.5), length_mm=420.0)
        for i, at in enumerate(((0.3, 0.2), (0.5, 0.15), (0.62, 0.3))):
            self.mark("bonnet", "chip", 2 + i % 2, depth=4, at=at)
        self.mark("roof", "bird_etch", 3, depth=1, at=(0.55, 0.45), area_cm2=36.0, shape="area")
        self.mark("quarter_rear_l", "clear_failure", 4, at=(0.5, 0.35), area_cm2=90.0, shape="area")
        for panel in ("door_rear_l", "quarter_rear_r"):
            self.do(marks.LookedNothingSeen(self.job, panel, self.lamp))

    def mark(
        self,
        panel: str,
        kind: str,
        severity: int,
        *,
        depth: int | None = None,
        at: tuple[float, float] | None = None,
        to: tuple[float, float] | None = None,
        length_mm: float | None = None,
        area_cm2: float | None = None,
        shape: str = "",
    ) -> str:
        """``at`` and ``to`` as shares of the panel's width and height."""
        where = None if at is None else self.position(panel, at)
        end = None
        if where is not None and to is not None:
            far = self.position(panel, to, where)
            end = far.a_mm, far.b_mm
        return self.do(
            marks.RecordMark(
                self.job, panel, kind, severity, depth=depth, at=where, end_mm=end, lamp_id=self.lamp,
                length_mm=length_mm, area_cm2=area_cm2, shape=shape,
            )
        )  # fmt: skip

    def position(self, panel: str, at: tuple[float, float], like: EdgePosition | None = None) -> EdgePosition:
        drawn = outline_of(self.bench.job(self.job)).panels[panel]
        x0, y0, x1, y1 = drawn.bounds
        found = to_edges(drawn, x0 + at[0] * (x1 - x0), y0 + at[1] * (y1 - y0))
        if like is None:
            return found
        a, b = found.a_mm, found.b_mm
        if found.edge_a != like.edge_a:
            a = drawn.height_mm - a
        if found.edge_b != like.edge_b:
            b = drawn.width_mm - b
        return replace(found, edge_a=like.edge_a, a_mm=a, edge_b=like.edge_b, b_mm=b)

    def check(self, foil: Sequence[float], *, again: bool = False) -> None:
        """A round on steel, then one on aluminium: the bonnet is of that."""
        self.do(readings.RecordCheck(self.job, self.session, self.shop.zero, ZERO, again=again))
        self.do(readings.RecordCheck(self.job, self.session, self.shop.foil, foil))
        self.do(readings.RecordCheck(self.job, self.session, self.zero_al, ZERO, again=True))
        self.do(readings.RecordCheck(self.job, self.session, self.foil_al, [v + 24.0 for v in foil]))

    def measure(self) -> None:
        self.session = self.do(readings.StartSession(self.job, self.gauge, 21.0))
        self.check(FOIL_BEFORE)
        for panel, mean in MEANS.items():
            self.read(panel, mean)
        for panel in ("bonnet",):  # a second round at the same places
            self.read(panel, MEANS[panel] + 0.5)
        self.do(readings.RecordReading(self.job, "bumper_rear", no_value="no_metal"))
        self.clock.forward(minutes=2)
        self.check(FOIL_BEFORE, again=True)

    def read(self, panel: str, mean: float) -> None:
        self.do(readings.ProposePlaces(self.job, panel))
        count = sum(p.panel == panel for p in self.bench.job(self.job).places)
        lines = tuple(
            readings_file.ImportedReading(panel, round(mean + WIGGLE[i % len(WIGGLE)], 1), place_number=i + 1)
            for i in range(count)
        )
        self.do(readings_file.ImportReadings(self.job, lines, "invented.csv"))

    def try_out(self) -> None:
        self.clock.forward(hours=1)
        group = next(g for g in self.bench.job(self.job).groups if "bonnet" in g.panels)
        rungs = sorted(self.bench.shop().combinations, key=lambda c: c.rung)
        technique = {
            "dial": "middle", "force_n": 40.0, "section_w_mm": 450.0, "section_h_mm": 450.0, "passes": 4,
            "seconds": 55.0, "surface_before_c": 21.0, "surface_after_c": 29.5, "lamp_id": self.lamp,
        }  # fmt: skip
        outcomes = ((1, "no", "clear"), (2, "yes", "clear"))
        for n, (rung, cleared, finish) in enumerate(outcomes):
            at = self.position("bonnet", (0.3 + 0.35 * n, 0.6))
            trial = self.do(
                trials.RecordTrial(self.job, group.id, "bonnet", rungs[rung].id, at=at, technique=technique)
            )
            self.do(trials.JudgeTrial(self.job, trial, cleared, finish))
        second = self.do(trials.RecordTrial(self.job, group.id, "roof", rungs[2].id, "confirming", technique=technique))
        self.do(trials.JudgeTrial(self.job, second, "yes", "clear"))
        steps = [{"combination_id": rungs[2].id, "section_m2": 0.2}]
        self.do(work.AdoptProcess(self.job, group.id, steps, words="One step; edges by hand."))

    def polish(self) -> None:
        self.clock.forward(days=1)
        self.do(surface.HoldPanel(self.job, "quarter_rear_l", "clear coat lifting"))
        self.bench.person = self.second
        step = self.bench.job(self.job).steps[0]
        for i, panel in enumerate(POLISHED):
            self.do(work.StartStep(self.job, panel, step.id))
            self.clock.forward(minutes=24 + 3 * i)
            self.do(work.FinishStep(self.job, panel))
        # the owner wanted the thick door worked all the same: the readings were confirmed, so nothing stops it
        self.do(surface.HoldPanel(self.job, "tailgate", "badge not removed"))
        self.do(work.StartStep(self.job, "tailgate", step.id, override="badge taped over"))
        self.clock.forward(minutes=21)
        self.do(work.FinishStep(self.job, "tailgate", minutes=18.0))
        self.bench.person = self.shop.person
        self.do(surface.SetState(self.job, (*POLISHED, "tailgate"), clean="wiped", how="panel wipe"))

    def look_again(self) -> None:
        for mark in self.bench.job(self.job).marks:
            if mark.panel in POLISHED:
                severity = {"swirl": 0, "scratch_single": 2, "bird_etch": 1}.get(mark.kind, mark.severity)
                self.do(marks.LookAgain(self.job, mark.id, severity, mark.depth, self.lamp))

    def measure_again(self) -> None:
        self.session = self.do(readings.StartSession(self.job, self.gauge, 22.5))
        self.check(FOIL_AFTER)
        for panel in POLISHED:
            less = 2.5 if panel == "bonnet" else 0.4
            self.read(panel, MEANS[panel] - less)
        self.clock.forward(minutes=2)
        self.check(FOIL_AFTER, again=True)

    def protect(self) -> None:
        self.clock.forward(hours=2)
        self.do(
            handover.RecordProtection(
                self.job, (*POLISHED, "tailgate"), "invented sealant", "sealant", batch="S-31", air_c=20.0,
                humidity_percent=50.0, surface_c=20.5, cure_h=12.0,
            )
        )  # fmt: skip

    def photograph(self, moment: str) -> None:
        caption = {"before": "swirl under the point lamp", "after": "same place"}[moment]
        for i, (panel, grey) in enumerate((("bonnet", 60), ("door_front_r", 90))):
            self.photo(panel, jpeg(panel, grey + (60 if moment == "after" else 0), i), moment, caption)

    def pair(self) -> None:
        found = self.bench.job(self.job).photos
        for after in (p for p in found if p.moment == "after"):
            before = next(p for p in found if p.moment == "before" and p.panel == after.panel)
            self.do(photos.PairPhotos(self.job, before.id, after.id))

    def photo(self, panel: str, content: bytes, moment: str, caption: str) -> str:
        return self.do(
            photos.AddPhoto(
                self.job, content, f"{panel}-{moment}.jpg", panel, moment=moment, lamp_id=self.lamp, caption=caption
            )
        )

    def hand_back(self) -> None:
        self.clock.forward(hours=14)
        self.do(arrival.SetVisit(self.job, {"odometer_out": 41203}))
        remarks = "Happy with the bonnet. The scratch on the right door is still seen in the sun."
        self.do(handover.RecordAcceptance(self.job, "with_remarks", remarks, light="daylight in the yard"))
        self.do(handover.Sign(self.job, "owner", name="Invented Owner", strokes=SIGNATURE))
        self.do(handover.Sign(self.job, "workshop", name="Ana Invented", strokes=SIGNATURE[:1]))
        self.do(handover.CarLeaves(self.job))
        self.clock.set(self.clock.now() + timedelta(minutes=5))


def jpeg(words: str, grey: int, seed: int, size: tuple[int, int] = (640, 420)) -> bytes:
    """An invented photograph: a shaded field with some lines and words."""
    image = Image.new("RGB", size, (grey // 3, grey // 2, grey))
    pen = ImageDraw.Draw(image)
    for i in range(40):
        x, y = (i * 97 + seed * 31) % size[0], (i * 53 + seed * 17) % size[1]
        pen.arc((x - 60, y - 60, x + 60, y + 60), i * 9, i * 9 + 40, fill=(grey, grey, min(255, grey + 60)))
    pen.text((20, 20), words, fill=(230, 230, 230))
    out = io.BytesIO()
    image.save(out, "JPEG", quality=85)
    return out.getvalue()

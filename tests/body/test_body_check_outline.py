"""Each complaint of the checker, provoked on a damaged copy of the drawing."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from detailbench.basics.shelf import resource
from detailbench.body.check_outline import check_outline
from detailbench.body.outlines import styles

Damage = Callable[[str], str]


def swap(find: str, put: str) -> Damage:
    def damage(text: str) -> str:
        assert text.count(find) >= 1, find
        return text.replace(find, put, 1)

    return damage


def shift(element: str, dx: float = 0.0, dy: float = 0.0) -> Damage:
    """Move every point of one path."""

    def damage(text: str) -> str:
        found = re.search(rf'id="{element}"[^>]*?\bd="([^"]*)"', text, re.S)
        assert found, element
        moved = re.sub(
            r"(-?[\d.]+),(-?[\d.]+)",
            lambda m: f"{float(m[1]) + dx:.1f},{float(m[2]) + dy:.1f}",
            found[1],
        )
        return text[: found.start(1)] + moved + text[found.end(1) :]

    return damage


def attribute(element: str, name: str, put: Callable[[str], str]) -> Damage:
    def damage(text: str) -> str:
        found = re.search(rf'id="{element}"[^>]*?\b{name}="([^"]*)"', text, re.S)
        assert found, (element, name)
        return text[: found.start(1)] + put(found[1]) + text[found.end(1) :]

    return damage


def without(element: str) -> Damage:
    def damage(text: str) -> str:
        out, n = re.subn(rf'\s*<path [^>]*?id="{element}"[^>]*/>', "", text, flags=re.S)
        assert n == 1
        return out

    return damage


def turned(path: str) -> str:
    """The hole turned round: its points listed backwards as straight lines."""
    outer, hole = path.split("Z", 1)
    ends = [p.split()[-1] for p in re.findall(r"[MLC]([^MLCZ]+)", hole)]
    return outer + "Z M" + " L".join(reversed(ends)) + " Z"


def complaints(tmp_path: Path, damage: Damage) -> str:
    file = tmp_path / "estate.svg"
    file.write_text(damage(resource("outlines", "estate.svg").read_text("utf-8")), "utf-8")
    found = check_outline(file)
    assert all(c.startswith("estate.svg, ") for c in found), found
    return "\n".join(found)


def test_the_drawings_of_the_program_have_nothing_to_mend() -> None:
    for style in styles():
        assert check_outline(resource("outlines", f"{style}.svg")) == ()


@pytest.mark.parametrize(
    ("damage", "says"),
    [
        (without("fuel_flap"), "fuel_flap: is missing; every panel of the list is drawn."),
        (
            shift("door_front_l", dx=-1.0),
            "door_front_r: is not the mirror image of door_front_l; they differ by 1.0 mm.",
        ),
        (
            attribute("sill_l", "data-substrate", lambda _: "aluminium"),
            "sill_r: differs from sill_l in substrate, lie, group or curvature.",
        ),
        (shift("bonnet", dy=900), "bonnet: lies over roof"),
        (shift("door_rear_r", dy=4), "door_front_r: the gap to door_rear_r is 16"),
        (shift("tailgate", dy=-3), "roof: the gap to tailgate is 9"),
        (shift("pillar_b_r", dx=-60), "does not face pillar_b_r across a gap"),
        (attribute("tailgate", "d", turned), "tailgate: hole 1 is drawn the same way round as the outer edge"),
        (
            attribute("roof", "data-neighbours", lambda names: names + " bonnet"),
            "roof: data-neighbours names bonnet, but bonnet does not name it back.",
        ),
        (
            attribute("fuel_flap", "data-beyond", lambda _: "filler"),
            "fuel_flap: data-beyond names filler, which is not drawn.",
        ),
        (swap('data-length-mm="4750"', 'data-length-mm="4600"'), "svg: the flanks are 47"),
        (swap('data-front-y-mm="-880"', 'data-front-y-mm="-800"'), "svg: the foremost point lies at y -880"),
        (shift("tyre_rear_l", dy=40), "tyre_rear_l: stands 2840 mm behind the front one"),
        (without("tyre_front_r"), "below: tyre_front_r or tyre_rear_r is missing."),
        (
            lambda text: shift("tyre_front_r", dy=50)(shift("tyre_rear_r", dy=50)(text)),
            "tyre_front_r: its middle lies at y 50; the origin is the front axle.",
        ),
        (swap('cy="1150"', 'cy="900"'), "handle of mirror_cap_r: overlaps the handle of sill_r."),
        (swap('<circle cx="2310" cy="1150"', '<circle cx="1800" cy="1150"'), "lies over the panel sill_r."),
        (swap('<circle cx="2310" cy="3315"', '<circle cx="1850" cy="3315"'), "lies over side_bumper_rear_r."),
        (
            swap('<circle cx="2310" cy="3315"', '<circle cx="2310" cy="2900"'),
            "handle of fuel_flap: its leader does not run from the panel to the handle.",
        ),
        (without("mirror_cap_l"), "handle of mirror_cap_l: belongs to a panel that is not drawn."),
        (attribute("roof", "data-curvature", lambda _: "0.5"), "roof: data-curvature is 0.5"),
        (attribute("roof", "data-curvature-share", lambda _: "0"), "roof: data-curvature-share is 0;"),
        (attribute("roof", "data-label", lambda _: "0 0"), "roof: data-label lies outside the panel."),
        (
            attribute("roof", "d", lambda _: "M0,0 L100,100 L100,0 L0,100 Z"),
            "roof: the edge crosses itself or encloses nothing.",
        ),
        (attribute("roof", "d", lambda d: d.removesuffix("Z")), "roof: has a ring that is not closed (Z)."),
        (attribute("roof", "d", lambda _: "M0,0 L"), "roof: d cannot be read as a path"),
    ],
)
def test_a_damaged_drawing_is_complained_of(tmp_path: Path, damage: Damage, says: str) -> None:
    assert says in complaints(tmp_path, damage)


def test_an_unreadable_file_is_a_complaint_and_no_crash(tmp_path: Path) -> None:
    file = tmp_path / "half.svg"
    file.write_text("<svg><g id=", "utf-8")
    (only,) = check_outline(file)
    assert only.startswith("half.svg: this is not a readable SVG file")

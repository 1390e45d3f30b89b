"""The form of a gauge asks what that gauge has, and what it refuses is seen."""

from __future__ import annotations

from day_window import click_line, lines, press_button, type_into
from PySide6.QtCore import Qt
from test_page_shop import shop, turn

from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.screens.pages.shop.thing_form import ThingForm
from detailbench.screens.window import Window

__all__ = ["shop"]


def asked_now(window: Window) -> list[str]:
    """The fields of the form one can type into, in the order of the eye."""
    form = next(f for f in window.findChildren(ThingForm) if f.isVisible())
    shown = [f for f in form.fields.values() if f.isVisible()]
    shown.sort(key=lambda f: (f.mapTo(form, f.rect().topLeft()).y(), f.mapTo(form, f.rect().topLeft()).x()))
    return [f.line.accessibleName() for f in shown]


def test_a_gloss_meter_is_entered_with_its_angles_and_asked_for_no_micrometre(shop: Window, bench: Bench) -> None:
    turn(shop, "Gauges")
    assert "angles of a gloss meter, °: 20, 60, 85" not in asked_now(shop)
    press_button(shop, "principle: gloss meter")
    assert asked_now(shop) == [
        "name", "serial number", "angles of a gloss meter, °: 20, 60, 85", "certificate", "laboratory",
        "certified on", "due on",
    ]  # fmt: skip
    type_into(shop, "name", "invented gloss meter", end=None)
    type_into(shop, "angles of a gloss meter, °: 20, 60, 85", "60", end=None)
    press_button(shop, "Add: gauge")
    made = bench.shop().gauges[-1]
    assert (made.name, made.principle, made.angles_deg) == ("invented gloss meter", "gloss", (60,))
    assert lines(shop, "Gauges")[-1] == "invented gloss meter · gloss meter · 60°"  # µm would say something of nothing
    assert "accuracy, fixed ±, µm" in asked_now(shop)  # the next one is a thickness gauge until someone says otherwise


def test_a_gauge_entered_as_a_gloss_meter_by_mistake_is_made_a_thickness_gauge(shop: Window, bench: Bench) -> None:
    bench.do(AddToShop("gauge", {"name": "invented meter", "principle": "gloss", "angles_deg": (20, 60)}))
    turn(shop, "Gauges")
    click_line(shop, "Gauges", "invented meter")
    assert "accuracy, fixed ±, µm" not in asked_now(shop)
    press_button(shop, "principle: eddy current")
    press_button(shop, "reads on: aluminium")
    press_button(shop, "Keep the change: gauge")
    made = bench.shop().gauges[-1]
    assert (made.principle, made.substrates, made.angles_deg) == ("eddy_current", ("aluminium",), ())


def test_what_a_field_refuses_takes_the_place_of_the_line_that_said_kept(shop: Window) -> None:
    turn(shop, "Gauges")
    good = {"last digit, µm": "1", "accuracy, fixed ±, µm": "1", "accuracy, ± % of the reading": "1"}
    for each, text in {"name": "invented gauge", **good}.items():
        type_into(shop, each, text, Qt.Key.Key_Tab)
    press_button(shop, "Add: gauge")
    assert shop.notices.kind == "saved"
    type_into(shop, "name", "a second one", Qt.Key.Key_Tab)
    press_button(shop, "Add: gauge")
    assert shop.notices.kind == "stop"
    assert shop.notices.text == "last digit, µm: A number is needed here."

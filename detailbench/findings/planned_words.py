"""What the steps are expected to take off a panel, in words, with what it rests on."""

from __future__ import annotations

import math
from statistics import median

from detailbench.basics.numbers import format_thickness, format_thickness_interval
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name
from detailbench.findings.planned_removal import Planned, StepForecast
from detailbench.record.picture import JobPicture

NORMAL_90 = 1.6449  # half the width of a normal 90 % interval, in standard deviations


def planned_sentences(picture: JobPicture, planned: Planned) -> tuple[str, ...]:
    """One sentence where one step comes, else one a step; none where nothing is planned."""
    if len(planned.steps) == 1:
        return (_("Expected to come off here: {what}").format(what=_step(planned.steps[0])),)
    return tuple(
        _("Step {n}, {name}, is expected to take off: {what}").format(
            n=s.step.number, name=combination_name(picture.shop, s.step.combination_id), what=_step(s)
        )
        for s in planned.steps
    )


def _step(told: StepForecast) -> str:
    """ "about 1.9 µm; measured twice so far: …" A list with median and range until there are enough for an interval."""
    found, load = told.removal, told.load
    if found is None or load is None or found.removed_um is None:
        return f"{told.why_none or _('not measured')}."
    per = load.load_path_j_m2 / 1000
    about = format_thickness(found.removed_um, digits=1)
    if found.low_rate is not None and found.high_rate is not None:
        between = format_thickness_interval(*_interval(told, found.low_rate * per, found.high_rate * per), digits=1)
        text = _("about {about}, {between} (90\u00a0%); from {n} trials on {paints}, {own}.")
        return text.format(
            about=about, between=between, n=len(found.rates), paints=_paints(told.paints), own=_own(told)
        )
    each = sorted(rate * per for rate in found.rates)
    if len(each) == 1:
        here, same_car, elsewhere = (
            _("about {about}; measured once so far, on this paint."),
            _("about {about}; measured once so far, on this car, in another finish group or an earlier job."),
            _("about {about}; measured once so far, on another car."),
        )
        return (here if told.on_this_paint else same_car if told.on_this_car else elsewhere).format(about=about)
    text = _("about {about}; measured {n} times so far ({each}; median {middle}), on {paints}, {own}.")
    return text.format(
        about=about,
        n=len(each),
        each=", ".join(format_thickness(v, digits=1, with_unit=False) for v in each),
        middle=format_thickness(median(each), digits=1),
        paints=_paints(told.paints),
        own=_own(told),
    )


def _interval(told: StepForecast, low_um: float, high_um: float) -> tuple[float, float]:
    """The 90 % interval of the rate with what is not known of the panel's area put in, side by side in quadrature."""
    middle = told.removal.removed_um or 0.0 if told.removal is not None else 0.0
    area = NORMAL_90 * middle * (told.load.share if told.load is not None else 0.0)
    return max(middle - math.hypot(middle - low_um, area), 0.0), middle + math.hypot(high_um - middle, area)


def _paints(n: int) -> str:
    return _("1 paint") if n == 1 else _("{n} paints").format(n=n)


def _own(told: StepForecast) -> str:
    n, car = told.on_this_paint, told.on_this_car
    said = {0: _("none of them on this one"), 1: _("1 of them on this one")}.get(n, _("{n} of them on this one"))
    more = _("; {n} on this car, in another finish group or an earlier job").format(n=car) if car else ""
    return said.format(n=n) + more

"""What stops an act. Stages never lock; acts stop, and a person with name and reason may set most of it aside."""

from __future__ import annotations

from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.adopted_now import no_longer_seen_stops
from detailbench.findings.first_panel import first_panel_stops
from detailbench.findings.gauges import failed_now
from detailbench.findings.kit_renewal import same_combinations
from detailbench.findings.limits import sanding_stops
from detailbench.findings.panels import READABLE, odd, outline_of
from detailbench.findings.permissions import permissions, shop_totals
from detailbench.findings.processes import group_of, panel_steps
from detailbench.findings.sanding import sanding_start_stops
from detailbench.findings.standing import standing_stops
from detailbench.findings.stop import Stop as Stop
from detailbench.findings.supplement import supplement_stops
from detailbench.findings.trial_bans import ban_start_stops, stopped_panels
from detailbench.findings.walking import OUTER
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import ProcessStep, Reading


def held(picture: JobPicture, panel: str) -> tuple[Stop, ...]:
    """Panels a person holds back."""
    return tuple(
        Stop("held", _("Held back: {reason}.").format(reason=h.reason.rstrip(".")))
        for h in picture.holds
        if h.panel == panel and not h.lifted
    )


def no_abrasive(picture: JobPicture, panel: str) -> tuple[Stop, ...]:
    """What stands against any abrasive on a panel, by machine or by hand: held by a person, paint that takes none,
    below *leave below*, a barred panel, a gauge whose last check failed."""
    stops = list(held(picture, panel))
    ruling = permissions(picture)[panel]
    for reason in ruling.reasons:
        if reason.ruling == "held back":
            owner = reason.lifted_by == "agreement"
            stops.append(Stop("owner_limit" if owner else "thickness", reason.sentence, may_override=not owner))
    if failed_now(picture):
        stops.append(Stop("gauge_check", _("The last gauge check failed: the readings since are not confirmed.")))
    return tuple(stops)


def start_stops(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """What stands against starting a step on a panel, whatever it is done with: every step takes paint off."""
    stops = (
        *no_abrasive(picture, panel),
        *sanding_start_stops(picture, panel, step),
        *_of_another_paint(picture, panel, step),
        *_never_spreads(picture, panel, step),
        *first_panel_stops(picture, panel, step),
        *(ban_start_stops(picture, panel, step.combination_id) if step.means != "sanding" else ()),
        *no_longer_seen_stops(picture, panel, step),
    )
    return (*standing_stops(picture), *stops, *supplement_stops(picture))


def _of_another_paint(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """The trials behind a step may have been made on panels that have since been found to carry another paint."""
    group = group_of(picture, panel)
    rests = set(one(picture.processes, step.process_id).trial_ids)
    same = same_combinations(picture.shop, step.combination_id)
    tried = {t.panel for t in picture.trials if t.id in rests and t.combination_id in same}
    if group is None or not tried or any(p in group.panels for p in tried):
        return ()
    return (
        Stop(
            "not_seen_to_work",
            _("It was tried on {panels} only, no longer in this finish group: not seen to work on this paint.").format(
                panels=", ".join(panel_name(p) for p in sorted(tried))
            ),
        ),
    )


def _never_spreads(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """A process goes over to paint like that it was tried on, never by itself to a panel that reads unlike the rest or
    is of another material."""
    rests = set(one(picture.processes, step.process_id).trial_ids)
    tried = {t.panel for t in picture.trials if t.id in rests}
    if not tried or panel in tried:
        return ()
    drawn = outline_of(picture).panels
    stops = []
    found = odd(picture)
    if found is not None and any(f.key == panel and f.verdict == "differs" for f in found.findings):
        text = _(
            "The {panel} reads unlike the rest and was not tried: make it a finish group of its own, or say why not."
        )
        stops.append(Stop("odd_not_tried", text.format(panel=panel_name(panel))))
    plastic = drawn[panel].substrate not in READABLE
    if plastic and all(drawn[p].substrate in READABLE for p in tried):
        text = _(
            "The {panel} is of another material than the panels tried: it heats and flexes differently. Try it first."
        )
        stops.append(Stop("material_not_tried", text.format(panel=panel_name(panel))))
    return tuple(stops)


def low_reading(picture: JobPicture, reading: Reading) -> tuple[Stop, ...]:
    """What stands against taking a reading out: below the shop's *leave below* it may be the one that matters. A
    nought is no thickness."""
    total = shop_totals(picture).leave_below_um
    apart = one(picture.places, reading.place_id).surface != OUTER  # thinner by build, and it holds nothing back
    if total is None or apart or not reading.value_um or reading.value_um >= total:
        return ()
    text = _("{value} is under the shop's “leave below” total of {total}: taken out only with a reason.")
    sentence = text.format(value=format_thickness(reading.value_um, digits=1), total=format_thickness(total))
    return (Stop("low_reading", sentence),)


def held_back(picture: JobPicture) -> dict[str, str]:
    """Panel → why it is held back, for the plan and the plan view."""
    out = {}
    stopped = stopped_panels(picture)
    for key, ruling in permissions(picture).items():
        why = [s.sentence for s in held(picture, key)]
        why += [stopped[key]] if key in stopped else []
        why += [r.sentence for r in ruling.reasons if r.ruling == "held back"]
        if any(step.means == "sanding" for step in panel_steps(picture, key)):
            why += [s.sentence for s in sanding_stops(picture, (key,))]
        if why:
            out[key] = " ".join(why)
    return out

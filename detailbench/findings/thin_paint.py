"""Paint that is thin, panel by panel: by its total against the rest and the shop's own, by its clear coat where a
gauge that resolves layers measured it. What the plan is still to take is left out: this is the paint as it stands."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.changes import changes
from detailbench.findings.gauges import confirmations, gauge_of
from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.layers import PanelLayers, clear_limits, panel_layers, removed_before_um, room_of
from detailbench.findings.panels import PanelSeen, odd, panels_seen
from detailbench.findings.planned_removal import Planned
from detailbench.findings.processes import group_of
from detailbench.findings.removal import measured_trials, trial_load, trial_removal
from detailbench.findings.settings import paint_to_paint, setting
from detailbench.findings.trials_made import outcome_of, stack_beneath, trials_of
from detailbench.findings.walking import OUTER
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, Trial
from detailbench.thickness.layer_room import ClearLimits
from detailbench.trials.removal import removal

HAS_CLEAR = ("clear_over_colour", "tinted_clear")
MOST_TOLD = 2  # on a card; the rest are counted
GOES = 2  # this polishing and one more in the life of the car: common practice, no source


def thin_panels(picture: JobPicture, panels: Iterable[str]) -> Mapping[str, str]:
    """Panel → why its paint is called thin, for those of ``panels`` that are. A panel nothing was read on is not in it:
    unmeasured is no thickness."""
    before = panels_seen(picture)
    after = panels_seen(picture, "polished") if any(r.work == "polished" for r in picture.readings) else {}
    found = odd(picture, seen=before)
    thinner = {f.key for f in found.findings if f.side == "thinner"} if found is not None else set()
    clear = _Clear(picture)
    out = {}
    for key in panels:
        if key not in before:
            continue  # this car's outline has no such panel any more
        seen = [s for s in (before[key], after.get(key)) if s is not None]
        why = _by_total(picture, seen, thinner) or clear.thin(key, before[key], after.get(key))
        if why:
            out[key] = why
    return out


def clear_coat_of(picture: JobPicture, group: FinishGroup) -> str:
    """known where a layer gauge read the clear coat on an outer skin of this group between two good gauge checks, thin
    where besides one of its panels is (a process goes to all of them), else unknown: a total tells nothing of it, and a
    shut is another paint."""
    if group.paint_system not in HAS_CLEAR:
        return "unknown"
    places = {p.id for p in picture.places if p.panel in group.panels and p.surface == OUTER}
    layered = {s.id for s in picture.sessions if gauge_of(picture, s).layers}
    own = [
        r.id for r in picture.readings if r.clear_um is not None and r.place_id in places and r.session_id in layered
    ]
    confirmed = confirmations(picture) if own else {}
    if not any(confirmed[i].confirmed for i in own if i in confirmed):
        return "unknown"
    return "thin" if thin_panels(picture, group.panels) else "known"


def clear_coat_words(picture: JobPicture, group: FinishGroup) -> tuple[str, str]:
    """(known, thin or unknown, the same in words with what makes it thin, of the first panels)."""
    found = clear_coat_of(picture, group)
    if found == "thin":
        why = tuple(thin_panels(picture, group.panels).values())
        rest = len(why) - MOST_TOLD
        more = _("So are {n} more panels.") if rest > 1 else _("So is one more panel.") if rest == 1 else ""
        told = (
            _("Clear coat: known; the paint is thin."),
            *why[:MOST_TOLD],
            more.format(n=format_number(max(rest, 0))),
        )
        return found, " ".join(filter(None, told))
    return found, _("Clear coat: known.") if found == "known" else _("Clear coat: not known.")


def _by_total(picture: JobPicture, seen: list[PanelSeen], thinner: set[str]) -> str:
    key = seen[0].key
    if key in thinner:
        return _("The {panel} is thinner than the rest.").format(panel=panel_name(key))
    low = min((s.low_um for s in seen if s.low_um is not None), default=None)
    if low is None:
        return ""
    for name, what in (("leave_below_um", _("leave below")), ("careful_below_um", _("careful below"))):
        total = setting(picture.shop, name)
        if total is not None and low < total:
            text = _("The {panel}: lowest place {low}, under the shop's “{what}” total of {total}.")
            return text.format(
                panel=panel_name(key),
                low=format_thickness(low, digits=1),
                what=what,
                total=format_thickness(total),
            )
    return ""


class _Clear:
    """The clear coat against what the shop wants to stay and what one go takes off; each looked up only where it
    matters. Without a reserve typed by the shop nothing is called thin by its clear coat."""

    def __init__(self, picture: JobPicture) -> None:
        self.picture = picture
        self.limits = clear_limits(picture.shop) if any(r.clear_um is not None for r in picture.readings) else None
        self._goes: dict[str, float | None] = {}

    def thin(self, key: str, before: PanelSeen, after: PanelSeen | None) -> str:
        """Room for less than two goes is left above the reserve; where nobody has measured what one takes, no room."""
        group = group_of(self.picture, key)
        if self.limits is None or group is None or group.paint_system not in HAS_CLEAR:
            return ""
        layers = panel_layers(self.picture, before, after)
        if layers is None:
            return ""
        room = self._room_um(key, layers, self.limits)
        if room <= 0:
            text = _("The {panel}: no room left in the clear coat above what must stay.")
            return text.format(panel=panel_name(key))
        if group.id not in self._goes:
            self._goes[group.id] = one_go_um(self.picture, group)
        off = self._goes[group.id]
        if off is None or room >= GOES * off:
            return ""
        text = _("The {panel}: {room} left in the clear coat above what must stay; one go takes about {off}.")
        return text.format(
            panel=panel_name(key), room=format_thickness(room, digits=1), off=format_thickness(off, digits=1)
        )

    def _room_um(self, key: str, layers: PanelLayers, limits: ClearLimits) -> float:
        """Nothing planned taken away. Under five places the lowest counts as it was read."""
        gone = 0.0
        if limits.largest_share is not None:
            last = changes(self.picture.last) if self.picture.last is not None else {}
            gone = removed_before_um(key, changes(self.picture), last, after=layers.after)
        found = room_of(layers, limits, Planned(()), gone)
        return (
            min(*layers.clear_um, *layers.extra_um, float("inf")) - limits.reserve_um
            if found is None
            else found.room_um
        )


def one_go_um(picture: JobPicture, group: FinishGroup) -> float | None:
    """What what served on this paint takes off in one go, by this shop's own readings, µm: the most of those that did,
    with all that stands beneath; where none of them was measured, the most any combination in use was seen to take off
    in these jobs. None where nothing was measured: never a figure from elsewhere."""
    jobs = (picture, *([picture.last] if picture.last is not None else []), *picture.others)
    served = []
    for trial in trials_of(picture, group.id):
        kept = outcome_of(picture, trial.id)
        if kept is None or kept.finish != "clear" or not (trial.on_top_of or kept.cleared == "yes"):
            continue
        each = [_takes_um(picture, t, jobs) for t in (*stack_beneath(picture, trial), trial)]
        if all(um is not None for um in each):
            served.append(sum(um for um in each if um is not None))
    if served:
        return max(served)
    any_ = [t.removed_um for c in combinations_in_use(picture.shop) for t in measured_trials(jobs, c.id)]
    return max((um for um in any_ if um > 0), default=None)


def _takes_um(picture: JobPicture, trial: Trial, jobs: tuple[JobPicture, ...]) -> float | None:
    """As measured there, else by what its combination took elsewhere at the load × path of this trial."""
    here = trial_removal(picture, trial).measured
    if here is not None:
        return max(here.removed_um, 0.0)
    load, _why = trial_load(picture, trial)
    trials = measured_trials(jobs, trial.combination_id)
    if load is None or not trials:
        return None
    found = removal(trials, load_path_j_m2=load, paint_to_paint=paint_to_paint(picture.shop))
    return found.removed_um

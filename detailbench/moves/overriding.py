"""A rule set aside by a person: with name and at least two words of reason, printed."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.findings.overrides import every_time, of_recent_jobs
from detailbench.findings.stop import Stop
from detailbench.moves.reasons import says_why
from detailbench.record.things import Override, Person
from detailbench.record.writing import Writer


def stopped_unless_overridden(w: Writer, job_id: str, stops: Sequence[Stop], panel: str, reason: str) -> str:
    """Raise Refused for the first stop that stands; with a reason, and a person to name, the overridable ones are set
    aside and noted. Returns a sentence for the person where that has become a habit, else nothing."""
    if not stops:
        return ""
    for stop in stops:
        if not stop.may_override:
            raise Refused(stop.sentence, rule=stop.rule)
    if not reason:
        raise Refused(" ".join(s.sentence for s in stops), rule=stops[0].rule, may_override=True)
    if not says_why(reason):
        raise Refused(
            _("A reason needs at least two words; it is printed with your name."), rule=stops[0].rule, may_override=True
        )
    if not w.person_id:
        raise Refused(_("Choose who you are first: a rule set aside is printed with a name."), rule="no_person")
    w.get(Person, w.person_id)
    for stop in stops:
        w.add(Override, job_id=job_id, rule=stop.rule, panel=panel, reason=reason.strip())
    counted = of_recent_jobs(w.shop().jobs, w.every(Override))
    return next(filter(None, (every_time(counted, stop.rule, reason) for stop in stops)), "")

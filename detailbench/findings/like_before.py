"""Like paint when a car arrives: what served on it in this shop, before anything of this car was measured."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.adopted_now import no_longer_seen
from detailbench.findings.brought_in import as_own
from detailbench.findings.kit_names import combination_name
from detailbench.findings.kit_renewal import What, stands_for, what_it_is
from detailbench.findings.like_paint import likeness
from detailbench.findings.processes import process_of, steps_of
from detailbench.record.picture import JobPicture, one


@dataclass(frozen=True)
class LikeBefore:
    """``likeness``: same_code, or same_maker_and_age where no job had this code; ``jobs``: ids of those with trials;
    ``elsewhere``: ids of jobs on such paint that were taken in, tried by another workshop; ``served``: what this shop
    adopted, with the number of jobs, the most used first; ``served_elsewhere``: the same of another workshop."""

    likeness: str
    jobs: tuple[str, ...]
    served: tuple[tuple[str, int], ...]
    elsewhere: tuple[str, ...] = ()
    served_elsewhere: tuple[tuple[str, int], ...] = ()

    @property
    def sentence(self) -> str:
        """Short: it stands on a card among fields."""
        here = {
            "same_code": (_("Tried here before, same colour code: one job."),
                          _("Tried here before, same colour code: {n} jobs.")),
            "same_maker_and_age": (_("Tried here before, same maker and age: one job."),
                                   _("Tried here before, same maker and age: {n} jobs.")),
        }[self.likeness]  # fmt: skip
        taken_in = {
            "same_code": (_("Tried by another workshop, same colour code: one job."),
                          _("Tried by another workshop, same colour code: {n} jobs.")),
            "same_maker_and_age": (_("Tried by another workshop, same maker and age: one job."),
                                   _("Tried by another workshop, same maker and age: {n} jobs.")),
        }[self.likeness]  # fmt: skip
        told = []
        for words, jobs, served in ((here, self.jobs, self.served), (taken_in, self.elsewhere, self.served_elsewhere)):
            if jobs:
                told += [words[len(jobs) > 1].format(n=format_number(len(jobs))), _served_words(served)]
        return " ".join(told)


def like_before(picture: JobPicture, earlier: Iterable[JobPicture]) -> LikeBefore | None:
    """What jobs with trials on like paint say; None where there was none, or nothing is known of this paint."""
    earlier = [other for other in earlier if other.job.id != picture.job.id and other.trials]
    own = as_own(earlier)
    ids = {other.job.id for other in own}
    theirs = [other for other in earlier if other.job.id not in ids]
    for word in ("same_code", "same_maker_and_age"):
        here, elsewhere = ([p for p in of if likeness(picture, p) == word] for of in (own, theirs))
        if here or elsewhere:
            return LikeBefore(
                word,
                tuple(p.job.id for p in here),
                _served(here),
                tuple(p.job.id for p in elsewhere),
                _served(elsewhere),
            )
    return None


def _served_words(served: tuple[tuple[str, int], ...]) -> str:
    if not served:
        return _("Nothing adopted there is known to serve.")
    lines = [_("{process} ({n} ×)").format(process=name, n=format_number(n)) for name, n in served]
    return _("Served: {processes}.").format(processes="; ".join(lines))


def _served(pictures: list[JobPicture]) -> tuple[tuple[str, int], ...]:
    counted: dict[tuple[What, ...], int] = {}
    names: dict[tuple[What, ...], str] = {}
    for picture in pictures:
        here: dict[tuple[What, ...], str] = {}
        for group in picture.groups:
            process = process_of(picture, group.id)
            if process is None or no_longer_seen(picture, process):
                continue  # what its own trials speak against did not serve
            used = [one(picture.shop.combinations, s.combination_id) for s in steps_of(picture, process)]
            what = tuple(what_it_is(picture.shop, c) for c in used)
            here[what] = _(", then ").join(combination_name(picture.shop, stands_for(picture.shop, c.id)) for c in used)
        for what, name in here.items():
            counted[what] = counted.get(what, 0) + 1
            names[what] = name
    return tuple((names[what], n) for what, n in sorted(counted.items(), key=lambda found: -found[1]))

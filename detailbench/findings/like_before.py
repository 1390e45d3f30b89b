"""Like paint when a car arrives: what served on it in this shop, before anything of this car was measured."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name
from detailbench.findings.kit_renewal import What, what_it_is
from detailbench.findings.like_paint import likeness
from detailbench.findings.processes import process_of, steps_of
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Combination


@dataclass(frozen=True)
class LikeBefore:
    """``likeness``: same_code, or same_maker_and_age where no job had this code; ``jobs``: ids of those with trials;
    ``served``: what was adopted, with the number of jobs, the most used first."""

    likeness: str
    jobs: tuple[str, ...]
    served: tuple[tuple[str, int], ...]

    @property
    def sentence(self) -> str:
        """Short: it stands on a card among fields."""
        like = {
            "same_code": (_("Tried here before, same colour code: one job."),
                          _("Tried here before, same colour code: {n} jobs.")),
            "same_maker_and_age": (_("Tried here before, same maker and age: one job."),
                                   _("Tried here before, same maker and age: {n} jobs.")),
        }[self.likeness][len(self.jobs) > 1]  # fmt: skip
        told = [like.format(n=format_number(len(self.jobs)))]
        if self.served:
            lines = [_("{process} ({n} ×)").format(process=name, n=format_number(n)) for name, n in self.served]
            told.append(_("Served: {processes}.").format(processes="; ".join(lines)))
        else:
            told.append(_("Nothing was adopted there."))
        return " ".join(told)


def like_before(picture: JobPicture, earlier: Iterable[JobPicture]) -> LikeBefore | None:
    """What jobs with trials on like paint say; None where there was none, or nothing is known of this paint."""
    alike: dict[str, list[JobPicture]] = {}
    for other in earlier:
        if other.job.id != picture.job.id and other.trials:
            alike.setdefault(likeness(picture, other), []).append(other)
    for word in ("same_code", "same_maker_and_age"):
        if word in alike:
            return LikeBefore(word, tuple(p.job.id for p in alike[word]), _served(alike[word]))
    return None


def _served(pictures: list[JobPicture]) -> tuple[tuple[str, int], ...]:
    counted: dict[tuple[What, ...], int] = {}
    names: dict[tuple[What, ...], str] = {}
    for picture in pictures:
        here: dict[tuple[What, ...], str] = {}
        for group in picture.groups:
            process = process_of(picture, group.id)
            if process is None:
                continue
            used = [one(picture.shop.combinations, s.combination_id) for s in steps_of(picture, process)]
            what = tuple(what_it_is(picture.shop, c) for c in used)
            here[what] = _(", then ").join(combination_name(picture.shop, _now(picture, c).id) for c in used)
        for what, name in here.items():
            counted[what] = counted.get(what, 0) + 1
            names[what] = name
    return tuple((names[what], n) for what, n in sorted(counted.items(), key=lambda found: -found[1]))


def _now(picture: JobPicture, combination: Combination) -> Combination:
    """The combination as the range has it today, where it is the same thing."""
    shop = picture.shop
    what = what_it_is(shop, combination)
    in_use = [c for c in shop.combinations if not c.retired and what_it_is(shop, c) == what]
    return in_use[-1] if in_use else combination

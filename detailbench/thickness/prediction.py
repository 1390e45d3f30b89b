"""The clear coat at a place picked at random: what the places scatter, and what is not known besides."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.thickness.distributions import t_below, t_quantile, welch_satterthwaite

FORMULA = (
    "v = s²(1 + 1/n) + u_cal² + u_R², ν by Welch-Satterthwaite; low bound mean − t·√v (R = 0); "
    "risk = F_t((reserve − (mean − R))/√v)"
)


@dataclass(frozen=True)
class Term:
    """One uncertain part: its variance, µm², and the degrees of freedom it was found with (infinite: not estimated)."""

    variance_um2: float
    dof: float = math.inf


@dataclass(frozen=True)
class Prediction:
    """Mean of the clear coat at one place picked at random, µm. ``scatter`` is that of the places, s²(1 + 1/n);
    ``ignorance`` holds whatever is the same for all of them and not known."""

    mean_um: float
    scatter: Term
    ignorance: tuple[Term, ...] = ()

    def variance_um2(self, removal: Term | None = None) -> float:
        return sum(t.variance_um2 for t in self._terms(removal))

    def dof(self, removal: Term | None = None) -> float:
        """Effective degrees of freedom. Raises BadInput where nothing scatters."""
        return welch_satterthwaite([(t.variance_um2, t.dof) for t in self._terms(removal)])

    def low_um(self, chance_below: float) -> float:
        """What a place lies below with this chance, before anything more comes off, µm."""
        return self.mean_um - t_quantile(1 - chance_below, self.dof()) * math.sqrt(self.variance_um2())

    def risk(self, reserve_um: float, removal_um: float, removal: Term | None = None) -> float:
        """Chance that less than the reserve is left at a place once ``removal_um`` came off."""
        away = reserve_um - (self.mean_um - removal_um)
        return t_below(away / math.sqrt(self.variance_um2(removal)), self.dof(removal))

    def _terms(self, removal: Term | None) -> tuple[Term, ...]:
        return (self.scatter, *self.ignorance, *([] if removal is None else [removal]))


def predicted(mean_um: float, sd_um: float, places: int, ignorance: tuple[Term, ...] = ()) -> Prediction:
    """From the mean and standard deviation of ``places`` place means (two or more)."""
    return Prediction(mean_um, Term(sd_um**2 * (1 + 1 / places), places - 1.0), ignorance)

"""What is known about a gauge and its shims before anything is measured."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite

Principle = Literal["steel", "aluminium"]  # magnetic induction; eddy current


@dataclass(frozen=True)
class GaugeAccuracy:
    """Stated accuracy a(t) = fixed + share·t, t in µm."""

    fixed_um: float
    share: float = 0.0

    def __post_init__(self) -> None:
        if not (is_finite(self.fixed_um) and is_finite(self.share) and self.fixed_um >= 0 and self.share >= 0):
            raise BadInput(_("The gauge's accuracy must be nought or more."), field="accuracy")

    def at_um(self, thickness_um: float) -> float:
        """Largest error stated at a thickness, µm."""
        return self.fixed_um + self.share * abs(thickness_um)

    def standard_uncertainty_um(self, thickness_um: float) -> float:
        """u_cal of an uncorrected reading: any error within ± a(t) taken as equally likely, a(t)/√3."""
        return self.at_um(thickness_um) / math.sqrt(3)


@dataclass(frozen=True)
class Shim:
    """A shim as certified: thickness ± accuracy, µm; ``u_um`` its standard uncertainty where the certificate
    states one (otherwise accuracy/√3). ``serial`` tells two shims apart."""

    certified_um: float
    accuracy_um: float = 0.0
    serial: str = ""
    u_um: float | None = None

    def __post_init__(self) -> None:
        if not (is_finite(self.certified_um) and self.certified_um > 0):
            raise BadInput(_("A foil needs its certified thickness, above nought."), field="certified_um")
        if not (is_finite(self.accuracy_um) and self.accuracy_um >= 0):
            raise BadInput(_("A foil's accuracy must be nought or more."), field="accuracy_um")

    def standard_uncertainty_um(self) -> float:
        return self.accuracy_um / math.sqrt(3) if self.u_um is None else self.u_um

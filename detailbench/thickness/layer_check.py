"""The check of a gauge that resolves layers: raw readings on a reference layer of known thickness."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.numbers import format_thickness, format_thickness_change
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.gauge_check import FEWEST
from detailbench.thickness.readings import Values, as_readings, mean_of, plain, sd_of

SOURCE = Source(
    "the combined tolerance of ASTM D7091 and SSPC-PA 2 applied to a reference layer; ultrasound has no zero plate",
    from_memory=True,
)


@dataclass(frozen=True)
class LayerCheck:
    """Outcome for one reference layer; µm. ``sd_um`` is the repeatability seen on it."""

    passed: bool
    mean_um: float
    error_um: float
    limit_um: float
    sd_um: float
    sentence: str
    working: Working


def check_layer(
    layer_um: Values, *, reference: Shim, accuracy: GaugeAccuracy, temperature_c: float | None = None
) -> LayerCheck:
    """Five raw readings or more of the layer: passes when |mean − certified| ≤ √(a(c)² + a_ref²). The speed of sound in
    the reference is not that in the paint: a passed check says the gauge is steady, and no more than its stated
    accuracy. Raises BadInput for fewer readings or NaN."""
    x = as_readings(layer_um, "layer_um", FEWEST)
    mean = mean_of(x)
    error = mean - reference.certified_um
    limit = math.hypot(accuracy.at_um(reference.certified_um), reference.accuracy_um)
    passed = abs(error) <= limit
    text = (
        _("Reference layer {layer}: {error} on average, within ± {limit}.")
        if passed
        else _("Reference layer {layer}: {error} on average, outside ± {limit}. The gauge check failed.")
    )
    sentence = text.format(
        layer=format_thickness(reference.certified_um),
        error=format_thickness_change(error, digits=2),
        limit=format_thickness(limit, digits=2),
    )
    working = Working(
        name="layer_check",
        formula="pass when |mean − c| ≤ √(a(c)² + a_ref²); a(t) = fixed + share·t",
        inputs={
            "layer_um": plain(x),
            "certified_um": reference.certified_um,
            "reference_accuracy_um": reference.accuracy_um,
            "fixed_um": accuracy.fixed_um,
            "share": accuracy.share,
            "temperature_c": temperature_c,
        },
        results={"passed": passed, "mean_um": mean, "error_um": error, "limit_um": limit, "sd_um": sd_of(x)},
        source=SOURCE,
        changes_with=_("the gauge's stated accuracy, the reference's certificate, new readings"),
        notes=(_("Sound travels at another speed in the paint than in the reference."),),
    )
    return LayerCheck(passed, mean, error, limit, sd_of(x), sentence, working)

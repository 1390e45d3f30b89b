"""One panel, from its place means: middle, scatter, and how thin most of its measured field may be."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_least_thickness, format_number, format_thickness
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working
from detailbench.thickness.distributions import t_quantile, tolerance_factor
from detailbench.thickness.outliers import OddPlace, grubbs
from detailbench.thickness.readings import Floats, Values, as_readings, mean_of, plain, sd_of

FEWEST_FOR_BOUND = 5
SOURCE = Source(
    "one-sided tolerance bound, ISO 16269-6, exact by the noncentral t; Grubbs, NIST/SEMATECH e-Handbook 1.3.5.17.1",
    from_memory=True,
)


@dataclass(frozen=True)
class Panel:
    """A panel's figures, µm, all from place means; None where there are too few places.

    ``lower_bound_um``: with the confidence asked for, at least the share asked for of the measured field (edges and
    body lines excluded) is thicker. ``odd`` is the place Grubbs' test looks at. ``lowest_um`` counts places a
    person chose as well; those of them that lie low have their indices in ``low_extra`` and make ``blocked``.
    """

    places: int
    mean_um: float
    sd_um: float | None
    min_um: float
    max_um: float
    median_um: float
    interval_um: tuple[float, float] | None
    lower_bound_um: float | None
    odd: OddPlace | None
    low_extra: tuple[int, ...]
    lowest_um: float
    bound_sentence: str
    sentences: tuple[str, ...]
    working: Working

    @property
    def blocked(self) -> bool:
        return bool(self.low_extra)


def panel(
    place_means_um: Values,
    *,
    extra_places_um: Values = (),
    set_aside: int = 0,
    places_without_value: int = 0,
    confidence: float = 0.95,
    share: float = 0.95,
) -> Panel:
    """Figures of a panel from one mean per place (shape (n,), n ≥ 1).

    ``extra_places_um`` are places a person chose: shown, never part of mean and scatter; one below the lower bound
    (below the lowest other place while there is no bound) blocks. ``set_aside`` and ``places_without_value`` are
    counted only. Raises BadInput for no place, NaN, or shares outside (0, 1).
    """
    x = as_readings(place_means_um, "place_means_um", 1)
    extra = as_readings(extra_places_um, "extra_places_um")
    for name, value in (("confidence", confidence), ("share", share)):
        if not 0 < value < 1:
            raise BadInput(_("{what} must lie between 0 and 1.").format(what=opened(name)), field=name, given=value)
    n, mean = int(x.size), mean_of(x)
    sd = sd_of(x) if n > 1 else None
    interval = _interval(mean, sd, n, confidence)
    bound = mean - tolerance_factor(n, share, confidence) * sd if sd is not None and n >= FEWEST_FOR_BOUND else None
    odd = grubbs(x)
    lowest = float(np.min(x))
    low_extra = tuple(int(i) for i in np.flatnonzero(extra < (lowest if bound is None else bound)))
    bound_sentence = _bound_sentence(bound, confidence, share)
    return Panel(
        places=n,
        mean_um=mean,
        sd_um=sd,
        min_um=lowest,
        max_um=float(np.max(x)),
        median_um=float(np.median(x)),
        interval_um=interval,
        lower_bound_um=bound,
        odd=odd,
        low_extra=low_extra,
        lowest_um=min(lowest, float(np.min(extra))) if extra.size else lowest,
        bound_sentence=bound_sentence,
        sentences=_sentences(x, extra, odd, low_extra, set_aside, places_without_value),
        working=Working(
            name="panel",
            formula="mean ± t·s/√n; lower bound L = mean − k·s, k = t'(n − 1, z·√n)/√n",
            inputs={
                "place_means_um": plain(x),
                "extra_places_um": plain(extra),
                "set_aside": set_aside,
                "places_without_value": places_without_value,
                "confidence": confidence,
                "share": share,
            },
            results=_results(x, mean, sd, interval, bound, odd, low_extra),
            source=SOURCE,
            changes_with=_("more places; places taken elsewhere on the panel"),
            notes=(
                _("Speaks for the measured field only: edges and body lines excluded."),
                _("The gauge's own noise makes the lower bound lower, never higher; it is not subtracted."),
            ),
        ),
    )


def _interval(mean: float, sd: float | None, n: int, confidence: float) -> tuple[float, float] | None:
    if sd is None:
        return None
    half = t_quantile((1 + confidence) / 2, n - 1) * sd / math.sqrt(n)
    return mean - half, mean + half


def _results(
    x: Floats,
    mean: float,
    sd: float | None,
    interval: tuple[float, float] | None,
    bound: float | None,
    odd: OddPlace | None,
    low_extra: tuple[int, ...],
) -> dict[str, Plain]:
    return {
        "places": int(x.size),
        "mean_um": mean,
        "sd_um": sd,
        "min_um": float(np.min(x)),
        "max_um": float(np.max(x)),
        "median_um": float(np.median(x)),
        "interval_um": list(interval) if interval else None,
        "lower_bound_um": bound,
        "grubbs_g": odd.g if odd else None,
        "grubbs_critical": odd.critical if odd else None,
        "odd_place": odd.index if odd and odd.is_odd else None,
        "low_extra": list(low_extra),
    }


def _bound_sentence(bound: float | None, confidence: float, share: float) -> str:
    if bound is None:
        return _("Fewer than five places: how thin the rest may be cannot be stated.")
    if bound <= 0:
        return _("The places scatter too much to state how thin the rest may be.")
    return _(
        "With confidence of at least {confidence}\u00a0%, at least {share}\u00a0% of the measured field of this panel "
        "(edges and body lines excluded) is thicker than {bound}."
    ).format(
        confidence=format_number(100 * confidence, 0),
        share=format_number(100 * share, 0),
        bound=format_least_thickness(bound),
    )


def _sentences(
    x: Floats, extra: Floats, odd: OddPlace | None, low_extra: tuple[int, ...], set_aside: int, without: int
) -> tuple[str, ...]:
    out = []
    if odd and odd.is_odd:
        side = _("lower") if x[odd.index] < mean_of(x) else _("higher")
        out.append(
            _("Place {n} reads {side} than the others: {value}. Measure it again; a person decides.").format(
                n=odd.index + 1, side=side, value=format_thickness(float(x[odd.index]), digits=1)
            )
        )
    for index in low_extra:
        out.append(
            _("A place chosen by hand is low: {value}. It counts whatever the others say.").format(
                value=format_thickness(float(extra[index]), digits=1)
            )
        )
    if extra.size:
        out.append(_("Places chosen by hand, not in mean and scatter: {n}.").format(n=extra.size))
    if set_aside:
        out.append(_("Set aside by a person, with a reason: {n}.").format(n=set_aside))
    if without:
        out.append(_("Places without a value: {n}.").format(n=without))
    return tuple(out)

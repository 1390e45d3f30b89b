"""Single readings put right: no value after all, mil taken as µm."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.panels import panel_seen
from detailbench.moves.reading_mending import NotAValue, ReadAsMil
from detailbench.moves.readings import RecordReading


def test_a_nought_becomes_no_value_and_the_panel_not_measurable(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    reading = invented.bench.do(RecordReading(job, "bumper_front", 0.0)).id
    assert not panel_seen(invented.picture(job), "bumper_front").no_value
    invented.bench.do(NotAValue(job, reading))
    seen = panel_seen(invented.picture(job), "bumper_front")
    kept = invented.picture(job).readings[0]
    assert (seen.no_value, kept.value_um, kept.no_value, kept.flags) == (True, None, "nothing", ())
    with pytest.raises(BadInput, match="not a reason"):
        invented.bench.do(NotAValue(job, reading, "cold"))


def test_a_figure_taken_as_um_is_read_as_mil_once(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    reading = invented.bench.do(RecordReading(job, "bonnet", 4.6)).id
    assert invented.picture(job).readings[0].flags == ("unit",)
    invented.bench.do(ReadAsMil(job, reading))
    kept = invented.picture(job).readings[0]
    assert kept.value_um == pytest.approx(116.84)  # 4.6 thousandths of an inch of 25.4 mm
    assert (kept.unit, kept.flags) == ("mil", ())
    with pytest.raises(Refused, match="not in µm"):
        invented.bench.do(ReadAsMil(job, reading))

import json
from dataclasses import replace

import pytest

from spreadwright.cutting import bench_findings
from spreadwright.document import read_any
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import check, cut

TRIMMER = {"length": "12", "graduation": "1/16", "measures": "kept", "shortest": "1/2", "accuracy": "1/64"}


def checked(**changed: str):
    document = {
        "schema": "bench/1",
        "title": "Kitchen table",
        "unit": "in",
        "trimmer": TRIMMER | changed,
        "ruler": {"graduation": "1/16"},
    }
    return check(read_any(json.dumps(document).encode()), INCH_BENCH).findings


@pytest.mark.parametrize(
    ("changed", "code", "where"),
    [
        ({"shortest": "12"}, "trimmer-cuts-nothing", "/trimmer/shortest"),
        ({"graduation": "12"}, "trimmer-cuts-nothing", "/trimmer/graduation"),
        ({"graduation": "1"}, "scale-coarser-than-strip", "/trimmer/graduation"),
        ({"accuracy": "1/8"}, "accuracy-beyond-marks", "/trimmer/accuracy"),
        ({"graduation": "1 mm", "shortest": "1/2"}, "scale-in-other-unit", "/trimmer/graduation"),
        ({"graduation": "1/3"}, "between-marks", "/trimmer/graduation"),
    ],
)
def test_limits_that_do_not_go_together_are_found(changed, code, where):
    assert (code, where) in [(finding.code, finding.where) for finding in checked(**changed)]


def test_readings_are_told_as_the_scale_shows_them_and_sizes_in_the_unit_of_the_bench():
    metric = Collection().bench("bench-metric")
    mixed = replace(metric, trimmer=replace(metric.trimmer, graduation=TICKS[Unit.INCH] // 16))
    (finding,) = bench_findings(mixed)
    assert "1/16 in apart, but the bench speaks mm" in finding.message
    first = cut(Collection().recipe("rain-until-four"), mixed).words[0]
    assert "Set the scale to 7 in for" in first.setting and "177.8 × 304.8 mm" in first.stays


def test_lengths_of_another_unit_are_told_as_a_ruler_of_the_bench_or_the_scale_shows_them():
    coarse, _other_unit = checked(graduation="40 mm", shortest="20 mm")
    assert "40 mm apart, wider than its narrowest strip of 25/32 in." in coarse.message
    (accuracy,) = checked(accuracy="2 mm")
    assert "may lie 3/32 in from its reading" in accuracy.message


def test_sound_bench_has_nothing_to_say():
    assert checked() == ()


def test_shipped_benches_are_sound():
    assert [bench_findings(reading.model) for reading in Collection().benches.values()] == [()] * 3

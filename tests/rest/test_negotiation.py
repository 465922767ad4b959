import pytest

from spreadwright.rest.negotiation import preferred

OFFERS = ["application/json", "image/svg+xml", "image/png"]


@pytest.mark.parametrize(
    ("accept", "chosen"),
    [
        ([], "application/json"),
        ([("*/*", 1)], "application/json"),
        ([("image/*", 1)], "image/svg+xml"),
        ([("image/png", 0.9), ("image/svg+xml", 0.8)], "image/png"),
        ([("image/png", 0.5), ("*/*", 0.5)], "application/json"),
        ([("image/png; q2=x", 1)], "image/png"),
        ([("IMAGE/PNG", 1)], "image/png"),
        ([("text/html", 1)], None),
        ([("text/html", 1), ("*/*", 0.1)], "application/json"),
    ],
)
def test_quality_decides_then_our_own_order(accept, chosen):
    assert preferred(OFFERS, accept) == chosen


def test_the_most_specific_range_decides_over_a_better_general_one():
    accept = [("*/*", 1), ("image/*", 0.2), ("application/json", 0), ("image/png", 0.3)]
    assert preferred(OFFERS, accept) == "image/png"


def test_quality_nothing_means_never():
    assert preferred(["image/png"], [("*/*", 1), ("image/png", 0)]) is None

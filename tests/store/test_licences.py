import pytest

from spreadwright.store.licences import COMMON, licence_findings, may_follow, terms


@pytest.mark.parametrize("licence", [*COMMON, "MIT", "GPL-3.0-or-later", "CC-BY-SA-3.0-DE", "ODbL-1.0", ""])
def test_identifiers_of_the_list_are_known(licence):
    assert licence_findings(licence) == ()


@pytest.mark.parametrize(
    ("licence", "meant"),
    [
        ("CC BY 4.0", "CC-BY-4.0"),
        ("cc-by-4.0", "CC-BY-4.0"),
        ("CC-BY", "CC-BY-4.0"),
        ("CC0", "CC0-1.0"),
        ("CC-BY-SA", "CC-BY-SA-4.0"),
        ("CC-BY-4", "CC-BY-4.0"),
        ("LicenseRef-mine", ""),
        ("MIT AND CC0-1.0", ""),
    ],
)
def test_others_are_refused_with_the_nearest(licence, meant):
    (finding,) = licence_findings(licence)
    assert finding.code == "unknown-licence"
    assert meant in finding.remedy


@pytest.mark.parametrize(
    ("licence", "binds", "forbids"),
    [
        ("CC-BY-4.0", False, False),
        ("CC-BY-NC-4.0", False, False),
        ("CC0-1.0", False, False),
        ("MIT", False, False),
        ("CC-BY-SA-4.0", True, False),
        ("CC-BY-NC-SA-3.0", True, False),
        ("GPL-3.0-only", True, False),
        ("CC-BY-ND-4.0", False, True),
        ("CC-BY-NC-ND-3.0-IGO", False, True),
    ],
)
def test_terms_follow_from_the_identifier(licence, binds, forbids):
    assert (terms(licence).binds, terms(licence).forbids_changes) == (binds, forbids)


@pytest.mark.parametrize(
    ("child", "parent", "may"),
    [
        ("CC-BY-SA-4.0", "CC-BY-SA-4.0", True),
        ("CC-BY-SA-4.0", "CC-BY-SA-3.0", True),
        ("CC-BY-SA-3.0", "CC-BY-SA-4.0", False),
        ("CC-BY-NC-SA-4.0", "CC-BY-SA-4.0", False),
        ("CC-BY-4.0", "CC-BY-SA-4.0", False),
        ("", "CC-BY-SA-4.0", False),
    ],
)
def test_shared_alike_is_the_same_or_a_later_version(child, parent, may):
    assert may_follow(child, parent) is may

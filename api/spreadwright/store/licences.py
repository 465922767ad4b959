"""Licences by their SPDX identifier, and what they ask of what is derived.

The list of identifiers is that of the SPDX project, as the library `packaging` ships it.
"""

import re
from dataclasses import dataclass
from difflib import get_close_matches

from packaging.licenses import InvalidLicenseExpression, canonicalize_license_expression

from spreadwright.errors import Finding, error

COMMON = (
    "CC-BY-4.0",
    "CC-BY-SA-4.0",
    "CC-BY-NC-4.0",
    "CC-BY-NC-SA-4.0",
    "CC-BY-ND-4.0",
    "CC-BY-NC-ND-4.0",
    "CC0-1.0",
)
"""Those that are offered where somebody has to choose."""

_COMMONS = re.compile(r"CC-(?P<elements>BY(?:-(?:NC|ND|SA))*)-(?P<version>\d\.\d)(?P<port>-[A-Z-]+)?")
_BINDING = re.compile(
    r"(?P<family>(?:A|L)?GPL|GFDL|OSL|EUPL|CECILL|MPL|EPL|CDDL|ODbL|LAL|CDLA-Sharing)-(?P<version>\d\.\d)"
)


@dataclass(frozen=True, slots=True)
class Terms:
    """What a licence asks of what is derived.

    Attributes:
        family: The licence without its version; later versions of one family may follow one another.
        version: Major and minor.
        forbids_changes: Nothing may be derived.
        binds: What is derived has to be shared alike.
    """

    family: str
    version: tuple[int, ...]
    forbids_changes: bool = False
    binds: bool = False


def terms(licence: str) -> Terms:
    """What a licence asks; one that nobody has told of here asks nothing of what is derived.

    >>> terms("CC-BY-SA-4.0").binds, terms("CC-BY-NC-ND-4.0").forbids_changes
    (True, True)
    """
    commons = _COMMONS.fullmatch(licence)
    if commons:
        elements = commons["elements"].split("-")
        return Terms(f"CC-{commons['elements']}", _version(commons["version"]), "ND" in elements, "SA" in elements)
    binding = _BINDING.match(licence)
    if binding:
        return Terms(binding["family"], _version(binding["version"]), binds=True)
    return Terms(licence, ())


def may_follow(child: str, parent: str) -> bool:
    """Whether what is derived from a parent that binds may carry this licence: the same, or a later version of it."""
    if child == parent:
        return True
    ours, theirs = terms(child), terms(parent)
    return ours.family == theirs.family and ours.version >= theirs.version


def licence_findings(licence: str) -> tuple[Finding, ...]:
    """What is wrong with the licence of a document that names one."""
    if not licence or _canonical(licence) == licence:
        return ()
    meant = _canonical(licence)
    near = meant or next(iter(get_close_matches(licence.upper().replace(" ", "-"), COMMON, n=1)), "")
    remedy = f"Did you mean “{near}”?" if near else f"Known are, among others, {', '.join(COMMON)}."
    return (error("unknown-licence", "/licence", f"“{licence}” is no SPDX identifier of a licence.", remedy),)


def _canonical(licence: str) -> str:
    """As SPDX writes it; empty for what is no single licence of the list."""
    if re.fullmatch(r"[A-Za-z0-9.+-]+", licence) is None or licence.upper().startswith("LICENSEREF-"):
        return ""
    try:
        return str(canonicalize_license_expression(licence))
    except InvalidLicenseExpression:
        return ""


def _version(text: str) -> tuple[int, ...]:
    return tuple(int(part) for part in text.split("."))

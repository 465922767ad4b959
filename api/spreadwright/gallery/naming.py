"""Where a sentence names a piece, so that a page can light it up."""

import re
from collections.abc import Collection

from markupsafe import Markup

from spreadwright.gallery.typesetting import lengths

_SPACE = "[\N{NARROW NO-BREAK SPACE}\N{NO-BREAK SPACE} ]?"
_NAMED = re.compile(rf"[“„«]{_SPACE}(?P<id>[a-z][a-z0-9-]*){_SPACE}[”“»](?: \([^()]{{1,12}}\))?")
"""A name in the quotation marks of any language that is spoken, and the mark that follows it."""


def named(sentence: str, pieces: Collection[str]) -> Markup:
    """A sentence with its lengths set, in which every piece that it names carries `data-piece`.

    >>> print(named("What falls is “tag” (D).", {"tag"}))
    What falls is <span class="named" data-piece="tag">“tag” (D)</span>.
    """
    parts, done = [], 0
    for match in _NAMED.finditer(sentence):
        if match["id"] not in pieces:
            continue
        words = Markup('<span class="named" data-piece="{}">{}</span>').format(match["id"], match[0])
        parts += [lengths(sentence[done : match.start()]), words]
        done = match.end()
    return Markup("").join([*parts, lengths(sentence[done:])])

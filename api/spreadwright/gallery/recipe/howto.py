"""A recipe's page for search engines: a HowTo of schema.org, as JSON-LD."""

import json
from typing import Any

from markupsafe import Markup

from spreadwright.gallery.recipe.page import RecipePage
from spreadwright.gallery.typesetting import licence_address
from spreadwright.lengths import size_text
from spreadwright.model.titles import role_title
from spreadwright.words import gettext as _
from spreadwright.words import ngettext

Json = dict[str, Any]

_UNSAFE = {ord(sign): f"\\u{ord(sign):04x}" for sign in "<>&\u2028\u2029"}


def howto(page: RecipePage, language: str, address: str = "", picture: str = "") -> Markup:
    """The content of a script element of type ``application/ld+json``, in the language that is spoken.

    Args:
        page: What the page shows.
        language: That of the page, a BCP 47 tag.
        address: Of the page, absolute; left out when it is not known.
        picture: Of the picture that stands for the recipe, absolute; likewise.
    """
    found = {"@context": "https://schema.org", "@type": "HowTo", **_about(page, language, address, picture)}
    found |= {"supply": _supplies(page), "tool": _tools(page), "step": _sections(page, address)}
    text = json.dumps({name: value for name, value in found.items() if value}, ensure_ascii=False)
    return Markup(text.translate(_UNSAFE))  # no text can end the element that it stands in


def _about(page: RecipePage, language: str, address: str, picture: str) -> Json:
    recipe = page.recipe
    return {
        "name": recipe.title,
        "description": recipe.summary,
        "inLanguage": language,
        "author": [{"@type": "Person", "name": name} for name in recipe.authors],
        "license": licence_address(recipe.licence) or recipe.licence,
        "keywords": ", ".join(recipe.tags),
        "url": address,
        "image": picture,
    }


def _supplies(page: RecipePage) -> list[Json]:
    unit = page.bench.unit
    papers = [
        _item(
            "HowToSupply",
            _("{paper}, {size}").format(
                paper=role_title(need.role), size=size_text(need.size.width, need.size.height, unit)
            ),
            len(need.numbers),
        )
        for need in page.needs
    ]
    photos = len(page.recipe.photos)
    return papers + ([_item("HowToSupply", ngettext("photo", "photos", photos), photos)] if photos else [])


def _item(kind: str, name: str, count: int) -> Json:
    return {"@type": kind, "name": name, "requiredQuantity": count}


def _tools(page: RecipePage) -> list[Json]:
    return [{"@type": "HowToTool", "name": name} for name in (_("trimmer"), _("ruler"), _("photo-safe adhesive"))]


def _sections(page: RecipePage, address: str) -> list[Json]:
    cuts = [
        " ".join(filter(None, (words.caution, words.board, words.setting, words.falls, words.stays, words.mark)))
        for words in page.cutting.words
    ]
    moves = [step.sentence for step in page.placing.steps]
    parts = ((_("Cutting"), "cuts", cuts), (_("Placing"), "placement", moves))
    return [_section(name, texts, f"{address}#{place}" if address else "") for name, place, texts in parts if texts]


def _section(name: str, texts: list[str], address: str) -> Json:
    steps = [{"@type": "HowToStep", "position": number, "text": text} for number, text in enumerate(texts, start=1)]
    return {"@type": "HowToSection", "name": name, "itemListElement": steps} | ({"url": address} if address else {})

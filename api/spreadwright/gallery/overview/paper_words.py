"""What a page says of a paper: what is seen on its faces, what it weighs, what its cut edges show."""

from spreadwright.model import BLANK, Core, Face, Paper, Pattern, Side, Texture
from spreadwright.words import decimal, ngettext, title
from spreadwright.words import gettext as _


def face_words(face: Face) -> str:
    """What is seen on a face: ``stripe, one-way``."""
    if face == BLANK:
        return _("bare paper")
    seen = [_pattern_words(face.pattern)]
    seen += [_("one-way")] if face.is_directional else []
    is_felt = face.texture is not Texture.SMOOTH and face.texture.value != face.pattern.value
    return ", ".join(seen + ([_texture_words(face.texture)] if is_felt else []))


def side_words(paper: Paper, side: Side) -> str:
    """A paper, one of its sides, and what is seen there: ``Rope, front: stripe``."""
    words = _("{paper}, front: {seen}") if side is Side.FRONT else _("{paper}, back: {seen}")
    return words.format(paper=title(paper.title), seen=face_words(paper.face(side)))


def weight_words(paper: Paper) -> str:
    """What a paper weighs, and one sheet of it: ``176 g/m² (65 lb cover), 16.3 g a sheet``."""
    grams = decimal(f"{float(paper.weight.mass_g(paper.size)):.1f}")
    return _("{weight}, {grams} g a sheet").format(weight=paper.weight, grams=grams)


def core_words(paper: Paper) -> str:
    """What a cut edge shows."""
    return _("dyed through") if paper.core is Core.DYED else _("white core")


def stock_words(paper: Paper) -> str:
    """How many sheets there are, where they are counted: ``1 sheet at hand``."""
    count = paper.sheets
    return (
        "" if count is None else ngettext("{count} sheet at hand", "{count} sheets at hand", count).format(count=count)
    )


def _pattern_words(pattern: Pattern) -> str:
    return {
        Pattern.PLAIN: _("plain"),
        Pattern.LINEN: _("linen"),
        Pattern.STRIPE: _("stripe"),
        Pattern.GINGHAM: _("gingham"),
        Pattern.DOTS: _("dots"),
        Pattern.CHEVRON: _("chevron"),
        Pattern.LEAF: _("leaf"),
        Pattern.CONTOUR: _("contour"),
        Pattern.PICTURE: _("printed"),
    }[pattern]


def _texture_words(texture: Texture) -> str:
    return {
        Texture.SMOOTH: "",
        Texture.LINEN: _("linen texture"),
        Texture.CANVAS: _("canvas texture"),
        Texture.LAID: _("laid texture"),
        Texture.FELT: _("felt texture"),
    }[texture]

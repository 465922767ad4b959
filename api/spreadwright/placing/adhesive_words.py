"""What a layout takes in adhesive, in words."""

from spreadwright.lengths import TICKS, Unit, told
from spreadwright.model import Bench, Wetness
from spreadwright.placing.adhesive import Adhesives, Sticking, instead
from spreadwright.words import decimal, listed, ngettext
from spreadwright.words import gettext as _

_MOST_NAMED = 20
"""Of more pieces than these, their number says more than their names."""


def adhesive_words(found: Adhesives, bench: Bench) -> tuple[str, ...]:
    """Which adhesive for which piece, how much in all, and what is safe for photographs."""
    words = [*_kind(found, Wetness.DRY, bench), *_kind(found, Wetness.LIQUID, bench), *_unheld(found, bench)]
    return (*words, *_photos(found), *photo_safety())


def photo_safety() -> tuple[str, ...]:
    """What standards and libraries say; the two do not agree."""
    return (
        _("Choose adhesives sold as photo-safe: ISO 18902 sets what they must be like, ISO 18916 how that is tested."),
        _("Libraries advise against any tape on photographs that are to be kept: use photo corners for those."),
    )


def _photos(found: Adhesives) -> list[str]:
    if not found.photos:
        return []
    if any(each.adhesive for each in found.photos):
        return [_("The photographs are counted with them; photo corners hold them without any adhesive.")]
    return [_("Photo corners hold the photographs without any adhesive.")]


def _kind(found: Adhesives, wetness: Wetness, bench: Bench) -> list[str]:
    pieces, everything = found.of(wetness), found.by(wetness)
    if not everything:
        return []
    if wetness is Wetness.DRY:
        said = _("Tape {width} wide, about {length} in all, holds {pieces}.")
    else:
        said = _("Liquid glue in a bead of {width}, about {length} or {volume} ml in all, holds {pieces}.")
    width = max(each.adhesive.width for each in everything if each.adhesive)
    return [
        said.format(
            width=told(width, bench.unit),
            length=_long(sum(each.length for each in everything), bench.unit),
            volume=millilitres(sum(each.volume for each in everything)),
            pieces=_named(pieces, len(everything) - len(pieces)),
        )
    ]


def _named(pieces: tuple[Sticking, ...], photos: int) -> str:
    names = [_("“{piece}”").format(piece=each.stick.id) for each in pieces]
    if len(pieces) > _MOST_NAMED:
        names = [ngettext("{count} piece", "{count} pieces", len(pieces)).format(count=len(pieces))]
    if photos:
        names.append(ngettext("{count} photograph", "{count} photographs", photos).format(count=photos))
    return listed(names)


def _unheld(found: Adhesives, bench: Bench) -> list[str]:
    unheld = tuple(each for each in found.pieces if each.adhesive is None)
    if not unheld:
        return []
    sizes = (each.stick.size for each in unheld)
    narrowest = min(sizes, key=lambda size: min(size.width, size.height))
    said = _("No adhesive of this bench is narrow enough for {pieces}: use {adhesive}.")
    return [said.format(pieces=_named(unheld, 0), adhesive=instead(narrowest, bench.unit))]


def _long(length: int, unit: Unit) -> str:
    """A length for shopping, rounded up: whole feet, or tenths of a metre."""
    if unit is Unit.INCH:
        return f"{-(-length // (12 * TICKS[unit]))} ft"
    tenths = -(-length // (100 * TICKS[Unit.MILLIMETRE]))
    return f"{decimal(f'{tenths // 10}.{tenths % 10}')} m"


def millilitres(volume: int) -> str:
    """Millionths of a litre as millilitres, rounded up to a tenth."""
    tenths = -(-volume // 100)
    return decimal(f"{tenths // 10}.{tenths % 10}")

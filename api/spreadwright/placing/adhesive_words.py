"""What a layout takes in adhesive, in words."""

from spreadwright.lengths import TICKS, Unit, with_unit
from spreadwright.model import Bench, Wetness
from spreadwright.placing.adhesive import Adhesives, Sticking
from spreadwright.words import decimal, listed, ngettext
from spreadwright.words import gettext as _


def adhesive_words(found: Adhesives, bench: Bench) -> tuple[str, ...]:
    """Which adhesive for which piece, how much in all, and what is safe for photographs."""
    told = [*_kind(found, Wetness.DRY, bench), *_kind(found, Wetness.LIQUID, bench), *_unheld(found)]
    if found.photos:
        told.append(_("The photographs are counted with them; photo corners hold them without any adhesive."))
    return (*told, *photo_safety())


def photo_safety() -> tuple[str, ...]:
    """What standards and libraries say; the two do not agree."""
    return (
        _("Choose adhesives sold as photo-safe: ISO 18902 sets what they must be like, ISO 18916 how that is tested."),
        _("Libraries advise against any tape on photographs that are to be kept: use photo corners for those."),
    )


def _kind(found: Adhesives, wetness: Wetness, bench: Bench) -> list[str]:
    everything = [each for each in (*found.pieces, *found.photos) if each.adhesive and each.adhesive.wetness is wetness]
    if not everything:
        return []
    if wetness is Wetness.DRY:
        told = _("Tape {width} wide, about {length} in all, holds {pieces}.")
    else:
        told = _("Liquid glue in a bead of {width}, about {length} or {volume} ml in all, holds {pieces}.")
    width = max(each.adhesive.width for each in everything if each.adhesive)
    return [
        told.format(
            width=with_unit(width, bench.unit),
            length=_long(sum(each.length for each in everything), bench.unit),
            volume=millilitres(sum(each.volume for each in everything)),
            pieces=_named(found.of(wetness), sum(each in found.photos for each in everything)),
        )
    ]


def _named(pieces: tuple[Sticking, ...], photos: int) -> str:
    names = [_("“{piece}”").format(piece=each.stick.id) for each in pieces]
    if photos:
        names.append(ngettext("{count} photograph", "{count} photographs", photos).format(count=photos))
    return listed(names)


def _unheld(found: Adhesives) -> list[str]:
    unheld = tuple(each for each in found.pieces if each.adhesive is None)
    if not unheld:
        return []
    told = _("No adhesive of this bench is narrow enough for {pieces}: use a finer glue.")
    return [told.format(pieces=_named(unheld, 0))]


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

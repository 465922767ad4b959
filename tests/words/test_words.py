from spreadwright.lengths import TICKS, Unit, on_scale, size_text, with_unit, written
from spreadwright.words import speaking, spoken, unbroken

LENGTH = 178 * TICKS[Unit.CENTIMETRE] // 10


def test_an_unknown_language_speaks_english_and_a_region_its_language():
    with speaking("xx"):
        assert spoken() == "en"
    with speaking("EN-GB"):
        assert spoken() == "en"


def test_a_language_ends_with_its_block():
    with speaking("de"):
        pass
    assert spoken() == "en"


def test_documents_keep_the_decimal_point_in_every_language():
    with speaking("de"):
        assert written(LENGTH, Unit.CENTIMETRE) == "17.8"
        assert written(LENGTH, Unit.INCH) == "178 mm"


def test_english_lengths_have_a_decimal_point():
    assert with_unit(LENGTH, Unit.CENTIMETRE) == "17.8 cm"
    assert size_text(LENGTH, LENGTH, Unit.CENTIMETRE) == "17.8 × 17.8 cm"
    assert on_scale(LENGTH, 320, Unit.CENTIMETRE) == "17.8 cm"


def test_ratios_and_shares_are_held_together():
    assert unbroken("contrast 1.4 : 1, or 12 : 1.") == "contrast 1.4\u00a0:\u00a01, or 12\u00a0:\u00a01."
    assert unbroken("to red (2 %), 13,5 % in all") == "to red (2\u00a0%), 13,5\u00a0% in all"
    assert unbroken("plus 3 : 15, faible : 1 point") == "plus 3 : 15, faible : 1 point"

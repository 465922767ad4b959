from spreadwright.drawing.booklet.typeset import typeset


def test_words_are_escaped_before_they_are_set():
    assert "<b>" not in typeset("<b>1/2 in</b>") and '<span class="fraction">1/2</span>' in typeset("<b>1/2 in</b>")


def test_what_is_no_length_stays_as_it_is():
    for words in ("sheet 3", "11/25/2026", "step 12.", "a1/2b"):
        assert typeset(words) == words


def test_decimal_commas_stay_with_their_unit():
    assert typeset("17,8 cm") == "17,8\u00a0cm"


def test_unbroken_spaces_of_french_are_ones_that_the_fonts_have():
    assert typeset("«\u202fcaption\u202f»") == "«\u00a0caption\u00a0»"

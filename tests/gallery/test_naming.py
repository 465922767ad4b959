import pytest

from spreadwright.gallery.naming import named


@pytest.mark.parametrize(
    ("sentence", "shown"),
    [
        ("What falls is “tag” (D), 4 in.", "“tag” (D)"),
        ("Was fällt, ist „tag“ (D).", "„tag“ (D)"),
        ("Ce qui tombe est «\u202ftag\u202f» (D).", "«\u202ftag\u202f» (D)"),
        ("Mark “tag”.", "“tag”"),
    ],
)
def test_a_piece_is_named_in_every_language(sentence, shown):
    assert f'<span class="named" data-piece="tag">{shown}</span>' in named(sentence, {"tag"})


def test_what_is_no_piece_stays_as_it_is():
    assert named("The bench “tag” & “more”.", {"other"}) == "The bench “tag” &amp; “more”."


def test_lengths_around_a_name_are_set_and_its_number_is_none():
    found = named("“view-2” (F2), 5 × 3 1/2 in", {"view-2"})
    assert found.count('class="length"') == 1 and ">“view-2” (F2)<" in found


def test_every_copy_is_its_own():
    found = named("“view-1” (F1) and “view-2” (F2)", {"view-1", "view-2"})
    assert found.count("data-piece") == 2 and 'data-piece="view-1"' in found and 'data-piece="view-2"' in found

import pytest

from spreadwright.gallery.typesetting import (
    address,
    lengths,
    licence_address,
    licence_name,
    size,
)
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit

INCH = TICKS[Unit.INCH]
NARROW = "\N{NARROW NO-BREAK SPACE}"


def test_fraction_keeps_its_distance_from_the_whole():
    plain = str(lengths("11 1/2 in")).replace('<span class="fraction">', "").replace("</span>", "")
    assert plain == f'<span class="length">11{NARROW}1/2 in'


@pytest.mark.parametrize("text", ["sheet 3", "mat-1", "3 of 4 pieces", "RFC 9457", "2/3/4", "a 12 inn", "v1.2.3"])
def test_what_is_no_length_stays_as_it_is(text):
    assert str(lengths(text)) == text


@pytest.mark.parametrize("text", ["1/2 in", "3 1/2 × 5 in", "292.1 mm", "216 g/m²", "7 × 7 in"])
def test_length_is_one_span(text):
    assert str(lengths(f"about {text}, or so")).startswith('about <span class="length">')
    assert str(lengths(text)).count('class="length"') == 1


def test_text_is_escaped():
    assert str(lengths("<b>5 in</b>")) == '&lt;b&gt;<span class="length">5 in</span>&lt;/b&gt;'


def test_entities_are_no_lengths():
    assert str(lengths("it's 'so' in")) == "it&#39;s &#39;so&#39; in"


def test_sizes_are_given_in_the_unit_asked_for():
    assert str(size(Size(INCH, 2 * INCH), Unit.INCH)) == '<span class="length">1 × 2 in</span>'
    assert str(size(Size(15 * INCH // 4, INCH), Unit.MILLIMETRE)) == '<span class="length">95.3 × 25.4 mm</span>'


def test_sizes_that_no_inch_ruler_shows_are_told_by_the_nearest_sixteenth():
    metric, fine = Size(55040, 46720), Size(INCH // 64, 3 * INCH)
    assert str(size(metric, Unit.INCH)) == str(lengths("6 3/4 × 5 3/4 in"))
    assert str(size(metric, Unit.MILLIMETRE)) == str(lengths("172 × 146 mm"))
    assert str(size(fine, Unit.INCH)) == str(lengths("1/64 × 3 in"))


def test_paths_are_quoted():
    assert address("recipes/a b#c/index.html") == "recipes/a%20b%23c/index.html"


@pytest.mark.parametrize(
    ("licence", "name", "path"),
    [
        ("CC-BY-4.0", "CC BY 4.0", "/licenses/by/4.0/"),
        ("CC-BY-NC-SA-4.0", "CC BY-NC-SA 4.0", "/licenses/by-nc-sa/4.0/"),
        ("CC0-1.0", "CC0 1.0", "/publicdomain/zero/1.0/"),
    ],
)
def test_common_licences_have_a_name_and_an_address(licence, name, path):
    assert licence_name(licence) == name
    assert licence_address(licence).endswith(path)


def test_other_licences_have_no_address():
    assert (licence_name("MIT"), licence_address("MIT")) == ("MIT", "")


@pytest.mark.parametrize("text", ["120,7 × 82,6 mm", "120.7 × 82.6 mm"])
def test_both_decimal_signs_are_held_together(text):
    assert lengths(f"Auf {text}, dann.") == f'Auf <span class="length">{text}</span>, dann.'

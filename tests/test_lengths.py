import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.errors import BetweenMarks, UnreadableLength
from spreadwright.lengths import FINEST, LONGEST, TICKS, Unit, nearest, neighbours, text, ticks, with_unit, written
from strategies import lengths

ELEVEN_AND_A_HALF = 23 * TICKS[Unit.INCH] // 2


@pytest.mark.parametrize(
    "words",
    [
        "11 1/2",
        "11.5",
        "11-1/2",
        "11‑1/2",
        "11 - 1/2",
        "11½",
        "11 ½",
        '11 1/2"',
        "11 1/2 in",
        "11.5in",
        "11 1/2 inches",
        "11 1⁄2″",
        "11\u00a01/2\u2009in",
        "23/2",
        "292.1 mm",
        "29.21 cm",
        "29,21 cm",
        " 11.50 ",
        "+11.5",
        "11 8/16",
    ],
)
def test_every_way_of_writing_reads_alike(words):
    assert ticks(words, Unit.INCH) == ELEVEN_AND_A_HALF


@pytest.mark.parametrize(
    ("words", "expected"), [("292", 93440), ("29.2 cm", 93440), (".5", 160), ("1/2", 160), ("7.", 2240)]
)
def test_bare_number_takes_the_unit_of_the_document(words, expected):
    assert ticks(words, Unit.MILLIMETRE) == expected


@given(lengths(Unit.INCH))
def test_inch_text_reads_back(length):
    assert ticks(text(length, Unit.INCH), Unit.INCH) == length


@given(lengths(Unit.MILLIMETRE), st.sampled_from([Unit.MILLIMETRE, Unit.CENTIMETRE]))
def test_metric_text_reads_back(length, unit):
    assert ticks(text(length, unit), unit) == length


@given(st.one_of(lengths(Unit.INCH), lengths(Unit.MILLIMETRE)), st.sampled_from(Unit))
def test_written_length_is_exact_in_any_unit(length, unit):
    assert ticks(written(length, unit), unit) == length


@given(st.sampled_from(Unit), lengths(Unit.INCH))
def test_unit_does_not_change_the_ticks(unit, length):
    assert ticks(with_unit(length, Unit.INCH), unit) == length


@given(st.integers(-LONGEST, LONGEST), st.integers(1, 10_000))
def test_nearest_mark_is_one_of_the_neighbours(length, step):
    below, above = neighbours(length, step)
    assert below <= length <= above and above - below in (0, step)
    assert nearest(length, step) == (below if length - below < above - length else above)


@pytest.mark.parametrize(
    ("words", "unit", "below", "above"),
    [
        ("1/3", Unit.INCH, "21/64 in", "11/32 in"),
        ("11.55", Unit.INCH, "11 35/64 in", "11 9/16 in"),
        ("0.05 mm", Unit.INCH, "0 mm", "0.1 mm"),
        ("1/3 cm", Unit.MILLIMETRE, "0.33 cm", "0.34 cm"),
    ],
)
def test_length_between_marks_names_both_neighbours(words, unit, below, above):
    with pytest.raises(BetweenMarks) as refusal:
        ticks(words, unit)
    assert (refusal.value.below, refusal.value.above) == (below, above)
    assert below in refusal.value.remedy and above in refusal.value.remedy


@pytest.mark.parametrize(
    ("length", "unit", "words"),
    [
        (9144, Unit.MILLIMETRE, "28.575"),
        (7112, Unit.CENTIMETRE, "2.2225"),
        (48000, Unit.INCH, "5.906"),
        (1, Unit.MILLIMETRE, "0.003"),
    ],
)
def test_length_off_the_marks_is_shown_to_a_thousandth(length, unit, words):
    assert text(length, unit) == words


def test_eighth_of_an_inch_may_be_written_in_millimetres():
    assert ticks("3.175 mm", Unit.INCH) == ticks("1/8", Unit.INCH)


@pytest.mark.parametrize(
    "words",
    ["", " ", "x", "1/0", "1 2", "1/2/3", "--1", "1e3", "NaN", "inf", "0x10", "12 ft", "9" * 41, "1" * 5000, "1,000",
     "١٢", "²", "½½", "1 1/2 1/2", "mm", "1.2.3", "999999", "11 17/16", "1 8/8"],
)  # fmt: skip
def test_what_is_no_length_is_refused(words):
    with pytest.raises(UnreadableLength):
        ticks(words, Unit.INCH)


def test_finest_marks_are_whole_ticks():
    assert FINEST[Unit.INCH] * 64 == TICKS[Unit.INCH]
    assert FINEST[Unit.MILLIMETRE] * 10 == TICKS[Unit.MILLIMETRE]
    assert TICKS[Unit.INCH] * 10 == TICKS[Unit.MILLIMETRE] * 254

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.document import canonical, is_short, pieces_in_short, read_pieces, stock_in_short
from spreadwright.errors import UnreadableDocument
from spreadwright.geometry import Size
from spreadwright.lengths import FINEST, TICKS, Unit, text, ticks
from strategies import lengths

INCH = TICKS[Unit.INCH]


def pieces(words):
    return [
        (wanted.name, wanted.size, wanted.count, wanted.may_turn)
        for wanted in read_pieces(canonical(pieces_in_short(words))).model.pieces
    ]


@pytest.mark.parametrize("by", ["x", " x ", "×", " by ", "X"])
@pytest.mark.parametrize("unit", list(Unit))
@given(width=lengths(Unit.INCH).filter(bool), height=lengths(Unit.INCH).filter(bool), count=st.integers(1, 99))
def test_a_written_size_is_read_again(by, unit, width, height, count):
    width, height = (side // FINEST[Unit.INCH] * FINEST[unit] for side in (width, height))
    words = f"{text(width, unit)}{by}{text(height, unit)} *{count} mat"
    (item,) = pieces_in_short(words, unit=unit)["pieces"]
    assert [ticks(side, unit) for side in item["size"]] == [width, height]
    assert (item["name"], item["times"]) == ("mat", count)


def test_the_list_of_a_page():
    seven, small = Size(7 * INCH, 7 * INCH), Size(7 * INCH // 2, 5 * INCH)
    assert pieces("7x7 left, 3 1/2x5 *2 right") == [("left", seven, 1, True), ("right", small, 2, True)]


def test_pieces_without_a_name_are_numbered_and_a_mark_keeps_them_upright():
    assert pieces("7 x 7!, 3½ by 5!*2") == [
        ("piece-1", Size(7 * INCH, 7 * INCH), 1, False),
        ("piece-2", Size(7 * INCH // 2, 5 * INCH), 2, False),
    ]


def test_a_unit_at_the_end_is_that_of_both_sides():
    assert pieces("10x15 cm photo") == [
        ("photo", Size(10 * TICKS[Unit.CENTIMETRE], 15 * TICKS[Unit.CENTIMETRE]), 1, True)
    ]


def test_semicolons_make_room_for_decimal_commas():
    assert [size for _, size, *_ in pieces("3,5x5; 2x2")] == [Size(7 * INCH // 2, 5 * INCH), Size(2 * INCH, 2 * INCH)]


def test_stock_is_counted_and_takes_a_role():
    assert stock_in_short(["12x12*2 print", "8 1/2x11"]) == [
        {"size": ["12", "12"], "times": 2, "role": "print"},
        {"size": ["8 1/2", "11"]},
    ]
    assert pieces_in_short("7x7")["stock"] == [{"size": ["12in", "12in"]}]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("7x7, 7", "Piece 2, “7”, has no width and height"),
        ("7x7, 5x", "Piece 2, “5x”, has no width and height"),
        ("7x7, 0x5", "Piece 2, “0x5”, has a side of “0”"),
        ("-3x5", "Piece 1, “-3x5”, has a side of “-3”"),
        ("1/3x5", "falls between the marks"),
        ("7x7 big red", "ends in “big red”, which is no name"),
        ("7x7*0", "is wanted no times"),
        ("999999x7", "longer than any sheet"),
        (" , ", "No piece is named"),
        ("7x7," * 40_000, "too long"),
    ],
)
def test_each_fault_names_the_item_and_what_is_wrong(words, told):
    with pytest.raises(UnreadableDocument, match=told):
        pieces_in_short(words)


@given(st.text(max_size=60))
def test_any_text_is_a_list_or_refused(words):
    try:
        document = pieces_in_short(words)
    except UnreadableDocument:
        return
    assert read_pieces(canonical(document)).model.pieces


def test_names_of_files_are_no_lists():
    assert is_short("7x7") and is_short("3 1/2 by 5 left") and is_short("7, 5")
    assert not any(map(is_short, ["pieces.json", "rain-until-four", "-", "boxes", "x"]))

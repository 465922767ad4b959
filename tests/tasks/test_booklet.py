import os
import re
import subprocess
import sys
from dataclasses import replace
from io import BytesIO

import pikepdf
import pypdfium2
import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.drawing.booklet.album import Album
from spreadwright.drawing.theme import points
from spreadwright.errors import InvalidDocument, Severity
from spreadwright.lengths import TICKS, Unit, with_unit
from spreadwright.model import INCH_BENCH, Kind
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway, cut, fitting_set, place
from spreadwright.tasks.booklet import Format, booklet, dress, recipe_address
from spreadwright.tasks.stand_in import stand_in
from spreadwright.tasks.tolerance import tolerance
from spreadwright.tolerance import amount
from spreadwright.words import LANGUAGES

SMALL = "breakfast-on-the-step"


def printed(reading, **options) -> bytes:
    worn = dress(reading.model, None, Collection().sound_paper_sets(), None)
    return booklet(reading, INCH_BENCH, worn, **options)


def words_of(data: bytes) -> str:
    pages = [page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(data)]
    return re.sub(r"\s+", " ", " ".join(pages))


@pytest.fixture(scope="module")
def reading():
    return Collection().recipe("rain-until-four")


@pytest.fixture(scope="module")
def whole(reading) -> bytes:
    return printed(reading, address="https://albums.example/recipes/rain-until-four")


@pytest.fixture(scope="module")
def words(whole) -> str:
    return words_of(whole)


def test_title_author_and_subject_are_told(whole, reading):
    told = pypdfium2.PdfDocument(whole).get_metadata_dict()
    recipe = reading.model
    assert (told["Title"], told["Author"], told["Subject"]) == (recipe.title, recipe.authors[0], recipe.summary)
    assert not told["CreationDate"] and not told["ModDate"]


def test_every_page_has_its_number_and_size(whole, words):
    document = pypdfium2.PdfDocument(whole)
    count = len(document)
    assert [number for number in range(1, count + 1) if f"{number} of {count}" not in words] == []
    assert {tuple(map(round, document.get_page_size(page))) for page in range(count)} == {(595, 842)}


def test_bookmarks_lead_to_every_part(whole):
    document = pypdfium2.PdfDocument(whole)
    found = [(mark.get_title(), mark.get_dest().get_index()) for mark in document.get_toc()]
    titles = [title for title, _ in found]
    parts = ["Rain until four", "What you need", "Before you cut", "Cutting", "Piles", "Before you glue", "Photographs"]
    assert [title for title in titles if title in parts] == parts
    assert [page for _, page in found] == sorted(page for _, page in found)


def test_every_cut_and_reading_is_found_in_the_words(words, reading):
    for step in cut(reading, INCH_BENCH).steps:
        assert with_unit(step.reading, INCH_BENCH.unit) in words
        assert str(step.number) in words.split()


def test_every_piece_is_found_in_the_words(words, reading):
    for piece in cut(reading, INCH_BENCH).pieces:
        assert f"({piece.mark})" in words and piece.id in words


def test_every_gluing_sentence_is_found_in_the_words(words, reading):
    for step in place(reading, INCH_BENCH).steps:
        assert [sentence for sentence in step.sentences if sentence not in words] == []
        assert [measure.figure for measure in step.measures if measure.figure not in words] == []


def test_cautions_stand_before_what_they_belong_to(words, reading):
    cutting, placing = cut(reading, INCH_BENCH), place(reading, INCH_BENCH)
    first_cut, first_glued = words.index(cutting.words[0].board), words.index(placing.steps[0].sentences[0])
    assert max(words.index(caution) for caution in cutting.cautions) < first_cut
    assert first_cut < max(words.index(caution) for caution in placing.cautions) < first_glued
    assert all(words.index(sentence) < first_glued for sentence in placing.adhesive.words)


def test_papers_are_named(words, reading):
    papers = fitting_set(reading.model, Collection().sound_paper_sets())
    for _, choice in chosen_colourway(reading.model, papers).choices:
        assert choice.paper.title in words
    assert papers.title in words


def test_every_font_is_in_the_file(whole):
    with pikepdf.open(BytesIO(whole)) as document:
        described = [each for each in document.objects if isinstance(each, pikepdf.Dictionary) and "/FontName" in each]
        assert described and all("/FontFile2" in each for each in described)
        assert {str(each["/FontName"]).split("+")[1].split("-")[0] for each in described} == {"sans", "text"}


def test_file_is_tagged_and_says_its_language(whole):
    with pikepdf.open(BytesIO(whole)) as document:
        assert document.Root.MarkInfo.Marked and str(document.Root.Lang) == "en"
        pictures = [e for e in document.objects if isinstance(e, pikepdf.Dictionary) and e.get("/S") == "/Figure"]
        assert len(pictures) > 20 and all(str(each.get("/Alt", "")) for each in pictures)


def test_same_recipe_gives_the_same_bytes():
    program = f"""
import hashlib, sys
from spreadwright.model import INCH_BENCH, Kind
from spreadwright.store import Collection
from spreadwright.tasks.booklet import booklet, dress
reading, papers = Collection().recipe("{SMALL}"), Collection().paper_set("windfall")
print(hashlib.sha256(booklet(reading, INCH_BENCH, dress(reading.model, papers, (), None))).hexdigest())
"""
    seeds = ({**os.environ, "PYTHONHASHSEED": seed} for seed in "12")
    sums = {subprocess.check_output([sys.executable, "-c", program], env=env, text=True) for env in seeds}
    assert len(sums) == 1


def test_letter_paper_has_its_own_size():
    document = pypdfium2.PdfDocument(printed(Collection().recipe(SMALL), paper=Format.LETTER))
    assert {tuple(map(round, document.get_page_size(page))) for page in range(len(document))} == {(612, 792)}


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_language_is_spoken(language):
    data = printed(Collection().recipe(SMALL), language=language)
    with pikepdf.open(BytesIO(data)) as document:
        assert str(document.Root.Lang) == language
    assert ("What you need" in words_of(data)) == (language == "en")


def test_names_cannot_break_out_of_the_page():
    hostile = '<script>alert("x")</script> & "quoted"'
    reading = read_recipe(spoilt(lambda recipe: recipe.update(title=hostile, summary="</p><img src='file:///etc'>")))
    words = words_of(printed(reading))
    assert hostile in words and "</p><img src='file:///etc'>" in words


def test_recipe_with_errors_is_refused():
    with pytest.raises(InvalidDocument) as refusal:
        printed(read_recipe(spoilt(lambda recipe: recipe["placements"].pop())))
    assert "piece-not-placed" in {finding.code for finding in refusal.value.findings}


def test_what_is_done_is_told():
    told: list[str] = []
    printed(read_recipe(sound()), told=told.append)
    assert told[0] == "drawing the steps" and re.fullmatch(r"writing \d+ pages", told[-1])


def test_address_must_be_one_of_the_web():
    assert recipe_address("", "low-tide") == "" == recipe_address("https://albums.example", "")
    for base in ("albums.example", "javascript:alert(1)", "file:///etc", "https://" + "a" * 300):
        with pytest.raises(ValueError):
            recipe_address(base, "low-tide")


def test_recipe_that_no_set_fits_is_printed_without_papers():
    reading = read_recipe(spoilt(lambda recipe: recipe["roles"]["background"].update(title="Ground")))
    assert dress(reading.model, None, (), None) is None
    words = words_of(booklet(reading, INCH_BENCH, None))
    assert "Ground plain 2 12 × 12 in" in words and "in the papers" not in words
    assert "stand for papers of your choice" in words


def test_cover_without_papers_shows_the_spread_in_quiet_tints():
    recipe = read_recipe(sound()).model
    worn = stand_in(recipe)
    faces = [choice.face for _, choice in worn.choices]
    assert [face.kind is Kind.PATTERNED for face in faces] == [role.kind is Kind.PATTERNED for role in recipe.roles]
    assert len({face.colours[0] for face in faces}) == len(recipe.roles)


def test_what_is_needed_follows_from_the_recipe_and_not_from_the_bench(reading):
    long = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, length=24 * TICKS[Unit.INCH]))
    assert "An arm trimmer that cuts at least 12 in;" in words_of(booklet(reading, long, None))


def test_adhesive_that_holds_nothing_is_not_needed(reading, words):
    assert place(reading, INCH_BENCH).adhesive.bead == 0 and len(INCH_BENCH.adhesives) == 2
    assert "Dry adhesive tape" in words and "Liquid glue that lays a bead" not in words


@pytest.mark.parametrize(("licence", "is_asked"), [("CC-BY-4.0", True), ("CC-BY-SA-4.0", True), ("CC0-1.0", False)])
def test_designer_is_to_be_named_where_the_licence_asks_for_it(licence, is_asked):
    reading = read_recipe(spoilt(lambda recipe: recipe.update(licence=licence)))
    words = words_of(booklet(reading, INCH_BENCH, None))
    assert f"Licence: {licence}." in words and ("Name the designer" in words) == is_asked


def covered(recipe):
    """A photograph whose mat lies partly under a later piece."""
    recipe["placements"].append(recipe["placements"].pop(4))
    recipe["photos"] = [{"on": "base-1", "border": "1/4"}]


def test_doubts_about_photographs_are_told_before_gluing():
    reading = read_recipe(spoilt(covered))
    words = words_of(booklet(reading, INCH_BENCH, None))
    told = words.index("The photo on “base-1” meets")
    assert words.index("Before you glue") < words.index("Watch out") < told < words.index("Gluing the left page")
    assert "Das Foto auf „base-1“ stößt an" in words_of(booklet(reading, INCH_BENCH, None, language="de"))


def test_narrow_strips_are_told_before_cutting():
    wide = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, shortest=4 * TICKS[Unit.INCH]))
    words = words_of(booklet(read_recipe(sound()), wide, None))
    assert (
        words.index("Watch out") < words.index("narrower than the 4 in that can be held safely") < words.index("Piles")
    )


def test_layout_of_one_page_has_no_sign_of_a_pile(monkeypatch):
    drawn: list[str] = []
    for module in ("labels", "booklet.tags", "booklet.signs"):
        monkeypatch.setattr(f"spreadwright.drawing.{module}.pile_sign", lambda *_: drawn.append("sign"))
    booklet(Collection().recipe(SMALL), INCH_BENCH, None)
    assert not drawn
    booklet(read_recipe(sound()), INCH_BENCH, None)
    assert drawn


def test_errors_are_rounded_up_as_on_the_command_line():
    coarse = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, accuracy=129))
    words = words_of(booklet(read_recipe(sound()), coarse, None))
    assert f"± {amount(129, INCH_BENCH.unit)}" in words and "± 0.016 in" in words


def test_what_could_come_out_wrong_is_told_in_the_language_of_the_booklet():
    coarse = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, accuracy=TICKS[Unit.INCH] // 4))
    warned = [each for each in tolerance(read_recipe(sound()), coarse).findings if each.severity is Severity.WARNING]
    words = words_of(booklet(read_recipe(sound()), coarse, None, language="de"))
    assert warned and warned[0].message not in words and "darunter verschwinden kann" in words


@pytest.mark.parametrize(
    "recipe_id",
    ["breakfast-on-the-step", "buttons-in-a-jar", "pocket-harbour", "tent-by-the-lake", "the-long-way-home"],
)
def test_nothing_in_a_picture_is_printed_smaller_than_nine_points(recipe_id, monkeypatch):
    small = []

    class Watched(Album):
        def shown(self, picture):
            scale = (picture.width or picture.canvas.size.width) / picture.canvas.size.width
            small.extend(each.words for each in picture.canvas.lettering if each.size * scale < points(9))
            return super().shown(picture)

    monkeypatch.setattr("spreadwright.drawing.booklet.book.Album", Watched)
    monkeypatch.setattr("spreadwright.drawing.booklet.book.printed", lambda html, *_args, **_options: html.encode())
    assert b"<img" in booklet(Collection().recipe(recipe_id), INCH_BENCH, None)
    assert small == []

from gallery.table import SETS, papers, varied
from spreadwright.gallery.overview.finding import cuts_value, found_by, kinds, laid_out
from spreadwright.gallery.overview.groups import authors, tags
from spreadwright.gallery.overview.pages import overviews

RECIPES = varied(40)


def test_every_choice_counts_its_layouts():
    found = found_by(RECIPES)
    for kind in kinds(RECIPES):
        for choice in kind.choices:
            assert choice.count == sum(choice.value in each["values"].get(kind.name, ()) for each in found) > 0


def test_choices_cover_every_layout_that_has_the_kind():
    offered = {kind.name: {choice.value for choice in kind.choices} for kind in kinds(RECIPES)}
    for each in found_by(RECIPES):
        assert all(set(values) <= offered[name] for name, values in each["values"].items())


def test_numbers_are_offered_in_order():
    photos = next(kind for kind in kinds(RECIPES) if kind.name == "photos")
    numbers = [int(choice.value) for choice in photos.choices]
    assert numbers == sorted(numbers)


def test_one_size_of_paper_is_one_choice_in_either_unit():
    size = next(kind for kind in kinds(RECIPES) if kind.name == "size")
    assert sorted(choice.value for choice in size.choices) == ["67200x67200", "97536x97536"]


def test_every_number_of_cuts_has_one_choice():
    for cuts in range(200):
        least, most = cuts_value(cuts).split("-")
        assert int(least) <= cuts and (not most or cuts <= int(most))


def test_double_pages_lie_first_and_the_gentlest_first_among_them():
    found = [(-each.pages, each.difficulty.points) for each in laid_out(RECIPES)]
    assert found == sorted(found) and set(laid_out(RECIPES)) == set(RECIPES)


def test_no_recipes_give_no_choices():
    assert kinds(()) == () and found_by(()) == []


def test_groups_hold_every_layout_of_a_name():
    for groups, names in ((tags(RECIPES), "tags"), (authors(RECIPES), "authors")):
        assert {each.name for each in groups} == {name for recipe in RECIPES for name in getattr(recipe, names)}
        for each in groups:
            assert each.recipes == tuple(recipe for recipe in RECIPES if each.name in getattr(recipe, names))


def test_every_set_tag_and_author_has_a_page_of_its_own():
    paths = [path for _template, path, _shown in overviews(RECIPES, papers())]
    assert len(paths) == len(set(paths)) == 1 + len(SETS) + 3 + len(tags(RECIPES)) + len(authors(RECIPES))
    assert "tags/woven/index.html" in paths and "authors/index.html" in paths

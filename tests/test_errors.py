import pytest

from spreadwright.errors import InvalidDocument, UnknownName, error, has_errors, nearest_hint, note, warning


def test_only_errors_count_as_errors():
    assert has_errors([warning("a", "", "", ""), error("b", "", "", "")])
    assert not has_errors([warning("a", "", "", ""), note("c", "", "", "")])


@pytest.mark.parametrize(
    ("name", "known", "hint"),
    [
        ("recipies", ["recipes", "benches"], "Did you mean “recipes”?"),
        ("x", ["recipes", "benches"], "Known: recipes, benches."),
        ("x", [], "None is known here."),
        (
            "x" * 10**6,
            [f"recipe-{i}" for i in range(10**5)],
            "Known: " + ", ".join(f"recipe-{i}" for i in range(20)) + " …",
        ),
    ],
)
def test_hint_names_the_nearest_or_all(name, known, hint):
    assert nearest_hint(name, known) == hint


def test_exceptions_write_their_own_message():
    assert (
        str(UnknownName("recipe", "low-tid", ["low-tide"])) == "There is no recipe “low-tid”. Did you mean “low-tide”?"
    )
    invalid = InvalidDocument("Low tide", [warning("w", "", "Hm.", ""), error("e", "", "Too wide.", "")])
    assert str(invalid) == "“Low tide” has 1 error: Too wide."

"""Where what is about one recipe lies: pages below the home of a language, pictures below the root of the site."""


def page_path(recipe_id: str, name: str = "index.html") -> str:
    """A page of a recipe, or a file with words beside it.

    >>> page_path("window-seat"), page_path("window-seat", "steps.html")
    ('recipes/window-seat/index.html', 'recipes/window-seat/steps.html')
    """
    return f"recipes/{recipe_id}/{name}"


def picture_path(recipe_id: str, name: str) -> str:
    """A picture of a recipe."""
    return f"pictures/{recipe_id}/{name}"


def card_path(recipe_id: str) -> str:
    """The picture that stands for a recipe elsewhere."""
    return picture_path(recipe_id, "card.png")

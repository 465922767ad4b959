"""Colours bear the names that people would give them."""

import pytest

from spreadwright.colour.names import colour_name

NAMES = {
    "white": "#ffffff #fbfbfa #eaf1fa",
    "light grey": "#cfc5c2 #d9d9d9",
    "medium grey": "#989898 #808080",
    "dark grey": "#1b1b1b #444444",
    "black": "#000000 #050505 #120e0c",
    "cream": "#f6e7d5 #fbf3e2",
    "beige": "#e3c7a0 #d8cdb8 #f5e0bf",
    "tan": "#d2b48c #c4a27e",
    "brown": "#966e51 #673f26 #5a3c2f",
    "dark brown": "#301c16 #301d0f",
    "rust": "#a73c19 #ba3b13",
    "red": "#ff0000 #cd2c28 #e73735",
    "dark red": "#741c0a #7a1420",
    "orange": "#db6642 #ffa500 #d18045 #e2a96e #d89c69",
    "yellow": "#ffff00 #efcf3b",
    "olive": "#767636 #625e45",
    "green": "#6b8558 #2e8b57",
    "teal": "#014d51 #008080",
    "dark teal": "#043432",
    "blue": "#0000ff #2d6f95 #689ed8",
    "light blue": "#c3d0dd #b8d8f0",
    "navy": "#193355 #0a1f3a",
    "violet": "#7f5fc0 #8a2be2",
    "magenta": "#ff00ff #c02090",
    "light pink": "#ffc0cb",
}


@pytest.mark.parametrize(("colour", "name"), [(each, name) for name, row in NAMES.items() for each in row.split()])
def test_a_colour_has_the_name_that_people_give_it(colour: str, name: str):
    assert colour_name(colour) == name


@pytest.mark.parametrize("red", range(0, 256, 51))
def test_every_colour_has_a_name(red: int):
    steps = range(0, 256, 51)
    assert all(colour_name(f"#{red:02x}{green:02x}{blue:02x}") for green in steps for blue in steps)

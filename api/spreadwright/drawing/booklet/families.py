"""The shipped fonts as families of CSS: a family for each script, asked in turn, and a weight for each file."""

from typing import Any

from spreadwright.drawing.fonts import SCRIPTS, Typeface

FAMILIES = {"sans": ("SANS", "SANS_MEDIUM", "SANS_BOLD"), "text": ("TEXT", "TEXT_ITALIC")}
_WEIGHTS = {"SANS": "400", "SANS_MEDIUM": "500", "SANS_BOLD": "700", "TEXT": "400", "TEXT_ITALIC": "400"}


def family(name: str) -> str:
    """The fonts of a family, as a list for CSS: a file for each script, asked in turn.

    >>> family("sans")
    'sans-latin, sans-latin-ext, sans-greek, sans-cyrillic'
    """
    return ", ".join(f"{name}-{script}" for script in SCRIPTS)


def font_faces() -> str:
    """The CSS rules for every shipped font."""
    return "\n".join(
        f"@font-face {{ font-family: {name}-{script}; font-weight: {_WEIGHTS[face]}; "
        f"font-style: {'italic' if 'ITALIC' in face else 'normal'}; "
        f'src: url("font:{Typeface[face].value}-{script}.ttf"); }}'
        for name, faces in FAMILIES.items()
        for face in faces
        for script in SCRIPTS
    )


def styled(file: str) -> dict[str, Any]:
    """The properties of CSS by which one file is found.

    >>> styled("alegreya-sans-bold-greek")
    {'font_family': ['sans-greek'], 'font_weight': 700, 'font_style': 'normal'}
    """
    name, face, script = _FILES[file]
    style = "italic" if "ITALIC" in face else "normal"
    return {"font_family": [f"{name}-{script}"], "font_weight": int(_WEIGHTS[face]), "font_style": style}


_FILES = {
    f"{Typeface[face].value}-{script}": (name, face, script)
    for name, faces in FAMILIES.items()
    for face in faces
    for script in SCRIPTS
}

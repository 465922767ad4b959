"""What makes the gallery an app that works without a network: worker, manifest, icons, and a page for what is not kept.

The worker's version is a digest of what every page needs: a change of that, and of nothing else, brings a new one.
"""

import json
import re
from hashlib import sha256
from pathlib import Path

from spreadwright import shipped
from spreadwright.gallery.pictures import Files
from spreadwright.gallery.shell import Shell
from spreadwright.gallery.site import Site
from spreadwright.tasks.draw import as_png
from spreadwright.words import gettext as _
from spreadwright.words import speaking

OFFLINE = "offline.html"
MANIFEST = "manifest.webmanifest"
_INK, _PAPER = "#2b2a28", "#fbf8f2"
_SIZES = (192, 512)
_SHARE = 0.6
"""Of a mask's width that its picture takes: systems cut icons to a circle of four fifths."""


def offline_files(around: Shell, site: Site) -> Files:
    """All of it, by path in the site; page and manifest in every language of the site."""
    spoken: dict[str, bytes] = {}
    for language in site.languages:
        home = site.home(language)
        with speaking(language):
            spoken[home + OFFLINE] = around.page(OFFLINE, OFFLINE, language, {"alternates": ()})
            spoken[home + MANIFEST] = _manifest(language, "../" * home.count("/"))
    homes = [site.home(language) for language in site.languages]
    return {**spoken, "sw.js": _worker({**_assets(), **spoken}, homes), **_icons()}


def _assets() -> dict[str, bytes]:
    """What every page needs, by path: styles, scripts, typefaces for the languages that are spoken, the icon."""
    theme = shipped.folder("site") / "theme"
    files = (file for file in sorted((theme / "assets").rglob("*")) if _is_needed(file))
    return {file.relative_to(theme).as_posix(): file.read_bytes() for file in files}


def _is_needed(file: Path) -> bool:
    if file.suffix == ".woff2":
        return "latin-ext" not in file.name
    return file.suffix in (".css", ".js", ".svg")


def _worker(shell: Files, homes: list[str]) -> bytes:
    source = (shipped.folder("site") / "worker.js").read_text(encoding="utf-8")
    digest = sha256(source.encode())
    for path, data in sorted(shell.items()):
        digest.update(b"%s %d " % (path.encode(), len(data)) + data)
    told = {
        "VERSION": digest.hexdigest()[:16],
        "SHELL": [*sorted(shell), *(f"{home}index.html" for home in homes)],
        "HOMES": homes,
    }
    return "".join([*(f"const {name} = {json.dumps(value)};\n" for name, value in told.items()), source]).encode()


def _manifest(language: str, root: str) -> bytes:
    """It names no id: that would be the same for all galleries of one host, whatever the folder that they lie in."""
    icons = [(f"assets/{name}-{px}.png", px, purpose) for name, purpose in _PURPOSES.items() for px in _SIZES]
    manifest = {
        "name": "Spreadwright",
        "short_name": "Spreadwright",
        "description": _("Album layouts that use whole sheets of paper up, with every cut and every distance."),
        "lang": language,
        "start_url": "./index.html",
        "scope": root or "./",
        "display": "standalone",
        "background_color": _PAPER,
        "theme_color": _PAPER,
        "icons": [
            {"src": root + path, "sizes": f"{px}x{px}", "type": "image/png", "purpose": purpose}
            for path, px, purpose in icons
        ],
    }
    return json.dumps(manifest, ensure_ascii=False, indent=2).encode() + b"\n"


_PURPOSES = {"icon": "any", "icon-mask": "maskable"}


def _icons() -> dict[str, bytes]:
    whole = (shipped.folder("site") / "theme/assets/icon.svg").read_text(encoding="utf-8")
    drawn = {"icon": whole, "icon-mask": _masked(whole)}
    return {f"assets/{name}-{px}.png": as_png(svg.encode(), px) for name, svg in drawn.items() for px in _SIZES}


def _masked(icon: str) -> str:
    """The icon with a margin that may be cut off, in the colour of its ground."""
    left, top, width, height = (float(each) for each in re.findall(r'viewBox="([^"]+)"', icon)[0].split())
    inner = icon[icon.index(">") + 1 : icon.rindex("</svg>")]
    move = f"translate({width * (1 - _SHARE) / 2} {height * (1 - _SHARE) / 2}) scale({_SHARE})"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{left} {top} {width} {height}">'
        f'<rect width="{width}" height="{height}" fill="{_INK}"/><g transform="{move}">{inner}</g></svg>'
    )

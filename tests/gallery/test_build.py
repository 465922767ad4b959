import json
import re
from errno import ENOSPC
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from builder import SOUND, spoilt
from gallery.built import HOSTILE, SINGLE, Html, dead_ends, fingerprints, pages, write_collection
from spreadwright import shipped
from spreadwright.errors import CannotDraw, InvalidDocument
from spreadwright.gallery import CannotWrite, NotAGallery
from spreadwright.gallery.work.folder import MARKER
from spreadwright.store import Collection


def text_of(site, path):
    return (site / path).read_text(encoding="utf-8")


def seen_on(site, path):
    """What people read on a page: without what it tells search engines and scripts."""
    return re.sub(r"<script.*?</script>", "", text_of(site, path), flags=re.DOTALL)


def test_photos_are_told_in_the_unit_of_their_recipe_first(site):
    inches, metric = (seen_on(site, f"recipes/{name}/index.html") for name in ("window-seat", "one-page"))
    assert "The same in mm" in inches and "About the same in inches" not in inches
    assert "About the same in inches" in metric and "The same in mm" not in metric
    cells = re.findall(r'<td data-label="Trim the photo to"><span class="length">(.*?)</span></td>', metric)
    assert cells == ["282 × 290 mm"]


@pytest.mark.parametrize(("path", "length"), [("recipes/one-page", "10 mm"), ("paper-sets/kitchen", "300 × 300 mm")])
def test_lengths_of_a_summary_stay_on_one_line(site, path, length):
    assert f'of <span class="length">{length}</span>' in seen_on(site, f"{path}/index.html")


def test_every_recipe_and_paper_set_has_a_page(site, collection):
    expected = {f"recipes/{name}/index.html" for name in collection.recipes}
    expected |= {f"paper-sets/{name}/index.html" for name in collection.paper_sets}
    assert {name for name in expected if not (site / name).is_file()} == set()


def test_index_shows_every_recipe(site, collection):
    page = text_of(site, "index.html")
    assert all(
        f"{reading.model.title}</bdi></h2>" in page
        for name, reading in collection.recipes.items()
        if name != "one-page"
    )
    assert "recipes/one-page/index.html" in page


def test_a_page_of_its_own_shows_every_paper_set(site, collection):
    page = text_of(site, "paper-sets/index.html")
    assert page.count("<h2 ") == len(collection.paper_sets) > 1
    assert all(f'href="{name}/index.html"' in page for name in collection.paper_sets)
    assert all(
        'href="../index.html"' in text_of(site, f"paper-sets/{name}/index.html") for name in collection.paper_sets
    )


def test_no_link_is_a_dead_end(site):
    assert list(dead_ends(site)) == []


def test_nothing_is_loaded_from_elsewhere(site):
    loaded = [load for html in pages(site) for load in html.loads]
    assert [load for load in loaded if urlsplit(load).scheme not in ("", "data") or load.startswith("//")] == []
    styles = "".join(file.read_text() for file in site.rglob("*.css"))
    assert "//" not in styles.replace("/*", "") and "@import" not in styles


def test_only_licences_lead_elsewhere(site):
    links = {urlsplit(link) for html in pages(site) for link in html.links}
    assert {link.netloc for link in links if link.scheme} == {"creativecommons.org"}


def test_links_end_in_files(site):
    links = {urlsplit(link).path for html in pages(site) for link in html.links if not urlsplit(link).scheme}
    assert [link for link in links if link.endswith("/")] == []


def test_titles_stay_text(site):
    page = text_of(site, "recipes/one-page/index.html")
    html = Html(site / "recipes/one-page/index.html")
    assert "<script>alert" not in page and "em" not in html.tags and "i" not in html.tags
    assert "&lt;script&gt;alert(1)&lt;/script&gt; &amp; *stars* &#34;quoted&#34; {{ 7 * 7 }} wide" in page
    assert not [image for image in html.images if "onerror" in image]
    assert HOSTILE not in page


def test_every_picture_says_its_size_and_what_is_seen(site):
    images = [image for html in pages(site) for image in html.images]
    assert images and all(image.get("alt") is not None for image in images)
    assert all(image.get("width") and image.get("height") for image in images if "src" in image)


def test_headings_come_in_order(site):
    for html in pages(site):
        steps = zip(html.headings, html.headings[1:], strict=False)
        assert html.headings.count(1) == 1, html.page
        assert all(after <= before + 1 for before, after in steps), html.page


def test_ids_stand_once_on_a_page(site):
    assert [html.page for html in pages(site) if len(html.ids) != len(set(html.ids))] == []


def test_cautions_stand_before_the_first_step(site):
    page = seen_on(site, "recipes/window-seat/index.html")
    assert page.index("The blade is sharp") < page.index("Set the scale to")
    assert page.index("Lay all pieces out") < page.index("is the left page itself")


def test_caution_of_a_step_stands_before_it(site):
    page = seen_on(site, "recipes/one-page/index.html")
    caution = page.index("The strip that falls is only")
    assert page.index("<ol") < caution < page.index("Lay sheet 2")


def test_metric_recipe_is_told_in_millimetres(site):
    page = text_of(site, "recipes/one-page/index.html")
    assert "320 mm arm trimmer" in page.replace('<span class="length">', "").replace("</span>", "")
    assert '<span class="length">292 mm</span> for the part that stays' in page


def test_recipe_is_given_away_as_written(site, collection):
    given = (site / "downloads/window-seat/window-seat.json").read_bytes()
    assert given == collection.recipes["window-seat"].data


def test_downloads_say_their_size(site):
    page = text_of(site, "recipes/window-seat/index.html")
    size = (site / "downloads/window-seat/window-seat-placement.pdf").stat().st_size
    assert f"{-(-size // 1000)} kB" in page


def test_same_collection_gives_same_bytes(site, collection, tmp_path, make):
    make(Collection(collection.folder), tmp_path / "again")
    assert fingerprints(tmp_path / "again") == fingerprints(site)


def test_sources_stay_as_they_are(collection, tmp_path, make):
    before = fingerprints(shipped.folder("site"))
    make(collection, tmp_path / "gallery")
    assert fingerprints(shipped.folder("site")) == before


def test_progress_counts_the_recipes(collection, tmp_path, make):
    told = []
    make(collection, tmp_path / "gallery", progress=lambda *step: told.append(step))
    assert [(done, total) for done, total, _ in told] == [(1, 2), (2, 2)]


def test_older_gallery_is_replaced_whole(collection, tmp_path, make):
    output = tmp_path / "gallery"
    make(collection, output)
    (output / "recipes" / "gone").mkdir()
    make(collection, output)
    assert not (output / "recipes" / "gone").exists()
    assert [entry.name for entry in tmp_path.iterdir()] == ["gallery"]


@pytest.mark.parametrize("stop", [KeyboardInterrupt, CannotDraw("The picture")])
def test_stopped_build_leaves_the_old_gallery(site, collection, tmp_path, stop, make):
    output = tmp_path / "gallery"
    make(collection, output)

    def stopped(*_):
        raise stop

    with pytest.raises((KeyboardInterrupt, CannotDraw)):
        make(collection, output, progress=stopped)
    assert fingerprints(output) == fingerprints(site)
    assert [entry.name for entry in tmp_path.iterdir()] == ["gallery"]


def test_faulty_recipe_is_not_published(tmp_path, make):
    folder = write_collection(tmp_path / "collection")
    (folder / "faulty.json").write_bytes(spoilt(lambda recipe: recipe["placements"].pop()))
    with pytest.raises(InvalidDocument):
        make(Collection(folder), tmp_path / "gallery")
    assert not (tmp_path / "gallery").exists()


def test_folder_that_only_looks_like_a_gallery_stays(collection, tmp_path, make):
    (tmp_path / "assets").mkdir()
    (tmp_path / "assets" / "gallery.css").write_text("x")
    (tmp_path / "thesis.txt").write_text("precious")
    before = fingerprints(tmp_path)
    with pytest.raises(NotAGallery, match=r"“assets/gallery\.css” in .* is not part of a gallery"):
        make(collection, tmp_path)
    assert fingerprints(tmp_path) == before


@pytest.mark.parametrize("own", ["note.txt", "assets/note.txt", "recipes/window-seat/.git/HEAD", "zz/note"])
def test_what_somebody_put_into_a_gallery_stays(collection, tmp_path, own, make):
    make(collection, tmp_path / "gallery")
    note = tmp_path / "gallery" / own
    note.parent.mkdir(parents=True, exist_ok=True)
    note.write_text("precious")
    with pytest.raises(NotAGallery) as refused:
        make(collection, tmp_path / "gallery")
    assert refused.value.stranger == own and note.read_text() == "precious"


def test_what_somebody_puts_there_during_a_build_stays(collection, tmp_path, make):
    make(collection, tmp_path / "gallery")
    note = tmp_path / "gallery" / "note.txt"
    with pytest.raises(NotAGallery, match=r"“note\.txt”"):
        make(collection, tmp_path / "gallery", progress=lambda *_: note.write_text("precious"))
    assert note.read_text() == "precious" and [entry.name for entry in tmp_path.iterdir()] == ["gallery"]


def test_links_are_somebodys_own_and_not_followed(collection, tmp_path, make):
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "thesis.txt").write_text("precious")
    make(collection, tmp_path / "gallery")
    (tmp_path / "gallery" / "link").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(NotAGallery, match="“link”"):
        make(collection, tmp_path / "gallery")
    (tmp_path / "gallery" / "link").unlink()
    (tmp_path / "gallery" / "index.html").unlink()
    (tmp_path / "gallery" / "index.html").symlink_to(tmp_path / "elsewhere" / "thesis.txt")
    with pytest.raises(NotAGallery, match=r"“index\.html”"):
        make(collection, tmp_path / "gallery")
    assert (tmp_path / "elsewhere" / "thesis.txt").read_text() == "precious"


def test_link_to_a_gallery_stays_a_link(site, collection, tmp_path, make):
    (tmp_path / "shown").symlink_to(tmp_path / "gallery")
    for _ in range(2):
        make(collection, tmp_path / "shown")
        assert (tmp_path / "shown").is_symlink() and fingerprints(tmp_path / "gallery") == fingerprints(site)


def test_empty_folders_without_a_gallery_stay(collection, tmp_path, make):
    (tmp_path / "plans").mkdir()
    with pytest.raises(NotAGallery, match="“plans”"):
        make(collection, tmp_path)


@pytest.mark.parametrize("text", ["", "{}", "[[", "7", "[" * 100_000])
def test_faulty_marker_is_no_marker(collection, tmp_path, text, make):
    make(collection, tmp_path / "gallery")
    (tmp_path / "gallery" / MARKER).write_text(text)
    with pytest.raises(NotAGallery):
        make(collection, tmp_path / "gallery")


def test_marker_lists_every_file_in_order(site):
    listed = json.loads((site / MARKER).read_text())
    files = {file.relative_to(site).as_posix() for file in site.rglob("*") if file.is_file()}
    assert set(listed) == files - {MARKER} and len(listed) == len(set(listed))


@pytest.mark.parametrize("below", ["a-file/gallery", "a-file/deep/gallery"])
def test_place_that_cannot_be_written_is_named_in_one_sentence(collection, tmp_path, below, make):
    (tmp_path / "a-file").write_text("")
    with pytest.raises(CannotWrite) as refused:
        make(collection, tmp_path / below)
    assert str(refused.value).startswith(f"The gallery cannot be written to {tmp_path / below}: ")
    assert isinstance(refused.value.__cause__, OSError)


@pytest.mark.parametrize("step", ["mkdir", "rename", "write_bytes", "write_text"])
def test_full_disk_leaves_the_old_gallery(site, collection, tmp_path, monkeypatch, step, make):
    make(collection, tmp_path / "gallery")

    def full(*_, **__):
        raise OSError(ENOSPC, "No space left on device")

    with monkeypatch.context() as patch, pytest.raises(CannotWrite, match="No space left on device"):
        patch.setattr(Path, step, full)
        make(collection, tmp_path / "gallery")
    assert fingerprints(tmp_path / "gallery") == fingerprints(site)
    assert [entry.name for entry in tmp_path.iterdir()] == ["gallery"]


def test_reader_of_the_progress_may_go(collection, tmp_path, make):
    def gone(*_):
        raise BrokenPipeError

    with pytest.raises(BrokenPipeError):
        make(collection, tmp_path / "gallery", progress=gone)
    assert list(tmp_path.iterdir()) == []


def test_nothing_of_a_template_is_left(site):
    texts = {file: file.read_bytes().replace(b"{{ 7 * 7 }}", b"") for file in site.rglob("*") if file.is_file()}
    texts = {file: data for file, data in texts.items() if file.suffix in (".html", ".css", ".svg", ".txt", ".xml")}
    assert [file for file, data in texts.items() if b"{%" in data or b"{{" in data] == []


def test_only_what_is_shown_or_given_away_is_there(site):
    top = {entry.name for entry in site.iterdir() if entry.suffix != ".html"}
    groups = {"authors", "downloads", "paper-sets", "pictures", "recipes", "tags"}
    assert top == {MARKER, "assets", "de", "fr", "manifest.webmanifest", "planning-time.svg", "sw.js", *groups}
    own = shipped.folder("site")
    pages = {f"{page.stem}.html" for page in (own / "docs").glob("*.md")} | {"404.html", "index.html", "offline.html"}
    assert {page.name for page in site.glob("*.html")} == pages


def test_folder_of_somebody_else_stays(collection, tmp_path, make):
    (tmp_path / "letters.txt").write_text("dear")
    with pytest.raises(NotAGallery):
        make(collection, tmp_path)
    assert [entry.name for entry in tmp_path.iterdir()] == ["letters.txt"]


def test_one_is_told_as_one(tmp_path, make):
    alone = {**SINGLE, "title": "Alone", "sheets": SINGLE["sheets"][:1], "placements": SINGLE["placements"][:1]}
    alone["photos"] = [{"on": "base", "border": "50"}]
    (tmp_path / "collection").mkdir()
    (tmp_path / "collection" / "alone.json").write_text(json.dumps(alone))
    make(Collection(tmp_path / "collection"), tmp_path / "gallery")
    page = text_of(tmp_path / "gallery", "recipes/alone/index.html")
    assert re.findall(r"\b1 (?:numbered )?(?:photos|pieces|sheets|pages|papers|cuts|remarks)\b", page) == []
    assert "And 1 photo, to be trimmed to the size <a" in page


def test_recipe_without_fitting_papers_still_has_a_page(tmp_path, make):
    (tmp_path / "collection").mkdir()
    (tmp_path / "collection" / "window-seat.json").write_text(json.dumps(SOUND))
    make(Collection(tmp_path / "collection"), tmp_path / "gallery")
    assert "No paper set of this collection" in text_of(tmp_path / "gallery", "recipes/window-seat/index.html")
    assert list(dead_ends(tmp_path / "gallery")) == []

from io import BytesIO, StringIO
from zipfile import ZipFile

import ezdxf
import pypdfium2
import pytest

SEAT = "/recipes/window-seat"


def test_photos_follow_border_and_bench(client):
    narrow = client.get(f"{SEAT}/photos").json["photos"]
    wide = client.get(f"{SEAT}/photos?border=wide").json["photos"]
    assert [each["wide"]["size"] for each in narrow] == [each["size"] for each in wide]
    metric = client.get(f"{SEAT}/photos.json?bench=bench-metric").json["photos"][1]
    assert metric["prints"][0]["title"] == "9 × 13 cm (3 1/2 × 5 in)"


@pytest.mark.parametrize("what", ["photos", "pieces"])
def test_tables_come_by_suffix_and_by_accept(client, what):
    by_suffix = client.get(f"{SEAT}/{what}.csv")
    by_accept = client.get(f"{SEAT}/{what}", headers={"Accept": "text/csv"})
    assert by_suffix.data == by_accept.data and by_suffix.mimetype == "text/csv" and b"mat-1" in by_suffix.data


def test_cut_paths_of_one_sheet_and_of_all(client):
    drawing = client.get(f"{SEAT}/cut-paths.dxf?sheet=4")
    assert drawing.mimetype == "image/vnd.dxf" and ezdxf.read(StringIO(drawing.text)).units == ezdxf.units.MM
    archive = client.get(f"{SEAT}/cut-paths.zip")
    assert archive.mimetype == "application/zip"
    assert ZipFile(BytesIO(archive.data)).read("sheet-4.dxf") == drawing.data
    assert client.get(f"{SEAT}/cut-paths.svg").mimetype == "image/svg+xml"


def test_unknown_sheet_is_not_found(client):
    assert client.get(f"{SEAT}/cut-paths.svg?sheet=9").status_code == 404


def test_templates_come_on_the_paper_that_is_asked_for(client):
    answer = client.get(f"{SEAT}/templates?page=letter")
    assert answer.mimetype == "application/pdf"
    assert pypdfium2.PdfDocument(answer.data).get_page_size(0) == pytest.approx((612, 792), abs=0.02)
    assert client.get(f"{SEAT}/templates?page=a5").status_code == 400


@pytest.mark.parametrize("what", ["photos", "pieces", "cut-paths", "templates"])
def test_recipe_with_errors_is_refused(client, what):
    answer = client.get(f"/recipes/broken/{what}")
    assert answer.status_code == 422 and answer.json["errors"]

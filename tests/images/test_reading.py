"""Pictures come in upright, opaque, in sRGB, small; and what is no such picture is refused."""

import struct
import zlib
from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageCms, ImageFile, ImageOps

from spreadwright.errors import UnreadablePicture
from spreadwright.images import pixel_count, read
from spreadwright.images import reading as door

pytestmark = pytest.mark.filterwarnings("ignore::UserWarning", "ignore::PIL.Image.DecompressionBombWarning")

RED, BLUE, WHITE = (255, 0, 0), (0, 0, 255), (255, 255, 255)


def saved(image: Image.Image, kind: str = "PNG", **options: object) -> bytes:
    file = BytesIO()
    image.save(file, kind, **options)
    return file.getvalue()


def slope(width: int = 60, height: int = 40) -> Image.Image:
    """Redder to the right, greener downward."""
    across, down = np.linspace(0, 255, width), np.linspace(0, 255, height)
    reds, greens = np.broadcast_to(across, (height, width)), np.broadcast_to(down[:, None], (height, width))
    return Image.fromarray(np.dstack([reds, greens, np.full((height, width), 90)]).astype(np.uint8))


def header(width: int, height: int, bits: int = 8, colour: int = 2) -> bytes:
    """A PNG that says how large it is and goes on with nothing much."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    told = struct.pack(">IIBBBBB", width, height, bits, colour, 0, 0, 0)
    rows = chunk(b"IDAT", zlib.compress(b"\0" * 100))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", told) + rows + chunk(b"IEND", b"")


def code_of(data: bytes) -> str:
    with pytest.raises(UnreadablePicture) as caught:
        read(data)
    assert caught.value.remedy
    return caught.value.code


def test_a_picture_without_loss_keeps_every_pixel():
    assert np.array_equal(read(saved(slope())).pixels, np.asarray(slope()))


def test_what_was_read_cannot_be_written_to():
    with pytest.raises(ValueError, match="read-only"):
        read(saved(slope())).pixels[0, 0] = 0


@pytest.mark.parametrize("kind", ["PNG", "WEBP", "TIFF", "JPEG"])
@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_orientation_is_turned_upright(orientation: int, kind: str):
    turned = {1: 1, 2: 2, 3: 3, 4: 4, 5: 5, 6: 8, 7: 7, 8: 6}[orientation]
    exif = Image.Exif()
    exif[0x0112] = turned
    slanted = slope()
    slanted.getexif()[0x0112] = turned
    lying = ImageOps.exif_transpose(slanted)
    exif[0x0112] = orientation
    options = {"lossless": True} if kind == "WEBP" else {"quality": 100, "subsampling": 0} if kind == "JPEG" else {}
    picture = read(saved(lying, kind, exif=exif, **options))
    assert (picture.width, picture.height) == (60, 40)
    assert np.abs(picture.pixels.astype(int) - np.asarray(slope())).max() <= 4


def test_the_profile_of_a_picture_counts():
    plain = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    swapped = plain.replace(b"rXYZ", b"----").replace(b"bXYZ", b"rXYZ").replace(b"----", b"bXYZ")
    picture = read(saved(Image.new("RGB", (8, 8), RED), icc_profile=swapped))
    assert np.abs(picture.pixels[4, 4].astype(int) - BLUE).max() <= 3


@pytest.mark.parametrize("profile", [b"no profile", b"\0" * 200])
def test_a_broken_profile_counts_for_nothing(profile: bytes):
    assert tuple(read(saved(Image.new("RGB", (8, 8), RED), icc_profile=profile)).pixels[4, 4]) == RED


def test_what_shows_through_becomes_white():
    image = Image.new("RGBA", (9, 3), (*RED, 0))
    image.paste((*RED, 255), (3, 0, 6, 3))
    image.paste((*RED, 128), (6, 0, 9, 3))
    row = [tuple(int(each) for each in pixel) for pixel in read(saved(image)).pixels[1]]
    assert (row[1], row[4], row[7]) == (WHITE, RED, (255, 127, 127))


def test_a_palette_with_a_clear_colour_is_flattened():
    image = Image.new("P", (4, 4), 0)
    image.putpalette([255, 0, 0, 0, 0, 255])
    assert tuple(read(saved(image, transparency=0)).pixels[0, 0]) == WHITE
    assert tuple(read(saved(image, "GIF")).pixels[0, 0]) == RED


def test_cmyk_comes_as_colour():
    cyan = read(saved(Image.new("CMYK", (8, 8), (255, 0, 0, 0)), "JPEG", quality=95)).pixels[4, 4]
    assert cyan[0] < 30 and cyan[1] > 200 and cyan[2] > 200


def test_sixteen_bits_keep_their_upper_half():
    grey = Image.fromarray(np.full((4, 4), 0x8123, dtype=np.uint16))
    assert tuple(read(saved(grey)).pixels[0, 0]) == (0x81,) * 3
    assert tuple(read(saved(grey, "TIFF")).pixels[0, 0]) == (0x81,) * 3
    assert read(header(2, 2, bits=16)).pixels.shape == (2, 2, 3)


@pytest.mark.parametrize("mode", ["1", "L", "LA", "F", "I"])
def test_pictures_without_colour_are_read(mode: str):
    pixels = read(saved(slope().convert("L").convert(mode), "TIFF")).pixels
    assert pixels.shape == (40, 60, 3) and pixels.max() > pixels.min()


def test_a_large_picture_becomes_small_and_keeps_its_size_in_mind():
    picture = read(saved(slope(3000, 2000), "JPEG", quality=95), longest=300)
    assert picture.pixels.shape == (200, 300, 3)
    assert (picture.width, picture.height) == (3000, 2000)
    there = np.asarray(slope(3000, 2000).resize((300, 200), Image.Resampling.BOX)).astype(int)
    assert np.abs(picture.pixels - there).mean() < 2


@pytest.mark.parametrize("mode", ["LA", "RGBA"])
def test_a_large_picture_that_shows_through_is_shrunk_as_a_small_one_would_be(mode: str):
    image = slope(1301, 907).convert(mode)
    image.putalpha(slope(1301, 907).getchannel("R"))
    white = Image.new(mode, image.size, WHITE if mode == "RGBA" else (255, 255))
    seen = np.asarray(Image.alpha_composite(white.convert("RGBA"), image.convert("RGBA")).convert("RGB"))
    there = np.asarray(Image.fromarray(seen).resize((144, 100), Image.Resampling.BOX)).astype(int)
    assert np.abs(read(saved(image), longest=144).pixels - there).mean() < 1.5


def test_a_line_stays_a_line():
    assert read(saved(Image.new("RGB", (4000, 1), RED)), longest=100).pixels.shape == (1, 100, 3)


@pytest.mark.parametrize("kind", ["GIF", "PNG", "WEBP", "TIFF"])
def test_what_moves_is_refused(kind: str):
    frames = [slope(), slope().rotate(180)]
    assert code_of(saved(frames[0], kind, save_all=True, append_images=frames[1:])) == "picture-moves"


def test_a_picture_for_two_eyes_is_its_first():
    both = saved(slope(), "MPO", save_all=True, append_images=[slope().rotate(180)], quality=95)
    assert read(both).pixels[0, 0].max() < 110


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF", "GIF"])
@pytest.mark.parametrize("share", [0.3, 0.7, 0.9])
def test_what_ends_too_early_is_refused(kind: str, share: float):
    noise = np.random.default_rng(1).integers(0, 256, (90, 120, 3), dtype=np.uint8)
    whole = saved(Image.fromarray(noise), kind)
    assert code_of(whole[: int(len(whole) * share)]) in ("picture-damaged", "not-a-picture")


def test_no_other_library_can_open_the_door_to_damage(monkeypatch):
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)
    assert code_of(saved(slope(300, 200), "JPEG")[:2000]) == "picture-damaged"


@pytest.mark.parametrize("size", [(50_000, 50_000), (9_000, 9_000), (1, 2_000_000_000), (12_000, 12_000)])
def test_what_says_that_it_is_huge_is_refused_by_its_header(size: tuple[int, int]):
    assert code_of(header(*size)) == "picture-too-large"


@pytest.mark.parametrize(
    ("data", "pixels"),
    [
        (header(8000, 5000), 40_000_000),
        (saved(slope(30, 20), "JPEG")[:700], 600),
        (header(50_000, 50_000), 0),
        (b"text", 0),
        (b"", 0),
    ],
)
def test_pixels_are_counted_by_the_header_alone(data: bytes, pixels: int):
    assert pixel_count(data) == pixels


@pytest.mark.parametrize(
    "data", [b"", b"GIF89a", b"<svg/>", b"%PDF-1.7", b"\xff\xd8\xff", b"BM" + b"\0" * 60, b"\0" * 999]
)
def test_what_is_no_picture_is_refused(data: bytes):
    assert code_of(data) in ("not-a-picture", "picture-damaged")


def test_an_empty_file_is_said_to_be_empty():
    with pytest.raises(UnreadablePicture, match="empty"):
        read(b"")


def test_a_file_that_is_too_heavy_is_refused():
    assert code_of(b"\0" * (door.MOST_BYTES + 1)) == "picture-too-large"


def test_a_jpeg_of_endless_passes_is_refused():
    assert code_of(saved(slope(), "JPEG") + b"\xff\xda" * 41) == "picture-damaged"


def test_bytes_changed_anywhere_never_break_the_door():
    random = np.random.default_rng(7)
    for kind in ("JPEG", "PNG", "WEBP", "TIFF", "GIF"):
        whole = np.frombuffer(saved(slope(), kind), dtype=np.uint8)
        for _ in range(60):
            harmed = whole.copy()
            harmed[random.integers(0, len(whole), 5)] = random.integers(0, 256, 5)
            try:
                assert read(harmed.tobytes()).pixels.ndim == 3
            except UnreadablePicture as refusal:
                assert refusal.reason


def test_heif_needs_its_extra(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(door, "can_read_heif", lambda: False)
    with pytest.raises(UnreadablePicture, match="spreadwright\\[heif\\]"):
        read(b"\0\0\0\x18ftypheic" + b"\0" * 40)


def test_heif_is_read_with_its_extra():
    heif = pytest.importorskip("pillow_heif")
    file = BytesIO()
    heif.from_pillow(slope()).save(file, quality=-1)
    picture = read(file.getvalue(), longest=30)
    assert picture.pixels.shape == (20, 30, 3) and (picture.width, picture.height) == (60, 40)

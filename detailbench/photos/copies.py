"""Copies that leave the shop or go into a document: smaller, upright, sRGB, and without anything but the picture.

Place, camera, times, comments and thumbnails inside the original do not come along. The original is never changed.
"""

from __future__ import annotations

import io

from PIL import Image, ImageCms, ImageOps

from detailbench.photos.opening import photograph

SCREEN_QUALITY = 82
PRINT_QUALITY = 90
PRINT_LONGEST_PX = 1800


def small_copy(content: bytes, longest_px: int, *, name: str = "") -> bytes:
    """A JPEG with its longer side at most ``longest_px``; never enlarged. Raises BadFile."""
    return _jpeg(upright(content, longest_px, name=name), SCREEN_QUALITY)


def print_copy(content: bytes, longest_px: int = PRINT_LONGEST_PX, *, name: str = "") -> bytes:
    """A JPEG for a document: sRGB as the document's output intent, three channels, full colour resolution."""
    return _jpeg(upright(content, longest_px, name=name), PRINT_QUALITY, subsampling=0)


def upright(content: bytes, longest_px: int, *, name: str = "") -> Image.Image:
    """The picture alone, RGB in sRGB, turned as the camera noted, longer side at most ``longest_px``."""
    with photograph(content, name) as image:
        plain = _shrinkable(image)
        plain.thumbnail((longest_px, longest_px))  # before the turn: fewer pixels to turn, and JPEG unpacks small
        seen = _in_srgb(ImageOps.exif_transpose(plain))
        clean = Image.new("RGB", seen.size)  # a new picture has no notes that could slip through
        clean.paste(seen)
        return clean


def as_jpeg(image: Image.Image) -> bytes:
    """``image`` as a copy for a document."""
    return _jpeg(image, PRINT_QUALITY, subsampling=0)


def _jpeg(image: Image.Image, quality: int, subsampling: int = -1) -> bytes:
    out = io.BytesIO()
    image.save(out, "JPEG", quality=quality, optimize=True, subsampling=subsampling)
    return out.getvalue()


def _shrinkable(image: Image.Image) -> Image.Image:
    """The kinds of pixel that do not average well brought to ones that do: palettes, bits, 16-bit grey."""
    if image.mode in ("P", "PA", "LA", "1"):
        return image.convert("RGBA")
    if image.mode.startswith("I"):
        return image.convert("I").point(lambda value: value / 256).convert("L")
    return image


def _in_srgb(image: Image.Image) -> Image.Image:
    """RGB in sRGB. A picture without a profile is taken as sRGB, what EXIF and the web mean by none."""
    profile = image.info.get("icc_profile")
    if image.mode == "RGBA":
        image = Image.alpha_composite(Image.new("RGBA", image.size, "white"), image).convert("RGB")
    if profile:
        try:
            source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            converted = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
        except (ImageCms.PyCMSError, OSError, ValueError):
            converted = None  # a broken profile: the colours as they are beat no picture
        if converted is not None:
            return converted
    return image.convert("RGB")

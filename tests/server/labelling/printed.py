"""Puts labels on paper without a printer: each file drawn at the printer's dots by a library of its own."""

import io
import random
from functools import cache

import numpy
import pypdfium2
import resvg_py
from PIL import Image

from server.core.codes import labels
from server.core.codes.labels import address
from server.core.printing.face import QUIET_MODULES
from server.core.printing.layout import layout_of
from server.labelling.files import drawn
from server.labelling.symbol import face_for
from server.labelling.symbol import matrix
from tests.server.phone import BASE


def some_codes(count):
    """Codes as they are issued, the same at every run."""
    dice = random.Random(15415)
    return labels.codes_from([dice.randrange(256) for _ in range(count * 20)], count)


modules_of = cache(matrix)  # the same codes are printed in several ways


class Printed:
    """Codes in one layout, drawn as one format, as pictures of the printer's dots."""

    def __init__(self, codes, form, distance=20, base=BASE, **options):
        self.codes, self.base = codes, base
        self.layout = layout_of(options)
        self.face = face_for(self.layout, base, distance)
        self.files = list(drawn(codes, base, self.layout, self.face, form, "Labels"))
        self.pictures = self._pdf() if form == "pdf" else map(self._svg, self.files)

    def _pdf(self):
        with pypdfium2.PdfDocument(self.files[0]) as document:
            for index in range(len(document)):
                bitmap = document[index].render(scale=self.layout.dpi / 72, grayscale=True)
                yield numpy.array(bitmap.to_numpy())

    def _svg(self, file):
        png = resvg_py.svg_to_bytes(svg_string=file.decode(), dpi=self.layout.dpi)
        return numpy.asarray(Image.open(io.BytesIO(bytes(png))).convert("L"))

    def labels(self):
        """Yields each code with the picture of its label."""
        for start, picture in zip(range(0, len(self.codes), self.layout.labels), self.pictures, strict=True):
            assert picture.shape == (self.layout.page_height, self.layout.page_width)
            for place, code in enumerate(self.codes[start : start + self.layout.labels]):
                x, y = self.layout.corner(place)
                yield code, picture[y : y + self.layout.height, x : x + self.layout.width]

    def symbol_with_margin(self, label):
        """Cuts the symbol out of a label, with the margin that it must have."""
        across = self.face.choice.across
        return label[self.face.y : self.face.y + across, self.face.x : self.face.x + across]

    def wanted_dots(self, code):
        """The very dots that the symbol and its margin must be: 0 dark, 255 white."""
        modules = numpy.array(modules_of(address(code, self.base), self.face.choice.level))
        dark = numpy.pad(modules, QUIET_MODULES)
        return numpy.where(numpy.kron(dark, numpy.ones((self.face.choice.dots,) * 2)), 0, 255)

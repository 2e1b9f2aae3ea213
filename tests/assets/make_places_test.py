#!/usr/bin/env python3
"""Checks the makers of places and borders: their output, that it repeats, and what they refuse."""

import json
import pathlib
import struct
import subprocess
import sys
import tempfile
import unittest
import zipfile

ASSETS = pathlib.Path(__file__).resolve().parents[2] / "assets"
PLACES = ASSETS / "places" / "make_places.py"
BORDERS = ASSETS / "borders" / "make_borders.py"


def varint(value):
    encoded = bytearray()
    while value >= 0x80:
        encoded.append(value & 0x7F | 0x80)
        value >>= 7
    return bytes(encoded + bytes([value]))


def record(name, country, admin, longitude_step, latitude_step, population=None, kind="PPL"):
    """One place as the package writes it: steps in 1e-5 degree from the place before."""
    def zigzag(value):
        return value << 1 if value >= 0 else (-value << 1) - 1

    body = b""
    for field, text in ((2, name), (3, country), (7, kind), (8, admin)):
        data = text.encode("utf-8")
        body += varint(field << 3 | 2) + varint(len(data)) + data
    if population is not None:
        body += varint(9 << 3) + varint(population)
    body += varint(10 << 3) + varint(zigzag(longitude_step))
    body += varint(11 << 3) + varint(zigzag(latitude_step))
    return varint(len(body)) + body


def run(script, *arguments):
    return subprocess.run([sys.executable, "-B", script, *map(str, arguments)],
                          capture_output=True, text=True)


class Makers(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        self.folder = pathlib.Path(temporary.name)

    def make_places(self, data):
        source, archive = self.folder / "cities.pbf", self.folder / "places.zip"
        source.write_bytes(data)
        return run(PLACES, source, archive), archive

    def test_places(self):
        # 1.23456 E 50.00004 N, then 2 degrees west and 0.5 south of it.
        data = (record("Ålpha", "GB", "ENG", 123456, 5000004, 70000)
                + record("Beta", "GB", "ENG", -200000, -50000, kind="PPLX"))
        result, archive = self.make_places(data)
        self.assertEqual(result.returncode, 0, result.stderr)
        first = archive.read_bytes()
        self.make_places(data)
        self.assertEqual(archive.read_bytes(), first)
        with zipfile.ZipFile(archive) as packed:
            binary = packed.read("places.bin")
        self.assertEqual(binary[:8], b"MWPLACE1")
        self.assertEqual(struct.unpack_from("<I", binary, 8), (2,))
        at = 32 + 2 * 64800
        # The southern cell comes first: 49.50004 N, 0.76544 W.
        self.assertEqual(struct.unpack_from("<2H2H2I", binary, at),
                         (5000, 0, 2346, 2346, 0xFFFFFFFF, 70000))
        self.assertEqual(list(binary[at + 16 + 4:at + 16 + 6]), [1, 0])
        self.assertTrue(binary.endswith("Beta\nÅlpha\n".encode("utf-8")))
        self.assertIn("å\ta\n".encode("utf-8"), binary)

    def test_places_refused(self):
        for data, told in ((record("A", "GB", "E", 0, 0)[:-1], "cut off"),
                           (record("A", "QQ", "E", 0, 0), "countries.txt has no name for QQ")):
            result, archive = self.make_places(data)
            self.assertEqual(result.returncode, 1)
            self.assertIn(told, result.stderr)
            self.assertFalse(archive.exists())

    def make_borders(self, countries, states):
        paths = [self.folder / name for name in ("countries.json", "states.json", "borders.bin")]
        for path, arcs, collection in ((paths[0], countries, "countries"), (paths[1], states, "states")):
            geometries = [{"type": "Polygon", "arcs": [own]} for own in arcs[1]]
            path.write_text(json.dumps({
                "transform": {"scale": [0.001, 0.001], "translate": [0, 0]}, "arcs": arcs[0],
                "objects": {collection: {"geometries": geometries}}}))
        return run(BORDERS, *paths), paths[2]

    def test_borders(self):
        # Arc 0 separates two countries; arc 1 is a coast that the antimeridian cuts.
        countries = ([[[0, 0], [1000, 0]], [[179000, 0], [1000, 0], [0, 500], [-360000, 0], [900, 0]]],
                     [[0], [-1, 1]])
        states = ([[[-98000, 40000], [1000, 0]]], [[0], [-1]])
        result, path = self.make_borders(countries, states)
        self.assertEqual(result.returncode, 0, result.stderr)
        binary = path.read_bytes()
        self.assertEqual(binary[:8], b"MWBORDR1")
        rows, steps = struct.unpack_from("<II", binary, 8)
        self.assertEqual(len(binary), 16 + 22 * rows + steps)
        lines = [struct.unpack_from("<BBIiiii", binary, 16 + 22 * i) for i in range(rows)]
        self.assertEqual([line[0] for line in lines], [0, 0, 1, 2])
        self.assertEqual([line[3:] for line in lines],
                         [(179000, 0, 180000, 0), (-180000, 500, -179100, 500),
                          (0, 0, 1000, 0), (-98000, 40000, -97000, 40000)])
        result, again = self.make_borders(countries, states)
        self.assertEqual(again.read_bytes(), binary)

    def test_borders_refused(self):
        path = self.folder / "none.json"
        result = run(BORDERS, path, path, self.folder / "borders.bin")
        self.assertEqual(result.returncode, 1)
        self.assertNotIn("Traceback", result.stderr)


if __name__ == "__main__":
    unittest.main(verbosity=2)

#!/usr/bin/env python3
"""Checks the makers of places and borders: their output, that it repeats, and what they refuse."""

import importlib.util
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

spec = importlib.util.spec_from_file_location("make_borders", BORDERS)
borders = importlib.util.module_from_spec(spec)
spec.loader.exec_module(borders)


class Column(list):
    """A variable of a NetCDF file, as far as the maker looks."""

    def __getitem__(self, where):
        return Column(super().__getitem__(where)) if isinstance(where, slice) else super().__getitem__(where)

    def tolist(self):
        return list(self)


def shorelines_of(**columns):
    return {name: Column(values) for name, values in columns.items()}


def topology(collection, arcs, polygons):
    return {"transform": {"scale": [0.001, 0.001], "translate": [0, 0]}, "arcs": arcs,
            "objects": {collection: {"geometries": [{"type": "Polygon", "arcs": [own]}
                                                    for own in polygons]}}}


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

    def test_borders(self):
        # Arc 0 separates two countries; arc 1 is a coast that the antimeridian cuts.
        countries = topology("countries", [[[0, 0], [1000, 0]],
                                           [[179000, 0], [1000, 0], [0, 500], [-360000, 0], [900, 0]]],
                             [[0], [-1, 1]])
        states = topology("states", [[[-98000, 40000], [1000, 0]]], [[0], [-1]])
        # Four squares of 90 degrees in two rows. A lake, an island in it, a coast, a pond too small
        # and the Caspian Sea are in the last of the first row, 90 to 0 degrees west.
        shorelines = shorelines_of(
            Bin_size_in_minutes=[5400], N_bins_in_360_longitude_range=[4],
            Id_of_first_segment_in_a_bin=[0, 0, 0, 0, 5, 5, 5, 5],
            N_segments_in_a_bin=[0, 0, 0, 5, 0, 0, 0, 0],
            Embedded_npts_levels_exit_entry_for_a_segment=[
                2 << 9 | level << 6 | 36 for level in (2, 3, 1, 2, 2)],
            Id_of_first_point_in_a_segment=[0, 2, 4, 6, 8], Id_of_GSHHS_ID=[0, 1, 2, 3, 4],
            The_km_squared_area_of_polygons=[82000.0, -50.0, 1e6, 4.0, 397052.0],
            Relative_longitude_from_SW_corner_of_bin=[0, 65535 - 65536] + [0] * 8,
            Relative_latitude_from_SW_corner_of_bin=[0, 0, 0, 21845] + [0] * 6)
        lines = borders.all_lines(countries, states, shorelines)
        binary, points = borders.pack(lines)
        self.assertEqual(points, 12)
        self.assertEqual(binary[:8], b"MWBORDR1")
        rows, steps = struct.unpack_from("<II", binary, 8)
        self.assertEqual(len(binary), 16 + 22 * rows + steps)
        boxes = [struct.unpack_from("<BBIiiii", binary, 16 + 22 * i) for i in range(rows)]
        self.assertEqual([box[0] for box in boxes], [0, 0, 1, 2, 3, 3])
        self.assertEqual([box[3:] for box in boxes],
                         [(179000, 0, 180000, 0), (-180000, 500, -179100, 500),
                          (0, 0, 1000, 0), (-98000, 40000, -97000, 40000),
                          (-90000, 0, 0, 0), (-90000, 0, -90000, 30000)])
        self.assertEqual(borders.pack(borders.all_lines(countries, states, shorelines))[0], binary)

    def test_borders_refused(self):
        path = self.folder / "none.json"
        result = run(BORDERS, path, path, path, self.folder / "borders.bin")
        self.assertEqual(result.returncode, 1)
        self.assertNotIn("Traceback", result.stderr)


if __name__ == "__main__":
    unittest.main(verbosity=2)

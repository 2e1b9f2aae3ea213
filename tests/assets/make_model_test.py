#!/usr/bin/env python3
"""Checks the output of assets/magnetic/make_model.py and the tables that it refuses."""

import os
import pathlib
import struct
import subprocess
import sys
import tempfile
import unittest

MAGNETIC = pathlib.Path(__file__).resolve().parents[2] / "assets" / "magnetic"
TABLE = MAGNETIC / "wmm2025.txt"


REFERENCE = pathlib.Path(os.environ.get("MASTWISE_REFERENCE",
                                        MAGNETIC.parents[2] / "shared" / "reference"))
SKIPPED = 77


def table_lines():
    return TABLE.read_text(encoding="utf-8").splitlines()


def decode(binary):
    """{(n, m): [g, h]} of both blocks by GeographicLib's documented layout, without degree 0."""
    offset = 8
    blocks = []
    for _ in range(2):
        degree, order = struct.unpack_from("<2i", binary, offset)
        offset += 8
        block = {}
        for m in range(order + 1):
            for n in range(m, degree + 1):
                block[(n, m)] = [struct.unpack_from("<d", binary, offset)[0], 0.0]
                offset += 8
        for m in range(1, order + 1):
            for n in range(m, degree + 1):
                block[(n, m)][1] = struct.unpack_from("<d", binary, offset)[0]
                offset += 8
        assert block.pop((0, 0)) == [0.0, 0.0]
        blocks.append(block)
    return blocks, offset


class MakeModel(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        self.folder = pathlib.Path(temporary.name)

    def run_script(self, table):
        command = [sys.executable, MAGNETIC / "make_model.py", table, self.folder / "out"]
        return subprocess.run(command, capture_output=True, text=True, check=False)

    def refuse(self, lines, *said):
        table = self.folder / "table.txt"
        table.write_text("\n".join(lines) + "\n", encoding="utf-8")
        result = self.run_script(table)
        self.assertEqual(result.returncode, 1)
        self.assertNotIn("Traceback", result.stderr)
        for words in said:
            self.assertIn(words, result.stderr)
        self.assertFalse((self.folder / "out" / "wmm2025.wmm.cof").exists())

    def test_all_rows_come_back(self):
        result = self.run_script(TABLE)
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        binary = (self.folder / "out" / "wmm2025.wmm.cof").read_bytes()
        self.assertEqual(binary[:8], b"WMM2025A")
        (field, rates), end = decode(binary)
        self.assertEqual(end, len(binary))
        rows = [line.split() for line in table_lines() if not line.startswith("#")]
        self.assertEqual(len(rows), 90)
        self.assertEqual(len(field), 90)
        for n, m, g, h, g_rate, h_rate in rows:
            key = (int(n), int(m))
            for kept, table_value in zip(field[key] + rates[key], (g, h, g_rate, h_rate)):
                self.assertEqual(struct.pack("<d", kept), struct.pack("<d", float(table_value)))

    def test_description_names_the_same_model(self):
        self.run_script(TABLE)
        text = (self.folder / "out" / "wmm2025.wmm").read_text(encoding="ascii").splitlines()
        self.assertTrue(text[0].startswith("WMMF-"))
        entries = dict(line.split(None, 1) for line in text[1:])
        self.assertEqual(entries["ID"], "WMM2025A")
        self.assertEqual(float(entries["Epoch"]), 2025.0)
        self.assertEqual(float(entries["Radius"]), 6371200.0)

    def test_table_is_that_of_noaa(self):
        published = REFERENCE / "wmm" / "WMM2025.COF"
        if not published.exists():
            self.skipTest("no wmm/WMM2025.COF in the reference data")
        rows = [line.split() for line in published.read_text().splitlines()[1:91]]
        own = [line.split() for line in table_lines() if not line.startswith("#")]
        self.assertEqual([list(map(float, row)) for row in own],
                         [list(map(float, row)) for row in rows])

    def first_row(self, lines):
        return next(i for i, line in enumerate(lines) if not line.startswith("#"))

    def test_missing_row(self):
        lines = table_lines()
        gone = self.first_row(lines) + 4
        del lines[gone]
        self.refuse(lines, f"table.txt, line {gone + 1}:", "degree 2 order 2 belongs")

    def test_missing_last_row(self):
        lines = table_lines()[:-1]
        self.refuse(lines, f"line {len(lines) + 1}:", "ends before degree 12 order 12")

    def test_bad_number(self):
        for bad in ("-29x51.8", "nan", "inf", "1,5"):
            lines = table_lines()
            row = self.first_row(lines)
            lines[row] = lines[row].replace("-29351.8", bad)
            self.refuse(lines, f"line {row + 1}:", f"'{bad}' is not a number")

    def test_wrong_degree(self):
        lines = table_lines()
        row = self.first_row(lines) + 2
        lines[row] = " 3" + lines[row][2:]
        self.refuse(lines, f"line {row + 1}:", "degree 3 order 0 where degree 2 order 0 belongs")

    def test_degree_is_no_number(self):
        lines = table_lines()
        row = self.first_row(lines)
        lines[row] = "1.0" + lines[row][2:]
        self.refuse(lines, f"line {row + 1}:", "not whole numbers")

    def test_missing_column(self):
        lines = table_lines()
        row = self.first_row(lines) + 1
        lines[row] = " ".join(lines[row].split()[:5])
        self.refuse(lines, f"line {row + 1}:", "5 columns instead of 6")

    def test_extra_row(self):
        lines = table_lines() + ["13 0 0.0 0.0 0.0 0.0"]
        self.refuse(lines, f"line {len(lines)}:", "after the last one")

    def test_h_of_order_zero(self):
        lines = table_lines()
        row = self.first_row(lines)
        lines[row] = "1 0 -29351.8 5.0 12.0 0.0"
        self.refuse(lines, f"line {row + 1}:", "h of order 0 must be 0")

    def test_no_table(self):
        result = self.run_script(self.folder / "none.txt")
        self.assertEqual(result.returncode, 1)
        self.assertIn("none.txt", result.stderr)
        self.assertNotIn("Traceback", result.stderr)


if __name__ == "__main__":
    outcome = unittest.main(exit=False, verbosity=2).result
    sys.exit(1 if not outcome.wasSuccessful() else SKIPPED if outcome.skipped else 0)

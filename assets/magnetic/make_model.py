#!/usr/bin/env python3
"""Turns the table of a magnetic model's coefficients into the files that GeographicLib reads.

    make_model.py TABLE FOLDER

writes FOLDER/wmm2025.wmm (text: what the model is) and FOLDER/wmm2025.wmm.cof (binary: its
coefficients). A table with a missing row, a bad number or a wrong degree is refused with its line
number on stderr and exit code 1; nothing is written then.
"""

import math
import pathlib
import struct
import sys

DEGREE = 12
IDENTITY = b"WMM2025A"

# Radius in meters: the geomagnetic reference radius. Times in years: from the release date to the
# end of 2029. Heights in meters: from 1 km below the ellipsoid to 850 km above it.
# Source: the World Magnetic Model's report for 2025-2030 (validity, radius); the keys and the
# binary layout: GeographicLib's documentation, "The format of the magnetic model files".
DESCRIPTION = f"""WMMF-2
Name            wmm2025
Description     World Magnetic Model 2025
Publisher       NOAA National Centers for Environmental Information, British Geological Survey
ReleaseDate     2024-11-13
Radius          6371200
NumModels       1
NumConstants    0
Epoch           2025
DeltaEpoch      1
MinTime         2024.8661202185792
MaxTime         2030
MinHeight       -1000
MaxHeight       850000
Normalization   schmidt
Type            linear
ByteOrder       little
ID              {IDENTITY.decode()}
"""


class TableError(Exception):
    """A fault of the table, for display."""


def expected_order():
    """Every (degree, order) of the table, in the order of its rows."""
    return [(n, m) for n in range(1, DEGREE + 1) for m in range(n + 1)]


def parse_row(fields, where):
    if len(fields) != 6:
        raise TableError(f"{where}: {len(fields)} columns instead of 6 "
                         "(n, m, g, h, change of g, change of h)")
    try:
        degree, order = int(fields[0]), int(fields[1])
    except ValueError:
        raise TableError(f"{where}: degree '{fields[0]}' and order '{fields[1]}' are not "
                         "whole numbers")
    values = []
    for field in fields[2:]:
        try:
            value = float(field)
        except ValueError:
            value = math.nan
        if not math.isfinite(value):
            raise TableError(f"{where}: '{field}' is not a number")
        values.append(value)
    return (degree, order), values


def read_table(path):
    """The table's rows: {(degree, order): [g, h, change of g, change of h]}."""
    rows = {}
    awaited = expected_order()
    number = 0
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        fields = line.split("#")[0].split()
        if not fields:
            continue
        where = f"{path.name}, line {number}"
        key, values = parse_row(fields, where)
        if len(rows) == len(awaited):
            raise TableError(f"{where}: a row after the last one of degree {DEGREE}")
        if key != awaited[len(rows)]:
            degree, order = awaited[len(rows)]
            raise TableError(f"{where}: degree {key[0]} order {key[1]} where degree {degree} "
                             f"order {order} belongs")
        if key[1] == 0 and (values[1] != 0 or values[3] != 0):
            raise TableError(f"{where}: h of order 0 must be 0")
        rows[key] = values
    if len(rows) != len(awaited):
        degree, order = awaited[len(rows)]
        raise TableError(f"{path.name}, line {number + 1}: the table ends before degree {degree} "
                         f"order {order}")
    return rows


def coefficient_block(rows, g_column, h_column):
    """One set of coefficients: sizes, then C (with degree 0) and S, order by order, as doubles."""
    zero = [0.0] * 4
    cosines = [rows.get((n, m), zero)[g_column]
               for m in range(DEGREE + 1) for n in range(m, DEGREE + 1)]
    sines = [rows[(n, m)][h_column] for m in range(1, DEGREE + 1) for n in range(m, DEGREE + 1)]
    values = cosines + sines
    return struct.pack(f"<2i{len(values)}d", DEGREE, DEGREE, *values)


def main(arguments):
    if len(arguments) != 2:
        print("usage: make_model.py TABLE FOLDER", file=sys.stderr)
        return 1
    table, folder = map(pathlib.Path, arguments)
    try:
        rows = read_table(table)
        folder.mkdir(parents=True, exist_ok=True)
        (folder / "wmm2025.wmm").write_text(DESCRIPTION, encoding="ascii", newline="\n")
        (folder / "wmm2025.wmm.cof").write_bytes(
            IDENTITY + coefficient_block(rows, 0, 1) + coefficient_block(rows, 2, 3))
    except (TableError, OSError, UnicodeDecodeError) as error:
        print(f"make_model.py: {error}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

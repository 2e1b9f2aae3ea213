#!/usr/bin/env python3
"""Packs coasts, borders of countries and of states, and the shores of lakes into the file Mastwise reads.

    make_borders.py COUNTRIES-10M.JSON STATES-10M.JSON SHORELINES.NC BORDERS.BIN

COUNTRIES-10M.JSON is from the npm package world-atlas 2.0.2, STATES-10M.JSON from us-atlas 3.0.1,
both TopoJSON; SHORELINES.NC is binned_GSHHS_i.nc of the Debian package gmt-gshhg-low, read with
python3-netcdf4. README describes the layout of the result; the same input gives the same bytes.
"""

import collections
import json
import pathlib
import struct
import sys

MAGIC = b"MWBORDR1"
STEPS_PER_DEGREE = 1000
LONGEST_LINE = 96
COAST, COUNTRY, STATE, LAKE = range(4)
# Shores of lakes, of islands in lakes, and of ponds on these; 1 is the sea's, 5 and 6 Antarctica's.
INLAND_LEVELS = (2, 3, 4)
# The Caspian Sea, the only lake this large, is among the coasts.
LARGEST_LAKE_KM2 = 300_000
# Smaller ones are dots on the map.
SMALLEST_LAKE_KM2 = 5


def arcs_of(topology):
    """Every arc as a list of (longitude, latitude) in degrees."""
    (scale_x, scale_y), (origin_x, origin_y) = (topology["transform"]["scale"],
                                                topology["transform"]["translate"])
    for arc in topology["arcs"]:
        x = y = 0
        points = []
        for step_x, step_y in arc:
            x += step_x
            y += step_y
            points.append((x * scale_x + origin_x, y * scale_y + origin_y))
        yield points


def owners_of_arcs(topology, collection):
    """{arc: set of the geometries that have it on their edge}."""
    owners = collections.defaultdict(set)

    def visit(arcs, owner):
        if isinstance(arcs, int):
            owners[arcs if arcs >= 0 else ~arcs].add(owner)
        else:
            for part in arcs:
                visit(part, owner)

    for owner, geometry in enumerate(topology["objects"][collection]["geometries"]):
        visit(geometry.get("arcs", []), owner)
    return owners


def is_cut(a, b):
    """Whether a step only runs along the antimeridian, where the map was cut, or across it."""
    return abs(a[0] - b[0]) > 180 or (abs(a[0]) > 179.999 and abs(b[0]) > 179.999)


def split_where(points, left_out):
    """The runs of points between the omitted steps."""
    run = points[:1]
    for a, b in zip(points, points[1:]):
        if left_out(a, b):
            if len(run) > 1:
                yield run
            run = []
        run.append(b)
    if len(run) > 1:
        yield run


def lake_shores(shorelines):
    """Shores as lists of (longitude, latitude) in degrees, cut at the edges of the file's squares."""
    def column(name):
        return shorelines[name][:].tolist()

    square_deg = shorelines["Bin_size_in_minutes"][0] / 60
    columns = int(shorelines["N_bins_in_360_longitude_range"][0])
    first_segments = column("Id_of_first_segment_in_a_bin")
    segments_in = column("N_segments_in_a_bin")
    packed = column("Embedded_npts_levels_exit_entry_for_a_segment")
    first_points = column("Id_of_first_point_in_a_segment")
    polygons = column("Id_of_GSHHS_ID")
    areas_km2 = column("The_km_squared_area_of_polygons")
    # Stored with a sign, meant without.
    xs, ys = ([value % 65536 / 65535 * square_deg for value in column(name)]
              for name in ("Relative_longitude_from_SW_corner_of_bin",
                           "Relative_latitude_from_SW_corner_of_bin"))
    for square, (first, count) in enumerate(zip(first_segments, segments_in)):
        west = (square % columns - (columns if square % columns >= columns // 2 else 0)) * square_deg
        south = 90 - (square // columns + 1) * square_deg
        for segment in range(first, first + count):
            points, level = packed[segment] >> 9, packed[segment] >> 6 & 7
            area_km2 = abs(areas_km2[polygons[segment]])  # below zero for a wide river
            if level in INLAND_LEVELS and SMALLEST_LAKE_KM2 <= area_km2 < LARGEST_LAKE_KM2:
                here = range(first_points[segment], first_points[segment] + points)
                yield [(west + xs[i], south + ys[i]) for i in here]


def all_lines(countries, states, shorelines):
    """Every line as (kind, points in degrees)."""
    lines = {kind: [] for kind in range(4)}
    owners = owners_of_arcs(countries, "countries")
    for index, points in enumerate(arcs_of(countries)):
        kind = COAST if len(owners[index]) == 1 else COUNTRY
        lines[kind].extend(split_where(points, is_cut))
    owners = owners_of_arcs(states, "states")
    lines[STATE].extend(points for index, points in enumerate(arcs_of(states))
                        if len(owners[index]) > 1)
    lines[LAKE].extend(lake_shores(shorelines))
    return [(kind, points) for kind in range(4) for points in lines[kind]]


def in_steps(points):
    """Whole steps without repetitions in a row."""
    whole = []
    for x, y in points:
        point = (round(x * STEPS_PER_DEGREE), round(y * STEPS_PER_DEGREE))
        if not whole or whole[-1] != point:
            whole.append(point)
    return whole


def pieces(points):
    """Pieces short enough for tight boxes, each beginning where the last ended."""
    for first in range(0, len(points) - 1, LONGEST_LINE - 1):
        yield points[first:first + LONGEST_LINE]


def varint(value):
    value = value << 1 if value >= 0 else ~(value << 1)
    encoded = bytearray()
    while value >= 0x80:
        encoded.append(value & 0x7F | 0x80)
        value >>= 7
    encoded.append(value)
    return bytes(encoded)


def pack(lines):
    rows, body, points_count = [], bytearray(), 0
    for kind, points in lines:
        for piece in pieces(in_steps(points)):
            xs, ys = [x for x, _ in piece], [y for _, y in piece]
            rows.append(struct.pack("<BBIiiii", kind, len(piece), len(body), min(xs), min(ys),
                                    max(xs), max(ys)))
            x = y = 0
            for next_x, next_y in piece:
                body += varint(next_x - x) + varint(next_y - y)
                x, y = next_x, next_y
            points_count += len(piece)
    return MAGIC + struct.pack("<II", len(rows), len(body)) + b"".join(rows) + body, points_count


def main():
    try:
        countries, states = (json.loads(pathlib.Path(path).read_text(encoding="utf-8"))
                             for path in sys.argv[1:3])
        import netCDF4  # python3-netcdf4; the test of the lines above does without
        with netCDF4.Dataset(sys.argv[3]) as shorelines:
            shorelines.set_auto_mask(False)
            data, points = pack(all_lines(countries, states, shorelines))
    except (ImportError, OSError, ValueError, LookupError) as trouble:
        print(f"make_borders.py: {type(trouble).__name__}: {trouble}", file=sys.stderr)
        return 1
    pathlib.Path(sys.argv[4]).write_bytes(data)
    print(f"{points} points, {len(data)} bytes")
    return 0


if __name__ == "__main__":
    sys.exit(main())

#!/usr/bin/env python3
"""Packs coasts, borders of countries and of states, and lake shores into the file Mastwise reads.

    make_borders.py COUNTRIES-10M.JSON STATES-10M.JSON BORDERS.BIN

COUNTRIES-10M.JSON is from the npm package world-atlas 2.0.2, STATES-10M.JSON from us-atlas 3.0.1,
both TopoJSON. README describes the layout of the result; the same input gives the same bytes.
"""

import collections
import json
import math
import pathlib
import struct
import sys

MAGIC = b"MWBORDR1"
STEPS_PER_DEGREE = 1000
LONGEST_LINE = 96
COAST, COUNTRY, STATE, LAKE = range(4)
# The outer edge of the states counts as lake shore within this box and away from the border of the
# countries: no other outer edge is there. West, south, east, north.
GREAT_LAKES = (-92.5, 41.0, -75.8, 49.0)
AWAY_KM = 4.0


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


class NearLines:
    """Tests whether a point is near any of some lines, by their points sorted into small cells."""

    def __init__(self, lines):
        self.cells = collections.defaultdict(list)
        for line in lines:
            for a, b in zip(line, line[1:]):
                pieces = max(1, math.ceil(math.dist(a, b) / 0.01))
                for i in range(pieces + 1):
                    point = (a[0] + (b[0] - a[0]) * i / pieces, a[1] + (b[1] - a[1]) * i / pieces)
                    self.cells[math.floor(point[0] * 10), math.floor(point[1] * 10)].append(point)

    def within(self, point, distance_km):
        column, row = math.floor(point[0] * 10), math.floor(point[1] * 10)
        shrink = math.cos(math.radians(point[1]))
        return any(math.hypot((x - point[0]) * shrink, y - point[1]) * 111.2 < distance_km
                   for i in (-1, 0, 1) for j in (-1, 0, 1)
                   for x, y in self.cells.get((column + i, row + j), ()))


def lake_shores(edges, country_borders):
    west, south, east, north = GREAT_LAKES
    border = NearLines(country_borders)

    def off_the_lakes(a, b):
        x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
        return not (west < x < east and south < y < north) or border.within((x, y), AWAY_KM)

    for edge in edges:
        yield from split_where(edge, off_the_lakes)


def all_lines(countries, states):
    """Every line as (kind, points in degrees)."""
    lines = {kind: [] for kind in range(4)}
    owners = owners_of_arcs(countries, "countries")
    for index, points in enumerate(arcs_of(countries)):
        kind = COAST if len(owners[index]) == 1 else COUNTRY
        lines[kind].extend(split_where(points, is_cut))
    owners = owners_of_arcs(states, "states")
    edges = []
    for index, points in enumerate(arcs_of(states)):
        (lines[STATE] if len(owners[index]) > 1 else edges).append(points)
    lines[LAKE].extend(lake_shores(edges, lines[COUNTRY]))
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
        data, points = pack(all_lines(countries, states))
    except (OSError, ValueError, KeyError) as trouble:
        print(f"make_borders.py: {type(trouble).__name__}: {trouble}", file=sys.stderr)
        return 1
    pathlib.Path(sys.argv[3]).write_bytes(data)
    print(f"{points} points, {len(data)} bytes")
    return 0


if __name__ == "__main__":
    sys.exit(main())

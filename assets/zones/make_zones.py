#!/usr/bin/env python3
"""Packs the borders of the time zones into the file Mastwise reads.

    make_zones.py INDEX.JSON SHAPES.GEO.DAT ZONES.BIN

INDEX.JSON and SHAPES.GEO.DAT are data/timezones.geojson.index.json and .geo.dat of the npm
package geo-tz 8.1.9: a tree of quarters, and for each quarter with a border the shapes in it as
geobuf. README describes the layout of the result; the same input gives the same bytes.
"""

import json
import pathlib
import struct
import sys

import numpy

MAGIC = b"MWZONES1"
PER_DEGREE = 60
ROWS, COLUMNS = 180 * PER_DEGREE, 360 * PER_DEGREE
EDGE = 0.0001  # the tree covers the earth but for this many degrees at each edge
# Where two zones are claimed, the one by law.
PREFERRED = "Asia/Shanghai"


def varints(data):
    value = shift = 0
    for byte in data:
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            yield value
            value = shift = 0


def fields(data):
    """(field number, value) of a protocol buffer message; bytes for a field with a length."""
    at = 0

    def number():
        nonlocal at
        value = shift = 0
        while True:
            byte = data[at]
            at += 1
            value |= (byte & 0x7F) << shift
            shift += 7
            if byte < 0x80:
                return value

    while at < len(data):
        key = number()
        if key & 7 == 0:
            yield key >> 3, number()
        elif key & 7 == 2:
            length = number()
            yield key >> 3, data[at:at + length]
            at += length
        else:
            raise ValueError(f"wire type {key & 7}")


def rings_of(geometry, scale):
    """Every ring as an array of (longitude, latitude); the first point is not repeated."""
    kind, lengths, coordinates = 0, None, []
    for field, value in fields(geometry):
        if field == 1:
            kind = value
        elif field == 2:
            lengths = list(varints(value))
        elif field == 3:
            coordinates = numpy.fromiter(varints(value), dtype=numpy.uint64)
    steps = (coordinates >> 1).astype(numpy.int64) ^ -(coordinates & 1).astype(numpy.int64)
    steps = steps.reshape(-1, 2)
    if lengths is None:
        sizes = [len(steps)]
    elif kind == 4:  # a polygon: the sizes of its rings
        sizes = lengths
    elif kind == 5:  # several: their number, then for each its number of rings and their sizes
        sizes, at = [], 1
        for _ in range(lengths[0]):
            sizes += lengths[at + 1:at + 1 + lengths[at]]
            at += 1 + lengths[at]
    else:
        raise ValueError(f"geometry {kind}")
    first = 0
    for size in sizes:
        yield numpy.cumsum(steps[first:first + size], axis=0) / scale
        first += size


def shapes_of(data):
    """(zone, rings) for each shape of a quarter."""
    keys, scale = [], 1e6
    features = []
    for field, value in fields(data):
        if field == 1:
            keys.append(value.decode())
        elif field == 3:
            scale = 10.0 ** value
        elif field == 4:
            features += [feature for number, feature in fields(value) if number == 1]
    for feature in features:
        geometry, values, pairs = b"", [], []
        for field, value in fields(feature):
            if field == 1:
                geometry = value
            elif field == 13:
                values.append(next((text for number, text in fields(value) if number == 1), b""))
            elif field == 14:
                pairs = list(varints(value))
        named = {keys[key]: values[at] for key, at in zip(pairs[::2], pairs[1::2])}
        yield named["tzid"].decode(), list(rings_of(geometry, scale))


def cells(low, high, origin):
    """The first cell whose middle is at or above `low`, and the first at or above `high`."""
    return tuple(int(numpy.ceil((edge - origin) * PER_DEGREE - 0.5)) for edge in (low, high))


def paint(raster, box, rings, zone, keeps):
    """Sets the cells whose middle is in the shape, by the even-odd rule."""
    west, south, east, north = box
    first_column, end_column = cells(west, east, -180)
    for row in range(*cells(south, north, -90)):
        latitude = (row + 0.5) / PER_DEGREE - 90
        crossings = []
        for ring in rings:
            y, next_y = ring[:, 1], numpy.roll(ring[:, 1], -1)
            hit = numpy.nonzero((y <= latitude) != (next_y <= latitude))[0]
            if len(hit):
                x, next_x = ring[hit, 0], numpy.roll(ring[:, 0], -1)[hit]
                crossings += list(x + (latitude - y[hit]) / (next_y[hit] - y[hit]) * (next_x - x))
        crossings.sort()
        for begin, end in zip(crossings[::2], crossings[1::2]):
            a, b = cells(begin, end, -180)
            part = raster[row, max(a, first_column):min(b, end_column)]
            part[part != keeps] = zone


def draw(index, shapes):
    """The earth as an array of zone numbers, 0 where there is none."""
    raster = numpy.zeros((ROWS, COLUMNS), numpy.uint16)
    number = {name: i + 1 for i, name in enumerate(index["timezones"])}
    preferred = number[PREFERRED]

    def visit(node, box):
        west, south, east, north = box
        if isinstance(node, list):
            zone = preferred if preferred - 1 in node else node[0] + 1
            rows, columns = cells(south, north, -90), cells(west, east, -180)
            raster[slice(*rows), slice(*columns)] = zone
        elif "pos" in node:
            for name, rings in shapes_of(shapes[node["pos"]:node["pos"] + node["len"]]):
                paint(raster, box, rings, number[name], preferred)
        else:
            x, y = (west + east) / 2, (south + north) / 2
            quarters = {"a": (x, y, east, north), "b": (west, y, x, north),
                        "c": (west, south, x, y), "d": (x, south, east, y)}
            for letter, quarter in node.items():
                visit(node[letter], quarters[letter])

    visit(index["lookup"], (-180 + EDGE, -90 + EDGE, 180 - EDGE, 90 - EDGE))
    return raster


def pack(raster, names):
    used = sorted(set(numpy.unique(raster)) - {0})
    renumbered = numpy.zeros(len(names) + 1, numpy.uint16)
    renumbered[used] = range(1, len(used) + 1)
    text = b"".join(names[zone - 1].encode() + b"\n" for zone in used)
    starts, runs = [], []
    previous = None
    for row in renumbered[raster]:
        ends = numpy.append(numpy.nonzero(row[1:] != row[:-1])[0] + 1, COLUMNS)
        these = [(int(end), int(row[end - 1])) for end in ends]
        # A row like the one before shares its runs.
        starts.append(starts[-1] if these == previous else len(runs))
        if these != previous:
            runs += these
        previous = these
    return (MAGIC + struct.pack("<III", len(text), ROWS, len(runs)) + text +
            struct.pack(f"<{ROWS}I", *starts) +
            struct.pack(f"<{2 * len(runs)}H", *(number for run in runs for number in run))), runs


def main():
    try:
        index = json.loads(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
        shapes = pathlib.Path(sys.argv[2]).read_bytes()
        data, runs = pack(draw(index, shapes), index["timezones"])
    except (OSError, ValueError, KeyError) as trouble:
        print(f"make_zones.py: {type(trouble).__name__}: {trouble}", file=sys.stderr)
        return 1
    pathlib.Path(sys.argv[3]).write_bytes(data)
    print(f"{len(runs)} runs, {len(data)} bytes")
    return 0


if __name__ == "__main__":
    sys.exit(main())

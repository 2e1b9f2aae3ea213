#!/usr/bin/env python3
"""make_icon.py ICON PNG...: write the pictures, at most 256 x 256, as one Windows icon."""

import pathlib
import struct
import sys

HEADER, ENTRY = 6, 16


def main():
    pictures = [pathlib.Path(name).read_bytes() for name in sys.argv[2:]]
    entries, offset = b"", HEADER + ENTRY * len(pictures)
    for picture in pictures:
        width, height = struct.unpack(">II", picture[16:24])  # PNG's IHDR
        entries += struct.pack("<BBBBHHII", width % 256, height % 256, 0, 0, 1, 32, len(picture), offset)
        offset += len(picture)
    icon = struct.pack("<HHH", 0, 1, len(pictures)) + entries + b"".join(pictures)
    pathlib.Path(sys.argv[1]).write_bytes(icon)


if __name__ == "__main__":
    main()

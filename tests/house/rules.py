#!/usr/bin/env python3
"""rules.py ROOT: check the tree against the house rules in DEVELOPERS.md and print each breach."""

import csv
import pathlib
import re
import sys

SOURCES = ("*.cpp", "*.hpp")
SCRIPTS = ("*.py", "*.sh", "CMakeLists.txt")
LONGEST_FILE_LINES = 400
TOP_LEVEL = {
    ".ci", ".clang-format", ".clang-tidy", ".gitignore", "CMakeLists.txt", "DEVELOPERS.md",
    "LICENSE", "README.md", "app", "assets", "core", "platform", "tests",
}
NOT_OURS = {".git", "build"}

# Forbidden patterns in source lines, by folder, with the reason.
FORBIDDEN = [
    ("core", r'#include [<"](SDL|imgui)', "core draws nothing"),
    ("core", r'#include <(unistd\.h|sys/|fcntl\.h|poll\.h|termios\.h|netinet/|windows\.h)',
     "core must not use the system: that belongs in platform"),
    ("core", r"#include <(thread|mutex|shared_mutex|condition_variable|future|atomic)>",
     "core is a function of its arguments and must not start threads"),
    ("core", r"#include <(filesystem|fstream)>", "core must not open files: bytes come from platform"),
    ("core", r"#include <(iostream|print)>|\bfmt::print\b|\b(f?printf|f?puts|f?putc|putchar|fwrite)\(",
     "core prints nothing"),
    ("core", r"\b(steady_clock|system_clock|high_resolution_clock|Clock)::now\b|\btime\((0|NULL|nullptr)\)",
     "core reads no clock: the time is an argument"),
    ("core", r'#include "(app|platform|tests)/', "core knows neither app nor platform"),
    ("platform", r'#include "(app|tests)/', "platform does not know app"),
    ("app", r'#include "tests/', "the program does not know its tests"),
    ("app/words", r'#include "(app/(?!words/)|platform/)', "words are made from the facts of core"),
    ("tests", r'TEST_CASE\("[^"]*[;\[]', "ctest cuts such a name in two and runs neither half"),
    ("app/shared", r'#include ("(platform/|app/(?!(shared|words|look)/))|[<"](SDL|imgui))',
     "what all features see knows no feature, no window and no device"),
    ("", r"\b(TO" + r"DO|FIX" + r"ME)\b", "write open work as an issue, not a comment"),
]

# A room for each feature: state, actions, update, JSON, and what it draws in files named draw*.
ROOMS = ("here", "stations", "map", "path", "aim", "plan", "peak", "logbook", "ahead", "parking", "data",
         "keypad", "safety", "settings", "guide")


# How Mastwise does not write, and what to write. Quotes directly before a word make it data.
WORDING = [
    (r'(?<!")\b(?i:colour|centre|neighbour|licence|programme|behaviour|(kilo|centi|milli)?metre)s?\b',
     "write American English"),
    (r"\b(is|are|was|were) (taken in|given out|taken for)\b",
     "write imported, exported, read as"),
    (r"\bis no (number|such|gear|table|logbook|date|map|heading|station)\b", "write is not a"),
    (r"\b[Ww]hat of [a-z]+", "say which"),
    (r"\bthat which\b|\bis called so\b|\bthe taking in\b", "say it as a neighbor would"),
    (r"\b[Tt]his program\b", "write this app"),
]


def files(folder, patterns):
    return sorted(path for pattern in patterns for path in folder.rglob(pattern))


def forbidden_lines(root):
    for folder, pattern, reason in FORBIDDEN:
        folders = [folder] if folder else ["app", "assets", "core", "platform", "tests"]
        for path in (path for name in folders for path in files(root / name, SOURCES + SCRIPTS)):
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                if re.search(pattern, line):
                    yield f"{path.relative_to(root)}:{number}: {line.strip()}: {reason}"


def strange_rooms(root):
    """A feature sees itself and what all may see; only what it draws sees the screen."""
    for room in ROOMS:
        for path in files(root / "app" / room, SOURCES):
            draws = path.name.startswith("draw")
            may = f"shared|words|look|{room}" + ("|ui|touch" if draws else "")
            pattern = rf'#include (<SDL|<imgui|"SDL|"imgui|"platform/|"app/(?!({may})/))'
            if not draws:
                pattern += rf'|#include "app/{room}/draw'
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                if re.search(pattern, line):
                    yield (f"{path.relative_to(root)}:{number}: {line.strip()}: a feature knows "
                           "itself and app/shared")


def wording(root):
    paths = [path for name in ("app", "assets", "core", "platform", "tests")
             for path in files(root / name, SOURCES + SCRIPTS)]
    for path in paths + sorted(root.glob("*.md")):
        if path.parent.name == "house":
            continue
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            for pattern, advice in WORDING:
                if re.search(pattern, line):
                    yield f"{path.relative_to(root)}:{number}: {line.strip()}: {advice}"


def long_files(root):
    for folder in ("app", "assets", "core", "platform", "tests"):
        for path in files(root / folder, SOURCES + SCRIPTS):
            lines = len(path.read_text(encoding="utf-8").splitlines())
            if lines > LONGEST_FILE_LINES:
                yield f"{path.relative_to(root)}: {lines} lines: split it, {LONGEST_FILE_LINES} at most"


def arrows(root, top):
    """By folder of `top`: the folders that it includes, each with the first file that does."""
    found = {}
    for path in files(root / top, SOURCES):
        folder = path.relative_to(root / top).parts[0]
        for included in re.findall(rf'#include "{top}/([^/"]+)/', path.read_text(encoding="utf-8")):
            if included != folder and (root / top / folder).is_dir():
                found.setdefault(folder, {}).setdefault(included, path.relative_to(root))
    return found


def circles(root):
    for top in ("core", "app"):
        found = arrows(root, top)
        finished = set()

        def walk(folder, way):
            if folder in way:
                circle = way[way.index(folder):] + [folder]
                files_of = [str(found[a][b]) for a, b in zip(circle, circle[1:])]
                yield f"{top}: folders in a circle: {' -> '.join(circle)}: {', '.join(files_of)}"
            elif folder not in finished:
                for included in sorted(found.get(folder, {})):
                    yield from walk(included, way + [folder])
                finished.add(folder)

        for folder in sorted(found):
            yield from walk(folder, [])


def strangers(root):
    for path in sorted(root.iterdir()):
        if path.name not in TOP_LEVEL | NOT_OURS:
            yield f"{path.name}: not allowed at the top of the tree"
    for name in sorted(TOP_LEVEL):
        if not (root / name).exists():
            yield f"{name}: missing from the top of the tree"


def real_call_signs(root):
    tables = files(root / "assets" / "practice", ["*.csv"])
    if not tables:
        yield "assets/practice: no station table"
    for table in tables:
        lines = [line for line in table.read_text(encoding="utf-8").splitlines()
                 if not line.startswith("#")]
        for row in csv.DictReader(lines):
            if not (row.get("call_sign") or "").startswith("Q"):
                yield (f"{table.relative_to(root)}: call sign {row.get('call_sign')}: "
                       "an invented call sign begins with Q, unlike any real one")


def breaches(root):
    for rule in (forbidden_lines, strange_rooms, wording, long_files, circles, strangers, real_call_signs):
        yield from rule(root)


def main():
    found = list(breaches(pathlib.Path(sys.argv[1]).resolve()))
    print("\n".join(found) or "The house is in order.")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())

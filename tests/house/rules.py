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
     "core must not read the clock: the time is an argument"),
    ("core", r'#include "(app|platform|tests)/', "core must not include app or platform"),
    ("platform", r'#include "(app|tests)/', "platform must not include app"),
    ("app", r'#include "tests/', "app must not include tests"),
    ("app/screens", r'#include ("platform/|[<"]SDL)', "a screen draws from the model, not from a device"),
    ("tests", r'TEST_CASE\("[^"]*[;\[]', "ctest splits such a name and runs neither half"),
    ("app/model", r'#include ("(platform|app/(cli|paper|screens|service|shell|ui))/|[<"](SDL|imgui))',
     "the model must work without a window or a device"),
    ("", r"\b(TO" + r"DO|FIX" + r"ME)\b", "write open work as an issue, not a comment"),
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


def long_files(root):
    for folder in ("app", "assets", "core", "platform", "tests"):
        for path in files(root / folder, SOURCES + SCRIPTS):
            lines = len(path.read_text(encoding="utf-8").splitlines())
            if lines > LONGEST_FILE_LINES:
                yield f"{path.relative_to(root)}: {lines} lines: split it, {LONGEST_FILE_LINES} at most"


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
    for rule in (forbidden_lines, long_files, strangers, real_call_signs):
        yield from rule(root)


def main():
    found = list(breaches(pathlib.Path(sys.argv[1]).resolve()))
    print("\n".join(found) or "The house is in order.")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())

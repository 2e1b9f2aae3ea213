#!/usr/bin/env python3
"""Breaks each house rule in a temporary tree and checks that rules.py reports it."""

import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parents[1]
sys.path.insert(0, str(HERE))
import rules  # noqa: E402


# At least one breach of each line rule, by folder.
BREACHES = {
    "core": ["#include <SDL.h>", '#include "imgui.h"', "#include <imgui/imgui.h>",
             "#include <unistd.h>", "#include <sys/stat.h>", "#include <thread>",
             "#include <mutex>", "#include <filesystem>", "#include <fstream>",
             "#include <iostream>", 'printf("x");', "auto t = std::chrono::steady_clock::now();",
             "auto t = system_clock::now();", "const auto t = Clock::now();",
             "auto t = std::time(nullptr);", 'fmt::print("x");',
             '#include "platform/files.hpp"', '#include "app/words.hpp"'],
    "platform": ['#include "app/words.hpp"'],
    "app": ['#include "tests/support/pty.hpp"'],
    "app/words": ['#include "app/shared/shared.hpp"', '#include "platform/clock.hpp"'],
    "app/shared": ['#include "app/ui/ui.hpp"', '#include "platform/clock.hpp"'],
    "tests": ["// TO" + "DO: later", "// FIX" + "ME",
              "TEST_CASE(" + '"one; two") {', "TEST_CASE(" + '"within [0, 1)") {'],
    "assets": ["# TO" + "DO"],
}


# A breach of each rule about wording.
WORDS = ["// The col" + "our of the ring.", "// Stations are tak" + "en in whole.",
         "// A cell that is no num" + "ber.", "// What of the rest.", "// From th" + "at which is read.",
         "// This pro" + "gram reads tables."]


class HouseRules(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.root = pathlib.Path(folder.name) / "house"
        for name in rules.TOP_LEVEL:
            self.write(name + "/keep" if name in (".ci", "app", "assets", "core", "platform", "tests")
                       else name, "")
        shutil.copy(ROOT / ".clang-format", self.root)
        self.write("core/angles/turn.cpp", '#include "core/angles/turn.hpp"\n\n#include <cmath>\n')
        self.write("assets/practice/stations.csv", "# PRACTICE\ncall_sign,rf_channel\nQABC,7\n")

    def write(self, name, text):
        path = self.root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def found(self):
        return list(rules.breaches(self.root))

    def test_a_tree_in_order_has_no_breach(self):
        self.assertEqual(self.found(), [])

    def test_each_forbidden_line_is_found_with_its_file_and_number(self):
        for folder, several in BREACHES.items():
            for line in several:
                with self.subTest(folder=folder, line=line):
                    self.write(folder + "/breach.hpp", "#pragma once\n" + line + "\n")
                    found = self.found()
                    self.assertEqual(len(found), 1, found)
                    self.assertTrue(found[0].startswith(folder + "/breach.hpp:2: " + line), found)
                    (self.root / folder / "breach.hpp").unlink()

    def test_every_rule_about_lines_is_broken_there(self):
        lines = [line for several in BREACHES.values() for line in several]
        for _, pattern, reason in rules.FORBIDDEN:
            self.assertTrue(any(re.search(pattern, line) for line in lines), reason)

    def test_a_feature_that_looks_into_another_is_found(self):
        self.write("app/aim/update.cpp", '#include "app/aim/state.hpp"\n#include "app/shared/a.hpp"\n')
        self.write("app/aim/draw_dial.cpp", '#include "app/ui/dial.hpp"\n')
        self.assertEqual(self.found(), [])
        for name, line in (("update.hpp", '#include "app/peak/state.hpp"'),
                           ("update.hpp", '#include "app/session/model.hpp"'),
                           ("update.hpp", '#include "app/ui/ui.hpp"'),
                           ("update.hpp", '#include "app/aim/draw.hpp"'),
                           ("draw.hpp", '#include "app/session/model.hpp"'),
                           ("draw.hpp", '#include "platform/clock.hpp"'),
                           ("draw.hpp", "#include <SDL_events.h>")):
            with self.subTest(name=name, line=line):
                self.write("app/aim/" + name, line + "\n")
                found = self.found()
                self.assertEqual(len(found), 1, found)
                self.assertIn(f"app/aim/{name}:1: {line}", found[0])
                (self.root / "app/aim" / name).unlink()

    def test_each_breach_of_wording_is_found(self):
        self.write("README.md", "It says \"colour\" as an old table does.\n")
        self.assertEqual(self.found(), [])
        for line in WORDS:
            with self.subTest(line=line):
                self.write("core/angles/breach.hpp", "#pragma once\n" + line + "\n")
                found = self.found()
                self.assertEqual(len(found), 1, found)
                self.assertIn("core/angles/breach.hpp:2", found[0])
        for pattern, advice in rules.WORDING:
            self.assertTrue(any(re.search(pattern, line) for line in WORDS), advice)

    def test_what_core_may_not_do_others_may(self):
        self.write("platform/clock.cpp", "#include <unistd.h>\nauto t = steady_clock::now();\n")
        self.write("app/shell/window.cpp", '#include <SDL.h>\n#include "platform/clock.hpp"\n')
        self.assertEqual(self.found(), [])

    def test_a_file_has_400_lines_at_most(self):
        self.write("core/long.cpp", "\n" * 400)
        self.assertEqual(self.found(), [])
        self.write("core/long.cpp", "\n" * 401)
        self.assertIn("core/long.cpp: 401 lines", self.found()[0])

    def test_folders_that_include_each_other_are_found(self):
        self.write("core/geo/position.hpp", '#include "core/angles/bearing.hpp"\n')
        self.write("core/sky/sun.hpp", '#include "core/geo/position.hpp"\n')
        self.assertEqual(self.found(), [])
        self.write("core/angles/grid.hpp", '#include "core/sky/sun.hpp"\n')
        found = self.found()
        self.assertEqual(len(found), 1, found)
        self.assertIn("angles -> sky -> geo -> angles", found[0])
        self.assertIn("core/angles/grid.hpp", found[0])

    def test_a_stranger_and_a_gap_at_the_top_are_found(self):
        self.write("notes.txt", "")
        (self.root / "LICENSE").unlink()
        self.assertEqual(len(self.found()), 2)

    def test_a_call_sign_that_a_station_may_have_is_found(self):
        self.write("assets/practice/stations.csv", "# PRACTICE\ncall_sign,rf_channel\nQABC,7\nABCD,8\n")
        self.assertIn("call sign ABCD", self.found()[0])
        (self.root / "assets/practice/stations.csv").unlink()
        self.assertIn("no station table", self.found()[0])

    def test_a_source_out_of_format_is_found(self):
        self.write("core/angles/turn.cpp", "int  turn( ){return 1;}\n")
        done = subprocess.run(["sh", str(HERE / "format.sh"), str(self.root)], capture_output=True,
                              text=True, check=False)
        if done.returncode == 77:
            self.skipTest(done.stdout.strip())
        self.assertNotEqual(done.returncode, 0)
        self.assertIn("core/angles/turn.cpp", done.stderr)
        self.write("core/angles/turn.cpp", "int turn() {\n  return 1;\n}\n")
        done = subprocess.run(["sh", str(HERE / "format.sh"), str(self.root)], check=False)
        self.assertEqual(done.returncode, 0)


if __name__ == "__main__":
    unittest.main()

#!/usr/bin/env python3
"""skips_test.py TESTS: check that the test executable reports missing reference data as skipped."""

import os
import subprocess
import sys

WHOLE = "the field agrees with NOAA's 100 test values"
TYPED = "the field agrees with the report's 12 test values"


def run(*names):
    environment = dict(os.environ, MASTWISE_REFERENCE="/nonexistent")
    return subprocess.run([sys.argv[1], ",".join(f'"{name}"' for name in names)], text=True,
                          env=environment, stdout=subprocess.PIPE, check=False)


def check(holds, what):
    if not holds:
        sys.exit(what)


lone = run(WHOLE)
check(lone.returncode == 77, f"a lone test without its data returned {lone.returncode}, not 77")
check(f"SKIPPED {WHOLE}" in lone.stdout, "a skipped test is not named")
check(run(TYPED).returncode == 0, "a test that needs no data did not pass without it")
both = run(WHOLE, TYPED)
check(both.returncode == 0, f"one skipped test of two made the process return {both.returncode}")
check(f"1 of 2 tests skipped a check:\n  {WHOLE}\n" in both.stdout,
      "a process of two tests does not list the skipped one")

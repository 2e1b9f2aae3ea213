# Sourced: checks of a package for another machine or system. $foreign starts its program; $root, $work,
# fail and passed as in arm64.sh.

# Every word, and every figure to seven digits: the machines' mathematical functions differ beyond.
rounded() { sed -E 's/-?[0-9]+\.[0-9]+(e-?[0-9]+)?/\n&\n/g' | awk '/^-?[0-9]+\./ { printf "%.7g\n", $0; next } 1'; }
same_figures() {
  local verb words
  for verb in card survey plan "survey --json" "plan --json"; do
    read -ra words <<<"$verb"
    "$root/build/mastwise" "${words[@]}" 2>&1 | rounded >"$work/here"
    "$foreign" "${words[@]}" 2>&1 | rounded >"$work/there"
    [ "$(wc -l <"$work/here")" -gt 5 ] || fail "mastwise $verb says nothing here"
    diff "$work/here" "$work/there" >"$work/difference" ||
      fail "mastwise $verb says something else: $(head -5 "$work/difference")"
  done
  passed "the same figures"
}

# same_command_line [TAGS]: the command line's tests with these tags.
same_command_line() {
  local tags
  tags=$(cd "$root/tests/app/cli" && printf "[#%s]${1:-}," *_test.cpp | sed 's/\.cpp//g; s/,$//')
  MASTWISE_PROGRAM=$foreign "$root/build/mastwise_tests" -\# "$tags" >"$work/tests" ||
    fail "tests of the command line: $(tail -40 "$work/tests")"
  passed "the command line's tests: $(all_passed)"
}
# What Catch2 says when all tests passed. Given a filter that it cannot read, it runs other tests.
all_passed() {
  ! grep 'Invalid Filter' "$work/tests" || fail "no such tests"
  grep -o 'All tests passed.*' "$work/tests"
}

every_screen() {
  local screens screen count=0
  screens=$({ "$foreign" shot nowhere "$work/none.png" 2>&1 || true; } | sed -n 's/.*use one of //p' | tr -d ',')
  for screen in $screens; do
    [ "$screen" = table ] && continue
    "$foreign" shot "$screen" --size 1280x800 "$work/$screen.png" || fail "no picture of $screen"
    file "$work/$screen.png" | grep '1280 x 800' >/dev/null || fail "no picture of $screen"
    count=$((count + 1))
  done
  passed "$count screens"
}

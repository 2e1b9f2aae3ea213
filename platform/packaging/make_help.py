#!/usr/bin/env python3
"""make_help.py FOLDER COMMAND...: write the man page (mastwise.1) and the completion for bash
(mastwise.bash) into FOLDER, both from what COMMAND and each of its verbs print for --help."""

import os
import pathlib
import re
import subprocess
import sys

COLUMN = 34  # where the help's explanations begin; app/main.cpp sets it


class Help:
    """One --help: the summary, the usage, and rows (name, explanation) by section."""

    def __init__(self, text):
        lines = text.rstrip().split("\n")
        self.summary = lines[0]
        self.usage = lines[1].removeprefix("Usage: ")
        self.rows = {}
        section = None
        for line in lines[2:]:
            if re.fullmatch(r"[A-Z]\w+:", line):
                section = self.rows.setdefault(line[:-1], [])
            elif line.startswith(" " * COLUMN):
                name, explanation = section[-1]
                section[-1] = (name, (explanation + " " + line.strip()).strip())
            elif line.strip():
                section.append((line[:COLUMN].strip(), line[COLUMN:].strip())
                               if line[COLUMN - 1] == " " else (line.strip(), ""))

    def verbs(self):
        return [name for name, _ in self.rows.get("Subcommands", [])]

    def options(self):
        """By option: the values it takes, as a list of words; none for a flag, and for any other
        value an empty list."""
        found = {}
        for name, _ in self.rows.get("Options", []):
            words = name.split(" ")
            kind = next((word for word in words[1:] if word.isupper() or ":" in word), "")
            values = re.search(r"\{(.*)\}", kind)
            for option in words[0].split(","):
                found[option] = (values.group(1).split(",") if values else []) if kind else None
        return found

    def first_words(self):
        """What may come first, where the explanation is nothing but a list of such words."""
        for _, explanation in self.rows.get("Positionals", [])[:1]:
            if re.fullmatch(r"[a-z-]+(, [a-z-]+){2,}", explanation):
                return explanation.split(", ")
        return []


def ask(command, path):
    """The helps of a verb and of those below it, by path: (), ("card",), ("import", "stations")..."""
    # The program calls itself as it was called.
    if len(command) == 1:
        run = ["bash", "-c", 'program=$1; shift; exec -a mastwise "$program" "$@"', "-", command[0]]
    else:
        run = command[:-1] + ["-0", "mastwise", command[-1]]
    done = subprocess.run(run + list(path) + ["--help"], capture_output=True, text=True, check=True)
    helps = {path: Help(done.stdout)}
    for verb in helps[path].verbs():
        helps.update(ask(command, path + (verb,)))
    return helps


def roff(text):
    text = text.replace("\\", r"\e").replace("-", r"\-")
    return r"\&" + text if text[:1] in (".", "'") else text


def man_page(helps, version, day):
    lines = [f'.TH MASTWISE 1 "{day}" "{version}" "User Commands"', ".SH NAME",
             f"mastwise {roff('- ')}{roff(helps[()].summary)}", ".SH SYNOPSIS"]
    for path, one in helps.items():
        if not one.verbs() or path == ():
            lines += [".br", r"\fB" + roff(one.usage.split(" [")[0]) + r"\fR"
                      + roff(one.usage[len(one.usage.split(" [")[0]):])]
    lines += [".SH DESCRIPTION", "Without a command it opens the touch app."]

    def table(rows):
        out = []
        for name, explanation in rows:
            out += [".TP", r"\fB" + roff(name) + r"\fR", roff(explanation)]
        return out

    lines += [".SH OPTIONS"] + table(helps[()].rows["Options"])
    lines += [".SH COMMANDS"]
    for path, one in helps.items():
        if path == () or one.verbs():
            continue
        lines += [f'.SS "{roff("mastwise " + " ".join(path))}"', roff(one.summary) + "."]
        lines += table(one.rows.get("Positionals", []))
        lines += table(row for row in one.rows["Options"] if not row[0].startswith("-h,"))
    lines += [".SH EXIT STATUS",
              "0, 1 for a refusal with one line that says why, or 2 for wrong usage.",
              ".SH ENVIRONMENT", ".TP", r"\fBMASTWISE_DATA\fR",
              "The folder of your data, else the folder mastwise in XDG_DATA_HOME.",
              ".TP", r"\fBMASTWISE_ASSETS\fR", "The folder of fonts, magnetic model and practice area."]
    return "\n".join(lines) + "\n"


COMPLETION = """# Completion of mastwise for bash, made from its help.
_mastwise() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} path= at
  for ((at = 1; at < COMP_CWORD; at++)); do
    case "$path/${COMP_WORDS[at]}" in
      VERBS) path+=/${COMP_WORDS[at]} ;;
    esac
  done
  local options= words= values=-
  case "$path" in
CASES  esac
  COMPREPLY=()
  if [[ $values != - ]]; then
    [[ $values ]] && COMPREPLY=($(compgen -W "$values" -- "$word"))
    [[ $values ]] || compopt -o default
  elif [[ $word == -* ]]; then
    COMPREPLY=($(compgen -W "$options" -- "$word"))
  elif [[ $words ]]; then
    COMPREPLY=($(compgen -W "$words" -- "$word"))
    [[ ${COMPREPLY[*]} ]] || compopt -o default
  else
    compopt -o default
  fi
}
complete -F _mastwise mastwise
"""


def completion(helps):
    verbs = ["/" + "/".join(path) for path in helps if path]
    cases = ""
    for path, one in helps.items():
        options = one.options()
        words = one.verbs() or one.first_words()
        cases += f'    "{"".join("/" + part for part in path)}")\n'
        cases += f'      options="{" ".join(sorted(options))}" words="{" ".join(words)}"\n'
        taking = {}
        for option, values in options.items():
            if values is not None:
                taking.setdefault(" ".join(values), []).append(option)
        if taking:
            cases += "      case $before in\n"
            for values, names in sorted(taking.items()):
                cases += f'        {" | ".join(sorted(names))}) values="{values}" ;;\n'
            cases += "      esac\n"
        cases += "      ;;\n"
    return COMPLETION.replace("VERBS", " | ".join(verbs)).replace("CASES", cases)


def main():
    folder, command = pathlib.Path(sys.argv[1]), sys.argv[2:]
    helps = ask(command, ())
    version = subprocess.run(command + ["--version"], capture_output=True, text=True,
                             check=True).stdout.strip()
    seconds = os.environ.get("SOURCE_DATE_EPOCH", "0")
    day = subprocess.run(["date", "-u", "-d", f"@{seconds}", "+%Y-%m-%d"], capture_output=True,
                         text=True, check=True).stdout.strip()
    (folder / "mastwise.1").write_text(man_page(helps, version, day), encoding="utf-8")
    (folder / "mastwise.bash").write_text(completion(helps), encoding="utf-8")


if __name__ == "__main__":
    main()

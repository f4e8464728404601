#!/usr/bin/env python3
"""Changes one operator or number at a time in what computes and judges, and tells which changes no test notices.

  python3 tests/mutation/mutate.py --work DIRECTORY [--sources N] [--values N] [--seed N] [--minutes N]

Works on a copy of the tree in DIRECTORY (made there, kept for the next run), so that the checkout is not touched. A change
that does not compile is counted apart: the types caught it. Programs are run in the order below and the first failure ends
a mutant. Outputs held byte for byte (tests/golden) are left out, for they carry the fingerprint of the tables and would
notice any change without knowing what it means. Ends with the survivors, each with its place. Needs python3, cmake, ninja.
"""
import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import time

FOLDERS = ["loads", "demands", "resistances", "checks"]
RUN_OF_FOLDER = {"loads": ["unit_loads"], "demands": ["unit_demands"], "resistances": ["unit_resistances"],
                 "checks": ["unit_checks"]}
RUN_AFTER = ["boundaries", "verification", "plans", "trace"]
RUN_OF_TABLES = ["tables", "verification", "boundaries", "plans", "unit_checks", "unit_strength"]
SKIPPED = {"verification": ["~panel *", "~eight-sided*", "~*upright*", "~*CalculiX*", "~tree*"], "plans": ["~board*"]}
TEST_SECONDS = 240

OPERATORS = [(" + ", " - "), (" - ", " + "), (" * ", " / "), (" / ", " * "), (" < ", " >= "), (" > ", " <= "),
             (" <= ", " < "), (" >= ", " > "), (" && ", " || "), (" || ", " && "), ("std::min(", "std::max("),
             ("std::max(", "std::min("), (" == ", " != "), (" != ", " == ")]
NUMBER = re.compile(r"(?<![\w.\"])(\d+\.\d+(?:e-?\d+)?)(?![\w.\"])")


def code_of(line):
    """The line without comment and texts, as long as before."""
    blank = lambda m: '"' + " " * (len(m.group(0)) - 2) + '"'
    line = re.sub(r'"(?:[^"\\]|\\.)*"', blank, line)
    at = line.find("//")
    return line if at < 0 else line[:at] + " " * (len(line) - at)


def source_mutants(root):
    found = []
    for folder in FOLDERS:
        for name in sorted(os.listdir(f"{root}/src/{folder}")):
            if not name.endswith(".cpp"):
                continue
            path = f"src/{folder}/{name}"
            for number, line in enumerate(open(f"{root}/{path}"), 1):
                code = code_of(line.rstrip("\n"))
                if code.lstrip().startswith(("#", "template", "using")) or ".formula" in code or "within = " in code:
                    continue
                for old, new in OPERATORS:
                    for m in re.finditer(re.escape(old), code):
                        found.append((path, number, m.start(), old, new))
                for m in NUMBER.finditer(code):
                    if float(m.group(1)) != 0.0:
                        found.append((path, number, m.start(1), m.group(1), repr(float(m.group(1)) * 1.1)))
    return found


def value_mutants(root):
    found = []
    for folder, _, names in sorted(os.walk(f"{root}/tables")):
        for name in sorted(names):
            path = os.path.relpath(f"{folder}/{name}", root)
            for number, line in enumerate(open(f"{root}/{path}"), 1):
                m = re.search(r"\bvalue = (?:\"(-?\d+(?:\.\d+)?)|(-?\d+(?:\.\d+)?))", line)
                if not m:
                    continue
                group = 1 if m.group(1) else 2
                old = m.group(group)
                new = repr(round(float(old) * 1.1, 12)) if "." in old or float(old) % 10 else str(round(float(old) * 1.1))
                if float(new) != float(old):
                    found.append((path, number, m.start(group), old, new))
    return found


def run(command, cwd, seconds):
    try:
        done = subprocess.run(command, cwd=cwd, timeout=seconds, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        return done.returncode == 0
    except subprocess.TimeoutExpired:
        return False


def prepared_copy(root, work):
    os.makedirs(work, exist_ok=True)
    tree = f"{work}/tree"
    subprocess.run(["rsync", "-a", "--delete", "--exclude", "/build*", "--exclude", "/.git", f"{root}/", f"{tree}/"]
                   if shutil.which("rsync") else ["cp", "-a", f"{root}/.", tree], check=True)
    if not os.path.exists(f"{work}/build/build.ninja"):
        subprocess.run(["cmake", "-S", tree, "-B", f"{work}/build", "-G", "Ninja", "-DBUILD_TESTING=ON"], check=True,
                       stdout=subprocess.DEVNULL)
    return tree


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--work", required=True)
    parser.add_argument("--sources", type=int, default=250)
    parser.add_argument("--values", type=int, default=250)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=1e9)
    asked = parser.parse_args()
    root = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", ".."))
    tree, build = prepared_copy(root, os.path.abspath(asked.work)), os.path.abspath(asked.work) + "/build"
    programs = sorted({p for ps in RUN_OF_FOLDER.values() for p in ps} | set(RUN_AFTER) | set(RUN_OF_TABLES))
    print("building ...", flush=True)
    subprocess.run(["ninja", "-C", build] + programs, check=True, stdout=subprocess.DEVNULL)
    for program in programs:
        if not run([f"{build}/tests/{program}"] + SKIPPED.get(program, []), tree, TEST_SECONDS):
            raise SystemExit(f"{program} fails, or is too slow, without any change: nothing can be told")

    chance = random.Random(asked.seed)
    all_sources, all_values = source_mutants(tree), value_mutants(tree)
    mutants = [("source", m) for m in chance.sample(all_sources, min(asked.sources, len(all_sources)))]
    mutants += [("value", m) for m in chance.sample(all_values, min(asked.values, len(all_values)))]
    chance.shuffle(mutants)
    print(f"{len(all_sources)} places in sources, {len(all_values)} values in tables; {len(mutants)} chosen", flush=True)

    counts = {"caught": 0, "does not compile": 0, "survived": 0}
    survivors, started = [], time.time()
    for kind, (path, number, column, old, new) in mutants:
        if time.time() - started > asked.minutes * 60:
            break
        text = open(f"{tree}/{path}").read()
        lines = text.split("\n")
        line = lines[number - 1]
        lines[number - 1] = line[:column] + new + line[column + len(old):]
        open(f"{tree}/{path}", "w").write("\n".join(lines))
        try:
            order = RUN_OF_FOLDER[path.split("/")[1]] + RUN_AFTER if kind == "source" else RUN_OF_TABLES
            verdict = "survived"
            for program in order:
                if kind == "source" and not run(["ninja", "-C", build, program], tree, 600):
                    verdict = "does not compile"
                    break
                if not run([f"{build}/tests/{program}"] + SKIPPED.get(program, []), tree, TEST_SECONDS):
                    verdict = "caught"
                    break
        finally:
            open(f"{tree}/{path}", "w").write(text)
        counts[verdict] += 1
        told = f"{path}:{number}:{column + 1}: {old.strip()} -> {new.strip()}"
        print(f"{verdict:16} {told}", flush=True)
        if verdict == "survived":
            survivors.append(told + "      " + line.strip())
    judged = counts["caught"] + counts["survived"]
    print("\nSurvivors:")
    for each in survivors:
        print("  " + each)
    share = 100.0 * counts["caught"] / judged if judged else 0.0
    print(f"{counts['caught']} of {judged} caught ({share:.1f} %), {counts['does not compile']} did not compile")


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Changes one operator or number at a time in what computes and judges, and tells which changes no test notices.

  python3 tests/mutation/mutate.py --build BUILD --work DIRECTORY [--sources N] [--values N] [--seed N] [--jobs N]
                                   [--minutes N] [--folders NAME,NAME...] [--only REGEX] [--again survived]

BUILD is an up-to-date build of this checkout with its tests (-DBUILD_TESTING=ON). In DIRECTORY, which is kept for the next
run, lies a copy of src/{loads,demands,resistances,checks} with all chosen changes compiled in at once, each behind a
question that the environment variable FIRSTPICK_MUTANT answers (mutant.hpp); the test programs of BUILD are linked with it
(relinked.py). What does not compile is taken out and counted apart: the types caught it. Changes of tables/*.toml need
no compiler: the programs run in a folder whose tables are a copy. --folders takes some of the four: the choice in these
stays the same, the rest is not compiled and is as it was built (what the rest has of their headers is not changed).

Each test case is run once unchanged, to learn how long it takes and which changes it passes by. A change is then shown only
to the test cases that pass it by (a change of a table: to all of the programs TABLE_PROGRAMS), the shorter ones first; the
first failure, crash or time-out ends it. Test cases over --longest seconds, and those that are known to be slow, are left
for what survives the others: --again survived --longest 300. Seconds are those of the machine as it was: on one that is
busy, --longest must be larger. Outputs held byte for byte (tests/golden) take no part: they would notice a change without
knowing what it means.

Left out of the choice (places.py): indices and heads of counting loops, numbers with an exponent (tolerances of rounding).
Everything found stands in DIRECTORY/results.jsonl; a change that is in it is not run again, unless --again names its end.
"""
import argparse
import collections
import concurrent.futures
import hashlib
import json
import os
import re
import shutil
import subprocess
import tempfile
import threading
import time

import places
import relinked

SOURCE_PROGRAMS = ["unit_loads", "unit_resistances", "unit_demands", "unit_checks", "boundaries", "plans",
                   "verification", "trace", "laws"]
TABLE_PROGRAMS = ["unit_tables", "tables", "unit_strength", "boundaries", "unit_loads", "unit_resistances", "unit_checks",
                  "verification", "plans", "trace", "unit_demands"]
# Boards, audits, layouts and searches for a strength judge through checks that the other test cases reach sooner.
SKIPPED = re.compile(r"^board: |^an audit|^the audit|layout|needed strength|^need of|^what no strength mends")
# Meshes of panels against CalculiX, whole comparisons of rule sets: seconds each, taken with --longest 60 or more.
SLOW = re.compile(r"^panel |^slab on two ribs|^eight-sided|CalculiX|byte for byte|^the split of every pair|"
                  r"^all assumptions of|^without any one|^every entry of a rule set is needed|^without its value")


def sieve_errors(said, chosen):
    """The numbers of the changes that what the compiler said speaks of."""
    named = re.compile(r"\b(?:at|Left|At|flipped|inverse|tenth_more|one_more|least|greatest)<(\d+)|mutant::on\((\d+)\)")
    at_line = collections.defaultdict(list)
    for number, change in chosen.items():
        at_line[(change.path, change.line)].append(number)
    dropped, context, error = set(), [], None

    def judge():
        if error is None:
            return
        for lines in (error, context[:1], context, None):
            if lines is None:
                for path, line in re.findall(r"src/((?:%s)/\w+\.[ch]pp):(\d+)" % "|".join(places.FOLDERS),
                                             "\n".join(error + context)):
                    dropped.update(at_line[(f"src/{path}", int(line))])
                return
            found = {int(a or b) for a, b in named.findall("\n".join(lines))}
            if found:
                dropped.update(found)
                return

    in_context = False
    for line in said.split("\n"):
        if ": error: " in line:
            judge()
            error, in_context = [line], False
        elif re.match(r"\S*: (?:In |At global)", line):  # In function, In instantiation of
            judge()
            error, context, in_context = None, [line], True
        elif in_context:
            context.append(line)
        elif error is not None:
            error.append(line)
    judge()
    return dropped


class Tests:
    """The test cases of the programs, how long each takes and what it passes by."""

    def __init__(self, out, tree, longest, known_at):
        self.out, self.tree, self.longest, self.known_at, self.cases = out, tree, longest, known_at, {}

    def run(self, program, names, tree, environment, seconds):
        """True where all pass."""
        with tempfile.TemporaryDirectory() as scratch:
            with open(f"{scratch}/names", "w") as file:
                file.writelines(re.sub(r"([\\,\[\]\"])", r"\\\1", name) + "\n" for name in names)
            command = ["nice", "-n", "10", f"{self.out}/tests/{program}", "-a", "-f", f"{scratch}/names"]
            try:
                done = subprocess.run(command, cwd=tree, timeout=seconds, stdout=subprocess.DEVNULL,
                                      stderr=subprocess.DEVNULL, env={**os.environ, "TMPDIR": scratch, **environment})
                return "" if done.returncode == 0 else ("failed" if done.returncode > 0 else "crashed")
            except subprocess.TimeoutExpired:
                return "timed out"

    def learn(self, programs, jobs):
        """Runs every test case alone, unchanged. What a program passes by before any test case is passed by by all."""
        known_at = self.known_at
        known = json.load(open(known_at)) if os.path.exists(known_at) else {}
        lock = threading.Lock()
        wanted = []
        for program in programs:
            file = f"{self.out}/tests/{program}"
            stamp = hashlib.sha256(open(file, "rb").read()).hexdigest()
            if known.get(program, {}).get("stamp") != stamp:
                known[program] = {"stamp": stamp, "cases": {}}
            names = subprocess.run([file, "--list-test-names-only"], stdout=subprocess.PIPE, text=True,
                                   cwd=self.tree).stdout.split("\n")
            names = [n for n in names if n and not SKIPPED.search(n) and (self.longest >= 60.0 or not SLOW.search(n))]
            wanted += [(program, n) for n in names if n not in known[program]["cases"]]

        def one(job):
            program, name = job
            with tempfile.TemporaryDirectory() as scratch:
                began = time.time()
                end = self.run(program, [name], self.tree, {"FIRSTPICK_MUTANTS_REACHED": f"{scratch}/reached"}, 900)
                took = time.time() - began
                reached = [int(n) for n in open(f"{scratch}/reached")] if os.path.exists(f"{scratch}/reached") else []
            if end:
                print(f"left out, {end} without any change: {program}: {name}", flush=True)
            with lock:
                known[program]["cases"][name] = {"seconds": took, "reached": reached, "good": not end}

        with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
            for done, _ in enumerate(pool.map(one, wanted), 1):
                if done % 100 == 0:
                    print(f"  {done} of {len(wanted)} test cases", flush=True)
                    with lock:
                        json.dump(known, open(known_at, "w"))
        json.dump(known, open(known_at, "w"))
        self.known = known
        self.cases = {p: known[p]["cases"] for p in programs}
        self.at_start, self.stopped = {}, set()
        for program in programs:
            with tempfile.TemporaryDirectory() as scratch:
                told = {"FIRSTPICK_MUTANTS_REACHED": f"{scratch}/reached", "FIRSTPICK_MUTANTS_STOPPED": f"{scratch}/stopped"}
                subprocess.run([f"{self.out}/tests/{program}", "--list-test-names-only"], stdout=subprocess.DEVNULL,
                               cwd=self.tree, env={**os.environ, **told})
                numbers = {name: {int(n) for n in open(f"{scratch}/{name}")} if os.path.exists(f"{scratch}/{name}") else set()
                           for name in ("reached", "stopped")}
                self.at_start[program] = numbers["reached"]
                self.stopped |= numbers["stopped"]

    def passing(self, program, number, same_file):
        """The test cases that pass by a change: for a constant of a file, those that pass by the file."""
        found = []
        for name, case in self.cases[program].items():
            reached = set(case["reached"])
            here = number in reached
            if here and number in self.at_start[program]:
                others = same_file - self.at_start[program]
                here = not others or bool(others & reached)
            if here and case["good"]:
                found.append((case["seconds"], name))
        return sorted(found)

    def portions(self, programs, cases_of):
        """(program, names, seconds): the short ones of every program first, then the longer ones."""
        limits = [0.3, 1.5, 6.0, self.longest]
        for low, high in zip([-1.0] + limits, limits):
            for program in programs:
                cases = [(s, n) for s, n in cases_of[program] if low < s <= high]
                for part in range(0, len(cases), 40):
                    here = cases[part:part + 40]
                    yield program, [n for _, n in here], sum(s for s, _ in here)


def table_tree(root, at, jobs_number):
    tree = f"{at}/tables_{jobs_number}"
    shutil.rmtree(tree, ignore_errors=True)
    os.makedirs(tree)
    for name in os.listdir(root):
        if name not in ("tables", "build") and not name.startswith("."):
            os.symlink(f"{root}/{name}", f"{tree}/{name}")
    shutil.copytree(f"{root}/tables", f"{tree}/tables")
    return tree


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--build", required=True)
    parser.add_argument("--work", required=True)
    parser.add_argument("--sources", type=int, default=560)
    parser.add_argument("--values", type=int, default=150)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=1e9)
    parser.add_argument("--longest", type=float, default=20.0, help="seconds of the longest test case taken")
    parser.add_argument("--source-programs", default=",".join(SOURCE_PROGRAMS), help="and changes of the source")
    parser.add_argument("--table-programs", default=",".join(TABLE_PROGRAMS), help="what changes of tables are shown to")
    parser.add_argument("--folders", default=",".join(places.FOLDERS), help="of src: the changes of these alone")
    parser.add_argument("--only", default="", help="only changes whose line in the results this finds")
    parser.add_argument("--again", default="", help="run these again: survived, or not reached")
    asked = parser.parse_args()
    root = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", ".."))
    build, out = os.path.abspath(asked.build), os.path.abspath(asked.work)
    os.makedirs(out, exist_ok=True)
    began = time.time()

    # The same number from every folder, as far as it has them.
    chosen = []
    if asked.sources:
        everything = places.source_changes(root)
        folders = sorted(places.FOLDERS, key=lambda f: sum(c.path.startswith(f"src/{f}/") for c in everything))
        for i, folder in enumerate(folders):
            here = [c for c in everything if c.path.startswith(f"src/{folder}/")]
            share = (asked.sources - len(chosen)) // (len(folders) - i)
            chosen += places.spread(here, min(share, len(here)), asked.seed, lambda c: "")
        print(f"{len(everything)} places in sources, {len(chosen)} chosen", flush=True)
    asked_folders = asked.folders.split(",")
    chosen = {n: c for n, c in enumerate(chosen, 1) if c.path.split("/")[1] in asked_folders}
    values = places.table_changes(root) if asked.values else []
    chosen_values = places.spread(values, asked.values, asked.seed, lambda c: c.path) if values else []
    print(f"{len(values)} values in tables, {len(chosen_values)} chosen", flush=True)

    copy = f"{out}/src"
    here = os.path.dirname(os.path.abspath(__file__))
    if not chosen:
        run_all(asked, root, out, build, {}, {}, chosen_values, asked.table_programs.split(","), began)
        return
    programs = relinked.Relinked(root, build, out, asked_folders, ["-O1", "-g0"], ["-O2", "-g1"], src=copy)
    alive = dict(chosen)
    dropped_at = f"{out}/dropped_{asked.seed}_{asked.sources}.json"  # what did not compile the last time
    if os.path.exists(dropped_at):
        gone = set(json.load(open(dropped_at)))
        alive = {n: c for n, c in alive.items() if c.key() not in gone}
    while True:
        by_file = collections.defaultdict(list)
        for number, change in alive.items():
            by_file[change.path].append((number, change))
        os.makedirs(copy, exist_ok=True)
        wanted = {"mutant.hpp": open(f"{here}/mutant.hpp").read()}
        for folder in asked_folders:
            for name in os.listdir(f"{root}/src/{folder}"):
                text = open(f"{root}/src/{folder}/{name}").read()
                path = f"src/{folder}/{name}"
                wanted[f"{folder}/{name}"] = places.rewritten(text, by_file[path]) if path in by_file else text
        for name, text in wanted.items():
            os.makedirs(os.path.dirname(f"{copy}/{name}"), exist_ok=True)
            if not os.path.exists(f"{copy}/{name}") or open(f"{copy}/{name}").read() != text:
                open(f"{copy}/{name}", "w").write(text)
        said = programs.compile(asked.jobs)
        if not said:
            break
        open(f"{out}/compiler.txt", "w").write("\n".join(said))
        gone = {n for text in said for n in sieve_errors(text, chosen)} & set(alive)
        if not gone:
            raise SystemExit(f"does not compile, and it is not seen why: {out}/compiler.txt")
        alive = {n: c for n, c in alive.items() if n not in gone}
        json.dump([c.key() for n, c in chosen.items() if n not in alive], open(dropped_at, "w"))
        print(f"  {len(gone)} do not compile, {len(alive)} left, {time.time() - began:.0f} s", flush=True)
    all_programs = sorted(set(asked.source_programs.split(",") + (asked.table_programs.split(",") if chosen_values else [])))
    programs.link(all_programs)
    print(f"compiled and linked, {time.time() - began:.0f} s", flush=True)
    run_all(asked, root, out, out, chosen, alive, chosen_values, all_programs, began)


def run_all(asked, root, out, programs_in, chosen, alive, chosen_values, all_programs, began):
    """Shows every change to its test cases, and tells what came of it."""
    tests = Tests(programs_in, root, asked.longest, f"{out}/cases{'' if chosen else '_tables'}.json")
    tests.learn(all_programs, asked.jobs)
    alive = {n: c for n, c in alive.items() if n not in tests.stopped}
    print(f"{len(tests.stopped)} stopped by their types, {len(alive)} left", flush=True)
    print(f"every test case run without a change, {time.time() - began:.0f} s", flush=True)

    for program in all_programs:  # all at once, with no change on: what fails now says nothing of a change
        if tests.known[program].get("sound", 0.0) >= asked.longest:
            continue
        cases = {program: sorted((c["seconds"], n) for n, c in tests.cases[program].items() if c["good"])}
        for _, names, seconds in tests.portions([program], cases):
            if found := tests.run(program, names, root, {"FIRSTPICK_MUTANT": "-1"}, 30 + 8 * seconds):
                raise SystemExit(f"{found} without any change: {program}: {', '.join(names)}")
        tests.known[program]["sound"] = asked.longest
        json.dump(tests.known, open(tests.known_at, "w"))

    results_at, results = f"{out}/results.jsonl", {}
    if os.path.exists(results_at):
        for line in open(results_at):
            result = json.loads(line)
            results[result["change"]] = result
    numbers_of_file = collections.defaultdict(set)
    for number, change in alive.items():
        numbers_of_file[change.path].add(number)
    trees = [table_tree(root, out, i) for i in range(asked.jobs)] if chosen_values else []
    lock = threading.Lock()

    def judged(job):
        number, change = job
        if time.time() - began > asked.minutes * 60:
            return
        start, end, by = time.time(), "survived", ""
        if number:
            folder = change.path.split("/")[1]
            order = sorted(asked.source_programs.split(","), key=lambda p: p != f"unit_{folder}")
            cases = {p: tests.passing(p, number, numbers_of_file[change.path]) for p in order}
            tree, environment = root, {"FIRSTPICK_MUTANT": str(number)}
            if not any(cases.values()):
                end = "not reached"
        else:
            order = asked.table_programs.split(",")
            cases = {p: sorted((c["seconds"], n) for n, c in tests.cases[p].items() if c["good"]) for p in order}
            with lock:
                tree = trees.pop()
            text = open(f"{tree}/{change.path}").read()
            lines = text.split("\n")
            line = lines[change.line - 1]
            lines[change.line - 1] = line[:change.column - 1] + change.new + line[change.column - 1 + len(change.old):]
            open(f"{tree}/{change.path}", "w").write("\n".join(lines))
            environment = {}
        for program, names, seconds in tests.portions(order, cases):
            found = tests.run(program, names, tree, environment, 10 + 8 * seconds)
            if found:
                end, by = "caught", f"{found}: {program}" + (f": {names[0]}" if len(names) == 1 else "")
                break
        if not number:
            open(f"{tree}/{change.path}", "w").write(text)
            with lock:
                trees.append(tree)
        result = {"change": change.key(), "end": end, "by": by, "seconds": round(time.time() - start, 1),
                  "text": change.text}
        with lock:
            results[change.key()] = result
            open(results_at, "a").write(json.dumps(result) + "\n")
            print(f"{end:11} {change.key():70} {result['seconds']:6} s  {by}", flush=True)

    jobs = [(n, c) for n, c in alive.items()] + [(0, c) for c in chosen_values]
    jobs = [j for j in jobs if re.search(asked.only, j[1].key())]
    todo = [j for j in jobs if results.get(j[1].key(), {"end": asked.again})["end"] == asked.again]
    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        list(pool.map(judged, todo))

    print("\nNot noticed:")
    counts = collections.Counter()
    for number, change in jobs:
        result = results.get(change.key())
        if not result:
            counts["not run"] += 1
            continue
        place = change.path.split("/")[1] if number else "tables"
        counts[result["end"]] += 1
        counts[(place, "caught" if result["end"] == "caught" else "not")] += 1
        if result["end"] != "caught":
            print(f"  {result['end']:11} {change.key()}      {change.text}")
    for place in places.FOLDERS + ["tables"]:
        caught, all_here = counts[(place, "caught")], counts[(place, "caught")] + counts[(place, "not")]
        print(f"{place:12} {caught} of {all_here} caught")
    run = counts["caught"] + counts["survived"] + counts["not reached"]
    print(f"{counts['caught']} of {run} caught ({100.0 * counts['caught'] / max(1, run):.1f} %), "
          f"{counts['not run']} not run; {len(chosen) - len(alive)} of the chosen did not compile (the types caught them)")


if __name__ == "__main__":
    main()

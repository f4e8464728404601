#!/usr/bin/env python3
"""Branch coverage of what computes and judges: src/checks, resistances, loads and demands.

  python3 tests/coverage/branches.py --build BUILD --work DIRECTORY [--jobs N] [--programs NAME,NAME...]
                                     [--folders NAME,NAME...] [--show FOLDER]

BUILD is an up-to-date build of this checkout with its tests. The four folders are compiled anew with clang's source-based
coverage and linked with the test programs of that build (tests/mutation/relinked.py); the programs run, llvm-cov counts.

How it counts: a branch is one outcome, true or false, of one condition as it stands in the source: of if, while, for and
?:, and of each operand of && and ||. What a compiler adds for exceptions and destructors is none. A template counts once:
what any of its instances reaches is reached. Texts of the calculation sheet (trace) count like everything else.
Left out: unit_* programs of other folders, and tests/golden, sheets, cards and editor, which hold words, not values.
Needs clang++, llvm-profdata and llvm-cov of one version.
"""
import argparse
import collections
import json
import os
import re
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "mutation"))
import relinked

FOLDERS = ["checks", "resistances", "loads", "demands"]
PROGRAMS = ["unit_loads", "unit_resistances", "unit_demands", "unit_checks", "boundaries", "plans", "trace", "tables",
            "verification", "laws"]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--build", required=True)
    parser.add_argument("--work", required=True)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--programs", default=",".join(PROGRAMS))
    parser.add_argument("--folders", default=",".join(FOLDERS), help="some of the four: less to compile")
    parser.add_argument("--show", default="", help="list each outcome that no test sees, of paths with this in them")
    parser.add_argument("--count-only", action="store_true", help="count what the last run left")
    asked = parser.parse_args()
    root = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", ".."))
    build, out = os.path.abspath(asked.build), os.path.abspath(asked.work)
    programs, folders = asked.programs.split(","), asked.folders.split(",")
    if not asked.count_only:
        runtime = subprocess.run(["clang++", "--print-file-name=libclang_rt.profile-x86_64.a"], check=True, text=True,
                                 stdout=subprocess.PIPE).stdout.strip()
        if not os.path.exists(runtime):
            runtime = subprocess.run(["clang++", "--print-resource-dir"], check=True, text=True,
                                     stdout=subprocess.PIPE).stdout.strip() + "/lib/linux/libclang_rt.profile-x86_64.a"
        made = relinked.Relinked(root, build, out, folders,
                                 ["-O1", "-g0", "-fprofile-instr-generate", "-fcoverage-mapping"],
                                 ["-O2", "-g1"], ["-u__llvm_profile_runtime", runtime], compiler="clang++")
        said = made.compile(asked.jobs)
        if said:
            raise SystemExit("\n".join(said))
        made.link(programs)
        for program in programs:
            raw = f"{out}/{program}.profraw"
            if os.path.exists(raw) and os.path.getsize(raw) and os.path.getmtime(raw) > os.path.getmtime(f"{out}/tests/{program}"):
                continue
            # On one processor its threads cannot lose counts, which are one instruction each: atomic ones are ten times slower.
            done = subprocess.run(["nice", "-n", "10", f"{out}/tests/{program}"], cwd=root, stdout=subprocess.PIPE,
                                  stderr=subprocess.STDOUT, text=True,
                                  preexec_fn=lambda: os.sched_setaffinity(0, {min(os.sched_getaffinity(0))}),
                                  env={**os.environ, "LLVM_PROFILE_FILE": f"{out}/{program}.profraw"})
            print(program, done.stdout.strip().split("\n")[-1], flush=True)
    raws = [f"{out}/{p}.profraw" for p in programs if os.path.exists(f"{out}/{p}.profraw")]
    subprocess.run(["llvm-profdata", "merge", "-sparse", "-o", f"{out}/all.profdata"] + raws, check=True)
    objects = [w for p in programs[1:] for w in ("-object", f"{out}/tests/{p}")]
    exported = subprocess.run(["llvm-cov", "export", f"{out}/tests/{programs[0]}"] + objects +
                              [f"--instr-profile={out}/all.profdata", "--skip-expansions"], check=True,
                              stdout=subprocess.PIPE).stdout
    seen = {}
    for function in json.loads(exported)["data"][0]["functions"]:
        for line, column, line_end, column_end, when_true, when_false, file, *_ in function["branches"]:
            # The compiler is told to leave out where the source lies.
            found = re.search(r"(?:^|/)(src/(?:%s)/\w+\.[ch]pp)$" % "|".join(folders), function["filenames"][file])
            if not found:
                continue
            path = found.group(1)
            for outcome, count in (("true", when_true), ("false", when_false)):
                key = (path, line, column, line_end, column_end, outcome)
                seen[key] = seen.get(key, 0) + count
    # A condition that the compiler folded away has neither outcome and is no branch.
    lines = {}
    totals = collections.Counter()
    for (path, line, column, line_end, column_end, outcome), count in sorted(seen.items()):
        folder = path.split("/")[1]
        totals[(folder, "all")] += 1
        totals[(folder, "seen")] += count > 0
        if count == 0 and asked.show and asked.show in path:
            text = lines.setdefault(path, open(f"{root}/{path}").read().split("\n"))
            piece = text[line - 1][column - 1:column_end - 1] if line == line_end else text[line - 1][column - 1:] + " ..."
            print(f"{path}:{line}:{column}: never {outcome}: {piece}")
    for folder in folders:
        print(f"{folder:12} {totals[(folder, 'seen')]} of {totals[(folder, 'all')]} outcomes, "
              f"{100.0 * totals[(folder, 'seen')] / max(1, totals[(folder, 'all')]):.2f} %")
    every = sum(totals[(f, "all")] for f in folders), sum(totals[(f, "seen")] for f in folders)
    print(f"{'all':12} {every[1]} of {every[0]} outcomes, {100.0 * every[1] / max(1, every[0]):.2f} %")


if __name__ == "__main__":
    main()

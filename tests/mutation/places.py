"""Where something can be changed, and how the change is written into the source so that it can be switched on."""
import os
import random
import re

FOLDERS = ["loads", "demands", "resistances", "checks"]

INVERSE = {"+": "-", "-": "+", "*": "/", "/": "*", "<": ">=", ">": "<=", "<=": "<", ">=": ">", "==": "!=", "!=": "=="}
OPERATOR = re.compile(r"(?<=\s)(\+=|-=|\*=|/=|<=|>=|==|!=|&&|\|\||[-+*/<>])(?=\s)")
LESSER = re.compile(r"std::(min|max)(?=\()")
DECIMAL = re.compile(r"(?<![\w.])(\d+\.\d+|M_PI)(?![\w.])")
WHOLE = re.compile(r"(?<![\w.'])(\d+)(?![\w.'])")
BESIDE = re.compile(r"(?:[-+*/<>=]=?|return)\s$")


class Change:
    """One change: `wraps` are (start, end, before, after) around pieces of the text, `instead` (start, end, text)."""

    def __init__(self, path, line, column, old, new, text):
        self.path, self.line, self.column, self.old, self.new, self.text = path, line, column, old, new, text
        self.start, self.wraps, self.instead = 0, [], []

    def key(self):
        return f"{self.path}:{self.line}:{self.column}: {self.old} -> {self.new}"


def blanked(text):
    """Comments, texts and preprocessor lines as spaces, of the same length."""
    def blank(match):
        return re.sub(r"[^\n]", " ", match.group(0))

    pattern = r'R"\((?:.|\n)*?\)"|"(?:[^"\\\n]|\\.)*"|\'(?:[^\'\\\n]|\\.)+\'(?!\d)|//[^\n]*|/\*(?:.|\n)*?\*/|^[ \t]*#[^\n]*'
    return re.sub(pattern, blank, text, flags=re.MULTILINE)


def left_end(code, at, stops):
    """Where the left operand of an operator at `at` begins."""
    depth, i = 0, at
    while i > 0:
        c = code[i - 1]
        if c in ")]}":
            depth += 1
        elif c in "([{":
            if depth == 0:
                break
            depth -= 1
        elif depth == 0:
            if c in ";,?" or (c == ":" and code[i - 2] != ":" and code[i] != ":"):
                break
            if c == "=" and code[i - 2] not in "=!<>" and code[i] not in "=":
                break
            if code[:i].endswith(stops):
                break
            if code[max(0, i - 6):i] == "return" and not code[i].isalnum():
                break
        i -= 1
    while code[i].isspace():
        i += 1
    return i


def right_end(code, at, stops, whole=False):
    """Where the right operand ends; `whole`: with all of a ?: in it, as of an assignment."""
    depth, i, choices = 0, at, 0
    while i < len(code):
        c = code[i]
        if c in "([{":
            depth += 1
        elif c in ")]}":
            if depth == 0:
                break
            depth -= 1
        elif depth == 0 and whole and (c == "?" or (c == ":" and choices > 0 and "::" not in code[i - 1:i + 2])):
            choices += 1 if c == "?" else -1
        elif depth == 0:
            if c in ";,?" or (c == ":" and code[i - 1] != ":" and code[i + 1] != ":") or code.startswith(stops, i):
                break
        i += 1
    while code[i - 1].isspace():
        i -= 1
    return i


def spans(code, opening):
    """(start, end) of what stands in the brackets that follow each match of `opening`."""
    found = []
    for m in re.finditer(opening, code):
        depth, i = 1, m.end()
        while i < len(code) and depth:
            depth += {"(": 1, "[": 1, ")": -1, "]": -1}.get(code[i], 0)
            i += 1
        found.append((m.start(), i))
    return found


def source_changes(root):
    """Every place in the four folders. Left out: indices and the heads of counting loops (out of bounds is no answer),
    numbers written with an exponent (tolerances of rounding, where ten per cent more is the same), types, texts."""
    found = []
    for folder in FOLDERS:
        for name in sorted(os.listdir(f"{root}/src/{folder}")):
            if name.endswith((".cpp", ".hpp")):
                found += changes_of_file(root, f"src/{folder}/{name}")
    return found


def changes_of_file(root, path):
    text = open(f"{root}/{path}").read()
    code = blanked(text)
    left_out = spans(code, r"\[") + spans(code, r"\bfor \(") + spans(code, r"\bstatic_assert\(")
    left_out += [m.span() for m in re.finditer(r"^[ \t]*(?:template|using|requires|enum|concept)\b[^\n]*", code, re.M)]
    left_out += [m.span() for m in re.finditer(r"\bcase [^:]*:|\benum class [^}]*}|(?<=\w)<[\w:, *&]+>", code)]
    lambdas = spans(code, r"\[[&=]?\w*\](?=[ ({])")
    left_out = [s for s in left_out if s not in lambdas]
    found = []

    def add(start, end, new, wraps=(), instead=()):
        # A range-for is a head without an operator of its own, but with lambdas in it now and then.
        if any(a <= start and end <= b for a, b in left_out):
            return
        line = code.count("\n", 0, start) + 1
        before = code.rfind("\n", 0, start)
        change = Change(path, line, start - before, text[start:end], new, text.split("\n")[line - 1].strip())
        change.start, change.wraps, change.instead = start, list(wraps), list(instead)
        found.append(change)

    for m in OPERATOR.finditer(code):
        op, start, end = m.group(1), m.start(), m.end()
        if op in ("&&", "||"):
            stops = ("||",) if op == "&&" else ()
            a = left_end(code, start, stops or ("\0",))
            b = right_end(code, end, ("&&", "||") if op == "&&" else ("||",))
            a_end = start
            while code[a_end - 1].isspace():
                a_end -= 1
            b_start = end
            while code[b_start].isspace():
                b_start += 1
            is_on = "::mutant::on({n})"
            add(start, end, "||" if op == "&&" else "&&",
                [(a, b, "((", f") != {is_on})"), (a, a_end, "(bool(", f") != {is_on})"),
                 (b_start, b, "(bool(", f") != {is_on})")])
        elif op in ("+=", "-=", "*=", "/="):
            b_start = end
            while code[b_start].isspace():
                b_start += 1
            b = right_end(code, end, ("\0",), whole=True)
            function = "flipped" if op[0] in "+-" else "inverse"
            add(start, end, INVERSE[op[0]] + "=", [(b_start, b, f"::mutant::{function}<{{n}}>(", ")")])
        else:
            add(start, end, INVERSE[op], instead=[(end, end, f" ::mutant::at<{{n}}>() {op}")])
    for m in LESSER.finditer(code):
        of, other = ("least", "max") if m.group(1) == "min" else ("greatest", "min")
        add(m.start(), m.end(), f"std::{other}", instead=[(m.start(), m.end(), f"::mutant::{of}<{{n}}>")])
    for m in DECIMAL.finditer(code):
        value = m.group(1)
        if value != "M_PI" and float(value) == 0.0:
            continue
        new = "1.1 * M_PI" if value == "M_PI" else repr(round(float(value) * 1.1, 12))
        add(m.start(), m.end(), new, [(m.start(), m.end(), "::mutant::tenth_more<{n}>(", ")")])
    for m in WHOLE.finditer(code):
        if BESIDE.search(code[max(0, m.start() - 7):m.start()]) or re.match(r" [-+*/<>=]", code[m.end():m.end() + 2]):
            add(m.start(), m.end(), str(int(m.group(1)) + 1),
                [(m.start(), m.end(), "::mutant::one_more<{n}>(", ")")])
    return sorted(found, key=lambda c: (c.line, c.column))


def table_changes(root):
    """Every number that is a value of an entry: a tenth more, or one more where a tenth is less than that."""
    found = []
    for folder, _, names in sorted(os.walk(f"{root}/tables")):
        for name in sorted(names):
            path = os.path.relpath(f"{folder}/{name}", root)
            for number, line in enumerate(open(f"{root}/{path}"), 1):
                m = re.match(r"value = (-?\d+(?:\.\d+)?)\s*(?:#.*)?$", line)
                if not m:
                    continue
                old = m.group(1)
                value = float(old) * 1.1 if "." in old else round(float(old) * 1.1)
                if value == float(old):
                    value += 1
                new = repr(round(value, 12)) if "." in old else str(int(value))
                found.append(Change(path, number, m.start(1) + 1, old, new, line.strip()))
    return found


def spread(changes, count, seed, group):
    """`count` of them by chance, each group in the measure of its size, at least one of each."""
    chance = random.Random(seed)
    groups = {}
    for change in changes:
        groups.setdefault(group(change), []).append(change)
    chosen = []
    for name in sorted(groups):
        here = groups[name]
        chosen += chance.sample(here, min(len(here), max(1, round(count * len(here) / len(changes)))))
    return chosen


def rewritten(text, changes):
    """The text of a file with all its changes in it; `changes` are (number, Change)."""
    opens, closes, instead = [], [], []
    for number, change in changes:
        for start, end, before, after in change.wraps:
            opens.append((start, -end, before.replace("{n}", str(number))))
            closes.append((end, -start, after.replace("{n}", str(number))))
        for start, end, new in change.instead:
            instead.append((start, end, new.replace("{n}", str(number))))
    # At one place: what closes first, the narrower before the wider; then what opens, the wider first.
    edits = [(at, 0, order, at, new) for at, order, new in closes] + [(at, 1, order, at, new) for at, order, new in opens]
    edits += [(start, 2, 0, end, new) for start, end, new in instead]
    out, at = [], 0
    for start, _, _, end, new in sorted(edits, key=lambda e: e[:3]):
        out += [text[at:start], new]
        at = end
    lines = ('#include "mutant.hpp"\n#line 1\n' + "".join(out) + text[at:]).split("\n")
    # A constant that is changed when the program starts is not one of the compiler's.
    for _, change in changes:
        if change.wraps or change.instead:
            lines[change.line + 1] = lines[change.line + 1].replace("constexpr ", "const ")
    return "\n".join(lines)

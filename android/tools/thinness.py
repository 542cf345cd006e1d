#!/usr/bin/env python3
"""Whether a shell stays a shell: lists where Kotlin or Swift branches on the core's codes or words, and fails where a branch is
about soil, geometry, time or merging. Those are the core's to decide.

A branch is the condition of an `if`, `while` or `when`, the left of an arm, and any comparison. An arm that gives each kind
of block, shape or fault its place on the screen is part of a display table, and only counted: those are named in TABLES.
"""
import pathlib
import re
import sys

HERE = pathlib.Path(__file__).resolve().parent.parent
KOTLIN = [HERE / "src/main", HERE / "desk/src"]
SWIFT = [HERE.parent / "ios/PitfaceKit/Sources", HERE.parent / "ios/App"]
RUST = [HERE.parent / "core/src", HERE.parent / "bindings/src"]
BINDINGS = HERE / "target/generated-bindings/org/pitface/core/pitface_bindings.kt"

# Which type a file lays out, arm by arm.
TABLES = {
    "Painter.kt": {"Shape", "Anchor", "Theme", "Role"},
    "Earth.kt": {"Light"},
    "Body.kt": {"ShownBlock", "Stand"},
    "ScreenView.kt": {"ShownBlock"},
    "App.kt": {"ShownDoes"},
    "Phrase.kt": {"PitfaceException"},
}

# What a branch of the shell is never about; parts of names, as they are written in Kotlin or in Rust.
FORBIDDEN = {
    "soil": "soil layer layers pit pits walk step depth bottom tip moist moisture texture clay root roots plates crumbs zone "
    "headland wheeling wheelings loosen wait firm tight shut pressed reading readings machine leg legs wing pass passes dig roll rolls field fields",
    "geometry": "latitude longitude lat lon ring outline distance bearing metre metres radius inside accuracy corner",
    "time": "time date day days hour hours minute minutes second seconds season year age clock offset zoned now",
    "merging": "merge merged conflict newer older revision stamp device records record undone",
}
WORDS = {word: about for about, words in FORBIDDEN.items() for word in words.split()}

# Branches that only look like it, each with what it is.
NOT_SO = {
    "location.hasAccuracy()": "Android's way of saying that there is a number",
    "Phrase.NEWER_VERSION": "one of the shell's own phrases",
    "it.pressed": "a finger on the glass",
    "change.pressed": "a finger on the glass",
    "getDistance()": "how far a finger went on the glass",
    "Date().timeIntervalSince(": "how long another program took",
    "changed < now": "how old a file is that was handed out",
    "manager.accuracyAuthorization == .reducedAccuracy": "the phone's permission for more than a rough position",
    "found.horizontalAccuracy": "the phone's way of saying that there is a number",
    "time < 3_000_000_000L": "frames of the picture that the desk writes",
}


def code(text):
    """Without comments, imports and what stands between quotes; lines stay lines."""
    text = re.sub(r"/\*.*?\*/", lambda found: "\n" * found.group().count("\n"), text, flags=re.S)
    text = re.sub(r'"(?:\\.|[^"\\\n])*"', '""', text)
    text = re.sub(r"'(?:\\.|[^'\\\n])'", "' '", text)
    text = re.sub(r"//.*", "", text)
    return re.sub(r"^(import|package) .*", "", text, flags=re.M)


def balanced(text, start):
    """What stands in the brackets that open at `start`."""
    depth = 0
    for index in range(start, len(text)):
        depth += {"(": 1, ")": -1}.get(text[index], 0)
        if depth == 0:
            return text[start + 1 : index]
    return text[start + 1 :]


def branches(text):
    """Every branch of a file: its line, what is decided by, and whether it is an arm."""
    for found in re.finditer(r"\b(?:if|while|when)\s*\(", text):
        yield text.count("\n", 0, found.start()) + 1, balanced(text, found.end() - 1), False
    for number, line in enumerate(text.split("\n"), 1):
        arm = re.match(r"\s*((?:is |in |!is |!in )?[^{}]*?)\s->", line)
        if arm and not re.search(r"\bfun\b|\bval\b|^\s*\(?\w*: ", arm.group(1)):
            yield number, arm.group(1), True
        for found in re.finditer(r"[\w.()?!]+ (?:==|!=|===|!==|<=|>=|<|>|in|is|!in|!is) [\w.()?!]+", line):
            yield number, found.group(), bool(arm) and found.end() <= arm.end()


def branches_of_swift(text):
    """The same of Swift. An arm is a `case` of a `switch`; what it gives names to is no decision."""
    for number, line in enumerate(text.split("\n"), 1):
        arm = re.match(r"\s*case\s+(.*?):", line)
        if arm:
            yield number, re.sub(r"\b(?:let|var) \w+", "", arm.group(1)), True
        for found in re.finditer(r"\b(?:if|while|guard|switch|where)\b([^{]*)", line):
            yield number, re.sub(r"\b(?:let|var) \w+ =|\b(?:let|var) \w+", "", found.group(1)), False
        for found in re.finditer(r"[\w.()?!]+ (?:==|!=|===|!==|<=|>=|<|>|\?) [\w.()?!]+", line):
            yield number, found.group(), False


def words(name):
    return [part.lower() for part in re.findall(r"[A-Z]+(?![a-z])|[A-Z]?[a-z]+", name)]


def looked_at(files, types):
    listed, arms, forbidden = {}, set(), {}
    code_of = re.compile(r"\b(" + "|".join(types) + r")\.[A-Z]")
    for path in files:
        source = path.read_text()
        lines = source.split("\n")
        found = branches_of_swift if path.suffix == ".swift" else branches
        for number, decided, is_arm in found(code(source)):
            where = (path, number)
            on = set(code_of.findall(decided))
            if path.suffix == ".swift" and is_arm or is_arm and on and on <= TABLES.get(path.name, set()):
                arms.add(where)
                continue
            if on or re.search(r"\bkind\b|\.(label|title|note|act) [!=]=", decided):
                listed[where] = lines[number - 1].strip()
            for known in NOT_SO:
                decided = decided.replace(known, "")
            about = {WORDS[word] for name in re.findall(r"[A-Za-z_]\w*", decided) for word in words(name) if word in WORDS}
            if about:
                forbidden[where] = f"{', '.join(sorted(about))}: {lines[number - 1].strip()}"
    return listed, arms, forbidden


def count(folders, ending):
    return sum(len(path.read_text().splitlines()) for folder in folders for path in folder.rglob(f"*{ending}"))


def told(found):
    for (path, number), line in sorted(found.items()):
        print(f"  {path.relative_to(HERE.parent) if path.is_relative_to(HERE.parent) else path}:{number}: {line[:150]}")


def main():
    if not BINDINGS.exists():
        sys.exit("thinness: there are no bindings; run tools/bindings.sh")
    types = re.findall(r"^(?:enum|sealed) class (\w+)", BINDINGS.read_text(), flags=re.M)
    folders = [pathlib.Path(name) for name in sys.argv[1:]] or KOTLIN + SWIFT
    files = sorted(path for folder in folders for ending in ("*.kt", "*.swift") for path in folder.rglob(ending))
    listed, arms, forbidden = looked_at(files, types)
    print(f"thinness: {len(listed)} branches on domain codes in {len(files)} files, beside {len(arms)} arms of display tables")
    told(listed)
    rust = count(RUST, ".rs")
    for language, lines in (("Kotlin", count(KOTLIN, ".kt")), ("Swift", count(SWIFT, ".swift"))):
        print(f"thinness: {lines} lines of {language} against {rust} of Rust (core and bindings), 1 to {rust / lines:.0f}")
    if forbidden:
        print(f"thinness: FAILED, {len(forbidden)} branches are about what only the core decides")
        told(forbidden)
        sys.exit(1)


main()

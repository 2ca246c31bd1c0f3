#!/usr/bin/env python3
"""manual.py MANUAL SCHEMA READER FOLDER MESSAGES... - evenhand-routine.5
against the rest

Every sentence among its faults is one of the message lists.  Every key of the
schema stands in the manual and in the reader's table, and the other way round.
Files are written into FOLDER to be checked:

    example-07.yaml       the example of a key, in a whole file; is good
    good-bowing-20.yaml   the least or the most of a number; is good
    bad-bowing-20.01.yaml a little beyond it; is refused
"""
import json
import re
import sys

WORDS = r'"((?:\\.|[^"\\])*)"'
MESSAGE = r'MESSAGE\(\w+, "\w*",((?:\s*"(?:\\.|[^"\\])*")+)'
STAGE = {"id": "one", "place": "string D", "travel": "tone"}


def keys_of_schema(part):
    """Names of all properties."""
    found = set()
    if isinstance(part, dict):
        found |= set(part.get("properties", {}))
        for value in part.values():
            found |= keys_of_schema(value)
    elif isinstance(part, list):
        for value in part:
            found |= keys_of_schema(value)
    return found


def keys_of_reader(text):
    """The words in the reader's table of keys."""
    table = text[text.index("maps[MAP_KINDS] = {") :]
    table = table[: table.index("[MAP_SETTINGS]")]
    return set(re.findall(r'"([a-z_]+)"', table))


def plain(line):
    """An example as it is typed."""
    return line.replace("\\(dq", '"').replace("\\&", "")


def stage_file(example):
    """A whole routine around an example that belongs in a stage."""
    key = example.split(":")[0]
    lines = dict(STAGE)
    if key == "shift":
        del lines["travel"]
    if key == "motion":
        del lines["travel"]
    if key in lines:
        del lines[key]
    text = "".join(f"    {k}: {v}\n" for k, v in lines.items())
    if key == "place" and "air" in example:
        text = "    id: one\n"
    return f"routine: R\nstages:\n  -\n{text}    {example}\n"


def rule_file(example):
    """A whole routine around an example of the rules."""
    key = example.split(":")[0]
    lines = {"routine": "routine: R\n", key: example + "\n"}
    if "turns_so_far" in example:
        lines["make_up"] = "make_up: catch_up\n"
    tail = ", travel: tone"
    if "pairs" in example:
        tail = ""
    stages = "".join(
        f"  - {{id: {name}, place: string D{tail}}}\n"
        for name in ("tone", "semitone")
    )
    return "".join(lines.values()) + f"stages:\n{stages}"


def mark_file(example):
    """A whole routine around an example of a lesson mark."""
    if example.startswith("lesson_marks"):
        return rule_file(example)
    parts = {"date": "2026-03-02", "stage": "tone", "clean": "[1]"}
    parts.update([example.split(": ", 1)])
    mark = ", ".join(f"{k}: {v}" for k, v in parts.items())
    return rule_file(f"lesson_marks: [{{{mark}}}]")


def homework_file(example):
    """A whole homework file around an example of one."""
    parts = {"homework_for": "W.", "routine": "cello.yaml"}
    parts.update([example.split(": ", 1)])
    return "".join(f"{k}: {v}\n" for k, v in parts.items())


MAKERS = {
    "THE ROUTINE": rule_file,
    "Stages": stage_file,
    "Lesson marks": mark_file,
    "THE HOMEWORK FILE": homework_file,
}


def examples(manual):
    """Pairs of section and example; displays count as one example."""
    section, shown = "", None
    for line in manual.splitlines():
        if re.match(r"\.S[hs] ", line):
            section = line[4:]
        elif line.startswith(".Dl "):
            yield section, plain(line[4:])
        elif line.startswith(".Bd"):
            shown = []
        elif line == ".Ed":
            yield section, "\n".join(shown) + "\n"
            shown = None
        elif shown is not None:
            shown.append(plain(line))


def sentences(lists):
    """The sentences of message lists, each as a pattern."""
    for path in lists:
        with open(path, encoding="utf-8") as file:
            text = file.read()
        for call in re.findall(MESSAGE, text):
            parts = re.findall(WORDS, call)
            sentence = re.sub(r"\\(.)", r"\1", "".join(parts))
            pattern = re.escape(sentence)
            pattern = re.sub(r"\\{\d.*?\\}", ".+", pattern)
            # Some are nearly nothing but what is put in.
            if len(pattern.replace(".+", "")) > 10:
                yield pattern


def unsaid(manual, lists):
    """Sentences under FAULTS that are none of ours."""
    known = list(sentences(lists))
    for section, example in examples(manual):
        if section == "FAULTS" and not any(
            re.fullmatch(pattern, example) for pattern in known
        ):
            yield example


def write_examples(manual, folder):
    """Writes every example; returns how many."""
    count = 0
    for section, example in examples(manual):
        if section == "FAULTS" or example.startswith(("evenhand ", "# ")):
            continue
        make = MAKERS.get(section, rule_file)
        text = example if "\n" in example else make(example)
        count += 1
        write(f"{folder}/example-{count:02}.yaml", text)
    return count


def write(path, text):
    """One file."""
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)


def bounds(schema):
    """Heading, key, least, most and step of the numbers of the rules."""
    for heading in ("bowing", "turns", "session", "move_on"):
        keys = schema["definitions"][heading]["properties"]
        for key, rule in keys.items():
            if "minimum" in rule and "maximum" in rule:
                step = 1 if rule["type"] == "integer" else 0.01
                yield heading, key, rule["minimum"], rule["maximum"], step


def write_bounds(schema, folder):
    """Writes files at and beyond every bound; returns how many."""
    count = 0
    for heading, key, least, most, step in bounds(schema):
        for value, kind in (
            (least, "good"),
            (most, "good"),
            (round(least - step, 2), "bad"),
            (round(most + step, 2), "bad"),
        ):
            count += 1
            write(
                f"{folder}/{kind}-{key}-{value}.yaml",
                f"# refused at: {heading}/{key}\nroutine: R\n"
                f"{heading}: {{{key}: {value}}}\nstages:\n"
                "  - {id: one, place: string D, travel: 0.1}\n",
            )
    return count


def main(manual_path, schema_path, reader_path, folder, *lists):
    """Compares keys and writes examples."""
    with open(manual_path, encoding="utf-8") as file:
        manual = file.read()
    with open(schema_path, encoding="utf-8") as file:
        whole_schema = json.load(file)
    with open(reader_path, encoding="utf-8") as file:
        reader = keys_of_reader(file.read())
    schema = keys_of_schema(whole_schema)
    told = set()
    for line in re.findall(r"^\.It Ic (.*)$", manual, re.M):
        told |= set(line.replace(" , ", " ").split())
    if re.search(r"^\.Ss Because$", manual, re.M):
        told.add("because")
    for key in ("most", "days", "all_clean", "decided_by"):
        if f".Ic {key} :" in manual:
            told.add(key)
    wrong = 0
    for name, have in (("manual", told), ("reader", reader)):
        for key in sorted(schema ^ have):
            wrong += 1
            print(f"BAD {key} is in only one of schema and {name}")
        if not schema ^ have:
            print(f"ok {len(have)} keys in schema and {name}")
    for sentence in unsaid(manual, lists):
        wrong += 1
        print(f"BAD evenhand never says: {sentence}")
    print(f"ok {write_examples(manual, folder)} examples")
    print(f"ok {write_bounds(whole_schema, folder)} bounds")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

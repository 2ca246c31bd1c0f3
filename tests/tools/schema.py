#!/usr/bin/env python3
"""schema.py SCHEMA good|bad FILE... - routine files against the JSON Schema

Reads YAML as editors do that follow YAML 1.2 (its core schema): "yes" and
2026-03-02 are words, 4 is a number.  Every file must fit ("good"), or every
file must be refused, at the key its first line names ("bad"):

    # refused at: stages/1/cue

Prints a line for each file; fails when one is otherwise.
"""
import json
import re
import sys

import jsonschema
import yaml


class Loader(yaml.SafeLoader):
    """SafeLoader with the implicit types of YAML 1.2 instead of 1.1."""


Loader.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("null", r"^(~|null|Null|NULL|)$", list("~nN") + [""]),
    ("bool", r"^(true|True|TRUE|false|False|FALSE)$", list("tTfF")),
    ("int", r"^[-+]?[0-9]+$", list("-+0123456789")),
    ("float", r"^[-+]?([0-9]+\.[0-9]*|\.[0-9]+)$", list("-+.0123456789")),
):
    Loader.add_implicit_resolver(
        "tag:yaml.org,2002:" + tag, re.compile(pattern), first
    )
Loader.add_constructor(
    "tag:yaml.org,2002:int", lambda loader, node: int(node.value)
)
Loader.add_constructor(
    "tag:yaml.org,2002:float", lambda loader, node: float(node.value)
)


def place(error):
    """Where an error stands, with the key that is too much or missing."""
    path = [str(part) for part in error.absolute_path]
    if error.validator in ("additionalProperties", "required"):
        path += re.findall(r"'([^']+)'", error.message)[:1]
    return "/".join(path)


def leaves(errors):
    """Errors, those of alternatives taken apart."""
    for error in errors:
        if error.context:
            yield from leaves(error.context)
        yield error


def judge(validator, kind, path):
    """A complaint about a file, or None."""
    with open(path, encoding="utf-8") as file:
        text = file.read()
    found = list(validator.iter_errors(yaml.load(text, Loader)))
    places = [place(error) for error in leaves(found)]
    if kind == "good":
        return "; ".join(f"{place(e)}: {e.message}" for e in found) or None
    wanted = re.match(r"# refused at: (\S+)\n", text)
    if not wanted:
        return "its first line does not say where it is to be refused"
    if wanted.group(1) not in places:
        return f"not refused at {wanted.group(1)}, but at {places}"
    return None


def main(schema_path, kind, *paths):
    """Judges all files."""
    with open(schema_path, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    wrong = 0
    for path in paths:
        complaint = judge(validator, kind, path)
        if complaint:
            wrong += 1
            print(f"BAD {path}: {complaint}")
        else:
            print(f"ok {kind} {path}")
    return 1 if wrong or not paths else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

"""Whether what the program writes follows its schemas, and whether they forbid what they should.

Arguments: the schemas of layout.json, takeoff.json and the job file; a layout.json; a takeoff.json;
the job files of the samples, as JSON.
"""

import copy
import json
import sys

from jsonschema import Draft202012Validator


def load(path):
    with open(path, encoding="utf-8") as f:
        return json.load(f)


COMPOSING = ("allOf", "anyOf", "oneOf")


def parts(schema, root):
    """The schemas that make up one object together with this one, however deep."""
    for branch in [b for k in COMPOSING for b in schema.get(k, [])]:
        if "$ref" in branch:
            branch = root["$defs"][branch["$ref"].rsplit("/", 1)[-1]]
        yield branch
        yield from parts(branch, root)


def composed(schema, root):
    """Identities of schemas that are only a part of an object: what they do not name, others may."""
    if isinstance(schema, list):
        return {i for v in schema for i in composed(v, root)}
    if not isinstance(schema, dict):
        return set()
    mine = {id(p) for p in parts(schema, root)} if "properties" in schema else set()
    return mine.union(*(composed(v, root) for v in schema.values()), set())


def closed(schema, open_parts):
    """The same schema with every object's keys named: a key it does not tell of is a fault."""
    if isinstance(schema, dict):
        out = {k: closed(v, open_parts) for k, v in schema.items()}
        if "properties" in out and "additionalProperties" not in out and id(schema) not in open_parts:
            whole = any(k in out for k in COMPOSING)
            out["unevaluatedProperties" if whole else "additionalProperties"] = False
        return out
    if isinstance(schema, list):
        return [closed(v, open_parts) for v in schema]
    return schema


def validator(path, close=False):
    schema = load(path)
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(closed(schema, composed(schema, schema)) if close else schema)


def first(v, value):
    e = next(v.iter_errors(value), None)
    return None if e is None else f"{e.json_path}: {e.message[:200]}"


def changed(value, path, new):
    """A copy with what stands at the path replaced; `...` takes it out."""
    out = copy.deepcopy(value)
    at = out
    for key in path[:-1]:
        at = at[key]
    if new is ...:
        del at[path[-1]]
    else:
        at[path[-1]] = new
    return out


def main():
    layout_schema, takeoff_schema, job_schema, layout, takeoff, *jobs = sys.argv[1:]
    layout, takeoff = load(layout), load(takeoff)
    jobs = [load(j) for j in jobs]
    refused = 0
    for schema, value in ((layout_schema, layout), (takeoff_schema, takeoff)):
        # Nothing is written that the schema does not tell of.
        fault = first(validator(schema, close=True), value)
        assert fault is None, fault
    assert len(jobs) >= 7
    job = validator(job_schema)
    for j in jobs + [{}, layout["job"]]:
        fault = first(job, j)
        assert fault is None, fault

    wall = ("elevations", 0, "walls", 0)
    piece = wall + ("courses", 0, "runs", 0, "pieces", 0)
    for path, new in [
        (("format",), "lapwright-layout/1"),
        (("datum",), "low"),
        (("panels",), ...),
        (("panels", 0, "stock"), None),
        (("bound", "best"), -1),
        (("elevations", 0, "to_source"), [1, 0, 0, 1, 0]),
        (wall + ("outline", 0), [1, 2, 3]),
        (wall + ("way",), "guess"),
        (piece + ("ends", 0, "cut"), "torn"),
        (piece + ("mark",), 7),
        (("trims", 0, "kind"), "molding"),
        (("takeoff", 0, "order"), "many"),
        (("takeoff", 0, "group"), "rest"),
        (("takeoff", 0, "item", "kind"), "things"),
        (("takeoff", 0, "unit"), "heap"),
        (("takeoff", 0, "basis", "from"), "a guess"),
        (("findings", 0, "severity"), "fatal"),
        (("findings", 0, "code"), "a-guess"),
        (("job", "product", "foam"), 1),
    ]:
        assert first(validator(layout_schema), changed(layout, path, new)), path
        refused += 1
    for path, new in [
        (("format",), "lapwright-layout/1"),
        (("lines", 0, "net"), "1"),
        (("trim_cuts", 0, "pieces"), "J1"),
        (("leftovers",), ...),
        (("comparison", 0, "panels"), -3),
        (("comparison", 0, "method", "by"), "guess"),
        (("panels_by",), "pallets"),
        (("cost", "total"), "412"),
        (("cost", "lines", 0, "price"), ...),
    ]:
        assert first(validator(takeoff_schema), changed(takeoff, path, new)), path
        refused += 1
    for bad in [
        {"produkt": {}},
        {"product": {"lenght": 150}},
        {"product": {"length": "long"}},
        {"product": {"length": "12 parsec"}},
        {"product": {"length": True}},
        {"product": {"length": 10}},
        {"product": {"carton": 1.5}},
        {"product": {"carton": 0}},
        {"trim": {"tab": -1}},
        {"trim": {"colors": {"gutter": "white"}}},
        {"layers": {"windows": ["A"]}},
        {"layers": {"window": "A"}},
        {"drawing": {"unit": "furlong"}},
        {"sheet": {"lengths": "cubits"}},
        {"seams": {"effort": "heroic"}},
        {"elevation": [{"region": [0, 0, 1]}]},
        {"title": {"project": 5}},
    ]:
        assert first(job, bad), bad
        refused += 1
    for good in ["12'-6 1/2\"", "12-6", "12-6-1/2\"", "150", "150.5", "12ft 6in", "3810mm", "381 cm", "3.81 m", "6 1/2", "13/2\""]:
        value = {"courses": {"datum": good}}
        assert first(job, value) is None, good
    print(f"ok {refused}")


main()

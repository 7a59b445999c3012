"""Licenses of everything that is built into the program, from the sources that cargo has fetched: each crate with its
own license files, alike texts once. Where a crate brings none, what it declares is said."""

import json
import pathlib
import subprocess

NAMES = ("LICEN", "COPYING", "NOTICE", "UNLICENSE")


# What is handed out: the programs for Linux and Windows, and what the page holds.
BUILDS = (
    ["--filter-platform", "x86_64-unknown-linux-musl"],
    ["--filter-platform", "x86_64-pc-windows-gnu"],
    ["--filter-platform", "wasm32-unknown-unknown", "--no-default-features", "--features", "browser"],
)


def metadata(build):
    call = ["cargo", "metadata", "--format-version", "1", "--locked", *build]
    return json.loads(subprocess.run(call, check=True, capture_output=True).stdout)


def built_in(meta):
    """Packages that the program links: normal dependencies from the root on."""
    nodes = {n["id"]: n for n in meta["resolve"]["nodes"]}
    open_, seen = [meta["resolve"]["root"]], set()
    while open_:
        node = open_.pop()
        if node in seen:
            continue
        seen.add(node)
        for dep in nodes[node]["deps"]:
            if any(kind["kind"] is None for kind in dep["dep_kinds"]):
                open_.append(dep["pkg"])
    return [p for p in meta["packages"] if p["id"] in seen and p["id"] != meta["resolve"]["root"]]


def texts(package):
    folder = pathlib.Path(package["manifest_path"]).parent
    files = sorted(f for f in folder.iterdir() if f.is_file() and f.name.upper().startswith(NAMES))
    return [f.read_text(encoding="utf-8", errors="replace").strip() for f in files]


def main():
    used, bare = {}, []
    packages = {p["id"]: p for build in BUILDS for p in built_in(metadata(build))}
    for package in sorted(packages.values(), key=lambda p: (p["name"], p["version"])):
        name = f"{package['name']} {package['version']} ({package['license']})"
        found = texts(package)
        for text in found:
            used.setdefault(text, []).append(name)
        if not found:
            bare.append(name)
    print("Licenses of what is built into Lapwright.\n")
    print("Crates without a license text of their own, under what they declare:")
    for name in bare:
        print(f"  {name}")
    for text, names in used.items():
        print("\n" + "-" * 80)
        for name in names:
            print(f"  {name}")
        print("\n" + text)


main()

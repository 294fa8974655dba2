"""Other people's programs accept what we publish.

Run by .ci/run with the Python of a fresh environment that holds frictionless and nbconvert:

    python tests/peers/check.py

Prints one line a check and ends with "N passed, N failed".

1. frictionless (the reference validator of Data Package 2.0 and Table Schema) finds each demo session, and the project's own
   reference tables, valid.
2. nbformat finds every committed notebook valid.
3. Python's zipfile and hashlib read what the last report packed and listed. (CITATION.cff is validated by cffconvert, the
   reference validator of that format, which lives in an environment of its own: see .ci/run.)
4. Jupyter's own exporter turns each committed notebook into HTML that holds the headline of every answer.

That the same exporter runs the notebooks and loses nothing is checked by tests/peers/jupyter-export.ts.
"""

import hashlib
import html
import json
import os
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

root = Path(__file__).resolve().parent.parent.parent
passed = failed = 0


def check(name, complaint):
    """Count one check; complaint is None or empty when all is well."""
    global passed, failed
    if complaint:
        failed += 1
        print(f"FAILED {name}: {complaint}")
    else:
        passed += 1
        print(f"ok {name}")


def headlines(notebook):
    """The first line of every answer that a notebook shows."""
    kind = "application/vnd.lakeproof.answer+json"
    return [
        output["data"][kind]["headline"]
        for cell in notebook["cells"] if cell["cell_type"] == "code"
        for output in cell["outputs"] if kind in output.get("data", {})
    ]


def exporter(arguments):
    """Run Jupyter's exporter; its complaint or None."""
    environment = {**os.environ, "JUPYTER_PLATFORM_DIRS": "1", "NO_COLOR": "1"}
    done = subprocess.run([sys.executable, "-m", "nbconvert", *arguments], cwd=root, env=environment,
                          capture_output=True, text=True, timeout=300)
    return None if done.returncode == 0 else done.stderr[-2000:]


def published(out):
    """What the last report published: packed data and checksums."""
    from frictionless import validate

    if not (out / "site.zip").is_file():
        check("there is a published site", "no out/site.zip: run the report first")
        return
    for path in [out / "site.zip", *sorted(out.glob("data/*.zip"))]:
        with zipfile.ZipFile(path) as packed, tempfile.TemporaryDirectory() as place:
            check(f"zipfile reads {path.name}", packed.testzip())
            packed.extractall(place)
            for sums in Path(place).rglob("SHA256SUMS"):
                lines = [line.split("  ", 1) for line in sums.read_text(encoding="utf-8").splitlines()]
                wrong = [name for wanted, name in lines
                         if hashlib.sha256((sums.parent / name).read_bytes()).hexdigest() != wanted]
                check(f"checksums in {path.name}", wrong or (None if lines else "none listed"))
            if path.parent.name == "data":
                report = validate(str(next(Path(place).glob("*/datapackage.json"))))
                check(f"frictionless: {path.name}", None if report.valid else str(report.flatten(["message"])[:5]))


def main():
    import nbformat
    from frictionless import validate

    for descriptor in [*sorted(root.glob("data/*/datapackage.json")), root / "shared" / "datapackage.json"]:
        report = validate(str(descriptor))
        errors = report.flatten(["title", "message"])
        check(f"frictionless: {descriptor.parent.name}", None if report.valid else str(errors[:5]))

    published(root / "out")

    notebooks = sorted(root.glob("notebooks/*.ipynb"))
    check("there are notebooks", None if notebooks else "none found")
    for path in notebooks:
        committed = json.loads(path.read_text(encoding="utf-8"))
        try:
            nbformat.validate(nbformat.from_dict(committed))
            check(f"nbformat: {path.name}", None)
        except Exception as complaint:  # the library raises several kinds
            check(f"nbformat: {path.name}", str(complaint)[:500])
        with tempfile.TemporaryDirectory() as place:
            complaint = exporter(["--to", "html", "--output", "page.html", "--output-dir", place, str(path)])
            if not complaint:
                page = html.unescape((Path(place) / "page.html").read_text(encoding="utf-8"))
                missing = [line for line in headlines(committed) if line not in page]
                complaint = f"not in the page: {missing}" if missing else None
            check(f"exporter's page holds the answers: {path.name}", complaint)
    check("an answer was looked for", None if any(
        headlines(json.loads(path.read_text(encoding="utf-8"))) for path in notebooks) else "no notebook shows one")

    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()

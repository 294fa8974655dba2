"""Other people's programs accept what we publish.

Run by .ci/run with the Python of a fresh environment that holds frictionless, nbconvert and nbclient:

    python tests/peers/check.py DENO

where DENO is the path of the Deno binary. Prints one line a check and ends with "N passed, N failed".

1. frictionless (the reference validator of Data Package 2.0 and Table Schema) finds each demo session valid.
2. Jupyter's own exporter runs every committed notebook with the Deno kernel and loses no display: the bundles it gets are
   those that the committed notebook holds. That client stops listening when the kernel turns idle, which ours does not.
3. The same exporter turns each into HTML that holds the headline of every answer.
4. nbformat finds every committed notebook valid.
"""

import html
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

root = Path(__file__).resolve().parent.parent.parent
deno = sys.argv[1]
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


def kernel_folder(place):
    """A kernel spec for this very Deno; interrupts go as messages, since a signal would kill the kernel."""
    spec = Path(place) / "kernels" / "deno"
    spec.mkdir(parents=True)
    (spec / "kernel.json").write_text(json.dumps({
        "argv": [deno, "jupyter", "--kernel", "--conn", "{connection_file}"],
        "display_name": "Deno",
        "language": "typescript",
        "interrupt_mode": "message",
    }))


def displays(notebook):
    """The display bundles of each code cell, text joined as programs may split it differently."""
    def joined(value):
        whole = isinstance(value, list) and all(isinstance(part, str) for part in value)
        return "".join(value) if whole else value
    return [
        [{kind: joined(data) for kind, data in output["data"].items()}
         for output in cell["outputs"] if output["output_type"] == "display_data"]
        for cell in notebook["cells"] if cell["cell_type"] == "code"
    ]


def first_difference(ours, theirs):
    """Where two lists of bundles differ, in words; None when they are equal."""
    if len(ours) != len(theirs):
        return f"{len(ours)} code cells against {len(theirs)}"
    for number, (mine, other) in enumerate(zip(ours, theirs), 1):
        if len(mine) != len(other):
            return f"code cell {number}: {len(mine)} displays committed, {len(other)} there"
        for bundle, copy in zip(mine, other):
            for kind in bundle:
                if bundle[kind] != copy.get(kind):
                    return f"code cell {number}: {kind} differs"
    return None


def exporter(arguments, place):
    """Run Jupyter's exporter; its complaint or None."""
    environment = {**os.environ, "JUPYTER_PATH": place, "JUPYTER_PLATFORM_DIRS": "1", "NO_COLOR": "1"}
    done = subprocess.run([sys.executable, "-m", "nbconvert", *arguments], cwd=root, env=environment,
                          capture_output=True, text=True, timeout=300)
    return None if done.returncode == 0 else done.stderr[-2000:]


def main():
    import nbformat
    from frictionless import validate

    for descriptor in sorted(root.glob("data/*/datapackage.json")):
        report = validate(str(descriptor))
        errors = report.flatten(["title", "message"])
        check(f"frictionless: {descriptor.parent.name}", None if report.valid else str(errors[:5]))

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
            kernel_folder(place)
            options = ["--execute", str(path), "--output-dir", place, "--ExecutePreprocessor.kernel_name=deno"]
            complaint = exporter(["--to", "notebook", "--output", "run.ipynb", *options], place)
            if not complaint:
                theirs = json.loads((Path(place) / "run.ipynb").read_text(encoding="utf-8"))
                complaint = first_difference(displays(committed), displays(theirs))
            check(f"exporter runs and loses nothing: {path.name}", complaint)
            complaint = exporter(["--to", "html", "--output", "page.html", *options], place)
            if not complaint:
                page = html.unescape((Path(place) / "page.html").read_text(encoding="utf-8"))
                headlines = [
                    bundle["application/vnd.lakeproof.answer+json"]["headline"]
                    for cell in displays(committed) for bundle in cell
                    if "application/vnd.lakeproof.answer+json" in bundle
                ]
                missing = [line for line in headlines if line not in page]
                complaint = f"not in the page: {missing}" if missing else None
            check(f"exporter's page holds the answers: {path.name}", complaint)

    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()

#!/usr/bin/env bash
# The papers of the awkward jobs, read by programs nobody here wrote: bash tests/paper/check_awkward.sh FOLDER
# Each PDF by qpdf and poppler, with every word of it (read_back.py); each table by Python's csv.
set -euo pipefail
jobs=${1:?where do the jobs lie? bash tests/paper/check_awkward.sh FOLDER}
here=$(cd "$(dirname "$0")" && pwd)
read_with=/usr/bin/python3
checked=$(mktemp)
trap 'rm -f "$checked"' EXIT

for job in empty crowded long_names scripts injected; do
    for pdf in "$jobs/$job"/*.pdf; do
        qpdf --check "$pdf" >"$checked" 2>&1 || { cat "$checked" >&2; exit 1; }
    done
    "$read_with" "$here/read_back.py" "$jobs/$job"
done

# What is awkward about them is there.
"$read_with" - "$jobs" <<'PYTHON'
import csv, glob, json, os, subprocess, sys

jobs = sys.argv[1]
def blocks(job, paper):
    with open(os.path.join(jobs, job, paper + ".json"), encoding="utf-8") as file:
        return json.load(file)["blocks"]
def text(job, paper):
    return subprocess.run(["pdftotext", os.path.join(jobs, job, paper + ".pdf"), "-"], check=True, capture_output=True, text=True).stdout

items = sum(block["type"] == "item" for block in blocks("crowded", "inspection"))
assert items >= 400, items
assert not any(block["type"] == "table" for block in blocks("empty", "inspection"))
assert "Nothing was recorded." in text("empty", "inspection")
assert "U+6797" in text("scripts", "punch") and "\u25a1" in text("scripts", "punch")
assert "<script>alert(1)</script>" in text("injected", "punch").replace("\n", "")

def pictures(paper):
    listed = subprocess.run(["pdfimages", "-list", os.path.join(jobs, "crowded", paper + ".pdf")], check=True, capture_output=True, text=True).stdout
    return [(int(row[3]), int(row[4])) for row in map(str.split, listed.splitlines()[2:]) if row[8] == "jpeg"]
assert pictures("inspection") == [(1500, 1125)], pictures("inspection")
assert (4000, 3000) in pictures("office"), pictures("office")  # the firm's own file has what came

cells = 0
for name in glob.glob(os.path.join(jobs, "injected", "*.csv")):
    with open(name, newline="", encoding="utf-8-sig") as file:
        for row in csv.reader(file, strict=True):
            for cell in row:
                assert not cell.startswith(("=", "@", "\t", "\r")), (name, cell)
                cells += "1+1|" in cell
assert cells > 10, cells
print(f"{items} findings on one paper; {cells} cells that are no formula")
PYTHON

#!/usr/bin/env bash
# The demo's papers, read by programs nobody here wrote: bash tests/paper/check_demo.sh FOLDER
# PDF by qpdf and poppler (read_back.py: fonts, and every word against the JSON form), the calendar by python3-icalendar, tables by Python's csv, JSON by its json.
set -euo pipefail
folder=${1:?where do the papers lie? bash tests/paper/check_demo.sh FOLDER}
read_with=/usr/bin/python3 # Debian's own, which has the module

pdfs=0
for pdf in "$folder"/*.pdf; do
    qpdf --check "$pdf" >"$folder/checked.txt" 2>&1 || { cat "$folder/checked.txt" >&2; exit 1; }
    pdftotext "$pdf" - | tr '\n' ' ' >"$folder/copied.txt"
    grep -q "\(Check value of the record\|Prüfwert der Aufzeichnung\): [0-9a-f]\{64\}" "$folder/copied.txt" ||
        { echo "$pdf: its check value cannot be copied" >&2; exit 1; }
    pdfs=$((pdfs + 1))
done
[ "$pdfs" -ge 9 ] || { echo "only $pdfs PDFs" >&2; exit 1; }

# Read back against the JSON form. A form with one word more has to be found first, and one with a character that nobody drew.
here=$(cd "$(dirname "$0")" && pwd)
spoiled=$(mktemp -d)
trap 'rm -rf "$spoiled"' EXIT
cp "$folder/stages.pdf" "$spoiled"
for change in 's/sign-off sheet/sign-off list/' 's/Stage sign-off/Stage sign-o\xEF\xAC\x80\xE6\x9E\x97/'; do
    sed "$change" "$folder/stages.json" >"$spoiled/stages.json"
    if "$read_with" "$here/read_back.py" "$spoiled" >"$spoiled/said.txt" || ! grep -q "not in its text" "$spoiled/said.txt"; then
        echo "a spoiled form was not found: $change" >&2
        exit 1
    fi
done
grep -q "named as not drawn: .*0x6797" "$spoiled/said.txt" || { echo "a character that lacks was not found" >&2; exit 1; }
"$read_with" "$here/read_back.py" "$folder"

"$read_with" - "$folder" <<'PYTHON'
import csv, datetime, glob, json, os, sys
from icalendar import Calendar

folder = sys.argv[1]
with open(os.path.join(folder, "care.ics"), "rb") as file:
    events = [event for event in Calendar.from_ical(file.read()).walk("VEVENT")]
days = [event.decoded("DTSTART") for event in events]
assert days == sorted(days) and len(set(days)) == len(days), days
assert days[0] == datetime.date(2027, 9, 24), days[0]
assert days[-1] == datetime.date(2036, 9, 23), days[-1]
assert len(days) == 10, len(days)
assert len({str(event["UID"]) for event in events}) == len(events)
assert all(event.walk("VALARM") for event in events)

tables = 0
for name in glob.glob(os.path.join(folder, "*.csv")):
    with open(name, newline="", encoding="utf-8-sig") as file:
        rows = list(csv.reader(file, strict=True))
    assert len(rows) > 3, name
    for row in rows:
        for cell in row:
            assert not cell.startswith(("=", "@")), (name, cell)
    tables += len(rows)
for name in glob.glob(os.path.join(folder, "*.json")):
    with open(name, encoding="utf-8") as file:
        json.load(file)
print(f"{len(events)} events, {tables} rows of tables")
PYTHON
echo "papers: $pdfs PDFs sound"

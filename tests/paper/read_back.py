#!/usr/bin/python3
"""Papers as PDF read back by poppler and held against the same paper as JSON: read_back.py FOLDER

Every font is embedded; every word of the JSON form stands in the PDF, in its place in the running text; characters the typeface lacks are
boxes, and the last line of the paper names exactly those; the foot of the paper does not stand alone on a page. Prints one line a fault; ends with 1 when there is one."""
import glob
import json
import os
import re
import subprocess
import sys
import unicodedata

PT = 72 / 25.4
FRAME = ["-r", "72", "-x", "0", "-W", "596"]  # the text without the running lines above and below it; pdf_style.h
TOP_PT, BOTTOM_PT = round(15 * PT), round((297 - 16) * PT)
UNSEEN = re.compile("[\u200b-\u200f\u2068\u2069\ufe00-\ufe0f]")
NAMED = re.compile(r"(?:U\+[0-9A-F]{4,6})(?:, ?U\+[0-9A-F]{4,6})*")
NOT_SHOWN = {"type", "level", "weight", "column", "hash", "struck", "language", "title"}


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def typeface():
    """Every code that the typeface has, as fontconfig reads its file."""
    listed = run("fc-list", ":family=Carlito:style=Regular", "file").split(":")[0].strip()
    codes = set()
    for span in run("fc-query", "--format", "%{charset}", listed).split():
        first, _, last = span.partition("-")
        codes.update(range(int(first, 16), int(last or first, 16) + 1))
    assert len(codes) > 500, listed
    return codes


def texts(value, key=""):
    """Every text that a paper shows, each as one string."""
    if isinstance(value, str):
        if key not in NOT_SHOWN and value:
            yield value
    elif isinstance(value, list):
        if value and all(isinstance(run, dict) and set(run) == {"text", "weight"} for run in value):
            yield "".join(run["text"] for run in value)
        else:
            for one in value:
                yield from texts(one, key)
    elif isinstance(value, dict):
        for name, one in value.items():
            yield from texts(one, name)


def drawn(text, has):
    """What the paper shows of a text, without its blanks; and the characters it shows as boxes."""
    out, boxed = "", set()
    for character in UNSEEN.sub("", text):
        code = ord(character)
        right_to_left = unicodedata.bidirectional(character) in ("R", "AL", "AN") or 0x0590 <= code <= 0x08FF
        steers = unicodedata.category(character) in ("Cc", "Cf", "Zl", "Zp", "Cs") and character not in "\n\u00ad"
        if character.isspace() and not steers:
            continue
        if character == "\n":
            continue
        if code in has and not right_to_left and not steers:
            out += character
        else:
            out += "\u25a1"
            boxed.add(code)
    return out, boxed


def bare(text):
    return re.sub(r"[\s\u00ad]", "", text)


def pages_of(pdf):
    text = run("pdftotext", "-raw", *FRAME, "-y", str(TOP_PT), "-H", str(BOTTOM_PT - TOP_PT), pdf, "-")
    return [bare(page) for page in text.rstrip("\f").split("\f")]


def faults_of(pdf, has):
    for line in run("pdffonts", pdf).splitlines()[2:]:
        if line.split()[-5:-2] != ["yes", "yes", "yes"]:
            yield f"a font is not embedded as a subset with a map back to text: {line}"
    form = pdf[:-4] + ".json"
    if not os.path.exists(form):
        # In another language the JSON form has a program's figures, not the page's: completion_de.pdf has none beside it.
        if not re.search(r"_[a-z]{2}\.pdf$", pdf):
            yield "there is no JSON form of it"
        return
    with open(form, encoding="utf-8") as file:
        paper = json.load(file)
    pages = pages_of(pdf)
    body = "".join(pages)
    cautions = paper["foot"]["cautions"]
    if len(pages) > 1 and pages[-1].startswith(bare(drawn(cautions[0], has)[0])):
        yield "the foot stands alone on the last page"
    boxed = set()
    for text in texts(paper):
        wanted, lacking = drawn(text, has)
        boxed |= lacking
        if bare(wanted) not in body:
            yield f"not in its text: {text[:160]!r}"
    # The last line of the paper names what could not be drawn, and nothing else is said to lack.
    last = re.search(NAMED.pattern.replace(" ?", "") + r"[^U]{0,80}$", body)
    named = {int(code, 16) for code in re.findall(r"U\+([0-9A-F]{4,6})", last.group(0))} if last else set()
    if named != boxed:
        yield f"named as not drawn: {sorted(map(hex, named))}, in truth {sorted(map(hex, boxed))}"


def main(folder):
    has = typeface()
    pdfs = sorted(glob.glob(os.path.join(folder, "*.pdf")))
    faults = 0
    for pdf in pdfs:
        for fault in faults_of(pdf, has):
            print(f"{pdf}: {fault}")
            faults += 1
    print(f"{len(pdfs)} PDFs read back, {faults} faults")
    return 0 if pdfs and faults == 0 else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))

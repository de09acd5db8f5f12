#!/usr/bin/python3
"""A completion record with twelve photographs as PDF: by undersheet, against Chromium printing the same paper from HTML.

paper_pdf.py PROGRAM [PAIRS]: PROGRAM is an optimised build. Both are started anew each time, in one run and in turns, and who goes first
alternates. Wall time, processor time of the whole family of processes, and memory: of undersheet the most that was resident; of Chromium the
most that all its processes had together, what they share counted once (the sum of Pss), in a run of its own so that looking does not slow
down what is timed. The goal: 20 times as fast and a tenth of the memory. WIDE_PX=4000 takes
photographs as large as a phone's instead of 1600 points wide ones. Needs what tests/setup.sh --all installs, and build/page_checks."""
import ctypes
import glob
import json
import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

HERE = os.path.dirname(os.path.abspath(__file__))
TREE = os.path.dirname(os.path.dirname(HERE))
FASTER, SMALLER = 20, 10  # the goal
CHROMIUM = os.environ.get("CHROMIUM", "/usr/bin/chromium")
ARGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--no-first-run"]
PR_SET_CHILD_SUBREAPER = 36  # prctl(2)


def family():
    """Every process that came from this one, however often its parent has ended since."""
    parents = {}
    for stat in glob.glob("/proc/[0-9]*/stat"):
        try:
            with open(stat, encoding="utf-8", errors="replace") as file:
                line = file.read()
        except OSError:
            continue
        parents[int(line.split(" ", 1)[0])] = int(line.rsplit(")", 1)[1].split()[1])
    found, fresh = set(), {os.getpid()}
    while fresh:
        fresh = {child for child, parent in parents.items() if parent in fresh}
        found |= fresh
    return found


def shared_once_kb(processes):
    total = 0
    for process in processes:
        try:
            with open(f"/proc/{process}/smaps_rollup", encoding="ascii") as file:
                total += sum(int(line.split()[1]) for line in file if line.startswith("Pss:"))
        except OSError:
            pass  # it has just ended
    return total


def started(command, look):
    """In a process of its own, which adopts and waits for every grandchild, so that none is left out of the sum."""
    ctypes.CDLL(None).prctl(PR_SET_CHILD_SUBREAPER, 1, 0, 0, 0)
    peak_kb, most = 0, 0
    begun = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    while look and process.poll() is None:
        members = family()
        most = max(most, len(members))
        peak_kb = max(peak_kb, shared_once_kb(members))
        time.sleep(0.005)
    code = process.wait()
    wall_s = time.monotonic() - begun
    while True:
        try:
            os.wait()
        except ChildProcessError:
            break
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return {"code": code, "wall_s": wall_s, "cpu_s": used.ru_utime + used.ru_stime, "rss_mb": used.ru_maxrss / 1024,
            "pss_mb": peak_kb / 1024, "processes": most}


def measured(command, look=False):
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reader)
        with os.fdopen(writer, "w") as out:
            json.dump(started(command, look), out)
        os._exit(0)
    os.close(writer)
    with os.fdopen(reader) as said:
        found = json.load(said)
    os.waitpid(child, 0)
    if found["code"] != 0:
        sys.exit(f"paper_pdf: ended with {found['code']}: {' '.join(command)}")
    return found


def book(folder, program):
    """The small dormer as it was found, with twelve photographs."""
    env = dict(os.environ, UNDERSHEET_BOOK=os.path.join(folder, "bench.book"), XDG_DATA_HOME=folder, NO_COLOR="1",
               PAGE_TOOLS=os.path.join(TREE, "build", "page_checks"), CHROMIUM_ARGS=" ".join(ARGS))
    subprocess.run(["node", os.path.join(HERE, "photographs.mjs"), folder], env=env, check=True)

    def typed(*words, stdin=""):
        subprocess.run([program, *words], env=dict(env, UNDERSHEET_CLOCK="2026-06-11T16:00:00+01:00"), input=stdin, text=True, check=True,
                       stdout=subprocess.DEVNULL)

    typed("start", env["UNDERSHEET_BOOK"], "--firm", "Pell & Daughter", "--phone", "01632 960 118", "--address", "4 Ropewalk")
    typed("people", "add", "Isolde Pell", "--role", "installer", "--initials", "IP")
    typed("people", "add", "Wren Pell", "--role", "installer", "--initials", "WP", "--by", "IP")
    typed("jobs", "new", "A-07", "--roof", "small dormer", "--by", "IP")
    moves = ('"kind":"photo"', '"kind":"begin"', '"kind":"tick"', '"kind":"sign"', '"kind":"use"')
    with open(os.path.join(TREE, "fixtures", "small_dormer", "entries.jsonl"), encoding="utf-8") as rows:
        typed("record", "--from", "-", stdin="".join(row for row in rows if not any(move in row for move in moves)))
    for number in range(1, 13):
        typed("photo", os.path.join(folder, f"view_{number}.jpg"), "--of", "final", "--shows", f"view {number} of 12", "--by", "IP")
    return env


def pictures_in(pdf):
    listed = subprocess.run(["pdfimages", "-list", pdf], check=True, capture_output=True, text=True).stdout
    return sum(line.split()[2] == "image" for line in listed.splitlines()[2:])


def printed(name, unit, ours, theirs):
    print(f"{name:14} undersheet {ours:8.2f} {unit}, Chromium {theirs:8.2f} {unit}, {theirs / ours:6.1f} to 1")
    return theirs / ours


def main(program, pairs):
    folder = tempfile.mkdtemp()
    try:
        os.environ.update(book(folder, program))
        html, ours_pdf, theirs_pdf = (os.path.join(folder, name) for name in ("completion.html", "ours.pdf", "theirs.pdf"))
        subprocess.run([program, "paper", "completion", "-o", html], check=True, stdout=subprocess.DEVNULL)
        ours = [program, "paper", "completion", "-o", ours_pdf]
        theirs = [CHROMIUM, "--headless", *ARGS, f"--user-data-dir={folder}/chromium", f"--print-to-pdf={theirs_pdf}", "file://" + html]
        measured(ours), measured(theirs)  # neither pays for a cold start
        for pdf in (ours_pdf, theirs_pdf):
            if pictures_in(pdf) < 12:
                sys.exit(f"paper_pdf: fewer than twelve pictures in {pdf}")
        runs = {"ours": [], "theirs": []}
        for pair in range(pairs):
            for name in ("ours", "theirs") if pair % 2 == 0 else ("theirs", "ours"):
                runs[name].append(measured(ours if name == "ours" else theirs))
        looked = measured(theirs, look=True)
        middle = {name: {key: statistics.median(run[key] for run in all_runs) for key in ("wall_s", "cpu_s", "rss_mb")}
                  for name, all_runs in runs.items()}
        size = [os.path.getsize(path) / 1e6 for path in (html, ours_pdf, theirs_pdf)]
        print(f"{pairs} pairs, medians; HTML {size[0]:.1f} MB, PDF {size[1]:.1f} and {size[2]:.1f} MB; Chromium had {looked['processes']} processes")
        wall = printed("wall time", "s", middle["ours"]["wall_s"], middle["theirs"]["wall_s"])
        printed("processor", "s", middle["ours"]["cpu_s"], middle["theirs"]["cpu_s"])
        memory = printed("memory at most", "MB", middle["ours"]["rss_mb"], looked["pss_mb"])
        ratios = sorted(b["wall_s"] / a["wall_s"] for a, b in zip(runs["ours"], runs["theirs"]))
        print(f"wall time, pair by pair: {ratios[0]:.1f} to {ratios[-1]:.1f}")
        print(f"goal, {FASTER} times as fast: {'met' if wall >= FASTER else 'not met'}; "
              f"a {SMALLER}th of the memory: {'met' if memory >= SMALLER else 'not met'}")
    finally:
        shutil.rmtree(folder)


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit("paper_pdf: which program? paper_pdf.py PROGRAM [PAIRS]")
    main(os.path.abspath(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 9)

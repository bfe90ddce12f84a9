#!/usr/bin/env python3
"""days.py BALLBAND: what a calendar says is what was written, as another program reads it.

Makes a studio whose titles have commas, semicolons, backslashes, line ends and letters of several octets, and compares what
icalendar reads with the titles; then makes it again on another day of the clock's and compares the bytes."""
import os, subprocess, sys, tempfile
from datetime import date
from pathlib import Path

HOME = Path(os.environ.get("CHECKERS_HOME") or Path.home() / ".cache/site-checkers")
if Path(sys.prefix).resolve() != (HOME / "py").resolve():  # run again inside the checkers' own Python
    os.execv(HOME / "py/bin/python", [str(HOME / "py/bin/python"), *sys.argv])
import icalendar

if len(sys.argv) < 2:
    sys.exit("usage: days.py BALLBAND")
BALLBAND = Path(sys.argv[1]).resolve()
TITLES = {
    "commas": "Mittens, mitts, and more",
    "semicolons": "Fish; birds; reeds",
    "umlauts": "Größere Öhrchen für Übermütige – " + "ß" * 60,
    "backslash": "A \\ B \\n C \\, D",
    "line-end": "One\nTwo",
    "wool": "\U0001f9f6" * 40,
    "quotes": "\"Reeds\": it's <b>bold</b> & so on",
}
passed = failed = 0


def check(what, right, seen=""):
    global passed, failed
    if right:
        passed += 1
    else:
        failed += 1
        print(f"BAD {what}: {seen!r}")


def quoted(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


with tempfile.TemporaryDirectory() as folder:
    studio = Path(folder) / "studio"
    (studio / "patterns").mkdir(parents=True)
    (studio / "studio.yaml").write_text("title: Days, and more\nurl: https://example.org/knits\n")
    for key, title in TITLES.items():
        (studio / "patterns" / f"{key}.md").write_text(f"---\ntitle: {quoted(title)}\npublished: 2026-03-14\n---\n", "utf-8")
    (studio / "patterns/call.md").write_text(
        "---\ntitle: Call\nstage: test knit\npublished: 2027-02-01\n"
        'test knit: { opens: 2026-11-13, closes: 2026-12-31, sizes wanted: 2, apply: "https://example.org/apply" }\n---\n')

    def make(name):
        subprocess.run([BALLBAND, "make", "--studio", studio, "--to", Path(folder) / name, "--as-of", "2026-11-25"],
                       check=True, capture_output=True)
        return (Path(folder) / name / "calendar.ics").read_bytes()

    raw = make("site")
    check("two makes give the same bytes", raw == make("again"))
    calendar = icalendar.Calendar.from_ical(raw)
    # A text since RFC 7986, which icalendar does not know and hands on as it stands.
    check("name", calendar["NAME"].to_ical() == b"Days\\, and more", calendar["NAME"])
    events = {str(e["UID"]).split("@")[0]: e for e in calendar.walk("VEVENT")}
    for key, title in TITLES.items():
        event = events[f"pattern-{key}-published"]
        check(f"summary of {key}", str(event["SUMMARY"]) == f"{title} is published", str(event["SUMMARY"]))
        check(f"day of {key}", event["DTSTART"].dt == date(2026, 3, 14), event["DTSTART"].dt)
        check(f"address of {key}", str(event["URL"]) == f"https://example.org/knits/patterns/{key}/", str(event["URL"]))
    days = {key: str(e["DTSTART"].dt) for key, e in events.items() if key.startswith("pattern-call")}
    want = {"pattern-call-test-knit-opens": "2026-11-13", "pattern-call-test-knit-closes": "2026-12-31",
            "pattern-call-published": "2027-02-01"}
    check("days of the call", days == want, days)
    check("whole days", all(type(e["DTSTART"].dt) is date for e in events.values()))

print(f"{passed} passed, {failed} failed")
sys.exit(1 if failed or not passed else 0)

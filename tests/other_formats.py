"""What other programs read in the calendar and in the table, as JSON on one line.

    python tests/other_formats.py FOLDER      with due.ics and jobs.csv in it

A job.zip in the folder is read too, and packed anew as stored.zip and deflated.zip.
"""

import csv
import hashlib
import json
import sys
import zipfile
from pathlib import Path

from icalendar import Calendar


def events(path):
    calendar = Calendar.from_ical(path.read_bytes())
    for event in calendar.walk("VEVENT"):
        alarm = event.walk("VALARM")[0]
        yield {
            "uid": str(event["UID"]), "day": event.decoded("DTSTART").isoformat(),
            "stamp": event.decoded("DTSTAMP").isoformat(), "summary": str(event["SUMMARY"]),
            "description": str(event["DESCRIPTION"]), "alarm_s": alarm.decoded("TRIGGER").total_seconds(),
        }


def pieces(folder):
    """What zipfile finds in job.zip: name, method, SHA-256; its own check first."""
    if not (folder / "job.zip").exists():
        return None
    with zipfile.ZipFile(folder / "job.zip") as archive:
        assert archive.testzip() is None
        found = [(it.filename, it.compress_type, archive.read(it)) for it in archive.infolist()]
    for name, method in [("stored.zip", zipfile.ZIP_STORED), ("deflated.zip", zipfile.ZIP_DEFLATED)]:
        with zipfile.ZipFile(folder / name, "w", method) as anew:
            for piece, _, data in found:
                anew.writestr(piece, data)
    return [[piece, method, hashlib.sha256(data).hexdigest()] for piece, method, data in found]


def main(folder):
    with open(folder / "jobs.csv", encoding="utf-8", newline="") as file:
        table = list(csv.DictReader(file))
    print(json.dumps({"events": list(events(folder / "due.ics")), "table": table,
                      "zip": pieces(folder)}))


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve())

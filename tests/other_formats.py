"""What other programs read in the calendar and in the lines, as JSON on one line.

    python tests/other_formats.py FOLDER      with due.ics, jobs.csv and entries.jsonl in it
"""

import csv
import json
import os
import sys
from pathlib import Path

import duckdb
from icalendar import Calendar

HERE = Path(__file__).parent


def events(path):
    calendar = Calendar.from_ical(path.read_bytes())
    for event in calendar.walk("VEVENT"):
        alarm = event.walk("VALARM")[0]
        yield {
            "uid": str(event["UID"]), "day": event.decoded("DTSTART").isoformat(),
            "stamp": event.decoded("DTSTAMP").isoformat(), "summary": str(event["SUMMARY"]),
            "description": str(event["DESCRIPTION"]), "alarm_s": alarm.decoded("TRIGGER").total_seconds(),
        }


def answers(folder):
    """The rows of every question of warehouse.sql, in its order."""
    os.chdir(folder)
    database = duckdb.connect()
    for statement in database.extract_statements((HERE / "warehouse.sql").read_text()):
        rows = database.execute(statement).fetchall()
        if statement.type == duckdb.StatementType.SELECT:
            yield [[str(cell) for cell in row] for row in rows]


def main(folder):
    with open(folder / "jobs.csv", encoding="utf-8", newline="") as file:
        table = list(csv.DictReader(file))
    print(json.dumps({"events": list(events(folder / "due.ics")), "table": table, "answers": list(answers(folder))}))


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve())

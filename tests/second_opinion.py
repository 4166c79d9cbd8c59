"""A second opinion on exported jobs: every number again, by another program, from the file alone.

    cargo run --bin hubslate -- verify --json JOB.json … > said.jsonl
    python tests/second_opinion.py said.jsonl

Written from the schema of the file (public/schema/job-1.schema.json) and from these sources:
GUM (JCGM 100:2008) 4.2, 4.4.5, 5.1.2, F.2.2.1, G.4.1; JCGM 106:2012 7.3 and 8.3; ISO 14253-1:2017;
RFC 8785 and FIPS 180-4 for the digests. What is common practice and has no source (the floors of
the budget, the house limit, the rules of the decision) stands in README.md.
It reads what the command said, opens each file that is named there, and compares.
"""

import hashlib
import json
import sys

import numpy as np
from scipy import stats

MM = {"mm": 1.0, "um": 1e-3, "in": 25.4, "thou": 0.0254}
HOUSE = {"mm": 4 * 0.0254, "source": "house", "way": {"method": "axial", "place": "pilot"}}
UNSEEN_MM = 0.5  # a turn worth less may be gone round unseen: its turns are asked
FLOOR_MM = 0.005  # of repeatability and of a dial without a certificate
RADIAN = {"deg": np.pi / 180, "turn": 2 * np.pi}
EYE_DEG = 5.0  # the slant of a tip, judged by eye
FLEX = {"flex_none": 0.25, "flex_half": 0.5, "flex_one": 1.0}
SPUN = {"smooth_quiet": (0, 0), "rough": (1, 0), "noisy": (0, 1), "rough_noisy": (1, 1), "grinds_hot": (1, 1)}
FELT = ["nothing", "just_felt", "seen", "knocks"]
GRAVEST = ["stop", "replace", "watch", "keep"]


# The file: entries in order, struck ones out, the last statement of each fact.

def number(text):
    return float(text.replace(",", ".").replace("\u2212", "-"))


def in_order(entries):
    """Each entry after all that it saw; among those that are free, the smallest id first."""
    left = {entry["id"]: entry for entry in entries}
    done = []
    while left:
        free = [i for i, e in left.items() if not any(a in left for a in e["after"])]
        done.append(left.pop(min(free)))
    return done


def counting(entries):
    struck = set()
    for entry in reversed(entries):
        if entry["id"] not in struck:
            struck.update(entry["what"].get("strike", {}).get("hits", []))
    return [entry for entry in entries if entry["id"] not in struck]


class Job:
    """One job told by one phone after another, so that the last statement of a fact holds."""

    def __init__(self, entries):
        self.told = [(i, *next(iter(e["what"].items()))) for i, e in enumerate(in_order(entries))]
        stands = {e["id"] for e in counting(in_order(entries))}
        self.told = [t for t, e in zip(self.told, in_order(entries)) if e["id"] in stands]

    def last(self, kind, fits=lambda body: True):
        return next((body for _, k, body in reversed(self.told) if k == kind and fits(body)), None)

    def reply(self, step):
        body = self.last("answered", lambda b: b["step"] == step)
        return body["reply"] if body else {}

    def place(self, step):
        return max((i for i, k, b in self.told if k == "answered" and b["step"] == step), default=-1)

    def pick(self, step):
        return self.reply(step).get("picked", {}).get("pick")

    def limit(self):
        card = self.last("card", lambda b: b["item"] == "play_limit") or self.on_paper() or {}
        if "play" not in card:
            return HOUSE
        most = card["play"]["most"]
        return {"mm": number(most["number"]) * MM[most["unit"]], "source": "maker", "way": card["play"]["way"]}

    def on_paper(self):
        """The limit of an earlier visit's paper: L|play_limit|source|page|most|method|place|rig|newtons."""
        lines = (self.last("from_paper") or {}).get("lines", [])
        line = next((line.split("|") for line in lines if line.startswith("L|play_limit|")), None)
        if line is None:
            return None
        most, way = line[4], dict(zip(("method", "place", "rig", "force_n"), line[5:]))
        digits = most.rstrip("abcdefghijklmnopqrstuvwxyz")
        if way.get("force_n"):
            way["force_n"] = float(way["force_n"])
        way = {name: value for name, value in way.items() if value}
        return {"play": {"most": {"number": digits, "unit": most[len(digits):]}, "way": way}}

    def reading(self, corner, when, nth, number_, side):
        def is_it(b):
            return (b["corner"], b["when"], b["set"], b["round"], b["side"]) == (corner, when, nth, number_, side)
        found = [(i, b) for i, k, b in self.told if k == "reading" and is_it(b)]
        return found[-1] if found else None

    def marks(self, corner, when, nth):
        step = {("before", 1): f"rig_push@{corner}", ("before", 2): f"rig_again@{corner}"}
        flex = self.pick(step.get((when, nth), f"rig_push@{corner}.2"))
        marks = [] if flex in FLEX else ["flex_not_tested"]
        nut = self.pick(f"nut_found@{corner}")
        item = {"corner": corner, "group": "axle_nut", "number": 1}
        loosened = [i for i, k, b in self.told if k == "moved" and item in b["items"]]
        pulls = [self.reading(corner, when, nth, n, "pull") for n in (3, 2, 1)]
        read = next((pull[0] for pull in pulls if pull), None)
        early = bool(loosened) and read is not None and loosened[0] < read
        if when == "before" and nut != "nut_retorqued" and (nut == "nut_slack" or early):
            marks.append("nut_slack")
        return FLEX.get(flex, 1.0), marks


    def slant(self, corner, when, nth):
        """How far off square the tip stood, in radians; none beyond what a cosine corrects."""
        told = self.last("tip_angle", lambda b: (b["corner"], b["when"], b["set"]) == (corner, when, nth))
        turn = number(told["angle"]["number"]) * RADIAN[told["angle"]["unit"]] if told else None
        return turn if told and abs(turn) <= np.radians(60) else None

    def dial_error(self, dial):
        """Half width of the dial's error: its certificate's, else a division, no less than the floor."""
        kit = self.last("carried") or {}
        error = kit.get("dial_error") if kit.get("dial") == dial else None
        if error:
            return abs(number(error["number"]) * MM[error["unit"]])
        return max(dial["graduation_mm"], FLOOR_MM)


# One set: play, uncertainty, conformity.

def play(dial, push, pull, turns):
    """The way with its told turns; else the short way round, none beyond a quarter turn."""
    face = dial["divisions_per_turn"]
    if max(abs(push), abs(pull)) > face:
        return None
    if turns is not None:
        return abs(pull - push + turns * face) * dial["graduation_mm"]
    way = (pull - push) % face
    way = min(way, face - way)
    unseen = face * dial["graduation_mm"] < UNSEEN_MM
    return None if way > face / 4 or unseen else way * dial["graduation_mm"]


def differs(way, limit):
    if way["method"] != limit["method"]:
        return "method"
    if way["place"] != limit["place"]:
        return "place"
    if limit.get("rig") and way.get("rig") != limit["rig"]:
        return "rig"
    used, named = way.get("force_n"), limit.get("force_n")
    if (used is None) != (named is None) or (named is not None and abs(used - named) > abs(named) / 10):
        return "force"
    return None


def measure(job, corner, when, nth):
    rounds = []
    for n in (1, 2, 3):
        pull = job.reading(corner, when, nth, n, "pull")
        if pull:
            push = job.reading(corner, when, nth, n, "push")
            rounds.append((number(push[1]["divisions"]) if push else 0.0, pull[1]))
    if not rounds:
        return None
    dial, way = rounds[0][1]["dial"], rounds[0][1]["way"]
    plays = [play(dial, push, number(pull["divisions"]), pull.get("turns")) for push, pull in rounds]
    if None in plays:
        return {"fault": "round"}
    slant = job.slant(corner, when, nth)
    plays = [one * np.cos(slant or 0.0) for one in plays]
    flex, marks = job.marks(corner, when, nth)
    limit, division, n = job.limit(), dial["graduation_mm"], len(plays)
    mean = float(np.mean(plays))
    scatter = float(np.std(plays, ddof=1)) if n > 1 else 0.0
    scatters = scatter > FLOOR_MM
    parts = {
        "repeatability": ((scatter if scatters else FLOOR_MM) / np.sqrt(n), n - 1 if scatters else None),
        "resolution": (division / np.sqrt(12) * np.sqrt(2), None),
        "indicator": (job.dial_error(dial) / np.sqrt(3), None),
        "base_flex": (flex * division / np.sqrt(3), None),
    }
    if slant is not None:
        parts["tip_angle"] = (mean * np.tan(abs(slant)) * np.radians(EYE_DEG) / np.sqrt(3), None)
    u = float(np.sqrt(sum(part ** 2 for part, _ in parts.values())))
    dof = u ** 4 * (n - 1) / parts["repeatability"][0] ** 4 if scatters else None
    factor = stats.t(dof).ppf if dof else stats.norm.ppf
    g, upper = float(factor(0.95)), limit["mm"]
    on_it = upper if abs(mean - upper) < 1e-9 else mean
    spread = max(plays) - min(plays)
    wide = spread > division + 1e-9 or (upper > 0 and spread > upper / 5 + 1e-9)
    steps = np.diff(plays)
    trend = "steady" if not wide else "scattered" if n < 3 else \
        "rising" if all(steps >= 0) else "falling" if all(steps <= 0) else "scattered"
    refused = marks[0] if marks else differs(way, limit["way"])
    if refused:
        conformity = "no_comparison"
    elif upper <= 0:
        conformity = "no_movement_seen" if max(plays) < division / 2 else "movement_seen"
    elif on_it <= upper:
        conformity = "proven_in" if on_it <= upper - g * u else "in_not_proven"
    else:
        conformity = "proven_out" if on_it > upper + g * u else "out_not_proven"
    compared = conformity not in ("no_comparison", "no_movement_seen")
    return {"fault": None, "over": conformity in ("out_not_proven", "proven_out", "movement_seen"),
            "proven_over": compared and on_it > upper + g * u, "measured": {
        "plays": plays, "mean": mean, "median": float(np.median(plays)), "spread": spread,
        "drift": plays[-1] - plays[0], "trend": trend, "asks_to_rig_again": wide,
        "components": {name: {"u": float(part), "dof": d} for name, (part, d) in parts.items()},
        "u": u, "dof": dof, "expanded95": float(factor(0.975)) * u, "g": g, "guard_band": g * u,
        "limit": upper, "limit_source": limit["source"], "conformity": conformity,
        "conformance": float(stats.norm.cdf((upper - on_it) / u)) if compared else None,
        "no_comparison": refused}}


def sets(job):
    found = []
    for corner in ("front_left", "front_right", "rear_left", "rear_right"):
        for when in ("before", "after"):
            for nth in (1, 2):
                one = measure(job, corner, when, nth)
                if one:
                    name = {"corner": corner, "when": when, "nth": nth}
                    found.append({**name, "measured": one.get("measured"), "fault": one["fault"]})
    return found


# The decision on a corner, and the proof after the work.

def by_dial(taken):
    if any(one["proven_over"] for one in taken):
        return "replace", "over_proven"
    if not taken:
        return None
    last = taken[-1]["measured"]
    if not taken[-1]["over"] and any(one["over"] for one in taken):
        return "watch", "sets_disagree"
    house = last["limit_source"] == "house"
    return {
        "out_not_proven": ("replace", "over_not_proven"), "movement_seen": ("replace", "over_not_proven"),
        "proven_in": ("keep", "no_maker_limit" if house else "under_proven"),
        "in_not_proven": ("keep", "no_maker_limit") if house else ("watch", "under_not_proven"),
        "no_movement_seen": ("keep", "no_movement_seen"),
        "no_comparison": ("keep", f"no_comparison.{last['no_comparison']}"),
    }[last["conformity"]]


def decide(job, corner):
    found = []
    checks = {c["check"]: c["answer"] for c in job.reply("before_driving").get("checked", {}).get("checks", [])}
    spun = job.pick(f"spin_hand@{corner}")
    at_card = job.reply("nuts_to_card").get("said", {}).get("answer") == "yes"
    at_card = at_card and job.place("before_driving") < job.place("nuts_to_card")
    signs = {"visible_tilt": checks.get("wheel_upright") == "no",
             "loose_wheel_fasteners": checks.get("nuts_as_found") == "no" and not at_card,
             "loose_axle_nut": job.pick(f"nut_found@{corner}") == "nut_slack",
             "grinding_with_heat": spun == "grinds_hot"}
    found += [("stop", f"must_not_drive.{sign}") for sign, seen in signs.items() if seen]
    rocked = [job.reply(f"rock_{way}@{corner}").get("felt", {}).get("felt") for way in ("twelve_six", "nine_three", "axial")]
    felt = max((f for f in rocked if f), key=FELT.index, default=None)
    held = job.pick(f"brake_held@{corner}")
    where = {"play_gone": "in_bearing", "play_stays": "elsewhere"}.get(held, "not_located")
    if felt is None:
        found.append(("watch", "not_looked_at.rock"))
    elif felt != "nothing":
        grave = "stop" if felt != "just_felt" else "replace" if where == "in_bearing" else "watch"
        found.append((grave, f"loose_{where}.{felt}"))
    rough, noisy = SPUN.get(spun, (None, None))
    for sensed, word, test in ((rough, "rough", "hand"), (noisy, "noisy", "ear")):
        if sensed is None:
            found.append(("watch", f"not_looked_at.{test}"))
        elif sensed:
            found.append(("replace", word))
    taken = [measure(job, corner, "before", nth) for nth in (1, 2)]
    taken = [one for one in taken if one and one["fault"] is None]
    dial = by_dial(taken)
    found += [dial] if dial else []
    if (rough, noisy, felt) == (0, 0, "nothing"):
        found.append(("keep", "smooth_and_quiet"))
    found.sort(key=lambda f: GRAVEST.index(f[0]))
    again = len(taken) == 1 and taken[0]["over"] and not taken[0]["proven_over"]
    decision = found[0][0] if found else "watch"
    return {"decision": decision, "again": again, "reasons": [reason for _, reason in found]}


def proved(job, corner):
    one = measure(job, corner, "after", 1)
    one = one if one and one["fault"] is None else None
    rough, noisy = SPUN.get(job.pick(f"prove_spin@{corner}"), (None, None))
    against = [w for w, is_so in (("over", one and one["over"]), ("rough", rough), ("noisy", noisy)) if is_so]
    result = "blocked" if against else "not_judged" if rough is None else "pass"
    maker = bool(one) and one["measured"]["limit_source"] == "maker"
    proven = result == "pass" and maker and one["measured"]["conformity"] == "proven_in"
    return {"corner": corner, "result": result, "proven": proven, "against": against}


# The digest, by RFC 8785.

def canonical(value):
    if isinstance(value, dict):
        names = sorted(value, key=lambda name: name.encode("utf-16-be"))
        return "{" + ",".join(f"{canonical(n)}:{canonical(value[n])}" for n in names) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    if isinstance(value, float):
        # The doubles of these files are between 1e-4 and 1e16, where Python and ECMAScript agree.
        return str(int(value)) if value == int(value) else repr(value)
    return json.dumps(value, ensure_ascii=False)


def sha256(text):
    return hashlib.sha256(text.encode()).hexdigest()


# Comparing.

def compare(path, ours, theirs, complaints):
    """Counts the values compared; numbers agree to 1e-9 of their size."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        if ours.keys() != theirs.keys():
            complaints.append(f"{path}: {sorted(ours.keys() ^ theirs.keys())}")
        return sum(compare(f"{path}.{k}", ours[k], theirs.get(k), complaints) for k in ours)
    if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        return sum(compare(f"{path}[{i}]", a, b, complaints) for i, (a, b) in enumerate(zip(ours, theirs)))
    if isinstance(ours, (int, float)) and isinstance(theirs, (int, float)) and not isinstance(ours, bool):
        same = abs(ours - theirs) <= max(1e-9 * max(abs(ours), abs(theirs)), 1e-15)
    else:
        same = ours == theirs
    if not same:
        complaints.append(f"{path}: here {ours!r}, there {theirs!r}")
    return 1


def opinion(log):
    entries = log["entries"]
    by_id = {entry["id"]: entry for entry in entries}
    job = Job(entries)
    decisions = []
    for entry in entries:
        if "decided" not in entry["what"]:
            continue
        open_, seen = list(entry["after"]), {}
        while open_:
            one = by_id[open_.pop()]
            if one["id"] not in seen:
                seen[one["id"]] = one
                open_ += one["after"]
        then, told = Job(list(seen.values())), entry["what"]["decided"]
        decisions.append({"entry": entry["id"], "corner": told["corner"], "nth": told["nth"], "rules": 1,
                          **decide(then, told["corner"]), "sets": sets(then)})
    corners = (job.last("corners") or {"corners": []})["corners"]
    return {"sets": sets(job), "decisions": decisions, "proved": [proved(job, corner) for corner in corners]}


def main(said):
    files = values = 0
    complaints = []
    for line in open(said, encoding="utf-8"):
        told = json.loads(line)
        with open(told["file"], encoding="utf-8") as file:
            logs = json.load(file)["logs"]
        for log, theirs in zip(logs, told["logs"], strict=True):
            if log["kind"] == "job":
                name, computed = told["file"], theirs["computed"]
                mine = opinion(log)
                values += compare(name, mine, {key: computed[key] for key in mine}, complaints)
                digests = sorted({sha256(canonical(entry)) for entry in log["entries"]})
                values += compare(name, sha256("\n".join(digests)), theirs["canonical"], complaints)
        files += 1
    print(*complaints[:50], sep="\n")
    print(f"{files} files, {values} values, {len(complaints)} differ")
    return 1 if complaints or not values else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))

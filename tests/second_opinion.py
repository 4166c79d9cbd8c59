"""A second opinion on exported jobs: every number again, by another program, from the file alone.

    cargo run --bin hubslate -- verify --json JOB.json … > said.jsonl
    python tests/second_opinion.py said.jsonl

Written from the schema of the file (public/schema/job-1.schema.json) and from these sources:
GUM (JCGM 100:2008) 4.2, 4.4.5, 5.1.2, F.2.2.1, G.4.1; JCGM 106:2012 7.3 and 8.3; ISO 14253-1:2017;
least squares, the F test and the studentized residual by any book on regression; Rice 1945 for a
length with an error in the plane; RFC 8785 and FIPS 180-4 for
the digests. What is common practice and has no source (the floors of the budget, the house limit,
the rules of the decision and of the next step) stands in README.md.
It reads what the command said, opens each file that is named there, and compares.
"""

import hashlib
import json
import sys
from decimal import Decimal

import numpy as np
from scipy import integrate, optimize, stats

MM = {"mm": 1.0, "um": 1e-3, "in": 25.4, "thou": 0.0254}
HOUSE = {"mm": 4 * 0.0254, "source": "house", "way": {"method": "axial", "place": "pilot"}}
UNSEEN_MM = 0.5  # a turn worth less may be gone round unseen: its turns are asked
FLOOR_MM = 0.005  # of repeatability and of a dial without a certificate
RADIAN = {"deg": np.pi / 180, "turn": 2 * np.pi}
EYE_DEG = 5.0  # the slant of a tip, judged by eye
FLEX = {"flex_none": 0.25, "flex_half": 0.5, "flex_one": 1.0}
SPUN = {"smooth_quiet": (0, 0), "rough": (1, 0), "noisy": (0, 1), "rough_noisy": (1, 1), "grinds_hot": (1, 1)}
FELT = ["nothing", "just_felt", "seen", "knocks"]
CORNERS = ("front_left", "front_right", "rear_left", "rear_right")
GRAVEST = ["stop", "replace", "watch", "keep"]
PROVING = 3  # fewer cycles prove nothing
HOTTER_K = 15.0
RULES = 3


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
    """One job recorded by one phone after another, so that the last statement of a fact holds."""

    def __init__(self, entries):
        self.recorded = [(i, *next(iter(e["what"].items()))) for i, e in enumerate(in_order(entries))]
        stands = {e["id"] for e in counting(in_order(entries))}
        self.recorded = [t for t, e in zip(self.recorded, in_order(entries)) if e["id"] in stands]

    def last(self, kind, fits=lambda body: True):
        return next((body for _, k, body in reversed(self.recorded) if k == kind and fits(body)), None)

    def reply(self, step):
        body = self.last("answered", lambda b: b["step"] == step)
        return body["reply"] if body else {}

    def place(self, step):
        return max((i for i, k, b in self.recorded if k == "answered" and b["step"] == step), default=-1)

    def pick(self, step):
        return self.reply(step).get("picked", {}).get("pick")

    def manufacturers_limit(self):
        spec = self.last("spec", lambda b: b["item"] == "play_limit") or self.on_paper() or {}
        if "play" not in spec:
            return None
        most, least = spec["play"]["most"], spec["play"].get("least")
        upper = number(most["number"]) * MM[most["unit"]]
        lower = number(least["number"]) * MM[least["unit"]] if least else None
        window = {"least": lower} if lower and 0 < lower < upper else {}
        return {"mm": upper, **window, "source": "manufacturer", "way": spec["play"]["way"]}

    def on_paper(self):
        """The limit of an earlier visit's paper: L|play_limit|source|page|most|method|place|rig|newtons|least."""
        lines = (self.last("from_paper") or {}).get("lines", [])
        line = next((line.split("|") for line in lines if line.startswith("L|play_limit|")), None)
        if line is None:
            return None
        way = dict(zip(("method", "place", "rig", "force_n"), line[5:9]))
        def typed(text):
            digits = text.rstrip("abcdefghijklmnopqrstuvwxyz")
            return {"number": digits, "unit": text[len(digits):]}
        least = {"least": typed(line[9])} if len(line) > 9 and line[9] else {}
        if way.get("force_n"):
            way["force_n"] = float(way["force_n"])
        way = {name: value for name, value in way.items() if value}
        return {"play": {"most": typed(line[4]), **least, "way": way}}

    def reading(self, corner, when, nth, number_, side):
        def is_it(b):
            return (b["corner"], b["when"], b["set"], b["round"], b["side"]) == (corner, when, nth, number_, side)
        found = [(i, b) for i, k, b in self.recorded if k == "reading" and is_it(b)]
        return found[-1] if found else None

    def way(self, corner, when, nth):
        """How the dial was set up for a set, as recorded there; none where it was not."""
        recorded = self.last("dial_setup", lambda b: (b["corner"], b["when"], b["set"]) == (corner, when, nth))
        return recorded and recorded["way"]

    def marks(self, corner, when, nth):
        step = {("before", 1): f"rig_push@{corner}", ("before", 2): f"rig_again@{corner}"}
        flex = self.pick(step.get((when, nth), f"rig_push@{corner}.2"))
        marks = [] if flex in FLEX else ["flex_not_tested"]
        nut = self.pick(f"nut_found@{corner}")
        item = {"corner": corner, "group": "axle_nut", "number": 1}
        loosened = [i for i, k, b in self.recorded if k == "moved" and item in b["items"]]
        pulls = [self.reading(corner, when, nth, n, "pull") for n in (3, 2, 1)]
        read = next((pull[0] for pull in pulls if pull), None)
        early = bool(loosened) and read is not None and loosened[0] < read
        if when == "before" and nut != "nut_retorqued" and (nut == "nut_slack" or early):
            marks.append("nut_slack")
        if self.way(corner, when, nth) is None:
            marks.append("method_not_recorded")
        return FLEX.get(flex, 1.0), marks


    def slant(self, corner, when, nth):
        """How far off square the tip stood, in radians; none beyond what a cosine corrects."""
        recorded = self.last("tip_angle", lambda b: (b["corner"], b["when"], b["set"]) == (corner, when, nth))
        turn = number(recorded["angle"]["number"]) * RADIAN[recorded["angle"]["unit"]] if recorded else None
        return turn if recorded and abs(turn) <= np.radians(60) else None

    def dial_error(self, dial):
        """Half width of the dial's error: its certificate's, else a division, no less than the floor."""
        kit = self.last("carried") or {}
        error = kit.get("dial_error") if kit.get("dial") == dial else None
        known = error and abs(number(error["number"]) * MM[error["unit"]])
        return known or max(dial["graduation_mm"], FLOOR_MM)


# One set: play, uncertainty, conformity.

def play(dial, push, pull, turns):
    """The way with its recorded turns; else the short way round, none beyond a quarter turn."""
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


def in_force(spec, way):
    """The spec where its way is that of the reading, else the default limit where its own way is."""
    if spec is None or way is None:
        return spec or HOUSE, None
    apart = differs(way, spec["way"])
    return HOUSE if apart and differs(way, HOUSE["way"]) is None else spec, apart


def budgeted(parts):
    """u, effective degrees of freedom, 95 % two-sided and one-sided: by all parts together, and no
    less than those of few degrees of freedom would ask for alone; these by themselves."""
    u, dof = combined(list(parts.values()))
    few = combined([part for part in parts.values() if part[1]])
    def widest(p):
        return max(quantile(p, dof) * u, quantile(p, few[1]) * few[0])
    return u, dof, widest(0.975), widest(0.95) / u, few


def beyond_rig(mean, parts, cycles, upper):
    """Over by more than the rig can be wrong, the cycles taken to scatter by the floor."""
    floor = (FLOOR_MM / np.sqrt(cycles), max(cycles - 1, 1))
    u, _, _, g, _ = budgeted({**parts, "repeatability": floor})
    return mean > upper + g * u


def conforms(mean, still, cycles, u, dof, g, few, limit):
    """The code, whether it is past an end, proven past it, and the chance of conforming."""
    code, out, proven, chance = under_most(mean, still, cycles, u, dof, g, few, limit["mm"])
    least = limit.get("least")
    if least is None or out:
        return code, out, proven, chance if least is None else window(chance, mean, least, u, dof, few)
    y = least if abs(mean - least) < 1e-9 else mean
    proves = cycles >= PROVING
    chance = window(chance, mean, least, u, dof, few)
    if y < least:
        proven = proves and y < least - g * u
        return "tight_proven" if proven else "tight_not_proven", True, proven, chance
    within = code == "proven_in" and y >= least + g * u
    return "proven_in" if within else "in_not_proven", False, False, chance


def window(chance, mean, least, u, dof, few):
    """What is left of a chance of being under the most by that of being under the least."""
    y = least if abs(mean - least) < 1e-9 else mean
    sure = [float(stats.t(freedom).cdf((y - least) / of)) for of, freedom in ((u, dof), few)]
    return max(chance - (1 - (max(sure) if y < least else min(sure))), 0.0)


def under_most(mean, still, cycles, u, dof, g, few, upper):
    """The same against the most alone."""
    y = upper if abs(mean - upper) < 1e-9 else mean
    proves, over = cycles >= PROVING, y > upper
    out = proves and y > upper + g * u
    sure = [float(stats.t(freedom).cdf((upper - y) / of)) for of, freedom in ((u, dof), few)]
    chance = max(sure) if over else min(sure)
    if upper <= 0:
        return ("no_movement_seen", False, False, None) if still else ("movement_seen", True, out, chance)
    if over:
        return "proven_out" if out else "out_not_proven", True, out, chance
    return "proven_in" if proves and y <= upper - g * u else "in_not_proven", False, False, chance


def measure(job, corner, when, nth):
    rounds, dials = [], []
    for n in (1, 2, 3):
        pull, push = (job.reading(corner, when, nth, n, side) for side in ("pull", "push"))
        # A push after its pull begins the round again.
        if pull and not (push and push[0] > pull[0]):
            rounds.append((number(push[1]["divisions"]) if push else 0.0, pull[1]))
            dials += [side[1]["dial"] for side in (push, pull) if side]
    if not rounds:
        return None
    if any(dial != dials[0] for dial in dials):
        return {"fault": "mixed_dials"}
    dial, way = dials[0], job.way(corner, when, nth)
    plays = [play(dial, push, number(pull["divisions"]), pull.get("turns")) for push, pull in rounds]
    if None in plays:
        return {"fault": "round"}
    slant = job.slant(corner, when, nth)
    plays = [one * np.cos(slant or 0.0) for one in plays]
    flex, marks = job.marks(corner, when, nth)
    limit, apart = in_force(job.manufacturers_limit(), way)
    division, n = dial["graduation_mm"], len(plays)
    mean = float(np.mean(plays))
    scatter = float(np.std(plays, ddof=1)) if n > 1 else 0.0
    parts = {
        "repeatability": (max(scatter, FLOOR_MM) / np.sqrt(n), max(n - 1, 1)),
        "resolution": (division / np.sqrt(12) * np.sqrt(2), None),
        "indicator": (job.dial_error(dial) / np.sqrt(3), None),
        "base_flex": (flex * division / np.sqrt(3), None),
    }
    crept = job.last("crept", lambda b: (b["corner"], b["when"], b["set"]) == (corner, when, nth))
    if crept:
        parts["temperature"] = (abs(number(crept["divisions"])) * division / np.sqrt(3), None)
    if slant is not None:
        parts["tip_angle"] = (mean * np.tan(abs(slant)) * np.radians(EYE_DEG) / np.sqrt(3), None)
    u, dof, expanded, g, few = budgeted(parts)
    upper = limit["mm"]
    spread = max(plays) - min(plays)
    wide = spread > division + 1e-9 or (upper > 0 and spread > upper / 5 + 1e-9)
    steps = np.diff(plays)
    trend = "steady" if not wide else "scattered" if n < 3 else \
        "rising" if all(steps >= 0) else "falling" if all(steps <= 0) else "scattered"
    refused = marks[0] if marks else differs(way, limit["way"])
    still = max(plays) < division / 2
    conformity, over, proven_over, chance = ("no_comparison", False, False, None) if refused else \
        conforms(mean, still, n, u, dof, g, few, limit)
    beyond = beyond_rig(mean, parts, n, upper)
    return {"fault": None, "over": over, "proven_over": proven_over, "beyond": beyond, "still": still, "division": division,
            "limit": limit, "parts": parts, "squares": float(np.sum((np.array(plays) - mean) ** 2)), "measured": {
        "plays": plays, "mean": mean, "median": float(np.median(plays)), "spread": spread,
        "drift": plays[-1] - plays[0], "trend": trend, "asks_to_rig_again": wide,
        "components": {name: {"u": float(part), "dof": d} for name, (part, d) in parts.items()},
        "u": u, "dof": dof, "expanded95": expanded, "g": g, "guard_band": g * u,
        "limit": upper, "limit_source": limit["source"], "apart": apart, "conformity": conformity,
        "conformance": chance, "no_comparison": refused}}


def compared(one):
    return one["measured"]["conformity"] != "no_comparison"


def joined(taken):
    """The mean of two sets that were compared with one limit: the scatter pooled, what lies between
    them with one degree of freedom, and of what both share the larger once."""
    both = [one for one in taken if compared(one)][:2]
    if len(both) < 2 or both[0]["limit"] != both[1]["limit"]:
        return None
    n, m = (len(one["measured"]["plays"]) for one in both)
    a, b = (one["measured"]["mean"] for one in both)
    freedom = max(n + m - 2, 1)
    scatter = max(np.sqrt(sum(one["squares"] for one in both) / freedom), FLOOR_MM)
    parts = {"repeatability": (scatter * np.sqrt(1 / n + 1 / m) / 2, freedom), "between_sets": (abs(a - b) / 2, 1)}
    for name in {name for one in both for name in one["parts"]} - {"repeatability"}:
        parts[name] = (max(one["parts"][name][0] for one in both if name in one["parts"]), None)
    u, dof, expanded, g, few = budgeted(parts)
    limit, still, division = both[0]["limit"], all(one["still"] for one in both), max(one["division"] for one in both)
    code, over, proven_over, chance = conforms((a + b) / 2, still, n + m, u, dof, g, few, limit)
    beyond = beyond_rig((a + b) / 2, parts, n + m, limit["mm"])
    return {"over": over, "proven_over": proven_over, "beyond": beyond, "still": still, "division": division, "limit": limit,
            "parts": parts, "measured": {
                "plays": [None] * (n + m), "mean": (a + b) / 2, "u": u, "dof": dof, "expanded95": expanded, "g": g,
                "limit_source": limit["source"], "apart": both[0]["measured"]["apart"], "conformity": code,
                "conformance": chance, "no_comparison": None}}


def sets(job):
    found = []
    for corner in CORNERS:
        for when in ("before", "after"):
            for nth in (1, 2):
                one = measure(job, corner, when, nth)
                if one:
                    name = {"corner": corner, "when": when, "nth": nth}
                    found.append({**name, "measured": one.get("measured"), "fault": one["fault"]})
    return found


# The decision on a corner, and the proof after the work.

def tight(one):
    return one["measured"]["conformity"].startswith("tight")


def spoken(one):
    house = one["measured"]["limit_source"] == "house"
    return {
        "tight_not_proven": ("replace", "tight_not_proven"),
        "out_not_proven": ("replace", "over_not_proven"), "movement_seen": ("replace", "over_not_proven"),
        "proven_in": ("keep", "no_manufacturer_limit" if house else "under_proven"),
        "in_not_proven": ("keep", "no_manufacturer_limit") if house else ("watch", "under_not_proven"),
        "no_movement_seen": ("watch", "no_movement_seen"),
    }[one["measured"]["conformity"]]


def by_dial(taken, both):
    """What each set that was compared says, both together, and the spec that was not met."""
    spoke = [one for one in taken if compared(one)]
    if not spoke:
        why = f"no_comparison.{taken[-1]['measured']['no_comparison']}" if taken else "not_looked_at.dial"
        return [("watch", why)], None
    proven = [one for one in spoke + ([both] if both else []) if one["proven_over"]]
    if proven:
        found = [("replace", "tight_proven" if tight(proven[0]) else "over_proven")]
    elif both:
        found = [spoken(both)]
        if (tight(both) or not both["over"]) and any(one["beyond"] for one in spoke):
            found.append(("replace", "over_not_proven"))
        if len({one["over"] for one in spoke}) == 2:
            found.append(("watch", "sets_disagree"))
    else:
        found = [spoken(one) for one in spoke]
    apart = [one["measured"]["apart"] for one in spoke]
    missed = apart[0] if all(apart) else None
    return found + ([("watch", f"no_comparison.{missed}")] if missed else []), missed


def said(job, step):
    return job.reply(step).get("said", {}).get("answer", "not_done")


def on_the_road(job, corner):
    """Whether the noise of the road sits here: what rises with speed and is louder under load."""
    speed, coast, surface = (said(job, f"sign_{sign}") for sign in ("speed", "coast", "surface"))
    loads = {"louder_right": "left", "louder_left": "right"}.get(job.pick("sign_swerve"))
    if speed != "yes" and not loads:
        return "quiet" if speed == "no" else "not_done"
    other_cause = coast == "no" or surface == "yes"
    if loads and corner.endswith(loads):
        return "here" if speed == "yes" and not other_cause else "not_located"
    return "elsewhere" if loads or other_cause else "not_located"


def heated(job, corner):
    def celsius(step):
        recorded = job.reply(step).get("number", {}).get("value")
        if not recorded:
            return None
        return (number(recorded["number"]) - 32) * 5 / 9 if recorded["unit"] == "f" else number(recorded["number"])
    here, other = celsius("heat_here"), celsius("heat_other")
    first = (job.last("corners") or {"corners": [None]})["corners"][0]
    axle, side = corner.split("_")
    across = f"{axle}_{'left' if side == 'right' else 'right'}"
    if first == across:
        here, other = other, here
    if first not in (corner, across) or here is None or other is None:
        return "not_done"
    return "hotter" if here - other >= HOTTER_K else "alike"


def round_(value):
    """As it is stored: lengths to a nanometre, factors and chances to a millionth."""
    return None if value is None else float(np.floor(value * 1e6 + 0.5) / 1e6)


def figures(one):
    """What a mean said, as it is stored."""
    def way(of):
        return {name: of[name] for name in ("method", "place", "rig", "force_n") if of.get(name) is not None}
    m = one["measured"]
    recorded = {
        "mean_mm": round_(m["mean"]), "cycles": len(m["plays"]), "u_mm": round_(m["u"]), "dof": round_(m["dof"]),
        "expanded_mm": round_(m["expanded95"]), "g": round_(m["g"]), "apart": m["apart"],
        "parts": {name: {"u_mm": round_(part), **({"dof": dof} if dof else {})} for name, (part, dof) in one["parts"].items()},
        "limit": {"mm": round_(one["limit"]["mm"]), **({"least_mm": round_(one["limit"]["least"])} if "least" in one["limit"] else {}), "source": one["limit"]["source"], "way": way(one["limit"]["way"])},
        "result": m["conformity"], "chance": round_(m["conformance"]),
        "beyond_rig": None if m["conformance"] is None else bool(one["beyond"]), "why": m["no_comparison"],
        "proven": one["proven_over"] if m["conformity"] == "movement_seen" else None,
        "resolution_mm": round_(one["division"]) if m["conformity"] == "no_movement_seen" else None}
    return {name: value for name, value in recorded.items() if value is not None}


def rests(taken, both, checked):
    """What a decision rested on."""
    sets_ = [{"set": nth, **figures(one)} for nth, one in taken]
    return {"sets": sets_, **({"together": figures(both)} if both else {}), **checked}


def decide(job, corner):
    found = []
    checks = {c["check"]: c["answer"] for c in job.reply("before_driving").get("checked", {}).get("checks", [])}
    spun = job.pick(f"spin_hand@{corner}")
    at_card = job.reply("nuts_to_spec").get("said", {}).get("answer") == "yes"
    at_card = at_card and job.place("before_driving") < job.place("nuts_to_spec")
    signs = {"visible_tilt": checks.get("wheel_upright") == "no",
             "loose_wheel_fasteners": checks.get("nuts_as_found") == "no" and not at_card,
             "loose_axle_nut": job.pick(f"nut_found@{corner}") == "nut_slack",
             "grinding_with_heat": spun == "grinds_hot"}
    found += [("stop", f"must_not_drive.{sign}") for sign, seen in signs.items() if seen]
    rocked = [job.reply(f"rock_{way}@{corner}").get("felt", {}).get("felt") for way in ("twelve_six", "nine_three", "axial")]
    felt = max((f for f in rocked if f), key=FELT.index, default=None)
    felt = None if felt == "nothing" and not all(rocked) else felt
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
    road, heat = on_the_road(job, corner), heated(job, corner)
    noise = {"elsewhere": ("keep", "road_points_elsewhere"), "not_located": ("watch", "road_not_located"),
             "here": ("replace" if heat == "hotter" else "watch", "road_points_here")}.get(road)
    found += [noise] if noise else []
    if heat == "hotter":
        found.append(("replace" if road == "here" else "watch", "hotter"))
    named = [(nth, measure(job, corner, "before", nth)) for nth in (1, 2)]
    named = [(nth, one) for nth, one in named if one and one["fault"] is None]
    taken = [one for _, one in named]
    both = joined(taken)
    dial, missed = by_dial(taken, both)
    found += dial
    if (rough, noisy, felt) == (0, 0, "nothing") and road in ("quiet", "not_done") and heat != "hotter":
        found.append(("keep", "smooth_and_quiet"))
    found.sort(key=lambda f: GRAVEST.index(f[0]))
    spoke = [one for one in taken if compared(one)]
    lacks = len(spoke) == 1 and spoke[0]["over"] and not spoke[0]["proven_over"]
    done = lambda step: bool(job.reply(step)) and "not_done" not in job.reply(step)
    rocks = [f"rock_{way}@{corner}" for way in ("twelve_six", "nine_three", "axial")]
    open_ = {
        "dial": not spoke or missed, "second_set": lacks, "hand": rough is None, "ear": noisy is None,
        "rock": not all(map(done, rocks)),
        "brake_held": felt not in (None, "nothing") and held is None,
        "other_side": not done(f"other_side@{corner}"), "road": said(job, "sign_speed") == "not_done" or not done("drive"),
        "temperatures": not (done("heat_here") and done("heat_other"))}
    grounds = {"dial": spoke, "hand": rough is not None, "ear": noisy is not None, "rock": felt, "road": road != "not_done",
               "heat": heat != "not_done", "sign": any(signs.values())}
    word = {None: "not_done", 0: "no", 1: "yes"}
    checked = {
        "rough": word[rough], "noisy": word[noisy], "road": road, "heat": heat,
        "brake_held": {"play_gone": "gone", "play_stays": "stays"}.get(held, "not_done"),
        "stop_signs": [sign for sign, seen in signs.items() if seen],
        "not_done": [test for test, lacking in open_.items() if lacking],
        "rests_on": [ground for ground, stands in grounds.items() if stands]}
    checked.update({"felt": felt} if felt else {})
    checked.update({"spec_apart": missed} if missed else {})
    return {"decision": found[0][0] if found else "watch", "again": len(taken) == 1 and lacks,
            "reasons": [reason for _, reason in found], "inputs": rests(named, both, checked)}


def proof(job, corner):
    """The proof after the work, as it is recorded."""
    one = measure(job, corner, "after", 1)
    one = one if one and one["fault"] is None else None
    rough, noisy = SPUN.get(job.pick(f"prove_spin@{corner}"), (None, None))
    against = [w for w, is_so in (("over", one and one["over"] and not tight(one)), ("tight", one and tight(one)), ("rough", rough), ("noisy", noisy)) if is_so]
    word = {None: "not_done", 0: "no", 1: "yes"}
    recorded = {"corner": corner, "rules": RULES, "rough": word[rough], "noisy": word[noisy], **({"set": figures(one)} if one else {})}
    if against:
        return {**recorded, "outcome": "blocked", "against": against}
    if rough is None:
        return {**recorded, "outcome": "not_judged", "not_done": ["hand", "ear"]}
    met = one and compared(one) and not one["measured"]["apart"]
    proven = bool(one) and one["measured"]["limit_source"] == "manufacturer" and one["measured"]["conformity"] == "proven_in"
    return {**recorded, "outcome": "pass", "proven": proven, "not_done": [] if met else ["dial"]}


def proved(job, corner):
    recorded = proof(job, corner)
    return {"corner": corner, "result": recorded["outcome"], "proven": recorded.get("proven", False), "against": recorded.get("against", [])}


# Round a face: waves by least squares, the shape, the rotor on every stud.

MOST_CONDITION = 30.0
RULE_MM = 1.0  # a radius by a rule in the hand


def combined(parts):
    """Root sum of squares with Welch-Satterthwaite's degrees of freedom; None is infinite."""
    u = float(np.sqrt(sum(part ** 2 for part, _ in parts)))
    weight = sum(part ** 4 / dof for part, dof in parts if dof) / u ** 4
    return u, 1 / weight if weight > 0 else None


def quantile(p, dof):
    return float(stats.t(dof).ppf(p) if dof else stats.norm.ppf(p))


def against_least(value, u, limit):
    """The thinnest reading and the least of it, one-sided 95 % of a normal distribution."""
    recorded = {"limit": limit, "conformity": None, "conformance": None}
    if limit is not None:
        off = 0.0 if abs(value - limit) < 1e-9 else value - limit
        g = quantile(0.95, None)
        recorded["conformity"] = ("proven_in" if off >= g * u else "in_not_proven") if off >= 0 else \
            "proven_out" if -off > g * u else "out_not_proven"
        recorded["conformance"] = float(stats.norm.cdf(off / u))
    return recorded


# A length with an error in the plane. Here the chance is summed over rays from the tip of the true
# length, along which the error's distances have the tail of F with 2 and dof degrees of freedom.

def longer(distance, dof):
    return np.exp(-distance ** 2 / 2) if dof is None else np.exp(-dof / 2 * np.log1p(distance ** 2 / dof))


def at_most(x, m, dof):
    """The chance that no more than x is read of a true length m, both in standard uncertainties."""
    if m < x:
        ray = lambda a: longer(np.sqrt(x * x - (m * np.sin(a)) ** 2) - m * np.cos(a), dof)
        return 1 - integrate.quad(ray, 0, np.pi, epsabs=1e-13, epsrel=1e-13, limit=500)[0] / np.pi

    def ray(t):
        side = np.sqrt(1 - (x / m * np.sin(t)) ** 2)
        near, far = m * side - x * np.cos(t), m * side + x * np.cos(t)
        return (longer(near, dof) - longer(far, dof)) * x / m * np.cos(t) / side
    return integrate.quad(ray, 0, np.pi / 2, epsabs=1e-13, epsrel=1e-13, limit=500)[0] / np.pi


def length_at(x, p, dof):
    if 1 - longer(x, dof) <= p + 1e-9:
        return 0.0
    high = x + 1.0
    while at_most(x, high, dof) > p:
        high *= 2
    return optimize.brentq(lambda m: at_most(x, m, dof) - p, 0.0, high, xtol=1e-14, rtol=1e-14)


class Reach:
    """What moves beyond scatter: the median, a 95 % interval, and the chance of being within."""

    def __init__(self, read, scatter, spare, known):
        self.read, self.u = read, float(np.hypot(scatter, known))
        self.dof = spare * (self.u / scatter) ** 2
        self.mostly_scatter = scatter * np.sqrt(2) >= self.u
        self.x = read / self.u
        self.usual = float(np.sqrt(self.dof * np.expm1(2 * np.log(2) / self.dof)))
        self.floored = max(self.x, self.usual)
        self.estimate = self.u * length_at(self.x, 0.5, self.dof)

    def recorded(self):
        turn = length_at(self.usual, 0.025, self.dof)
        low = length_at(self.x, 0.95, self.dof)
        low = low if low < turn else max(turn, length_at(self.x, 0.975, self.dof))
        high = length_at(self.floored, 0.025, self.dof)
        return {"read": self.read, "u": self.u, "dof": self.dof, "estimate": self.estimate,
                "low": low * self.u, "high": high * self.u}

    def against(self, limit):
        recorded = {"limit": limit, "conformity": None, "conformance": None}
        if limit is not None:
            sure = 1 - at_most(self.floored, limit / self.u, self.dof)
            recorded["conformance"] = sure
            recorded["conformity"] = "proven_in" if sure >= 0.95 else "in_not_proven" if sure >= 0.5 - 1e-9 else \
                "out_not_proven" if sure >= 0.05 else "proven_out"
        return recorded


def degrees(body):
    """Where a place is, from stud 1: as typed, else its equal step."""
    if "angle" in body:
        return number(body["angle"]["number"]) * {"deg": 1, "turn": 360}[body["angle"]["unit"]]
    return 360 * (body["place"] - 1) / body["places"]


def by_place(job, kind, corner):
    """The last statement of each place, in order, by run."""
    found = {}
    for at, k, body in job.recorded:
        if k == kind and body["corner"] == corner:
            found[body["run"], body["place"]] = (at, body)
    runs = {}
    for (run, place), recorded in sorted(found.items()):
        runs.setdefault(run, {})[place] = recorded
    return runs


class Places:
    """Heights round a part, in mm and degrees, each read to one division."""

    def __init__(self, mm, deg, division):
        self.mm, self.deg, self.division = np.array(mm), np.array(deg), division

    def without(self, at):
        return Places(np.delete(self.mm, at), np.delete(self.deg, at), self.division)

    def fit(self, waves):
        """Least squares for mean and waves; what is left open has a name in its place."""
        angle = np.radians(self.deg)
        parts = [f(k * angle) for k in range(1, waves + 1) for f in (np.cos, np.sin)]
        design = np.column_stack([np.ones_like(angle), *parts])
        values = np.linalg.svd(design, compute_uv=False)
        if len(angle) < design.shape[1] or values[-1] <= 1e-10 * values[0]:
            return {"open": "rank"}
        if values[0] / values[-1] > MOST_CONDITION:
            return {"open": "bunched"}
        # About the first reading, so that what readings have in common costs no digits.
        found, *_ = np.linalg.lstsq(design, self.mm - self.mm[0], rcond=None)
        left = self.mm - self.mm[0] - design @ found
        found[0] += self.mm[0]
        spare = len(angle) - len(found)
        inverse = np.linalg.inv(design.T @ design)
        s = float(np.sqrt(left @ left / spare)) if spare else np.inf
        u, dof = max(s, self.division / np.sqrt(12)), spare or None

        def wave(at):
            pair = inverse[at:at + 2, at:at + 2]
            arrow = complex(found[at], found[at + 1])
            is_real = abs(arrow) > 1e-12 * np.abs(self.mm).max()
            return {"arrow": arrow, "u": u * float(np.sqrt(np.linalg.eigvalsh(pair)[-1])), "dof": dof,
                    "phase": float(np.degrees(np.angle(arrow))) % 360 if is_real else None}
        return {"open": None, "found": found, "inverse": inverse, "s": u, "middle": float(found[0]), "waves": [wave(1 + 2 * k) for k in range(waves)],
                "left": left, "spare": spare, "rms": float(np.sqrt(np.mean(left ** 2))),
                "lever": np.einsum("ij,jk,ik->i", design, inverse, design), "condition": float(values[0] / values[-1])}

    def best_fit(self):
        """The second wave only with three readings to spare and where scatter makes it in 0.2 %."""
        one, both = self.fit(1), self.fit(2)
        if one["open"]:
            return one
        if one["spare"] < 2:
            return {"open": "no_spare"}
        return both if not both["open"] and both["spare"] >= 3 and chance(both, 3) <= 0.002 else one

    def stands_out(self, tir):
        """The place that the waves of all others cannot hold (studentized, Bonferroni), and by how much."""
        fit = next((f for f in map(self.fit, (2, 1)) if not f["open"] and f["spare"] >= 3), None)
        if fit is None:
            return None
        seat = 1 - fit["lever"]
        by = np.where(seat > 0.001, fit["left"] / np.maximum(seat, 1e-9), 0.0)
        at = int(np.argmax(by ** 2 * seat))
        if abs(by[at]) * 3 < tir:
            return None
        others = np.sqrt(max(fit["left"] @ fit["left"] - by[at] ** 2 * seat[at], 0.0) / (fit["spare"] - 1))
        p = 1 - 0.002 / len(by) / 2
        least = quantile(p, None) * self.division / np.sqrt(12)
        allowed = max(quantile(p, fit["spare"] - 1) * others, least) / np.sqrt(seat[at])
        return (float(self.deg[at]), float(by[at]), at) if abs(by[at]) > allowed else None


def chance(fit, at):
    """How often scatter alone makes the wave of the unknowns from `at` on as high as this one."""
    wave = fit["found"][at:at + 2]
    form = wave @ np.linalg.inv(fit["inverse"][at:at + 2, at:at + 2]) @ wave / fit["s"] ** 2
    return float(longer(np.sqrt(form), fit["spare"]))


def wobbles(fit):
    return chance(fit, 1) <= 0.05


def ends(fit):
    """Lowest and highest of the waves that count, each with its factors of the unknowns."""
    n = len(fit["found"])
    counts = np.array([0.0, *[float(wobbles(fit))] * 2, 1.0, 1.0])[:n]
    waves = np.zeros(5)
    waves[:n] = fit["found"] * counts
    a, b = complex(waves[1], waves[2]), complex(waves[3], waves[4])
    # Where 2 b' z^4 + a' z^3 - a z - 2 b is nothing on the circle, the curve is level.
    roots = np.roots([2 * b.conjugate(), a.conjugate(), 0, -a, -2 * b]) if a or b else np.array([1.0 + 0j])
    angles = np.angle(roots[np.abs(np.abs(roots) - 1) < 1e-6])
    row = lambda t: np.array([1.0, np.cos(t), np.sin(t), np.cos(2 * t), np.sin(2 * t)])[:n]
    height = lambda t: float(row(t) @ (fit["found"] * counts))
    factors = lambda t: row(t) * np.maximum(counts, [1.0] + [0.0] * (n - 1))
    low, high = min(angles, key=height), max(angles, key=height)
    return (height(low), factors(low)), (height(high), factors(high))


def moved(run, fit, out):
    """By how much the needle moves beyond scatter, with the scatter's part of its uncertainty."""
    sure = lambda fit, row: fit["s"] * float(np.sqrt(row @ fit["inverse"] @ row))
    if out is None:
        if len(fit["waves"]) == 1:
            wave = fit["waves"][0]["arrow"]
            row = np.array([0.0, 2.0, 0.0]) if not fit["waves"][0]["phase"] else \
                np.array([0.0, 2 * wave.real, 2 * wave.imag]) / abs(wave)
            return 2 * abs(wave), sure(fit, row), fit["spare"]
        (low, at_low), (high, at_high) = ends(fit)
        return high - low, sure(fit, at_high - at_low), fit["spare"]
    others = run.without(out).best_fit()
    if others["open"]:
        return others
    (low, at_low), (high, at_high) = ends(others)
    place, spare = float(run.mm[out]) - others["middle"], others["spare"]
    if place > high:
        return place - low, float(np.hypot(others["s"], sure(others, at_low))), spare
    if place < low:
        return high - place, float(np.hypot(others["s"], sure(others, at_high))), spare
    return high - low, sure(others, at_high - at_low), spare


class Run(Places):
    """One run round a face; its first place says how it is set up."""

    def __init__(self, nth, places):
        self.nth, self.begun, first = nth, *next(iter(places.values()))
        self.surface, self.stud, self.cleaned = first["surface"], first["stud"], first["cleaned"]
        self.whole = all(place in places for place in range(1, first["places"] + 1))
        self.dial, self.radius = first["dial"], first.get("radius")
        self.radius = self.radius and number(self.radius["number"]) * MM[self.radius["unit"]]
        face, self.division = self.dial["divisions_per_turn"], self.dial["graduation_mm"]
        read = [(p, b) for p, (_, b) in places.items() if "divisions" in b]
        near = lambda needle, to: to + (needle - to + face / 2) % face - face / 2
        start = number(read[0][1]["divisions"]) if read else 0.0
        first = read[0][0] if read else None

        def gone(place, b):
            """From the first place: with its recorded turns, else the short way round."""
            needle = number(b["divisions"])
            recorded = b.get("turns") if place != first else 0
            return needle + recorded * face - start if recorded is not None else near(needle, start) - start
        kept = [(p, b) for p, b in read if "left_out" not in b]
        self.off = any(abs(number(b["divisions"])) > face for _, b in read)
        short = face * self.division < UNSEEN_MM
        untold = short and any(p != first and b.get("turns") is None for p, b in read)
        mixed = any(b["dial"] != read[0][1]["dial"] for _, b in read)
        self.mm = np.array([(near(start, 0.0) + gone(p, b)) * self.division for p, b in kept])
        self.deg = np.array([degrees(b) for _, b in kept])
        self.fault = "mixed_dials" if mixed else "off_the_dial" if self.off else "ask_turns" if untold \
            else "too_few" if len(kept) < 2 else None


def shape(run):
    fit, tir = run.best_fit(), float(np.ptp(run.mm))
    if fit["open"]:
        return fit
    energy = [abs(wave["arrow"]) ** 2 for wave in fit["waves"]]
    half = (sum(energy) + 2 * fit["rms"] ** 2) / 2
    out = run.stands_out(tir) if tir > run.division * (1 + 1e-9) else None
    is_more = wobbles(fit) or len(fit["waves"]) > 1
    form, high = "uneven", float(run.deg[np.argmax(run.mm)]) % 360 if is_more else None
    if tir <= run.division * (1 + 1e-9):
        form, high = "true", None
    elif out:
        form, high = ("bump", out[0]) if out[1] > 0 else ("hollow", None)
    elif energy[0] > half and wobbles(fit):
        form, high = "wobble", fit["waves"][0]["phase"]
    elif sum(energy[1:]) > half:
        form, high = "warp", fit["waves"][1]["phase"] / 2
    moves = moved(run, fit, out[2] if out else None)
    if isinstance(moves, dict):
        return moves
    rest = 2 * sum(abs(wave["arrow"]) for wave in fit["waves"][1:])
    return {**fit, "form": form, "high": high, "out": abs(out[1]) if out else None, "rest": rest, "moves": moves}


def on_every_stud(job, corner, runs, run, studs):
    """The wobble to be expected by stud: m t + h (1 - t), or from two positions a and b."""
    now = shape(run)
    if run.surface != "rotor" or now["open"] or studs is None:
        return None, None
    bolts = [at for at, k, b in job.recorded if k == "moved" and any(
        item["corner"] == corner and item["group"] == "hub_bolts" for item in b["items"])]
    off = bolts[0] if bolts else None
    earlier = [r for r in reversed(runs) if r.nth < run.nth and r.whole and r.cleaned == run.cleaned
               and not (off is not None and r.begun < off < run.begun) and not r.fault]
    root = np.exp(2j * np.pi * np.arange(studs) / studs)
    here, m = run.stud - 1, now["waves"][0]

    def recorded(basis, parts):
        """Each part is an arrow's own wave and its factor on every stud."""
        both = sum(factor * wave["arrow"] for wave, factor in parts)
        sure = [combined([(wave["u"] * abs(factor[s]), wave["dof"]) for wave, factor in parts]) for s in range(studs)]
        return basis, [(float(abs(both[s])), *sure[s]) for s in range(studs)]
    for other in earlier:
        if other.surface == "rotor" and other.stud != run.stud and not shape(other)["open"]:
            a, b = root[(other.stud - 1) % studs], root[here % studs]
            if abs(a - b) < 1e-9:
                return None, None
            return recorded("two_positions", [(shape(other)["waves"][0], (b - root) / (b - a)), (m, (root - a) / (b - a))])
    for other in earlier:
        if other.surface == "hub_face" and other.radius and run.radius and not shape(other)["open"]:
            hub, factor = shape(other)["waves"][0], run.radius / other.radius
            seen = hub["arrow"] * factor
            missed = abs(seen) * np.hypot(RULE_MM / other.radius, RULE_MM / run.radius)
            u, dof = combined([(hub["u"] * factor, hub["dof"]), (missed, None)])
            turn = root / root[here % studs]
            return recorded("hub_and_rotor", [(m, turn), ({"arrow": seen, "u": u, "dof": dof}, 1 - turn)])
    return None, None


def next_at_face(run, now, judged, limit, best, more):
    if limit is None:
        return "look_up"
    over = judged in ("out_not_proven", "proven_out")
    unclear = judged in ("in_not_proven", "out_not_proven") and more
    if not over and not unclear:
        return "go_on"
    if run.cleaned != "yes" or (over and now["form"] in ("bump", "hollow", "uneven")):
        return "clean"
    if unclear:
        return "read_more"
    if run.surface != "rotor" or now["form"] == "warp" or now["rest"] > limit:
        return "new_part"
    if best is None:
        return "read_turned"
    stud, amplitude, u, dof = best
    wobble = Reach(2 * amplitude, 2 * u, dof or 1e12, 0.0).estimate
    return "index" if wobble + now["rest"] <= limit and stud != run.stud else "plate"


def face(job, corner, runs, run):
    recorded = {"corner": corner, "run": run.nth, "surface": run.surface, "measured": None, "fault": run.fault}
    if run.fault:
        return recorded
    same = [abs(run.mm[i] - run.mm[j]) for i in range(len(run.mm)) for j in range(i + 1, len(run.mm))
            if abs((run.deg[i] - run.deg[j] + 180) % 360 - 180) < 0.01]
    closure, tir, now = (max(same) if same else None), float(np.ptp(run.mm)), shape(run)
    spec = job.last("runout_limit", lambda b: b["surface"] == run.surface)
    limit = number(spec["most"]["number"]) * MM[spec["most"]["unit"]] if spec else None
    judged, reach = {"limit": limit, "conformity": None, "conformance": None}, None
    if not now["open"]:
        known = np.hypot(job.dial_error(run.dial), closure or 0.0) / np.sqrt(3)
        reach = Reach(*now["moves"], known)
        judged = reach.against(limit)
    studs = job.last("vehicle", lambda b: b["field"] == "studs")
    studs = int(studs["text"]) if studs else None
    basis, expected = on_every_stud(job, corner, runs, run, studs)
    best = None
    if expected:
        largest = max(a for a, _, _ in expected)
        near = min(a for a, _, _ in expected) + 1e-9 * largest
        best = next((s + 1, *one) for s, one in enumerate(expected) if one[0] <= near)
    wave = lambda w: {"amplitude": abs(w["arrow"]), "phase": w["phase"], "u": w["u"], "dof": w["dof"]}
    recorded["measured"] = {
        "mean": float(np.mean(run.mm)), "tir": tir, "closure": closure, "undetermined": now["open"],
        "shape": None if now["open"] else {
            "form": now["form"], "middle": now["middle"], "wobble": wave(now["waves"][0]),
            "warp": wave(now["waves"][1]) if now["waves"][1:] else None, "rms": now["rms"], "spare": now["spare"],
            "condition": now["condition"], "without_wobble": now["rest"], "high_spot": now["high"],
            "stands_out": now["out"]},
        "runout": reach and reach.recorded(),
        "against": judged, "basis": basis, "best": best and best[0],
        "positions": expected and [{"stud": s + 1, "amplitude": a, "u": v} for s, (a, v, _) in enumerate(expected)],
        "next": "read_more" if now["open"] else next_at_face(
            run, now, judged["conformity"], limit, best, reach.mostly_scatter and len(run.mm) < 24)}
    return recorded


# The rotor under a micrometer: its division, repeats no better than 2 um, right within 4 um.

STEP_MM = {"hundredth_mm": 0.01, "thousandth_mm": 0.001, "thou": 0.0254, "tenth_thou": 0.00254}


def rotor(job, corner, run, places):
    read = {p: number(b["thickness"]["number"]) * MM[b["thickness"]["unit"]]
            for p, (_, b) in places.items() if "thickness" in b}
    recorded = {"corner": corner, "run": run, "measured": None, "fault": "too_few" if len(read) < 4 else None}
    if recorded["fault"]:
        return recorded
    first = next(iter(places.values()))[1]
    step, count = STEP_MM[first["micrometer"]], first["places"]
    thin, thick = min(read, key=read.get), max(read, key=read.get)
    axle = corner.split("_")[0]
    # Where the rotor's runout was read at as many places, the thickness is measured at these.
    at = {p: 360 * (p - 1) / count for p in read}
    for seen in by_place(job, "runout", corner).values():
        for _, body in seen.values():
            if body["surface"] == "rotor" and body["places"] == count and body["place"] in at:
                at[body["place"]] = degrees(body)

    def limit(name):
        spec = job.last("thickness_limit", lambda b: (b["axle"], b["bound"]) == (axle, name))
        return number(spec["value"]["number"]) * MM[spec["value"]["unit"]] if spec else None
    u = combined([(0.002, None), (0.004 / np.sqrt(3), None), (step / np.sqrt(6), None)])[0]
    least = against_least(read[thin], u, limit("least"))
    now = shape(Places(list(read.values()), [at[p] for p in read], step))
    reach = None if now["open"] else Reach(*now["moves"], 0.0)
    varies = reach.against(limit("variation")) if reach else \
        {"limit": limit("variation"), "conformity": None, "conformance": None}
    recorded["measured"] = {
        "thinnest": read[thin], "thickest": read[thick], "range": read[thick] - read[thin], "u_of_thinnest": u,
        "varies": reach and reach.recorded(), "undetermined": now["open"],
        "thinnest_at": thin, "thickest_at": thick, "least": least, "variation": varies,
        "next": "new_rotor" if least["conformity"] in ("out_not_proven", "proven_out")
        else "machine" if varies["conformity"] == "proven_out"
        else "look_up" if None in (least["limit"], varies["limit"])
        else "go_on" if least["conformity"] == varies["conformity"] == "proven_in" else "measure_again"}
    return recorded


def faces(job, corner, only=None):
    runs = [Run(nth, places) for nth, places in by_place(job, "runout", corner).items()]
    return [face(job, corner, runs, run) for run in runs if only in (None, run.nth)]


def rotors(job, corner, only=None):
    measured = by_place(job, "thickness", corner).items()
    return [rotor(job, corner, n, places) for n, places in measured if only in (None, n)]


def bench(job):
    every = lambda of: [one for corner in CORNERS for one in of(job, corner)]
    return {"faces": every(faces), "rotors": every(rotors)}


# The digest, by RFC 8785.

def canonical(value):
    if isinstance(value, dict):
        names = sorted(value, key=lambda name: name.encode("utf-16-be"))
        return "{" + ",".join(f"{canonical(n)}:{canonical(value[n])}" for n in names) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    if isinstance(value, float):
        # The doubles of these files are between 1e-6 and 1e16, which ECMAScript writes out in full.
        return str(int(value)) if value == int(value) else format(Decimal(repr(value)), "f")
    return json.dumps(value, ensure_ascii=False)


def sha256(text):
    return hashlib.sha256(text.encode()).hexdigest()


# Comparing.

def compare(path, ours, theirs, complaints):
    """Counts the values compared; numbers agree to 1e-9 of their size, angles to 1e-7 degrees."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        if ours.keys() != theirs.keys():
            complaints.append(f"{path}: {sorted(ours.keys() ^ theirs.keys())}")
        return sum(compare(f"{path}.{k}", ours[k], theirs.get(k), complaints) for k in ours)
    if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        return sum(compare(f"{path}[{i}]", a, b, complaints) for i, (a, b) in enumerate(zip(ours, theirs)))
    if isinstance(ours, (int, float)) and isinstance(theirs, (int, float)) and not isinstance(ours, bool):
        same = abs(ours - theirs) <= max(1e-9 * max(abs(ours), abs(theirs)), 1e-15)
        # A probability here is an integral, known to the 1e-13 that it is taken to.
        same = same or path.endswith(".conformance") and abs(ours - theirs) <= 1e-13
        # Just below a whole turn is just above none.
        if path.endswith((".phase", ".high_spot")):
            same = abs((ours - theirs + 180) % 360 - 180) <= 1e-7
    else:
        same = ours == theirs
    if not same:
        complaints.append(f"{path}: here {ours!r}, there {theirs!r}")
    return 1


def by_source(recorded):
    """What the command said, the parts of each uncertainty by name: parts alike need no order."""
    rested = [decision["inputs"] for decision in recorded["decisions"]]
    every = [figures for of in rested for figures in of["sets"] + [of.get("together")]]
    every += [one["proved"].get("set") for one in recorded["proofs"]]
    for figures in every:
        if figures:
            figures["parts"] = {part.pop("source"): part for part in figures["parts"]}
    return recorded


def seen(entry, by_id):
    """The job as an entry had seen it."""
    open_, found = list(entry["after"]), {}
    while open_:
        one = by_id[open_.pop()]
        if one["id"] not in found:
            found[one["id"]] = one
            open_ += one["after"]
    return Job(list(found.values()))


def opinion(log):
    entries = log["entries"]
    by_id = {entry["id"]: entry for entry in entries}
    job = Job(entries)
    decisions, proofs, found = [], [], []
    for entry in entries:
        if recorded := entry["what"].get("decided"):
            then = seen(entry, by_id)
            decisions.append({"entry": entry["id"], "corner": recorded["corner"], "nth": recorded["nth"], "rules": RULES,
                              **decide(then, recorded["corner"]), "sets": sets(then)})
        elif recorded := entry["what"].get("proved"):
            proofs.append({"entry": entry["id"], "proved": proof(seen(entry, by_id), recorded["corner"])})
        elif recorded := entry["what"].get("face_found"):
            found.append({"entry": entry["id"], "found": faces(seen(entry, by_id), recorded["corner"], recorded["run"])[0]})
        elif recorded := entry["what"].get("rotor_found"):
            found.append({"entry": entry["id"], "found": rotors(seen(entry, by_id), recorded["corner"], recorded["run"])[0]})
    corners = (job.last("corners") or {"corners": []})["corners"]
    return {"sets": sets(job), "decisions": decisions, "proofs": proofs, "found": found,
            "proved": [proved(job, corner) for corner in corners], **bench(job)}


def is_part(log):
    """Whether entries are named that are in another file: then nothing of the job is judged."""
    here = {entry["id"] for entry in log["entries"]}
    return any(saw not in here for entry in log["entries"] for saw in entry["after"])


def main(said):
    files = values = parts = 0
    complaints = []
    for line in open(said, encoding="utf-8"):
        recorded = json.loads(line)
        with open(recorded["file"], encoding="utf-8") as file:
            logs = json.load(file)["logs"]
        for log, theirs in zip(logs, recorded["logs"], strict=True):
            if log["kind"] == "job" and is_part(log):
                parts += 1
                part = [remark["code"] for remark in theirs["remarks"]].count("part")
                values += compare(recorded["file"], 1, part, complaints)
            elif log["kind"] == "job":
                name, computed = recorded["file"], by_source(theirs["computed"])
                mine = opinion(log)
                values += compare(name, mine, {key: computed[key] for key in mine}, complaints)
                digests = sorted({sha256(canonical(entry)) for entry in log["entries"]})
                values += compare(name, sha256("\n".join(digests)), theirs["canonical"], complaints)
        files += 1
    print(*complaints[:50], sep="\n")
    print(f"{files} files, {values} values, {len(complaints)} differ" + (f", {parts} part of a job" if parts else ""))
    return 1 if complaints or not values else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))

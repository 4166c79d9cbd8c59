"""The sums of made jobs, computed again with Python's decimal.

    python tests/money.py JOBS.jsonl      one job a line: what was put in, and what was said of it

Rounding as an invoice is commonly rounded: a half away from zero (ROUND_HALF_UP of a magnitude).
Prints how many jobs agree; ends with 1 at the first that does not.
"""

import json
import sys
from decimal import ROUND_HALF_UP, Decimal, getcontext

getcontext().prec = 60


def whole(value):
    return value.quantize(Decimal(1), ROUND_HALF_UP)


def number(text):
    return Decimal(text.replace(",", "."))


def by_rate(lines, usual, rounding):
    """Net, and for each rate in the order of the lines its net and tax."""
    net, rates = Decimal(0), {}
    for line in lines:
        amount = whole(number(line["quantity"]) * line["each"])
        net += amount
        rate = line["rate"] if line["rate"] is not None else usual
        if not line["taxed"] or rate is None:
            continue
        sums = rates.setdefault(number(rate).normalize(), [Decimal(0), Decimal(0)])
        sums[0] += amount
        sums[1] += whole(amount * number(rate) / 100) if rounding == "line" else 0
    if rounding != "line":
        for rate, sums in rates.items():
            sums[1] = whole(sums[0] * rate / 100)
    return net, rates


def contained(gross, rate):
    return whole(gross * rate / (100 + rate))


def add(parts, rate, net, tax):
    sums = parts.setdefault(rate, [Decimal(0), Decimal(0)])
    sums[0] += net
    sums[1] += tax


def add_whole(parts, gross, rate):
    tax = contained(gross, rate) if rate is not None else Decimal(0)
    add(parts, rate, gross - tax, tax)


def computed(job):
    usual = job["percent"]
    rounding = job["rounding"] if usual is not None else "total"
    net, rates = by_rate(job["lines"], usual, rounding)
    tax = sum(sums[1] for sums in rates.values())
    gross = net + tax
    said = {"net": net, "tax": tax, "gross": gross}
    due, done = job["ending"] in ("finished", "declined", "nothing_wrong"), []
    repaired = job["repair"] and job["ending"] in ("finished", "declined")
    parts, rate = {}, None if usual is None else number(usual).normalize()
    declined = Decimal(0) if job["repair"] else gross
    if job["inspection"]["yes"]:
        if due and not repaired and job["ending"] != "finished":
            done.append(Decimal(job["inspection"]["minor"]))
            add_whole(parts, done[-1], rate)
    else:
        declined += job["inspection"]["minor"]
    if repaired:
        done.append(gross)
        untaxed = net - sum(sums[0] for sums in rates.values())
        for at, sums in rates.items():
            add(parts, at, *sums)
        if untaxed:
            add(parts, None, untaxed, Decimal(0))
    for extra in job["further"]:
        if not extra["yes"]:
            declined += extra["minor"]
        elif due:
            done.append(Decimal(extra["minor"]))
            add_whole(parts, done[-1], rate)
    done = sum(done, Decimal(0))
    off = min(Decimal(job["discount"]), done)
    to_pay = done - off if due else Decimal(0)
    taxed = [at for at in parts if at is not None]
    order = [at for at in taxed] + ([None] if None in parts and parts[None][0] else [])
    shares, left = [], off
    for place, at in enumerate(order or [None]):
        of = sum(parts.get(at, [Decimal(0), Decimal(0)]))
        last = place + 1 == len(order or [None]) or done == 0
        share = left if last else whole(off * of / done)
        left -= share
        shares.append((at, share))
        if done == 0:
            break
    if job["discount"] is not None and due:
        for at, share in shares:
            add_whole(parts, -share, at)
    received = Decimal(sum(job["paid"]) - sum(job["refunded"]))
    said |= {
        "to_pay": to_pay, "declined": declined,
        "still": max(to_pay - received, Decimal(0)),
        "overpaid": max(received - to_pay, Decimal(0)) if due else Decimal(0),
    }
    taxes = {str(float(at)): [int(n), int(t)] for at, (n, t) in parts.items() if at is not None}
    said = {name: int(value) for name, value in said.items()}
    return said | {"invoice": {"taxes": taxes, "gross": int(to_pay)} if due else None}


def main(path):
    agree = 0
    with open(path, encoding="utf-8") as lines:
        for line in lines:
            job = json.loads(line)
            mine = computed(job["in"])
            if mine != job["said"]:
                print(json.dumps({"in": job["in"], "decimal": mine, "said": job["said"]}))
                return 1
            agree += 1
    print(agree)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))

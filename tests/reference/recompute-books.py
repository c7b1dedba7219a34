"""Adds up the books of a backup, from its journal alone and by the rules as README.md of the books states them.

Usage: python3 recompute-books.py BACKUP. Prints the balance of each account in whole cents, as JSON. It shares nothing with
the program but the file. Left out is what a month's end accrues, which follows from fee schedules.
"""

import json
import sys
from collections import defaultdict
from datetime import datetime, timezone

EXPENSED = {"interest", "floor-fee"}


def entries_that_count(lines):
    """Undos from the last to the first: one that is undone undoes nothing."""
    entries = {}
    for line in lines:
        read = json.loads(line)
        if "happening" in read:
            entries[read["id"]] = read
    gone = set()
    for entry_id in sorted(entries, reverse=True):
        told = entries[entry_id]["happening"]
        if told["kind"] == "undone" and entry_id not in gone and told["entry"] < entry_id:
            gone.add(told["entry"])
    return [entries[entry_id] for entry_id in sorted(entries) if entry_id not in gone]


def day_of(instant):
    return datetime.fromtimestamp(instant / 1000, timezone.utc).strftime("%Y-%m-%d")


def read_books(entries):
    costs, payments, floor, sold, canceled = {}, {}, [], {}, {}
    for entry in entries:
        told, own = entry["happening"], entry["id"]
        kind = told["kind"]
        if kind == "costs-booked":
            for i, line in enumerate(told["lines"]):
                costs[f"{own}/{i}"] = {**line, "date": told["date"], "owed": told["paid"] == "owed"}
        elif kind == "invoice-confirmed":
            for i, line in enumerate(told["costs"]):
                costs[f"{own}/{i}"] = {**line, "owed": True}
            for i, line in enumerate(told["payments"]):
                payments[f"{own}/p{i}"] = dict(line)
        elif kind == "payment-booked":
            for i, line in enumerate(told["lines"]):
                payments[f"{own}/{i}"] = {**line, "date": told["date"]}
        elif kind == "line-corrected":
            for lines in (costs, payments):
                if told["line"] not in lines:
                    continue
                if told["to"] is None:
                    del lines[told["line"]]
                else:
                    lines[told["line"]].update(told["to"])
        elif kind == "floor-booked":
            floor.append(told)
        elif kind == "outcome-booked":
            sold[told["lot"]] = told
        elif kind == "dispute-closed" and told["outcome"]["ended"] in ("sale-undone", "sold-again"):
            canceled[entry["subject"].removeprefix("lot:")] = day_of(told["outcome"]["at"])
    return costs.values(), payments.values(), floor, sold, canceled


def balances(costs, payments, floor, sold, canceled):
    sums = defaultdict(int)

    def post(debit, credit, cents):
        sums[debit] += cents
        sums[credit] -= cents

    inside = defaultdict(list)
    for line in costs:
        lot = line["lot"]
        gone = canceled.get(lot) or (sold[lot]["date"] if lot in sold else None)
        if line["cost"] in EXPENSED:
            account = line["cost"]
        elif gone is None or line["date"] <= gone:
            account = "inventory"
            inside[lot].append(line)
        else:
            account = "undone" if lot in canceled else "costOfSales"
        post(account, "payable" if line["owed"] else "bank", line["cents"])
    for line in payments:
        post("payable", "bank", line["cents"])
    for move in floor:
        if move["move"] == "draw":
            post("payable", "floor", move["cents"])
        else:
            post("floor", "bank", move["cents"])
    for lot, lines in inside.items():
        if lot in canceled:
            for line in lines:
                back = line["owed"] and line["cost"] in ("hammer", "fee")
                post("payable" if back else "undone", "inventory", line["cents"])
        elif lot in sold:
            post("costOfSales", "inventory", sum(line["cents"] for line in lines))
    for lot, outcome in sold.items():
        if lot not in canceled:
            income = "wholesale" if outcome["buyer"] == "wholesale" else "retail"
            post("bank", income, outcome["priceCents"])
    return {account: cents for account, cents in sums.items() if cents != 0}


with open(sys.argv[1], encoding="utf-8") as backup:
    print(json.dumps(balances(*read_books(entries_that_count(backup)))))

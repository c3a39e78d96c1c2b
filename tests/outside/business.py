"""What units weigh, cost and take, and how they fit, worked out anew from the range file.

Nothing of the core is used but the lengths and areas of the parts; the file's keys say what they mean.
"""

import bisect
import datetime
import math
import pathlib
import statistics
import tomllib

import numpy
from scipy import optimize, stats

RANGE = tomllib.loads((pathlib.Path(__file__).parents[2] / "web/ranges/fenland.toml").read_text())


def check(figures, near):
    for order in figures["business"]["orders"]:
        finish = next(finish for finish in RANGE["finish"] if finish["key"] == order["finish"])
        minutes = labour(order, finish)
        packages = carried(order, near)
        priced(order, finish, minutes, len(packages), near)
        promised(order, finish, minutes, near)
        top(order["top"], finish, near)
    for batch in figures["business"]["batches"]:
        joints(batch, near)


def labour(order, finish):
    """Minutes by work: (stage, rate) to minutes."""
    rates = RANGE["rates"]
    sheet_m2 = sum(material["m2"] for material in order["materials"])
    sheets = sum(material["sheets"] for material in order["materials"])
    faces, count = order["faces_m2"], len(order["parts"])
    before, after = finish["coats_before"], finish["coats_after"]
    minutes = {}

    def add(stage, rate, amount):
        minutes[stage, rate] = minutes.get((stage, rate), 0) + amount

    add("sheets", "bench", 2 * sheet_m2 * rates["sand_minutes_per_m2"])
    for coat in range(before):
        add("sheets", "spray", 2 * sheet_m2 * rates["coat_minutes_per_m2"] + sheets * rates["turn_minutes_per_sheet"])
        if coat:
            add("sheets", "bench", 2 * sheet_m2 * rates["between_coats_minutes_per_m2"])
    for coat in range(after):
        add("edges", "spray", faces * rates["coat_minutes_per_m2"])
        if before or coat:
            add("edges", "bench", faces * rates["between_coats_minutes_per_m2"])
    add("sheets", "spray", rates["spray_setup_minutes"] if before else 0)
    add("edges", "spray", rates["spray_setup_minutes"] + count * rates["mask_minutes_per_part"] if after else 0)
    run = order["cut_m"] * 1000 * rates["passes"] / rates["feed_mm_per_min"]
    run += order["outlines"] * RANGE["cutting"]["outline_minutes"]
    add("cut", "machine", rates["setup_minutes"] + sheets * rates["sheet_minutes"] + run)
    # A hole for cables or a finger: two half circles and two straight sides, finished like an edge, its rim broken on both faces.
    rims = sum(math.pi * high + 2 * (long - high) for long, high in order["holes"]) / 1000
    add("edges", "bench", (order["edges_m"] + rims) * rates["edge_minutes_per_m"])
    add("edges", "bench", (order["chamfers_m"] + 2 * rims) * rates["chamfer_minutes_per_m"])
    add("edges", "bench", order["roundings_m"] * rates["rounding_minutes_per_m"])
    add("edges", "bench", order["pivots"] * rates["pivot_minutes"])
    add("edges", "bench", order["joints"] * rates["dry_fit_minutes_per_joint"])
    add("pack", "pack", count * (rates["pack_minutes_per_part"] + rates["label_minutes_per_part"]))
    return minutes


def lifted(people):
    """HSE L23: two people two thirds, three half of the sum; the range may say less for two."""
    one = RANGE["handling"]["one_person_kg"]
    together = {1: one, 2: RANGE["handling"]["two_people_kg"], 3: 3 * one / 2}[people]
    near_enough = {1: one, 2: 2 * one * 2 / 3, 3: 3 * one / 2}[people]
    assert together <= near_enough + 1e-9
    return together


def carried(order, near):
    """First-fit decreasing, carrier by carrier; what is beyond all limits by itself has its own package."""
    rates, parts = RANGE["rates"], {part["id"]: part for part in order["parts"]}

    def figures(ids):
        chosen = [parts[one] for one in ids]
        mass = sum(part["kg"] + part["m2"] * rates["pack_kg_per_m2"] for part in chosen) + rates["pack_kg_per_package"]
        _, (long, wide, high) = laid(chosen, 0, 0)
        return mass, long, long + 2 * (wide + high)

    for carrier in RANGE["carrier"]:
        most = min(carrier["package_most_kg"], lifted(carrier["people"]))
        limits = most, carrier["longest_mm"], carrier["length_and_girth_mm"]
        fits = lambda ids: all(found <= limit for found, limit in zip(figures(ids), limits))
        packages = []
        for part in sorted(parts, key=lambda one: -parts[one]["kg"]):
            for package in packages:
                if fits([*package, part]):
                    package.append(part)
                    break
            else:
                packages.append([part])
        if all(map(fits, packages)):
            break
    same("carrier", order["carrier"], carrier["key"])
    same("packages", len(order["packages"]), len(packages))
    for package, ids in zip(order["packages"], packages):
        ids, places, sides = kept(ids, parts)
        same("the parts of a package", package["parts"], ids)
        near("a package's mass", package["kg"], figures(ids)[0], 1e-9)
        same("the layers of a package", [place[0] for place in package["places"]], [place[0] for place in places])
        for found, wanted in zip([package["sides"], *package["places"]], [sides, *places], strict=True):
            for one, other in zip(found, wanted, strict=True):
                near("where parts lie in a package", one, other, 1e-9, 1e-9)
    # Whole parts need at least as many packages as the masses alone.
    mass = sum(part["kg"] + part["m2"] * rates["pack_kg_per_m2"] for part in parts.values())
    near("packages", max(len(packages), math.ceil(mass / most)), len(packages), 0)
    return packages


def kept(ids, parts):
    """Laid again by length, then by width, in a package with the sides that it has; as they came where that is higher."""
    came = laid([parts[one] for one in ids], 0, 0)
    _, (long, wide, high) = came
    again = sorted(ids, key=lambda one: (-parts[one]["long"], -parts[one]["wide"]))
    # Free corners of layers, each with what is free from there: length and width.
    layers, thick, places = [], [], []
    for part in (parts[one] for one in again):
        fits = lambda room: room[1][0] + 1e-6 >= part["long"] and room[1][1] + 1e-6 >= part["wide"]
        number = next((at for at, free in enumerate(layers) if any(map(fits, free))), len(layers))
        if number == len(layers):
            layers.append([((0, 0), (long, wide))])
            thick.append(0)
        free = layers[number]
        at = next(at for at, room in enumerate(free) if fits(room))
        (along, across), (length, width) = free[at]
        # Behind the part a strip of its width is left, beside it one of the room's whole length: that behind it fills first.
        free[at : at + 1] = [((along + part["long"], across), (length - part["long"], part["wide"])),
                             ((along, across + part["wide"]), (length, width - part["wide"]))]
        thick[number] = max(thick[number], part["thick"])
        places.append([number, along, across])
    if sum(thick) > high + 1e-6:
        return ids, *came
    widest = max(place[2] + parts[one]["wide"] for one, place in zip(again, places))
    return again, places, [long, widest, sum(thick)]


def laid(parts, long, wide):
    """Layers of rows, part by part, in a package that has these sides at least: where each lies, as layer, along and across, and the
    sides of them all."""
    layers, begun, places = [], [], []
    high = lambda: sum(layer["thick"] for layer in layers)
    for part in parts:
        long, widest = max(long, part["long"]), max(wide, part["wide"], high())
        # Rows in the order in which they were begun, then layers from the first one on, then a new one.
        row = next((row for row in begun if row["wide"] >= part["wide"] and row["along"] + part["long"] <= long), None)
        if row is None:
            taken = lambda layer: sum(row["wide"] for row in begun if row["layer"] is layer)
            layer = next((layer for layer in layers if taken(layer) + part["wide"] <= widest), None)
            if layer is None:
                layer = {"number": len(layers), "thick": 0}
                layers.append(layer)
            row = {"layer": layer, "across": taken(layer), "wide": part["wide"], "along": 0}
            begun.append(row)
        layer = row["layer"]
        layer["thick"] = max(layer["thick"], part["thick"])
        places.append([layer["number"], row["along"], row["across"]])
        row["along"] += part["long"]
        wide = max(wide, row["across"] + row["wide"])
    return places, [long, wide, high()]


def same(what, found, wanted):
    if found != wanted:
        raise SystemExit(f"{what}: {found} against {wanted}")


def bought(order, material, near):
    """What the sheets of a board cost: whole sheets of its formats, less what is kept of them, and never less than the parts alone."""
    board = next(board for board in RANGE["board"] if board["key"] == material["board"])
    prices = {sheet["price_minor"]: sheet["length_mm"] * sheet["width_mm"] / 1e6 for sheet in board["sheet"]}
    (small, small_m2), (large, large_m2) = sorted(prices.items())
    count = round(material["sheets"])
    blanks = order["blanks"][material["board"]]
    share = RANGE["offcut"]["worth_per_mille"] / 1000
    # So many of the one format and so many of the other: the area that counts tells how much was kept.
    for large_ones in range(count + 1):
        price = (count - large_ones) * small + large_ones * large
        area = (count - large_ones) * small_m2 + large_ones * large_m2
        kept = (area - material["m2"]) / share
        per_m2 = [small / small_m2, large / large_m2]
        # Each offcut is worth whole cents, rounded down; a sheet leaves a few.
        worth = [kept * share * each for each in per_m2]
        if kept >= -1e-9 and kept + blanks <= area + 1e-9 and price - max(worth) - 1e-6 <= material["cost"] <= price - min(worth) + 8:
            near("an area that counts", material["m2"], max(material["m2"], blanks), 0)
            return material["cost"]
    raise SystemExit(f"sheets of {material['board']}: {material} for blanks of {blanks} m²")


def half_away(amount):
    return math.floor(abs(amount) + 0.5) * (1 if amount >= 0 else -1)


def priced(order, finish, minutes, packages, near):
    rates, lines = RANGE["rates"], {line["item"]: line["amount_minor"] for line in order["lines"]}
    of = lambda rate: sum(spent for (_, each), spent in minutes.items() if each == rate)
    cost = {}
    sheet_m2 = {material["board"]: material["m2"] for material in order["materials"]}
    cost["sheets"] = sum(bought(order, material, near) for material in order["materials"])
    cost["machine"] = of("machine") * rates["machine_hour_minor"] / 60
    wet = finish["wet_film_um"] / 1000  # litres on a square metre
    covered = 2 * sum(sheet_m2.values()) * finish["coats_before"] + order["faces_m2"] * finish["coats_after"]
    cost["finish"] = covered * wet / (1 - finish["loss_per_mille"] / 1000) * finish["litre_minor"]
    cost["spraying"] = of("spray") * rates["spray_hour_minor"] / 60
    cost["bench"] = of("bench") * rates["bench_hour_minor"] / 60
    cost["packing"] = of("pack") * rates["bench_hour_minor"] / 60 + order["faces_m2"] / 2 * rates["pack_minor_per_m2"]
    cost = {item: half_away(amount) for item, amount in cost.items()}
    cost["overhead"] = half_away(sum(cost.values()) * rates["overhead_per_mille"] / 1000)
    made = sum(cost.values())
    cost["margin"] = half_away(made / (1 - rates["margin_per_mille"] / 1000)) - made
    carrier = next(carrier for carrier in RANGE["carrier"] if carrier["key"] == order["carrier"])
    cost["carriage"] = packages * carrier["package_minor"]
    cost["tax"] = half_away(sum(cost.values()) * rates["tax_per_mille"] / 1000)
    same("the lines of the price", sorted(lines), sorted(cost))
    for item, amount in cost.items():
        # A half may fall to either side of its last bit.
        near(f"price, {item}", lines[item], amount, 0, 1)


def promised(order, finish, minutes, near):
    """Day by day from a list of the days on which the workshop and the carrier work."""
    today = datetime.date.fromisoformat(order["today"])
    ahead = [today + datetime.timedelta(days) for days in range(1, 1500)]
    day = datetime.date.fromisoformat
    calendar = RANGE["calendar"]
    shut = [(day(one["from"]), day(one["to"])) for one in calendar["shutdowns"]]
    is_open = lambda at: (at.isoweekday() in calendar["weekdays"] and at.isoformat() not in calendar["closed"]
                          and not any(first <= at <= last for first, last in shut))
    open_days = [at for at in ahead if is_open(at)]
    booked, free = order["backlog"], 0
    whole = lambda spent, per_day: math.ceil(spent / per_day)
    for stage, found in zip(RANGE["stage"], order["stages"], strict=True):
        idle = whole(booked.get(stage["key"], 0), stage["minutes_per_day"])
        spent = sum(each for (work, _), each in minutes.items() if work == stage["work"])
        takes = [1, whole(spent, stage["minutes_per_day"])]
        coats = {"sheets": finish["coats_before"], "edges": finish["coats_after"]}.get(stage["work"], 0)
        dries = 0
        for coat in range(coats):
            dries += (finish["recoat_after_minutes"] if coat else 0) + finish["turn_after_minutes"]
        takes.append(whole(spent + dries, calendar["day_minutes"]))
        if "crew" in stage:
            crew = next(crew for crew in RANGE["crew"] if crew["key"] == stage["crew"])
            theirs = sum(booked.get(one["key"], 0) for one in RANGE["stage"] if one.get("crew") == stage["crew"])
            idle = max(idle, whole(theirs, crew["minutes_per_day"]))
            takes.append(whole(spent, crew["minutes_per_day"]))
        first = max(free, idle) + 1
        free = first + max(takes) - 1 + stage["wait_days"]
        same("a stage begins", found["starts"], open_days[first - 1].isoformat())
        same("a stage lets go", found["free"], open_days[free - 1].isoformat())
    carrier = next(carrier for carrier in RANGE["carrier"] if carrier["key"] == order["carrier"])
    travels = lambda at: at.isoweekday() in carrier["weekdays"] and at.isoformat() not in carrier["closed"]
    leaves = next(at for at in open_days[free - 1:] if travels(at))
    road = [at for at in ahead if travels(at)]
    same("it leaves", order["leaves"], leaves.isoformat())
    same("it arrives", order["arrives"], road[bisect.bisect(road, leaves) + carrier["days"] - 1].isoformat())
    near("a promise", 1, 1, 0)


def expected(finish):
    """Clearance that is to be expected, by the coat on both walls of a slot."""
    solids, fit = finish["volume_solids_percent"] / 100, RANGE["fit"]
    after = finish["wet_film_um"] / 1000 * solids * finish["coats_after"]
    return RANGE["build"]["clearance_mm"] - 2 * after * fit["slot_coat_per_mille"] / 1000


def joints(batch, near):
    """Eight points: their mean off by Student's t, each joint off by what varies within the batch."""
    finish = next(finish for finish in RANGE["finish"] if finish["key"] == batch["finish"])
    solids, fit = finish["volume_solids_percent"] / 100, RANGE["fit"]
    film = finish["wet_film_um"] / 1000 * solids * (finish["coats_before"] + finish["coats_after"])
    film *= fit["film_per_mille"] / 1000
    mean, cut_for = expected(finish), fit["cut_mm"]
    if batch["points"]:
        within = statistics.stdev(batch["points"])
        exact = statistics.fmean(batch["points"])
        mean -= exact - round(exact * 20) / 20
        shared = within / math.sqrt(len(batch["points"]))
    elif batch["mean_alone"]:
        within = fit["within_batch_mm"] / 3
        shared = math.hypot(within / math.sqrt(8), stats.uniform(-0.025, 0.05).std())
    else:
        # EN 315:2000: 0.2 + 0.03 t above nominal, 0.4 + 0.03 t below.
        above, below = 0.2 + 0.03 * batch["nominal"], 0.4 + 0.03 * batch["nominal"]
        within, shared = fit["within_batch_mm"] / 3, (above + below) / 6
        mean -= (above - below) / 2
    own = math.sqrt(within**2 + (2 * film**2 + cut_for**2) / 9)
    near("mean clearance", batch["mean"], mean, 1e-9)
    near("spread of a batch's mean", batch["shared"], shared, 1e-9)
    near("spread within a batch", batch["own"], own, 1e-9)
    build = RANGE["build"]
    tight = lambda at: stats.norm.cdf(0, at, own)
    outside = lambda at: (stats.norm.cdf(build["clearance_least_mm"], at, own)
                          + stats.norm.sf(build["clearance_most_mm"], at, own))
    ends = numpy.array(stats.t(7, mean, shared).interval(0.95))
    near("joints too tight", batch["tight"], tight(ends).max(), 1e-3, 1e-9)
    near("joints outside", batch["outside"], outside(ends).max(), 1e-3, 1e-9)
    # Drawn: batches of joints whose mean they share. Fewer than one batch in twenty has a larger share outside.
    draw = numpy.random.Generator(numpy.random.PCG64(20261128))
    means = mean + shared * draw.standard_t(7, 4000)
    shares = outside(means)
    worse = (shares > batch["outside"] * (1 + 1e-3) + 1e-9).mean()
    near("batches that are worse", min(worse, 0.05 + 4 * math.sqrt(0.05 * 0.95 / 4000)), worse, 0)


def top(top, finish, near):
    """What the joints of the back, which are close, and of the top, which are loose, lack."""
    close = expected(finish) - over(top)
    loose = close + RANGE["build"]["clearance_loose_mm"] - RANGE["build"]["clearance_mm"]
    uprights = [(at, top["depth"] / 2, 1.0, 0.0) for at in top["uprights"]]
    near("what the joints of the back lack", top["lacks"][0], over_all(top, uprights, close), 1e-6, 1e-6)
    lacks, exact = top["lacks"][1], over_all(top, uprights + top["staves"], loose)
    if top["staves"]:
        # The outermost of a row counts as if it stood at the very end of its arc, the last ones at most a little more: never less, and hardly more.
        near("what the joints of a bowed top lack at least", min(lacks, exact), exact, 1e-6, 1e-6)
        near("what the joints of a bowed top lack", lacks, exact, 0, 0.01)
    else:
        near("what the joints of the top lack", lacks, exact, 1e-6, 1e-6)


def over_all(top, heads, clearance):
    """Each slot and each head in it at both ends of the window, wherever the part is shifted to: middle and normal of each in plan."""
    moisture, most = RANGE["moisture"], -math.inf
    for end in (moisture["least_percent"], moisture["most_percent"]):
        by = end - moisture["made_percent"]
        longer, thicker = 1 + moisture["longer_percent"] / 100 * by, moisture["thicker_percent"] / 100 * by
        slot = (top["coated"] + clearance) * longer
        head = top["coated"] + top["wood"] * thicker
        # A head is free to both sides by half of what its slot is wider; the part is shifted to where most fit, along the width: it is as
        # long before its middle as behind it.
        off = [((x * nx + (y - top["depth"] / 2) * ny) * (longer - 1), nx) for x, y, nx, ny in heads]
        furthest = lambda shift: max(abs(each - shift * nx) for each, nx in off)
        reach = max(abs(each) for each, _ in off) + 1
        shift = optimize.minimize_scalar(furthest, bounds=(-reach, reach), method="bounded", options={"xatol": 1e-9}).x
        most = max(most, 2 * furthest(shift) + head - slot)
    return most


def over(top):
    """By how much the exact mean of the body's points is above the one that is cut for."""
    body = next(board for board in RANGE["board"] if board["key"] == RANGE["model"][0]["body"])
    exact = statistics.fmean(body["measured_points_mm"])
    assert abs(exact - top["wood"]) < 0.026
    return exact - top["wood"]

"""The states of all answers by a general solver (OR-Tools CP-SAT), given the rules as tables.

By hand:
    SLOTWRIGHT_PUZZLE=/tmp/puzzle.json cargo test --profile native -p slotwright-tests --test options the_puzzle_is_whole
    python3 tests/options/cpsat.py /tmp/puzzle.json

Says whether every state and every set of shifts is the same, and what both took.
"""

import json
import statistics
import sys

import numpy
from ortools.sat.python import cp_model

# A choice: width, height, depth, back, number of bays, then share, fill, hole, device of each bay.
SIZES = (4, 2, 2, 1)
BAY = (9, 4, 2, 2)
ONE, TWO = 144, 144 * 144
# The questions by their importance, and which part of a choice each is.
QUESTIONS = {1: [3], 2: [5, 9], 3: [2], 4: [1], 5: [0], 11: [7], 12: [11], 21: [6], 22: [10], 30: [4], 41: [8], 42: [12]}
RANKS = {question: rank for rank, question in enumerate(sorted(QUESTIONS))}
MANY = 1 << len(RANKS)


def parts(place):
    size, row = divmod(place, ONE + TWO)
    sizes = numpy.unravel_index(size, SIZES)
    if row < ONE:
        bay = numpy.unravel_index(row, BAY)
        # A bay that is not there would be like the last one, without its device.
        return [*map(int, sizes), 1, *map(int, bay), *map(int, bay[:-1]), 0]
    left, right = divmod(row - ONE, ONE)
    bays = [*numpy.unravel_index(left, BAY), *numpy.unravel_index(right, BAY)]
    return [*map(int, sizes), 2, *map(int, bays)]


def tables(broken):
    """For each rule and number of bays the parts that it depends on and the forbidden tuples of them."""
    rows = numpy.array(broken, dtype=numpy.uint64).reshape(16, ONE + TWO)
    grids = [(1, rows[:, :ONE].reshape(*SIZES, *BAY), [0, 1, 2, 3, 5, 6, 7, 8]),
             (2, rows[:, ONE:].reshape(*SIZES, *BAY, *BAY), [0, 1, 2, 3, *range(5, 13)])]
    for count, grid, axes in grids:
        for rule in range(64):
            wrong = (grid >> numpy.uint64(rule)) & numpy.uint64(1)
            if not wrong.any():
                continue
            kept = []
            for axis in reversed(range(wrong.ndim)):
                first = wrong.take([0], axis=axis)
                if (wrong == first).all():
                    wrong = first.squeeze(axis)
                else:
                    kept.append(axes[axis])
            yield count, kept[::-1], numpy.argwhere(wrong)


def solver_for(broken):
    model = cp_model.CpModel()
    limits = [*SIZES, 3, *BAY, *BAY]
    variables = [model.new_int_var(1 if at == 4 else 0, limit - 1, f"v{at}") for at, limit in enumerate(limits)]
    for count, kept, forbidden in tables(broken):
        model.add_forbidden_assignments([variables[4], *(variables[at] for at in kept)],
                                        [(count, *map(int, row)) for row in forbidden])
    return model, variables


def state(base, origin, asked):
    """The state of an answer: the best other changes from the choice with the answer taken."""
    model = base.clone()
    variables = [model.get_int_var_from_proto_index(at) for at in range(13)]
    changed = {}
    for at, variable in enumerate(variables):
        differs = model.new_bool_var(f"d{at}")
        model.add(variable != origin[at]).only_enforce_if(differs)
        model.add(variable == origin[at]).only_enforce_if(differs.negated())
        changed[at] = differs
    # What is not there is as it was; a device is dropped at most, and its bay stays; one share moves at most.
    for at in range(9, 13):
        model.add(variables[4] == 2).only_enforce_if(changed[at])
    for at in (8, 12):
        model.add(variables[at] == 0).only_enforce_if(changed[at])
    bays = 1 if asked in (11, 21, 41) else 2 if asked in (12, 22, 42) else 0
    held = 2 if origin[4] == 2 and origin[12] else 1 if origin[8] else 0
    model.add(variables[4] >= max(bays, held, 1))
    model.add_at_most_one(changed[5], changed[9])
    costs = []
    for question, places in QUESTIONS.items():
        if question == asked:
            model.add(sum(changed[at] for at in places) == 0)
        else:
            moved = model.new_bool_var(f"q{question}")
            model.add_max_equality(moved, [changed[at] for at in places])
            costs.append((question, moved))
    model.minimize(sum(moved * (MANY + (1 << RANKS[question])) for question, moved in costs))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return "shut", [], solver.wall_time
    assert status == cp_model.OPTIMAL
    found = sorted(question for question, moved in costs if solver.value(moved))
    return ("shifts" if found else "open"), found, solver.wall_time


def main():
    for puzzle in json.load(open(sys.argv[1])):
        base, _ = solver_for(puzzle["broken"])
        theirs, ours, same = [], [], 0
        for case in puzzle["cases"]:
            took = 0.0
            for answer in case["answers"]:
                found, moved, seconds = state(base, parts(answer["from"]), answer["asked"])
                took += seconds
                if (found, moved) != (answer["state"], answer["set"]):
                    sys.exit(f"{puzzle['model']}: {answer} against {found} {moved} from {parts(answer['from'])}")
                same += 1
            theirs.append(took * 1000)
            ours.append(case["took_ms"])
        print(f"{puzzle['model']}: {same} states the same; for all of a choice the solver took "
              f"{statistics.median(theirs):.1f} ms (median), we took {statistics.median(ours):.2f} ms; "
              f"1 to {statistics.median(theirs) / statistics.median(ours):.0f}")


if __name__ == "__main__":
    main()

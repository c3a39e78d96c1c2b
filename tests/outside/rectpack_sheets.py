"""Fewest sheets that a general packing library needs for published instances: for `cargo xtask bench`.

Every one of 12 algorithms, in 6 orders, on the first or on the best sheet that has room; turned where the instance says so.
Prints for each instance its class, its sheets, and the way that needed them, with tabs between.
"""

import itertools
import json
import pathlib
import sys

import rectpack

# The four of maximal rectangles, the six of skylines, and guillotine cuts by best short side and by best area.
ALGORITHMS = [
    "MaxRectsBl", "MaxRectsBssf", "MaxRectsBaf", "MaxRectsBlsf",
    "SkylineBl", "SkylineBlWm", "SkylineMwf", "SkylineMwfl", "SkylineMwfWm", "SkylineMwflWm",
    "GuillotineBssfSas", "GuillotineBafSas",
]
ORDERS = ["SORT_AREA", "SORT_PERI", "SORT_DIFF", "SORT_SSIDE", "SORT_LSIDE", "SORT_RATIO"]
SHEETS = ["BFF", "BBF"]


def sheets(instance, algorithm, order, sheet):
    packer = rectpack.newPacker(
        mode=rectpack.PackingMode.Offline,
        bin_algo=getattr(rectpack.PackingBin, sheet),
        pack_algo=getattr(rectpack, algorithm),
        sort_algo=getattr(rectpack, order),
        rotation=instance["rotation_allowed"],
    )
    packer.add_bin(*instance["sheet"], count=float("inf"))
    for item in instance["items"]:
        for _ in range(item["count"]):
            packer.add_rect(item["w"], item["h"])
    packer.pack()
    assert len(packer.rect_list()) == instance["item_count"], "not every part is placed"
    return len(packer)


def main(folder):
    for path in sorted(pathlib.Path(folder).glob("*.json")):
        instance = json.loads(path.read_text())
        ways = itertools.product(ALGORITHMS, ORDERS, SHEETS)
        fewest = None
        for way in ways:
            found = sheets(instance, *way), " ".join(way)
            fewest = min(fewest or found, found, key=lambda one: one[0])
            if fewest[0] <= instance["lower_bound"]:
                break
        print(instance["class"], *fewest, sep="\t", flush=True)


main(sys.argv[1])

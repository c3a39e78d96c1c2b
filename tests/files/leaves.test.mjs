// Every leaf of seeded units turned about its pivots by a geometry kernel that is not ours. SLOTWRIGHT_UNITS says of how many.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { parse } from "smol-toml";
import { Leaf } from "./turn.mjs";
import { Manifold, choices, unit } from "./unit.mjs";

const { build } = parse(readFileSync(new URL("../../web/ranges/fenland.toml", import.meta.url), "utf8"));
const units = choices(Number(process.env.SLOTWRIGHT_UNITS ?? 24), 61);

/// As far as a hand pushes a leaf, and as far as its stop lets it turn inwards: degrees.
const [OPEN, GIVES] = [95, 0.6];

/// Pivots have play to each side; chords of the file are within 0.03 mm of their arcs, on both parts.
const MARGIN = build.pivot_clearance_mm / 2 + 2 * 0.03;

/// The nose of a detent is met before the leaf has turned so far.
const MET = 2.5;

/// The nose is lifted by so much of the travel before the end of the tongue, which goes on beyond it, meets the top.
const LIFTS = 0.9;

/// A stop without the tongue of its detent, and what of the tongue stands before it, which gives way to the leaf.
function parted(stop, top) {
  const [{ min, max }, under] = [stop.boundingBox(), top.boundingBox().min[1]];
  const { vertProperties } = stop.getMesh();
  let front = -Infinity;
  for (let at = 0; at < vertProperties.length; at += 3) {
    if (vertProperties[at + 1] < under - 100) front = Math.max(front, vertProperties[at + 2]);
  }
  const before = Manifold.cube([max[0] - min[0] + 2, 100, 200]).translate([min[0] - 1, under - 99, front + 0.01]);
  const both = { rest: stop.subtract(before), tongue: stop.intersect(before) };
  before.delete();
  return both;
}

test("a leaf meets nothing on its way out to where a hand pushes it, and inwards its stop alone", async () => {
  const turned = { left: 0, right: 0, models: new Set() };
  let noses = 0;
  for (const line of units) {
    const { stated, parts, free } = await unit(line);
    const choice = JSON.parse(line);
    for (const { goes_in, from_mm, to_mm } of stated.parts.joints.filter(({ kind, takes }) => kind === "pivot" && takes === "top")) {
      const leaf = new Leaf(parts.get(goes_in).solid);
      // The document says the same axis.
      const [x, y] = [0, 1].map((axis) => (from_mm[axis] + to_mm[axis]) / 2);
      assert.ok(Math.hypot(x - leaf.from[0], -y - leaf.from[2]) < 0.02, `${goes_in} turns about ${leaf.from}`);
      const bay = goes_in.replace("leaf-", "");
      for (const [id, { solid }] of parts) {
        if (id === goes_in) continue;
        const { rest: other, tongue } = id === `stop-${bay}` ? parted(solid, parts.get("top").solid) : { rest: solid };
        assert.equal(leaf.meets(other, OPEN, MARGIN), null, `${goes_in} meets ${id} on its way out in ${line}`);
        if (tongue) {
          // Shut, it hangs free of the tongue; on its way out it meets the nose, and nothing of the tongue once that is lifted.
          const met = leaf.meets(tongue, OPEN, 0);
          assert.ok(met > 0 && met < MET, `${goes_in} meets the tongue of ${id} at ${met} degrees in ${line}`);
          const lifted = tongue.translate([0, LIFTS * build.detent_travel_mm, 0]);
          assert.equal(leaf.meets(lifted, OPEN, 0), null, `${goes_in} does not pass the tongue of ${id} in ${line}`);
          noses += 1;
          [lifted, tongue].forEach((solid) => solid.delete());
        }
        if (id === `stop-${bay}`) assert.ok(leaf.isIn(other, -GIVES), `${id} does not stop ${goes_in} in ${line}`);
        else assert.equal(leaf.meets(other, -GIVES, MARGIN), null, `${goes_in} meets ${id} on its way in in ${line}`);
      }
      turned[choice.bays[bay - 1].fill.leaf] += 1;
      turned.models.add(choice.model);
      leaf.free();
    }
    free();
  }
  assert.ok(turned.left > 5 && turned.right > 5 && turned.models.size === 3, JSON.stringify(turned));
  console.log(`# ${turned.left} leaves hung at the left and ${turned.right} at the right keep ${MARGIN} mm from all parts, ${noses} pass a nose`);
});

test("what stands in the way of a leaf is found where it stands", async () => {
  let found = 0;
  for (const line of units) {
    const { parts, free } = await unit(line);
    for (const [id, { solid }] of [...parts].filter(([id]) => id.startsWith("leaf-")).slice(0, 1)) {
      const leaf = new Leaf(solid);
      const { min, max } = solid.boundingBox();
      const long = Math.max(max[0] - leaf.from[0], leaf.from[0] - min[0]);
      // A ball before the middle of the leaf, met at 45 degrees less what both are thick, and one just beyond its free edge.
      const ball = (at) => Manifold.sphere(3, 24).translate([leaf.from[0] - leaf.outwards * at * Math.SQRT1_2, (min[1] + max[1]) / 2, leaf.from[2] + at * Math.SQRT1_2]);
      const [at, beyond] = [ball(long / 2), ball(long + 5)];
      const early = (Math.asin(((max[2] - min[2]) / 2 + 3 + MARGIN) / (long / 2)) * 180) / Math.PI;
      const met = leaf.meets(at, OPEN, MARGIN);
      assert.ok(Math.abs(met - (45 - early)) < 0.02, `${id} meets a ball at ${met}, not at ${45 - early} degrees`);
      assert.deepEqual([leaf.meets(at, 45 - early - 0.1, MARGIN), leaf.meets(beyond, OPEN, MARGIN)], [null, null], id);
      leaf.free();
      found += 1;
    }
    free();
    if (found === 4) break;
  }
  assert.equal(found, 4);
});

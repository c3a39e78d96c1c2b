// Seeded units put together by a geometry kernel that is not ours, along the ways that the tool states.
// SLOTWRIGHT_UNITS says how many; 200 take some minutes.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { parse } from "smol-toml";
import { clear, meets, replay, WAYS } from "./replay.mjs";
import { Manifold, choices, near, shared, unit, within } from "./unit.mjs";

const { build } = parse(readFileSync(new URL("../../web/ranges/fenland.toml", import.meta.url), "utf8"));
const units = choices(Number(process.env.SLOTWRIGHT_UNITS ?? 24), 29);

/// A place in the axes of the case as one in those of the file, which has y up and z to the front.
const inFile = ([x, y, z]) => [x, z, -y];

/// What lies between two places of the case, grown by so much.
function place(from, to, by = 0) {
  const [one, two] = [inFile(from), inFile(to)];
  return { min: one.map((at, axis) => Math.min(at, two[axis]) - by), max: one.map((at, axis) => Math.max(at, two[axis]) + by) };
}

/// A solid moved, along directions of the case.
const moved = (solid, step) => solid.translate(inFile(step));

function box({ min, max }) {
  const cube = Manifold.cube(max.map((high, axis) => high - min[axis]));
  const placed = cube.translate(min);
  cube.delete();
  return placed;
}

test("every part comes along its way past all that stands, and the top comes last", async () => {
  const seen = { parts: 0, ways: 0, bowed: 0, plinths: 0, models: new Set() };
  for (const line of units) {
    const { stated, parts, free } = await unit(line);
    const { steps, reaches_mm: reaches } = stated.assembly;
    assert.deepEqual(steps.map((step) => step.part).sort(), [...parts.keys()].sort(), line);
    const last = steps.at(-1);
    assert.deepEqual([last.part, last.way.map((leg) => leg.moves)], ["top", ["down"]], line);
    assert.deepEqual([...replay(parts, steps)], [], line);

    const standing = [];
    let highest = 0;
    for (const step of steps) {
      const { solid } = parts.get(step.part);
      const turned = (id) => Boolean(stated.parts.panels.find((panel) => panel.id === id).aim);
      // Round a part that stands turned a box is no measure of where it begins to be clear, nor where the tongue of a stop reaches over its leaf.
      const own = step.part.replace("stop-", "leaf-");
      const straight = standing.filter(([id]) => !turned(id) && !turned(step.part) && id !== own);
      assert.deepEqual(clear(solid, step.way, straight), [], `${step.part} does not begin clear in ${line}`);
      // Its highest place is where a leg begins or ends.
      let [at, top] = [0, solid.boundingBox().max[1]];
      highest = Math.max(highest, top);
      for (const { moves, travel_mm } of [...step.way].reverse()) {
        at -= WAYS[moves][1] * travel_mm;
        highest = Math.max(highest, top + at);
      }
      standing.push([step.part, solid]);
      seen.ways += step.way.length > 1 ? 1 : 0;
    }
    assert.ok(Math.abs(highest - reaches) < 0.02, `${highest} is not ${reaches} in ${line}`);
    const choice = JSON.parse(line);
    assert.ok(highest < choice.height_mm + build.headroom_mm, line);
    seen.parts += steps.length;
    seen.bowed += choice.bowed ? 1 : 0;
    seen.plinths += choice.plinth_mm ? 1 : 0;
    seen.models.add(choice.model);
    free();
  }
  assert.ok(seen.bowed > 5 && seen.plinths > 5 && seen.models.size === 3 && seen.ways === units.length, JSON.stringify(seen));
  console.log(`# ${units.length} units: ${seen.parts} parts, ${seen.bowed} with bowed ends, ${seen.plinths} on plinths; none met another one`);
});

test("in the finished unit no part moves by itself but the top, and that upwards alone", async () => {
  // More than any joint has play, and than the gap over a leaf.
  const by = Math.max(build.leaf_gap_mm, build.hook_play_mm) + 0.5;
  for (const line of units) {
    const { parts, free } = await unit(line);
    const freely = [];
    for (const [id, { solid }] of parts) {
      for (const [way, [x, y, z]] of Object.entries(WAYS)) {
        const step = solid.translate([x * by, y * by, z * by]);
        const blocked = step.boundingBox().min[1] < -0.01
          || [...parts].some(([other, { solid }]) => other !== id && near(step, solid, 0) && shared(step, solid) > 1e-3);
        if (!blocked) freely.push(`${id} ${way}`);
        step.delete();
      }
    }
    assert.deepEqual(freely, ["top up"], line);
    free();
  }
});

/// Hooks by which the back does not hold when it is drawn to the rear.
function slack(parts, joints) {
  const back = moved(parts.get("back").solid, [0, 3, 0]);
  const loose = joints.filter(({ kind, goes_in, from_mm, to_mm }) => {
    if (kind !== "hook") return false;
    const both = back.intersect(parts.get(goes_in).solid);
    const volume = both.isEmpty() ? 0 : within(both, place(from_mm, to_mm, build.hook_rise_mm + build.hook_nose_mm));
    both.delete();
    return volume < 1;
  });
  back.delete();
  return loose.map(({ goes_in, number }) => `${goes_in} ${number}`);
}

test("what would not go together, or not hold, is caught", async () => {
  let caught = 0;
  for (const line of units.slice(0, 12)) {
    const { stated, parts, free } = await unit(line);
    const { assembly: { steps }, parts: { joints } } = stated;

    // In another order: the top, which locks all, before all that it locks; the back before what it hangs on.
    const early = (id, at) => {
      const others = steps.filter(({ part }) => part !== id);
      return [...others.slice(0, at), steps.find(({ part }) => part === id), ...others.slice(at)];
    };
    for (const [id, before] of [["top", "upright-1"], ["back", "upright-1"]]) {
      const order = early(id, steps.findIndex(({ part }) => part === before));
      assert.ok(!replay(parts, order).next().done, `${id} goes in before ${before} in ${line}`);
    }

    // Along another way: the back without its drop, or with one that is shorter than noses have play.
    const at = steps.findIndex(({ part }) => part === "back");
    const standing = steps.slice(0, at).map(({ part }) => [part, parts.get(part).solid]);
    const { way: [comes, drops] } = steps[at];
    const goes = (way, change = {}) => {
      const others = standing.map(([id, solid]) => [id, change[id] ?? solid]);
      return meets(change.back ?? parts.get("back").solid, way, others).length === 0;
    };
    const dropped = (by) => goes([comes, { ...drops, travel_mm: drops.travel_mm + by }]);
    assert.deepEqual([goes([comes, drops]), goes([comes])], [true, false], line);
    const play = build.hook_play_mm;
    assert.deepEqual([-play - 0.1, -play + 0.1, play - 0.1, play + 0.1].map(dropped), [false, true, true, false], line);
    const short = { ...comes, travel_mm: comes.travel_mm - 1 };
    assert.notDeepEqual(clear(parts.get("back").solid, [short, drops], standing), [], line);

    // With another hook: one whose nose rises further than it has play, one without a slot, and none.
    const { from_mm: from, to_mm: to } = joints.find(({ kind, goes_in }) => kind === "hook" && goes_in === "upright-1");
    const changed = (id, how, ...where) => {
      const cutter = box(place(...where));
      const solid = parts.get(id).solid[how](cutter);
      cutter.delete();
      return { [id]: solid };
    };
    const rear = to[1] + build.hook_nose_mm;
    const over = (by) => changed("upright-1", "add", [from[0], to[1] + 1, to[2]], [to[0], rear, to[2] + build.hook_rise_mm + by]);
    const slot = changed("back", "add", from, to);
    assert.deepEqual([over(play - 0.1), over(play + 0.1), slot].map((hook) => goes([comes, drops], hook)), [true, false, false], line);
    const none = changed("upright-1", "subtract", [from[0], to[1], from[2]], [to[0], rear, to[2] + build.hook_rise_mm], 1);
    const without = new Map([...parts, ["upright-1", { solid: none["upright-1"] }]]);
    assert.deepEqual([slack(parts, joints), slack(without, joints)], [[], ["upright-1 1"]], line);
    caught += 8;
    free();
  }
  console.log(`# ${caught} wrong orders, ways and hooks were caught`);
});

/// The level directions of the case along which a tab's end runs.
function ends({ lie, aim }) {
  const [x, y] = lie === "turned" ? aim : lie === "side" ? [0, 1] : [1, 0];
  return [[x, y, 0], [-x, -y, 0]];
}

test("the end of a tab finds its slot where it comes too far to the side by its lead-in, and no further", async () => {
  const [deep, little] = [1, 0.03];
  const lead = build.taper_across_mm * (1 - deep / build.taper_along_mm);
  let [found, turned] = [0, 0];
  for (const line of units.slice(0, 15)) {
    const { stated, parts, free } = await unit(line);
    const panels = new Map(stated.parts.panels.map((panel) => [panel.id, panel]));
    for (const { goes_in, takes, kind, clearance_mm, from_mm: from, to_mm: to } of stated.parts.joints) {
      const axis = takes === "back" ? 1 : 2;
      const long = to[axis] - from[axis];
      // In the first of two plates there is no end.
      if (kind !== "tab" || long > panels.get(takes).thickness_mm - 0.1) continue;
      const [tab, slot] = [parts.get(goes_in).solid, parts.get(takes).solid];
      const { min, max } = tab.boundingBox();
      const middle = inFile([from, to].reduce((one, other) => one.map((at, side) => (at + other[side]) / 2)));
      const up = axis === 2 ? 1 : 2;
      const out = Math.sign((min[up] + max[up]) / 2 - middle[up]) * (axis === 2 ? 1 : -1);
      for (const [x, y] of ends(panels.get(goes_in))) {
        for (const [by, goes] of [[lead + clearance_mm / 2 - little, true], [lead + clearance_mm / 2 + little, false]]) {
          const step = [x * by, y * by, 0];
          step[axis] += out * (long - deep);
          const at = moved(tab, step);
          const both = at.intersect(slot);
          const volume = both.isEmpty() ? 0 : within(both, place(from, to, 3));
          // In the end of a narrow slot little wood is left between two reliefs.
          assert.ok(goes ? volume < 1e-5 : volume > 1e-5, `${goes_in} in ${takes}, moved ${step}: ${volume} mm³ in ${line}`);
          [at, both].forEach((solid) => solid.delete());
        }
        found += 1;
        turned += panels.get(goes_in).aim ? 1 : 0;
      }
    }
    free();
  }
  assert.ok(found > 1000 && turned > 50, `${found} ends of tabs, ${turned} of them turned`);
  console.log(`# ${found} ends of tabs, ${turned} of them turned`);
});

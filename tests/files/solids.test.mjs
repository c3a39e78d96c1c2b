// The solids of seeded units against what the tool states of them, by an independent geometry kernel.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { parse } from "smol-toml";
import validator from "gltf-validator";
import { choices, near, shared, unit, within } from "./unit.mjs";

const range = parse(readFileSync(new URL("../../web/ranges/fenland.toml", import.meta.url), "utf8"));
const units = choices(100, 20);

/// Density of a coated board: wood through its measured thickness, film on both faces.
function density(choice, part) {
  const model = range.model.find((model) => model.key === choice.model);
  const board = range.board.find((board) => board.key === (part === "back" ? choice.back : model.body));
  const finish = range.finish.find((finish) => finish.key === choice.finish);
  const coats = finish.coats_before + finish.coats_after;
  const film = (2 * coats * finish.wet_film_um * finish.volume_solids_percent) / 100 / 1000;
  const wood = board.measured_mm ?? board.nominal_mm;
  return (wood * board.density_kg_per_m3 + film * finish.film_kg_per_m3) / (wood + film);
}

test("100 units: valid files; closed parts; mass, centre of gravity and no part in another", async () => {
  const worst = { mass: 0, centre: 0, shared: 0 };
  for (const line of units) {
    const { bytes, stated, parts, free } = await unit(line);
    const { issues } = await validator.validateBytes(new Uint8Array(bytes));
    assert.deepEqual([issues.numErrors, issues.numWarnings], [0, 0], JSON.stringify(issues.messages));
    assert.deepEqual([...parts.keys()].sort(), stated.parts.panels.map((panel) => panel.id).sort());

    let whole = 0;
    const moment = [0, 0, 0];
    for (const [id, part] of parts) {
      const mass = (part.solid.volume() / 1e9) * density(JSON.parse(line), id);
      const off = Math.abs(mass / part.mass_kg - 1);
      assert.ok(off < 0.001, `${id}: ${mass} is not ${part.mass_kg} kg`);
      worst.mass = Math.max(worst.mass, off);
      whole += mass;
      part.centre.forEach((value, axis) => { moment[axis] += mass * value; });
    }
    // The file has y up and z to the front; the document z up and y to the rear.
    const [x, up, front] = moment.map((value) => value / whole);
    const apart = Math.hypot(x - stated.centre_mm[0], -front - stated.centre_mm[1], up - stated.centre_mm[2]);
    assert.ok(apart < 0.5, `centre of gravity ${apart} mm off in ${line}`);
    worst.centre = Math.max(worst.centre, apart);

    const list = [...parts];
    for (const [at, [one, a]] of list.entries()) {
      for (const [two, b] of list.slice(at + 1)) {
        if (!near(a.solid, b.solid, 0.001)) continue;
        const volume = shared(a.solid, b.solid);
        // The file's 32-bit figures are within 0.0001 mm.
        assert.ok(volume < 1, `${one} and ${two} share ${volume} mm³ in ${line}`);
        worst.shared = Math.max(worst.shared, volume);
      }
    }
    free();
  }
  console.log(`# worst of 100 units: mass ${(worst.mass * 100).toFixed(4)} %, centre ${worst.centre.toFixed(4)} mm, shared ${worst.shared.toFixed(4)} mm³`);
});

/// Directions in which a joint has its clearance, with half of it to each side; in the axes of the case.
function sides(kind, takes, { aim }) {
  const both = ([x, y, z]) => [[x, y, z], [-x, -y, -z]];
  const [x, y, z] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
  switch (kind) {
    // The nose keeps the back from going to the rear; to the front it meets the edge, away from the neck's relief.
    case "hook": return [...both(x), [0, -1, 0]];
    case "ear": return [...both(z), [0, 1, 0]];
    // Along the tab and across it: all but the way through the part that takes it. A part that stands turned has its own axes.
    default: {
      if (aim) return [...both([aim[0], aim[1], 0]), ...both([-aim[1], aim[0], 0])];
      return takes === "back" ? [...both(x), ...both(z)] : [...both(x), ...both(y)];
    }
  }
}

test("every joint has its clearance: half of it to each side is free, a little more is not", async () => {
  const little = 0.03;
  let [checked, turned] = [0, 0];
  for (const line of units) {
    const { stated, parts, free } = await unit(line);
    const pairs = new Map();
    for (const joint of stated.parts.joints) {
      const pair = `${joint.goes_in} ${joint.takes}`;
      pairs.set(pair, [...(pairs.get(pair) ?? []), joint]);
    }
    for (const pair of pairs.values()) {
      const { goes_in, takes, kind } = pair[0];
      // Of several joints the closest stops first.
      const clearances = [...new Set(pair.map((joint) => joint.clearance_mm))];
      const tight = (clearance) => pair.filter((joint) => joint.clearance_mm === clearance);
      const moves = [
        [Math.min(...clearances) / 2 - little, true, pair],
        ...clearances.map((clearance) => [clearance / 2 + little, false, tight(clearance)]),
      ];
      const [a, b] = [parts.get(goes_in).solid, parts.get(takes).solid];
      const panel = stated.parts.panels.find((panel) => panel.id === goes_in);
      turned += panel.aim ? 1 : 0;
      for (const side of sides(kind, takes, panel)) {
        for (const [by, free, joints] of moves) {
          const step = side.map((along) => along * by);
          const moved = a.translate([step[0], step[2], -step[1]]);
          const both = moved.intersect(b);
          const whole = both.volume();
          for (const joint of joints) {
            const [from, to] = [joint.from_mm, joint.to_mm];
            const place = { min: [from[0] - 1, from[2] - 1, -to[1] - 1], max: [to[0] + 1, to[2] + 1, 1 - from[1]] };
            // Of less than a little no place has more.
            const volume = whole < 1e-3 ? whole : within(both, place);
            const said = `${goes_in} in ${takes}, ${kind}, moved ${step}: ${volume} mm³`;
            assert.ok(free ? volume < 1e-3 : volume > 1e-3, `${said} in ${line}`);
            checked += 1;
          }
          moved.delete();
          both.delete();
        }
      }
    }
    free();
  }
  assert.ok(turned > 100, `${turned} pairs of parts that stand turned`);
  console.log(`# ${checked} moves of joints; ${turned} pairs of parts stand turned`);
});

// A unit as the tool writes it, read by independent libraries: glTF-Transform for the file, Manifold for the solids.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { NodeIO } from "@gltf-transform/core";
import Module from "manifold-3d";

const kernel = await Module();
kernel.setup();
export const { Manifold, Mesh } = kernel;
const folder = mkdtempSync(join(tmpdir(), "slotwright-solids-"));
process.on("exit", () => rmSync(folder, { recursive: true }));

const tool = (...args) => execFileSync(process.env.SLOTWRIGHT_BIN, args, { encoding: "utf8", maxBuffer: 1 << 28 });

export function choices(count, seed) {
  return tool("sample", "--count", String(count), "--seed", String(seed)).trim().split("\n");
}

/// File, stated figures and solids of a choice; solids are in millimetres in the axes of the file.
export async function unit(choice) {
  const [asked, file] = [join(folder, "choice.json"), join(folder, "unit.glb")];
  writeFileSync(asked, choice);
  tool("solid", "--choice", asked, "--out", file, "--force");
  const stated = JSON.parse(tool("derive", "--choice", asked, "--today", "2026-11-25")).built;
  const bytes = readFileSync(file);
  const document = await new NodeIO().readBinary(bytes);
  const parts = new Map();
  for (const node of document.getRoot().listNodes()) {
    if (node.getMesh()) parts.set(node.getName(), { mass_kg: node.getExtras().mass_kg, ...solid(node.getMesh()) });
  }
  return { bytes, stated, parts, free: () => parts.forEach((part) => part.solid.delete()) };
}

function solid(mesh) {
  const primitives = mesh.listPrimitives();
  const positions = primitives[0].getAttribute("POSITION").getArray();
  const vertProperties = Float32Array.from(positions, (metres) => metres * 1000);
  const triVerts = Uint32Array.from(primitives.flatMap((primitive) => [...primitive.getIndices().getArray()]));
  const triangles = new Mesh({ numProp: 3, vertProperties, triVerts });
  const centre = centroid(vertProperties, triVerts);
  triangles.merge();
  // Throws if the mesh is not closed or not the same way out all round.
  return { solid: new Manifold(triangles), centre };
}

/// Centroid of the enclosed volume: tetrahedra to the first corner, in double precision.
function centroid(at, triangles) {
  const corner = (index) => [0, 1, 2].map((axis) => at[3 * index + axis] - at[axis]);
  let volume = 0;
  const sum = [0, 0, 0];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [corner(triangles[i]), corner(triangles[i + 1]), corner(triangles[i + 2])];
    const six = a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
    volume += six;
    for (const axis of [0, 1, 2]) sum[axis] += (six * (a[axis] + b[axis] + c[axis])) / 4;
  }
  return sum.map((value, axis) => value / volume + at[axis]);
}

/// Boxes of two solids touch or overlap when each is grown by `by`.
export function near(a, b, by) {
  const [one, two] = [a.boundingBox(), b.boundingBox()];
  return [0, 1, 2].every((axis) => one.min[axis] - by < two.max[axis] && two.min[axis] - by < one.max[axis]);
}

/// Volume that two solids share.
export function shared(a, b) {
  const both = a.intersect(b);
  const volume = both.volume();
  both.delete();
  return volume;
}

/// Volume of a solid within a box.
export function within(solid, { min, max }) {
  const cube = Manifold.cube(max.map((high, axis) => high - min[axis]));
  const placed = cube.translate(min);
  const part = solid.intersect(placed);
  const volume = part.volume();
  [cube, placed, part].forEach((solid) => solid.delete());
  return volume;
}

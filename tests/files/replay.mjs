// The assembly of a unit replayed by Manifold: each part comes along its stated way while all earlier ones stand.
import { Manifold, Mesh, near, shared } from "./unit.mjs";

/// Ways of the document in the axes of the file, which has y up and z to the front.
export const WAYS = { left: [-1, 0, 0], right: [1, 0, 0], up: [0, 1, 0], down: [0, -1, 0], back: [0, 0, -1], forwards: [0, 0, 1] };

/// So far beyond its stated beginning a part comes from: the width of a room.
const FAR = 3000;

/// Less than this two parts do not share: the file's 32-bit figures are within 0.0001 mm, and what slides along a face has the
/// same figures there.
const NOTHING = 1e-3;

const along = (way, by) => way.map((value) => value * by);
const add = (a, b) => a.map((value, axis) => value + b[axis]);

/// All that a step's part meets of what stands: the part, the leg, and the volume that it would have to pass through.
export function meets(solid, way, standing) {
  const found = [];
  // From its place backwards; the first leg is the last of these, and comes from afar.
  let place = [0, 0, 0];
  const legs = way.map((leg, at) => ({ ...leg, at })).reverse();
  for (const { moves, travel_mm: travel, at } of legs) {
    const back = along(WAYS[moves], -1);
    for (const swept of sweep(solid, back, place, at === 0 ? travel + FAR : travel)) {
      for (const [part, other] of standing) {
        if (!near(swept, other, 0.001)) continue;
        const volume = shared(swept, other);
        if (volume > NOTHING) found.push({ part, leg: at + 1, volume });
      }
      swept.delete();
    }
    place = add(place, along(back, travel));
  }
  return found;
}

/// What a solid passes through from a place on: itself there, and each of its surfaces that faces the way, drawn out along it.
///
/// A surface is drawn out as one piece. Its triangles all face the way, so none of it lies over another part of it: outlines of
/// panels turn back only where they cease to face the way, and there the piece ends.
function* sweep(solid, way, place, travel) {
  yield solid.translate(place);
  if (travel < 1e-3) return;
  const { vertProperties, triVerts } = solid.getMesh();
  const at = (corner) => [0, 1, 2].map((axis) => vertProperties[3 * corner + axis]);
  const facing = [];
  for (let i = 0; i < triVerts.length; i += 3) {
    const [a, b, c] = [...triVerts.subarray(i, i + 3)].map(at);
    const [u, v] = [add(b, along(a, -1)), add(c, along(a, -1))];
    const normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    // Less than that of twice an area no way of three metres makes a tenth of a cubic millimetre of.
    if (normal.reduce((sum, value, axis) => sum + value * way[axis], 0) > 1e-5) facing.push([...triVerts.subarray(i, i + 3)]);
  }
  for (const piece of pieces(facing)) yield drawn(piece, at, place, along(way, travel));
}

/// Triangles that hang together by an edge.
function pieces(triangles) {
  const [parent, edges] = [triangles.map((_, at) => at), new Map()];
  const root = (one) => {
    while (parent[one] !== one) one = parent[one] = parent[parent[one]];
    return one;
  };
  triangles.forEach((corners, number) => corners.forEach((from, at) => {
    const to = corners[(at + 1) % 3];
    const edge = from < to ? `${from} ${to}` : `${to} ${from}`;
    if (edges.has(edge)) parent[root(number)] = root(edges.get(edge));
    edges.set(edge, number);
  }));
  const all = new Map();
  triangles.forEach((corners, number) => all.set(root(number), [...(all.get(root(number)) ?? []), corners]));
  return all.values();
}

/// A surface drawn out: itself at both ends, and a wall over each edge of its rim.
function drawn(triangles, at, place, way) {
  const [numbers, vertices] = [new Map(), []];
  const number = (corner) => {
    if (!numbers.has(corner)) {
      numbers.set(corner, vertices.length / 3);
      const low = add(at(corner), place);
      vertices.push(...low, ...add(low, way));
    }
    return numbers.get(corner);
  };
  const rim = new Map();
  const faces = [];
  for (const corners of triangles) {
    const [a, b, c] = corners.map(number);
    // The near end looks back.
    faces.push(c, b, a, a + 1, b + 1, c + 1);
    for (const [from, to] of [[a, b], [b, c], [c, a]]) {
      if (!rim.delete(`${to} ${from}`)) rim.set(`${from} ${to}`, [from, to]);
    }
  }
  for (const [from, to] of rim.values()) faces.push(from, to, to + 1, from, to + 1, from + 1);
  const mesh = new Mesh({ numProp: 3, vertProperties: Float32Array.from(vertices), triVerts: Uint32Array.from(faces) });
  return new Manifold(mesh);
}

/// Everything that is in a part's way while a unit goes together, step by step.
export function* replay(parts, steps) {
  const standing = new Map();
  for (const { part, way } of steps) {
    const { solid } = parts.get(part);
    yield* meets(solid, way, standing).map((met) => ({ comes: part, ...met }));
    standing.set(part, solid);
  }
}

/// What does not lie wholly beyond a part along its first leg where that begins, though the part's box comes past it.
export function clear(solid, way, standing) {
  const back = way.map(({ moves, travel_mm }) => along(WAYS[moves], -travel_mm)).reduce(add);
  const start = solid.translate(back);
  const own = start.boundingBox();
  const laps = (box, side) => own.min[side] < box.max[side] - 0.01 && box.min[side] < own.max[side] - 0.01;
  const inWay = standing.filter(([, other]) => [0, 1, 2].every((side) => laps(other.boundingBox(), side)));
  start.delete();
  return inWay.map(([id]) => id);
}

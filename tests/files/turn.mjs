// The turn of a leaf about its pivots, by Manifold: whether it keeps clear of every part between two angles.
import { Manifold, near, shared } from "./unit.mjs";

/// What is nearer to the axis than this moves little and may stand nearer to other parts: it is turned by itself.
const NEAR = 60;

const minus = (a, b) => a.map((value, axis) => value - b[axis]);
const plus = (a, b) => a.map((value, axis) => value + b[axis]);
const dot = (a, b) => a.reduce((sum, value, axis) => sum + value * b[axis], 0);
const times = (a, by) => a.map((value) => value * by);
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

function corners(solid) {
  const { vertProperties } = solid.getMesh();
  return Array.from({ length: vertProperties.length / 3 }, (_, at) => [...vertProperties.subarray(3 * at, 3 * at + 3)]);
}

/// A leaf that turns. Its axis goes through the middles of its two ends, which are those of its pivots: nothing but the solid says
/// where it is.
export class Leaf {
  constructor(solid) {
    const points = corners(solid);
    const { min, max } = solid.boundingBox();
    const end = (height) => {
      const pivot = points.filter((point) => Math.abs(point[1] - height) < 1e-3);
      const half = (axis) => (Math.min(...pivot.map((point) => point[axis])) + Math.max(...pivot.map((point) => point[axis]))) / 2;
      return { middle: [half(0), height, half(2)], pivot };
    };
    const [low, high] = [end(min[1]), end(max[1])];
    this.from = low.middle;
    this.long = Math.hypot(...minus(high.middle, low.middle));
    this.axis = times(minus(high.middle, low.middle), 1 / this.long);
    this.radius = Math.max(...[low, high].flatMap(({ pivot }) => pivot.map((point) => this.away(point))));
    // Outwards its free edge goes to the front.
    this.outwards = (min[0] + max[0]) / 2 > low.middle[0] ? -1 : 1;
    // Whatever turns within the pivots' thickness stays in that cylinder; what is left of the leaf has no pivots.
    this.core = this.cylinder(this.radius);
    // Larger than the pivots all round, so that nothing is left of them.
    const [pivots, around] = [this.cylinder(this.radius + 0.01, 1), this.cylinder(NEAR, 1)];
    const body = solid.subtract(pivots);
    this.pieces = [body.intersect(around), body.subtract(around)].filter((piece) => piece.volume() > 0).map((piece) => this.piece(piece));
    [pivots, around, body].forEach((solid) => solid.delete());
  }

  /// How far a point is from the axis.
  away(point) {
    const beside = minus(point, this.from);
    return Math.hypot(...minus(beside, times(this.axis, dot(beside, this.axis))));
  }

  /// From end to end about the axis, and so far beyond; with this radius at least.
  cylinder(radius, beyond = 0) {
    const count = 64;
    const upright = Manifold.cylinder(this.long + 2 * beyond, radius / Math.cos(Math.PI / count), -1, count);
    const [z, x] = [this.axis, [1, 0, 0]];
    const v = cross(z, x);
    const y = times(v, 1 / Math.hypot(...v));
    const placed = upright.transform([...cross(y, z), 0, ...y, 0, ...z, 0, ...minus(this.from, times(z, beyond)), 1]);
    upright.delete();
    return placed;
  }

  piece(solid) {
    const points = corners(solid);
    return { solid, reach: Math.max(...points.map((point) => this.away(point))), heights: this.heights(points) };
  }

  /// From where to where along the axis.
  heights(points) {
    const all = points.map((point) => dot(minus(point, this.from), this.axis));
    return [Math.min(...all), Math.max(...all)];
  }

  /// A solid turned outwards.
  turned(solid, degrees) {
    const angle = (degrees * this.outwards * Math.PI) / 180;
    const column = (unit) => {
      const [side, up] = [cross(this.axis, unit), times(this.axis, dot(this.axis, unit))];
      return plus(plus(times(minus(unit, up), Math.cos(angle)), times(side, Math.sin(angle))), up);
    };
    const columns = [[1, 0, 0], [0, 1, 0], [0, 0, 1]].map(column);
    const moved = [0, 1, 2].map((axis) => this.from[axis] - columns.reduce((sum, unit, at) => sum + unit[axis] * this.from[at], 0));
    return solid.transform([...columns[0], 0, ...columns[1], 0, ...columns[2], 0, ...moved, 1]);
  }

  free() {
    [this.core, ...this.pieces.map(({ solid }) => solid)].forEach((solid) => solid.delete());
  }

  /// The angle in degrees at which it comes nearer to a part than by the margin, on its way from shut to another angle.
  ///
  /// A step is as large as the gap allows: no point of a piece moves further in it than the gap less the margin, so the piece comes
  /// nearer to the part nowhere between two steps. Along the axis nothing moves: what lies beside it there stays beside it.
  // Source: conservative advancement: B. Mirtich, Impulse-based Dynamic Simulation of Rigid Body Systems, Berkeley 1996; from memory.
  meets(other, to, margin) {
    if (shared(this.core, other) > 1e-3) return 0;
    const [low, high] = this.heights(corners(other));
    const way = Math.sign(to);
    for (const { solid, reach, heights } of this.pieces) {
      if (low > heights[1] + margin || high < heights[0] - margin || !this.mayReach(other, reach + margin)) continue;
      for (let angle = 0; ;) {
        const turned = this.turned(solid, angle * way);
        const gap = turned.minGap(other, reach);
        turned.delete();
        if (gap < margin + 0.01) return angle * way;
        if (angle >= Math.abs(to)) break;
        angle = Math.min(Math.abs(to), angle + (((gap - margin) / reach) * 180) / Math.PI);
      }
    }
    return null;
  }

  /// Whether it shares something with a part where it is turned to an angle.
  isIn(other, to) {
    return this.pieces.some(({ solid }) => {
      const turned = this.turned(solid, to);
      const volume = shared(turned, other);
      turned.delete();
      return volume > 1;
    });
  }

  /// Whether a box round all that lies so near to the axis meets the box round a part.
  mayReach(other, reach) {
    const around = this.cylinder(reach);
    const may = near(around, other, 0);
    around.delete();
    return may;
  }
}

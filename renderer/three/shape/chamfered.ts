/** Boxes with broken edges as one geometry: edges that catch the light are what makes a thing look made. */
import { BufferAttribute, BufferGeometry } from "three";
import { AXIS_INDEX, type Box } from "../layout/solids.ts";

/** Triangles of one box: 6 faces, 12 edges, 8 corners. */
export const TRIANGLES_PER_BOX = 12 + 24 + 8;

interface Sink {
  readonly position: number[];
  readonly normal: number[];
  readonly uv: number[];
}

type Point = [number, number, number];

/** One geometry of all boxes; texture coordinates are metres, u along the grain. `chamfer` in m. */
export function boxesGeometry(boxes: readonly Box[], chamfer: number): BufferGeometry {
  const sink: Sink = { position: [], normal: [], uv: [] };
  for (const one of boxes) addBox(sink, one, chamfer);
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(sink.position), 3));
  geometry.setAttribute("normal", new BufferAttribute(new Float32Array(sink.normal), 3));
  geometry.setAttribute("uv", new BufferAttribute(new Float32Array(sink.uv), 2));
  return geometry;
}

function addBox(sink: Sink, one: Box, chamfer: number): void {
  const half = one.max.map((top, i) => (top - one.min[i]) / 2);
  const centre = one.max.map((top, i) => (top + one.min[i]) / 2);
  const c = Math.min(chamfer, 0.35 * Math.min(half[0], half[1], half[2]));
  const grain = one.grain === undefined ? -1 : AXIS_INDEX[one.grain];
  /** The corner with signs `s`, as seen on the face across `axis`. */
  const corner = (axis: number, s: Point): Point =>
    [0, 1, 2].map((i) => centre[i] + s[i] * (half[i] - (i === axis ? 0 : c))) as Point;
  const signs = [-1, 1];
  for (let axis = 0; axis < 3; axis++) {
    const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
    for (const a of signs) {
      const at = (b: number, d: number) => corner(axis, signed(axis, a, u, b, v, d));
      polygon(sink, [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)], centre, axis, grain);
      if (c <= 0) continue;
      for (const b of signs) {
        const on = (which: number, d: number) => corner(which, signed(axis, d, u, a, v, b));
        polygon(sink, [on(u, -1), on(u, 1), on(v, 1), on(v, -1)], centre, u, grain);
      }
    }
  }
  if (c <= 0) return;
  for (const x of signs)
    for (const y of signs)
      for (const z of signs) {
        const s: Point = [x, y, z];
        polygon(sink, [corner(0, s), corner(1, s), corner(2, s)], centre, 0, grain);
      }
}

function signed(a: number, x: number, b: number, y: number, c: number, z: number): Point {
  const s: Point = [0, 0, 0];
  s[a] = x;
  s[b] = y;
  s[c] = z;
  return s;
}

/** Adds a flat convex polygon as a fan, turned outwards from the box's centre. */
function polygon(sink: Sink, points: Point[], centre: number[], axis: number, grain: number): void {
  const [a, b, c] = points;
  const e = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const f = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const n = [e[1] * f[2] - e[2] * f[1], e[2] * f[0] - e[0] * f[2], e[0] * f[1] - e[1] * f[0]];
  const length = Math.hypot(n[0], n[1], n[2]) || 1;
  const outward =
    n[0] * (a[0] - centre[0]) + n[1] * (a[1] - centre[1]) + n[2] * (a[2] - centre[2]) >= 0 ? 1 : -1;
  const ring = outward === 1 ? points : [...points].reverse();
  for (let i = 1; i + 1 < ring.length; i++) {
    for (const p of [ring[0], ring[i], ring[i + 1]]) {
      sink.position.push(p[0], p[1], p[2]);
      sink.normal.push((outward * n[0]) / length, (outward * n[1]) / length, (outward * n[2]) / length);
      sink.uv.push(...texturePoint(p, axis, grain));
    }
  }
}

/** Metres on the face across `axis`: u along the grain where the grain lies in the face, else along x or z. */
function texturePoint(p: Point, axis: number, grain: number): [number, number] {
  if (grain >= 0 && grain !== axis) return [p[grain], p[3 - axis - grain]];
  if (axis === 0) return [p[2], p[1]];
  return axis === 1 ? [p[0], p[2]] : [p[0], p[1]];
}

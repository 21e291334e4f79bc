/** The faces of a cut as geometry, one per stuff, each layer a hair in front of the one below. */
import { BufferAttribute, BufferGeometry } from "three";
import type { CutFace } from "../layout/section.ts";
import type { Stuff } from "../layout/solids.ts";

/** Between two layers, m: seen by the depth buffer, not by the eye. */
const HAIR = 0.0002;
const LAYERS = 9;
/** Outlines lie over the next layer, where it shares the edge, but not over the one after. */
const OUTLINE = 1.6;

export function facesByStuff(faces: readonly CutFace[]): ReadonlyMap<Stuff, readonly CutFace[]> {
  const map = new Map<Stuff, CutFace[]>();
  for (const face of faces) {
    const list = map.get(face.stuff);
    if (list === undefined) map.set(face.stuff, [face]);
    else list.push(face);
  }
  return map;
}

/** In the kept half beyond x, so that the clipping plane itself does not take them away. */
export function cutGeometry(faces: readonly CutFace[], x: number): BufferGeometry {
  const position: number[] = [];
  const uv: number[] = [];
  for (const { outline, layer } of faces) {
    const at = x + HAIR * (LAYERS - layer);
    for (let i = 1; i + 1 < outline.length; i++) {
      for (const [y, z] of [outline[0], outline[i], outline[i + 1]]) {
        position.push(at, y, z);
        uv.push(z, y);
      }
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(position), 3));
  geometry.setAttribute("uv", new BufferAttribute(new Float32Array(uv), 2));
  return geometry;
}

/** The faces' edges as line segments, each over its own layer and the next. */
export function cutOutlines(faces: readonly CutFace[], x: number): BufferGeometry {
  const position: number[] = [];
  for (const { outline, layer } of faces) {
    const at = x + HAIR * (LAYERS - layer - OUTLINE);
    for (const [i, [y, z]] of outline.entries()) {
      const [nextY, nextZ] = outline[(i + 1) % outline.length];
      position.push(at, y, z, at, nextY, nextZ);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(position), 3));
  return geometry;
}

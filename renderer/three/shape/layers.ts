/** A wall's layers: plates with the opening through them, as one geometry. Texture coordinates on the faces are metres. */
import { BufferGeometry, ExtrudeGeometry, Path, Shape } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import type { Face, WallLayer } from "../layout/wall.ts";

export function layersGeometry(layers: readonly WallLayer[]): BufferGeometry {
  if (layers.length === 0) return new BufferGeometry();
  return mergeGeometries(layers.map(layerGeometry));
}

function layerGeometry(layer: WallLayer): BufferGeometry {
  const { face, z } = layer;
  const shape = trace(new Shape(), corners(face));
  shape.holes = [trace(new Path(), holeCorners(layer))];
  return new ExtrudeGeometry(shape, { depth: z[1] - z[0], bevelEnabled: false }).translate(0, 0, z[0]);
}

type Corner = readonly [x: number, y: number];

function corners({ x, y }: Face): Corner[] {
  return [
    [x[0], y[0]],
    [x[1], y[0]],
    [x[1], y[1]],
    [x[0], y[1]],
  ];
}

/** Opening and pocket as one outline: two holes that touch would not do. */
function holeCorners({ hole, pocket }: WallLayer): Corner[] {
  const [left, ...others] = corners(hole);
  if (pocket === null) return [left, ...others];
  const { x, y } = pocket;
  return [left, [x[0], y[1]], [x[0], y[0]], [x[1], y[0]], [x[1], y[1]], ...others];
}

function trace<T extends Path>(path: T, points: readonly Corner[]): T {
  for (const [i, [x, y]] of points.entries()) {
    if (i === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  }
  path.closePath();
  return path;
}

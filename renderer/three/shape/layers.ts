/** A wall's layers: plates with holes, as one geometry. Texture coordinates on the faces are metres. */
import { BufferGeometry, ExtrudeGeometry, Path, Shape } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import type { Face, WallLayer } from "../layout/wall.ts";

export function layersGeometry(layers: readonly WallLayer[]): BufferGeometry {
  if (layers.length === 0) return new BufferGeometry();
  return mergeGeometries(layers.map(layerGeometry));
}

function layerGeometry({ face, holes, z }: WallLayer): BufferGeometry {
  const shape = trace(new Shape(), face);
  shape.holes = holes.map((hole) => trace(new Path(), hole));
  return new ExtrudeGeometry(shape, { depth: z[1] - z[0], bevelEnabled: false }).translate(0, 0, z[0]);
}

function trace<T extends Path>(path: T, { x, y }: Face): T {
  path.moveTo(x[0], y[0]);
  path.lineTo(x[1], y[0]);
  path.lineTo(x[1], y[1]);
  path.lineTo(x[0], y[1]);
  path.closePath();
  return path;
}

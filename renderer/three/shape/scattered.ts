/** Copies of one shape at several places as one geometry. */
import { BufferAttribute, BufferGeometry } from "three";
import type { Vec3 } from "../layout/solids.ts";

/** `shape` has an index, and normals and texture coordinates that stay as they are. Places in m. */
export function scattered(shape: BufferGeometry, places: readonly Vec3[]): BufferGeometry {
  const geometry = new BufferGeometry();
  const { position, normal, uv } = shape.attributes;
  const index = shape.getIndex();
  if (places.length === 0 || index === null) return geometry;
  const corners = position.count;
  geometry.setAttribute("position", new BufferAttribute(repeated(position.array, places.length), 3));
  geometry.setAttribute("normal", new BufferAttribute(repeated(normal.array, places.length), 3));
  geometry.setAttribute("uv", new BufferAttribute(repeated(uv.array, places.length), 2));
  const moved = geometry.attributes.position.array;
  const indices = new Uint32Array(index.count * places.length);
  places.forEach((place, copy) => {
    for (let i = 0; i < 3 * corners; i++) moved[3 * corners * copy + i] += place[i % 3];
    for (let i = 0; i < index.count; i++) indices[index.count * copy + i] = index.getX(i) + corners * copy;
  });
  return geometry.setIndex(new BufferAttribute(indices, 1));
}

function repeated(values: ArrayLike<number>, times: number): Float32Array {
  const all = new Float32Array(values.length * times);
  for (let copy = 0; copy < times; copy++) all.set(values, copy * values.length);
  return all;
}

/** Cylinders as one geometry. */
import { BufferGeometry, CylinderGeometry } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import type { Rod } from "../layout/solids.ts";

export function rodsGeometry(rods: readonly Rod[], sides = 20): BufferGeometry {
  if (rods.length === 0) return new BufferGeometry();
  return mergeGeometries(rods.map((one) => rodGeometry(one, sides)));
}

function rodGeometry({ axis, centre, radius, length }: Rod, sides: number): BufferGeometry {
  const geometry = new CylinderGeometry(radius, radius, length, sides);
  if (axis === "x") geometry.rotateZ(-Math.PI / 2);
  if (axis === "z") geometry.rotateX(Math.PI / 2);
  return geometry.translate(centre[0], centre[1], centre[2]);
}

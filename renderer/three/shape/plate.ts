/** The flap's plate with its notch, edges broken; the outline of the pinned one. */
import { type BufferGeometry, ExtrudeGeometry, Shape } from "three";
import type { PlateLayout } from "../layout/flap.ts";

/** Corners of the plate's face in the flap frame, x and y in turn, anticlockwise from the lower left. */
export function plateOutline(plate: PlateLayout): readonly (readonly [number, number])[] {
  const { halfWidth, top, bottom, notch } = plate;
  const cut: [number, number][] =
    notch === null || notch.top <= bottom
      ? []
      : [
          [-notch.halfWidth, bottom],
          [-notch.halfWidth, notch.top],
          [notch.halfWidth, notch.top],
          [notch.halfWidth, bottom],
        ];
  return [[-halfWidth, bottom], ...cut, [halfWidth, bottom], [halfWidth, top], [-halfWidth, top]];
}

/** Texture coordinates on the faces are metres. */
export function plateGeometry(plate: PlateLayout): BufferGeometry {
  const bevel = Math.min(0.0006, plate.thickness * 0.2);
  const shape = new Shape();
  for (const [i, [x, y]] of plateOutline(plate).entries()) {
    if (i === 0) shape.moveTo(x, y);
    else shape.lineTo(x, y);
  }
  const depth = plate.thickness - 2 * bevel;
  return new ExtrudeGeometry(shape, {
    depth,
    bevelEnabled: true,
    bevelSize: bevel,
    bevelOffset: -bevel,
    bevelThickness: bevel,
    bevelSegments: 1,
  }).translate(0, 0, -depth / 2);
}

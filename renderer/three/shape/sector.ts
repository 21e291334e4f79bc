/** Flat shapes around the hinge axis in the y–z plane: 0 hangs down, positive turns outdoors. */
import { BufferAttribute, BufferGeometry } from "three";

/** Where an angle is at a radius: y and z from the axis. */
export function onArc(radius: number, angle: number): readonly [y: number, z: number] {
  return [-radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** Part of a ring between two radii and two angles. */
export function sectorGeometry(inner: number, outer: number, from: number, to: number): BufferGeometry {
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / 0.05));
  const position: number[] = [];
  const point = (radius: number, i: number) => {
    const [y, z] = onArc(radius, from + ((to - from) * i) / steps);
    position.push(0, y, z);
  };
  for (let i = 0; i < steps; i++) {
    point(inner, i);
    point(outer, i);
    point(outer, i + 1);
    point(inner, i);
    point(outer, i + 1);
    point(inner, i + 1);
  }
  return lines(position);
}

/** An arc and its ticks as line segments. */
export function arcGeometry(
  radius: number,
  limit: number,
  ticks: readonly { angle: number; length: number }[],
): BufferGeometry {
  const position: number[] = [];
  const steps = Math.max(8, Math.ceil((2 * limit) / 0.04));
  const add = (r: number, angle: number) => {
    const [y, z] = onArc(r, angle);
    position.push(0, y, z);
  };
  for (let i = 0; i < steps; i++) {
    add(radius, -limit + (2 * limit * i) / steps);
    add(radius, -limit + (2 * limit * (i + 1)) / steps);
  }
  for (const { angle, length } of ticks) {
    add(radius, angle);
    add(radius + length, angle);
  }
  return lines(position);
}

export function lines(position: readonly number[]): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(position), 3));
  return geometry;
}

/** Ticks every 10°, longer every 30°, within the limit, rad. */
export function scaleTicks(limit: number, unit: number): { angle: number; length: number; named: boolean }[] {
  const count = Math.floor((limit * 180) / Math.PI / 10 + 1e-9);
  return Array.from({ length: 2 * count + 1 }, (_, i) => {
    const tens = i - count;
    const named = tens % 3 === 0;
    return { angle: (tens * 10 * Math.PI) / 180, length: named ? unit * 2 : unit, named };
  });
}

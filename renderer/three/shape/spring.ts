/** A helical spring on the y axis from 0 up to `length`. */
import { type BufferGeometry, CatmullRomCurve3, TubeGeometry, Vector3 } from "three";

const TURNS = 5;
const POINTS = 12;

export function springGeometry(radius: number, length: number, wire: number): BufferGeometry {
  const points = Array.from({ length: TURNS * POINTS + 1 }, (_, i) => {
    const turn = (2 * Math.PI * i) / POINTS;
    return new Vector3(radius * Math.cos(turn), (length * i) / (TURNS * POINTS), radius * Math.sin(turn));
  });
  return new TubeGeometry(new CatmullRomCurve3(points), TURNS * POINTS, wire, 5);
}

/** Rounded bodies drawn through elliptic sections along z, and limbs that taper. */
import { BufferAttribute, BufferGeometry, LatheGeometry, Vector2 } from "three";

/** An ellipse across z. */
export interface Station {
  readonly z: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

/** A smooth skin over stations in rising z; an end station of no size closes it. */
export function loftGeometry(stations: readonly Station[], sides = 18): BufferGeometry {
  const position: number[] = [];
  const index: number[] = [];
  for (const { z, y, halfWidth, halfHeight } of stations) {
    for (let i = 0; i < sides; i++) {
      const turn = (2 * Math.PI * i) / sides;
      position.push(halfWidth * Math.cos(turn), y + halfHeight * Math.sin(turn), z);
    }
  }
  for (let s = 0; s + 1 < stations.length; s++) {
    for (let i = 0; i < sides; i++) {
      const a = s * sides + i;
      const b = s * sides + ((i + 1) % sides);
      index.push(a, b, b + sides, a, b + sides, a + sides);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(position), 3));
  geometry.setAttribute("uv", new BufferAttribute(new Float32Array((position.length / 3) * 2), 2));
  geometry.setIndex(index);
  geometry.computeVertexNormals();
  return geometry;
}

/** From a ball of radius `upper` at the origin down to one of radius `lower` at y = −length. */
export function taperedGeometry(length: number, upper: number, lower: number): BufferGeometry {
  const steps = 5;
  const points: Vector2[] = [];
  for (let i = 0; i <= steps; i++) {
    const turn = (Math.PI / 2) * (i / steps);
    points.push(new Vector2(lower * Math.sin(turn), -length - lower * Math.cos(turn)));
  }
  for (let i = 0; i <= steps; i++) {
    const turn = (Math.PI / 2) * (i / steps);
    points.push(new Vector2(Math.max(1e-5, upper * Math.cos(turn)), upper * Math.sin(turn)));
  }
  points[0].x = 1e-5;
  return new LatheGeometry(points, 18);
}

/** Stations with `between` more after each, on a smooth curve through all of them (Catmull–Rom). */
export function smoothStations(stations: readonly Station[], between: number): Station[] {
  const last = stations.length - 1;
  const smooth: Station[] = [];
  for (let i = 0; i < last; i++) {
    const around = [
      stations[Math.max(0, i - 1)],
      stations[i],
      stations[i + 1],
      stations[Math.min(last, i + 2)],
    ];
    for (let k = 0; k <= between; k++) smooth.push(blend(around, k / (between + 1)));
  }
  return [...smooth, stations[last]];
}

function blend(around: readonly Station[], t: number): Station {
  const mix = (of: (s: Station) => number) => catmullRom(around.map(of), t);
  return {
    z: mix((s) => s.z),
    y: mix((s) => s.y),
    halfWidth: Math.max(
      0,
      mix((s) => s.halfWidth),
    ),
    halfHeight: Math.max(
      0,
      mix((s) => s.halfHeight),
    ),
  };
}

function catmullRom([a, b, c, d]: readonly number[], t: number): number {
  return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}

/** The brush on the jambs: as thick at each height as the flap moves there while it touches. */
import { BufferAttribute, BufferGeometry } from "three";
import type { SealLayout } from "../layout/flap.ts";

export function brushGeometry(seal: SealLayout): BufferGeometry {
  const position: number[] = [];
  const uv: number[] = [];
  for (const [from, to] of seal.x) addWedge(seal, from, to, position, uv);
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(position), 3));
  geometry.setAttribute("uv", new BufferAttribute(new Float32Array(uv), 2));
  geometry.computeVertexNormals();
  return geometry;
}

type Corner = [number, number, number];

/** A prism whose cross-section is a narrow trapezium, wider at the bottom: four sides, no ends. */
function addWedge(seal: SealLayout, from: number, to: number, position: number[], uv: number[]): void {
  const { top, bottom, topHalf, bottomHalf } = seal;
  const quad = (a: Corner, b: Corner, c: Corner, d: Corner) => {
    for (const p of [a, b, c, a, c, d]) {
      position.push(...p);
      uv.push(p[0], p[1]);
    }
  };
  quad([from, bottom, bottomHalf], [to, bottom, bottomHalf], [to, top, topHalf], [from, top, topHalf]);
  quad([to, bottom, -bottomHalf], [from, bottom, -bottomHalf], [from, top, -topHalf], [to, top, -topHalf]);
  quad([to, bottom, bottomHalf], [to, bottom, -bottomHalf], [to, top, -topHalf], [to, top, topHalf]);
  quad([from, bottom, -bottomHalf], [from, bottom, bottomHalf], [from, top, topHalf], [from, top, -topHalf]);
}

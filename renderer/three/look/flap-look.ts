/** How each flap material looks: a face and an edge. */
import { Color, type Material, MeshLambertMaterial, MeshPhongMaterial, type Texture } from "three";
import type { Palette } from "./palette.ts";
import { brushed, clearSheet, filterTexture, plywood, veneers, wood } from "./textures.ts";

export interface FlapLook {
  readonly face: Material;
  readonly edge: Material;
  readonly textures: readonly Texture[];
}

interface Clear {
  readonly face: string;
  readonly edge: string;
  readonly opacity: number;
  readonly edgeOpacity: number;
  readonly shine: number;
}

/** Sheets that are seen through: a clear face and, since light gathers there, a strong edge. */
const CLEAR: Readonly<Record<string, Clear>> = {
  polycarbonate: { face: "#86b3c6", edge: "#7fb2c9", opacity: 0.26, edgeOpacity: 0.85, shine: 90 },
  acrylic: { face: "#a9d3da", edge: "#a5e0e8", opacity: 0.18, edgeOpacity: 0.85, shine: 140 },
  glass: { face: "#8fc0ab", edge: "#4f9a80", opacity: 0.18, edgeOpacity: 0.92, shine: 180 },
};

const SOLID: Readonly<Record<string, { readonly colour: string; readonly shine: number }>> = {
  pvc: { colour: "#dfe3e4", shine: 45 },
  abs: { colour: "#c9c4ba", shine: 18 },
  "epdm rubber": { colour: "#2c2b2a", shine: 8 },
};

/** Whether one sees through it. */
export function isClear(material: string): boolean {
  return material.trim().toLowerCase() in CLEAR;
}

/** The look of a named material; one known only by its density gets the drawing's flap colour. */
export function flapLook(material: string, palette: Palette, fine: boolean): FlapLook {
  const look = lookOf(material, palette);
  for (const one of look.textures) filterTexture(one, fine);
  return look;
}

function lookOf(material: string, palette: Palette): FlapLook {
  const name = material.trim().toLowerCase();
  if (name in CLEAR) return clearLook(CLEAR[name]);
  if (name in SOLID) return solidLook(SOLID[name].colour, SOLID[name].shine);
  if (name === "birch plywood") return woodLook(plywood(), veneers());
  if (name === "oak") return woodLook(wood("#c08f52", "#5c3514", 17), null);
  if (name === "aluminium") return metalLook(brushed("#b4bdc4"));
  return solidLook(palette.flap, 20);
}

function clearLook({ face, edge, opacity, edgeOpacity, shine }: Clear): FlapLook {
  const clear = { transparent: true, shininess: shine, specular: new Color("#c8d0d4") };
  const map = clearSheet(face, opacity);
  return {
    face: new MeshPhongMaterial({ ...clear, map, depthWrite: false }),
    edge: new MeshPhongMaterial({ ...clear, color: edge, opacity: edgeOpacity }),
    textures: [map],
  };
}

function solidLook(colour: string, shine: number): FlapLook {
  const made = new MeshPhongMaterial({ color: colour, shininess: shine, specular: new Color("#3a3a3a") });
  return { face: made, edge: made, textures: [] };
}

function woodLook(face: Texture, edge: Texture | null): FlapLook {
  const front = new MeshLambertMaterial({ map: face });
  return {
    face: front,
    edge: edge === null ? front : new MeshLambertMaterial({ map: edge }),
    textures: edge === null ? [face] : [face, edge],
  };
}

function metalLook(face: Texture): FlapLook {
  const made = new MeshPhongMaterial({ map: face, shininess: 60, specular: new Color("#8f969c") });
  return { face: made, edge: made, textures: [face] };
}

export function disposeFlapLook({ face, edge, textures }: FlapLook): void {
  face.dispose();
  edge.dispose();
  for (const one of textures) one.dispose();
}

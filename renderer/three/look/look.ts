/** Every material of the scene, made once per theme and shared by all that is made of it. */
import {
  Color,
  DoubleSide,
  LineBasicMaterial,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  MeshPhongMaterial,
  type Texture,
} from "three";
import type { Stuff } from "../layout/solids.ts";
import type { Palette } from "./palette.ts";
import {
  bristles,
  brushed,
  cladding,
  filterTexture,
  floorBoards,
  hatching,
  pavingSlabs,
  plaster,
  wood,
} from "./textures.ts";

export interface Look {
  readonly palette: Palette;
  readonly fine: boolean;
  readonly plaster: Material;
  readonly cladding: Material;
  readonly core: Material;
  readonly trim: Material;
  readonly skirting: Material;
  readonly boards: Material;
  readonly paving: Material;
  readonly slab: Material;
  readonly steel: Material;
  readonly darkSteel: Material;
  readonly brass: Material;
  readonly copper: Material;
  readonly carrier: Material;
  readonly bristles: Material;
  readonly coat: MeshLambertMaterial;
  readonly coatDark: MeshLambertMaterial;
  readonly collar: MeshLambertMaterial;
  readonly north: MeshPhongMaterial;
  readonly south: MeshPhongMaterial;
  readonly lampOff: Material;
  readonly lampOn: Material;
  /** Faces of a cut. */
  readonly cut: Readonly<Record<Stuff, Material>>;
  readonly cutLine: Material;
  dispose(): void;
}

/** Poles by letter first; the colours are the schoolbook's: north red, south blue (common practice). */
export const POLE_COLOURS = { N: "#b8483a", S: "#3f6fa8" } as const;

/** `fine`: a graphics processor draws it. */
export function createLook(palette: Palette, fine: boolean): Look {
  const textures: Texture[] = [];
  const materials: Material[] = [];
  const keep = <T extends Material>(one: T): T => {
    materials.push(one);
    return one;
  };
  const mapped = (map: Texture, tint = "#ffffff") => {
    textures.push(map);
    return keep(new MeshLambertMaterial({ map, color: tint }));
  };
  const matte = (color: string) => keep(new MeshLambertMaterial({ color }));
  const coat = (color: string) => keep(new MeshLambertMaterial({ color }));
  const shiny = (color: string, shininess: number, specular: string) =>
    keep(new MeshPhongMaterial({ color, shininess, specular: new Color(specular) }));
  const steelMap = brushed("#aab0b5");
  textures.push(steelMap);
  const steel = keep(new MeshPhongMaterial({ map: steelMap, shininess: 70, specular: new Color("#9aa2a8") }));
  const cut = cutMaterials(palette, textures, keep);
  const look: Look = {
    palette,
    fine,
    plaster: mapped(plaster("#f0e8db")),
    cladding: mapped(cladding("#93a39b", "#6f8078")),
    core: matte("#b9a284"),
    trim: mapped(wood("#d3b284", "#8f6334", 41)),
    skirting: matte("#fdfaf5"),
    boards: mapped(floorBoards()),
    paving: mapped(pavingSlabs()),
    slab: matte("#9c8f7e"),
    steel,
    darkSteel: shiny("#5b6166", 50, "#8a9096"),
    brass: shiny("#b98f3d", 80, "#e8d29a"),
    copper: shiny("#a8623a", 40, "#c99a7a"),
    carrier: matte("#4a4b4d"),
    bristles: mapped(bristles()),
    coat: coat(palette.animal),
    coatDark: coat("#2b2320"),
    collar: coat("#a8483f"),
    north: shiny(POLE_COLOURS.N, 60, "#b5a5a5"),
    south: shiny(POLE_COLOURS.S, 60, "#a5abb5"),
    lampOff: matte("#5a4a45"),
    lampOn: keep(new MeshBasicMaterial({ color: "#ffb02e" })),
    cut,
    cutLine: keep(new LineBasicMaterial({ color: "#4a4036" })),
    dispose() {
      for (const one of materials) one.dispose();
      for (const one of textures) one.dispose();
    },
  };
  for (const one of textures) filterTexture(one, fine);
  return look;
}

/** Faces seen at a slant step back from their outlines. */
const BEHIND_LINES = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 } as const;

type Keep = <T extends Material>(one: T) => T;

function cutMaterials(palette: Palette, textures: Texture[], keep: Keep): Record<Stuff, Material> {
  const dark = palette.theme === "dark";
  const hatched = (ground: string, line: string, spacing: number, slant: 1 | -1) => {
    const map = hatching(ground, line, spacing, slant);
    textures.push(map);
    return keep(
      new MeshBasicMaterial({ map, side: DoubleSide, color: dark ? "#d6d0c8" : "#ffffff", ...BEHIND_LINES }),
    );
  };
  return {
    plaster: hatched("#f0e6d6", "#c9b89c", 0.006, 1),
    core: hatched("#dcc8a6", "#a98b5f", 0.012, 1),
    cladding: hatched("#a9b6ae", "#66766e", 0.006, -1),
    timber: hatched("#dcb27a", "#9a6b35", 0.005, -1),
    boards: hatched("#cfa06a", "#8d6234", 0.005, 1),
    paving: hatched("#bdb8ae", "#857f74", 0.007, -1),
    flap: hatched("#9cc6d6", "#3f7f99", 0.0025, 1),
    steel: hatched("#c3c9ce", "#6a7279", 0.0025, -1),
    brass: hatched("#e3bd62", "#8f6b1f", 0.0025, 1),
    copper: hatched("#c98157", "#7d3f1c", 0.0022, 1),
    plastic: hatched("#7d7f83", "#3e4043", 0.0025, 1),
    magnet: hatched("#c98aa9", "#7a3a5c", 0.0022, -1),
  };
}

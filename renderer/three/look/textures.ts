/** Surfaces drawn on small canvases: grain, boards, paving, brushed metal, the hatching of a cut. Sizes in metres. */
import {
  CanvasTexture,
  LinearMipmapLinearFilter,
  LinearMipmapNearestFilter,
  RepeatWrapping,
  SRGBColorSpace,
  type Texture,
} from "three";
import { type Chance, chance } from "./noise.ts";

type Pen = CanvasRenderingContext2D;

/** A texture that repeats every `width` × `height` metres, for geometry whose texture coordinates are metres. */
function texture(
  width: number,
  height: number,
  pixels: number,
  draw: (pen: Pen, w: number, h: number) => void,
) {
  const canvas = document.createElement("canvas");
  canvas.width = pixels;
  canvas.height = Math.max(8, Math.round((pixels * height) / width));
  const pen = canvas.getContext("2d");
  if (pen !== null) draw(pen, canvas.width, canvas.height);
  const made = new CanvasTexture(canvas);
  made.colorSpace = SRGBColorSpace;
  made.wrapS = RepeatWrapping;
  made.wrapT = RepeatWrapping;
  made.repeat.set(1 / width, 1 / height);
  return made;
}

function fill(pen: Pen, colour: string, w: number, h: number): void {
  pen.fillStyle = colour;
  pen.fillRect(0, 0, w, h);
}

/** Long wavy lines along x, each a little darker or lighter than the ground. They meet at the seams. */
function grainLines(
  pen: Pen,
  next: Chance,
  x: number,
  y: number,
  w: number,
  h: number,
  count: number,
  dark: string,
): void {
  pen.save();
  pen.beginPath();
  pen.rect(x, y, w, h);
  pen.clip();
  pen.strokeStyle = dark;
  for (let i = 0; i < count; i++) {
    const level = y + next() * h;
    const swell = (next() - 0.5) * h * 0.12;
    pen.globalAlpha = 0.05 + 0.16 * next();
    pen.lineWidth = 0.6 + 1.8 * next();
    pen.beginPath();
    pen.moveTo(x, level);
    pen.bezierCurveTo(x + w * 0.3, level + swell, x + w * 0.7, level - swell, x + w, level);
    pen.stroke();
  }
  pen.restore();
}

/** Planed wood, grain along u. */
export function wood(ground: string, dark: string, seed: number) {
  return texture(0.5, 0.125, 512, (pen, w, h) => {
    fill(pen, ground, w, h);
    grainLines(pen, chance(seed), 0, 0, w, h, 70, dark);
  });
}

/** Birch plywood: pale, with few broad figures. */
export function plywood() {
  return texture(0.5, 0.25, 512, (pen, w, h) => {
    fill(pen, "#d8c094", w, h);
    grainLines(pen, chance(11), 0, 0, w, h, 55, "#a9793f");
  });
}

/** Its edge: veneers by turns, across v. */
export function veneers() {
  return texture(0.01, 0.0028, 64, (pen, w, h) => {
    fill(pen, "#e0c79b", w, h);
    fill(pen, "#b98d58", w, h / 2);
  });
}

/** Floor boards that run along v, 9 cm wide. */
export function floorBoards() {
  const boards = 6;
  return texture(0.09 * boards, 1.2, 512, (pen, w, h) => {
    const next = chance(5);
    const wide = w / boards;
    for (let i = 0; i < boards; i++) {
      const joint = h * (0.15 + 0.7 * next());
      for (const [from, to] of [
        [0, joint],
        [joint, h],
      ]) {
        pen.fillStyle = `hsl(${29 + 4 * next()} ${38 + 8 * next()}% ${61 + 6 * next()}%)`;
        pen.fillRect(i * wide, from, wide, to - from);
        pen.save();
        pen.translate(i * wide, to);
        pen.rotate(-Math.PI / 2);
        grainLines(pen, next, 0, 0, to - from, wide, 16, "#6d4320");
        pen.restore();
        pen.fillStyle = "rgb(60 35 15 / 0.55)";
        pen.fillRect(i * wide, to - 1.5, wide, 1.5);
      }
      pen.fillStyle = "rgb(60 35 15 / 0.5)";
      pen.fillRect(i * wide, 0, 1.5, h);
    }
  });
}

/** Paving: staggered slabs of 30 × 20 cm with open joints. */
export function pavingSlabs() {
  return texture(0.6, 0.4, 512, (pen, w, h) => {
    const next = chance(23);
    fill(pen, "#6f6a62", w, h);
    const joint = 4;
    for (let row = 0; row < 2; row++)
      for (let i = -1; i < 2; i++) {
        pen.fillStyle = `hsl(${36 + 10 * next()} 7% ${63 + 7 * next()}%)`;
        const x = (i + row * 0.5) * (w / 2);
        pen.fillRect(x + joint / 2, row * (h / 2) + joint / 2, w / 2 - joint, h / 2 - joint);
      }
    speckle(pen, next, w, h, 2600, 0.1);
  });
}

function speckle(pen: Pen, next: Chance, w: number, h: number, count: number, strength: number): void {
  for (let i = 0; i < count; i++) {
    pen.fillStyle = next() < 0.5 ? "#000000" : "#ffffff";
    pen.globalAlpha = strength * next();
    const size = 0.5 + 1.6 * next();
    pen.fillRect(next() * w, next() * h, size, size);
  }
  pen.globalAlpha = 1;
}

/** Rendered wall, hardly marked. */
export function plaster(ground: string) {
  return texture(0.25, 0.25, 256, (pen, w, h) => {
    fill(pen, ground, w, h);
    speckle(pen, chance(3), w, h, 3000, 0.03);
  });
}

/** Boards laid level with a shadow under each lap, 9 cm apart. */
export function cladding(ground: string, dark: string) {
  return texture(0.7, 0.09, 512, (pen, w, h) => {
    fill(pen, ground, w, h);
    grainLines(pen, chance(31), 0, 0, w, h, 9, dark);
    const shade = pen.createLinearGradient(0, 0, 0, h);
    shade.addColorStop(0, "rgb(0 0 0 / 0.42)");
    shade.addColorStop(0.07, "rgb(0 0 0 / 0.1)");
    shade.addColorStop(0.22, "rgb(0 0 0 / 0)");
    shade.addColorStop(0.93, "rgb(255 255 255 / 0.12)");
    shade.addColorStop(1, "rgb(255 255 255 / 0.25)");
    pen.fillStyle = shade;
    pen.fillRect(0, 0, w, h);
  });
}

/** Fine lines along u. */
export function brushed(ground: string) {
  return texture(0.2, 0.05, 256, (pen, w, h) => {
    fill(pen, ground, w, h);
    const next = chance(7);
    for (let i = 0; i < 900; i++) {
      pen.fillStyle = next() < 0.5 ? "#202428" : "#ffffff";
      pen.globalAlpha = 0.055 * next();
      pen.fillRect(0, next() * h, w, 0.7);
    }
    pen.globalAlpha = 1;
  });
}

/** Bristles across u. */
export function bristles() {
  return texture(0.02, 0.02, 64, (pen, w, h) => {
    const next = chance(13);
    fill(pen, "#3a3733", w, h);
    for (let i = 0; i < 60; i++) {
      pen.fillStyle = next() < 0.5 ? "#191715" : "#6a655e";
      pen.globalAlpha = 0.6;
      pen.fillRect(0, next() * h, w, 1);
    }
    pen.globalAlpha = 1;
  });
}

/** A cut face: its ground with slanted lines `spacing` metres apart. */
export function hatching(ground: string, line: string, spacing: number, slant: 1 | -1) {
  return texture(spacing, spacing, 32, (pen, w, h) => {
    fill(pen, ground, w, h);
    pen.strokeStyle = line;
    pen.lineWidth = 3.2;
    pen.beginPath();
    for (const shift of [-1, 0, 1]) {
      pen.moveTo(shift * w - 2, slant === 1 ? -2 : h + 2);
      pen.lineTo(shift * w + w + 2, slant === 1 ? h + 2 : -2);
    }
    pen.stroke();
  });
}

/** Sharpness at a slant, which costs a software renderer more than all else (measured: three times the frame). */
export function filterTexture(texture: Texture, fine: boolean): void {
  texture.anisotropy = fine ? 4 : 1;
  texture.minFilter = fine ? LinearMipmapLinearFilter : LinearMipmapNearestFilter;
}

/** A clear sheet: its tint, and slanting streaks of sky by which the eye sees that it is there. Opacity is in the picture. */
export function clearSheet(tint: string, opacity: number) {
  return texture(0.7, 0.7, 256, (pen, w, h) => {
    pen.globalAlpha = opacity;
    fill(pen, tint, w, h);
    pen.globalAlpha = 1;
    pen.fillStyle = "rgb(255 255 255 / 0.2)";
    for (const [at, wide] of [
      [0.18, 0.1],
      [0.33, 0.03],
      [0.72, 0.06],
    ]) {
      for (const shift of [-1, 0, 1]) {
        const x = (at + shift) * w;
        pen.beginPath();
        pen.moveTo(x, 0);
        pen.lineTo(x + wide * w, 0);
        pen.lineTo(x + wide * w - 0.5 * w, h);
        pen.lineTo(x - 0.5 * w, h);
        pen.fill();
      }
    }
  });
}

/** Words in the picture: sprites of a fixed size in pixels, so that they are in exported pictures and films too. */
import { CanvasTexture, LinearFilter, Sprite, SpriteMaterial, SRGBColorSpace } from "three";
import type { Palette } from "./palette.ts";

export interface LabelStyle {
  readonly colour: string;
  /** Behind the words; `null` for a white rim around the letters instead. */
  readonly ground: string | null;
  /** Height of the letters, CSS pixels. */
  readonly letters: number;
  readonly strong?: boolean;
  /** A ring before the words, as a sign that is not a colour. */
  readonly ring?: string;
}

/** Drawn finer than shown, for screens of high density. */
const FINENESS = 2;

export function makeLabel(text: string, style: LabelStyle, palette: Palette): Sprite {
  const { letters } = style;
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d");
  const font = `${style.strong ? 640 : 480} ${letters * FINENESS}px ${palette.face}`;
  const ring = style.ring === undefined ? 0 : letters * 1.2;
  const edge = letters * (style.ground === null ? 0.25 : 0.5);
  let width = letters * text.length * 0.6;
  if (pen !== null) {
    pen.font = font;
    width = pen.measureText(text).width / FINENESS;
  }
  const size = { width: Math.ceil(width + ring + 2 * edge), height: Math.ceil(letters * 1.65) };
  canvas.width = size.width * FINENESS;
  canvas.height = size.height * FINENESS;
  if (pen !== null) drawLabel(pen, text, font, style, size, edge, ring);
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  map.minFilter = LinearFilter;
  map.generateMipmaps = false;
  const material = new SpriteMaterial({
    map,
    sizeAttenuation: false,
    depthTest: false,
    transparent: true,
  });
  const sprite = new Sprite(material);
  sprite.renderOrder = 30;
  sprite.userData.size = size;
  sprite.raycast = () => {};
  return sprite;
}

function drawLabel(
  pen: CanvasRenderingContext2D,
  text: string,
  font: string,
  style: LabelStyle,
  size: { width: number; height: number },
  edge: number,
  ring: number,
): void {
  pen.scale(FINENESS, FINENESS);
  if (style.ground !== null) {
    pen.globalAlpha = 0.94;
    pen.fillStyle = style.ground;
    pen.beginPath();
    pen.roundRect(0, 0, size.width, size.height, 4);
    pen.fill();
    pen.globalAlpha = 1;
  }
  if (style.ring !== undefined) {
    pen.strokeStyle = style.ring;
    pen.lineWidth = style.letters * 0.2;
    pen.beginPath();
    pen.arc(edge + style.letters * 0.45, size.height / 2, style.letters * 0.36, 0, 2 * Math.PI);
    pen.stroke();
  }
  pen.scale(1 / FINENESS, 1 / FINENESS);
  pen.font = font;
  pen.textBaseline = "middle";
  if (style.ground === null) {
    pen.strokeStyle = "#ffffff";
    pen.lineWidth = style.letters * 0.5;
    pen.lineJoin = "round";
    pen.strokeText(text, (edge + ring) * FINENESS, (size.height / 2 + 0.5) * FINENESS);
  }
  pen.fillStyle = style.colour;
  pen.fillText(text, (edge + ring) * FINENESS, (size.height / 2 + 0.5) * FINENESS);
}

export function disposeLabel(sprite: Sprite): void {
  sprite.material.map?.dispose();
  sprite.material.dispose();
}
